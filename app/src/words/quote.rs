//! Words of the quote check. A difference is a question, never an accusation.

use calc::supply::check::{Reason, Verdict, Why};
use calc::supply::need::Range;
use calc::supply::unit::{Dimension, Unit};

use super::supply::amount;

words! {
    stage => "Quote" | "Cotización";
    title => "Check a quote" | "Revisar una cotización";
    sum_line => "A quote’s lines against what a room needs by its sizes." | "Las líneas de una cotización contra lo que un cuarto necesita por sus medidas.";
    what_it_does => "Paste the lines of the quote. Amounts of material are held against what the job needs: the least that can do it, what is usual, and a generous amount."
        | "Pegue las líneas de la cotización. Las cantidades de material se comparan con lo que el trabajo necesita: lo mínimo que alcanza, lo usual y una cantidad holgada.";
    of_a_job => "For a job on this device" | "Para un trabajo de este aparato";
    or_by_sizes => "Or by the sizes of a room" | "O por las medidas de un cuarto";
    work_label => "What is in the quote" | "Qué incluye la cotización";
    work_pour => "Leveling the floor" | "Nivelar el piso";
    work_tile => "Floor tile" | "Loseta de piso";
    work_board => "New board on walls and ceiling" | "Tablaroca nueva en paredes y techo";
    work_paint => "Paint" | "Pintura";
    work_trim => "Baseboard" | "Zócalo";
    width_label => "Width of the room" | "Ancho del cuarto";
    length_label => "Length of the room" | "Largo del cuarto";
    height_label => "Height of the walls" | "Altura de las paredes";
    openings_label => "Doors and windows together" | "Puertas y ventanas juntas";
    openings_hint => "Their area. Blank: none is taken off the walls." | "Su área. En blanco: no se descuenta nada de las paredes.";
    doorways_label => "Doorways together, width" | "Vanos de puerta juntos, ancho";
    doorways_hint => "Blank: none is taken off the baseboard." | "En blanco: no se descuenta nada del zócalo.";
    depth_label => "Mean depth of the leveling" | "Espesor medio de la nivelación";
    sizes_rest => "Common practice: paint covers 300 to 400 ft² a gallon, walls and ceiling get two coats, new board one of primer; board in sheets of 4 by 8 ft; a bag of leveler makes 0.45 ft³."
        | "Práctica común: la pintura rinde de 300 a 400 pies² por galón, paredes y techo llevan dos manos, la tablaroca nueva una de sellador; tablaroca en hojas de 4 por 8 pies; un saco de autonivelante rinde 0.45 pies³.";
    choose_work => "Say what is in the quote, and the sizes of the room." | "Diga qué incluye la cotización y las medidas del cuarto.";
    no_needs => "This job has nothing worked out yet that a quote could be held against. Choose a pour first." | "Este trabajo todavía no tiene nada calculado con qué comparar. Elija primero un colado.";
    paste_label => "Lines of the quote" | "Líneas de la cotización";
    paste_hint => "One line each: words, quantity, unit, price. Columns apart by tabs, commas or two blanks." | "Una por renglón: palabras, cantidad, unidad, precio. Columnas separadas por tabuladores, comas o dos espacios.";
    read_lines => "Read these lines" | "Leer estas líneas";
    read_so_many(count: usize) => "Lines read: {count}." | "Líneas leídas: {count}.";
    passed_over(lines: &str) => "Headings and sums were passed over: line {lines}." | "Se saltaron encabezados y sumas: renglón {lines}.";
    cut => "Only the first 500 lines were read." | "Solo se leyeron las primeras 500 líneas.";
    nothing_read => "No line could be read from this." | "No se pudo leer ninguna línea.";
    lines_heading => "Line by line" | "Línea por línea";
    add_line => "Add a line by hand" | "Agregar una línea a mano";
    clear => "Take out all lines" | "Quitar todas las líneas";
    cleared => "All lines are taken out." | "Se quitaron todas las líneas.";
    untitled(at: usize) => "Line {at}" | "Línea {at}";
    mend(at: usize) => "Line {at}: mend what was read" | "Línea {at}: corregir lo leído";
    words_label(at: usize) => "Line {at}: words" | "Línea {at}: palabras";
    quantity_label(at: usize) => "Line {at}: quantity" | "Línea {at}: cantidad";
    unit_label(at: usize) => "Line {at}: unit" | "Línea {at}: unidad";
    price_label(at: usize) => "Line {at}: price of one, $" | "Línea {at}: precio de uno, $";
    total_label(at: usize) => "Line {at}: price of the line, $" | "Línea {at}: precio de la línea, $";
    match_label(at: usize) => "Line {at} is for" | "La línea {at} es para";
    match_words(what: &str) => "as it reads: {what}" | "como dice: {what}";
    match_words_none => "as it reads: nothing here" | "como dice: nada de aquí";
    match_nothing => "nothing worked out here" | "nada de lo calculado aquí";
    no_unit => "no unit" | "sin unidad";
    within => "within" | "dentro";
    over => "more than usual" | "más de lo usual";
    under => "less than the least" | "menos que lo mínimo";
    unchecked => "not checked" | "sin revisar";
    says_within(quoted: String, range: String) => "{quoted} quoted; {range}." | "Cotizado: {quoted}; {range}.";
    multiplied(made: String, said: String) => "Quantity times price is {made}; the line says {said}. Ask." | "Cantidad por precio da {made}; la línea dice {said}. Pregunte.";
    says_over(quoted: String, by: String, range: String) => "{quoted} quoted, {by} more than usual; {range}." | "Cotizado: {quoted}, {by} más de lo usual; {range}.";
    says_under(quoted: String, by: String, range: String) => "{quoted} quoted, {by} less than can do the job by these figures; {range}." | "Cotizado: {quoted}, {by} menos de lo que alcanza según estas cifras; {range}.";
    range_line(low: String, usual: String, high: String) => "at the least {low}, usual {usual}, generous {high}" | "mínimo {low}, usual {usual}, holgado {high}";
    together(count: usize) => "Held against the need together with its other lines: {count} in all." | "Se compara junto con sus otras líneas: {count} en total.";
    why_labour => "Work is not checked, only material." | "La mano de obra no se revisa, solo el material.";
    why_lump => "A lump sum or an allowance has no amount to check." | "Un precio global o una asignación no tiene cantidad que revisar.";
    why_no_quantity => "It has no quantity." | "No tiene cantidad.";
    why_no_unit => "It has no unit that is known." | "No tiene una unidad conocida.";
    why_other_unit(quoted: &str, needed: &str) => "It is quoted by {quoted}, and the need is known by {needed}." | "Se cotiza por {quoted}, y lo necesario se conoce por {needed}.";
    why_no_need => "Nothing that was worked out here is like it." | "Nada de lo calculado aquí se le parece.";
    may_explain(reasons: &str) => "What may explain it: {reasons}." | "Lo que puede explicarlo: {reasons}.";
    reason_packs => "whole packs only" | "solo paquetes enteros";
    reason_spares => "spares left for repairs" | "repuestos para reparaciones";
    reason_waste => "a pattern or a material that wastes more" | "un patrón o material que desperdicia más";
    reason_more_area => "rooms or surfaces not entered here" | "cuartos o superficies que no se anotaron aquí";
    reason_on_hand => "material on hand, or bought by you" | "material que ya hay, o que compra usted";
    reason_less_area => "less area, or a part left out" | "menos área, o una parte que se deja fuera";
    reason_other_product => "another product with another coverage" | "otro producto con otro rendimiento";
    questions_heading => "Questions to ask" | "Preguntas que hacer";
    no_questions => "No question from the amounts." | "Ninguna pregunta por las cantidades.";
    ask_over(line: &str, quoted: String, usual: String) => "“{line}”: {quoted} where {usual} is usual. What is the rest for?" | "«{line}»: {quoted}, cuando lo usual es {usual}. ¿Para qué es lo demás?";
    ask_under(line: &str, quoted: String, low: String) => "“{line}”: {quoted} where {low} is the least by these figures. Is some on hand, or is a part left out?" | "«{line}»: {quoted}, cuando lo mínimo según estas cifras es {low}. ¿Ya hay algo, o se deja una parte fuera?";
    ask_missing(what: &str, usual: String) => "{what}: the job needs about {usual}, and no line names it. Is it in another line, or do you buy it?" | "{what}: el trabajo necesita alrededor de {usual} y ninguna línea lo nombra. ¿Está en otra línea, o lo compra usted?";
    fair => "A difference is a question. The contractor has seen the house, and may know what is not entered here."
        | "Una diferencia es una pregunta. El contratista vio la casa y puede saber lo que no está anotado aquí.";
    share => "Material in the quote" | "Material en la cotización";
    share_of(percent: String) => "{percent} %" | "{percent} %";
    share_rests(material_lines: usize, total: String) => "Lines matched to a material: {material_lines}, out of {total} in all. The rest is work, tools, travel, overhead and what is not worked out here."
        | "Líneas que son de un material: {material_lines}, de {total} en total. Lo demás es mano de obra, herramienta, traslados, gastos y lo que no se calcula aquí.";
    own_share => "Material at your own prices" | "Material a sus propios precios";
    own_share_rests(cost: String, without: usize) => "{cost} by the prices of your buying list, for what is left to buy. Without a price, and not counted: {without}."
        | "{cost} según los precios de su lista de compras, por lo que falta comprar. Sin precio, y no contadas: {without}.";
    own_share_hint => "Put your own prices on the buying list to see what share of the quote the material is." | "Ponga sus precios en la lista de compras para ver qué parte de la cotización es el material.";
    without_price(count: usize) => "Lines without a price, and not counted: {count}." | "Líneas sin precio, y no contadas: {count}.";
    figure_none => "no quote entered" | "sin cotización";
    figure_lines(count: usize) => "lines: {count}" | "líneas: {count}";
    verdicts => "Lines checked" | "Líneas revisadas";
    verdict_count(checked: usize, all: usize) => "{checked} of {all}" | "{checked} de {all}";
    verdict_rests(within: usize, over: usize, under: usize) => "Within: {within}. More than usual: {over}. Less than the least: {under}." | "Dentro: {within}. Más de lo usual: {over}. Menos que lo mínimo: {under}.";
    copy_questions => "Copy the questions" | "Copiar las preguntas";
    dim_length => "length" | "largo";
    dim_area => "area" | "área";
    dim_volume => "volume" | "volumen";
    dim_liquid => "gallons" | "galones";
    dim_weight => "weight" | "peso";
    dim_count => "pieces or packs" | "piezas o paquetes";
    dim_labour => "hours" | "horas";
    dim_lump => "a lump sum" | "precio global";
}

