//! One space of the panel, entered: the form of its breaker, its rating at a tap, what it feeds, and the next free one.

use calc::job::questions::wiring::panel::PanelView;
use calc::job::{BreakerEntry, Typed, fields};
use calc::saved::Coded;
use calc::wiring::panel::{BreakerForm, Half, leg_of};
use leptos::prelude::*;

use super::{breaker_at, split_place, trouble_of};
use crate::entry::{Choice, ChoiceOption, Measured, Pick, TextEntry};
use crate::focus;
use crate::house::{House, number_of};
use crate::markup::{For, view};
use crate::open_job::OpenJob;
use crate::pages::sum_fields::{label, options, take_code};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::common;
use crate::words::wiring::panel as words;

/// The ratings of most branch circuits, amperes.
const USUAL_A: [&str; 6] = ["15", "20", "30", "40", "50", "60"];

/// The words that labels are made of most, to be added at a tap: where, then what.
fn usual_words() -> [&'static str; 12] {
    [
        words::in_kitchen(),
        words::in_bathroom(),
        words::in_bedroom(),
        words::in_hall(),
        words::in_basement(),
        words::in_garage(),
        words::feeds_receptacles(),
        words::feeds_lights(),
        words::feeds_heater(),
        words::feeds_dryer(),
        words::feeds_washer(),
        words::feeds_dishwasher(),
    ]
}

/// A label with another word at its end; the first word begins with a capital.
fn with_word(label: &str, word: &str) -> String {
    let label = label.trim_end();
    if label.is_empty() {
        let mut letters = word.chars();
        let first = letters.next().map(|first| first.to_ascii_uppercase());
        return first.map(String::from).unwrap_or_default() + letters.as_str();
    }
    format!("{label} {word}")
}

/// The first free place after another by number, past the last from the first on; none where all are taken.
fn next_free(view: &PanelView, after: &str) -> Option<String> {
    let (from, half) = split_place(after).unwrap_or((0, ""));
    let mut free: Vec<(u32, String)> = Vec::new();
    for space in view.rows.iter().flat_map(|row| [&row.left, &row.right]) {
        let Some(space) = space else { continue };
        match space.occupants.as_slice() {
            [] => free.push((space.space, space.space.to_string())),
            [one] => {
                let other = match one.half {
                    Some(Half::A) => "B",
                    Some(Half::B) => "A",
                    None => continue,
                };
                free.push((space.space, format!("{}{other}", space.space)));
            }
            _ => {}
        }
    }
    // After the half A of a tandem comes its half B, and never the place itself.
    let later = |(space, place): &&(u32, String)| {
        place != after && (*space > from || (*space == from && half == "A"))
    };
    let least = |places: Vec<&(u32, String)>| {
        let first = places.iter().map(|(space, _)| *space).min()?;
        let found = places.iter().find(|(space, _)| *space == first);
        found.map(|(_, place)| place.clone())
    };
    least(free.iter().filter(later).collect())
        .or_else(|| least(free.iter().filter(|(_, place)| place != after).collect()))
}

/// The space that is picked, and the way to the next.
#[component]
pub fn Editor(
    /// The job.
    open: OpenJob,
    /// Its wiring's answers.
    house: House,
    /// The place that is picked: `7`, `16A`; empty for none.
    picked: RwSignal<String>,
) -> impl IntoView {
    let first = move |_| {
        let place = house
            .panel
            .with_untracked(|panel| next_free(panel.as_ref().ok()?, ""));
        picked.set(place.unwrap_or_else(|| "1".to_owned()));
        focus::soon("space-heading");
    };
    // The breaker taken out last, for undo.
    let taken_out = RwSignal::new(None::<BreakerEntry>);
    let put_back = move |_| {
        if let Some(entry) = taken_out.get_untracked() {
            open.change(|job| job.panel.breakers.push(entry));
            taken_out.set(None);
        }
    };
    let taken_name = move || {
        taken_out.with(|taken| {
            let taken = taken.as_ref()?;
            Some(words::breaker_out(&words::number(taken.space, taken.form)))
        })
    };
    view! {
        <When when=move || picked.read().is_empty()>
            <p class="quiet">{words::editor_start()}</p>
            <button type="button" class="button main" on:click=first>{words::first_free()}</button>
        </When>
        <For
            each=move || Some(picked.get()).filter(|place| !place.is_empty()).into_iter().collect()
            key=|place| place.clone()
            let:place
        >
            <Space open house picked place taken_out />
        </For>
        <div role="status">
            <When when=move || taken_out.read().is_some()>
                <div class="notice">
                    <p>{say(taken_name)}</p>
                    <button type="button" class="button" id="put-back" on:click=put_back>{common::undo()}</button>
                </div>
            </When>
        </div>
    }
}

