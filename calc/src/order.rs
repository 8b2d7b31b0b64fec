//! Sorting, with one sorter for all types: it orders places, and the values follow by swaps.
//!
//! The standard library's sorts are made anew for each type and each comparison, some 5 kB of the download every time.

use std::cmp::Ordering;

/// Slices that can be put in order; equal values keep theirs.
pub trait Order<T> {
    /// Puts the values in the order of a comparison.
    fn order_by(&mut self, by: impl Fn(&T, &T) -> Ordering);

    /// Puts the values in the order of a key.
    fn order_by_key<K: Ord>(&mut self, key: impl Fn(&T) -> K) {
        self.order_by(|a, b| key(a).cmp(&key(b)));
    }

    /// Puts the values in their own order.
    fn order(&mut self)
    where
        T: Ord,
    {
        self.order_by(T::cmp);
    }
}

impl<T> Order<T> for [T] {
    fn order_by(&mut self, by: impl Fn(&T, &T) -> Ordering) {
        let places = ranking(self.len(), &|a, b| by(&self[a], &self[b]));
        for (a, b) in swaps(places) {
            self.swap(a, b);
        }
    }
}

/// The places 0 to `count` - 1 in the order of a comparison.
#[inline(never)]
pub fn ranking(count: usize, by: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|&a, &b| by(a, b));
    places
}

/// The swaps, one after another, that bring to each place the value of the place named there.
#[inline(never)]
fn swaps(mut from: Vec<usize>) -> Vec<(usize, usize)> {
    let mut swaps = Vec::with_capacity(from.len());
    for start in 0..from.len() {
        let mut at = start;
        // Round the cycle, each place once.
        loop {
            let next = std::mem::replace(&mut from[at], at);
            if next == start || next == at {
                break;
            }
            swaps.push((at, next));
            at = next;
        }
    }
    swaps
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The standard library's stable sort is the reference.
        #[test]
        fn values_are_ordered_and_equal_ones_keep_their_order(
            values in prop::collection::vec((0_u8..20, any::<u16>()), 0..200),
        ) {
            let mut expected = values.clone();
            expected.sort_by_key(|(key, _)| *key);
            let mut found = values.clone();
            found.order_by_key(|(key, _)| *key);
            prop_assert_eq!(found, expected);
            let (mut expected, mut found) = (values.clone(), values);
            expected.sort();
            found.order();
            prop_assert_eq!(found, expected);
        }
    }
}
