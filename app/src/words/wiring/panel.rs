//! Words of the panel.

use calc::job::TandemRule;
use calc::wiring::panel::{
    Bars, BreakerForm, Confirmed, FedBy, Half, Leg, MOST_PANEL_A, MOST_SPACES, Mounting,
    PanelFinding, PanelRefusal, Protection,
};

use super::ampacity::amps;

words! {
    stage => "Panel" | "Panel";
    untitled => "Panel" | "Panel";
    name_label => "What you call this panel" | "Cómo llama a este panel";
    spaces_label => "Spaces in it" | "Espacios que tiene";
    spaces_open => "count them first" | "cuéntelos primero";
    spaces_hint => "A space is the room for one full-size breaker, used or not." | "Un espacio es el lugar de un breaker de tamaño completo, usado o no.";
    start => "Count the spaces: the numbers down both sides, used or not. Then the panel is drawn here as it hangs."
        | "Cuente los espacios: los números a los dos lados, usados o no. Entonces el panel se dibuja aquí como cuelga.";
    mounting_label => "How it hangs" | "Cómo cuelga";
    upright => "space 1 top left" | "espacio 1 arriba a la izquierda";
    inverted => "upside down: space 1 bottom right" | "volteado: espacio 1 abajo a la derecha";
    fed_by_label => "Fed by" | "Lo alimenta";
    fed_service => "the service: the first disconnect is here" | "la acometida: aquí está el primer interruptor";
    fed_feeder => "a feeder of the same building" | "un alimentador del mismo edificio";
    fed_other => "a feeder from another building" | "un alimentador de otro edificio";
    fed_from_label => "From where" | "De dónde";
    fed_from_hint => "The panel and the spaces it is fed from. It goes on the directory." | "El panel y los espacios que lo alimentan. Va en el directorio.";
    panel_rating_label => "Panel rating" | "Capacidad del panel";
    panel_rating_hint => "Printed on its label." | "Impresa en su etiqueta.";
    feeder_device_label => "Breaker that protects the feeder" | "Breaker que protege el alimentador";
    feeder_drop_label => "Lost in the feeder at its load" | "Pérdida en el alimentador con su carga";
    feeder_drop_hint => "From the drop sum; it is added to what each circuit loses." | "De la cuenta de caída; se suma a lo que pierde cada circuito.";
    main_label => "Main disconnect in it" | "Interruptor principal en él";
    main_lugs => "none, the feeder ends on lugs" | "ninguno, el alimentador llega a terminales";
    main_breaker => "a main breaker" | "un breaker principal";
    main_rating_label => "Main breaker" | "Breaker principal";
    bars_label => "Neutral and ground bars" | "Barras de neutro y tierra";
    bars_joined => "joined" | "unidas";
    bars_separate => "separate" | "separadas";
    bars_unknown => "not looked at" | "sin revisar";
    notes_label => "Notes" | "Notas";
    notes_hint => "What the next person at this panel should know. Printed below the directory." | "Lo que debe saber quien abra este panel después. Se imprime bajo el directorio.";
    most_label => "Most circuits its label allows" | "Máximo de circuitos según su etiqueta";
    tandems_label => "Tandem breakers may go" | "Breakers tándem pueden ir";
    tandems_unknown => "label not read" | "etiqueta sin leer";
    tandems_none => "nowhere" | "en ninguno";
    tandems_all => "in any space" | "en cualquier espacio";
    tandems_listed => "in the spaces listed" | "en los espacios listados";
    tandem_spaces_label => "Spaces that take tandems" | "Espacios que aceptan tándem";
    about_summary => "Name, feed, bars, where tandems may go, notes" | "Nombre, alimentación, barras, dónde van los tándem, notas";
    about_heading => "The panel itself" | "El panel mismo";
    drawing_heading => "As it hangs" | "Como cuelga";
    drawing_says(name: &str, taken: u32, spaces: u32) => "{name} as it hangs: {taken} of {spaces} spaces taken. Tap a space to enter its breaker."
        | "{name} como cuelga: {taken} de {spaces} espacios ocupados. Toque un espacio para anotar su breaker.";
    drawing_caption => "Two spaces across a row are on one leg; down a column the legs take turns. Tap a space."
        | "Los dos espacios de un renglón van en la misma línea; hacia abajo las líneas se alternan. Toque un espacio.";
    taken_name => "Spaces taken" | "Espacios ocupados";
    of_spaces(spaces: u32) => "of {spaces}" | "de {spaces}";
    rests(free: u32, poles: u32) => "{free} free, {poles} poles in use." | "{free} libres, {poles} polos en uso.";
    taken_of(taken: u32, spaces: u32) => "{taken} of {spaces} spaces" | "{taken} de {spaces} espacios";
    not_counted => "spaces not counted yet" | "espacios sin contar";
    space_word => "Space" | "Espacio";
    of_leg(leg: &str) => "leg {leg}" | "línea {leg}";
    free => "free" | "libre";
    no_label => "no label" | "sin etiqueta";
    amps_unknown => "?" | "?";
    legs_both => "A and B" | "A y B";
    editor_heading(number: &str, leg: &str) => "Space {number} · leg {leg}" | "Espacio {number} · línea {leg}";
    editor_start => "Tap a space in the drawing, or start with the first free one." | "Toque un espacio del dibujo, o empiece por el primero libre.";
    first_free => "First free space" | "Primer espacio libre";
    next_free => "Next free space" | "Siguiente espacio libre";
    none_free => "Every space is entered." | "Todos los espacios están anotados.";
    form_label => "Breaker" | "Breaker";
    form_single => "1 pole" | "1 polo";
    form_two => "2 poles" | "2 polos";
    form_tandem => "tandem" | "tándem";
    rating_label => "Amps on the handle" | "Amperes en la manija";
    rating_keys => "Usual ratings" | "Valores usuales";
    label_label => "What it feeds" | "Qué alimenta";
    label_hint => "Clear and specific: room and what, not “lights”." | "Claro y específico: cuarto y qué, no «luces».";
    label_words => "Add a word" | "Agregar una palabra";
    in_kitchen => "kitchen" | "cocina";
    in_bathroom => "bathroom" | "baño";
    in_bedroom => "bedroom" | "recámara";
    in_hall => "hall" | "pasillo";
    in_basement => "basement" | "sótano";
    in_garage => "garage" | "cochera";
    feeds_receptacles => "receptacles" | "tomacorrientes";
    feeds_lights => "lights" | "luces";
    feeds_heater => "heater" | "calentador";
    feeds_dryer => "dryer" | "secadora";
    feeds_washer => "washer" | "lavadora";
    feeds_dishwasher => "dishwasher" | "lavaplatos";
    more_heading => "Protection, and what was found" | "Protección, y lo que se encontró";
    protection_label => "Besides overcurrent it opens on" | "Además de sobrecorriente abre por";
    protection_plain => "nothing else" | "nada más";
    protection_arc => "arc faults (AFCI)" | "fallas de arco (AFCI)";
    protection_ground => "ground faults (GFCI)" | "fallas a tierra (GFCI)";
    protection_both => "both" | "las dos";
    confirmed_label => "How that was confirmed" | "Cómo se confirmó";
    confirmed_not => "not confirmed: the label says so" | "sin confirmar: lo dice la etiqueta";
    confirmed_off => "switched off, tested at the outlets" | "apagado y probado en las salidas";
    confirmed_traced => "with a circuit tracer" | "con rastreador de circuitos";
    confirmed_followed => "cable followed" | "cable seguido";
    found_label => "Found on it" | "Se encontró en él";
    found_hint => "What went dead, room by room." | "Qué se apagó, cuarto por cuarto.";
    tied_label => "Handle tie to" | "Manija amarrada a";
    tied_none => "none" | "ninguna";
    take_out_breaker(number: &str) => "Take the breaker out of {number}" | "Quitar el breaker de {number}";
    breaker_out(number: &str) => "The breaker in {number} is taken out." | "Se quitó el breaker de {number}.";
    no_place_heading => "Breakers that have no place yet" | "Breakers que todavía no tienen lugar";
    edit_space(number: &str) => "Edit {number}" | "Editar {number}";
    findings_heading => "What to look at" | "Qué revisar";
    directory_heading => "Circuit directory" | "Directorio de circuitos";
    directory_why => "Odd numbers left, even right, on one letter or A4 sheet for the door of the panel."
        | "Nones a la izquierda, pares a la derecha, en una hoja carta o A4 para la puerta del panel.";
    print_directory => "Print the directory" | "Imprimir el directorio";
    head_number => "No." | "Núm.";
    head_feeds => "Feeds" | "Alimenta";
    head_amps => "A" | "A";
    head_leg => "Leg" | "Línea";
    fed_line(from: &str) => "Fed from: {from}" | "Alimentado desde: {from}";
    main_line(amps: String) => "Main breaker {amps} A" | "Breaker principal {amps} A";
    not_confirmed_mark => "not confirmed" | "sin confirmar";
    to_circuits => "Next: the circuits" | "Sigue: los circuitos";
    arc_mark => "AFCI" | "AFCI";
    ground_mark => "GFCI" | "GFCI";
    both_mark => "AFCI GFCI" | "AFCI GFCI";
    refused_spaces(most: u32) => "A panel has from 1 to {most} spaces." | "Un panel tiene de 1 a {most} espacios.";
    refused_panel_rating(most: String) => "Enter ratings of the panel up to {most} A." | "Escriba capacidades del panel de hasta {most} A.";
    refused_no_space(space: u32) => "There is no space {space} in this panel." | "Este panel no tiene espacio {space}.";
    refused_no_second(space: u32) => "Two poles take a space and the one below it on the same side. Below {space} there is none."
        | "Dos polos ocupan un espacio y el de abajo del mismo lado. Abajo del {space} no hay ninguno.";
    refused_taken(space: u32) => "Another breaker is in space {space} already. Two can't be in one space unless both are halves of a tandem."
        | "Ya hay otro breaker en el espacio {space}. No caben dos en uno, salvo que los dos sean mitades de un tándem.";
    refused_same_id => "This breaker is in the list twice. Take one out." | "Este breaker está dos veces en la lista. Quite uno.";
    refused_no_tandem(space: u32) => "Space {space} takes no tandem, by the panel's label." | "El espacio {space} no acepta tándem, según la etiqueta del panel.";
    refused_rating => "Enter the rating on the handle." | "Escriba el valor que está en la manija.";
    refused_tie => "It is tied to a breaker that is not there." | "Está amarrado a un breaker que no está.";
    found_joined => "Neutral and ground are joined in a panel that a feeder supplies. Bare wires and metal parts then carry current: have them separated."
        | "Neutro y tierra están unidos en un panel alimentado por un alimentador. Entonces los alambres desnudos y las partes metálicas llevan corriente: hay que separarlos.";
    found_not_bonded => "Neutral and ground are separate at the service, where they have to be joined. A fault would not trip a breaker."
        | "Neutro y tierra están separados en la acometida, donde deben ir unidos. Una falla no dispararía el breaker.";
    found_too_many(poles: u32, most: u32) => "{poles} poles, and the label allows {most}." | "{poles} polos, y la etiqueta permite {most}.";
    found_above(device: String, rating: String) => "It is protected at {device} A and rated {rating} A." | "Está protegido a {device} A y su capacidad es {rating} A.";
    found_no_protection => "Nothing is entered that protects this panel at its rating: a main breaker here, or the breaker of its feeder."
        | "No hay nada anotado que proteja este panel a su capacidad: un breaker principal aquí, o el breaker de su alimentador.";
    found_no_disconnect => "It is fed from another building and has no disconnect here." | "Viene de otro edificio y aquí no tiene interruptor.";
    found_tandem_unread(number: &str) => "{number}: the label was not read for whether a tandem may be there." | "{number}: no se leyó en la etiqueta si ahí puede ir un tándem.";
    found_not_standard(number: &str, amps: String) => "{number}: no breaker is made with {amps} A." | "{number}: ningún breaker se fabrica de {amps} A.";
    found_tie_one_leg(number: &str, other: &str) => "{number} and {other} are tied and on one leg: that makes neither 240 V nor a shared neutral."
        | "{number} y {other} están amarrados y en la misma línea: eso no da 240 V ni permite compartir el neutro.";
    found_tie_cannot(number: &str, other: &str) => "{number} and {other} can't be joined by a handle tie: it takes single poles of one rating, neighbors in a column. They are not taken as opening together."
        | "{number} y {other} no se pueden unir con amarre de manijas: lleva breakers sencillos del mismo valor, vecinos en su columna. No se toman como si abrieran juntos.";
    found_rating_unknown => "The panel's rating is not entered, so its protection is not judged." | "La capacidad del panel no está anotada; su protección no se juzga.";
    found_no_label(number: &str) => "{number} has no label." | "{number} no tiene etiqueta.";
    found_same_label(numbers: &str) => "{numbers} have the same label. Say what tells them apart." | "{numbers} tienen la misma etiqueta. Diga qué los distingue.";
    found_not_confirmed(numbers: &str) => "Not confirmed by a test: {numbers}." | "Sin confirmar con una prueba: {numbers}.";
}

