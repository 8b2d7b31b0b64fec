//! Conductors: size, metal, insulation or kind of cable, and which of them exist.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::tables::{RESISTANCE, ResistanceRow};

macro_rules! sizes {
    ($($(#[$doc:meta])* $size:ident $text:literal;)*) => {
        /// The size of a conductor, from 18 AWG to 500 kcmil; ordered by its area.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum Size {
            $($(#[$doc])* #[serde(rename = $text)] $size,)*
        }

        impl Size {
            /// Every size, from the smallest.
            pub const ALL: &[Self] = &[$(Self::$size,)*];

            /// The size as the trade writes it, without its unit: `14`, `1/0`, `250`.
            pub const fn text(self) -> &'static str {
                match self {
                    $(Self::$size => $text,)*
                }
            }
        }
    };
}

sizes! {
    /// 18 AWG.
    Awg18 "18";
    /// 16 AWG.
    Awg16 "16";
    /// 14 AWG.
    Awg14 "14";
    /// 12 AWG.
    Awg12 "12";
    /// 10 AWG.
    Awg10 "10";
    /// 8 AWG.
    Awg8 "8";
    /// 6 AWG.
    Awg6 "6";
    /// 4 AWG.
    Awg4 "4";
    /// 3 AWG.
    Awg3 "3";
    /// 2 AWG.
    Awg2 "2";
    /// 1 AWG.
    Awg1 "1";
    /// 1/0 AWG.
    Awg1_0 "1/0";
    /// 2/0 AWG.
    Awg2_0 "2/0";
    /// 3/0 AWG.
    Awg3_0 "3/0";
    /// 4/0 AWG.
    Awg4_0 "4/0";
    /// 250 kcmil.
    Kcmil250 "250";
    /// 300 kcmil.
    Kcmil300 "300";
    /// 350 kcmil.
    Kcmil350 "350";
    /// 400 kcmil.
    Kcmil400 "400";
    /// 500 kcmil.
    Kcmil500 "500";
}

impl Size {
    /// Reads a size: `14`, `#14`, `14 AWG`, `1/0`, `250 kcmil`, `250 MCM`.
    ///
    /// # Errors
    /// [`ConductorRefusal::UnknownSize`] for a size that no table here has, such as 13, 5 or 5/0.
    ///
    /// ```
    /// use calc::wiring::conductor::Size;
    /// assert_eq!(Size::parse("1/0 AWG"), Ok(Size::Awg1_0));
    /// assert!(Size::parse("13").is_err());
    /// assert!(Size::parse("250 AWG").is_err());
    /// ```
    pub fn parse(text: &str) -> Result<Self, ConductorRefusal> {
        let lower = text.trim().to_ascii_lowercase();
        let bare = lower.strip_prefix('#').unwrap_or(&lower);
        let (number, unit) = match bare.find(|c: char| c.is_ascii_alphabetic()) {
            Some(at) => (bare[..at].trim(), bare[at..].trim()),
            None => (bare.trim(), ""),
        };
        let fits = |size: &Self| match unit {
            "" => true,
            "awg" | "ga" | "gauge" => !size.is_kcmil(),
            "kcmil" | "mcm" => size.is_kcmil(),
            _ => false,
        };
        Self::ALL
            .iter()
            .copied()
            .find(|size| size.text() == number && fits(size))
            .ok_or_else(|| ConductorRefusal::UnknownSize {
                text: text.trim().chars().take(40).collect(),
            })
    }

    /// Whether the size is given in thousands of circular mils and not as a gauge.
    pub const fn is_kcmil(self) -> bool {
        matches!(
            self,
            Self::Kcmil250 | Self::Kcmil300 | Self::Kcmil350 | Self::Kcmil400 | Self::Kcmil500
        )
    }

    /// The next larger size, if there is one here.
    pub fn next(self) -> Option<Self> {
        Self::ALL.iter().copied().find(|&size| size > self)
    }

    /// The row of the resistance table (NFPA 70 Chapter 9 Table 8) for a construction.
    pub fn properties(self, construction: Construction) -> Option<&'static ResistanceRow> {
        RESISTANCE
            .iter()
            .find(|row| row.size == self && row.construction == construction)
    }
}

/// The metal of a conductor.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Metal {
    /// Copper.
    #[default]
    Copper,
    /// Aluminum.
    Aluminum,
    /// Copper-clad aluminum.
    CopperCladAluminum,
}

impl Metal {
    /// The smallest conductor of a circuit (310.3(A); 70-2017: 310.106(A)).
    pub const fn least_size(self) -> Size {
        match self {
            Self::Copper => Size::Awg14,
            Self::Aluminum | Self::CopperCladAluminum => Size::Awg12,
        }
    }
}

/// Solid or stranded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Construction {
    /// One wire.
    Solid,
    /// Several wires, Class B concentric.
    Stranded,
}

impl Construction {
    /// What cable is usually made of: solid up to 10 AWG, stranded above. Source: common practice.
    pub fn usual(size: Size) -> Self {
        if size <= Size::Awg10 {
            Self::Solid
        } else {
            Self::Stranded
        }
    }
}

/// The temperature that a conductor or a terminal is rated for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Rating {
    /// 60 C (140 F).
    #[serde(rename = "60")]
    C60,
    /// 75 C (167 F).
    #[serde(rename = "75")]
    C75,
    /// 90 C (194 F).
    #[serde(rename = "90")]
    C90,
}

impl Rating {
    /// The temperature, degrees C.
    pub const fn celsius(self) -> f64 {
        match self {
            Self::C60 => 60.0,
            Self::C75 => 75.0,
            Self::C90 => 90.0,
        }
    }

