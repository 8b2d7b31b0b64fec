//! The pour: what it must keep, level and flat side by side, bags, pins.

use calc::floor::flatness::{Limit, Status, StraightedgeRefusal};
use calc::floor::lifts::LiftsRefusal;
use calc::floor::mixing::MixingRefusal;
use calc::floor::pour::{Cause, Clash, PourKind, PourRefusal, Way};
use calc::job::{Finish, Units};
use calc::quantity::{Length, Slope, SlopeUnit, fixed};

use crate::pictures::{at_least_text, length_text, thickness_text};

words! {
    stage => "Pour" | "Colado";
    heading => "The pour: level or flat" | "El colado: a nivel o plano";
    no_floor_yet => "The survey comes first: at least three spots with their readings." | "Primero va la medición: al menos tres puntos con su lectura.";
    to_survey => "To the survey" | "A la medición";
    one_still_unread => "1 spot is not read yet; the figures rest on those that are." | "Falta 1 punto por medir; las cifras se basan en los medidos.";
    still_unread(count: usize) => "{count} spots are not read yet; the figures rest on those that are." | "Faltan {count} puntos por medir; las cifras se basan en los medidos.";
    spots_moved(spots: String) => "Measured up to 1 in past a wall and taken at the wall: spot {spots}." | "Medidos hasta 1 pulg fuera de la pared y tomados en la pared: punto {spots}.";
    entry_missing => "1 entry below is missing or can't be read; mend it and the answer is here."
        | "Falta 1 dato abajo o no se entiende; corríjalo y aquí sale la respuesta.";
    entries_missing(count: usize) => "Missing or can't be read, below: {count}. Mend them and the answer is here."
        | "Datos que faltan o no se entienden, abajo: {count}. Corríjalos y aquí sale la respuesta.";
    cover_label => "Cover over the highest spot" | "Recubrimiento sobre el punto más alto";
    cover_hint => "The least the product allows: over wood mostly 1/4 to 1/2 in, over concrete 0 to 1/4 in. Read the bag."
        | "Lo mínimo que permite el producto: sobre madera casi siempre 1/4 a 1/2 pulg, sobre concreto 0 a 1/4. Lea el saco.";
    tilt_label => "Most tilt allowed for the flat pour" | "Inclinación máxima del colado plano";
    finish_label => "Finish that goes on top" | "Acabado que va encima";
    finish_tile_small => "Tile, every edge under 15 in" | "Loseta, todos los lados menores de 15 pulg";
    finish_tile_large => "Tile, an edge of 15 in or more" | "Loseta, algún lado de 15 pulg o más";
    finish_resilient => "Resilient sheet or tile" | "Vinil en rollo o loseta";
    finish_wood_long => "Wood, nailed with fasteners of 1-1/2 in or more" | "Madera, clavada con fijadores de 1-1/2 pulg o más";
    finish_wood_short => "Wood, glued or shorter fasteners" | "Madera, pegada o con fijadores más cortos";
    finish_floating => "Laminate or floating plank" | "Laminado o tablón flotante";
    deepest(depth: String) => "deepest {depth}" | "máximo {depth}";
    mean(depth: String) => "mean {depth}" | "promedio {depth}";
    leans(tilt: String) => "leans {tilt}" | "se inclina {tilt}";
    in_4_ft(inches: String) => "{inches} in per 4 ft" | "{inches} pulg en 4 pies";
    leans_not => "no tilt" | "sin inclinación";
    take_level => "Take level" | "Tomar a nivel";
    take_flat => "Take flat" | "Tomar plano";
    taken => "Taken" | "Tomado";
    level_note => "Runs level by itself." | "Se nivela solo.";
    flat_note => "Won't run to a tilt by itself: screed it to the pins, with a stiffer mix or a product made for it."
        | "No se acomoda solo a una inclinación: se regla a los clavos, con mezcla más firme o un producto para eso.";
    compare_heading => "Side by side" | "Lado a lado";
    row_bags => "Bags" | "Sacos";
    row_volume => "Volume" | "Volumen";
    row_least => "Least depth" | "Espesor mínimo";
    row_mean => "Mean depth" | "Espesor promedio";
    row_greatest => "Greatest depth" | "Espesor máximo";
    row_tilt => "Tilt" | "Inclinación";
    row_direction => "Falls toward" | "Baja hacia";
    row_lifts => "Lifts" | "Capas";
    row_opening(letter: &str, name: &str) => "Depth at {letter}{name}: left, right, greatest" | "Espesor en {letter}{name}: izquierda, derecha, mayor";
    row_limit(length: String, gap: String) => "Gap under {length} (limit {gap})" | "Hueco bajo {length} (límite {gap})";
    not_possible => "can't be had" | "no se puede";
    compass(degrees: String) => "{degrees}° from the right-hand direction" | "{degrees}° desde la derecha";
    direction_right => "right" | "la derecha";
    direction_away => "away" | "el fondo";
    direction_left => "left" | "la izquierda";
    direction_near => "near" | "el frente";
    direction_both(a: &str, b: &str) => "{a} and {b}" | "{a} y {b}";
    pins_heading => "Pins" | "Clavos";
    pins_show => "Show the pins for" | "Mostrar los clavos para";
    pins_says(kind: String, least: String, most: String) => "Plan with the depth of the {kind} pour at each spot, from {least} to {most}."
        | "Plano con el espesor del colado {kind} en cada punto, de {least} a {most}.";
    pins_caption(kind: String) => "Depth at each spot: set the pin or screw this high above the old floor. {kind}. The more the blue stands out, the deeper; the arrow points downhill."
        | "Espesor en cada punto: deje el clavo o tornillo a esta altura sobre el piso viejo. {kind}. Mientras más resalta el azul, más hondo; la flecha apunta cuesta abajo.";
    pins_table => "All pins as a table" | "Todos los clavos en tabla";
    pin_height => "Pin height" | "Altura del clavo";
    section_heading => "Section" | "Corte";
    section_from => "From spot number" | "Del punto número";
    section_to => "To spot number" | "Al punto número";
    section_hint => "Through the deepest place, wall to wall. For another line tap two spots on the map, or enter their numbers." | "Por el lugar más hondo, de pared a pared. Para otra línea toque dos puntos en el mapa o escriba sus números.";
    section_says(from: String, to: String) => "Section through the old floor and the pour from {from} to {to}." | "Corte del piso viejo y el colado de {from} a {to}.";
    section_caption(times: String) => "Heights are drawn {times} times as large as lengths." | "Las alturas se dibujan {times} veces más grandes que los largos.";
    end_near => "near" | "cerca";
    end_far => "far" | "lejos";
    end_left => "left" | "izquierda";
    end_right => "right" | "derecha";
    section_one => "Enter the spot at the other end too." | "Escriba también el punto de la otra punta.";
    section_same => "Choose two different spots." | "Elija dos puntos distintos.";
    bags_heading => "Bags and mixing" | "Sacos y mezclado";
    bag_yield_label => "One bag makes" | "Un saco rinde";
    bag_yield_hint => "0.4 to 0.5 ft³ for a 50 lb bag is common; the bag's own figure beats it." | "Lo común es 0.4 a 0.5 ft³ por saco de 50 lb; manda lo que diga el saco.";
    bag_water_label => "Water for one bag" | "Agua por saco";
    allowance_label => "Allowance" | "Margen de compra";
    batch_label => "Bags mixed at a time" | "Sacos por mezcla";
    minutes_label => "Minutes from one batch to that mixer's next" | "Minutos entre una mezcla y la siguiente";
    pot_label => "Minutes it still flows (pot life)" | "Minutos en que todavía corre";
    primer_label => "A gallon of primer covers" | "Un galón de primer cubre";
    bags_rest(volume: String, allowance: String, per_bag: String) => "{volume} and {allowance} % more, at {per_bag} a bag, rounded up." | "{volume} y {allowance} % más, a {per_bag} por saco, redondeado hacia arriba.";
    water(amount: String) => "Water: {amount} in all." | "Agua: {amount} en total.";
    pace(mixers: u32, batches: u32, between: String, total: String) =>
        "{mixers} mixers taking turns, {batches} batches, one every {between} min: {total} min from first water to the last batch, and the wet edge stays alive."
        | "{mixers} mezcladores por turnos, {batches} mezclas, una cada {between} min: {total} min desde la primera agua hasta la última, y el borde no se seca.";
    pace_outlives => "One round takes longer than a batch flows: have it on the floor well before the round is over, or it sets in the bucket. Mix less at a time, or take a slower product."
        | "Una vuelta tarda más de lo que la mezcla corre: tenga la mezcla en el piso mucho antes, o fragua en la cubeta. Mezcle menos cada vez o use un producto más lento.";
    pace_one(batches: u32, between: String, total: String) =>
        "One mixer keeps up: {batches} batches, one every {between} min, {total} min in all."
        | "Con un mezclador alcanza: {batches} mezclas, una cada {between} min, {total} min en total.";
    primer(amount: String) => "Primer: {amount}." | "Primer: {amount}.";
    edge_strip(length: String) => "Edge strip along the walls: {length}." | "Tira perimetral: {length}.";
    dam(length: String) => "Dam at the openings: {length}." | "Dique en los vanos: {length}.";
    dam_unknown => "Where the floor beyond isn't known the whole width counts." | "Donde no se conoce el piso del otro lado cuenta todo el ancho.";
    lifts_heading => "Lifts" | "Capas";
    lift_label => "Deepest single lift" | "Capa más gruesa de una vez";
    lift_bags(volume: String, bags: String) => "{volume} ({bags})" | "{volume} ({bags})";
    lifts_more(bags: u32, one: u32) => "Mixed lift by lift in whole bags it takes {bags} bags; the {one} above are for one pour." | "Mezclado capa por capa en sacos enteros lleva {bags} sacos; los {one} de arriba son para un solo vaciado.";
    lifts_each => "Each lift is a pour of its own, with its own mixing; the bag says how long to wait between them and how thin a lift may run out."
        | "Cada capa es un colado aparte, con su propia mezcla; el saco dice cuánto esperar entre ellas y qué tan delgada puede terminar.";
    lifts_one(limit: String) => "One lift: nowhere deeper than {limit}." | "Una sola capa: en ninguna parte más de {limit}.";
    lift_line(number: usize, thick: String, volume: String, below: String) => "Lift {number}: up to {thick} thick, {volume}; its top lies {below} under the finish."
        | "Capa {number}: hasta {thick} de espesor, {volume}; su cara queda {below} bajo el acabado.";
    lift_last(number: usize, thick: String, volume: String) => "Lift {number}: up to {thick} thick, {volume}; up to the finish." | "Capa {number}: hasta {thick} de espesor, {volume}; hasta el acabado.";
    asked_heading => "What was asked" | "Lo que se pidió";
    rules_heading => "Heights to keep" | "Alturas que respetar";
    rules_none => "A pipe flange, a sill, a threshold: say which spot, and how high the pour may stand or must stand there."
        | "Una brida, un umbral: diga en qué punto y a qué altura puede o debe quedar el colado.";
    rule_add => "Add a height" | "Agregar una altura";
    rule_spot => "At spot number" | "En el punto número";
    rule_kind => "The pour there" | "Ahí el colado";
    rule_at_most => "stands no higher than" | "no pasa de";
    rule_meet => "stands exactly at" | "queda exactamente a";
    rule_reading => "Reading of the finished pour" | "Lectura del colado terminado";
    rule_reading_hint => "Read the same way as the spots." | "Medida igual que los puntos.";
    rule_name(number: usize) => "Height {number}" | "Altura {number}";
    rule_take_out(number: usize) => "Take out height {number}" | "Quitar la altura {number}";
    rule_no_spot => "Enter the number of a spot." | "Escriba el número de un punto.";
    rule_called(spot: usize) => "the height at spot {spot}" | "la altura en el punto {spot}";
    cap_called(letter: &str) => "the height at opening {letter}" | "la altura en el vano {letter}";
    tilt_called => "the tilt limit" | "el límite de inclinación";
    cover_called(spot: usize) => "the cover at spot {spot}" | "el recubrimiento en el punto {spot}";
    covers_called(spots: String) => "the cover at spots {spots}" | "el recubrimiento en los puntos {spots}";
    cover_corner_called => "the cover at a corner" | "el recubrimiento en una esquina";
    conflict(causes: String) => "These can't be had together: {causes}." | "Esto no se puede a la vez: {causes}.";
    conflict_by(causes: String, by: String) => "These can't be had together: {causes}; they miss by {by}." | "Esto no se puede a la vez: {causes}; falta {by}.";
    limit_practice => "common practice" | "práctica común";
    way_higher(what: String, reading: String, by: String) => "It would work with {what} at a reading of {reading} ({by} higher)." | "Funcionaría con {what} en lectura de {reading} ({by} más alto).";
    way_lower(what: String, reading: String, by: String) => "It would work with {what} at a reading of {reading} ({by} lower)." | "Funcionaría con {what} en lectura de {reading} ({by} más bajo).";
    way_tilt(tilt: String) => "It would work with a tilt of up to {tilt}." | "Funcionaría con una inclinación de hasta {tilt}.";
    and => "and" | "y";
    refused_cover => "Enter a cover from 0 to 12 in." | "Escriba un recubrimiento de 0 a 12 pulg.";
    refused_tilt => "Enter a tilt of 0 or more." | "Escriba una inclinación de 0 o más.";
    refused_rule(what: String) => "Check {what}: it is out of reach, or has no place in the room." | "Revise {what}: queda fuera de alcance o fuera del cuarto.";
    refused_floor => "There is no floor to pour on." | "No hay piso donde colar.";
    flat_heading => "Flatness, before and after" | "Planeza, antes y después";
    flat_why => "Flat is not level: this is the gap under a straightedge, wherever in the room it is widest."
        | "Plano no es a nivel: este es el hueco bajo una regla, donde sea mayor en el cuarto.";
    gap_before(length: String, gap: String, limit: String) => "Old floor: {gap} under {length}; the limit is {limit}." | "Piso viejo: {gap} bajo {length}; el límite es {limit}.";
    passes => "within" | "cumple";
    over => "over" | "excede";
    after_pour => "After either pour the surface is a plane, so no gap is left by geometry; how flat it cures is up to the material and the hand. Check it again with the straightedge."
        | "Después de cualquier colado la superficie es un plano: por geometría no queda hueco; qué tan plana fragüe depende del material y de la mano. Revísela otra vez con la regla.";
    straightedge_label => "Straightedge of your own" | "Regla de otra medida";
    straightedge_gap(gap: String, length: String) => "Widest gap found under {length}: {gap}." | "Mayor hueco encontrado bajo {length}: {gap}.";
    worst_says(gap: String) => "Plan with the place where the widest gap, {gap}, was found." | "Plano con el lugar del mayor hueco encontrado, {gap}.";
    worst_caption(lines: usize) => "Dashed: where the widest gap was found, of {lines} lines tried. An estimate from the spots read."
        | "Punteado: dónde se encontró el mayor hueco, de {lines} líneas probadas. Una estimación con los puntos medidos.";
    patch_ask => "What if I only fill the lows?" | "¿Y si solo relleno lo bajo?";
    patch_none => "The floor meets the limit as it is; nothing to fill." | "El piso ya cumple; nada que rellenar.";
    patch_answer(volume: String, places: usize, deepest: String, area: String) => "About {volume}, up to {deepest} deep; places: {places}; floor touched: {area}."
        | "Cerca de {volume}, hasta {deepest} de hondo; lugares: {places}; piso tocado: {area}.";
    patch_bags(bags: String) => "{bags} bags at the same yield and allowance." | "{bags} sacos con el mismo rendimiento y margen.";
    patch_estimate => "An estimate from the spots read: a low between two spots is not in it. The floor stays as far out of level as it is."
        | "Una estimación con los puntos medidos: un bajo entre dos puntos no está contado. El piso sigue igual de desnivelado.";
    patch_too_many(most: usize) => "With more than {most} spots this takes too long here; survey the low part on its own."
        | "Con más de {most} puntos esto tarda demasiado aquí; mida aparte la parte baja.";
    patch_no_limit => "There is no floor here, or no limit to fill to." | "No hay piso aquí, o no hay límite al que rellenar.";
    patch_says => "Plan with the places to fill." | "Plano con los lugares que rellenar.";
    caution_bag => "Read the bag: least and greatest depth, water, pot life and drying time are the product's own." | "Lea el saco: espesores, agua, tiempo de trabajo y de secado son del producto.";
    caution_prime => "Clean, close gaps and prime; test for moisture. An unprimed floor drinks the water and the pour lets go." | "Limpie, selle huecos y ponga primer; pruebe la humedad. Un piso sin primer se bebe el agua y el colado se despega.";
    caution_joists => "The pour is heavy. Joists must carry it and stay within L/360 for tile, L/720 for stone (IRC Table R301.7, stone industry practice); ask an engineer where in doubt."
        | "El colado pesa. Las vigas deben aguantarlo y quedar en L/360 para loseta, L/720 para piedra (IRC Tabla R301.7, práctica de la piedra); ante la duda, un ingeniero.";
    caution_asbestos => "Old flooring, black adhesive and old patching compounds may hold asbestos: have them tested before you grind or scrape."
        | "Pisos viejos, adhesivo negro y pastas viejas pueden tener asbesto: hágalos analizar antes de lijar o raspar.";
    caution_dust => "Mixing and grinding make silica dust: wet methods or a vacuum, and a respirator." | "Mezclar y lijar sueltan polvo de sílice: método húmedo o aspiradora, y respirador.";
    lifts_refused_limit => "Enter a lift of more than 0." | "Escriba una capa mayor que 0.";
    lifts_refused_many(needed: String) => "That takes {needed} lifts; check the limit." | "Eso pide {needed} capas; revise el límite.";
    mix_amount => "Check the bag's figures: each must be more than 0." | "Revise las cifras del saco: cada una debe ser mayor que 0.";
    mix_many => "That is more bags than a truck carries; check the yield." | "Son más sacos de los que carga un camión; revise el rendimiento.";
    mix_slow(mixers: String, batches: u32) => "The pot life is too short for that pace: it would take {mixers} mixers for {batches} batches. Mix faster, smaller batches, or a slower product."
        | "El producto fragua antes: harían falta {mixers} mezcladores para {batches} mezclas. Mezcle más rápido, en menos cantidad, o use un producto más lento.";
    gap_refused => "Enter a straightedge from 6 in to 40 ft." | "Escriba una regla de 6 pulg a 40 pies.";
    to_doorways => "Next: the doorways" | "Sigue: las puertas";
}

