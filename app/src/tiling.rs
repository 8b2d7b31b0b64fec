//! The layout of a room's tile: at once, or for the best start by steps that leave the page alive between them.

use std::sync::Arc;
use std::time::Duration;

use calc::finish::tile::{BestStart, Layout, Start, TileAsk, TileRefusal, layout};
use calc::job::Room;
use calc::job::questions::finish::{FinishProblem, tile};
use leptos::prelude::*;

use crate::open_job::OpenRoom;
use crate::reactive::memo;
use crate::work::closing_part;

/// How long a page stays away from its user, milliseconds.
const TURN_MS: f64 = 12.0;

/// A layout, or why there is none.
pub type Laid = Result<Arc<Layout>, FinishProblem<TileRefusal>>;

/// The tile of a room and its answer.
#[derive(Clone, Copy)]
pub struct Tiling {
    /// The room.
    pub room: OpenRoom,
    /// The part of it that closing up rests on.
    pub part: Memo<Option<Room>>,
    /// The answer; none while it is searched for.
    pub laid: RwSignal<Option<Laid>>,
    /// While it is searched for, and after a stop: starts tried, of how many.
    pub tried: RwSignal<(u32, u32)>,
    /// The search was stopped before its end.
    pub stopped: RwSignal<bool>,
    /// Which search is under way; others end.
    turn: StoredValue<u32>,
}

impl Tiling {
    /// The tile of a room; follows its entries.
    pub fn of(room: OpenRoom) -> Self {
        let part = closing_part(room);
        let tiling = Self {
            room,
            part,
            laid: RwSignal::new(None),
            tried: RwSignal::new((0, 0)),
            stopped: RwSignal::new(false),
            turn: StoredValue::new(0),
        };
        let ask = memo(move || part.with(|room| room.as_ref().map(tile::ask)));
        Effect::new(move |_| {
            if let Some(ask) = ask.get() {
                tiling.answer(ask);
            }
        });
        tiling
    }

    /// The layout, where there is one.
    pub fn layout(self) -> Option<Arc<Layout>> {
        self.laid
            .with(|laid| laid.as_ref().and_then(|laid| laid.as_ref().ok().cloned()))
    }

    fn next_turn(self) -> u32 {
        let turn = self.turn.get_value().wrapping_add(1);
        self.turn.set_value(turn);
        turn
    }

    fn answer(self, ask: Result<TileAsk, FinishProblem<TileRefusal>>) {
        let turn = self.next_turn();
        self.stopped.set(false);
        let ask = match ask {
            Err(problem) => return self.laid.set(Some(Err(problem))),
            Ok(ask) => ask,
        };
        if ask.start != Start::Best {
            let laid = layout(&ask).map(Arc::new).map_err(FinishProblem::Refused);
            return self.laid.set(Some(laid));
        }
        self.laid.set(None);
        match BestStart::new(&ask) {
            Err(refusal) => self.laid.set(Some(Err(FinishProblem::Refused(refusal)))),
            Ok(search) => self.later(search, turn),
        }
    }

    /// A few steps after what the user does has had its turn.
    fn later(self, search: BestStart, turn: u32) {
        set_timeout(move || self.go_on(search, turn), Duration::ZERO);
    }

    fn go_on(self, mut search: BestStart, turn: u32) {
        // Another search, or the page was left.
        if self.turn.try_get_value() != Some(turn) {
            return;
        }
        let stop = self.stopped.get_untracked();
        let began = now_ms();
        let mut progress = search.progress();
        while !stop && !progress.done() && now_ms() - began < TURN_MS {
            progress = search.step();
        }
        self.tried.set((progress.tried as u32, progress.of as u32));
        if progress.done() || stop && progress.best.is_some() {
            let laid = search.layout().map(Arc::new);
            self.laid.set(Some(laid.map_err(FinishProblem::Refused)));
        } else if stop {
            // Nothing was tried yet: one start makes an answer.
            search.step();
            self.later(search, turn);
        } else {
            self.later(search, turn);
        }
    }

    /// Searches anew, to the end.
    pub fn search_on(self) {
        if let Some(ask) = self
            .part
            .with_untracked(|room| room.as_ref().map(tile::ask))
        {
            self.answer(ask);
        }
    }
}

fn now_ms() -> f64 {
    window().performance().map_or(0.0, |clock| clock.now())
}
