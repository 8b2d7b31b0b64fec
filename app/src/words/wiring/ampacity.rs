//! Ampacity: what a conductor carries, and the smallest for a load.

use calc::quantity::fixed;
use calc::wiring::ampacity::{
    AmpacityRefusal, BreakerGoverned, BreakerNote, Governed, LargestBreaker, TooSmall,
};
use calc::wiring::bundle::{BundleRefusal, CountLine, CountReason, Together};
use calc::wiring::tables::Ambient;

use super::{conductor_refusal, rating};

words! {
    title => "Wire ampacity" | "Ampacidad del alambre";
    line => "What a wire carries where it lies, its largest breaker, and the smallest wire for a load."
        | "Lo que lleva un alambre donde está, su breaker más grande y el alambre más chico para una carga.";
    want_label => "Find" | "Calcular";
    want_rating => "what this wire carries" | "lo que lleva este alambre";
    want_smallest => "the smallest wire for a load" | "el alambre más chico para una carga";
    ambient_label => "Air around the cable" | "Aire alrededor del cable";
    ambient_hint => "The hottest it gets there. Attics reach 130 to 150 °F (54 to 65 °C) in summer: common practice."
        | "Lo más caliente que llega a estar. Los áticos llegan a 130 o 150 °F (54 a 65 °C) en verano: práctica común.";
    terminals_label => "Terminals at both ends" | "Terminales en las dos puntas";
    terminals_60 => "60 °C" | "60 °C";
    terminals_75 => "marked 75 °C" | "marcadas 75 °C";
    terminals_unknown => "no mark found" | "sin marca";
    feeds_label => "It feeds" | "Alimenta";
    feeds_receptacles => "several receptacles" | "varios tomacorrientes";
    feeds_other => "something else" | "otra cosa";
    bundle_heading => "Side by side" | "Lado a lado";
    lie_label => "They lie" | "Van";
    lie_apart => "apart, or alone" | "separados, o solo uno";
    lie_raceway => "in one raceway, all the way" | "en un mismo tubo, todo el tramo";
    lie_nipple => "in a nipple" | "en un niple";
    lie_bundled => "touching or bundled" | "tocándose o amarrados";
    lie_sealed => "through one sealed hole in wood" | "por un mismo hoyo sellado en madera";
    lie_insulation => "in insulation, touching" | "dentro de aislante, tocándose";
    lie_length => "For a length of" | "En un largo de";
    kind_label(number: usize) => "Cables {number} beside it: what they are" | "Cables {number} junto a él: qué son";
    kind_two => "two-wire, 120 or 240 V" | "de dos hilos, 120 o 240 V";
    kind_multiwire => "three-wire, shared neutral" | "tres hilos, neutro compartido";
    kind_travellers => "three-wire: travelers" | "tres hilos: viajeros";
    kind_wye => "three-wire of 208Y/120 V" | "tres hilos de 208Y/120 V";
    kind_switched => "three-wire with a switched hot" | "tres hilos con vivo de apagador";
    own_label => "This cable" | "Este cable";
    spares_label(number: usize) => "Cables {number}: spare wires in each" | "Cables {number}: alambres de reserva en cada uno";
    lie_length_hint => "Up to 24 in they are not derated." | "Hasta 24 pulg no se reducen.";
    many_label(number: usize) => "Cables {number}: how many" | "Cables {number}: cuántos";
    kind_name(number: usize) => "cables {number}" | "los cables {number}";
    add_kind => "Add cables beside it" | "Agregar cables junto a él";
    load_heading => "The load" | "La carga";
    continuous_label => "On for 3 hours or more" | "Trabaja 3 horas o más";
    continuous_hint => "Amps, as on the nameplate: a water heater, space heat, shop lights." | "Amperes, como dice la placa: boiler, calefacción, luces de taller.";
    other_label => "The rest" | "Lo demás";
    breaker_label => "Breaker that is there" | "Breaker que ya está";
    breaker_hint => "Leave empty for the smallest one that carries the load." | "Déjelo vacío para el más chico que lleva la carga.";
    ampacity => "Ampacity" | "Ampacidad";
    smallest => "Smallest wire" | "Alambre más chico";
    wire(size: String, metal: &str, covering: String) => "{size} {metal}, {covering}" | "{size} de {metal}, {covering}";
    breaker_row => "Largest breaker" | "Breaker más grande";
    table_row => "Table value" | "Valor de la tabla";
    ambient_row => "Factor for the air" | "Factor del aire";
    count_row(count: u32) => "Factor for {count} conductors" | "Factor por {count} conductores";
    corrected_row => "With both factors" | "Con los dos factores";
    terminal_row(rating: String) => "Terminals at {rating}" | "Terminales a {rating}";
    cable_row => "NM cable, 60 °C column" | "Cable NM, columna de 60 °C";
    governed_row => "What set it" | "Qué lo fijó";
    governed_table => "the table itself" | "la tabla misma";
    governed_ambient => "the hot air" | "el aire caliente";
    governed_count => "the conductors together" | "los conductores juntos";
    governed_both => "hot air and conductors together" | "aire caliente y conductores juntos";
    governed_terminals => "the terminals" | "las terminales";
    governed_cable => "the kind of cable" | "el tipo de cable";
    says_table => "Nothing reduces it: the table's own value governs." | "Nada lo reduce: manda el valor de la tabla.";
    says_ambient => "The air around the cable governs." | "Manda el aire alrededor del cable.";
    says_count => "The number of conductors together governs." | "Manda la cantidad de conductores juntos.";
    says_both => "The air and the number of conductors together govern." | "Mandan el aire y la cantidad de conductores juntos.";
    says_terminals => "The terminals govern: the wire could carry more than they may." | "Mandan las terminales: el alambre podría llevar más que ellas.";
    says_cable => "The kind of cable governs: NM stays in the 60 °C column." | "Manda el tipo de cable: el NM se queda en la columna de 60 °C.";
    breaker_equal => "The ampacity is itself a standard rating." | "La ampacidad ya es un valor estándar.";
    breaker_next => "The next standard rating above the ampacity is allowed here." | "Aquí se permite el siguiente valor estándar arriba de la ampacidad.";
    breaker_below => "The standard rating below the ampacity: no rounding up here." | "El valor estándar abajo de la ampacidad: aquí no se redondea hacia arriba.";
    breaker_small => "The cap for small wire holds the breaker down." | "El tope del alambre chico limita el breaker.";
    note_receptacles(amps: String) => "{amps} A is below every breaker that may feed receptacles (15 A). Take a larger wire, cooler air or fewer together."
        | "{amps} A está abajo de todo breaker que puede alimentar tomacorrientes (15 A). Use alambre más grueso, aire menos caliente o menos cables juntos.";
    note_ten => "A 10 A circuit feeds no receptacles and little but lights." | "Un circuito de 10 A no alimenta tomacorrientes, casi solo luces.";
    note_continuous(amps: String) => "No more than {amps} A of it may be continuous." | "No más de {amps} A pueden ser continuos.";
    counted_heading => "What was counted" | "Qué se contó";
    counted_of(counted: u32, all: u32) => "{counted} of {all}" | "{counted} de {all}";
    of_own(what: &str) => "This cable: {what}" | "Este cable: {what}";
    of_beside(number: usize, what: &str) => "Cables {number}: {what}" | "Cables {number}: {what}";
    reason_hot => "hots" | "vivos";
    reason_traveller => "travelers, one of each pair" | "viajeros, uno de cada par";
    reason_returns => "neutrals that return what their hot carries" | "neutros que regresan lo que lleva su vivo";
    reason_unbalance => "neutrals that carry only the difference" | "neutros que llevan solo la diferencia";
    reason_wye => "neutrals of two hots of a wye" | "neutros de dos vivos de una estrella";
    reason_spare => "spare wires" | "alambres de reserva";
    reason_ground => "grounds" | "tierras";
    together_all => "They count together." | "Cuentan juntos.";
    together_apart => "Each cable counts for itself: they don't lie together." | "Cada cable cuenta solo: no van juntos.";
    together_short => "Each cable counts for itself: together for 24 in or less." | "Cada cable cuenta solo: juntos por 24 pulg o menos.";
    together_two => "Each cable counts for itself: no more than two." | "Cada cable cuenta solo: no más de dos.";
    load_row => "Load with 125 % of what is continuous" | "Carga con 125 % de lo continuo";
    breaker_taken => "Breaker" | "Breaker";
    smaller_before(size: String, allowed: String, needed: String) => "{size} is too small: before derating {allowed} A, {needed} A needed."
        | "{size} es muy chico: antes de reducir {allowed} A, se necesitan {needed} A.";
    smaller_after(size: String, allowed: String, needed: String) => "{size} is too small: where it lies {allowed} A, {needed} A needed."
        | "{size} es muy chico: donde está {allowed} A, se necesitan {needed} A.";
    smaller_breaker(size: String, largest: String, breaker: String) => "{size} is too small: it allows a breaker of {largest} A, not {breaker} A."
        | "{size} es muy chico: permite un breaker de {largest} A, no de {breaker} A.";
    smaller_no_breaker(size: String, breaker: String) => "{size} is too small: no standard breaker will do for it, and {breaker} A is wanted."
        | "{size} es muy chico: ningún breaker estándar le sirve, y se quiere uno de {breaker} A.";
    refused_ambient(degrees: String) => "{degrees} is outside the table. Enter the hottest air there, −76 to 185 °F (−60 to 85 °C)."
        | "{degrees} está fuera de la tabla. Escriba el aire más caliente ahí, de −76 a 185 °F (−60 a 85 °C).";
    refused_hot(degrees: String, rating: String) => "{degrees} is too hot for {rating} insulation. Take insulation rated higher, or another way for the cable."
        | "{degrees} es demasiado para aislante de {rating}. Use un aislante que aguante más, u otro camino para el cable.";
    refused_carrying(count: u32) => "{count} current-carrying conductors can't be. Enter at least one cable, and up to 1000 conductors."
        | "{count} conductores con corriente no puede ser. Escriba al menos un cable, y hasta 1000 conductores.";
    refused_load => "Enter a load of more than 0 and up to 6000 A." | "Escriba una carga de más de 0 y hasta 6000 A.";
    refused_breaker(amps: String) => "There is no standard breaker of {amps} A. Ratings go 15, 20, 25, 30, 35, 40, 45, 50, 60 …"
        | "No hay breaker estándar de {amps} A. Los valores van 15, 20, 25, 30, 35, 40, 45, 50, 60 …";
    refused_receptacles(amps: String) => "A circuit of several receptacles has 15, 20, 30, 40 or 50 A, not {amps} A."
        | "Un circuito de varios tomacorrientes es de 15, 20, 30, 40 o 50 A, no de {amps} A.";
    refused_below(breaker: String, needed: String) => "The breaker of {breaker} A is less than this load asks for: {needed} A, with 125 % of what runs 3 hours or more (210.20(A)). No wire mends that: less load, or another breaker and the wire for it."
        | "El breaker de {breaker} A es menos de lo que pide esta carga: {needed} A, con 125 % de lo que trabaja 3 horas o más (210.20(A)). Ningún alambre lo arregla: menos carga, u otro breaker y su alambre.";
    refused_no_size(amps: String) => "No size here carries {amps} A where it lies. Cool the way, split the bundle, or choose insulation rated higher."
        | "Ningún calibre de aquí lleva {amps} A donde está. Busque un camino más fresco, separe los cables o use aislante que aguante más.";
    refused_no_cable => "Add the cables that lie there, at least one." | "Agregue los cables que van ahí, al menos uno.";
    refused_many => "More than 200 can't lie in one bundle. Check the numbers." | "Más de 200 no caben en un atado. Revise los números.";
    refused_length => "Enter for how long they lie together: more than 0, up to 10,000 ft." | "Escriba en qué largo van juntos: más de 0, hasta 10,000 pies.";
    refused_hots(number: usize, hots: u32) => "Cables {number}: a shared neutral has two hots, not {hots}." | "Cables {number}: un neutro compartido tiene dos vivos, no {hots}.";
    caution_old => "Old insulation may be brittle or rated lower than its kind; in attics it bakes. Read the mark on the cable itself."
        | "El aislante viejo puede estar quebradizo o aguantar menos; en los áticos se cuece. Lea la marca en el cable mismo.";
}

