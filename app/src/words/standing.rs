//! What a stage has come to, in a few words.

words! {
    heading => "Where it stands" | "Cómo va";
    no_walls => "walls still missing" | "faltan las paredes";
    nothing_read => "nothing read yet" | "todavía sin lecturas";
    survey_trouble => "something to mend" | "hay algo que corregir";
    fall(height: String) => "falls {height}" | "cae {height}";
    pour_open => "level or flat: not decided" | "a nivel o plano: sin decidir";
    pour(kind: &str, volume: String, bags: String) => "{kind}: {volume}, {bags}" | "{kind}: {volume}, {bags}";
    no_doorways => "none entered" | "ninguna anotada";
    doorways(all: usize) => "floors beyond known: {all}" | "pisos de al lado conocidos: {all}";
    doorways_open(open: usize, all: usize) => "floors beyond still open: {open} of {all}"
        | "pisos de al lado pendientes: {open} de {all}";
}
