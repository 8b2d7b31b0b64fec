//! What else fits, and the smallest box that holds what is there.

use super::super::tables::BOX_VOLUMES;
use super::*;

/// The cables that [`BoxFill::more`] tries: 14-2, 14-3, 12-2 and 12-3, each with ground.
pub const CABLES_TO_FIT: [EnteringCable; 4] = [
    with_ground(Size::Awg14, 2),
    with_ground(Size::Awg14, 3),
    with_ground(Size::Awg12, 2),
    with_ground(Size::Awg12, 3),
];

const fn with_ground(size: Size, insulated: u32) -> EnteringCable {
    EnteringCable {
        size,
        insulated,
        ground: Some(size),
    }
}

/// How many more of a cable fit, with nothing else added.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct MoreFits {
    /// The cable.
    pub cable: EnteringCable,
    /// How many.
    pub count: u32,
}

/// The smallest box of a family.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SmallestBox {
    /// The family.
    pub family: BoxFamily,
    /// Its smallest box that holds the contents without rings; `None` where it has none, or none with room for the
    /// devices side by side.
    pub smallest: Option<BoxRow>,
    /// Gangs side by side, for the families given by the gang.
    pub gangs: u32,
}

/// How many more of each of [`CABLES_TO_FIT`] go in.
pub(super) fn more(
    contents: &Contents,
    volume_in3: f64,
    edition: CodeEdition,
) -> Result<Vec<MoreFits>, BoxRefusal> {
    let mut trial = contents.clone();
    let own = contents.cables.len();
    CABLES_TO_FIT
        .iter()
        .map(|&cable| {
            let mut count = 0;
            trial.cables.truncate(own);
            loop {
                trial.cables.push(cable);
                let fits = match required_in3(&trial, edition) {
                    Ok(required_in3) => required_in3 <= volume_in3 + ROUNDING_IN3,
                    // More than a box is counted for: the contents alone were counted, so that it is these cables.
                    Err(BoxRefusal::Count { .. }) => false,
                    Err(refusal) => return Err(refusal),
                };
                if count >= MOST_COUNT || !fits {
                    return Ok(MoreFits { cable, count });
                }
                count += 1;
            }
        })
        .collect()
}

/// The smallest box of each family of the table that holds the contents, without rings.
///
/// A family is left empty where its boxes have no room for the devices side by side: round and single-cover boxes take
/// one gang, square ones two (common practice); device, masonry and multiple-cover boxes are ganged.
///
/// # Errors
/// As [`box_fill`], but for the box.
pub fn smallest_boxes(
    contents: &Contents,
    edition: CodeEdition,
) -> Result<Vec<SmallestBox>, BoxRefusal> {
    let required_in3 = required_in3(contents, edition)?;
    let gangs: u32 = contents
        .yokes
        .iter()
        .map(|yoke| yoke.gangs)
        .sum::<u32>()
        .max(1);
    let mut families: Vec<BoxFamily> = BOX_VOLUMES.iter().map(|row| row.family).collect();
    families.dedup();
    Ok(families
        .into_iter()
        .map(|family| {
            let (most_gangs, times) = match family {
                BoxFamily::RoundOctagonal | BoxFamily::FsSingleCover | BoxFamily::FdSingleCover => {
                    (1, 1)
                }
                BoxFamily::Square => (2, 1),
                BoxFamily::Device
                | BoxFamily::Masonry
                | BoxFamily::FsMultipleCover
                | BoxFamily::FdMultipleCover => (MOST_GANGS, gangs),
            };
            let smallest = BOX_VOLUMES
                .iter()
                .filter(|row| row.family == family && gangs <= most_gangs)
                .filter(|row| row.volume_in3 * f64::from(times) >= required_in3 - ROUNDING_IN3)
                .min_by(|a, b| a.volume_in3.total_cmp(&b.volume_in3))
                .copied();
            SmallestBox {
                family,
                smallest,
                gangs: times,
            }
        })
        .collect())
}
