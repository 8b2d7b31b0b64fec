//! Voltages of a network of admittances at one frequency.
//!
//! Nodal analysis by taking one node after another out of the network, the one with the fewest neighbours first: a star
//! of admittances y is replaced by the mesh that is its equal, y(i) y(j) / sum y between its neighbours i and j. That is
//! Gaussian elimination of the nodal equations, but the diagonal is never stored: it is summed anew from the
//! admittances themselves, so that a meter of 10 megohm beside a joint of a milliohm keeps all its figures (a matrix
//! adds the two into one number and loses ten of sixteen figures), and circuits, which are nearly trees, take microseconds.

pub use num_complex::Complex64;

use super::places::Sets;

/// The frequency, hertz.
pub const FREQUENCY_HZ: f64 = 60.0;

/// An admittance between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Link {
    /// One node, from 0.
    pub from: usize,
    /// The other.
    pub to: usize,
    /// The admittance, siemens.
    pub siemens: Complex64,
}

impl Link {
    /// A resistance, ohms.
    pub const fn resistance(from: usize, to: usize, ohm: f64) -> Self {
        Self {
            from,
            to,
            siemens: Complex64::new(1.0 / ohm, 0.0),
        }
    }

    /// A capacitance, farads, at [`FREQUENCY_HZ`].
    pub const fn capacitance(from: usize, to: usize, farad: f64) -> Self {
        Self {
            from,
            to,
            siemens: Complex64::new(0.0, std::f64::consts::TAU * FREQUENCY_HZ * farad),
        }
    }

    /// Whether it joins two of so many nodes.
    fn counts(&self, nodes: usize) -> bool {
        self.from < nodes
            && self.to < nodes
            && self.from != self.to
            && self.siemens.is_finite()
            && self.siemens != Complex64::ZERO
    }
}

/// A network: nodes held at known voltages, and admittances.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Netlist {
    /// How many nodes there are.
    pub nodes: usize,
    /// Nodes that are held, with their volts; the reference is one of them, at 0 V.
    pub held: Vec<(usize, Complex64)>,
    /// The admittances. One with a node that isn't there, from a node to itself, or of no finite size counts for nothing.
    pub links: Vec<Link>,
}

/// The voltages of a network.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// Volts of each node; `None`: floating, connected to no held node.
    pub volts: Vec<Option<Complex64>>,
}

impl Solved {
    /// Volts from one node to another; `None` where either floats.
    pub fn between(&self, from: usize, to: usize) -> Option<Complex64> {
        let at = |node: usize| self.volts.get(node).copied().flatten();
        Some(at(from)? - at(to)?)
    }

    /// The current through a link from its first node to its second, amperes: nothing flows where both ends float.
    pub fn amps(&self, link: &Link) -> Complex64 {
        self.between(link.from, link.to)
            .map_or(Complex64::ZERO, |volts| volts * link.siemens)
    }
}

/// Neighbours of each node that is not held, with the admittance to each.
type Rows = Vec<Vec<(usize, Complex64)>>;

/// What a node taken out was: its neighbours, with their shares of its voltage.
struct Taken {
    node: usize,
    shares: Vec<(usize, Complex64)>,
}

/// Solves a network.
///
/// # Example
/// 120 V through 239 ohm and 1 ohm to the reference: 0.5 V between the two, and a node connected to nothing.
/// ```
/// use calc::wiring::open_box::solve::{Complex64, Link, Netlist, solve};
/// let netlist = Netlist {
///     nodes: 4,
///     held: vec![(0, Complex64::ZERO), (1, Complex64::new(120.0, 0.0))],
///     links: vec![Link::resistance(1, 2, 239.0), Link::resistance(2, 0, 1.0)],
/// };
/// let solved = solve(&netlist);
/// assert!((solved.volts[2].unwrap().re - 0.5).abs() < 1e-12);
/// assert_eq!(solved.volts[3], None);
/// ```
pub fn solve(netlist: &Netlist) -> Solved {
    let mut volts: Vec<Option<Complex64>> = vec![None; netlist.nodes];
    for &(node, held) in &netlist.held {
        if let Some(slot) = volts.get_mut(node) {
            *slot = Some(held);
        }
    }
    let mut rows: Rows = vec![Vec::new(); netlist.nodes];
    for link in &netlist.links {
        if link.counts(netlist.nodes) {
            connect(&mut rows, &volts, link.from, link.to, link.siemens);
        }
    }
    let mut left = reached(&rows, &volts);
    let mut taken = Vec::with_capacity(left.len());
    while let Some(node) = next(&rows, &mut left) {
        taken.push(take_out(&mut rows, &volts, node));
    }
    for Taken { node, shares } in taken.iter().rev() {
        let mut sum = Complex64::ZERO;
        for (neighbour, share) in shares {
            sum += share * volts.get(*neighbour).copied().flatten().unwrap_or_default();
        }
        if let Some(slot) = volts.get_mut(*node)
            && !shares.is_empty()
        {
            *slot = Some(sum);
        }
    }
    Solved { volts }
}

