//! Fields of the quick sums, each bound to its place among what is kept: read from there, written back at every key.

use std::sync::Arc;

use calc::job::fields::Field;
use calc::job::sums::Sums;
use calc::job::{CodeEdition, Typed};
use calc::saved::{Coded, Saved, Value};
use calc::wiring::conductor::Size;
use leptos::prelude::*;

use super::sums::OpenSums;
use crate::entry::{Choice, ChoiceOption, Measured, Pick};
use crate::markup::view;
use crate::reactive::derived;
use crate::words::{common, wiring as words};

type Reads<T> = Arc<dyn Fn(&Sums) -> T + Send + Sync>;
type Writes<T> = Arc<dyn Fn(&mut Sums, T) + Send + Sync>;

/// A place in the sums: how it is read and how it is written.
#[derive(Clone)]
pub struct Spot<T: 'static> {
    get: Reads<T>,
    put: Writes<T>,
}

impl<T> Spot<T> {
    /// A place from its two ways.
    pub fn new(
        get: impl Fn(&Sums) -> T + Send + Sync + 'static,
        put: impl Fn(&mut Sums, T) + Send + Sync + 'static,
    ) -> Self {
        Self {
            get: Arc::new(get),
            put: Arc::new(put),
        }
    }
}

/// The place of an entry: `typed!(ampacity.laid.ambient)`, or of a row: `typed!(box_fill.cables[id].insulated)`.
macro_rules! typed {
    ($($part:ident).+ [$id:ident] . $field:ident) => {
        $crate::pages::sum_fields::Spot::new(
            move |sums: &calc::job::sums::Sums| {
                let row = sums.$($part).+.iter().find(|row| row.id == $id);
                row.map(|row| row.$field.clone()).unwrap_or_default()
            },
            move |sums: &mut calc::job::sums::Sums, typed: calc::job::Typed| {
                if let Some(row) = sums.$($part).+.iter_mut().find(|row| row.id == $id) {
                    row.$field = typed;
                }
            },
        )
    };
    ($($part:ident).+) => {
        $crate::pages::sum_fields::Spot::new(
            |sums: &calc::job::sums::Sums| sums.$($part).+.clone(),
            |sums: &mut calc::job::sums::Sums, typed: calc::job::Typed| sums.$($part).+ = typed,
        )
    };
}

/// The place of a choice by its code; `$code` is the way from the value to its code.
macro_rules! coded {
    ($code:path; $($part:ident).+ [$id:ident] . $field:ident) => {
        $crate::pages::sum_fields::Spot::new(
            move |sums: &calc::job::sums::Sums| {
                let row = sums.$($part).+.iter().find(|row| row.id == $id);
                row.map(|row| $code(row.$field).to_owned()).unwrap_or_default()
            },
            move |sums: &mut calc::job::sums::Sums, code: String| {
                if let Some(row) = sums.$($part).+.iter_mut().find(|row| row.id == $id) {
                    $crate::pages::sum_fields::take_code(&mut row.$field, code);
                }
            },
        )
    };
    ($code:path; $($part:ident).+) => {
        $crate::pages::sum_fields::Spot::new(
            |sums: &calc::job::sums::Sums| $code(sums.$($part).+).to_owned(),
            |sums: &mut calc::job::sums::Sums, code: String| {
                $crate::pages::sum_fields::take_code(&mut sums.$($part).+, code);
            },
        )
    };
}

pub(super) use {coded, typed};

/// Puts the value of a code in the place of another; a code that names none changes nothing.
pub fn take_code<T: Saved>(into: &mut T, code: String) {
    if let Ok(value) = T::read(Value::String(code)) {
        *into = value;
    }
}

/// The code of a size; empty for none.
pub fn size_code(size: Option<Size>) -> &'static str {
    size.map_or("", Coded::word)
}

/// The size of a code; none where it names none.
pub fn size_of(code: &str) -> Option<Size> {
    Size::CODED
        .iter()
        .find(|(_, known)| *known == code)
        .map(|(size, _)| *size)
}

/// The place of a size that may be none yet.
macro_rules! size_spot {
    ($($part:ident).+ [$id:ident] . $field:ident) => {
        $crate::pages::sum_fields::Spot::new(
            move |sums: &calc::job::sums::Sums| {
                let row = sums.$($part).+.iter().find(|row| row.id == $id);
                $crate::pages::sum_fields::size_code(row.and_then(|row| row.$field)).to_owned()
            },
            move |sums: &mut calc::job::sums::Sums, code: String| {
                if let Some(row) = sums.$($part).+.iter_mut().find(|row| row.id == $id) {
                    row.$field = $crate::pages::sum_fields::size_of(&code);
                }
            },
        )
    };
    ($($part:ident).+) => {
        $crate::pages::sum_fields::Spot::new(
            |sums: &calc::job::sums::Sums| {
                $crate::pages::sum_fields::size_code(sums.$($part).+).to_owned()
            },
            |sums: &mut calc::job::sums::Sums, code: String| {
                sums.$($part).+ = $crate::pages::sum_fields::size_of(&code);
            },
        )
    };
}

pub(super) use size_spot;

