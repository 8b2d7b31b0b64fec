//! Air: what a room needs, what the duct leaves of the fan, what it adds to its circuit.

use calc::air::duct::{DuctKind, MostLength};
use calc::air::fan::{FlowLeft, FoundBy};
use calc::air::rate::{ExhaustRoom, Governs, Rate};
use calc::air::{AirRefusal, Exhaust, Verdict, liters_per_second};
use calc::job::Units;
use calc::quantity::fixed;

words! {
    stage => "Air" | "Aire";
    heading(name: &str) => "Air: {name}" | "Aire: {name}";
    open => "not worked out yet" | "todavía sin calcular";
    line(flow: String, need: String) => "{flow} of {need} needed" | "{flow} de {need} que hacen falta";
    needs_heading => "What the room needs" | "Lo que pide el cuarto";
    room_label => "The room" | "El cuarto";
    bathroom => "bath or toilet room" | "baño o medio baño";
    kitchen => "kitchen" | "cocina";
    run_label => "The fan runs" | "El extractor trabaja";
    switched => "when it is switched on" | "cuando se prende";
    always => "all the time" | "todo el tiempo";
    toilets => "Toilets" | "Excusados";
    showers => "Showers" | "Regaderas";
    tubs => "Bath tubs" | "Tinas";
    jetted => "Jetted tubs" | "Tinas de hidromasaje";
    fixtures_hint => "Fixtures count in a bath of more than 100 ft²." | "Los muebles cuentan en un baño de más de 100 ft².";
    fan_heading => "The fan, from its label" | "El extractor, según su placa";
    low_flow => "Flow at low pressure, cfm" | "Flujo a presión baja, cfm";
    low_static => "Low pressure, inches of water" | "Presión baja, pulgadas de agua";
    high_flow => "Flow at high pressure, cfm" | "Flujo a presión alta, cfm";
    high_static => "High pressure, inches of water" | "Presión alta, pulgadas de agua";
    high_hint => "The code asks for the flow at 0.25 in. Without it only a range can be told." | "El código pide el flujo a 0.25 pulg. Sin él solo se sabe un rango.";
    shutoff_label => "Pressure at which nothing moves, inches of water" | "Presión a la que nada se mueve, pulgadas de agua";
    duct_heading => "The duct" | "El ducto";
    duct_label => "It is" | "Es";
    smooth => "smooth metal or plastic" | "metal o plástico liso";
    flexible => "flexible, fully stretched" | "flexible, bien estirado";
    diameter_label => "Inside diameter" | "Diámetro interior";
    length_label => "Length of its straight parts" | "Largo de los tramos rectos";
    elbows_label => "Elbows" | "Codos";
    elbow_label => "An elbow is worth" | "Un codo equivale a";
    cap_label => "The cap is worth" | "La tapa equivale a";
    worth_hint => "Length of duct that takes as much of the flow." | "Largo de ducto que quita igual flujo.";
    answer_name => "The fan moves" | "El extractor mueve";
    at_least => "The fan moves at least" | "El extractor mueve al menos";
    cfm_word => "cfm" | "cfm";
    l_per_s_word => "L/s" | "L/s";
    cfm(of: String) => "{of} cfm" | "{of} cfm";
    l_per_s(of: String) => "{of} L/s" | "{of} L/s";
    rests(rated: String, left: String, other: String) => "This duct chokes the fan from {rated} to about {left} ({other})." | "Este ducto ahoga el extractor de {rated} a unos {left} ({other}).";
    rests_free(rated: String, other: String) => "The duct takes less than the lowest rated pressure: {rated} or more ({other})." | "El ducto quita menos que la presión más baja de la placa: {rated} o más ({other}).";
    rests_range(low: String, high: String) => "Between {low} and {high}: the duct takes more than the highest rated pressure, and the label tells no further."
        | "Entre {low} y {high}: el ducto quita más que la presión más alta de la placa, que no dice más.";
    enough => "enough" | "alcanza";
    short => "too little" | "no alcanza";
    unknown => "can’t be told" | "no se sabe";
    enough_says(need: String) => "The room needs {need}." | "El cuarto pide {need}.";
    short_says(need: String, by: String) => "The room needs {need}: {by} more than the fan moves. A wider, shorter or smoother duct takes less."
        | "El cuarto pide {need}: {by} más de lo que mueve. Un ducto más ancho, corto o liso quita menos.";
    unknown_says(need: String) => "The room needs {need}. A second point of the fan’s rating would tell." | "El cuarto pide {need}. Otro punto de la placa lo diría.";
    length_kept(most: String) => "The code lets this duct be {most} long for the fan’s flow at 0.25 in, its elbows taken off." | "El código deja {most} de ducto para el flujo a 0.25 pulg, ya sin los codos.";
    length_none => "The code doesn’t let a duct of this diameter be used for the fan’s flow at 0.25 in." | "El código no permite este diámetro para el flujo a 0.25 pulg.";
    length_free => "The code sets no limit of length for this duct and flow." | "El código no limita el largo de este ducto con este flujo.";
    length_unknown => "The code’s length of duct goes by the fan’s flow at 0.25 in of water, which isn’t known, or is above its table."
        | "El largo que permite el código va por el flujo a 0.25 pulg de agua, que no se sabe o pasa de la tabla.";
    kept => "kept" | "se cumple";
    not_kept => "not kept" | "no se cumple";
    row_code => "The code’s least" | "Mínimo del código";
    row_area => "By area, 1 cfm a square foot" | "Por área, 1 cfm por pie cuadrado";
    row_fixtures => "By fixtures" | "Por muebles";
    row_need(by: &str) => "The room needs, {by}" | "El cuarto pide, {by}";
    by_code => "by the code" | "por el código";
    by_area => "by area" | "por área";
    by_fixtures => "by fixtures" | "por muebles";
    row_loss => "The duct takes" | "El ducto quita";
    row_worth => "Duct with what elbows and cap are worth" | "Ducto con lo que valen codos y tapa";
    row_speed => "Speed in the duct" | "Velocidad en el ducto";
    inwg(of: String) => "{of} in of water" | "{of} pulg de agua";
    fpm(of: String) => "{of} ft/min" | "{of} pie/min";
    no_fixtures => "A bath of more than 100 ft² goes by its fixtures, and none is counted: practice would ask for more than the code’s least."
        | "Un baño de más de 100 ft² va por sus muebles y no se contó ninguno: la práctica pide más que el mínimo del código.";
    picture_says(length: String, elbows: u32) => "A fan, {length} of duct with {elbows} elbows, and the cap outside." | "Un extractor, {length} de ducto con {elbows} codos y la tapa afuera.";
    picture_caption => "Not to scale. The duct rises or falls to the outside, never into an attic or a crawl space."
        | "Sin escala. El ducto sale al exterior, nunca al ático ni bajo el piso.";
    picture_fan => "fan" | "extractor";
    picture_cap => "cap" | "tapa";
    elbows_of(count: u32) => "{count} elbows" | "{count} codos";
    one_elbow => "1 elbow" | "1 codo";
    load_heading => "On its circuit" | "En su circuito";
    amps_label => "The fan’s current" | "Corriente del extractor";
    amps_hint => "From the label; its watts are not needed then." | "Según la placa; entonces no hacen falta los watts.";
    watts_label => "The fan’s power" | "Potencia del extractor";
    light_label => "Its light" | "Su luz";
    heater_label => "Its heater" | "Su calefactor";
    load_says(amps: String, va: String) => "It takes {amps} A at 120 V, {va} VA." | "Toma {amps} A a 120 V, {va} VA.";
    by_watts => "The current is by watts as if nothing were lost; a small motor draws more. The amperes on the label are better."
        | "La corriente sale de los watts como si nada se perdiera; un motor chico toma más. Mejor los amperes de la placa.";
    circuit_label => "Circuit" | "Circuito";
    put_on => "Plan it on this circuit" | "Planearlo en este circuito";
    no_circuits => "No circuit is entered yet. Enter the one it is to be on first." | "No hay circuitos todavía. Primero anote en cuál irá.";
    to_circuits => "To the circuits" | "A los circuitos";
    planned_on(circuit: String) => "Planned on {circuit}." | "Planeado en {circuit}.";
    planned_other(circuit: String) => "Planned on {circuit} with other figures than these. Plan it again." | "Planeado en {circuit} con otros datos. Planéelo otra vez.";
    rules_fail(count: usize) => "{count} rules fail there with what is planned." | "Ahí fallan {count} reglas con lo planeado.";
    one_rule_fails => "1 rule fails there with what is planned." | "Ahí falla 1 regla con lo planeado.";
    rules_hold => "No rule that was judged fails there." | "Ahí no falla ninguna regla de las que se juzgaron.";
    not_judged => "That circuit is not judged yet: something is missing there." | "Ese circuito todavía no se juzga: le falta algo.";
    see_circuit => "See the circuit" | "Ver el circuito";
    name_fan(room: &str) => "Exhaust fan, {room}" | "Extractor, {room}";
    name_light(room: &str) => "Fan light, {room}" | "Luz del extractor, {room}";
    name_heater(room: &str) => "Fan heater, {room}" | "Calefactor del extractor, {room}";
    not_falling => "A fan moves less against more pressure. Check the two points." | "Un extractor mueve menos contra más presión. Revise los dos puntos.";
    shutoff_low => "The pressure at which nothing moves is above every point of the rating. Check it." | "La presión a la que nada se mueve pasa de todos los puntos de la placa. Revísela.";
    refused => "This can't be worked out from these entries." | "Esto no sale de estos datos.";
    caution_outside => "The duct ends outside. Wet air blown into an attic or a crawl space rots the house." | "El ducto termina afuera. El aire húmedo en el ático o bajo el piso pudre la casa.";
    caution_fuel => "A strong fan can pull flue gas back down a water heater or furnace. Have the draft checked." | "Un extractor fuerte puede regresar los gases del calentador. Haga revisar el tiro.";
}