/// The words of a finish.
pub fn finish(finish: Finish) -> &'static str {
    match finish {
        Finish::TileSmall => finish_tile_small(),
        Finish::TileLarge => finish_tile_large(),
        Finish::Resilient => finish_resilient(),
        Finish::WoodLong => finish_wood_long(),
        Finish::WoodShort => finish_wood_short(),
        Finish::Floating => finish_floating(),
    }
}

/// The words of a kind of pour.
pub fn kind(kind: PourKind) -> &'static str {
    match kind {
        PourKind::Level => super::common::level(),
        PourKind::Flat => super::common::flat(),
    }
}

/// A straightedge by its length, in feet where it is whole feet.
pub fn straightedge(limit: &Limit, units: Units) -> String {
    length_text(limit.straightedge_in.unwrap_or(0.0), units)
}

/// Which way a pour falls, in the words of the plan.
pub fn direction(degrees: f64) -> String {
    let names = [
        direction_right(),
        direction_away(),
        direction_left(),
        direction_near(),
    ];
    // Eighths of a turn: the odd ones lie between two names.
    let eighth = (degrees / 45.0).round().rem_euclid(8.0) as usize;
    let name = |i: usize| names.get(i % 4).copied().unwrap_or_default();
    if eighth.is_multiple_of(2) {
        name(eighth / 2).to_owned()
    } else {
        direction_both(name(eighth / 2), name(eighth / 2 + 1))
    }
}

