//! What laboratory results of the water that comes say of its oil: a claim beside what was stated, or the value itself
//! where nobody stated one. Nothing is averaged.

use super::evidence::{ENOUGH_FOR_MEAN, SampleSet};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Manner, OF_RAIN, OilContent, SamplePoint, Samples};
use crate::enquiry::distribution::Distribution;
use crate::enquiry::keys::{Block, Claim, Quantity};
use crate::provenance::Val;
use std::borrow::Cow;
use stillrise_handbook::fluids::pollutants::Which;
use stillrise_units::catalog::MG_L;
use stillrise_units::parse::Written;
use stillrise_units::{Concentration, Typed, print};

/// What becomes of the mean of a set.
#[derive(Debug, Clone, PartialEq)]
pub enum Role {
    /// The set is of the water that leaves.
    Leaves,
    /// It stands in for the oil of a water that nobody stated.
    StandsIn(String),
    /// It is of one or two results, too few for a mean, and all that is known of the oil of a water: the largest stands in,
    /// with a wide range.
    FewStandIn(String),
    /// What was stated for a water lies within the set's interval: nothing to choose.
    Agrees(String),
    /// What was stated for a water lies outside: both are claims.
    Contradicts(String),
    /// Of one or two results one is what was stated of a water: the same figure told twice, and designed for as it was stated.
    SameAsStated(String),
    /// It is told and says nothing of the design; why.
    Told(String),
}

/// The water that a set was taken of.
#[derive(Debug, Clone, Copy)]
enum Of {
    Rain,
    Stream(usize),
    Stated,
}

/// Which water a set was taken of; why that is not known.
fn water(e: &Enquiry, s: &Samples) -> Result<Of, String> {
    match s.stream.as_deref() {
        Some(name) => match e.streams.iter().position(|s| s.name.as_deref() == Some(name)) {
            Some(i) => Ok(Of::Stream(i)),
            None if name == OF_RAIN => Ok(Of::Rain),
            None => Err(format!("no water is called \"{name}\"")),
        },
        None => match (e.rain.is_some() || !e.surfaces.is_empty(), e.streams.len()) {
            (true, 0) => Ok(Of::Rain),
            (false, 1) => Ok(Of::Stream(0)),
            (false, 0) => Ok(Of::Stated),
            _ => Err("several waters come, and it is not said of which they are".to_owned()),
        },
    }
}

/// Its name.
fn named(e: &Enquiry, of: Of) -> String {
    match of {
        Of::Rain => OF_RAIN.to_owned(),
        Of::Stated => "the water".to_owned(),
        Of::Stream(i) => e.streams.get(i).and_then(|s| s.name.0.clone()).unwrap_or_else(|| format!("stream {}", i + 1)),
    }
}

/// What was stated of its oil.
fn stated(e: &Enquiry, of: Of) -> Option<&OilContent> {
    match of {
        Of::Rain => e.rain.as_ref()?.oil.as_ref(),
        Of::Stream(i) => e.streams.get(i)?.oil.as_ref(),
        Of::Stated => e.stated.oil.as_ref(),
    }
}

/// Up to which share of it two contents are one.
const SAME: f64 = 0.005;

/// What becomes of the mean of a set, and the water it was taken of.
fn taken(e: &Enquiry, set: &SampleSet) -> (Role, Option<Of>) {
    let told = |why: String| (Role::Told(why), None);
    let Some(block) = e.samples.get(set.index) else { return told("it is not in the enquiry".to_owned()) };
    if set.point == SamplePoint::Out {
        return (Role::Leaves, None);
    }
    if set.pollutant.is_suspended_solids() {
        return told("solids are taken as they are stated of each water; where these results are of one, their mean is to be stated there".to_owned());
    }
    if set.pollutant.which != Which::OilAndGrease {
        return told("only oil and grease says how much oil comes in all".to_owned());
    }
    if !set.is_of_the_stream() {
        return told("samples from the surface hold the film and not the stream".to_owned());
    }
    if set.count < ENOUGH_FOR_MEAN {
        let few = format!("fewer than {ENOUGH_FOR_MEAN} results make no mean");
        let Some(of) = water(e, block).ok().filter(|_| set.ends.is_some()) else { return told(few) };
        let name = named(e, of);
        let mean = stated(e, of).and_then(|oil| oil.mean.q());
        return if let Some(mean) = mean {
            // Where what was stated is one of the results, one bottle was told twice.
            let same = |end: Val<Concentration>| (mean.si() / end.q.si() - 1.0).abs() < SAME;
            let told_twice = set.ends.is_some_and(|(least, most)| same(least) || same(most));
            if told_twice {
                return (Role::SameAsStated(name), None);
            }
            told(format!("{few}, and what was stated of the oil of {name} is designed for"))
        } else {
            (Role::FewStandIn(name), Some(of))
        };
    }
    let Some(law) = &set.law else { return told("too few results were detected".to_owned()) };
    let of = match water(e, block) {
        Ok(of) => of,
        Err(why) => return told(why),
    };
    let name = named(e, of);
    let role = match stated(e, of).and_then(|oil| oil.mean.claim()) {
        None => Role::StandsIn(name),
        Some(claim) if law.low.q.si() <= claim.written.si() && claim.written.si() <= law.high.q.si() => {
            Role::Agrees(name)
        }
        Some(_) => Role::Contradicts(name),
    };
    (role, Some(of))
}

