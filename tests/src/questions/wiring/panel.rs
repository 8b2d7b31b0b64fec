//! Panel, supply, circuits and neutrals.

use calc::job::questions::wiring::circuit::circuit_of;
use calc::job::questions::wiring::panel::{PanelTrouble, panel_view};
use calc::job::{CircuitEntry, Job, PanelEntry, Units};
use calc::wiring::circuit::Verdict;
use calc::wiring::neutral::{Neutral, Returning, neutral_current, open_neutral as opened};
use calc::wiring::supply::{Supply, SupplyReadings, judge};

use super::*;

/// A job with the wiring that is given, as a job file has it.
fn job(given: &Given) -> Result<Job, No> {
    let mut job = Job::new("case", "", "2026-03-02T08:00:00Z", Units::FeetInches);
    job.code_edition = edition(given)?;
    if let Some(panel) = given.get("panel") {
        job.panel = read("panel", panel.clone())?;
    }
    if let Some(circuits) = given.get("circuits") {
        job.circuits = read("circuits", circuits.clone())?;
    }
    if let Some(boxes) = given.get("boxes") {
        job.boxes = read("boxes", boxes.clone())?;
    }
    Ok(job)
}

/// A panel as a job file has it; refused by the first trouble of a breaker.
pub fn panel(given: &Given) -> Answer {
    let mut job = Job::new("case", "", "2026-03-02T08:00:00Z", Units::FeetInches);
    job.code_edition = edition(given)?;
    job.panel = document::<PanelEntry>(
        given,
        &[
            "spaces",
            "rating",
            "mounting",
            "fed_by",
            "feeder_device",
            "main",
            "main_rating",
            "bars",
            "most_circuits",
            "tandems",
            "tandem_spaces",
            "breakers",
        ],
    )?;
    let view = panel_view(&job).map_err(asked)?;
    match view.troubles.first() {
        Some(PanelTrouble::Entry(problem)) => return Err(entry(problem)),
        Some(PanelTrouble::Place { what, .. }) => return Err(refused(what)),
        None => {}
    }
    // Each space with its leg and what is in it, by its number.
    let spaces: Map<String, Value> = view
        .rows
        .iter()
        .enumerate()
        .flat_map(|(row, of)| [(row, 0, &of.left), (row, 1, &of.right)])
        .filter_map(|(row, column, space)| {
            let space = space.as_ref()?;
            let numbers: Vec<&str> = space.occupants.iter().map(|o| &*o.number).collect();
            let place = json!({"leg": space.leg, "row": row, "column": column, "holds": numbers});
            Some((space.space.to_string(), place))
        })
        .collect();
    let mut shown = answer(&view.layout)?;
    shown["spaces"] = Value::Object(spaces);
    shown["findings"] = Value::Array(names(&shown["findings"]));
    Ok(shown)
}

/// The names of enum values: `"a"` and `{"b": {...}}` are `a` and `b`.
fn names(values: &Value) -> Vec<Value> {
    let name = |value: &Value| match value {
        Value::Object(fields) => fields
            .keys()
            .next()
            .cloned()
            .map_or(Value::Null, Value::from),
        other => other.clone(),
    };
    values.as_array().into_iter().flatten().map(name).collect()
}

fn readings(given: &Given, prefix: &str) -> Result<SupplyReadings, No> {
    let key = |name: &str| format!("{prefix}{name}");
    Ok(SupplyReadings {
        across_v: given.number(&key("across_v"))?,
        a_neutral_v: given.number(&key("a_neutral_v"))?,
        b_neutral_v: given.number(&key("b_neutral_v"))?,
        a_ground_v: given.optional_number(&key("a_ground_v"))?,
        b_ground_v: given.optional_number(&key("b_ground_v"))?,
    })
}

pub fn supply(given: &Given) -> Answer {
    let loaded = match given.get("loaded_across_v") {
        Some(_) => Some(readings(given, "loaded_")?),
        None => None,
    };
    let supply = Supply {
        place: word_or(given, "place", "service")?,
        idle: readings(given, "")?,
        loaded,
    };
    let judged = judge(&supply).map_err(refused)?;
    let standings: Vec<_> = judged.judged.iter().map(|judged| judged.standing).collect();
    let mut shown = answer(&judged)?;
    shown["urgency"] = json!(judged.findings.first().map(|finding| finding.urgency()));
    shown["finding_names"] = Value::Array(names(&shown["findings"]));
    shown["standings"] = json!(standings);
    Ok(shown)
}

/// A circuit of a panel, both as a job file has them.
pub fn circuit(given: &Given) -> Answer {
    let job = job(given)?;
    let id = whole(given, "circuit", 0)?;
    let entry: &CircuitEntry = job
        .circuit(id)
        .ok_or_else(|| No::Case(format!("given.circuit: there is no circuit {id}")))?;
    let view = circuit_of(&job, entry).map_err(asked)?;
    let mut shown = answer(&view)?;
    for (leg, shown) in view
        .legs
        .iter()
        .zip(shown["legs"].as_array_mut().into_iter().flatten())
    {
        shown["answer"]["verdicts"] = by_check(&leg.answer.verdicts)?;
    }
    shown["fails"] = json!(view.fails());
    Ok(shown)
}

/// Verdicts by their check: `plug_load`, `box_fill 12`, `neutral same_leg`.
fn by_check(verdicts: &[Verdict]) -> Answer {
    let mut all = Map::new();
    for verdict in verdicts {
        let shown = answer(verdict)?;
        let name = match &shown["check"] {
            Value::String(name) => name.clone(),
            Value::Object(fields) => match fields.iter().next() {
                Some((name, Value::Object(inner))) => {
                    match (inner.get("id"), inner.keys().next()) {
                        (Some(id), _) => format!("{name} {id}"),
                        (None, Some(inner)) => format!("{name} {inner}"),
                        (None, None) => name.clone(),
                    }
                }
                Some((name, inner)) => format!("{name} {}", inner.as_str().unwrap_or_default()),
                None => String::new(),
            },
            _ => String::new(),
        };
        all.insert(name, shown);
    }
    Ok(Value::Object(all))
}

/// Hots as rows: space, amperes, electronic amperes; each on a single-pole breaker of its own unless said otherwise.
pub fn neutral(given: &Given) -> Answer {
    let two_pole = flag(given, "two_pole")?.unwrap_or(false);
    let tied = flag(given, "handle_tie")?.unwrap_or(false);
    let tandem = flag(given, "tandem")?.unwrap_or(false);
    let returns = given
        .rows::<3>("hots")?
        .into_iter()
        .enumerate()
        .map(|(at, [space, current_a, electronic_a])| Returning {
            breaker: if two_pole { 0 } else { at as u32 },
            panel: 0,
            space: space as u32,
            tandem,
            two_pole,
            tied_to: tied.then_some(u32::from(at == 0)),
            rating_a: 20.0,
            current_a,
            electronic_a,
            leg_to_leg_loads: false,
        })
        .collect();
    let neutral = Neutral {
        edition: edition(given)?,
        returns,
        ampacity_a: given.optional_number("ampacity_a")?,
        runs_with_hots: flag(given, "runs_with_hots")?,
        pigtailed: flag(given, "pigtailed")?,
    };
    let mut shown = answer(neutral_current(&neutral).map_err(refused)?)?;
    shown["findings"] = Value::Array(names(&shown["findings"]));
    Ok(shown)
}

pub fn open_neutral(given: &Given) -> Answer {
    let open = opened(
        given.number("across_v")?,
        given.number("watts_a")?,
        given.number("watts_b")?,
    );
    answer(open.map_err(refused)?)
}
