//! The quick sums.

use calc::floor::mixing::{Field, MixingRefusal};
use calc::quantity::fixed;

words! {
    title => "Quick sums" | "Cuentas rápidas";
    title_hint => "One answer each, no job needed. What you type stays on this device."
        | "Una respuesta cada una, sin trabajo abierto. Lo que escriba se queda en este aparato.";
    all => "All quick sums" | "Todas las cuentas rápidas";
    ramp_title => "Rise, run and slope" | "Subida, distancia y pendiente";
    ramp_line => "Any two give the third: a ramp, a drain, a tilt." | "Con dos sale la tercera: una rampa, un desagüe, una inclinación.";
    pour_title => "Pour volume and bags" | "Volumen y sacos del colado";
    pour_line => "Area and mean depth give the volume, the bags and the water." | "Área y espesor medio dan el volumen, los sacos y el agua.";
    want_label => "Find the" | "Calcular la";
    want_run => "run" | "distancia";
    want_slope => "slope" | "pendiente";
    want_rise => "rise" | "subida";
    rise_label => "Rise" | "Subida";
    rise_hint => "Height gained, straight up." | "Altura que se gana, a plomo.";
    run_label => "Run" | "Distancia";
    run_hint => "Level distance, not along the slope." | "Distancia a nivel, no por la pendiente.";
    slope_label => "Slope" | "Pendiente";
    slope_hint => "Like 1:12, 1/4 in per ft, 1/4 in per 4 ft, 2 % or 5 deg." | "Como 1:12, 1/4 pulg por pie, 2 % o 5 grados.";
    answer_run => "Run" | "Distancia";
    answer_rise => "Rise" | "Subida";
    answer_slope => "Slope" | "Pendiente";
    from_two(first: String, second: String) => "From {first} and {second}." | "De {first} y {second}.";
    a_rise_of(rise: String) => "a rise of {rise}" | "una subida de {rise}";
    a_run_of(run: String) => "a run of {run}" | "una distancia de {run}";
    a_slope_of(slope: String) => "a slope of {slope}" | "una pendiente de {slope}";
    same_slope => "The same slope, said every way" | "La misma pendiente, de todas las formas";
    per_ft => "in per ft" | "pulg por pie";
    per_4_ft => "in per 4 ft" | "pulg en 4 pies";
    mm_per_m => "mm per m" | "mm por m";
    degrees => "degrees" | "grados";
    percent => "percent" | "por ciento";
    one_to => "1 : n" | "1 : n";
    along => "Length along the slope" | "Largo por la pendiente";
    level_word => "level" | "a nivel";
    rise_as_step => "If the rise is a step at a doorway" | "Si la subida es un escalón en una puerta";
    by_label => "The area, from" | "El área, de";
    by_sides => "width and length" | "ancho y largo";
    by_area => "the area itself" | "el área misma";
    width_label => "Width" | "Ancho";
    length_label => "Length" | "Largo";
    area_label => "Area" | "Área";
    depth_label => "Mean depth" | "Espesor medio";
    depth_hint => "The average over the floor, not the deepest spot." | "El promedio en el piso, no el punto más hondo.";
    yield_label => "A bag makes" | "Un saco rinde";
    yield_hint => "0.45 ft³ for 50 lb is common practice; the bag's own figure beats it."
        | "0.45 ft³ por 50 lb es práctica común; la cifra del saco vale más.";
    allowance_label => "Allowance" | "Margen";
    allowance_hint => "For what sticks to the bucket and fills the unseen; 5 to 15 % is common practice."
        | "Por lo que se pega a la cubeta y llena lo que no se ve; 5 a 15 % es práctica común.";
    water_label => "Water for a bag" | "Agua por saco";
    bags_rest(volume: String, allowance: String, bag: String) => "{volume} and {allowance} allowance, in bags of {bag}."
        | "{volume} y {allowance} de margen, en sacos de {bag}.";
    volume => "Volume" | "Volumen";
    volume_to_buy => "With the allowance" | "Con el margen";
    exact_bags => "Bags before rounding up" | "Sacos antes de redondear";
    water => "Water" | "Agua";
    to_spare => "Left over" | "Sobra";
    caution_bag => "Read the bag: depth limits, primer, water and the time it flows are the product's own."
        | "Lea el saco: los espesores, el primer, el agua y el tiempo en que fluye son de cada producto.";
    caution_dust => "Dry mix holds silica. Wear a respirator rated for it and keep the dust down."
        | "La mezcla seca tiene sílice. Use respirador adecuado y evite levantar polvo.";
    caution_weight => "A pour is heavy. Check that the joists and the subfloor carry it, and meet the finish's deflection limit."
        | "Un colado pesa. Revise que las vigas y el subpiso lo carguen y cumplan el límite de deflexión del acabado.";
    caution_ramp => "A smooth ramp is slippery when wet. Give it a finish that grips, and edges that can be seen."
        | "Una rampa lisa resbala mojada. Dele un acabado que agarre y orillas que se vean.";
    keep_heading => "Keep into a job" | "Guardar en un trabajo";
    keep_into => "Into" | "En";
    keep_new => "a new job" | "un trabajo nuevo";
    keep_new_room(name: String) => "a new room of {name}" | "un cuarto nuevo de {name}";
    keep_button => "Keep" | "Guardar";
    keep_ramp_hint => "The slope, or the run there is, goes to an opening of the room. The rise follows there from the floors; it is noted in the job."
        | "La pendiente, o la distancia disponible, pasa a un vano del cuarto. La subida sale ahí de los pisos; queda anotada en el trabajo.";
    keep_pour_hint => "Width, length and the bag's figures go to the room. The depth follows there from the survey; it is noted in the job."
        | "Ancho, largo y las cifras del saco pasan al cuarto. El espesor sale ahí del levantamiento; queda anotado en el trabajo.";
    note_ramp(rise: String, run: String, slope: String) => "Quick sum: rise {rise}, run {run}, slope {slope}."
        | "Cuenta rápida: subida {rise}, distancia {run}, pendiente {slope}.";
    note_pour(area: String, depth: String, bags: String) => "Quick sum: {area} at a mean depth of {depth}, {bags}."
        | "Cuenta rápida: {area} con espesor medio de {depth}, {bags}.";
    ramp_name => "Ramp" | "Rampa";
    enter_both => "Enter the two figures and the third stands here." | "Escriba las dos cifras y aquí sale la tercera.";
    enter_pour => "Enter the floor and its depth; the bags stand here." | "Escriba el piso y su espesor; aquí salen los sacos.";
    start_over => "Clear these fields" | "Borrar estos campos";
    damaged => "What was typed here before can't be read any more; it is kept aside under its key in this browser."
        | "Lo escrito antes aquí ya no se puede leer; se conserva aparte con su clave en este navegador.";
    not_kept => "This browser keeps nothing right now; what you type is gone when the page closes."
        | "Este navegador no guarda nada ahora; lo que escriba se pierde al cerrar la página.";
    not_an_amount(field: &str) => "{field}: enter a number, 0 or more." | "{field}: escriba un número, 0 o más.";
    needs_more(field: &str) => "{field}: enter more than 0." | "{field}: escriba más de 0.";
    too_many(bags: String) => "{bags} bags are more than any floor takes. Check the entries." | "{bags} sacos son más de lo que lleva un piso. Revise lo escrito.";
    too_slow(mixers: String) => "Keeping the edge wet would take {mixers} mixers." | "Mantener el borde fresco pediría {mixers} mezcladores.";
    field_volume => "Volume" | "Volumen";
    field_pace => "Mixing pace" | "Ritmo de mezcla";
    field_coverage => "Coverage" | "Rendimiento";
}

/// Why there is no count of bags.
pub fn mixing_refusal(refusal: &MixingRefusal) -> String {
    match refusal {
        MixingRefusal::NotAnAmount { field, .. } => not_an_amount(field_words(*field)),
        MixingRefusal::Nothing { field, .. } => needs_more(field_words(*field)),
        MixingRefusal::TooMany { bags } => too_many(fixed(*bags, 0)),
        MixingRefusal::TooSlow { mixers, .. } => too_slow(fixed(*mixers, 0)),
    }
}

fn field_words(field: Field) -> &'static str {
    match field {
        Field::Volume => field_volume(),
        Field::Allowance => allowance_label(),
        Field::Yield => yield_label(),
        Field::Water => water_label(),
        Field::BagsPerBatch | Field::MinutesPerBatch | Field::PotLife => field_pace(),
        Field::Area => area_label(),
        Field::Coverage => field_coverage(),
    }
}