/// A leg's letter.
pub const fn leg(leg: Leg) -> &'static str {
    match leg {
        Leg::A => "A",
        Leg::B => "B",
    }
}

/// The letters of legs: `A`, `A and B`.
pub fn legs(legs: &[Leg]) -> &'static str {
    match legs {
        [one] => leg(*one),
        _ => legs_both(),
    }
}

/// A half's letter.
pub const fn half(half: Half) -> &'static str {
    match half {
        Half::A => "A",
        Half::B => "B",
    }
}

/// How a panel hangs.
pub fn mounting(mounting: Mounting) -> String {
    match mounting {
        Mounting::Upright => upright(),
        Mounting::Inverted => inverted(),
    }
    .to_owned()
}

/// What feeds it.
pub fn fed_by(by: FedBy) -> String {
    match by {
        FedBy::Service => fed_service(),
        FedBy::Feeder => fed_feeder(),
        FedBy::FeederFromOtherBuilding => fed_other(),
    }
    .to_owned()
}

/// How the bars are.
pub fn bars(bars: Bars) -> String {
    match bars {
        Bars::Joined => bars_joined(),
        Bars::Separate => bars_separate(),
        Bars::NotKnown => bars_unknown(),
    }
    .to_owned()
}

/// Where tandems may go.
pub fn tandems(rule: TandemRule) -> &'static str {
    match rule {
        TandemRule::NotKnown => tandems_unknown(),
        TandemRule::None => tandems_none(),
        TandemRule::All => tandems_all(),
        TandemRule::Listed => tandems_listed(),
    }
}

