//! Fields of the quick sums, each bound to its place among what is kept: read from there, written back at every key.

use calc::job::fields::Field;
use calc::job::sums::Sums;
use calc::job::{CodeEdition, Typed};
use calc::saved::{Coded, Saved, Value};
use calc::wiring::conductor::Size;
use leptos::prelude::*;

use super::sums::OpenSums;
use crate::entry::{Choice, ChoiceOption, Measured, Pick};
use crate::markup::{For, view};
use crate::reactive::derived;
use crate::words::{common, wiring as words};

/// The place of an entry among the sums. Plain functions, which are given the row's id: a closure with a row of its own
/// for each field would be downloaded as often.
#[derive(Clone, Copy)]
pub struct Spot {
    /// The row; 0 where it is in none.
    pub row: u32,
    /// The entry.
    pub read: fn(&Sums, u32) -> Option<&Typed>,
    /// The same, to be written.
    pub write: fn(&mut Sums, u32) -> Option<&mut Typed>,
}

/// The place of a choice among the sums, read and written by its code.
#[derive(Clone, Copy)]
pub struct CodeSpot {
    /// The row; 0 where it is in none.
    pub row: u32,
    /// The code; empty for none.
    pub read: fn(&Sums, u32) -> String,
    /// Puts the value of a code there.
    pub write: fn(&mut Sums, u32, String),
}

/// The place of an entry: `typed!(ampacity.laid.ambient)`, or of a row: `typed!(box_fill.cables[id].insulated)`.
macro_rules! typed {
    ($($part:ident).+ [$id:expr] . $field:ident) => {
        $crate::pages::sum_fields::Spot {
            row: $id,
            read: |sums, id| {
                let row = sums.$($part).+.iter().find(|row| row.id == id);
                row.map(|row| &row.$field)
            },
            write: |sums, id| {
                let row = sums.$($part).+.iter_mut().find(|row| row.id == id);
                row.map(|row| &mut row.$field)
            },
        }
    };
    ($($part:ident).+) => {
        $crate::pages::sum_fields::Spot {
            row: 0,
            read: |sums, _| Some(&sums.$($part).+),
            write: |sums, _| Some(&mut sums.$($part).+),
        }
    };
}

/// The place of a choice by its code; `$code` is the way from the value to its code.
macro_rules! coded {
    ($code:path; $($part:ident).+ [$id:expr] . $field:ident) => {
        $crate::pages::sum_fields::CodeSpot {
            row: $id,
            read: |sums, id| {
                let row = sums.$($part).+.iter().find(|row| row.id == id);
                row.map_or("", |row| $code(row.$field)).to_owned()
            },
            write: |sums, id, code| {
                if let Some(row) = sums.$($part).+.iter_mut().find(|row| row.id == id) {
                    $crate::pages::sum_fields::take_code(&mut row.$field, code);
                }
            },
        }
    };
    ($code:path; $($part:ident).+) => {
        $crate::pages::sum_fields::CodeSpot {
            row: 0,
            read: |sums, _| $code(sums.$($part).+).to_owned(),
            write: |sums, _, code| $crate::pages::sum_fields::take_code(&mut sums.$($part).+, code),
        }
    };
}

/// The place of a size that may be none yet.
macro_rules! size_spot {
    ($($part:ident).+ [$id:expr] . $field:ident) => {
        $crate::pages::sum_fields::CodeSpot {
            row: $id,
            read: |sums, id| {
                let row = sums.$($part).+.iter().find(|row| row.id == id);
                $crate::pages::sum_fields::size_code(row.and_then(|row| row.$field)).to_owned()
            },
            write: |sums, id, code| {
                if let Some(row) = sums.$($part).+.iter_mut().find(|row| row.id == id) {
                    row.$field = $crate::pages::sum_fields::size_of(&code);
                }
            },
        }
    };
    ($($part:ident).+) => {
        $crate::pages::sum_fields::CodeSpot {
            row: 0,
            read: |sums, _| $crate::pages::sum_fields::size_code(sums.$($part).+).to_owned(),
            write: |sums, _, code| sums.$($part).+ = $crate::pages::sum_fields::size_of(&code),
        }
    };
}

pub(super) use {coded, size_spot, typed};

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
    spot: Spot,
) -> AnyView {
    let also = shown.refused();
    measured(open, id.into(), label, field, shown, spot, also)
}

/// The same where the whole question can refuse what its entry alone allows.
pub fn measured(
    open: OpenSums,
    id: String,
    label: Signal<String>,
    field: Field,
    shown: Shown,
    spot: Spot,
    also: Signal<Option<String>>,
) -> AnyView {
    let Spot { row, read, write } = spot;
    let value = open.part(move |sums| read(sums, row).cloned().unwrap_or_default());
    let on_typed = Callback::new(move |typed| {
        open.change(|sums| {
            if let Some(into) = write(sums, row) {
                *into = typed;
            }
        });
    });
    let hint = Signal::stored(shown.hint.to_owned());
    let units = open.units();
    view! { <Measured id label hint field units also optional=shown.optional value on_typed /> }
        .into_any()
}

/// The value of a choice, and what puts another there.
fn chosen(open: OpenSums, spot: CodeSpot) -> (Memo<String>, Callback<String>) {
    let CodeSpot { row, read, write } = spot;
    (
        open.part(move |sums| read(sums, row)),
        Callback::new(move |code| open.change(|sums| write(sums, row, code))),
    )
}

