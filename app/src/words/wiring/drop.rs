//! Voltage drop, planned and measured.

use calc::quantity::fixed;
use calc::wiring::measured_drop::{MeasuredFinding, MeasuredRefusal};
use calc::wiring::voltage_drop::{Across, DropFinding, DropRefusal};

use super::{impedance_refusal, size};

words! {
    title => "Voltage drop" | "Caída de voltaje";
    line => "Volts lost along a run with several loads, the longest run, the smallest wire."
        | "Voltios que se pierden en un tramo con varias cargas, el tramo más largo, el alambre más chico.";
    measured_title => "Measured volts" | "Voltios medidos";
    measured_line => "Readings with the load off and on: the resistance they imply, and whether the wire explains it."
        | "Lecturas con la carga apagada y encendida: la resistencia que implican, y si el alambre la explica.";
    want_label => "Find" | "Calcular";
    want_drop => "what a run loses" | "lo que pierde un tramo";
    want_longest => "the longest run" | "el tramo más largo";
    want_smallest => "the smallest wire" | "el alambre más chico";
    system_label => "Supply" | "Alimentación";
    system_two_wire => "two wires, single phase" | "dos hilos, una fase";
    system_multiwire => "two hots and a shared neutral" | "dos vivos y neutro compartido";
    system_three_phase => "three phase" | "trifásica";
    volts_hint => "Between the two wires; leg to neutral on a shared one; line to line on three phase."
        | "Entre los dos hilos; de línea a neutro si es compartido; entre líneas en trifásica.";
    more_heading => "More about wire and supply" | "Más del alambre y la alimentación";
    loads_heading => "The loads" | "Las cargas";
    load_label(number: usize) => "Load {number}" | "Carga {number}";
    load_in(number: usize) => "Load {number} is in" | "Carga {number} en";
    load_across(number: usize) => "Load {number} is on" | "Carga {number} va en";
    load_at(number: usize) => "Load {number} is at the end of" | "Carga {number} al final de";
    load_name(number: usize) => "load {number}" | "la carga {number}";
    at_far_end => "the last" | "el último";
    at_stretch(number: usize) => "stretch {number}" | "el tramo {number}";
    add_load => "Add a load" | "Agregar carga";
    at_load_heading => "At the load" | "En la carga";
    at_panel_heading => "At the panel" | "En el panel";
    rests_gained(volts: String) => "{volts} V more with the load on, not less." | "{volts} V más con la carga encendida, no menos.";
    volts_label => "Nominal voltage" | "Voltaje nominal";
    source_volts_label => "Measured at the start" | "Medido al principio";
    source_volts_hint => "Leave empty for the nominal voltage." | "Déjelo vacío para usar el nominal.";
    feeder_label => "Lost in the feeder already" | "Ya perdido en el alimentador";
    parallel_label => "Wires in parallel for each leg" | "Alambres en paralelo por línea";
    method_label => "Resistance by" | "Resistencia según";
    method_dc => "resistance alone (Table 8): heat, lamps, small wire" | "resistencia sola (Tabla 8): calor, focos, alambre chico";
    method_ac => "impedance (Table 9) and a power factor" | "impedancia (Tabla 9) y factor de potencia";
    method_printed => "impedance as printed for a power factor of 0.85" | "impedancia impresa para factor de potencia 0.85";
    construction_label => "Wire is" | "El alambre es";
    construction_usual => "as usual: solid up to 10 AWG" | "lo usual: sólido hasta 10 AWG";
    conduit_label => "It runs in" | "Va en";
    power_factor_label => "Power factor" | "Factor de potencia";
    power_factor_hint => "1 for heat and lamps; about 0.85 for motors is common practice." | "1 para calor y focos; cerca de 0.85 para motores es práctica común.";
    conductor_label => "Wire temperature" | "Temperatura del alambre";
    conductor_hint => "The tables are for 167 °F (75 °C), a wire fully loaded; a cooler wire loses less." | "Las tablas son a 167 °F (75 °C), alambre a plena carga; más fresco pierde menos.";
    stretches_heading => "The run" | "El recorrido";
    stretch_length(number: usize) => "Stretch {number}, one way" | "Tramo {number}, de ida";
    in_amps => "amps" | "amperes";
    in_watts => "watts" | "watts";
    in_ohms => "ohms" | "ohms";
    across_a => "leg A" | "línea A";
    across_b => "leg B" | "línea B";
    across_both => "both legs" | "las dos líneas";
    stretch_name(number: usize) => "stretch {number}" | "el tramo {number}";
    add_stretch => "Add a stretch" | "Agregar tramo";
    current_label => "Load current" | "Corriente de la carga";
    limit_label => "May lose no more than" | "Puede perder a lo más";
    limit_hint => "3 % is what the code's note recommends for a branch circuit." | "3 % es lo que recomienda la nota del código para un circuito derivado.";
    length_label => "Length, one way" | "Largo, de ida";
    measured_hint => "Read with the same meter. Turn the load on for the second reading of each pair; everything else stays as it is."
        | "Lea con el mismo multímetro. Encienda la carga para la segunda lectura de cada par; lo demás queda igual.";
    supply_idle_label => "At the panel, load off" | "En el panel, carga apagada";
    supply_loaded_label => "At the panel, load on" | "En el panel, carga encendida";
    load_idle_label => "At the load, load off" | "En la carga, apagada";
    load_loaded_label => "At the load, load on" | "En la carga, encendida";
    meter_label => "Last digit of the meter" | "Último dígito del multímetro";
    meter_hint => "0.1 V on most meters." | "0.1 V en la mayoría.";
    run_known_label => "The run, if known" | "El tramo, si se conoce";
    lost => "Lost at the worst point" | "Se pierde en el peor punto";
    longest => "Longest run, one way" | "Tramo más largo, de ida";
    smallest => "Smallest wire, by the drop alone" | "Alambre más chico, solo por la caída";
    measured_run => "Resistance of the run" | "Resistencia del tramo";
    rests_drop(percent: String) => "{percent} % of the nominal voltage." | "{percent} % del voltaje nominal.";
    keeps_branch => "Within the 3 % that is recommended for a branch circuit." | "Dentro del 3 % recomendado para un circuito derivado.";
    above_branch(percent: String) => "{percent} % is more than the 3 % recommended for a branch circuit. A larger wire, a shorter way or less load lowers it."
        | "{percent} % es más que el 3 % recomendado para un circuito derivado. Alambre más grueso, camino más corto o menos carga lo bajan.";
    above_total(percent: String) => "{percent} % with the feeder is more than the 5 % recommended in all." | "{percent} % con el alimentador es más que el 5 % recomendado en total.";
    leg_rises(volts: String) => "The unbalance lifts the lighter leg by {volts} V. A neutral that opens would lift it far more."
        | "El desbalance sube la línea menos cargada {volts} V. Un neutro abierto la subiría mucho más.";
    parallel_small(size: String) => "{size} may not run in parallel: 1/0 AWG is the smallest." | "{size} no puede ir en paralelo: lo mínimo es 1/0 AWG.";
    rests_longest(volts: String) => "It loses {volts} V at the far end, with all loads there." | "Pierde {volts} V en la punta, con todas las cargas ahí.";
    rests_smallest(volts: String, percent: String) => "It loses {volts} V, {percent} %. Its ampacity and its breaker are another question."
        | "Pierde {volts} V, {percent} %. Su ampacidad y su breaker son otra cuestión.";
    rests_measured(volts: String) => "{volts} V lost on the way, there and back." | "Se pierden {volts} V en el camino, de ida y vuelta.";
    points_caption => "Point by point" | "Punto por punto";
    head_at => "At" | "A";
    head_left => "Left" | "Queda";
    head_lost => "Lost" | "Se pierde";
    head_leg_a => "Leg A" | "Línea A";
    head_leg_b => "Leg B" | "Línea B";
    head_neutral => "Neutral" | "Neutro";
    row_impedance => "One wire, 1000 ft" | "Un alambre, 1000 pies";
    row_heat => "Lost as heat in the wire" | "Se pierde en calor en el alambre";
    row_total => "With the feeder" | "Con el alimentador";
    step_up_says(next: String, saved: String, percent: String) => "{next} would save {saved} W while the load runs, and lose {percent} %."
        | "{next} ahorraría {saved} W mientras trabaja la carga, y perdería {percent} %.";
    row_most => "Most it may have, 1000 ft" | "Máximo que puede tener, 1000 pies";
    row_source => "Ahead of the panel" | "Antes del panel";
    row_expected => "The run should have" | "El tramo debería tener";
    row_excess => "Too much" | "De más";
    row_excess_ft => "As feet of that wire" | "Como pies de ese alambre";
    row_excess_run => "As a longer run, one way" | "Como tramo más largo, de ida";
    row_uncertain => "The meter's last digit may be off by" | "Por el último dígito puede variar";
    found_rises(volts: String) => "The voltage rises by {volts} V when the load comes on. Wire never does that; a failing neutral does. Turn the load off and call the utility or an electrician now."
        | "El voltaje sube {volts} V al encender la carga. Un alambre nunca hace eso; un neutro que falla sí. Apague la carga y llame ya a la compañía de luz o a un electricista.";
    found_more(ohm: String, watts: String) => "{ohm} Ω more than the wire explains. In one joint that is {watts} W of heat: a loose splice or terminal can start a fire. Turn it off and have every joint on the way opened and remade."
        | "{ohm} Ω más de lo que explica el alambre. En un solo empalme son {watts} W de calor: un empalme o terminal flojo puede iniciar un incendio. Apáguelo y haga revisar y rehacer cada empalme del camino.";
    found_source(ohm: String, watts: String) => "{ohm} Ω ahead of the panel is far more than a sound supply has: a connection at the service, the meter, the feeder or the neutral may be failing. In one joint that is {watts} W of heat, and it burns; if it is the neutral, voltages run away. Turn the load off and call the utility or an electrician now."
        | "{ohm} Ω antes del panel es mucho más de lo que tiene una alimentación sana: puede estar fallando una conexión en la acometida, el medidor, el alimentador o el neutro. En una sola unión son {watts} W de calor, y quema; si es el neutro, los voltajes se disparan. Apague la carga y llame ya a la compañía de luz o a un electricista.";
    found_unknown_much(percent: String, watts: String) => "{percent} % is lost on the way, {watts} W of heat, and the run is not known. In one joint that heat can start a fire. Measure the run and its wire: what they don't explain is a joint to be opened and remade."
        | "Se pierde {percent} % en el camino, {watts} W de calor, y el tramo no se conoce. En una sola unión ese calor puede provocar un incendio. Mida el tramo y su alambre: lo que no expliquen es una unión que hay que abrir y rehacer.";
    found_unknown(watts: String) => "Without the length and the size of the run nobody can tell whether the wire explains this: {watts} W of heat, spread along the wire or in one joint."
        | "Sin el largo y el calibre del tramo no se puede saber si el alambre lo explica: {watts} W de calor, repartidos en el alambre o en una sola unión.";
    found_less(ohm: String) => "{ohm} Ω less than the run as given: it is shorter, thicker, or the current was smaller. Check the entries."
        | "{ohm} Ω menos que el tramo dado: es más corto, más grueso, o la corriente fue menor. Revise lo escrito.";
    found_idle(volts: String) => "With the load off both places should read the same; they differ by {volts} V. Something else is on, or the readings were not at the same time."
        | "Con la carga apagada los dos lugares deben marcar igual; difieren {volts} V. Hay algo más encendido, o no se leyeron a la vez.";
    found_none => "The run explains what was measured, within the meter's last digit." | "El tramo explica lo medido, dentro del último dígito del multímetro.";
    refused_volts => "Enter a voltage of more than 0 and up to 1000 V." | "Escriba un voltaje de más de 0 y hasta 1000 V.";
    refused_length => "Enter a length of more than 0 and up to 10,000 ft in all." | "Escriba un largo de más de 0 y hasta 10,000 pies en total.";
    refused_no_stretch => "Add a stretch: its length and the load at its end." | "Agregue un tramo: su largo y la carga al final.";
    refused_load(number: usize) => "Stretch {number}: enter a load of 0 or more, up to 6000 A." | "Tramo {number}: escriba una carga de 0 o más, hasta 6000 A.";
    refused_across(number: usize) => "Stretch {number}: leg B and leg to leg are only on a run with a shared neutral."
        | "Tramo {number}: la línea B y entre líneas solo existen en un tramo con neutro compartido.";
    refused_ohms(number: usize) => "Stretch {number}: a load in ohms goes with a power factor of 1 on a single phase. Enter its amps instead."
        | "Tramo {number}: una carga en ohms va con factor de potencia 1 y una fase. Mejor escriba sus amperes.";
    refused_source => "Enter a resistance of 0 up to 100 Ω." | "Escriba una resistencia de 0 a 100 Ω.";
    refused_feeder => "Enter 0 up to 100 % for the feeder." | "Escriba de 0 a 100 % para el alimentador.";
    refused_parallel => "Enter 1 up to 12 wires in parallel." | "Escriba de 1 a 12 alambres en paralelo.";
    refused_nothing_left(at: String) => "No voltage is left at {at} ft: this wire can't bring that load so far. Check length, load and size."
        | "No queda voltaje a {at} pies: este alambre no lleva esa carga tan lejos. Revise largo, carga y calibre.";
    refused_limit => "Enter a limit of more than 0 and less than 100 %." | "Escriba un límite de más de 0 y menos de 100 %.";
    refused_no_size(ohm: String) => "No size here has {ohm} Ω or less in 1000 ft. Run several in parallel, raise the voltage or shorten the way."
        | "Ningún calibre de aquí tiene {ohm} Ω o menos en 1000 pies. Use varios en paralelo, suba el voltaje o acorte el camino.";
    refused_current => "Enter a current of 0.01 up to 6000 A." | "Escriba una corriente de 0.01 a 6000 A.";
    caution_live => "Reading volts is work on live parts. Gloves and meter rated for it, one hand, nothing open that need not be; where you are not trained for that, call an electrician."
        | "Leer voltios es trabajo con partes vivas. Guantes y multímetro adecuados, una mano, nada abierto sin necesidad; si no tiene la preparación, llame a un electricista.";
    picture_says(start: String, end: String, at: String) => "Voltage falls from {start} V to {end} V over {at}." | "El voltaje baja de {start} V a {end} V en {at}.";
    picture_caption => "Volts against feet of run. The dashed line marks 3 % below nominal." | "Voltios contra pies de tramo. La línea cortada marca 3 % abajo del nominal.";
    picture_limit(volts: String) => "3 %: {volts} V" | "3 %: {volts} V";
}

