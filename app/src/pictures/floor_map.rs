//! The floor seen from above: walls, openings, pins, contours, depth of pour.

use crate::markup::view;
use crate::reactive::memo;
use calc::floor::Point;
use leptos::ev::MouseEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::sheet::{Sheet, WIDTH, dimension};

/// How a spot is marked on the map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Not read yet: an open ring.
    Open,
    /// Read: a filled dot.
    Read,
    /// The one being entered.
    Now,
    /// Disagrees with its neighbours.
    Again,
}

/// A spot on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Pin {
    /// Where it is.
    pub at: Point,
    /// What is written beside it; empty: nothing.
    pub label: String,
    /// How it is marked.
    pub mark: Mark,
}

/// Lines of one height.
#[derive(Clone, Debug, PartialEq)]
pub struct HeightLine {
    /// Its label; empty: none.
    pub label: String,
    /// Heavier than the rest.
    pub index: bool,
    /// The line's pieces.
    pub pieces: Vec<Vec<Point>>,
}

/// An opening on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// Its left jamb, seen from inside.
    pub left: Point,
    /// Its right jamb.
    pub right: Point,
    /// Its letter or name.
    pub label: String,
}

/// Everything a floor map shows; leave out what it does not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MapContent {
    /// The room's corners.
    pub corners: Vec<Point>,
    /// Openings in the walls.
    pub gaps: Vec<Gap>,
    /// Triangles by depth: class 0 (thin) to 5 (deep).
    pub depth: Vec<([Point; 3], u8)>,
    /// Contour lines.
    pub lines: Vec<HeightLine>,
    /// Spots.
    pub pins: Vec<Pin>,
    /// Indexes of the pins whose labels must be seen.
    pub first: Vec<usize>,
    /// Where the worst gap under a straightedge was found.
    pub worst: Option<(Point, Point)>,
    /// A line drawn across: where a section is cut.
    pub cut: Option<(Point, Point)>,
    /// Downhill, degrees counter-clockwise from x; the caption says how much.
    pub downhill: Option<f64>,
    /// The lengths written along the sides: width, then length.
    pub sides: Option<(String, String)>,
    /// Numbers at the walls, from 1.
    pub wall_numbers: bool,
}

/// A label that would lie over one already written is left out; the table has them all.
fn room_for(taken: &mut Vec<(f64, f64, f64)>, x: f64, y: f64, width: f64) -> bool {
    let clear = taken
        .iter()
        .all(|&(tx, ty, tw)| (tx - x).abs() > f64::midpoint(tw, width) || (ty - y).abs() > 15.0);
    if clear {
        taken.push((x, y, width));
    }
    clear
}

/// The floor map.
#[component]
pub fn FloorMap(
    /// What to draw.
    #[prop(into)]
    content: Signal<MapContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
    /// Called with the index of the pin tapped.
    #[prop(optional)]
    on_tap: Option<Callback<usize>>,
    /// The tallest the plan may be drawn, in CSS pixels at phone size.
    #[prop(default = 400.0)]
    tall: f64,
) -> impl IntoView {
    let sheet = memo(move || {
        content.with(|c| {
            let (margin, bottom) = if c.sides.is_some() {
                (46.0, 50.0)
            } else {
                (26.0, 26.0)
            };
            Sheet::fit(&c.corners, margin, bottom, tall)
        })
    });
    let svg = NodeRef::<leptos::svg::Svg>::new();
    let tap = move |ev: MouseEvent| {
        let (Some(on_tap), Some(svg)) = (on_tap, svg.get_untracked()) else {
            return;
        };
        let element: &web_sys::Element = svg.unchecked_ref();
        let rect = element.get_bounding_client_rect();
        if rect.width() <= 0.0 {
            return;
        }
        let k = WIDTH / rect.width();
        let at = sheet.get_untracked().back(
            (f64::from(ev.client_x()) - rect.left()) * k,
            (f64::from(ev.client_y()) - rect.top()) * k,
        );
        let nearest = content.with_untracked(|c| {
            c.pins
                .iter()
                .enumerate()
                .map(|(i, p)| (i, p.at.distance_in(at)))
                .min_by(|a, b| a.1.total_cmp(&b.1))
        });
        if let Some((index, distance)) = nearest
            && distance * sheet.get_untracked().scale < 32.0
        {
            on_tap.run(index);
        }
    };
    let drawing = move || {
        let sheet = sheet.get();
        content.with(|c| draw(c, &sheet))
    };
    view! {
        <svg
            node_ref=svg
            viewBox=move || format!("0 0 {WIDTH} {:.0}", sheet.get().height)
            role="img"
            aria-label=move || says.get()
            on:click=tap
        >
            {drawing}
        </svg>
    }
}

