//! What is wrong with an entry, in the user's words, and what to enter instead.

use calc::job::fields::Field;
use calc::quantity::area::AreaRefusal;
use calc::quantity::slope::SlopeRefusal;
use calc::quantity::volume::VolumeRefusal;
use calc::quantity::{EntryRefusal, LengthRefusal, LengthUnit, NumberRefusal, Quantity, fixed};

words! {
    blank => "Enter a value." | "Escriba un valor.";
    like_length => "Enter a length, like 7' 3 5/8\" or 2226 mm." | "Escriba una medida, como 7' 3 5/8\" o 2226 mm.";
    like_area => "Enter an area, like 40 sq ft or 3.7 m2." | "Escriba un área, como 40 ft2 o 3.7 m2.";
    like_volume => "Enter a volume, like 0.45 cu ft or 12.7 L." | "Escriba un volumen, como 0.45 ft3 o 12.7 L.";
    like_slope => "Enter a slope, like 1:12, 1/4 in per ft or 2 %."
        | "Escriba una pendiente, como 1:12, 1/4 pulg por pie o 2 %.";
    like_number => "Enter a number, like 10 or 2.5." | "Escriba un número, como 10 o 2.5.";
    like_amount(unit: &str) => "Enter a number, like 12 or 12.5 {unit}." | "Escriba un número, como 12 o 12.5 {unit}.";
    like_temperature => "Enter a temperature, like 86 °F or 30 °C." | "Escriba una temperatura, como 86 °F o 30 °C.";
    both_degrees(fahrenheit: String, celsius: String) => "{fahrenheit} °F ({celsius} °C)" | "{fahrenheit} °F ({celsius} °C)";
    like_percent => "Enter a percentage, like 10." | "Escriba un porcentaje, como 10.";
    like_whole => "Enter a whole number, like 2." | "Escriba un número entero, como 2.";
    not_understood(piece: &str) => "“{piece}” isn't understood here." | "No se entiende «{piece}» aquí.";
    no_unit_of_this(piece: &str) => "“{piece}” isn't a unit that fits here." | "«{piece}» no es una unidad que sirva aquí.";
    needs_unit(piece: &str) => "“{piece}” needs its unit: mark feet with ' and inches with \"."
        | "A «{piece}» le falta la unidad: marque los pies con ' y las pulgadas con \".";
    zero_under => "A fraction can't have 0 under its bar." | "Una fracción no puede tener 0 abajo.";
    fraction_past_one(over: String, under: String) => "{over}/{under} is one or more; carry it into the whole number."
        | "{over}/{under} es uno o más; súmelo al número entero.";
    comma(piece: &str, decimal: String, thousands: String) =>
        "“{piece}” can be read two ways. Write {decimal} or {thousands}."
        | "«{piece}» se puede leer de dos maneras. Escriba {decimal} o {thousands}.";
    unit_twice(unit: &str) => "The unit {unit} stands there twice." | "La unidad {unit} aparece dos veces.";
    wrong_order(smaller: &str, larger: &str) => "Write {larger} before {smaller}." | "Escriba {larger} antes de {smaller}.";
    mixed(first: &str, second: &str) => "Use one system: {first} and {second} don't go together."
        | "Use un solo sistema: {first} y {second} no van juntos.";
    part_before(value: String, unit: &str) => "{value} {unit} is already a part of one; leave out the smaller unit, or write whole {unit}."
        | "{value} {unit} ya lleva decimales; quite la unidad menor o escriba {unit} enteros.";
    inches_past_foot(inches: String) => "{inches} in is a foot or more; mark feet with ' and inches with \"."
        | "{inches} pulg es un pie o más; marque los pies con ' y las pulgadas con \".";
    beyond_use => "That is larger than anything in a house. Check the digits."
        | "Eso es más grande que cualquier cosa en una casa. Revise los dígitos.";
    no_place => "It has no place yet: see the room's page for what is wrong there." | "Todavía no tiene lugar: vea en la página del cuarto qué falta.";
    not_whole(value: String) => "{value} isn't whole. Enter a whole number." | "{value} no es entero. Escriba un número entero.";
    unknown_unit(unit: &str) => "This was saved with a unit (“{unit}”) that isn't known here. Enter it again with its unit."
        | "Esto se guardó con una unidad («{unit}») que aquí no se conoce. Escríbalo otra vez con su unidad.";
    run_missing => "A slope needs its run: 1/4 in per ft, or 1:12." | "Falta la distancia: 1/4 pulg por pie, o 1:12.";
    zero_run => "The run can't be 0." | "La distancia no puede ser 0.";
    run_below_one(run: String) => "1:{run} is steeper than 45 degrees. Write a slope of 1 in 12 as 1:12."
        | "1:{run} es más empinado que 45 grados. Escriba una pendiente de 1 en 12 como 1:12.";
    past_upright => "A slope stays under 90 degrees." | "Una pendiente queda por debajo de 90 grados.";
    at_least(value: String) => "Enter {value} or more." | "Escriba {value} o más.";
    more_than(value: String) => "Enter more than {value}." | "Escriba más de {value}.";
    at_most(value: String) => "Enter {value} or less." | "Escriba {value} o menos.";
    less_than(value: String) => "Enter less than {value}." | "Escriba menos de {value}.";
}

