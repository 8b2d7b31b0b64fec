//! The survey of the old floor.

use calc::floor::paste::{Column, PasteProblem, PasteRefusal};
use calc::floor::surface::SurfaceRefusal;
use calc::floor::survey::SurveyRefusal;
use calc::job::Units;

use super::refusals;
use crate::pictures::length_text;

words! {
    stage => "Survey" | "Medición";
    heading => "Survey of the old floor" | "Medición del piso viejo";
    way_label => "How you read a spot" | "Cómo se mide cada punto";
    way_down => "Down from a level line" | "Hacia abajo desde una línea a nivel";
    way_up => "Up from the lowest spot" | "Hacia arriba desde el punto más bajo";
    way_down_hint => "Measure from the line down to the floor: the larger reading is the lower spot."
        | "Mida de la línea al piso: la lectura mayor es el punto más bajo.";
    way_up_hint => "The lowest spot reads 0; every other reads how far it stands above."
        | "El punto más bajo marca 0; los demás, cuánto quedan arriba.";
    set_up => "How to survey, and where" | "Cómo medir y dónde";
    high => "high" | "alto";
    low => "low" | "bajo";
    spacing_label => "Spots no farther apart than" | "Puntos a no más de";
    propose => "Propose the spots" | "Proponer los puntos";
    propose_again => "Propose again" | "Proponer otra vez";
    propose_why => "Corners, both sides of each opening and a grid between, in walking order. Spots already read stay."
        | "Esquinas, ambos lados de cada vano y una cuadrícula, en orden de recorrido. Los puntos ya medidos se quedan.";
    no_room_yet => "The room's outline comes first; the spots are laid out on it." | "Primero va el contorno del cuarto; los puntos se trazan sobre él.";
    to_room => "To the room" | "Al cuarto";
    spot(number: usize) => "Spot {number}" | "Punto {number}";
    spot_of(number: usize, count: usize) => "Spot {number} of {count}" | "Punto {number} de {count}";
    spot_where(right: String, away: String) => "{right} right, {away} away" | "{right} a la derecha, {away} al fondo";
    reading_label(number: usize) => "Reading at spot {number}" | "Lectura en el punto {number}";
    next_spot => "Next spot" | "Siguiente punto";
    previous_spot => "Back" | "Atrás";
    undo_reading => "Undo" | "Deshacer";
    all_read => "Every spot is read." | "Todos los puntos están medidos.";
    one_left_to_read => "1 spot left to read." | "Falta 1 punto por medir.";
    left_to_read(count: usize) => "Left to read: {count}." | "Por medir: {count}.";
    map_says(read: usize, count: usize) => "Plan with {count} spots, {read} of them read." | "Plano con {count} puntos, {read} ya medidos.";
    map_caption => "Tap a spot to go to it." | "Toque un punto para ir a él.";
    again_heading => "Read again?" | "¿Medir otra vez?";
    again(number: usize, reading: String, expected: String) => "Spot {number} reads {reading}; its neighbours would lead to about {expected}."
        | "El punto {number} marca {reading}; por sus vecinos se esperaría cerca de {expected}.";
    go_to_spot(number: usize) => "Go to spot {number}" | "Ir al punto {number}";
    checked_spot(number: usize) => "Spot {number} is right" | "El punto {number} está bien";
    again_kept => "The reading stays in the figures until you change it." | "La lectura cuenta hasta que usted la cambie.";
    list_heading(count: usize) => "All spots and readings ({count})" | "Todos los puntos y lecturas ({count})";
    column_spot => "Spot" | "Punto";
    column_right => "Right" | "Derecha";
    column_away => "Away" | "Fondo";
    column_reading => "Reading" | "Lectura";
    more_spots => "Show more" | "Mostrar más";
    add_spot => "Add a spot of your own" | "Agregar un punto propio";
    own_right => "To the right of the first corner" | "A la derecha de la primera esquina";
    own_away => "Away from the first corner" | "Hacia el fondo desde la primera esquina";
    add_this_spot => "Add this spot" | "Agregar este punto";
    take_out_spot(number: usize) => "Take out spot {number}" | "Quitar el punto {number}";
    take_out_all => "Take out all spots" | "Quitar todos los puntos";
    spots_unread(count: usize) => "{count} spots without a reading" | "{count} puntos sin lectura";
    spots(count: usize) => "{count} spots" | "{count} puntos";
    paste_heading => "Paste or bring in readings" | "Pegar o traer lecturas";
    paste_label => "One spot a line: right, away, reading" | "Un punto por línea: derecha, fondo, lectura";
    paste_hint => "Like 24, 36, 3 1/8 — separated by commas, tabs or semicolons. A first line of headings is fine."
        | "Como 24, 36, 3 1/8 — separados por comas, tabuladores o punto y coma. Puede haber una línea de títulos.";
    paste_hint_metric => "Like 600, 900, 79 in millimeters — separated by commas, tabs or semicolons. A first line of headings is fine."
        | "Como 600, 900, 79 en milímetros — separados por comas, tabuladores o punto y coma. Puede haber una línea de títulos.";
    paste_take => "Take these spots" | "Tomar estos puntos";
    paste_file => "From a file" | "De un archivo";
    paste_add => "Add these to them" | "Agregarlos a esos";
    paste_instead(count: usize) => "Take these in place of the {count} read" | "Tomar estos en lugar de los {count} medidos";
    paste_took_one => "1 spot taken." | "Se tomó 1 punto.";
    paste_took(count: usize) => "{count} spots taken." | "{count} puntos tomados.";
    paste_gave_way(count: usize) => "The {count} spots before" | "Los {count} puntos de antes";
    paste_more(count: usize) => "and {count} more lines" | "y {count} líneas más";
    facts_heading => "What the floor does" | "Qué hace el piso";
    fall_rests(low: String, high: String) => "From the highest spot ({high}) down to the lowest ({low})." | "Del punto más alto ({high}) al más bajo ({low}).";
    best_fit(tilt: String, rms: String) => "As a whole it leans {tilt}; the spots stray {rms} from that plane (root mean square)."
        | "En conjunto se inclina {tilt}; los puntos se apartan {rms} de ese plano (media cuadrática).";
    best_fit_level(rms: String) => "As a whole it does not lean; the spots stray {rms} (root mean square)." | "En conjunto no se inclina; los puntos se apartan {rms} (media cuadrática).";
    contours_caption(step: String) => "Lines of equal height, {step} apart, from the highest spot down; a heavier line every fourth; the arrow points downhill."
        | "Líneas de igual altura, cada {step}, desde el punto más alto; cada cuarta más gruesa; la flecha apunta cuesta abajo.";
    contours_says(fall: String) => "Contour map of the old floor; it falls {fall} from high to low." | "Mapa de curvas del piso viejo; baja {fall} de lo alto a lo bajo.";
    levels_heading => "How much it takes to reach each level" | "Cuánto se necesita para llegar a cada nivel";
    level_column => "Below the highest spot" | "Bajo el punto más alto";
    level_volume => "Volume" | "Volumen";
    level_area => "Floor covered" | "Piso cubierto";
    one_assumed => "1 corner has no reading of its own and takes the nearest." | "1 esquina no tiene lectura propia y toma la más cercana.";
    assumed(count: usize) => "{count} corners have no reading of their own and take the nearest." | "{count} esquinas no tienen lectura propia y toman la más cercana.";
    to_pour => "Next: the pour" | "Sigue: el colado";
    one_is_too_few => "1 spot is read; a floor needs at least 3." | "Hay 1 punto medido; un piso necesita al menos 3.";
    too_few(given: usize) => "{given} spots are read; a floor needs at least 3." | "Hay {given} puntos medidos; un piso necesita al menos 3.";
    too_many(given: usize) => "{given} spots; a survey has at most 10,000." | "{given} puntos; una medición tiene a lo más 10,000.";
    spot_no_number(spot: usize) => "Spot {spot} has no place or reading." | "El punto {spot} no tiene lugar o lectura.";
    spot_far(spot: usize) => "Spot {spot} reads more than 10 ft from the line. Check the reading." | "El punto {spot} marca a más de 10 pies de la línea. Revise la lectura.";
    outside(spots: &str) => "Outside the walls: spot {spots}. Mend the room's sides, or bring these spots to the nearest wall." | "Fuera de las paredes: punto {spots}. Corrija los lados del cuarto o lleve esos puntos a la pared más cercana.";
    bring_to_wall => "Bring them to the wall" | "Llevarlos a la pared";
    spot_outside(spot: usize, by: String) => "Spot {spot} lies {by} outside the walls. Change its place or the room." | "El punto {spot} queda {by} fuera de las paredes. Cambie su lugar o el cuarto.";
    same_place(first: usize, second: usize) => "Spots {first} and {second} are at the same place. Take one out." | "Los puntos {first} y {second} están en el mismo lugar. Quite uno.";
    one_line(first: usize, last: usize) => "All spots lie in one line, from spot {first} to spot {last}. Read one off the line." | "Todos los puntos están en una línea, del {first} al {last}. Mida uno fuera de ella.";
    too_tight(spot: usize) => "Spot {spot} is too close to a wall to tell on which side it is. Move it onto the wall or away."
        | "El punto {spot} está demasiado cerca de una pared. Póngalo en la pared o aléjelo.";
    entry_wrong => "1 entry can't be read; it is marked in the list." | "1 dato no se entiende; está marcado en la lista.";
    entries_wrong(count: usize) => "Entries that can't be read: {count}; they are marked in the list." | "Datos que no se entienden: {count}; están marcados en la lista.";
    spacing_small(least: String) => "A spacing of {least} or more." | "Una separación de {least} o más.";
    spacing_many(most: usize) => "That spacing makes more than {most} spots. Choose a wider one." | "Esa separación da más de {most} puntos. Elija una mayor.";
    line(number: usize, what: String) => "Line {number}: {what}" | "Línea {number}: {what}";
    paste_empty => "there is no spot in the text." | "no hay ningún punto en el texto.";
    paste_many(most: usize) => "more than {most} spots." | "más de {most} puntos.";
    paste_cells(given: usize) => "{given} values; a spot has three: right, away, reading." | "{given} valores; un punto tiene tres: derecha, fondo, lectura.";
    paste_cell(column: &str, text: &str, what: String) => "{column} “{text}”: {what}" | "{column} «{text}»: {what}";
    paste_parted(text: &str) => "“{text}” is parted in two ways; use one separator." | "«{text}» está separado de dos maneras; use un solo separador.";
    paste_blank(column: &str) => "{column} is blank." | "{column} está en blanco.";
    paste_quote => "a quote mark is never closed." | "unas comillas no se cierran.";
    paste_headings => "these headings don't say which column is which. Use x, y, reading." | "estos títulos no dicen cuál columna es cuál. Use x, y, lectura.";
}

