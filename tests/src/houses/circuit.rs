//! Nodal analysis as the books have it: one dense matrix of complex admittances at 60 Hz, inverted by LU.
//!
//! Shares nothing with the solver under test.

use nalgebra::{Complex, DMatrix};

/// Complex numbers.
pub type C = Complex<f64>;

/// What an element has.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value {
    /// Ohms.
    Ohm(f64),
    /// Farads.
    Farad(f64),
}

impl Value {
    fn siemens(self) -> C {
        match self {
            Self::Ohm(ohm) => C::new(1.0 / ohm, 0.0),
            Self::Farad(farad) => C::new(0.0, std::f64::consts::TAU * 60.0 * farad),
        }
    }
}

/// An element between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Link {
    /// One node.
    pub from: usize,
    /// The other.
    pub to: usize,
    /// What it has.
    pub value: Value,
}

/// A solved circuit.
#[derive(Clone, Debug)]
pub struct Solution {
    volts: Vec<Option<C>>,
    rows: Vec<Option<usize>>,
    impedance: DMatrix<C>,
}

/// The piece that each node is of, by its least node.
pub fn pieces(nodes: usize, links: &[Link]) -> Vec<usize> {
    let mut piece: Vec<usize> = (0..nodes).collect();
    let mut changed = true;
    while changed {
        changed = false;
        for link in links {
            let least = piece[link.from].min(piece[link.to]);
            for node in [link.from, link.to] {
                if piece[node] != least {
                    piece[node] = least;
                    changed = true;
                }
            }
        }
    }
    piece
}

/// Solves a circuit whose sources hold nodes at volts, the reference among them; a piece without a source floats.
pub fn solve(nodes: usize, links: &[Link], sources: &[(usize, C)]) -> Solution {
    let piece = pieces(nodes, links);
    let held = |node: usize| sources.iter().find(|(n, _)| *n == node).map(|(_, v)| *v);
    let fed: Vec<usize> = sources.iter().map(|(n, _)| piece[*n]).collect();
    let mut rows = vec![None; nodes];
    let mut count = 0;
    for node in 0..nodes {
        if fed.contains(&piece[node]) && held(node).is_none() {
            rows[node] = Some(count);
            count += 1;
        }
    }
    let mut matrix = DMatrix::from_element(count, count, C::new(0.0, 0.0));
    let mut right = DMatrix::from_element(count, 1, C::new(0.0, 0.0));
    for link in links {
        if link.from == link.to {
            continue;
        }
        let y = link.value.siemens();
        for (node, other) in [(link.from, link.to), (link.to, link.from)] {
            let Some(row) = rows[node] else { continue };
            matrix[(row, row)] += y;
            match (rows[other], held(other)) {
                (Some(column), _) => matrix[(row, column)] -= y,
                (None, Some(volts)) => right[(row, 0)] += y * volts,
                (None, None) => {}
            }
        }
    }
    let impedance = matrix.lu().try_inverse().expect("every piece has a source");
    let found = &impedance * &right;
    let volts = (0..nodes)
        .map(|node| held(node).or_else(|| rows[node].map(|row| found[(row, 0)])))
        .collect();
    Solution {
        volts,
        rows,
        impedance,
    }
}

impl Solution {
    /// Volts of a node; `None`: floating.
    pub fn volts(&self, node: usize) -> Option<C> {
        self.volts[node]
    }

    /// Volts between two nodes; `None`: one floats.
    pub fn between(&self, from: usize, to: usize) -> Option<C> {
        Some(self.volts[from]? - self.volts[to]?)
    }

    /// What a meter of so many ohms shows between two nodes, by Thévenin's theorem; nothing if it only ties a floating
    /// part to another.
    pub fn metered(&self, from: usize, to: usize, ohm: f64) -> f64 {
        let Some(open) = self.between(from, to) else {
            return 0.0;
        };
        let behind = self.mutual(from, from) + self.mutual(to, to) - self.mutual(from, to) * 2.0;
        (open * (C::new(ohm, 0.0) / (behind + ohm))).norm()
    }

    fn mutual(&self, one: usize, other: usize) -> C {
        match (self.rows[one], self.rows[other]) {
            (Some(row), Some(column)) => self.impedance[(row, column)],
            _ => C::new(0.0, 0.0),
        }
    }

    /// The current in a link from its first node to its second.
    pub fn amps(&self, link: &Link) -> C {
        self.between(link.from, link.to)
            .map_or(C::new(0.0, 0.0), |volts| volts * link.value.siemens())
    }
}

/// Resistances of a circuit without sources.
#[derive(Clone, Debug)]
pub struct Resistances {
    piece: Vec<usize>,
    rows: Vec<Option<usize>>,
    inverse: DMatrix<f64>,
}

/// The resistances of a circuit without sources: capacitors count as open.
pub fn resistances(nodes: usize, links: &[Link]) -> Resistances {
    let solid: Vec<(Link, f64)> = links
        .iter()
        .filter_map(|link| match link.value {
            Value::Ohm(ohm) if link.from != link.to => Some((*link, 1.0 / ohm)),
            _ => None,
        })
        .collect();
    let only: Vec<Link> = solid.iter().map(|(link, _)| *link).collect();
    let piece = pieces(nodes, &only);
    let mut rows = vec![None; nodes];
    let mut count = 0;
    for node in 0..nodes {
        // The least node of a piece is its reference.
        if piece[node] != node {
            rows[node] = Some(count);
            count += 1;
        }
    }
    let mut matrix = DMatrix::from_element(count, count, 0.0);
    for (link, y) in solid {
        for (node, other) in [(link.from, link.to), (link.to, link.from)] {
            let Some(row) = rows[node] else { continue };
            matrix[(row, row)] += y;
            if let Some(column) = rows[other] {
                matrix[(row, column)] -= y;
            }
        }
    }
    let inverse = matrix
        .lu()
        .try_inverse()
        .expect("every piece has a reference");
    Resistances {
        piece,
        rows,
        inverse,
    }
}

impl Resistances {
    /// Ohms between two nodes; `None`: open.
    pub fn between(&self, one: usize, other: usize) -> Option<f64> {
        let at = |a: usize, b: usize| match (self.rows[a], self.rows[b]) {
            (Some(row), Some(column)) => self.inverse[(row, column)],
            _ => 0.0,
        };
        (self.piece[one] == self.piece[other])
            .then(|| at(one, one) + at(other, other) - 2.0 * at(one, other))
    }
}
