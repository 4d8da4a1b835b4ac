//! The methods that an authority asks for, each worked for the job by its published steps, a file a family.
//!
//! Nothing of the unit rests on them: they are worked on the basis alone, and what they ask of a unit is held against the one
//! that was taken by a rule. What a method is called, where it comes from and what it leaves out stands in [`about`].

pub mod about;
mod basin;
mod european;
mod flow;
mod manuals;
pub mod own;
mod rain;
mod shape;
#[cfg(test)]
mod tests;
mod water_quality;

use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{self, Regulator};
use crate::enquiry::keys::Key;
use crate::provenance::{Node, Stop, Trail, Val, WhatIf};
use crate::reckon;
use std::borrow::Cow;
use stillrise_units::{Area, Density, Flow, KinematicViscosity, Ratio, Typed, Velocity, Viscosity, Volume};

/// A value of a method under the symbol that its source prints.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    /// The symbol, as mathematics: `V_t`.
    pub symbol: &'static str,
    /// Its place in the trail.
    pub at: Node,
    /// Whether the method takes it as it is, found before: its steps are not the method's.
    pub taken: bool,
}

/// What a method asks of all units together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asked {
    /// Surface of the open water at least, of units without plates.
    Surface(Val<Area>),
    /// Velocity along the basin at most, of units without plates.
    Velocity(Val<Velocity>),
    /// Projected area of plates at least, of units with plates.
    PlateArea(Val<Area>),
    /// Volume of the water at least.
    Water(Val<Volume>),
    /// Nominal size, which a type test shows.
    NominalSize(Val<Flow>),
    /// Oil that is held, at least.
    OilStore(Val<Volume>),
    /// Sludge or silt that is held, at least.
    SludgeStore(Val<Volume>),
    /// Flow that the units are designed for, at least.
    Flow(Val<Flow>),
}

impl Asked {
    /// Its place in the trail.
    #[must_use]
    pub fn at(&self) -> Node {
        match self {
            Asked::Surface(v) | Asked::PlateArea(v) => v.at,
            Asked::Velocity(v) => v.at,
            Asked::Water(v) | Asked::OilStore(v) | Asked::SludgeStore(v) => v.at,
            Asked::NominalSize(v) | Asked::Flow(v) => v.at,
        }
    }
    /// What it is, in words.
    #[must_use]
    pub fn what(&self) -> &'static str {
        match self {
            Asked::Surface(_) => "surface of the open water, at least",
            Asked::Velocity(_) => "velocity along the basin, at most",
            Asked::PlateArea(_) => "projected plate area, at least",
            Asked::Water(_) => "volume of the water, at least",
            Asked::NominalSize(_) => "nominal size, as a flow, at least",
            Asked::OilStore(_) => "oil held, at least",
            Asked::SludgeStore(_) => "sludge held, at least",
            Asked::Flow(_) => "flow designed for, at least",
        }
    }
}

/// What a method needs and nobody said: the key that takes it, and the question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Missing {
    /// The path of the key.
    pub key: Cow<'static, str>,
    /// The question to the customer.
    pub question: String,
}

/// One method, worked for the job.
#[derive(Debug, Clone, PartialEq)]
pub struct Worksheet {
    /// Which.
    pub method: Regulator,
    /// Its values in order, under the source's symbols.
    pub terms: Vec<Term>,
    /// What it asks of the units.
    pub asked: Vec<Asked>,
    /// What it would have past the unit.
    pub bypassed: Option<Val<Flow>>,
    /// What is to be said of the work on this job, in sentences.
    pub remarks: Vec<&'static str>,
    /// What it needs and nobody said.
    pub missing: Vec<Missing>,
    /// Why it could not be worked to its end, if it could not.
    pub stopped: Option<Stop>,
}

