//! The codes of the document are the names by which answers are printed.

use calc::saved::{self, Coded, Saved};
use calc::wiring::ampacity::{Feeds, Terminals};
use calc::wiring::cable_run::{LightAt, NeutralNeed, PowerAt, Way};
use calc::wiring::circuit::{LoadKind, Purpose};
use calc::wiring::conductor::{Construction, Covering, Metal, Rating, Size};
use calc::wiring::panel::{Bars, BreakerForm, Confirmed, FedBy, Half, Mounting, Protection};
use calc::wiring::tables::{BoxFamily, Conduit, VoltagePlace};
use calc::wiring::voltage_drop::Across;
use serde::Serialize;
use serde_json::{Value, json};

fn read_back<T: Coded + Saved + std::fmt::Debug>() {
    for (value, code) in T::CODED {
        assert_eq!(value.word(), *code);
        assert_eq!(T::read(json!(code)), Ok(*value));
        assert_eq!(saved::write(value), format!("\"{code}\""));
    }
    let mut codes: Vec<_> = T::CODED.iter().map(|(_, code)| code).collect();
    codes.sort();
    codes.dedup();
    assert_eq!(codes.len(), T::CODED.len());
    assert!(T::read(json!("velvet")).is_err());
}

/// Every code is the printed name, where that is a name and not a structure.
fn printed<T: Coded + Saved + Serialize + std::fmt::Debug>(most: usize) {
    read_back::<T>();
    let named = T::CODED.iter().filter(|(value, code)| {
        let name = serde_json::to_value(value).unwrap();
        let is_name = matches!(name, Value::String(_));
        assert!(!is_name || name.as_str().unwrap().to_lowercase() == *code);
        is_name
    });
    assert_eq!(named.count(), most);
}

#[test]
fn codes_of_opened_boxes_are_the_printed_names() {
    use calc::wiring::open_box::description::{Colour, LoadKind, Side, SwitchForm, Terminal};
    use calc::wiring::open_box::reading::Meter;
    use calc::wiring::open_box::situation::Position;
    printed::<Colour>(5);
    printed::<Side>(2);
    printed::<SwitchForm>(3);
    printed::<Terminal>(12);
    printed::<LoadKind>(5);
    printed::<Meter>(2);
    printed::<Position>(2);
}

#[test]
fn codes_are_the_printed_names() {
    printed::<Size>(Size::ALL.len());
    printed::<Metal>(3);
    printed::<Construction>(2);
    // The printed ones of a rating hold it, and are not names.
    printed::<Covering>(Covering::NAMED.len());
    printed::<Terminals>(3);
    printed::<Feeds>(2);
    printed::<Mounting>(2);
    printed::<FedBy>(3);
    printed::<Bars>(3);
    printed::<BreakerForm>(2);
    printed::<Protection>(4);
    printed::<Confirmed>(4);
    printed::<VoltagePlace>(2);
    printed::<Purpose>(3);
    printed::<LoadKind>(7);
    printed::<Across>(3);
    printed::<BoxFamily>(8);
    printed::<Conduit>(3);
    printed::<Way>(3);
    printed::<PowerAt>(2);
    printed::<LightAt>(2);
    printed::<NeutralNeed>(3);
}

#[test]
fn values_with_a_value_in_them_have_a_code_each() {
    for rating in [Rating::C60, Rating::C75, Rating::C90] {
        assert!(Covering::Rated(rating).word().starts_with("rated_"));
    }
    for half in [Half::A, Half::B] {
        assert!(BreakerForm::Tandem(half).word().starts_with("tandem_"));
    }
    for one_bathroom in [true, false] {
        assert!(!Purpose::Bathroom { one_bathroom }.word().is_empty());
    }
}
