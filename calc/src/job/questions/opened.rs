//! Opened boxes: from what was entered to what [`open_box`](crate::wiring::open_box) is asked.
//!
//! - [`described`] the description behind an entry, with what was taken where nothing was entered;
//! - [`reading`] one reading, in its situation; [`readings`] all of an entry;
//! - [`usual_screws`] and [`usual_load`] what custom says of a cable's far end.

use serde::Serialize;

use super::wiring::AskProblem;
use super::{EntryProblem, Reader};
use crate::job::{
    BreakerEntry, FarLoadEntry, GoesKind, Job, MadeAt, OpenedBreakerEntry, OpenedCableEntry,
    OpenedDeviceEntry, OpenedDeviceKind, OpenedEntry, PanelEntry, SpotEntry, SpotKind, fields,
};
use crate::quantity::EntryRefusal;
use crate::wiring::conductor::{Metal, Size};
use crate::wiring::open_box::description::{
    At, BoxBreaker, Cable, Colour, Contact, Description, DescriptionRefusal, Device, DeviceKind,
    End, Fed, Goes, Load, Made, OnBreaker, PanelFacts, SwitchForm, check,
};
use crate::wiring::open_box::reading::Point;
use crate::wiring::panel::{BreakerForm, FedBy, leg_of};

mod answer;

mod far;

mod taken;

pub use answer::{NextIn, OpenedAnswer, OpenedAnswered, answer};
pub use far::{usual_load, usual_screws};
pub use taken::{ReadingTaken, proved, reading, readings};

/// The feeder taken for a panel that is fed by one: 60 ft of 6 AWG copper with a 10 AWG ground, a feeder of 60 A.
/// Source: common practice.
pub const USUAL_FEEDER: Fed = Fed::Feeder {
    size: Size::Awg6,
    ground_size: Size::Awg10,
    metal: Metal::Copper,
    length_ft: 60.0,
};

/// Something that was taken because nothing was entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Taken {
    /// 120 V from each leg to the neutral.
    LegVolts,
    /// [`USUAL_FEEDER`].
    Feeder,
    /// The usual length of a cable.
    Length {
        /// The cable.
        cable: u32,
    },
    /// 14 AWG.
    Size {
        /// The cable.
        cable: u32,
    },
}

/// A description that can be answered, and what was taken for it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Described {
    /// The description.
    pub description: Description,
    /// What was taken because nothing was entered.
    pub taken: Vec<Taken>,
}

/// The description behind an entry.
///
/// # Errors
/// Entries that are missing or refused, each by row and field; else what the description can't be answered for.
pub fn described(
    job: &Job,
    entry: &OpenedEntry,
) -> Result<Described, AskProblem<Vec<DescriptionRefusal>>> {
    let mut reader = Reader::default();
    let mut taken = Vec::new();
    let panel = panel(&mut reader, &job.panel, &mut taken);
    let breakers = entry
        .breakers
        .iter()
        .map(|breaker| one_breaker(&mut reader, &job.panel, entry, breaker))
        .collect();
    let cables = entry
        .cables
        .iter()
        .map(|cable| one_cable(&mut reader, cable, &mut taken))
        .collect();
    let devices = entry
        .devices
        .iter()
        .map(|device| one_device(&mut reader, device))
        .collect();
    let made = entry
        .made
        .iter()
        .filter_map(|made| {
            Some(Made {
                contact: contact(&made.contact)?,
                at: match made.at {
                    MadeAt::Loose => At::Loose,
                    MadeAt::Capped => At::Capped,
                    MadeAt::Joint => At::Joint(made.joint),
                    MadeAt::Screw => At::Terminal {
                        device: made.device,
                        terminal: made.terminal?,
                    },
                },
            })
        })
        .collect();
    let description = reader.finish(Description {
        panel,
        breakers,
        boxes: entry.boxes.iter().map(|b| b.id).collect(),
        cables,
        devices,
        made,
    })?;
    check(&description).map_err(AskProblem::Refused)?;
    Ok(Described { description, taken })
}

