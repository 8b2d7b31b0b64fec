//! A box filling up: cut open, drawn to volume, each thing in it a layer as high as the space it takes.

use crate::markup::view;
use leptos::prelude::*;

use super::sheet::WIDTH;

/// What a layer is drawn as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Filling {
    /// Wires seen from their end.
    Wires,
    /// Bare or green grounds.
    Grounds,
    /// A device on its yoke.
    Device,
    /// Clamps, studs, blocks.
    Hardware,
}

/// One thing in the box.
#[derive(Clone, Debug, PartialEq)]
pub struct BoxLayer {
    /// The number it goes by in the list.
    pub number: usize,
    /// The space it takes, in any unit that all share.
    pub space: f64,
    /// The same, written out.
    pub label: String,
    /// How many are drawn.
    pub count: u32,
    /// What it is drawn as.
    pub filling: Filling,
}

/// The box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BoxContent {
    /// Its volume.
    pub volume: f64,
    /// The same, written out.
    pub volume_label: String,
    /// What is in it, from the bottom up.
    pub layers: Vec<BoxLayer>,
    /// The room left or the excess, written out.
    pub rest_label: String,
}

const LEFT: f64 = 26.0;
const INSIDE: f64 = 130.0;
const WALL: f64 = 10.0;
const TOP: f64 = 34.0;
const BODY: f64 = 216.0;
const LINE: f64 = 23.0;

/// The box filling up.
#[component]
pub fn BoxPicture(
    /// What to draw.
    #[prop(into)]
    content: Signal<BoxContent>,
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
    per_unit: f64,
    bottom: f64,
    brim: f64,
    height: f64,
}

impl Scale {
    fn of(c: &BoxContent) -> Self {
        let filled: f64 = c.layers.iter().map(|layer| layer.space).sum();
        let per_unit = BODY / c.volume.max(filled).max(1e-6);
        let labels = LINE * (c.layers.len() as f64 + 1.0);
        let bottom = TOP + BODY.max(labels);
        Self {
            per_unit,
            bottom,
            brim: bottom - c.volume * per_unit,
            height: bottom + WALL + 12.0,
        }
    }
}

/// Labels from the bottom up near where they are wanted, none closer than [`LINE`] to another, none above `top`.
fn spread(wanted: &[f64], bottom: f64, top: f64) -> Vec<f64> {
    let mut placed: Vec<f64> = Vec::with_capacity(wanted.len());
    for &y in wanted {
        let after = placed.last().map_or(bottom, |below| below - LINE);
        placed.push(y.min(after));
    }
    let mut above = top;
    for y in placed.iter_mut().rev() {
        *y = y.max(above);
        above = *y + LINE;
    }
    placed
}

fn draw(c: &BoxContent) -> AnyView {
    let scale = Scale::of(c);
    let (left, right) = (LEFT, LEFT + INSIDE);
    let mut up_to = scale.bottom;
    let mut bands = Vec::with_capacity(c.layers.len());
    for layer in c.layers.iter().filter(|layer| layer.space > 0.0) {
        let top = up_to - layer.space * scale.per_unit;
        bands.push((top, up_to, layer.clone()));
        up_to = top;
    }
    let filled_to = up_to;
    let over = filled_to < scale.brim - 0.5;
    let rest_at = f64::midpoint(filled_to, scale.brim);
    let mut wanted: Vec<f64> = bands
        .iter()
        .map(|(top, base, _)| f64::midpoint(*top, *base))
        .collect();
    wanted.push(rest_at);
    let labels = spread(&wanted, scale.bottom - 6.0, TOP - 12.0);
    let layers = bands
        .iter()
        .zip(wanted.iter().zip(&labels))
        .map(|((top, base, layer), (middle, label))| {
            let height = base - top;
            view! {
                <rect class=class_of(layer.filling) x=left y=*top width=INSIDE height=height />
                {inside(layer, *top, *base)}
                <rect class="layer-edge" x=left y=*top width=INSIDE height=height />
                <circle class="leader-dot" cx=right - 7.0 cy=*middle r="2.5" />
                <polyline
                    class="leader"
                    points=format!(
                        "{:.1},{middle:.1} {:.1},{middle:.1} {:.1},{label:.1} {:.1},{label:.1}",
                        right - 7.0,
                        right + WALL + 6.0,
                        right + WALL + 22.0,
                        right + WALL + 28.0,
                    )
                />
                <circle class="balloon" cx=right + WALL + 40.0 cy=*label r="11" />
                <text x=right + WALL + 40.0 y=*label dy="5.5" text-anchor="middle">{layer.number}</text>
                <text x=right + WALL + 58.0 y=*label dy="5.5">{layer.label.clone()}</text>
            }
        })
        .collect_view();
    let wall_top = scale.brim;
    let (x0, x1, y1) = (left - WALL, right + WALL, scale.bottom + WALL);
    let shell = format!(
        "M{x0:.1} {wall_top:.1} H{left:.1} V{:.1} H{right:.1} V{wall_top:.1} H{x1:.1} V{y1:.1} H{x0:.1} Z",
        scale.bottom
    );
    let rest_label_at = labels.last().copied().unwrap_or(rest_at);
    view! {
        <defs>
            <pattern id="box-wall" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <line class="hatch" x1="0" y1="0" x2="0" y2="7" />
            </pattern>
        </defs>
        {layers}
        <path class="box-wall" d=shell />
        <line class=if over { "worst" } else { "dimension" } x1=x0 - 8.0 y1=scale.brim x2=x1 + 4.0 y2=scale.brim />
        <text class="halo" x=f64::midpoint(left, right) y=(scale.brim.min(filled_to) - 10.0).max(18.0) text-anchor="middle">
            {c.volume_label.clone()}
        </text>
        <polyline
            class="leader"
            points=format!(
                "{:.1},{rest_at:.1} {:.1},{rest_at:.1} {:.1},{rest_label_at:.1} {:.1},{rest_label_at:.1}",
                right - 7.0,
                right + WALL + 6.0,
                right + WALL + 22.0,
                right + WALL + 28.0,
            )
        />
        <text class=if over { "step over" } else { "step" } x=right + WALL + 32.0 y=rest_label_at dy="5.5">
            {c.rest_label.clone()}
        </text>
    }
    .into_any()
}

