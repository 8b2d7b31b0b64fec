//! From characters to tokens: marks, numbers, words.

use crate::quantity::decimal;
use crate::quantity::number::NumberRefusal;

/// What a token is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Kind {
    /// A number; `plain` where it is digits only.
    Number { value: f64, plain: bool },
    /// A vulgar fraction in one character.
    Vulgar { numerator: u8, denominator: u8 },
    /// A fraction bar or a "per" slash.
    Slash,
    /// A hyphen or a minus.
    Dash,
    /// A plus.
    Plus,
    /// The feet mark.
    FeetMark,
    /// The inch mark.
    InchMark,
    /// Letters.
    Word,
    /// `%`
    Percent,
    /// `°`
    Degree,
    /// `:`
    Colon,
    /// A raised 2 or 3.
    Raised(u8),
    /// Anything else.
    Other,
}

/// A piece of the text.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Token {
    pub(crate) kind: Kind,
    pub(super) start: usize,
    pub(super) end: usize,
    /// Blanks stand before it.
    pub(crate) gap: bool,
}

/// Cuts a text into tokens.
///
/// # Errors
/// A number that can't be read in one way only.
pub(super) fn lex(text: &str) -> Result<Vec<Token>, NumberRefusal> {
    let mut tokens: Vec<Token> = Vec::new();
    let mut gap = false;
    let mut start = 0;
    let char_at = |byte: usize| text.get(byte..).and_then(|rest| rest.chars().next());
    let run = |from: usize, belongs: &dyn Fn(char) -> bool| {
        let rest = text.get(from..).unwrap_or_default();
        from + rest.find(|c| !belongs(c)).unwrap_or(rest.len())
    };
    while let Some(c) = char_at(start) {
        let after = start + c.len_utf8();
        let following = char_at(after);
        let before_digit = following.is_some_and(|f| f.is_ascii_digit());
        // A unit directly before: `7 ft.`, `7', 3"`.
        let after_unit = !gap
            && tokens
                .last()
                .is_some_and(|t| matches!(t.kind, Kind::Word | Kind::FeetMark | Kind::InchMark));
        let mut end = after;
        let kind = match c {
            _ if is_blank(c) => {
                gap = true;
                start = after;
                continue;
            }
            '.' if after_unit && !before_digit => {
                start = after;
                continue;
            }
            ',' if after_unit && following.is_some_and(is_blank) => {
                start = after;
                continue;
            }
            // `7 ft.3 in` may be 3 in or 0.3 in.
            '.' | ',' if after_unit => Kind::Other,
            '0'..='9' => {
                end = run(start, &|c| matches!(c, '0'..='9' | '.' | ','));
                number(text, start, end)?
            }
            '.' | ',' if before_digit => {
                end = run(start, &|c| matches!(c, '0'..='9' | '.' | ','));
                number(text, start, end)?
            }
            '\u{215F}' => {
                // "Fraction numerator one": a 1 and a bar.
                tokens.push(Token {
                    kind: Kind::Number {
                        value: 1.0,
                        plain: true,
                    },
                    start,
                    end,
                    gap,
                });
                gap = false;
                Kind::Slash
            }
            _ => match mark(c) {
                Some(Kind::FeetMark) if following.and_then(mark) == Some(Kind::FeetMark) => {
                    end = after + following.map_or(0, char::len_utf8);
                    Kind::InchMark
                }
                Some(kind) => kind,
                None if is_word(c) => {
                    end = run(start, &is_word);
                    Kind::Word
                }
                None => Kind::Other,
            },
        };
        tokens.push(Token {
            kind,
            start,
            end,
            gap,
        });
        gap = false;
        start = end;
    }
    Ok(tokens)
}

