//! The wiring of an opened box, laid out by itself: cables to the panel on top, the others at the bottom, the joints and
//! screws of the box between, each a bar that its wires come to. What is live is told by shape and by label as well as
//! by hue; arrows show the current.

use crate::markup::view;
use calc::order::Order;
use calc::quantity::fixed;
use calc::wiring::open_box::description::{
    At, Colour, Contact, Description, End, Goes, Side, Terminal,
};
use calc::wiring::open_box::live_map::{Behind, LiveMap};
use calc::wiring::open_box::network::{Network, Scene};
use calc::wiring::open_box::situation::Situation;
use leptos::prelude::*;

use super::sheet::WIDTH;
use crate::words::open_box as words;

/// What is at the far end of a cable.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Far {
    /// The panel.
    Panel,
    /// A load.
    Load,
    /// A switch.
    Switch,
    /// Another box.
    Box,
    /// Nobody knows.
    #[default]
    NotKnown,
}

/// A wire.
#[derive(Clone, Debug, PartialEq)]
pub struct Wire {
    /// Its colour.
    pub colour: Colour,
    /// The bar that it comes to; nothing: it ends by itself.
    pub bar: Option<usize>,
    /// What stands behind its end.
    pub behind: Option<Behind>,
    /// Which way its current flows at the moment drawn: into the box, out of it, or none to speak of.
    pub flow: Option<bool>,
}

/// A cable.
#[derive(Clone, Debug, PartialEq)]
pub struct Cable {
    /// Its letter.
    pub letter: String,
    /// What is at its far end.
    pub far: Far,
    /// Its name there: the breakers, the watts, the box.
    pub name: String,
    /// Its wires, from the left.
    pub wires: Vec<Wire>,
}

/// A joint or a screw.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// The number of a joint; none for a screw.
    pub joint: Option<u32>,
    /// The name of a screw.
    pub name: String,
    /// What stands behind it.
    pub behind: Option<Behind>,
}

/// The wiring of one box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CircuitContent {
    /// Cables to the panel.
    pub top: Vec<Cable>,
    /// The others.
    pub bottom: Vec<Cable>,
    /// The bars, from the top.
    pub bars: Vec<Bar>,
}

/// A current below this has no arrow, amperes.
const LEAST_A: f64 = 0.02;

/// A name for an id.
type Named<'a> = &'a dyn Fn(u32) -> String;

