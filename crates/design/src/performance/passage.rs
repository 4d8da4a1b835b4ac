//! The way of the droplets through one unit: everything that decides how much free oil is left.
//!
//! One [`Passage`] holds the droplets, the water and the stages; bounds, stages one by one and studies
//! are the same passage with one thing changed.

use super::State;
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::Season;
use crate::basis::waters::YesNo;
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::train::unit::Unit;
use crate::{by, reckon};
use stillrise_handbook::hydraulics::mean_velocity;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_handbook::separation::plate_removal::GapRegime;
use stillrise_handbook::separation::remaining_oil::{DropletLaw, RiseLaw};
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::separation::{camp_eddy, capture_area, gap_reynolds, remaining_oil, settling_peclet};
use stillrise_units::catalog::{MM, MM_S, ONE, PERCENT, UM};
use stillrise_units::{Concentration, Density, Flow, Length, Ratio, Temperature, Typed, Velocity, Viscosity, ratio};

/// Bounds and absent stages, recorded once for a whole performance.
#[derive(Debug, Clone)]
pub struct Fixed {
    /// Equal flow in all gaps.
    pub equal: Val<Ratio>,
    /// An ideal tank.
    pub ideal: Val<TankModel>,
    /// A mixed tank.
    pub mixed: Val<TankModel>,
    /// Laminar gaps.
    pub laminar: Val<GapRegime>,
    /// Mixed gaps.
    pub turbulent: Val<GapRegime>,
    /// The overflow rate of a stage that is not there.
    pub absent: Val<Velocity>,
    /// The depth of a mesh that is not there, or earns no credit.
    pub no_mesh: Val<Length>,
    /// The smallest and the largest size that counts.
    pub sizes: [Val<Length>; 2],
    /// The index of a tank model that has none.
    pub no_index: Val<Ratio>,
    /// No measured curve.
    pub no_curve: Val<Series>,
}

impl Fixed {
    /// Records them.
    pub fn new<T: Trail>(t: &mut T) -> Self {
        t.section("bounds");
        let percent = Some((&PERCENT, &PERCENT) as _);
        let (speed, depth, size) = (Some((&MM_S, &MM_S) as _), Some((&MM, &MM) as _), Some((&UM, &UM) as _));
        let um = |x: f64| Length::of(x, &UM);
        let at = "bound";
        Self {
            equal: given(t, "equal flow in all gaps", percent, ratio(0.0), at, "0 %"),
            ideal: given(t, "ideal tank", None, TankModel::Ideal, at, "ideal"),
            mixed: given(t, "mixed tank", None, TankModel::Mixed, at, "mixed"),
            laminar: given(t, "laminar gaps", None, GapRegime::Laminar, at, "laminar"),
            turbulent: given(t, "mixed gaps", None, GapRegime::Turbulent, at, "turbulent"),
            absent: given(t, "stage that is not there", speed, Velocity::of(1e12, &MM_S), "definition", "boundless"),
            no_mesh: given(t, "mesh without credit", depth, Length::from_si(0.0), "definition", "no depth"),
            sizes: [
                given(t, "smallest size that counts", size, um(0.0), "definition", "all"),
                given(t, "largest size that counts", size, um(1e9), "definition", "all"),
            ],
            no_index: given(t, "index of a tank model without one", Some((&ONE, &ONE)), ratio(0.0), at, "not used"),
            no_curve: given(t, "measured curve of the mesh", None, Series::default(), "range", "none"),
        }
    }
}

/// Everything that decides how much free oil is left.
#[derive(Debug, Clone)]
pub struct Passage {
    /// How the volume spreads over size.
    pub droplets: Val<DropletLaw>,
    /// Volume median.
    pub d50: Val<Length>,
    /// Shape of the distribution.
    pub shape: Val<Ratio>,
    /// Largest droplet.
    pub largest: Val<Length>,
    /// Measured distribution.
    pub table: Val<Series>,
    /// Counted from this size.
    pub from: Val<Length>,
    /// Counted up to this size.
    pub to: Val<Length>,
    /// Density of the water.
    pub water: Val<Density>,
    /// Density of the oil.
    pub oil: Val<Density>,
    /// Viscosity of the water.
    pub viscosity: Val<Viscosity>,
    /// Law of rise.
    pub law: Val<RiseLaw>,
    /// Overflow rate of the tank ahead of the pack.
    pub v_tank: Val<Velocity>,
    /// How the water moves in it.
    pub tank: Val<TankModel>,
    /// Index of that model.
    pub index: Val<Ratio>,
    /// Overflow rate of the plates.
    pub v_pack: Val<Velocity>,
    /// Overflow rate of the plates for what sinks.
    pub v_sinking: Val<Velocity>,
    /// Unequal flow between the gaps.
    pub spread: Val<Ratio>,
    /// Flow in the gaps.
    pub regime: Val<GapRegime>,
    /// Share of the mesh that is fibre.
    pub solidity: Val<Ratio>,
    /// Fibre of the mesh.
    pub fibre: Val<Length>,
    /// Depth of the mesh that counts.
    pub depth: Val<Length>,
    /// Velocity on the face of the mesh.
    pub face: Val<Velocity>,
    /// Share of the droplets that touch a fibre and stay.
    pub sticking: Val<Ratio>,
    /// Share of the mesh's voids that oil fills.
    pub saturation: Val<Ratio>,
    /// Temperature of the water.
    pub temperature: Val<Temperature>,
    /// Measured curve of the mesh.
    pub curve: Val<Series>,
    /// Velocity in the gaps.
    pub gap_velocity: Val<Velocity>,
    /// Reynolds number of the gaps, on the chosen basis.
    pub reynolds: Val<Ratio>,
    /// Free oil and, of it, what does not rise; `None` where all of it does.
    pub heavy: Option<(Val<Concentration>, Val<Concentration>)>,
    /// Depth of the mesh, and its measured curve, if credit is taken.
    pub mesh: (Val<Length>, Val<Series>),
}

