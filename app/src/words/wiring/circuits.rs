//! Words of the circuits.

use calc::job::{CircuitWiring, Units};
use calc::quantity::fixed;
use calc::wiring::circuit::{Check, Compared, LoadKind, NotJudged, Outcome, Purpose};
use calc::wiring::neutral::{NeutralFinding, NeutralRefusal};
use calc::wiring::voltage_drop::Across;
use calc::working::Unit;

use super::ampacity::{self, amps};
use super::panel::leg;
use super::{drop, fill};

words! {
    stage => "Circuits" | "Circuitos";
    title => "Circuits" | "Circuitos";
    none_yet => "No circuit here yet. Take a breaker of the panel, or start without one." | "Todavía no hay circuitos. Tome un breaker del panel, o empiece sin él.";
    untitled => "Circuit" | "Circuito";
    add_on_label => "New circuit on breaker" | "Circuito nuevo en el breaker";
    add_on_none => "no breaker yet" | "todavía sin breaker";
    add_circuit => "Add the circuit" | "Agregar el circuito";
    all_circuits => "All circuits" | "Todos los circuitos";
    failing_name => "Rules that fail" | "Reglas que no se cumplen";
    failing_unit(circuits: usize) => "in {circuits} circuits" | "en {circuits} circuitos";
    one_failing => "1 rule failing" | "1 regla sin cumplir";
    failing(count: usize) => "{count} rules failing" | "{count} reglas sin cumplir";
    none_failing(all: usize) => "no rule failing: {all}" | "ninguna regla falla: {all}";
    not_entered => "none entered" | "ninguno anotado";
    still_open(open: usize, all: usize) => "still open: {open} of {all}" | "pendientes: {open} de {all}";
    on_breaker(number: &str, amps: String) => "Breaker {number}, {amps} A" | "Breaker {number}, {amps} A";
    no_breaker => "No breaker chosen" | "Sin breaker elegido";
    breaker_option(number: &str, amps: &str, label: &str) => "{number} · {amps} A · {label}" | "{number} · {amps} A · {label}";
    of_breaker(total: String, breaker: String, share: String) => "{total} A of {breaker} A ({share} %)" | "{total} A de {breaker} A ({share} %)";
    leg_of_breaker(leg: &str, total: String, breaker: String, share: String) => "Leg {leg}: {total} A of {breaker} A ({share} %)"
        | "Línea {leg}: {total} A de {breaker} A ({share} %)";
    share_name => "Share of the breaker, with what is planned" | "Parte del breaker, con lo planeado";
    share_name_now => "Share of the breaker" | "Parte del breaker";
    share_unit(breaker: String) => "% of {breaker} A" | "% de {breaker} A";
    missing => "Still missing, so it is not judged yet:" | "Falta, y por eso todavía no se juzga:";
    missing_breaker => "the breaker it is on" | "el breaker en que está";
    missing_size => "the wire size" | "el calibre del alambre";
    missing_receptacles => "how many receptacles" | "cuántos tomacorrientes";
    missing_outlets => "how many outlets of any kind" | "cuántas salidas de cualquier tipo";
    missing_amount => "what each load takes" | "cuánto toma cada carga";
    missing_length => "the length of each stretch" | "el largo de cada tramo";
    missing_motor => "the amps of a motor: by its horsepower in Table 430.248, or on its plate where it has none; watts fall short of them"
        | "los amperes de un motor: según sus caballos en la Tabla 430.248, o en su placa si no los dice; los watts quedan cortos";
    missing_rating => "the rating of its breaker" | "el valor de su breaker";
    missing_space => "the space of its breaker" | "el espacio de su breaker";
    missing_stretch => "the stretch of a load" | "el tramo de una carga";
    missing_other => "an entry above" | "un dato de arriba";
    needs_two_poles => "It needs two hots on opposite legs that open together: a two-pole breaker, or two single poles of one rating, neighbors in a column, under a listed handle tie."
        | "Necesita dos vivos en líneas opuestas que abren juntos: un breaker de dos polos, o dos sencillos del mismo valor, vecinos en su columna, con amarre de manijas listado.";
    motor_watts => "Enter a motor in amps: by its horsepower in Table 430.248. Watts fall short of what it takes."
        | "Anote el motor en amperes: según sus caballos en la Tabla 430.248. Los watts quedan cortos.";
    cant_be => "These figures can't be: check breaker and loads." | "Estos datos no pueden ser: revise el breaker y las cargas.";
    verdicts_heading => "Rule by rule" | "Regla por regla";
    fails => "not allowed" | "no permitido";
    not_judged => "not judged" | "sin juzgar";
    advised => "better not" | "mejor no";
    passes => "kept" | "se cumple";
    kept_count(count: usize) => "Kept: {count} rules" | "Se cumplen: {count} reglas";
    now_then(now: String, then: String, limit: String) => "{now} now, {then} with what is planned; at most {limit}"
        | "{now} ahora, {then} con lo planeado; a lo más {limit}";
    now_only(now: String, limit: String) => "{now}; at most {limit}" | "{now}; a lo más {limit}";
    on_leg(leg: &str) => "leg {leg}" | "línea {leg}";
    entry_missing => "an entry of it is missing" | "le falta un dato";
    motor_alone => "a motor alone on its circuit follows Article 430, which is not judged here" | "un motor solo en su circuito sigue el Artículo 430, que aquí no se juzga";
    no_stretch => "a load is at a stretch that the run does not have" | "una carga está en un tramo que el recorrido no tiene";
    check_total => "Everything on it at once, against the breaker" | "Todo a la vez, contra el breaker";
    check_continuous => "The same with 125 % of what runs 3 hours or more" | "Lo mismo con 125 % de lo que trabaja 3 horas o más";
    check_plug => "The largest thing on a cord, against 80 % of the circuit" | "Lo más grande con clavija, contra 80 % del circuito";
    check_fixed => "What is fastened in place, against half of the circuit" | "Lo que está fijo, contra la mitad del circuito";
    check_ten => "What a 10 A circuit may feed" | "Lo que puede alimentar un circuito de 10 A";
    check_standard => "The breaker has a rating that is made" | "El breaker es de un valor que se fabrica";
    check_rating => "A circuit of several outlets has 15, 20, 30, 40 or 50 A" | "Un circuito de varias salidas es de 15, 20, 30, 40 o 50 A";
    check_large => "A circuit of more than 20 A feeds no lights, and one of 40 or 50 A only cooking equipment fastened in place"
        | "Un circuito de más de 20 A no alimenta luces, y uno de 40 o 50 A solo equipo fijo de cocinar";
    check_receptacle_rating => "The receptacles are rated for this circuit" | "Los tomacorrientes son del valor de este circuito";
    check_appliance => "The breaker, against what a single appliance allows, unless its plate marks another"
        | "El breaker, contra lo que permite un solo aparato, salvo que su placa marque otro";
    check_required_rating => "A kitchen, laundry or bathroom circuit has 20 A" | "Un circuito de cocina, lavandería o baño es de 20 A";
    check_required_loads => "It feeds only what its purpose allows" | "Alimenta solo lo que su uso permite";
    check_least => "The wire is no smaller than a circuit may have" | "El alambre no es menor de lo que puede tener un circuito";
    check_made => "The cable is made and allowed in this size" | "El cable se fabrica y se permite en este calibre";
    check_hot => "The insulation stands the heat of the air around it" | "El aislante aguanta el calor del aire alrededor";
    check_before => "The wire before derating, against 125 % of what runs 3 hours or more and the rest" | "El alambre antes de reducir, contra 125 % de lo que trabaja 3 horas o más y lo demás";
    check_after => "The wire where it lies, against the load" | "El alambre donde está, contra la carga";
    check_breaker => "The breaker, against the largest the wire allows" | "El breaker, contra el más grande que permite el alambre";
    check_motor => "The wire where it lies, against 125 % of its largest motor and the rest" | "El alambre donde está, contra 125 % de su motor más grande y lo demás";
    check_drop => "Voltage lost at the far end" | "Voltaje perdido al final";
    check_feeder_drop => "Voltage lost in the feeder alone" | "Voltaje perdido solo en el alimentador";
    check_total_drop => "Voltage lost with the feeder" | "Voltaje perdido con el alimentador";
    check_box(name: &str) => "Space in the box “{name}”" | "Espacio en la caja «{name}»";
    check_neutral => "The most that may flow in the shared neutral" | "Lo más que puede pasar por el neutro compartido";
    check_together => "The neutral runs in one cable or pipe with its hots" | "El neutro va con sus vivos en un mismo cable o tubo";
    check_whole => "Taking out a device leaves the neutral whole" | "Quitar un dispositivo no abre el neutro";
    check_arc => "Arc-fault protection (AFCI) where outlets are added or wiring is extended" | "Protección contra arco (AFCI) donde se agregan salidas o se alarga el cableado";
    check_ground => "Ground-fault protection (GFCI) where outlets are added" | "Protección contra falla a tierra (GFCI) donde se agregan salidas";
    check_replacement => "Protection that a receptacle needs when it replaces another" | "Protección que pide un tomacorriente que sustituye a otro";
    receptacle_rating(least: String) => "their rating is not entered: each has to be made for {least} A or more, as the section says" | "su valor no está anotado: cada uno tiene que ser de {least} A o más, como dice la sección";
    by_the_room => "it hangs on the room and the work, which are not entered here: read the section and ask the inspector" | "depende del cuarto y del trabajo, que aquí no se anotan: lea la sección y pregunte al inspector";
    neutral_same_leg(leg: &str, sum: String) => "Two hots on leg {leg} return on one neutral: their currents add up to {sum} A and no breaker guards it. They may not share."
        | "Dos vivos de la línea {leg} regresan por un neutro: sus corrientes suman {sum} A y ningún breaker lo cuida. No pueden compartir.";
    neutral_tandem => "The two halves of a tandem are on one leg. They may not share a neutral." | "Las dos mitades de un tándem van en la misma línea. No pueden compartir neutro.";
    neutral_too_many(hots: usize) => "{hots} hots return on one neutral. It serves one circuit, or one multiwire circuit." | "{hots} vivos regresan por un neutro. Sirve a un circuito, o a un circuito multifilar.";
    neutral_panels => "Its hots come from different panels." | "Sus vivos vienen de paneles distintos.";
    neutral_disconnect => "No one handle opens all its hots: with one breaker off, the neutral is still live from the other."
        | "Ninguna manija abre todos sus vivos: con un breaker apagado, el neutro sigue vivo por el otro.";
    neutral_leg_to_leg => "It also feeds loads from leg to leg, without one handle that opens both." | "También alimenta cargas de línea a línea, sin una manija que abra las dos.";
    neutral_apart => "The neutral runs apart from a hot. Cables and metal between them heat up." | "El neutro va separado de un vivo. Los cables y el metal entre ellos se calientan.";
    neutral_opens => "Taking out a device opens the neutral, and what is beyond it gets up to 240 V. Splice it with pigtails."
        | "Quitar un dispositivo abre el neutro, y lo que sigue recibe hasta 240 V. Empálmelo con colitas.";
    neutral_electronic(up_to: String) => "Electronic loads on opposite legs don't cancel fully: with all of them on, up to {up_to} A may flow in the neutral."
        | "Las cargas electrónicas en líneas opuestas no se cancelan del todo: hasta {up_to} A pueden pasar por el neutro.";
    neutral_overloaded(current: String, ampacity: String) => "Up to {current} A may flow in the neutral, which carries {ampacity} A."
        | "Hasta {current} A pueden pasar por el neutro, que lleva {ampacity} A.";
    neutral_unknown => "The current in the neutral can't be told from these entries." | "Con estos datos no se puede saber la corriente del neutro.";
    neutral_heading => "Neutrals that circuits share" | "Neutros que comparten circuitos";
    neutral_now(now: String) => "{now} A with everything on" | "{now} A con todo encendido";
    neutral_most(most: String) => "up to {most} A with some of it off" | "hasta {most} A con algo apagado";
    neutral_then(then: String) => "{then} A with what is planned" | "{then} A con lo planeado";
    plan_heading => "What is to be added" | "Lo que se va a agregar";
    plan_hint => "One tap adds it with the watts that are usual; correct them from its nameplate." | "Un toque lo agrega con los watts usuales; corríjalos según su placa.";
    add_fan => "a fan" | "un extractor";
    add_heater => "a heater" | "un calentador";
    add_receptacle => "a receptacle" | "un tomacorriente";
    add_light => "a light" | "una luz";
    name_fan => "Exhaust fan" | "Extractor";
    name_heater => "Wall heater" | "Calentador de pared";
    name_receptacle => "Receptacle" | "Tomacorriente";
    name_light => "Light" | "Luz";
    compare_caption => "Before and after" | "Antes y después";
    head_now => "Now" | "Ahora";
    head_then => "Then" | "Luego";
    head_most => "At most" | "Tope";
    in_unit(name: &str, unit: &str) => "{name}, {unit}" | "{name}, {unit}";
    row_breaker => "Load on the breaker" | "Carga en el breaker";
    row_share => "Share of the breaker" | "Parte del breaker";
    row_wire => "In the wire where it lies" | "En el alambre donde está";
    row_drop => "Lost at the far end" | "Pérdida al final";
    row_neutral => "In the neutral, all on" | "En el neutro, todo encendido";
    row_neutral_most => "In the neutral, at most" | "En el neutro, a lo más";
    circuit_heading => "The circuit" | "El circuito";
    name_label => "What you call it" | "Cómo lo llama";
    breaker_label => "On breaker" | "En el breaker";
    wiring_label => "It runs between" | "Va entre";
    wiring_neutral => "hot and neutral, 120 V" | "vivo y neutro, 120 V";
    wiring_hots => "two hots, 240 V" | "dos vivos, 240 V";
    wiring_multi => "two hots and their neutral" | "dos vivos y su neutro";
    purpose_label => "It is for" | "Es para";
    purpose_general => "general use" | "uso general";
    purpose_kitchen => "kitchen and dining plugs" | "enchufes de cocina y comedor";
    purpose_laundry => "laundry" | "lavandería";
    purpose_bathrooms => "bathroom plugs" | "enchufes de baño";
    purpose_one_bathroom => "one bathroom and nothing else" | "un solo baño y nada más";
    receptacles_label => "Receptacles" | "Tomacorrientes";
    outlets_label => "Outlets of any kind" | "Salidas de todo tipo";
    outlets_hint => "The planned ones among them." | "También los planeados.";
    full_label => "Breaker and panel listed for 100 %" | "Breaker y panel listados para 100 %";
    wire_heading => "The wire and how it lies" | "El alambre y cómo va";
    run_heading => "The run from the panel" | "El recorrido desde el panel";
    run_hint => "One stretch to each point where something is connected. Without a run the drop is not judged."
        | "Un tramo hasta cada punto donde se conecta algo. Sin recorrido no se juzga la caída.";
    stretch_label(number: usize) => "Stretch {number}, one way" | "Tramo {number}, de ida";
    stretch_name_label(number: usize) => "Stretch {number} leads to" | "El tramo {number} llega a";
    stretch_name(number: usize) => "stretch {number}" | "el tramo {number}";
    add_stretch => "Add a stretch" | "Agregar un tramo";
    loads_heading => "What is on it" | "Lo que tiene";
    loads_none => "Nothing entered. Without loads the circuit is judged as empty." | "Nada anotado. Sin cargas el circuito se juzga vacío.";
    load_label(number: usize) => "Load {number}" | "Carga {number}";
    plan_label(number: usize) => "Planned {number}" | "Planeado {number}";
    amount_of(name: &str) => "{name} takes" | "{name} toma";
    unit_of(name: &str) => "{name} in" | "{name} en";
    watts => "watts" | "watts";
    amperes => "amps" | "amperes";
    kind_of(name: &str) => "{name} is" | "{name} es";
    kind_light => "a light" | "una luz";
    kind_cord => "on a cord and plug" | "con cordón y clavija";
    kind_fixed => "fastened in place" | "fijo en su lugar";
    kind_fan => "an exhaust fan" | "un extractor";
    kind_water => "a water heater" | "un boiler";
    kind_heat => "fixed electric heat" | "calefacción eléctrica fija";
    kind_motor => "a motor, fastened in place" | "un motor fijo";
    across_of(name: &str) => "{name} between" | "{name} entre";
    across_a => "leg A and neutral" | "línea A y neutro";
    across_b => "leg B and neutral" | "línea B y neutro";
    across_both => "leg and leg" | "línea y línea";
    stretch_of(name: &str) => "{name} at the end of" | "{name} al final de";
    far_end => "the far end" | "el último punto";
    continuous_of(name: &str) => "{name} runs 3 hours or more" | "{name} trabaja 3 horas o más";
    electronic_of(name: &str) => "{name} is electronic" | "{name} es electrónico";
    electronic_hint => "A supply, a dimmer, LED lamps." | "Una fuente, un dimmer, lámparas LED.";
    more_of(name: &str) => "More about {name}" | "Más sobre {name}";
    add_load => "Add a load" | "Agregar una carga";
    neutral_form_heading => "The neutral it returns on" | "El neutro por el que regresa";
    shared_label => "It shares its neutral with" | "Comparte su neutro con";
    shared_none => "no other circuit here" | "ningún otro circuito aquí";
    with_hots_label => "Neutral and hots in one cable or pipe" | "Neutro y vivos en un mismo cable o tubo";
    pigtailed_label => "Neutral spliced with pigtails at each device" | "Neutro empalmado con colitas en cada dispositivo";
    unknown => "not known" | "no se sabe";
    boxes_heading => "Boxes on its way" | "Cajas en su camino";
    boxes_none => "No box is entered in this job yet." | "Todavía no hay cajas en este trabajo.";
    take_out_circuit => "Take this circuit out" | "Quitar este circuito";
    taken_out(name: &str) => "“{name}” is taken out." | "Se quitó «{name}».";
    no_such => "This circuit is no longer in the job." | "Este circuito ya no está en el trabajo.";
    to_boxes => "Next: the boxes" | "Sigue: las cajas";
    to_panel => "To the panel" | "Al panel";
    caution_adding => "These rules judge what you entered, and nothing that is hidden in a wall. What you have not seen or tested is not known."
        | "Estas reglas juzgan lo que usted anotó, nada de lo que está oculto en un muro. Lo que no vio ni probó no se sabe.";
}

