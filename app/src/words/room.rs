//! The room: outline and openings.

use calc::floor::geometry::OutlineRefusal;
use calc::floor::opening::OpeningProblem;
use calc::floor::outline::{Part, ShapeRefusal};
use calc::job::{NO_WALL, Units};
use calc::quantity::fixed;

use crate::pictures::length_text;

words! {
    stage => "Room" | "Cuarto";
    heading(name: &str) => "Room: {name}" | "Cuarto: {name}";
    name_label => "Room name" | "Nombre del cuarto";
    shape_label => "Shape of the floor" | "Forma del piso";
    shape_rectangle => "Rectangle" | "Rectángulo";
    shape_l => "L" | "L";
    shape_walk => "Walk the walls" | "Recorrer las paredes";
    shape_walk_hint => "Start at any corner and go round with the room on your left hand. Measure each wall to its corner."
        | "Empiece en cualquier esquina y dé la vuelta con el cuarto a su izquierda. Mida cada pared hasta su esquina.";
    width_label => "Width, left to right" | "Ancho, de izquierda a derecha";
    side_hint => "Mark feet with ': 14' 6 1/2. A bare number is inches." | "Marque los pies con ': 14' 6 1/2. Un número solo son pulgadas.";
    length_label => "Length, near to far" | "Largo, de cerca a lejos";
    notch_width_label => "Missing corner, left to right" | "Esquina que falta, de izquierda a derecha";
    notch_length_label => "Missing corner, near to far" | "Esquina que falta, de cerca a lejos";
    notch_corner_label => "Which corner is missing" | "Cuál esquina falta";
    near_left => "near left" | "cerca, izquierda";
    near_right => "near right" | "cerca, derecha";
    far_right => "far right" | "lejos, derecha";
    far_left => "far left" | "lejos, izquierda";
    wall(number: usize) => "Wall {number}" | "Pared {number}";
    wall_length(number: usize) => "Wall {number}, length" | "Pared {number}, largo";
    turn_label(number: usize) => "Corner after wall {number}" | "Esquina después de la pared {number}";
    turn_left => "Inside corner" | "Esquina hacia adentro";
    turn_right => "Corner stands out" | "Esquina que sale";
    not_square(number: usize) => "Corner after wall {number} is not square" | "La esquina después de la pared {number} no está a escuadra";
    across_label(number: usize, mark: String) => "Across the corner after wall {number}, between marks {mark} along each wall"
        | "De marca a marca en la esquina después de la pared {number}, con marcas a {mark} en cada pared";
    across_hint(square: String) => "A square corner measures {square}. Used where no angle is given."
        | "Una esquina a escuadra mide {square}. Se usa si no se da un ángulo.";
    angle_label(number: usize) => "Turn after wall {number}, degrees" | "Giro después de la pared {number}, grados";
    angle_hint => "From straight on: 90 is square. Leave blank if measured across." | "Desde seguir derecho: 90 es a escuadra. Déjelo en blanco si midió de marca a marca.";
    add_wall => "Add a wall" | "Agregar una pared";
    take_out_wall(number: usize) => "Take out wall {number}" | "Quitar la pared {number}";
    walls_miss(miss: String, share: String) => "The walls miss by {miss}; that is {share} of the way round and is shared out over them."
        | "Las paredes no cierran por {miss}; es {share} de la vuelta y se reparte entre ellas.";
    walls_close => "The walls close." | "Las paredes cierran.";
    area_says(area: String, around: String) => "Floor {area}, {around} round the walls." | "Piso de {area}, {around} de contorno.";
    plan_says(width: String, length: String, doors: usize) => "Plan of the room, {width} by {length}, with {doors} openings."
        | "Plano del cuarto, {width} por {length}, con {doors} vanos.";
    plan_caption => "Plan. Walls are numbered from the first corner, near left." | "Plano. Las paredes se numeran desde la primera esquina, cerca a la izquierda.";
    no_plan_yet => "Enter the walls and the plan is drawn here." | "Escriba las paredes y aquí se dibuja el plano.";
    openings_heading => "Openings" | "Vanos";
    openings_none => "Doorways decide how high the floor may stand. Add each one."
        | "Las puertas deciden qué tan alto puede quedar el piso. Agregue cada una.";
    add_opening => "Add an opening" | "Agregar un vano";
    opening_name(letter: &str) => "Opening {letter}, name" | "Vano {letter}, nombre";
    opening_kind => "Kind" | "Tipo";
    kind_doorway => "Doorway" | "Puerta";
    kind_cased => "Opening without a door" | "Vano sin puerta";
    kind_exterior => "Door to the outside" | "Puerta al exterior";
    kind_closet => "Closet front" | "Frente de clóset";
    opening_wall => "In which wall" | "En cuál pared";
    choose_wall => "Choose a wall" | "Elija una pared";
    lost_wall => "Its wall was taken out. Choose the wall it is in." | "Se quitó su pared. Elija en cuál pared está.";
    wall_option(number: usize, length: String) => "Wall {number} ({length})" | "Pared {number} ({length})";
    opening_from => "From the wall's start to the opening" | "Del inicio de la pared al vano";
    opening_from_hint => "The start is the end you reach first with the room on your left hand; on the plan walls are numbered that way."
        | "El inicio es la punta a la que llega primero con el cuarto a su izquierda; así se numeran las paredes en el plano.";
    opening_width => "Width between jambs" | "Ancho entre jambas";
    take_out_opening(name: &str) => "Take out {name}" | "Quitar {name}";
    opening_called(letter: &str) => "Opening {letter}" | "Vano {letter}";
    to_survey => "Next: the survey" | "Sigue: el levantamiento";
    part_width => "The width" | "El ancho";
    part_length => "The length" | "El largo";
    part_notch_width => "The missing corner's width" | "El ancho de la esquina que falta";
    part_notch_length => "The missing corner's length" | "El largo de la esquina que falta";
    size_out(part: String, least: String, most: String) => "{part} must be from {least} to {most}." | "{part} debe ser de {least} a {most}.";
    notch_out(part: String, side: String) => "{part} must be less than the room's side of {side}." | "{part} debe ser menor que el lado del cuarto, {side}.";
    turn_out(wall: usize) => "The turn after wall {wall} must be under 180 degrees." | "El giro después de la pared {wall} debe ser menor de 180 grados.";
    on_the_right => "This walk has the room on its right hand. Go round the other way, or exchange every corner."
        | "Este recorrido lleva el cuarto a la derecha. Dé la vuelta al revés o cambie cada esquina.";
    no_area => "These walls enclose no floor. Add walls until you are back where you began."
        | "Estas paredes no encierran piso. Agregue paredes hasta volver a donde empezó.";
    too_many_corners(given: usize) => "A room has at most 64 corners here; this one has {given}." | "Aquí un cuarto tiene a lo más 64 esquinas; este tiene {given}.";
    no_length(wall: usize) => "Wall {wall} has no length." | "La pared {wall} no tiene largo.";
    too_far(corner: usize) => "Corner {corner} is farther away than any house reaches. Check the lengths."
        | "La esquina {corner} queda más lejos que cualquier casa. Revise los largos.";
    crossing(first: usize, second: usize) => "Walls {first} and {second} cross. Check their lengths and corners."
        | "Las paredes {first} y {second} se cruzan. Revise sus largos y esquinas.";
    open_walk(miss: String, allowed: String) => "The walls miss each other by {miss}; up to {allowed} would be shared out. Measure again, or add the wall that is missing."
        | "Las paredes no cierran por {miss}; hasta {allowed} se repartiría. Mida otra vez o agregue la pared que falta.";
    no_wall(wall: usize, walls: usize) => "There is no wall {wall}; the room has {walls}." | "No hay pared {wall}; el cuarto tiene {walls}.";
    before_start(by: String) => "It starts {by} before the wall does." | "Empieza {by} antes que la pared.";
    past_end(by: String, wall: String) => "It runs {by} past the wall's end; the wall is {wall} long." | "Se pasa {by} del final de la pared, que mide {wall}.";
    overlap(by: String) => "It overlaps another opening by {by}." | "Se encima {by} con otro vano.";
    no_width => "Enter a width of more than 0." | "Escriba un ancho mayor que 0.";
    no_number => "Enter a length, like 30 or 2' 6\"." | "Escriba una medida, como 30 o 2' 6\".";
}

