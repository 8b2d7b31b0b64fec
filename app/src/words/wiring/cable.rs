//! A run of cable, and the cables between switches and a light.

use calc::job::Units;
use calc::wiring::cable_run::{
    Role, RunFinding, RunRefusal, SwitchFinding, SwitchRefusal, SwitchSpot,
};

use super::length;
use crate::pictures::length_text;

words! {
    title => "Cable run" | "Tirada de cable";
    line => "Feet of cable to buy, how to cut the rolls, staples, and the cable that switches need."
        | "Pies de cable por comprar, cómo cortar los rollos, grapas, y el cable que piden los apagadores.";
    pieces_heading => "From box to box" | "De caja a caja";
    piece_name(number: usize) => "piece {number}" | "la pieza {number}";
    add_piece => "Add a piece" | "Agregar pieza";
    from_label(number: usize) => "Piece {number}: starts at" | "Pieza {number}: empieza en";
    to_label(number: usize) => "Piece {number}: ends at" | "Pieza {number}: termina en";
    end_box => "a box that clamps it" | "caja con prensacable";
    end_clampless => "a plastic box without clamps" | "caja plástica sin prensacable";
    end_panel => "the panel" | "el panel";
    from_free(number: usize) => "Piece {number}: kept at its start" | "Pieza {number}: se deja al principio";
    to_free(number: usize) => "Piece {number}: kept at its end" | "Pieza {number}: se deja al final";
    free_hint => "At least 6 in free at a box; the way round a panel takes more." | "Al menos 6 pulg libres en una caja; la vuelta en un panel lleva más.";
    part_way(of: String) => "{of}: way" | "{of}: rumbo";
    part_length(of: String) => "{of}: length" | "{of}: largo";
    part_held(of: String) => "{of}: held" | "{of}: sujeción";
    part_edge(of: String) => "{of}: to the edge of the wood" | "{of}: a la orilla de la madera";
    part_attic(of: String) => "{of}: in an attic you can enter" | "{of}: en un ático al que se entra";
    add_part => "Add a part of the way" | "Agregar parte del camino";
    way_up => "up" | "arriba";
    way_across => "across" | "a lo largo";
    way_down => "down" | "abajo";
    held_stapled => "stapled along the framing" | "con grapas en la madera";
    held_bored => "through bored holes, stapled at the boxes" | "por hoyos barrenados, con grapa en las cajas";
    held_fished => "fished behind finish" | "pescado tras el acabado";
    edge_hint => "From the cable or the hole to the nearest face; 1-1/4 in or a plate." | "Del cable o del hoyo a la cara más cercana; 1-1/4 pulg o una placa.";
    allowance_label => "Allowance" | "Margen";
    allowance_hint => "For bends, slack and waste; 10 to 15 % is common practice." | "Por vueltas, holgura y desperdicio; 10 a 15 % es práctica común.";
    roll_label => "Cable on a roll" | "Cable por rollo";
    roll_hint => "250 ft is how most of it is sold: common practice." | "Lo más se vende en 250 pies: práctica común.";
    to_buy => "Cable, all pieces" | "Cable, todas las piezas";
    rests_said(pieces: String, rolls: String, staples: String) => "{pieces} out of {rolls}, {staples}." | "{pieces} de {rolls}, {staples}.";
    one_piece => "1 piece" | "1 pieza";
    many_pieces(count: usize) => "{count} pieces" | "{count} piezas";
    one_roll => "1 roll" | "1 rollo";
    many_rolls(count: usize) => "{count} rolls" | "{count} rollos";
    one_staple => "1 staple" | "1 grapa";
    many_staples(count: u32) => "{count} staples" | "{count} grapas";
    part_itself(of: String) => "{of}" | "{of}";
    chain_caption => "Every wire in its color: B black, R red, U blue, W white, W* a white marked as a hot, G ground. Colors are common practice: test, never trust them."
        | "Cada alambre en su color: B negro, R rojo, U azul, W blanco, W* blanco marcado como vivo, G tierra. Los colores son costumbre: pruebe, no se confíe.";
    pieces_caption => "Cut list" | "Lista de cortes";
    head_piece => "Piece" | "Pieza";
    head_path => "Path" | "Camino";
    head_cut => "Cut" | "Cortar";
    head_staples => "Staples" | "Grapas";
    roll_row(number: usize) => "Roll {number}: pieces" | "Rollo {number}: piezas";
    roll_left(pieces: String, left: String) => "{pieces} · {left} left" | "{pieces} · sobran {left}";
    path_row => "Path, for the voltage drop" | "Camino, para la caída de voltaje";
    plate_hole(part: String, edge: String, least: String) => "{part}: the hole is {edge} from the edge. Put a steel plate over it, or bore {least} away."
        | "{part}: el hoyo está a {edge} de la orilla. Ponga una placa de acero, o barrene a {least}.";
    plate_along(part: String, edge: String, least: String) => "{part}: the cable is {edge} from the edge. Put a plate over it, or keep {least}."
        | "{part}: el cable está a {edge} de la orilla. Ponga placa, o guarde {least}.";
    edge_unknown(part: String, least: String) => "{part}: measure from the cable to the edge of the wood; less than {least} wants a plate. A screw through a cable shocks and burns."
        | "{part}: mida del cable a la orilla de la madera; menos de {least} pide placa. Un tornillo en el cable da toques y quema.";
    too_little(piece: usize, free: String, least: String) => "Piece {piece}: {free} kept at a box is too little; {least} or more." | "Pieza {piece}: {free} en una caja es poco; {least} o más.";
    attic_guard(part: String) => "{part}: in an attic, cable across the joists is guarded near the way in, or everywhere where there are stairs."
        | "{part}: en un ático, el cable que cruza viguetas va protegido cerca de la entrada, o en todo si hay escalera.";
    longer_than_roll(piece: usize, length: String) => "Piece {piece} takes {length}, more than a roll has. Plan a box on the way, or buy a longer roll."
        | "La pieza {piece} lleva {length}, más de lo que trae un rollo. Ponga una caja en el camino, o compre un rollo más largo.";
    part_of(piece: usize, part: usize) => "Piece {piece}, part {part}" | "Pieza {piece}, parte {part}";
    switches_heading => "Cable for switches" | "Cable para apagadores";
    switches_label => "Switches for the light" | "Apagadores para la luz";
    switches_hint => "1; 2 for three-ways; 3 or more adds four-ways between." | "1; 2 si son de tres vías; 3 o más lleva de cuatro vías en medio.";
    power_label => "Power comes in at" | "La corriente llega a";
    power_switch => "the first switch" | "el primer apagador";
    power_light => "the light" | "la luz";
    light_label => "The light hangs on" | "La luz sale de";
    light_last => "the last switch" | "el último apagador";
    light_first => "the first switch" | "el primer apagador";
    neutral_label => "Neutral at the switches" | "Neutro en los apagadores";
    neutral_every => "at every one" | "en todos";
    neutral_one => "at one that sees the whole room" | "en uno que ve todo el cuarto";
    neutral_none => "an exception holds" | "hay una excepción";
    spot_supply => "supply" | "alimentación";
    spot_switch(number: u32) => "switch {number}" | "apagador {number}";
    spot_light => "light" | "luz";
    way_between(from: String, to: String) => "{from} → {to}" | "{from} → {to}";
    wires(count: u32, roles: String) => "{count}-wire: {roles}" | "{count} hilos: {roles}";
    role_hot => "hot" | "vivo";
    role_switched => "switched hot" | "vivo del apagador";
    role_neutral => "neutral" | "neutro";
    role_neutral_switch => "neutral for the switch" | "neutro para el apagador";
    role_travellers => "two travelers" | "dos viajeros";
    plus_ground => "Each cable has a ground as well. Mark a white that is used as a hot." | "Cada cable lleva además tierra. Marque el blanco que se use como vivo.";
    four_wires(number: usize, section: &str) => "Cable {number} needs four insulated wires: three-wire cable won't do. The neutral is asked for by {section}."
        | "El cable {number} necesita cuatro alambres aislados: el de tres no basta. El neutro lo pide {section}.";
    no_neutral(switch: u32, section: &str) => "No neutral at switch {switch}: that rests on an exception of {section}. Ask the inspector first."
        | "Sin neutro en el apagador {switch}: eso depende de una excepción de {section}. Pregunte antes al inspector.";
    refused_no_piece => "Add a piece: where it starts, its way, where it ends." | "Agregue una pieza: dónde empieza, su camino, dónde termina.";
    refused_no_path(piece: usize) => "Piece {piece}: add a part of its way." | "Pieza {piece}: agregue una parte de su camino.";
    refused_length(piece: usize) => "Piece {piece}: each part is more than 0 and up to 10,000 ft." | "Pieza {piece}: cada parte mide más de 0 y hasta 10,000 pies.";
    refused_total(length: String) => "{length} is more cable than a house takes (10,000 ft). Check the lengths." | "{length} es más cable del que lleva una casa (10,000 pies). Revise los largos.";
    refused_free(piece: usize) => "Piece {piece}: keep 0 to 20 ft at an end." | "Pieza {piece}: deje de 0 a 20 pies en una punta.";
    refused_edge(piece: usize) => "Piece {piece}: the edge is 0 to 48 in away." | "Pieza {piece}: la orilla está de 0 a 48 pulg.";
    refused_allowance => "Enter an allowance of 0 up to 100 %." | "Escriba un margen de 0 a 100 %.";
    refused_roll => "Enter more than 0 and up to 10,000 ft for a roll." | "Escriba más de 0 y hasta 10,000 pies por rollo.";
    refused_switches(count: u32) => "{count} switches can't be. Enter 1 to 20." | "{count} apagadores no puede ser. Escriba de 1 a 20.";
    caution_hidden => "Know what is behind the finish before you drill: pipes, gas, other cables."
        | "Sepa qué hay detrás del acabado antes de taladrar: tubos, gas, otros cables.";
}