/// The word or sign of a unit of length.
pub fn length_unit(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Inches => super::common::unit_in(),
        LengthUnit::Feet => super::common::unit_ft(),
        LengthUnit::Millimeters => "mm",
        LengthUnit::Centimeters => "cm",
        LengthUnit::Meters => "m",
    }
}

/// A limit as its field shows it.
fn limit(quantity: &Quantity, field: &Field) -> String {
    match (quantity, field) {
        (Quantity::Number(n), Field::Amount(symbol, _)) => {
            return format!("{} {}", fixed(*n, 2), symbol.symbol());
        }
        // Limits of temperatures are kept in degrees C; either may have been typed.
        (Quantity::Number(c), Field::Temperature(_)) => {
            return both_degrees(fixed(*c * 1.8 + 32.0, 0), fixed(*c, 0));
        }
        _ => {}
    }
    match quantity {
        Quantity::Number(n) => fixed(*n, 2),
        Quantity::Whole(n) => n.to_string(),
        Quantity::Length(length, unit) if unit.is_metric() => length.format_mm(),
        Quantity::Length(length, _) if length.inches().abs() < 36.0 => length.format_inches(16),
        Quantity::Length(length, _) => length.format_feet_inches(16),
        Quantity::Area(area, unit) => area.format(*unit, 1),
        Quantity::Volume(volume, unit) => volume.format(*unit, 2),
        Quantity::Slope(slope, unit) => slope.format(*unit, 2),
    }
}

/// What a field wants, by example.
pub fn example(field: &Field) -> String {
    match field {
        Field::Length(..) => like_length(),
        Field::Area(..) => like_area(),
        Field::Volume(..) => like_volume(),
        Field::Slope(..) => like_slope(),
        Field::Number(_) => like_number(),
        Field::Percent(_) => like_percent(),
        Field::Whole(_) => like_whole(),
        Field::Temperature(_) => like_temperature(),
        Field::Amount(symbol, _) => return like_amount(symbol.symbol()),
    }
    .to_owned()
}

fn number(refusal: &NumberRefusal) -> String {
    match refusal {
        NumberRefusal::Blank => blank().to_owned(),
        NumberRefusal::NotUnderstood { piece, .. } => not_understood(piece),
        NumberRefusal::ZeroDenominator => zero_under().to_owned(),
        NumberRefusal::FractionPastOne {
            numerator,
            denominator,
        } => fraction_past_one(fixed(*numerator, 2), fixed(*denominator, 2)),
        NumberRefusal::AmbiguousComma {
            piece,
            as_decimal,
            as_thousands,
            ..
        } => comma(piece, fixed(*as_decimal, 3), fixed(*as_thousands, 0)),
        NumberRefusal::TooLarge => beyond_use().to_owned(),
        NumberRefusal::NotWhole { value } => not_whole(fixed(*value, 3)),
    }
}

