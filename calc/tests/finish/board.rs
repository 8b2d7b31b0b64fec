//! Board: layouts by hand, and what must hold for any.

use calc::finish::board::{
    BoardAsk, BoardPlan, BoardRefusal, Cutout, Edge, JointKind, LayUp, Patch, SheetSize, Surface,
    SurfaceKind, board, screws::in_piece, sheets_by_area, usual,
};
use proptest::prelude::*;

use crate::rows::expected;

const EIGHT: SheetSize = SheetSize {
    width_in: 48.0,
    length_in: 96.0,
};
const TWELVE: SheetSize = SheetSize {
    width_in: 48.0,
    length_in: 144.0,
};

fn wall(length_in: f64, height_in: f64, openings: &[[f64; 4]]) -> Surface {
    Surface {
        kind: SurfaceKind::Wall,
        length_in,
        height_in,
        openings: openings
            .iter()
            .map(|[x_in, y_in, width_in, height_in]| Cutout {
                x_in: *x_in,
                y_in: *y_in,
                width_in: *width_in,
                height_in: *height_in,
            })
            .collect(),
        end: Edge::Inside,
        top: Edge::Inside,
    }
}

fn ask(surfaces: Vec<Surface>, sheets: &[SheetSize], lay_up: LayUp) -> BoardAsk {
    BoardAsk {
        surfaces,
        patches: vec![],
        sheets: sheets.to_vec(),
        lay_up,
        framing_in: 16.0,
    }
}

/// The area that two rectangles share: left, bottom, width, height.
fn shared(a: [f64; 4], b: [f64; 4]) -> f64 {
    let wide = (a[0] + a[2]).min(b[0] + b[2]) - a[0].max(b[0]);
    let high = (a[1] + a[3]).min(b[1] + b[3]) - a[1].max(b[1]);
    wide.max(0.0) * high.max(0.0)
}

/// What must hold for any layout.
fn holds(plan: &BoardPlan) {
    let ask = &plan.ask;
    let mut cuts: Vec<(usize, [f64; 4])> = Vec::new();
    let mut covered_in2 = 0.0;
    for (which, surface) in ask.surfaces.iter().enumerate() {
        let on: Vec<_> = plan
            .pieces
            .iter()
            .filter(|piece| piece.surface == which)
            .collect();
        let rect = |i: usize| [on[i].x_in, on[i].y_in, on[i].width_in, on[i].height_in];
        let mut own_in2 = 0.0;
        for (i, piece) in on.iter().enumerate() {
            let [x, y, w, h] = rect(i);
            assert!(x >= -1e-6 && y >= -1e-6 && w > 0.0 && h > 0.0);
            assert!(x + w <= surface.length_in + 1e-6 && y + h <= surface.height_in + 1e-6);
            own_in2 += w * h;
            for open in &surface.openings {
                own_in2 -= shared(
                    rect(i),
                    [open.x_in, open.y_in, open.width_in, open.height_in],
                );
            }
            for j in 0..i {
                assert!(shared(rect(i), rect(j)) < 1e-6, "pieces overlap");
            }
            let (along, across) = if piece.flat { (w, h) } else { (h, w) };
            cuts.push((
                piece.sheet,
                [piece.along_in, piece.across_in, along, across],
            ));
        }
        // All of the wall but its openings.
        let open_in2: f64 = surface
            .openings
            .iter()
            .map(|open| open.width_in * open.height_in)
            .sum();
        let want_in2 = surface.length_in * surface.height_in - open_in2;
        assert!((own_in2 - want_in2).abs() < 1e-3, "{own_in2} of {want_in2}");
        covered_in2 += own_in2;
    }
    assert_eq!(plan.patches.len(), ask.patches.len());
    for cut in &plan.patches {
        let patch = ask.patches[cut.patch];
        let (along, across) = if cut.flat {
            (patch.width_in, patch.height_in)
        } else {
            (patch.height_in, patch.width_in)
        };
        covered_in2 += along * across;
        cuts.push((cut.sheet, [cut.along_in, cut.across_in, along, across]));
    }
    for (i, (sheet, cut)) in cuts.iter().enumerate() {
        let size = plan.sheets[*sheet];
        assert!(cut[0] >= 0.0 && cut[0] + cut[2] <= size.length_in + 1e-5);
        assert!(cut[1] >= 0.0 && cut[1] + cut[3] <= size.width_in + 1e-5);
        for (other, beside) in &cuts[..i] {
            assert!(
                sheet != other || shared(*cut, *beside) < 1e-4,
                "cuts overlap"
            );
        }
    }
    // Sheets cover what is covered; each is used; the purchase is the sheets.
    assert!(plan.sheets_ft2 >= covered_in2 / 144.0 - 1e-6);
    assert!((plan.covered_ft2 - covered_in2 / 144.0).abs() < 1e-3);
    assert!(plan.sheet_count >= plan.fewest_possible);
    for sheet in 0..plan.sheets.len() {
        assert!(cuts.iter().any(|(from, _)| *from == sheet));
    }
    let bought: u32 = plan.buy.iter().map(|bought| bought.count).sum();
    assert_eq!(bought, plan.sheet_count);
    assert!(
        plan.buy
            .iter()
            .all(|bought| ask.sheets.contains(&bought.size))
    );
    let joints: f64 = plan.joints.iter().map(|joint| joint.length_in()).sum();
    assert!((joints / 12.0 - plan.tapered_ft - plan.butt_ft).abs() < 1e-9);
}

