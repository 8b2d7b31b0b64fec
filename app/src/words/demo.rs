//! The names that the worked example's wiring has, in the user's language. The example itself has them in English.

use super::{Language, language};

/// Each name in English and in Spanish.
const NAMES: [(&str, &str); 29] = [
    ("Upstairs subpanel", "Subpanel de arriba"),
    (
        "Main panel, basement, spaces 10 and 12",
        "Panel principal, sótano, espacios 10 y 12",
    ),
    (
        "Some covers here hide old splices: open them before the walls close.",
        "Aquí hay tapas que esconden empalmes viejos: ábralas antes de cerrar las paredes.",
    ),
    (
        "Back bedroom receptacles",
        "Tomacorrientes, recámara de atrás",
    ),
    (
        "Back bedroom and hall lights",
        "Luces, recámara de atrás y pasillo",
    ),
    (
        "Back bedroom baseboard heater",
        "Calentador de zócalo, recámara de atrás",
    ),
    (
        "Front room receptacles",
        "Tomacorrientes, cuarto del frente",
    ),
    ("Clothes dryer, basement", "Secadora de ropa, sótano"),
    ("Hall receptacles", "Tomacorrientes del pasillo"),
    ("Stair receptacles", "Tomacorrientes de la escalera"),
    ("Smoke alarms", "Alarmas de humo"),
    ("Workbench, basement", "Banco de trabajo, sótano"),
    ("Switch by the door", "Apagador junto a la puerta"),
    ("Ceiling light", "Luz del techo"),
    (
        "Receptacle under the window",
        "Tomacorriente bajo la ventana",
    ),
    ("Desk and lamps", "Escritorio y lámparas"),
    ("Television", "Televisor"),
    ("Portable heater", "Calentador portátil"),
    ("Hall lights", "Luces del pasillo"),
    ("Reading lights", "Luces de lectura"),
    ("Baseboard", "Calentador de zócalo"),
    ("Second baseboard", "Segundo calentador de zócalo"),
    ("Heating coil", "Resistencia"),
    ("Motor and controls", "Motor y controles"),
    ("Vacuum cleaner", "Aspiradora"),
    ("Dehumidifier", "Deshumidificador"),
    (
        "Landing, behind the blank cover",
        "Descanso, tras la tapa ciega",
    ),
    ("Vacuum in the hall", "Aspiradora en el pasillo"),
    ("Heater on the stairs", "Calentador en la escalera"),
];

/// A name of the example in the user's language; as it is where it has none.
pub fn named(english: &str) -> &str {
    match language() {
        Language::English => english,
        Language::Spanish => spanish(english).unwrap_or(english),
    }
}

fn spanish(english: &str) -> Option<&'static str> {
    NAMES
        .iter()
        .find(|(of, _)| *of == english)
        .map(|(_, spanish)| *spanish)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_of_the_example_is_there_in_spanish_and_none_beside() {
        let mut job = calc::job::demo::job("demo", "2026-03-02T08:00:00Z");
        let names: Vec<String> = calc::job::demo::names(&mut job)
            .into_iter()
            .map(std::mem::take)
            .filter(|name| !name.is_empty())
            .collect();
        for name in &names {
            assert!(spanish(name).is_some(), "{name}");
        }
        for (english, _) in NAMES {
            assert!(names.iter().any(|name| name == english), "{english}");
        }
    }
}
