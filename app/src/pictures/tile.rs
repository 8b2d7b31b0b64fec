//! A floor of tile seen from above, to scale: whole tiles, cut ones hatched, obstacles, doorways, the lines to snap.

use calc::finish::tile::Layout;
use calc::floor::Point;
use leptos::prelude::*;

use super::sheet::Sheet;
use crate::markup::view;
use crate::reactive::draw;

/// The most tiles that are drawn.
pub const MOST_DRAWN: usize = 6000;

/// The floor with its tiles.
#[component]
pub fn TilePicture(
    /// The layout; none: nothing is drawn.
    #[prop(into)]
    layout: Signal<Option<std::sync::Arc<Layout>>>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    let drawn = move || {
        layout
            .get()
            .map(|layout| sheet(&layout, says.get_untracked()))
    };
    draw(drawn)
}

/// The four corners of a tile on paper, as a piece of a path.
fn tile(sheet: &Sheet, layout: &Layout, index: usize, into: &mut String) {
    let Some(tile) = layout.tiles.get(index) else {
        return;
    };
    let (x, y) = (tile.corner.x_in, tile.corner.y_in);
    let corners = [
        (x, y),
        (x + tile.width_in, y),
        (x + tile.width_in, y + tile.height_in),
        (x, y + tile.height_in),
    ];
    for (number, (x, y)) in corners.into_iter().enumerate() {
        let (x, y) = sheet.at(layout.frame.to_plan(Point::new(x, y)));
        into.push(if number == 0 { 'M' } else { 'L' });
        into.push_str(&format!("{x:.1} {y:.1}"));
    }
    into.push('Z');
}

fn sheet(layout: &Layout, says: String) -> AnyView {
    let corners = layout.ask.outline.corners();
    let sheet = Sheet::fit(corners, 26.0, 26.0, 460.0);
    let (mut full, mut cut) = (String::new(), String::new());
    for (index, placed) in layout.tiles.iter().enumerate() {
        let into = if placed.full { &mut full } else { &mut cut };
        tile(&sheet, layout, index, into);
    }
    let outline = sheet.points(corners);
    let obstacles = layout
        .ask
        .obstacles
        .iter()
        .map(|of| {
            let (x, y) = sheet.at(Point::new(of.corner.x_in, of.corner.y_in + of.length_in));
            view! {
                <rect
                    class="obstacle"
                    x=x
                    y=y
                    width=of.width_in * sheet.scale
                    height=of.length_in * sheet.scale
                />
            }
        })
        .collect_view();
    let doors = layout
        .ask
        .openings
        .iter()
        .map(|of| {
            let (x1, y1) = sheet.at(of.left);
            let (x2, y2) = sheet.at(of.right);
            view! { <line class="opening" x1=x1 y1=y1 x2=x2 y2=y2 /> }
        })
        .collect_view();
    let lines = layout
        .snap_lines
        .iter()
        .map(|line| {
            let (x1, y1) = sheet.at(line.from.at);
            let (x2, y2) = sheet.at(line.to.at);
            view! { <line class="snap" x1=x1 y1=y1 x2=x2 y2=y2 /> }
        })
        .collect_view();
    let numbers = layout
        .ask
        .outline
        .walls()
        .enumerate()
        .map(|(index, wall)| {
            let (x, y) = sheet.at(wall.point_at(wall.length_in() / 2.0));
            let (ax, ay) = sheet.at(wall.point_at(0.0));
            let (bx, by) = sheet.at(wall.point_at(wall.length_in()));
            // Outside: to the right of the way round, which on paper has y down.
            let long = (bx - ax).hypot(by - ay).max(1.0);
            let (x, y) = (
                x - (by - ay) / long * 14.0,
                y + (bx - ax) / long * 14.0 + 5.0,
            );
            view! { <text class="halo" x=x y=y text-anchor="middle">{index + 1}</text> }
        })
        .collect_view();
    view! {
        <svg viewBox=format!("0 0 {} {:.0}", super::sheet::WIDTH, sheet.height) role="img" aria-label=says>
            <defs>
                <clipPath id="tiled-floor"><polygon points=outline.clone() /></clipPath>
                <pattern id="cut-tile" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <line class="hatch" x1="0" y1="0" x2="0" y2="6" />
                </pattern>
            </defs>
            <polygon class="floor" points=outline.clone() />
            <g clip-path="url(#tiled-floor)">
                <path class="tile" d=full />
                <path class="tile cut" d=cut />
                {obstacles}
            </g>
            <polygon class="wall" points=outline />
            {doors}
            {lines}
            {numbers}
        </svg>
    }
    .into_any()
}