/// Amps without needless digits.
pub fn amps(amps: f64) -> String {
    fixed(amps, 2)
}

/// A temperature with its unit.
pub fn degrees(ambient: Ambient) -> String {
    match ambient {
        Ambient::Celsius(c) => format!("{} °C", fixed(c, 1)),
        Ambient::Fahrenheit(f) => format!("{} °F", fixed(f, 1)),
    }
}

/// Which step set the ampacity, for a row.
pub fn governed(governed: Governed) -> &'static str {
    match governed {
        Governed::Table => governed_table(),
        Governed::Ambient => governed_ambient(),
        Governed::Count => governed_count(),
        Governed::AmbientAndCount => governed_both(),
        Governed::Terminals => governed_terminals(),
        Governed::Cable => governed_cable(),
    }
}

/// Which step set the ampacity, as a sentence.
pub fn governed_says(governed: Governed) -> &'static str {
    match governed {
        Governed::Table => says_table(),
        Governed::Ambient => says_ambient(),
        Governed::Count => says_count(),
        Governed::AmbientAndCount => says_both(),
        Governed::Terminals => says_terminals(),
        Governed::Cable => says_cable(),
    }
}

/// What set the breaker.
pub fn breaker_governed(breaker: &LargestBreaker) -> Option<&'static str> {
    breaker.rating_a?;
    Some(match breaker.governed {
        BreakerGoverned::Equal => breaker_equal(),
        BreakerGoverned::Next => breaker_next(),
        BreakerGoverned::Below => breaker_below(),
        BreakerGoverned::SmallConductor => breaker_small(),
    })
}

