//! Simulated houses: random wirings with a fault, measured by imperfect instruments, to hold the diagnosis against.
//!
//! Kept apart from the solver under test: its own network, its own nodal analysis, its own idea of what may be measured. In
//! their order: [`dice`]; [`circuit`] nodal analysis; [`wirings`] as intended; [`truth`] the house as it is; [`plant`]
//! faults; [`house`] all of it; [`instruments`]; [`within`] what may be measured; [`drive`] from a complaint to an answer;
//! [`tally`] the rates.

pub mod dice;

pub mod circuit;

pub mod wirings;

pub mod truth;

pub mod plant;

pub mod house;

pub mod instruments;

pub mod within;

pub mod drive;

pub mod tally;
