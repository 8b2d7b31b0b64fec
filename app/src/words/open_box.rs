//! Opened boxes: what the screen says of what is in them, and its answers.

use calc::wiring::open_box::description::{Colour, LoadKind, SwitchForm, Terminal};
use calc::wiring::open_box::live_map::Behind;

pub mod answers;

pub mod measure;

pub mod refusals;

pub mod explain;

words! {
    stage => "Open box" | "Caja abierta";
    title => "Opened boxes" | "Cajas abiertas";
    none_yet => "Open a box here: what is in it, what must be off before you touch it, what is wrong in it."
        | "Abra aquí una caja: qué hay en ella, qué debe estar apagado antes de tocarla, qué está mal.";
    add => "Open a box" | "Abrir una caja";
    all_opened => "All opened boxes" | "Todas las cajas abiertas";
    no_such => "This box is no longer in the job." | "Esta caja ya no está en el trabajo.";
    untitled => "Opened box" | "Caja abierta";
    figure_none => "none opened" | "ninguna abierta";
    figure_one => "1 opened" | "1 abierta";
    figure(count: usize) => "{count} opened" | "{count} abiertas";
    row_open(cables: usize) => "{cables} cables, not complete yet" | "{cables} cables, falta completar";
    row_off(names: &str) => "Off before you open it: {names}" | "Apagar antes de abrirla: {names}";
    row_off_none => "No breaker is known to reach it." | "Ningún breaker conocido la alcanza.";
    name_label => "Name of this box" | "Nombre de esta caja";
    name_hint => "Where it is: “hall ceiling”, “beside the back door”." | "Dónde está: «techo del pasillo», «junto a la puerta de atrás».";
    take_out => "Take this opened box out of the job" | "Quitar esta caja abierta del trabajo";

    start_heading => "Start from the box that is most like it" | "Empiece con la caja que más se le parece";
    start_hint => "It fills in what is usual. Then change what you found otherwise." | "Llena lo usual. Después cambie lo que encontró distinto.";
    single_light => "Single light" | "Una luz";
    switch_neutral => "Switch with neutral" | "Apagador con neutro";
    switch_loop => "Switch loop" | "Bajada de apagador";
    three_way_pair => "Three-way pair" | "Par de tres vías";
    split_receptacle => "Split receptacle" | "Tomacorriente dividido";
    multiwire_run => "Two hots, one neutral" | "Dos vivos, un neutro";
    junction => "Junction of three cables" | "Unión de tres cables";
    mystery => "Mystery" | "Misterio";
    start_empty => "Or add breakers and cables one by one below." | "O agregue breakers y cables uno por uno abajo.";

    what_is_in_it => "What is in it" | "Qué hay en ella";
    box_label(n: usize) => "Box {n}" | "Caja {n}";
    add_box => "Add a box that is linked" | "Agregar una caja unida";
    box_name(n: usize) => "Box {n}: name" | "Caja {n}: nombre";
    breakers => "Breakers" | "Breakers";
    breaker_from_panel => "Add a breaker of the panel" | "Agregar un breaker del panel";
    add_breaker => "Add a breaker" | "Agregar un breaker";
    add_other_breaker => "Add one that is not in the panel here" | "Agregar uno que no está en este panel";
    choose => "choose" | "elija";
    breaker_n(n: usize) => "Breaker {n}" | "Breaker {n}";
    breaker_which(name: &str) => "{name}: which one" | "{name}: cuál";
    breaker_own => "not in this job's panel" | "no está en el panel de este trabajo";
    breaker_name(name: &str) => "{name}: name" | "{name}: nombre";
    breaker_leg(name: &str) => "{name}: leg" | "{name}: fase";
    breaker_rating(name: &str) => "{name}: rating" | "{name}: amperaje";
    breaker_poles(name: &str) => "{name}: poles" | "{name}: polos";
    one_pole => "1" | "1";
    two_pole => "2" | "2";
    leg_a => "A" | "A";
    leg_b => "B" | "B";
    guessed(name: &str) => "{name}: is it known that it feeds this box" | "{name}: se sabe que alimenta esta caja";
    known => "known" | "se sabe";
    a_guess => "a guess" | "se supone";
    breaker_line(name: &str, amps: &str, leg: &str) => "{name} · {amps} A · leg {leg}" | "{name} · {amps} A · fase {leg}";
    breaker_missing => "This breaker has no space in the panel any more. Choose another." | "Este breaker ya no tiene espacio en el panel. Elija otro.";
    cables => "Cables" | "Cables";
    add_two => "Add a cable: black, white, bare" | "Agregar cable: negro, blanco, desnudo";
    add_three => "Add a cable: black, red, white, bare" | "Agregar cable: negro, rojo, blanco, desnudo";
    cable(letter: &str) => "Cable {letter}" | "Cable {letter}";
    conductors_of(letter: &str) => "Cable {letter}: its wires" | "Cable {letter}: sus alambres";
    conductors_hint => "Tap a color to add a wire; tap a wire to take it out." | "Toque un color para agregar un alambre; toque un alambre para quitarlo.";
    add_colour(colour: &str, letter: &str) => "Add {colour} to {letter}" | "Agregar {colour} a {letter}";
    take_out_wire(wire: &str) => "Take out {wire}" | "Quitar {wire}";
    goes(letter: &str) => "Cable {letter}: where it goes" | "Cable {letter}: a dónde va";
    goes_not_known => "not known" | "no se sabe";
    goes_breaker(name: &str) => "breaker {name}" | "breaker {name}";
    goes_panel => "panel, on no breaker" | "panel, sin breaker";
    goes_load => "a load" | "una carga";
    goes_switch => "a switch" | "un apagador";
    goes_three_way => "a three-way switch" | "un apagador de tres vías";
    goes_four_way => "a four-way switch" | "un apagador de cuatro vías";
    goes_box(name: &str) => "{name}" | "{name}";
    wire_on(wire: &str) => "{wire} is on" | "{wire} está en";
    pole_of(name: &str, pole: usize) => "{name}, pole {pole}" | "{name}, polo {pole}";
    on_nothing => "nothing, loose in the panel" | "nada, suelto en el panel";
    load_name(letter: &str) => "Load on {letter}: name" | "Carga en {letter}: nombre";
    load_kind(letter: &str) => "Load on {letter}: kind" | "Carga en {letter}: tipo";
    load_watts(letter: &str) => "Load on {letter}: takes" | "Carga en {letter}: consume";
    more_cable(letter: &str) => "Length and size of {letter}" | "Largo y calibre de {letter}";
    length(letter: &str) => "Cable {letter}: length" | "Cable {letter}: largo";
    length_hint => "30 ft is taken where it stays empty." | "Si queda vacío se toman 30 pies.";
    size(letter: &str) => "Cable {letter}: wire size" | "Cable {letter}: calibre";
    letter(letter: &str) => "Cable {letter}: its letter" | "Cable {letter}: su letra";
    take_out_cable(letter: &str) => "Take out cable {letter}" | "Quitar el cable {letter}";
    filament => "lamp with a filament" | "foco de filamento";
    electronic => "LED or electronic" | "LED o electrónico";
    heater => "heater" | "calentador";
    motor => "motor: fan, pump, tool" | "motor: ventilador, bomba, herramienta";
    other_load => "other" | "otra";
    devices => "Devices" | "Dispositivos";
    add_switch => "Switch" | "Apagador";
    add_three_way => "Three-way" | "Tres vías";
    add_four_way => "Four-way" | "Cuatro vías";
    add_receptacle => "Receptacle" | "Tomacorriente";
    add_lampholder => "Lampholder" | "Portalámparas";
    device_add_to(box_name: &str) => "Add a device to {box_name}" | "Agregar un dispositivo a {box_name}";
    device_numbered(name: &str, n: usize) => "{name} {n}" | "{name} {n}";
    hot_tab(name: &str) => "{name}: tab between the hot screws" | "{name}: puente entre los tornillos vivos";
    neutral_tab(name: &str) => "{name}: tab between the neutral screws" | "{name}: puente entre los tornillos neutros";
    tab_there => "there" | "está";
    tab_out => "broken out" | "quitado";
    plugged(name: &str) => "{name}: what is on it" | "{name}: qué tiene conectado";
    device_load(name: &str) => "{name}: kind of load" | "{name}: tipo de carga";
    plugged_lower(name: &str) => "{name}: lower half" | "{name}: mitad de abajo";
    take_out_device(name: &str) => "Take out {name}" | "Quitar {name}";

    grid => "How it is joined" | "Cómo está unido";
    grid_of(name: &str) => "How it is joined in {name}" | "Cómo está unido en {name}";
    grid_hint => "Choose a joint, then tap each wire that is in it. “Next” steps a wire through the joints."
        | "Elija una unión y toque cada alambre que está en ella. «Siguiente» pasa el alambre por las uniones.";
    brush => "A tapped wire goes" | "El alambre que toque va";
    brush_next => "to the next" | "a la siguiente";
    brush_joint(n: u32) => "joint {n}" | "unión {n}";
    capped => "capped" | "con capuchón";
    cap_short => "cap" | "capuchón";
    loose => "loose" | "suelto";
    wire_is(wire: &str, at: &str) => "{wire}: {at}" | "{wire}: {at}";
    in_joint(n: u32) => "joint {n}" | "unión {n}";

    black => "black" | "negro";
    red => "red" | "rojo";
    white => "white" | "blanco";
    marked => "marked white" | "blanco marcado";
    bare => "bare" | "desnudo";
    wire(colour: &str, letter: &str) => "{colour} of {letter}" | "{colour} de {letter}";
    wire_n(colour: &str, n: usize, letter: &str) => "{colour} {n} of {letter}" | "{colour} {n} de {letter}";
    far_end(wire: &str) => "{wire}, far end" | "{wire}, al otro lado";
    screw_of(screw: &str, device: &str) => "{screw} of {device}" | "{screw} de {device}";
    screw_first => "first screw" | "primer tornillo";
    screw_second => "second screw" | "segundo tornillo";
    screw_common => "common" | "común";
    screw_one => "traveler 1" | "viajero 1";
    screw_two => "traveler 2" | "viajero 2";
    screw_onward_one => "traveler 1 out" | "viajero 1 salida";
    screw_onward_two => "traveler 2 out" | "viajero 2 salida";
    screw_hot => "hot" | "vivo";
    screw_hot_lower => "hot, lower" | "vivo, abajo";
    screw_neutral => "neutral" | "neutro";
    screw_neutral_lower => "neutral, lower" | "neutro, abajo";
    screw_ground => "ground" | "tierra";
    joint_of(n: u32, box_name: &str) => "joint {n} in {box_name}" | "unión {n} en {box_name}";
    neutral_bar => "neutral bar" | "barra de neutros";
    ground_bar => "ground" | "tierra";
    pipe => "metal pipe" | "tubo metálico";
    the_supply => "the supply" | "la alimentación";
    gone => "something taken out" | "algo que se quitó";

    live => "live" | "vivo";
    through_load => "live through a load" | "vivo por una carga";
    induced => "stray voltage only" | "solo voltaje parásito";
    floating => "floating" | "flotante";
    at_ground => "0 V: prove it" | "0 V: pruébelo";
    live_says => "A breaker feeds it through metal." | "Un breaker lo alimenta por metal.";
    through_load_says => "Fed back through a load: it lights no lamp, and it kills." | "Alimentado de regreso por una carga: no enciende un foco, y mata.";
    induced_says => "A high-impedance meter shows it, a low-impedance one does not." | "Un medidor de alta impedancia lo muestra; uno de baja, no.";
    floating_says => "Connected to nothing that is described. That is not proof of dead." | "No está conectado a nada de lo descrito. Eso no prueba que esté muerto.";
    at_ground_says => "Tied to neutral or ground, as described. A neutral carries current and is live once opened: prove every wire dead." | "Unido a neutro o tierra, según lo descrito. Un neutro lleva corriente y queda vivo al abrirlo: pruebe que cada alambre está muerto.";

    caution_off => "Turn off and lock out every breaker named here. Work de-energised, as NFPA 70E asks."
        | "Apague y ponga candado a cada breaker que se nombra aquí. Trabaje sin energía, como pide NFPA 70E.";
    caution_prove => "Prove every wire dead with a tester that you try on a known live source before and after."
        | "Compruebe que cada alambre esté muerto con un probador que haya probado en una fuente viva antes y después.";
    caution_white => "A white can be live. A neutral carries current, and opened under load its end is live."
        | "Un blanco puede estar vivo. Un neutro lleva corriente, y abierto bajo carga su punta queda viva.";
    caution_zero => "A reading of zero is not proof of dead." | "Una lectura de cero no prueba que esté muerto.";
    caution_wrong => "This works from what was entered. A wrong description gives a wrong answer."
        | "Esto trabaja con lo que se escribió. Una descripción equivocada da una respuesta equivocada.";
    caution_stop => "If anything doesn't fit, stop and call a licensed electrician."
        | "Si algo no cuadra, deténgase y llame a un electricista con licencia.";
}

