//! A wire as it lies: its metal and covering, the air round it, its terminals, and the cables beside it. The quick sum
//! and a job's circuits share it.

use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::laid::{LaidRefusal, ampacity_of, smallest_of};
use calc::job::sums::{AmpacityWant, Sums};
use calc::job::{BesideEntry, CableKind, GroupingKind, Typed, fields};
use calc::saved::Coded;
use calc::wiring::ampacity::{AmpacityRefusal, Terminals};
use calc::wiring::conductor::Metal;
use leptos::prelude::*;

use super::super::sum_fields::{
    Row, Shown, choice, coded, few, field, label, list, measured, options, pick, rows, typed,
};
use super::super::sums::OpenSums;
use crate::entry::ChoiceOption;
use crate::markup::view;
use crate::reactive::{When, derived};
use crate::words::wiring::{self as words, ampacity as says};

/// Why calc has no ampacity for what is entered, where the wire itself or the air round it is why.
fn refused(sums: &Sums) -> Option<AmpacityRefusal> {
    let (sum, edition) = (&sums.ampacity, sums.code_edition);
    let asked = match sum.want {
        AmpacityWant::Ampacity => ampacity_of(sum, edition).err(),
        AmpacityWant::Conductor => smallest_of(sum, edition).err(),
    };
    match asked {
        Some(AskProblem::Refused(LaidRefusal::Ampacity(refusal))) => Some(refusal),
        _ => None,
    }
}

/// Why a wire of this size can't be, in words.
pub fn refused_size(open: OpenSums) -> Signal<Option<String>> {
    derived(move || match open.sums.with(refused) {
        Some(AmpacityRefusal::Conductor(refusal)) => Some(words::conductor_refusal(&refusal)),
        _ => None,
    })
}

/// Why it can't lie in this air, in words.
fn refused_air(open: OpenSums) -> Signal<Option<String>> {
    derived(move || match open.sums.with(refused) {
        Some(refusal @ (AmpacityRefusal::Ambient { .. } | AmpacityRefusal::TooHot { .. })) => {
            Some(says::refusal(&refusal))
        }
        _ => None,
    })
}

/// A conductor's metal and covering, the air round it and its terminals.
#[component]
pub fn LaidForm(
    /// The sums, or a row of a job.
    open: OpenSums,
) -> impl IntoView {
    let terminals = few(&[
        (Terminals::C60.word(), says::terminals_60()),
        (Terminals::C75.word(), says::terminals_75()),
        (Terminals::NotKnown.word(), says::terminals_unknown()),
    ]);
    view! {
        {pick(
            open,
            "wire-metal",
            label(words::metal_label()),
            options(|metal: Metal| words::metal(metal).to_owned()),
            coded!(Coded::word; ampacity.laid.metal),
        )}
        {pick(
            open,
            "wire-covering",
            label(words::covering_label()),
            options(words::covering),
            coded!(Coded::word; ampacity.laid.covering),
        )}
        {measured(
            open,
            "ambient".to_owned(),
            label(says::ambient_label()),
            fields::AMBIENT,
            Shown::hint(says::ambient_hint()),
            typed!(ampacity.laid.ambient),
            refused_air(open),
        )}
        {choice(
            open,
            "terminals",
            label(says::terminals_label()),
            "",
            terminals,
            coded!(Coded::word; ampacity.laid.terminals),
        )}
    }
}

fn kinds() -> Vec<ChoiceOption> {
    few(&[
        (CableKind::TwoWire.code(), says::kind_two()),
        (CableKind::Multiwire.code(), says::kind_multiwire()),
        (CableKind::Travellers.code(), says::kind_travellers()),
        (CableKind::HotAndSwitched.code(), says::kind_switched()),
        (CableKind::TwoOfWye.code(), says::kind_wye()),
    ])
}

fn beside(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    view! {
        {pick(
            open,
            row.key("beside"),
            row.named(says::kind_label),
            kinds(),
            coded!(CableKind::code; ampacity.laid.beside[id].cable),
        )}
        <div class="pair level">
            {field(
                open,
                row.key("beside-count"),
                row.named(says::many_label),
                fields::CABLES,
                Shown::default(),
                typed!(ampacity.laid.beside[id].count),
            )}
            {field(
                open,
                row.key("beside-spares"),
                row.named(says::spares_label),
                fields::CABLES,
                Shown::optional(""),
                typed!(ampacity.laid.beside[id].spares),
            )}
        </div>
        {row.take_out()}
    }
    .into_any()
}

/// The cables that a conductor lies with, and how.
#[component]
pub fn Bundle(
    /// The sums, or a row of a job.
    open: OpenSums,
) -> impl IntoView {
    let grouping = open.part(|sums| sums.ampacity.laid.grouping);
    let ways = few(&[
        (GroupingKind::Apart.code(), says::lie_apart()),
        (GroupingKind::Bundled.code(), says::lie_bundled()),
        (GroupingKind::SealedHole.code(), says::lie_sealed()),
        (GroupingKind::InInsulation.code(), says::lie_insulation()),
        (GroupingKind::Raceway.code(), says::lie_raceway()),
        (GroupingKind::Nipple.code(), says::lie_nipple()),
    ]);
    let others = rows!(ampacity.laid.beside; says::add_kind(), says::kind_name, |sums, _, id| {
        let count = Typed::plain("1");
        sums.ampacity.laid.beside.push(BesideEntry { id, count, ..BesideEntry::default() });
    });
    let with_length =
        move || matches!(grouping.get(), GroupingKind::Bundled | GroupingKind::Nipple);
    view! {
        <section class="sheet">
            <h2>{says::bundle_heading()}</h2>
            {pick(open, "own-cable", label(says::own_label()), kinds(), coded!(CableKind::code; ampacity.laid.cable))}
            {pick(open, "grouping", label(says::lie_label()), ways, coded!(GroupingKind::code; ampacity.laid.grouping))}
            <When when=with_length>
                {field(
                    open,
                    "grouped-length",
                    label(says::lie_length()),
                    fields::BUNDLE_LENGTH,
                    Shown::hint(says::lie_length_hint()),
                    typed!(ampacity.laid.grouped_length),
                )}
            </When>
            {list(open, "rows", others, beside)}
        </section>
    }
}
