//! What the breaker carries, and the shares that single things may take of it.

use super::*;

pub(super) fn judge(circuit: &Circuit, judge: &mut Judge) {
    let rating_a = circuit.breaker_a;
    judge.amps(Check::TotalLoad, Rule::PermissibleLoad, rating_a, |sums| {
        sums.total_a
    });
    let continuous: fn(&Amounts) -> f64 = if circuit.full_rating {
        |sums| sums.total_a
    } else {
        |sums| sums.min_rating_a
    };
    judge.amps(
        Check::ContinuousLoad,
        Rule::BranchDevice,
        rating_a,
        continuous,
    );
    // A circuit for one outlet may feed whatever its rating carries.
    if !circuit.several() {
        return;
    }
    let small = rating_a == 15.0 || rating_a == 20.0;
    if small || rating_a == 30.0 {
        let rule = if small {
            Rule::PlugLoad
        } else {
            Rule::ReceptacleLoad
        };
        judge.amps(Check::PlugLoad, rule, 0.8 * rating_a, |sums| {
            sums.largest_plug_a
        });
    }
    let shared = circuit.receptacles > 0 || circuit.all_loads().any(|load| !load.kind.is_fixed());
    if small && shared {
        judge.amps(Check::FixedLoad, Rule::FixedLoad, 0.5 * rating_a, |sums| {
            sums.fixed_a
        });
    }
}
