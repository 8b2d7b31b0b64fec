//! Which totals sticks on offer can make.

/// The totals up to the one of a known list; beyond many of them, none is told from another.
pub(super) struct Totals {
    unit: i64,
    /// Whether so many units can be made.
    can: Vec<bool>,
}

/// The most totals that are told apart.
const MOST: i64 = 200_000;

impl Totals {
    pub(super) fn new(stock: &[i64], most: i64) -> Self {
        let unit = stock.iter().copied().fold(0, gcd).max(1);
        let units = most / unit;
        if units > MOST {
            return Self {
                unit: 1,
                can: Vec::new(),
            };
        }
        let mut can = vec![false; units as usize + 1];
        for total in 0..can.len() {
            let made = total == 0
                || stock.iter().any(|length| {
                    let before = total.checked_sub((length / unit) as usize);
                    before.is_some_and(|before| can.get(before) == Some(&true))
                });
            if let Some(place) = can.get_mut(total) {
                *place = made;
            }
        }
        Self { unit, can }
    }

    /// The least total that can be made and is not under a bound.
    pub(super) fn at_least(&self, bound: i64) -> i64 {
        let from = (bound + self.unit - 1).div_euclid(self.unit).max(0);
        let found = self.can.iter().skip(from as usize).position(|can| *can);
        found.map_or(bound, |further| (from + further as i64) * self.unit)
    }
}

pub(super) fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn totals_of_eight_and_twelve_foot_sticks() {
        // By hand: 8, 12, 16, 20 ... and never 4 or 10.
        let totals = Totals::new(&[144, 96], 960);
        let found = [1, 96, 97, 145, 192, 193, 239, 241].map(|bound| totals.at_least(bound));
        assert_eq!(found, [96, 96, 144, 192, 192, 240, 240, 288]);
    }
}
