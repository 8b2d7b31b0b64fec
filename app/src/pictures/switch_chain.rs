//! The cables between supply, switches and light: every wire of each in the colour it has in the cable, with its
//! letter.

use crate::markup::view;
use calc::wiring::cable_run::Role;
use leptos::prelude::*;

use super::sheet::WIDTH;

/// A cable of the chain.
#[derive(Clone, Debug, PartialEq)]
pub struct ChainCable {
    /// Name of the place it comes from.
    pub from: String,
    /// Name of the place it goes to.
    pub to: String,
    /// What its conductors are for; the ground apart.
    pub roles: Vec<Role>,
}

/// The chain, from the supply outwards.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ChainContent {
    /// The cables.
    pub cables: Vec<ChainCable>,
}

/// The colour of a wire in a cable of the trade, by its letter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Colour {
    Black,
    Red,
    Blue,
    White,
    /// White used as a hot: marked again with tape.
    Marked,
    Green,
}

impl Colour {
    const fn class(self) -> &'static str {
        match self {
            Self::Black => "wire black",
            Self::Red => "wire red",
            Self::Blue => "wire blue",
            Self::White => "wire white",
            Self::Marked => "wire white marked",
            Self::Green => "wire green",
        }
    }

    const fn letter(self) -> &'static str {
        match self {
            Self::Black => "B",
            Self::Red => "R",
            Self::Blue => "U",
            Self::White => "W",
            Self::Marked => "W*",
            Self::Green => "G",
        }
    }
}

/// The wires of a cable by their role: the neutral takes the white; where there is none the white is a hot that is
/// marked, the supply of the switch first of all (200.7(C)). Source of the order: common practice.
fn colours(roles: &[Role]) -> Vec<Colour> {
    let has_neutral = roles
        .iter()
        .any(|role| matches!(role, Role::Neutral | Role::NeutralForSwitch));
    let mut hots = [Colour::Black, Colour::Red, Colour::Blue].into_iter();
    let mut next = move || hots.next().unwrap_or(Colour::Blue);
    let mut wires = Vec::new();
    let mut white_free = !has_neutral;
    for role in roles {
        match role {
            Role::Neutral | Role::NeutralForSwitch => wires.push(Colour::White),
            Role::Travellers => wires.extend([next(), next()]),
            // The white must not come back from the switch: it is the hot that is always on.
            Role::Hot if white_free => {
                white_free = false;
                wires.push(Colour::Marked);
            }
            Role::SwitchedHot if white_free && roles.contains(&Role::Travellers) => {
                white_free = false;
                wires.push(Colour::Marked);
            }
            Role::Hot | Role::SwitchedHot => wires.push(next()),
        }
    }
    wires.push(Colour::Green);
    wires
}

const TOP: f64 = 34.0;
const BOX: f64 = 44.0;
const WIRE: f64 = 22.0;
const LEFT: f64 = 70.0;

/// The chain of cables.
#[component]
pub fn SwitchChain(
    /// What to draw.
    #[prop(into)]
    content: Signal<ChainContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    let height = move || content.with(|c| heights(c).last().copied().unwrap_or(TOP) + 8.0);
    view! {
        <svg viewBox=move || format!("0 0 {WIDTH} {:.0}", height()) role="img" aria-label=move || says.get()>
            {move || content.with(draw)}
        </svg>
    }
}

/// Where each cable starts on the sheet, and at last where the drawing ends.
fn heights(c: &ChainContent) -> Vec<f64> {
    let mut y = 12.0;
    let mut starts = Vec::with_capacity(c.cables.len() + 1);
    for cable in &c.cables {
        starts.push(y);
        y += 26.0 + WIRE * colours(&cable.roles).len() as f64 + 12.0;
    }
    starts.push(y);
    starts
}

fn draw(c: &ChainContent) -> AnyView {
    let starts = heights(c);
    let (from_x, to_x) = (LEFT, WIDTH - LEFT);
    let cables = c
        .cables
        .iter()
        .zip(&starts)
        .map(|(cable, &start)| {
            let wires = colours(&cable.roles);
            let tall = WIRE * wires.len() as f64;
            let top = start + 24.0;
            let lines = wires
                .into_iter()
                .enumerate()
                .map(|(n, colour)| {
                    let y = top + WIRE * (n as f64 + 0.5);
                    view! {
                        <line class="wire-edge" x1=from_x y1=y x2=to_x y2=y />
                        <line class=colour.class() x1=from_x y1=y x2=to_x y2=y />
                        <circle class="balloon" cx=WIDTH / 2.0 cy=y r="10.5" />
                        <text x=WIDTH / 2.0 y=y dy="5.5" text-anchor="middle">{colour.letter()}</text>
                    }
                })
                .collect_view();
            let end = move |x: f64| {
                view! { <rect class="box-wall" x=x y=top - 2.0 width=BOX height=tall + 4.0 /> }
            };
            view! {
                {end(from_x - BOX)}
                {end(to_x)}
                {lines}
                <text x=from_x - BOX y=start + 14.0>{cable.from.clone()}</text>
                <text x=to_x + BOX y=start + 14.0 text-anchor="end">{cable.to.clone()}</text>
            }
        })
        .collect_view();
    view! {
        <defs>
            <pattern id="box-wall" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <line class="hatch" x1="0" y1="0" x2="0" y2="7" />
            </pattern>
        </defs>
        {cables}
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_white_is_the_neutral_or_a_marked_hot() {
        use Colour::{Black, Green, Marked, Red, White};
        for (roles, wires) in [
            (vec![Role::Hot, Role::Neutral], vec![Black, White, Green]),
            (
                vec![Role::Neutral, Role::Travellers],
                vec![White, Black, Red, Green],
            ),
            // A switch loop: the supply goes down on the marked white, 200.7(C), and comes back on the black.
            (
                vec![Role::Hot, Role::SwitchedHot],
                vec![Marked, Black, Green],
            ),
            (
                vec![Role::SwitchedHot, Role::Travellers],
                vec![Marked, Black, Red, Green],
            ),
        ] {
            assert_eq!(colours(&roles), wires, "{roles:?}");
        }
    }
}