/// Volts to a hundredth.
pub fn volts(volts: f64) -> String {
    fixed(volts, 2)
}

/// Percent to a hundredth.
pub fn percent(percent: f64) -> String {
    fixed(percent, 2)
}

/// Between which conductors a load is.
pub fn across(across: Across) -> &'static str {
    match across {
        Across::A => across_a(),
        Across::B => across_b(),
        Across::Both => across_both(),
    }
}

/// What is remarkable about a run.
pub fn finding(finding: &DropFinding) -> String {
    match finding {
        DropFinding::AboveBranch { percent: of } => above_branch(percent(*of)),
        DropFinding::AboveTotal { percent: of } => above_total(percent(*of)),
        DropFinding::LegRises { volts: by } => leg_rises(volts(*by)),
        DropFinding::ParallelTooSmall { size: of } => parallel_small(size(*of)),
    }
}

/// What is remarkable about measured volts.
pub fn measured_finding(finding: &MeasuredFinding) -> String {
    match finding {
        MeasuredFinding::RisesUnderLoad { volts: by } => found_rises(volts(*by)),
        MeasuredFinding::MoreThanTheRun { excess_ohm, heat_w } => {
            found_more(fixed(*excess_ohm, 3), fixed(*heat_w, 1))
        }
        MeasuredFinding::HighSource { source_ohm, heat_w } => {
            found_source(fixed(*source_ohm, 3), fixed(*heat_w, 1))
        }
        MeasuredFinding::LostInUnknownRun { percent, heat_w } => {
            found_unknown_much(fixed(*percent, 1), fixed(*heat_w, 1))
        }
        MeasuredFinding::RunNotKnown { heat_w } => found_unknown(fixed(*heat_w, 1)),
        MeasuredFinding::LessThanTheRun { missing_ohm } => found_less(fixed(*missing_ohm, 3)),
        MeasuredFinding::IdleReadingsDiffer { volts: by } => found_idle(volts(*by)),
    }
}

