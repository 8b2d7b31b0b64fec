//! How much air is to be moved.

use serde::Serialize;

use super::{AirField, AirRefusal, amount, more};
use crate::finish::steps::{figure, step};
use crate::working::{Source, Step, Unit};

include!("../../tables/exhaust_rates.rs");

/// The largest floor, square feet.
pub const MOST_AREA_FT2: f64 = 10_000.0;

/// The most fixtures of a kind.
pub const MOST_FIXTURES: u32 = 50;

/// A room that is exhausted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ExhaustRoom {
    /// Bathroom or toilet room.
    #[default]
    Bathroom,
    /// Kitchen.
    Kitchen,
}

/// One row of the code's table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CodeRate {
    /// The room.
    pub room: ExhaustRoom,
    /// Switched, cubic feet per minute.
    pub intermittent_cfm: f64,
    /// Always on, cubic feet per minute.
    pub continuous_cfm: f64,
}

/// A fixture that counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Fixture {
    /// Toilet.
    Toilet,
    /// Shower.
    Shower,
    /// Bath tub.
    Tub,
    /// Jetted tub.
    JettedTub,
}

/// What practice gives a fixture.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct FixtureRate {
    /// The fixture.
    pub fixture: Fixture,
    /// Cubic feet per minute.
    pub cfm: f64,
}

/// A room to be exhausted.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RateAsk {
    /// Which.
    pub room: ExhaustRoom,
    /// Its floor, square feet.
    pub area_ft2: f64,
    /// Whether the fan is always on.
    pub continuous: bool,
    /// Toilets.
    pub toilets: u32,
    /// Showers.
    pub showers: u32,
    /// Bath tubs.
    pub tubs: u32,
    /// Jetted tubs.
    pub jetted_tubs: u32,
}

impl RateAsk {
    /// A room with a switched fan and no fixtures counted.
    pub const fn new(room: ExhaustRoom, area_ft2: f64) -> Self {
        Self {
            room,
            area_ft2,
            continuous: false,
            toilets: 0,
            showers: 0,
            tubs: 0,
            jetted_tubs: 0,
        }
    }

    const fn count(&self, of: Fixture) -> u32 {
        match of {
            Fixture::Toilet => self.toilets,
            Fixture::Shower => self.showers,
            Fixture::Tub => self.tubs,
            Fixture::JettedTub => self.jetted_tubs,
        }
    }
}

/// Which rule asks for most.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Governs {
    /// The code's least rate.
    Code,
    /// The area rule.
    Area,
    /// The fixture rule.
    Fixtures,
}

/// What a room needs.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Rate {
    /// What was asked.
    pub ask: RateAsk,
    /// The code's least rate, cubic feet per minute.
    pub code_cfm: f64,
    /// By the area rule, where it applies.
    pub area_cfm: Option<f64>,
    /// By the fixture rule, where it applies.
    pub fixtures_cfm: Option<f64>,
    /// The most of these.
    pub required_cfm: f64,
    /// The same, litres per second.
    pub required_l_per_s: f64,
    /// Which asks for it.
    pub governs: Governs,
    /// A bathroom over 100 square feet without a fixture counted: only the code's rate stands, and practice would be more.
    pub no_fixtures_counted: bool,
}

