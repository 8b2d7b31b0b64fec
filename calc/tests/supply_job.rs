//! What the demonstration job needs, what is bought of it, and a quote for it. Prices are invented.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use calc::finish::paint::Paint;
use calc::job::questions::answers::answers;
use calc::job::questions::supply::buying::{Buying, buying};
use calc::job::questions::supply::quote::{kept, own_prices, quote, whole_job};
use calc::job::questions::supply::sizes::needs_by_sizes;
use calc::job::questions::supply::{Needed, OpenWhy, needs_of};
use calc::job::sums::{QuoteSum, QuoteWork};
use calc::job::{BuyingEntry, Job, MatchedBy, OwnLineEntry, PourChoice, QuoteEntry, Typed, demo};
use calc::supply::check::{Verdict, Why};
use calc::supply::need::{Kind, Need};
use calc::supply::quote::read;
use calc::supply::unit::{Dimension, Unit};

fn demo_job() -> Job {
    demo::job("k3", "2026-03-02T08:00:00Z")
}

fn close(got: f64, want: f64) {
    assert!(
        (got - want).abs() < 1e-9 * want.abs().max(1.0),
        "{got} {want}"
    );
}

/// The buying list and the room's own answers are two ways to the same figures.
#[test]
fn the_needs_of_a_pour_are_those_of_the_rooms_answers() {
    let job = demo_job();
    let room = &answers(&job).rooms[0];
    let pour = room.flat.as_ref().unwrap();
    let needs = needs_of(&job);
    let of = |kind| needs.iter().find(|need| need.kind == kind).unwrap();
    assert_eq!(
        of(Kind::Pour).packs_to_buy(),
        Some(f64::from(pour.bags.as_ref().unwrap().bags))
    );
    close(
        of(Kind::EdgeStrip).exact,
        room.edge_strip_in.unwrap() / 12.0,
    );
    close(of(Kind::Dam).exact, pour.dam_in / 12.0);
    close(
        of(Kind::PourPrimer).exact,
        room.primer.as_ref().unwrap().primer_gal.unwrap(),
    );
    assert!(needs.iter().all(|need| need.room == Some(room.room)));
}

#[test]
fn what_can_not_be_told_says_so() {
    let mut job = demo_job();
    job.rooms[0].pour.bag_yield = Typed::plain("none");
    let needed = Needed::of(&job);
    assert!(needed.needs.iter().all(|need| need.kind != Kind::Pour));
    assert_eq!(
        (needed.open[0].kind, needed.open[0].why),
        (Kind::Pour, OpenWhy::Missing)
    );
    job.rooms[0].pour.choice = PourChoice::Open;
    let needed = Needed::of(&job);
    assert!(needed.needs.is_empty());
    assert_eq!(needed.open[0].why, OpenWhy::Undecided);
    // A room where nothing was surveyed is no pour.
    job.rooms[0].survey.spots.clear();
    assert!(Needed::of(&job).open.is_empty());
}

/// 5 ft3 with 10 percent at 0.45 a bag is 12.2 bags: 13.
fn pour() -> Need {
    Need::new(Kind::Pour, Dimension::Volume, 5.0)
        .sold_by(Unit::Bag, 0.45)
        .of_room(1)
}

fn list(needs: &[Need], change: impl FnOnce(&mut BuyingEntry)) -> Buying {
    let mut entry = BuyingEntry::default();
    change(&mut entry);
    buying(needs, &entry)
}

#[test]
fn what_is_on_hand_is_not_bought_and_tax_comes_on_top() {
    let found = list(&[pour()], |entry| {
        let row = entry.row_mut(Kind::Pour, Some(1));
        row.on_hand = Typed::plain("2");
        row.price = Typed::plain("38.50");
        entry.own.push(OwnLineEntry {
            id: 4,
            words: "Knee pads".to_owned(),
            price: Typed::plain("24.90"),
            ..OwnLineEntry::default()
        });
        entry.own.push(OwnLineEntry {
            id: 5,
            ..OwnLineEntry::default()
        });
        entry.tax_percent = Typed::plain("6 1/4");
    });
    let line = &found.lines[0];
    assert_eq!(
        (line.unit, line.takes, line.to_buy),
        (Unit::Bag, 13.0, 11.0)
    );
    // 11 x 38.50 = 423.50; with 24.90 it is 448.40, of which 6 1/4 percent are 28.025.
    assert_eq!(line.cost, Some(423.5));
    assert_eq!(found.cost, 448.4);
    close(found.tax.unwrap(), 28.03);
    close(found.total, 476.43);
    assert_eq!((found.to_buy, found.without_price), (3, 1));
}