/// A few options side by side.
pub fn choice(
    open: OpenSums,
    id: impl Into<String>,
    label: Signal<String>,
    hint: &'static str,
    options: Vec<ChoiceOption>,
    spot: CodeSpot,
) -> AnyView {
    let (value, on_pick) = chosen(open, spot);
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
    spot: CodeSpot,
) -> AnyView {
    let (value, on_pick) = chosen(open, spot);
    view! { <Pick id=id.into() label options=Signal::stored(options) value on_pick /> }.into_any()
}

/// The size of a wire, from 18 or 14 AWG to 500 kcmil, and why it can't be, where it can't.
pub fn size_pick(
    open: OpenSums,
    id: &'static str,
    least: Size,
    spot: CodeSpot,
    error: Signal<Option<String>>,
) -> AnyView {
    let (value, on_pick) = chosen(open, spot);
    let options = Signal::stored(sizes(least, Size::Kcmil500));
    view! { <Pick id=id.to_owned() label=label(words::size_label()) options value error on_pick /> }
        .into_any()
}

/// The same from a list that follows the page.
pub fn pick_from(
    open: OpenSums,
    id: String,
    label: Signal<String>,
    options: Signal<Vec<ChoiceOption>>,
    spot: CodeSpot,
) -> AnyView {
    let (value, on_pick) = chosen(open, spot);
    view! { <Pick id label options value on_pick /> }.into_any()
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

/// Options from the code and the words of each.
pub fn few(all: &[(&'static str, &'static str)]) -> Vec<ChoiceOption> {
    all.iter()
        .map(|&(code, words)| ChoiceOption::new(code, words))
        .collect()
}

/// No and yes.
pub fn no_yes() -> Vec<ChoiceOption> {
    vec![
        ChoiceOption::new("no", common::no()),
        ChoiceOption::new("yes", common::yes()),
    ]
}

/// The code of yes or no.
pub fn yes_code(yes: bool) -> String {
    if yes { "yes" } else { "no" }.to_owned()
}

/// A list of rows among the sums: how it is read, and how a row is added and taken out. Plain functions, like a [`Spot`].
#[derive(Clone, Copy)]
pub struct Rows {
    /// The row that the list is within; 0 where it is in none.
    pub within: u32,
    /// The ids of its rows.
    pub ids: fn(&Sums, u32) -> Vec<u32>,
    /// Adds a row of that id (the last argument).
    pub add: fn(&mut Sums, u32, u32),
    /// Takes the row of that id out.
    pub take: fn(&mut Sums, u32),
    /// The words on the button that adds one.
    pub add_words: &'static str,
    /// What a row is called, by its place from 1.
    pub name: fn(usize) -> String,
}

/// A list of rows: `rows!(box_fill.rings; fill::add_ring(), fill::ring_name, |sums, id| ...)`.
macro_rules! rows {
    ($($part:ident).+; $add_words:expr, $name:expr, $add:expr) => {
        $crate::pages::sum_fields::Rows {
            within: 0,
            ids: |sums, _| sums.$($part).+.iter().map(|row| row.id).collect(),
            add: $add,
            take: |sums, id| sums.$($part).+.retain(|row| row.id != id),
            add_words: $add_words,
            name: $name,
        }
    };
}

pub(super) use rows;

/// A row of a list.
#[derive(Clone, Copy)]
pub struct Row {
    /// The sums.
    pub open: OpenSums,
    /// Its id.
    pub id: u32,
    rows: Rows,
    ids: Memo<Vec<u32>>,
}

impl Row {
    /// A label of its own, by its place from 1.
    pub fn named(self, words: fn(usize) -> String) -> Signal<String> {
        numbered(self.ids, self.id, words)
    }

    /// The id of an element of its own.
    pub fn key(self, name: &str) -> String {
        format!("{name}-{}", self.id)
    }

    /// The button that takes it out.
    pub fn take_out(self) -> AnyView {
        self.take_out_as(self.named(self.rows.name))
    }

    /// The same for a row that is named otherwise than by its place.
    pub fn take_out_as(self, name: Signal<String>) -> AnyView {
        let take = self.rows.take;
        let out = move |_| self.open.change(|sums| take(sums, self.id));
        view! {
            <button type="button" class="button look plain" on:click=out>
                {common::take_out()}
                <span class="visually-hidden">" " {name}</span>
            </button>
        }
        .into_any()
    }
}

/// The rows of a list, and the button that adds one.
pub fn list(
    open: OpenSums,
    class: &'static str,
    rows: Rows,
    draw: impl Fn(Row) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let ids = open.part(move |sums| (rows.ids)(sums, rows.within));
    let row = move |id: u32| {
        draw(Row {
            open,
            id,
            rows,
            ids,
        })
    };
    view! {
        <ul class=class>
            <For each=move || ids.get() key=|id| *id let:id>
                <li>{row(id)}</li>
            </For>
        </ul>
        {add(open, rows.add_words, rows.within, rows.add)}
    }
    .into_any()
}

/// The button that adds a row, which is given an id of its own.
pub fn add(open: OpenSums, words: &'static str, of: u32, add: fn(&mut Sums, u32, u32)) -> AnyView {
    let grow = move |_| {
        open.change(|sums| {
            let id = sums.fresh_id();
            add(sums, of, id);
        });
    };
    view! { <button type="button" class="button add" on:click=grow>{words}</button> }.into_any()
}
