//! Words of the job sheet.

use calc::job::SheetPart;

words! {
    stage => "Sheet" | "Hoja";
    title => "Job sheet" | "Hoja del trabajo";
    choose => "What is on it" | "Qué lleva";
    made(day: &str) => "Made {day}" | "Hecha el {day}";
    floor_area => "Floor" | "Piso";
    pour => "Pour" | "Colado";
    volume => "Volume" | "Volumen";
    bags => "Bags, with the allowance" | "Sacos, con el margen";
    water => "Water" | "Agua";
    deepest => "Deepest" | "Más hondo";
    shallowest => "Least deep" | "Menos hondo";
    no_pour => "No pour is chosen." | "No se ha elegido colado.";
    pour_missing => "The pour that is chosen can’t be worked out: something is missing." | "El colado elegido no se puede calcular: falta algo.";
    pins => "Pins" | "Clavijas";
    pin_spot => "Spot" | "Punto";
    pin_right => "To the right" | "A la derecha";
    pin_away => "Away" | "Al fondo";
    pin_depth => "Depth of the pour" | "Espesor del colado";
    pin_reading => "Top, as read" | "Arriba, como lectura";
    doorways => "Doorways" | "Puertas";
    no_doorways => "No opening is entered." | "No hay vanos anotados.";
    opening => "Opening" | "Vano";
    opening_width => "Width" | "Ancho";
    step => "Step, done" | "Escalón, terminado";
    step_up(height: String) => "this floor {height} higher" | "este piso {height} más alto";
    step_down(height: String) => "this floor {height} lower" | "este piso {height} más bajo";
    step_changes(height: String) => "up to {height}, higher at one jamb and lower at the other" | "hasta {height}, más alto en una jamba y más bajo en la otra";
    step_none => "none" | "ninguno";
    step_unknown => "not known" | "no se sabe";
    depth_there => "Depth of the pour" | "Espesor del colado";
    panel => "Panel directory" | "Directorio del tablero";
    no_panel => "No panel is entered." | "No hay tablero anotado.";
    circuits => "Circuits" | "Circuitos";
    no_circuits => "No circuit is entered." | "No hay circuitos anotados.";
    circuit_fails(count: usize) => "rules that fail: {count}" | "reglas que no se cumplen: {count}";
    found_on => "What it is" | "Qué es";
    says => "What was found" | "Qué resultó";
    circuit_holds => "no rule fails" | "ninguna regla falla";
    circuit_open => "something is missing" | "falta algo";
    boxes => "Boxes" | "Cajas";
    no_boxes => "No box is entered." | "No hay cajas anotadas.";
    no_opened => "No box was opened." | "No se abrió ninguna caja.";
    opened_when => "When" | "Cuándo";
    opened_before => "before" | "antes";
    opened_after => "after" | "después";
    opened_what => "What was measured" | "Qué se midió";
    opened_shown => "It showed" | "Marcó";
    opened_untitled => "Opened box" | "Caja abierta";
    opened_unread => "can’t be read: something is missing" | "no se puede leer: falta algo";
    buying => "Buying list" | "Lista de compras";
    buy_what => "What" | "Qué";
    buy_much => "To buy" | "Comprar";
    buy_for => "For" | "Para";
    buy_cost => "Cost" | "Costo";
    buy_cart => "In the cart" | "En el carrito";
    nothing_to_buy => "Nothing to buy yet." | "Nada que comprar todavía.";
    quote => "Questions about the quote" | "Preguntas sobre la cotización";
    no_quote => "No quote is entered." | "No hay cotización anotada.";
    notes => "Notes" | "Notas";
    as_text => "As plain text" | "Como texto";
    copy => "Copy as text" | "Copiar como texto";
    print => "Print the sheet" | "Imprimir la hoja";
    caution_licensed => "Wiring and structure may need a permit and a licensed person where the house stands." | "La electricidad y la estructura pueden requerir permiso y una persona con licencia donde está la casa.";
    figure => "to print or copy" | "para imprimir o copiar";
}

/// What a part is called.
pub fn part(part: SheetPart) -> &'static str {
    match part {
        SheetPart::Floors => super::either("Rooms and pours", "Cuartos y colados"),
        SheetPart::Doorways => doorways(),
        SheetPart::Panel => panel(),
        SheetPart::Circuits => circuits(),
        SheetPart::Boxes => boxes(),
        SheetPart::Opened => super::either("Opened boxes", "Cajas abiertas"),
        SheetPart::Buying => buying(),
        SheetPart::Quote => quote(),
        SheetPart::Cautions => super::either("What to watch for", "Con qué tener cuidado"),
    }
}
