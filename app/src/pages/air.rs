//! Air: what the fan moves through its duct, what the room needs, and the fan on its circuit.

mod on_circuit;

use calc::air::duct::DuctKind;
use calc::air::rate::ExhaustRoom;
use calc::air::{AirRefusal, Exhaust, Verdict};
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::finish::air::exhaust_of;
use calc::job::{Room, Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use leptos::prelude::*;

use super::closing::{Missing, may, need, pair, said, yes};
use super::job_fields::{at, code_at, number, pick};
use super::sum_fields::{Shown, label, options};
use crate::answer::{Cautions, Facts, RestsOn, Working};
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::pictures::{Figure, duct_picture, length_text};
use crate::reactive::{When, derived, draw, memo};
use crate::shell::PageHeading;
use crate::words::closing::air as words;
use crate::words::wiring;
use crate::work::closing_part;

use on_circuit::OnCircuit;

/// The fan through its duct, or why that is not known; nothing where the room is gone.
type Found = Option<Result<Exhaust, FinishProblem<AirRefusal>>>;

/// The air stage.
#[component]
pub fn AirPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let name = room.part(|r| r.name.clone());
    view! {
        <PageHeading text=derived(move || words::heading(&super::jobs::shown_room(&name.get()))) />
        <AirParts room />
    }
}

/// What the stage and the quick sum are made of.
#[component]
pub fn AirParts(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let units = room.open.units();
    let part = closing_part(room);
    let found: Memo<Found> = memo(move || part.with(|room| room.as_ref().map(exhaust_of)));
    let problem = derived(move || {
        found.with(|found| part.with(|room| said(found.as_ref()?, room.as_ref(), &words::refusal)))
    });
    let there = memo(move || found.with(|found| matches!(found, Some(Ok(_)))));
    let mut cautions = vec![
        words::caution_outside().to_owned(),
        words::caution_fuel().to_owned(),
    ];
    cautions.extend(wiring::cautions());
    view! {
        <Missing text=problem room />
        <When when=move || there.get()>
            <Moved found units />
        </When>
        <Needs room />
        <Fan room />
        <DuctForm room />
        <OnCircuit room />
        <Cautions lines=Signal::stored(cautions) />
    }
}

/// Whether a fan was entered.
pub fn air_known(room: &Room) -> bool {
    exhaust_of(room).is_ok()
}

/// The air's line on the job's page.
pub fn air_line(room: &Room, units: Units) -> String {
    match exhaust_of(room) {
        Ok(of) => words::line(
            words::flow(of.flow.about_cfm, units),
            words::flow(of.rate.required_cfm, units),
        ),
        Err(_) => words::open().to_owned(),
    }
}

#[component]
fn Moved(found: Memo<Found>, #[prop(into)] units: Signal<Units>) -> impl IntoView {
    let of = move |text: fn(&Exhaust, Units) -> String| {
        derived(move || {
            let units = units.get();
            found.with(|found| match found {
                Some(Ok(of)) => text(of, units),
                _ => String::new(),
            })
        })
    };
    let name = of(|of, _| {
        let exact = (of.flow.most_cfm - of.flow.least_cfm).abs() < 0.5;
        if exact {
            words::answer_name()
        } else {
            words::at_least()
        }
        .to_owned()
    });
    let value = of(|of, units| match units {
        Units::FeetInches => fixed(of.flow.about_cfm, 0),
        Units::Metric => fixed(of.flow.about_l_per_s, 1),
    });
    let unit = derived(move || {
        let metric = units.get() == Units::Metric;
        if metric {
            words::l_per_s_word()
        } else {
            words::cfm_word()
        }
        .to_owned()
    });
    let rests = of(|of, units| words::flow_rests(&of.flow, units));
    let rows = derived(move || {
        let units = units.get();
        found.with(|found| match found {
            Some(Ok(of)) => facts(of, units),
            _ => Vec::new(),
        })
    });
    let steps = derived(move || {
        found.with(|found| match found {
            Some(Ok(of)) => of.working(),
            _ => Vec::new(),
        })
    });
    let verdicts = move || {
        let units = units.get();
        found.with(|found| match found {
            Some(Ok(of)) => Some(verdict_rows(of, units)),
            _ => None,
        })
    };
    let picture = move || {
        let units = units.get();
        found.with(|found| match found {
            Some(Ok(of)) => Some(sketch(of, units)),
            _ => None,
        })
    };
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{name}</p>
                <Figure value unit />
                <RestsOn text=rests />
                {draw(verdicts)}
            </div>
            <figure class="picture">
                {draw(picture)}
                <figcaption>{words::picture_caption()}</figcaption>
            </figure>
            <Facts rows />
            <Working steps units />
        </section>
    }
}

fn feet(ft: f64, units: Units) -> String {
    length_text(ft * 12.0, units)
}

