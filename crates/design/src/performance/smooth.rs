//! The studies of the ladder at so many places that a curve through them is smooth. For charts alone: worked with the trail off,
//! as a reader looks up what stands in the tables, which are the ladder's own.

use super::grades::{GRADES, Grade, grades_of};
use super::ladder::{FLOWS, MEDIANS, Point, by_flow, by_median, by_temperature};
use super::passage::Fixed;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::provenance::{Off, given};
use crate::train::Train;
use stillrise_units::catalog::UM;
use stillrise_units::{Length, Ratio, Temperature, Typed, math};

/// Steps of each curve.
const STEPS: u32 = 60;

/// The points between those of the ladder; each list is empty where the study has no answer somewhere.
#[derive(Debug, Clone, Default)]
pub struct Smooth {
    /// Against flow, as a share of the case's flow.
    pub by_flow: Vec<Point<Ratio>>,
    /// Against the temperature of the water.
    pub by_temperature: Vec<Point<Temperature>>,
    /// Against the median droplet.
    pub by_median: Vec<Point<Length>>,
    /// What each stage catches of a size.
    pub grades: Vec<Grade>,
}

/// Equal steps from the first to the last of a list.
fn even(list: &[f64]) -> impl Iterator<Item = f64> + use<> {
    let (low, high) = (list.first().copied().unwrap_or(1.0), list.last().copied().unwrap_or(1.0));
    (0..=STEPS).map(move |k| low + (high - low) * f64::from(k) / f64::from(STEPS))
}

/// Equal ratios from the first to the last of a list of positive numbers.
fn ratios(list: &[f64]) -> impl Iterator<Item = f64> + use<> {
    let (low, high) = (list.first().copied().unwrap_or(1.0), list.last().copied().unwrap_or(1.0));
    (0..=STEPS).map(move |k| low * math::pow(high / low, f64::from(k) / f64::from(STEPS)))
}

/// Works the studies around the removal that is held against the limits.
pub(super) fn smooth(basis: &Basis, train: &Train, fixed: &Fixed, worst: &Removal, case: &Case) -> Smooth {
    let mut off = Off;
    let t = &mut off;
    let sizes = ratios(&GRADES).map(|um| given(t, "size", None, Length::of(um, &UM), "steps of a curve", ""));
    let sizes: Vec<_> = sizes.collect();
    Smooth {
        by_flow: by_flow(t, basis, train, fixed, (worst, case), even(&FLOWS)).unwrap_or_default(),
        by_temperature: by_temperature(t, basis, worst, STEPS).unwrap_or_default(),
        by_median: by_median(t, worst, ratios(&MEDIANS)).unwrap_or_default(),
        grades: grades_of(t, basis, &worst.passage, sizes).unwrap_or_default(),
    }
}