#[test]
fn worked_examples() {
    assert_eq!(
        f64::from(sheets_by_area(1080.0, 0.0, EIGHT).unwrap()),
        expected("A10")
    );
    // The layout of that wall needs as many: 33.75 sheets standing.
    let long = vec![wall(810.0, 96.0, &[]), wall(810.0, 96.0, &[])];
    let plan = board(&ask(long, &[EIGHT], LayUp::Vertical)).unwrap();
    holds(&plan);
    assert_eq!(f64::from(plan.sheet_count), expected("A10"));
    let screws = in_piece(SurfaceKind::Wall, 96.0, 48.0, 16.0).unwrap();
    assert_eq!(f64::from(screws), expected("A16"));
}

#[test]
fn lying_and_standing() {
    // By hand: 12 by 8 ft. Of 4 by 8 sheets standing: three, two joints of 8 ft. Of 4 by 12 lying: two, one joint of 12 ft.
    let one = || vec![wall(144.0, 96.0, &[])];
    let standing = board(&ask(one(), &[EIGHT], LayUp::Vertical)).unwrap();
    holds(&standing);
    assert_eq!(
        (standing.sheet_count, standing.tapered_ft, standing.butt_ft),
        (3, 16.0, 0.0)
    );
    // Lying of 4 by 8: 8 ft + 4 ft in each row: three, one tapered joint of 12 ft and two butts of 4 ft, not in line.
    let lying = board(&ask(one(), &[EIGHT], LayUp::Horizontal)).unwrap();
    holds(&lying);
    assert_eq!(
        (lying.sheet_count, lying.tapered_ft, lying.butt_ft),
        (3, 12.0, 8.0)
    );
    let butts: Vec<f64> = lying
        .joints
        .iter()
        .filter(|joint| joint.kind == JointKind::Butt)
        .map(|joint| joint.x_in)
        .collect();
    assert!(butts.len() == 2 && butts[0] != butts[1], "{butts:?}");
    let fewest = board(&ask(one(), &[EIGHT, TWELVE], LayUp::Fewest)).unwrap();
    holds(&fewest);
    assert_eq!((fewest.sheet_count, fewest.butt_ft), (2, 0.0));
    assert_eq!(fewest.buy[0].size, TWELVE);
    assert_eq!(fewest.inside_ft, 20.0);
}