/// What else must be known of the breaker.
pub fn note(note: &BreakerNote) -> String {
    match note {
        BreakerNote::NotForReceptacles { ampacity_a } => note_receptacles(amps(*ampacity_a)),
        BreakerNote::TenAmpOnly => note_ten().to_owned(),
        BreakerNote::MostContinuous { most_a } => note_continuous(amps(*most_a)),
    }
}

/// A line of the count: whose conductors, and why they count or not. The first cable is the circuit's own.
pub fn counted_line(line: &CountLine) -> String {
    match line.cable {
        0 => of_own(reason(line.reason)),
        number => of_beside(number, reason(line.reason)),
    }
}

/// Why a conductor counts, or not.
pub fn reason(reason: CountReason) -> &'static str {
    match reason {
        CountReason::Hot => reason_hot(),
        CountReason::OneTravellerOfPair => reason_traveller(),
        CountReason::NeutralReturns => reason_returns(),
        CountReason::NeutralUnbalance => reason_unbalance(),
        CountReason::NeutralOfWye => reason_wye(),
        CountReason::Spare => reason_spare(),
        CountReason::Ground => reason_ground(),
    }
}

/// Whether the cables count together.
pub fn together(together: Together) -> &'static str {
    match together {
        Together::All => together_all(),
        Together::Apart => together_apart(),
        Together::Short => together_short(),
        Together::TwoCables => together_two(),
    }
}

