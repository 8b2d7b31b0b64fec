//! What can't be in a panel, and what shouldn't.

use super::*;
use crate::quantity::lower;

/// What is remarkable about a panel.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PanelFinding {
    /// Neutral and ground joined where a feeder supplies the panel: current returns on bare and metal parts.
    JoinedBeyondService {
        /// The section.
        section: &'static str,
    },
    /// Neutral and ground separate at the service, where they are to be bonded.
    NotBondedAtService {
        /// The section.
        section: &'static str,
    },
    /// More poles than the label allows.
    TooManyPoles {
        /// Poles there are.
        poles: u32,
        /// Poles that are allowed.
        most: u32,
        /// The section.
        section: &'static str,
    },
    /// The device that protects the panel is larger than its rating.
    AboveRating {
        /// The device, amperes.
        device_a: f64,
        /// The panel, amperes.
        rating_a: f64,
        /// The section.
        section: &'static str,
    },
    /// Nothing is known to protect the panel at its rating.
    NoProtectionKnown {
        /// The section.
        section: &'static str,
    },
    /// Fed from another building, without a disconnect here.
    NoDisconnect {
        /// The section.
        section: &'static str,
    },
    /// Whether the panel takes tandems there was not read from its label.
    TandemNotChecked {
        /// The breaker.
        breaker: u32,
        /// The section.
        section: &'static str,
    },
    /// A breaker whose rating is no standard one.
    NotStandard {
        /// The breaker.
        breaker: u32,
        /// Its rating, amperes.
        rating_a: f64,
        /// The section.
        section: &'static str,
    },
    /// A handle tie between two poles of one leg: it makes no multiwire circuit and no 240 V one.
    TieOnOneLeg {
        /// The breaker.
        breaker: u32,
        /// The one it is tied to.
        other: u32,
        /// The section.
        section: &'static str,
    },
    /// A handle tie that can't be: not between neighbours of a column, with two poles, or between different ratings.
    TieCannotBe {
        /// The breaker.
        breaker: u32,
        /// The one it is said to be tied to.
        other: u32,
        /// The section.
        section: &'static str,
    },
    /// The rating of the panel is not known, so that its protection can't be judged.
    RatingNotKnown {
        /// The section.
        section: &'static str,
    },
    /// A breaker without a label.
    NoLabel {
        /// The breaker.
        breaker: u32,
        /// The section.
        section: &'static str,
    },
    /// Breakers that can't be told apart by their labels.
    SameLabel {
        /// The breakers.
        breakers: Vec<u32>,
        /// The section.
        section: &'static str,
    },
    /// What a breaker feeds has not been confirmed.
    NotConfirmed {
        /// The breaker.
        breaker: u32,
    },
}

pub(super) fn poles(panel: &Panel) -> u32 {
    panel
        .breakers
        .iter()
        .map(|breaker| {
            if breaker.form == BreakerForm::TwoPole {
                2
            } else {
                1
            }
        })
        .sum()
}

pub(super) fn refusals(panel: &Panel) -> Vec<PanelRefusal> {
    let mut refusals = Vec::new();
    if !(1..=MOST_SPACES).contains(&panel.spaces) {
        return vec![PanelRefusal::Spaces {
            spaces: panel.spaces,
        }];
    }
    let good = |a: f64, most_a: f64| a > 0.0 && a <= most_a;
    for rating_a in [panel.rating_a, panel.main_a, panel.feeder_device_a]
        .into_iter()
        .flatten()
    {
        if !good(rating_a, MOST_PANEL_A) {
            refusals.push(PanelRefusal::PanelRating { rating_a });
        }
    }
    // Each half of each space, with the breaker that took it first.
    let mut taken: BTreeMap<(u32, Half), u32> = BTreeMap::new();
    for (at, breaker) in panel.breakers.iter().enumerate() {
        let Breaker { id, space, .. } = *breaker;
        // A breaker that can't be there for its own sake takes no place from others.
        let own = refusals.len();
        let before = panel.breakers.iter().take(at);
        if before.clone().any(|earlier| earlier.id == id) {
            refusals.push(PanelRefusal::SameId { id });
        }
        if !good(breaker.rating_a, MOST_PANEL_A) {
            refusals.push(PanelRefusal::Rating {
                id,
                rating_a: breaker.rating_a,
            });
        }
        if !(1..=panel.spaces).contains(&space) {
            refusals.push(PanelRefusal::NoSpace { id, space });
        } else if breaker.form == BreakerForm::TwoPole && space + 2 > panel.spaces {
            refusals.push(PanelRefusal::NoSecondSpace { id, space });
        }
        let tandem = matches!(breaker.form, BreakerForm::Tandem(_));
        let can = match &panel.tandems {
            TandemSpaces::None => false,
            TandemSpaces::All | TandemSpaces::NotKnown => true,
            TandemSpaces::Listed(spaces) => spaces.contains(&space),
        };
        if tandem && !can && (1..=panel.spaces).contains(&space) {
            refusals.push(PanelRefusal::NoTandem { id, space });
        }
        let placed = refusals.len() == own;
        if let Some(tied_to) = breaker.tied_to
            && (tied_to == id || !panel.breakers.iter().any(|other| other.id == tied_to))
        {
            refusals.push(PanelRefusal::Tie { id, tied_to });
        }
        if !placed {
            continue;
        }
        let halves: &[Half] = match breaker.form {
            BreakerForm::Tandem(Half::A) => &[Half::A],
            BreakerForm::Tandem(Half::B) => &[Half::B],
            BreakerForm::Single | BreakerForm::TwoPole => &[Half::A, Half::B],
        };
        let mut free = true;
        for space in breaker.spaces() {
            // A pair of halves is one clash with one breaker, and two with two.
            let mut last = None;
            for &half in halves {
                if let Some(&other) = taken.get(&(space, half))
                    && last.replace(other) != Some(other)
                {
                    refusals.push(PanelRefusal::Taken { id, other, space });
                    free = false;
                }
            }
        }
        // Nor does one that clashes with another.
        if free {
            for space in breaker.spaces() {
                taken.extend(halves.iter().map(|&half| ((space, half), id)));
            }
        }
    }
    refusals
}

