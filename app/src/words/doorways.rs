//! The doorways: layers, the step at each jamb, the ramp.

use calc::floor::doorway::{DoorwayRefusal, Entry, Higher, Part, Side};
use calc::floor::level_change::{STEP_RULES, Status, Treatment};
use calc::floor::ramp::{Quantity, RampRefusal};
use calc::job::{Layer, Units};
use calc::quantity::{Slope, SlopeUnit, fixed};

use crate::pictures::{at_least_text, length_text, thickness_text};

words! {
    stage => "Doors" | "Puertas";
    heading(name: &str) => "Doorways: {name}" | "Puertas: {name}";
    none_yet => "This room has no opening in its place yet. Steps and ramps are worked out where a room meets the next one."
        | "Este cuarto todavía no tiene ningún vano en su lugar. Los escalones y las rampas se calculan donde un cuarto topa con otro.";
    unplaced(letters: String) => "Still without a place in a wall, so not shown here: {letters}."
        | "Todavía sin lugar en una pared, por eso no se muestra aquí: {letters}.";
    to_job => "To the job" | "Al trabajo";
    to_room => "To the openings" | "A los vanos";
    no_floor => "The old floor isn't known yet. Read the spots first; then each doorway shows its step."
        | "Todavía no se conoce el piso viejo. Primero lea los puntos; luego cada puerta muestra su escalón.";
    to_survey => "To the survey" | "Al levantamiento";
    to_pour => "To the pour" | "Al colado";
    view_label => "Look at the steps with" | "Ver los escalones con";
    view_none => "No pour" | "Sin colado";
    view_level => "Level pour" | "Colado a nivel";
    view_flat => "Flat pour" | "Colado plano";
    view_hint => "Only what is shown here changes; the pour is chosen on its own page."
        | "Solo cambia lo que se muestra aquí; el colado se elige en su propia página.";
    no_such_pour => "This pour can't be made as entered; its page says why. The steps below are those without a pour."
        | "Este colado no se puede hacer como está escrito; su página dice por qué. Los escalones de abajo son sin colado.";
    layers_here_heading => "Layers of this room" | "Capas de este cuarto";
    layers_here_hint => "What comes on top of the pour, or of the old floor where none is poured, from the bottom up."
        | "Lo que va encima del colado, o del piso viejo donde no se vacía, de abajo hacia arriba.";
    layers_beyond_heading => "Layers beyond" | "Capas del otro lado";
    layers_beyond_hint => "What lies on the subfloor beyond, from the bottom up. Leave it empty where the reading was taken on the finished floor."
        | "Lo que hay sobre el subpiso del otro lado, de abajo hacia arriba. Déjelo vacío si la lectura se tomó sobre el piso terminado.";
    layer_kind(number: usize) => "Layer {number}" | "Capa {number}";
    layer_own => "Another, named here" | "Otra, con su nombre";
    layer_choose => "Choose a layer" | "Elija una capa";
    layer_name => "Name" | "Nombre";
    layer_thickness => "Thickness when done" | "Espesor ya terminado";
    layer_range(least: String, most: String) => "Usually {least} to {most}; measure yours." | "Normalmente de {least} a {most}; mida la suya.";
    layer_unnamed => "layer without a name" | "capa sin nombre";
    add_layer => "Add a layer" | "Agregar una capa";
    step_doubtful => "That is more than a stair's riser. Read the floor beyond again, from the same line as the survey."
        | "Es más que un peldaño. Vuelva a medir el piso de al lado, desde la misma línea del levantamiento.";
    one_down => "One lower" | "Más abajo";
    layer_down(name: &str) => "One lower in the floor: {name}" | "Una capa más abajo: {name}";
    take_out_layer(name: &str) => "Take out: {name}" | "Quitar: {name}";
    together(thickness: String) => "Together {thickness}." | "Juntas {thickness}.";
    beyond_label => "The floor beyond" | "El piso del otro lado";
    beyond_unknown => "Not known yet" | "No se conoce";
    beyond_reading => "Read like a spot" | "Leído como un punto";
    beyond_spot => "Level with a spot" | "A nivel con un punto";
    beyond_reading_label => "Reading on the subfloor beyond" | "Lectura en el subpiso del otro lado";
    reading_down => "Measured down from the same level line as the survey." | "Medida hacia abajo desde la misma línea de nivel del levantamiento.";
    reading_up => "Measured up from the same low spot as the survey." | "Medida hacia arriba desde el mismo punto bajo del levantamiento.";
    beyond_spot_label => "Level with spot" | "A nivel con el punto";
    spot_choose => "Choose a spot" | "Elija un punto";
    spot_option(number: usize, reading: String) => "Spot {number}, reading {reading}" | "Punto {number}, lectura {reading}";
    spot_missing => "Choose a spot that has a reading." | "Elija un punto que tenga lectura.";
    pour_at_most_label => "The pour here stands no higher than" | "El colado aquí no pasa de";
    pour_at_most_hint => "A reading like a spot's; it holds both pours down at this opening. Blank: no limit."
        | "Una lectura como la de un punto; limita los dos colados en este vano. En blanco: sin límite.";
    step_heading => "Step" | "Escalón";
    left_jamb => "Left jamb" | "Jamba izquierda";
    right_jamb => "Right jamb" | "Jamba derecha";
    seen_from => "Left and right are yours when you stand in this room and face the opening."
        | "Izquierda y derecha son las suyas, parado en este cuarto y viendo hacia el vano.";
    up_into => "up into this room" | "sube hacia este cuarto";
    down_into => "down into this room" | "baja hacia este cuarto";
    flush => "flush" | "al ras";
    nearly_flush => "flush to the eye" | "al ras a la vista";
    ramp_anyway => "Ramp it anyway" | "Ponerle rampa de todos modos";
    higher_here => "This room's finished floor is the higher one." | "El piso terminado de este cuarto es el más alto.";
    higher_beyond => "The finished floor beyond is the higher one." | "El piso terminado del otro lado es el más alto.";
    higher_neither => "Both finished floors meet." | "Los dos pisos terminados quedan al ras.";
    higher_changes => "This room is higher at one jamb, the floor beyond at the other."
        | "Este cuarto queda más alto en una jamba y el otro lado en la otra.";
    rests_no_pour => "From the survey at the jambs and the layers above, with nothing poured."
        | "Del levantamiento en las jambas y las capas de arriba, sin vaciar nada.";
    rests_level => "From the survey at the jambs, the level pour and the layers above."
        | "Del levantamiento en las jambas, el colado a nivel y las capas de arriba.";
    rests_flat => "From the survey at the jambs, the flat pour and the layers above."
        | "Del levantamiento en las jambas, el colado plano y las capas de arriba.";
    still_missing_beyond => "Say how high the floor beyond is." | "Diga qué tan alto está el piso del otro lado.";
    still_missing_reading => "Enter the reading beyond." | "Escriba la lectura del otro lado.";
    still_missing_thickness => "Enter the thickness of every layer." | "Escriba el espesor de cada capa.";
    still_missing_place => "Give the opening its place and width." | "Dé al vano su lugar y su ancho.";
    still_missing_slope => "Enter a slope or a length for the ramp." | "Escriba una pendiente o un largo para la rampa.";
    treat_flush => "No step to treat." | "No hay escalón que tratar.";
    treat_plain(most: String) => "Up to {most} may stay upright (2010 ADA Standards 303.2)."
        | "Hasta {most} puede quedar a plomo (2010 ADA Standards 303.2).";
    treat_bevel(upright: String, rise: String, run: String) => "{upright} may stay upright; the other {rise} is bevelled over at least {run} (1:2, 2010 ADA Standards 303.3)."
        | "{upright} puede quedar a plomo; los otros {rise} van en bisel de al menos {run} (1:2, 2010 ADA Standards 303.3).";
    treat_ramp(most: String, run: String) => "Over {most} a ramp is due: at least {run} long at 1:12 (2010 ADA Standards 303.4, 405.2)."
        | "Más de {most} pide rampa: al menos {run} de largo a 1:12 (2010 ADA Standards 303.4, 405.2).";
    reference_only => "These figures are a reference: private homes are usually not bound by the ADA Standards, and the residential code binds in the edition adopted where the job is."
        | "Estas cifras son una referencia: las casas particulares por lo general no están obligadas por las normas ADA, y el código residencial vale en la edición adoptada donde está la obra.";
    published_heading => "What published figures say" | "Qué dicen las cifras publicadas";
    column_rule => "Figure" | "Cifra";
    column_limit => "Limit" | "Límite";
    column_this => "This" | "Aquí";
    within => "within" | "dentro";
    past_by(by: String) => "past by {by}" | "se pasa {by}";
    steeper => "steeper" | "más inclinada";
    status_memory => "from memory; check the source" | "de memoria; verifique la fuente";
    ramp_heading => "Ramp" | "Rampa";
    ramp_slope_label => "Slope to keep" | "Pendiente";
    ramp_slope_hint => "Used where no length is entered." | "Se usa si no se escribe un largo.";
    ramp_length_label => "Length there is" | "Largo disponible";
    ramp_length_hint => "Blank: as long as the slope needs." | "En blanco: lo que pida la pendiente.";
    ramp_lies_here => "It lies in this room and rises to the floor beyond." | "Queda en este cuarto y sube al piso del otro lado.";
    ramp_lies_beyond => "It lies beyond the opening and rises into this room." | "Queda del otro lado del vano y sube a este cuarto.";
    ramp_none => "Both floors meet; there is nothing to ramp." | "Los dos pisos quedan al ras; no hace falta rampa.";
    ramp_length => "Length" | "Largo";
    ramp_by_slope(slope: String) => "At {slope}, from jamb to jamb as long as the higher side needs."
        | "A {slope}, de jamba a jamba tan larga como pide el lado más alto.";
    ramp_by_length(length: String) => "In the {length} there is, from jamb to jamb."
        | "En los {length} que hay, de jamba a jamba.";
    run_at_left => "Run the left jamb needs" | "Distancia que pide la jamba izquierda";
    run_at_right => "Run the right jamb needs" | "Distancia que pide la jamba derecha";
    slope_built => "Slope as built" | "Pendiente construida";
    angle => "Angle" | "Ángulo";
    in_per_ft(value: String) => "{value} in per ft" | "{value} pulg por pie";
    wedge => "Wedge" | "Cuña";
    wedge_bags => "Bags for the wedge" | "Sacos para la cuña";
    wedge_note => "With the yield and allowance of the pour. A ramp takes a mix that holds its shape; go by its own bag."
        | "Con el rendimiento y el margen del colado. Una rampa pide una mezcla que guarde su forma; siga su propio saco.";
    bags_missing => "Enter the bag's yield and the allowance on the pour's page." | "Escriba el rendimiento del saco y el margen en la página del colado.";
    section_caption(side: &str) => "Section at the {side}, thicknesses to scale; numbers as listed."
        | "Corte en la {side}, espesores a escala; números según la lista.";
    section_says(side: &str, step: String) => "Section through both floors at the {side}: {step}."
        | "Corte por los dos pisos en la {side}: {step}.";
    side_left => "left jamb" | "jamba izquierda";
    side_right => "right jamb" | "jamba derecha";
    this_room => "this room" | "este cuarto";
    beyond => "beyond" | "otro lado";
    subfloor_here => "Old floor" | "Piso viejo";
    subfloor_beyond => "Subfloor" | "Subpiso";
    pour => "Pour" | "Colado";
    ramp_caption => "Ramp from the side, to scale." | "Rampa de perfil, a escala.";
    ramp_caption_tall(times: String) => "Ramp from the side; heights drawn {times} times as large as lengths."
        | "Rampa de perfil; las alturas se dibujan {times} veces más grandes que los largos.";
    ramp_says(rise: String, run: String, slope: String) => "A ramp that rises {rise} over a run of {run}, {slope}."
        | "Una rampa que sube {rise} en una distancia de {run}, {slope}.";
    not_a_number => "This can't be worked out as entered." | "Esto no se puede calcular como está escrito.";
    below_zero(what: &str, given: String) => "{what} comes out below zero ({given}): the pour would lie under the old floor there."
        | "{what} sale bajo cero ({given}): el colado quedaría debajo del piso viejo ahí.";
    too_much(what: &str, given: String, most: String) => "{what} is {given}; up to {most} is believed here. Check the entry."
        | "{what} es {given}; aquí se acepta hasta {most}. Revise lo escrito.";
    entry_subfloor_here => "This room's old floor" | "El piso viejo de este cuarto";
    entry_pour => "The pour" | "El colado";
    entry_layer => "A layer" | "Una capa";
    entry_subfloor_beyond => "The subfloor beyond" | "El subpiso del otro lado";
    steps_differ(left: String, right: String) => "One jamb steps up and the other down ({left} and {right}), so no single ramp fits. Bring the pour or a layer to one side first, or cap the pour here."
        | "Una jamba sube y la otra baja ({left} y {right}), así que ninguna rampa sola sirve. Primero ajuste el colado o una capa, o limite el colado aquí.";
    upright(slope: String) => "{slope} is as good as upright. Give the ramp more length." | "{slope} es casi vertical. Dele más largo a la rampa.";
    too_long(given: String, most: String) => "It would be {given} long; up to {most} is worked with. Take a steeper slope."
        | "Mediría {given}; se calcula hasta {most}. Use una pendiente mayor.";
    never_rises => "A level ramp gains no height. Enter a slope." | "Una rampa a nivel no sube. Escriba una pendiente.";
    any_run => "With neither rise nor slope any length would do. Enter one of them." | "Sin subida ni pendiente cualquier largo sirve. Escriba una de las dos.";
    no_run => "Enter a length of more than 0." | "Escriba un largo mayor que 0.";
    no_width => "The opening has no width." | "El vano no tiene ancho.";
    cautions_threshold => "A raised edge trips people. Mark it while the work is open, and fix the transition before the room is used."
        | "Un borde levantado hace tropezar. Márquelo mientras la obra está abierta y fije la transición antes de usar el cuarto.";
    cautions_door => "Check that the door still clears the finished floor before anything is poured; cutting a fire-rated door voids its rating."
        | "Antes de vaciar, revise que la puerta libre el piso terminado; cortar una puerta contra fuego le quita su clasificación.";
    cautions_exterior => "At a door to the outside, keep water out: the landing, flashing and sill pan are the local code's."
        | "En una puerta al exterior, que no entre agua: el descanso, el tapajuntas y la charola del umbral los decide el código local.";
    cautions_old_floor => "Old flooring, adhesive and backing may hold asbestos. Have a sample tested before it is cut, sanded or torn up."
        | "El piso viejo, su pegamento y su respaldo pueden tener asbesto. Haga analizar una muestra antes de cortar, lijar o arrancar.";
}

