//! Wall board: what is covered, the sheets, their joints.

use calc::finish::board::kind::{BoardKind, Place};
use calc::finish::board::{BoardPlan, BoardRefusal, LayUp, SheetSize, SurfaceKind};
use calc::job::{Covered, Units};
use calc::quantity::fixed;

use crate::pictures::length_text;

words! {
    stage => "Board" | "Tablaroca";
    heading(name: &str) => "Wall board: {name}" | "Tablaroca: {name}";
    open => "not worked out yet" | "todavía sin calcular";
    line(sheets: u32) => "{sheets} sheets" | "{sheets} hojas";
    nothing => "Nothing gets board yet. Say below what does." | "Todavía no se pone tablaroca. Diga abajo dónde.";
    what_heading => "What gets board" | "Dónde va la tablaroca";
    on_label => "New board on" | "Tablaroca nueva en";
    on_nothing => "nothing, or patches alone" | "nada, o solo parches";
    on_walls => "walls" | "paredes";
    on_ceiling => "ceiling" | "cielo";
    on_both => "walls and ceiling" | "paredes y cielo";
    lay_up_label => "Sheets hung" | "Hojas puestas";
    fewest => "the way that takes fewest" | "como salgan menos";
    flat => "flat" | "acostadas";
    upright => "upright" | "paradas";
    framing_label => "Studs and joists, on center" | "Bastidor, entre centros";
    stock_heading => "Sheets on sale" | "Hojas a la venta";
    stock_label(size: String) => "Sheets of {size}?" | "¿Hay hojas de {size}?";
    patches => "Patches in old board" | "Parches en tablaroca vieja";
    patch(number: usize) => "Patch {number}" | "Parche {number}";
    add_patch => "Add a patch" | "Agregar un parche";
    answer_name => "Sheets to buy" | "Hojas por comprar";
    sheets_word => "sheets" | "hojas";
    one_sheet => "sheet" | "hoja";
    buy(list: String) => "Buy {list}." | "Compre {list}.";
    of_size(count: u32, size: String) => "{count} of {size}" | "{count} de {size}";
    fewest_is(count: u32) => "No layout takes fewer than {count}." | "Ningún reparto usa menos de {count}.";
    fewest_known => "No layout takes fewer." | "Ningún reparto usa menos.";
    size(width: String, length: String) => "{width} × {length}" | "{width} × {length}";
    row_covered => "Covered" | "Cubierto";
    row_sheets => "Sheets together" | "Hojas en total";
    row_waste => "Left over" | "Sobra";
    percent(of: String) => "{of} %" | "{of} %";
    row_tapered => "Joints of tapered edges" | "Juntas de orillas rebajadas";
    row_butt => "Joints of ends and cut edges" | "Juntas a tope y de corte";
    row_patch => "Joints round patches" | "Juntas de parches";
    row_inside => "Inside corners" | "Rincones";
    row_outside => "Outside corners" | "Esquinas";
    row_screws => "Screws" | "Tornillos";
    wall(number: usize, size: String) => "Wall {number}, from inside: {size}" | "Pared {number}, desde adentro: {size}";
    ceiling(size: String) => "Ceiling, from below: {size}" | "Cielo, desde abajo: {size}";
    picture_says(pieces: usize, butt: usize) => "{pieces} pieces, each with the number of its sheet; {butt} joints are of ends or cut edges."
        | "{pieces} piezas, cada una con el número de su hoja; {butt} juntas son a tope o de corte.";
    picture_caption => "A number is the sheet that a piece is cut from. Thin lines are tapered joints, heavy dashes ends and cut edges."
        | "El número es la hoja de la que sale la pieza. Línea delgada: junta rebajada; raya gruesa: a tope o de corte.";
    cutting => "What is cut from each sheet" | "Qué se corta de cada hoja";
    sheet_line(number: usize, size: String, list: String) => "Sheet {number}, {size}: {list}" | "Hoja {number}, {size}: {list}";
    on_wall(number: usize, size: String) => "{size} for wall {number}" | "{size} para la pared {number}";
    on_the_ceiling(size: String) => "{size} for the ceiling" | "{size} para el cielo";
    for_patch(number: usize, size: String) => "{size} for patch {number}" | "{size} para el parche {number}";
    kinds_heading => "Which board where" | "Qué tablero va dónde";
    kinds_note => "The board’s own listing and the local code come first." | "Primero valen la ficha del tablero y el código local.";
    screws_hint => "Screws stand 3/8\" or more from the edge and reach 5/8\" into the wood." | "Los tornillos van a 3/8\" o más de la orilla y entran 5/8\" en la madera.";
    dry_room => "Dry rooms" | "Cuartos secos";
    bath => "A bath, where no water is thrown" | "Baño, donde no salpica";
    shower => "Round a tub, in a shower" | "Junto a la tina, en la regadera";
    garage_wall => "A garage’s wall to the house" | "Pared de cochera hacia la casa";
    garage_under => "A garage’s ceiling under rooms" | "Cielo de cochera bajo cuartos";
    plain => "plain gypsum board" | "tablaroca común";
    water => "board that resists moisture" | "tablero resistente a la humedad";
    backer => "cement or glass-mat backer for tile" | "tablero de cemento o fibra de vidrio para loseta";
    fire => "5/8\" type X" | "5/8\" tipo X";
    no_sheets => "No sheet is on sale. Say which sizes are." | "No hay hojas a la venta. Diga qué medidas hay.";
    patch_larger(number: usize, size: String) => "Patch {number}, {size}, is larger than any sheet." | "El parche {number}, {size}, es más grande que cualquier hoja.";
    opening_larger(wall: usize, size: String) => "An opening of {size} is larger than wall {wall}." | "Un vano de {size} es más grande que la pared {wall}.";
    opening_beyond(wall: usize, by: String) => "An opening ends {by} beyond wall {wall}." | "Un vano termina {by} fuera de la pared {wall}.";
    openings_overlap(wall: usize) => "Two openings of wall {wall} overlap." | "Dos vanos de la pared {wall} se enciman.";
    too_much => "That is more board than is laid out here." | "Es más tablaroca de la que aquí se reparte.";
    refused => "The sheets can't be worked out from these entries." | "Las hojas no salen de estos datos.";
    caution_lift => "A sheet weighs 50 to 100 lb. Lift it with two, or with a panel lift under a ceiling."
        | "Una hoja pesa de 50 a 100 lb. Levántela entre dos, o con elevador para el cielo.";
    caution_hidden => "Cut only as deep as the board. Wires and pipes run behind it; find them first."
        | "Corte solo lo que mide el tablero. Detrás pasan cables y tubos; búsquelos primero.";
}

