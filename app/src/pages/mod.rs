//! One file per screen. A page reads the open job, asks calc, and shows; it keeps no state of its own but what
//! is open or selected on it.

pub mod jobs;

pub mod job;

pub mod room;

pub mod survey;

pub mod pour;

pub mod gallery;

pub mod doorways;

pub mod sums;

pub mod sum_ramp;

pub mod sum_pour;

mod sum_fields;

pub mod wiring_sums;

mod job_fields;

pub mod panel;

pub mod circuits;

pub mod boxes;

pub mod open_box;

mod closing;

pub mod board;

pub mod air;

pub mod sum_closing;

pub mod sum_compound;

pub mod tile;

pub mod paint;

pub mod trim;

pub mod buy;

pub mod quote;

pub mod sum_quote;

pub mod sheet;

pub use air::AirPage;
pub use board::BoardPage;
pub use boxes::{BoxPage, BoxesPage};
pub use buy::BuyPage;
pub use circuits::{CircuitPage, CircuitsPage};
pub use doorways::DoorwaysPage;
pub use gallery::GalleryPage;
pub use job::{JobFrame, JobPage};
pub use jobs::JobsPage;
pub use open_box::{OpenBoxPage, OpenBoxesPage};
pub use paint::PaintPage;
pub use panel::PanelPage;
pub use pour::PourPage;
pub use quote::QuotePage;
pub use room::RoomPage;
pub use sheet::SheetPage;
pub use sum_closing::SumClosingPage;
pub use sum_compound::SumCompoundPage;
pub use sum_pour::SumPourPage;
pub use sum_quote::SumQuotePage;
pub use sum_ramp::SumRampPage;
pub use sums::SumsPage;
pub use survey::SurveyPage;
pub use tile::TilePage;
pub use trim::TrimPage;
pub use wiring_sums::ampacity::SumAmpacityPage;
pub use wiring_sums::box_fill::SumBoxPage;
pub use wiring_sums::cable::SumCablePage;
pub use wiring_sums::drop::SumDropPage;
pub use wiring_sums::measured::SumMeasuredPage;