#[test]
fn enough_on_hand_buys_nothing_and_amounts_are_not_rounded() {
    let strip = Need::new(Kind::EdgeStrip, Dimension::Length, 40.0).of_room(1);
    let found = list(&[pour(), strip], |entry| {
        entry.row_mut(Kind::Pour, Some(1)).on_hand = Typed::plain("20");
    });
    assert_eq!((found.lines[0].to_buy, found.to_buy), (0.0, 1));
    // 5 percent of waste.
    close(found.lines[1].to_buy, 42.0);
}

#[test]
fn a_tick_survives_a_change_and_shows_when_the_line_grew() {
    let tick = |entry: &mut BuyingEntry| {
        let row = entry.row_mut(Kind::Pour, Some(1));
        row.ticked = Typed::plain("13");
        row.price = Typed::plain("10");
    };
    let found = list(&[pour()], tick);
    assert_eq!((found.lines[0].grown, found.ticked), (None, 1));
    let more = Need {
        exact: 5.5,
        ..pour()
    };
    // 5.5 x 1.1 / 0.45 = 13.4: 14.
    let found = list(&[more], tick);
    assert_eq!((found.lines[0].grown, found.ticked), (Some(1.0), 0));
    let less = Need {
        exact: 2.0,
        ..pour()
    };
    let found = list(&[less], tick);
    assert_eq!((found.lines[0].grown, found.lines[0].to_buy), (None, 5.0));
    assert_eq!(found.lines[0].cost, Some(130.0)); // what is in the cart is paid
}

#[test]
fn what_can_not_be_read_is_told_and_costs_nothing() {
    let found = list(&[pour()], |entry| {
        entry.row_mut(Kind::Pour, Some(1)).price = Typed::plain("a lot");
        entry.own.push(OwnLineEntry {
            id: 4,
            quantity: Typed::plain("x"),
            price: Typed::plain("3"),
            ..OwnLineEntry::default()
        });
        entry.tax_percent = Typed::plain("60");
    });
    assert_eq!(found.lines[0].refused.len(), 1);
    assert_eq!((found.lines[0].cost, found.own[0].cost), (None, None));
    assert_eq!((found.cost, found.tax, found.without_price), (0.0, None, 2));
}

fn quoted(text: &str) -> QuoteEntry {
    QuoteEntry {
        lines: kept(&read(text), 10),
        ..QuoteEntry::default()
    }
}

#[test]
fn rooms_are_held_against_a_quote_together() {
    let needs = whole_job(&[
        pour(),
        Need {
            room: Some(2),
            exact: 3.0,
            ..pour()
        },
    ]);
    assert_eq!((needs.len(), needs[0].exact, needs[0].room), (1, 8.0, None));
    assert_eq!(needs[0].packs.len(), 1);
    let other = Need::new(Kind::Pour, Dimension::Volume, 3.0)
        .with_allowance(20.0)
        .sold_by(Unit::Bag, 0.5);
    let needs = whole_job(&[pour(), other]);
    // 5 / 0.45 and 3 / 0.5 are 17.11 bags of both kinds for 8 cubic feet.
    close(needs[0].packs[0].holds, 8.0 / (5.0 / 0.45 + 3.0 / 0.5));
    // (5 x 10 + 3 x 20) / 8.
    close(needs[0].usual_percent, 13.75);
}

/// Tile for floor and walls on two lines: together they are enough, though neither is by itself.
#[test]
fn lines_for_one_need_are_held_against_it_together() {
    let tile = [Need::new(Kind::Tile, Dimension::Area, 90.0)];
    let entry = quoted("Floor tile\t6\tSY\t20.00\nWall tile\t40\tSF\t4.00\nLabor\t8\thrs\t60.00");
    let found = quote(&entry, &tile);
    assert_eq!(found.lines[0].checked.verdict, Verdict::Within);
    // 6 square yards and 40 square feet: 94 square feet, 10.44 square yards (NIST Handbook 44: 1 yd2 = 9 ft2).
    close(found.lines[0].quantity.unwrap(), 94.0 / 9.0);
    close(found.lines[1].quantity.unwrap(), 94.0);
    assert_eq!((found.lines[0].together, found.lines[2].together), (2, 1));
    assert_eq!(
        found.lines[2].checked.verdict,
        Verdict::Unchecked(Why::Labour)
    );
    close(found.total, 120.0 + 160.0 + 480.0);
    close(found.material_share.unwrap(), 280.0 / 760.0);
    assert!(found.missing.is_empty());
}

