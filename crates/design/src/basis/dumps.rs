//! Baths that are dumped into a stream: what they make of its mean, of the day they are dumped and of the water while they
//! run.

use super::chemicals::{Dosed, Which};
use super::contents::{Asked, Content, Kind, content};
use super::fluids::Fluids;
use super::stated::{stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::named::same;
use crate::provenance::{Stop, Trail, Val, WhatIf};
use crate::{by, reckon, say};
use stillrise_handbook::separation::{batch_mixture, mixture};
use stillrise_units::{Concentration, Flow, Ratio, Time, Volume, ratio};

/// How far the oil of a water rises above its mean: on the day of a dump, and in a sample while the bath runs.
#[derive(Debug, Clone, Copy)]
pub struct Peaks {
    /// Content of the day over the mean.
    pub day: Val<Ratio>,
    /// Content of a sample over the mean; that of the day where nobody said how fast the bath is let go.
    pub sample: Val<Ratio>,
}

/// A bath while it is let go: what it adds to the flow, and for how long.
#[derive(Debug, Clone)]
pub struct Bath {
    /// Its name.
    pub name: String,
    /// Its flow.
    pub flow: Val<Flow>,
    /// How long it runs.
    pub lasts: Val<Time>,
    /// What it carries.
    pub content: Content,
    /// What its stream carries while no bath runs.
    pub without: Content,
    /// Total oil of the stream while it runs.
    pub running: Val<Concentration>,
    /// Its place among the dumps of the enquiry.
    pub dump: usize,
}

/// What a stream brings on an average day: without its baths, and of each of them.
#[derive(Debug, Clone)]
pub struct Parts {
    /// Without them.
    pub bare: Val<Volume>,
    /// Each bath, by its place in the enquiry.
    pub baths: Vec<(usize, Val<Volume>)>,
}

/// What baths make of a stream.
#[derive(Debug, Clone)]
pub(super) struct Dumped {
    /// Its mean content with them.
    pub content: Content,
    /// Its volume on an average day with them.
    pub per_day: Val<Volume>,
    /// Its volume on a day that it runs, with the bath that makes its strongest day.
    pub day: Val<Volume>,
    /// How far its oil rises above the mean; `None` without baths.
    pub peaks: Option<Peaks>,
    /// The baths of which it is known how fast they are let go.
    pub baths: Vec<Bath>,
    /// What each bath, by its place in the enquiry, brings on an average day.
    pub parts: Vec<(usize, Val<Volume>)>,
}

/// The stream that baths go into.
#[derive(Debug, Clone)]
pub(super) struct Into {
    /// Its place in the enquiry.
    pub stream: usize,
    /// Its flow while it runs.
    pub flow: Val<Flow>,
    /// Its volume on a day that it runs.
    pub running: Val<Volume>,
    /// Its volume on an average day.
    pub per_day: Val<Volume>,
    /// What it carries without them.
    pub content: Content,
}

/// Whether a bath goes into a stream: the one it names, or the only one there is.
fn goes(e: &Enquiry, named: Option<&str>, stream: usize) -> bool {
    match named {
        Some(named) => {
            let own = e.streams[stream].name.as_deref();
            own.is_some_and(|own| same(own, named)) || same(&format!("stream {}", stream + 1), named)
        }
        None => e.streams.len() == 1,
    }
}

/// Mean content, volume on an average day and peaks of a stream with the baths that are dumped into it.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn dumped<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
    into: Into,
) -> Result<Dumped, Stop> {
    let (mut baths, mut parts) = (Vec::new(), Vec::new());
    let Into { stream, flow, running, per_day, content: bare } = into;
    let (mut mean, mut volume_a_day) = (bare.clone(), per_day);
    // The strongest day, and the strongest water: totals of the oil.
    let mut strongest: Option<(Val<Concentration>, Val<Volume>, Val<Concentration>)> = None;
    for (k, dump) in e.dumps.iter().enumerate().filter(|(_, d)| goes(e, d.stream.as_deref(), stream)) {
        let name = dump.name.0.clone().unwrap_or_else(|| format!("dump {}", k + 1));
        let Some(volume) = stated(t, w, &say!(T, "volume of the {name}"), &dump.volume) else { continue };
        let label = say!(T, "times a week, {name}");
        let often = stated_or_usual(t, w, dump.per_week().of(&name), &label);
        let (which, oil, solids) = (Which::Stream(stream), dump.oil(), dump.solids());
        let bath =
            content(t, w, fluids, dosed, &Asked { which, oil, solids, site: None, coldest: None, of: Kind::Bath })?;
        let a_day =
            reckon!(t, "dumped on an average day", [GAL, M3], (volume = volume, often = often) volume * often / 7.0);
        parts.push((k, a_day));
        mean = together(t, (volume_a_day, &mean), (a_day, &bath))?;
        volume_a_day = reckon!(t, "volume on an average day, with it", [GAL, M3], (water = volume_a_day, dump = a_day) water + dump);
        let label = say!(T, "total oil on a day of the {name}");
        let day = by!(t, &label, batch_mixture::concentration(running, bare.total, volume, bath.total))?;
        let sample = match stated(t, w, &say!(T, "time in which the {name} is let go"), &dump.lasts) {
            Some(time) => {
                let q = reckon!(t, "flow of the bath", [GPM, M3_H], (volume = volume, time = time) volume / time);
                let label = say!(T, "total oil while the {name} runs");
                let running = by!(t, &label, mixture::concentration(flow, bare.total, q, bath.total))?;
                let (name, content, without) = (name.clone(), bath.clone(), bare.clone());
                baths.push(Bath { name, flow: q, lasts: time, content, without, running, dump: k });
                running
            }
            None => day,
        };
        strongest = Some(match strongest {
            Some((a, v, b)) if day.q <= a.q => (a, v, if sample.q > b.q { sample } else { b }),
            earlier => {
                let v = reckon!(t, "volume on the day of it", [GAL, M3], (water = running, dump = volume) water + dump);
                let b = earlier.map(|(.., b)| b).filter(|b| b.q >= sample.q);
                (day, v, b.unwrap_or(sample))
            }
        });
    }
    let Some((day, volume, sample)) = strongest else {
        return Ok(Dumped { content: bare, per_day, day: running, peaks: None, baths, parts });
    };
    let mut over = |label: &str, top: Val<Concentration>| {
        reckon!(t, label, [ONE, ONE], (top = top, mean = mean.total)(top / mean).max(ratio(1.0)))
    };
    let day = over("oil on the day of a dump over its mean", day);
    let sample = over("oil in a sample while a bath runs over its mean", sample);
    // A water is no weaker while the bath runs than on the whole day.
    let sample = if sample.q < day.q { day } else { sample };
    Ok(Dumped { content: mean, per_day: volume_a_day, day: volume, peaks: Some(Peaks { day, sample }), baths, parts })
}

