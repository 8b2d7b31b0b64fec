//! The least fill that meets a growing list of demands: a linear programme by the dual simplex method.
//!
//! Unknown is the fill at each vertex, never negative; a fill costs the volume that one inch of it takes. A demand
//! is a row of factors whose sum over the fills must reach an amount. Demands are added as they are found; each
//! solution is the starting point of the next.

/// A factor smaller than this is roundoff.
const TINY: f64 = 1e-9;

/// What a column of the tableau stands for.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Column {
    Fill(usize),
    Slack,
}

/// The programme and its solution so far.
#[derive(Clone, Debug)]
pub(super) struct LeastFill {
    /// Volume of one inch of fill at each vertex, in2.
    cost_in2: Vec<f64>,
    /// The column of each vertex that a demand has named.
    column_of: Vec<Option<usize>>,
    columns: Vec<Column>,
    /// What one unit of a column adds to the volume, given the basis; never negative.
    reduced: Vec<f64>,
    rows: Vec<Row>,
}

#[derive(Clone, Debug)]
struct Row {
    /// Factors of all columns; those beyond its end are 0.
    factors: Vec<f64>,
    /// The value of the row's basic column.
    value: f64,
    basic: usize,
}

impl LeastFill {
    /// Nothing demanded, nothing filled. `cost_in2`: the volume that one inch of fill at each vertex takes; above 0.
    pub fn new(cost_in2: Vec<f64>) -> Self {
        let column_of = vec![None; cost_in2.len()];
        Self {
            cost_in2,
            column_of,
            columns: Vec::new(),
            reduced: Vec::new(),
            rows: Vec::new(),
        }
    }

    /// Demands that the fills times their factors, summed, reach `least`.
    pub fn demand(&mut self, factors: &[(usize, f64)], least: f64) {
        // As a row of the tableau: slack - factors * fills = -least, with basic columns put in terms of the others.
        let mut row = vec![0.0; self.columns.len()];
        for &(vertex, factor) in factors {
            let column = self.column(vertex);
            row.resize(self.columns.len(), 0.0);
            row[column] -= factor;
        }
        let mut value = -least;
        for other in &self.rows {
            let factor = row[other.basic];
            if factor != 0.0 {
                for (cell, from) in row.iter_mut().zip(&other.factors) {
                    *cell -= factor * from;
                }
                row[other.basic] = 0.0;
                value -= factor * other.value;
            }
        }
        let basic = self.columns.len();
        self.columns.push(Column::Slack);
        self.reduced.push(0.0);
        row.push(1.0);
        self.rows.push(Row {
            factors: row,
            value,
            basic,
        });
    }

    fn column(&mut self, vertex: usize) -> usize {
        *self.column_of[vertex].get_or_insert_with(|| {
            self.columns.push(Column::Fill(vertex));
            self.reduced.push(self.cost_in2[vertex]);
            self.columns.len() - 1
        })
    }

    /// Meets all demands with the least volume; false if `pivots` steps did not suffice, or no fill can meet them.
    pub fn solve(&mut self, pivots: usize) -> bool {
        for _ in 0..pivots {
            let lowest = self
                .rows
                .iter()
                .enumerate()
                .min_by(|a, b| a.1.value.total_cmp(&b.1.value));
            let Some((leaving, row)) = lowest.filter(|(_, row)| row.value < -TINY) else {
                return true;
            };
            let mut entering: Option<(f64, usize)> = None;
            for (column, &factor) in row.factors.iter().enumerate() {
                if factor < -TINY {
                    let ratio = self.reduced[column] / -factor;
                    if entering.is_none_or(|(least, _)| ratio < least) {
                        entering = Some((ratio, column));
                    }
                }
            }
            let Some((_, column)) = entering else {
                return false;
            };
            self.pivot(leaving, column);
        }
        false
    }

    fn pivot(&mut self, leaving: usize, column: usize) {
        let mut row = self.rows.swap_remove(leaving);
        let pivot = row.factors[column];
        for cell in &mut row.factors {
            *cell /= pivot;
        }
        row.factors[column] = 1.0;
        row.value /= pivot;
        row.basic = column;
        for other in &mut self.rows {
            let factor = other.factors.get(column).copied().unwrap_or(0.0);
            if factor != 0.0 {
                if other.factors.len() < row.factors.len() {
                    other.factors.resize(row.factors.len(), 0.0);
                }
                for (cell, from) in other.factors.iter_mut().zip(&row.factors) {
                    *cell -= factor * from;
                }
                other.factors[column] = 0.0;
                other.value -= factor * row.value;
            }
        }
        let factor = self.reduced[column];
        for (cell, from) in self.reduced.iter_mut().zip(&row.factors) {
            *cell = (*cell - factor * from).max(0.0);
        }
        self.reduced[column] = 0.0;
        self.rows.push(row);
    }

    /// The fill at each vertex, inches.
    pub fn fills_in(&self) -> Vec<f64> {
        let mut fills_in = vec![0.0; self.cost_in2.len()];
        for row in &self.rows {
            if let Column::Fill(vertex) = self.columns[row.basic] {
                fills_in[vertex] = if row.value > TINY { row.value } else { 0.0 };
            }
        }
        fills_in
    }

