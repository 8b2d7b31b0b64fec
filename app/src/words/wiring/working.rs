//! The steps behind the answers of the wiring: formulas and figures.

use calc::working::{Figure, Unit};

named! {
    /// A formula of the wiring by its name.
    formula {
        "listed_volume" => "Volume of the box = volume in the table × gangs"
            | "Volumen de la caja = volumen de la tabla × gangs";
        "marked_volume" => "Volume of the box = the volume marked on it"
            | "Volumen de la caja = el volumen marcado en ella";
        "measured_volume" => "Volume of the box = inside width × height × depth"
            | "Volumen de la caja = ancho × alto × fondo por dentro";
        "total_volume" => "Volume = box + rings − barriers" | "Volumen = caja + anillos − divisiones";
        "fill_line" => "Space = allowances × space for one conductor of that size"
            | "Espacio = conductores que cuentan × espacio de un conductor de ese calibre";
        "box_fill" => "Space needed = the sum of the lines" | "Espacio que se necesita = la suma de los renglones";
        "box_room" => "Room left = volume − space needed" | "Espacio libre = volumen − espacio que se necesita";
        "table_ampacity" => "Table value for the size, in the column of the insulation's own rating"
            | "Valor de la tabla para el calibre, en la columna del propio aislante";
        "ambient_factor" => "Factor for the air around the cable, from the table"
            | "Factor por el aire alrededor del cable, de la tabla";
        "count_factor" => "Factor for current-carrying conductors together, from the table"
            | "Factor por conductores con corriente juntos, de la tabla";
        "corrected_ampacity" => "Corrected = table value × factor for the air × factor for the count"
            | "Corregido = valor de la tabla × factor del aire × factor de la cantidad";
        "terminal_limit" => "No more than the table value in the column of the terminals"
            | "No más que el valor de la tabla en la columna de las terminales";
        "cable_limit" => "NM cable: no more than the 60 °C column" | "Cable NM: no más que la columna de 60 °C";
        "ampacity" => "Ampacity = the least of these" | "Ampacidad = el menor de estos";
        "breaker_at_most" => "Breaker = the standard rating at or below the ampacity"
            | "Breaker = el valor estándar igual o menor que la ampacidad";
        "breaker_next" => "Breaker = the standard rating at or next above the ampacity"
            | "Breaker = el valor estándar igual o el siguiente mayor que la ampacidad";
        "breaker_cap" => "Small conductors: no breaker larger than the cap"
            | "Conductores chicos: ningún breaker mayor que el tope";
        "min_rating" => "Least rating = 125 % of the continuous load + the rest of the load"
            | "Valor mínimo = 125 % de la carga continua + el resto de la carga";
        "breaker_for_load" => "Breaker = the smallest standard rating for that, or the one that is there"
            | "Breaker = el menor valor estándar para eso, o el que ya está";
        "table_resistance" => "Resistance of the conductor, from the table" | "Resistencia del conductor, de la tabla";
        "resistance_at_temperature" => "Resistance there = table resistance × (1 + change per degree × (temperature − 75))"
            | "Resistencia ahí = resistencia de la tabla × (1 + cambio por grado × (temperatura − 75))";
        "printed_impedance" => "Impedance as the table prints it for a power factor of 0.85"
            | "Impedancia como la da la tabla para un factor de potencia de 0.85";
        "effective_impedance" => "Impedance = resistance × power factor + reactance × sin(arccos power factor)"
            | "Impedancia = resistencia × factor de potencia + reactancia × sen(arccos factor de potencia)";
        "drop_two_wire" => "Drop of the stretch = 2 × current × length × impedance ÷ 1000 ÷ conductors in parallel"
            | "Caída del tramo = 2 × corriente × largo × impedancia ÷ 1000 ÷ conductores en paralelo";
        "drop_three_phase" => "Drop of the stretch = √3 × current × length × impedance ÷ 1000 ÷ conductors in parallel"
            | "Caída del tramo = √3 × corriente × largo × impedancia ÷ 1000 ÷ conductores en paralelo";
        "drop_multiwire" => "Drop of the stretch on the worse leg = (2 × its current − current of the other leg) × length × impedance ÷ 1000 ÷ conductors in parallel"
            | "Caída del tramo en la línea peor = (2 × su corriente − corriente de la otra línea) × largo × impedancia ÷ 1000 ÷ conductores en paralelo";
        "multiwire_current" => "Current that counts = 2 × the leg with more − the other leg: its hot and what is left in the neutral"
            | "Corriente que cuenta = 2 × la línea con más − la otra línea: su vivo y lo que queda en el neutro";
        "drop_single" => "Drop = factor × current × length × impedance ÷ 1000"
            | "Caída = factor × corriente × largo × impedancia ÷ 1000";
        "drop_percent" => "Percent = largest drop ÷ nominal voltage" | "Por ciento = mayor caída ÷ voltaje nominal";
        "drop_total" => "In all = percent here + percent lost in the feeder"
            | "En total = por ciento aquí + por ciento perdido en el alimentador";
        "longest_run" => "Length = drop allowed × 1000 ÷ (factor × current × impedance)"
            | "Largo = caída permitida × 1000 ÷ (factor × corriente × impedancia)";
        "max_resistance" => "Most impedance = drop allowed × 1000 ÷ (factor × current × length)"
            | "Impedancia máxima = caída permitida × 1000 ÷ (factor × corriente × largo)";
        "source_resistance" => "Source resistance = fall at the panel ÷ current"
            | "Resistencia de la fuente = bajada en el panel ÷ corriente";
        "run_resistance" => "Resistance of the run = fall at the load beyond the panel's ÷ current"
            | "Resistencia del tramo = bajada en la carga además de la del panel ÷ corriente";
        "expected_resistance" => "Expected = 2 × length × impedance ÷ 1000" | "Esperada = 2 × largo × impedancia ÷ 1000";
        "excess_resistance" => "Too much = resistance of the run − expected" | "De más = resistencia del tramo − esperada";
        "piece_length" => "Piece = path × (1 + allowance) + what is kept at both ends"
            | "Pieza = recorrido × (1 + margen) + lo que se deja en las dos puntas";
        "piece_staples" => "Staples: near each box, then no further apart than the spacing"
            | "Grapas: cerca de cada caja, y luego a no más de la separación";
        "cable_to_buy" => "Cable = the sum of the pieces" | "Cable = la suma de las piezas";
        "neutral_current" => "Current in the neutral = what returns from leg A − what returns from leg B"
            | "Corriente en el neutro = lo que regresa de la línea A − lo que regresa de la línea B";
        "neutral_most" => "Most in the neutral = the larger of the two legs alone"
            | "Máximo en el neutro = la mayor de las dos líneas sola";
        "neutral_electronic" => "With electronic loads at most: the smaller of difference of the others + √(electronic A² + electronic B²), and √(A² + B² − 2 × others A × others B); never below the larger leg"
            | "Con cargas electrónicas a lo más: lo menor entre diferencia de las demás + √(electrónicas A² + electrónicas B²), y √(A² + B² − 2 × demás A × demás B); nunca menos que la línea mayor";
        "total_load" => "Load = the sum of what is on" | "Carga = la suma de lo que está encendido";
        "counts_as_continuous" => "Counts as continuous by what it is" | "Cuenta como continua por lo que es";
        "share_of_breaker" => "Share = load ÷ breaker" | "Parte = carga ÷ breaker";
        "lighting_load" => "Lighting load = floor area × load for each square foot"
            | "Carga de alumbrado = área del piso × carga por pie cuadrado";
        "lighting_circuits" => "Circuits = load ÷ rating, rounded up" | "Circuitos = carga ÷ capacidad, hacia arriba";
        "legs_sum" => "Difference = leg A + leg B − leg to leg" | "Diferencia = línea A + línea B − entre líneas";
        "legs_apart" => "Apart = the difference of the two legs" | "Separación = la diferencia entre las dos líneas";
        "legs_swing" => "Swing = the smaller of one leg's rise and the other's fall"
            | "Vaivén = lo menor entre lo que sube una línea y lo que baja la otra";
        "voltage_range" => "Between the least and the most of the range" | "Entre el mínimo y el máximo del rango";
    }
}