named! {
    /// A layer of calc's table by its name.
    layer_word {
        "membrane_liquid" => "Liquid membrane" | "Membrana líquida";
        "membrane_sheet" => "Sheet membrane" | "Membrana en hoja";
        "uncoupling_thin" => "Uncoupling membrane, 1/8 in" | "Membrana de desacople, 1/8 pulg";
        "uncoupling_thick" => "Uncoupling membrane, 1/4 in" | "Membrana de desacople, 1/4 pulg";
        "heat_mat" => "Heating mat" | "Malla de calefacción";
        "backer_1_4" => "Backer board, 1/4 in" | "Tabla de cemento, 1/4 pulg";
        "backer_1_2" => "Backer board, 1/2 in" | "Tabla de cemento, 1/2 pulg";
        "plywood_1_4" => "Plywood, 1/4 in" | "Triplay, 1/4 pulg";
        "plywood_1_2" => "Plywood, 1/2 in" | "Triplay, 1/2 pulg";
        "plywood_5_8" => "Plywood, 5/8 in" | "Triplay, 5/8 pulg";
        "panel_3_4" => "Subfloor panel, 3/4 in" | "Panel de subpiso, 3/4 pulg";
        "self_levelling" => "Self-levelling underlayment" | "Autonivelante";
        "mortar_bed" => "Mortar bed" | "Cama de mortero";
        "mortar_under_membrane" => "Mortar under a membrane" | "Mortero bajo membrana";
        "bond_coat_1_4" => "Bond coat, 1/4 in notch" | "Pegazulejo, llana de 1/4 pulg";
        "bond_coat_3_8" => "Bond coat, 3/8 in notch" | "Pegazulejo, llana de 3/8 pulg";
        "bond_coat_1_2" => "Bond coat, 1/2 in notch" | "Pegazulejo, llana de 1/2 pulg";
        "tile_ceramic_wall" => "Ceramic tile" | "Loseta de cerámica";
        "tile_porcelain_floor" => "Porcelain floor tile" | "Loseta de porcelanato";
        "tile_mosaic" => "Mosaic tile" | "Mosaico";
        "tile_stone" => "Stone tile" | "Loseta de piedra";
        "sheet_vinyl" => "Sheet vinyl" | "Vinil en rollo";
        "vinyl_plank" => "Vinyl plank" | "Duela de vinil";
        "laminate_with_pad" => "Laminate with pad" | "Laminado con bajo piso";
        "wood_engineered" => "Engineered wood" | "Madera de ingeniería";
        "wood_strip" => "Strip wood, 3/4 in" | "Duela de madera, 3/4 pulg";
        "carpet_and_pad" => "Carpet and pad" | "Alfombra con bajo alfombra";
    }
}