/// What becomes of the mean of a set.
#[must_use]
pub fn role(e: &Enquiry, set: &SampleSet) -> Role {
    taken(e, set).0
}

/// Waters of whose oil one or two results are all that is known.
#[must_use]
pub fn of_few_results(e: &Enquiry) -> Vec<String> {
    let few = |s: &&Samples| {
        let oil = s.of().is_some_and(|p| p.which == Which::OilAndGrease);
        let stream = s.place.0 == Some(SamplePoint::In) && s.manner.0 != Some(Manner::Surface);
        let results = &s.results.items;
        oil && stream && results.len() < ENOUGH_FOR_MEAN && results.iter().any(|r| r.detected)
    };
    let waters = e.samples.iter().filter(few).filter_map(|s| water(e, s).ok());
    let unstated = waters.filter(|of| stated(e, *of).is_none_or(|oil| !oil.mean.is_given()));
    unstated.map(|of| named(e, of)).collect()
}

/// The enquiry with what the sets claim of the waters that come.
#[must_use]
pub fn claimed<'a>(e: &'a Enquiry, sets: &[SampleSet]) -> Cow<'a, Enquiry> {
    let mut out = Cow::Borrowed(e);
    for set in sets {
        let (role, Some(of)) = taken(e, set) else { continue };
        let Some(claim) = claim(set, &role) else { continue };
        let changed = out.to_mut();
        let (place, oil) = match of {
            Of::Rain => {
                let rain = changed.rain.get_or_insert_default();
                (rain.oil().inside(), &mut rain.oil)
            }
            Of::Stated => (changed.stated.oil().inside(), &mut changed.stated.oil),
            Of::Stream(i) => match changed.streams.get_mut(i) {
                Some(stream) => (stream.oil().inside(), &mut stream.oil),
                None => continue,
            },
        };
        let oil = oil.get_or_insert_with(|| OilContent::standing(place));
        let mut claims = core::mem::take(&mut oil.mean.claims);
        claims.push(claim);
        let key = oil.mean();
        oil.mean = Quantity::new(claims, key.spec, &key.place());
    }
    out
}

/// What a set claims of the mean of its water; `None` where it claims nothing.
fn claim(set: &SampleSet, role: &Role) -> Option<Claim> {
    let written = |c: Concentration| Written {
        text: print::with_unit(c.si(), &MG_L),
        value: MG_L.from_si(c.si()),
        unit: &MG_L,
        notes: Vec::new(),
        gallon_open: false,
    };
    let (mean, from, range) = match role {
        Role::StandsIn(_) | Role::Contradicts(_) => {
            let law = set.law.as_ref()?;
            // The mean of a water is not taken to lie below its lowest result.
            let least = set.ends.map(|(smallest, _)| smallest.q).filter(|s| *s > law.low.q).unwrap_or(law.low.q);
            let low = if least < law.mean.q { least } else { law.mean.q };
            let range = matches!(role, Role::StandsIn(_)).then_some([low, law.high.q]);
            (law.mean.q, format!("the mean of {} results, samples \"{}\"", set.count, set.name), range)
        }
        Role::FewStandIn(_) => {
            let (smallest, largest) = set.ends?;
            let which = if set.detected > 1 { "the larger of two results" } else { "a single result" };
            let range = [smallest.q / FEW_SCATTER, largest.q * FEW_SCATTER];
            let why =
                format!("{which}, samples \"{}\", from a third of it to three times (engineering judgement)", set.name);
            (largest.q, why, Some(range))
        }
        Role::Leaves | Role::Agrees(_) | Role::SameAsStated(_) | Role::Told(_) => return None,
    };
    let range = range.map(|[low, high]| (written(low), written(high), Distribution::Triangular));
    Some(Claim { written: written(mean), from: Some(from), chosen: false, because: None, range })
}

/// How far a single result of oil may lie from the mean of its water, either way: engineering judgement. A scatter like the
/// mean, as grabs of oil show it, spreads nine of ten over a factor of some four.
const FEW_SCATTER: f64 = 3.0;
