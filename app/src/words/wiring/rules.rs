//! What each section of the code says, in our own words.

use calc::job::CodeEdition;
use calc::wiring::code::Rule;
use calc::working::{Source, Step};

macro_rules! rule_words {
    ($($rule:ident => $en:literal | $es:literal;)+) => {
        /// What a rule says.
        pub fn rule(rule: Rule) -> &'static str {
            let (english, spanish) = match rule {
                $(Rule::$rule => ($en, $es),)+
            };
            match crate::words::language() {
                crate::words::Language::English => english,
                crate::words::Language::Spanish => spanish,
            }
        }
    };
}

rule_words! {
    Ampacities => "How many amps an insulated conductor carries, by size, metal and the temperature its insulation stands, with no more than three carrying current together in air at 30 °C (86 °F)."
        | "Cuántos amperes lleva un conductor aislado, según calibre, metal y la temperatura que aguanta su aislante, con no más de tres con corriente juntos y aire a 30 °C (86 °F).";
    AmbientFactor => "Hotter air takes heat away more slowly, so the table value is multiplied by a factor for the air around the cable."
        | "El aire más caliente se lleva el calor más despacio; el valor de la tabla se multiplica por un factor según el aire alrededor del cable.";
    CountFactor => "Conductors that carry current together warm each other. From the fourth on, the table value is multiplied by a factor."
        | "Los conductores con corriente que van juntos se calientan entre sí. Del cuarto en adelante, el valor de la tabla se multiplica por un factor.";
    BundleLength => "Cables stacked or bundled without spacing for more than 24 in count together; up to 24 in they do not."
        | "Los cables apilados o amarrados sin separación por más de 24 pulg cuentan juntos; hasta 24 pulg no.";
    Nipple => "A nipple of 24 in or less is not derated, however many conductors it has."
        | "Un niple de 24 pulg o menos no se reduce, sin importar cuántos conductores lleve.";
    NeutralCount => "A neutral that carries only the difference of two opposite legs does not count; one that carries all of its hot's current does."
        | "El neutro que lleva solo la diferencia de dos líneas opuestas no cuenta; el que lleva toda la corriente de su vivo sí.";
    GroundCount => "Equipment grounds do not count: they carry nothing in normal use."
        | "Las tierras de equipo no cuentan: en uso normal no llevan corriente.";
    TravellerCount => "Of two travelers only one carries current at a time, so a pair is counted once here. That is a reading of the rule: ask the inspector."
        | "De dos viajeros solo uno lleva corriente a la vez, así que aquí el par cuenta una vez. Es una lectura de la regla: pregunte al inspector.";
    Terminals => "A screw or lug that is rated for less heat than the wire holds the wire to its own column. Where no mark is found, up to 100 A or 1 AWG is taken as 60 °C."
        | "Un tornillo o terminal que aguanta menos calor que el alambre lo limita a su propia columna. Si no hay marca, hasta 100 A o 1 AWG se toma como 60 °C.";
    NmCable => "NM cable never carries more than the 60 °C column. The 90 °C column serves only as the start for derating. More than two in one sealed hole, or in insulation without spacing, are derated."
        | "El cable NM nunca lleva más que la columna de 60 °C. La de 90 °C sirve solo de arranque para reducir. Más de dos en un hoyo sellado, o dentro de aislante sin separación, se reducen.";
    NextRating => "Where the ampacity is between two standard breakers, the next larger one is allowed up to 800 A, unless the circuit feeds several receptacles."
        | "Si la ampacidad queda entre dos breakers estándar, se permite el siguiente mayor hasta 800 A, salvo que el circuito alimente varios tomacorrientes.";
    AtAmpacity => "A circuit with several receptacles is protected at its ampacity or below: no rounding up."
        | "Un circuito con varios tomacorrientes se protege a su ampacidad o menos: no se redondea hacia arriba.";
    EquipmentProtection => "Motors and some other equipment follow breaker rules of their own."
        | "Los motores y algunos otros equipos siguen sus propias reglas de breaker.";
    SmallConductors => "Whatever the ampacity, small wire has a cap: 15 A on 14 AWG copper, 20 A on 12, 30 A on 10."
        | "Sea cual sea la ampacidad, el alambre chico tiene tope: 15 A en 14 AWG de cobre, 20 A en 12, 30 A en 10.";
    StandardRatings => "The ratings in which breakers and fuses are made." | "Los valores en que se fabrican breakers y fusibles.";
    LeastSize => "House circuits use nothing smaller than 14 AWG copper or 12 AWG aluminum."
        | "Los circuitos de casa no llevan nada menor que 14 AWG de cobre o 12 AWG de aluminio.";
    NmSizes => "NM cable is made from 14 to 2 AWG in copper, from 12 to 2 in aluminum."
        | "El cable NM se fabrica de 14 a 2 AWG en cobre, de 12 a 2 en aluminio.";
    UfSizes => "UF cable is made from 14 AWG to 4/0 in copper, from 12 in aluminum."
        | "El cable UF se fabrica de 14 AWG a 4/0 en cobre, desde 12 en aluminio.";
    Parallel => "Conductors run in parallel are 1/0 AWG or larger, all alike in length, metal, size and ends."
        | "Los conductores en paralelo son de 1/0 AWG o más, todos iguales en largo, metal, calibre y puntas.";
    BoxVolume => "The volume of a box is its own and that of rings and covers that are marked with theirs, less what a barrier takes."
        | "El volumen de la caja es el suyo más el de anillos y tapas que lo traigan marcado, menos lo que ocupe una división.";
    BoxTable => "Volumes of standard metal boxes by their trade size." | "Volúmenes de las cajas metálicas estándar según su medida comercial.";
    BoxMarked => "Any other box, plastic ones among them, is marked by its maker with its volume, and that mark counts."
        | "Cualquier otra caja, también las de plástico, trae marcado su volumen de fábrica, y esa marca vale.";
    Allowances => "The space that each conductor takes in a box: 2.00 in³ for 14 AWG, 2.25 for 12, 2.50 for 10."
        | "El espacio que ocupa cada conductor en la caja: 2.00 in³ para 14 AWG, 2.25 para 12, 2.50 para 10.";
    BoxFill => "Everything that counts in the box together may not take more than its volume."
        | "Todo lo que cuenta en la caja junto no puede ocupar más que su volumen.";
    BoxConductors => "Each conductor that comes from outside and ends or is spliced here counts once. One that passes through counts once, or twice where it is looped. What starts and ends in the box is not counted."
        | "Cada conductor que viene de fuera y termina o se empalma aquí cuenta una vez. El que pasa de largo cuenta una vez, o dos si va en rizo. Lo que empieza y termina en la caja no cuenta.";
    BoxClamps => "Clamps inside the box count once in all, at the largest conductor in it. Connectors that stay outside do not count."
        | "Los prensacables dentro de la caja cuentan una sola vez, al conductor más grande. Los conectores que quedan afuera no cuentan.";
    BoxSupports => "A stud or a hickey counts once for each kind, at the largest conductor in the box."
        | "Un espárrago o hickey cuenta una vez por cada tipo, al conductor más grande de la caja.";
    BoxDevices => "Each device on its yoke counts twice, at the largest conductor connected to it; one that is two gangs wide, four times."
        | "Cada dispositivo en su yugo cuenta dos veces, al conductor más grande que se le conecta; si ocupa dos gangs, cuatro veces.";
    BoxGrounds => "Up to four grounds count once, at the largest of them. Since 2020 each one beyond four adds a quarter; before, all of them counted once."
        | "Hasta cuatro tierras cuentan una vez, a la más grande. Desde 2020 cada una después de la cuarta suma un cuarto; antes todas contaban una vez.";
    BoxTerminalBlocks => "A terminal block counts once, at the largest conductor on it; new in 2023."
        | "Un bloque de terminales cuenta una vez, al conductor más grande conectado; nuevo en 2023.";
    Resistance => "Resistance of bare conductors at 75 °C, with the rule for other temperatures."
        | "Resistencia de conductores desnudos a 75 °C, con la regla para otras temperaturas.";
    Impedance => "Resistance and reactance of cables by the conduit they run in, for alternating current."
        | "Resistencia y reactancia de cables según el tubo en que van, para corriente alterna.";
    BranchDrop => "A note, not a rule: with no more than 3 % lost at the farthest outlet, equipment runs reasonably well."
        | "Una nota, no una regla: con no más de 3 % perdido en la salida más lejana, los equipos trabajan razonablemente bien.";
    FeederDrop => "A note, not a rule: a feeder alone should lose no more than 3 %."
        | "Una nota, no una regla: un alimentador solo no debería perder más de 3 %.";
    TotalDrop => "A note, not a rule: feeder and branch circuit together should lose no more than 5 %."
        | "Una nota, no una regla: alimentador y circuito derivado juntos no deberían perder más de 5 %.";
    CircuitRating => "A circuit is rated by its breaker: 15, 20, 30, 40 or 50 A where it feeds several outlets, and since 2023 also 10 A."
        | "Un circuito vale lo que su breaker: 15, 20, 30, 40 o 50 A si alimenta varias salidas, y desde 2023 también 10 A.";
    BranchConductors => "Before any derating, the wire carries at least 125 % of what runs three hours or more, and all of the rest; after derating, the whole load."
        | "Antes de reducir, el alambre lleva al menos 125 % de lo que trabaja tres horas o más, y todo lo demás; ya reducido, la carga completa.";
    BranchDevice => "The breaker is at least 125 % of what runs three hours or more, and all of the rest."
        | "El breaker es de al menos 125 % de lo que trabaja tres horas o más, y todo lo demás.";
    PermissibleLoad => "The load on a circuit never exceeds its rating." | "La carga de un circuito nunca pasa de su capacidad.";
    PlugLoad => "One appliance on a cord and plug may take no more than 80 % of a circuit that has other outlets."
        | "Un solo aparato con clavija no puede tomar más del 80 % de un circuito que tiene otras salidas.";
    FixedLoad => "Equipment fastened in place may take no more than half of a circuit that also feeds lights or plugs."
        | "Los equipos fijos no pueden tomar más de la mitad de un circuito que también alimenta luces o enchufes.";
    TenAmp => "A 10 A circuit feeds lighting and little else, and no receptacles."
        | "Un circuito de 10 A alimenta alumbrado y poco más, y ningún tomacorriente.";
    ThirtyAmp => "A 30 A circuit of several outlets feeds equipment, but no lights of a house; what is on a cord takes no more than 80 % of it."
        | "Un circuito de 30 A con varias salidas alimenta equipos, pero no luces de casa; lo que va con clavija toma a lo más el 80 %.";
    FiftyAmp => "In a house, a 40 or 50 A circuit of several outlets feeds cooking equipment that is fastened in place, and nothing else."
        | "En una casa, un circuito de 40 o 50 A con varias salidas alimenta equipo de cocinar fijo, y nada más.";
    AboveFifty => "A circuit of more than 50 A feeds no lights." | "Un circuito de más de 50 A no alimenta luces.";
    Lampholders => "On more than 20 A, lampholders are of the heavy-duty kind, which house lights are not."
        | "Con más de 20 A, los portalámparas son de servicio pesado, y los de casa no lo son.";
    SingleReceptacle => "A single receptacle alone on its circuit is rated at least as much as the circuit. A duplex is two receptacles."
        | "Un solo tomacorriente en su circuito es al menos del valor del circuito. Un dúplex son dos.";
    ReceptacleRatings => "On a circuit of several receptacles their rating goes with it: 15 A on 15; 15 or 20 on 20; 30 on 30; 40 or 50 on 40; 50 on 50."
        | "En un circuito de varios tomacorrientes, su valor va con el circuito: 15 A en 15; 15 o 20 en 20; 30 en 30; 40 o 50 en 40; 50 en 50.";
    ReceptacleLoad => "On a circuit of several receptacles one of them feeds no more than 80 % of its rating."
        | "En un circuito de varios tomacorrientes, uno solo no alimenta más del 80 % de su capacidad.";
    LightingCircuits => "The lighting load of a house, by its floor area, says how many circuits it needs at least."
        | "La carga de alumbrado de una casa, según su área, dice cuántos circuitos necesita por lo menos.";
    WaterHeater => "A storage water heater of 120 gal or less counts as a continuous load."
        | "Un calentador de agua con tanque de 120 gal o menos cuenta como carga continua.";
    SmallApplianceDevice => "A single appliance without a motor, of 13.3 A or less, has a breaker of 20 A at most, unless its plate marks another."
        | "Un solo aparato sin motor, de 13.3 A o menos, lleva breaker de 20 A a lo más, salvo que su placa marque otro.";
    ApplianceDevice => "A single appliance without a motor, above 13.3 A, has a breaker of no more than 150 % of what it takes, or the next standard one, unless its plate marks another."
        | "Un solo aparato sin motor, de más de 13.3 A, lleva breaker de no más del 150 % de lo que toma, o el siguiente estándar, salvo que su placa marque otro.";
    SpaceHeating => "Fixed electric heating counts as a continuous load." | "La calefacción eléctrica fija cuenta como carga continua.";
    SingleMotor => "The wire of a motor, where it lies, carries 125 % of the motor's amps in the tables."
        | "El alambre de un motor, donde está, lleva 125 % de los amperes del motor según las tablas.";
    MotorConductors => "Wires that feed motors with other loads carry 125 % of the largest motor and all of the rest."
        | "Los alambres que alimentan motores con otras cargas llevan 125 % del motor más grande y todo lo demás.";
    RequiredCircuits => "A house needs circuits of its own for kitchen plugs, laundry and bathrooms."
        | "Una casa necesita circuitos propios para los enchufes de cocina, la lavandería y los baños.";
    ArcFault => "Most rooms of a house want arc-fault protection for their outlets, and for wiring that is extended by more than 6 ft or gets new outlets: at the breaker or at the first receptacle."
        | "La mayoría de los cuartos de una casa piden protección contra arco en sus salidas, y en cableado que se alarga más de 6 pies o recibe salidas nuevas: en el breaker o en el primer tomacorriente.";
    GroundFault => "Bathrooms, kitchens, laundries, basements, garages, outdoors and places near sinks and tubs want ground-fault protection."
        | "Baños, cocinas, lavanderías, sótanos, cocheras, exteriores y lugares cerca de fregaderos y tinas piden protección contra falla a tierra.";
    Replacement => "A receptacle that replaces another gets the ground-fault, arc-fault and tamper protection that its place asks for now, and a label where there is no ground."
        | "Un tomacorriente que sustituye a otro lleva la protección contra falla a tierra, arco y manipulación que su lugar pide hoy, y etiqueta si no hay tierra.";
    HandleTie => "A listed tie joins the handles of single-pole breakers that are neighbors."
        | "Un amarre listado une las manijas de breakers sencillos que son vecinos.";
    OneNeutral => "A neutral serves one circuit, or one multiwire circuit, and no more."
        | "Un neutro sirve a un circuito, o a un circuito multifilar, y a ninguno más.";
    MultiwireDefinition => "A multiwire circuit has two hots with a voltage between them and one neutral with the same voltage to each."
        | "Un circuito multifilar tiene dos vivos con voltaje entre sí y un neutro con el mismo voltaje a cada uno.";
    MultiwireOrigin => "All conductors of a multiwire circuit start in the same panel." | "Todos los conductores de un circuito multifilar salen del mismo panel.";
    MultiwireDisconnect => "One handle, or a tie, turns off every hot of a multiwire circuit together."
        | "Una sola manija, o un amarre, apaga juntos todos los vivos de un circuito multifilar.";
    MultiwireLoads => "A multiwire circuit feeds loads from hot to neutral only, with exceptions."
        | "Un circuito multifilar alimenta cargas solo de vivo a neutro, con excepciones.";
    NeutralContinuity => "Taking out a receptacle must not open the neutral of a multiwire circuit: it is joined with a pigtail."
        | "Quitar un tomacorriente no debe abrir el neutro de un circuito multifilar: se empalma con colita.";
    RunTogether => "All conductors of a circuit, its ground too, run in the same cable or raceway."
        | "Todos los conductores de un circuito, también su tierra, van en el mismo cable o tubo.";
    FreeConductor => "At each box at least 6 in of free conductor is left from where it comes out of the sheath, and at small openings it reaches 3 in out of the box."
        | "En cada caja se dejan al menos 6 pulg libres desde donde sale del forro, y en aberturas chicas que salgan 3 pulg de la caja.";
    Framing => "A bored hole or a cable nearer than 1-1/4 in to the edge of the framing wants a steel plate at least 1/16 in thick."
        | "Un hoyo o cable a menos de 1-1/4 pulg de la orilla del montante pide una placa de acero de al menos 1/16 pulg.";
    Staples => "NM cable is stapled within 12 in of each box and no more than 4-1/2 ft apart. Holes across the framing hold it between, but not at the boxes; fished cable needs none."
        | "El cable NM lleva grapa a 12 pulg o menos de cada caja y cada 4-1/2 pies o menos. Los hoyos a lo largo lo sujetan en medio, pero no junto a las cajas; el cable pescado no necesita.";
    Attic => "In an attic that can be entered, cable across the joists is guarded: near the way in, or everywhere where there are stairs."
        | "En un ático al que se puede entrar, el cable que cruza las viguetas va protegido: cerca de la entrada, o en todo si hay escalera.";
    SwitchNeutral => "Most switches for lights need a neutral in their box, even if nothing is connected to it yet."
        | "La mayoría de los apagadores de luz necesitan un neutro en su caja, aunque todavía no se conecte nada.";
    SwitchHot => "Switches open the hot, never the neutral." | "Los apagadores abren el vivo, nunca el neutro.";
    Directory => "Each breaker has a clear, specific label of what it feeds." | "Cada breaker lleva una etiqueta clara y específica de lo que alimenta.";
    PanelProtection => "A panel is protected at no more than its own rating." | "Un panel se protege a no más de su propia capacidad.";
    PanelCount => "A panel takes no more breakers than it is made for." | "Un panel no lleva más breakers que aquellos para los que se hizo.";
    NeutralBond => "Past the service, neutral and ground stay apart." | "Después de la acometida, neutro y tierra van separados.";
    ServiceBond => "At the service, neutral and ground are joined." | "En la acometida, neutro y tierra van unidos.";
    BuildingDisconnect => "A building fed from another has its own disconnect." | "Un edificio alimentado desde otro tiene su propio interruptor general.";
    Splices => "Wires are joined with a device listed for it, made fast, and covered as well as the wires themselves."
        | "Los alambres se unen con un dispositivo aprobado para eso, bien apretado y cubierto como los alambres mismos.";
    TerminalsFast => "A wire on a terminal is made fast without hurting it, one wire to a screw unless it is made for more."
        | "Un alambre en un tornillo va bien apretado sin dañarlo, uno por tornillo salvo que esté hecho para más.";
    Polarity => "No neutral goes where it would change places with a hot."
        | "Ningún neutro va donde cambiaría de lugar con un vivo.";
    GroundJoints => "Grounds are joined in the box, so that taking a device out opens none of them."
        | "Las tierras se unen en la caja, para que al quitar un dispositivo no se abra ninguna.";
    NeutralNotSwitched => "A switch opens the hot, never the neutral alone."
        | "Un apagador abre el vivo, nunca el neutro solo.";
}