named! {
    /// A figure of the wiring by its name.
    figure_name {
        "across" => "leg to leg" | "entre líneas";
        "allowances" => "allowances" | "conductores que cuentan";
        "alpha" => "change per degree" | "cambio por grado";
        "ambient" => "air" | "aire";
        "ambient_factor" => "factor for the air" | "factor del aire";
        "ampacity" => "ampacity" | "ampacidad";
        "apart" => "apart" | "separación";
        "barriers" => "barriers" | "divisiones";
        "box" => "box" | "caja";
        "box_volume" => "volume of the box" | "volumen de la caja";
        "breaker" => "breaker" | "breaker";
        "cable" => "cable" | "cable";
        "cable_limit" => "limit of the cable" | "límite del cable";
        "cap" => "cap" | "tope";
        "carrying" => "conductors that count" | "conductores que cuentan";
        "change_a" => "change of leg A" | "cambio de la línea A";
        "change_b" => "change of leg B" | "cambio de la línea B";
        "circuits" => "circuits" | "circuitos";
        "clamps" => "clamps" | "prensacables";
        "column" => "column" | "columna";
        "conductor" => "conductor at" | "conductor a";
        "conductors" => "conductors" | "conductores";
        "continuous" => "continuous load" | "carga continua";
        "continuous_factor" => "factor for continuous" | "factor de carga continua";
        "corrected" => "corrected" | "corregido";
        "counted_current" => "current that counts" | "corriente que cuenta";
        "count" => "things" | "cosas";
        "count_factor" => "factor for the count" | "factor de la cantidad";
        "current" => "current" | "corriente";
        "depth" => "depth" | "fondo";
        "device" => "device" | "dispositivo";
        "drop" => "drop" | "caída";
        "electronic_a" => "electronic on leg A" | "electrónicas en la línea A";
        "electronic_b" => "electronic on leg B" | "electrónicas en la línea B";
        "electronic_most" => "most in the neutral" | "máximo en el neutro";
        "excess" => "too much" | "de más";
        "expected" => "expected" | "esperada";
        "factor" => "factor" | "factor";
        "fall" => "fall" | "bajada";
        "feeder" => "lost in the feeder" | "perdido en el alimentador";
        "fixture_wires" => "fixture wires" | "alambres de lámpara";
        "gangs" => "gangs" | "gangs";
        "grounds" => "grounds" | "tierras";
        "impedance" => "impedance" | "impedancia";
        "insulation" => "insulation" | "aislante";
        "isolated_grounds" => "isolated grounds" | "tierras aisladas";
        "kept_at_ends" => "kept at the ends" | "se deja en las puntas";
        "largest_breaker" => "largest breaker" | "breaker más grande";
        "least" => "least" | "mínimo";
        "leg_a" => "leg A" | "línea A";
        "leg_b" => "leg B" | "línea B";
        "load" => "load" | "carga";
        "looped" => "looped" | "en rizo";
        "lost" => "lost" | "se pierde";
        "max_resistance" => "most impedance" | "impedancia máxima";
        "min_rating" => "least rating" | "valor mínimo";
        "most" => "most" | "máximo";
        "neutral" => "neutral" | "neutro";
        "nominal" => "nominal voltage" | "voltaje nominal";
        "other" => "other load" | "otra carga";
        "other_leg" => "other leg" | "otra línea";
        "parallel" => "in parallel" | "en paralelo";
        "passing" => "passing through" | "de paso";
        "path" => "path" | "recorrido";
        "percent" => "percent" | "por ciento";
        "piece" => "piece" | "pieza";
        "pigtails" => "pigtails" | "colitas";
        "power_factor" => "power factor" | "factor de potencia";
        "rating" => "rating" | "capacidad";
        "reactance" => "reactance" | "reactancia";
        "required" => "space needed" | "espacio que se necesita";
        "resistance" => "resistance" | "resistencia";
        "resistance_there" => "resistance there" | "resistencia ahí";
        "resistive_a" => "others on leg A" | "otras en la línea A";
        "resistive_b" => "others on leg B" | "otras en la línea B";
        "rings" => "rings" | "anillos";
        "room" => "room left" | "espacio libre";
        "share" => "share" | "parte";
        "source" => "source" | "fuente";
        "spacing" => "spacing" | "separación";
        "staples" => "staples" | "grapas";
        "sum_less_across" => "difference" | "diferencia";
        "supports" => "studs and hickeys" | "espárragos y hickeys";
        "swing" => "swing" | "vaivén";
        "table" => "table value" | "valor de la tabla";
        "terminal_block" => "terminal block" | "bloque de terminales";
        "terminal_limit" => "limit of the terminals" | "límite de las terminales";
        "terminals" => "terminals" | "terminales";
        "va_per_ft2" => "for each square foot" | "por pie cuadrado";
        "volts" => "measured" | "medido";
    }
}