fn sketch(of: &Exhaust, units: Units) -> AnyView {
    let duct = &of.ask.duct;
    duct_picture(
        duct,
        [
            feet(duct.length_ft, units),
            length_text(duct.diameter_in, units),
            words::flow(of.flow.rated_cfm, units),
            words::flow(of.flow.about_cfm, units),
        ],
    )
}

fn verdict_rows(of: &Exhaust, units: Units) -> AnyView {
    let (sign, says) = words::verdict(of, units);
    let over = of.verdict != Verdict::Enough;
    let (held, length) = words::length(of, &|ft| feet(ft, units));
    let row = |over: bool, sign: &'static str, says: String| {
        view! {
            <p class="verdict" class:over=over>
                <span class="sign">{sign}</span>
                <span>{says}</span>
            </p>
        }
    };
    let length = match held {
        Some(held) => row(
            !held,
            if held {
                words::kept()
            } else {
                words::not_kept()
            },
            length,
        )
        .into_any(),
        None => view! { <p class="quiet">{length}</p> }.into_any(),
    };
    let fixtures = of
        .rate
        .no_fixtures_counted
        .then(|| view! { <p class="look">{words::no_fixtures()}</p> });
    view! { {row(over, sign, says)} {length} {fixtures} }.into_any()
}

fn facts(of: &Exhaust, units: Units) -> Vec<(String, String)> {
    let flow = |cfm: f64| words::flow(cfm, units);
    let rate = &of.rate;
    let mut rows = vec![(words::row_code().to_owned(), flow(rate.code_cfm))];
    if let Some(cfm) = rate.area_cfm {
        rows.push((words::row_area().to_owned(), flow(cfm)));
    }
    if let Some(cfm) = rate.fixtures_cfm {
        rows.push((words::row_fixtures().to_owned(), flow(cfm)));
    }
    let friction = &of.flow.friction;
    rows.extend([
        (
            words::row_need(words::governs(rate)),
            flow(rate.required_cfm),
        ),
        (
            words::row_worth().to_owned(),
            feet(friction.equivalent_ft, units),
        ),
        (
            words::row_loss().to_owned(),
            words::inwg(fixed(friction.inwg, 3)),
        ),
        (
            words::row_speed().to_owned(),
            words::fpm(fixed(friction.velocity_fpm, 0)),
        ),
    ]);
    rows
}

#[component]
fn Needs(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    view! {
        <section class="sheet">
            <h2>{words::needs_heading()}</h2>
            {pick(
                room.open,
                "air-room",
                label(words::room_label()),
                Signal::stored(options(words::room)),
                code_at!(ExhaustRoom::word; room id; air.room),
            )}
            {yes(room, "continuous", label(words::run_label()), words::always(), words::switched(), at!(room id; air.continuous))}
            {pair(
                may(room, "toilets", words::toilets(), "", fields::FIXTURES, at!(room id; air.toilets)),
                may(room, "showers", words::showers(), "", fields::FIXTURES, at!(room id; air.showers)),
            )}
            {pair(
                may(room, "tubs", words::tubs(), "", fields::FIXTURES, at!(room id; air.tubs)),
                may(room, "jetted", words::jetted(), "", fields::FIXTURES, at!(room id; air.jetted_tubs)),
            )}
            <p class="quiet">{words::fixtures_hint()}</p>
        </section>
    }
}

#[component]
fn Fan(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    view! {
        <section class="sheet">
            <h2>{words::fan_heading()}</h2>
            {pair(
                need(room, "low-flow", words::low_flow(), fields::CFM, at!(room id; air.low_flow)),
                need(room, "low-static", words::low_static(), fields::INWG, at!(room id; air.low_static)),
            )}
            {pair(
                may(room, "high-flow", words::high_flow(), "", fields::CFM, at!(room id; air.high_flow)),
                may(room, "high-static", words::high_static(), "", fields::INWG, at!(room id; air.high_static)),
            )}
            <p class="quiet">{words::high_hint()}</p>
            {may(room, "shutoff", words::shutoff_label(), "", fields::INWG, at!(room id; air.shutoff))}
        </section>
    }
}

#[component]
fn DuctForm(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    view! {
        <section class="sheet">
            <h2>{words::duct_heading()}</h2>
            {pick(
                room.open,
                "duct-kind",
                label(words::duct_label()),
                Signal::stored(options(words::duct)),
                code_at!(DuctKind::word; room id; air.duct),
            )}
            {pair(
                need(room, "diameter", words::diameter_label(), fields::DUCT, at!(room id; air.diameter)),
                need(room, "duct-length", words::length_label(), fields::RUN, at!(room id; air.length)),
            )}
            {may(room, "elbows", words::elbows_label(), "", fields::FIXTURES, at!(room id; air.elbows))}
            {number(
                room.open,
                "elbow-worth",
                label(words::elbow_label()),
                fields::RUN,
                Shown::hint(words::worth_hint()),
                at!(room id; air.elbow),
            )}
            {need(room, "cap-worth", words::cap_label(), fields::RUN, at!(room id; air.cap))}
        </section>
    }
}
