//! The wiring: what its screens share.

use calc::job::{CodeEdition, Units};
use calc::quantity::{Length, fixed};
use calc::wiring::conductor::{ConductorRefusal, Construction, Covering, Metal, Rating, Size};
use calc::wiring::impedance::ImpedanceRefusal;
use calc::wiring::tables::Conduit;

use super::common;

pub mod ampacity;

pub mod boxes;

pub mod cable;

pub mod circuits;

pub mod drop;

pub mod fill;

pub mod keep;

pub mod panel;

pub mod rules;

pub mod supply;

pub mod working;

words! {
    heading => "Wiring" | "Instalación eléctrica";
    edition_label => "Code edition" | "Edición del código";
    edition_hint => "NFPA 70. Take the one your town has adopted; some rules changed."
        | "NFPA 70. Tome la que adoptó su localidad; algunas reglas cambiaron.";
    edition_2017 => "2017" | "2017";
    edition_2020 => "2020" | "2020";
    edition_2023 => "2023" | "2023";
    by_edition(edition: &str) => "By NFPA 70-{edition}. Local code may differ." | "Según NFPA 70-{edition}. El código local puede ser otro.";
    sections => "Code sections, in plain words" | "Artículos del código, en palabras simples";
    size_label => "Wire size" | "Calibre del alambre";
    size_open => "choose" | "elija";
    metal_label => "Metal" | "Metal";
    copper => "copper" | "cobre";
    aluminum => "aluminum" | "aluminio";
    copper_clad => "copper-clad aluminum" | "aluminio con baño de cobre";
    covering_label => "Cable or insulation" | "Cable o aislante";
    nm_b => "NM-B cable" | "cable NM-B";
    nm_old => "old NM cable, no B in its mark" | "cable NM viejo, sin B en la marca";
    uf => "UF cable" | "cable UF";
    xhhw_wet => "XHHW, wet" | "XHHW, mojado";
    xhhw_dry => "XHHW, dry or damp" | "XHHW, seco o húmedo";
    thhn_dry => "THHN, dry or damp" | "THHN, seco o húmedo";
    rated(degrees: String) => "single conductor, {degrees} °C" | "conductor suelto, {degrees} °C";
    rated_at(name: &str, degrees: String) => "{name} ({degrees} °C)" | "{name} ({degrees} °C)";
    solid => "solid" | "sólido";
    stranded => "stranded" | "trenzado";
    in_pvc => "PVC conduit, or NM cable" | "tubo de PVC, o cable NM";
    in_aluminum => "aluminum conduit" | "tubo de aluminio";
    in_steel => "steel conduit" | "tubo de acero";
    say_more => "Enter what is missing above; the answer stands here." | "Escriba arriba lo que falta; aquí sale la respuesta.";
    caution_off => "Turn the breaker off, lock it out and tag it. A wire you did not turn off yourself is live."
        | "Apague el breaker, póngale candado y etiqueta. El alambre que usted mismo no apagó está vivo.";
    caution_test => "Prove each wire dead with a tester that you try on a known live source before and after. Test again after a break."
        | "Compruebe que cada alambre esté muerto con un probador que haya probado en una fuente viva antes y después. Vuelva a probar después de un descanso.";
    caution_white => "A white can be live: as a switched hot, or as a neutral that another circuit still feeds."
        | "Un blanco puede estar vivo: como vivo de un apagador, o como neutro que otro circuito todavía alimenta.";
    caution_inspector => "The electrician who holds the license and the inspector decide what may be done here, and who may do it."
        | "El electricista con licencia y el inspector deciden qué se puede hacer aquí, y quién puede hacerlo.";
    below_least(size: String, metal: &str, least: String) => "{size} {metal} is too small for a circuit. Take {least} or larger."
        | "{size} de {metal} es muy chico para un circuito. Tome {least} o más grande.";
    not_made(covering: &str, least: String, most: String) => "{covering} is made from {least} to {most}. Take a size between, or other wire."
        | "{covering} se fabrica de {least} a {most}. Tome un calibre entre esos, u otro alambre.";
    not_in_table(size: String, metal: &str) => "The table has no {metal} in {size}. Take a larger size, or copper."
        | "La tabla no tiene {metal} en {size}. Tome un calibre mayor, o cobre.";
    no_construction(size: String, construction: &str) => "The table has no {construction} {size}. Choose the other kind."
        | "La tabla no tiene {size} {construction}. Elija el otro tipo.";
    unknown_size(text: &str) => "“{text}” is no wire size. Sizes go 14, 12, 10, 8 … 1/0 … 250."
        | "«{text}» no es un calibre. Los calibres van 14, 12, 10, 8 … 1/0 … 250.";
    power_factor_range => "A power factor is more than 0 and at most 1; 1 for heat and lamps, about 0.85 for motors."
        | "El factor de potencia es mayor de 0 y a lo más 1; 1 para calor y focos, cerca de 0.85 para motores.";
    conductor_temperature => "Enter a conductor temperature between −76 and 302 °F (−60 and 150 °C)."
        | "Escriba una temperatura del conductor entre −76 y 302 °F (−60 y 150 °C).";
    printed_at_75 => "The printed impedance holds at 75 °C alone. Set the conductor to 75 °C, or give a power factor."
        | "La impedancia impresa vale solo a 75 °C. Ponga el conductor a 75 °C, o dé un factor de potencia.";
}

/// The year of an edition.
pub fn edition(edition: CodeEdition) -> &'static str {
    match edition {
        CodeEdition::E2017 => edition_2017(),
        CodeEdition::E2020 => edition_2020(),
        CodeEdition::E2023 => edition_2023(),
    }
}

