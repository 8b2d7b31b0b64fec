//! The steps behind an answer: each formula, each figure that goes in, each source.

use calc::job::Units;
use calc::quantity::{Area, AreaUnit, Length, Slope, SlopeUnit, Volume, VolumeUnit, fixed};
use calc::working::{Figure, Source, Unit};

use super::{closing, common, wiring};

named! {
    /// A formula by its name.
    formula {
        "stack_of_layers" => "Layers together = the sum of their thicknesses"
            | "Capas juntas = la suma de sus espesores";
        "finished_floor_here" => "Finished floor of this room = old floor + pour + layers"
            | "Piso terminado de este cuarto = piso viejo + colado + capas";
        "finished_floor_beyond" => "Finished floor beyond = subfloor beyond + its layers"
            | "Piso terminado del otro lado = subpiso del otro lado + sus capas";
        "step_at_jamb" => "Step = finished floor of this room − finished floor beyond"
            | "Escalón = piso terminado de este cuarto − piso terminado del otro lado";
        "run_from_rise_and_slope" => "Run = rise ÷ slope" | "Distancia = subida ÷ pendiente";
        "rise_from_run_and_slope" => "Rise = run × slope" | "Subida = distancia × pendiente";
        "slope_from_rise_and_run" => "Slope = rise ÷ run" | "Pendiente = subida ÷ distancia";
        "angle_from_slope" => "Angle = the angle whose tangent is the slope"
            | "Ángulo = el ángulo cuya tangente es la pendiente";
        "longer_run_governs" => "The ramp is built as long as the longer of the two runs"
            | "La rampa se hace tan larga como la mayor de las dos distancias";
        "wedge_of_one_length" => "Wedge = width × length × (left rise + right rise) ÷ 4"
            | "Cuña = ancho × largo × (subida izquierda + subida derecha) ÷ 4";
        "area_of_rectangle" => "Area = width × length" | "Área = ancho × largo";
        "volume" => "Volume = area × mean depth" | "Volumen = área × espesor medio";
        "cubic_feet" => "Cubic feet = cubic inches ÷ 1728" | "Pies cúbicos = pulgadas cúbicas ÷ 1728";
        "with_allowance" => "Volume to buy = volume × (1 + allowance)" | "Volumen por comprar = volumen × (1 + margen)";
        "bags" => "Bags = volume to buy ÷ yield of a bag, rounded up"
            | "Sacos = volumen por comprar ÷ rendimiento de un saco, hacia arriba";
        "water" => "Water = bags × water for a bag" | "Agua = sacos × agua por saco";
        "batches" => "Batches = bags ÷ bags in a batch, rounded up" | "Mezclas = sacos ÷ sacos por mezcla, hacia arriba";
        "mixers" => "Mixers = minutes for a batch ÷ pot life, rounded up"
            | "Mezcladores = minutos por mezcla ÷ tiempo útil, hacia arriba";
        "total_minutes" => "Time = first batch + further batches × minutes between them"
            | "Tiempo = primera mezcla + las demás × minutos entre mezclas";
        "level_surface" => "Level surface = highest spot + cover" | "Superficie a nivel = punto más alto + recubrimiento";
        "level_surface_met" => "Level surface = the height that it is to meet; highest spot + cover is less" | "Superficie a nivel = la altura que debe alcanzar; punto más alto + recubrimiento es menos";
        "flat_surface_over_middle" => "Height over the middle = height at the first corner + rise right × distance right + rise away × distance away"
            | "Altura sobre el centro = altura en la primera esquina + subida a la derecha × distancia + subida hacia el fondo × distancia";
        "mean_depth" => "Mean depth = height of the pour over the middle − mean height of the old floor"
            | "Espesor medio = altura del colado sobre el centro − altura media del piso viejo";
        "tilt" => "Tilt = 48 in × √(rise right² + rise away²)" | "Inclinación = 48 pulg × √(subida a la derecha² + subida hacia el fondo²)";
        "lifts" => "Lifts = greatest depth ÷ deepest single lift, rounded up"
            | "Capas de colado = mayor espesor ÷ mayor espesor por capa, hacia arriba";
        "lift_volume" => "Volume of a lift = volume up to its top − volume of the lifts below it"
            | "Volumen de una capa = volumen hasta su cara superior − volumen de las capas de abajo";
        "straightedge_gap" => "Gap = height of the straightedge over the place − height of the floor there"
            | "Hueco = altura de la regla sobre el lugar − altura del piso ahí";
        "margin_to_limit" => "Margin = limit − gap" | "Margen = límite − hueco";
        "patch_mean_depth" => "Mean depth of a patch = volume ÷ area" | "Espesor medio de un parche = volumen ÷ área";
        "flatness_number" => "F_F = constant ÷ (3 × deviation of the curvatures + their mean)"
            | "F_F = constante ÷ (3 × desviación de las curvaturas + su media)";
        "levelness_number" => "F_L = constant ÷ (3 × deviation of the differences + their mean)"
            | "F_L = constante ÷ (3 × desviación de las diferencias + su media)";
        "patch_volume" => "Volume = the sum of the patches" | "Volumen = la suma de los parches";
    }
}