const fn class_of(filling: Filling) -> &'static str {
    match filling {
        Filling::Wires => "d1",
        Filling::Grounds => "layer",
        Filling::Device => "d2",
        Filling::Hardware => "layer own",
    }
}

/// What stands in a layer: ends of wires, a device, nothing.
fn inside(layer: &BoxLayer, top: f64, base: f64) -> AnyView {
    let height = base - top;
    match layer.filling {
        Filling::Wires | Filling::Grounds => {
            let count = layer.count.clamp(1, 60);
            let (columns, rows) = grid(count, INSIDE - 20.0, height);
            let radius = (height / f64::from(rows) / 2.0 - 1.5).clamp(1.5, 6.0);
            let class = if layer.filling == Filling::Grounds {
                "wire-end ground"
            } else {
                "wire-end"
            };
            (0..count)
                .map(|n| {
                    let (row, column) = (n / columns, n % columns);
                    let in_row = columns.min(count - row * columns);
                    let x = LEFT + (INSIDE - 14.0) * (f64::from(column) + 0.5) / f64::from(in_row);
                    let y = base - height * (f64::from(row) + 0.5) / f64::from(rows);
                    view! {
                        <circle class=class cx=x cy=y r=radius />
                        <circle class="leader-dot" cx=x cy=y r=radius * 0.3 />
                    }
                })
                .collect_view()
                .into_any()
        }
        Filling::Device => {
            let (y, tall) = (f64::midpoint(top, base), (height - 6.0).clamp(3.0, 26.0));
            let wide = 66.0;
            let x = LEFT + (INSIDE - 14.0 - wide) / 2.0;
            view! {
                <rect class="balloon" x=x - 16.0 y=y - 2.0 width=wide + 32.0 height="4" />
                <rect class="balloon" x=x y=y - tall / 2.0 width=wide height=tall />
                <circle class="leader-dot" cx=x - 9.0 cy=y r="2" />
                <circle class="leader-dot" cx=x + wide + 9.0 cy=y r="2" />
            }
            .into_any()
        }
        Filling::Hardware => ().into_any(),
    }
}

/// Columns and rows for so many things in a field, about square.
fn grid(count: u32, width: f64, height: f64) -> (u32, u32) {
    let fit = (f64::from(count) * width / height.max(1.0)).sqrt().round();
    // At most 60 things.
    let columns = (fit.clamp(1.0, 60.0) as u32).min(count.max(1));
    (columns, count.max(1).div_ceil(columns))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn layer(space: f64) -> BoxLayer {
        BoxLayer {
            number: 1,
            space,
            label: String::new(),
            count: 2,
            filling: Filling::Wires,
        }
    }

    #[test]
    fn the_box_is_drawn_to_volume() {
        // Of 18 in3 two layers of 6 fill two thirds, by hand: a third of the box stays open.
        let half = BoxContent {
            volume: 18.0,
            layers: vec![layer(6.0), layer(6.0)],
            ..BoxContent::default()
        };
        let scale = Scale::of(&half);
        let filled = 12.0 * scale.per_unit;
        assert!((filled / (scale.bottom - scale.brim) - 2.0 / 3.0).abs() < 1e-9);
        // Overfull: the brim stands below the top of what is in it.
        let over = BoxContent {
            volume: 6.0,
            layers: vec![layer(8.0)],
            ..BoxContent::default()
        };
        let scale = Scale::of(&over);
        assert!(scale.brim > scale.bottom - 8.0 * scale.per_unit);
    }

    #[test]
    fn labels_keep_apart() {
        let placed = spread(&[200.0, 199.0, 198.0], 210.0, 20.0);
        assert!(placed.windows(2).all(|pair| pair[0] - pair[1] >= LINE));
        assert_eq!(grid(8, 130.0, 130.0), (3, 3));
        assert_eq!(grid(1, 130.0, 4.0), (1, 1));
    }
}
