//! What a rule asks for when it cannot judge: the question, and the key that takes its answer. A key is asked
//! for in one wording, wherever it is needed.

use crate::rule::Subject;
use std::borrow::Cow;
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::enquiry::blocks::SPILL_VOLUME;
use stillrise_design::performance::site::SiteLevels;
use stillrise_design::provenance::Assumption;
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Typed, print};

/// A question that a customer or an engineer can answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// The question, one sentence.
    pub question: Cow<'static, str>,
    /// The key of the enquiry or of the unit's row that takes the answer; `None` where several could.
    pub key: Option<Cow<'static, str>>,
}

impl Ask {
    pub(crate) const fn fixed(key: &'static str, question: &'static str) -> Self {
        Self { question: Cow::Borrowed(question), key: Some(Cow::Borrowed(key)) }
    }
    /// A question that takes up names of the job.
    #[must_use]
    pub fn new(key: impl Into<Cow<'static, str>>, question: impl Into<Cow<'static, str>>) -> Self {
        Self { question: question.into(), key: Some(key.into()) }
    }
    /// A question whose answer has no key of its own.
    #[must_use]
    pub fn open(question: impl Into<Cow<'static, str>>) -> Self {
        Self { question: question.into(), key: None }
    }
    /// The question of an assumption.
    #[must_use]
    pub fn of(assumption: &Assumption) -> Self {
        Self::new(assumption.key.clone(), assumption.question.clone())
    }
    /// What makes two questions the same one: the key, or else the words.
    #[must_use]
    pub fn same(&self) -> &str {
        self.key.as_deref().unwrap_or(&self.question)
    }
    /// A question about the unit: its key stands in the enquiry where the enquiry states the dimensions, else in
    /// the row of the range. A unit made to measure has no such key yet.
    #[must_use]
    pub fn unit(s: &Subject<'_>, key: &str, question: &'static str) -> Self {
        let described = s.design.train.as_ref().map(|train| &train.unit.particulars).filter(|p| p.described);
        match described {
            Some(_) if s.enquiry.unit.dimensions.is_some() => Self::new(format!("unit.dimensions.{key}"), question),
            Some(row) => Self::new(format!("model \"{}\".{key}", row.model), question),
            None => Self::open(question),
        }
    }
}

/// Invert of the incoming pipe.
pub const INLET_INVERT: Ask = Ask::fixed("inlet.invert", "At what elevation does the incoming pipe arrive (invert)?");
/// Invert at the outfall.
pub const OUTLET_INVERT: Ask = Ask::fixed("outlet.invert", "At what elevation lies the invert at the outfall?");
/// Water at the outfall.
pub const TAILWATER: Ask =
    Ask::fixed("outlet.tailwater", "At what elevation does the water stand at the outfall, at its highest?");
/// Where the water goes.
pub const RECEIVER: Ask =
    Ask::fixed("outlet.to", "Where does the water go behind the separator: storm drain, water body or sanitary sewer?");
/// Whether rain may go there.
pub const RAIN_ALLOWED: Ask = Ask::fixed("outlet.rain_allowed", "Does the owner of the sewer allow rain water in it?");
/// Ground at the unit.
pub const GROUND: Ask = Ask::fixed("site.ground", "At what elevation lies the ground where the unit is to stand?");
/// Groundwater.
pub const GROUNDWATER: Ask =
    Ask::fixed("site.groundwater", "How high does the groundwater stand where the unit is to be let into the ground?");
/// How long the stated rain lasts.
pub const DURATION: Ask =
    Ask::fixed("rain.duration", "Over which time was the stated intensity of the rain taken (10 minutes, an hour)?");
/// Gravity or pump.
pub const FEED: Ask = Ask::fixed("inlet.feed", "Does the water reach the separator by gravity or by pump?");
/// Kind of pump.
pub const PUMP: Ask = Ask::fixed("inlet.pump", "Which pump lifts the water to the separator?");
/// Waters and their flows.
pub const WATERS: Ask = Ask::fixed("stream.flow", "Which waters drain to the separator, and at what flow?");
/// The spill.
pub const SPILL: Ask = Ask::fixed("spill.volume", SPILL_VOLUME);
/// Rate of the spill.
pub const SPILL_RATE: Ask = Ask::fixed("spill.rate", "At what rate would a spill reach the separator?");
/// Closure of the outlet.
pub const CLOSURE: Ask = Ask::fixed(
    "spill.closure",
    "Is there, or is there to be, a closure that shuts the outlet when oil comes near it, without which a spill that finds no room goes on with the water?",
);
/// Temperature of what flows in.
pub const INFLOW: Ask = Ask::fixed("water.inflow", "How warm is the water that flows in, at its warmest or coldest?");
/// Oil on the solids.
pub const OIL_ON_SOLIDS: Ask = Ask::fixed("solids.oil", "How much oil clings to the solids, as a share of their mass?");
/// Limits.
pub const LIMIT: Ask =
    Ask::fixed("limit.value", "Which limits hold for what leaves: pollutant, number, statistic and method?");
