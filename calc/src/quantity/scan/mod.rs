//! The scanner under every parser of quantities: a text becomes marks, numbers and words, nothing is guessed.
//!
//! Numbers, in every field alike:
//! - a decimal point or a decimal comma: `87.625`, `.5`, `2,5`;
//! - thousands are read where nothing else can be meant: `1,234.5`, `1.234,5`, `1,234,567`;
//! - one comma before exactly three digits may be either and is refused with both readings: `1,234`. A leading
//!   zero settles it: `0,125`;
//! - fractions of whole numbers: `5/8`, `⅝`, `5⁄8`; mixed with a blank or a tight hyphen: `3 5/8`, `3-5/8`, `3⅝`.
//!   In a mixed number the fraction is below one.
//! - a hyphen with a blank before and none after it (`3 -5/8`) looks like a minus in the middle and is refused.

mod lex;

use super::number::NumberRefusal;
use crate::quantity::lower;
pub(crate) use lex::Kind;
use lex::{Token, lex, place};

/// A number as written: whole, decimal, fraction or mixed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Group {
    /// Its value.
    pub(crate) value: f64,
    /// It has a whole part and a fraction.
    pub(crate) mixed: bool,
    /// The token it began with.
    first: usize,
}

impl Group {
    /// True where nothing is left over a whole number.
    pub(crate) fn is_whole(&self) -> bool {
        self.value.fract() == 0.0
    }
}

/// A text cut into tokens, read from the left.
#[derive(Debug)]
pub(crate) struct Scanner<'a> {
    text: &'a str,
    tokens: Vec<Token>,
    next: usize,
}

impl<'a> Scanner<'a> {
    /// Cuts a text.
    ///
    /// # Errors
    /// Nothing but blanks, or a number that can't be read in one way only.
    pub(crate) fn new(text: &'a str) -> Result<Self, NumberRefusal> {
        let tokens = lex(text)?;
        if tokens.is_empty() {
            return Err(NumberRefusal::Blank);
        }
        Ok(Self {
            text,
            tokens,
            next: 0,
        })
    }

    /// The next token's kind.
    pub(crate) fn peek(&self) -> Option<Kind> {
        self.token(0).map(|t| t.kind)
    }

    /// The kind of the token `ahead` of the next.
    pub(crate) fn peek_at(&self, ahead: usize) -> Option<Kind> {
        self.token(ahead).map(|t| t.kind)
    }

    fn token(&self, ahead: usize) -> Option<Token> {
        self.tokens.get(self.next + ahead).copied()
    }

    /// Goes past the next token.
    pub(crate) fn advance(&mut self) {
        self.next += 1;
    }

    /// True where everything was read.
    pub(crate) fn is_done(&self) -> bool {
        self.next >= self.tokens.len()
    }

    /// The next token in lower case, where it is a word.
    pub(crate) fn word(&self) -> Option<String> {
        let token = self.token(0)?;
        (token.kind == Kind::Word).then(|| lower(self.piece(token)))
    }

