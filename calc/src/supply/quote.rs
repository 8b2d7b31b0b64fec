//! A quote's lines as pasted: words, quantity, unit, price, in columns parted by tabs, by two or more blanks, or by
//! commas.

use serde::Serialize;

use super::need::Kind;
use super::unit::Unit;
use crate::quantity::{decimal, lower};

/// The most lines that are read.
pub const MOST_LINES: usize = 500;

/// What parts the columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Layout {
    /// Tabs, as from a spreadsheet.
    Tabs,
    /// Two or more blanks, as from a printed page.
    Blanks,
    /// Commas, RFC 4180 quotes allowed.
    Commas,
}

/// One line of a quote.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct QuoteLine {
    /// Where it stands in the text, from 1; 0 where it was typed by hand.
    pub line: usize,
    /// What it says.
    pub words: String,
    /// How much.
    pub quantity: Option<f64>,
    /// In what.
    pub unit: Option<Unit>,
    /// Price of one unit.
    pub price: Option<f64>,
    /// Price of the line.
    pub total: Option<f64>,
}

/// A quote as pasted.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PastedQuote {
    /// What parts its columns.
    pub layout: Layout,
    /// Its lines.
    pub lines: Vec<QuoteLine>,
    /// Lines that were passed over, from 1: headings, totals, taxes.
    pub passed_over: Vec<usize>,
    /// There were more than [`MOST_LINES`].
    pub cut: bool,
}

impl QuoteLine {
    /// Price of the line: as given, or quantity times price.
    pub fn amount(&self) -> Option<f64> {
        self.total.or_else(|| Some(self.quantity? * self.price?))
    }

    /// What quantity times price makes, where the line's total says something else: by more than half a cent of each
    /// unit's price and half a cent of its own, which is what rounding can do.
    ///
    /// # Example
    /// ```
    /// use calc::supply::quote::QuoteLine;
    /// let line = QuoteLine { quantity: Some(2.0), price: Some(28.0), total: Some(99.0), ..QuoteLine::default() };
    /// assert_eq!(line.multiplied_otherwise(), Some(56.0));
    /// ```
    pub fn multiplied_otherwise(&self) -> Option<f64> {
        let (quantity, total) = (self.quantity?, self.total?);
        let product = quantity * self.price?;
        let rounding = 0.005 * (quantity.abs() + 1.0) + 1e-9;
        ((product - total).abs() > rounding).then_some(product)
    }

    /// True where the words speak of work and of no material.
    pub fn is_labour(&self) -> bool {
        has_any(&self.words, LABOUR)
    }

    /// How many of the words by which a kind is known are in the line, longer ones counting more.
    pub fn words_of(&self, kind: Kind) -> usize {
        let said = lower(&self.words);
        known_by(kind)
            .split(',')
            .filter(|word| says(&said, word))
            .map(|word| word.len())
            .sum()
    }
}

/// Reads a quote. Nothing is refused: what is no number or unit is words, and the user mends the rest by hand.
///
/// Of the numbers in a line the first is the quantity, then the unit price, then the total; a heading that names its
/// columns says otherwise. A lone number with a currency sign or with cents, and no unit, is the line's total.
///
/// ```
/// use calc::supply::{quote, unit::Unit};
/// for text in ["Baseboard\t46\tLF\t2.10", "Baseboard  46  LF  2.10", "Baseboard, 46, LF, 2.10"] {
///     let line = &quote::read(text).lines[0];
///     assert_eq!((line.words.as_str(), line.quantity, line.unit, line.price), ("Baseboard", Some(46.0), Some(Unit::Foot), Some(2.1)));
/// }
/// ```
pub fn read(text: &str) -> PastedQuote {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let layout = layout_of(text);
    let mut quote = PastedQuote {
        layout,
        lines: Vec::new(),
        passed_over: Vec::new(),
        cut: false,
    };
    let mut columns = Vec::new();
    for (index, content) in text.lines().enumerate() {
        if content.trim().is_empty() {
            continue;
        }
        let cells = part(content, layout);
        let headings = headings(&cells);
        if quote.lines.is_empty() && !headings.is_empty() {
            columns = headings;
            quote.passed_over.push(index + 1);
            continue;
        }
        let mut line = line_of(&cells, &columns);
        line.line = index + 1;
        let sum = line.quantity.is_none() && has_any(&line.words, SUMS);
        if sum || line.words.is_empty() {
            quote.passed_over.push(index + 1);
        } else if quote.lines.len() == MOST_LINES {
            quote.cut = true;
            break;
        } else {
            quote.lines.push(line);
        }
    }
    quote
}