/// A refused length.
pub fn length(refusal: &LengthRefusal) -> String {
    match refusal {
        LengthRefusal::Blank => blank().to_owned(),
        LengthRefusal::NotUnderstood { piece, .. } => not_understood(piece),
        LengthRefusal::UnknownUnit { piece, .. } => no_unit_of_this(piece),
        LengthRefusal::UnitMissing { piece, .. } => needs_unit(piece),
        LengthRefusal::ZeroDenominator => zero_under().to_owned(),
        LengthRefusal::FractionPastOne {
            numerator,
            denominator,
        } => fraction_past_one(fixed(*numerator, 2), fixed(*denominator, 2)),
        LengthRefusal::AmbiguousComma {
            piece,
            as_decimal,
            as_thousands,
            ..
        } => comma(piece, fixed(*as_decimal, 3), fixed(*as_thousands, 0)),
        LengthRefusal::UnitTwice { unit } => unit_twice(length_unit(*unit)),
        LengthRefusal::WrongOrder { smaller, larger } => {
            wrong_order(length_unit(*smaller), length_unit(*larger))
        }
        LengthRefusal::MixedSystems { first, second } => {
            mixed(length_unit(*first), length_unit(*second))
        }
        LengthRefusal::PartBeforeSmaller { value, unit } => {
            part_before(fixed(*value, 3), length_unit(*unit))
        }
        LengthRefusal::InchesPastFoot { inches } => inches_past_foot(fixed(*inches, 3)),
        LengthRefusal::TooLarge => beyond_use().to_owned(),
    }
}

fn slope(refusal: &SlopeRefusal) -> String {
    match refusal {
        SlopeRefusal::Number(n) => number(n),
        SlopeRefusal::UnknownUnit { piece, .. } => no_unit_of_this(piece),
        SlopeRefusal::UnitMissing { piece, .. } => needs_unit(piece),
        SlopeRefusal::RunMissing => run_missing().to_owned(),
        SlopeRefusal::ZeroRun => zero_run().to_owned(),
        SlopeRefusal::RunBelowOne { run } => run_below_one(fixed(*run, 3)),
        SlopeRefusal::PastUpright { .. } => past_upright().to_owned(),
    }
}

/// What is wrong with an entry, and what its field wants.
pub fn entry(refusal: &EntryRefusal, field: &Field) -> String {
    let what = match refusal {
        EntryRefusal::Blank => return example(field),
        EntryRefusal::NoPlace => return no_place().to_owned(),
        EntryRefusal::Length(r) => length(r),
        EntryRefusal::Number(r) => number(r),
        EntryRefusal::Slope(r) => slope(r),
        EntryRefusal::Area(AreaRefusal::Number(r))
        | EntryRefusal::Volume(VolumeRefusal::Number(r)) => number(r),
        EntryRefusal::Area(AreaRefusal::UnknownUnit { piece, .. })
        | EntryRefusal::Volume(VolumeRefusal::UnknownUnit { piece, .. }) => no_unit_of_this(piece),
        EntryRefusal::TooSmall {
            least,
            inclusive: true,
        } => return at_least(limit(least, field)),
        EntryRefusal::TooSmall {
            least,
            inclusive: false,
        } => return more_than(limit(least, field)),
        EntryRefusal::TooLarge {
            most,
            inclusive: true,
        } => return at_most(limit(most, field)),
        EntryRefusal::TooLarge {
            most,
            inclusive: false,
        } => return less_than(limit(most, field)),
        EntryRefusal::NotWhole { value } => return not_whole(fixed(*value, 3)),
        EntryRefusal::UnknownUnit { unit } => return unknown_unit(unit),
    };
    format!("{what} {}", example(field))
}
