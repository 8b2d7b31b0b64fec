//! Tile: sizes, pattern, counts, rules, bed.

use calc::finish::grout::GroutRefusal;
use calc::finish::setting_bed::BedRefusal;
use calc::finish::tile::TileRefusal;
use calc::finish::tile::layout::{Shape, Side};
use calc::finish::tile::rules::{Make, Place, RuleUnit, RulesRefusal, Verdict};

use calc::job::{TilePattern, TileStart, Units};
use calc::quantity::fixed;

use crate::pictures::{length_text, thickness_text};

words! {
    stage => "Tile" | "Loseta";
    heading(name: &str) => "Tile: {name}" | "Loseta: {name}";
    open => "no tile chosen" | "sin loseta elegida";
    line(size: String, pattern: &str) => "{size}, {pattern}" | "{size}, {pattern}";
    size(width: String, height: String) => "{width} × {height}" | "{width} × {height}";
    the_tile => "The tile" | "La loseta";
    width_label => "Side along the rows" | "Lado a lo largo de las filas";
    height_label => "The other side" | "El otro lado";
    measured_hint => "Measure a few: a nominal 12 in tile is often less." | "Mida varias: una loseta de 12 pulg nominal suele medir menos.";
    joint_label => "Joint" | "Junta";
    gap_label => "Gap at the walls" | "Separación en las paredes";
    gap_hint => "Left free of tile and grout; base or sealant hides it." | "Se deja sin loseta ni boquilla; la tapa el zócalo o el sellador.";
    pattern_label => "Pattern" | "Patrón";
    straight => "straight" | "recto";
    half => "running bond, half" | "trabado a la mitad";
    third => "running bond, a third" | "trabado a un tercio";
    own_offset => "running bond, another share" | "trabado, otra parte";
    diagonal => "diagonal" | "diagonal";
    herringbone => "herringbone" | "espiga";
    herringbone_diagonal => "herringbone at 45°" | "espiga a 45°";
    offset_label => "Each row shifted by, percent" | "Cada fila desfasada, por ciento";
    start_label => "Start" | "Inicio";
    corner => "from the first corner" | "desde la primera esquina";
    on_tile => "a tile in the middle" | "una loseta al centro";
    on_joint => "a joint in the middle" | "una junta al centro";
    best => "the best of many" | "el mejor de muchos";
    least_label => "Narrowest cut wanted, percent of a tile" | "Corte más angosto deseado, por ciento de la loseta";
    searching(tried: usize, of: usize) => "Trying starts: {tried} of {of}." | "Probando inicios: {tried} de {of}.";
    stop_here => "Stop here" | "Parar aquí";
    stopped(tried: usize, of: usize) => "Stopped after {tried} of {of} starts: the best of those." | "Detenido tras {tried} de {of} inicios: el mejor de esos.";
    search_on => "Try them all" | "Probar todos";
    obstacles => "Tiled round" | "Lo que se rodea";
    obstacles_hint => "A tub, a cabinet, a pier: rectangles that get no tile." | "Una tina, un gabinete, una columna: rectángulos sin loseta.";
    obstacle(number: usize) => "Obstacle {number}" | "Obstáculo {number}";
    add_obstacle => "Add an obstacle" | "Agregar un obstáculo";
    x_label => "Its near left corner, to the right" | "Su esquina cercana izquierda, a la derecha";
    y_label => "Its near left corner, away" | "Su esquina cercana izquierda, hacia el fondo";
    x_size => "Its size to the right" | "Su tamaño a la derecha";
    y_size => "Its size away" | "Su tamaño hacia el fondo";
    buying => "Cutting and buying" | "Cortar y comprar";
    kerf_label => "Saw cut" | "Corte de sierra";
    may_turn => "May an offcut be turned?" | "¿Se puede girar un recorte?";
    turn_yes => "Yes" | "Sí";
    turn_no => "No, the tile has a direction" | "No, la loseta tiene dirección";
    allowance_label => "For breakage and spares, percent" | "Por rotura y reserva, por ciento";
    box_label => "Tiles in a box" | "Losetas por caja";
    answer_name => "Tiles to buy" | "Losetas por comprar";
    tiles_word => "tiles" | "losetas";
    rests(full: u32, cut: u32) => "{full} full and {cut} cut, with a new tile for each cut." | "{full} enteras y {cut} cortadas, con una loseta nueva para cada corte.";
    boxes(count: u32) => "{count} boxes" | "{count} cajas";
    row_full => "Full tiles" | "Losetas enteras";
    row_cut => "Cut tiles" | "Losetas cortadas";
    row_new => "With a new tile for each cut" | "Con loseta nueva para cada corte";
    row_reused => "With offcuts laid where they fit" | "Usando recortes donde caben";
    row_allowed(tiles: u32, allowed: u32) => "{tiles}; with the allowance {allowed}" | "{tiles}; con el margen {allowed}";
    row_boxes => "Boxes" | "Cajas";
    row_by_area => "By area alone, to compare" | "Solo por área, para comparar";
    by_area(tiles: u32, percent: String) => "{tiles} with {percent} %" | "{tiles} con {percent} %";
    row_area => "Tiled area" | "Área con loseta";
    row_narrowest => "Narrowest cut" | "Corte más angosto";
    row_saw => "Wet saw" | "Sierra de agua";
    saw(cuts: u32, length: String) => "{cuts} cuts, {length}" | "{cuts} cortes, {length}";
    cuts_heading => "Pieces to cut" | "Piezas por cortar";
    sides_heading => "Cuts at each wall" | "Cortes en cada pared";
    at_wall(number: usize) => "Wall {number}" | "Pared {number}";
    narrowest(cuts: u32, least: String) => "{cuts} cut, narrowest {least}" | "{cuts} cortadas, la más angosta {least}";
    piece(count: u32, size: String, shape: &str) => "{count} × {size}{shape}" | "{count} × {size}{shape}";
    notched => ", notched" | ", con muesca";
    slanted => ", slanted" | ", sesgada";
    in_parts => ", in parts" | ", en partes";
    more_sizes(count: usize) => "and {count} more sizes" | "y {count} tamaños más";
    picture_says(full: u32, cut: u32) => "The floor from above with its tiles: {full} full, {cut} cut, and the lines to snap."
        | "El piso desde arriba con sus losetas: {full} enteras, {cut} cortadas, y las líneas por marcar.";
    picture_caption => "Cut tiles are hatched. Snap the two blue lines first: each end is measured along its wall from the wall's start."
        | "Las losetas cortadas van rayadas. Primero marque las dos líneas azules: cada extremo se mide a lo largo de su pared desde el inicio.";
    snap_along(from: String, to: String) => "Along the rows: {from}, {to}." | "A lo largo de las filas: {from}, {to}.";
    snap_across(from: String, to: String) => "Across: {from}, {to}." | "A lo ancho: {from}, {to}.";
    on_wall(number: usize, along: String) => "wall {number} at {along}" | "pared {number} a {along}";
    too_many_to_draw => "Too many tiles to draw; the figures stand." | "Demasiadas losetas para dibujarlas; las cifras valen.";
    doorway(letter: String, left: String, right: String) => "Opening {letter}: {left} of tile at the left jamb, {right} at the right." | "Vano {letter}: {left} de loseta en la jamba izquierda, {right} en la derecha.";
    rules_heading => "What the rules say" | "Lo que dicen las reglas";
    make_label => "How the tile is made to size" | "Cómo viene calibrada la loseta";
    rectified => "rectified: edges ground" | "rectificada: cantos esmerilados";
    calibrated => "calibrated: sorted by size" | "calibrada: clasificada por tamaño";
    place_label => "Where it lies" | "Dónde va";
    interior_dry => "inside, dry" | "interior, seco";
    interior_wet => "inside, wet: a shower floor" | "interior, mojado: piso de ducha";
    sun_or_exterior => "in direct sun, or outside" | "al sol directo o afuera";
    raised_concrete => "on concrete above ground" | "sobre concreto elevado";
    variation_label => "Largest face less smallest" | "Cara mayor menos la menor";
    warpage_label => "Warpage of the longest edge" | "Alabeo del canto más largo";
    kept => "Kept" | "Cumple";
    not_kept => "Not kept" | "No cumple";
    found_limit(rule: String, found: String, limit: String) => "{rule}: {found}, the rule has {limit}." | "{rule}: {found}, la regla pide {limit}.";
    rule_joint => "Joint at least" | "Junta mínima";
    rule_offset => "Offset of large tile at most" | "Desfase máximo de loseta grande";
    rule_gap => "Gap at the walls at least" | "Separación mínima en las paredes";
    lippage(most: String) => "Neighbours may stand out over each other by {most} at most." | "Las vecinas pueden sobresalir una de otra {most} como máximo.";
    contact(percent: String) => "Mortar must touch {percent} % of each tile's back or more." | "El mortero debe tocar {percent} % o más del reverso de cada loseta.";
    movement(x: String, y: String, low: String, high: String) => "Movement joints every {low} to {high} ft: {x} across the width, {y} across the length, and round the edge."
        | "Juntas de movimiento cada {low} a {high} pies: {x} a lo ancho, {y} a lo largo, y en el borde.";
    to_range(least: u32, most: u32) => "{least} to {most}" | "{least} a {most}";
    rules_note => "Quoted from public secondary sources. The maker's instructions and the edition adopted govern."
        | "Citado de fuentes públicas secundarias. Mandan las instrucciones del fabricante y la edición adoptada.";
    bed_heading => "Mortar, grout, membrane" | "Mortero, boquilla, membrana";
    coverage_label => "A bag of mortar covers" | "Un saco de mortero cubre";
    coverage_hint => "From the bag for your trowel. Guides say 90 ft² for a 1/4 in notch, 60 for 1/4 × 3/8, 40 for 1/2 in, the low ends."
        | "Según el saco para su llana. Las guías dan 90 ft² con diente de 1/4 pulg, 60 con 1/4 × 3/8, 40 con 1/2 pulg, lo más bajo.";
    depth_label => "Depth of the joint" | "Profundidad de la junta";
    depth_hint => "The tile's thickness, less mortar that stands in it." | "El grosor de la loseta, menos el mortero que queda en ella.";
    powder_label => "Grout powder for a cubic foot of joint, lb" | "Polvo de boquilla por pie cúbico de junta, lb";
    bag_label => "A bag of grout, lb" | "Un saco de boquilla, lb";
    roll_label => "A roll of membrane covers" | "Un rollo de membrana cubre";
    roll_hint => "Leave it empty where none is laid." | "Déjelo vacío si no lleva.";
    turn_up_label => "Turned up the walls by" | "Sube por las paredes";
    mortar_row => "Mortar" | "Mortero";
    grout_row => "Grout" | "Boquilla";
    membrane_row => "Membrane" | "Membrana";
    grout_says(bags: String, pounds: String) => "{bags}, {pounds} lb" | "{bags}, {pounds} lb";
    rolls(count: u32, area: String) => "{count} rolls for {area}" | "{count} rollos para {area}";
    one_roll(area: String) => "1 roll for {area}" | "1 rollo para {area}";
    refused_range(least: String, most: String) => "An entry is not between {least} and {most}." | "Un dato no está entre {least} y {most}.";
    larger => "One tile is larger than the floor both ways." | "Una loseta es más grande que el piso en ambos sentidos.";
    gap_wide => "With this gap at the walls no floor is left." | "Con esta separación en las paredes no queda piso.";
    many_obstacles => "More obstacles than can be laid out here." | "Más obstáculos de los que se pueden repartir aquí.";
    obstacle_size(number: usize) => "Obstacle {number} has no size." | "El obstáculo {number} no tiene tamaño.";
    obstacle_outside(number: usize) => "Obstacle {number} lies outside the room." | "El obstáculo {number} queda fuera del cuarto.";
    nothing_left => "The obstacles cover the whole floor." | "Los obstáculos cubren todo el piso.";
    too_many(about: String) => "About {about} tiles are more than can be laid out here. Check the size of the tile."
        | "Unas {about} losetas son más de las que se pueden repartir aquí. Revise el tamaño de la loseta.";
    not_held => "The rules can't be held against these entries." | "Las reglas no se pueden comparar con estos datos.";
    bed_refused => "The amount can't be worked out from these entries; check what a bag or a roll covers."
        | "La cantidad no sale de estos datos; revise lo que cubre un saco o un rollo.";
}