/// What a rule or vertex is called in a conflict.
pub trait Naming {
    /// A height rule by its id.
    fn rule(&self, id: u32) -> String;
    /// The cover at a vertex of the surface.
    fn cover(&self, vertex: usize) -> String;
    /// The number of the spot at a vertex; none at a corner that was not read.
    fn spot(&self, vertex: usize) -> Option<usize>;
    /// A height as the user reads it.
    fn reading(&self, height_in: f64) -> String;
}

/// Why there is no pour.
pub fn pour_refusal(refusal: &PourRefusal, naming: &dyn Naming, units: Units) -> String {
    match refusal {
        PourRefusal::Cover { .. } => refused_cover().to_owned(),
        PourRefusal::TiltLimit { .. } => refused_tilt().to_owned(),
        PourRefusal::RuleHeight { id, .. }
        | PourRefusal::RuleNowhere { id }
        | PourRefusal::RuleOutside { id, .. } => refused_rule(naming.rule(*id)),
        PourRefusal::NoFloor => refused_floor().to_owned(),
        PourRefusal::Conflict(c) => {
            // On to the next figure that is shown: the nearest one might fall short.
            let (height_step_in, tilt_step) = shown_steps(units);
            let mut said: Vec<String> = c
                .clashes
                .iter()
                .map(|clash| {
                    let causes = clash_causes(clash, naming);
                    let by = clash.changes.iter().find_map(|way| match *way {
                        Way::Height { by_in, .. } => Some(at_least_text(by_in.abs(), units)),
                        Way::Tilt { .. } => None,
                    });
                    match by {
                        Some(by) => conflict_by(causes, by),
                        None => conflict(causes),
                    }
                })
                .collect();
            let ways = c
                .ways
                .iter()
                .map(|way| match way.rounded_on(height_step_in, tilt_step) {
                    Way::Height {
                        id, to_in, by_in, ..
                    } => {
                        let said = if by_in < 0.0 { way_lower } else { way_higher };
                        said(
                            naming.rule(id),
                            naming.reading(to_in),
                            length_text(by_in.abs(), units),
                        )
                    }
                    Way::Tilt { to_in_per_4ft } => way_tilt(tilt(to_in_per_4ft, units)),
                });
            said.extend(ways);
            said.join(" ")
        }
    }
}

