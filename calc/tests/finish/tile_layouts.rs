//! Exact layouts: 3 rooms, 9 layouts each, counted in exact fractions and by a second clipper: see the data file's head.

use calc::finish::tile::{Pattern, Start, layout};

use crate::tile_rows::{number, outline, plain, rows};

#[test]
fn every_reference_layout_comes_out() {
    let rows = rows("tile_layouts.csv");
    assert_eq!(rows.len(), 27);
    for row in &rows {
        let get = |name: &str| number(&row[name]);
        let corners: Vec<[f64; 2]> = row["outline_xy_ccw"]
            .split(';')
            .map(|corner| {
                let (x, y) = corner.split_once(' ').unwrap();
                [number(x), number(y)]
            })
            .collect();
        let offset = get("row_offset_fraction");
        let mut ask = plain(
            [100.0, 100.0],
            [get("tile_w_x_in"), get("tile_h_y_in")],
            get("joint_in"),
        );
        ask.outline = outline(&corners);
        ask.edge_gap_in = get("perimeter_gap_in");
        if offset > 0.0 {
            ask.pattern = Pattern::RunningBond { offset };
        }
        ask.start = match row["origin"].as_str() {
            "corner" => Start::Corner,
            "centre_tile" => Start::CentredOnTile,
            "centre_joint" => Start::CentredOnJoint,
            other => unreachable!("{other}"),
        };
        let answer = layout(&ask).unwrap();
        let found = [
            answer.full_tiles,
            answer.cut_tiles,
            answer.notched_tiles,
            answer.tiles_touched,
        ];
        let wanted = [
            "full_tiles",
            "cut_tiles",
            "notched_tiles_among_cut",
            "tiles_touched",
        ]
        .map(|name| get(name) as u32);
        assert_eq!(found, wanted, "{row:?}");
        let off = |found: f64, name: &str| (found - get(name)).abs();
        // The reference is exact; a sixty-fourth is what a saw can follow.
        let narrowest = answer.narrowest_cut_in.unwrap();
        assert!(
            off(narrowest, "narrowest_cut_exact") < 1e-9,
            "{narrowest} {row:?}"
        );
        assert!(
            off(answer.field_area_in2, "field_area_in2") < 1e-6,
            "{row:?}"
        );
        // Printed with ten digits.
        assert!(
            off(answer.tile_face_area_in2, "tile_face_area_in2") < 1e-5,
            "{row:?}"
        );
        let pitch_in2 = (ask.width_in + ask.joint_in) * (ask.height_in + ask.joint_in);
        let by_area = |percent: f64| {
            (answer.field_area_in2 * (1.0 + percent / 100.0) / pitch_in2).ceil() as u32
        };
        assert_eq!(by_area(10.0), get("module_count_area_method_10pct") as u32);
        if offset == 0.0 {
            // The allowance of a straight layout is the 10 percent of the reference.
            assert_eq!(answer.by_area_tiles, by_area(10.0), "{row:?}");
        }
        let cut: u32 = answer.cuts.iter().map(|group| group.count).sum();
        assert_eq!(cut, answer.cut_tiles);
    }
}
