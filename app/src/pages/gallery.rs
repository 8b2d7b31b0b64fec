//! Every widget and picture in its states. No page links here: it is for those who build and for the tests.

use crate::markup::view;
use calc::floor::Point;
use calc::job::questions::opened::described;
use calc::job::{Units, fields};
use calc::quantity::Typed;
use calc::wiring::cable_run::Role;
use calc::wiring::open_box::live_map::live_map;
use calc::wiring::open_box::situation::Situation;
use calc::wiring::panel::Leg;
use leptos::prelude::*;

use crate::entry::{Choice, ChoiceOption, Measured, Pick, TextEntry};
use crate::pages::open_box::Names;
use crate::paths::Stage;
use crate::pictures::CircuitPicture;
use crate::pictures::box_fill::{BoxContent, BoxLayer, Filling};
use crate::pictures::circuit::content;
use crate::pictures::drop_plot::{DropContent, DropLine};
use crate::pictures::floor_map::{Gap, MapContent, Mark, Pin};
use crate::pictures::floors::{FloorSide, FloorsContent, Material, Stacked};
use crate::pictures::panel::{PanelCell, PanelLine};
use crate::pictures::ramp::RampContent;
use crate::pictures::section::{SectionContent, Straightedge};
use crate::pictures::strip::{StripContent, strip};
use crate::pictures::switch_chain::{ChainCable, ChainContent};
use crate::pictures::{
    BoxPicture, DropPlot, Figure, FloorMap, Floors, LengthFigure, PanelPicture, RampProfile,
    Section, SwitchChain,
};
use crate::shell::{PageHeading, Pole};
use crate::words::open_box::{self, answers};
use crate::words::{common, gallery as words};

/// The gallery.
#[component]
pub fn GalleryPage() -> impl IntoView {
    view! {
        <PageHeading text=Signal::stored(words::title().to_owned()) />
        <Entries />
        <section class="sheet">
            <h2>{words::actions()}</h2>
            <div class="row">
                <button type="button" class="button main">{words::main_action()}</button>
                <button type="button" class="button">{words::other_action()}</button>
                <button type="button" class="button look plain">{words::take_out()}</button>
                <button type="button" class="button" disabled>{words::not_now()}</button>
            </div>
        </section>
        <section class="sheet">
            <h2>{words::figures()}</h2>
            <Figure value=Signal::stored("12".to_owned()) unit=Signal::stored(common::unit_bags().to_owned()) />
            {[87.625, 0.625, 3.0, -0.25]
                .into_iter()
                .map(|inches| {
                    view! {
                        <LengthFigure inches=Signal::stored(inches) units=Signal::stored(Units::FeetInches) />
                        <LengthFigure inches=Signal::stored(inches) units=Signal::stored(Units::Metric) small=true />
                    }
                })
                .collect_view()}
        </section>
        <section class="sheet">
            <h2>{words::notices()}</h2>
            <p class="notice">{words::a_notice()}</p>
            <p class="notice look">{words::look()}</p>
            <div class="caution"><h3>{common::cautions()}</h3><ul><li>{words::look()}</li></ul></div>
        </section>
        <Pictures />
        <WiringPictures />
        <Circuits />
        <section class="sheet">
            <h2>{words::pole()}</h2>
            <Pole
                job="gallery".to_owned()
                room=1
                now=Some(Stage::Survey)
                decided=Signal::stored(vec![true])
            />
        </section>
    }
}

#[component]
fn Entries() -> impl IntoView {
    let units = Signal::stored(Units::FeetInches);
    let state = |id: &'static str, label: &'static str, text: &str, open: bool| {
        let value = RwSignal::new(Typed::plain(text));
        view! {
            <Measured
                id
                label=Signal::stored(label.to_owned())
                field=fields::READING
                units
                value
                always_open=open
                on_typed=Callback::new(move |typed| value.set(typed))
            />
        }
    };
    let picked = RwSignal::new("a".to_owned());
    let options = Signal::stored(vec![
        ChoiceOption::new("a", words::first()),
        ChoiceOption::new("b", words::second()),
    ]);
    let text = RwSignal::new(String::new());
    view! {
        <section class="sheet">
            <h2>{words::entry()}</h2>
            {state("g-empty", words::empty(), "", false)}
            {state("g-filled", words::filled(), "7' 3 5/8\"", false)}
            {state("g-refused", words::refused(), "about 3", false)}
            {state("g-tape", words::with_tape(), "2 3/8", true)}
            <Choice
                id="g-choice".to_owned()
                label=Signal::stored(words::choice().to_owned())
                options
                value=picked
                on_pick=Callback::new(move |code| picked.set(code))
            />
            <Pick
                id="g-pick".to_owned()
                label=Signal::stored(words::choice().to_owned())
                options
                value=picked
                on_pick=Callback::new(move |code| picked.set(code))
            />
            <TextEntry
                id="g-text".to_owned()
                label=Signal::stored(words::empty().to_owned())
                value=text
                on_text=Callback::new(move |t| text.set(t))
            />
        </section>
    }
}

