//! Voltage against distance along a run: what is left at each load, against the nominal voltage and the limit.

use crate::markup::view;
use leptos::prelude::*;

use super::sheet::{WIDTH, dimension};

/// One leg along the run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DropLine {
    /// Its letter; empty where there is only one.
    pub letter: String,
    /// Distance from the start and volts there, from the start outwards.
    pub points: Vec<(f64, f64)>,
}

/// What is plotted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DropContent {
    /// One line, or one for each leg.
    pub lines: Vec<DropLine>,
    /// The nominal voltage.
    pub nominal_v: f64,
    /// The same, written out.
    pub nominal: String,
    /// The voltage at the limit.
    pub limit_v: f64,
    /// The same, written out.
    pub limit: String,
    /// The length of the run, written out.
    pub length: String,
}

const LEFT: f64 = 22.0;
const RIGHT: f64 = 30.0;
const TOP: f64 = 34.0;
const BODY: f64 = 150.0;
const HEIGHT: f64 = TOP + BODY + 62.0;

/// The plot.
#[component]
pub fn DropPlot(
    /// What to plot.
    #[prop(into)]
    content: Signal<DropContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    view! {
        <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img" aria-label=move || says.get()>
            {move || content.with(draw)}
        </svg>
    }
}

/// Volts and feet on the sheet.
struct Scale {
    high_v: f64,
    per_volt: f64,
    per_ft: f64,
}

impl Scale {
    fn of(c: &DropContent) -> Self {
        let all = || c.lines.iter().flat_map(|line| &line.points);
        let high_v = all().map(|p| p.1).fold(c.nominal_v, f64::max);
        let low_v = all().map(|p| p.1).fold(c.limit_v, f64::min);
        let far_ft = all().map(|p| p.0).fold(0.0, f64::max).max(1e-6);
        Self {
            high_v,
            per_volt: BODY / (high_v - low_v).max(1e-6),
            per_ft: (WIDTH - LEFT - RIGHT) / far_ft,
        }
    }

    fn at(&self, (feet, volts): (f64, f64)) -> (f64, f64) {
        (
            LEFT + feet * self.per_ft,
            TOP + (self.high_v - volts) * self.per_volt,
        )
    }
}

fn draw(c: &DropContent) -> AnyView {
    let scale = Scale::of(c);
    let (_, nominal_y) = scale.at((0.0, c.nominal_v));
    let (_, limit_y) = scale.at((0.0, c.limit_v));
    let (under, right) = (TOP + BODY + 8.0, WIDTH - RIGHT);
    // Figures in the way of another are left out; the table has them all.
    let mut taken: Vec<(f64, f64)> = vec![(LEFT, nominal_y - 8.0), (LEFT, limit_y + 18.0)];
    let lines = c
        .lines
        .iter()
        .enumerate()
        .map(|(n, line)| {
            let places: Vec<(f64, f64)> = line.points.iter().map(|&p| scale.at(p)).collect();
            let path = places
                .iter()
                .map(|(x, y)| format!("{x:.1},{y:.1} "))
                .collect::<String>();
            let dots = places
                .iter()
                .zip(&line.points)
                .skip(1)
                .map(|(&(x, y), &(_, volts))| {
                    // Over the line it is clear: volts fall from the left. The second leg has its figures beneath.
                    let text_y = if n == 0 { y - 10.0 } else { y + 21.0 };
                    let free = taken
                        .iter()
                        .all(|(tx, ty)| (tx - x).abs() > 62.0 || (ty - text_y).abs() > 17.0);
                    if free {
                        taken.push((x, text_y));
                    }
                    let label = free.then(|| {
                        let letter = if line.letter.is_empty() {
                            String::new()
                        } else {
                            format!("{} ", line.letter)
                        };
                        let text = format!("{letter}{}", calc::quantity::fixed(volts, 1));
                        let (text_x, anchor) = if x + 52.0 > WIDTH {
                            (right + RIGHT - 4.0, "end")
                        } else {
                            (x, "start")
                        };
                        view! { <text class="halo" x=text_x y=text_y text-anchor=anchor>{text}</text> }
                    });
                    view! {
                        <line class="thin faint" x1=x y1=y x2=x y2=under />
                        <circle class="pin" cx=x cy=y r="4" />
                        {label}
                    }
                })
                .collect_view();
            let class = if n == 0 { "pour-edge" } else { "second-edge" };
            view! { <polyline class=class points=path /> {dots} }
        })
        .collect_view();
    view! {
        <line class="thin" x1=LEFT y1=TOP - 10.0 x2=LEFT y2=under />
        <line class="thin" x1=LEFT y1=under x2=right + 8.0 y2=under />
        <line class="dimension" x1=LEFT y1=nominal_y x2=right + 8.0 y2=nominal_y />
        <line class="worst" x1=LEFT y1=limit_y x2=right + 8.0 y2=limit_y />
        {lines}
        <text class="halo" x=LEFT + 4.0 y=nominal_y - 7.0>{c.nominal.clone()}</text>
        <text class="halo" x=LEFT + 4.0 y=limit_y - 6.0>{c.limit.clone()}</text>
        {dimension(LEFT, under + 30.0, right, under + 30.0, c.length.clone())}
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn volts_and_feet_are_drawn_in_proportion() {
        let plot = DropContent {
            lines: vec![DropLine {
                letter: String::new(),
                points: vec![(0.0, 120.0), (50.0, 118.0), (100.0, 112.0)],
            }],
            nominal_v: 120.0,
            limit_v: 116.4,
            ..DropContent::default()
        };
        let scale = Scale::of(&plot);
        let (x0, y0) = scale.at((0.0, 120.0));
        let (x1, y1) = scale.at((50.0, 118.0));
        let (x2, y2) = scale.at((100.0, 112.0));
        // Half the way is half the sheet; 2 V of 8 are a quarter of its height.
        assert!(((x1 - x0) / (x2 - x0) - 0.5).abs() < 1e-9);
        assert!(((y1 - y0) / (y2 - y0) - 0.25).abs() < 1e-9);
        assert!((y2 - (TOP + BODY)).abs() < 1e-9);
    }
}
