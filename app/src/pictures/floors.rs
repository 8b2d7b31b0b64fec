//! A section through both floors at a jamb: the layers of each side stacked to scale, numbered on leaders, with the
//! step between them.

use crate::markup::view;
use leptos::prelude::*;

use super::sheet::WIDTH;

/// What a layer is drawn as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// The pour.
    Pour,
    /// A membrane or mat.
    Membrane,
    /// A board or plywood.
    Panel,
    /// A bed or bond coat.
    Bed,
    /// What is walked on.
    Finish,
    /// The user's own.
    Own,
}

impl Material {
    const fn class(self) -> &'static str {
        match self {
            Self::Pour => "pour",
            Self::Membrane => "layer membrane",
            Self::Panel => "layer panel",
            Self::Bed => "layer bed",
            Self::Finish => "layer finish",
            Self::Own => "layer own",
        }
    }
}

/// One layer of a side.
#[derive(Clone, Debug, PartialEq)]
pub struct Stacked {
    /// The number it goes by in the list.
    pub number: usize,
    /// Thickness, inches.
    pub thickness_in: f64,
    /// Thickness, written out.
    pub thickness: String,
    /// What it is drawn as.
    pub material: Material,
}

/// One side of the opening.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FloorSide {
    /// The name written over it.
    pub name: String,
    /// Height of the subfloor, inches above the datum.
    pub subfloor_in: f64,
    /// What lies on it, from the bottom up.
    pub layers: Vec<Stacked>,
}

impl FloorSide {
    /// Height of the finished floor, inches above the datum.
    fn top_in(&self) -> f64 {
        self.subfloor_in
            + self
                .layers
                .iter()
                .map(|layer| layer.thickness_in)
                .sum::<f64>()
    }
}

/// Both sides.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FloorsContent {
    /// This room, on the left.
    pub here: FloorSide,
    /// The floor beyond, on the right.
    pub beyond: FloorSide,
    /// The step between the finished floors, written out; empty: none.
    pub step: String,
}

const MIDDLE: f64 = WIDTH / 2.0;
/// Half the width of the drawn floors.
const HALF: f64 = 60.0;
const TOP: f64 = 54.0;
const BODY: f64 = 150.0;
const GROUND: f64 = 22.0;
/// Labels keep this far apart.
const LINE: f64 = 23.0;

/// The section.
#[component]
pub fn Floors(
    /// What to draw.
    #[prop(into)]
    content: Signal<FloorsContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    let height = move || content.with(|c| Scale::of(c).height);
    view! {
        <svg viewBox=move || format!("0 0 {WIDTH} {:.0}", height()) role="img" aria-label=move || says.get()>
            {move || content.with(draw)}
        </svg>
    }
}

struct Scale {
    per_in: f64,
    high_in: f64,
    height: f64,
}

impl Scale {
    fn of(c: &FloorsContent) -> Self {
        let high_in = c.here.top_in().max(c.beyond.top_in());
        let low_in = c.here.subfloor_in.min(c.beyond.subfloor_in);
        let body_in = (high_in - low_in).max(0.25);
        let per_in = (BODY / body_in).min(120.0);
        // Labels may need more room than the layers do.
        let rows = c.here.layers.len().max(c.beyond.layers.len());
        let labels = LINE * f64::from(u32::try_from(rows).unwrap_or(0)) + 30.0;
        let height = TOP + (body_in * per_in + GROUND).max(labels) + 12.0;
        Self {
            per_in,
            high_in,
            height,
        }
    }

    fn y(&self, height_in: f64) -> f64 {
        TOP + (self.high_in - height_in) * self.per_in
    }
}

/// Places for labels near where they are wanted, from the top down, none closer than [`LINE`] to another.
fn spread(wanted: &[f64], least: f64, most: f64) -> Vec<f64> {
    let mut placed: Vec<f64> = Vec::with_capacity(wanted.len());
    for &y in wanted {
        let after = placed.last().map_or(least, |before| before + LINE);
        placed.push(y.max(after));
    }
    // What ran past the bottom is pushed back up.
    let mut below = most;
    for y in placed.iter_mut().rev() {
        *y = y.min(below);
        below = *y - LINE;
    }
    placed
}