#[component]
fn Pictures() -> impl IntoView {
    let corners: Vec<Point> = [
        (0.0, 0.0),
        (120.0, 0.0),
        (120.0, 60.0),
        (72.0, 60.0),
        (72.0, 108.0),
        (0.0, 108.0),
    ]
    .map(|(x, y)| Point::new(x, y))
    .to_vec();
    let pin = |x: f64, y: f64, label: &str, mark| Pin {
        at: Point::new(x, y),
        label: label.to_owned(),
        mark,
    };
    let plan = MapContent {
        gaps: vec![Gap {
            left: Point::new(60.0, 0.0),
            right: Point::new(30.0, 0.0),
            label: "A".to_owned(),
        }],
        depth: vec![
            ([corners[0], corners[1], corners[3]], 1),
            ([corners[0], corners[3], corners[5]], 3),
        ],
        pins: vec![
            pin(12.0, 12.0, "3/8", Mark::Read),
            pin(100.0, 20.0, "1/2", Mark::Open),
            pin(40.0, 60.0, "5/8", Mark::Now),
            pin(20.0, 95.0, "1", Mark::Again),
        ],
        worst: Some((Point::new(10.0, 40.0), Point::new(100.0, 40.0))),
        downhill: Some(30.0),
        sides: Some(("10' 0\"".to_owned(), "9' 0\"".to_owned())),
        wall_numbers: true,
        corners,
        ..MapContent::default()
    };
    let section = SectionContent {
        floor: vec![(0.0, 0.25), (40.0, -0.25), (80.0, 0.0), (120.0, 0.5)],
        pour: vec![(0.0, 0.625), (40.0, 0.625), (80.0, 0.625), (120.0, 0.625)],
        depths: vec![
            (0.0, "3/8\"".to_owned()),
            (40.0, "7/8\"".to_owned()),
            (120.0, "1/8\"".to_owned()),
        ],
        length: "10' 0\"".to_owned(),
        ends: (words::first().to_owned(), words::second().to_owned()),
        straightedge: Some(Straightedge {
            contacts: [(0.0, 0.25), (80.0, 0.0)],
            gap_at: 40.0,
            label: "3/8\"".to_owned(),
        }),
    };
    let ramp = RampContent {
        rise_in: 0.75,
        run_in: 9.0,
        rise: "3/4\"".to_owned(),
        run: "9\"".to_owned(),
        slope: "1:12".to_owned(),
        ..RampContent::default()
    };
    let layer = |number, thickness_in, thickness: &str, material| Stacked {
        number,
        thickness_in,
        thickness: thickness.to_owned(),
        material,
    };
    let floors = FloorsContent {
        here: FloorSide {
            name: words::first().to_owned(),
            subfloor_in: 0.0,
            layers: vec![
                layer(1, 0.5, "1/2\"", Material::Pour),
                layer(2, 0.125, "1/8\"", Material::Membrane),
                layer(3, 0.1875, "3/16\"", Material::Bed),
                layer(4, 0.375, "3/8\"", Material::Finish),
            ],
        },
        beyond: FloorSide {
            name: words::second().to_owned(),
            subfloor_in: -0.25,
            layers: vec![
                layer(5, 0.71875, "23/32\"", Material::Panel),
                layer(6, 0.25, "1/4\"", Material::Own),
            ],
        },
        step: "15/32\"".to_owned(),
    };
    view! {
        <section class="sheet">
            <h2>{words::pictures()}</h2>
            <figure class="picture">
                <FloorMap content=Signal::stored(plan) says=Signal::stored(words::plan().to_owned()) />
                <figcaption>{words::plan()}</figcaption>
            </figure>
            <figure class="picture">
                <Section content=Signal::stored(section) says=Signal::stored(words::section().to_owned()) />
                <figcaption>{words::section()}</figcaption>
            </figure>
            <figure class="picture">
                <RampProfile content=Signal::stored(ramp) says=Signal::stored(words::ramp().to_owned()) />
                <figcaption>{words::ramp()}</figcaption>
            </figure>
            <figure class="picture">
                <Floors content=Signal::stored(floors) says=Signal::stored(words::floors().to_owned()) />
                <figcaption>{words::floors()}</figcaption>
            </figure>
        </section>
    }
}

/// The opened box of the worked example: everything on, and with its first breaker off.
#[component]
fn Circuits() -> impl IntoView {
    let job = calc::job::demo::job("gallery", "");
    let found = job
        .opened
        .first()
        .and_then(|entry| described(&job, entry).ok());
    let drawn = |off: bool| {
        let description = &found.as_ref()?.description;
        let situation = Situation {
            breakers_off: description
                .breakers
                .iter()
                .take(usize::from(off))
                .map(|b| b.id)
                .collect(),
            ..Situation::default()
        };
        let map = live_map(description, &situation).ok()?;
        let in_box = *description.boxes.first()?;
        let names = Names::of(&job, job.opened.first()?);
        Some(content(
            description,
            in_box,
            &situation,
            &map,
            &|id| names.breaker(id),
            &|id| names.device(id),
            &|id| names.box_name(id),
        ))
    };
    let figures = [false, true]
        .into_iter()
        .filter_map(drawn)
        .map(|drawn| {
            view! {
                <figure class="picture circuit">
                    <div class="scroll" tabindex="0" role="group" aria-label=answers::picture(open_box::untitled())>
                        <CircuitPicture
                            content=Signal::stored(drawn)
                            says=Signal::stored(answers::picture(open_box::untitled()))
                        />
                    </div>
                    <figcaption>{answers::picture_note()}</figcaption>
                </figure>
            }
        })
        .collect_view();
    view! { <section class="sheet">{figures}</section> }
}

