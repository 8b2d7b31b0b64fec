//! Board, compound, paint and trim.

use calc::finish::board::{
    BoardAsk, Cutout, Edge, LayUp, Patch, SheetSize, Surface, SurfaceKind, board, screws::in_piece,
    sheets_by_area,
};
use calc::finish::compound::{CompoundAsk, compound};
use calc::finish::paint::{Can, PaintAsk, PaintOn, PaintSurface, paint, theoretical_ft2_per_gal};
use calc::finish::trim::stock::{CutAsk, cut};
use calc::finish::trim::{Break, BreakKind, TrimAsk, TrimWall, trim};
use serde_json::json;

use crate::given::{Answer, Given, No, answer, refused};

/// A whole number that is not negative.
fn whole(key: &str, number: f64) -> Result<u32, No> {
    if number.fract() == 0.0 && (0.0..=1e9).contains(&number) {
        Ok(number as u32)
    } else {
        Err(No::Case(format!("given.{key} must be a whole number")))
    }
}

/// Rows, or none where the key is missing.
fn rows_or_none<const N: usize>(given: &Given, key: &str) -> Result<Vec<[f64; N]>, No> {
    match given.get(key) {
        None => Ok(Vec::new()),
        Some(_) => given.rows(key),
    }
}

fn numbers_or_none(given: &Given, key: &str) -> Result<Vec<f64>, No> {
    match given.get(key) {
        None => Ok(Vec::new()),
        Some(_) => given.numbers(key),
    }
}

/// What a text stands for.
fn one_of<T: Copy>(key: &str, text: &str, of: &[(&str, T)]) -> Result<T, No> {
    let found = of.iter().find(|(name, _)| *name == text);
    found
        .map(|(_, value)| *value)
        .ok_or_else(|| No::Case(format!("given.{key}: there is no {text:?}")))
}

pub fn layout(given: &Given) -> Answer {
    let surface = |kind, [length_in, height_in]: [f64; 2]| Surface {
        kind,
        length_in,
        height_in,
        openings: Vec::new(),
        end: Edge::Inside,
        top: Edge::Inside,
    };
    let mut surfaces: Vec<Surface> = rows_or_none(given, "walls_in")?
        .into_iter()
        .map(|sides| surface(SurfaceKind::Wall, sides))
        .collect();
    for outside in numbers_or_none(given, "outside_at")? {
        let wall = whole("outside_at", outside)? as usize;
        let wrong = || No::Case(format!("given.outside_at: there is no wall {wall}"));
        surfaces.get_mut(wall).ok_or_else(wrong)?.end = Edge::Outside;
    }
    let ceilings = rows_or_none(given, "ceilings_in")?;
    surfaces.extend(
        ceilings
            .into_iter()
            .map(|sides| surface(SurfaceKind::Ceiling, sides)),
    );
    for [on, x_in, y_in, width_in, height_in] in rows_or_none(given, "openings_in")? {
        let on = whole("openings_in", on)? as usize;
        let wrong = || No::Case(format!("given.openings_in: there is no surface {on}"));
        surfaces
            .get_mut(on)
            .ok_or_else(wrong)?
            .openings
            .push(Cutout {
                x_in,
                y_in,
                width_in,
                height_in,
            });
    }
    let ask = BoardAsk {
        surfaces,
        patches: rows_or_none(given, "patches_in")?
            .into_iter()
            .map(|[width_in, height_in]| Patch {
                width_in,
                height_in,
            })
            .collect(),
        sheets: rows_or_none(given, "sheets_in")?
            .into_iter()
            .map(|[width_in, length_in]| SheetSize {
                width_in,
                length_in,
            })
            .collect(),
        lay_up: one_of(
            "lay_up",
            given.text_or("lay_up", "fewest")?,
            &[
                ("horizontal", LayUp::Horizontal),
                ("vertical", LayUp::Vertical),
                ("fewest", LayUp::Fewest),
            ],
        )?,
        framing_in: given.number_or("framing_in", 16.0)?,
    };
    answer(board(&ask).map_err(refused)?)
}

pub fn by_area(given: &Given) -> Answer {
    let sheet = SheetSize {
        width_in: given.length_in("sheet_width")?,
        length_in: given.length_in("sheet_length")?,
    };
    let waste = given.number_or("waste_percent", 0.0)?;
    let sheets = sheets_by_area(given.number("area_ft2")?, waste, sheet).map_err(refused)?;
    Ok(json!({"sheets": sheets}))
}

