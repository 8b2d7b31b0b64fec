//! How full a box is.

use serde::Serialize;

use super::AskProblem;
use crate::job::questions::{EntryProblem, Reader};
use crate::job::{BarrierKind, BoxBy, BoxEntry, CableGround, CodeEdition, ConductorUse, fields};
use crate::wiring::box_fill::{
    Barrier, BoxFill, BoxRefusal, BoxSize, Conductors, Contents, EnteringCable, Vessel, Yoke,
    box_fill,
};
use crate::wiring::conductor::Size;

/// A box and its contents, as they are asked about.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxAsk {
    /// The box.
    pub vessel: Vessel,
    /// What is in it.
    pub contents: Contents,
}

/// How full a box is, what is left, and what else fits.
///
/// # Errors
/// Every entry that is missing or refused, by its row; then what keeps the box from being answered.
pub fn box_fill_of(
    entry: &BoxEntry,
    edition: CodeEdition,
) -> Result<BoxFill, AskProblem<BoxRefusal>> {
    let ask = box_ask(entry)?;
    box_fill(&ask.vessel, &ask.contents, edition).map_err(AskProblem::Refused)
}

/// The box and its contents.
///
/// # Errors
/// Every entry that is missing or refused: of the box by its own id (none in the quick sum), of its rows by theirs.
pub fn box_ask(entry: &BoxEntry) -> Result<BoxAsk, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    own_row(&mut reader, entry);
    let size = size(&mut reader, entry);
    let rings_in3 = entry
        .rings
        .iter()
        .map(|ring| {
            let reader = reader.row(ring.id);
            reader.need("volume", &fields::BOX_VOLUME, &ring.volume)
        })
        .collect();
    let barriers = entry
        .barriers
        .iter()
        .map(|barrier| match barrier.kind {
            BarrierKind::Metal => Barrier::Metal,
            BarrierKind::Nonmetallic => Barrier::Nonmetallic,
            BarrierKind::Marked => Barrier::Marked {
                volume_in3: reader.row(barrier.id).need(
                    "volume",
                    &fields::BOX_VOLUME,
                    &barrier.volume,
                ),
            },
        })
        .collect();
    let contents = contents(&mut reader, entry);
    reader.finish(BoxAsk {
        vessel: Vessel {
            size,
            rings_in3,
            barriers,
        },
        contents,
    })
}

/// The box's own entries go by its id; the quick sum's box has none.
fn own_row(reader: &mut Reader, entry: &BoxEntry) {
    if entry.id == 0 {
        reader.no_row();
    } else {
        reader.row(entry.id);
    }
}

fn size(reader: &mut Reader, entry: &BoxEntry) -> BoxSize {
    match entry.by {
        BoxBy::Listed => {
            if entry.trade_size.is_empty() {
                reader.missing("trade_size");
            }
            BoxSize::Listed {
                family: entry.family,
                trade_size_in: entry.trade_size.clone(),
                gangs: reader.count_or("gangs", &fields::GANGS, &entry.gangs, 1),
            }
        }
        BoxBy::Marked => BoxSize::Marked {
            volume_in3: reader.need("marked", &fields::BOX_VOLUME, &entry.marked),
        },
        BoxBy::Measured => BoxSize::Measured {
            width_in: reader.need("width", &fields::BOX_SIDE, &entry.width),
            height_in: reader.need("height", &fields::BOX_SIDE, &entry.height),
            depth_in: reader.need("depth", &fields::BOX_SIDE, &entry.depth),
        },
    }
}

/// The ground that a cable is made with: of the size of the others, but 10 AWG with 8 and 6 AWG (Table 250.122: up to
/// 60 A; common practice).
const fn usual_ground(size: Size) -> Size {
    match size {
        Size::Awg8 | Size::Awg6 => Size::Awg10,
        other => other,
    }
}

fn contents(reader: &mut Reader, entry: &BoxEntry) -> Contents {
    own_row(reader, entry);
    let mut contents = Contents {
        internal_clamps: entry.internal_clamps,
        support_fittings: reader.count_or(
            "support_fittings",
            &fields::IN_BOX,
            &entry.support_fittings,
            0,
        ),
        pigtails: reader.count_or("pigtails", &fields::IN_BOX, &entry.pigtails, 0),
        ..Contents::default()
    };
    for cable in &entry.cables {
        reader.row(cable.id);
        let size = reader.size("size", cable.size);
        contents.cables.push(EnteringCable {
            size,
            insulated: reader.count("insulated", &fields::IN_BOX, &cable.insulated),
            ground: match cable.ground {
                CableGround::Same => Some(usual_ground(size)),
                CableGround::None => None,
                CableGround::Other => Some(reader.size("ground_size", cable.ground_size)),
            },
        });
    }
    for group in &entry.conductors {
        reader.row(group.id);
        let conductors = Conductors {
            size: reader.size("size", group.size),
            count: reader.count("count", &fields::IN_BOX, &group.count),
        };
        match group.what {
            ConductorUse::Ending => &mut contents.conductors,
            ConductorUse::Passing => &mut contents.passing,
            ConductorUse::Looped => &mut contents.looped,
            ConductorUse::Fixture => &mut contents.fixture_wires,
            ConductorUse::Canopy => &mut contents.canopy_wires,
            ConductorUse::Ground => &mut contents.grounds,
            ConductorUse::IsolatedGround => &mut contents.isolated_grounds,
        }
        .push(conductors);
    }
    for device in &entry.devices {
        reader.row(device.id);
        contents.yokes.push(Yoke {
            size: reader.size("size", device.size),
            gangs: reader.count_or("gangs", &fields::GANGS, &device.gangs, 1),
        });
    }
    for block in &entry.terminal_blocks {
        let size = reader.row(block.id).size("size", block.size);
        contents.terminal_blocks.push(size);
    }
    contents
}