/// The wiring of a box in a situation.
pub fn content(
    description: &Description,
    in_box: u32,
    situation: &Situation,
    map: &LiveMap,
    breaker: Named<'_>,
    device: Named<'_>,
    box_name: Named<'_>,
) -> CircuitContent {
    let network = Network::of(description).ok();
    let scene = network
        .as_ref()
        .map(|network| Scene::of(network, situation));
    let behind = |contact: Contact| {
        let found = map.contacts.iter().find(|of| of.contact == contact);
        found.map(|of| of.behind)
    };
    let mut places: Vec<At> = Vec::new();
    let mut bars: Vec<Bar> = Vec::new();
    for made in &description.made {
        if description.box_of_contact(made.contact) == Some(in_box)
            && matches!(made.at, At::Joint(_) | At::Terminal { .. })
            && !places.contains(&made.at)
        {
            places.push(made.at);
        }
    }
    // Joints by number, then screws by device.
    let key = |at: &At| match *at {
        At::Joint(joint) => (0, joint, 0),
        At::Terminal { device, terminal } => (1, device, terminal_place(terminal)),
        At::Capped | At::Loose => (2, 0, 0),
    };
    places.as_mut_slice().order_by_key(key);
    for at in &places {
        bars.push(match *at {
            At::Terminal {
                device: of,
                terminal,
            } => Bar {
                joint: None,
                name: format!("{}, {}", device(of), words::screw(terminal)),
                behind: behind(Contact::Terminal {
                    device: of,
                    terminal,
                }),
            },
            At::Joint(joint) => Bar {
                joint: Some(joint),
                name: String::new(),
                behind: description
                    .joint(in_box, joint)
                    .first()
                    .and_then(|contact| behind(*contact)),
            },
            At::Capped | At::Loose => Bar {
                joint: None,
                name: String::new(),
                behind: None,
            },
        });
    }
    let (mut top, mut bottom) = (Vec::new(), Vec::new());
    for cable in &description.cables {
        let side = match &cable.goes {
            _ if cable.from_box == in_box => Side::Near,
            Goes::Box(to) if *to == in_box => Side::Far,
            _ => continue,
        };
        let (far, name) = match &cable.goes {
            Goes::Panel(on) => {
                let names: Vec<String> = on.iter().map(|pole| breaker(pole.breaker)).collect();
                (Far::Panel, names.join(" "))
            }
            Goes::Loads(loads) => {
                let watts: f64 = loads.iter().map(|across| across.load.watts).sum();
                (Far::Load, format!("{} W", fixed(watts, 0)))
            }
            Goes::Switch(_) => (Far::Switch, String::new()),
            Goes::Box(to) => {
                let other = if side == Side::Near {
                    *to
                } else {
                    cable.from_box
                };
                (Far::Box, box_name(other))
            }
            Goes::NotKnown => (Far::NotKnown, "?".to_owned()),
        };
        let wires = (0..)
            .zip(&cable.conductors)
            .map(|(conductor, colour)| {
                let contact = Contact::End(End {
                    cable: cable.id,
                    conductor,
                    side,
                });
                let at = description.at(contact);
                // From the near end to the far one; the bar of the moment is leg A's.
                let amps = scene
                    .as_ref()
                    .map_or(0.0, |scene| scene.conductor_amps(cable.id, conductor).re);
                let out = if side == Side::Near { amps } else { -amps };
                Wire {
                    colour: *colour,
                    bar: places.iter().position(|place| *place == at),
                    behind: behind(contact),
                    flow: (out.abs() >= LEAST_A).then_some(out < 0.0),
                }
            })
            .collect();
        let drawn = Cable {
            letter: cable.letter.clone(),
            far,
            name,
            wires,
        };
        if far == Far::Panel || (far == Far::Box && side == Side::Far) {
            top.push(drawn);
        } else {
            bottom.push(drawn);
        }
    }
    CircuitContent { top, bottom, bars }
}

const fn terminal_place(terminal: Terminal) -> usize {
    match terminal {
        Terminal::Common | Terminal::First | Terminal::Hot => 0,
        Terminal::TravellerOne | Terminal::Second | Terminal::HotLower => 1,
        Terminal::TravellerTwo | Terminal::Neutral => 2,
        Terminal::OnwardOne | Terminal::NeutralLower => 3,
        Terminal::OnwardTwo => 4,
        Terminal::Ground => 5,
    }
}

const WIRE: f64 = 22.0;
const GAP: f64 = 14.0;
const LEFT: f64 = 40.0;
const BAR: f64 = 40.0;
const RUN: f64 = 74.0;
const HEAD: f64 = 66.0;

/// Where things stand on the sheet.
struct Places {
    /// The first wire of each cable, top ones first.
    starts: Vec<f64>,
    width: f64,
    box_top: f64,
    box_bottom: f64,
    height: f64,
}

fn places(c: &CircuitContent) -> Places {
    let mut x = LEFT + 14.0;
    let mut starts = Vec::new();
    for cable in c.top.iter().chain(&c.bottom) {
        starts.push(x);
        // A name needs room, whatever the wires.
        let name = 9.0 * cable.name.chars().count() as f64;
        x += (WIRE * cable.wires.len() as f64).max(name.min(120.0)) + GAP;
    }
    let box_top = HEAD + RUN;
    let box_bottom = box_top + BAR * (c.bars.len().max(1) as f64) + 24.0;
    Places {
        starts,
        width: (x + 6.0).max(WIDTH),
        box_top,
        box_bottom,
        height: box_bottom
            + if c.bottom.is_empty() {
                12.0
            } else {
                RUN + HEAD
            },
    }
}

/// A drawing up to so wide is made to fit the screen.
const FITS: f64 = 440.0;