/// Pieces, rolls and staples in a sentence.
pub fn rests(pieces: usize, rolls: usize, staples: u32) -> String {
    let some = |count: usize, one: &'static str, many: fn(usize) -> String| {
        if count == 1 {
            one.to_owned()
        } else {
            many(count)
        }
    };
    let staples = if staples == 1 {
        one_staple().to_owned()
    } else {
        many_staples(staples)
    };
    rests_said(
        some(pieces, one_piece(), many_pieces),
        some(rolls, one_roll(), many_rolls),
        staples,
    )
}

/// What to mind on the way.
pub fn finding(finding: &RunFinding, units: Units) -> String {
    let inches = |inches: f64| length_text(inches, units);
    match finding {
        RunFinding::PlateAtHole {
            piece,
            part,
            edge_in,
            least_in,
            ..
        } => plate_hole(
            part_of(piece + 1, part + 1),
            inches(*edge_in),
            inches(*least_in),
        ),
        RunFinding::PlateAlongFraming {
            piece,
            part,
            edge_in,
            least_in,
            ..
        } => plate_along(
            part_of(piece + 1, part + 1),
            inches(*edge_in),
            inches(*least_in),
        ),
        RunFinding::EdgeNotKnown {
            piece,
            part,
            least_in,
            ..
        } => edge_unknown(part_of(piece + 1, part + 1), inches(*least_in)),
        RunFinding::TooLittleFree {
            piece,
            free_in,
            least_in,
            ..
        } => too_little(piece + 1, inches(*free_in), inches(*least_in)),
        RunFinding::AtticGuard { piece, part, .. } => attic_guard(part_of(piece + 1, part + 1)),
        RunFinding::LongerThanRoll { piece, length_ft } => {
            longer_than_roll(piece + 1, length(*length_ft, units))
        }
    }
}