impl Worksheet {
    fn new(method: Regulator) -> Self {
        Self {
            method,
            terms: Vec::new(),
            asked: Vec::new(),
            bypassed: None,
            remarks: Vec::new(),
            missing: Vec::new(),
            stopped: None,
        }
    }
    /// Takes a value up under its symbol.
    fn term<Q>(&mut self, symbol: &'static str, value: Val<Q>) -> Val<Q> {
        self.terms.push(Term { symbol, at: value.at, taken: false });
        value
    }
    /// Takes up a value that was found before, as it is.
    fn take<Q>(&mut self, symbol: &'static str, value: Val<Q>) -> Val<Q> {
        self.terms.push(Term { symbol, at: value.at, taken: true });
        value
    }
    /// Asks for what nobody said.
    fn miss<F>(&mut self, key: &Key<'_, F>) {
        self.missing.push(Missing { key: key.path(), question: key.question() });
    }
    /// The place of what it comes to: what it asks first.
    #[must_use]
    pub fn result(&self) -> Option<Node> {
        self.asked.first().map(Asked::at).or_else(|| self.terms.last().map(|term| term.at))
    }
}

/// What the methods take of a job.
struct Inputs<'a> {
    e: &'a Enquiry,
    w: &'a WhatIf,
    basis: &'a Basis,
    block: &'a blocks::Regulation,
}

/// Water and heaviest oil of the coldest season, as droplets meet them.
#[derive(Clone, Copy)]
struct Fluids {
    water: Val<Density>,
    viscosity: Val<Viscosity>,
    kinematic: Val<KinematicViscosity>,
    oil: Val<Density>,
}

impl Inputs<'_> {
    /// The flow that the units are designed for.
    fn flow(&self) -> Result<Val<Flow>, Stop> {
        self.basis.design_flow().ok_or_else(|| Stop::said("flow", "no water comes whose flow is known"))
    }
    fn fluids(&self) -> Fluids {
        let water = self.basis.fluids.water(Season::Cold);
        Fluids {
            water: water.density,
            viscosity: water.viscosity,
            kinematic: water.kinematic,
            oil: self.basis.fluids.heaviest(Season::Cold).cold,
        }
    }
}

/// Works each method that is asked for.
pub(crate) fn regulation<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, basis: &Basis) -> Vec<Worksheet> {
    let Some(block) = &e.regulation else { return Vec::new() };
    let of = Inputs { e, w, basis, block };
    block.asked().into_iter().map(|method| worked(t, method, &of)).collect()
}

fn worked<T: Trail>(t: &mut T, method: Regulator, of: &Inputs<'_>) -> Worksheet {
    t.section(format_args!("method asked for: {}", about::title(method)));
    let mut sheet = Worksheet::new(method);
    let outcome = match method {
        Regulator::Api421 => shape::api(t, &mut sheet, of),
        Regulator::Washington => shape::washington(t, &mut sheet, of),
        Regulator::NewZealand => shape::new_zealand(t, &mut sheet, of),
        Regulator::En858 => european::en858(&mut sheet, of),
        Regulator::Ppg3 => european::ppg3(t, &mut sheet, of),
        Regulator::GuideSpecification => manuals::guide_specification(t, &mut sheet, of),
        Regulator::ResidenceTime => manuals::residence_time(t, &mut sheet, of),
        Regulator::OverflowRate => manuals::overflow_rate(t, &mut sheet, of),
        Regulator::Rational => flow::rational(t, &mut sheet, of),
        Regulator::Faa => flow::faa(t, &mut sheet, of),
        Regulator::Tr55 => flow::tr55(t, &mut sheet, of),
        Regulator::WaterQuality => water_quality::water_quality(t, &mut sheet, of),
    };
    if let Err(stop) = outcome {
        sheet.stopped = Some(stop);
    }
    sheet
}

/// Specific gravity of the oil against the water.
fn gravity<T: Trail>(t: &mut T, oil: Val<Density>, water: Val<Density>) -> Val<Ratio> {
    reckon!(t, "specific gravity of the oil, against this water", [ONE, ONE], (rho_o = oil, rho_w = water) rho_o / rho_w)
}

/// What a method lacks, in a sentence.
fn lacks(what: &str) -> Stop {
    Stop::said("method", format!("nobody said {what}"))
}

/// Whether one quantity reaches another, but for the last digits of arithmetic.
#[must_use]
pub fn reaches<Q: Typed>(own: Q, asked: Q) -> bool {
    own.si() >= asked.si() * (1.0 - 1e-9)
}
