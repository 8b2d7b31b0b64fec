//! Closing up: what its screens share.

use calc::job::questions::finish::{FinishProblem, WallsProblem};
use calc::job::{Room, Units};
use calc::quantity::{Area, AreaUnit, Volume, VolumeUnit, fixed};

use crate::work::opening_letter;

pub mod air;

pub mod board;

pub mod compound;

pub mod paint;

pub mod tile;

pub mod trim;

pub mod working;

words! {
    no_outline => "The room has no walls yet. Enter its outline first." | "El cuarto todavía no tiene paredes. Primero escriba su forma.";
    to_room => "To the room" | "Al cuarto";
    unplaced(letter: String) => "Opening {letter} has no place in a wall yet; without it the walls can't be counted."
        | "El vano {letter} todavía no tiene lugar en una pared; sin él no se pueden contar las paredes.";
    door_higher => "The doorways are higher than the walls. Check both heights."
        | "Los vanos de puerta son más altos que las paredes. Revise las dos alturas.";
    window_outside(number: usize) => "Window {number} does not lie within its wall. Check its place and size."
        | "La ventana {number} no cabe en su pared. Revise su lugar y su tamaño.";
    built_in_outside(number: usize) => "Built-in {number} does not stand within its wall. Check its place and width."
        | "El mueble fijo {number} no cabe en su pared. Revise su lugar y su ancho.";
    ceiling_shape => "A ceiling of this shape isn't laid out here." | "Un cielo de esta forma no se reparte aquí.";
    missing(names: String) => "Still to be entered, or to be put right: {names}." | "Falta escribir o corregir: {names}.";
    before => "This follows once the answer above is there." | "Esto sale cuando esté la respuesta de arriba.";
    room_heading => "The room" | "El cuarto";
    room_width => "Width of the room" | "Ancho del cuarto";
    room_length => "Length of the room" | "Largo del cuarto";
    room_hint => "Wall 1 runs along the width, the others follow to the left." | "La pared 1 va por el ancho; las demás siguen hacia la izquierda.";
    doorways => "Doorways" | "Vanos de puerta";
    doorway(number: usize) => "Doorway {number}" | "Vano {number}";
    add_doorway => "Add a doorway" | "Agregar un vano de puerta";
    keep_hint => "The room’s sizes, its openings and these entries go into a room of a job." | "Las medidas del cuarto, sus vanos y estos datos pasan a un cuarto de un trabajo.";
    sums_heading => "Closing up a room" | "Cerrar un cuarto";
    tile_line => "Tiles, cuts and boxes, the lines to snap, mortar and grout." | "Losetas, cortes y cajas, las líneas por marcar, mortero y boquilla.";
    board_line => "Sheets for walls and ceiling, each wall drawn with its joints." | "Hojas para paredes y cielo, cada pared dibujada con sus juntas.";
    paint_line => "Gallons by coats, and the cans to buy." | "Galones por manos y las latas por comprar.";
    trim_line => "Base, shoe and casing cut from the fewest sticks." | "Zócalo, cuarto de caña y marcos de las menos varas.";
    air_line => "What a fan moves through its duct, and what the room needs." | "Lo que mueve un extractor por su ducto y lo que pide el cuarto.";
    walls_heading => "Walls above the floor" | "Paredes sobre el piso";
    walls_hint => "Paint, board and trim go by the same walls, doorways and windows."
        | "La pintura, las hojas y las molduras usan las mismas paredes, puertas y ventanas.";
    wall_height => "Height of the walls" | "Altura de las paredes";
    door_height => "Height of the doorways" | "Altura de los vanos de puerta";
    windows => "Windows" | "Ventanas";
    window(number: usize) => "Window {number}" | "Ventana {number}";
    add_window => "Add a window" | "Agregar una ventana";
    built_ins => "Along the walls" | "Junto a las paredes";
    built_in(number: usize) => "Built-in {number}" | "Mueble fijo {number}";
    add_built_in => "Add a cabinet, tub or the like" | "Agregar gabinete, tina o algo parecido";
    wall_label => "In wall" | "En la pared";
    wall_number(number: usize) => "Wall {number}" | "Pared {number}";
    from_start => "From the wall's start" | "Desde el inicio de la pared";
    sill => "From the floor to its sill" | "Del piso al antepecho";
    width => "Width" | "Ancho";
    height => "Height" | "Altura";
    toe_strip => "Has it a toe strip of its own?" | "¿Tiene su propio zócalo?";
    yes => "Yes" | "Sí";
    no => "No" | "No";
    bags(count: u32) => "{count} bags" | "{count} sacos";
    one_bag => "1 bag" | "1 saco";
    allowance => "Allowance, percent" | "Margen, por ciento";
    caution_dust => "Cutting tile, stone and cement board sets free silica dust, which scars lungs. Cut wet, or with a vacuum at the blade, and wear a fitted respirator."
        | "Cortar loseta, piedra y tablero de cemento suelta polvo de sílice, que daña los pulmones. Corte con agua o con aspiradora en el disco, y use un respirador a la medida.";
    caution_asbestos => "Old floor tile, its glue, old joint compound and texture can hold asbestos. Have a sample tested before you scrape, sand or break any of it."
        | "La loseta vieja, su pegamento y la pasta o textura viejas pueden tener asbesto. Mande analizar una muestra antes de raspar, lijar o romper.";
    caution_lead => "Paint from before 1978 can hold lead. Test it before you sand or scrape; the rules for lead-safe work bind paid work in homes."
        | "La pintura de antes de 1978 puede tener plomo. Analícela antes de lijar o raspar; las reglas para trabajar con plomo obligan en trabajos pagados en casas.";
    caution_ladder => "Set a ladder on firm, level ground and keep your belt between its rails. Falls from low ladders kill."
        | "Ponga la escalera sobre piso firme y nivelado y no saque el cinturón de entre los largueros. Las caídas de escaleras bajas matan.";
    caution_saw => "Guards on, eyes covered, nothing loose near the blade; clamp short pieces instead of holding them."
        | "Guardas puestas, ojos cubiertos, nada suelto cerca del disco; sujete las piezas cortas con prensa, no con la mano.";
}