    fn piece(&self, token: Token) -> &'a str {
        self.text.get(token.start..token.end).unwrap_or_default()
    }

    /// Text and place (in characters) of the next token; of the last one at the end of the text.
    pub(crate) fn here(&self) -> (String, usize) {
        self.place(self.next)
    }

    /// Text and place of the first token of a group.
    pub(crate) fn place_of(&self, group: &Group) -> (String, usize) {
        self.place(group.first)
    }

    fn place(&self, index: usize) -> (String, usize) {
        let token = self.tokens.get(index).or(self.tokens.last()).copied();
        token.map_or((String::new(), 0), |t| {
            (self.piece(t).to_owned(), place(self.text, t.start))
        })
    }

    /// The refusal of the next token.
    pub(crate) fn refusal(&self) -> NumberRefusal {
        let (piece, at) = self.here();
        NumberRefusal::NotUnderstood { piece, at }
    }

    /// Refuses whatever is left.
    pub(crate) fn finish(&self) -> Result<(), NumberRefusal> {
        if self.is_done() {
            Ok(())
        } else {
            Err(self.refusal())
        }
    }

    /// Reads a sign; true for a minus.
    pub(crate) fn sign(&mut self) -> bool {
        match self.peek() {
            Some(Kind::Dash) => {
                self.advance();
                true
            }
            Some(Kind::Plus) => {
                self.advance();
                false
            }
            _ => false,
        }
    }

    /// Goes past a hyphen that joins two numbers: not one that looks like a minus.
    pub(crate) fn joiner(&mut self) -> bool {
        let (Some(dash), Some(after)) = (self.token(0), self.token(1)) else {
            return false;
        };
        let joins = dash.kind == Kind::Dash && (!dash.gap || after.gap);
        if joins {
            self.advance();
        }
        joins
    }

    /// Goes past a hyphen without blanks on either side.
    pub(crate) fn tight_joiner(&mut self) -> bool {
        let (Some(dash), Some(after)) = (self.token(0), self.token(1)) else {
            return false;
        };
        let joins = dash.kind == Kind::Dash && !dash.gap && !after.gap;
        if joins {
            self.advance();
        }
        joins
    }

    /// Reads a number, or nothing where there is none.
    ///
    /// # Errors
    /// A denominator of zero; a mixed number whose fraction isn't below one.
    pub(crate) fn group(&mut self) -> Result<Option<Group>, NumberRefusal> {
        let first = self.next;
        let group = |value, mixed| {
            Ok(Some(Group {
                value,
                mixed,
                first,
            }))
        };
        if let Some((numerator, denominator)) = self.fraction()? {
            return group(numerator / denominator, false);
        }
        let Some(Kind::Number { value, plain }) = self.peek() else {
            return Ok(None);
        };
        self.advance();
        if !plain {
            return group(value, false);
        }
        let back = self.next;
        self.tight_joiner();
        match self.fraction()? {
            Some((numerator, denominator)) if numerator < denominator => {
                group(value + numerator / denominator, true)
            }
            Some((numerator, denominator)) => Err(NumberRefusal::FractionPastOne {
                numerator,
                denominator,
            }),
            None => {
                self.next = back;
                group(value, false)
            }
        }
    }

    fn fraction(&mut self) -> Result<Option<(f64, f64)>, NumberRefusal> {
        if let Some(Kind::Vulgar {
            numerator,
            denominator,
        }) = self.peek()
        {
            self.advance();
            return Ok(Some((f64::from(numerator), f64::from(denominator))));
        }
        let (
            Some(Kind::Number {
                value: numerator,
                plain: true,
            }),
            Some(Kind::Slash),
            Some(Kind::Number {
                value: denominator,
                plain: true,
            }),
        ) = (self.peek(), self.peek_at(1), self.peek_at(2))
        else {
            return Ok(None);
        };
        if denominator == 0.0 {
            return Err(NumberRefusal::ZeroDenominator);
        }
        self.next += 3;
        Ok(Some((numerator, denominator)))
    }

    /// What is left as one key for a table of units: lower case, without blanks, dots and carets, a raised 2 as
    /// `2` (`sq. ft` is `sqft`, `ft²` is `ft2`). Nothing where it holds anything but words and powers.
    pub(crate) fn unit_key(&self) -> Option<String> {
        let mut key = String::new();
        for token in self.tokens.iter().skip(self.next) {
            match token.kind {
                Kind::Word => key.push_str(&lower(self.piece(*token))),
                Kind::Raised(power) => key.push(char::from(b'0' + power)),
                Kind::Number { plain: true, .. } if !token.gap => key.push_str(self.piece(*token)),
                Kind::Other if self.piece(*token) == "^" => {}
                _ => return None,
            }
        }
        Some(key)
    }

    /// Everything that is left, as typed, and its place.
    pub(crate) fn remainder(&self) -> (String, usize) {
        match self.token(0) {
            Some(t) => (
                self.text
                    .get(t.start..)
                    .unwrap_or_default()
                    .trim()
                    .to_owned(),
                place(self.text, t.start),
            ),
            None => self.here(),
        }
    }
}