#[test]
fn wide_sheets_for_nine_feet() {
    // Common practice: two rows of 54 in sheets for a wall of 9 ft, one tapered joint.
    let plan = board(&ask(
        vec![wall(144.0, 108.0, &[])],
        &usual::SHEETS,
        LayUp::Horizontal,
    ))
    .unwrap();
    holds(&plan);
    assert_eq!(
        (plan.sheet_count, plan.tapered_ft, plan.butt_ft),
        (2, 12.0, 0.0)
    );
    assert!(plan.sheets.iter().all(|sheet| sheet.width_in == 54.0));
    // 8 ft 6 in: 54 + 48.
    let plan = board(&ask(
        vec![wall(144.0, 102.0, &[])],
        &usual::SHEETS,
        LayUp::Horizontal,
    ))
    .unwrap();
    assert_eq!(plan.sheets_ft2, 54.0 + 48.0);
}

#[test]
fn a_door_parts_the_lower_row() {
    // By hand: a door of 32 by 80 in, 40 in from the left of a wall of 12 ft: the lower row is 40 in and 72 in.
    let plan = board(&ask(
        vec![wall(144.0, 96.0, &[[40.0, 0.0, 32.0, 80.0]])],
        &[TWELVE],
        LayUp::Horizontal,
    ))
    .unwrap();
    holds(&plan);
    let mut lower: Vec<f64> = plan
        .pieces
        .iter()
        .filter(|piece| piece.y_in == 0.0)
        .map(|piece| piece.width_in)
        .collect();
    lower.sort_by(f64::total_cmp);
    assert_eq!(lower, [40.0, 72.0]);
    // No joint runs across the door: 144 - 32.
    assert!((plan.tapered_ft - 112.0 / 12.0).abs() < 1e-9);
    assert_eq!(plan.butt_ft, 0.0);
    assert!((plan.covered_ft2 - (96.0 - 32.0 * 80.0 / 144.0)).abs() < 1e-9);
}

#[test]
fn patches_come_from_offcuts() {
    // 10 ft of a 12 ft sheet are used in each of two: two rests of 2 by 4 ft hold four patches of 12 by 40 in.
    let mut of = ask(vec![wall(120.0, 96.0, &[])], &[TWELVE], LayUp::Horizontal);
    of.patches = vec![
        Patch {
            width_in: 12.0,
            height_in: 40.0,
        };
        4
    ];
    let plan = board(&of).unwrap();
    holds(&plan);
    assert_eq!(plan.sheet_count, 2);
    // Round each: 2 x (12 + 40) in.
    assert!((plan.patch_joints_ft - 4.0 * 104.0 / 12.0).abs() < 1e-9);
}

#[test]
fn a_ceiling_with_a_missing_corner() {
    let ceiling = Surface {
        kind: SurfaceKind::Ceiling,
        top: Edge::Inside,
        ..wall(144.0, 120.0, &[[96.0, 72.0, 48.0, 48.0]])
    };
    let plan = board(&ask(vec![ceiling], &usual::SHEETS, LayUp::Fewest)).unwrap();
    holds(&plan);
    assert_eq!(plan.ceilings_ft2, 120.0);
    assert_eq!(plan.covered_ft2, 104.0);
    // Its perimeter is that of its box.
    assert_eq!(plan.inside_ft, 44.0);
}

#[test]
fn screws_by_hand() {
    // Two sheets of 4 by 12 ft lying on studs at 16 in: 10 studs x 4 each.
    let plan = board(&ask(
        vec![wall(144.0, 96.0, &[])],
        &[TWELVE],
        LayUp::Horizontal,
    ))
    .unwrap();
    assert_eq!(plan.screws, 80);
}

