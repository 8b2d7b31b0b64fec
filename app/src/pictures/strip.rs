//! A strip against its limit: what is there, what is planned on top of it, and the mark that neither may pass.

use crate::markup::view;
use leptos::prelude::*;

use super::sheet::WIDTH;

/// What a strip shows, in any unit that all share.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StripContent {
    /// What is there.
    pub now: f64,
    /// With what is planned; the same where nothing is.
    pub then: f64,
    /// What neither may pass.
    pub limit: f64,
}

const HEIGHT: f64 = 26.0;
const TOP: f64 = 7.0;
const BAND: f64 = 12.0;

/// The scale, in sheet units: what is largest of the three fills the width.
fn scale(content: StripContent) -> f64 {
    let most = content.now.max(content.then).max(content.limit);
    (WIDTH - 4.0) / most.max(1e-9)
}

/// The strip; its words stand beside it, so it is hidden from a screen reader.
pub fn strip(content: StripContent) -> AnyView {
    let scale = scale(content);
    let at = |value: f64| 2.0 + value.max(0.0) * scale;
    let (now, then, limit) = (at(content.now), at(content.then), at(content.limit));
    let over = content.then > content.limit * (1.0 + 1e-9);
    view! {
        <svg class="strip" viewBox=format!("0 0 {WIDTH} {HEIGHT}") aria-hidden="true">
            <line class="dimension" x1="2" y1=TOP + BAND x2=WIDTH - 2.0 y2=TOP + BAND />
            <rect class="strip-now" x="2" y=TOP width=now - 2.0 height=BAND />
            <rect class="strip-then" x=now.min(then) y=TOP width=(then - now).abs() height=BAND />
            <line class=if over { "strip-limit over" } else { "strip-limit" } x1=limit y1="1" x2=limit y2=HEIGHT - 1.0 />
        </svg>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_largest_fills_the_strip() {
        // 12 A of 15 A: four fifths of the way to the mark. 20 A of 15 A: the mark stands at three quarters.
        let under = StripContent {
            now: 12.0,
            then: 12.0,
            limit: 15.0,
        };
        assert!((12.0 * scale(under) / (WIDTH - 4.0) - 0.8).abs() < 1e-12);
        let over = StripContent {
            then: 20.0,
            ..under
        };
        assert!((15.0 * scale(over) / (WIDTH - 4.0) - 0.75).abs() < 1e-12);
        assert!(scale(StripContent::default()).is_finite());
    }
}
