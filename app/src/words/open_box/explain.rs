//! What may be wrong, what to measure next, and how to put it right.

use calc::wiring::open_box::faults::FaultKind;
use calc::wiring::open_box::permitted::Risk;

words! {
    heading => "What may be wrong" | "Qué puede estar mal";
    say => "Enter a reading above; what explains it stands here." | "Escriba arriba una lectura; aquí sale lo que la explica.";
    explains(n: usize, of: usize) => "explains {n} of {of} readings" | "explica {n} de {of} lecturas";
    share(percent: String) => "{percent} %" | "{percent} %";
    or => "or" | "o";
    look => "Where to look" | "Dónde buscar";
    same_from_here(n: usize) => "These {n} can't be told apart from here." | "Desde aquí estas {n} no se pueden distinguir.";
    nothing_seen => "Nothing is seen wrong from here" | "Desde aquí no se ve nada mal";
    others(percent: String) => "Everything else together: {percent} %." | "Todo lo demás junto: {percent} %.";
    unexplained(list: &str) => "It doesn't explain: {list}." | "No explica: {list}.";
    reading(n: usize) => "reading {n}" | "lectura {n}";
    contradict(one: usize, other: usize) => "Readings {one} and {other} don't go together, whatever is wrong. Take both again."
        | "Las lecturas {one} y {other} no concuerdan, pase lo que pase. Tome las dos otra vez.";
    never(n: usize) => "Nothing that is known here explains reading {n}. Take it again, or the description is wrong."
        | "Nada de lo que se conoce aquí explica la lectura {n}. Tómela otra vez, o la descripción está mal.";
    not_certain => "A share is what is left of the doubt, not a proof." | "El porcentaje es lo que queda de la duda, no una prueba.";
    fault_at(fault: &str, places: &str) => "{fault}: {places}" | "{fault}: {places}";
    fault_ohms(fault: &str, ohms: String) => "{fault}, about {ohms} ohm" | "{fault}, unos {ohms} ohm";
    and => "and" | "y";
    pole(name: &str) => "breaker {name}" | "breaker {name}";
    look_panel => "in the panel" | "en el panel";
    look_service => "at the service: call the utility or a licensed electrician" | "en la acometida: llame a la compañía de luz o a un electricista con licencia";
    look_box(name: &str) => "in {name}" | "en {name}";
    look_far(letter: &str) => "where cable {letter} goes" | "a donde va el cable {letter}";

    nothing_wrong => "Nothing: it is as you described it" | "Nada: está como usted lo describió";
    stray_only => "Nothing: the voltage read is stray" | "Nada: el voltaje leído es parásito";
    neutral_open => "Neutral open" | "Neutro abierto";
    neutral_borrowed => "Neutral borrowed from another circuit" | "Neutro prestado de otro circuito";
    neutrals_joined => "Neutrals of two circuits touch" | "Se tocan los neutros de dos circuitos";
    hots_joined => "Hots of two circuits touch" | "Se tocan los vivos de dos circuitos";
    hot_open => "Hot open" | "Vivo abierto";
    other_breaker => "On another breaker than you think" | "En otro breaker del que piensa";
    swapped => "Hot and neutral swapped" | "Vivo y neutro cambiados";
    neutral_to_ground => "Neutral touches ground" | "El neutro toca tierra";
    ground_open => "Ground open" | "Tierra abierta";
    switch_in_neutral => "The switch opens the neutral" | "El apagador abre el neutro";
    travellers => "Common and travelers mixed up" | "Común y viajeros confundidos";
    poor_joint => "A poor joint" | "Una mala unión";
    service_neutral => "Neutral of the service lost" | "Neutro de la acometida perdido";
    feeder_neutral => "Neutral of the feeder lost" | "Neutro del alimentador perdido";

    without_load(faults: &str, load: &str) => "{faults}, and {load} is not there, off or used up"
        | "{faults}, y {load} no está, está apagada o fundida";
    with_load(faults: &str, load: &str, watts: &str) => "{faults}, and there is a {load} of about {watts} W that was not entered"
        | "{faults}, y hay una {load} de unos {watts} W que no se anotó";
    next_box => "Measure in" | "Medir en";
    next_heading => "Measure next" | "Mida después";
    next_none => "No reading that may be taken here narrows this further. Look where the first answer says."
        | "Ninguna lectura que se pueda tomar aquí reduce más la duda. Busque donde dice la primera respuesta.";
    next_first => "What should I measure first" | "Qué mido primero";
    right_this => "How to put this right" | "Cómo corregir esto";
    too_many(n: usize) => "{n} readings are too many at once. Take out the oldest." | "{n} lecturas son demasiadas. Quite las más viejas.";
    work_apart(one: &str, other: &str) => "Take apart what touches: {one} and {other}." | "Separe lo que se toca: {one} y {other}.";
    work_land(end: &str) => "Put {end} on what it belongs on, where its cable goes." | "Ponga {end} donde le toca, a donde va su cable.";
    work_anew(place: &str) => "Cut back and make anew: {place}." | "Corte y haga de nuevo: {place}.";
    work_breaker(place: &str, on: &str) => "{place} is on {on}: move it, or correct the directory and this description."
        | "{place} está en {on}: páselo, o corrija el directorio y esta descripción.";
    work_breaker_open(place: &str) => "{place} is on another breaker: find it, and correct the directory and this description."
        | "{place} está en otro breaker: encuéntrelo y corrija el directorio y esta descripción.";
    work_supply => "The neutral of the supply is open. Everything off now; call the utility or a licensed electrician at once."
        | "El neutro de la alimentación está abierto. Apague todo ya; llame de inmediato a la compañía de luz o a un electricista con licencia.";
    proved => "shows it" | "lo muestra";
    not_proved => "does not show it" | "no lo muestra";
    next_in(situation: &str) => "With: {situation}." | "Con: {situation}.";
    next_if => "If it shows" | "Si muestra";
    next_means => "then most likely" | "entonces lo más probable";
    take_it => "Enter this reading" | "Escribir esta lectura";
    risk_nothing => "Nothing is opened for it." | "No se abre nada para ella.";
    risk_off => "Everything off and proved dead first." | "Primero todo apagado y comprobado muerto.";
    risk_volts => "Volts with joints closed: keep fingers behind the guards of the probes." | "Voltaje con las uniones cerradas: los dedos detrás de los topes de las puntas.";
    risk_apart => "For a qualified person: take the joint apart with everything off and proved dead, cap the ends, then energise. Never open a joint live."
        | "Para una persona calificada: separe la unión con todo apagado y comprobado muerto, ponga capuchón en las puntas y después energice. Nunca abra una unión viva.";

    right_heading => "Putting it right" | "Cómo corregirlo";
    right_for(fault: &str) => "For: {fault}" | "Para: {fault}";
    right_grid => "The joint grid, found and right" | "La cuadrícula, como está y como debe ser";
    right_col_wire => "Wire" | "Alambre";
    right_col_found => "found" | "como está";
    right_col_right => "right" | "como debe ser";
    right_nothing_moves => "Nothing moves in the joint grid." | "Nada cambia en la cuadrícula.";
    right_off => "off its place" | "fuera de su lugar";
    prove_heading => "Prove it" | "Compruébelo";
    prove_hint => "Take each reading afterwards, and tick it when it shows this." | "Tome cada lectura después y márquela cuando muestre esto.";
    prove_must(reading: &str, shows: &str) => "{reading}: {shows}" | "{reading}: {shows}";
    pull(letter: &str, conductors: &str, size: &str, length: &str) => "If a new cable is needed: {conductors}, {size}, about {length}, in place of {letter}."
        | "Si hace falta un cable nuevo: {conductors}, {size}, unos {length}, en lugar de {letter}.";
    note_label => "Note for the job sheet" | "Nota para la hoja de trabajo";
    note_hint => "What was found, what was put right, who did it." | "Qué se encontró, qué se corrigió, quién lo hizo.";
    with_hidden(names: &str) => "After these readings, off as well: {names}." | "Según estas lecturas, también apagar: {names}.";
}