/// Reads a run of digits, points and commas.
fn number(text: &str, start: usize, end: usize) -> Result<Kind, NumberRefusal> {
    let run = text.get(start..end).unwrap_or_default();
    let not_understood = || NumberRefusal::NotUnderstood {
        piece: run.to_owned(),
        at: place(text, start),
    };
    let points = run.matches('.').count();
    let commas = run.matches(',').count();
    let value = |text: &str| decimal(text).ok_or_else(not_understood);
    let number = match (points, commas) {
        (0, 0) => {
            return Ok(Kind::Number {
                value: value(run)?,
                plain: true,
            });
        }
        (1, 0) => value(run)?,
        (0, 1) => {
            let (left, right) = run.split_once(',').unwrap_or_default();
            let as_decimal = value(&format!("{left}.{right}"))?;
            if right.is_empty() {
                return Err(not_understood());
            }
            if right.len() == 3 && matches!(left.len(), 1..=3) && !left.starts_with('0') {
                return Err(NumberRefusal::AmbiguousComma {
                    piece: run.to_owned(),
                    at: place(text, start),
                    as_decimal,
                    as_thousands: value(&format!("{left}{right}"))?,
                });
            }
            as_decimal
        }
        _ => {
            // Thousands in one mark, decimals after at most one of the other.
            let first = run.find(['.', ',']).and_then(|i| run.get(i..=i));
            let thousands = first.unwrap_or_default();
            let decimal = if thousands == "," { "." } else { "," };
            let (whole, part) = match run.split_once(decimal) {
                Some((whole, part)) => (whole, Some(part)),
                None => (run, None),
            };
            let mut groups = whole.split(thousands);
            let head = groups.next().unwrap_or_default();
            let grouped = matches!(head.len(), 1..=3)
                && !head.starts_with('0')
                && groups.all(|g| g.len() == 3 && !g.contains(decimal));
            let ends = part.is_none_or(|p| !p.is_empty() && p.chars().all(|c| c.is_ascii_digit()));
            if !grouped || !ends {
                return Err(not_understood());
            }
            value(&format!(
                "{}.{}",
                whole.replace(thousands, ""),
                part.unwrap_or("0")
            ))?
        }
    };
    Ok(Kind::Number {
        value: number,
        plain: false,
    })
}

/// A byte offset counted in characters.
pub(super) fn place(text: &str, byte: usize) -> usize {
    text.char_indices().take_while(|(i, _)| *i < byte).count()
}

/// Blanks of every width, and the invisible marks that come along with copied text.
fn is_blank(c: char) -> bool {
    c.is_whitespace()
        || matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}' | '\u{2066}'..='\u{2069}' | '\u{FEFF}')
}

/// The kind of a character that is a token by itself.
fn mark(c: char) -> Option<Kind> {
    Some(match c {
        '/' | '\u{2044}' | '\u{2215}' => Kind::Slash,
        '-' | '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}' | '\u{FE63}' | '\u{FF0D}' => {
            Kind::Dash
        }
        '+' => Kind::Plus,
        '\'' | '`' | '´' | '‘' | '’' | '‛' | '′' | 'ʹ' | 'ʼ' | '\u{FF07}' => {
            Kind::FeetMark
        }
        '"' | '“' | '”' | '„' | '‟' | '″' | 'ʺ' | '˝' | '\u{FF02}' => Kind::InchMark,
        '%' => Kind::Percent,
        '°' | 'º' | '˚' => Kind::Degree,
        ':' | '\u{2236}' => Kind::Colon,
        '²' => Kind::Raised(2),
        '³' => Kind::Raised(3),
        _ => {
            let (numerator, denominator) = vulgar(c)?;
            Kind::Vulgar {
                numerator,
                denominator,
            }
        }
    })
}

/// The vulgar fractions of Unicode (blocks Latin-1 Supplement and Number Forms), by their numeric values in
/// the Unicode Character Database.
fn vulgar(c: char) -> Option<(u8, u8)> {
    Some(match c {
        '¼' => (1, 4),
        '½' => (1, 2),
        '¾' => (3, 4),
        '⅐' => (1, 7),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '↉' => (0, 3),
        _ => return None,
    })
}

fn is_word(c: char) -> bool {
    c.is_alphabetic() && mark(c).is_none()
}
