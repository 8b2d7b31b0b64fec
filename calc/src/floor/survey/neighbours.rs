//! The nearest of many points.

use crate::floor::geometry::Point;
use crate::order::Order;

/// Distances are told apart to a millionth of an inch and ties go to the lower index, so that a turned or moved room
/// has the same neighbours.
const TOLD_APART_IN: f64 = 1e-6;

/// Points halved again and again at their middle one, by x and y in turn (a k-d tree kept in one list).
pub(super) struct Neighbours<'a> {
    points: &'a [Point],
    order: Vec<usize>,
}

impl<'a> Neighbours<'a> {
    pub(super) fn new(points: &'a [Point]) -> Self {
        let mut order: Vec<usize> = (0..points.len()).collect();
        halve(points, &mut order, false);
        Self { points, order }
    }

    /// Indexes of the `count` points nearest to point `of`, nearest first, without itself.
    pub(super) fn nearest(&self, of: usize, count: usize) -> Vec<usize> {
        let Some(&centre) = self.points.get(of) else {
            return Vec::new();
        };
        let mut found = Vec::with_capacity(count + 1);
        self.search(&self.order, false, of, centre, count, &mut found);
        found.into_iter().map(|(_, index)| index).collect()
    }

    fn search(
        &self,
        part: &[usize],
        by_y: bool,
        of: usize,
        centre: Point,
        count: usize,
        found: &mut Vec<(f64, usize)>,
    ) {
        let (before, rest) = part.split_at(part.len() / 2);
        let Some((&middle, after)) = rest.split_first() else {
            return;
        };
        let Some(&at) = self.points.get(middle) else {
            return;
        };
        if middle != of {
            let away = (centre.distance_in(at) / TOLD_APART_IN).round();
            let place = found.partition_point(|other| *other < (away, middle));
            found.insert(place, (away, middle));
            found.truncate(count);
        }
        let beyond_in = along(centre, by_y) - along(at, by_y);
        let (near, far) = if beyond_in < 0.0 {
            (before, after)
        } else {
            (after, before)
        };
        self.search(near, !by_y, of, centre, count, found);
        let farthest_in = match found.last() {
            Some((away, _)) if found.len() == count => (away + 1.0) * TOLD_APART_IN,
            _ => f64::INFINITY,
        };
        if beyond_in.abs() <= farthest_in {
            self.search(far, !by_y, of, centre, count, found);
        }
    }
}

fn along(point: Point, by_y: bool) -> f64 {
    if by_y { point.y_in } else { point.x_in }
}

fn halve(points: &[Point], part: &mut [usize], by_y: bool) {
    if part.len() < 2 {
        return;
    }
    let place = |index: &usize| points.get(*index).map_or(0.0, |point| along(*point, by_y));
    let middle = part.len() / 2;
    part.order_by(|a, b| place(a).total_cmp(&place(b)).then(a.cmp(b)));
    let (before, from_middle) = part.split_at_mut(middle);
    halve(points, before, !by_y);
    if let Some((_, after)) = from_middle.split_first_mut() {
        halve(points, after, !by_y);
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        /// Against looking at every point.
        #[test]
        fn the_nearest_are_the_nearest(places in prop::collection::vec((0..12u32, 0..12u32), 1..80), count in 1..10usize) {
            let points: Vec<Point> = places.iter().map(|&(x, y)| Point::new(f64::from(x), f64::from(y))).collect();
            let tree = Neighbours::new(&points);
            for of in 0..points.len() {
                let mut all: Vec<usize> = (0..points.len()).filter(|&other| other != of).collect();
                all.sort_by(|&a, &b| points[of].distance_in(points[a]).total_cmp(&points[of].distance_in(points[b])).then(a.cmp(&b)));
                all.truncate(count);
                prop_assert_eq!(tree.nearest(of, count), all);
            }
        }
    }
}
