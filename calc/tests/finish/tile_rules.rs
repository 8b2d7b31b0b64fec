//! The rules for joints, offsets, lippage and movement joints, against the reference rows.

use calc::finish::tile::Pattern;
use calc::finish::tile::rules::{
    Make, Place, RuleUnit, RulesAsk, RulesRefusal, Status, TILE_RULES, hold, most_lippage_in,
    movement_lines, rule, usual_allowance_percent,
};

use crate::tile_rows::{number, rows};

/// The table's rows that stand in the reference, in its order; the two lippage rows are held against its worked example.
#[test]
fn every_row_of_the_table_is_the_reference() {
    let ours: Vec<_> = TILE_RULES
        .iter()
        .filter(|rule| !rule.id.starts_with("lippage"))
        .collect();
    let reference = rows("tile_rules.csv");
    assert_eq!(ours.len(), reference.len());
    for (rule, row) in ours.iter().zip(&reference) {
        let cell = |name: &str| (!row[name].is_empty()).then(|| number(&row[name]));
        assert_eq!(
            (rule.low, rule.high),
            (cell("low"), cell("high")),
            "{row:?}"
        );
        let unit = match rule.unit {
            RuleUnit::In => "in",
            RuleUnit::Ft => "ft each way",
            RuleUnit::Percent => "percent",
            RuleUnit::Times => "times",
            RuleUnit::Required => "required",
        };
        assert!(row["unit"].starts_with(unit), "{row:?}");
        let status = match rule.status {
            Status::Verified => "verified (two",
            Status::VerifiedOnce => "verified (one",
            Status::FromMemory => "from memory",
            Status::CommonPractice => "common practice",
        };
        assert!(row["status"].starts_with(status), "{row:?}");
        let body = rule.source.split([' ', ',']).next().unwrap();
        assert!(row["source"].starts_with(body), "{row:?}");
    }
}

fn ask() -> RulesAsk {
    RulesAsk {
        width_in: 24.0,
        height_in: 12.0,
        joint_in: 0.125,
        edge_gap_in: 0.25,
        pattern: Pattern::RunningBond { offset: 1.0 / 3.0 },
        make: Make::Rectified,
        facial_variation_in: 0.0,
        warpage_in: 0.0,
        place: Place::InteriorDry,
        room_ft: [30.0, 22.0],
    }
}

fn failing(ask: &RulesAsk) -> Vec<&'static str> {
    hold(ask)
        .unwrap()
        .verdicts
        .iter()
        .filter(|verdict| !verdict.within)
        .map(|verdict| verdict.rule.id)
        .collect()
}

/// ANSI A108.02-2017 4.3.8, its own example: facial variation 1/16 in asks for a joint of 3/16 in; 1/32 in for 3/32 in.
#[test]
fn the_joint_is_three_times_the_variation() {
    for (variation, joint) in [
        (0.0625, 0.1875),
        (0.03125, 0.09375),
        (0.0, 0.0625),
        (0.01, 0.0625),
    ] {
        let answer = hold(&RulesAsk {
            pattern: Pattern::Straight,
            facial_variation_in: variation,
            ..ask()
        });
        assert_eq!(answer.unwrap().least_joint_in, joint);
    }
}

/// ANSI A108.02 4.3.8: running bond with a side over 15 in: 1/8 in rectified, 3/16 in calibrated, and the warpage.
#[test]
fn running_bond_of_large_tile() {
    assert!(failing(&ask()).is_empty());
    let half = Pattern::RunningBond { offset: 0.5 };
    assert_eq!(
        failing(&RulesAsk {
            pattern: half,
            ..ask()
        }),
        ["offset_most"]
    );
    let stair = Pattern::RunningBond { offset: 2.0 / 3.0 };
    assert!(
        failing(&RulesAsk {
            pattern: stair,
            ..ask()
        })
        .is_empty()
    );
    assert_eq!(
        failing(&RulesAsk {
            make: Make::Calibrated,
            ..ask()
        }),
        ["joint_offset_calibrated"]
    );
    let warped = RulesAsk {
        warpage_in: 0.03125,
        ..ask()
    };
    assert_eq!(failing(&warped), ["joint_offset_rectified"]);
    assert_eq!(hold(&warped).unwrap().least_joint_in, 0.15625);
    // Small tile may be shifted by half; so may a side of exactly 15 in.
    let small = RulesAsk {
        width_in: 15.0,
        joint_in: 0.0625,
        pattern: half,
        ..ask()
    };
    assert!(failing(&small).is_empty());
}

