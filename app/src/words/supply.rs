//! Words of what is bought: materials, units, counters, the buying list.

use calc::job::Units;
use calc::job::questions::supply::{OpenWhy, first_unit};
use calc::quantity::fixed;
use calc::supply::need::{Counter, Kind, Need};
use calc::supply::unit::{Dimension, Unit};

words! {
    stage => "Buy" | "Compras";
    title => "Buying list" | "Lista de compras";
    nothing => "Nothing to buy yet. Choose a pour, tile, board, paint or trim in a room, or add a line of your own." | "Nada que comprar todavía. Elija colado, loseta, tablaroca, pintura o molduras en un cuarto, o agregue una línea propia.";
    in_cart => "In the cart" | "En el carrito";
    of_all(done: usize, all: usize) => "{done} of {all}" | "{done} de {all}";
    figure(done: usize, all: usize) => "in the cart: {done} of {all}" | "en el carrito: {done} de {all}";
    figure_none => "nothing to buy yet" | "nada que comprar todavía";
    at_counter => "At the counter" | "En el mostrador";
    at_desk => "Amounts and prices" | "Cantidades y precios";
    exact(amount: String) => "Exact: {amount}." | "Exacto: {amount}.";
    with_allowance(percent: String, amount: String) => "With {percent} % for waste: {amount}." | "Con {percent} % de desperdicio: {amount}.";
    packs(count: String, holds: String) => "{count}, {holds} each." | "{count}, de {holds}.";
    have(amount: String) => "On hand: {amount}." | "Ya hay: {amount}.";
    enough => "Enough on hand" | "Ya hay suficiente";
    grew(by: String) => "{by} more since you ticked it." | "{by} más desde que lo marcó.";
    more_in_cart(amount: String) => "In the cart: {amount}, more than needed now." | "En el carrito: {amount}, más de lo que hace falta ahora.";
    where_from(room: &str) => "See where this comes from: {room}" | "Ver de dónde sale: {room}";
    on_hand_label(what: &str, unit: &str) => "{what}: on hand, {unit}" | "{what}: ya hay, {unit}";
    price_label(what: &str, unit: &str) => "{what}: price of one ({unit}), $" | "{what}: precio de uno ({unit}), $";
    details(what: &str) => "{what}: on hand and price" | "{what}: lo que hay y el precio";
    open_pour(room: &str) => "{room}: the floor is surveyed and no pour is chosen. Nothing of it is on this list." | "{room}: el piso está medido y no se ha elegido colado. Nada de eso está en esta lista.";
    open_missing(what: &str, room: &str) => "{room}: {what} can’t be told yet; something is missing there." | "{room}: {what} todavía no se sabe; falta algo ahí.";
    open_search(room: &str) => "{room}: the best start of its tile is being searched for." | "{room}: se busca el mejor arranque de la loseta.";
    of_pack(count: String, holds: String) => "{count} of {holds}" | "{count} de {holds}";
    bought_as(list: String) => "Bought as {list}." | "Se compra como {list}.";
    to_the_room => "Go there" | "Ir ahí";
    own_heading => "Your own lines" | "Líneas propias";
    own_words(at: usize) => "Line {at}: what" | "Línea {at}: qué";
    own_quantity(at: usize) => "Line {at}: how many" | "Línea {at}: cuántos";
    own_price(at: usize) => "Line {at}: price of one, $" | "Línea {at}: precio de uno, $";
    own_name(at: usize) => "line {at}" | "línea {at}";
    own_untitled => "Unnamed line" | "Línea sin nombre";
    add_own => "Add a line" | "Agregar una línea";
    tax_label => "Sales tax" | "Impuesto de venta";
    tax_hint => "On every line that has a price. Blank: none is counted." | "Sobre cada línea con precio. En blanco: no se cuenta.";
    totals => "What it costs" | "Cuánto cuesta";
    cost => "Lines with a price" | "Líneas con precio";
    tax => "Tax" | "Impuesto";
    total => "Together" | "En total";
    without_price(count: usize) => "Without a price, and not counted: {count}" | "Sin precio, y no contadas: {count}";
    line_cost(cost: String, tax: String) => "{cost} and {tax} tax" | "{cost} y {tax} de impuesto";
    share_heading => "Take it along" | "Llévela";
    share_text => "Share as text" | "Compartir como texto";
    copy_text => "Copy as text" | "Copiar como texto";
    copied => "Copied." | "Copiado.";
    by_hand => "Copy this text" | "Copie este texto";
    save_csv => "Save as a table (CSV)" | "Guardar como tabla (CSV)";
    csv_name => "buying-list" | "lista-de-compras";
    csv_head => "counter,what,for,exact,exact unit,buy,unit,on hand,price,cost,tax,in the cart" | "mostrador,qué,para,exacto,unidad exacta,comprar,unidad,ya hay,precio,costo,impuesto,en el carrito";
    rests => "Amounts come from the rooms of this job and follow them. Waste is common practice of the trade, or the room’s own figure. Prices are yours; none are built in."
        | "Las cantidades salen de los cuartos de este trabajo y los siguen. El desperdicio es práctica común del oficio, o la cifra del cuarto. Los precios son suyos; no hay ninguno incluido.";
    not_cable => "New cable and boxes are not on this list: a job’s circuits are those that are there. Work out a run in the quick sums and add a line."
        | "El cable y las cajas nuevas no están en esta lista: los circuitos del trabajo son los que ya hay. Calcule un tramo en las cuentas rápidas y agregue una línea.";
    whole_house => "whole job" | "todo el trabajo";
}

