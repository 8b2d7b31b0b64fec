//! Tables of what people type and what it must mean, and properties over all of it.

mod entry;
mod format;
mod length;
mod number;
mod properties;
mod slope;
mod units;
