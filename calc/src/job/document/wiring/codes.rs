//! The codes by which the types of [`wiring`](crate::wiring) are saved.

use crate::saved::coded;
use crate::wiring::ampacity::{Feeds, Terminals};
use crate::wiring::cable_run::{LightAt, NeutralNeed, PowerAt, Way};
use crate::wiring::circuit::{LoadKind, Purpose};
use crate::wiring::conductor::{Construction, Covering, Metal, Rating, Size};
use crate::wiring::panel::{Bars, BreakerForm, Confirmed, FedBy, Half, Mounting, Protection};
use crate::wiring::tables::{BoxFamily, Conduit, VoltagePlace};
use crate::wiring::voltage_drop::Across;

coded!(Size {
    Size::Awg18 => "18",
    Size::Awg16 => "16",
    Size::Awg14 => "14",
    Size::Awg12 => "12",
    Size::Awg10 => "10",
    Size::Awg8 => "8",
    Size::Awg6 => "6",
    Size::Awg4 => "4",
    Size::Awg3 => "3",
    Size::Awg2 => "2",
    Size::Awg1 => "1",
    Size::Awg1_0 => "1/0",
    Size::Awg2_0 => "2/0",
    Size::Awg3_0 => "3/0",
    Size::Awg4_0 => "4/0",
    Size::Kcmil250 => "250",
    Size::Kcmil300 => "300",
    Size::Kcmil350 => "350",
    Size::Kcmil400 => "400",
    Size::Kcmil500 => "500",
});

coded!(Metal {
    Metal::Copper => "copper",
    Metal::Aluminum => "aluminum",
    Metal::CopperCladAluminum => "copper_clad_aluminum",
});

coded!(Construction {
    Construction::Solid => "solid",
    Construction::Stranded => "stranded",
});

coded!(Covering {
    Covering::NmB => "nm_b",
    Covering::NmOld => "nm_old",
    Covering::Uf => "uf",
    Covering::Tw => "tw",
    Covering::Thw => "thw",
    Covering::Rhw => "rhw",
    Covering::Thwn => "thwn",
    Covering::Use => "use",
    Covering::XhhwWet => "xhhw_wet",
    Covering::XhhwDry => "xhhw_dry",
    Covering::Thhn => "thhn",
    Covering::Thwn2 => "thwn2",
    Covering::Xhhw2 => "xhhw2",
    Covering::Rated(Rating::C60) => "rated_60",
    Covering::Rated(Rating::C75) => "rated_75",
    Covering::Rated(Rating::C90) => "rated_90",
});

coded!(Terminals {
    Terminals::C60 => "60",
    Terminals::C75 => "75",
    Terminals::NotKnown => "not_known",
});

coded!(Feeds {
    Feeds::SeveralReceptacles => "several_receptacles",
    Feeds::Other => "other",
});

coded!(Mounting {
    Mounting::Upright => "upright",
    Mounting::Inverted => "inverted",
});

coded!(FedBy {
    FedBy::Service => "service",
    FedBy::Feeder => "feeder",
    FedBy::FeederFromOtherBuilding => "feeder_from_other_building",
});

coded!(Bars {
    Bars::Joined => "joined",
    Bars::Separate => "separate",
    Bars::NotKnown => "not_known",
});

coded!(BreakerForm {
    BreakerForm::Single => "single",
    BreakerForm::TwoPole => "two_pole",
    BreakerForm::Tandem(Half::A) => "tandem_a",
    BreakerForm::Tandem(Half::B) => "tandem_b",
});

coded!(Protection {
    Protection::Plain => "plain",
    Protection::ArcFault => "arc_fault",
    Protection::GroundFault => "ground_fault",
    Protection::ArcAndGroundFault => "arc_and_ground_fault",
});

coded!(Confirmed {
    Confirmed::NotConfirmed => "not_confirmed",
    Confirmed::SwitchedOff => "switched_off",
    Confirmed::Traced => "traced",
    Confirmed::Followed => "followed",
});

coded!(VoltagePlace {
    VoltagePlace::Service => "service",
    VoltagePlace::Utilization => "utilization",
});

coded!(Purpose {
    Purpose::General => "general",
    Purpose::SmallAppliance => "small_appliance",
    Purpose::Laundry => "laundry",
    Purpose::Bathroom { one_bathroom: false } => "bathrooms",
    Purpose::Bathroom { one_bathroom: true } => "one_bathroom",
});

coded!(LoadKind {
    LoadKind::Luminaire => "luminaire",
    LoadKind::CordAndPlug => "cord_and_plug",
    LoadKind::FixedInPlace => "fixed_in_place",
    LoadKind::ExhaustFan => "exhaust_fan",
    LoadKind::WaterHeater => "water_heater",
    LoadKind::SpaceHeating => "space_heating",
    LoadKind::Motor => "motor",
});

coded!(Across {
    Across::A => "a",
    Across::B => "b",
    Across::Both => "both",
});

coded!(BoxFamily {
    BoxFamily::RoundOctagonal => "round_octagonal",
    BoxFamily::Square => "square",
    BoxFamily::Device => "device",
    BoxFamily::Masonry => "masonry",
    BoxFamily::FsSingleCover => "fs_single_cover",
    BoxFamily::FdSingleCover => "fd_single_cover",
    BoxFamily::FsMultipleCover => "fs_multiple_cover",
    BoxFamily::FdMultipleCover => "fd_multiple_cover",
});

coded!(Conduit {
    Conduit::Pvc => "pvc",
    Conduit::Aluminum => "aluminum",
    Conduit::Steel => "steel",
});

coded!(Way {
    Way::Up => "up",
    Way::Across => "across",
    Way::Down => "down",
});

coded!(PowerAt {
    PowerAt::FirstSwitch => "first_switch",
    PowerAt::Light => "light",
});

coded!(LightAt {
    LightAt::LastSwitch => "last_switch",
    LightAt::FirstSwitch => "first_switch",
});

coded!(NeutralNeed {
    NeutralNeed::Every => "every",
    NeutralNeed::One => "one",
    NeutralNeed::None => "none",
});
