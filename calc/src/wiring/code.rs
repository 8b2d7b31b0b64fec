//! The rules that answers rest on, with their section in each edition of NFPA 70.

use serde::Serialize;

use crate::job::CodeEdition;
use crate::working::Source;

/// How far a row of a table, or a section number, was checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// Found in a public source besides memory.
    Confirmed,
    /// Found in one source alone.
    OneSource,
    /// Not confirmed against a source.
    FromMemory,
    /// A rule of the trade, or a reading of a rule, with no single published source.
    CommonPractice,
}

macro_rules! rules {
    ($($(#[$doc:meta])* $rule:ident: $a:literal, $b:literal, $c:literal, $status:ident;)*) => {
        /// A rule of the code, named by what it says.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Rule {
            $($(#[$doc])* $rule,)*
        }

        impl Rule {
            /// Every rule, in the order of the table.
            pub const ALL: &[Self] = &[$(Self::$rule,)*];

            /// The section that holds the rule in an edition: `310.15(C)(1)`, `Chapter 9 Table 8`.
            pub const fn section(self, edition: CodeEdition) -> &'static str {
                match (self, edition) {
                    $((Self::$rule, CodeEdition::E2017) => $a,
                      (Self::$rule, CodeEdition::E2020) => $b,
                      (Self::$rule, CodeEdition::E2023) => $c,)*
                }
            }

            /// The section with the name of the code before it: `NFPA 70-2023 310.15(C)(1)`.
            pub const fn citation(self, edition: CodeEdition) -> &'static str {
                match (self, edition) {
                    $((Self::$rule, CodeEdition::E2017) => concat!("NFPA 70-2017 ", $a),
                      (Self::$rule, CodeEdition::E2020) => concat!("NFPA 70-2020 ", $b),
                      (Self::$rule, CodeEdition::E2023) => concat!("NFPA 70-2023 ", $c),)*
                }
            }

            /// How far the section and its substance were checked.
            pub const fn status(self) -> Status {
                match self {
                    $(Self::$rule => Status::$status,)*
                }
            }
        }
    };
}

include!("../../tables/code_sections.rs");

impl Rule {
    /// The rule as the source of a step.
    ///
    /// ```
    /// use calc::job::CodeEdition;
    /// use calc::wiring::code::Rule;
    /// assert_eq!(Rule::Ampacities.citation(CodeEdition::E2017), "NFPA 70-2017 Table 310.15(B)(16)");
    /// assert_eq!(Rule::Ampacities.citation(CodeEdition::E2023), "NFPA 70-2023 Table 310.16");
    /// ```
    pub const fn source(self, edition: CodeEdition) -> Source {
        Source::Published(self.citation(edition))
    }
}
