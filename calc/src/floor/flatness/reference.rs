//! The reference surveys of `tests/cases/floor/surveys`, as the tests of this folder read them; their source is in
//! the README there.

use serde::Deserialize;

use crate::floor::{Outline, Point, Spot, Surface};

#[derive(Clone, Debug, Deserialize)]
pub(super) struct Survey {
    pub survey: String,
    pub outline: Vec<(f64, f64)>,
    pub vertices: Vec<(f64, f64, f64)>,
    pub n_survey_points: usize,
    pub straightedge: Vec<Line>,
}

#[derive(Clone, Debug, Deserialize)]
pub(super) struct Line {
    pub from_in: (f64, f64),
    pub to_in: (f64, f64),
    pub profile_s_z: Vec<(f64, f64)>,
    pub gaps: Vec<ListedGap>,
}

#[derive(Clone, Debug, Deserialize)]
pub(super) struct ListedGap {
    pub length_in: f64,
    pub window_in: f64,
    pub gap_in: f64,
}

impl Survey {
    pub fn surface(&self) -> Surface {
        let outline = Outline::new(
            self.outline
                .iter()
                .map(|&(x, y)| Point::new(x, y))
                .collect(),
        )
        .unwrap();
        let spots: Vec<Spot> = self.vertices[..self.n_survey_points]
            .iter()
            .map(|&(x, y, height_in)| Spot {
                at: Point::new(x, y),
                height_in,
            })
            .collect();
        Surface::new(&outline, &spots).unwrap()
    }
}

/// A rectangular room with a spot at every crossing of a grid.
pub(super) fn grid(
    across: usize,
    away: usize,
    spacing_in: f64,
    height: impl Fn(f64, f64) -> f64,
) -> Surface {
    let (width, length) = (
        (across - 1) as f64 * spacing_in,
        (away - 1) as f64 * spacing_in,
    );
    let corners = [(0.0, 0.0), (width, 0.0), (width, length), (0.0, length)];
    let outline = Outline::new(corners.map(|(x, y)| Point::new(x, y)).to_vec()).unwrap();
    let spots: Vec<Spot> = (0..across * away)
        .map(|i| {
            (
                (i % across) as f64 * spacing_in,
                (i / across) as f64 * spacing_in,
            )
        })
        .map(|(x, y)| Spot {
            at: Point::new(x, y),
            height_in: height(x, y),
        })
        .collect();
    Surface::new(&outline, &spots).unwrap()
}

pub(super) fn surveys() -> Vec<Survey> {
    [
        "s01_bath_grid",
        "s02_l_room",
        "s03_sag",
        "s04_tilted",
        "s05_topo",
    ]
    .iter()
    .map(|name| {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/cases/floor/surveys");
        let text = std::fs::read_to_string(format!("{folder}/{name}_expected.json")).unwrap();
        serde_json::from_str(&text).unwrap()
    })
    .collect()
}