/// The layout that parts the most lines.
fn layout_of(text: &str) -> Layout {
    let parted = |layout| {
        text.lines()
            .filter(|line| part(line, layout).len() > 1)
            .count()
    };
    let mut best = (Layout::Tabs, parted(Layout::Tabs));
    for layout in [Layout::Blanks, Layout::Commas] {
        let count = parted(layout);
        if count > best.1 {
            best = (layout, count);
        }
    }
    best.0
}

fn part(line: &str, layout: Layout) -> Vec<String> {
    let line = line.trim();
    let trimmed = |cells: Vec<&str>| {
        cells
            .into_iter()
            .map(|cell| cell.trim().to_owned())
            .collect()
    };
    match layout {
        Layout::Tabs => trimmed(line.split('\t').collect()),
        Layout::Blanks => {
            let cells = line.split("  ").filter(|cell| !cell.trim().is_empty());
            trimmed(cells.collect())
        }
        Layout::Commas => commas(line),
    }
}

/// Cells between commas. A comma between quote marks, or between a number's thousands and hundreds with cents, parts
/// nothing.
fn commas(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match (c, quoted, cells.last_mut()) {
            ('"', _, Some(cell)) if quoted || cell.trim().is_empty() => quoted = !quoted,
            (',', false, _) => cells.push(String::new()),
            (c, _, Some(cell)) => cell.push(c),
            (_, _, None) => {}
        }
    }
    let mut joined: Vec<String> = Vec::new();
    for cell in cells {
        let cell = cell.trim();
        let thousands = joined.last().is_some_and(|before| {
            let digits = before.trim_start_matches('$');
            (1..=3).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit())
        });
        let hundreds = cell.len() == 6
            && cell.bytes().enumerate().all(|(i, b)| {
                if i == 3 {
                    b == b'.'
                } else {
                    b.is_ascii_digit()
                }
            });
        match joined.last_mut() {
            Some(before) if thousands && hundreds => {
                before.push_str(cell);
            }
            _ => joined.push(cell.to_owned()),
        }
    }
    joined
}

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Column {
    Words,
    Quantity,
    Unit,
    Price,
    Total,
    Other,
}

/// The columns that a line of headings names; empty where it is no such line.
fn headings(cells: &[String]) -> Vec<Column> {
    let columns: Vec<Column> = cells
        .iter()
        .map(|cell| {
            let has = |words| has_any(cell, words);
            if has("qty,quantity,quant,cantidad,cant") {
                Column::Quantity
            } else if has("total,amount,ext,extended,extension,importe,monto") {
                Column::Total
            } else if has("price,rate,cost,precio,costo") {
                Column::Price
            } else if has("unit,units,uom,um,unidad") {
                Column::Unit
            } else if has("description,item,work,scope,descripción,descripcion,concepto,partida") {
                Column::Words
            } else {
                Column::Other
            }
        })
        .collect();
    let known = columns.iter().filter(|c| **c != Column::Other).count();
    let numbers = cells.iter().any(|cell| number(cell).is_some());
    if known >= 2 && !numbers {
        columns
    } else {
        Vec::new()
    }
}

fn line_of(cells: &[String], columns: &[Column]) -> QuoteLine {
    let mut line = QuoteLine::default();
    let mut numbers: Vec<Number> = Vec::new();
    let mut words: Vec<&str> = Vec::new();
    for (index, cell) in cells.iter().enumerate() {
        let column = columns.get(index).copied().unwrap_or(Column::Other);
        if column == Column::Words {
            words.push(cell);
            continue;
        }
        if let Some(found) = number(cell) {
            if line.unit.is_none() {
                line.unit = found.unit;
            }
            match column {
                Column::Quantity => line.quantity = Some(found.value),
                Column::Price => line.price = Some(found.value),
                Column::Total => line.total = Some(found.value),
                _ => numbers.push(found),
            }
        } else if line.unit.is_none() && Unit::named(cell).is_some() {
            line.unit = Unit::named(cell);
        } else if !cell.is_empty() {
            words.push(cell);
        }
    }
    line.words = words.join(" ").trim().to_owned();
    if columns.is_empty() {
        share_out(&mut line, &numbers);
    }
    // A lump sum of one is no amount.
    if line.unit == Some(Unit::Lump) {
        line.total = line.amount().or(line.price);
    }
    line
}

/// Quantity, price and total from a line's numbers.
fn share_out(line: &mut QuoteLine, numbers: &[Number]) {
    let value = |index: usize| numbers.get(index).map(|number| number.value);
    match numbers {
        [] => {}
        [only] if only.money && only.unit.is_none() && line.unit.is_none() => {
            line.total = Some(only.value);
        }
        [only] if only.per => line.price = Some(only.value),
        [first, _] if first.signed => (line.price, line.total) = (value(0), value(1)),
        _ => (line.quantity, line.price, line.total) = (value(0), value(1), value(2)),
    }
}

