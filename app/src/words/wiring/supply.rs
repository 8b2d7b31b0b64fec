//! Words of the measured supply.

use calc::quantity::fixed;
use calc::wiring::supply::{Judged, NeutralEvidence, Reading, Standing, SupplyFinding};
use calc::wiring::tables::VoltagePlace;

use super::panel::leg;

words! {
    heading => "Voltage measured here" | "Voltaje medido aquí";
    hint => "Only someone trained for it measures at bars that are live, with a meter and gloves rated for them."
        | "Solo mide en barras vivas quien está capacitado, con medidor y guantes de esa categoría.";
    place_label => "Measured" | "Se midió";
    place_service => "at the service" | "en la acometida";
    place_use => "at a subpanel or an outlet" | "en un subpanel o una salida";
    idle_heading => "With little or no load" | "Con poca o ninguna carga";
    loaded_heading => "With a large 120 V load on leg A or B" | "Con una carga grande de 120 V en la línea A o B";
    loaded_hint => "A heater or a hair dryer on one leg shows what a failing neutral hides."
        | "Un calentador o una secadora en una línea muestra lo que esconde un neutro que falla.";
    across => "Leg to leg" | "Línea a línea";
    a_neutral => "A to neutral" | "A a neutro";
    b_neutral => "B to neutral" | "B a neutro";
    a_ground => "A to ground" | "A a tierra";
    b_ground => "B to ground" | "B a tierra";
    idle(name: &str) => "{name}, no load" | "{name}, sin carga";
    loaded(name: &str) => "{name}, loaded" | "{name}, con carga";
    table_caption => "Against ANSI C84.1" | "Contra ANSI C84.1";
    head_what => "Voltage" | "Voltaje";
    head_stands => "Stands" | "Está";
    range_a => "normal (Range A)" | "normal (Rango A)";
    range_b => "Range B: to be corrected" | "Rango B: hay que corregirlo";
    below => "too low" | "muy bajo";
    above => "too high" | "muy alto";
    all_in_order => "Nothing found in these readings, without load and with it: every voltage in Range A, and the legs add up."
        | "No se encontró nada en estas lecturas, sin carga y con ella: todos los voltajes en Rango A, y las líneas suman.";
    not_tested => "Not tested under load, which is when a failing neutral shows. Turn on a large 120 V load on one leg and read again."
        | "Sin probar con carga, que es cuando se nota un neutro que falla. Encienda una carga grande de 120 V en una línea y lea otra vez.";
    nothing_idle => "Nothing found in these readings." | "No se encontró nada en estas lecturas.";
    dead(volts: String) => "No voltage: {volts} V at most. The supply is off, or the meter is not reading. Try the meter where there surely is voltage, and take nothing for dead before that."
        | "No hay voltaje: {volts} V a lo más. La alimentación está apagada, o el medidor no lee. Pruebe el medidor donde con certeza hay voltaje, y antes no dé nada por muerto.";
    leg_lost(leg: &str, volts: String) => "Leg {leg} is dead ({volts} V): a fuse, the main or the utility lost it. Equipment of 240 V can put voltage on it from behind. Switch that off, and call the utility or an electrician."
        | "La línea {leg} está muerta ({volts} V): la perdió un fusible, el principal o la compañía. Un equipo de 240 V puede darle voltaje por detrás. Apáguelo, y llame a la compañía de luz o a un electricista.";
    call_now => "The neutral is failing. Switch off what you can and unplug what matters. Call the utility or an electrician now, before any other work. One leg can rise far above 120 V: it destroys what is plugged in, starts fires and puts voltage on metal parts."
        | "El neutro está fallando. Apague lo que pueda y desconecte lo que importa. Llame ya a la compañía de luz o a un electricista, antes de cualquier otro trabajo. Una línea puede subir mucho arriba de 120 V: destruye lo conectado, provoca incendios y pone voltaje en partes metálicas.";
    evidence_sum(sum: String, across: String) => "Both legs add up to {sum} V; leg to leg is {across} V."
        | "Las dos líneas suman {sum} V; línea a línea hay {across} V.";
    evidence_apart(a: String, b: String) => "A has {a} V and B {b} V." | "A tiene {a} V y B {b} V.";
    evidence_swing(rising: &str, rise: String, fall: String) => "Leg {rising} rises by {rise} V under load while the other falls by {fall} V."
        | "La línea {rising} sube {rise} V con carga mientras la otra baja {fall} V.";
    one_leg(volts: String) => "Only {volts} V from leg to leg: both bars seem to be on one leg. Call an electrician."
        | "Solo {volts} V de línea a línea: las dos barras parecen estar en la misma línea. Llame a un electricista.";
    wye(volts: String) => "{volts} V from leg to leg is 1.73 times a leg: two lines of a three-phase supply. A shared neutral counts in full there. Measure again, and ask the utility."
        | "{volts} V de línea a línea es 1.73 veces una línea: dos líneas de un sistema trifásico. Ahí un neutro compartido cuenta completo. Mida otra vez, y pregunte a la compañía.";
    out_of_range(what: String, volts: String) => "{what}: {volts} V is outside both ranges. Have the utility or an electrician look at it."
        | "{what}: {volts} V está fuera de los dos rangos. Que lo revise la compañía o un electricista.";
    in_range_b(what: String, volts: String) => "{what}: {volts} V is in Range B, for a short time only. Measure again, with and without load."
        | "{what}: {volts} V está en Rango B, solo por poco tiempo. Mida otra vez, con y sin carga.";
    off_ground(leg: &str, volts: String) => "Neutral and ground are {volts} V apart, seen at leg {leg}. Have an electrician look at the bond and the neutral."
        | "Neutro y tierra difieren {volts} V, visto en la línea {leg}. Que un electricista revise la unión y el neutro.";
    uneven(apart: String) => "The legs are {apart} V apart. Measure again with and without load." | "Las líneas difieren {apart} V. Mida otra vez con y sin carga.";
    refused => "Enter voltages from 0 to 1000 V." | "Escriba voltajes de 0 a 1000 V.";
}

