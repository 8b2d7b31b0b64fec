//! The buying list: what each need comes to in packs, what is on hand, what is left to buy and what it costs.

use serde::Serialize;

use super::first_unit;
use crate::job::fields::{self, Field};
use crate::job::{BuyingEntry, Typed};
use crate::quantity::EntryRefusal;
use crate::supply::need::Need;
use crate::supply::unit::{Dimension, Unit};

/// A line that passes a whole number by less than this share is that number.
const ROUNDING: f64 = 1e-9;

/// The buying list.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Buying {
    /// One line for each need, in the needs' order.
    pub lines: Vec<BuyLine>,
    /// The user's own lines.
    pub own: Vec<OwnLine>,
    /// Of all lines that have a price, dollars.
    pub cost: f64,
    /// Sales tax on these, dollars; none where no tax was entered, or where it is refused.
    pub tax: Option<f64>,
    /// Cost and tax together, dollars.
    pub total: f64,
    /// Lines that are to be bought and have no price.
    pub without_price: usize,
    /// Lines that are to be bought.
    pub to_buy: usize,
    /// Of these, how many are in the cart and have not grown.
    pub ticked: usize,
}

/// A need on the buying list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BuyLine {
    /// The need.
    pub need: Need,
    /// With the usual allowance, in the first unit of the need's dimension.
    pub with_allowance: f64,
    /// What is bought: a pack, or the first unit of the need's dimension.
    pub unit: Unit,
    /// How much of it the job takes; whole packs.
    pub takes: f64,
    /// How much is on hand; 0 where nothing was entered or where it is refused.
    pub on_hand: f64,
    /// How much is left to buy; whole packs.
    pub to_buy: f64,
    /// How much was put into the cart.
    pub ticked: Option<f64>,
    /// By how much the line has grown since; none where it has not.
    pub grown: Option<f64>,
    /// What it costs, dollars: what is to be bought or, where more is in the cart, that.
    pub cost: Option<f64>,
    /// Sales tax on it, dollars.
    pub tax: Option<f64>,
    /// What was entered and can't be read.
    pub refused: Vec<EntryRefusal>,
}

/// A line of the user's own on the buying list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnLine {
    /// Row id.
    pub id: u32,
    /// How many; 1 where nothing was entered, none where it is refused.
    pub quantity: Option<f64>,
    /// What it costs, dollars.
    pub cost: Option<f64>,
    /// Sales tax on it, dollars.
    pub tax: Option<f64>,
    /// Whether it is in the cart.
    pub ticked: bool,
}

/// The buying list of needs.
///
/// Amounts that are refused count as if they were blank, but a line of the user's own whose quantity is refused costs
/// nothing known; the fields say so themselves.
pub fn buying(needs: &[Need], entry: &BuyingEntry) -> Buying {
    let tax_percent = fields::TAX.optional(&entry.tax_percent).ok().flatten();
    let mut list = Buying::default();
    for need in needs {
        let line = buy_line(need, entry, tax_percent);
        if line.to_buy > 0.0 || line.ticked.is_some() {
            list.count(line.cost, line.ticked.is_some() && line.grown.is_none());
        }
        list.lines.push(line);
    }
    for own in &entry.own {
        let quantity = match fields::QUANTITY.optional(&own.quantity) {
            Ok(quantity) => Some(quantity.unwrap_or(1.0)),
            Err(_) => None,
        };
        let price = fields::PRICE.optional(&own.price).ok().flatten();
        let cost = quantity.zip(price).map(|(n, price)| cents(n * price));
        list.count(cost, own.ticked);
        list.own.push(OwnLine {
            id: own.id,
            quantity,
            cost,
            tax: part(cost, tax_percent),
            ticked: own.ticked,
        });
    }
    list.cost = cents(list.cost);
    list.tax = part(Some(list.cost), tax_percent).map(cents);
    list.total = cents(list.cost + list.tax.unwrap_or(0.0));
    list
}

impl Buying {
    fn count(&mut self, cost: Option<f64>, ticked: bool) {
        self.to_buy += 1;
        self.ticked += usize::from(ticked);
        self.without_price += usize::from(cost.is_none());
        self.cost += cost.unwrap_or(0.0);
    }
}

fn buy_line(need: &Need, entry: &BuyingEntry, tax_percent: Option<f64>) -> BuyLine {
    let with_allowance = need.amount(need.usual_percent);
    let pack = need.packs.first();
    let unit = pack.map_or(first_unit(need.dimension), |pack| pack.unit);
    let whole = pack.is_some() || need.dimension == Dimension::Count;
    let rounded = |amount: f64| if whole { up(amount) } else { amount };
    let in_packs = need
        .mixed()
        .unwrap_or(with_allowance / pack.map_or(1.0, |pack| pack.holds));
    let row = entry.row(need.kind, need.room);
    let mut refused = Vec::new();
    let mut read = |field: &Field, typed: Option<&Typed>| match field.optional(typed?) {
        Ok(value) => value,
        Err(refusal) => {
            refused.push(refusal);
            None
        }
    };
    let on_hand = read(&fields::QUANTITY, row.map(|row| &row.on_hand)).unwrap_or(0.0);
    let price = read(&fields::PRICE, row.map(|row| &row.price));
    let ticked = read(&fields::QUANTITY, row.map(|row| &row.ticked));
    let to_buy = rounded((in_packs - on_hand).max(0.0));
    let grown = ticked
        .map(|ticked| to_buy - ticked)
        .filter(|grown| *grown > to_buy.max(1.0) * TICK_ROUNDING);
    let cost = price.map(|price| cents(price * to_buy.max(ticked.unwrap_or(0.0))));
    BuyLine {
        need: need.clone(),
        with_allowance,
        unit,
        takes: rounded(in_packs),
        on_hand,
        to_buy,
        ticked,
        grown,
        cost,
        tax: part(cost, tax_percent),
        refused,
    }
}

/// What was ticked is kept to two decimals.
const TICK_ROUNDING: f64 = 0.01;

fn up(amount: f64) -> f64 {
    (amount * (1.0 - ROUNDING)).ceil()
}

fn part(cost: Option<f64>, percent: Option<f64>) -> Option<f64> {
    cost.zip(percent)
        .map(|(cost, percent)| cost * percent / 100.0)
}

/// Whole cents.
fn cents(dollars: f64) -> f64 {
    (dollars * 100.0 * (1.0 + f64::EPSILON)).round() / 100.0
}
