//! Box fill.

use calc::job::Units;
use calc::quantity::{Volume, fixed};
use calc::wiring::box_fill::{BoxFinding, BoxRefusal, EnteringCable, FillItem, SmallestBox};
use calc::wiring::tables::{BoxFamily, BoxRow};

use super::size;
use crate::pictures::length_text;

words! {
    title => "Box fill" | "Llenado de caja";
    line => "What is in a box, counted line by line, and what else fits." | "Lo que hay en una caja, contado renglón por renglón, y qué más cabe.";
    box_heading => "The box" | "La caja";
    by_label => "Its volume, from" | "Su volumen, de";
    by_list => "the table of metal boxes" | "la tabla de cajas metálicas";
    by_mark => "the mark on it" | "la marca que trae";
    by_measure => "a tape" | "una cinta";
    listed_label => "Metal box" | "Caja metálica";
    gangs_label => "Gangs side by side" | "Gangs uno junto a otro";
    gangs_hint => "Device boxes screwed together, and boxes sold by the gang." | "Cajas de dispositivo atornilladas, y cajas que se venden por gang.";
    marked_label => "Volume marked on it" | "Volumen marcado";
    marked_hint => "Stamped or molded inside, in cubic inches." | "Estampado o moldeado por dentro, en pulgadas cúbicas.";
    width_label => "Inside width" | "Ancho por dentro";
    height_label => "Inside height" | "Alto por dentro";
    depth_label => "Inside depth" | "Fondo por dentro";
    measure_hint => "Only for a box with no mark that is not in the table." | "Solo para una caja sin marca que no está en la tabla.";
    ring_label(number: usize) => "Ring or cover {number}, marked volume" | "Anillo o tapa {number}, volumen marcado";
    add_ring => "Add a ring or cover" | "Agregar anillo o tapa";
    ring_name(number: usize) => "ring {number}" | "el anillo {number}";
    contents_heading => "What is in it" | "Qué lleva";
    cables_heading => "Cables that end or are spliced here" | "Cables que terminan o se empalman aquí";
    cable_name(number: usize) => "cable {number}" | "el cable {number}";
    cable_size(number: usize) => "Cable {number}: wire size" | "Cable {number}: calibre";
    cable_wires(number: usize) => "Cable {number}: insulated wires" | "Cable {number}: alambres aislados";
    cable_wires_hint => "2 for a two-wire cable, 3 for a three-wire; the bare ground apart." | "2 en cable de dos hilos, 3 en el de tres; la tierra desnuda aparte.";
    cable_ground(number: usize) => "Cable {number}: ground" | "Cable {number}: tierra";
    ground_same => "as made: same size, 10 with 8 and 6" | "de fábrica: igual, 10 con 8 y 6";
    ground_none => "none" | "sin tierra";
    ground_other => "another size" | "otro calibre";
    cable_ground_size(number: usize) => "Cable {number}: size of its ground" | "Cable {number}: calibre de su tierra";
    one_more => "One more like it" | "Otro igual";
    barrier_label(number: usize) => "Barrier {number}" | "División {number}";
    barrier_volume(number: usize) => "Barrier {number}, marked volume" | "División {number}, volumen marcado";
    barrier_name(number: usize) => "barrier {number}" | "la división {number}";
    barrier_metal => "metal, no mark" | "de metal, sin marca";
    barrier_plastic => "plastic, no mark" | "de plástico, sin marca";
    barrier_marked => "marked with its volume" | "con su volumen marcado";
    add_barrier => "Add a barrier" | "Agregar división";
    block_size(number: usize) => "Terminal block {number}: largest wire on it" | "Bloque de terminales {number}: alambre más grande";
    block_name(number: usize) => "terminal block {number}" | "el bloque {number}";
    add_block => "Add a terminal block" | "Agregar bloque de terminales";
    add_cable => "Add a cable" | "Agregar cable";
    devices_heading => "Switches, receptacles, dimmers" | "Apagadores, tomacorrientes, dimmers";
    device_size(number: usize) => "Device {number}: largest wire on it" | "Dispositivo {number}: alambre más grande conectado";
    device_gangs(number: usize) => "Device {number}: gangs wide" | "Dispositivo {number}: gangs de ancho";
    device_gangs_hint => "1, but for wide ones such as a range receptacle." | "1, salvo los anchos, como el tomacorriente de estufa.";
    device_name(number: usize) => "device {number}" | "el dispositivo {number}";
    add_device => "Add a device" | "Agregar dispositivo";
    others_heading => "Other wires" | "Otros alambres";
    other_kind(number: usize) => "Wires {number}: what they do" | "Alambres {number}: qué hacen";
    other_size(number: usize) => "Wires {number}: size" | "Alambres {number}: calibre";
    other_count(number: usize) => "Wires {number}: how many" | "Alambres {number}: cuántos";
    other_name(number: usize) => "wires {number}" | "los alambres {number}";
    add_other => "Add other wires" | "Agregar otros alambres";
    kind_ends => "from outside, end or are spliced here" | "vienen de fuera y terminan o se empalman aquí";
    kind_passing => "pass through, unbroken" | "pasan de largo, sin cortar";
    kind_looped => "pass through in a loop of 12 in or more" | "pasan en rizo de 12 pulg o más";
    kind_fixture => "fixture wires" | "alambres de lámpara";
    kind_canopy => "fixture wires under a domed canopy" | "alambres de lámpara bajo un dosel";
    kind_ground => "grounds besides those of the cables" | "tierras además de las de los cables";
    kind_isolated => "isolated grounds" | "tierras aisladas";
    clamps_label => "Clamps inside the box" | "Prensacables dentro de la caja";
    clamps_hint => "Any number counts once; connectors that stay outside don't." | "Los que sean cuentan una vez; los conectores de afuera no.";
    supports_label => "Kinds of stud or hickey" | "Tipos de espárrago o hickey";
    pigtails_label => "Pigtails that start and end here" | "Colitas que empiezan y terminan aquí";
    pigtails_hint => "Not counted; noted so that nobody counts them." | "No cuentan; se anotan para que nadie las cuente.";
    room_left => "Room left" | "Espacio libre";
    full => "Full to the mark" | "Llena justo al límite";
    over_by => "Over by" | "Se pasa por";
    rests(required: String, volume: String) => "{required} needed, {volume} there." | "Se necesitan {required}, hay {volume}.";
    lines_caption => "What counts" | "Qué cuenta";
    head_what => "What" | "Qué";
    head_counts => "Counts" | "Cuenta";
    more_heading => "More that fits, one kind alone" | "Qué más cabe, de un solo tipo";
    more_cable(size: &str, wires: u32) => "{size}-{wires} with ground" | "{size}-{wires} con tierra";
    smallest_heading => "Smallest metal box that holds this" | "La caja metálica más chica que lo lleva";
    smallest_none => "none" | "ninguna";
    each_gang(gangs: u32) => "{gangs} gangs" | "{gangs} gangs";
    family_round => "Round or octagonal" | "Redonda u octagonal";
    family_square => "Square" | "Cuadrada";
    family_device => "Device" | "De dispositivo";
    family_masonry => "Masonry" | "De mampostería";
    family_fs => "FS, single cover" | "FS, una tapa";
    family_fd => "FD, single cover" | "FD, una tapa";
    family_fs_multi => "FS, several covers" | "FS, varias tapas";
    family_fd_multi => "FD, several covers" | "FD, varias tapas";
    item_conductors => "Wires that end or are spliced" | "Alambres que terminan o se empalman";
    item_passing => "Wires passing through" | "Alambres de paso";
    item_looped => "Looped wires" | "Alambres en rizo";
    item_fixture => "Fixture wires" | "Alambres de lámpara";
    item_clamps => "Clamps inside" | "Prensacables";
    item_supports => "Studs and hickeys" | "Espárragos y hickeys";
    item_device => "Device" | "Dispositivo";
    item_grounds => "Grounds" | "Tierras";
    item_isolated => "Isolated grounds" | "Tierras aisladas";
    item_terminal => "Terminal block" | "Bloque de terminales";
    item_pigtails => "Pigtails" | "Colitas";
    of_size(item: &str, size: String) => "{item}, {size}" | "{item}, {size}";
    times(item: String, count: u32) => "{item} × {count}" | "{item} × {count}";
    found_over(over: String) => "More in the box than it may hold, by {over}. Take a deeper box, add a ring that is marked with its volume, or splice elsewhere."
        | "La caja lleva {over} de más. Use una caja más honda, agregue un anillo con volumen marcado o empalme en otro lado.";
    found_measured => "Measured with a tape: rounded corners and screws take space that this does not see. Look for a mark or the table first."
        | "Medida con cinta: las esquinas redondas y los tornillos quitan espacio que aquí no se ve. Busque primero la marca o la tabla.";
    found_no_conductor => "Clamps and studs count at the largest wire in the box; there is no wire yet, so they are not counted."
        | "Los prensacables y espárragos cuentan al alambre más grande; todavía no hay ninguno, así que no se cuentan.";
    found_terminal => "This edition does not count terminal blocks; the 2023 edition does. Leave room for them."
        | "Esta edición no cuenta los bloques de terminales; la de 2023 sí. Déjeles espacio.";
    found_canopy(count: u32) => "Left out under the canopy: {count} of the fixture wires smaller than 14 AWG (up to four may be)."
        | "No se cuentan bajo el dosel: {count} alambres de lámpara menores de 14 AWG (hasta cuatro se pueden omitir).";
    refused_unknown => "That box is not in the table. Take one of the list, or give the volume marked on it."
        | "Esa caja no está en la tabla. Tome una de la lista, o dé el volumen que trae marcado.";
    refused_volume(volume: String) => "The volume comes to {volume}. A box holds more than 0 and less than 10,000 in³: check box, rings and barriers."
        | "El volumen sale {volume}. Una caja tiene más de 0 y menos de 10,000 in³: revise caja, anillos y divisiones.";
    refused_side(side: String) => "{side} is no inside measure of a box. Enter 1/4 in to 100 in." | "{side} no es medida interior de una caja. Escriba de 1/4 a 100 pulg.";
    refused_gangs(family: &str, gangs: u32) => "{family} boxes are not ganged: {gangs} won't go. Enter 1 gang, or choose a device box."
        | "Las cajas {family} no se juntan: {gangs} no va. Escriba 1 gang, o elija una caja de dispositivo.";
    refused_count(item: &str, count: u32) => "{item}: {count} can't be. Enter between 1 and 500; a device is 1 to 20 gangs wide."
        | "{item}: {count} no puede ser. Escriba entre 1 y 500; un dispositivo tiene de 1 a 20 gangs.";
    refused_large(size: String) => "{size} is sized by other rules (314.28): box fill goes up to 6 AWG." | "{size} va por otras reglas (314.28): este cálculo llega hasta 6 AWG.";
    picture_says(required: String, volume: String) => "A box filled to {required} of {volume}, layer by layer." | "Una caja llena hasta {required} de {volume}, capa por capa.";
    picture_caption => "The box drawn to volume: each layer as high as the space it takes." | "La caja dibujada a volumen: cada capa tan alta como el espacio que ocupa.";
    room_label(room: String) => "room {room}" | "libre {room}";
    over_label(over: String) => "over {over}" | "de más {over}";
}

