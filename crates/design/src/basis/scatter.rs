//! How results of what leaves scatter, as far as there are enough of them to say it.

use super::evidence::{ENOUGH_FOR_SCATTER, NUMBER, SampleSet};
use crate::enquiry::blocks::SamplePoint;
use crate::provenance::{Trail, Val, choose};
use stillrise_handbook::fluids::pollutants::Pollutant;
use stillrise_units::Ratio;

/// The coefficient of variation that the results of what leaves give for a limit on this pollutant, if there are enough.
pub fn variation<T: Trail>(t: &mut T, sets: &[SampleSet], pollutant: &Pollutant) -> Option<Val<Ratio>> {
    let fit = |s: &&SampleSet| is_of(s, pollutant) && s.count >= ENOUGH_FOR_SCATTER;
    let all: Vec<Val<Ratio>> = sets.iter().filter(fit).filter_map(|s| Some(s.usable()?.variation)).collect();
    let most = all.iter().copied().reduce(|a, b| if b.q > a.q { b } else { a })?;
    if all.len() == 1 {
        return Some(most);
    }
    let nodes: Vec<_> = all.iter().map(|v| v.at).collect();
    let because = "the set that scatters most is on the safe side";
    let label = "coefficient of variation of the effluent";
    Some(choose(t, label, Some(NUMBER), most.q, "the sets of ten results or more", because, &nodes))
}

fn is_of(s: &SampleSet, pollutant: &Pollutant) -> bool {
    s.point == SamplePoint::Out && *s.pollutant == *pollutant
}

/// What sets too small to give a coefficient of variation would say, in words that follow an assumption's source.
pub fn too_few(sets: &[SampleSet], pollutant: &Pollutant) -> String {
    let says = |s: &SampleSet| {
        let cv = s.usable()?.variation.q.value;
        let n = s.count;
        Some(format!("; the {n} results of \"{}\" alone have {}", s.name, stillrise_units::print::digits(cv, 2)))
    };
    sets.iter().filter(|s| is_of(s, pollutant)).filter_map(says).collect()
}