named! {
    /// A figure by its name.
    figure_name {
        "allowance" => "allowance" | "margen";
        "angle" => "angle" | "ángulo";
        "area" => "area" | "área";
        "bags" => "bags" | "sacos";
        "bags_per_batch" => "bags in a batch" | "sacos por mezcla";
        "batches" => "batches" | "mezclas";
        "below_finish" => "its top below the finish" | "su cara bajo el acabado";
        "constant" => "constant" | "constante";
        "contact1_height" => "first contact, height" | "primer apoyo, altura";
        "contact1_to_contact2" => "first contact to second" | "del primer apoyo al segundo";
        "contact1_to_gap" => "first contact to the place" | "del primer apoyo al lugar";
        "contact2_height" => "second contact, height" | "segundo apoyo, altura";
        "cover" => "cover" | "recubrimiento";
        "covered" => "floor covered" | "piso cubierto";
        "deviation" => "deviation" | "desviación";
        "ff" => "F_F" | "F_F";
        "fl" => "F_L" | "F_L";
        "floor_beyond" => "finished floor beyond" | "piso terminado del otro lado";
        "floor_height" => "height of the floor" | "altura del piso";
        "floor_here" => "finished floor of this room" | "piso terminado de este cuarto";
        "gap" => "gap" | "hueco";
        "greatest_depth" => "greatest depth" | "mayor espesor";
        "greatest_thickness" => "greatest thickness" | "mayor grosor";
        "height" => "height" | "altura";
        "height_at_origin" => "height at the first corner" | "altura en la primera esquina";
        "height_over_middle" => "height over the middle" | "altura sobre el centro";
        "highest" => "highest spot" | "punto más alto";
        "layer" => "layer" | "capa";
        "length" => "length" | "largo";
        "lift_limit" => "deepest single lift" | "mayor espesor por capa";
        "lifts" => "lifts" | "capas de colado";
        "limit" => "limit" | "límite";
        "margin" => "margin" | "margen";
        "mean" => "mean" | "media";
        "mean_depth" => "mean depth" | "espesor medio";
        "mean_floor_height" => "mean height of the old floor" | "altura media del piso viejo";
        "middle_x" => "middle, to the right" | "centro, a la derecha";
        "middle_y" => "middle, away" | "centro, hacia el fondo";
        "minutes_between" => "minutes between batches" | "minutos entre mezclas";
        "minutes_per_batch" => "minutes for a batch" | "minutos por mezcla";
        "mixers" => "mixers" | "mezcladores";
        "patch" => "patch" | "parche";
        "pot_life" => "pot life" | "tiempo útil";
        "pour" => "pour" | "colado";
        "rise" => "rise" | "subida";
        "rise_left" => "rise, left" | "subida, izquierda";
        "rise_right" => "rise, right" | "subida, derecha";
        "rise_x" => "rise to the right" | "subida a la derecha";
        "rise_y" => "rise away" | "subida hacia el fondo";
        "run" => "run" | "distancia";
        "run_left" => "run, left" | "distancia, izquierda";
        "run_right" => "run, right" | "distancia, derecha";
        "slope" => "slope" | "pendiente";
        "stack_beyond" => "layers beyond" | "capas del otro lado";
        "stack_here" => "layers of this room" | "capas de este cuarto";
        "steepest" => "slope as built" | "pendiente construida";
        "step_left" => "step, left jamb" | "escalón, jamba izquierda";
        "step_right" => "step, right jamb" | "escalón, jamba derecha";
        "straightedge" => "straightedge" | "regla";
        "subfloor_beyond" => "subfloor beyond" | "subpiso del otro lado";
        "subfloor_here" => "old floor of this room" | "piso viejo de este cuarto";
        "tilt" => "tilt" | "inclinación";
        "total" => "time" | "tiempo";
        "volume" => "volume" | "volumen";
        "water" => "water" | "agua";
        "water_per_bag" => "water for a bag" | "agua por saco";
        "wedge" => "wedge" | "cuña";
        "width" => "width" | "ancho";
        "with_allowance" => "volume to buy" | "volumen por comprar";
        "yield" => "yield of a bag" | "rendimiento de un saco";
    }
}