fn draw(c: &MapContent, sheet: &Sheet) -> AnyView {
    let outline = sheet.points(&c.corners);
    // One path for each class and each mark, not one for each triangle and pin: a survey of hundreds of spots
    // must redraw at every key.
    let mut classes: [String; 6] = Default::default();
    for (triangle, class) in &c.depth {
        if let Some(path) = classes.get_mut(usize::from(*class)) {
            for (i, &corner) in triangle.iter().enumerate() {
                let (x, y) = sheet.at(corner);
                path.push_str(if i == 0 { "M" } else { "L" });
                path.push_str(&format!("{x:.1} {y:.1}"));
            }
            path.push('Z');
        }
    }
    let depth = classes
        .into_iter()
        .enumerate()
        .filter(|(_, path)| !path.is_empty())
        .map(|(class, path)| view! { <path class=format!("d{class}") d=path /> })
        .collect_view();
    let mut taken = Vec::new();
    let mut dots: [(&str, String); 4] = [
        ("pin", String::new()),
        ("pin read", String::new()),
        ("pin again", String::new()),
        ("pin now", String::new()),
    ];
    let mut now = None;
    let mut labels = Vec::new();
    // Where labels would lie over each other the pins named first win.
    let mut order: Vec<&Pin> = c.first.iter().filter_map(|&i| c.pins.get(i)).collect();
    order.extend(
        c.pins
            .iter()
            .enumerate()
            .filter(|(i, _)| !c.first.contains(i))
            .map(|(_, p)| p),
    );
    for p in order {
        let (x, y) = sheet.at(p.at);
        let (mark, radius) = match (p.mark, c.pins.len()) {
            (Mark::Now, _) => (3, 6.0),
            (Mark::Open, 0..=80) => (0, 4.0),
            (Mark::Read, 0..=80) => (1, 4.0),
            (Mark::Again, _) => (2, 5.0),
            (Mark::Open, _) => (0, 2.0),
            (Mark::Read, _) => (1, 2.0),
        };
        if p.mark == Mark::Now {
            now = Some((x, y));
        }
        let d = 2.0 * radius;
        dots[mark].1.push_str(&format!(
            "M{:.1} {y:.1}a{radius} {radius} 0 1 0 {d} 0a{radius} {radius} 0 1 0 -{d} 0",
            x - radius
        ));
        let width = 9.0 * f64::from(u32::try_from(p.label.chars().count()).unwrap_or(0));
        // Above to the right, then to the left, then below: where it is inside the picture and clear of the others.
        let places = [(1.0, -5.0), (-1.0, -5.0), (1.0, 17.0), (-1.0, 17.0)];
        let place = places.into_iter().find(|&(side, down)| {
            let (near, far) = (x + side * 7.0, x + side * (7.0 + width));
            (4.0..=WIDTH - 4.0).contains(&far)
                && room_for(&mut taken, f64::midpoint(near, far), y + down, width)
        });
        if let Some((side, down)) = place
            && !p.label.is_empty()
        {
            labels.push(view! {
                <text class="halo" x=x + side * 7.0 y=y + down text-anchor=if side < 0.0 { "end" } else { "start" }>
                    {p.label.clone()}
                </text>
            });
        }
    }
    let dots = dots
        .into_iter()
        .filter(|(_, path)| !path.is_empty())
        .map(|(class, path)| view! { <path class=class d=path /> })
        .collect_view();
    let ring = now.map(|(x, y)| view! { <circle class="ring pulse" cx=x cy=y r=11 /> });
    let pins = view! { {ring} {dots} {labels} };
    let lines = c
        .lines
        .iter()
        .map(|line| {
            let class = if line.index { "contour index" } else { "contour" };
            let pieces = line
                .pieces
                .iter()
                .map(|piece| view! { <polyline class=class points=sheet.points(piece) /> })
                .collect_view();
            let label = line
                .pieces
                .iter()
                .max_by_key(|piece| piece.len())
                .filter(|_| !line.label.is_empty())
                .and_then(|piece| piece.get(piece.len() / 2))
                .map(|&p| {
                    let (x, y) = sheet.at(p);
                    view! { <text class="halo" x=x y=y + 5.0 text-anchor="middle">{line.label.clone()}</text> }
                });
            view! { {pieces} {label} }
        })
        .collect_view();
    let gaps = c
        .gaps
        .iter()
        .map(|g| {
            let ((lx, ly), (rx, ry)) = (sheet.at(g.left), sheet.at(g.right));
            let (mx, my) = (f64::midpoint(lx, rx), f64::midpoint(ly, ry));
            let run = (rx - lx).hypot(ry - ly).max(1.0);
            // Outward: to the right hand of left-to-right on paper, seen from inside.
            let (ox, oy) = ((ry - ly) / run, (lx - rx) / run);
            let jamb = move |x: f64, y: f64| {
                view! { <line class="jamb" x1=x - 6.0 * ox y1=y - 6.0 * oy x2=x + 6.0 * ox y2=y + 6.0 * oy /> }
            };
            view! {
                <line class="opening" x1=lx y1=ly x2=rx y2=ry />
                {jamb(lx, ly)}
                {jamb(rx, ry)}
                <text class="halo" x=mx + 15.0 * ox y=my + 15.0 * oy + 5.0 text-anchor="middle">
                    {g.label.clone()}
                </text>
            }
        })
        .collect_view();
    let line = |ends: Option<(Point, Point)>, class: &'static str| {
        ends.map(|(a, b)| {
            let ((x1, y1), (x2, y2)) = (sheet.at(a), sheet.at(b));
            view! { <line class=class x1=x1 y1=y1 x2=x2 y2=y2 /> }
        })
    };
    let downhill = c.downhill.map(|degrees| {
        let (low, high) = sheet.extent();
        let middle = Point::new(
            f64::midpoint(low.x_in, high.x_in),
            f64::midpoint(low.y_in, high.y_in),
        );
        let (x, y) = sheet.at(middle);
        view! {
            <g class="arrow" transform=format!("translate({x:.1} {y:.1}) rotate({:.1})", -degrees)>
                <path d="M-34 0 L34 0 M36 0 L22 -7 M36 0 L22 7" />
            </g>
        }
    });
    let sides = c.sides.clone().map(|(width, length)| {
        let (low, high) = sheet.extent();
        let (x1, y1) = sheet.at(low);
        let (x2, y2) = sheet.at(high);
        view! {
            {dimension(x1, y1 + 36.0, x2, y1 + 36.0, width)}
            {dimension(x1 - 34.0, y1, x1 - 34.0, y2, length)}
        }
    });
    let numbers = c.wall_numbers.then(|| {
        let n = c.corners.len();
        (0..n)
            .map(|i| {
                let (a, b) = (c.corners[i], c.corners[(i + 1) % n]);
                let ((x1, y1), (x2, y2)) = (sheet.at(a), sheet.at(b));
                let run = (x2 - x1).hypot(y2 - y1).max(1.0);
                // Inward: to the left hand of a counter-clockwise walk.
                let (ix, iy) = ((y2 - y1) / run, (x1 - x2) / run);
                let (mx, my) = (
                    f64::midpoint(x1, x2) + 14.0 * ix,
                    f64::midpoint(y1, y2) + 14.0 * iy,
                );
                view! { <text x=mx y=my + 5.0 text-anchor="middle">{(i + 1).to_string()}</text> }
            })
            .collect_view()
    });
    view! {
        <polygon class="floor" points=outline.clone() />
        {depth}
        {lines}
        <polygon class="wall" points=outline />
        {gaps}
        {line(c.cut, "thin")}
        {line(c.worst, "worst")}
        {numbers}
        {downhill}
        {pins}
        {sides}
    }
    .into_any()
}
