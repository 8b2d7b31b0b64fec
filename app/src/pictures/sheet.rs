//! Placing inches of room on a sheet of paper, and the parts that drawings share.

use crate::markup::view;
use calc::floor::Point;
use leptos::prelude::*;

/// Room inches to sheet units (CSS pixels at phone size); y grows down on paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Sheet units per inch.
    pub scale: f64,
    left: f64,
    top: f64,
    low: Point,
    high: Point,
    /// Height of the whole drawing.
    pub height: f64,
}

/// Width of every drawing, in its own units; 360 px phones show it almost one to one.
pub const WIDTH: f64 = 344.0;

impl Sheet {
    /// Fits the corners into the sheet's width less the margins, and into `most_height`.
    pub fn fit(corners: &[Point], margin: f64, bottom: f64, most_height: f64) -> Self {
        let mut low = Point::new(f64::MAX, f64::MAX);
        let mut high = Point::new(f64::MIN, f64::MIN);
        for c in corners {
            low = Point::new(low.x_in.min(c.x_in), low.y_in.min(c.y_in));
            high = Point::new(high.x_in.max(c.x_in), high.y_in.max(c.y_in));
        }
        if corners.is_empty() {
            (low, high) = (Point::new(0.0, 0.0), Point::new(120.0, 120.0));
        }
        let (w, h) = (
            (high.x_in - low.x_in).max(1.0),
            (high.y_in - low.y_in).max(1.0),
        );
        let scale = ((WIDTH - 2.0 * margin) / w).min(most_height / h);
        let left = (WIDTH - w * scale) / 2.0;
        Self {
            scale,
            left,
            top: margin,
            low,
            high,
            height: margin + h * scale + bottom,
        }
    }

    /// Where a point of the room stands on the sheet.
    pub fn at(&self, p: Point) -> (f64, f64) {
        (
            self.left + (p.x_in - self.low.x_in) * self.scale,
            self.top + (self.high.y_in - p.y_in) * self.scale,
        )
    }

    /// The point of the room under a place on the sheet.
    pub fn back(&self, x: f64, y: f64) -> Point {
        Point::new(
            self.low.x_in + (x - self.left) / self.scale,
            self.high.y_in - (y - self.top) / self.scale,
        )
    }

    /// The `points` of a polygon.
    pub fn points(&self, corners: &[Point]) -> String {
        let mut s = String::new();
        for &c in corners {
            let (x, y) = self.at(c);
            s.push_str(&format!("{x:.1},{y:.1} "));
        }
        s
    }

    /// Lower left and upper right of what is drawn, room inches.
    pub fn extent(&self) -> (Point, Point) {
        (self.low, self.high)
    }
}

/// A dimension: a thin line with a slash at each end and its figure along it.
pub fn dimension(x1: f64, y1: f64, x2: f64, y2: f64, label: String) -> impl IntoView {
    let (mx, my) = (f64::midpoint(x1, x2), f64::midpoint(y1, y2));
    // Digits and marks are about 9 units wide at this size.
    let half = 4.5 * label.chars().count() as f64 + 3.0;
    let upright = (x2 - x1).abs() < (y2 - y1).abs();
    let slash = move |x: f64, y: f64| {
        view! { <line class="slash" x1=x - 4.0 y1=y + 4.0 x2=x + 4.0 y2=y - 4.0 /> }
    };
    view! {
        <g class="dim">
            <line class="dimension" x1=x1 y1=y1 x2=x2 y2=y2 />
            {slash(x1, y1)}
            {slash(x2, y2)}
            // The line breaks for its figure.
            <rect
                class="floor"
                x=mx - if upright { 9.0 } else { half }
                y=my - if upright { half } else { 9.0 }
                width=if upright { 18.0 } else { 2.0 * half }
                height=if upright { 2.0 * half } else { 18.0 }
            />
            <text
                class="halo"
                x=mx
                y=my
                dy=if upright { "0" } else { "5" }
                text-anchor="middle"
                transform=if upright { format!("rotate(-90 {mx} {my}) translate(0 5)") } else { String::new() }
            >
                {label}
            </text>
        </g>
    }
}
