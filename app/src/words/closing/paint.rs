//! Paint: what is painted, gallons and cans.

use calc::finish::paint::{Paint, PaintRefusal};
use calc::job::Units;
use calc::job::questions::finish::paint::PaintKind;
use calc::quantity::fixed;

words! {
    stage => "Paint" | "Pintura";
    heading(name: &str) => "Paint: {name}" | "Pintura: {name}";
    open => "not worked out yet" | "todavía sin calcular";
    line(name: &str, amount: String) => "{name} {amount}" | "{name} {amount}";
    nothing => "Nothing is painted yet. Say below what is." | "Todavía no se pinta nada. Diga abajo qué.";
    primer => "Primer on new board" | "Sellador en hojas nuevas";
    walls => "Walls" | "Paredes";
    ceiling => "Ceiling" | "Cielo";
    trim => "Trim" | "Molduras";
    used => "Is it used?" | "¿Se usa?";
    coats_label => "Coats" | "Manos";
    spread_label => "A gallon covers, one coat" | "Un galón cubre, una mano";
    spread_hint => "From the can. Smooth sealed walls 350 to 400 ft², textured 250 to 350, primer on new board 200 to 300."
        | "Según la lata. Pared lisa sellada 350 a 400 ft², con textura 250 a 350, sellador en hoja nueva 200 a 300.";
    gallon_label => "Price of a gallon, $" | "Precio del galón, $";
    quart_label => "Price of a quart, $" | "Precio del cuarto de galón, $";
    face_label => "Face of base and casing that is painted" | "Cara de zócalo y marco que se pinta";
    allowance_label => "To order more, percent" | "Pedir de más, por ciento";
    rests(area: String, gross: String, openings: String) => "{area} to paint: {gross} less {openings} of openings."
        | "{area} por pintar: {gross} menos {openings} de vanos.";
    row_gal => "All coats" | "Todas las manos";
    row_allowed => "With the allowance" | "Con el margen";
    row_cans => "Cans" | "Latas";
    row_price => "Price" | "Precio";
    gallon_cans(count: u32) => "{count} gal" | "{count} gal";
    quart_cans(count: u32) => "{count} qt" | "{count} qt";
    by_count => "the fewest cans; with both prices, the cheapest" | "las menos latas; con los dos precios, lo más barato";
    room_heading => "What is painted" | "Qué se pinta";
    openings_larger => "The openings are larger than the walls. Check heights and sizes." | "Los vanos son más grandes que las paredes. Revise alturas y tamaños.";
    too_much => "That is more paint than can be bought by the can here. Check the entries." | "Es más pintura de la que aquí se cuenta por lata. Revise los datos.";
    refused => "The paint can't be worked out from these entries." | "La pintura no sale de estos datos.";
}

/// A paint.
pub fn kind(of: PaintKind) -> &'static str {
    match of {
        PaintKind::Primer => primer(),
        PaintKind::Walls => walls(),
        PaintKind::Ceiling => ceiling(),
        PaintKind::Trim => trim(),
    }
}

/// The cans to buy.
pub fn cans(paint: &Paint) -> String {
    let parts: Vec<String> = paint
        .buy
        .mix
        .iter()
        .map(|can| {
            if can.quarts == 4 {
                gallon_cans(can.count)
            } else {
                quart_cans(can.count)
            }
        })
        .collect();
    parts.join(" + ")
}

/// What they cost, where it is known.
pub fn price(paint: &Paint) -> Option<String> {
    let cents = paint.buy.price_cents?;
    // Exact: prices are far below 2^53 cents.
    Some(format!("$ {}", fixed(cents as f64 / 100.0, 2)))
}

/// Why there is no paint.
pub fn refusal(of: &PaintRefusal, _: Units) -> String {
    match of {
        PaintRefusal::OpeningsLarger { .. } => openings_larger(),
        PaintRefusal::TooMuch { .. } => too_much(),
        PaintRefusal::NotAnAmount { .. }
        | PaintRefusal::Nothing { .. }
        | PaintRefusal::TooMany { .. }
        | PaintRefusal::NoCans => refused(),
    }
    .to_owned()
}