/// How a rule came out.
pub fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Fails => fails(),
        Outcome::NotJudged => not_judged(),
        Outcome::Advised => advised(),
        Outcome::Passes => passes(),
    }
}

/// What is checked; `named` gives the name of a box.
pub fn check(check: &Check, named: &dyn Fn(u32) -> String) -> String {
    match check {
        Check::TotalLoad => check_total(),
        Check::ContinuousLoad => check_continuous(),
        Check::PlugLoad => check_plug(),
        Check::FixedLoad => check_fixed(),
        Check::TenAmp => check_ten(),
        Check::StandardRating => check_standard(),
        Check::CircuitRating => check_rating(),
        Check::LargeCircuit => check_large(),
        Check::ReceptacleRating => check_receptacle_rating(),
        Check::ApplianceBreaker => check_appliance(),
        Check::LeastSize => check_least(),
        Check::SizeMade => check_made(),
        Check::TooHot => check_hot(),
        Check::FeederDrop => check_feeder_drop(),
        Check::NeutralTogether => check_together(),
        Check::NeutralWhole => check_whole(),
        Check::ArcFault => check_arc(),
        Check::GroundFault => check_ground(),
        Check::Replacement => check_replacement(),
        Check::RequiredRating => check_required_rating(),
        Check::RequiredLoads => check_required_loads(),
        Check::ConductorBefore => check_before(),
        Check::ConductorAfter => check_after(),
        Check::BreakerForConductor => check_breaker(),
        Check::MotorConductor => check_motor(),
        Check::BranchDrop => check_drop(),
        Check::TotalDrop => check_total_drop(),
        Check::BoxFill { id } => return check_box(&named(*id)),
        Check::NeutralLoad => check_neutral(),
        Check::Neutral(found) => return finding(found),
    }
    .to_owned()
}

