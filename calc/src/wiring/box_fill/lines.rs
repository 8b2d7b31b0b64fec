//! The lines of 314.16(B).

use super::*;
use crate::order::Order;

/// What a line is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FillItem {
    /// Conductors that end or are spliced.
    Conductors,
    /// Conductors that pass through.
    Passing,
    /// Conductors that pass through in a loop of 12 in or more.
    Looped,
    /// Fixture wires.
    FixtureWires,
    /// Internal clamps.
    Clamps,
    /// Support fittings.
    Supports,
    /// A device.
    Device,
    /// Equipment grounding conductors.
    Grounds,
    /// Isolated equipment grounding conductors, a line of their own up to 2017.
    IsolatedGrounds,
    /// A terminal block.
    TerminalBlock,
    /// Pigtails: not counted.
    Pigtails,
}

impl FillItem {
    /// A stable name for the steps of a working.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Conductors => "conductors",
            Self::Passing => "passing",
            Self::Looped => "looped",
            Self::FixtureWires => "fixture_wires",
            Self::Clamps => "clamps",
            Self::Supports => "supports",
            Self::Device => "device",
            Self::Grounds => "grounds",
            Self::IsolatedGrounds => "isolated_grounds",
            Self::TerminalBlock => "terminal_block",
            Self::Pigtails => "pigtails",
        }
    }

    const fn rule(self) -> Rule {
        match self {
            Self::Conductors
            | Self::Passing
            | Self::Looped
            | Self::FixtureWires
            | Self::Pigtails => Rule::BoxConductors,
            Self::Clamps => Rule::BoxClamps,
            Self::Supports => Rule::BoxSupports,
            Self::Device => Rule::BoxDevices,
            Self::Grounds | Self::IsolatedGrounds => Rule::BoxGrounds,
            Self::TerminalBlock => Rule::BoxTerminalBlocks,
        }
    }
}

/// One line: so many allowances of one size.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct FillLine {
    /// What it is for.
    pub item: FillItem,
    /// The conductor whose allowance is taken.
    pub size: Option<Size>,
    /// How many things there are.
    pub count: u32,
    /// How many allowances they take.
    pub allowances: f64,
    /// One allowance, cubic inches.
    pub allowance_in3: f64,
    /// All of them, cubic inches.
    pub volume_in3: f64,
    /// The paragraph.
    pub section: &'static str,
    source: Source,
}

impl FillLine {
    pub(super) fn step_of(&self) -> Step {
        step(
            "fill_line",
            vec![
                figure("count", f64::from(self.count), Unit::Count),
                figure("allowances", self.allowances, Unit::Count),
                figure("allowance", self.allowance_in3, Unit::In3),
            ],
            figure(self.item.name(), self.volume_in3, Unit::In3),
            self.source,
        )
    }
}

pub(super) fn total_in3(lines: &[FillLine]) -> f64 {
    // Not `sum`, which makes -0 of no lines.
    lines.iter().fold(0.0, |sum, line| sum + line.volume_in3)
}

/// The largest conductor in the box, equipment grounding conductors and those on devices included.
pub(super) fn largest_in(contents: &Contents) -> Option<Size> {
    let of = |list: &[Conductors]| list.iter().filter(|c| c.count > 0).map(|c| c.size).max();
    [
        contents
            .cables
            .iter()
            .flat_map(|cable| [Some(cable.size), cable.ground])
            .flatten()
            .max(),
        of(&contents.conductors),
        of(&contents.passing),
        of(&contents.looped),
        of(&contents.fixture_wires),
        of(&contents.canopy_wires),
        of(&contents.grounds),
        of(&contents.isolated_grounds),
        contents.yokes.iter().map(|yoke| yoke.size).max(),
        contents.terminal_blocks.iter().copied().max(),
    ]
    .into_iter()
    .flatten()
    .max()
}

/// Fixture wires under a canopy that may be left out: up to four, smaller than 14 AWG (314.16(B)(1) exception).
pub(super) fn canopy_left_out(contents: &Contents) -> u32 {
    contents
        .canopy_wires
        .iter()
        .filter(|wires| wires.size < Size::Awg14)
        .fold(0u32, |sum, wires| sum.saturating_add(wires.count))
        .min(4)
}

struct Writer {
    edition: CodeEdition,
    lines: Vec<FillLine>,
}

impl Writer {
    fn add(
        &mut self,
        item: FillItem,
        size: Size,
        count: u32,
        allowances: f64,
    ) -> Result<(), BoxRefusal> {
        if count > MOST_COUNT {
            return Err(BoxRefusal::Count { item, count });
        }
        let allowance_in3 = allowance_in3(size).ok_or(BoxRefusal::TooLarge { size })?;
        if count > 0 {
            let rule = item.rule();
            self.lines.push(FillLine {
                item,
                size: Some(size),
                count,
                allowances,
                allowance_in3,
                volume_in3: allowances * allowance_in3,
                section: rule.section(self.edition),
                source: rule.source(self.edition),
            });
        }
        Ok(())
    }

