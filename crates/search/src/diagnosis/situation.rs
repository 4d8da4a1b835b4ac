//! What a unit lets through on one occasion, if this and that were the matter.

use stillrise_design::basis::Basis;
use stillrise_design::basis::fluids::{self, Season};
use stillrise_design::basis::waters::Content;
use stillrise_design::enquiry::blocks::Observed;
use stillrise_design::performance::State;
use stillrise_design::performance::passage::{Fixed, Passage};
use stillrise_design::provenance::Node;
use stillrise_design::train::unit::Unit;
use stillrise_design::{Off, Val};
use stillrise_handbook::fluids::oil_density;
use stillrise_units::{Flow, Temperature, Typed};

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
    /// Measured over true oil.
    pub bias: f64,
    /// Share of the plates lost.
    pub plates_lost: f64,
    /// How much colder the water is than that of the occasion, K.
    pub colder: f64,
    /// Oil carried under the lip, kg/m3.
    pub carried: f64,
    /// Plate and tank area over that of the unit: what another size would do.
    pub area: f64,
}

/// One occasion: what was observed, and what the basis says of the rest.
pub struct Occasion<'a> {
    /// What was observed.
    pub observed: &'a Observed,
    basis: &'a Basis,
    /// The passage at the occasion's flow and temperature.
    passage: Passage,
    oil: &'a fluids::OilState,
    temperature: Temperature,
    flow: Flow,
    /// Oil that arrives, kg/m3.
    influent: f64,
    /// As the basis has it.
    usual: Situation,
}

impl<'a> Occasion<'a> {
    /// At the flow, temperature and influent measured, else those of the case that governs.
    ///
    /// # Errors
    /// [`stillrise_design::Stop`] when a formula has no answer.
    pub fn new(
        observed: &'a Observed,
        basis: &'a Basis,
        unit: &Unit,
        (content, flow): (&Content, Flow),
    ) -> Result<Self, stillrise_design::Stop> {
        let value = |flow: Flow| Val { q: flow, at: Node::NONE };
        let flow = observed.flow.q().unwrap_or(flow);
        let temperature = observed.temperature.q().unwrap_or(basis.fluids.cold.temperature.q);
        let fixed = Fixed::new(&mut Off);
        let mut passage = Passage::new(&mut Off, basis, unit, &fixed, value(flow), (Season::Cold, State::Clean))?;
        let oil = basis.fluids.heaviest(Season::Cold);
        set_temperature(&mut passage, basis, oil, temperature)?;
        let total = content.total.q.si();
        let influent = observed.oil_in.q().map_or(total, Typed::si);
        let usual = Situation {
            emulsified: if total > 0.0 { content.emulsified.q.si() / total } else { 0.0 },
            dissolved: content.dissolved.q.si(),
            flow: 1.0,
            median: 1.0,
            influent: 1.0,
            bias: 1.0,
            plates_lost: 0.0,
            colder: 0.0,
            carried: 0.0,
            area: 1.0,
        };
        Ok(Self { observed, basis, passage, oil, temperature, flow, influent, usual })
    }

    /// As the basis has it.
    #[must_use]
    pub fn usual(&self) -> Situation {
        self.usual
    }

    /// Flow, kg/m3 that arrive, and the temperature taken.
    #[must_use]
    pub fn taken(&self) -> (Flow, f64, Temperature) {
        (self.flow, self.influent, self.temperature)
    }

    /// Oil that would be measured at the outlet, kg/m3; not a number where a formula has no answer.
    #[must_use]
    pub fn effluent(&self, s: &Situation) -> f64 {
        let mut p = self.passage.clone();
        p.d50.q *= s.median;
        p.largest.q *= s.median;
        for (size, _) in &mut p.table.q.0 {
            *size *= s.median;
        }
        p.v_tank.q = p.v_tank.q * s.flow / s.area;
        p.v_pack.q = p.v_pack.q * s.flow / (s.area * (1.0 - s.plates_lost).max(0.01));
        p.face.q = p.face.q * s.flow / s.area;
        if s.colder > 0.0 {
            let colder = Temperature::from_si((self.temperature.si() - s.colder).max(273.15));
            if set_temperature(&mut p, self.basis, self.oil, colder).is_err() {
                return f64::NAN;
            }
        }
        let Ok(left) = p.left(&mut Off, "") else { return f64::NAN };
        let total = self.influent * s.influent;
        let dissolved = s.dissolved.min(total);
        let emulsified = (total * s.emulsified).min(total - dissolved);
        let free = total - dissolved - emulsified;
        (free * left.q.si() + emulsified + dissolved + s.carried) * s.bias
    }
}

fn set_temperature(
    p: &mut Passage,
    basis: &Basis,
    oil: &fluids::OilState,
    temperature: Temperature,
) -> Result<(), stillrise_design::Stop> {
    let at = Val { q: temperature, at: Node::NONE };
    let water = fluids::water(&mut Off, at, basis.fluids.salinity)?;
    (p.water, p.viscosity, p.temperature) = (water.density, water.viscosity, at);
    p.oil.q = oil_density::density(oil.density_15.q, temperature, oil.group.q)?;
    Ok(())
}