#[component]
fn WiringPictures() -> impl IntoView {
    let layer = |number, space: f64, count, filling| BoxLayer {
        number,
        space,
        label: format!("{} in³", calc::quantity::fixed(space, 2)),
        count,
        filling,
    };
    let filled = |volume: f64, rest: &str| BoxContent {
        volume,
        volume_label: format!("{} in³", calc::quantity::fixed(volume, 2)),
        layers: vec![
            layer(1, 9.0, 4, Filling::Wires),
            layer(2, 2.25, 1, Filling::Hardware),
            layer(3, 4.5, 1, Filling::Device),
            layer(4, 2.25, 2, Filling::Grounds),
        ],
        rest_label: rest.to_owned(),
    };
    let line = |letter: &str, points: &[(f64, f64)]| DropLine {
        letter: letter.to_owned(),
        points: points.to_vec(),
    };
    let plot = DropContent {
        lines: vec![
            line("A", &[(0.0, 120.0), (40.0, 118.1), (80.0, 116.1)]),
            line("B", &[(0.0, 120.0), (40.0, 120.4), (80.0, 120.8)]),
        ],
        nominal_v: 120.0,
        nominal: "120 V".to_owned(),
        limit_v: 116.4,
        limit: "116.4 V".to_owned(),
        length: "80 ft".to_owned(),
    };
    let cable = |from: &str, to: &str, roles: &[Role]| ChainCable {
        from: from.to_owned(),
        to: to.to_owned(),
        roles: roles.to_vec(),
    };
    let chain = ChainContent {
        cables: vec![
            cable(
                words::first(),
                words::second(),
                &[Role::Neutral, Role::Travellers],
            ),
            cable(
                words::first(),
                words::second(),
                &[Role::Hot, Role::SwitchedHot],
            ),
        ],
    };
    view! {
        <section class="sheet">
            {[filled(30.3, "+ 12.3"), filled(15.5, "− 2.5")]
                .into_iter()
                .map(|content| {
                    view! {
                        <figure class="picture">
                            <BoxPicture
                                content=Signal::stored(content)
                                says=Signal::stored(words::box_fill().to_owned())
                            />
                            <figcaption>{words::box_fill()}</figcaption>
                        </figure>
                    }
                })
                .collect_view()}
            <figure class="picture">
                <DropPlot content=Signal::stored(plot) says=Signal::stored(words::drop_plot().to_owned()) />
                <figcaption>{words::drop_plot()}</figcaption>
            </figure>
            <figure>
                <PanelPicture
                    lines=Signal::stored(panel())
                    picked=Signal::stored("5".to_owned())
                    on_pick=Callback::new(|_| ())
                    says=Signal::stored(words::panel().to_owned())
                />
                <figcaption>{words::panel()}</figcaption>
            </figure>
            <figure>
                {[(6.0, 6.0), (6.0, 12.0), (12.0, 20.0)]
                    .into_iter()
                    .map(|(now, then)| strip(StripContent { now, then, limit: 15.0 }))
                    .collect_view()}
                <figcaption>{words::strips()}</figcaption>
            </figure>
            <figure class="picture">
                <SwitchChain content=Signal::stored(chain) says=Signal::stored(words::switches().to_owned()) />
                <figcaption>{words::switches()}</figcaption>
            </figure>
        </section>
    }
}

/// A panel of six spaces: one pole, two poles, a tandem, a troubled one and free ones.
fn panel() -> Vec<PanelLine> {
    let cell = |place: &str, lower: Option<&str>, amps: &str, label: &str| PanelCell {
        place: place.to_owned(),
        number: place.to_owned(),
        lower: lower.map(str::to_owned),
        leg: "A".to_owned(),
        amps: amps.to_owned(),
        label: label.to_owned(),
        troubled: false,
        free: amps.is_empty(),
    };
    let line = |leg, left, right| PanelLine { left, right, leg };
    vec![
        line(
            Leg::A,
            vec![cell("1", Some("3"), "30", words::first())],
            vec![cell("2", None, "15", words::second())],
        ),
        line(
            Leg::B,
            Vec::new(),
            vec![
                cell("4A", None, "15", words::first()),
                cell("4B", None, "20", words::second()),
            ],
        ),
        line(
            Leg::A,
            vec![cell("5", None, "", words::empty())],
            vec![PanelCell {
                troubled: true,
                ..cell("6", None, "15", words::look())
            }],
        ),
    ]
}