/// A volume of a box, in the units in force; the trade's own are cubic inches.
pub fn volume(in3: f64, units: Units) -> String {
    format!("{} {}", volume_number(in3, units), volume_unit(units))
}

/// The number of that volume: cubic inches to a thousandth, or cubic centimeters to a tenth.
pub fn volume_number(in3: f64, units: Units) -> String {
    if units == Units::Metric {
        fixed(Volume::from_in3(in3).liters() * 1000.0, 1)
    } else {
        fixed(in3, 3)
    }
}

/// The unit of that volume.
pub const fn volume_unit(units: Units) -> &'static str {
    match units {
        Units::Metric => "cm³",
        Units::FeetInches => "in³",
    }
}

/// A family of boxes.
pub fn family(family: BoxFamily) -> &'static str {
    match family {
        BoxFamily::RoundOctagonal => family_round(),
        BoxFamily::Square => family_square(),
        BoxFamily::Device => family_device(),
        BoxFamily::Masonry => family_masonry(),
        BoxFamily::FsSingleCover => family_fs(),
        BoxFamily::FdSingleCover => family_fd(),
        BoxFamily::FsMultipleCover => family_fs_multi(),
        BoxFamily::FdMultipleCover => family_fd_multi(),
    }
}

/// A box of the table, with its volume.
pub fn listed(row: &BoxRow) -> String {
    format!(
        "{} {} · {} in³",
        family(row.family),
        row.trade_size_in,
        fixed(row.volume_in3, 1)
    )
}