/// Why a drop isn't answered, and what would be.
pub fn refusal(refusal: &DropRefusal) -> String {
    match refusal {
        DropRefusal::Impedance(refusal) => impedance_refusal(refusal),
        DropRefusal::Volts { .. } => refused_volts().to_owned(),
        DropRefusal::Length { .. } => refused_length().to_owned(),
        DropRefusal::NoStretch => refused_no_stretch().to_owned(),
        DropRefusal::Load { stretch, .. } => refused_load(stretch + 1),
        DropRefusal::Across { stretch, .. } => refused_across(stretch + 1),
        DropRefusal::Ohms { stretch } => refused_ohms(stretch + 1),
        DropRefusal::SourceOhm { .. } => refused_source().to_owned(),
        DropRefusal::FeederPercent { .. } => refused_feeder().to_owned(),
        DropRefusal::Parallel { .. } => refused_parallel().to_owned(),
        DropRefusal::NothingLeft { at_ft } => refused_nothing_left(fixed(*at_ft, 1)),
        DropRefusal::Limit { .. } => refused_limit().to_owned(),
        DropRefusal::NoSize { max_ohm_per_kft } => refused_no_size(fixed(*max_ohm_per_kft, 4)),
    }
}

/// Why measured volts say nothing, and what would.
pub fn measured_refusal(refusal: &MeasuredRefusal) -> String {
    match refusal {
        MeasuredRefusal::Volts { .. } => refused_volts().to_owned(),
        MeasuredRefusal::Current { .. } => refused_current().to_owned(),
        MeasuredRefusal::Length { .. } => refused_length().to_owned(),
        MeasuredRefusal::Impedance(refusal) => impedance_refusal(refusal),
    }
}