/// What a field shows besides its input.
#[derive(Clone, Copy, Default)]
pub struct Shown {
    /// One sentence that teaches; empty: none.
    pub hint: &'static str,
    /// The field may stay empty.
    pub optional: bool,
    /// A refusal that only the whole question can see.
    pub also: Option<Signal<Option<String>>>,
}

impl Shown {
    /// A hint beneath the label.
    pub const fn hint(hint: &'static str) -> Self {
        Self {
            hint,
            optional: false,
            also: None,
        }
    }

    /// A field that may stay empty.
    pub const fn optional(hint: &'static str) -> Self {
        Self {
            hint,
            optional: true,
            also: None,
        }
    }

    /// A field that the whole question may refuse.
    pub const fn also(refused: Signal<Option<String>>) -> Self {
        Self {
            hint: "",
            optional: false,
            also: Some(refused),
        }
    }

    /// What the whole question refuses.
    pub fn refused(self) -> Signal<Option<String>> {
        self.also.unwrap_or_else(|| Signal::stored(None))
    }
}

/// A label that does not change.
pub fn label(text: &'static str) -> Signal<String> {
    Signal::stored(text.to_owned())
}

/// The place of a row in a list, from 1, as its labels have it.
pub fn numbered(ids: Memo<Vec<u32>>, id: u32, words: fn(usize) -> String) -> Signal<String> {
    derived(move || words(ids.with(|ids| ids.iter().position(|&row| row == id).unwrap_or(0) + 1)))
}

/// A measured field.
pub fn field(
    open: OpenSums,
    id: impl Into<String>,
    label: Signal<String>,
    field: Field,
    shown: Shown,
    spot: Spot<Typed>,
) -> AnyView {
    let Spot { get, put } = spot;
    let value = open.part(move |sums| get(sums));
    let on_typed = Callback::new(move |typed| open.change(|sums| put(sums, typed)));
    let id: String = id.into();
    let hint = Signal::stored(shown.hint.to_owned());
    let units = open.units();
    let also = shown.refused();
    view! { <Measured id label hint field units also optional=shown.optional value on_typed /> }
        .into_any()
}

/// A few options side by side.
pub fn choice(
    open: OpenSums,
    id: impl Into<String>,
    label: Signal<String>,
    hint: &'static str,
    options: Vec<ChoiceOption>,
    spot: Spot<String>,
) -> AnyView {
    let Spot { get, put } = spot;
    let value = open.part(move |sums| get(sums));
    let on_pick = Callback::new(move |code| open.change(|sums| put(sums, code)));
    let hint = Signal::stored(hint.to_owned());
    view! { <Choice id=id.into() label hint options=Signal::stored(options) value on_pick /> }
        .into_any()
}

/// One of many, in a list.
pub fn pick(
    open: OpenSums,
    id: impl Into<String>,
    label: Signal<String>,
    options: Vec<ChoiceOption>,
    spot: Spot<String>,
) -> AnyView {
    let Spot { get, put } = spot;
    let value = open.part(move |sums| get(sums));
    let on_pick = Callback::new(move |code| open.change(|sums| put(sums, code)));
    view! { <Pick id=id.into() label options=Signal::stored(options) value on_pick /> }.into_any()
}

/// The options of a choice with codes.
pub fn options<T: Coded>(words: fn(T) -> String) -> Vec<ChoiceOption> {
    T::CODED
        .iter()
        .map(|(value, code)| ChoiceOption::new(*code, words(*value)))
        .collect()
}

/// The sizes to pick from, from one up to another; none picked yet is one of them.
pub fn sizes(least: Size, most: Size) -> Vec<ChoiceOption> {
    let mut options = vec![ChoiceOption::new("", words::size_open())];
    options.extend(
        Size::ALL
            .iter()
            .filter(|size| (least..=most).contains(size))
            .map(|&size| ChoiceOption::new(size.word(), words::size(size))),
    );
    options
}

/// The edition of the code.
pub fn edition_field(open: OpenSums) -> AnyView {
    let year = |edition: CodeEdition| ChoiceOption::new(edition.code(), words::edition(edition));
    choice(
        open,
        "code-edition",
        label(words::edition_label()),
        words::edition_hint(),
        vec![
            year(CodeEdition::E2023),
            year(CodeEdition::E2020),
            year(CodeEdition::E2017),
        ],
        coded!(CodeEdition::code; code_edition),
    )
}

/// The button that takes a row out.
pub fn take_out(
    open: OpenSums,
    name: Signal<String>,
    take: impl Fn(&mut Sums) + Send + Sync + 'static,
) -> AnyView {
    view! {
        <button type="button" class="button look plain" on:click=move |_| open.change(&take)>
            {common::take_out()}
            <span class="visually-hidden">" "{name}</span>
        </button>
    }
    .into_any()
}

/// The button that adds a row, which is given an id of its own.
pub fn add(
    open: OpenSums,
    words: &'static str,
    add: impl Fn(&mut Sums, u32) + Send + Sync + 'static,
) -> AnyView {
    let grow = move |_| {
        open.change(|sums| {
            let id = sums.fresh_id();
            add(sums, id);
        });
    };
    view! { <button type="button" class="button add" on:click=grow>{words}</button> }.into_any()
}