impl Passage {
    /// The passage of a flow through a unit.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn new<T: Trail>(
        t: &mut T,
        basis: &Basis,
        unit: &Unit,
        fixed: &Fixed,
        case: &Case,
        flow: Val<Flow>,
        (season, state): (Season, State),
    ) -> Result<Self, Stop> {
        let (l, f) = (&unit.layout, &unit.frame);
        let own = case.own.as_ref().map(|own| &own.water[usize::from(season == Season::Warm)]);
        let water = own.unwrap_or_else(|| basis.fluids.water(season));
        let m = &basis.methods;
        let v_tank = reckon!(t, "overflow rate ahead of the pack", [GPM_FT2, M_H], (flow = flow, area = l.tank_area) flow / area);
        let (plates, open) = if state.is_end() {
            let lost = m.fouling;
            (
                reckon!(t, "plate area left at the end of the interval", [FT2, M2], (area = l.plate_area, lost = lost) area * (ratio(1.0) - lost)),
                reckon!(t, "open section left at the end of the interval", [FT2, M2], (area = l.open_area, lost = lost) area * (ratio(1.0) - lost)),
            )
        } else {
            (l.plate_area, l.open_area)
        };
        // Across the slope the droplets' own way along the plates counts for nothing.
        let counts = match f.run.q {
            PlateRun::CrossFlow => plates,
            _ => by!(t, "plate area that counts", capture_area::area(plates, open, f.angle, f.run))?,
        };
        let v_pack =
            reckon!(t, "overflow rate of the plates", [GPM_FT2, M_H], (flow = flow, area = counts) flow / area);
        // What sinks meets the water the other way round.
        let v_sinking = match f.run.q {
            PlateRun::CrossFlow => v_pack,
            run => {
                let other = if run == PlateRun::CoCurrent { PlateRun::CounterCurrent } else { PlateRun::CoCurrent };
                let because = "what sinks slides the other way";
                let other =
                    choose(t, "how the water runs for what sinks", None, other, "ways to run", because, &[f.run.at]);
                let counts =
                    by!(t, "plate area that counts for what sinks", capture_area::area(plates, open, f.angle, other))?;
                reckon!(t, "overflow rate of the plates for what sinks", [GPM_FT2, M_H], (flow = flow, area = counts) flow / area)
            }
        };
        let gap_velocity = by!(t, "velocity in the gaps", mean_velocity::velocity(flow, open))?;
        let reynolds = by!(
            t,
            "Reynolds number of the gaps",
            gap_reynolds::reynolds(gap_velocity, f.gap, water.kinematic, m.reynolds)
        )?;
        // Laminar flow between plates holds to some 2000 on four hydraulic radii, whatever basis is printed.
        let on_four = gap_reynolds::reynolds(gap_velocity.q, f.gap.q, water.kinematic.q, ReynoldsBasis::ALL[0])?;
        let laminar = on_four.si() <= 2000.0;
        let regime = choose(
            t,
            "flow in the gaps",
            None,
            if laminar { GapRegime::Laminar } else { GapRegime::Turbulent },
            "laminar, turbulent",
            "laminar up to 2000 on four times the hydraulic radius",
            &[reynolds.at],
        );
        let index = match m.tank.q {
            TankModel::Tanks | TankModel::Dispersed => m.tank_index,
            TankModel::DobbinsCamp => {
                let section =
                    reckon!(t, "wetted cross-section", [FT2, M2], (width = f.width, depth = f.crest) width * depth);
                let along = by!(t, "velocity along the tank", mean_velocity::velocity(flow, section))?;
                let friction = given(
                    t,
                    "friction factor of the tank",
                    Some((&ONE, &ONE)),
                    ratio(0.024),
                    "Camp, from memory",
                    "0.024",
                );
                let eddy = by!(t, "vertical mixing in the tank", camp_eddy::diffusivity(along, f.crest, friction))?;
                by!(t, "index of the tank model", settling_peclet::peclet(v_tank, f.crest, eddy))?
            }
            _ => fixed.no_index,
        };
        let section =
            reckon!(t, "section of the mesh", [FT2, M2], (width = f.width, height = f.pack_height) width * height);
        let mut face = reckon!(t, "velocity on the face of the mesh", [FT_MIN, MM_S], (flow = flow, section = section) flow / section);
        if state.is_end() {
            face = reckon!(t, "the same at the end of the interval", [FT_MIN, MM_S], (face = face, lost = m.fouling) face / (ratio(1.0) - lost));
        }
        let d = basis.arrivals.get(case.arrival).map_or(&basis.droplets, |arrival| &arrival.droplets);
        let mesh = (f.mesh, unit.particulars.mesh_curve.clone().unwrap_or_else(|| fixed.no_curve.clone()));
        let credit = m.mesh_credit.q == YesNo::Yes;
        Ok(Self {
            droplets: d.law,
            d50: d.d50,
            shape: d.shape,
            largest: d.largest,
            table: d.table.clone(),
            from: fixed.sizes[0],
            to: fixed.sizes[1],
            water: water.density,
            oil: case.own.as_ref().map_or_else(
                || basis.fluids.heaviest(season).density(season),
                |own| own.oil[usize::from(season == Season::Warm)],
            ),
            viscosity: water.viscosity,
            law: m.rise,
            v_tank,
            tank: m.tank,
            index,
            v_pack,
            v_sinking,
            spread: m.maldistribution,
            regime,
            solidity: f.mesh_solidity,
            fibre: f.mesh_fibre,
            depth: if credit { mesh.0 } else { fixed.no_mesh },
            face,
            sticking: m.mesh_sticking,
            saturation: m.mesh_saturation,
            temperature: water.temperature,
            curve: if credit { mesh.1.clone() } else { fixed.no_curve.clone() },
            gap_velocity,
            reynolds,
            heavy: case.content.as_ref().and_then(|c| Some((c.free, c.heavy?))),
            mesh,
        })
    }

    /// Share of the free oil that is left; all sizes are to count where a part of it does not rise.
    ///
    /// # Errors
    /// [`Stop`] when an argument lies outside the formula's domain.
    pub fn left<T: Trail>(&self, t: &mut T, label: &str) -> Result<Val<Ratio>, Stop> {
        let left = self.rising(t, label)?;
        let Some((free, heavy)) = self.heavy.filter(|(free, _)| free.q.si() > 0.0) else { return Ok(left) };
        // What does not rise passes every stage.
        Ok(
            reckon!(t, label, [PERCENT, PERCENT], (left = left, free = free, heavy = heavy) left + (ratio(1.0) - left) * (heavy / free)),
        )
    }

    /// The same of the oil that rises.
    fn rising<T: Trail>(&self, t: &mut T, label: &str) -> Result<Val<Ratio>, Stop> {
        let p = self;
        by!(
            t,
            label,
            remaining_oil::fraction(
                p.droplets,
                p.d50,
                p.shape,
                p.largest,
                p.table,
                p.from,
                p.to,
                p.water,
                p.oil,
                p.viscosity,
                p.law,
                p.v_tank,
                p.tank,
                p.index,
                p.v_pack,
                p.spread,
                p.regime,
                p.solidity,
                p.fibre,
                p.depth,
                p.face,
                p.sticking,
                p.saturation,
                p.temperature,
                p.curve,
            )
        )
    }

    /// Everything ideal: the least that can be left.
    #[must_use]
    pub fn ideal(&self, fixed: &Fixed) -> Self {
        Self { tank: fixed.ideal, index: fixed.no_index, spread: fixed.equal, regime: fixed.laminar, ..self.clone() }
    }

    /// Tank and gaps mixed: the most.
    #[must_use]
    pub fn mixed(&self, fixed: &Fixed) -> Self {
        Self { tank: fixed.mixed, index: fixed.no_index, regime: fixed.turbulent, ..self.clone() }
    }

    /// With the mesh counted.
    #[must_use]
    pub fn with_mesh(&self) -> Self {
        Self { depth: self.mesh.0, curve: self.mesh.1.clone(), ..self.clone() }
    }

    /// Without the mesh.
    #[must_use]
    pub fn without_mesh(&self, fixed: &Fixed) -> Self {
        Self { depth: fixed.no_mesh, curve: fixed.no_curve.clone(), ..self.clone() }
    }

    /// Whether there is a mesh.
    #[must_use]
    pub fn has_mesh(&self) -> bool {
        self.mesh.0.q.si() > 0.0
    }
}