/// The room.
pub fn room(of: ExhaustRoom) -> String {
    match of {
        ExhaustRoom::Bathroom => bathroom(),
        ExhaustRoom::Kitchen => kitchen(),
    }
    .to_owned()
}

/// The duct.
pub fn duct(of: DuctKind) -> String {
    match of {
        DuctKind::Smooth => smooth(),
        DuctKind::Flexible => flexible(),
    }
    .to_owned()
}

/// A flow in the units in force.
pub fn flow(of_cfm: f64, units: Units) -> String {
    match units {
        Units::FeetInches => cfm(fixed(of_cfm, 0)),
        Units::Metric => l_per_s(fixed(liters_per_second(of_cfm), 1)),
    }
}

fn other_flow(of_cfm: f64, units: Units) -> String {
    flow(
        of_cfm,
        match units {
            Units::FeetInches => Units::Metric,
            Units::Metric => Units::FeetInches,
        },
    )
}

/// What the flow rests on.
pub fn flow_rests(of: &FlowLeft, units: Units) -> String {
    match of.found_by {
        FoundBy::BelowFirstPoint => {
            rests_free(flow(of.rated_cfm, units), other_flow(of.rated_cfm, units))
        }
        FoundBy::BeyondLastPoint => {
            rests_range(flow(of.least_cfm, units), flow(of.most_cfm, units))
        }
        FoundBy::BetweenPoints | FoundBy::ToShutoff => rests(
            flow(of.rated_cfm, units),
            flow(of.about_cfm, units),
            other_flow(of.about_cfm, units),
        ),
    }
}

