//! The old floor as a surface: triangles between the spots, linear on each.

use serde::Serialize;

use super::geometry::{Outline, Point};

/// A spot read on the old floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Spot {
    /// Where it is.
    pub at: Point,
    /// Its height above the datum, inches; higher is larger.
    pub height_in: f64,
}

/// A corner of the surface's triangles: a spot, or a corner of the room that had no reading of its own.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Vertex {
    /// Where it is.
    pub at: Point,
    /// Its height above the datum, inches.
    pub height_in: f64,
    /// For a corner without a reading: the index of the spot whose height it takes.
    pub assumed_from: Option<usize>,
}

/// The old floor: a constrained Delaunay triangulation of the outline and the spots.
///
/// `vertices` holds the spots in their order, then the corners without a reading in the outline's order.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Surface {
    /// The room.
    pub outline: Outline,
    /// Spots, then added corners.
    pub vertices: Vec<Vertex>,
    /// Indexes into `vertices`, counter-clockwise.
    pub triangles: Vec<[usize; 3]>,
    /// How many of the vertices are spots.
    pub spot_count: usize,
}
