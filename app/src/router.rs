//! Which page an address shows, and moving among pages without loading anew.
//!
//! The addresses are few and fixed, so a match serves; a router that takes any routes was a tenth of the download.

use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::HtmlAnchorElement;

use crate::paths::{self, Stage};
use crate::settings::Settings;

/// A page, by its address.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Page {
    /// The jobs on this device.
    Jobs,
    /// The gallery of widgets and pictures.
    Gallery,
    /// The list of quick sums.
    Sums,
    /// Quick sum: slope, rise and run.
    SumRamp,
    /// Quick sum: pour volume and bags.
    SumPour,
    /// Quick sum: box fill.
    SumBox,
    /// Quick sum: ampacity.
    SumAmpacity,
    /// Quick sum: voltage drop.
    SumDrop,
    /// Quick sum: measured voltages.
    SumMeasured,
    /// Quick sum: cable for a run.
    SumCable,
    /// Quick sum: a quote against a room's sizes.
    SumQuote,
    /// Quick sum: joint compound and tape.
    SumCompound,
    /// Quick sum of a stage of closing up.
    SumClosing(Stage),
    /// A job, by its id, and what of it.
    Job(String, JobPart),
    /// No page has this address.
    Unknown,
}

/// What of a job is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JobPart {
    /// The job's own page.
    Whole,
    /// A stage of the room with that id.
    Stage(u32, Stage),
    /// A stage of the house, and the row of it that has a page of its own.
    House(Stage, Option<u32>),
    /// No page of a job has this address.
    Unknown,
}

impl Page {
    /// The page at a path below the folder that the app is hosted under.
    pub fn at(path: &str) -> Self {
        let parts: Vec<&str> = path.split('/').filter(|part| !part.is_empty()).collect();
        match parts.as_slice() {
            [] => Self::Jobs,
            ["gallery"] => Self::Gallery,
            ["sums"] => Self::Sums,
            ["sums", "ramp"] => Self::SumRamp,
            ["sums", "pour"] => Self::SumPour,
            ["sums", "box"] => Self::SumBox,
            ["sums", "ampacity"] => Self::SumAmpacity,
            ["sums", "drop"] => Self::SumDrop,
            ["sums", "measured"] => Self::SumMeasured,
            ["sums", "cable"] => Self::SumCable,
            ["sums", "quote"] => Self::SumQuote,
            ["sums", "compound"] => Self::SumCompound,
            ["sums", name] => Stage::CLOSING
                .into_iter()
                .find(|stage| stage.segment() == *name)
                .map_or(Self::Unknown, Self::SumClosing),
            ["job", id, rest @ ..] => Self::Job((*id).to_owned(), JobPart::at(rest)),
            _ => Self::Unknown,
        }
    }
}

impl JobPart {
    fn at(parts: &[&str]) -> Self {
        let stage = |name: &str, of_house: bool| {
            Stage::ALL
                .into_iter()
                .find(|s| s.segment() == name && s.is_of_house() == of_house)
        };
        match parts {
            [] => Self::Whole,
            ["room", room, name] => match (room.parse(), stage(name, false)) {
                (Ok(room), Some(stage)) => Self::Stage(room, stage),
                _ => Self::Unknown,
            },
            [name] => stage(name, true).map_or(Self::Unknown, |stage| Self::House(stage, None)),
            [name, row] => match (row.parse(), stage(name, true)) {
                (Ok(row), Some(stage)) if stage.has_rows() => Self::House(stage, Some(row)),
                _ => Self::Unknown,
            },
            _ => Self::Unknown,
        }
    }
}

/// Where the user is. Shared by context.
#[derive(Clone, Copy)]
pub struct Place {
    /// The path below the app's folder, without a slash at its start.
    path: RwSignal<String>,
    settings: Settings,
}

impl Place {
    /// Takes the address from the browser, and links and the back button from now on.
    pub fn open(settings: Settings) -> Self {
        let place = Self {
            path: RwSignal::new(shown_path()),
            settings,
        };
        window_event_listener(ev::popstate, move |_| place.arrive());
        window_event_listener(ev::click, move |click| {
            if let Some(address) = inner_link(&click) {
                click.prevent_default();
                place.push(&address);
            }
        });
        place
    }

    /// The place that [`App`](crate::app::App) shares.
    pub fn here() -> Self {
        expect_context()
    }

    /// The page shown.
    pub fn page(self) -> Page {
        self.path.with(|path| Page::at(path))
    }

    /// Goes to an address of [`paths`].
    pub fn go(self, path: &str) {
        let path = path.trim_start_matches("./");
        self.push(&format!("{}/{path}", paths::base()));
    }

