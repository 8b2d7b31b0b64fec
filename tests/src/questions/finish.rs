//! Tile, its rules, its bed and its grout.

use calc::finish::grout::{GroutAsk, grout as grout_of};
use calc::finish::setting_bed::{
    MembraneAsk, MortarAsk, membrane as membrane_of, mortar as mortar_of,
};
use calc::finish::tile::rules::{Make, Place, RulesAsk, hold};
use calc::finish::tile::{Buying, Obstacle, Pattern, Start, TileAsk, layout};
use calc::floor::Point;
use calc::floor::opening::{Span, place};

use super::floor::outline;
use crate::given::{Answer, Given, No, answer, refused};

fn no_such(key: &str, given: &str) -> No {
    No::Case(format!("given.{key}: there is no {given:?}"))
}

/// `pattern`, and `offset` for a running bond.
fn pattern(given: &Given) -> Result<Pattern, No> {
    Ok(match given.text_or("pattern", "straight")? {
        "straight" => Pattern::Straight,
        "running-bond" => Pattern::RunningBond {
            offset: given.number("offset")?,
        },
        "diagonal" => Pattern::Diagonal,
        "herringbone" => Pattern::Herringbone { diagonal: false },
        "herringbone-diagonal" => Pattern::Herringbone { diagonal: true },
        other => return Err(no_such("pattern", other)),
    })
}

/// `start` by name, or `start_in`, a row of x and y.
fn start(given: &Given) -> Result<Start, No> {
    if given.get("start_in").is_some() {
        return match given.numbers("start_in")?[..] {
            [x_in, y_in] => Ok(Start::At(Point::new(x_in, y_in))),
            _ => Err(No::Case("given.start_in must be x and y".to_owned())),
        };
    }
    Ok(match given.text_or("start", "corner")? {
        "corner" => Start::Corner,
        "centred-on-tile" => Start::CentredOnTile,
        "centred-on-joint" => Start::CentredOnJoint,
        "best" => Start::Best,
        other => return Err(no_such("start", other)),
    })
}

fn rows_or_none<const N: usize>(given: &Given, key: &str) -> Result<Vec<[f64; N]>, No> {
    if given.get(key).is_some() {
        given.rows::<N>(key)
    } else {
        Ok(Vec::new())
    }
}

fn length_or(given: &Given, name: &str, otherwise_in: f64) -> Result<f64, No> {
    Ok(given.optional_length_in(name)?.unwrap_or(otherwise_in))
}

fn buying(given: &Given) -> Result<Buying, No> {
    Ok(Buying {
        kerf_in: length_or(given, "kerf", 0.0)?,
        may_turn: match given.text_or("may_turn", "yes")? {
            "yes" => true,
            "no" => false,
            other => return Err(no_such("may_turn", other)),
        },
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
        per_box: given.number_or("per_box", 1.0)? as u32,
    })
}

/// How tiles fall in a room.
pub fn tile_layout(given: &Given) -> Answer {
    let outline = outline(given)?;
    let obstacles = rows_or_none::<4>(given, "obstacles_in")?;
    let spans: Vec<Span> = rows_or_none::<3>(given, "openings")?
        .into_iter()
        .map(|[wall, from_in, width_in]| Span {
            wall: wall as usize,
            from_in,
            width_in,
        })
        .collect();
    let ask = TileAsk {
        openings: place(&outline, &spans).map_err(refused)?,
        outline,
        obstacles: obstacles
            .into_iter()
            .map(|[x_in, y_in, width_in, length_in]| Obstacle {
                corner: Point::new(x_in, y_in),
                width_in,
                length_in,
            })
            .collect(),
        width_in: given.length_in("tile_width")?,
        height_in: given.length_in("tile_height")?,
        joint_in: given.length_in("joint")?,
        edge_gap_in: length_or(given, "edge_gap", 0.0)?,
        pattern: pattern(given)?,
        start: start(given)?,
        least_share: given.number_or("least_share", 0.5)?,
        buying: buying(given)?,
    };
    answer(layout(&ask).map_err(refused)?)
}

/// What the rules say of a tile, its joint and its pattern.
pub fn tile_rules(given: &Given) -> Answer {
    let ask = RulesAsk {
        width_in: given.length_in("tile_width")?,
        height_in: given.length_in("tile_height")?,
        joint_in: given.length_in("joint")?,
        edge_gap_in: length_or(given, "edge_gap", 0.25)?,
        pattern: pattern(given)?,
        make: match given.text_or("make", "rectified")? {
            "rectified" => Make::Rectified,
            "calibrated" => Make::Calibrated,
            other => return Err(no_such("make", other)),
        },
        facial_variation_in: length_or(given, "facial_variation", 0.0)?,
        warpage_in: length_or(given, "warpage", 0.0)?,
        place: match given.text_or("place", "interior-dry")? {
            "interior-dry" => Place::InteriorDry,
            "interior-wet" => Place::InteriorWet,
            "sun-or-exterior" => Place::SunOrExterior,
            "raised-concrete" => Place::RaisedConcrete,
            other => return Err(no_such("place", other)),
        },
        room_ft: [
            length_or(given, "room_width", 120.0)? / 12.0,
            length_or(given, "room_length", 120.0)? / 12.0,
        ],
    };
    answer(hold(&ask).map_err(refused)?)
}

/// Bags of mortar for a tiled area.
pub fn mortar(given: &Given) -> Answer {
    let ask = MortarAsk {
        area_ft2: given.number("area_ft2")?,
        coverage_ft2_per_bag: given.number("coverage_ft2_per_bag")?,
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
    };
    answer(mortar_of(&ask).map_err(refused)?)
}

/// Rolls of membrane for a floor.
pub fn membrane(given: &Given) -> Answer {
    let ask = MembraneAsk {
        area_ft2: given.number("area_ft2")?,
        turned_up_ft: length_or(given, "turned_up", 0.0)? / 12.0,
        turn_up_in: length_or(given, "turn_up", 0.0)?,
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
        roll_ft2: given.number("roll_ft2")?,
    };
    answer(membrane_of(&ask).map_err(refused)?)
}

/// Grout for a tiled area.
pub fn grout(given: &Given) -> Answer {
    let ask = GroutAsk {
        area_ft2: given.number("area_ft2")?,
        length_in: given.length_in("tile_width")?,
        width_in: given.length_in("tile_height")?,
        joint_in: given.length_in("joint")?,
        depth_in: given.length_in("depth")?,
        powder_lb_per_ft3: given.number_or("powder_lb_per_ft3", 100.0)?,
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
        bag_lb: given.number_or("bag_lb", 10.0)?,
    };
    answer(grout_of(&ask).map_err(refused)?)
}
