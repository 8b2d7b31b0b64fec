//! Shop drawings: SVG from calc's answers, to scale, labelled and dimensioned.
//!
//! A picture takes what it draws, already worked out, and only places it on the sheet. Each has a text
//! alternative; the same numbers stand in a table or a sentence beside it.

pub mod figure;

pub mod sheet;

pub mod floor_map;

pub mod section;

pub mod ramp;

pub mod floors;

pub mod box_fill;

pub mod drop_plot;

pub mod switch_chain;

pub mod panel;

pub mod circuit;

pub mod strip;

pub mod tile;

pub mod bars;

pub mod board;

pub mod duct;

pub use bars::Bars;
pub use board::board_picture;
pub use box_fill::BoxPicture;
pub use circuit::CircuitPicture;
pub use drop_plot::DropPlot;
pub use duct::duct_picture;
pub use figure::{
    Figure, LengthFigure, at_least_in, at_least_text, at_most_text, length_text, reading_text,
    thickness_text,
};
pub use floor_map::FloorMap;
pub use floors::Floors;
pub use panel::PanelPicture;
pub use ramp::RampProfile;
pub use section::Section;
pub use switch_chain::SwitchChain;
pub use tile::TilePicture;