named! {
    /// A published height by its name.
    step_rule {
        "plain_step" => "An upright edge" | "Un borde a plomo";
        "bevelled_step" => "An edge with its upper part bevelled 1:2" | "Un borde con la parte de arriba en bisel 1:2";
        "ramp_above" => "Above this a ramp" | "Más de esto, rampa";
        "doorway_threshold" => "A threshold in a doorway" | "Un umbral en una puerta";
        "altered_threshold" => "An existing or altered threshold, bevelled" | "Un umbral existente o modificado, con bisel";
        "ramp_rise" => "The rise of one run of a ramp" | "La subida de un tramo de rampa";
        "egress_door_landing" => "The landing at the egress door, below its threshold" | "El descanso en la puerta de salida, bajo su umbral";
        "egress_door_exterior_landing" => "The outer landing there, where the door doesn't swing over it" | "El descanso exterior ahí, si la puerta no abre sobre él";
        "other_exterior_door_landing" => "The landing at another outside door" | "El descanso en otra puerta exterior";
    }
}

named! {
    /// A published slope by its name.
    slope_rule {
        "cross_slope" => "Level enough to stand, or across a way" | "Casi a nivel, o a lo ancho del paso";
        "walking_surface" => "A walk; steeper is a ramp" | "Un paso; más inclinado es rampa";
        "ramp" => "A ramp" | "Una rampa";
        "egress_door_ramp" => "A house ramp at the egress door" | "Rampa de casa en la puerta de salida";
        "other_house_ramp" => "Another ramp of a house" | "Otra rampa de una casa";
        "bevel" => "A bevel at an edge" | "Un bisel en un borde";
    }
}

