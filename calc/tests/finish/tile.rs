//! Tile, its bed and its grout, against reference data put together apart from this code (the heads of the files in
//! `calc/tests/data/finish/` say where each value is from and how far it was checked) and against a general-purpose polygon
//! library.

#![allow(
    clippy::unwrap_used,
    reason = "a test that can't read its case has failed"
)]

mod tile_rows;

mod tile_layouts;

mod tile_by_hand;

mod tile_clipped;

mod tile_properties;

mod tile_refusals;

mod tile_rules;

mod tile_quantities;