/// What a breaker does besides.
pub fn protection(protection: Protection) -> String {
    match protection {
        Protection::Plain => protection_plain(),
        Protection::ArcFault => protection_arc(),
        Protection::GroundFault => protection_ground(),
        Protection::ArcAndGroundFault => protection_both(),
    }
    .to_owned()
}

/// The same as a mark of the directory; empty for nothing.
pub fn protection_mark(protection: Protection) -> &'static str {
    match protection {
        Protection::Plain => "",
        Protection::ArcFault => arc_mark(),
        Protection::GroundFault => ground_mark(),
        Protection::ArcAndGroundFault => both_mark(),
    }
}

/// How it was confirmed.
pub fn confirmed(confirmed: Confirmed) -> String {
    match confirmed {
        Confirmed::NotConfirmed => confirmed_not(),
        Confirmed::SwitchedOff => confirmed_off(),
        Confirmed::Traced => confirmed_traced(),
        Confirmed::Followed => confirmed_followed(),
    }
    .to_owned()
}

/// The number of a place: `7`, `16A`, `3-5`.
pub fn number(space: u32, form: BreakerForm) -> String {
    match form {
        BreakerForm::Single => space.to_string(),
        BreakerForm::TwoPole => format!("{space}-{}", space.saturating_add(2)),
        BreakerForm::Tandem(of) => format!("{space}{}", half(of)),
    }
}

