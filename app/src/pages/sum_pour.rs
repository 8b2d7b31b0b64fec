//! Quick sum: area and mean depth give the volume of a pour, its bags and its water.

use crate::markup::view;
use calc::floor::mixing::{Bags, bags};
use calc::job::questions::sums::{EvenPour, bag_ask, even_pour};
use calc::job::sums::{AreaBy, PourSum};
use calc::job::{Job, Typed, Units, fields};
use calc::quantity::{Area, AreaUnit, Volume, VolumeUnit, fixed};
use leptos::prelude::*;

use super::sums::{KeepIntoJob, OpenSums, SumFoot, add_note};
use crate::answer::{Cautions, Facts, RestsOn, Working};
use crate::entry::{Choice, ChoiceOption, Measured};
use crate::paths::Stage;
use crate::pictures::{Figure, length_text};
use crate::reactive::{When, derived, draw, memo};
use crate::shell::PageHeading;
use crate::words::{common, sums as words};

/// Pour volume and bags.
#[component]
pub fn SumPourPage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let by = open.part(|sums| sums.pour.by);
    let entry = open.part(|sums| sums.pour.clone());
    let pour = memo(move || entry.with(even_pour).ok());
    let counted = memo(move || {
        let pour = pour.get()?;
        entry
            .with(|entry| bag_ask(entry, &pour))
            .ok()
            .map(|ask| bags(&ask))
    });
    let found = memo(move || {
        counted.with(|counted| {
            counted
                .as_ref()
                .and_then(|bags| bags.as_ref().ok().copied())
        })
    });
    let refused = memo(move || {
        counted.with(|counted| match counted {
            Some(Err(refusal)) => Some(words::mixing_refusal(refusal)),
            _ => None,
        })
    });
    let field = move |id: &'static str,
                      label: &'static str,
                      hint: &'static str,
                      field: fields::Field,
                      optional: bool,
                      get: fn(&mut PourSum) -> &mut Typed| {
        view! {
            <Measured
                id
                label=Signal::stored(label.to_owned())
                hint=Signal::stored(hint.to_owned())
                field
                units
                optional
                value=open.part(move |sums| get(&mut sums.pour.clone()).clone())
                on_typed=Callback::new(move |typed| open.change(|sums| *get(&mut sums.pour) = typed))
            />
        }
    };
    let area = move || match by.get() {
        AreaBy::Sides => view! {
            <div class="pair">
                {field("width", words::width_label(), "", fields::SIDE, false, |p| &mut p.width)}
                {field("length", words::length_label(), "", fields::SIDE, false, |p| &mut p.length)}
            </div>
        }
        .into_any(),
        AreaBy::Area => field(
            "area",
            words::area_label(),
            "",
            fields::FLOOR_AREA,
            false,
            |p| &mut p.area,
        )
        .into_any(),
    };
    let put = Callback::new(move |(mut job, room): (Job, u32)| {
        if let Some(room) = job.room_mut(room) {
            entry.with_untracked(|sum| sum.keep(room));
        }
        if let (Some(pour), Some(bags)) = (pour.get_untracked(), found.get_untracked()) {
            let units = units.get_untracked();
            let depth = length_text(pour.depth_in, units);
            add_note(
                &mut job,
                &words::note_pour(area_text(pour.area_in2, units), depth, bag_count(&bags)),
            );
        }
        job
    });
    view! {
        <PageHeading text=Signal::stored(words::pour_title().to_owned()) />
        <Choice
            id="area-by".to_owned()
            label=Signal::stored(words::by_label().to_owned())
            options=Signal::stored(
                vec![ChoiceOption::new("sides", words::by_sides()), ChoiceOption::new("area", words::by_area())],
            )
            value=derived(move || if by.get() == AreaBy::Area { "area" } else { "sides" }.to_owned())
            on_pick=Callback::new(move |code: String| {
                open.change(|sums| sums.pour.by = if code == "area" { AreaBy::Area } else { AreaBy::Sides });
            })
        />
        {draw(area)}
        {field("depth", words::depth_label(), words::depth_hint(), fields::DEPTH, false, |p| &mut p.depth)}
        <div class="pair">
            {field("bag-yield", words::yield_label(), words::yield_hint(), fields::BAG_YIELD, false, |p| &mut p.bag_yield)}
            {field("allowance", words::allowance_label(), words::allowance_hint(), fields::ALLOWANCE, false, |p| {
                &mut p.allowance_percent
            })}
            {field("bag-water", words::water_label(), "", fields::BAG_WATER, true, |p| &mut p.bag_water)}
        </div>
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::enter_pour()}</p> }>
            <PourAnswer pour found units />
        </When>
        <KeepIntoJob units hint=words::keep_pour_hint() stage=Stage::Room put />
        <SumFoot open />
    }
}