/// What a dimension is called.
pub fn dimension(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => dim_length(),
        Dimension::Area => dim_area(),
        Dimension::Volume => dim_volume(),
        Dimension::Liquid => dim_liquid(),
        Dimension::Weight => dim_weight(),
        Dimension::Count => dim_count(),
        Dimension::Labour => dim_labour(),
        Dimension::Lump => dim_lump(),
    }
}

/// Why a line is not checked.
pub fn why(why: Why) -> String {
    match why {
        Why::Labour => why_labour().to_owned(),
        Why::Lump => why_lump().to_owned(),
        Why::NoQuantity => why_no_quantity().to_owned(),
        Why::NoUnit => why_no_unit().to_owned(),
        Why::OtherUnit { needed, quoted } => why_other_unit(dimension(quoted), dimension(needed)),
        Why::NoNeed => why_no_need().to_owned(),
    }
}

/// What could explain a difference.
pub fn reason(reason: Reason) -> &'static str {
    match reason {
        Reason::WholePacks => reason_packs(),
        Reason::Spares => reason_spares(),
        Reason::MoreWaste => reason_waste(),
        Reason::MoreArea => reason_more_area(),
        Reason::OnHand => reason_on_hand(),
        Reason::LessArea => reason_less_area(),
        Reason::OtherProduct => reason_other_product(),
    }
}

/// The word of a verdict.
pub fn sign(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Within => within(),
        Verdict::Over { .. } => over(),
        Verdict::Under { .. } => under(),
        Verdict::Unchecked(_) => unchecked(),
    }
}

/// The sentence of a verdict on a quantity in a unit.
pub fn verdict(
    verdict: Verdict,
    range: Option<Range>,
    quantity: Option<f64>,
    unit: Option<Unit>,
) -> String {
    let Some(((range, quantity), unit)) = range.zip(quantity).zip(unit) else {
        return match verdict {
            Verdict::Unchecked(because) => why(because),
            _ => String::new(),
        };
    };
    let quoted = amount(quantity, unit);
    let line = range_line(
        amount(range.low, unit),
        amount(range.usual, unit),
        amount(range.high, unit),
    );
    match verdict {
        Verdict::Within => says_within(quoted, line),
        Verdict::Over { above_usual } => says_over(quoted, amount(above_usual, unit), line),
        Verdict::Under { short_by } => says_under(quoted, amount(short_by, unit), line),
        Verdict::Unchecked(because) => why(because),
    }
}
