//! What a unit lets through on one occasion, if this and that were the matter.

use super::calibration::Factors;
use stillrise_design::basis::Basis;
use stillrise_design::basis::cases::Case;
use stillrise_design::basis::fluids::{self, Season};
use stillrise_design::basis::stated::{assumed, stand_in, stated};
use stillrise_design::basis::waters::Content;
use stillrise_design::enquiry::blocks::Observed;
use stillrise_design::performance::State;
use stillrise_design::performance::ladder::STUDY;
use stillrise_design::performance::passage::{Fixed, Fluids, Passage};
use stillrise_design::performance::removal::Removal;
use stillrise_design::provenance::{Node, Pair, Part, choose};
use stillrise_design::train::unit::Unit;
use stillrise_design::{Off, Stop, Trail, Val, WhatIf, by, reckon};
use stillrise_handbook::fluids::oil_density;
use stillrise_handbook::page::{Argument, Series};
use stillrise_units::catalog::{DEG_C, DEG_F, MG_L, ONE, PERCENT, UM};
use stillrise_units::math::ln;
use stillrise_units::{Concentration, Flow, Temperature, Typed, ratio};

/// What is the matter, and with what size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Situation {
    /// Emulsified share of the oil that arrives.
    pub emulsified: f64,
    /// Dissolved oil, kg/m3.
    pub dissolved: f64,
    /// Flow over that of the occasion.
    pub flow: f64,
    /// Median droplet over that of the basis.
    pub median: f64,
    /// Oil that arrives over that of the occasion.
    pub influent: f64,
    /// Oil that leaves over what the chain gives for it, as the good period has it.
    pub rest: f64,
    /// Measured over true oil.
    pub bias: f64,
    /// Share of the plates lost.
    pub plates_lost: f64,
    /// How much colder the water is than that of the occasion, K.
    pub colder: f64,
    /// Oil carried out of the layer, kg/m3.
    pub carried: f64,
    /// Plate and tank area over that of the unit: what another size would do.
    pub area: f64,
}

/// One occasion: what was observed, and what the basis says of the rest.
pub struct Occasion<'a> {
    /// What was observed.
    pub observed: &'a Observed,
    /// Whether the oil that left was detected; else less than the number was there.
    pub detected: bool,
    basis: &'a Basis,
    content: &'a Content,
    /// The passage at the occasion's flow and temperature.
    passage: Passage,
    oil: &'a fluids::OilState,
    temperature: Val<Temperature>,
    flow: Val<Flow>,
    /// Peak over mean flow of the pump, where the flow is not measured.
    pub strokes: f64,
    /// Oil that arrives.
    influent: Val<Concentration>,
    /// As the basis has it, and as the good period corrects it.
    usual: Situation,
    /// Whether the unit ran well then.
    pub good: bool,
}

const SHARE: Pair = (&PERCENT, &PERCENT);
const TIMES: Pair = (&ONE, &ONE);
const MG: Pair = (&MG_L, &MG_L);

