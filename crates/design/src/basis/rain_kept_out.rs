//! Rain that the sewer does not take: the unit is worked for the other waters alone, and the rain has to be kept out.

use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Receiver;
use std::borrow::Cow;

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

/// The enquiry without its surfaces and their rain; its pumps run as they were said to.
#[must_use]
pub fn without_rain(e: &Enquiry) -> Enquiry {
    let mut other = e.clone();
    other.surfaces.clear();
    other.rain = None;
    other.rain_table = None;
    // Results of the rain say nothing of the other waters.
    other
        .samples
        .retain(|s| s.stream.as_deref().is_none_or(|of| e.streams.iter().any(|s| s.name.as_deref() == Some(of))));
    other
}