/// What gets board.
pub fn covered(of: Covered) -> &'static str {
    match of {
        Covered::Nothing => on_nothing(),
        Covered::Walls => on_walls(),
        Covered::Ceiling => on_ceiling(),
        Covered::Both => on_both(),
    }
}

/// How sheets are hung.
pub fn lay_up(of: LayUp) -> String {
    match of {
        LayUp::Fewest => fewest(),
        LayUp::Horizontal => flat(),
        LayUp::Vertical => upright(),
    }
    .to_owned()
}

/// A sheet as it is sold: its width and whole feet of length.
pub fn sheet_size(of: &SheetSize, units: Units) -> String {
    match units {
        Units::FeetInches if of.width_in == 48.0 => size(
            "4".to_owned(),
            format!("{} ft", fixed(of.length_in / 12.0, 0)),
        ),
        _ => sides(of.width_in, of.length_in, units),
    }
}

/// Two sides.
pub fn sides(one_in: f64, other_in: f64, units: Units) -> String {
    size(length_text(one_in, units), length_text(other_in, units))
}

/// The sheets to buy.
pub fn to_buy(plan: &BoardPlan, units: Units) -> String {
    let parts: Vec<String> = plan
        .buy
        .iter()
        .map(|of| of_size(of.count, sheet_size(&of.size, units)))
        .collect();
    buy(parts.join(", "))
}

/// What a surface is called, by its place among those of a plan.
pub fn surface(plan: &BoardPlan, at: usize, units: Units) -> String {
    let Some(of) = plan.ask.surfaces.get(at) else {
        return String::new();
    };
    let size = sides(of.length_in, of.height_in, units);
    match of.kind {
        SurfaceKind::Wall => wall(at + 1, size),
        SurfaceKind::Ceiling => ceiling(size),
    }
}

/// A place that asks for a board.
pub fn place(of: Place) -> &'static str {
    match of {
        Place::DryRoom => dry_room(),
        Place::BathAwayFromSpray => bath(),
        Place::TubOrShower => shower(),
        Place::GarageWall => garage_wall(),
        Place::GarageUnderRooms => garage_under(),
    }
}

/// A kind of board.
pub fn kind(of: BoardKind) -> &'static str {
    match of {
        BoardKind::Plain => plain(),
        BoardKind::WaterResistant => water(),
        BoardKind::TileBacker => backer(),
        BoardKind::FireRated => fire(),
    }
}

/// Why there is no layout.
pub fn refusal(of: &BoardRefusal, units: Units) -> String {
    match of {
        BoardRefusal::NoSheets => no_sheets().to_owned(),
        BoardRefusal::NothingToCover => nothing().to_owned(),
        BoardRefusal::PatchLarger {
            patch,
            width_in,
            height_in,
        } => patch_larger(patch + 1, sides(*width_in, *height_in, units)),
        BoardRefusal::OpeningLarger {
            surface,
            width_in,
            height_in,
            ..
        } => opening_larger(surface + 1, sides(*width_in, *height_in, units)),
        BoardRefusal::OpeningBeyond {
            surface, over_in, ..
        } => opening_beyond(surface + 1, length_text(*over_in, units)),
        BoardRefusal::OpeningsOverlap { surface, .. } => openings_overlap(surface + 1),
        BoardRefusal::TooMuch { .. } | BoardRefusal::TooMany { .. } => too_much().to_owned(),
        BoardRefusal::NotAMeasure { .. } => refused().to_owned(),
    }
}