/// What a kind of material is called.
pub fn kind(kind: Kind) -> &'static str {
    let (en, es) = match kind {
        Kind::Pour => ("Self-leveling underlayment", "Autonivelante"),
        Kind::PourPrimer => ("Primer for the pour", "Imprimador para el colado"),
        Kind::EdgeStrip => ("Edge strip", "Cinta perimetral"),
        Kind::Dam => ("Dams at the openings", "Diques en los vanos"),
        Kind::Tile => ("Tile", "Loseta"),
        Kind::TileMortar => ("Tile mortar", "Mortero para loseta"),
        Kind::Grout => ("Grout", "Boquilla"),
        Kind::Membrane => ("Membrane under tile", "Membrana bajo loseta"),
        Kind::Board => ("Wall board", "Tablaroca"),
        Kind::Compound => ("Joint compound", "Pasta para juntas"),
        Kind::JointTape => ("Joint tape", "Cinta para juntas"),
        Kind::Screws => ("Board screws", "Tornillos para tablaroca"),
        Kind::CornerBead => ("Corner bead", "Esquinero"),
        Kind::PaintPrimer => ("Primer for new board", "Sellador para tablaroca nueva"),
        Kind::WallPaint => ("Wall paint", "Pintura de paredes"),
        Kind::CeilingPaint => ("Ceiling paint", "Pintura de techo"),
        Kind::TrimPaint => ("Trim paint", "Pintura de molduras"),
        Kind::Base => ("Baseboard", "Zócalo"),
        Kind::Shoe => ("Shoe molding", "Cuarto bocel"),
        Kind::Casing => ("Casing", "Marco de puerta"),
        Kind::Cable => ("Cable", "Cable"),
        Kind::Staples => ("Staples", "Grapas"),
        Kind::WiringBox => ("Wiring boxes", "Cajas eléctricas"),
        Kind::Fan => ("Exhaust fan", "Extractor"),
        Kind::Duct => ("Duct", "Ducto"),
        Kind::Elbow => ("Duct elbows", "Codos de ducto"),
        Kind::DuctCap => ("Duct cap", "Tapa de ducto"),
    };
    super::either(en, es)
}

/// What a counter is called.
pub fn counter(counter: Counter) -> &'static str {
    let (en, es) = match counter {
        Counter::Floor => ("Floor", "Piso"),
        Counter::Electrical => ("Electrical", "Electricidad"),
        Counter::Board => ("Board", "Tablaroca"),
        Counter::Paint => ("Paint", "Pintura"),
        Counter::Trim => ("Trim", "Molduras"),
        Counter::Air => ("Air", "Aire"),
    };
    super::either(en, es)
}

