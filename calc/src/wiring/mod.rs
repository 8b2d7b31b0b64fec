//! Wiring: will this box, cable, breaker and neutral take what is added?
//!
//! Every answer names the edition of NFPA 70 it rests on and, in each step, the section. The local code, its
//! amendments and the licensed electrician or inspector decide. In the order the work goes:
//! - [`code`] the rules and their sections by edition; [`tables`] the tables as data;
//! - [`conductor`] sizes, metals, insulation and cables, and which of them exist;
//! - [`bundle`] current-carrying conductors counted from a description;
//! - [`ampacity`] what a conductor may carry, its largest breaker, and the smallest conductor for a load;
//! - [`box_fill`] how full a box is, and what else fits;
//! - [`impedance`] ohms per 1000 ft; [`voltage_drop`] what a run loses; [`measured_drop`] what readings imply;
//! - [`panel`] spaces, legs and breakers; [`supply`] the measured supply;
//! - [`neutral`] what a neutral carries, and what is wrong with sharing it;
//! - [`circuit`] a circuit judged rule by rule;
//! - [`cable_run`] cable, rolls and staples, and which cable switches need;
//! - [`shock`] figures on currents through the body and on floating conductors;
//! - [`open_box`] an opened box: what is live in it, what has to be off, and what comes back where.

pub mod code;

pub mod tables;

pub mod conductor;

pub mod bundle;

pub mod ampacity;

pub mod box_fill;

pub mod impedance;

pub mod voltage_drop;

pub mod measured_drop;

pub mod panel;

pub mod supply;

pub mod neutral;

pub mod circuit;

pub mod cable_run;

pub mod shock;

pub mod open_box;

mod steps;