/// The oils.
pub const OILS: Ask = Ask::fixed("oil.kind", "Which oils may come?");
/// Coldest air.
pub const COLDEST_AIR: Ask = Ask::fixed(
    "site.coldest_air",
    "How cold does the air get where the unit stands, and does it stand in a heated room?",
);
/// Lifting gear.
pub const LIFTING: Ask = Ask::fixed("site.lifting", "What weight can be lifted over the unit?");
/// Room along.
pub const MAX_LENGTH: Ask = Ask::fixed("site.max_length", "How long may the unit be to fit its place?");
/// Room across.
pub const MAX_WIDTH: Ask = Ask::fixed("site.max_width", "How wide may the unit be to fit its place?");
/// Room overhead.
pub const HEADROOM: Ask = Ask::fixed(
    "site.headroom",
    "What clear height is there over the ground where the unit is to stand, up to roof, canopy, cable or the hook that lifts?",
);
/// Walkways.
pub const ACCESS: Ask = Ask::fixed(
    "site.access",
    "How wide a walkway must stay free around the unit, and between units where there are several?",
);

/// Room between units in the ground.
pub const ROOM_BETWEEN: Ask = Ask::fixed(
    "site.access",
    "How much room has to stay free around and between the units in the ground, to fill in and compact?",
);

/// Thickness of the steel of a unit.
pub const THICKNESS: &str = "How thick are the walls of the unit, or its shell?";
/// What a unit is made of.
pub const METAL: &str = "What is the vessel of the unit made of?";

/// Rate of the pumps, with the flow that the unit is worked for without it.
#[must_use]
pub fn pump_rate(s: &Subject<'_>) -> Ask {
    let asks = "ow many pumps lift the water, and what does each deliver?";
    let flow = s.design.basis.as_ref().and_then(Basis::design_flow).filter(|_| s.read);
    let shown = flow.map(|flow| print::in_prose(flow.q.si(), s.system().pick(FLOW_UNITS)));
    let question = match shown {
        Some(shown) => format!("The unit is worked for {shown}; h{asks}"),
        None => format!("H{asks}"),
    };
    Ask::new("inlet.rate", question)
}

/// Invert at the outfall, with the highest that would do if that is known.
#[must_use]
pub fn outfall(s: &Subject<'_>) -> Ask {
    let highest = s.design.performance.as_ref().and_then(|p| p.site.installation.highest_outfall);
    let Some(highest) = highest.filter(|_| s.read) else { return OUTLET_INVERT };
    let shown = s.level(highest.q);
    let stands = if s.design.basis.as_ref().is_some_and(|b| b.feed.pumped) { "on the ground" } else { "by gravity" };
    let site = s.design.performance.as_ref().map(|p| &p.site);
    let unsaid = |site: &&SiteLevels| s.assumed(site.length.at).is_some() || s.assumed(site.slope.at).is_some();
    let pipe = site.filter(unsaid).map_or_else(String::new, |site| {
        format!(
            ", with {} of pipe at {}, lower the longer it is",
            s.show(site.length.q, (&FT, &M)),
            s.percent(site.slope.q)
        )
    });
    Ask::new(
        "outlet.invert",
        format!(
            "The outlet can end no higher than {shown} for the unit to drain {stands}{pipe}; at which level is the outfall (invert)?"
        ),
    )
}

/// Water other than rain whose emulsion nobody stated and for which no product was declared, not even that
/// there is none: what keeps its oil from rising is not known.
#[must_use]
pub fn products(s: &Subject<'_>) -> Option<(String, Ask)> {
    if !s.enquiry.chemicals.is_empty() {
        return None;
    }
    let silent = |stream: &&stillrise_design::enquiry::blocks::Stream| {
        !stream.oil.as_ref().is_some_and(|oil| oil.emulsified.is_given())
    };
    let names: Vec<&str> =
        s.enquiry.streams.iter().filter(silent).map(|s| s.name.as_deref().unwrap_or("water")).collect();
    let water = (!names.is_empty()).then(|| names.join(" and "))?;
    let question = format!("Which products (detergents, degreasers, coolants) go into the {water}, or are there none?");
    Some((water, Ask::new("chemical.kind", question)))
}

/// Whether the enquiry names an oil anywhere; else the design takes one.
#[must_use]
pub fn oil_is_named(s: &Subject<'_>) -> bool {
    let e = s.enquiry;
    let contents = e.rain.iter().filter_map(|r| r.oil.as_ref()).chain(e.streams.iter().filter_map(|s| s.oil.as_ref()));
    let contents = contents.chain(e.cases.iter().filter_map(|c| c.oil.as_ref())).chain(e.stated.oil.as_ref());
    !e.oils.is_empty() || contents.into_iter().any(|oil| oil.kind.is_some())
}