/// The wiring of one box.
#[component]
pub fn CircuitPicture(
    /// What to draw.
    #[prop(into)]
    content: Signal<CircuitContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    // A box of few cables fits the screen; one of many is drawn as wide as it must be, and scrolls.
    let size = move |of: fn(&Places) -> f64| {
        content.with(|c| {
            let at = places(c);
            (at.width > FITS).then(|| format!("{:.0}", of(&at)))
        })
    };
    let view_box = move || {
        content.with(|c| {
            let at = places(c);
            format!("0 0 {:.0} {:.0}", at.width, at.height)
        })
    };
    view! {
        <svg
            viewBox=view_box
            width=move || size(|at| at.width).unwrap_or_else(|| "100%".to_owned())
            height=move || size(|at| at.height)
            role="img"
            aria-label=move || says.get()
        >
            {move || content.with(drawn)}
        </svg>
    }
}

fn drawn(c: &CircuitContent) -> AnyView {
    let at = places(c);
    let bar_y = |bar: usize| at.box_top + 28.0 + BAR * bar as f64;
    let from_top = c.top.len();
    let mut wires = Vec::new();
    let mut marks = Vec::new();
    let mut heads = Vec::new();
    let mut reach: Vec<(f64, f64)> = vec![(f64::MAX, f64::MIN); c.bars.len()];
    for (n, cable) in c.top.iter().chain(&c.bottom).enumerate() {
        let is_top = n < from_top;
        let start = at.starts.get(n).copied().unwrap_or(0.0);
        let outer = if is_top { HEAD } else { at.box_bottom + RUN };
        for (k, wire) in cable.wires.iter().enumerate() {
            let x = start + WIRE * (k as f64 + 0.5);
            let inner = match wire.bar {
                Some(bar) => bar_y(bar),
                None if is_top => at.box_top + 14.0,
                None => at.box_bottom - 14.0,
            };
            if let Some(slot) = wire.bar.and_then(|bar| reach.get_mut(bar)) {
                *slot = (slot.0.min(x), slot.1.max(x));
            }
            wires.push(line(x, outer, inner, wire.colour));
            let (letter_y, arrow_y) = if is_top {
                (outer + 18.0, outer + 50.0)
            } else {
                (outer - 6.0, outer - 42.0)
            };
            marks.push(
                view! {
                    <text class="halo wire-letter" x=x y=letter_y text-anchor="middle">
                        {words::colour_letter(wire.colour)}
                    </text>
                }
                .into_any(),
            );
            if let Some(into) = wire.flow {
                marks.push(arrow(x, arrow_y, into == is_top));
            }
            if let Some(behind) = wire.behind {
                marks.push(mark(x, inner, behind));
            }
        }
        heads.push(head(cable, start, is_top, outer));
    }
    let bars: Vec<AnyView> = c
        .bars
        .iter()
        .zip(&reach)
        .enumerate()
        .map(|(n, (bar, reach))| bar_view(bar, *reach, bar_y(n), at.width))
        .collect();
    view! {
        <rect class="box-outline" x="4" y=at.box_top width=at.width - 8.0 height=at.box_bottom - at.box_top />
        {wires}
        {bars}
        {marks}
        {heads}
    }
    .into_any()
}

fn line(x: f64, outer: f64, inner: f64, colour: Colour) -> AnyView {
    view! {
        <line class="wire-edge" x1=x y1=outer x2=x y2=inner />
        <line class=format!("wire {}", words::colour_class(colour)) x1=x y1=outer x2=x y2=inner />
    }
    .into_any()
}

fn bar_view(bar: &Bar, (low, high): (f64, f64), y: f64, width: f64) -> AnyView {
    let balloon = bar.joint.map(|joint| {
        view! {
            <circle class="balloon" cx="22" cy=y r="12" />
            <text x="22" y=y dy="5.5" text-anchor="middle">{joint.to_string()}</text>
        }
    });
    let is = bar
        .behind
        .map(|behind| words::behind(behind).0)
        .unwrap_or_default();
    let name = if bar.name.is_empty() {
        is.to_owned()
    } else {
        format!("{} · {is}", bar.name)
    };
    let line = (low <= high).then(|| {
        view! { <line class="bar" x1=low - 7.0 y1=y x2=high + 7.0 y2=y /> }
    });
    view! {
        {line}
        {balloon}
        <text class="halo bar-name" x=width - 10.0 y=y - 7.0 text-anchor="end">{name}</text>
    }
    .into_any()
}