/// The sections that steps rest on, each with what it says, in the order of the steps; `more` are further rules.
pub fn sections(steps: &[Step], more: &[Rule], edition: CodeEdition) -> Vec<(String, String)> {
    let cited = steps.iter().filter_map(|step| match step.source {
        Source::Published(citation) => Some(citation),
        _ => None,
    });
    let more = more.iter().map(|rule| rule.citation(edition));
    // The edition stands with the answer already.
    let code = match edition {
        CodeEdition::E2017 => "NFPA 70-2017 ",
        CodeEdition::E2020 => "NFPA 70-2020 ",
        CodeEdition::E2023 => "NFPA 70-2023 ",
    };
    let mut rows: Vec<(String, String)> = Vec::new();
    for citation in cited.chain(more) {
        let section = citation.trim_start_matches(code);
        if rows.iter().any(|(known, _)| known == section) {
            continue;
        }
        let mut says = String::new();
        for known in Rule::ALL
            .iter()
            .filter(|known| known.citation(edition) == citation)
        {
            if !says.is_empty() {
                says.push(' ');
            }
            says.push_str(rule(*known));
        }
        if !says.is_empty() {
            rows.push((section.to_owned(), says));
        }
    }
    rows
}

/// The first rule of each section that is named as calc names it in an answer.
pub fn named(sections: impl Iterator<Item = &'static str>, edition: CodeEdition) -> Vec<Rule> {
    sections
        .filter_map(|section| {
            // A paragraph of a rule, such as 240.4(D)(4), is explained by the rule.
            let within = |rule: &&Rule| {
                let rest = section.strip_prefix(rule.section(edition));
                rest.is_some_and(|rest| rest.starts_with('('))
            };
            let same = Rule::ALL.iter().find(|r| r.section(edition) == section);
            same.or_else(|| {
                Rule::ALL
                    .iter()
                    .filter(within)
                    .max_by_key(|r| r.section(edition).len())
            })
            .copied()
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_section_a_step_cites_is_explained_once() {
        for edition in [CodeEdition::E2017, CodeEdition::E2020, CodeEdition::E2023] {
            let all = sections(&[], Rule::ALL, edition);
            for rule in Rule::ALL {
                let section = rule.section(edition);
                assert_eq!(all.iter().filter(|(known, _)| known == section).count(), 1);
            }
            // NFPA 70-2023 310.15(C)(1) holds both the length of a bundle and how travellers count.
            assert!(all.iter().all(|(_, says)| says.ends_with('.')));
        }
    }
}
