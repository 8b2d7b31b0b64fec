//! What follows from an opened box: off-list, live map, return check, neutrals.

use calc::job::questions::opened::Taken;
use calc::wiring::shock::Effect;

words! {
    beyond_heading => "The meter shows more than you described" | "El medidor muestra más de lo que usted describió";
    beyond_volts(number: usize, shown: &str) => "Reading {number}: {shown} V where, as described, there is next to none. Something that is not described feeds this place."
        | "Lectura {number}: {shown} V donde, según lo descrito, casi no hay. Algo que no está descrito alimenta este lugar.";
    beyond_amps(number: usize, shown: &str) => "Reading {number}: {shown} A still flow with that turned off. Another circuit uses this wire; opened, its ends are live."
        | "Lectura {number}: siguen corriendo {shown} A con eso apagado. Otro circuito usa este alambre; abierto, sus puntas tienen corriente.";
    beyond_do => "The list below and what is shown as live rest on the description, so they are not enough. Find the breaker that feeds it, or turn the main off, and prove every wire dead. If you can't find it, stop and call a licensed electrician."
        | "La lista de abajo y lo que se muestra con corriente salen de lo descrito, así que no bastan. Busque el breaker que lo alimenta, o apague el principal, y pruebe que cada alambre está muerto. Si no lo encuentra, deténgase y llame a un electricista con licencia.";
    off_name => "Off before this box is opened" | "Apagar antes de abrir esta caja";
    off_unit_one => "breaker" | "breaker";
    off_unit => "breakers" | "breakers";
    off_none => "No breaker that is described reaches this box. That rests on what you entered; prove dead all the same."
        | "Ningún breaker descrito alcanza esta caja. Eso depende de lo que usted escribió; de todos modos compruebe que esté muerta.";
    by_metal => "feeds it" | "la alimenta";
    by_load => "reaches it through a load" | "la alcanza por una carga";
    not_described => "only if the readings mean what they seem to" | "solo si las lecturas significan lo que parece";
    tied(names: &str) => "Handle ties take along: {names}." | "Las uniones de manija apagan también: {names}.";
    rests_guess(name: &str) => "It rests on a guess: that {name} feeds this box." | "Depende de una suposición: que {name} alimenta esta caja.";
    rests_not_known(letter: &str) => "Nobody knows where cable {letter} goes. Anything may come back on it." | "Nadie sabe a dónde va el cable {letter}. Por él puede regresar cualquier cosa.";
    then_prove => "Then prove every wire in it dead." | "Después compruebe que cada alambre esté muerto.";
    joints_heading => "Joints taken apart with only these off" | "Uniones separadas con solo estos apagados";
    joints_hint => "Tap the breakers that you would turn off, and see what a joint would show." | "Toque los breakers que apagaría y vea qué mostraría cada unión.";
    planned_label => "You would turn off" | "Usted apagaría";
    joint_col => "Joint" | "Unión";
    across_col => "across it" | "a través";
    ground_col => "to ground" | "a tierra";
    volts(v: String) => "{v} V" | "{v} V";
    still_live(count: usize) => "{count} breakers of the list are still on." | "{count} breakers de la lista siguen encendidos.";
    still_live_one => "1 breaker of the list is still on." | "1 breaker de la lista sigue encendido.";

    map_heading => "What is live" | "Qué está vivo";
    map_situation => "Turned off" | "Apagado";
    map_switches => "Switch set the other way" | "Apagador en la otra posición";
    map_none_off => "Everything is on, each switch on or as drawn." | "Todo está encendido, cada apagador como en el dibujo.";
    map_off(names: &str) => "Off: {names}." | "Apagado: {names}.";
    map_col_end => "Wire or screw" | "Alambre o tornillo";
    map_col_is => "is" | "está";
    map_col_v => "to ground" | "a tierra";
    map_col_body => "through a body" | "por un cuerpo";
    ma(ma: String) => "{ma} mA" | "{ma} mA";
    body_note => "Through a body: the steady current through 1500 ohm, for comparison alone, beside thresholds of OSHA 3075. No person is an average."
        | "Por un cuerpo: la corriente constante por 1500 ohm, solo para comparar, junto a los umbrales de OSHA 3075. Nadie es un promedio.";
    picture(name: &str) => "Wiring of {name}: cables to the panel on top, the others at the bottom, its joints and screws between."
        | "Cableado de {name}: arriba los cables al panel, abajo los demás, y en medio sus uniones y tornillos.";
    picture_note => "Arrows: the current at the moment when leg A is positive." | "Flechas: la corriente en el momento en que la fase A es positiva.";

    returns_heading => "Does every current come back where it went out" | "Regresa cada corriente por donde salió";
    returns_fine => "Every cable carries as much back as out." | "Cada cable lleva de regreso lo mismo que de ida.";
    astray(name: &str) => "{name} goes out one way and comes back another" | "{name} sale por un lado y regresa por otro";
    astray_out(list: &str) => "out in {list}" | "sale por {list}";
    astray_back(list: &str) => "back in {list}" | "regresa por {list}";
    astray_bare(amps: String) => "{amps} A of it on a bare wire" | "{amps} A por un alambre desnudo";
    astray_shares(names: &str) => "shares a neutral with {names}" | "comparte neutro con {names}";
    share(letter: &str, amps: String) => "{letter} ({amps} A)" | "{letter} ({amps} A)";
    sections(list: &str) => "Against NFPA 70 {list}." | "Contra NFPA 70 {list}.";
    right_split(joint: u32, box_name: &str, groups: &str) => "Part joint {joint} in {box_name} into: {groups}." | "Separe la unión {joint} en {box_name} en: {groups}.";
    right_own_white(white: &str, list: &str, joint: u32) => "Move {list} out of joint {joint} onto {white}." | "Pase {list} de la unión {joint} a {white}.";
    right_new_cable(letter: &str, conductors: &str, size: &str) => "Pull a new cable in place of {letter}: {conductors}, {size}." | "Jale un cable nuevo en lugar de {letter}: {conductors}, {size}.";
    right_part_ground(joint: u32, list: &str) => "Take {list} out of joint {joint}: white and bare meet only at the service." | "Saque {list} de la unión {joint}: blanco y desnudo se unen solo en la acometida.";
    right_part_hots(joint: u32, name: &str) => "Part the hots in joint {joint}: {name} feeds it too." | "Separe los vivos en la unión {joint}: {name} también la alimenta.";
    right_follow(list: &str) => "Nothing here shows where the ways part. Follow to their other ends: {list}." | "Aquí no se ve dónde se separan. Siga hasta el otro extremo: {list}.";
    qualified => "Work for a qualified person, with everything off and proved dead." | "Trabajo para una persona calificada, con todo apagado y comprobado muerto.";

    neutrals_heading => "What each neutral carries" | "Qué lleva cada neutro";
    neutrals_none => "No neutral is in it." | "No hay neutro.";
    neutral_line(found: String, most: String) => "{found} A now, {most} A at most" | "{found} A ahora, {most} A a lo más";
    neutral_may(amps: String) => "may carry {amps} A" | "puede llevar {amps} A";
    neutral_over => "too much" | "demasiado";
    neutral_fits => "within" | "cabe";

    taken_heading => "Taken where nothing was entered" | "Lo que se tomó donde no se escribió nada";
    taken_volts => "120 V from each leg: no readings of the supply." | "120 V por fase: no hay lecturas de la alimentación.";
    taken_feeder => "A feeder of 60 ft of 6 AWG copper with a 10 AWG ground." | "Un alimentador de 60 pies de cobre 6 AWG con tierra 10 AWG.";
    taken_lengths(list: &str) => "30 ft for cable {list}." | "30 pies para el cable {list}.";
    taken_sizes(list: &str) => "14 AWG copper for cable {list}." | "Cobre 14 AWG para el cable {list}.";
    effect_none => "usually not felt" | "por lo general no se siente";
    effect_tingle => "a tingle" | "un cosquilleo";
    effect_shock => "a shock, and a fall" | "una descarga, y una caída";
    effect_no_let_go => "painful; some can't let go" | "duele; hay quien no puede soltar";
    effect_breathing => "breathing stops; death is possible" | "se detiene la respiración; puede matar";
    effect_heart => "the heart stops" | "se detiene el corazón";
}

/// What was taken, a sentence each.
pub fn taken(taken: &[Taken], letter: &dyn Fn(u32) -> String) -> Vec<String> {
    let mut lines = Vec::new();
    let (mut lengths, mut sizes) = (Vec::new(), Vec::new());
    for taken in taken {
        match taken {
            Taken::LegVolts => lines.push(taken_volts().to_owned()),
            Taken::Feeder => lines.push(taken_feeder().to_owned()),
            Taken::Length { cable } => lengths.push(letter(*cable)),
            Taken::Size { cable } => sizes.push(letter(*cable)),
        }
    }
    if !lengths.is_empty() {
        lines.push(taken_lengths(&lengths.join(", ")));
    }
    if !sizes.is_empty() {
        lines.push(taken_sizes(&sizes.join(", ")));
    }
    lines
}

/// What a current through a body does, by published thresholds.
pub fn effect(effect: Effect) -> &'static str {
    match effect {
        Effect::NotFelt => effect_none(),
        Effect::Tingle => effect_tingle(),
        Effect::Shock => effect_shock(),
        Effect::CannotLetGo => effect_no_let_go(),
        Effect::BreathingStops => effect_breathing(),
        Effect::HeartStops => effect_heart(),
    }
}