fn panel(reader: &mut Reader, entry: &PanelEntry, taken: &mut Vec<Taken>) -> PanelFacts {
    reader.no_row();
    let idle = &entry.supply.idle;
    let a_v = reader.may("a_neutral", &fields::MEASURED_VOLTS, &idle.a_neutral);
    let b_v = reader.may("b_neutral", &fields::MEASURED_VOLTS, &idle.b_neutral);
    if a_v.is_none() || b_v.is_none() {
        taken.push(Taken::LegVolts);
    }
    let fed = match entry.fed_by {
        FedBy::Service => Fed::Service,
        FedBy::Feeder | FedBy::FeederFromOtherBuilding => {
            taken.push(Taken::Feeder);
            USUAL_FEEDER
        }
    };
    PanelFacts {
        leg_a_v: a_v.unwrap_or(PanelFacts::USUAL.leg_a_v),
        leg_b_v: b_v.unwrap_or(PanelFacts::USUAL.leg_b_v),
        source_ohm: PanelFacts::USUAL.source_ohm,
        fed,
    }
}

fn one_breaker(
    reader: &mut Reader,
    panel: &PanelEntry,
    opened: &OpenedEntry,
    entry: &OpenedBreakerEntry,
) -> BoxBreaker {
    reader.row(entry.id);
    let in_panel = match entry.in_panel {
        None => None,
        Some(id) => {
            let found = panel.breaker(id);
            if found.is_none_or(|found| found.space == 0) {
                reader.missing("in_panel");
            }
            found
        }
    };
    match in_panel {
        Some(found) => BoxBreaker {
            id: entry.id,
            space: Some(found.space).filter(|space| *space > 0),
            legs: legs(found),
            rating_a: reader.need("rating", &fields::RATING, &found.rating),
            guessed: entry.guessed,
            tied_to: tied(panel, opened, found),
        },
        None => BoxBreaker {
            id: entry.id,
            space: None,
            legs: if entry.two_pole {
                vec![entry.leg, entry.leg.other()]
            } else {
                vec![entry.leg]
            },
            rating_a: reader.need("rating", &fields::RATING, &entry.rating),
            guessed: entry.guessed,
            tied_to: None,
        },
    }
}

fn legs(found: &BreakerEntry) -> Vec<crate::wiring::panel::Leg> {
    let leg = leg_of(found.space);
    match found.form {
        BreakerForm::TwoPole => vec![leg, leg.other()],
        BreakerForm::Single | BreakerForm::Tandem(_) => vec![leg],
    }
}

/// The breaker of the opened box that one of the panel is tied to, from either side.
fn tied(panel: &PanelEntry, opened: &OpenedEntry, found: &BreakerEntry) -> Option<u32> {
    let tied_to = |entry: &&OpenedBreakerEntry| {
        let Some(other) = entry.in_panel.and_then(|id| panel.breaker(id)) else {
            return false;
        };
        other.id != found.id && (found.tied_to == Some(other.id) || other.tied_to == Some(found.id))
    };
    opened.breakers.iter().find(tied_to).map(|entry| entry.id)
}

fn one_cable(reader: &mut Reader, entry: &OpenedCableEntry, taken: &mut Vec<Taken>) -> Cable {
    reader.row(entry.id);
    let length_ft = reader
        .may("length", &fields::RUN, &entry.length)
        .map(|inches| inches / 12.0);
    if length_ft.is_none() {
        taken.push(Taken::Length { cable: entry.id });
    }
    if entry.size.is_none() {
        taken.push(Taken::Size { cable: entry.id });
    }
    let goes = match entry.goes {
        GoesKind::NotKnown => Goes::NotKnown,
        GoesKind::Panel => {
            if entry.hots.is_empty() {
                reader.missing("hots");
            }
            let on = entry.hots.iter().map(|hot| OnBreaker {
                conductor: hot.conductor as usize,
                breaker: hot.breaker,
                pole: usize::from(hot.second_pole),
            });
            Goes::Panel(on.collect())
        }
        GoesKind::Loads => {
            if entry.loads.is_empty() {
                reader.missing("loads");
            }
            Goes::Loads(far::loads(reader, entry))
        }
        GoesKind::Switch => Goes::Switch(far::switch(reader, entry)),
        GoesKind::Box => match entry.to_box {
            Some(to) => Goes::Box(to),
            None => {
                reader.missing("to_box");
                Goes::NotKnown
            }
        },
    };
    Cable {
        id: entry.id,
        letter: entry.letter.clone(),
        from_box: entry.in_box,
        conductors: entry.conductors.clone(),
        size: entry.size.unwrap_or(Size::Awg14),
        metal: entry.metal,
        length_ft,
        goes,
    }
}