/// What is wrong with a neutral.
pub fn finding(finding: &NeutralFinding) -> String {
    match finding {
        NeutralFinding::Overloaded {
            current_a,
            ampacity_a,
            ..
        } => neutral_overloaded(amps(*current_a), amps(*ampacity_a)),
        NeutralFinding::SameLeg { leg: of, sum_a, .. } => neutral_same_leg(leg(*of), amps(*sum_a)),
        NeutralFinding::TandemPair { .. } => neutral_tandem().to_owned(),
        NeutralFinding::TooManyCircuits { hots, .. } => neutral_too_many(*hots),
        NeutralFinding::DifferentPanels { .. } => neutral_panels().to_owned(),
        NeutralFinding::NoCommonDisconnect { .. } => neutral_disconnect().to_owned(),
        NeutralFinding::LegToLegLoads { .. } => neutral_leg_to_leg().to_owned(),
        NeutralFinding::RunsApart { .. } => neutral_apart().to_owned(),
        NeutralFinding::OpensAtDevice { .. } => neutral_opens().to_owned(),
        NeutralFinding::ElectronicLoads { up_to_a } => neutral_electronic(amps(*up_to_a)),
    }
}

/// A figure with its unit.
fn with_unit(value: f64, unit: Unit, units: Units) -> String {
    match unit {
        Unit::Amps => format!("{} A", amps(value)),
        Unit::Percent => format!("{} %", fixed(value, 1)),
        Unit::In3 => fill::volume(value, units),
        _ => fixed(value, 2),
    }
}

