//! Trim: pieces, cutting lists, sticks to buy.

use calc::finish::trim::stock::{CutList, CutRefusal};
use calc::finish::trim::{Part, TrimRefusal};
use calc::job::Units;
use calc::job::questions::finish::trim::Moulding;
use calc::quantity::fixed;

use crate::pictures::length_text;

words! {
    stage => "Trim" | "Molduras";
    heading(name: &str) => "Trim: {name}" | "Molduras: {name}";
    open => "not worked out yet" | "todavía sin calcular";
    nothing => "Nothing is cut yet. Say below what is." | "Todavía no se corta nada. Diga abajo qué.";
    line(feet: String) => "base {feet}" | "zócalo {feet}";
    base => "Base" | "Zócalo";
    shoe => "Shoe" | "Cuarto de caña";
    casing => "Casing" | "Marco";
    cut_base => "Is base cut?" | "¿Se corta zócalo?";
    cut_shoe => "Is shoe cut?" | "¿Se corta cuarto de caña?";
    cut_casing => "Is casing cut?" | "¿Se corta marco?";
    what_heading => "What is cut" | "Qué se corta";
    casing_label => "Width of a casing" | "Ancho del marco";
    reveal_label => "Reveal" | "Retiro";
    reveal_hint => "The margin of jamb that shows beside the casing." | "La orilla de jamba que se ve junto al marco.";
    extra_label => "Added to each piece" | "Agregado a cada pieza";
    extra_hint => "Cut long and trim to fit." | "Corte largo y ajuste.";
    splice_label => "Longest piece" | "Pieza más larga";
    splice_hint => "Longer runs are spliced; empty: as the longest stick allows." | "Los tramos más largos se empalman; vacío: según la vara más larga.";
    kerf_label => "Saw cut" | "Corte de sierra";
    stock_label(feet: u32) => "Sticks of {feet} ft on sale?" | "¿Hay varas de {feet} pies?";
    stock_heading => "Sticks on sale" | "Varas a la venta";
    buy(list: String) => "Buy {list}." | "Compre {list}.";
    sticks(count: u32, length: String) => "{count} of {length}" | "{count} de {length}";
    pieces(count: usize, length: String) => "{count} pieces, {length} together." | "{count} piezas, {length} en total.";
    proven => "No list uses less." | "Ninguna lista usa menos.";
    bound(least: String) => "No list uses less than {least}." | "Ninguna lista usa menos de {least}.";
    row_waste => "Left over" | "Sobra";
    row_first => "Taking the longest first would use" | "Tomando primero la más larga se usaría";
    row_stock => "Sticks together" | "Varas en total";
    sticks_word => "sticks" | "varas";
    picture_says(count: usize) => "{count} sticks as bars, each with its pieces and what is left." | "{count} varas como barras, cada una con sus piezas y lo que sobra.";
    picture_caption => "Each bar is a stick; the piece's length stands in it, what is left over is tinted." | "Cada barra es una vara; lleva escrito el largo de la pieza y lo que sobra va sombreado.";
    no_pieces => "Nothing to cut." | "Nada que cortar.";
    pieces_heading => "Pieces" | "Piezas";
    piece(part: &str, wall: usize, length: String) => "{part}, wall {wall}: {length}" | "{part}, pared {wall}: {length}";
    leg => "leg" | "pierna";
    head => "head" | "cabezal";
    at_built_in => "shoe at a built-in" | "cuarto de caña en mueble fijo";
    wider(wall: usize) => "An opening is wider than wall {wall}." | "Un vano es más ancho que la pared {wall}.";
    beyond(wall: usize) => "Something ends beyond wall {wall}." | "Algo termina fuera de la pared {wall}.";
    overlap(wall: usize, by: String) => "Two of the doorways and built-ins on wall {wall} overlap by {by}, casings counted." | "Dos vanos o muebles fijos de la pared {wall} se enciman {by}, contando los marcos.";
    refused => "The pieces can't be worked out from these entries." | "Las piezas no salen de estos datos.";
    no_stock => "No stick is on sale. Say which lengths are." | "No hay varas a la venta. Diga qué largos hay.";
    too_short(piece: String, longest: String) => "A piece of {piece} is longer than the longest stick, {longest}." | "Una pieza de {piece} es más larga que la vara más larga, {longest}.";
    too_many_pieces(count: usize) => "{count} pieces are more than one list takes." | "{count} piezas son más de las que caben en una lista.";
}

/// A moulding.
pub fn moulding(of: Moulding) -> &'static str {
    match of {
        Moulding::Base => base(),
        Moulding::Shoe => shoe(),
        Moulding::Casing => casing(),
    }
}

/// What a piece is.
pub fn part(of: Part) -> &'static str {
    match of {
        Part::Base => base(),
        Part::Shoe => shoe(),
        Part::ShoeAtBuiltIn => at_built_in(),
        Part::CasingLeg => leg(),
        Part::CasingHead => head(),
    }
}

/// The sticks to buy.
pub fn to_buy(list: &CutList, units: Units) -> String {
    let parts: Vec<String> = list
        .buy
        .iter()
        .map(|of| sticks(of.count, stick(of.stock_in, units)))
        .collect();
    buy(parts.join(", "))
}

/// A stick's length: whole feet as the yard has them.
pub fn stick(length_in: f64, units: Units) -> String {
    match units {
        Units::FeetInches => format!("{} ft", fixed(length_in / 12.0, 0)),
        Units::Metric => length_text(length_in, units),
    }
}

/// Why there are no pieces.
pub fn refusal(of: &TrimRefusal, units: Units) -> String {
    match of {
        TrimRefusal::WiderThanWall { wall, .. } => wider(wall + 1),
        TrimRefusal::BeyondWall { wall, .. } => beyond(wall + 1),
        TrimRefusal::Overlap { wall, by_in, .. } => overlap(wall + 1, length_text(*by_in, units)),
        TrimRefusal::Measure { .. } | TrimRefusal::TooMany { .. } => refused().to_owned(),
    }
}

/// Why there is no cutting list.
pub fn cut_refusal(of: &CutRefusal, units: Units) -> String {
    match of {
        CutRefusal::NoStock => no_stock().to_owned(),
        CutRefusal::TooManyPieces { count } => too_many_pieces(*count),
        CutRefusal::StockTooShort {
            piece_in,
            longest_in,
            ..
        } => too_short(
            length_text(*piece_in, units),
            length_text(*longest_in, units),
        ),
        CutRefusal::TooManyStocks { .. }
        | CutRefusal::NotAPiece { .. }
        | CutRefusal::NotAStock { .. }
        | CutRefusal::Kerf { .. } => refused().to_owned(),
    }
}
