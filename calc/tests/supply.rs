//! A quote read in three layouts and held against needs. The quote, its house and its prices are invented.

use calc::supply::check::{Reason, Verdict, Why, check, material_share, missing, suggest};
use calc::supply::need::{Counter, Kind, Need};
use calc::supply::quote::{Layout, QuoteLine, read};
use calc::supply::unit::{Dimension, Unit};
use proptest::prelude::*;

/// Words, quantity, unit, price of one; as a quote has them.
const QUOTE: &[(&str, &str, &str, &str)] = &[
    ("Demolition of old floor, haul away", "1", "LS", "850.00"),
    ("Self-leveling underlayment, 50 lb", "14", "bags", "38.50"),
    ("Floor primer", "1", "gal", "42.00"),
    ("Uncoupling membrane", "110", "SF", "1.85"),
    ("Porcelain floor tile 12 x 24", "118", "SF", "4.25"),
    ("Thinset mortar, large format", "4", "bags", "31.00"),
    ("Grout, sanded", "1", "bag", "24.00"),
    ("Labor, tile setting", "16", "hrs", "68.00"),
    ("Drywall 4x8 x 1/2", "15", "sheets", "17.20"),
    ("Joint compound, all purpose", "2", "pails", "19.75"),
    ("Joint tape", "2", "rolls", "5.50"),
    ("Corner bead 8 ft", "3", "ea", "4.10"),
    ("Primer, new board", "2", "gal", "24.00"),
    ("Wall paint, two coats", "3", "gal", "41.00"),
    ("Ceiling paint", "1", "gal", "33.00"),
    ("Baseboard 5-1/4 primed", "48", "LF", "2.35"),
    ("Door casing", "34", "LF", "1.65"),
    ("Cable 12-2 with ground", "100", "ft", "1.10"),
    ("Exhaust fan 80 cfm", "1", "ea", "129.00"),
    ("Permit allowance", "1", "allowance", "225.00"),
];

fn as_text(between: &str) -> String {
    let rows = QUOTE.iter().map(|(words, quantity, unit, price)| {
        let words = if between.contains(',') && words.contains(',') {
            format!("\"{words}\"")
        } else {
            (*words).to_owned()
        };
        [words.as_str(), quantity, unit, price].join(between)
    });
    rows.collect::<Vec<_>>().join("\n")
}

#[test]
fn a_quote_is_read_alike_in_three_layouts() {
    let mut seen: Option<Vec<QuoteLine>> = None;
    for (between, layout) in [
        ("\t", Layout::Tabs),
        ("   ", Layout::Blanks),
        (", ", Layout::Commas),
    ] {
        let quote = read(&as_text(between));
        assert_eq!(quote.layout, layout);
        assert!(quote.passed_over.is_empty() && !quote.cut);
        assert_eq!(quote.lines.len(), QUOTE.len());
        for (line, (words, quantity, unit, price)) in quote.lines.iter().zip(QUOTE) {
            assert_eq!(line.words, *words, "{layout:?}");
            assert_eq!(line.quantity, quantity.parse().ok(), "{words}");
            assert_eq!(line.unit, Unit::named(unit), "{words}");
            assert_eq!(line.price, price.parse().ok(), "{words}");
        }
        if let Some(first) = &seen {
            assert_eq!(&quote.lines, first);
        }
        seen = Some(quote.lines);
    }
}

