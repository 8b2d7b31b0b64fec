//! Paint against worked examples, cans against trying all.

use calc::finish::paint::{
    Can, PaintAsk, PaintField, PaintOn, PaintRefusal, PaintSurface, paint, theoretical_ft2_per_gal,
};
use proptest::prelude::*;

use crate::rows::expected;

fn can(quarts: u32, price_cents: Option<u32>) -> Can {
    Can {
        quarts,
        price_cents,
    }
}

fn ask(area_ft2: f64, coats: u32, spread: f64, cans: &[Can]) -> PaintAsk {
    PaintAsk {
        surfaces: vec![PaintSurface {
            on: PaintOn::Walls,
            area_ft2,
            openings_ft2: 0.0,
        }],
        coats,
        spread_ft2_per_gal: spread,
        allowance_percent: 0.0,
        cans: cans.to_vec(),
    }
}

#[test]
fn worked_examples() {
    let theory = theoretical_ft2_per_gal(35.0, 2.0).unwrap();
    assert!((theory - expected("A08")).abs() < 0.5);
    let room = PaintAsk {
        surfaces: vec![PaintSurface::walls(2.0 * (144.0 + 168.0), 108.0, 45.0)],
        ..ask(0.0, 2, 350.0, &[can(4, None)])
    };
    let answer = paint(&room).unwrap();
    assert!((answer.gal - expected("A09")).abs() < 1e-6);
    // 423 square feet and 1.21 gal a coat, as published with it.
    assert_eq!(answer.area_ft2, 423.0);
    assert!((answer.gal_per_coat - 1.21).abs() < 0.005);
}

#[test]
fn cans_by_price_and_without() {
    // By hand: 2.25 gal. Gallon 30, quart 12: two gallons and a quart are 72, three gallons 90.
    let mix = |offer: &[Can]| paint(&ask(787.5, 1, 350.0, offer)).unwrap().buy;
    let cheap = mix(&[can(4, Some(3000)), can(1, Some(1200))]);
    assert_eq!(
        (cheap.price_cents, cheap.cans, cheap.quarts),
        (Some(7200), 3, 9)
    );
    // A quart at 31: three gallons.
    let dear = mix(&[can(4, Some(3000)), can(1, Some(3100))]);
    assert_eq!((dear.price_cents, dear.quarts), (Some(9000), 12));
    // Without prices the fewest cans, of those the least to spare.
    let fewest = mix(&[can(1, None), can(4, None)]);
    assert_eq!(
        (fewest.cans, fewest.quarts, fewest.price_cents),
        (3, 9, None)
    );
    let half = mix(&[can(1, None), can(4, Some(3000))]);
    assert!(half.prices_incomplete && half.price_cents.is_none());
    // A pail holds it all.
    assert_eq!(mix(&[can(20, None), can(4, None)]).cans, 1);
    assert_eq!(
        paint(&ask(0.0, 1, 350.0, &[can(4, None)]))
            .unwrap()
            .buy
            .cans,
        0
    );
    // Exactly two gallons, whatever a third of a number is.
    assert_eq!(mix(&[can(4, None)]).quarts, 12);
    assert_eq!(
        paint(&ask(2.1, 1, 1.05, &[can(1, None)]))
            .unwrap()
            .buy
            .quarts,
        8
    );
}

#[test]
fn refusals() {
    let offer = [can(4, None)];
    let no = |ask: PaintAsk| paint(&ask).unwrap_err();
    assert_eq!(
        no(ask(100.0, 1, 0.0, &offer)),
        PaintRefusal::Nothing {
            field: PaintField::Spread
        }
    );
    assert_eq!(
        no(ask(100.0, 0, 350.0, &offer)),
        PaintRefusal::Nothing {
            field: PaintField::Coats
        }
    );
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(matches!(
            no(ask(bad, 1, 350.0, &offer)),
            PaintRefusal::NotAnAmount { .. }
        ));
        assert!(matches!(
            no(ask(1.0, 1, bad, &offer)),
            PaintRefusal::NotAnAmount { .. }
        ));
        assert!(theoretical_ft2_per_gal(bad, 2.0).is_err());
        assert!(theoretical_ft2_per_gal(30.0, bad).is_err());
    }
    assert_eq!(no(ask(100.0, 1, 350.0, &[])), PaintRefusal::NoCans);
    assert!(matches!(
        no(ask(100.0, 1, 350.0, &[can(0, None)])),
        PaintRefusal::NotAnAmount {
            field: PaintField::CanSize,
            ..
        }
    ));
    let mut windows = ask(100.0, 1, 350.0, &offer);
    windows.surfaces[0].openings_ft2 = 101.0;
    assert!(matches!(
        no(windows),
        PaintRefusal::OpeningsLarger { surface: 0, .. }
    ));
    assert!(matches!(
        no(ask(1e6, 10, 0.01, &offer)),
        PaintRefusal::TooMuch { .. }
    ));
}

proptest! {
    /// The mix covers the need, and no mix of the same two sizes is cheaper, or fewer where there are no prices.
    #[test]
    fn no_mix_is_better(
        area in 0.0..9000.0f64, gallon in 500_u32..9000, quart in 200_u32..4000, priced: bool,
    ) {
        let price = |cents| priced.then_some(cents);
        let offer = [can(4, price(gallon)), can(1, price(quart))];
        let answer = paint(&ask(area, 1, 350.0, &offer)).unwrap();
        prop_assert!(f64::from(answer.buy.quarts) / 4.0 >= answer.with_allowance_gal - 1e-9);
        let need = answer.buy.quarts - answer.buy.spare_quarts;
        for gallons in 0..=need.div_ceil(4) {
            let quarts = need.saturating_sub(4 * gallons);
            let cost = u64::from(gallons * gallon + quarts * quart);
            match answer.buy.price_cents {
                Some(found) => prop_assert!(found <= cost),
                None => prop_assert!(answer.buy.cans <= gallons + quarts),
            }
        }
        let sum: u32 = answer.buy.mix.iter().map(|mix| mix.quarts * mix.count).sum();
        prop_assert_eq!(sum, answer.buy.quarts);
    }
}
