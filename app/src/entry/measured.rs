//! A measured entry: a length, a slope, a number, with what was understood echoed beneath and, for lengths in
//! inches, the keys that a number pad lacks and the tape strip.

use std::time::Duration;

use crate::markup::view;
use crate::reactive::{When, derived, memo};
use calc::job::Units;
use calc::job::fields::Field;
use calc::quantity::length::{echo, tape};
use calc::quantity::{Length, LengthUnit, Slope, SlopeUnit, Typed};
use leptos::prelude::*;

use super::frame::{Frame, described_by};
use super::tape::TapeStrip;
use crate::settings::Settings;
use crate::words::{entry as words, refusals};

/// What a field understood, in both systems; nothing for plain numbers, blanks and refused texts.
fn understood(field: &Field, typed: &Typed, units: Units) -> Option<String> {
    let value = field.optional(typed).ok().flatten()?;
    let metric = units == Units::Metric;
    match field {
        Field::Length(..) => Some(echo(Length::from_inches(value), 16, metric)),
        Field::Slope(..) => {
            let slope = Slope::from_ratio(value);
            Some(format!(
                "{} = {} = {}",
                slope.format(SlopeUnit::OneTo, 1),
                slope.format(SlopeUnit::Percent, 2),
                slope.format(
                    if metric {
                        SlopeUnit::MmPerM
                    } else {
                        SlopeUnit::InPer4Ft
                    },
                    2
                )
            ))
        }
        Field::Area(..)
        | Field::Volume(..)
        | Field::Number(_)
        | Field::Percent(_)
        | Field::Whole(_)
        | Field::Amount(..)
        | Field::Temperature(_) => None,
    }
}

/// The unit in which the field reads a bare number, as the label shows it.
fn unit_words(field: &Field, units: Units) -> String {
    let metric = units == Units::Metric;
    match field {
        Field::Length(a, b, _) => refusals::length_unit(if metric { *b } else { *a }).to_owned(),
        Field::Area(a, b, _) => if metric { *b } else { *a }.symbol().to_owned(),
        Field::Volume(a, b, _) => if metric { *b } else { *a }.symbol().to_owned(),
        Field::Slope(a, b, _) => words::slope_unit(if metric { *b } else { *a }).to_owned(),
        Field::Percent(_) => "%".to_owned(),
        Field::Amount(symbol, _) => symbol.symbol().to_owned(),
        Field::Temperature(_) => if metric { "°C" } else { "°F" }.to_owned(),
        Field::Number(_) | Field::Whole(_) => String::new(),
    }
}

/// The units in which an entry's bare number is read: those it was typed in, for as long as anything stands there.
fn typed_in(field: &Field, typed: &Typed, units: Units) -> Units {
    if typed.is_blank() || typed.unit.is_empty() {
        return units;
    }
    [units, Units::FeetInches, Units::Metric]
        .into_iter()
        .find(|&units| field.unit_code(units) == typed.unit)
        .unwrap_or(units)
}

/// Whether all of an input's text is chosen, so that the next key takes its place.
fn all_chosen(input: &web_sys::HtmlInputElement) -> bool {
    let all = u32::try_from(input.value().encode_utf16().count()).unwrap_or(u32::MAX);
    (input.selection_start(), input.selection_end()) == (Ok(Some(0)), Ok(Some(all)))
}