/// The figures of a verdict; nothing where it has none.
pub fn figures(now: Option<&Compared>, after: Option<&Compared>, units: Units) -> Option<String> {
    let now = now?;
    let text = |value: f64| with_unit(value, now.unit, units);
    let limit = text(now.limit);
    Some(match after {
        Some(after) if after.value != now.value => {
            now_then(text(now.value), text(after.value), limit)
        }
        _ => now_only(text(now.value), limit),
    })
}

/// Why a rule isn't judged.
pub fn why_not(why: Option<&NotJudged>, units: Units) -> String {
    match why {
        None => entry_missing().to_owned(),
        Some(NotJudged::Ampacity(refusal)) => ampacity::refusal(refusal),
        Some(NotJudged::Drop(refusal)) => drop::refusal(refusal),
        Some(NotJudged::Box(refusal)) => fill::refusal(refusal, units),
        Some(NotJudged::Neutral(refusal)) => neutral_refusal(refusal).to_owned(),
        Some(NotJudged::MotorAlone) => motor_alone().to_owned(),
        Some(NotJudged::ReceptacleRating { least_a }) => receptacle_rating(amps(*least_a)),
        Some(NotJudged::ByTheRoom) => by_the_room().to_owned(),
        Some(NotJudged::NoStretch { .. }) => no_stretch().to_owned(),
    }
}