    /// Forgets demands that are met with room to spare: rows whose slack is basic. Their columns go with them.
    pub fn forget_slack(&mut self) {
        let columns = &self.columns;
        let is_spare = |row: &Row| columns[row.basic] == Column::Slack && row.value > TINY;
        let mut keep = vec![true; self.columns.len()];
        for row in self.rows.iter().filter(|row| is_spare(row)) {
            keep[row.basic] = false;
        }
        self.rows.retain(|row| keep[row.basic]);
        let mut new_place = Vec::with_capacity(keep.len());
        let mut count = 0;
        for &kept in &keep {
            new_place.push(count);
            count += usize::from(kept);
        }
        let kept_of = |cells: &[f64]| {
            cells
                .iter()
                .zip(&keep)
                .filter(|(_, k)| **k)
                .map(|(c, _)| *c)
                .collect()
        };
        for row in &mut self.rows {
            row.factors = kept_of(&row.factors);
            row.basic = new_place[row.basic];
        }
        self.reduced = kept_of(&self.reduced);
        self.columns = self
            .columns
            .iter()
            .zip(&keep)
            .filter(|(_, k)| **k)
            .map(|(c, _)| *c)
            .collect();
        for place in self.column_of.iter_mut().flatten() {
            *place = new_place[*place];
        }
    }

    /// How many demands are held.
    pub fn demands(&self) -> usize {
        self.rows.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Least of 2 x + 3 y with x + y >= 4 and x + 3 y >= 6 is 9 at (3, 1): the corner where both lines meet, worth
    /// less than the corners (6, 0) and (0, 4), worth 12 each. Then x <= 1, as -x >= -1, moves it to (1, 3), worth 11.
    #[test]
    fn a_programme_solved_by_hand() {
        let mut programme = LeastFill::new(vec![2.0, 3.0]);
        programme.demand(&[(0, 1.0), (1, 1.0)], 4.0);
        programme.demand(&[(0, 1.0), (1, 3.0)], 6.0);
        assert!(programme.solve(50));
        let near = |found: &[f64], expected: [f64; 2]| {
            found
                .iter()
                .zip(expected)
                .all(|(a, b)| (a - b).abs() < 1e-9)
        };
        assert!(
            near(&programme.fills_in(), [3.0, 1.0]),
            "{:?}",
            programme.fills_in()
        );
        programme.demand(&[(0, -1.0)], -1.0);
        assert!(programme.solve(50));
        assert!(
            near(&programme.fills_in(), [1.0, 3.0]),
            "{:?}",
            programme.fills_in()
        );
        programme.forget_slack();
        assert_eq!(programme.demands(), 2);
        programme.demand(&[(1, 1.0)], 3.5);
        assert!(programme.solve(50));
        // x + y >= 4 still holds with x = 0.5.
        assert!(
            near(&programme.fills_in(), [0.5, 3.5]),
            "{:?}",
            programme.fills_in()
        );
    }

    #[test]
    fn what_cannot_be_met_is_said() {
        let mut programme = LeastFill::new(vec![1.0]);
        programme.demand(&[(0, -1.0)], 1.0);
        assert!(!programme.solve(50));
    }

    /// The least over all corners of the region, each the crossing of two of its border lines.
    fn by_corners(cost: [f64; 2], demands: &[([f64; 2], f64)]) -> Option<f64> {
        let mut lines = demands.to_vec();
        lines.extend([([1.0, 0.0], 0.0), ([0.0, 1.0], 0.0)]);
        let mut least: Option<f64> = None;
        for (i, (a, p)) in lines.iter().enumerate() {
            for (b, q) in &lines[i + 1..] {
                let det = a[0] * b[1] - a[1] * b[0];
                if det.abs() < 1e-6 {
                    continue;
                }
                let at = [(p * b[1] - a[1] * q) / det, (a[0] * q - p * b[0]) / det];
                if lines
                    .iter()
                    .all(|(f, least)| f[0] * at[0] + f[1] * at[1] >= least - 1e-9)
                {
                    let volume = cost[0] * at[0] + cost[1] * at[1];
                    least = Some(least.map_or(volume, |before| before.min(volume)));
                }
            }
        }
        least
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn as_little_as_the_best_corner(
            cost in [0.5..4.0_f64, 0.5..4.0_f64],
            demands in prop::collection::vec(([-1.0..2.0_f64, -1.0..2.0_f64], -1.0..2.0_f64), 1..8),
            forget in any::<bool>(),
        ) {
            let mut programme = LeastFill::new(cost.to_vec());
            let mut met = true;
            for (factors, least) in &demands {
                programme.demand(&[(0, factors[0]), (1, factors[1])], *least);
                met &= programme.solve(200);
            }
            if forget {
                programme.forget_slack();
                met &= programme.solve(200);
            }
            match by_corners(cost, &demands) {
                Some(expected) => {
                    prop_assert!(met);
                    let fills = programme.fills_in();
                    let volume = cost[0] * fills[0] + cost[1] * fills[1];
                    prop_assert!((volume - expected).abs() < 1e-6 * (1.0 + expected), "{} {}", volume, expected);
                }
                None => prop_assert!(!met),
            }
        }
    }
}