/// One measured field.
#[component]
pub fn Measured(
    /// Id of the input.
    #[prop(into)]
    id: String,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// What is measured and what is allowed.
    field: Field,
    /// The entry in force.
    #[prop(into)]
    value: Signal<Typed>,
    /// Called with the entry at every key.
    on_typed: Callback<Typed>,
    /// The units in force.
    #[prop(into)]
    units: Signal<Units>,
    /// One sentence that teaches; empty: none.
    #[prop(into, default = Signal::stored(String::new()))]
    hint: Signal<String>,
    /// A further refusal that only the whole question can see; shown where the entry itself is fine.
    #[prop(into, default = Signal::stored(None))]
    also: Signal<Option<String>>,
    /// The keys and the tape stay open, as in the survey walk.
    #[prop(optional)]
    always_open: bool,
    /// Called when the user presses Enter.
    #[prop(optional)]
    on_enter: Option<Callback<()>>,
    /// The field may stay empty; says so after its unit.
    #[prop(optional)]
    optional: bool,
) -> impl IntoView {
    let settings = expect_context::<Settings>();
    // A refusal waits until the field is left: nobody is judged in mid-word.
    let left = RwSignal::new(!value.get_untracked().is_blank());
    let refusal = memo(move || value.with(|v| field.optional(v).err()));
    let error = derived(move || {
        if left.get() {
            refusal
                .get()
                .map(|r| refusals::entry(&r, &field))
                .or_else(|| also.get())
        } else {
            None
        }
    });
    let echo_line = derived(move || match field {
        Field::Length(..) | Field::Slope(..) => Some(
            value
                .with(|v| understood(&field, v, units.get()))
                .unwrap_or_default(),
        ),
        _ => None,
    });
    let unit = derived(move || {
        // After a change of units an older entry still stands in its own, and its label says so.
        let unit = unit_words(&field, value.with(|v| typed_in(&field, v, units.get())));
        if optional {
            format!(
                "{unit}{}({})",
                if unit.is_empty() { "" } else { " " },
                crate::words::common::optional()
            )
        } else {
            unit
        }
    });
    let node = NodeRef::<leptos::html::Input>::new();
    let open_id = id.clone();
    let tools_open = memo(move || always_open || *settings.open_tools.read() == open_id);
    // A text that is typed over as a whole is a new entry, in the units in force; one that is mended keeps its own.
    let typed_over = StoredValue::new(false);
    let keep = move |text: String| {
        let units = value.with_untracked(|v| {
            if typed_over.get_value() {
                units.get_untracked()
            } else {
                typed_in(&field, v, units.get_untracked())
            }
        });
        typed_over.set_value(false);
        on_typed.run(field.keep(text, units));
    };
    let put = move |key: &'static str| {
        let Some(input) = node.get_untracked() else {
            return;
        };
        let text = input.value();
        let at = input.selection_start().ok().flatten().unwrap_or(u32::MAX) as usize;
        let to = input.selection_end().ok().flatten().unwrap_or(u32::MAX) as usize;
        // The browser counts in UTF-16 units.
        let units16: Vec<u16> = text.encode_utf16().collect();
        let (at, to) = (at.min(units16.len()), to.min(units16.len()));
        let mut put = units16[..at.min(to)].to_vec();
        put.extend(key.encode_utf16());
        let caret = u32::try_from(put.len()).unwrap_or(0);
        put.extend(&units16[to.max(at)..]);
        let text = String::from_utf16_lossy(&put);
        input.set_value(&text);
        let _ = input.set_selection_range(caret, caret);
        keep(text);
    };
    let key = move |sign: &'static str, word: &'static str| {
        view! {
            <button
                type="button"
                tabindex="-1"
                aria-label=word
                on:pointerdown=|ev| ev.prevent_default()
                on:click=move |_| put(sign)
            >
                {if sign == " " { "␣" } else { sign }}
            </button>
        }
    };
    // The unit in which the text was typed; only then does the tape read it as the field does.
    let bare = move |typed: &Typed| {
        LengthUnit::from_code(&typed.unit)
            .or_else(|| LengthUnit::from_code(field.unit_code(units.get())))
            .unwrap_or_default()
    };
    let sixteenth = derived(move || value.with(|v| tape::sixteenths(&v.text, bare(v))));
    let set_sixteenth = Callback::new(move |s: u32| {
        let text = value.with_untracked(|v| tape::with_sixteenths(&v.text, s, bare(v)));
        if let Some(text) = text {
            left.set(true);
            keep(text);
        }
    });
    let is_length = matches!(field, Field::Length(..));
    let focus_id = id.clone();
    let tape_id = format!("{id}-tape");
    let described = described_by(&id);
    let input_id = id.clone();
    view! {
        <Frame id label unit hint error echo=echo_line>
            <input
                id=input_id
                node_ref=node
                type="text"
                inputmode="decimal"
                autocomplete="off"
                autocapitalize="off"
                spellcheck="false"
                enterkeyhint="next"
                aria-describedby=described
                aria-invalid=move || error.read().is_some().to_string()
                prop:value=move || value.with(|v| v.text.clone())
                on:input:target=move |ev| keep(ev.target().value())
                on:focus=move |_| {
                    // Once the tap is over: where the strip of a field above closes, this one moves, and the tap that
                    // began on it would end beside it.
                    let (id, tools) = (focus_id.clone(), settings.open_tools);
                    set_timeout(
                        move || {
                            if document().active_element().is_some_and(|active| active.id() == id) {
                                tools.set(if is_length { id } else { String::new() });
                            }
                        },
                        Duration::ZERO,
                    );
                }
                on:blur=move |_| left.set(true)
                on:keydown=move |ev| {
                    typed_over.set_value(node.get_untracked().is_some_and(|input| all_chosen(&input)));
                    if ev.key() == "Enter" && let Some(go) = on_enter {
                        ev.prevent_default();
                        // What keeps it from going on is said at once.
                        left.set(true);
                        go.run(());
                    }
                }
            />
            <When when=move || is_length && tools_open.get() && units.get() == Units::FeetInches>
                <div class="tools">
                    <div class="keys" role="group" aria-label=words::more_keys()>
                        {key("'", words::key_feet())}
                        {key("\"", words::key_inches())}
                        {key("/", words::key_over())}
                        {key(" ", words::key_space())}
                        {key("-", words::key_minus())}
                        <button
                            type="button"
                            aria-pressed=move || settings.fine_tape.get().to_string()
                            on:pointerdown=|ev| ev.prevent_default()
                            on:click=move |_| settings.turn_tape()
                        >
                            "1/16"
                        </button>
                    </div>
                    <TapeStrip
                        id=tape_id.clone()
                        label=derived(move || words::fraction_of(label.get()))
                        sixteenth
                        on_set=set_sixteenth
                        fine=settings.fine_tape
                    />
                </div>
            </When>
        </Frame>
    }
}