/// Why the entries make no room.
pub fn shape_refusal(refusal: &ShapeRefusal, units: Units) -> String {
    let text = |inches: f64| length_text(inches, units);
    match refusal {
        ShapeRefusal::Size {
            part,
            least_in,
            most_in,
            ..
        } => size_out(part_words(*part), text(*least_in), text(*most_in)),
        ShapeRefusal::Notch { part, side_in, .. } => notch_out(part_words(*part), text(*side_in)),
        ShapeRefusal::Turn { wall, .. } => turn_out(wall + 1),
        ShapeRefusal::OnTheRight => on_the_right().to_owned(),
        ShapeRefusal::Outline(refusal) => outline_refusal(refusal, units),
    }
}

fn part_words(part: Part) -> String {
    match part {
        Part::Width => part_width().to_owned(),
        Part::Length => part_length().to_owned(),
        Part::NotchWidth => part_notch_width().to_owned(),
        Part::NotchLength => part_notch_length().to_owned(),
        Part::Wall(index) => wall(index + 1),
    }
}

fn outline_refusal(refusal: &OutlineRefusal, units: Units) -> String {
    let text = |inches: f64| length_text(inches, units);
    match refusal {
        OutlineRefusal::NoArea => no_area().to_owned(),
        OutlineRefusal::TooManyCorners { given } => too_many_corners(*given),
        OutlineRefusal::NoLength { wall } => no_length(wall + 1),
        OutlineRefusal::TooFar { corner } => too_far(corner + 1),
        OutlineRefusal::Crossing { first, second } => crossing(first + 1, second + 1),
        OutlineRefusal::Open {
            miss_in,
            allowed_in,
        } => open_walk(text(*miss_in), text(*allowed_in)),
    }
}

/// Why an opening can't be where it is said to be.
pub fn opening_problem(problem: &OpeningProblem, units: Units) -> String {
    let text = |inches: f64| length_text(inches, units);
    match problem {
        OpeningProblem::NoWall { wall, .. } if *wall == NO_WALL as usize => lost_wall().to_owned(),
        OpeningProblem::NoWall { wall, walls } => no_wall(wall + 1, *walls),
        OpeningProblem::NotANumber => no_number().to_owned(),
        OpeningProblem::NoWidth { .. } => no_width().to_owned(),
        OpeningProblem::BeforeStart { by_in } => before_start(text(*by_in)),
        OpeningProblem::PastEnd { by_in, wall_in } => past_end(text(*by_in), text(*wall_in)),
        OpeningProblem::Overlap { by_in, .. } => overlap(text(*by_in)),
    }
}

/// A percentage of the way round.
pub fn share(part: f64, whole: f64) -> String {
    format!(
        "{} %",
        fixed(100.0 * part / whole.max(f64::MIN_POSITIVE), 2)
    )
}