/// Two volumes together, fraction by fraction.
fn together<T: Trail>(
    t: &mut T,
    (v_1, a): (Val<Volume>, &Content),
    (v_2, b): (Val<Volume>, &Content),
) -> Result<Content, Stop> {
    let none = |t: &mut T, c: &Content| match c.heavy {
        Some(heavy) => heavy,
        None => super::cases::none_heavy(t),
    };
    let heavy = if a.heavy.is_none() && b.heavy.is_none() { None } else { Some((none(t, a), none(t, b))) };
    let mut mix = |label: &str, c_1: Val<Concentration>, c_2: Val<Concentration>| {
        by!(t, label, batch_mixture::concentration(v_1, c_1, v_2, c_2))
    };
    Ok(Content {
        total: mix("total oil, mean with the dump", a.total, b.total)?,
        free: mix("free oil, mean with the dump", a.free, b.free)?,
        heavy: heavy
            .map(|(c_1, c_2)| mix("free oil as heavy as the water, mean with the dump", c_1, c_2))
            .transpose()?,
        emulsified: mix("emulsified oil, mean with the dump", a.emulsified, b.emulsified)?,
        dissolved: mix("dissolved oil, mean with the dump", a.dissolved, b.dissolved)?,
        solids: mix("suspended solids, mean with the dump", a.solids, b.solids)?,
    })
}