/// Why a run isn't answered, and what would be.
pub fn refusal(refusal: &RunRefusal, units: Units) -> String {
    match refusal {
        RunRefusal::NoPiece => refused_no_piece().to_owned(),
        RunRefusal::NoPath { piece } => refused_no_path(piece + 1),
        RunRefusal::Length { piece, .. } => refused_length(piece + 1),
        RunRefusal::Total { length_ft } => refused_total(length(*length_ft, units)),
        RunRefusal::Free { piece, .. } => refused_free(piece + 1),
        RunRefusal::Edge { piece, .. } => refused_edge(piece + 1),
        RunRefusal::Allowance { .. } => refused_allowance().to_owned(),
        RunRefusal::Roll { .. } => refused_roll().to_owned(),
    }
}

/// One end of a cable between switches.
pub fn spot(spot: SwitchSpot) -> String {
    match spot {
        SwitchSpot::Supply => spot_supply().to_owned(),
        SwitchSpot::Switch(number) => spot_switch(number),
        SwitchSpot::Light => spot_light().to_owned(),
    }
}

/// What a conductor is for.
pub fn role(role: Role) -> &'static str {
    match role {
        Role::Hot => role_hot(),
        Role::SwitchedHot => role_switched(),
        Role::Neutral => role_neutral(),
        Role::NeutralForSwitch => role_neutral_switch(),
        Role::Travellers => role_travellers(),
    }
}

/// What to mind about the switches.
pub fn switch_finding(finding: &SwitchFinding) -> String {
    match finding {
        SwitchFinding::FourConductors { cable, section } => four_wires(cable + 1, section),
        SwitchFinding::NoNeutralAt { switch, section } => no_neutral(*switch, section),
    }
}

/// Why there is no plan for the switches.
pub fn switch_refusal(refusal: &SwitchRefusal) -> String {
    match refusal {
        SwitchRefusal::Switches { switches } => refused_switches(*switches),
    }
}