#[test]
fn own_prices_are_a_share_of_the_quote() {
    let strip = Need::new(Kind::EdgeStrip, Dimension::Length, 40.0).of_room(1);
    let found = quote(&quoted("Leveling, all of it\t1\tLS\t2,600.00"), &[pour()]);
    let without = list(&[pour(), strip.clone()], |_| {});
    assert_eq!(own_prices(&without, &found), None);
    let priced = list(&[pour(), strip], |entry| {
        entry.row_mut(Kind::Pour, Some(1)).price = Typed::plain("40");
    });
    // 13 bags at 40 are 520: a fifth of 2600.
    let own = own_prices(&priced, &found).unwrap();
    assert_eq!((own.cost, own.without_price), (520.0, 1));
    close(own.share, 0.2);
}

#[test]
fn the_user_decides_what_a_line_is_for() {
    let needs = [
        Need::new(Kind::Tile, Dimension::Area, 90.0),
        Need::new(Kind::Membrane, Dimension::Area, 90.0),
    ];
    let mut entry = quoted("Floor tile\t100\tSF\t4.00");
    let found = quote(&entry, &needs);
    assert_eq!(
        (found.lines[0].need, found.missing.as_slice()),
        (Some(0), &[1][..])
    );
    entry.lines[0].matched = MatchedBy::User;
    entry.lines[0].chosen = Some(Kind::Membrane);
    let found = quote(&entry, &needs);
    assert_eq!(found.lines[0].need, Some(1));
    assert_eq!(found.lines[0].suggested, Some(0));
    entry.lines[0].chosen = None;
    let found = quote(&entry, &needs);
    assert_eq!(
        found.lines[0].checked.verdict,
        Verdict::Unchecked(Why::NoNeed)
    );
    assert_eq!(found.missing, [0, 1]);
}

/// 10 by 12 ft, 8 ft high: 120 ft2 of floor, 44 ft round, 352 ft2 of walls.
#[test]
fn sizes_alone_give_needs() {
    let mut sum = QuoteSum {
        width: Typed::plain("10'"),
        length: Typed::plain("12'"),
        height: Typed::plain("8'"),
        openings: Typed::new("32", "ft2"),
        doorways: Typed::plain("3'"),
        depth: Typed::plain("3/8\""),
        work: vec![
            QuoteWork::Pour,
            QuoteWork::Tile,
            QuoteWork::Board,
            QuoteWork::Paint,
            QuoteWork::Trim,
        ],
        ..QuoteSum::default()
    };
    let needs = needs_by_sizes(&sum).unwrap();
    let of = |kind| needs.iter().find(|need| need.kind == kind).unwrap();
    close(of(Kind::Tile).exact, 120.0);
    close(of(Kind::Base).exact, 41.0);
    close(of(Kind::Board).exact, 320.0 + 120.0);
    close(of(Kind::Pour).exact, 3.75);
    close(of(Kind::PourPrimer).exact, 0.6);
    // Two coats on 320 ft2 at 400 a gallon, and with 10 percent at 350.
    close(of(Kind::WallPaint).exact, 1.6);
    close(
        of(Kind::WallPaint).amount(of(Kind::WallPaint).usual_percent),
        640.0 / 350.0 * 1.1,
    );
    // 440 ft2 in sheets of 32: 13.75.
    assert_eq!(of(Kind::Board).range_in(Unit::Sheet).unwrap().low, 14.0);
    sum.height = Typed::default();
    assert_eq!(needs_by_sizes(&sum).unwrap_err()[0].name, "height");
    sum.work = vec![QuoteWork::Tile];
    assert_eq!(needs_by_sizes(&sum).unwrap().len(), 2);
}

/// A bath of 5 by 8 ft: its tile, board, paint, trim and air.
fn closed_job() -> Job {
    let inches = |text: &str| Typed::new(text, "in");
    let mut job = Job::new(
        "k4",
        "",
        "2026-03-02T08:00:00Z",
        calc::job::Units::FeetInches,
    );
    let room = &mut job.rooms[0];
    room.outline.width = inches("60");
    room.outline.length = inches("96");
    room.walls.height = inches("96");
    room.tile.width = inches("12");
    room.tile.height = inches("12");
    room.tile.joint = inches("1/8");
    room.tile.edge_gap = inches("0");
    room.tile.per_box = Typed::plain("10");
    room.tile.membrane_roll = Typed::new("54", "ft2");
    room.board.on = calc::job::Covered::Both;
    room.paint.walls.used = true;
    room.trim.base = true;
    room.air.low_flow = Typed::plain("80");
    room.air.length = Typed::new("12", "ft");
    room.air.elbows = Typed::plain("2");
    job
}