words! {
    gives => "gives" | "da";
    per_4_ft => "in per 4 ft" | "pulg en 4 pies";
    quarts => "qt" | "qt";
    degree_sign => "°" | "°";
}

/// A formula's words; its bare name where there are none.
pub fn formula_line(name: &str) -> String {
    formula(name)
        .or_else(|| wiring::working::formula(name))
        .or_else(|| closing::working::formula(name))
        .map_or_else(|| name.replace('_', " "), str::to_owned)
}

/// A figure as a step shows it: name, number, unit. Lengths are decimal, so that the step can be worked again.
pub fn figure_line(figure: &Figure, units: Units) -> String {
    let name = wiring::working::by_unit(figure)
        .or_else(|| figure_name(figure.name))
        .or_else(|| wiring::working::figure_name(figure.name))
        .or_else(|| closing::working::figure_name(figure.name))
        .map_or_else(|| figure.name.replace('_', " "), str::to_owned);
    format!("{name} {}", figure_value(figure, units))
}

/// A figure's number and unit, in the units in force.
pub fn figure_value(figure: &Figure, units: Units) -> String {
    let value = figure.value;
    let metric = units == Units::Metric;
    match figure.unit {
        Unit::In if metric => format!("{} mm", fixed(Length::from_inches(value).mm(), 2)),
        Unit::In => format!("{} {}", fixed(value, 4), common::unit_in()),
        // Tables go by feet: the step is worked again in them, and read in meters.
        Unit::Ft if metric => format!(
            "{} {} ({} m)",
            fixed(value, 3),
            common::unit_ft(),
            fixed(Length::from_feet(value).m(), 3)
        ),
        Unit::Ft => format!("{} {}", fixed(value, 3), common::unit_ft()),
        Unit::In2 if metric => Area::from_in2(value).format(AreaUnit::SquareMeters, 3),
        Unit::In2 => format!("{} in²", fixed(value, 2)),
        Unit::Ft2 if metric => Area::from_ft2(value).format(AreaUnit::SquareMeters, 3),
        Unit::Ft2 => format!("{} ft²", fixed(value, 3)),
        Unit::In3 if metric && value.abs() < 610.0 => {
            format!(
                "{} cm³",
                fixed(Volume::from_in3(value).liters() * 1000.0, 2)
            )
        }
        Unit::In3 if metric => Volume::from_in3(value).format(VolumeUnit::Liters, 3),
        Unit::In3 => format!("{} in³", fixed(value, 2)),
        Unit::Ft3 if metric => Volume::from_ft3(value).format(VolumeUnit::Liters, 2),
        Unit::Ft3 => format!("{} ft³", fixed(value, 4)),
        Unit::InPer4Ft if metric => {
            match Slope::from_in_per_4ft(value).in_unit(SlopeUnit::MmPerM) {
                Some(mm_per_m) => format!("{} mm/m", fixed(mm_per_m, 3)),
                None => format!("{} {}", fixed(value, 4), per_4_ft()),
            }
        }
        Unit::InPer4Ft => format!("{} {}", fixed(value, 4), per_4_ft()),
        Unit::Ratio => fixed(value, 6),
        Unit::Percent => format!("{} %", fixed(value, 2)),
        Unit::Degrees => format!("{}{}", fixed(value, 3), degree_sign()),
        Unit::Bags | Unit::Count => fixed(value, 2),
        Unit::Minutes => format!("{} {}", fixed(value, 1), common::unit_minutes()),
        Unit::Pounds => format!("{} lb", fixed(value, 2)),
        Unit::PoundsPerFt3 => format!("{} lb/ft³", fixed(value, 1)),
        Unit::Quarts if metric => Volume::from_qt(value).format(VolumeUnit::Liters, 2),
        Unit::Quarts => format!("{} {}", fixed(value, 2), quarts()),
        Unit::Gallons if metric => Volume::from_qt(4.0 * value).format(VolumeUnit::Liters, 2),
        Unit::Gallons => format!("{} gal", fixed(value, 3)),
        Unit::Ft2PerGal => format!("{} ft²/gal", fixed(value, 1)),
        Unit::GalPerKft2 => format!("{} gal / 1000 ft²", fixed(value, 2)),
        Unit::Cfm => format!("{} cfm", fixed(value, 2)),
        Unit::LitersPerSecond => format!("{} L/s", fixed(value, 2)),
        Unit::FeetPerMinute => format!("{} {}/min", fixed(value, 1), common::unit_ft()),
        Unit::InchesOfWater => format!("{} {} w.g.", fixed(value, 4), common::unit_in()),
        Unit::Amps => format!("{} A", fixed(value, 3)),
        Unit::Volts => format!("{} V", fixed(value, 3)),
        Unit::Ohms => format!("{} Ω", fixed(value, 4)),
        Unit::OhmsPerKft => format!("{} Ω / 1000 {}", fixed(value, 4), common::unit_ft()),
        Unit::Watts => format!("{} W", fixed(value, 2)),
        Unit::VoltAmps => format!("{} VA", fixed(value, 2)),
        Unit::DegC => format!("{} °C", fixed(value, 1)),
        Unit::DegF => format!("{} °F", fixed(value, 1)),
    }
}