    pub(super) const fn column(self) -> usize {
        match self {
            Self::C60 => 0,
            Self::C75 => 1,
            Self::C90 => 2,
        }
    }
}

/// What is round a conductor: the kind of cable, or the insulation of a single conductor.
///
/// The ratings of NM-B, UF, TW, THWN and THHN are confirmed; the others are those of Table 310.16, from memory.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Covering {
    /// NM-B cable: conductors rated 90 C, used as 60 C (334.80).
    #[default]
    NmB,
    /// Old NM cable without the B: conductors taken as 60 C (from memory: made before 1985).
    NmOld,
    /// UF cable, 60 C.
    Uf,
    /// TW, 60 C.
    Tw,
    /// THW, 75 C.
    Thw,
    /// RHW, 75 C.
    Rhw,
    /// THWN, 75 C.
    Thwn,
    /// USE, 75 C.
    Use,
    /// XHHW in a wet place, 75 C.
    XhhwWet,
    /// XHHW in a dry or damp place, 90 C.
    XhhwDry,
    /// THHN in a dry or damp place, 90 C.
    Thhn,
    /// THWN-2, 90 C.
    Thwn2,
    /// XHHW-2, 90 C.
    Xhhw2,
    /// A single conductor with this rating printed on it.
    Rated(Rating),
}

impl Covering {
    /// The kinds to choose from by name.
    pub const NAMED: &[Self] = &[
        Self::NmB,
        Self::NmOld,
        Self::Uf,
        Self::Tw,
        Self::Thw,
        Self::Rhw,
        Self::Thwn,
        Self::Use,
        Self::XhhwWet,
        Self::XhhwDry,
        Self::Thhn,
        Self::Thwn2,
        Self::Xhhw2,
    ];

    /// The rating of the conductors.
    pub const fn rating(self) -> Rating {
        match self {
            Self::NmOld | Self::Uf | Self::Tw => Rating::C60,
            Self::Thw | Self::Rhw | Self::Thwn | Self::Use | Self::XhhwWet => Rating::C75,
            Self::NmB | Self::XhhwDry | Self::Thhn | Self::Thwn2 | Self::Xhhw2 => Rating::C90,
            Self::Rated(rating) => rating,
        }
    }

    /// Whether it is NM cable, which 334.80 holds to the 60 C column.
    pub const fn is_nm(self) -> bool {
        matches!(self, Self::NmB | Self::NmOld)
    }

    /// The sizes in which the cable is made for a metal, smallest and largest; `None` for single conductors, which
    /// only the ampacity table bounds.
    ///
    /// Source: NM 334.104, UF 340.104, from memory.
    const fn made_in(self, metal: Metal) -> Option<(Size, Size)> {
        let least = metal.least_size();
        match self {
            Self::NmB | Self::NmOld => Some((least, Size::Awg2)),
            Self::Uf => Some((least, Size::Awg4_0)),
            _ => None,
        }
    }
}

/// A conductor of a circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Conductor {
    /// Its size.
    pub size: Size,
    /// Its metal.
    pub metal: Metal,
    /// What is round it.
    pub covering: Covering,
}

impl Conductor {
    /// Checks that the conductor is one that a circuit may have.
    ///
    /// # Errors
    /// - [`ConductorRefusal::BelowLeast`]: smaller than 14 AWG copper or 12 AWG aluminum and copper-clad aluminum
    ///   (310.3(A); 70-2017: 310.106(A)).
    /// - [`ConductorRefusal::NotMade`]: a size in which the cable isn't made.
    ///
    /// ```
    /// use calc::wiring::conductor::{Conductor, Covering, Metal, Size};
    /// let wire = |size, metal| Conductor { size, metal, covering: Covering::NmB };
    /// assert!(wire(Size::Awg14, Metal::Copper).check().is_ok());
    /// assert!(wire(Size::Awg14, Metal::Aluminum).check().is_err());
    /// assert!(wire(Size::Kcmil250, Metal::Copper).check().is_err());
    /// ```
    pub fn check(&self) -> Result<(), ConductorRefusal> {
        let least = self.metal.least_size();
        if self.size < least {
            return Err(ConductorRefusal::BelowLeast {
                size: self.size,
                metal: self.metal,
                least,
            });
        }
        match self.covering.made_in(self.metal) {
            Some((least, most)) if self.size < least || self.size > most => {
                Err(ConductorRefusal::NotMade {
                    size: self.size,
                    covering: self.covering,
                    least,
                    most,
                })
            }
            _ => Ok(()),
        }
    }
}

/// Why a conductor is none.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum ConductorRefusal {
    /// A size that no table here has.
    #[error("no size {text:?}")]
    UnknownSize {
        /// What was given.
        text: String,
    },
    /// Smaller than a circuit may have in that metal.
    #[error("{size:?} {metal:?} is below {least:?}")]
    BelowLeast {
        /// The size given.
        size: Size,
        /// The metal given.
        metal: Metal,
        /// The smallest size of that metal.
        least: Size,
    },
    /// A size in which that cable isn't made.
    #[error("{covering:?} is made from {least:?} to {most:?}, not {size:?}")]
    NotMade {
        /// The size given.
        size: Size,
        /// The kind of cable.
        covering: Covering,
        /// The smallest size made.
        least: Size,
        /// The largest size made.
        most: Size,
    },
    /// The table has no value for that metal in that size.
    #[error("no value for {size:?} {metal:?}")]
    NotInTable {
        /// The size given.
        size: Size,
        /// The metal given.
        metal: Metal,
    },
    /// The table has no such construction in that size.
    #[error("{size:?} {construction:?} is not in the table")]
    NoConstruction {
        /// The size given.
        size: Size,
        /// Solid or stranded.
        construction: Construction,
    },
}
