//! How full a box is.

use calc::wiring::box_fill::{
    BoxSize, Conductors, Contents, EnteringCable, Vessel, Yoke, box_fill as fill,
};
use calc::wiring::tables::BoxFamily;

use super::*;

pub fn box_fill(given: &Given) -> Answer {
    let edition = edition(given)?;
    let contents = contents(given)?;
    let filled = fill(&vessel(given)?, &contents, edition).map_err(refused)?;
    // The smallest box of each family by its trade size.
    let smallest: Map<String, Value> = filled
        .smallest
        .iter()
        .map(|of| {
            let family = calc::saved::Coded::word(of.family).to_owned();
            (family, json!(of.smallest.map(|row| row.trade_size_in)))
        })
        .collect();
    let mut shown = answer(&filled)?;
    shown["smallest"] = Value::Object(smallest);
    Ok(shown)
}

fn vessel(given: &Given) -> Result<Vessel, No> {
    let size = if given.get("volume_in3").is_some() {
        BoxSize::Marked {
            volume_in3: given.number("volume_in3")?,
        }
    } else if given.get("inside_in").is_some() {
        let [width_in, height_in, depth_in] = given
            .numbers("inside_in")?
            .try_into()
            .map_err(|_| No::Case("given.inside_in must be width, height and depth".into()))?;
        BoxSize::Measured {
            width_in,
            height_in,
            depth_in,
        }
    } else {
        BoxSize::Listed {
            family: word::<BoxFamily>(given, "family")?,
            trade_size_in: given.text("trade_size")?.to_owned(),
            gangs: whole(given, "gangs", 1)?,
        }
    };
    let rings_in3 = match given.get("rings_in3") {
        Some(_) => given.numbers("rings_in3")?,
        None => Vec::new(),
    };
    Ok(Vessel {
        size,
        rings_in3,
        barriers: Vec::new(),
    })
}

fn contents(given: &Given) -> Result<Contents, No> {
    Ok(Contents {
        cables: cables(given)?,
        conductors: conductors(given, "conductors")?,
        passing: conductors(given, "passing")?,
        looped: conductors(given, "looped")?,
        fixture_wires: conductors(given, "fixture_wires")?,
        canopy_wires: conductors(given, "canopy_wires")?,
        grounds: conductors(given, "grounds")?,
        isolated_grounds: conductors(given, "isolated_grounds")?,
        internal_clamps: flag(given, "clamps")?.unwrap_or(false),
        support_fittings: whole(given, "support_fittings", 0)?,
        yokes: devices(given)?,
        terminal_blocks: texts(given, "terminal_blocks")?
            .into_iter()
            .map(size_of)
            .collect::<Result<_, _>>()?,
        pigtails: whole(given, "pigtails", 0)?,
    })
}

fn texts<'a>(given: &Given<'a>, key: &str) -> Result<Vec<&'a str>, No> {
    let wrong = || No::Case(format!("given.{key} must be a list of texts"));
    let Some(list) = given.get(key) else {
        return Ok(Vec::new());
    };
    list.as_array()
        .ok_or_else(wrong)?
        .iter()
        .map(|text| text.as_str().ok_or_else(wrong))
        .collect()
}

/// `14-2` with a ground of its size, `14-2 without ground`.
fn cables(given: &Given) -> Result<Vec<EnteringCable>, No> {
    let cable = |text: &str| {
        let bare = text.strip_suffix("without ground");
        let (size, insulated) = bare
            .unwrap_or(text)
            .trim()
            .rsplit_once('-')
            .ok_or_else(|| No::Case(format!("given.cables: {text:?} is not like 14-2")))?;
        let size = size_of(size)?;
        Ok(EnteringCable {
            size,
            insulated: insulated
                .parse()
                .map_err(|_| No::Case(format!("given.cables: {text:?} is not like 14-2")))?,
            ground: bare.is_none().then_some(size),
        })
    };
    texts(given, "cables")?.into_iter().map(cable).collect()
}

/// A table of how many of each size: `{ 14 = 4, 12 = 2 }`.
fn conductors(given: &Given, key: &str) -> Result<Vec<Conductors>, No> {
    let wrong = || No::Case(format!("given.{key} must be a table of counts by size"));
    let Some(table) = given.get(key) else {
        return Ok(Vec::new());
    };
    table
        .as_object()
        .ok_or_else(wrong)?
        .iter()
        .map(|(size, count)| {
            let count = count.as_u64().and_then(|count| u32::try_from(count).ok());
            Ok(Conductors {
                size: size_of(size)?,
                count: count.ok_or_else(wrong)?,
            })
        })
        .collect()
}

/// `12` for a device one gang wide on 12 AWG, `6 x 2` for one two gangs wide.
fn devices(given: &Given) -> Result<Vec<Yoke>, No> {
    let device = |text: &str| {
        let (size, gangs) = text.split_once(" x ").unwrap_or((text, "1"));
        Ok(Yoke {
            size: size_of(size)?,
            gangs: gangs
                .parse()
                .map_err(|_| No::Case(format!("given.devices: {text:?} is not like 6 x 2")))?,
        })
    };
    texts(given, "devices")?.into_iter().map(device).collect()
}