pub(super) fn findings(panel: &Panel) -> Vec<PanelFinding> {
    let edition = panel.edition;
    let mut found = Vec::new();
    match (panel.fed_by, panel.bars) {
        (FedBy::Feeder | FedBy::FeederFromOtherBuilding, Bars::Joined) => {
            found.push(PanelFinding::JoinedBeyondService {
                section: Rule::NeutralBond.section(edition),
            });
        }
        (FedBy::Service, Bars::Separate) => found.push(PanelFinding::NotBondedAtService {
            section: Rule::ServiceBond.section(edition),
        }),
        _ => {}
    }
    let poles = poles(panel);
    if let Some(most) = panel.most_circuits.filter(|most| poles > *most) {
        found.push(PanelFinding::TooManyPoles {
            poles,
            most,
            section: Rule::PanelCount.section(edition),
        });
    }
    // The smaller of the main here and the device of the feeder is what protects the panel.
    let device_a = match (panel.main_a, panel.feeder_device_a) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
    let section = Rule::PanelProtection.section(edition);
    match (device_a, panel.rating_a) {
        (Some(device_a), Some(rating_a)) if device_a > rating_a => {
            found.push(PanelFinding::AboveRating {
                device_a,
                rating_a,
                section,
            });
        }
        (None, _) => found.push(PanelFinding::NoProtectionKnown { section }),
        (Some(_), None) => found.push(PanelFinding::RatingNotKnown { section }),
        (Some(_), Some(_)) => {}
    }
    if panel.fed_by == FedBy::FeederFromOtherBuilding && panel.main_a.is_none() {
        found.push(PanelFinding::NoDisconnect {
            section: Rule::BuildingDisconnect.section(edition),
        });
    }
    let mut labels: BTreeMap<String, Vec<u32>> = BTreeMap::new();
    for breaker in &panel.breakers {
        if matches!(breaker.form, BreakerForm::Tandem(_)) && panel.tandems == TandemSpaces::NotKnown
        {
            found.push(PanelFinding::TandemNotChecked {
                breaker: breaker.id,
                section: Rule::PanelCount.section(edition),
            });
        }
        if !breaker_ratings_a(edition).any(|a| a == breaker.rating_a) {
            found.push(PanelFinding::NotStandard {
                breaker: breaker.id,
                rating_a: breaker.rating_a,
                section: Rule::StandardRatings.section(edition),
            });
        }
        let tied = breaker
            .tied_to
            .and_then(|id| panel.breakers.iter().find(|b| b.id == id));
        // Each tie once, though both breakers may say so.
        let once = |other: &&Breaker| {
            breaker.id != other.id && (breaker.id < other.id || other.tied_to != Some(breaker.id))
        };
        if let Some(other) = tied.filter(once) {
            let poles = breaker.form != BreakerForm::TwoPole && other.form != BreakerForm::TwoPole;
            let (breaker_id, other_id) = (breaker.id, other.id);
            if poles && share_leg(breaker.space, other.space) {
                found.push(PanelFinding::TieOnOneLeg {
                    breaker: breaker_id,
                    other: other_id,
                    section: Rule::MultiwireDefinition.section(edition),
                });
            } else if !breaker.can_be_tied(other) {
                found.push(PanelFinding::TieCannotBe {
                    breaker: breaker_id,
                    other: other_id,
                    section: Rule::HandleTie.section(edition),
                });
            }
        }
        let label = lower(breaker.label.trim());
        if label.is_empty() {
            found.push(PanelFinding::NoLabel {
                breaker: breaker.id,
                section: Rule::Directory.section(edition),
            });
        } else {
            labels.entry(label).or_default().push(breaker.id);
        }
        if breaker.confirmed == Confirmed::NotConfirmed {
            found.push(PanelFinding::NotConfirmed {
                breaker: breaker.id,
            });
        }
    }
    for breakers in labels.into_values().filter(|breakers| breakers.len() > 1) {
        found.push(PanelFinding::SameLabel {
            breakers,
            section: Rule::Directory.section(edition),
        });
    }
    found
}