/// The part of a floor that a layer is, as a heading of the list.
pub fn part(part: Part) -> &'static str {
    match part {
        Part::Membrane => part_membrane(),
        Part::Panel => part_panel(),
        Part::Bed => part_bed(),
        Part::Finish => part_finish(),
    }
}

words! {
    part_membrane => "Membranes" | "Membranas";
    part_panel => "Panels" | "Tableros";
    part_bed => "Beds and bond coats" | "Camas y pegamentos";
    part_finish => "Finishes" | "Acabados";
}

/// A layer's name as it is read: the table's words, or the user's own.
pub fn layer_called(layer: &Layer) -> String {
    match layer_word(&layer.name) {
        Some(word) => word.to_owned(),
        None if layer.name.trim().is_empty() => layer_unnamed().to_owned(),
        None => layer.name.clone(),
    }
}

/// A side of an opening.
pub fn side(side: Side) -> &'static str {
    match side {
        Side::Left => side_left(),
        Side::Right => side_right(),
    }
}

/// Which floor is higher.
pub fn higher(higher: Higher) -> &'static str {
    match higher {
        Higher::Here => higher_here(),
        Higher::Beyond => higher_beyond(),
        Higher::Neither => higher_neither(),
        Higher::Changes => higher_changes(),
    }
}