/// A form's code among the three that are chosen from; the half follows from the place.
const fn form_code(form: BreakerForm) -> &'static str {
    match form {
        BreakerForm::Single => "single",
        BreakerForm::TwoPole => "two_pole",
        BreakerForm::Tandem(_) => "tandem",
    }
}

#[component]
fn Space(
    open: OpenJob,
    house: House,
    picked: RwSignal<String>,
    place: String,
    taken_out: RwSignal<Option<BreakerEntry>>,
) -> impl IntoView {
    let place = StoredValue::new(place);
    let (space, half) = place.with_value(|place| {
        split_place(place).map_or((0, None), |(space, half)| {
            let half = match half {
                "A" => Some(Half::A),
                "B" => Some(Half::B),
                _ => None,
            };
            (space, half)
        })
    });
    let entry = memo(move || {
        open.job
            .with(|job| place.with_value(|place| breaker_at(job, place).cloned()))
    });
    // Changes the breaker here; the first entry puts one in.
    let change = move |change: &dyn Fn(&mut BreakerEntry)| {
        open.change(|job| {
            let id = place.with_value(|place| breaker_at(job, place).map(|found| found.id));
            let id = id.unwrap_or_else(|| {
                let id = job.fresh_id();
                job.panel.breakers.push(BreakerEntry {
                    id,
                    space,
                    form: half.map_or(BreakerForm::Single, BreakerForm::Tandem),
                    ..BreakerEntry::default()
                });
                id
            });
            if let Some(found) = job.panel.breaker_mut(id) {
                change(found);
            }
        });
    };
    let part = move |part: fn(&BreakerEntry) -> String| {
        derived(move || entry.with(|entry| entry.as_ref().map(part).unwrap_or_default()))
    };
    let rating = derived(move || {
        entry.with(|entry| {
            entry
                .as_ref()
                .map(|entry| entry.rating.clone())
                .unwrap_or_default()
        })
    });
    let next = Callback::new(move |()| {
        let found = house.panel.with_untracked(|panel| {
            place.with_value(|place| next_free(panel.as_ref().ok()?, place))
        });
        picked.set(found.unwrap_or_default());
        focus::soon("space-heading");
    });
    let forms = vec![
        ChoiceOption::new("single", words::form_single()),
        ChoiceOption::new("two_pole", words::form_two()),
        ChoiceOption::new("tandem", words::form_tandem()),
    ];
    let take_form = Callback::new(move |code: String| {
        let form = match code.as_str() {
            "two_pole" => BreakerForm::TwoPole,
            "tandem" => BreakerForm::Tandem(half.unwrap_or(Half::A)),
            _ => BreakerForm::Single,
        };
        change(&|breaker| breaker.form = form);
        // A half of a tandem is another place than the whole of its space.
        let now = match form {
            BreakerForm::Tandem(_) => words::number(space, form),
            BreakerForm::Single | BreakerForm::TwoPole => space.to_string(),
        };
        if picked.with_untracked(|picked| *picked != now) {
            picked.set(now);
            focus::soon("space-heading");
        }
    });
    let form = derived(move || {
        let none = if half.is_some() { "tandem" } else { "single" };
        entry.with(|entry| {
            entry
                .as_ref()
                .map_or(none, |entry| form_code(entry.form))
                .to_owned()
        })
    });
    let troubles = derived(move || {
        let id = entry.with(|entry| entry.as_ref().map(|entry| entry.id));
        house.panel.with(|panel| match (panel, id) {
            (Ok(view), Some(id)) => trouble_of(view, id),
            _ => Vec::new(),
        })
    });
    let keys = USUAL_A
        .iter()
        .map(|&amps| {
            let on = move || rating.with(|rating| rating.text == amps).to_string();
            let take = move |_| {
                change(&|breaker| breaker.rating = fields::RATING.keep(amps, Default::default()));
                if entry.with_untracked(|entry| entry.as_ref().is_some_and(|e| e.label.is_empty()))
                {
                    focus::soon("space-label");
                }
            };
            view! { <button type="button" aria-pressed=on on:click=take>{amps}</button> }
        })
        .collect_view();
    let add_word = Callback::new(move |word: String| {
        change(&|breaker| breaker.label = with_word(&breaker.label, &word));
    });
    // The job's own rooms first, a line each.
    let rooms = open.part(|job| {
        let names: Vec<&str> = job.rooms.iter().map(|room| room.name.trim()).collect();
        names.join("\n")
    });
    let label_words = move || {
        rooms.with(|rooms| {
            let named = rooms.lines().filter(|name| !name.is_empty());
            named
                .chain(usual_words())
                .map(|word| word_key(word, add_word))
                .collect_view()
        })
    };
    let heading = move || {
        let leg = match entry.with(|entry| entry.as_ref().map(|entry| entry.form)) {
            Some(BreakerForm::TwoPole) => words::legs_both(),
            _ => words::leg(leg_of(space)),
        };
        let number = entry.with(|entry| match entry {
            Some(entry) => words::number(entry.space, entry.form),
            None => place.get_value(),
        });
        words::editor_heading(&number, leg)
    };
    let others = derived(move || {
        let mut others = vec![ChoiceOption::new("", words::tied_none())];
        let own = entry.with(|entry| entry.as_ref().map(|entry| entry.id));
        house.wiring.with(|job| {
            let all = job.panel.breakers.iter().filter(|b| Some(b.id) != own);
            others.extend(all.map(|b| {
                let words = format!("{} · {}", number_of(job, b.id), b.label);
                ChoiceOption::new(b.id.to_string(), words)
            }));
        });
        others
    });
    let out = move |_| {
        open.change(|job| {
            let id = place.with_value(|place| breaker_at(job, place).map(|found| found.id));
            if let Some(at) = job.panel.breakers.iter().position(|b| Some(b.id) == id) {
                taken_out.set(Some(job.panel.breakers.remove(at)));
            }
        });
        focus::soon("put-back");
    };
    let out_word = move || {
        entry.with(|entry| {
            entry
                .as_ref()
                .map(|entry| words::take_out_breaker(&words::number(entry.space, entry.form)))
        })
    };
    let units = open.units();
    view! {
        <h3 id="space-heading" tabindex="-1">{say(heading)}</h3>
        <Choice
            id="space-form".to_owned()
            label=label(words::form_label())
            options=Signal::stored(forms)
            value=form
            on_pick=take_form
        />
        {draw(move || {
            troubles
                .get()
                .into_iter()
                .map(|words| view! { <p class="field-trouble" role="alert">{words}</p> })
                .collect_view()
        })}
        <div class="stack-tight">
            <Measured
                id="space-rating"
                label=label(words::rating_label())
                field=fields::RATING
                units
                value=rating
                on_typed=Callback::new(move |typed: Typed| change(&|breaker| breaker.rating = typed.clone()))
            />
            <div class="keys" role="group" aria-label=words::rating_keys()>{keys}</div>
        </div>
        <form
            class="plain-form"
            on:submit=move |ev| {
                ev.prevent_default();
                next.run(());
            }
        >
            <TextEntry
                id="space-label".to_owned()
                label=label(words::label_label())
                hint=label(words::label_hint())
                value=part(|entry| entry.label.clone())
                on_text=Callback::new(move |text: String| change(&|breaker| breaker.label = text.clone()))
            />
            <div class="keys words" role="group" aria-label=words::label_words()>{draw(label_words)}</div>
            <button type="submit" class="button main wide">{words::next_free()}</button>
        </form>
        <details>
            <summary>{words::more_heading()}</summary>
            <div class="stack">
                <Pick
                    id="space-protection".to_owned()
                    label=label(words::protection_label())
                    options=Signal::stored(options(words::protection))
                    value=part(|entry| entry.protection.word().to_owned())
                    on_pick=Callback::new(move |code: String| {
                        change(&|breaker| take_code(&mut breaker.protection, code.clone()));
                    })
                />
                <Pick
                    id="space-confirmed".to_owned()
                    label=label(words::confirmed_label())
                    options=Signal::stored(options(words::confirmed))
                    value=part(|entry| entry.confirmed.word().to_owned())
                    on_pick=Callback::new(move |code: String| {
                        change(&|breaker| take_code(&mut breaker.confirmed, code.clone()));
                    })
                />
                <TextEntry
                    id="space-found".to_owned()
                    label=label(words::found_label())
                    hint=label(words::found_hint())
                    block=true
                    value=part(|entry| entry.found.clone())
                    on_text=Callback::new(move |text: String| change(&|breaker| breaker.found = text.clone()))
                />
                <Pick
                    id="space-tied".to_owned()
                    label=label(words::tied_label())
                    options=others
                    value=part(|entry| entry.tied_to.map(|id| id.to_string()).unwrap_or_default())
                    on_pick=Callback::new(move |code: String| change(&|breaker| breaker.tied_to = code.parse().ok()))
                />
            </div>
        </details>
        <When when=move || entry.read().is_some()>
            <button type="button" class="button look plain" on:click=out>{say(out_word)}</button>
        </When>
    }
}