#[test]
fn too_narrow_a_joint_and_too_small_a_gap() {
    let tight = RulesAsk {
        joint_in: 0.03,
        edge_gap_in: 0.0,
        pattern: Pattern::Straight,
        ..ask()
    };
    assert_eq!(failing(&tight), ["joint_least", "perimeter_gap"]);
}

/// ANSI A108.02 4.3.7, worked: 1/8 in joint, 1/32 in warpage: 1/16 in.
#[test]
fn lippage() {
    assert_eq!(most_lippage_in(0.125, 0.03125), 0.0625);
    let row = |id| rule(id).unwrap().high.unwrap();
    assert_eq!(most_lippage_in(0.125, 0.0), row("lippage_narrow_joint"));
    assert_eq!(most_lippage_in(0.25, 0.0), row("lippage_wide_joint"));
}

/// TCNA EJ171, worked: 30 x 22 ft at 25 ft: one line across the 30 ft side, none across the other.
#[test]
fn movement_joints() {
    assert_eq!(
        (movement_lines(30.0, 25.0), movement_lines(22.0, 25.0)),
        (1, 0)
    );
    assert_eq!(
        (
            movement_lines(25.0, 25.0),
            movement_lines(50.0, 25.0),
            movement_lines(50.1, 25.0)
        ),
        (0, 1, 2)
    );
    let answer = hold(&ask()).unwrap();
    assert_eq!(
        (answer.movement.least_lines, answer.movement.most_lines),
        ([1, 0], [1, 1])
    );
    let sun = hold(&RulesAsk {
        place: Place::SunOrExterior,
        ..ask()
    })
    .unwrap();
    assert_eq!(
        (sun.movement.least_lines, sun.movement.most_lines),
        ([2, 1], [3, 2])
    );
    assert_eq!(
        (answer.least_contact_percent, sun.least_contact_percent),
        (80.0, 95.0)
    );
    let ids = [
        Place::InteriorDry,
        Place::InteriorWet,
        Place::SunOrExterior,
        Place::RaisedConcrete,
    ]
    .map(|place| hold(&RulesAsk { place, ..ask() }).unwrap().movement.rule.id);
    assert_eq!(
        ids,
        [
            "movement_interior",
            "movement_sun_or_moisture",
            "movement_sun_or_moisture",
            "movement_raised_concrete"
        ]
    );
}

#[test]
fn allowances_are_those_of_the_table() {
    let low = |id| rule(id).unwrap().low.unwrap();
    assert_eq!(
        usual_allowance_percent(Pattern::Straight),
        low("allowance_straight")
    );
    assert_eq!(
        usual_allowance_percent(Pattern::RunningBond { offset: 0.5 }),
        low("allowance_running_bond")
    );
    assert_eq!(
        usual_allowance_percent(Pattern::Diagonal),
        low("allowance_diagonal")
    );
    assert_eq!(
        calc::finish::tile::ask::USUAL_LEAST_SHARE * 100.0,
        low("border_cut")
    );
}

#[test]
fn entries_that_are_none() {
    let no_size = hold(&RulesAsk {
        width_in: 0.0,
        ..ask()
    });
    assert_eq!(no_size, Err(RulesRefusal::NoSize { given: 0.0 }));
    let joint = hold(&RulesAsk {
        joint_in: -1.0,
        ..ask()
    });
    assert_eq!(joint, Err(RulesRefusal::NotAnAmount { given: -1.0 }));
    let offset = hold(&RulesAsk {
        pattern: Pattern::RunningBond { offset: f64::NAN },
        ..ask()
    });
    assert!(offset.is_err());
}