/// What has a part in a clash, in a row; spots whose cover has are named together.
fn clash_causes(clash: &Clash, naming: &dyn Naming) -> String {
    let mut causes: Vec<String> = Vec::new();
    let mut covers: Vec<usize> = Vec::new();
    for cause in &clash.causes {
        match cause {
            Cause::Rule { id } => causes.push(naming.rule(*id)),
            Cause::TiltLimit => causes.push(tilt_called().to_owned()),
            Cause::Cover { vertex } => covers.push(*vertex),
        }
    }
    let numbers: Vec<String> = covers
        .iter()
        .filter_map(|vertex| naming.spot(*vertex))
        .map(|number| number.to_string())
        .collect();
    if numbers.len() == covers.len() && numbers.len() > 1 {
        causes.push(covers_called(numbers.join(", ")));
    } else {
        for cover in covers.iter().map(|vertex| naming.cover(*vertex)) {
            if !causes.contains(&cover) {
                causes.push(cover);
            }
        }
    }
    let last = causes.pop().unwrap_or_default();
    if causes.is_empty() {
        last
    } else {
        format!("{} {} {last}", causes.join(", "), and())
    }
}

/// The steps in which heights (inches) and tilts (inches per 4 ft) are shown.
fn shown_steps(units: Units) -> (f64, f64) {
    match units {
        Units::FeetInches => (1.0 / 16.0, 0.01),
        // Readings are shown to the millimetre, below 100 mm to a tenth; a height on whole ones is both.
        Units::Metric => (
            Length::from_mm(1.0).inches(),
            Slope::from_mm_per_m(0.01).in_per_4ft(),
        ),
    }
}