/// Why the next smaller size won't do.
pub fn too_small(size: String, why: &TooSmall) -> String {
    match why {
        TooSmall::BeforeCorrection {
            allowed_a,
            needed_a,
        } => smaller_before(size, amps(*allowed_a), amps(*needed_a)),
        TooSmall::AfterCorrection {
            allowed_a,
            needed_a,
        } => smaller_after(size, amps(*allowed_a), amps(*needed_a)),
        TooSmall::Breaker {
            largest_a: Some(largest_a),
            breaker_a,
        } => smaller_breaker(size, amps(*largest_a), amps(*breaker_a)),
        TooSmall::Breaker {
            largest_a: None,
            breaker_a,
        } => smaller_no_breaker(size, amps(*breaker_a)),
    }
}

/// Why there is no ampacity, and what would give one.
pub fn refusal(refusal: &AmpacityRefusal) -> String {
    match refusal {
        AmpacityRefusal::Conductor(refusal) => conductor_refusal(refusal),
        AmpacityRefusal::Ambient { ambient } => refused_ambient(degrees(*ambient)),
        AmpacityRefusal::TooHot {
            ambient,
            rating: of,
        } => refused_hot(degrees(*ambient), rating(*of)),
        AmpacityRefusal::Carrying { carrying } => refused_carrying(*carrying),
        AmpacityRefusal::Load { .. } => refused_load().to_owned(),
        AmpacityRefusal::Breaker { breaker_a } => refused_breaker(amps(*breaker_a)),
        AmpacityRefusal::NotForReceptacles { breaker_a } => refused_receptacles(amps(*breaker_a)),
        AmpacityRefusal::BelowLoad {
            breaker_a,
            needed_a,
        } => refused_below(amps(*breaker_a), amps(*needed_a)),
        AmpacityRefusal::NoSize { needed_a } => refused_no_size(amps(*needed_a)),
    }
}

/// Why nothing is counted, and what would be.
pub fn bundle_refusal(refusal: &BundleRefusal) -> String {
    match refusal {
        BundleRefusal::NoCable => refused_no_cable().to_owned(),
        BundleRefusal::TooMany { .. } => refused_many().to_owned(),
        BundleRefusal::Length { .. } => refused_length().to_owned(),
        BundleRefusal::NotTwoHots { cable, hots } => refused_hots(*cable, *hots),
    }
}