/// A size with its unit: `14 AWG`, `250 kcmil`.
pub fn size(size: Size) -> String {
    format!("{} {}", size.text(), size_unit(size))
}

/// The unit of a size.
pub fn size_unit(size: Size) -> &'static str {
    if size.is_kcmil() { "kcmil" } else { "AWG" }
}

/// A metal.
pub fn metal(metal: Metal) -> &'static str {
    match metal {
        Metal::Copper => copper(),
        Metal::Aluminum => aluminum(),
        Metal::CopperCladAluminum => copper_clad(),
    }
}

/// Solid or stranded.
pub fn construction(construction: Construction) -> &'static str {
    match construction {
        Construction::Solid => solid(),
        Construction::Stranded => stranded(),
    }
}

/// A conduit, for the impedance.
pub fn conduit(conduit: Conduit) -> &'static str {
    match conduit {
        Conduit::Pvc => in_pvc(),
        Conduit::Aluminum => in_aluminum(),
        Conduit::Steel => in_steel(),
    }
}

/// A rating: `75 °C`.
pub fn rating(rating: Rating) -> String {
    format!("{} °C", fixed(rating.celsius(), 0))
}

/// A kind of cable or insulation, with the rating of its conductors.
pub fn covering(covering: Covering) -> String {
    let degrees = fixed(covering.rating().celsius(), 0);
    let name = match covering {
        Covering::NmB => nm_b(),
        Covering::NmOld => nm_old(),
        Covering::Uf => uf(),
        Covering::Tw => "TW",
        Covering::Thw => "THW",
        Covering::Rhw => "RHW",
        Covering::Thwn => "THWN",
        Covering::Use => "USE",
        Covering::XhhwWet => xhhw_wet(),
        Covering::XhhwDry => xhhw_dry(),
        Covering::Thhn => thhn_dry(),
        Covering::Thwn2 => "THWN-2",
        Covering::Xhhw2 => "XHHW-2",
        Covering::Rated(_) => return rated(degrees),
    };
    rated_at(name, degrees)
}

/// Feet of a run or of cable, or meters, with their unit.
pub fn length(feet: f64, units: Units) -> String {
    format!(
        "{} {}",
        fixed(length_number(feet, units), 1),
        length_unit(units)
    )
}

/// The number of a length to buy, never rounded down.
pub fn length_up(feet: f64, units: Units) -> String {
    fixed((length_number(feet, units) * 10.0 - 1e-9).ceil() / 10.0, 1)
}

/// The number of that length.
pub fn length_number(feet: f64, units: Units) -> f64 {
    match units {
        Units::FeetInches => feet,
        Units::Metric => Length::from_feet(feet).m(),
    }
}

/// The unit of that length.
pub fn length_unit(units: Units) -> &'static str {
    match units {
        Units::FeetInches => common::unit_ft(),
        Units::Metric => common::unit_m(),
    }
}

/// Why a conductor is none, and what would be one.
pub fn conductor_refusal(refusal: &ConductorRefusal) -> String {
    match refusal {
        ConductorRefusal::UnknownSize { text } => unknown_size(text),
        ConductorRefusal::BelowLeast {
            size: given,
            metal: of,
            least,
        } => below_least(size(*given), metal(*of), size(*least)),
        ConductorRefusal::NotMade {
            covering: of,
            least,
            most,
            ..
        } => not_made(&covering(*of), size(*least), size(*most)),
        ConductorRefusal::NotInTable {
            size: given,
            metal: of,
        } => not_in_table(size(*given), metal(*of)),
        ConductorRefusal::NoConstruction {
            size: given,
            construction: of,
        } => no_construction(size(*given), construction(*of)),
    }
}

/// Why there is no impedance, and what would give one.
pub fn impedance_refusal(refusal: &ImpedanceRefusal) -> String {
    match refusal {
        ImpedanceRefusal::Conductor(refusal) => conductor_refusal(refusal),
        ImpedanceRefusal::PowerFactor { .. } => power_factor_range().to_owned(),
        ImpedanceRefusal::Temperature { .. } => conductor_temperature().to_owned(),
        ImpedanceRefusal::PrintedAt75 { .. } => printed_at_75().to_owned(),
    }
}

/// What to do before a wire is touched.
pub fn cautions() -> Vec<String> {
    [
        caution_off(),
        caution_test(),
        caution_white(),
        caution_inspector(),
    ]
    .map(str::to_owned)
    .into()
}

#[cfg(test)]
mod tests {
    /// What keeps people from harm is said as what to do; nothing electrical is promised to be without danger.
    #[test]
    fn nothing_is_called_safe() {
        let texts = [
            include_str!("wiring.rs"),
            include_str!("wiring/ampacity.rs"),
            include_str!("wiring/cable.rs"),
            include_str!("wiring/drop.rs"),
            include_str!("wiring/fill.rs"),
            include_str!("wiring/circuits.rs"),
            include_str!("wiring/boxes.rs"),
            include_str!("wiring/panel.rs"),
            include_str!("wiring/supply.rs"),
            include_str!("wiring/rules.rs"),
            include_str!("wiring/working.rs"),
            include_str!("open_box.rs"),
            include_str!("open_box/answers.rs"),
            include_str!("open_box/explain.rs"),
            include_str!("open_box/measure.rs"),
            include_str!("open_box/refusals.rs"),
        ];
        for text in texts {
            let words = text.split("#[cfg(test)]").next().unwrap_or_default();
            let words = words.to_lowercase();
            assert!(words.len() > 1000);
            for promise in [
                "safe",
                "seguro",
                "segura",
                "sin peligro",
                "sin riesgo",
                "harmless",
            ] {
                assert!(!words.contains(promise), "{promise}");
            }
        }
    }
}