/// A gap and the limit that it is held against, as texts that never read alike where the gap is over: to 1/32 in,
/// since limits are as fine as that, or else to the thousandth of an inch or hundredth of a millimetre.
pub fn gap_and_limit(gap_in: f64, limit_in: f64, passes: bool, units: Units) -> (String, String) {
    let texts = (
        thickness_text(gap_in, units),
        thickness_text(limit_in, units),
    );
    if passes || texts.0 != texts.1 {
        return texts;
    }
    let fine = |inches: f64| match units {
        Units::FeetInches => format!("{}\"", fixed(inches, 3)),
        Units::Metric => format!("{} mm", fixed(Length::from_inches(inches).mm(), 2)),
    };
    (fine(gap_in), fine(limit_in))
}

/// How far a published limit was checked, where that must be told.
pub fn limit_status(status: Status) -> Option<&'static str> {
    match status {
        Status::FromMemory => Some(super::doorways::status_memory()),
        Status::TwoCopies | Status::OneCopy | Status::CommonPractice => None,
    }
}

/// A tilt as a rise in 4 ft (or per metre): to the hundredth, and where it takes that to four decimals, so that a
/// limit of 1/8 in is not shown as passed by 0.13.
pub fn tilt(in_per_4ft: f64, units: Units) -> String {
    match units {
        Units::FeetInches => in_4_ft(fixed(in_per_4ft, 4)),
        Units::Metric => Slope::from_in_per_4ft(in_per_4ft).format(SlopeUnit::MmPerM, 2),
    }
}

