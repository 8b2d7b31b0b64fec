//! Open box: what is live in an opened box, what has to be off, and whether every current comes back where it went out.
//!
//! Nothing here says that a part may be touched: a wrong description gives a wrong answer. In the order of the work:
//! - [`description`] the boxes, cables, joints and devices as found, and the panel;
//! - [`situation`] what is off, apart and set while something is measured; [`reading`] what was measured;
//! - [`solve`] voltages of a network of admittances; [`network`] the network behind a description, its faults as edits, and what is seen;
//! - [`live_map`] what stands behind each contact; [`off_list`] what must be off before a box is opened;
//! - [`faults`] what may be wrong, [`likelihood`] how readings fit, [`diagnosis`] what explains them, [`permitted`] what may be measured,
//!   [`next_reading`] what tells most, [`put_right`] what it takes to put it right and to prove it;
//! - [`return_check`] whether every current comes back where it went out; [`neutral_load`] what each neutral carries.

pub mod description;

pub mod situation;

pub mod reading;

pub mod solve;

pub mod network;

pub mod live_map;

pub mod off_list;

pub mod return_check;

pub mod neutral_load;

pub mod faults;

pub mod likelihood;

pub mod permitted;

pub mod diagnosis;

pub mod next_reading;

pub mod put_right;

pub mod unforeseen;

mod gain;

mod ohms;

mod places;

mod reach;

mod signature;

mod sway;

mod through;

mod ways;