fn area_text(area_in2: f64, units: Units) -> String {
    let unit = if units == Units::Metric {
        AreaUnit::SquareMeters
    } else {
        AreaUnit::SquareFeet
    };
    Area::from_in2(area_in2).format(unit, 1)
}

fn volume_text(volume_ft3: f64, units: Units) -> String {
    let volume = Volume::from_ft3(volume_ft3);
    if units == Units::Metric {
        volume.format(VolumeUnit::Liters, 1)
    } else {
        volume.format(VolumeUnit::CubicFeet, 2)
    }
}

fn water_text(water_qt: f64, units: Units) -> String {
    if units == Units::Metric {
        Volume::from_qt(water_qt).format(VolumeUnit::Liters, 1)
    } else {
        let quarts = Volume::from_qt(water_qt).format(VolumeUnit::Quarts, 1);
        format!(
            "{quarts} · {}",
            Volume::from_qt(water_qt).format(VolumeUnit::Gallons, 1)
        )
    }
}

fn bag_count(bags: &Bags) -> String {
    if bags.bags == 1 {
        common::one_bag().to_owned()
    } else {
        common::bag_count(u64::from(bags.bags))
    }
}

#[component]
fn PourAnswer(
    pour: Memo<Option<EvenPour>>,
    found: Memo<Option<Bags>>,
    units: Memo<Units>,
) -> impl IntoView {
    let count = derived(move || {
        found
            .get()
            .map(|bags| bags.bags.to_string())
            .unwrap_or_default()
    });
    let unit = derived(move || {
        found
            .get()
            .map_or("", |bags| {
                if bags.bags == 1 {
                    common::unit_bag()
                } else {
                    common::unit_bags()
                }
            })
            .to_owned()
    });
    let rests = derived(move || {
        let units = units.get();
        found
            .get()
            .map(|bags| {
                words::bags_rest(
                    volume_text(bags.ask.volume_ft3, units),
                    format!("{} %", fixed(bags.ask.allowance_percent, 1)),
                    volume_text(bags.ask.yield_ft3_per_bag, units),
                )
            })
            .unwrap_or_default()
    });
    let rows = derived(move || {
        let units = units.get();
        let row = |name: &str, figure: String| (name.to_owned(), figure);
        let (Some(pour), Some(bags)) = (pour.get(), found.get()) else {
            return Vec::new();
        };
        let mut rows = vec![
            row(words::area_label(), area_text(pour.area_in2, units)),
            row(words::volume(), volume_text(pour.volume_ft3, units)),
            row(
                words::volume_to_buy(),
                volume_text(bags.with_allowance_ft3, units),
            ),
            row(words::exact_bags(), fixed(bags.exact_bags, 2)),
            row(words::to_spare(), volume_text(bags.to_spare_ft3, units)),
        ];
        if let Some(water_qt) = bags.water_qt {
            rows.push(row(words::water(), water_text(water_qt, units)));
        }
        rows
    });
    let steps = derived(move || {
        let mut steps = pour.get().map(|pour| pour.working()).unwrap_or_default();
        steps.extend(found.get().map(|bags| bags.working()).unwrap_or_default());
        steps
    });
    let cautions = vec![
        words::caution_bag().to_owned(),
        words::caution_weight().to_owned(),
        words::caution_dust().to_owned(),
    ];
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <Figure value=count unit />
                <RestsOn text=rests />
            </div>
            <Facts rows />
            <Working steps units />
            <Cautions lines=Signal::stored(cautions) />
        </section>
    }
}
