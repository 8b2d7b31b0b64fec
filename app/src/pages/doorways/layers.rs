//! Layers as rows: added from the table or by a name of one's own, each with its thickness.

use crate::markup::{For, view};
use calc::floor::doorway::{LAYERS, LayerKind, Part, layer};
use calc::job::{Layer, Rest, Room, Typed, Units, fields};
use calc::quantity::Length;
use leptos::prelude::*;

use crate::entry::frame::{Frame, described_by};
use crate::entry::{Measured, TextEntry};
use crate::focus;
use crate::open_job::OpenRoom;
use crate::pictures::thickness_text;
use crate::reactive::{When, derived, memo};
use crate::words::{common, doorways as words};

/// The layers of this room, or those beyond an opening.
fn layers(room: &Room, owner: Option<u32>) -> &[Layer] {
    match owner {
        None => &room.layers,
        Some(opening) => room
            .opening(opening)
            .map_or(&[], |opening| &opening.beyond_layers),
    }
}

fn layers_mut(room: &mut Room, owner: Option<u32>) -> Option<&mut Vec<Layer>> {
    match owner {
        None => Some(&mut room.layers),
        Some(opening) => room
            .opening_mut(opening)
            .map(|opening| &mut opening.beyond_layers),
    }
}

/// A thickness of the table as it would be typed: the fraction where it is one of a tape, decimals where not.
fn typed_thickness(inches: f64, units: Units) -> Typed {
    let length = Length::from_inches(inches);
    let text = match units {
        Units::Metric => length.format_mm(),
        Units::FeetInches if (inches * 32.0).fract() == 0.0 => length.format_inches(32),
        Units::FeetInches => calc::quantity::fixed(inches, 3),
    };
    fields::LAYER.keep(text, units)
}

/// The rows and the list to add from.
#[component]
pub fn Layers(
    /// The room.
    room: OpenRoom,
    /// The opening whose layers beyond these are; none: this room's own.
    owner: Option<u32>,
) -> impl IntoView {
    let units = room.open.units();
    let ids = room.part(move |r| {
        layers(r, owner)
            .iter()
            .map(|layer| layer.id)
            .collect::<Vec<_>>()
    });
    let add_id = owner.map_or_else(|| "layer-add".to_owned(), |id| format!("layer-add-{id}"));
    let add = move |code: String| {
        let kind = layer(&code);
        if kind.is_none() && code != "own" {
            return;
        }
        let units = units.get_untracked();
        let mut added = None;
        room.change_with_id(|r, id| {
            let Some(layers) = layers_mut(r, owner) else {
                return;
            };
            added = Some(id);
            layers.push(Layer {
                id,
                name: kind.map_or_else(String::new, |kind| kind.id.to_owned()),
                thickness: kind.map_or_else(Typed::default, |kind| {
                    typed_thickness(kind.typical_in, units)
                }),
                rest: Rest::new(),
            });
        });
        if let Some(id) = added {
            let part = if kind.is_some() { "thick" } else { "name" };
            focus::soon(&format!("layer-{id}-{part}"));
        }
    };
    let group = |part: Part| {
        let options = LAYERS
            .iter()
            .filter(|kind| kind.part == part)
            .map(|kind| view! { <option value=kind.id>{words::layer_word(kind.id)}</option> })
            .collect_view();
        view! { <optgroup label=words::part(part)>{options}</optgroup> }
    };
    let described = described_by(&add_id);
    let select_id = add_id.clone();
    view! {
        <ol class="layers">
            <For each=move || ids.get() key=|id| *id let:id>
                <LayerRow room owner id ids add_id=add_id.clone() />
            </For>
        </ol>
        <Frame id=select_id.clone() label=Signal::stored(words::add_layer().to_owned())>
            <select
                id=select_id
                aria-describedby=described
                on:change:target=move |ev| {
                    let list = ev.target();
                    let code = list.value();
                    list.set_value("");
                    add(code);
                }
            >
                <option value="">{words::layer_choose()}</option>
                {[Part::Finish, Part::Bed, Part::Membrane, Part::Panel].map(group).collect_view()}
                <option value="own">{words::layer_own()}</option>
            </select>
        </Frame>
    }
}