/// The verdict: its sign and what it says.
pub fn verdict(of: &Exhaust, units: Units) -> (&'static str, String) {
    let need = flow(of.rate.required_cfm, units);
    match of.verdict {
        Verdict::Enough => (enough(), enough_says(need)),
        Verdict::Short => (short(), short_says(need, flow(of.short_by_most_cfm, units))),
        Verdict::Unknown => (unknown(), unknown_says(need)),
    }
}

/// What the code says of the duct's length, and whether it is kept where it says so.
pub fn length(of: &Exhaust, feet: &dyn Fn(f64) -> String) -> (Option<bool>, String) {
    let says = match of.code_length {
        None => length_unknown().to_owned(),
        Some(MostLength::NotAllowed) => length_none().to_owned(),
        Some(MostLength::Ft(most_ft)) => length_kept(feet(most_ft)),
        Some(MostLength::NoLimit) => length_free().to_owned(),
    };
    (of.code_length_held, says)
}

/// Which rule asks for most.
pub fn governs(of: &Rate) -> &'static str {
    match of.governs {
        Governs::Code => by_code(),
        Governs::Area => by_area(),
        Governs::Fixtures => by_fixtures(),
    }
}

/// Elbows, counted.
pub fn elbows(count: u32) -> String {
    if count == 1 {
        one_elbow().to_owned()
    } else {
        elbows_of(count)
    }
}

/// Why there is no answer.
pub fn refusal(of: &AirRefusal) -> String {
    match of {
        AirRefusal::NotFalling { .. } => not_falling(),
        AirRefusal::ShutoffTooLow { .. } => shutoff_low(),
        AirRefusal::NotAnAmount { .. }
        | AirRefusal::Nothing { .. }
        | AirRefusal::NoRating
        | AirRefusal::TooManyPoints { .. } => refused(),
    }
    .to_owned()
}