/// What is wrong.
pub fn fault(kind: FaultKind) -> &'static str {
    match kind {
        FaultKind::NothingWrong => nothing_wrong(),
        FaultKind::StrayOnly => stray_only(),
        FaultKind::NeutralOpen => neutral_open(),
        FaultKind::NeutralBorrowed => neutral_borrowed(),
        FaultKind::NeutralsJoined => neutrals_joined(),
        FaultKind::HotsJoined => hots_joined(),
        FaultKind::HotOpen => hot_open(),
        FaultKind::OtherBreaker => other_breaker(),
        FaultKind::HotNeutralSwapped => swapped(),
        FaultKind::NeutralToGround => neutral_to_ground(),
        FaultKind::GroundOpen => ground_open(),
        FaultKind::SwitchInNeutral => switch_in_neutral(),
        FaultKind::TravellersMisplaced => travellers(),
        FaultKind::PoorJoint => poor_joint(),
        FaultKind::ServiceNeutralLost => service_neutral(),
        FaultKind::FeederNeutralLost => feeder_neutral(),
    }
}

/// What a measurement asks of whoever takes it.
pub fn risk(risk: Risk) -> &'static str {
    match risk {
        Risk::NothingOpened => risk_nothing(),
        Risk::EverythingOff => risk_off(),
        Risk::VoltsClosed => risk_volts(),
        Risk::VoltsApart => risk_apart(),
    }
}