/// Why the current in a neutral isn't known.
pub fn neutral_refusal(_: &NeutralRefusal) -> &'static str {
    neutral_unknown()
}

/// An entry that is missing, by its name in the document.
pub fn missing_entry(name: &str) -> &'static str {
    match name {
        "breaker" => missing_breaker(),
        "size" => missing_size(),
        "receptacles" => missing_receptacles(),
        "outlets" => missing_outlets(),
        "amount" => missing_amount(),
        "motor_amps" => missing_motor(),
        "length" => missing_length(),
        "rating" => missing_rating(),
        "space" => missing_space(),
        "stretch" => missing_stretch(),
        _ => missing_other(),
    }
}

/// Between which conductors.
pub fn wiring(wiring: CircuitWiring) -> &'static str {
    match wiring {
        CircuitWiring::HotNeutral => wiring_neutral(),
        CircuitWiring::TwoHots => wiring_hots(),
        CircuitWiring::Multiwire => wiring_multi(),
    }
}

/// What a circuit is for.
pub fn purpose(purpose: Purpose) -> String {
    match purpose {
        Purpose::General => purpose_general(),
        Purpose::SmallAppliance => purpose_kitchen(),
        Purpose::Laundry => purpose_laundry(),
        Purpose::Bathroom {
            one_bathroom: false,
        } => purpose_bathrooms(),
        Purpose::Bathroom { one_bathroom: true } => purpose_one_bathroom(),
    }
    .to_owned()
}

/// What a load is.
pub fn kind(kind: LoadKind) -> String {
    match kind {
        LoadKind::Luminaire => kind_light(),
        LoadKind::CordAndPlug => kind_cord(),
        LoadKind::FixedInPlace => kind_fixed(),
        LoadKind::ExhaustFan => kind_fan(),
        LoadKind::WaterHeater => kind_water(),
        LoadKind::SpaceHeating => kind_heat(),
        LoadKind::Motor => kind_motor(),
    }
    .to_owned()
}

/// Between which conductors a load is.
pub fn across(across: Across) -> String {
    match across {
        Across::A => across_a(),
        Across::B => across_b(),
        Across::Both => across_both(),
    }
    .to_owned()
}