/// Bags in words.
pub fn bags_of(count: u32) -> String {
    if count == 1 {
        one_bag().to_owned()
    } else {
        bags(count)
    }
}

/// An area in the units in force, from square feet.
pub fn area(ft2: f64, units: Units) -> String {
    let unit = match units {
        Units::Metric => AreaUnit::SquareMeters,
        Units::FeetInches => AreaUnit::SquareFeet,
    };
    Area::from_ft2(ft2).format(unit, 1)
}

/// Paint in the units in force, from US gallons.
pub fn gallons(gal: f64, units: Units) -> String {
    match units {
        Units::Metric => Volume::from_qt(4.0 * gal).format(VolumeUnit::Liters, 1),
        Units::FeetInches => format!("{} gal", fixed(gal, 2)),
    }
}

/// Why there is no answer; what an answer itself refuses is said by `refused`.
pub fn problem<R>(
    problem: &FinishProblem<R>,
    room: &Room,
    refused: &dyn Fn(&R) -> String,
) -> String {
    match problem {
        FinishProblem::Outline => no_outline().to_owned(),
        FinishProblem::Walls(what) => walls_problem(*what, room),
        FinishProblem::Entries(entries) => {
            let mut names: Vec<&str> = Vec::new();
            for entry in entries {
                let name = entry_name(entry.name).unwrap_or(entry.name);
                if !names.contains(&name) {
                    names.push(name);
                }
            }
            missing(names.join(", "))
        }
        FinishProblem::Before => before().to_owned(),
        FinishProblem::Refused(refusal) => refused(refusal),
    }
}

/// What does not fit in the walls.
pub fn walls_problem(what: WallsProblem, room: &Room) -> String {
    let place = |ids: Vec<u32>, id: u32| ids.iter().position(|of| *of == id).unwrap_or(0);
    match what {
        WallsProblem::OpeningUnplaced(id) => {
            let ids = room.openings.iter().map(|row| row.id).collect();
            unplaced(opening_letter(place(ids, id)))
        }
        WallsProblem::DoorHigherThanWall => door_higher().to_owned(),
        WallsProblem::WindowOutside(id) => {
            let ids = room.walls.windows.iter().map(|row| row.id).collect();
            window_outside(place(ids, id) + 1)
        }
        WallsProblem::BuiltInOutside(id) => {
            let ids = room.walls.built_ins.iter().map(|row| row.id).collect();
            built_in_outside(place(ids, id) + 1)
        }
        WallsProblem::CeilingShape => ceiling_shape().to_owned(),
    }
}