/// A pattern.
pub fn pattern(of: TilePattern) -> &'static str {
    match of {
        TilePattern::Straight => straight(),
        TilePattern::Half => half(),
        TilePattern::Third => third(),
        TilePattern::Offset => own_offset(),
        TilePattern::Diagonal => diagonal(),
        TilePattern::Herringbone => herringbone(),
        TilePattern::HerringboneDiagonal => herringbone_diagonal(),
    }
}

/// A start.
pub fn start(of: TileStart) -> &'static str {
    match of {
        TileStart::Corner => corner(),
        TileStart::Tile => on_tile(),
        TileStart::Joint => on_joint(),
        TileStart::Best => best(),
    }
}

/// How a tile is made.
pub fn make(of: Make) -> String {
    match of {
        Make::Rectified => rectified(),
        Make::Calibrated => calibrated(),
    }
    .to_owned()
}

/// Where a floor lies.
pub fn place(of: Place) -> String {
    match of {
        Place::InteriorDry => interior_dry(),
        Place::InteriorWet => interior_wet(),
        Place::SunOrExterior => sun_or_exterior(),
        Place::RaisedConcrete => raised_concrete(),
    }
    .to_owned()
}

/// A shape, after the size.
pub fn shape(of: Shape) -> &'static str {
    match of {
        Shape::Rectangle => "",
        Shape::Notched => notched(),
        Shape::Slanted => slanted(),
        Shape::InParts => in_parts(),
    }
}