#[test]
fn headings_totals_and_other_spellings_are_understood() {
    let line = |text: &str| read(text).lines.remove(0);
    let quote = read(
        "Item\tQty\tUnit\tRate\tAmount\nTile\t120\tsq. ft.\t$4.25\t$510.00\n\nSubtotal\t\t\t\t$510.00\nSales tax\t\t\t\t$40.80\n",
    );
    assert_eq!(quote.passed_over, [1, 4, 5]);
    let tile = &quote.lines[0];
    assert_eq!(
        (tile.line, tile.quantity, tile.unit, tile.price, tile.total),
        (
            2,
            Some(120.0),
            Some(Unit::SquareFoot),
            Some(4.25),
            Some(510.0)
        )
    );
    // A quantity with its unit in one cell, and a price of one.
    let base = line("Baseboard  46 lf  $2.10/lf  96.60");
    assert_eq!(
        (base.quantity, base.unit, base.price, base.total),
        (Some(46.0), Some(Unit::Foot), Some(2.1), Some(96.6))
    );
    // Thousands between commas, quoted and bare.
    for text in [
        "Tile work, 120, sf, 12.00, \"1,440.00\"",
        "Tile work, 120, sf, 12.00, 1,440.00",
    ] {
        assert_eq!(line(text).total, Some(1440.0), "{text}");
    }
    // Only a price: it is the line's.
    assert_eq!(line("Paint the room\t$1,250").total, Some(1250.0));
    assert_eq!(line("Paint the room\t$1,250").quantity, None);
    // A size in the words is no quantity.
    assert_eq!(line("Tile 12 x 24\t30\tsf").words, "Tile 12 x 24");
    // Spanish, as written on job sites.
    let spanish = line("Zócalo de pino  48  pies  2.35");
    assert_eq!(
        (spanish.unit, spanish.quantity),
        (Some(Unit::Foot), Some(48.0))
    );
    assert!(read("").lines.is_empty());
    assert!(read("\n , , \n").lines.is_empty());
}

/// The needs of an invented room: 100 ft^2 of floor, a pour of 5.42 ft^3, walls of 400 ft^2.
fn needs() -> Vec<Need> {
    vec![
        Need::new(Kind::Pour, Dimension::Volume, 5.42).sold_by(Unit::Bag, 0.45),
        Need::new(Kind::PourPrimer, Dimension::Liquid, 0.5),
        Need::new(Kind::Tile, Dimension::Area, 100.0),
        Need::new(Kind::Board, Dimension::Area, 400.0).sold_by(Unit::Sheet, 32.0),
        Need::new(Kind::WallPaint, Dimension::Liquid, 2.4).sold_by(Unit::Gallon, 1.0),
        Need::new(Kind::CeilingPaint, Dimension::Liquid, 0.6).sold_by(Unit::Gallon, 1.0),
        Need::new(Kind::Base, Dimension::Length, 41.0),
        Need::new(Kind::Fan, Dimension::Count, 1.0),
    ]
}

#[test]
fn each_line_gets_its_verdict() {
    let quote = read(&as_text("\t"));
    let needs = needs();
    let of = |words: &str| {
        let line = quote
            .lines
            .iter()
            .find(|line| line.words.starts_with(words))
            .unwrap();
        let need = suggest(line, &needs);
        (
            need.map(|index| needs[index].kind),
            check(line, need.map(|index| &needs[index])),
        )
    };
    // 5.42 / 0.45 = 12.04: 13 bags at the least; with 10 % 13.25: 14; with 20 % 14.45: 15.
    let (kind, bags) = of("Self-leveling");
    assert_eq!(kind, Some(Kind::Pour));
    let range = bags.range.unwrap();
    assert_eq!((range.low, range.usual, range.high), (13.0, 14.0, 15.0));
    assert_eq!(bags.verdict, Verdict::Within);
    // 400 / 32 = 12.5: 13 sheets; with 10 % 13.75: 14; with 15 % 14.4: 15.
    let (kind, sheets) = of("Drywall");
    assert_eq!((kind, sheets.verdict), (Some(Kind::Board), Verdict::Within));
    let (kind, paint) = of("Wall paint");
    assert_eq!(
        (kind, paint.verdict),
        (Some(Kind::WallPaint), Verdict::Within)
    );
    // 2.4 gallons with 10 % is 2.64: 3 cans, and no more with 20 %.
    assert_eq!(
        paint.range.map(|r| (r.low, r.usual, r.high)),
        Some((2.4, 3.0, 3.0))
    );
    // 48 ft against 41 x 1.15 = 47.15: more than generous, by 48 - 45.1 above the usual.
    let (kind, base) = of("Baseboard");
    assert_eq!(kind, Some(Kind::Base));
    assert!(
        matches!(base.verdict, Verdict::Over { above_usual } if (above_usual - 2.9).abs() < 1e-9)
    );
    assert!(base.reasons.contains(&Reason::Spares));
    // What can't be checked says why.
    assert_eq!(of("Demolition").1.verdict, Verdict::Unchecked(Why::Lump));
    assert_eq!(of("Labor").1.verdict, Verdict::Unchecked(Why::Labour));
    assert_eq!(of("Door casing").1.verdict, Verdict::Unchecked(Why::NoNeed));
    let tile = |quantity: f64, unit| QuoteLine {
        quantity: Some(quantity),
        unit,
        ..QuoteLine::default()
    };
    assert_eq!(
        check(&tile(10.0, Some(Unit::Gallon)), Some(&needs[2])).verdict,
        Verdict::Unchecked(Why::OtherUnit {
            needed: Dimension::Area,
            quoted: Dimension::Liquid
        })
    );
    assert_eq!(
        check(&tile(10.0, None), Some(&needs[2])).verdict,
        Verdict::Unchecked(Why::NoUnit)
    );
    assert_eq!(
        check(&QuoteLine::default(), Some(&needs[2])).verdict,
        Verdict::Unchecked(Why::NoQuantity)
    );
    // A square of 100 square feet, and one too few square yards: 100 / 9 = 11.11.
    assert_eq!(
        check(&tile(1.1, Some(Unit::Square)), Some(&needs[2])).verdict,
        Verdict::Within
    );
    let short = check(&tile(10.0, Some(Unit::SquareYard)), Some(&needs[2]));
    assert!(
        matches!(short.verdict, Verdict::Under { short_by } if (short_by - 10.0 / 9.0).abs() < 1e-9)
    );
}