fn draw(c: &FloorsContent) -> AnyView {
    let scale = Scale::of(c);
    let bottom = scale.height - 8.0;
    let side = |floor: &FloorSide, left: bool| {
        let (near, far, label_x, anchor) = if left {
            (MIDDLE, MIDDLE - HALF, 34.0, "start")
        } else {
            (MIDDLE, MIDDLE + HALF, WIDTH - 34.0, "end")
        };
        let balloon_x = if left { 16.0 } else { WIDTH - 16.0 };
        let (x, width) = (f64::min(near, far), HALF);
        let ground_y = scale.y(floor.subfloor_in);
        let hatch = (0..10)
            .map(|i| {
                let at = x + f64::from(i) * width / 10.0;
                view! { <line class="thin" x1=at y1=ground_y + GROUND - 4.0 x2=at + 8.0 y2=ground_y + 4.0 /> }
            })
            .collect_view();
        let mut up_to_in = floor.subfloor_in;
        let mut bands = Vec::with_capacity(floor.layers.len());
        for layer in &floor.layers {
            let top_in = up_to_in + layer.thickness_in;
            bands.push((scale.y(top_in), scale.y(up_to_in), layer.clone()));
            up_to_in = top_in;
        }
        bands.reverse();
        let wanted: Vec<f64> = bands
            .iter()
            .map(|(top, base, _)| f64::midpoint(*top, *base))
            .collect();
        let labels = spread(&wanted, TOP, bottom - 6.0);
        let rects = bands
            .iter()
            .zip(wanted.iter().zip(&labels))
            .map(|((top, base, layer), (middle, label))| {
                // The thinnest film still has a visible line; the label carries the measure.
                let height = (base - top).max(1.5);
                let elbow = if left { far - 3.0 } else { far + 3.0 };
                let text_end = if left { far - 10.0 } else { far + 10.0 };
                let dot = if left { far + 9.0 } else { far - 9.0 };
                view! {
                    <rect class=layer.material.class() x=x y=*top width=width height=height />
                    <rect class="layer-edge" x=x y=*top width=width height=height />
                    <polyline
                        class="leader"
                        points=format!("{dot:.1},{middle:.1} {elbow:.1},{middle:.1} {text_end:.1},{label:.1}")
                    />
                    <circle class="leader-dot" cx=dot cy=*middle r=2 />
                    <text x=label_x y=label + 5.5 text-anchor=anchor>{layer.thickness.clone()}</text>
                    <circle class="balloon" cx=balloon_x cy=*label r=10 />
                    <text x=balloon_x y=label + 5.5 text-anchor="middle">{layer.number}</text>
                }
            })
            .collect_view();
        let finished_y = scale.y(floor.top_in());
        // Names stand clear of the cut line between the floors.
        let (name_x, name_anchor) = if left {
            (MIDDLE - 9.0, "end")
        } else {
            (MIDDLE + 9.0, "start")
        };
        view! {
            <rect class="ground-fill" x=x y=ground_y width=width height=GROUND />
            {hatch}
            <line class="ground-edge" x1=x y1=ground_y x2=x + width y2=ground_y />
            {rects}
            <line class="wall" x1=x y1=finished_y x2=x + width y2=finished_y />
            <text x=name_x y=18 text-anchor=name_anchor>{floor.name.clone()}</text>
        }
    };
    let (here_y, beyond_y) = (scale.y(c.here.top_in()), scale.y(c.beyond.top_in()));
    let step = (!c.step.is_empty()).then(|| {
        // The step stands on the lower side, against the higher floor's edge.
        let (upper, lower) = (here_y.min(beyond_y), here_y.max(beyond_y));
        let into = if here_y < beyond_y { 14.0 } else { -14.0 };
        let (x, anchor) = (MIDDLE + into, if into > 0.0 { "start" } else { "end" });
        // Inside the step where it is tall enough, above the floors where it is not.
        let text_y = if lower - upper > 22.0 { f64::midpoint(upper, lower) + 5.0 } else { upper - 6.0 };
        view! {
            <line class="dimension" x1=MIDDLE y1=upper x2=x + into * 0.7 y2=upper />
            <line class="dimension" x1=x y1=upper x2=x y2=lower />
            <line class="slash" x1=x - 4.0 y1=upper + 4.0 x2=x + 4.0 y2=upper - 4.0 />
            <line class="slash" x1=x - 4.0 y1=lower + 4.0 x2=x + 4.0 y2=lower - 4.0 />
            <text class="halo step" x=x + into * 0.6 y=text_y text-anchor=anchor>{c.step.clone()}</text>
        }
    });
    view! {
        <defs>
            <pattern id="layer-bed" width="6" height="6" patternUnits="userSpaceOnUse">
                <circle cx="1.5" cy="1.5" r="0.9" class="dot" />
                <circle cx="4.5" cy="4.5" r="0.9" class="dot" />
            </pattern>
            <pattern id="layer-panel" width="18" height="5" patternUnits="userSpaceOnUse">
                <path d="M0 2.5 H14" class="grain" />
            </pattern>
        </defs>
        {side(&c.here, true)}
        {side(&c.beyond, false)}
        <line class="wall" x1=MIDDLE y1=here_y x2=MIDDLE y2=beyond_y />
        <line class="thin cut" x1=MIDDLE y1=10 x2=MIDDLE y2=scale.height - 4.0 />
        {step}
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_never_meet() {
        let placed = spread(&[40.0, 42.0, 44.0, 150.0, 151.0], 40.0, 160.0);
        assert!(
            placed.windows(2).all(|pair| pair[1] - pair[0] >= LINE),
            "{placed:?}"
        );
        assert!(placed[0] >= 40.0 && placed[4] <= 160.0, "{placed:?}");
        assert_eq!(spread(&[90.0], 40.0, 160.0), [90.0]);
    }
}