/// The larger of the code's rate and the practice for bathrooms: up to 100 square feet 1 cfm for each, above that the sum
/// over its fixtures. Practice is for switched fans; for one that is always on, and for kitchens, the code's rate stands alone.
///
/// # Errors
/// [`AirRefusal`]: an area that is none, too many fixtures.
///
/// # Example
/// ```
/// use calc::air::rate::{ExhaustRoom, RateAsk, rate};
/// // 5 by 8 ft: 40 by area, so the code's 50.
/// assert_eq!(rate(&RateAsk::new(ExhaustRoom::Bathroom, 40.0))?.required_cfm, 50.0);
/// // 20 by 12 ft with tub, shower and toilet: 150.
/// let large = RateAsk { tubs: 1, showers: 1, toilets: 1, ..RateAsk::new(ExhaustRoom::Bathroom, 240.0) };
/// assert_eq!(rate(&large)?.required_cfm, 150.0);
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn rate(ask: &RateAsk) -> Result<Rate, AirRefusal> {
    more(AirField::Area, ask.area_ft2, 1e-3, MOST_AREA_FT2)?;
    let row = CODE_RATES.iter().find(|row| row.room == ask.room);
    let code_cfm = row.map_or(0.0, |row| {
        if ask.continuous {
            row.continuous_cfm
        } else {
            row.intermittent_cfm
        }
    });
    let mut by_fixture = 0.0;
    for row in &FIXTURE_RATES {
        let count = f64::from(ask.count(row.fixture));
        amount(AirField::Fixtures, count, f64::from(MOST_FIXTURES))?;
        by_fixture += count * row.cfm;
    }
    let practice = ask.room == ExhaustRoom::Bathroom && !ask.continuous;
    let small = ask.area_ft2 <= AREA_RULE_MOST_FT2 * (1.0 + 1e-12);
    let area_cfm = (practice && small).then_some(ask.area_ft2 * AREA_CFM_PER_FT2);
    let fixtures_cfm = (practice && !small).then_some(by_fixture);
    let (required_cfm, governs) = match (area_cfm, fixtures_cfm) {
        (Some(cfm), _) if cfm > code_cfm => (cfm, Governs::Area),
        (_, Some(cfm)) if cfm > code_cfm => (cfm, Governs::Fixtures),
        _ => (code_cfm, Governs::Code),
    };
    Ok(Rate {
        ask: *ask,
        code_cfm,
        area_cfm,
        fixtures_cfm,
        required_cfm,
        required_l_per_s: super::liters_per_second(required_cfm),
        governs,
        no_fixtures_counted: fixtures_cfm == Some(0.0),
    })
}

impl Rate {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let cfm = |name, value| figure(name, value, Unit::Cfm);
        let practice = Source::Published("HVI bathroom guidance");
        let code = cfm("code_rate", self.code_cfm);
        let (mut steps, mut inputs) = (Vec::new(), vec![code]);
        if let Some(by_area) = self.area_cfm {
            steps.push(step(
                "exhaust_by_area",
                vec![
                    figure("area", self.ask.area_ft2, Unit::Ft2),
                    figure("cfm_per_ft2", AREA_CFM_PER_FT2, Unit::Ratio),
                ],
                cfm("area_rate", by_area),
                practice,
            ));
            inputs.push(cfm("area_rate", by_area));
        }
        if let Some(by_fixture) = self.fixtures_cfm {
            let counted = FIXTURE_RATES
                .iter()
                .filter(|row| self.ask.count(row.fixture) > 0)
                .map(|row| {
                    let name = match row.fixture {
                        Fixture::Toilet => "toilets",
                        Fixture::Shower => "showers",
                        Fixture::Tub => "tubs",
                        Fixture::JettedTub => "jetted_tubs",
                    };
                    cfm(name, f64::from(self.ask.count(row.fixture)) * row.cfm)
                });
            steps.push(step(
                "exhaust_by_fixture",
                counted.collect(),
                cfm("fixture_rate", by_fixture),
                practice,
            ));
            inputs.push(cfm("fixture_rate", by_fixture));
        }
        steps.push(step(
            "exhaust_required",
            inputs,
            cfm("required_flow", self.required_cfm),
            Source::Published("IRC 2021 Table M1505.4.4"),
        ));
        steps.push(step(
            "liters_per_second",
            vec![cfm("required_flow", self.required_cfm)],
            figure(
                "required_flow",
                self.required_l_per_s,
                Unit::LitersPerSecond,
            ),
            Source::Published("NIST SP 811"),
        ));
        steps
    }
}