impl<'a> Occasion<'a> {
    /// At the flow, temperature and influent measured, else the mean flow and the influent of the case that governs, and
    /// water half-way between the coldest and the warmest. Where the flow is that of a pump that pulsates, its strokes are
    /// left out: the free surface of the unit damps them, and the design counts them in full to be on the safe side.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn new<T: Trail>(
        t: &mut T,
        observed: &'a Observed,
        basis: &'a Basis,
        unit: &Unit,
        worst: &'a Removal,
    ) -> Result<Self, Stop> {
        t.part(Part::Study, section(observed));
        let (content, flow, case) = (&worst.content, worst.flow, &basis.cases[worst.case_index]);
        let nothing = WhatIf::default();
        let (flow, through) = match stated(t, &nothing, "flow on the occasion", &observed.flow) {
            Some(flow) => (flow, flow),
            None => (mean_flow(t, basis, flow), flow),
        };
        let influent =
            stated(t, &nothing, "oil that arrived on the occasion", &observed.oil_in).unwrap_or(content.total);
        let fixed = Fixed::new(t);
        let mut passage = Passage::new(t, basis, unit, &fixed, case, flow, (Season::Cold, State::Clean))?;
        let oil = basis.fluids.heaviest(Season::Cold);
        let temperature = temperature(t, observed, basis, case);
        passage = at_temperature(t, &passage, basis, oil, temperature)?;
        let total = content.total.q.si();
        let usual = Situation {
            emulsified: if total > 0.0 { content.emulsified.q.si() / total } else { 0.0 },
            dissolved: content.dissolved.q.si(),
            flow: 1.0,
            median: 1.0,
            influent: 1.0,
            rest: 1.0,
            bias: 1.0,
            plates_lost: 0.0,
            colder: 0.0,
            carried: 0.0,
            area: 1.0,
        };
        Ok(Self {
            observed,
            detected: true,
            basis,
            content,
            passage,
            oil,
            temperature,
            flow,
            strokes: through.q.si() / flow.q.si(),
            influent,
            usual,
            good: false,
        })
    }

    /// Takes what the good period says of influent, droplets and what they leave unexplained as usual; an influent that was
    /// measured stays.
    pub(super) fn calibrate(&mut self, by: Factors) {
        if !self.observed.oil_in.is_given() {
            self.usual.influent = by.influent;
        }
        (self.usual.median, self.usual.rest) = (by.median, by.rest);
    }

    /// Where the oil that arrives and the median droplet stand, as far as the basis has them.
    pub(super) fn unknown(&self) -> (Node, Node) {
        (self.content.total.at, self.passage.droplets().d50.at)
    }

    /// As the basis has it.
    #[must_use]
    pub fn usual(&self) -> Situation {
        self.usual
    }

    /// The coldest water of the basis.
    #[must_use]
    pub fn coldest(&self) -> Temperature {
        self.basis.fluids.cold.temperature.q
    }

    /// Flow, oil that arrives, and the temperature taken.
    #[must_use]
    pub fn taken(&self) -> (Flow, Concentration, Temperature) {
        (self.flow.q, self.influent.q, self.temperature.q)
    }

    /// Whether nothing but the oil that left was measured: all such occasions are one to the chain.
    pub(super) fn is_plain(&self) -> bool {
        let o = self.observed;
        !o.flow.is_given() && !o.oil_in.is_given() && !o.temperature.is_given()
    }

    /// How far the oil that leaves lies off what was measured, as a logarithm; what was not detected is explained by all
    /// below its reporting limit.
    pub(super) fn off(&self, effluent: f64, measured: f64) -> f64 {
        let off = ln(effluent.max(1e-9)) - ln(measured.max(1e-9));
        if self.detected { off } else { off.max(0.0) }
    }

    /// Oil that would be measured at the outlet, kg/m3; not a number where a formula has no answer.
    #[must_use]
    pub fn effluent(&self, s: &Situation) -> f64 {
        self.worked(&mut Off, s).map_or(f64::NAN, |c| c.q.si())
    }

    /// The same, step by step; what is as in the basis leaves no step.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn worked<T: Trail>(&self, t: &mut T, s: &Situation) -> Result<Val<Concentration>, Stop> {
        let mut p = self.passage.clone();
        if differs(s.median, 1.0) {
            p = p.of(t, |t, droplets| {
                let mut d = droplets.clone();
                let times = size(t, "median droplet over that of the basis", TIMES, ratio(s.median), d.d50.at);
                d.d50 = reckon!(t, "median droplet then", [UM, UM], (d50 = d.d50, times = times) d50 * times);
                d.largest = reckon!(t, "largest droplet then", [UM, UM], (d = d.largest, times = times) d * times);
                let rows: Vec<(f64, f64)> = d.table.q.0.iter().map(|(d, share)| (d * s.median, *share)).collect();
                if !rows.is_empty() {
                    let because = "every size of the table times that";
                    let at = [d.table.at, times.at];
                    d.table =
                        choose(t, "measured droplets then", Some((&UM, &UM)), Series(rows), "the table", because, &at);
                }
                d
            });
        }
        if differs(s.flow, 1.0) || differs(s.area, 1.0) {
            let more = size(t, "flow over that of the occasion", TIMES, ratio(s.flow), self.flow.at);
            let area = size(t, "area over that of the unit", TIMES, ratio(s.area), self.flow.at);
            p = p.scaled(t, more, area);
        }
        if let Some(plates) = p.plates().filter(|_| differs(s.plates_lost, 0.0)) {
            let lost = size(t, "share of the plates lost", SHARE, ratio(s.plates_lost.min(MOST_LOST)), plates.v_0.at);
            p = p.with_plates_lost(t, lost);
        }
        if differs(s.colder, 0.0) {
            let colder = Temperature::from_si((self.temperature.q.si() - s.colder).max(273.15));
            let at = size(t, "temperature of the water then", (&DEG_F, &DEG_C), colder, self.temperature.at);
            p = at_temperature(t, &p, self.basis, self.oil, at)?;
        }
        let left = p.left(t, "free oil left then")?;
        let mut total = self.influent;
        if differs(s.influent, 1.0) {
            let times = size(t, "oil that arrives over that measured", TIMES, ratio(s.influent), total.at);
            total = reckon!(t, "oil that arrives then", [MG_L, MG_L], (total = total, times = times) total * times);
        }
        let dissolved = if differs(s.dissolved, self.usual.dissolved) {
            size(t, "dissolved oil then", MG, Concentration::from_si(s.dissolved), total.at)
        } else {
            self.content.dissolved
        };
        let dissolved =
            reckon!(t, "of it dissolved", [MG_L, MG_L], (dissolved = dissolved, total = total) dissolved.min(total));
        let among = self.content.emulsified.at;
        let share = if differs(s.emulsified, self.usual.emulsified) {
            size(t, "emulsified share of the oil then", SHARE, ratio(s.emulsified), among)
        } else {
            let because = "emulsified over total oil of the basis";
            let at = [among, self.content.total.at];
            choose(t, "emulsified share of the oil", Some(SHARE), ratio(s.emulsified), "the basis", because, &at)
        };
        let emulsified = reckon!(
            t,
            "of it emulsified",
            [MG_L, MG_L],
            (total = total, share = share, dissolved = dissolved)(total * share).min(total - dissolved)
        );
        let mut out = reckon!(
            t,
            "total oil out then",
            [MG_L, MG_L],
            (total = total, dissolved = dissolved, emulsified = emulsified, left = left)(
                total - dissolved - emulsified
            ) * left
                + emulsified
                + dissolved
        );
        if differs(s.rest, 1.0) {
            let rest = size(t, "oil that leaves over that of the chain", TIMES, ratio(s.rest), out.at);
            out = reckon!(t, "as the good period has it", [MG_L, MG_L], (out = out, rest = rest) out * rest);
        }
        if differs(s.carried, 0.0) {
            let carried = size(t, "oil carried out of the layer", MG, Concentration::from_si(s.carried), out.at);
            out = reckon!(t, "with what is carried", [MG_L, MG_L], (out = out, carried = carried) out + carried);
        }
        if differs(s.bias, 1.0) {
            let bias = size(t, "measured over true oil", TIMES, ratio(s.bias), out.at);
            out = reckon!(t, "as it would be measured", [MG_L, MG_L], (out = out, bias = bias) out * bias);
        }
        Ok(out)
    }
}