/// Why a pour can't be shared out over lifts.
pub fn lifts_refusal(refusal: &LiftsRefusal) -> String {
    match refusal {
        LiftsRefusal::Limit { .. } => lifts_refused_limit().to_owned(),
        LiftsRefusal::TooMany { needed } => lifts_refused_many(fixed(*needed, 0)),
    }
}

/// Why bags or pace can't be worked out.
pub fn mixing_refusal(refusal: &MixingRefusal) -> String {
    match refusal {
        MixingRefusal::NotAnAmount { .. } | MixingRefusal::Nothing { .. } => {
            mix_amount().to_owned()
        }
        MixingRefusal::TooMany { .. } => mix_many().to_owned(),
        MixingRefusal::TooSlow { mixers, batches } => mix_slow(fixed(*mixers, 0), *batches),
    }
}

/// Where a published limit stands; a standard keeps its own name.
pub fn limit_source(source: &'static str) -> &'static str {
    if source == "common practice" {
        limit_practice()
    } else {
        source
    }
}

/// Why the lows can't be filled.
pub fn patch_refusal(_: &StraightedgeRefusal) -> &'static str {
    patch_no_limit()
}

/// Why there is no gap under a straightedge.
pub fn straightedge_refusal(_: &StraightedgeRefusal) -> &'static str {
    gap_refused()
}