/// A word that is added at a tap. The focus stays where it is, and with it the keyboard of a phone.
fn word_key(word: &str, add: Callback<String>) -> AnyView {
    let (shown, word) = (word.to_owned(), word.to_owned());
    view! {
        <button
            type="button"
            on:mousedown=|ev| ev.prevent_default()
            on:click=move |_| add.run(word.clone())
        >
            {shown}
        </button>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc::job::questions::wiring::panel::panel_view;
    use calc::job::{Job, Units};

    fn with(breakers: &[(u32, BreakerForm)]) -> PanelView {
        let mut job = Job::new("a", "", "2026-03-02T08:00:00Z", Units::FeetInches);
        job.panel.spaces = 8;
        for &(space, form) in breakers {
            let id = job.fresh_id();
            job.panel.breakers.push(BreakerEntry {
                id,
                space,
                form,
                rating: Typed::plain("15"),
                ..BreakerEntry::default()
            });
        }
        panel_view(&job).unwrap()
    }

    #[test]
    fn the_next_free_space_is_by_number_and_past_the_end_the_first() {
        let view = with(&[
            (1, BreakerForm::Single),
            (2, BreakerForm::TwoPole),
            (5, BreakerForm::Tandem(Half::A)),
        ]);
        let next = |after: &str| next_free(&view, after).unwrap();
        // 2 and 4 belong to the two poles, 1 is taken.
        assert_eq!(next(""), "3");
        assert_eq!(next("1"), "3");
        assert_eq!(next("3"), "5B");
        assert_eq!(next("5A"), "5B");
        assert_eq!(next("5B"), "6");
        assert_eq!(next("8"), "3");
    }

    #[test]
    fn a_label_is_put_together_from_words() {
        let label = with_word("", "bathroom");
        assert_eq!(with_word(&label, "receptacles"), "Bathroom receptacles");
        assert_eq!(with_word("Back ", "bedroom"), "Back bedroom");
        assert_eq!(with_word("", ""), "");
    }

    #[test]
    fn a_full_panel_has_no_next() {
        let all: Vec<_> = (1..=8).map(|space| (space, BreakerForm::Single)).collect();
        assert_eq!(next_free(&with(&all), "8"), None);
    }
}