/// A number in a cell.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Number {
    value: f64,
    /// It has a currency sign.
    signed: bool,
    /// It has a currency sign or cents.
    money: bool,
    /// It is a price of one unit: "3.50 / sf".
    per: bool,
    /// The unit behind it.
    unit: Option<Unit>,
}

/// A cell that is a number, alone or with its unit: `120`, `1,440.00`, `$3.50/sf`, `@ 3.50`, `120 sf`.
fn number(cell: &str) -> Option<Number> {
    let text = cell.trim().trim_start_matches('@').trim();
    let plain = text.trim_start_matches('$').trim_start();
    let signed = plain.len() < text.len();
    let end = plain
        .find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
        .unwrap_or(plain.len());
    let (digits, rest) = plain.split_at(end);
    let digits: String = digits.chars().filter(|c| *c != ',').collect();
    let value = decimal(&digits)?;
    let rest = rest.trim();
    let behind = rest
        .strip_prefix('/')
        .or_else(|| rest.strip_prefix("per "))
        .or_else(|| rest.strip_prefix("por "));
    let per = behind.is_some();
    let name = behind.unwrap_or(rest).trim();
    let unit = Unit::named(name);
    if !name.is_empty() && unit.is_none() {
        return None; // "2x4 studs", "12 x 24 tile": words
    }
    let cents = digits.len() >= 4 && digits.as_bytes().get(digits.len() - 3) == Some(&b'.');
    Some(Number {
        value,
        signed,
        money: signed || cents,
        per,
        unit,
    })
}

/// Words of lines that sum up others.
const SUMS: &str =
    "total,subtotal,sub-total,tax,taxes,sales tax,impuesto,impuestos,deposit,balance";

/// Words of work.
const LABOUR: &str = "labor,labour,install,installation,installed,demo,demolition,haul,mano de obra,instalar,instalación,demolición";

/// The words by which a kind is known in quotes, English and Spanish.
const fn known_by(kind: Kind) -> &'static str {
    match kind {
        Kind::Pour => {
            "self-level,self level,leveler,leveller,leveling,underlayment,slu,autonivelante,nivelador"
        }
        Kind::PourPrimer => "primer,floor primer,imprimador de piso",
        Kind::EdgeStrip => "edge strip,perimeter strip,isolation strip,foam strip,cinta perimetral",
        Kind::Dam => "dam,stop,dique",
        Kind::Tile => "tile,tiles,porcelain,ceramic,loseta,losetas,azulejo,piso cerámico",
        Kind::TileMortar => "thinset,thin-set,thin set,mortar,mortero,pegazulejo,adhesivo",
        Kind::Grout => "grout,lechada,boquilla,emboquillado",
        Kind::Membrane => "membrane,uncoupling,waterproofing,membrana",
        Kind::Board => "drywall,gypsum,wallboard,wall board,board,tablaroca,panel de yeso,yeso",
        Kind::Compound => "compound,joint compound,mud,pasta,masilla",
        Kind::JointTape => "tape,joint tape,cinta",
        Kind::Screws => "screws,screw,tornillos,tornillo",
        Kind::CornerBead => "corner bead,cornerbead,bead,esquinero",
        Kind::PaintPrimer => "primer,sealer,sellador,imprimador",
        Kind::WallPaint => "paint,wall paint,paint walls,walls,pintura,paredes",
        Kind::CeilingPaint => "paint,ceiling paint,ceiling,pintura,techo,cielo",
        Kind::TrimPaint => "paint,trim paint,enamel,pintura,esmalte",
        Kind::Base => "base,baseboard,base board,zócalo,rodapié",
        Kind::Shoe => "shoe,quarter round,shoe moulding,shoe molding,cuarto bocel",
        Kind::Casing => "casing,door trim,marco,chambrana",
        Kind::Cable => "cable,wire,alambre",
        Kind::Staples => "staples,staple,grapas",
        Kind::WiringBox => "boxes,box,device box,cajas,caja eléctrica",
        Kind::Fan => "fan,exhaust fan,extractor,ventilador",
        Kind::Duct => "duct,ducting,ducto",
        Kind::Elbow => "elbow,elbows,codo,codos",
        Kind::DuctCap => "cap,wall cap,roof cap,vent cap,tapa",
    }
}

fn has_any(text: &str, words: &str) -> bool {
    let said = lower(text);
    words.split(',').any(|word| says(&said, word))
}

/// True where a text says a word: from the start of a word to its end.
fn says(said: &str, word: &str) -> bool {
    let letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    let mut from = 0;
    while let Some(at) = said.get(from..).and_then(|rest| rest.find(word)) {
        let start = from + at;
        let end = start + word.len();
        let before = said.get(..start).and_then(|s| s.chars().next_back());
        let after = said.get(end..).and_then(|s| s.chars().next());
        if !letter(before) && !letter(after) {
            return true;
        }
        from = end;
    }
    false
}
