//! Which cans to buy.

use serde::Serialize;

use super::{PaintField, PaintRefusal};

/// The most paint of one kind, quarts.
pub const MOST_QUARTS: u32 = 20_000;

/// The most sizes of can on offer.
pub const MOST_CANS: usize = 8;

/// A can on offer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Can {
    /// What it holds, US quarts: 1, 4 for a gallon, 20 for a pail.
    pub quarts: u32,
    /// Its price, cents.
    pub price_cents: Option<u32>,
}

/// So many of one can.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CanMix {
    /// What it holds, US quarts.
    pub quarts: u32,
    /// How many.
    pub count: u32,
}

/// The cans to buy.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Cans {
    /// By size, the largest first; sizes that aren't bought are left out.
    pub mix: Vec<CanMix>,
    /// Cans in all.
    pub cans: u32,
    /// What they hold, US quarts.
    pub quarts: u32,
    /// What they hold beyond the need in whole quarts, US quarts.
    pub spare_quarts: u32,
    /// What they cost, cents, where every can has a price.
    pub price_cents: Option<u64>,
    /// Some can on offer has a price and another none, so that the mix is of the fewest cans.
    pub prices_incomplete: bool,
}

/// The cheapest cans for so many quarts where all have prices, of those the fewest, of those with the least to spare;
/// without prices the fewest, of those with the least to spare.
pub(super) fn cans(need: u32, offer: &[Can]) -> Result<Cans, PaintRefusal> {
    if offer.is_empty() {
        return Err(PaintRefusal::NoCans);
    }
    if offer.len() > MOST_CANS {
        return Err(PaintRefusal::TooMany { count: offer.len() });
    }
    if let Some(can) = offer.iter().find(|can| !(1..=400).contains(&can.quarts)) {
        return Err(PaintRefusal::NotAnAmount {
            field: PaintField::CanSize,
            given: f64::from(can.quarts),
        });
    }
    let priced = offer.iter().filter(|can| can.price_cents.is_some()).count();
    let by_price = priced == offer.len();
    // For each need up to this one the best: price, cans, quarts, and the can that was bought last.
    let mut best: Vec<(u64, u32, u32, usize)> = vec![(0, 0, 0, 0)];
    for quarts in 1..=need {
        let mut found = None;
        for (which, can) in offer.iter().enumerate() {
            let before = quarts.saturating_sub(can.quarts) as usize;
            let Some((price, cans, held, _)) = best.get(before) else {
                continue;
            };
            let price = price + can.price_cents.filter(|_| by_price).map_or(0, u64::from);
            let with = (price, cans + 1, held + can.quarts, which);
            if found.is_none_or(|other| with < other) {
                found = Some(with);
            }
        }
        best.push(found.unwrap_or_default());
    }
    let mut mix: Vec<CanMix> = Vec::new();
    let mut left = need;
    while left > 0 {
        let Some(can) = best
            .get(left as usize)
            .and_then(|(.., which)| offer.get(*which))
        else {
            break;
        };
        left = left.saturating_sub(can.quarts);
        match mix.iter_mut().find(|mix| mix.quarts == can.quarts) {
            Some(mix) => mix.count += 1,
            None => mix.push(CanMix {
                quarts: can.quarts,
                count: 1,
            }),
        }
    }
    use crate::order::Order;
    mix.order_by_key(|mix| std::cmp::Reverse(mix.quarts));
    let (price, count, quarts, _) = best.last().copied().unwrap_or_default();
    Ok(Cans {
        mix,
        cans: count,
        quarts,
        spare_quarts: quarts - need,
        price_cents: by_price.then_some(price),
        prices_incomplete: priced > 0 && !by_price,
    })
}
