//! Meters as they are: accuracy, last digit, a tester that errs, and when two readings are told apart.

use calc::wiring::open_box::reading::{Outcome, Shown};

use super::dice::Dice;
use super::truth::Ideal;

/// A resistance above this is over the limit of a meter, ohms. Source: typical of what is sold, common practice.
const OHM_LIMIT: f64 = 20e6;

/// What the instrument shows. Source of the errors: typical of what is sold, common practice.
pub fn shows(ideal: Ideal, dice: &mut Dice) -> Outcome {
    let digit = |value: f64, digit: f64| {
        let value = ((value / digit).round() * digit).max(0.0);
        // Written with three places, as the display has it.
        Outcome::Shows(Shown::Value {
            value: (value * 1000.0).round() / 1000.0,
            range: None,
        })
    };
    match ideal {
        Ideal::Volts(volts) => digit(
            volts * (1.0 + 0.006 * dice.normal()) + 0.1 * dice.normal(),
            0.1,
        ),
        Ideal::Amps(amps) => digit(
            amps * (1.0 + 0.015 * dice.normal()) + 0.015 * dice.normal(),
            0.01,
        ),
        Ideal::Ohms(Some((ohm, _))) if ohm < OHM_LIMIT => {
            let step = if ohm < 500.0 {
                0.1
            } else {
                10_f64.powf((ohm.log10() - 3.0).floor())
            };
            digit(
                ohm * (1.0 + 0.01 * dice.normal()) + 0.1 + 0.1 * dice.unit(),
                step,
            )
        }
        Ideal::Ohms(_) => Outcome::Shows(Shown::OverLimit { range: None }),
        Ideal::Tip(volts, firm) => {
            let yes = match (firm, volts) {
                (true, v) if v >= 50.0 => 0.98,
                (true, v) if v >= 25.0 => 0.5,
                (false, v) if v >= 20.0 => 0.5,
                _ => 0.03,
            };
            Outcome::Glows(dice.chance(yes))
        }
    }
}

/// Whether an instrument tells one from the other though lengths are known within a fifth or so and loads roughly.
pub fn tells(one: Ideal, other: Ideal) -> bool {
    match (one, other) {
        (Ideal::Volts(a), Ideal::Volts(b)) => (a - b).abs() > 1.5 + 0.08 * a.max(b),
        (Ideal::Amps(a), Ideal::Amps(b)) => (a - b).abs() > 0.1 + 0.35 * a.min(b),
        (Ideal::Tip(a, firm), Ideal::Tip(b, also)) => {
            let live = |volts: f64, firm: bool| firm && volts >= 50.0;
            let dead = |volts: f64| volts < 15.0;
            live(a, firm) && dead(b) || live(b, also) && dead(a)
        }
        (Ideal::Ohms(a), Ideal::Ohms(b)) => match (a, b) {
            (Some((a, true)), Some((b, true))) => (a - b).abs() > 0.6 + 0.6 * a.min(b),
            (Some((metal, true)), Some((load, false)))
            | (Some((load, false)), Some((metal, true))) => load > 5.0 + 3.0 * metal,
            (Some((_, false)), Some((_, false))) | (None, None) => false,
            (Some((ohm, _)), None) | (None, Some((ohm, _))) => ohm < 1e5,
        },
        _ => false,
    }
}