pub fn screws(given: &Given) -> Answer {
    let on = one_of(
        "on",
        given.text_or("on", "wall")?,
        &[
            ("wall", SurfaceKind::Wall),
            ("ceiling", SurfaceKind::Ceiling),
        ],
    )?;
    let (across, along) = (given.length_in("across")?, given.length_in("along")?);
    let screws = in_piece(on, across, along, given.length_in("framing")?);
    Ok(json!({"screws": screws}))
}

pub fn joint_treatment(given: &Given) -> Answer {
    let ask = CompoundAsk {
        board_ft2: given.number("board_ft2")?,
        taped_ft: given.number("taped_ft")?,
        outside_ft: numbers_or_none(given, "outside_ft")?,
        level: u8::try_from(whole("level", given.number("level")?)?).unwrap_or(u8::MAX),
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
        pail_gal: given.number("pail_gal")?,
        bead_in: numbers_or_none(given, "bead_in")?,
    };
    answer(compound(&ask).map_err(refused)?)
}

pub fn cans(given: &Given) -> Answer {
    let mut offer = Vec::new();
    for quarts in given.numbers("cans_qt")? {
        offer.push(Can {
            quarts: whole("cans_qt", quarts)?,
            price_cents: None,
        });
    }
    for (can, cents) in offer
        .iter_mut()
        .zip(numbers_or_none(given, "prices_cents")?)
    {
        can.price_cents = Some(whole("prices_cents", cents)?);
    }
    let ask = PaintAsk {
        surfaces: vec![PaintSurface {
            on: PaintOn::Walls,
            area_ft2: given.number("area_ft2")?,
            openings_ft2: given.number_or("openings_ft2", 0.0)?,
        }],
        coats: whole("coats", given.number("coats")?)?,
        spread_ft2_per_gal: given.number("spread_ft2_per_gal")?,
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
        cans: offer,
    };
    answer(paint(&ask).map_err(refused)?)
}

pub fn spread(given: &Given) -> Answer {
    let (solids, film) = (given.number("solids_percent")?, given.number("dry_mils")?);
    let spread = theoretical_ft2_per_gal(solids, film).map_err(refused)?;
    Ok(json!({"spread_ft2_per_gal": spread}))
}

pub fn pieces(given: &Given) -> Answer {
    let mut walls: Vec<TrimWall> = given
        .lengths_in("walls")?
        .into_iter()
        .map(|length_in| TrimWall {
            length_in,
            breaks: Vec::new(),
        })
        .collect();
    let casing_in = given.optional_length_in("casing")?.unwrap_or(0.0);
    for (key, code) in [("doorways_in", 0), ("windows_in", 1), ("built_ins_in", 2)] {
        for [on, at_in, width_in, height_in] in rows_or_none(given, key)? {
            let on = whole(key, on)? as usize;
            let wrong = || No::Case(format!("given.{key}: there is no wall {on}"));
            walls.get_mut(on).ok_or_else(wrong)?.breaks.push(Break {
                at_in,
                width_in,
                kind: match code {
                    0 => BreakKind::Doorway { height_in },
                    1 => BreakKind::Window { height_in },
                    // In the place of its height: whether it has a toe strip of its own.
                    _ => BreakKind::BuiltIn {
                        own_toe_strip: height_in != 0.0,
                    },
                },
                casing_in: if code == 2 { 0.0 } else { casing_in },
                both_faces: false,
            });
        }
    }
    let ask = TrimAsk {
        walls,
        reveal_in: given.optional_length_in("reveal")?.unwrap_or(0.0),
        extra_in: given.optional_length_in("extra")?.unwrap_or(0.0),
        allowance_percent: given.number_or("allowance_percent", 0.0)?,
        splice_at_in: given.optional_length_in("splice_at")?,
    };
    answer(trim(&ask).map_err(refused)?)
}

pub fn cutting_list(given: &Given) -> Answer {
    let mut pieces_in = given.lengths_in("pieces")?;
    // Each so many times.
    if given.get("times").is_some() {
        let times = given.numbers("times")?;
        if times.len() != pieces_in.len() {
            return Err(No::Case("given.times must have one number a piece".into()));
        }
        let mut all = Vec::new();
        for (piece_in, times) in pieces_in.iter().zip(times) {
            all.extend(vec![*piece_in; whole("times", times)? as usize]);
        }
        pieces_in = all;
    }
    let ask = CutAsk {
        pieces_in,
        stock_in: given.lengths_in("stock")?,
        kerf_in: given.optional_length_in("kerf")?.unwrap_or(0.0),
    };
    let list = cut(&ask).map_err(refused)?;
    let sticks = list.bars.len();
    let mut list = serde_json::to_value(list).map_err(|e| No::Case(e.to_string()))?;
    if let Some(fields) = list.as_object_mut() {
        fields.insert("sticks".into(), sticks.into());
    }
    Ok(list)
}