/// The flow of a case without the strokes of its pump: what others measure is a mean.
fn mean_flow<T: Trail>(t: &mut T, basis: &Basis, flow: Val<Flow>) -> Val<Flow> {
    let feed = &basis.feed;
    match feed.pulsation.filter(|p| feed.pump_flow.is_some() && p.q.si() > 1.0) {
        Some(p) => reckon!(t, "mean flow of the pump", [GPM, M3_H], (flow = flow, pulsation = p) flow / pulsation),
        None => flow,
    }
}

/// The temperature on an occasion: as measured, else half-way between the coldest and the warmest of the basis, of which each
/// is as likely while the season at the site is not known; of a water with a temperature of its own, of that.
fn temperature<T: Trail>(t: &mut T, observed: &Observed, basis: &Basis, case: &Case) -> Val<Temperature> {
    let nothing = WhatIf::default();
    if let Some(measured) = stated(t, &nothing, "temperature on the occasion", &observed.temperature) {
        return measured;
    }
    let (cold, warm) = (basis.fluids.cold.temperature.q, basis.fluids.warm.temperature.q);
    // What comes warm has cooled when it starts, and not when it has run for hours.
    let (cold, warm, source) = case.own.as_ref().map_or(
        (cold, warm, "half-way between the coldest and the warmest water of the basis; the season at the site is not known"),
        |own| {
            let ends = [&own.water[0], &own.arrives[1]].map(|water| water.temperature.q);
            (ends[0], ends[1], "half-way between the coldest that water with a temperature of its own comes to the plates, and the warmest that it arrives")
        },
    );
    let middle = Temperature::from_si(0.5 * (cold.si() + warm.si()));
    let range = (cold.min(warm), middle, cold.max(warm));
    assumed(t, &nothing, &observed.temperature(), "temperature on the occasion", stand_in(range, source))
}

/// No pack is lost altogether.
const MOST_LOST: f64 = 0.99;

fn differs(a: f64, b: f64) -> bool {
    a.to_bits() != b.to_bits()
}

/// The section of the trail that holds an occasion.
#[must_use]
pub fn section(observed: &Observed) -> String {
    format!("{STUDY}, rating: {}", observed.name.as_deref().unwrap_or("occasion"))
}

/// The size of a cause, as it was found.
fn size<T: Trail, Q: Argument>(t: &mut T, label: &str, units: Pair, q: Q, on: Node) -> Val<Q> {
    let among = "sizes over the usual range of the cause and half as far again beyond";
    let because = "good period and set of causes explain the measurements best with it; without either that moves it, as observed";
    choose(t, label, Some(units), q, among, because, &[on])
}

/// A passage in water of another temperature.
fn at_temperature<T: Trail>(
    t: &mut T,
    p: &Passage,
    basis: &Basis,
    oil: &fluids::OilState,
    temperature: Val<Temperature>,
) -> Result<Passage, Stop> {
    let water = fluids::water(t, temperature, basis.fluids.salinity)?;
    let oil = by!(t, "density of the oil then", oil_density::density(oil.density_15, temperature, oil.group))?;
    let fluids = Fluids { water: water.density, oil, viscosity: water.viscosity, temperature, law: p.fluids.law };
    Ok(p.within(t, fluids))
}