#[test]
fn refusals() {
    let no = |surface| board(&ask(vec![surface], &[EIGHT], LayUp::Fewest)).unwrap_err();
    assert!(matches!(
        no(wall(48.0, 96.0, &[[0.0, 0.0, 49.0, 80.0]])),
        BoardRefusal::OpeningLarger {
            surface: 0,
            opening: 0,
            ..
        }
    ));
    assert!(matches!(
        no(wall(48.0, 96.0, &[[20.0, 0.0, 30.0, 80.0]])),
        BoardRefusal::OpeningBeyond { .. }
    ));
    assert!(matches!(
        no(wall(
            96.0,
            96.0,
            &[[0.0, 0.0, 30.0, 80.0], [29.0, 0.0, 9.0, 9.0]]
        )),
        BoardRefusal::OpeningsOverlap {
            first: 0,
            second: 1,
            ..
        }
    ));
    for bad in [f64::NAN, f64::INFINITY, 0.0, -1.0] {
        assert!(matches!(
            no(wall(bad, 96.0, &[])),
            BoardRefusal::NotAMeasure { .. }
        ));
        assert!(matches!(
            no(wall(96.0, bad, &[])),
            BoardRefusal::NotAMeasure { .. }
        ));
        let framing = BoardAsk {
            framing_in: bad,
            ..ask(vec![wall(96.0, 96.0, &[])], &[EIGHT], LayUp::Fewest)
        };
        assert!(board(&framing).is_err());
        let sheet = SheetSize {
            width_in: bad,
            length_in: 96.0,
        };
        assert!(board(&ask(vec![wall(96.0, 96.0, &[])], &[sheet], LayUp::Fewest)).is_err());
    }
    let none = ask(vec![], &[EIGHT], LayUp::Fewest);
    assert_eq!(board(&none).unwrap_err(), BoardRefusal::NothingToCover);
    let patch = BoardAsk {
        patches: vec![Patch {
            width_in: 50.0,
            height_in: 97.0,
        }],
        ..none
    };
    assert!(matches!(
        board(&patch).unwrap_err(),
        BoardRefusal::PatchLarger { patch: 0, .. }
    ));
    let much = vec![wall(1200.0, 1200.0, &[]); 4];
    assert!(matches!(
        board(&ask(much, &[EIGHT], LayUp::Fewest)).unwrap_err(),
        BoardRefusal::TooMuch { .. }
    ));
    // An opening that leaves nothing is no error: there is nothing to hang there.
    let open = wall(48.0, 96.0, &[[0.0, 0.0, 48.0, 96.0]]);
    let plan = board(&ask(vec![open], &[EIGHT], LayUp::Fewest)).unwrap();
    assert_eq!(
        (plan.sheet_count, plan.pieces.len(), plan.waste_percent),
        (0, 0, 0.0)
    );
}

fn opening() -> impl Strategy<Value = [f64; 4]> {
    (0_u32..40, 0_u32..60, 4_u32..60, 4_u32..90).prop_map(|all| {
        let (x, y, w, h) = all;
        [x, y, w, h].map(|n| f64::from(n) * 1.25)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Any walls: covered once, from sheets that hold their pieces.
    #[test]
    fn sheets_cover_the_walls(
        sides in prop::collection::vec((120_u32..800, 80_u32..500), 1..4),
        openings in prop::collection::vec((0_usize..4, opening()), 0..5),
        patches in prop::collection::vec((1_u32..48, 1_u32..48), 0..4),
        which in 0_usize..3, lay_up in 0_usize..3, ceiling: bool,
    ) {
        let mut surfaces: Vec<Surface> = sides
            .iter()
            .map(|(l, h)| wall(f64::from(*l) / 2.0, f64::from(*h) / 2.0, &[]))
            .collect();
        if ceiling {
            surfaces[0].kind = SurfaceKind::Ceiling;
        }
        for (on, [x, y, w, h]) in openings {
            let Some(surface) = surfaces.get_mut(on) else { continue };
            let clear = surface.openings.iter().all(|open| {
                shared([x, y, w, h], [open.x_in, open.y_in, open.width_in, open.height_in]) == 0.0
            });
            if clear && x + w <= surface.length_in && y + h <= surface.height_in {
                surface.openings.push(Cutout { x_in: x, y_in: y, width_in: w, height_in: h });
            }
        }
        let sheets: &[SheetSize] = [&usual::SHEETS[..], &[EIGHT], &[TWELVE, EIGHT]][which];
        let mut of = ask(
            surfaces,
            sheets,
            [LayUp::Horizontal, LayUp::Vertical, LayUp::Fewest][lay_up],
        );
        of.patches = patches
            .iter()
            .map(|(w, h)| Patch { width_in: f64::from(*w), height_in: f64::from(*h) })
            .collect();
        let plan = board(&of).unwrap();
        holds(&plan);
        for step in plan.working() {
            prop_assert!(step.result.value.is_finite());
        }
    }
}