    fn push(self, address: &str) {
        let pushed = window()
            .history()
            .and_then(|history| history.push_state_with_url(&JsValue::NULL, "", Some(address)));
        if pushed.is_ok() {
            self.arrive();
        } else {
            // Where the browser keeps no history for the page, the address is loaded.
            let _ = window().location().set_href(address);
        }
    }

    /// Shows what the address says now; headings take the focus from now on.
    fn arrive(self) {
        let path = shown_path();
        if *self.path.read_untracked() != path {
            self.settings.moved.set(true);
            self.path.set(path);
            window().scroll_to_with_x_and_y(0.0, 0.0);
        }
    }
}

fn shown_path() -> String {
    let path = window().location().pathname().unwrap_or_default();
    below(&path, &paths::base()).unwrap_or_default().to_owned()
}

/// The part of a path below a folder; none where it lies outside of it.
fn below<'a>(path: &'a str, folder: &str) -> Option<&'a str> {
    let rest = path.strip_prefix(folder)?;
    if rest.is_empty() {
        return Some("");
    }
    rest.strip_prefix('/')
}

/// The address of a link of the app that was clicked plainly; none where the browser is to follow the link itself.
fn inner_link(click: &web_sys::MouseEvent) -> Option<String> {
    let plain = !click.default_prevented()
        && click.button() == 0
        && !(click.meta_key() || click.alt_key() || click.ctrl_key() || click.shift_key());
    let from: web_sys::Element = click.target()?.dyn_into().ok()?;
    let link: HtmlAnchorElement = from.closest("a[href]").ok()??.dyn_into().ok()?;
    let location = window().location();
    let outside = !link.target().is_empty()
        || link.has_attribute("download")
        || link.origin() != location.origin().ok()?;
    let path = link.pathname();
    // A place on the same page, or outside of the app's folder.
    let same_page = !link.hash().is_empty() && path == location.pathname().ok()?;
    (plain && !outside && !same_page && below(&path, &paths::base()).is_some()).then(|| link.href())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_lead_to_their_pages() {
        for (path, page) in [
            ("", Page::Jobs),
            ("/", Page::Jobs),
            (paths::JOBS.trim_start_matches("./"), Page::Jobs),
            (paths::SUMS, Page::Sums),
            ("sums/", Page::Sums),
            (paths::SUM_POUR, Page::SumPour),
            (paths::SUM_RAMP, Page::SumRamp),
            (paths::SUM_BOX, Page::SumBox),
            (paths::SUM_AMPACITY, Page::SumAmpacity),
            (paths::SUM_DROP, Page::SumDrop),
            (paths::SUM_MEASURED, Page::SumMeasured),
            (paths::SUM_CABLE, Page::SumCable),
            (paths::SUM_QUOTE, Page::SumQuote),
            (paths::SUM_COMPOUND, Page::SumCompound),
            ("sums/board", Page::SumClosing(Stage::Board)),
            ("sums/panel", Page::Unknown),
            (paths::GALLERY, Page::Gallery),
            ("sums/other", Page::Unknown),
            ("index.html", Page::Unknown),
            ("job", Page::Unknown),
        ] {
            assert_eq!(Page::at(path), page, "{path}");
        }
    }

    #[test]
    fn addresses_of_a_job_lead_to_its_parts() {
        let part = |path: &str| match Page::at(path) {
            Page::Job(id, part) => (id, part),
            other => panic!("{path}: {other:?}"),
        };
        let of = |part| ("k3".to_owned(), part);
        assert_eq!(part(&paths::job("k3")), of(JobPart::Whole));
        assert_eq!(part("job/k3/"), of(JobPart::Whole));
        for stage in Stage::ALL {
            let expected = if stage.is_of_house() {
                JobPart::House(stage, None)
            } else {
                JobPart::Stage(7, stage)
            };
            assert_eq!(part(&paths::stage("k3", 7, stage)), of(expected));
        }
        for stage in [Stage::Circuits, Stage::Boxes, Stage::OpenBox] {
            let expected = of(JobPart::House(stage, Some(12)));
            assert_eq!(part(&paths::row("k3", stage, 12)), expected);
        }
        for path in [
            "job/k3/room/7",
            "job/k3/room/x/pour",
            "job/k3/room/7/attic",
            "job/k3/rooms",
            "job/k3/room/7/panel",
            "job/k3/survey",
            "job/k3/panel/3",
            "job/k3/buy/3",
            "job/k3/boxes/x",
        ] {
            assert_eq!(part(path), of(JobPart::Unknown), "{path}");
        }
    }

    #[test]
    fn only_the_apps_folder_counts() {
        assert_eq!(below("/app/sums", "/app"), Some("sums"));
        assert_eq!(below("/app", "/app"), Some(""));
        assert_eq!(below("/sums", ""), Some("sums"));
        assert_eq!(below("/apple", "/app"), None);
        assert_eq!(below("/", "/app"), None);
    }
}