/// The resistance between two nodes of a network in which nothing is held, by its links that are resistances, ohms;
/// `None`: open, no way of finite resistance joins them. What is open is told by what hangs together, never by how
/// little flows: rounding lets something flow everywhere.
///
/// ```
/// use calc::wiring::open_box::solve::{Link, resistance_between};
/// let links = [Link::resistance(0, 1, 240.0), Link::resistance(1, 2, 60.0), Link::resistance(0, 2, 100.0)];
/// assert!((resistance_between(4, &links, 0, 2).unwrap() - 75.0).abs() < 1e-9);
/// assert_eq!(resistance_between(4, &links, 0, 3), None);
/// ```
pub fn resistance_between(nodes: usize, links: &[Link], from: usize, to: usize) -> Option<f64> {
    if from == to {
        return Some(0.0);
    }
    let links: Vec<Link> = links
        .iter()
        .filter(|link| link.siemens.im == 0.0 && link.counts(nodes))
        .copied()
        .collect();
    let mut pieces = Sets::new(nodes);
    for link in &links {
        pieces.join(link.from, link.to);
    }
    if from >= nodes || to >= nodes || pieces.find(from) != pieces.find(to) {
        return None;
    }
    let one_volt = Complex64::new(1.0, 0.0);
    let netlist = Netlist {
        nodes,
        held: vec![(from, one_volt), (to, Complex64::ZERO)],
        links,
    };
    let solved = solve(&netlist);
    let mut amps = 0.0;
    for link in &netlist.links {
        if link.from == from {
            amps += solved.amps(link).re;
        } else if link.to == from {
            amps -= solved.amps(link).re;
        }
    }
    (amps > 0.0).then(|| 1.0 / amps)
}

/// Adds an admittance between two nodes to what is there.
fn connect(
    rows: &mut Rows,
    held: &[Option<Complex64>],
    one: usize,
    other: usize,
    siemens: Complex64,
) {
    for (node, neighbour) in [(one, other), (other, one)] {
        // A held node needs no row: its voltage doesn't depend on its neighbours.
        if held.get(node).copied().flatten().is_some() {
            continue;
        }
        if let Some(row) = rows.get_mut(node) {
            match row.iter_mut().find(|(n, _)| *n == neighbour) {
                Some((_, there)) => *there += siemens,
                None => row.push((neighbour, siemens)),
            }
        }
    }
}

/// The nodes, not held themselves, that are connected to a held one, in their order.
fn reached(rows: &Rows, held: &[Option<Complex64>]) -> Vec<usize> {
    let mut seen = vec![false; rows.len()];
    let mut open: Vec<usize> = Vec::new();
    let is_held = |node: usize| held.get(node).copied().flatten().is_some();
    for (node, row) in rows.iter().enumerate() {
        if row.iter().any(|(neighbour, _)| is_held(*neighbour)) {
            open.push(node);
        }
    }
    while let Some(node) = open.pop() {
        match seen.get_mut(node) {
            Some(slot) if !*slot && !is_held(node) => *slot = true,
            _ => continue,
        }
        for (neighbour, _) in rows.get(node).into_iter().flatten() {
            open.push(*neighbour);
        }
    }
    (0..rows.len())
        .filter(|node| seen.get(*node).copied().unwrap_or(false))
        .collect()
}

/// Takes the node with the fewest neighbours from the list of those left; any with two or fewer will do.
fn next(rows: &Rows, left: &mut Vec<usize>) -> Option<usize> {
    let mut best: Option<(usize, usize)> = None;
    for (at, node) in left.iter().enumerate().rev() {
        let degree = rows.get(*node).map_or(0, Vec::len);
        if best.is_none_or(|(_, least)| degree < least) {
            best = Some((at, degree));
        }
        if degree <= 2 {
            break;
        }
    }
    best.map(|(at, _)| left.swap_remove(at))
}

/// Takes a node out: its star becomes the mesh that is its equal.
fn take_out(rows: &mut Rows, held: &[Option<Complex64>], node: usize) -> Taken {
    let mut star = rows.get_mut(node).map(std::mem::take).unwrap_or_default();
    let sum: Complex64 = star.iter().map(|(_, siemens)| siemens).sum();
    for (neighbour, _) in &star {
        if let Some(row) = rows.get_mut(*neighbour) {
            row.retain(|(n, _)| *n != node);
        }
    }
    for (at, (one, siemens)) in star.iter().enumerate() {
        let share = siemens / sum;
        for (other, further) in star.iter().skip(at + 1) {
            connect(rows, held, *one, *other, share * further);
        }
    }
    for (_, siemens) in &mut star {
        *siemens /= sum;
    }
    Taken { node, shares: star }
}
