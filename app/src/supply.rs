//! What follows from what a job needs: asked once for a page, and again only when its own part changes.

use calc::finish::tile::{Start, TileAsk, TileRefusal};
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::supply::buying::{BuyLine, Buying, buying};
use calc::job::questions::supply::quote::{QuoteAnswers, quote};
use calc::job::questions::supply::{Needed, Tiles};
use calc::supply::need::Kind;
use leptos::prelude::*;

use crate::open_job::OpenJob;
use crate::reactive::{derived, memo};
use crate::tiling::Tiling;
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
        // Tile is laid out beside: the best start is searched for by steps.
        let tilings: Vec<Tiling> = rooms.with_untracked(|rooms| {
            let tiled = rooms.iter().filter(|room| !room.tile.width.is_blank());
            tiled.map(|room| Tiling::of(open.room(room.id))).collect()
        });
        let needed = memo(move || {
            rooms.track();
            open.job.with_untracked(|job| {
                Needed::with_tiles(job, &|room, ask| count(&tilings, room, ask))
            })
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

/// The tiles of a room as they were laid out beside; those that were not, at once where there is nothing to search.
fn count(tilings: &[Tiling], room: u32, ask: &TileAsk) -> Option<Result<Tiles, TileRefusal>> {
    let Some(tiling) = tilings.iter().find(|tiling| tiling.room.id == room) else {
        return (ask.start != Start::Best).then(|| Tiles::of(ask));
    };
    tiling.laid.with(|laid| match laid.as_ref()? {
        Ok(laid) => Some(Ok(Tiles::from(&**laid))),
        Err(FinishProblem::Refused(refusal)) => Some(Err(refusal.clone())),
        // Its entries were mended just now: it is asked anew.
        Err(_) => None,
    })
}