/// Why a breaker has no place, or the panel no drawing.
pub fn refusal(refusal: &PanelRefusal) -> String {
    match *refusal {
        PanelRefusal::Spaces { .. } => refused_spaces(MOST_SPACES),
        PanelRefusal::PanelRating { .. } => refused_panel_rating(amps(MOST_PANEL_A)),
        PanelRefusal::NoSpace { space, .. } => refused_no_space(space),
        PanelRefusal::NoSecondSpace { space, .. } => refused_no_second(space),
        PanelRefusal::Taken { space, .. } => refused_taken(space),
        PanelRefusal::SameId { .. } => refused_same_id().to_owned(),
        PanelRefusal::NoTandem { space, .. } => refused_no_tandem(space),
        PanelRefusal::Rating { .. } => refused_rating().to_owned(),
        PanelRefusal::Tie { .. } => refused_tie().to_owned(),
    }
}

/// What is remarkable; `numbered` gives the number of a breaker. Breakers that were not confirmed are told together,
/// by [`found_not_confirmed`].
pub fn finding(finding: &PanelFinding, numbered: &dyn Fn(u32) -> String) -> Option<String> {
    Some(match finding {
        PanelFinding::JoinedBeyondService { .. } => found_joined().to_owned(),
        PanelFinding::NotBondedAtService { .. } => found_not_bonded().to_owned(),
        PanelFinding::TooManyPoles { poles, most, .. } => found_too_many(*poles, *most),
        PanelFinding::AboveRating {
            device_a, rating_a, ..
        } => found_above(amps(*device_a), amps(*rating_a)),
        PanelFinding::NoProtectionKnown { .. } => found_no_protection().to_owned(),
        PanelFinding::NoDisconnect { .. } => found_no_disconnect().to_owned(),
        PanelFinding::TandemNotChecked { breaker, .. } => found_tandem_unread(&numbered(*breaker)),
        PanelFinding::NotStandard {
            breaker, rating_a, ..
        } => found_not_standard(&numbered(*breaker), amps(*rating_a)),
        PanelFinding::TieOnOneLeg { breaker, other, .. } => {
            found_tie_one_leg(&numbered(*breaker), &numbered(*other))
        }
        PanelFinding::TieCannotBe { breaker, other, .. } => {
            found_tie_cannot(&numbered(*breaker), &numbered(*other))
        }
        PanelFinding::RatingNotKnown { .. } => found_rating_unknown().to_owned(),
        PanelFinding::NoLabel { breaker, .. } => found_no_label(&numbered(*breaker)),
        PanelFinding::SameLabel { breakers, .. } => {
            let numbers: Vec<String> = breakers.iter().map(|id| numbered(*id)).collect();
            found_same_label(&numbers.join(", "))
        }
        PanelFinding::NotConfirmed { .. } => return None,
    })
}

/// The section that a finding rests on.
pub fn finding_section(finding: &PanelFinding) -> Option<&'static str> {
    match finding {
        PanelFinding::JoinedBeyondService { section }
        | PanelFinding::NotBondedAtService { section }
        | PanelFinding::TooManyPoles { section, .. }
        | PanelFinding::AboveRating { section, .. }
        | PanelFinding::NoProtectionKnown { section }
        | PanelFinding::NoDisconnect { section }
        | PanelFinding::TandemNotChecked { section, .. }
        | PanelFinding::NotStandard { section, .. }
        | PanelFinding::TieOnOneLeg { section, .. }
        | PanelFinding::TieCannotBe { section, .. }
        | PanelFinding::RatingNotKnown { section }
        | PanelFinding::NoLabel { section, .. }
        | PanelFinding::SameLabel { section, .. } => Some(section),
        PanelFinding::NotConfirmed { .. } => None,
    }
}