fn one_device(reader: &mut Reader, entry: &OpenedDeviceEntry) -> Device {
    reader.row(entry.id);
    let mut on_cord = |name, typed, kind| {
        reader
            .may(name, &fields::LOAD_WATTS, typed)
            .map(|watts| Load {
                kind,
                watts,
                volts: super::wiring::LEG_VOLTS,
            })
    };
    let kind = match entry.kind {
        OpenedDeviceKind::Switch => DeviceKind::Switch(SwitchForm::SinglePole),
        OpenedDeviceKind::ThreeWay => DeviceKind::Switch(SwitchForm::ThreeWay),
        OpenedDeviceKind::FourWay => DeviceKind::Switch(SwitchForm::FourWay),
        OpenedDeviceKind::Receptacle => DeviceKind::Receptacle {
            hot_tab: !entry.hot_tab_out,
            neutral_tab: !entry.neutral_tab_out,
            upper: on_cord("watts", &entry.watts, entry.load),
            lower: on_cord("lower_watts", &entry.lower_watts, entry.lower_load),
        },
        OpenedDeviceKind::Lampholder => {
            DeviceKind::Lampholder(on_cord("watts", &entry.watts, entry.load))
        }
    };
    Device {
        id: entry.id,
        in_box: entry.in_box,
        kind,
    }
}

/// What can be in a joint: an end or a screw.
pub fn contact(spot: &SpotEntry) -> Option<Contact> {
    match spot.what {
        SpotKind::End => Some(Contact::End(end(spot))),
        SpotKind::Screw => Some(Contact::Terminal {
            device: spot.device,
            terminal: spot.terminal?,
        }),
        SpotKind::Joint | SpotKind::NeutralBar | SpotKind::GroundBar | SpotKind::Pipe => None,
    }
}

/// What a probe can touch; nothing for a screw that was not named.
pub fn point(spot: &SpotEntry) -> Option<Point> {
    Some(match spot.what {
        SpotKind::End => Point::End(end(spot)),
        SpotKind::Screw => Point::Terminal {
            device: spot.device,
            terminal: spot.terminal?,
        },
        SpotKind::Joint => Point::Joint {
            in_box: spot.in_box,
            joint: spot.joint,
        },
        SpotKind::NeutralBar => Point::NeutralBar,
        SpotKind::GroundBar => Point::GroundBar,
        SpotKind::Pipe => Point::Pipe,
    })
}

/// The entry of a point.
pub fn spot(point: Point) -> SpotEntry {
    let what = |what| SpotEntry {
        what,
        ..SpotEntry::default()
    };
    match point {
        Point::End(end) => SpotEntry {
            cable: end.cable,
            conductor: end.conductor as u32,
            side: end.side,
            ..what(SpotKind::End)
        },
        Point::Terminal { device, terminal } => SpotEntry {
            device,
            terminal: Some(terminal),
            ..what(SpotKind::Screw)
        },
        Point::Joint { in_box, joint } => SpotEntry {
            in_box,
            joint,
            ..what(SpotKind::Joint)
        },
        Point::NeutralBar => what(SpotKind::NeutralBar),
        Point::GroundBar => what(SpotKind::GroundBar),
        Point::Pipe => what(SpotKind::Pipe),
    }
}

fn end(spot: &SpotEntry) -> End {
    End {
        cable: spot.cable,
        conductor: spot.conductor as usize,
        side: spot.side,
    }
}

impl OpenedEntry {
    /// The cable with an id.
    pub fn cable(&self, id: u32) -> Option<&OpenedCableEntry> {
        self.cables.iter().find(|cable| cable.id == id)
    }

    /// The cable with an id, to be changed.
    pub fn cable_mut(&mut self, id: u32) -> Option<&mut OpenedCableEntry> {
        self.cables.iter_mut().find(|cable| cable.id == id)
    }
}

/// A problem that says a row is gone.
pub(crate) const fn gone(name: &'static str, row: u32) -> EntryProblem {
    EntryProblem {
        name,
        row: Some(row),
        refusal: EntryRefusal::Blank,
    }
}

/// The watts of a load, a lamp where nothing else is known of it.
fn load_of(reader: &mut Reader, entry: &FarLoadEntry, volts: f64) -> Load {
    reader.row(entry.id);
    Load {
        kind: entry.kind,
        watts: reader.need("watts", &fields::LOAD_WATTS, &entry.watts),
        volts: reader
            .may("volts", &fields::VOLTS, &entry.volts)
            .unwrap_or(volts),
    }
}

/// Hots of a cable by their custom: black, red, then marked white.
fn hots(conductors: &[Colour]) -> Vec<usize> {
    let mut all = Vec::new();
    for colour in [Colour::Black, Colour::Red, Colour::MarkedWhite] {
        for (at, of) in conductors.iter().enumerate() {
            if *of == colour {
                all.push(at);
            }
        }
    }
    all
}
