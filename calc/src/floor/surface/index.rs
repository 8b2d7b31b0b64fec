//! Triangles by place: boxes within boxes, so that a question about a place looks at few triangles.

use crate::order::Order;
use std::sync::OnceLock;

use super::Surface;
use crate::floor::geometry::Point;

/// Triangles in the smallest boxes.
const FEW: usize = 6;

/// An upright box.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    pub low: Point,
    pub high: Point,
}

impl Bounds {
    const NONE: Self = Self {
        low: Point::new(f64::INFINITY, f64::INFINITY),
        high: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    /// The box round some points, wider by a margin.
    pub fn round(points: &[Point], margin_in: f64) -> Self {
        let mut bounds = points.iter().fold(Self::NONE, |bounds, p| {
            bounds.with(Self { low: *p, high: *p })
        });
        bounds.low = Point::new(bounds.low.x_in - margin_in, bounds.low.y_in - margin_in);
        bounds.high = Point::new(bounds.high.x_in + margin_in, bounds.high.y_in + margin_in);
        bounds
    }

    fn with(self, other: Self) -> Self {
        Self {
            low: Point::new(
                self.low.x_in.min(other.low.x_in),
                self.low.y_in.min(other.low.y_in),
            ),
            high: Point::new(
                self.high.x_in.max(other.high.x_in),
                self.high.y_in.max(other.high.y_in),
            ),
        }
    }

    fn meets(&self, other: &Self) -> bool {
        self.low.x_in <= other.high.x_in
            && other.low.x_in <= self.high.x_in
            && self.low.y_in <= other.high.y_in
            && other.low.y_in <= self.high.y_in
    }

    /// Whether a straight line between two points comes into the box, up to a margin.
    fn meets_line(&self, from: Point, to: Point, margin_in: f64) -> bool {
        let (dx, dy) = (to.x_in - from.x_in, to.y_in - from.y_in);
        let side = |x: f64, y: f64| dx * (y - from.y_in) - dy * (x - from.x_in);
        let corners = [
            side(self.low.x_in, self.low.y_in),
            side(self.high.x_in, self.low.y_in),
            side(self.high.x_in, self.high.y_in),
            side(self.low.x_in, self.high.y_in),
        ];
        let margin = margin_in * dx.hypot(dy);
        !(corners.iter().all(|side| *side > margin) || corners.iter().all(|side| *side < -margin))
    }
}

#[derive(Clone, Debug)]
struct Node {
    bounds: Bounds,
    /// The node after this one's whole branch.
    skip_to: usize,
    /// Its triangles in `order`; none unless it is one of the smallest boxes.
    first: usize,
    count: usize,
}

/// The boxes, a branch before the next, and the triangles in the boxes' order.
#[derive(Clone, Debug)]
pub(super) struct Index {
    nodes: Vec<Node>,
    order: Vec<usize>,
}

impl Index {
    fn new(surface: &Surface) -> Self {
        let margin_in = 8.0 * surface.outline.tolerance_in();
        let mut items: Vec<(usize, Bounds)> = surface
            .corners()
            .enumerate()
            .map(|(triangle, corners)| {
                (
                    triangle,
                    Bounds::round(&corners.map(|corner| corner.at), margin_in),
                )
            })
            .collect();
        let mut nodes = Vec::with_capacity(items.len() / 2);
        build(&mut items, 0, &mut nodes);
        Self {
            nodes,
            order: items.into_iter().map(|(triangle, _)| triangle).collect(),
        }
    }

    /// The triangles that may touch the box.
    pub fn in_box(&self, bounds: Bounds) -> Vec<usize> {
        self.find(|node| node.meets(&bounds))
    }

    /// The triangles that may touch the straight line between two points.
    pub fn on_line(&self, from: Point, to: Point, margin_in: f64) -> Vec<usize> {
        let bounds = Bounds::round(&[from, to], margin_in);
        self.find(|node| node.meets(&bounds) && node.meets_line(from, to, margin_in))
    }

    fn find(&self, meets: impl Fn(&Bounds) -> bool) -> Vec<usize> {
        let mut found = Vec::new();
        let mut at = 0;
        while let Some(node) = self.nodes.get(at) {
            if meets(&node.bounds) {
                found.extend(self.order.iter().skip(node.first).take(node.count));
                at += 1;
            } else {
                at = node.skip_to;
            }
        }
        found
    }
}

/// Boxes round `items`, which start at `first` in the order; halves them along the longer side until few are left.
fn build(items: &mut [(usize, Bounds)], first: usize, nodes: &mut Vec<Node>) {
    let bounds = items
        .iter()
        .fold(Bounds::NONE, |bounds, (_, item)| bounds.with(*item));
    let here = nodes.len();
    nodes.push(Node {
        bounds,
        skip_to: here + 1,
        first,
        count: items.len(),
    });
    if items.len() <= FEW {
        return;
    }
    let wide = bounds.high.x_in - bounds.low.x_in >= bounds.high.y_in - bounds.low.y_in;
    let middle = |item: &(usize, Bounds)| {
        let bounds = &item.1;
        if wide {
            bounds.low.x_in + bounds.high.x_in
        } else {
            bounds.low.y_in + bounds.high.y_in
        }
    };
    let half = items.len() / 2;
    items.order_by(|a, b| middle(a).total_cmp(&middle(b)).then(a.0.cmp(&b.0)));
    let (left, right) = items.split_at_mut(half);
    build(left, first, nodes);
    build(right, first + half, nodes);
    let end = nodes.len();
    if let Some(node) = nodes.get_mut(here) {
        node.skip_to = end;
        node.count = 0;
    }
}

/// An index made when first asked for. It follows from the triangles, so it has no part in whether two surfaces are equal.
#[derive(Clone, Debug, Default)]
pub(super) struct Lazy(OnceLock<Index>);

impl Lazy {
    pub fn get(&self, surface: &Surface) -> &Index {
        self.0.get_or_init(|| Index::new(surface))
    }
}

impl PartialEq for Lazy {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}
