//! The prediction beside what a laboratory found in the water that leaves.

use super::keeps::promised;
use super::promise::Promise;
use super::removal::Removal;
use crate::basis::evidence::SampleSet;
use crate::enquiry::blocks::SamplePoint;
use crate::provenance::{Trail, Val};
use crate::reckon;
use stillrise_units::{Concentration, Ratio, Typed};

/// A set of results of the water that leaves, beside what is predicted.
#[derive(Debug, Clone)]
pub struct Compared {
    /// Which set, by its place in the basis.
    pub set: usize,
    /// The mean as computed in the case held against the limits, at the end of the interval.
    pub computed: Val<Concentration>,
    /// The same, but no lower than what may be promised: the number that is set beside what was measured.
    pub predicted: Val<Concentration>,
    /// Total oil that arrives in that case.
    pub influent: Val<Concentration>,
    /// The measured arithmetic mean over it.
    pub ratio: Val<Ratio>,
    /// Where it lies beside the interval that holds the measured mean.
    pub place: Place,
}

/// Where a prediction lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// Below the interval: more leaves than is predicted.
    Below,
    /// In it.
    Within,
    /// Above it: less leaves than is predicted.
    Above,
    /// Above it, and a bound: not more leaves than the least that may be promised, which is all that was said.
    Bounds,
}

/// Sets the prediction against every set of the water that leaves that has a mean.
pub(super) fn compared<T: Trail>(t: &mut T, sets: &[SampleSet], worst: Option<&Removal>) -> Vec<Compared> {
    let Some(worst) = worst else { return Vec::new() };
    let mut out = Vec::new();
    for (set, s) in sets.iter().enumerate() {
        // What is predicted is the plant as it is.
        let fit = s.point == SamplePoint::Out && s.is_predicted() && s.is_of_today();
        let Some(law) = s.usable().filter(|_| fit) else { continue };
        t.section(format_args!("prediction beside samples {}", s.name));
        let influent = worst.content.total;
        let predicted = promised(t, worst.total.expected, influent);
        if predicted.q.si() <= 0.0 {
            continue;
        }
        let label = "measured over predicted mean";
        let ratio = reckon!(t, label, [ONE, ONE], (measured = law.mean, predicted = predicted) measured / predicted);
        // A bound says no more than that not more leaves: only results above it speak against it.
        let bound = Promise::of(worst.total.expected.q, influent.q).is_bound();
        let place = if predicted.q < law.low.q {
            Place::Below
        } else if predicted.q > law.high.q {
            if bound { Place::Bounds } else { Place::Above }
        } else {
            Place::Within
        };
        out.push(Compared { set, computed: worst.total.expected, predicted, influent, ratio, place });
    }
    out
}