#[cfg(test)]
mod tests {
    use calc::floor::flatness::table;
    use calc::floor::pour::Conflict;

    use super::*;

    #[test]
    fn every_limit_is_shown_as_it_is_published() {
        // ASTM F710: 1/32 in under 1 ft; ANSI A108.02: 1/16 in under 2 ft for large tile.
        let shown = |id: &str| {
            let limit = table().iter().find(|limit| limit.id == id).unwrap();
            gap_and_limit(0.0, limit.max_gap_in, true, Units::FeetInches).1
        };
        assert_eq!(shown("resilient_1ft"), "1/32\"");
        assert_eq!(shown("tile_large_2ft"), "1/16\"");
    }

    #[test]
    fn a_gap_over_its_limit_never_reads_like_it() {
        for units in [Units::FeetInches, Units::Metric] {
            let (gap, limit) = gap_and_limit(0.1275, 0.125, false, units);
            assert_ne!(gap, limit);
        }
        let (gap, limit) = gap_and_limit(0.1275, 0.125, false, Units::FeetInches);
        assert_eq!((gap.as_str(), limit.as_str()), ("0.128\"", "0.125\""));
    }

    struct Plain;

    impl Naming for Plain {
        fn rule(&self, id: u32) -> String {
            format!("rule {id}")
        }
        fn cover(&self, vertex: usize) -> String {
            format!("cover {vertex}")
        }
        fn spot(&self, vertex: usize) -> Option<usize> {
            Some(vertex + 1)
        }
        fn reading(&self, height_in: f64) -> String {
            // Down from a level line.
            length_text(-height_in, Units::FeetInches)
        }
    }

    #[test]
    fn a_reading_offered_is_one_that_works() {
        // The pour must stand 1.02 in under the line or higher: 1 in under does, 1-1/16 in would not.
        let refusal = PourRefusal::Conflict(Conflict {
            clashes: vec![Clash {
                causes: vec![
                    Cause::Rule { id: 1 },
                    Cause::TiltLimit,
                    Cause::Cover { vertex: 2 },
                    Cause::Cover { vertex: 4 },
                ],
                changes: vec![Way::Height {
                    id: 1,
                    to_in: -1.02,
                    by_in: 0.23,
                    far_in: None,
                }],
            }],
            ways: vec![
                Way::Height {
                    id: 1,
                    to_in: -1.02,
                    by_in: 0.23,
                    far_in: None,
                },
                Way::Tilt {
                    to_in_per_4ft: 0.121,
                },
            ],
        });
        let said = pour_refusal(&refusal, &Plain, Units::FeetInches);
        assert!(said.contains("reading of 1\" (1/4\" higher)"), "{said}");
        assert!(said.contains("0.13 in per 4 ft"), "{said}");
        // Up to the next sixteenth: 0.23 in is not had with 3/16 in.
        assert!(
            said.contains("rule 1, the tilt limit and the cover at spots 3, 5; they miss by 1/4\""),
            "{said}"
        );
    }

    #[test]
    fn a_tilt_at_its_limit_is_not_shown_past_it() {
        let shown = |in_per_4ft| tilt(in_per_4ft, Units::FeetInches);
        assert_eq!(shown(0.125), "0.125 in per 4 ft");
        assert_eq!(shown(0.0625), "0.0625 in per 4 ft");
        assert_eq!(shown(0.1), "0.1 in per 4 ft");
    }
}