/// Where a step's rule comes from.
pub fn source_line(source: &Source) -> String {
    common::see_source(match source {
        Source::Arithmetic => common::arithmetic(),
        Source::Published(name) => name,
        Source::CommonPractice => common::common_practice(),
        Source::Entered => common::from_your_entry(),
    })
}

#[cfg(test)]
mod tests {
    use std::path::{Path, PathBuf};

    use super::*;

    fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                sources(&path, into);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                into.push(path);
            }
        }
    }

    /// The string that a piece of source begins with, after blanks.
    fn literal(text: &str) -> Option<&str> {
        text.trim_start().strip_prefix('"')?.split('"').next()
    }

    /// Every formula and figure that calc's workings name, as its source has them.
    fn names_in_calc() -> (Vec<String>, Vec<String>) {
        let mut files = Vec::new();
        sources(
            &Path::new(env!("CARGO_MANIFEST_DIR")).join("../calc/src"),
            &mut files,
        );
        let (mut formulas, mut figures) = (Vec::new(), Vec::new());
        // What has no screen yet: no working of theirs is read by anyone.
        let unseen = ["open_box"];
        files.retain(|file| {
            let mut parts = file.components();
            !parts.any(|part| unseen.iter().any(|name| part.as_os_str() == *name))
        });
        for file in files {
            let text = std::fs::read_to_string(file).unwrap();
            let text = text.split("#[cfg(test)]").next().unwrap_or_default();
            if !text.contains("working::") {
                continue;
            }
            let after = |before: &str| {
                text.split(before)
                    .skip(1)
                    .filter_map(literal)
                    .map(str::to_owned)
                    .collect::<Vec<_>>()
            };
            formulas.extend(["formula: ", "step(", "floor("].into_iter().flat_map(after));
            figures.extend(["figure(", "inches(", "name: "].into_iter().flat_map(after));
        }
        (formulas, figures)
    }

    #[test]
    fn every_formula_and_figure_of_a_working_has_words() {
        let (formulas, figures) = names_in_calc();
        // The search finds what is known to be there, in each of the ways it is written.
        for known in [
            "bags",
            "run_from_rise_and_slope",
            "finished_floor_here",
            "corrected_ampacity",
        ] {
            assert!(
                formulas.iter().any(|name| name == known),
                "{known} was not found"
            );
        }
        for known in ["yield", "rise_left", "contact1_height", "resistance_there"] {
            assert!(
                figures.iter().any(|name| name == known),
                "{known} was not found"
            );
        }
        let mute: Vec<_> = formulas
            .iter()
            .filter(|name| {
                formula(name)
                    .or_else(|| wiring::working::formula(name))
                    .or_else(|| closing::working::formula(name))
                    .is_none()
            })
            .collect();
        assert!(mute.is_empty(), "formulas without words: {mute:?}");
        let mute: Vec<_> = figures
            .iter()
            .filter(|name| {
                figure_name(name)
                    .or_else(|| wiring::working::figure_name(name))
                    .or_else(|| closing::working::figure_name(name))
                    .is_none()
            })
            .collect();
        assert!(mute.is_empty(), "figures without words: {mute:?}");
    }

    #[test]
    fn a_figure_shows_its_unit() {
        let figure = |value, unit| Figure {
            name: "step_left",
            value,
            unit,
        };
        assert_eq!(
            figure_line(&figure(0.71875, Unit::In), Units::FeetInches),
            "step, left jamb 0.7188 in"
        );
        // 25.4 mm to the inch: NIST SP 811, appendix B.8.
        assert_eq!(
            figure_value(&figure(2.0, Unit::In), Units::Metric),
            "50.8 mm"
        );
        assert_eq!(
            figure_value(&figure(1.0, Unit::InPer4Ft), Units::Metric),
            "20.833 mm/m"
        );
        assert_eq!(
            figure_value(&figure(35.0, Unit::Ft), Units::Metric),
            "35 ft (10.668 m)"
        );
        // 1 in3 is 16.387064 cm3, likewise.
        assert_eq!(
            figure_value(&figure(2.25, Unit::In3), Units::Metric),
            "36.87 cm³"
        );
    }
}
