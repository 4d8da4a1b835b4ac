//! Which arrangement the enquiry, the ground and the levels ask for.

use stillrise_design::WhatIf;
use stillrise_design::arrangements::Arrangement;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::{Model, Range};
use stillrise_design::job::{Design, would_stand};
use stillrise_design::performance::installation::Stands;
use stillrise_design::train::Source;
use stillrise_units::catalog::IN;
use stillrise_units::{Length, Typed};

/// Why an arrangement is looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Why {
    /// Nothing asks for another.
    Usual,
    /// The enquiry names it.
    Named,
    /// The enquiry says that the unit must lie in the ground.
    MustLieInGround,
    /// A tank would need a lift pump ahead of it, which breaks the oil.
    PumpBehind,
    /// A tank would stand so far below the ground.
    TankTooLow(Length),
}

/// The arrangement that is looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Which.
    pub arrangement: Arrangement,
    /// Why.
    pub why: Why,
}

/// How far below the ground a tank may stand, as a foundation does: 6 in, our proposal.
const FOUNDATION: f64 = 6.0;

/// Finds it. Where the range holds none that lies in the ground, a tank is looked for all the same, and what speaks against
/// it is found.
pub(crate) fn wanted(enquiry: &Enquiry, range: &Range, what_if: &WhatIf, begun: &Design) -> Wanted {
    if let Some(arrangement) = enquiry.unit.arrangement.0 {
        return Wanted { arrangement, why: Why::Named };
    }
    let usual = Wanted { arrangement: Arrangement::PlateTank, why: Why::Usual };
    let buried = Arrangement::PlateCylinder;
    if *enquiry.unit.custom == Some(true) || !range.models.iter().any(|m| Arrangement::of(m) == buried) {
        return usual;
    }
    if *enquiry.site.buried == Some(true) {
        return Wanted { arrangement: buried, why: Why::MustLieInGround };
    }
    let tanks = by_size(range).into_iter().map(|row| &range.models[row]);
    let smallest = tanks.into_iter().find(|m| Arrangement::of(m) == usual.arrangement);
    let Some(tank) = smallest else { return usual };
    let Some(installation) = would_stand(enquiry, what_if, begun, &Source::Row(range, tank)) else { return usual };
    // A pump behind the unit leaves the oil whole, where one ahead of it breaks it.
    let offers = range.models.iter().any(|m| Arrangement::of(m) == buried && m.stages.pump_out.length.is_given());
    if installation.stands.q == Stands::LiftPump && offers && *enquiry.unit.pump_out != Some(false) {
        return Wanted { arrangement: buried, why: Why::PumpBehind };
    }
    let low = matches!(installation.stands.q, Stands::InPit | Stands::Buried);
    match installation.over_ground.filter(|over| low && over.q < -Length::of(FOUNDATION, &IN)) {
        Some(over) => Wanted { arrangement: buried, why: Why::TankTooLow(-over.q) },
        None => usual,
    }
}

/// Rows from small to large, by the water they hold.
pub(crate) fn by_size(range: &Range) -> Vec<usize> {
    let size = |m: &Model| {
        let found = Arrangement::of(m).form().extents(m, |side| side.key.said.q().map(Typed::si));
        let [length, width, _] = found.unwrap_or_default();
        length * width * m.stages.outlet.invert.q().map_or(0.0, Typed::si)
    };
    let mut rows: Vec<(f64, usize)> = range.models.iter().map(size).zip(0..).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    rows.into_iter().map(|(_, row)| row).collect()
}

impl Wanted {
    /// What is looked for where none of this arrangement will do: a tank, unless somebody asked for what lies in the ground.
    pub(crate) fn or_else(&self) -> Option<Self> {
        let asked = matches!(self.why, Why::Usual | Why::Named | Why::MustLieInGround);
        (!asked).then_some(Self { arrangement: Arrangement::PlateTank, why: Why::Usual })
    }
}