fn head(cable: &Cable, start: f64, is_top: bool, outer: f64) -> AnyView {
    let wide = WIRE * cable.wires.len() as f64;
    let middle = start + wide / 2.0;
    let (block_y, letter_y, name_y) = if is_top {
        (outer - 22.0, outer - 34.0, outer - 48.0)
    } else {
        (outer, outer + 34.0, outer + 60.0)
    };
    let (sign, class) = match cable.far {
        Far::Panel => ("", "far panel"),
        Far::Load => ("", "far load"),
        Far::Switch => ("", "far switch"),
        Far::Box => ("", "far box"),
        Far::NotKnown => ("?", "far open"),
    };
    let inside = match cable.far {
        // A lamp's cross; a switch's open blade; the stabs of a panel.
        Far::Load => view! {
            <path class="thin" d=format!("M{} {} l12 12 m0 -12 l-12 12", middle - 6.0, block_y + 5.0) />
        }
        .into_any(),
        Far::Switch => view! {
            <path class="thin" d=format!("M{} {} l8 0 l12 -9 m4 9 l8 0", middle - 16.0, block_y + 14.0) />
        }
        .into_any(),
        Far::Panel => view! {
            <path class="thin" d=format!("M{} {} h{}", start + 4.0, block_y + 11.0, wide - 8.0) />
        }
        .into_any(),
        Far::Box | Far::NotKnown => {
            view! { <text x=middle y=block_y + 16.5 text-anchor="middle">{sign}</text> }.into_any()
        }
    };
    view! {
        <rect class=class x=start - 2.0 y=block_y width=wide + 4.0 height="22" />
        {inside}
        <text x=start y=name_y>{cable.name.clone()}</text>
        <circle class="balloon" cx=start + wide - 10.0 cy=letter_y r="11" />
        <text x=start + wide - 10.0 y=letter_y dy="5.5" text-anchor="middle">{cable.letter.clone()}</text>
    }
    .into_any()
}

fn arrow(x: f64, y: f64, down: bool) -> AnyView {
    let d = if down {
        format!("M{:.1} {:.1} l6 9 l6 -9", x - 6.0, y - 4.0)
    } else {
        format!("M{:.1} {:.1} l6 -9 l6 9", x - 6.0, y + 4.0)
    };
    view! { <path class="flow" d=d /> }.into_any()
}

/// The shape of what stands behind an end.
const fn shape(behind: Behind) -> (&'static str, &'static str) {
    match behind {
        // A filled triangle, a filled diamond, an open diamond, an open circle, a filled square.
        Behind::Live => ("mark live", "M0 -9 L9 7 L-9 7 Z"),
        Behind::ThroughLoad => ("mark back", "M0 -10 L10 0 L0 10 L-10 0 Z"),
        Behind::Induced => ("mark stray", "M0 -9 L9 0 L0 9 L-9 0 Z"),
        Behind::Floating => ("mark floating", "M0 -7 A7 7 0 1 1 0 7 A7 7 0 1 1 0 -7 Z"),
        Behind::AtGround => ("mark ground", "M-6 -6 H6 V6 H-6 Z"),
    }
}

fn mark(x: f64, y: f64, behind: Behind) -> AnyView {
    let (class, d) = shape(behind);
    view! { <path class=class d=d transform=format!("translate({x:.1} {y:.1})") /> }.into_any()
}

/// The same mark beside words.
pub fn mark_svg(behind: Behind) -> AnyView {
    let (class, d) = shape(behind);
    view! {
        <svg class="mark-key" viewBox="-11 -11 22 22" aria-hidden="true"><path class=class d=d /></svg>
    }
    .into_any()
}
