//! The reference surveys, as the tests of this folder read them; the source stands in the file's head.

use serde::Deserialize;

#[derive(Deserialize)]
struct File {
    surveys: Vec<Survey>,
}

#[derive(Clone, Debug, Deserialize)]
pub(super) struct Survey {
    pub survey: String,
    pub outline: Vec<(f64, f64)>,
    pub spots: Vec<(f64, f64, f64)>,
    pub straightedge: Vec<Line>,
    pub cover_in: f64,
    pub level_in3_at_cover: f64,
    pub flat_in3_at_cover: f64,
    pub area_in2: f64,
}

#[derive(Clone, Debug, Deserialize)]
pub(super) struct Line {
    pub from_in: (f64, f64),
    pub to_in: (f64, f64),
    pub line_length_in: f64,
    pub profile_s_z: Vec<(f64, f64)>,
    pub gaps: Vec<ListedGap>,
}

#[derive(Clone, Debug, Deserialize)]
pub(super) struct ListedGap {
    pub length_in: f64,
    pub window_in: f64,
    pub gap_in: f64,
}

pub(super) fn surveys() -> Vec<Survey> {
    let text = include_str!("../../../tests/straightedge.json");
    serde_json::from_str::<File>(text).unwrap().surveys
}