    /// One line for each size, the smallest first, `each` allowances for each conductor.
    fn by_size(
        &mut self,
        item: FillItem,
        conductors: impl Iterator<Item = Conductors>,
        each: f64,
    ) -> Result<(), BoxRefusal> {
        let mut totals = [0u32; Size::ALL.len()];
        for Conductors { size, count } in conductors {
            if let Some(total) = totals.get_mut(size as usize) {
                *total = total.saturating_add(count);
            }
        }
        for (&size, count) in Size::ALL.iter().zip(totals) {
            if count > 0 {
                self.add(item, size, count, f64::from(count) * each)?;
            }
        }
        Ok(())
    }
}

/// Every line, in the order of the paragraphs.
pub(super) fn lines(
    contents: &Contents,
    edition: CodeEdition,
) -> Result<Vec<FillLine>, BoxRefusal> {
    let mut out = Writer {
        edition,
        lines: Vec::new(),
    };
    if let Some(cable) = contents
        .cables
        .iter()
        .find(|c| c.insulated == 0 && c.ground.is_none())
    {
        return Err(BoxRefusal::Count {
            item: FillItem::Conductors,
            count: cable.insulated,
        });
    }
    let ends = contents
        .cables
        .iter()
        .map(|cable| Conductors {
            size: cable.size,
            count: cable.insulated,
        })
        .chain(contents.conductors.iter().copied());
    out.by_size(FillItem::Conductors, ends, 1.0)?;
    out.by_size(FillItem::Passing, contents.passing.iter().copied(), 1.0)?;
    out.by_size(FillItem::Looped, contents.looped.iter().copied(), 2.0)?;

    // Of the wires under a canopy the first four small ones are left out, the largest of them first: what is
    // counted is then the least that the exception allows.
    let mut left_out = canopy_left_out(contents);
    let mut canopy = contents.canopy_wires.clone();
    canopy.order_by_key(|wires| std::cmp::Reverse(wires.size));
    for wires in canopy.iter_mut().filter(|wires| wires.size < Size::Awg14) {
        let out_of_these = wires.count.min(left_out);
        wires.count -= out_of_these;
        left_out -= out_of_these;
    }
    out.by_size(
        FillItem::FixtureWires,
        contents.fixture_wires.iter().copied().chain(canopy),
        1.0,
    )?;

    let largest = largest_in(contents);
    if let (true, Some(size)) = (contents.internal_clamps, largest) {
        out.add(FillItem::Clamps, size, 1, 1.0)?;
    }
    if let Some(size) = largest {
        let kinds = contents.support_fittings;
        out.add(FillItem::Supports, size, kinds, f64::from(kinds))?;
    }
    for yoke in &contents.yokes {
        if !(1..=20).contains(&yoke.gangs) {
            return Err(BoxRefusal::Count {
                item: FillItem::Device,
                count: yoke.gangs,
            });
        }
        out.add(FillItem::Device, yoke.size, 1, 2.0 * f64::from(yoke.gangs))?;
    }
    grounds(contents, &mut out)?;
    if edition == CodeEdition::E2023 {
        for &size in &contents.terminal_blocks {
            out.add(FillItem::TerminalBlock, size, 1, 1.0)?;
        }
    }
    if contents.pigtails > MOST_COUNT {
        return Err(BoxRefusal::Count {
            item: FillItem::Pigtails,
            count: contents.pigtails,
        });
    }
    if contents.pigtails > 0 {
        out.lines.push(FillLine {
            item: FillItem::Pigtails,
            size: None,
            count: contents.pigtails,
            allowances: 0.0,
            allowance_in3: 0.0,
            volume_in3: 0.0,
            section: FillItem::Pigtails.rule().section(edition),
            source: FillItem::Pigtails.rule().source(edition),
        });
    }
    Ok(out.lines)
}

/// 314.16(B)(5): from 2020 one allowance for up to four and a quarter for each beyond, isolated ones among them; before,
/// one for all, and one more for a set of isolated ones.
fn grounds(contents: &Contents, out: &mut Writer) -> Result<(), BoxRefusal> {
    let of_cables = contents
        .cables
        .iter()
        .filter_map(|cable| cable.ground)
        .map(|size| Conductors { size, count: 1 });
    let tally = |list: &mut dyn Iterator<Item = Conductors>| {
        list.filter(|c| c.count > 0)
            .fold((0u32, None), |(count, largest), c| {
                (count.saturating_add(c.count), largest.max(Some(c.size)))
            })
    };
    let own = &mut of_cables.chain(contents.grounds.iter().copied());
    let isolated = &mut contents.isolated_grounds.iter().copied();
    if out.edition == CodeEdition::E2017 {
        for (item, list) in [
            (FillItem::Grounds, own as &mut dyn Iterator<Item = _>),
            (FillItem::IsolatedGrounds, isolated),
        ] {
            if let (count, Some(size)) = tally(list) {
                out.add(item, size, count, 1.0)?;
            }
        }
        return Ok(());
    }
    if let (count, Some(size)) = tally(&mut own.chain(isolated)) {
        let allowances = 1.0 + 0.25 * f64::from(count.saturating_sub(4));
        out.add(FillItem::Grounds, size, count, allowances)?;
    }
    Ok(())
}
