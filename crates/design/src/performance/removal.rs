//! What is removed: stage by stage, in both seasons, clean and at the end of the interval.

use super::passage::{Fixed, Passage};
use super::{Depth, State};
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::Season;
use crate::basis::waters::Content;
use crate::provenance::{Stop, Trail, Val};
use crate::train::unit::Unit;
use crate::{by, reckon};
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_handbook::separation::residence_time;
use stillrise_units::{Concentration, Flow, Length, Ratio, Time};

/// A prediction with its two bounds; one that the [`Depth`] does not ask for was not worked. Only the mixed one is held
/// against limits, and only whoever prints needs the ideal one.
#[derive(Debug, Clone, Copy)]
pub struct Bounded {
    /// Everything ideal: the least that can be left.
    pub ideal: Option<Val<Concentration>>,
    /// Tank as chosen, laminar gaps with unequal flow.
    pub expected: Val<Concentration>,
    /// Tank and gaps mixed: the most.
    pub mixed: Option<Val<Concentration>>,
}

/// What leaves in one case, season and state.
#[derive(Debug, Clone)]
pub struct Removal {
    /// The case.
    pub case: String,
    /// Its place among the cases.
    pub case_index: usize,
    /// Whether the case lasts long enough to count in a mean.
    pub lasts: bool,
    /// The season.
    pub season: Season,
    /// The state.
    pub state: State,
    /// Flow through one unit.
    pub flow: Val<Flow>,
    /// Droplet that rises at the overflow rate of the plates: caught wholly if all gaps run equal. Found only where
    /// a trail is kept.
    pub cut: Option<Val<Length>>,
    /// Time in the unit up to the crest.
    pub residence: Val<Time>,
    /// Share of the free oil left, as expected.
    pub left: Val<Ratio>,
    /// Free oil out.
    pub free: Bounded,
    /// Free, emulsified and dissolved oil out.
    pub total: Bounded,
    /// What came in.
    pub content: Content,
    /// What decided it.
    pub passage: Passage,
}

impl Removal {
    /// What a pollutant counts of the oil that leaves, and of what comes.
    #[must_use]
    pub fn counted(&self, counts: Counts) -> (Bounded, Val<Concentration>) {
        match counts {
            Counts::AllOil => (self.total, self.content.total),
            Counts::FreeOil => (self.free, self.content.free),
        }
    }
}

/// What leaves in one case, season and state.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
#[allow(clippy::too_many_arguments)]
pub fn removal<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &Unit,
    fixed: &Fixed,
    (case_index, case, content): (usize, &Case, &Content),
    flow: Val<Flow>,
    (season, state): (Season, State),
    depth: Depth,
) -> Result<Removal, Stop> {
    t.section(format_args!("removal: {}, {}, {}", case.name, season.name(), state.name()));
    let passage = Passage::new(t, basis, unit, fixed, case, flow, (season, state))?;
    let residence = by!(t, "time in the unit", residence_time::time(unit.layout.water_volume, flow))?;
    let cut = if depth == Depth::Full && passage.fluids.rises() { cut(t, &passage)? } else { None };
    let low =
        (depth == Depth::Full).then(|| passage.ideal(t, fixed).left(t, "free oil left, ideal bound")).transpose()?;
    let expected = passage.left(t, "free oil left, expected")?;
    let bounded = !matches!(depth, Depth::Screen | Depth::Expected);
    let high = bounded.then(|| passage.mixed(t, fixed).left(t, "free oil left, mixed bound")).transpose()?;
    let free = Bounded {
        ideal: low.map(|left| out(t, "free oil out, ideal bound", content, left)),
        expected: out(t, "free oil out, expected", content, expected),
        mixed: high.map(|left| out(t, "free oil out, mixed bound", content, left)),
    };
    let total = Bounded {
        ideal: free.ideal.map(|free| total(t, "total oil out, ideal bound", content, free)),
        expected: total(t, "total oil out, expected", content, free.expected),
        mixed: free.mixed.map(|free| total(t, "total oil out, mixed bound", content, free)),
    };
    Ok(Removal {
        case: case.name.clone(),
        case_index,
        lasts: case.counts_in_a_mean(),
        season,
        state,
        flow,
        cut,
        residence,
        left: expected,
        free,
        total,
        content: content.clone(),
        passage,
    })
}

/// The droplet that rises at the overflow rate of the plates; `None` without plates.
fn cut<T: Trail>(t: &mut T, p: &Passage) -> Result<Option<Val<Length>>, Stop> {
    let label = "droplet that rises at the overflow rate of the plates";
    p.plates().map(|plates| p.fluids.just_rises(t, label, plates.v_0)).transpose()
}

/// Free oil that leaves, of a share that is left.
pub fn out<T: Trail>(t: &mut T, label: &str, content: &Content, left: Val<Ratio>) -> Val<Concentration> {
    reckon!(t, label, [MG_L, MG_L], (free = content.free, left = left) free * left)
}

/// All oil that leaves with it.
pub fn total<T: Trail>(t: &mut T, label: &str, content: &Content, free: Val<Concentration>) -> Val<Concentration> {
    reckon!(t, label, [MG_L, MG_L], (free = free, emulsified = content.emulsified, dissolved = content.dissolved) free + emulsified + dissolved)
}