/// The smallest box of a family.
pub fn smallest(found: &SmallestBox) -> String {
    match found.smallest {
        None => smallest_none().to_owned(),
        Some(row) if found.gangs > 1 => {
            format!("{} · {}", row.trade_size_in, each_gang(found.gangs))
        }
        Some(row) => format!("{} · {} in³", row.trade_size_in, fixed(row.volume_in3, 1)),
    }
}

/// A cable as the trade calls it: 12-2 with ground.
pub fn cable(cable: &EnteringCable) -> String {
    more_cable(cable.size.text(), cable.insulated)
}

/// What a line is for.
pub fn item(item: FillItem) -> &'static str {
    match item {
        FillItem::Conductors => item_conductors(),
        FillItem::Passing => item_passing(),
        FillItem::Looped => item_looped(),
        FillItem::FixtureWires => item_fixture(),
        FillItem::Clamps => item_clamps(),
        FillItem::Supports => item_supports(),
        FillItem::Device => item_device(),
        FillItem::Grounds => item_grounds(),
        FillItem::IsolatedGrounds => item_isolated(),
        FillItem::TerminalBlock => item_terminal(),
        FillItem::Pigtails => item_pigtails(),
    }
}

/// What is remarkable about a box.
pub fn finding(finding: &BoxFinding, units: Units) -> String {
    match finding {
        BoxFinding::Overfull { over_in3 } => found_over(volume(*over_in3, units)),
        BoxFinding::MeasuredVolume => found_measured().to_owned(),
        BoxFinding::NoConductorYet => found_no_conductor().to_owned(),
        BoxFinding::TerminalBlocksNotCounted => found_terminal().to_owned(),
        BoxFinding::CanopyWiresLeftOut { count } => found_canopy(*count),
    }
}

/// Why a box isn't answered, and what would be.
pub fn refusal(refusal: &BoxRefusal, units: Units) -> String {
    match refusal {
        BoxRefusal::UnknownBox { .. } => refused_unknown().to_owned(),
        BoxRefusal::Volume { volume_in3 } => refused_volume(volume(*volume_in3, units)),
        BoxRefusal::Side { side_in } => refused_side(length_text(*side_in, units)),
        BoxRefusal::Gangs { family: of, gangs } => refused_gangs(family(*of), *gangs),
        BoxRefusal::Count { item: of, count } => refused_count(item(*of), *count),
        BoxRefusal::TooLarge { size: of } => refused_large(size(*of)),
    }
}