/// Why there is no surface; spots are numbered by `number` from their index among the read ones.
pub fn surface_refusal(
    refusal: &SurfaceRefusal,
    number: &dyn Fn(usize) -> usize,
    units: Units,
) -> String {
    match refusal {
        SurfaceRefusal::TooFew { given: 1 } => one_is_too_few().to_owned(),
        SurfaceRefusal::TooFew { given } => too_few(*given),
        SurfaceRefusal::TooMany { given } => too_many(*given),
        SurfaceRefusal::NotANumber { spot } => spot_no_number(number(*spot)),
        SurfaceRefusal::TooFarFromDatum { spot, .. } => spot_far(number(*spot)),
        SurfaceRefusal::Outside { spot, by_in } => {
            spot_outside(number(*spot), length_text(*by_in, units))
        }
        SurfaceRefusal::SamePlace { first, second } => same_place(number(*first), number(*second)),
        SurfaceRefusal::OneLine { first, last } => one_line(number(*first), number(*last)),
        SurfaceRefusal::TooTight { spot } => too_tight(number(*spot)),
    }
}

/// Why no spots could be proposed.
pub fn survey_refusal(refusal: &SurveyRefusal, units: Units) -> String {
    match refusal {
        SurveyRefusal::Spacing { least_in, .. } => spacing_small(length_text(*least_in, units)),
        SurveyRefusal::TooManySpots { most } => spacing_many(*most),
    }
}

fn column(column: Column) -> &'static str {
    match column {
        Column::X => column_right(),
        Column::Y => column_away(),
        Column::Reading => column_reading(),
    }
}

/// What is wrong on a line of pasted text.
pub fn paste_refusal(refusal: &PasteRefusal) -> String {
    let what = match &refusal.what {
        PasteProblem::Empty => return paste_empty().to_owned(),
        PasteProblem::TooManyRows { most } => return paste_many(*most),
        PasteProblem::Columns { found } => paste_cells(*found),
        PasteProblem::PartedTwice { text } => paste_parted(text),
        PasteProblem::Quote => paste_quote().to_owned(),
        PasteProblem::Headings => paste_headings().to_owned(),
        PasteProblem::Blank { column: c } => paste_blank(column(*c)),
        PasteProblem::Length {
            column: c,
            text,
            why,
        } => paste_cell(column(*c), text, refusals::length(why)),
    };
    line(refusal.line, what)
}