words! {
    space_of_one => "space for one" | "espacio de uno";
    run_of_cable => "the run" | "el tramo";
    in_all => "in all" | "en total";
}

/// Names that other areas of the app use for something else; told apart by their unit.
pub fn by_unit(figure: &Figure) -> Option<&'static str> {
    match (figure.name, figure.unit) {
        ("allowance", Unit::In3) => Some(space_of_one()),
        ("run", Unit::Ohms) => Some(run_of_cable()),
        ("total", Unit::Amps | Unit::Percent) => Some(in_all()),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use calc::job::CodeEdition;
    use calc::wiring::ampacity::{Conditions, Feeds, Terminals, ampacity};
    use calc::wiring::box_fill::{Contents, EnteringCable, FillItem, Vessel, Yoke, box_fill};
    use calc::wiring::conductor::{Conductor, Covering, Metal, Size};
    use calc::wiring::impedance::Wire;
    use calc::wiring::tables::{Ambient, BoxFamily};
    use calc::wiring::voltage_drop::{Run, Stretch, System, voltage_drop};
    use calc::working::Step;

    use super::*;

    /// Every step and figure that answers really have, those too whose names are chosen while they are worked out.
    #[test]
    fn every_step_of_an_answer_has_words() {
        let edition = CodeEdition::E2023;
        let mut steps: Vec<Step> = Vec::new();
        let contents = Contents {
            cables: vec![EnteringCable {
                size: Size::Awg12,
                insulated: 2,
                ground: Some(Size::Awg12),
            }],
            internal_clamps: true,
            yokes: vec![Yoke {
                size: Size::Awg12,
                gangs: 1,
            }],
            pigtails: 1,
            ..Contents::default()
        };
        let vessel = Vessel::listed(BoxFamily::Square, "4 x 2-1/8");
        steps.extend(box_fill(&vessel, &contents, edition).unwrap().steps);
        for feeds in [Feeds::SeveralReceptacles, Feeds::Other] {
            let conductor = Conductor {
                size: Size::Awg12,
                metal: Metal::Copper,
                covering: Covering::NmB,
            };
            let conditions = Conditions {
                edition,
                ambient: Ambient::Fahrenheit(130.0),
                carrying: 6,
                terminals: Terminals::C60,
                feeds,
            };
            steps.extend(ampacity(conductor, conditions).unwrap().steps);
        }
        for system in [
            System::TwoWire { volts: 240.0 },
            System::Multiwire { leg_volts: 120.0 },
            System::ThreePhase { volts: 208.0 },
        ] {
            let run = Run {
                edition,
                system,
                source_volts: None,
                source_ohm: 0.0,
                size: Size::Awg12,
                wire: Wire {
                    conductor_c: 40.0,
                    ..Wire::COPPER
                },
                parallel: 1,
                stretches: vec![Stretch {
                    length_ft: 10.0,
                    loads: Vec::new(),
                }],
                feeder_percent: 1.0,
            };
            steps.extend(voltage_drop(&run).unwrap().steps);
        }
        for step in &steps {
            assert!(formula(step.formula).is_some(), "{}", step.formula);
            for figure in step.inputs.iter().chain([&step.result]) {
                let line = crate::words::working::figure_line(figure, calc::job::Units::FeetInches);
                assert!(!line.contains('_') && !line.is_empty(), "{line}");
                let named = by_unit(figure)
                    .or_else(|| figure_name(figure.name))
                    .or_else(|| crate::words::working::figure_name(figure.name));
                assert!(named.is_some(), "{}", figure.name);
            }
        }
        for formula_used in ["breaker_next", "breaker_at_most", "drop_three_phase"] {
            assert!(steps.iter().any(|step| step.formula == formula_used));
        }
        for item in [
            FillItem::Passing,
            FillItem::Looped,
            FillItem::FixtureWires,
            FillItem::Supports,
            FillItem::IsolatedGrounds,
            FillItem::TerminalBlock,
        ] {
            assert!(figure_name(item.name()).is_some(), "{}", item.name());
        }
    }

    #[test]
    fn a_name_that_others_use_is_told_apart_by_its_unit() {
        let figure = |name, unit| Figure {
            name,
            value: 1.0,
            unit,
        };
        assert_eq!(by_unit(&figure("total", Unit::Amps)), Some("in all"));
        assert_eq!(by_unit(&figure("total", Unit::Minutes)), None);
        assert_eq!(by_unit(&figure("run", Unit::In)), None);
    }
}