/// The buying list and the room's own answers are two ways to the same figures; tile is 44 in boxes of 10 (12 in tile in 60
/// by 96 in: 40 and 10 percent).
#[test]
fn the_needs_of_closing_up_are_those_of_its_answers() {
    let job = closed_job();
    let closing = &answers(&job).closing[0];
    let needs = needs_of(&job);
    let of = |kind| needs.iter().find(|need| need.kind == kind).unwrap();
    assert_eq!(of(Kind::Tile).packs_to_buy(), Some(5.0));
    close(of(Kind::Tile).exact, 40.0);
    let bags = |kind, count: u32| assert_eq!(of(kind).packs_to_buy(), Some(f64::from(count)));
    bags(Kind::TileMortar, closing.mortar.as_ref().unwrap().bags);
    bags(Kind::Grout, closing.grout.as_ref().unwrap().bags);
    let membrane = closing.membrane.as_ref().unwrap().unwrap();
    bags(Kind::Membrane, membrane.rolls);
    let plan = closing.board.as_ref().unwrap();
    bags(Kind::Board, plan.sheet_count);
    assert_eq!(of(Kind::Screws).exact, f64::from(plan.screws));
    // Walls 26 x 8 = 208 and the ceiling 40 square feet.
    close(of(Kind::Board).exact, 248.0);
    let compound = closing.compound.as_ref().unwrap();
    close(
        of(Kind::Compound).range_in(Unit::Gallon).unwrap().high,
        compound.compound_gal.high,
    );
    let tape = of(Kind::JointTape);
    close(tape.amount(tape.usual_percent), compound.tape_ft);
    let Paint { buy, .. } = closing.paint[0].answer.as_ref().unwrap();
    let list = buying(&needs, &BuyingEntry::default());
    let line = |kind| {
        list.lines
            .iter()
            .find(|line| line.need.kind == kind)
            .unwrap()
    };
    assert_eq!(line(Kind::WallPaint).to_buy, f64::from(buy.quarts) / 4.0);
    let base = closing.cutting[0]
        .answer
        .as_ref()
        .unwrap()
        .as_ref()
        .unwrap();
    assert_eq!(line(Kind::Base).to_buy, base.bars.len() as f64);
    close(of(Kind::Base).exact, 26.0);
    assert_eq!(
        (
            of(Kind::Fan).exact,
            of(Kind::Duct).exact,
            of(Kind::Elbow).exact
        ),
        (1.0, 12.0, 2.0)
    );
    assert!(Needed::of(&job).open.is_empty());
}

#[test]
fn what_was_not_begun_needs_nothing_and_what_is_amiss_says_so() {
    let mut job = closed_job();
    let room = &mut job.rooms[0];
    room.tile.height = Typed::plain("wide");
    room.walls.height = Typed::default();
    room.trim.kerf = Typed::plain("x");
    room.air.length = Typed::default();
    let needed = Needed::of(&job);
    assert!(needed.needs.is_empty());
    let kinds: Vec<Kind> = needed.open.iter().map(|open| open.kind).collect();
    assert_eq!(
        kinds,
        [
            Kind::Tile,
            Kind::Board,
            Kind::WallPaint,
            Kind::Base,
            Kind::Fan
        ]
    );
    // A search that is under way is no need yet.
    let searching = Needed::with_tiles(&closed_job(), &|_, _| None);
    assert_eq!(searching.open[0].why, OpenWhy::Searching);
    let fresh = Job::new(
        "k5",
        "",
        "2026-03-02T08:00:00Z",
        calc::job::Units::FeetInches,
    );
    assert_eq!(Needed::of(&fresh), Needed::default());
}

/// Two rooms whose sheets are of different sizes: 3 of 32 and 2 of 48 square feet are five of 38.4.
#[test]
fn sheets_of_two_sizes_are_held_against_a_quote_as_their_mean() {
    let board = |room, count, holds| {
        let pack = calc::supply::need::Pack {
            unit: Unit::Sheet,
            holds,
        };
        let mix = vec![calc::supply::need::Mixed { count, pack }];
        let exact = f64::from(count) * holds;
        Need::new(Kind::Board, Dimension::Area, exact)
            .with_allowance(0.0)
            .bought_as(mix)
            .of_room(room)
    };
    let whole = whole_job(&[board(1, 3, 32.0), board(2, 2, 48.0)]);
    close(whole[0].packs[0].holds, 38.4);
    close(whole[0].range_in(Unit::Sheet).unwrap().usual, 5.0);
}