/// One layer.
#[component]
fn LayerRow(
    room: OpenRoom,
    owner: Option<u32>,
    id: u32,
    ids: Memo<Vec<u32>>,
    add_id: String,
) -> impl IntoView {
    let units = room.open.units();
    let find = move |r: &Room| {
        layers(r, owner)
            .iter()
            .find(|layer| layer.id == id)
            .cloned()
    };
    let name = room.part(move |r| find(r).map(|layer| layer.name).unwrap_or_default());
    let thickness = room.part(move |r| find(r).map(|layer| layer.thickness).unwrap_or_default());
    let number = memo(move || ids.with(|ids| ids.iter().position(|&i| i == id).unwrap_or(0) + 1));
    let called = derived(move || match words::layer_word(&name.read()) {
        Some(word) => word.to_owned(),
        None => words::layer_kind(number.get()),
    });
    let own = memo(move || words::layer_word(&name.read()).is_none());
    let change = move |change: &dyn Fn(&mut Layer)| {
        room.change(|r| {
            if let Some(layer) =
                layers_mut(r, owner).and_then(|l| l.iter_mut().find(|layer| layer.id == id))
            {
                change(layer);
            }
        });
    };
    let label = derived(move || {
        if own.get() {
            words::layer_thickness().to_owned()
        } else {
            format!("{} · {}", number.get(), called.get())
        }
    });
    let hint = derived(move || {
        layer(&name.read())
            .map(|kind| range(kind, units.get()))
            .unwrap_or_default()
    });
    let take_out = move |_| {
        room.take_out_row(
            called.get_untracked(),
            move |r| layers_mut(r, owner),
            |layer| layer.id == id,
        );
        focus::soon(&add_id);
    };
    let up = move |_| {
        room.change(|r| {
            if let Some(layers) = layers_mut(r, owner)
                && let Some(at) = layers.iter().position(|layer| layer.id == id)
            {
                layers.swap(at, at.saturating_sub(1));
            }
        });
        focus::soon(&format!("layer-{id}-thick"));
    };
    view! {
        <li>
            <When when=move || own.get()>
                <TextEntry
                    id=format!("layer-{id}-name")
                    label=derived(move || format!("{} · {}", number.get(), words::layer_name()))
                    value=name
                    on_text=Callback::new(move |text: String| change(&|layer| layer.name.clone_from(&text)))
                />
            </When>
            <Measured
                id=format!("layer-{id}-thick")
                label
                hint
                field=fields::LAYER
                units
                value=thickness
                on_typed=Callback::new(move |typed: Typed| change(&|layer| layer.thickness = typed.clone()))
            />
            <When when=move || { number.get() > 1 }>
                <button
                    type="button"
                    class="button plain"
                    id=format!("layer-{id}-up")
                    aria-label=move || words::layer_down(&called.get())
                    on:click=up
                >
                    {words::one_down()}
                </button>
            </When>
            <button
                type="button"
                class="button look plain"
                aria-label=move || words::take_out_layer(&called.get())
                on:click=take_out
            >
                {common::take_out()}
            </button>
        </li>
    }
}

/// Between what thicknesses a layer is met, and where that is from.
fn range(kind: &LayerKind, units: Units) -> String {
    if kind.least_in == kind.most_in {
        return String::new();
    }
    // Fractions where both are marks of a tape, decimals for both where one is not.
    let marks = [kind.least_in, kind.most_in]
        .iter()
        .all(|inches| (inches * 32.0).fract() == 0.0);
    let text = |inches: f64| {
        if units == Units::FeetInches && !marks {
            format!("{} {}", calc::quantity::fixed(inches, 3), common::unit_in())
        } else {
            thickness_text(inches, units)
        }
    };
    words::layer_range(text(kind.least_in), text(kind.most_in))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tables_thickness_is_typed_as_the_trade_writes_it() {
        for (id, text) in [
            ("plywood_5_8", "19/32\""),
            ("tile_porcelain_floor", "3/8\""),
            ("sheet_vinyl", "0.08"),
        ] {
            assert_eq!(
                typed_thickness(layer(id).unwrap().typical_in, Units::FeetInches).text,
                text
            );
        }
        // Every one is read back to what the table says, within the tenth of a millimetre that a metric text shows.
        for kind in LAYERS {
            for (units, within_in) in [
                (Units::FeetInches, 5e-4),
                (Units::Metric, 0.05 / 25.4 + 1e-9),
            ] {
                let read = fields::LAYER
                    .read(&typed_thickness(kind.typical_in, units))
                    .unwrap();
                assert!(
                    (read - kind.typical_in).abs() <= within_in,
                    "{}: {read}",
                    kind.id
                );
            }
        }
    }
}