/// The cautions of every opened box.
pub fn cautions() -> Vec<String> {
    [
        caution_off(),
        caution_prove(),
        caution_white(),
        caution_zero(),
        caution_wrong(),
        caution_stop(),
    ]
    .map(str::to_owned)
    .into()
}

/// A colour.
pub fn colour(colour: Colour) -> &'static str {
    match colour {
        Colour::Black => black(),
        Colour::Red => red(),
        Colour::White => white(),
        Colour::MarkedWhite => marked(),
        Colour::Bare => bare(),
    }
}

/// The letter of a colour, the same in both languages.
pub const fn colour_letter(colour: Colour) -> &'static str {
    match colour {
        Colour::Black => "B",
        Colour::Red => "R",
        Colour::White => "W",
        Colour::MarkedWhite => "W*",
        Colour::Bare => "G",
    }
}

/// The class of a colour in pictures and buttons.
pub const fn colour_class(colour: Colour) -> &'static str {
    match colour {
        Colour::Black => "black",
        Colour::Red => "red",
        Colour::White => "white",
        Colour::MarkedWhite => "white marked",
        Colour::Bare => "bare",
    }
}

/// A screw.
pub fn screw(terminal: Terminal) -> &'static str {
    match terminal {
        Terminal::First => screw_first(),
        Terminal::Second => screw_second(),
        Terminal::Common => screw_common(),
        Terminal::TravellerOne => screw_one(),
        Terminal::TravellerTwo => screw_two(),
        Terminal::OnwardOne => screw_onward_one(),
        Terminal::OnwardTwo => screw_onward_two(),
        Terminal::Hot => screw_hot(),
        Terminal::HotLower => screw_hot_lower(),
        Terminal::Neutral => screw_neutral(),
        Terminal::NeutralLower => screw_neutral_lower(),
        Terminal::Ground => screw_ground(),
    }
}

/// A kind of load.
pub fn load_kind_word(kind: LoadKind) -> String {
    match kind {
        LoadKind::Filament => filament(),
        LoadKind::Electronic => electronic(),
        LoadKind::Heater => heater(),
        LoadKind::Motor => motor(),
        LoadKind::Other => other_load(),
    }
    .to_owned()
}

/// What a cable to a switch goes to.
pub fn goes_to_switch(form: SwitchForm) -> &'static str {
    match form {
        SwitchForm::SinglePole => goes_switch(),
        SwitchForm::ThreeWay => goes_three_way(),
        SwitchForm::FourWay => goes_four_way(),
    }
}

/// What stands behind a contact, and what that means.
pub fn behind(behind: Behind) -> (&'static str, &'static str) {
    match behind {
        Behind::Live => (live(), live_says()),
        Behind::ThroughLoad => (through_load(), through_load_says()),
        Behind::Induced => (induced(), induced_says()),
        Behind::Floating => (floating(), floating_says()),
        Behind::AtGround => (at_ground(), at_ground_says()),
    }
}