fn volts(volts: f64) -> String {
    fixed(volts, 1)
}

/// Where it was measured.
pub fn place(place: VoltagePlace) -> &'static str {
    match place {
        VoltagePlace::Service => place_service(),
        VoltagePlace::Utilization => place_use(),
    }
}

/// Which voltage was judged, and whether the load was on.
pub fn reading(judged: &Judged) -> String {
    let name = match judged.reading {
        Reading::Across => across(),
        Reading::LegToNeutral(calc::wiring::panel::Leg::A) => a_neutral(),
        Reading::LegToNeutral(calc::wiring::panel::Leg::B) => b_neutral(),
    };
    if judged.loaded {
        loaded(name)
    } else {
        idle(name)
    }
}

/// Where a voltage stands.
pub fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::RangeA => range_a(),
        Standing::RangeB => range_b(),
        Standing::Below => below(),
        Standing::Above => above(),
    }
}

/// What is remarkable, as sentences.
pub fn finding(finding: &SupplyFinding) -> String {
    match finding {
        SupplyFinding::NeutralFailing { evidence } => {
            let mut said = call_now().to_owned();
            for one in evidence {
                said.push(' ');
                said.push_str(&evidence_of(one));
            }
            said
        }
        SupplyFinding::Dead { most_v } => dead(volts(*most_v)),
        SupplyFinding::LegLost { leg: of, volts: by } => leg_lost(leg(*of), volts(*by)),
        SupplyFinding::NotTestedUnderLoad { nothing_else: true } => {
            format!("{} {}", nothing_idle(), not_tested())
        }
        SupplyFinding::NotTestedUnderLoad {
            nothing_else: false,
        } => not_tested().to_owned(),
        SupplyFinding::OneLegOnBoth { across_v } => one_leg(volts(*across_v)),
        SupplyFinding::TwoLinesOfWye { across_v } => wye(volts(*across_v)),
        SupplyFinding::OutOfRange(judged) => out_of_range(reading(judged), volts(judged.volts)),
        SupplyFinding::InRangeB(judged) => in_range_b(reading(judged), volts(judged.volts)),
        SupplyFinding::NeutralOffGround { leg: of, volts: by } => {
            off_ground(leg(*of), volts(by.abs()))
        }
        SupplyFinding::LegsUneven { apart_v } => uneven(volts(*apart_v)),
    }
}

fn evidence_of(evidence: &NeutralEvidence) -> String {
    match *evidence {
        NeutralEvidence::LegsDontAddUp { sum_v, across_v } => {
            evidence_sum(volts(sum_v), volts(across_v))
        }
        NeutralEvidence::LegsApart { a_v, b_v } => evidence_apart(volts(a_v), volts(b_v)),
        NeutralEvidence::LegsSwing {
            rising,
            rise_v,
            fall_v,
        } => evidence_swing(leg(rising), volts(rise_v), volts(fall_v)),
    }
}
