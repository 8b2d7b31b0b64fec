//! What closes the joints of board: levels of finish, compound, tape, bead.

use calc::finish::compound::{CompoundRefusal, Range, SurfaceCode, UseCode};
use calc::job::Units;
use calc::quantity::fixed;

words! {
    title => "Joint compound and tape" | "Pasta y cinta";
    sum_line => "Compound, tape and corner bead for so much board, by level of finish." | "Pasta, cinta y esquineros para tanta tablaroca, por nivel de acabado.";
    heading => "Closing the joints" | "Cerrar las juntas";
    level_label => "Level of finish" | "Nivel de acabado";
    level(number: u8) => "Level {number}" | "Nivel {number}";
    level_hint => "0 to 5. Level 4 is usual under flat paint." | "0 a 5. El nivel 4 es usual bajo pintura mate.";
    pail_label => "A pail holds, gallons" | "Una cubeta lleva, galones";
    tape_label => "Tape to order more" | "Cinta de más";
    board_label => "Board" | "Tablaroca";
    taped_label => "Joints and inside corners, together" | "Juntas y rincones, en total";
    taped_hint => "Empty: tape is told by rules of thumb alone." | "Vacío: la cinta sale solo de reglas prácticas.";
    corners_label => "Outside corners" | "Esquinas";
    corner_label => "Height of each" | "Altura de cada una";
    between(low: String, high: String) => "{low} to {high}" | "{low} a {high}";
    gal_word => "gal" | "gal";
    rests(pails: String) => "That is {pails}. Rules of thumb disagree, so it is a range." | "Son {pails}. Las reglas prácticas no coinciden; por eso es un rango.";
    none_at_level => "At this level no joint is taped and nothing is coated." | "En este nivel no se encinta ni se pone pasta.";
    pails(count: u32) => "{count} pails" | "{count} cubetas";
    one_pail => "1 pail" | "1 cubeta";
    pail_range(low: u32, high: u32) => "{low} to {high} pails" | "{low} a {high} cubetas";
    row_tape => "Tape, with the allowance" | "Cinta, con el margen";
    row_tape_area => "Tape by rules of thumb" | "Cinta por reglas prácticas";
    row_skim => "Of it for the skim coat" | "De eso, para la capa delgada";
    row_bead => "Corner bead" | "Esquineros";
    row_fasteners => "Fasteners of the bead" | "Clavos del esquinero";
    row_screws_area => "Screws by rules of thumb" | "Tornillos por reglas prácticas";
    row_coats => "Coats on joints, besides the tape’s" | "Manos en juntas, además de la de la cinta";
    row_surface => "The surface" | "La superficie";
    row_use => "Usual for" | "Usual para";
    bead_of(count: u32, length: String) => "{count} of {length}" | "{count} de {length}";
    untouched => "as it was hung" | "como quedó puesta";
    marks_and_ridges => "tool marks and ridges are acceptable" | "se aceptan marcas y bordes";
    marks => "free of excess compound, marks are acceptable" | "sin pasta de más, se aceptan marcas";
    smooth => "smooth, without marks or ridges" | "lisa, sin marcas ni bordes";
    skimmed => "smooth, with a skim coat all over" | "lisa, con capa delgada en todo";
    temporary => "temporary work, or a finish not yet chosen" | "trabajo temporal o acabado sin decidir";
    hidden => "attics and hidden places" | "áticos y lugares ocultos";
    tile_base => "under tile; garages and storage" | "bajo loseta; cocheras y bodegas";
    texture => "heavy texture or heavy wall covering" | "textura gruesa o tapiz grueso";
    flat_paint => "flat paint, light texture" | "pintura mate, textura ligera";
    gloss => "gloss or dark paint, strong light from the side" | "pintura brillante u oscura, luz fuerte de lado";
    refused => "This can't be worked out from these entries." | "Esto no sale de estos datos.";
    too_many => "That is more corners than are counted here." | "Son más esquinas de las que aquí se cuentan.";
    keep_hint => "Level, tape and pail go into the room; its board and joints follow from its walls."
        | "Nivel, cinta y cubeta pasan al cuarto; su tablaroca y sus juntas salen de las paredes.";
    caution_sand => "Sanding dust scars lungs. Sand wet or with a vacuum, and wear a fitted respirator."
        | "El polvo de lijar daña los pulmones. Lije húmedo o con aspiradora, y use un respirador a la medida.";
}

/// Pails from a low to a high end.
pub fn pails_of([low, high]: [u32; 2]) -> String {
    match (low, high) {
        (1, 1) => one_pail().to_owned(),
        (low, high) if low == high => pails(low),
        (low, high) => pail_range(low, high),
    }
}

/// A range of gallons.
pub fn gallons(of: &Range, units: Units) -> String {
    between(
        super::gallons(of.low, units),
        super::gallons(of.high, units),
    )
}

/// A range of whole things.
pub fn whole(of: &Range) -> String {
    between(fixed(of.low, 0), fixed(of.high, 0))
}

/// What a surface is like.
pub fn surface(of: SurfaceCode) -> &'static str {
    match of {
        SurfaceCode::Untouched => untouched(),
        SurfaceCode::MarksAndRidges => marks_and_ridges(),
        SurfaceCode::Marks => marks(),
        SurfaceCode::Smooth => smooth(),
        SurfaceCode::Skimmed => skimmed(),
    }
}

/// What a level is for.
pub fn usual_use(of: UseCode) -> &'static str {
    match of {
        UseCode::Temporary => temporary(),
        UseCode::HiddenPlaces => hidden(),
        UseCode::TileBaseAndStorage => tile_base(),
        UseCode::HeavyTexture => texture(),
        UseCode::FlatPaint => flat_paint(),
        UseCode::GlossOrStrongLight => gloss(),
    }
}

/// Why there is no answer.
pub fn refusal(of: &CompoundRefusal) -> String {
    match of {
        CompoundRefusal::TooManyCorners { .. } => too_many(),
        CompoundRefusal::NotAnAmount { .. }
        | CompoundRefusal::Level { .. }
        | CompoundRefusal::Bead(_) => refused(),
    }
    .to_owned()
}
