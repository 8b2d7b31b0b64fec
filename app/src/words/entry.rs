//! The entry widgets.

use calc::quantity::SlopeUnit;

words! {
    more_keys => "Keys a number pad lacks" | "Teclas que faltan en el teclado numérico";
    key_feet => "feet mark" | "marca de pies";
    key_inches => "inches mark" | "marca de pulgadas";
    key_over => "over" | "sobre";
    key_space => "space" | "espacio";
    key_minus => "minus" | "menos";
    fraction_of(label: String) => "{label}: fraction of an inch" | "{label}: fracción de pulgada";
    per_ft => "in per ft" | "pulg por pie";
    per_4_ft => "in per 4 ft" | "pulg en 4 pies";
    degrees => "degrees" | "grados";
    one_to => "1 : n" | "1 : n";
}

/// The words of a unit of slope.
pub fn slope_unit(unit: SlopeUnit) -> &'static str {
    match unit {
        SlopeUnit::InPerFt => per_ft(),
        SlopeUnit::InPer4Ft => per_4_ft(),
        SlopeUnit::Percent => "%",
        SlopeUnit::Degrees => degrees(),
        SlopeUnit::OneTo => one_to(),
        SlopeUnit::MmPerM => "mm/m",
    }
}