/// What 2010 ADA Standards 303 has for a step.
pub fn treatment(treatment: Treatment, units: Units) -> String {
    let text = |inches: f64| thickness_text(inches, units);
    match treatment {
        Treatment::Flush => treat_flush().to_owned(),
        Treatment::Plain => treat_plain(text(published_in("plain_step"))),
        Treatment::Bevel {
            upright_in,
            bevel_rise_in,
            least_run_in,
        } => treat_bevel(
            text(upright_in),
            text(bevel_rise_in),
            at_least_text(least_run_in, units),
        ),
        Treatment::Ramp { least_run_in } => treat_ramp(
            text(published_in("bevelled_step")),
            at_least_text(least_run_in, units),
        ),
    }
}

/// A published height of calc's table, inches.
fn published_in(id: &str) -> f64 {
    STEP_RULES
        .iter()
        .find(|rule| rule.id == id)
        .map_or(f64::NAN, |rule| rule.value_in)
}

/// How far a published figure was checked, where that must be told.
pub fn status(status: Status) -> Option<&'static str> {
    match status {
        Status::FromMemory => Some(status_memory()),
        Status::Verified | Status::VerifiedOnce | Status::CommonPractice => None,
    }
}

/// A slope as 1:n.
pub fn one_to(slope: f64) -> String {
    Slope::from_ratio(slope).format(SlopeUnit::OneTo, 1)
}

