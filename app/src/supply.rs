//! What follows from what a job needs: asked once for a page, and again only when its own part changes.

use calc::job::questions::supply::Needed;
use calc::job::questions::supply::buying::{BuyLine, Buying, buying};
use calc::job::questions::supply::quote::{QuoteAnswers, quote};
use calc::supply::need::Kind;
use leptos::prelude::*;

use crate::open_job::OpenJob;
use crate::reactive::{derived, memo};
use crate::words::supply as words;

/// What a job needs, buys and was quoted.
#[derive(Clone, Copy)]
pub struct Supply {
    /// The job.
    pub open: OpenJob,
    /// What it needs.
    pub needed: Memo<Needed>,
    /// The buying list.
    pub buying: Memo<Buying>,
}

impl Supply {
    /// The answers of a job.
    pub fn of(open: OpenJob) -> Self {
        // Needs come from the rooms: a price or a tick asks nothing of them anew.
        let rooms = open.part(|job| job.rooms.clone());
        let needed = memo(move || {
            rooms.track();
            open.job.with_untracked(Needed::of)
        });
        let entry = open.part(|job| job.buying.clone());
        let list = memo(move || entry.with(|entry| needed.with(|n| buying(&n.needs, entry))));
        Self {
            open,
            needed,
            buying: list,
        }
    }

    /// The quote against the needs.
    pub fn quote(self) -> Memo<QuoteAnswers> {
        let entry = self.open.part(|job| job.quote.clone());
        memo(move || entry.with(|entry| self.needed.with(|n| quote(entry, &n.needs))))
    }

    /// The key figure of the buying list.
    pub fn buying_figure(self) -> Signal<String> {
        derived(move || {
            self.buying.with(|list| match list.to_buy {
                0 => words::figure_none().to_owned(),
                all => words::figure(list.ticked, all),
            })
        })
    }

    /// The line of a need; none where it is needed no longer.
    pub fn line(self, kind: Kind, room: Option<u32>) -> Option<BuyLine> {
        self.buying.with(|list| {
            let found = list
                .lines
                .iter()
                .find(|line| line.need.kind == kind && line.need.room == room);
            found.cloned()
        })
    }

    /// The name of the room that a need is for.
    pub fn room_name(self, room: Option<u32>) -> String {
        match room {
            None => words::whole_house().to_owned(),
            Some(id) => self.open.job.with(|job| {
                crate::pages::jobs::shown_room(job.room(id).map_or("", |room| &room.name))
            }),
        }
    }
}
