//! Rain that the sewer does not take: the unit is worked for the other waters alone, and the rain has to be kept out.

use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Receiver, Stream};
use std::borrow::Cow;
use stillrise_units::{Flow, Typed};

/// Whether rain off the declared surfaces is barred by the owner of the sewer while other water may go there. At a unit that
/// stands it comes all the same.
#[must_use]
pub fn is_barred(e: &Enquiry) -> bool {
    e.outlet.to.0 == Some(Receiver::SanitarySewer)
        && *e.outlet.rain_allowed == Some(false)
        && !e.surfaces.is_empty()
        && !e.streams.is_empty()
        && e.containments.is_empty()
        && !e.unit_stands()
}

/// The enquiry as its waters are worked: without rain that is barred.
#[must_use]
pub fn worked(e: &Enquiry) -> Cow<'_, Enquiry> {
    if is_barred(e) { Cow::Owned(without_rain(e)) } else { Cow::Borrowed(e) }
}

/// The enquiry without its surfaces and their rain.
#[must_use]
pub fn without_rain(e: &Enquiry) -> Enquiry {
    let mut other = e.clone();
    other.surfaces.clear();
    // What one pump keeps up with never starts a second one.
    let flow = |s: &Stream| {
        let day = || Some(Flow::from_si(s.volume_per_day.q()?.si() / (8.0 * 3600.0)));
        s.flow.q().or_else(|| Some(s.hose_flow.q()? * s.hoses.q()?.si())).or_else(day)
    };
    let comes = e.streams.iter().map(flow).try_fold(0.0, |sum, q| Some(sum + q?.si()));
    let least = e.inlet.rate.0.iter().filter_map(|pump| pump.q()).map(Typed::si).reduce(f64::min);
    if e.inlet.rate.0.len() > 1 && comes.zip(least).is_some_and(|(comes, least)| comes <= least) {
        other.inlet.together.0 = None;
        other.inlet.interlocked.0 = Some(true);
    }
    other.rain = None;
    other.rain_table = None;
    // Results of the rain say nothing of the other waters.
    other
        .samples
        .retain(|s| s.stream.as_deref().is_none_or(|of| e.streams.iter().any(|s| s.name.as_deref() == Some(of))));
    other
}