named! {
    /// What an entry that is missing is called.
    entry_name {
        "wall_height" => "height of the walls" | "altura de las paredes";
        "door_height" => "height of the doorways" | "altura de los vanos de puerta";
        "from_start" => "distance from the wall's start" | "distancia desde el inicio de la pared";
        "sill" => "sill" | "antepecho";
        "width" => "width" | "ancho";
        "height" => "height" | "altura";
        "length" => "length" | "largo";
        "x" => "distance to the right" | "distancia a la derecha";
        "y" => "distance away" | "distancia hacia el fondo";
        "joint" => "joint" | "junta";
        "edge_gap" => "gap at the walls" | "separación en las paredes";
        "offset" => "shift of a row" | "desfase de la fila";
        "least_share" => "narrowest cut" | "corte más angosto";
        "kerf" => "saw cut" | "corte de sierra";
        "allowance_percent" => "allowance" | "margen";
        "per_box" => "tiles in a box" | "losetas por caja";
        "variation" => "difference between tiles" | "diferencia entre losetas";
        "warpage" => "warpage" | "alabeo";
        "mortar_coverage" => "area that a bag of mortar covers" | "área que cubre un saco de mortero";
        "mortar_allowance" => "allowance on mortar" | "margen de mortero";
        "joint_depth" => "depth of the joint" | "profundidad de la junta";
        "powder" => "powder for a cubic foot" | "polvo por pie cúbico";
        "grout_allowance" => "allowance on grout" | "margen de boquilla";
        "grout_bag" => "bag of grout" | "saco de boquilla";
        "membrane_roll" => "area of a roll" | "área de un rollo";
        "membrane_turn_up" => "membrane up the walls" | "membrana en las paredes";
        "membrane_allowance" => "allowance on membrane" | "margen de membrana";
        "coats" => "coats" | "manos";
        "spread" => "what a gallon covers" | "lo que cubre un galón";
        "gallon_price" => "price of a gallon" | "precio del galón";
        "quart_price" => "price of a quart" | "precio del cuarto de galón";
        "trim_face" => "face of the trim" | "cara de la moldura";
        "casing_width" => "width of a casing" | "ancho del marco";
        "reveal" => "reveal" | "retiro";
        "extra" => "added to each piece" | "agregado a cada pieza";
        "splice_at" => "longest piece" | "pieza más larga";
        "framing" => "studs and joists, on center" | "bastidor, entre centros";
        "level" => "level of finish" | "nivel de acabado";
        "tape_allowance" => "allowance on tape" | "margen de cinta";
        "pail" => "what a pail holds" | "lo que lleva una cubeta";
        "board" => "board" | "tablaroca";
        "corner" => "height of the corners" | "altura de las esquinas";
        "notch_width" => "width of the missing corner" | "ancho de la esquina que falta";
        "notch_length" => "length of the missing corner" | "largo de la esquina que falta";
        "toilets" => "toilets" | "excusados";
        "showers" => "showers" | "regaderas";
        "tubs" => "bath tubs" | "tinas";
        "jetted_tubs" => "jetted tubs" | "tinas de hidromasaje";
        "low_static" => "low pressure" | "presión baja";
        "low_flow" => "flow at low pressure" | "flujo a presión baja";
        "high_static" => "high pressure" | "presión alta";
        "high_flow" => "flow at high pressure" | "flujo a presión alta";
        "shutoff" => "pressure at which nothing moves" | "presión a la que nada se mueve";
        "diameter" => "inside diameter of the duct" | "diámetro interior del ducto";
        "elbows" => "elbows" | "codos";
        "elbow" => "what an elbow is worth" | "lo que vale un codo";
        "cap" => "what the cap is worth" | "lo que vale la tapa";
        "fan_amps" => "the fan's current" | "corriente del extractor";
        "fan_watts" => "the fan's current or power" | "corriente o potencia del extractor";
        "light_watts" => "its light" | "su luz";
        "heater_watts" => "its heater" | "su calefactor";
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc::job::questions::finish::{air, board, paint, tile, trim};

    #[test]
    fn every_missing_entry_has_a_name() {
        let mut room = Room::new(1, "", Units::FeetInches);
        room.outline.width = calc::job::Typed::plain("5'");
        room.outline.length = calc::job::Typed::plain("8'");
        let mut found = Vec::new();
        let mut note = |entries: Vec<calc::job::questions::EntryProblem>| {
            found.extend(entries.iter().map(|entry| entry.name));
        };
        // With nothing at all entered, every entry that must be there is missing.
        let blank = |text: &str| text.to_owned();
        let text = blank(&calc::saved::write(&room));
        let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
        for part in ["walls", "tile", "board", "paint", "trim", "air"] {
            empty(&mut value[part]);
        }
        let room: Room = calc::saved::read(&value.to_string()).unwrap();
        if let Err(FinishProblem::Entries(entries)) = tile::ask(&room) {
            note(entries);
        }
        if let Err(FinishProblem::Entries(entries)) = tile::mortar_for(&room.tile, 1.0) {
            note(entries);
        }
        if let Err(FinishProblem::Entries(entries)) = tile::grout_for(&room.tile, 1.0) {
            note(entries);
        }
        if let Err(FinishProblem::Entries(entries)) = trim::pieces(&room) {
            note(entries);
        }
        if let Err(FinishProblem::Entries(entries)) = board::plan(&room) {
            note(entries);
        }
        if let Err(FinishProblem::Entries(entries)) = air::exhaust_of(&room) {
            note(entries);
        }
        if let Err(FinishProblem::Entries(entries)) = air::load_of(&room.air) {
            note(entries);
        }
        for kind in paint::PaintKind::ALL {
            if let Err(FinishProblem::Entries(entries)) = paint::paint_of(&room, kind) {
                note(entries);
            }
        }
        assert!(found.len() > 10, "{found:?}");
        for name in found {
            assert!(entry_name(name).is_some(), "{name}");
        }
    }

    /// Every text of a part of the document made blank; codes stay.
    fn empty(value: &mut serde_json::Value) {
        match value {
            serde_json::Value::Object(fields) => {
                if fields.contains_key("typed") {
                    *value = serde_json::Value::String(String::new());
                } else {
                    fields.values_mut().for_each(empty);
                }
            }
            serde_json::Value::String(text) if text.parse::<f64>().is_ok() => text.clear(),
            _ => {}
        }
    }
}
