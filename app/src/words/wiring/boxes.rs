//! Words of a job's boxes.

words! {
    stage => "Boxes" | "Cajas";
    title => "Boxes" | "Cajas";
    none_yet => "No box here yet. Start with the one that gets another cable." | "Todavía no hay cajas. Empiece por la que recibe otro cable.";
    add_box => "Add a box" | "Agregar una caja";
    untitled => "Box" | "Caja";
    name_label => "Which box" | "Cuál caja";
    name_hint => "Where it is: “switch by the hall door”." | "Dónde está: «apagador junto a la puerta».";
    all_boxes => "All boxes" | "Todas las cajas";
    room_left(room: String, of: String) => "{room} left of {of}" | "quedan {room} de {of}";
    over(by: String, of: String) => "{by} over its {of}" | "{by} más que sus {of}";
    full(of: String) => "full, {of}" | "llena, {of}";
    not_known => "something is missing" | "falta algo";
    answer_heading => "How full it is" | "Qué tan llena está";
    fits => "fits" | "cabe";
    too_full => "too full" | "no cabe";
    open => "open" | "pendiente";
    figure_none => "none entered" | "ninguna anotada";
    figure_fit(all: usize) => "boxes that hold: {all}" | "cajas que alcanzan: {all}";
    figure_over_one => "1 box over" | "1 caja pasada";
    figure_over(over: usize) => "{over} boxes over" | "{over} cajas pasadas";
    figure_open(open: usize, all: usize) => "still open: {open} of {all}" | "pendientes: {open} de {all}";
    on_circuits(names: &str) => "On the way of: {names}." | "En el camino de: {names}.";
    on_none => "No circuit names this box as on its way." | "Ningún circuito nombra esta caja en su camino.";
    take_out_box => "Take this box out" | "Quitar esta caja";
    taken_out(name: &str) => "“{name}” is taken out." | "Se quitó «{name}».";
    no_such => "This box is no longer in the job." | "Esta caja ya no está en el trabajo.";
    figure_name => "Boxes that are too full" | "Cajas demasiado llenas";
}