/// What a unit is called, for one and for several.
pub fn unit(unit: Unit, one: bool) -> &'static str {
    let (en, ens, es, ess) = match unit {
        Unit::Inch => ("in", "in", "pulg", "pulg"),
        Unit::Foot => ("ft", "ft", "pie", "pies"),
        Unit::Yard => ("yd", "yd", "yarda", "yardas"),
        Unit::Meter => ("m", "m", "m", "m"),
        Unit::SquareFoot => ("ft²", "ft²", "pie²", "pies²"),
        Unit::SquareYard => ("yd²", "yd²", "yarda²", "yardas²"),
        Unit::Square => ("square", "squares", "cuadro", "cuadros"),
        Unit::SquareMeter => ("m²", "m²", "m²", "m²"),
        Unit::CubicFoot => ("ft³", "ft³", "pie³", "pies³"),
        Unit::CubicYard => ("yd³", "yd³", "yarda³", "yardas³"),
        Unit::Gallon => ("gal", "gal", "galón", "galones"),
        Unit::Quart => ("qt", "qt", "cuarto", "cuartos"),
        Unit::Liter => ("L", "L", "L", "L"),
        Unit::Pound => ("lb", "lb", "lb", "lb"),
        Unit::Kilogram => ("kg", "kg", "kg", "kg"),
        Unit::Each => ("piece", "pieces", "pieza", "piezas"),
        Unit::Bag => ("bag", "bags", "saco", "sacos"),
        Unit::Case => ("box", "boxes", "caja", "cajas"),
        Unit::Roll => ("roll", "rolls", "rollo", "rollos"),
        Unit::Sheet => ("sheet", "sheets", "hoja", "hojas"),
        Unit::Pail => ("pail", "pails", "cubeta", "cubetas"),
        Unit::Hour => ("hour", "hours", "hora", "horas"),
        Unit::Day => ("day", "days", "día", "días"),
        Unit::Lump => ("lump sum", "lump sums", "global", "globales"),
    };
    if one {
        super::either(en, es)
    } else {
        super::either(ens, ess)
    }
}

/// An amount with its unit, as bought or quoted.
pub fn amount(value: f64, of: Unit) -> String {
    let text = fixed(value, if value < 10.0 { 2 } else { 1 });
    let one = text == "1";
    format!("{text} {}", unit(of, one))
}

/// An amount in the first unit of a dimension; in metric with what it is in that.
pub fn measured(value: f64, dimension: Dimension, units: Units) -> String {
    let first = first_unit(dimension);
    let metric = match dimension {
        Dimension::Length => Unit::Meter,
        Dimension::Area => Unit::SquareMeter,
        Dimension::Liquid => Unit::Liter,
        Dimension::Weight => Unit::Kilogram,
        _ => first,
    };
    if units == Units::Metric && metric != first {
        let converted = amount(value / metric.factor(), metric);
        format!("{converted} ({})", amount(value, first))
    } else {
        amount(value, first)
    }
}

/// Packs of several sizes: `3 sheets of 32 ft², 2 sheets of 48 ft²`; cans by what they hold.
pub fn mix(need: &Need, units: Units) -> String {
    let parts: Vec<String> = need
        .mix
        .iter()
        .map(|of| {
            let count = amount(f64::from(of.count), of.pack.unit);
            if of.pack.unit.dimension() == need.dimension {
                count
            } else {
                of_pack(count, measured(of.pack.holds, need.dimension, units))
            }
        })
        .collect();
    parts.join(", ")
}

/// Dollars and cents.
pub fn money(dollars: f64) -> String {
    let text = fixed(dollars, 2);
    match text.split_once('.') {
        Some((_, cents)) if cents.len() == 1 => format!("${text}0"),
        Some(_) => format!("${text}"),
        None => format!("${text}.00"),
    }
}

/// Why a need is not on the list.
pub fn open_need(of: Kind, why: OpenWhy, room: &str) -> String {
    match why {
        OpenWhy::Undecided => open_pour(room),
        OpenWhy::Searching => open_search(room),
        OpenWhy::Missing => open_missing(kind(of), room),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_has_its_cents() {
        assert_eq!(money(423.5), "$423.50");
        assert_eq!(money(28.03), "$28.03");
        assert_eq!(money(7.0), "$7.00");
    }

    #[test]
    fn amounts_have_their_unit() {
        assert_eq!(amount(1.0, Unit::Bag), "1 bag");
        assert_eq!(amount(13.0, Unit::Bag), "13 bags");
        assert_eq!(
            measured(10.0, Dimension::Length, Units::Metric),
            "3.05 m (10 ft)"
        );
    }
}