#[test]
fn what_the_quote_does_not_show_is_asked_for_and_material_has_its_share() {
    let quote = read(&as_text("\t"));
    let needs = needs();
    let matches: Vec<_> = quote
        .lines
        .iter()
        .map(|line| suggest(line, &needs))
        .collect();
    let matched: Vec<usize> = matches.iter().flatten().copied().collect();
    assert!(missing(&needs, &matched).is_empty());
    assert_eq!(missing(&needs, &matched[1..]), [0]);
    let lines = read("Tile\t100\tsf\t4.00\nLabor\t10\thr\t60.00").lines;
    assert_eq!(material_share(&lines, &[true, false]), Some(0.4));
    assert_eq!(material_share(&[], &[]), None);
    assert_eq!(Kind::Fan.counter(), Counter::Air);
}

proptest! {
    /// Low, usual and high are in order in every unit, and a line between them is within.
    #[test]
    fn what_lies_between_the_least_and_a_generous_amount_is_within(
        exact in 0.01_f64..5000.0,
        at in 0.0_f64..=1.0,
        unit in prop::sample::select(vec![Unit::SquareFoot, Unit::SquareYard, Unit::Square, Unit::SquareMeter, Unit::Case]),
        holds in 0.5_f64..200.0,
    ) {
        let need = Need::new(Kind::Tile, Dimension::Area, exact).sold_by(Unit::Case, holds);
        let range = need.range_in(unit).unwrap();
        prop_assert!(0.0 < range.low && range.low <= range.usual && range.usual <= range.high);
        let line = |quantity| QuoteLine { quantity: Some(quantity), unit: Some(unit), ..QuoteLine::default() };
        let verdict = |quantity| check(&line(quantity), Some(&need)).verdict;
        prop_assert_eq!(verdict(range.low + at * (range.high - range.low)), Verdict::Within);
        prop_assert!(matches!(verdict(range.low * 0.9), Verdict::Under { .. }), "under");
        prop_assert!(matches!(verdict(range.high * 1.1), Verdict::Over { .. }), "over");
        // What is bought does the job.
        prop_assert!(need.packs_to_buy().unwrap() * holds >= exact * (1.0 - 1e-6));
    }

    /// Any text at all is read, and what is read is finite.
    #[test]
    fn no_text_breaks_the_reader(text in ".{0,200}") {
        let quote = read(&text);
        for line in quote.lines {
            prop_assert!(line.quantity.is_none_or(f64::is_finite));
            prop_assert!(line.amount().is_none_or(|amount| !amount.is_nan()));
        }
    }
}