/// Why the floors can't be worked out.
pub fn doorway_refusal(refusal: &DoorwayRefusal, units: Units) -> String {
    let text = |inches: f64| length_text(inches, units);
    match refusal {
        DoorwayRefusal::NotANumber(_) => not_a_number().to_owned(),
        DoorwayRefusal::Negative { entry, given_in } => {
            below_zero(entry_words(*entry), text(*given_in))
        }
        DoorwayRefusal::TooMuch {
            entry,
            given_in,
            most_in,
        } => too_much(entry_words(*entry), text(*given_in), text(*most_in)),
    }
}

fn entry_words(entry: Entry) -> &'static str {
    match entry {
        Entry::SubfloorHere(_) => entry_subfloor_here(),
        Entry::Pour(_) => entry_pour(),
        Entry::LayerHere(_) | Entry::LayerBeyond(_) => entry_layer(),
        Entry::SubfloorBeyond(_) => entry_subfloor_beyond(),
    }
}

/// Why there is no ramp.
pub fn ramp_refusal(refusal: &RampRefusal, units: Units) -> String {
    let text = |inches: f64| length_text(inches, units);
    match refusal {
        RampRefusal::NotANumber(_) | RampRefusal::Negative { .. } => not_a_number().to_owned(),
        RampRefusal::TooLong {
            what: Quantity::Slope,
            given_in,
            ..
        } => upright(fixed(*given_in, 1)),
        RampRefusal::TooLong {
            given_in, most_in, ..
        } => too_long(text(*given_in), text(*most_in)),
        RampRefusal::NoRun => no_run().to_owned(),
        RampRefusal::Upright { slope } => {
            upright(Slope::from_ratio(*slope).format(SlopeUnit::Percent, 0))
        }
        RampRefusal::NeverRises { .. } => never_rises().to_owned(),
        RampRefusal::AnyRun => any_run().to_owned(),
        RampRefusal::NoWidth => no_width().to_owned(),
        RampRefusal::StepsDiffer {
            step_left_in,
            step_right_in,
        } => steps_differ(
            thickness_text(*step_left_in, units),
            thickness_text(*step_right_in, units),
        ),
    }
}

/// What to enter where an entry is missing, by its name in the document.
pub fn missing(name: &str) -> &'static str {
    match name {
        "beyond" => still_missing_beyond(),
        "beyond_reading" => still_missing_reading(),
        "beyond_spot" => spot_missing(),
        "thickness" => still_missing_thickness(),
        "place" => still_missing_place(),
        "ramp_slope" | "ramp_length" => still_missing_slope(),
        _ => still_missing_place(),
    }
}

#[cfg(test)]
mod tests {
    use calc::floor::doorway::LAYERS;
    use calc::floor::level_change::{classify, classify_slope};

    use super::*;

    #[test]
    fn every_layer_and_rule_has_words() {
        for kind in LAYERS {
            assert!(layer_word(kind.id).is_some(), "{}", kind.id);
        }
        for held in classify(1.0).unwrap().held {
            assert!(step_rule(held.rule.id).is_some(), "{}", held.rule.id);
        }
        for held in classify_slope(0.1).unwrap() {
            assert!(slope_rule(held.rule.id).is_some(), "{}", held.rule.id);
        }
    }

    #[test]
    fn a_treatment_says_the_published_height() {
        // 2010 ADA Standards 303.2: 1/4 in; 303.3: 1/2 in.
        let said = |step_in| treatment(classify(step_in).unwrap().treatment, Units::FeetInches);
        assert!(said(0.1).contains("1/4\""), "{}", said(0.1));
        assert!(
            said(1.0).contains("1/2\"") && said(1.0).contains("12\""),
            "{}",
            said(1.0)
        );
    }

    #[test]
    fn a_length_to_have_at_least_is_rounded_up() {
        // 1.1155 in at 1:12 is 13.386 in long: 13-3/8 in would be steeper.
        let said = treatment(classify(1.1155).unwrap().treatment, Units::FeetInches);
        assert!(said.contains("13 7/16\""), "{said}");
    }

    #[test]
    fn the_users_own_name_stands() {
        let layer = |name: &str| Layer {
            id: 1,
            name: name.to_owned(),
            thickness: Default::default(),
            rest: Default::default(),
        };
        assert_eq!(layer_called(&layer("cork")), "cork");
        assert_eq!(layer_called(&layer("tile_stone")), "Stone tile");
        assert_eq!(layer_called(&layer(" ")), layer_unnamed());
    }
}
