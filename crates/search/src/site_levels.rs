//! How the ground lies, whatever unit is taken: how deep the water comes in, how far it may fall, how high groundwater stands.

use stillrise_design::enquiry::Enquiry;
use stillrise_units::{Length, Typed};

/// What the levels that were stated say of each other.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct SiteLevels {
    /// The invert of the pipe that comes in below the ground; negative above it.
    pub depth: Option<Length>,
    /// That invert over the one at the outfall; negative where the water must rise.
    pub fall: Option<Length>,
    /// Groundwater below the ground; negative above it.
    pub groundwater: Option<Length>,
}

/// What the stated levels say, as far as they were stated.
#[must_use]
pub fn site_levels(e: &Enquiry) -> SiteLevels {
    let under = |upper: Option<Length>, lower: Option<Length>| {
        upper.zip(lower).map(|(upper, lower)| Length::from_si(upper.si() - lower.si()))
    };
    let (ground, incoming) = (e.site.ground.q(), e.inlet.invert.q());
    SiteLevels {
        depth: under(ground, incoming),
        fall: under(incoming, e.outlet.invert.q()),
        groundwater: under(ground, e.site.groundwater.q()),
    }
}