/// A side of the field.
pub fn side(of: Side) -> String {
    match of {
        Side::Wall(index) => at_wall(index + 1),
        Side::Obstacle(index) => obstacle(index + 1),
    }
}

/// A rule held against the floor.
pub fn verdict(of: &Verdict, units: Units) -> String {
    let rule = match of.rule.id {
        "offset_most" => rule_offset(),
        "perimeter_gap" => rule_gap(),
        _ => rule_joint(),
    };
    let text = |value: f64| match of.rule.unit {
        RuleUnit::Percent => format!("{} %", fixed(value, 1)),
        _ => thickness_text(value, units),
    };
    found_limit(rule.to_owned(), text(of.found), text(of.limit))
}

/// Why there is no layout.
pub fn refusal(of: &TileRefusal, units: Units) -> String {
    match of {
        TileRefusal::OutOfRange { least, most, .. } => {
            refused_range(fixed(*least, 2), fixed(*most, 2))
        }
        TileRefusal::LargerThanRoom { .. } => larger().to_owned(),
        TileRefusal::GapTooWide { gap_in } => {
            format!("{} ({})", gap_wide(), length_text(*gap_in, units))
        }
        TileRefusal::TooManyObstacles { .. } => many_obstacles().to_owned(),
        TileRefusal::ObstacleSize { obstacle } => obstacle_size(obstacle + 1),
        TileRefusal::ObstacleOutside { obstacle } => obstacle_outside(obstacle + 1),
        TileRefusal::NothingLeft => nothing_left().to_owned(),
        TileRefusal::TooMany { about } => too_many(fixed(*about, 0)),
    }
}

/// Why the rules can't be held.
pub fn rules_refusal(_: &RulesRefusal) -> String {
    not_held().to_owned()
}

/// Why there is no bed.
pub fn bed_refusal(_: &BedRefusal) -> String {
    bed_refused().to_owned()
}

/// Why there is no grout.
pub fn grout_refusal(_: &GroutRefusal) -> String {
    bed_refused().to_owned()
}
