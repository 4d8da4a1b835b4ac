//! Stage: a pack of inclined plates.

use super::Through;
use crate::performance::passage::Fixed;
use crate::provenance::{Node, Stop, Trail, Val, choose};
use crate::train::unit::Unit;
use crate::{by, gather, reckon};
use stillrise_handbook::hydraulics::mean_velocity;
use stillrise_handbook::separation::catch::Catch;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_handbook::separation::plate_removal::{GapRegime, Plates};
use stillrise_handbook::separation::{capture_area, gap_reynolds, plate_removal};
use stillrise_units::{Ratio, Typed, Velocity, ratio};

/// Reynolds number on four hydraulic radii up to which flow between plates is laminar.
pub const LAMINAR_UP_TO: f64 = 2000.0;
/// The one up to which no inlet and no edge disturbs it: from memory.
pub const AT_EASE: f64 = 500.0;

/// A pack as one flow meets it.
#[derive(Debug, Clone, Copy)]
pub struct PlatesPass {
    /// Overflow rate of the plates.
    pub v_0: Val<Velocity>,
    /// The same for what sinks.
    pub v_sinking: Val<Velocity>,
    /// Unequal flow between the gaps.
    pub spread: Val<Ratio>,
    /// Flow in the gaps.
    pub regime: Val<GapRegime>,
    /// Velocity in the gaps.
    pub gap_velocity: Val<Velocity>,
    /// Reynolds number of the gaps, on the chosen basis.
    pub reynolds: Val<Ratio>,
    at: Node,
}

fn gathered<T: Trail>(t: &mut T, v_0: Val<Velocity>, spread: Val<Ratio>, regime: Val<GapRegime>) -> Node {
    gather!(t, "plates as they are met", Plates { v_0: v_0, spread: spread, regime: regime }).at
}

impl PlatesPass {
    /// The pack of a unit.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn through<T: Trail>(t: &mut T, unit: &Unit, way: &Through<'_>) -> Result<Self, Stop> {
        let (l, f) = (&unit.layout, &unit.frame);
        let (m, flow) = (&way.basis.methods, way.flow);
        let (plates, open) = if way.state.is_end() {
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
        let v_0 = reckon!(t, "overflow rate of the plates", [GPM_FT2, M_H], (flow = flow, area = counts) flow / area);
        // What sinks meets the water the other way round.
        let v_sinking = match f.run.q {
            PlateRun::CrossFlow => v_0,
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
            gap_reynolds::reynolds(gap_velocity, f.gap, way.water.kinematic, m.reynolds)
        )?;
        // Laminar flow between plates holds to some 2000 on four hydraulic radii, whatever basis is printed.
        let on_four = gap_reynolds::reynolds(gap_velocity.q, f.gap.q, way.water.kinematic.q, ReynoldsBasis::ALL[0])?;
        let laminar = on_four.si() <= LAMINAR_UP_TO;
        let regime = choose(
            t,
            "flow in the gaps",
            None,
            if laminar { GapRegime::Laminar } else { GapRegime::Turbulent },
            "laminar, turbulent",
            "laminar up to 2000 on four times the hydraulic radius",
            &[reynolds.at],
        );
        let spread = m.maldistribution;
        let at = gathered(t, v_0, spread, regime);
        Ok(Self { v_0, v_sinking, spread, regime, gap_velocity, reynolds, at })
    }

    /// What droplets meet in it.
    #[must_use]
    pub fn catch(&self) -> Val<Catch> {
        let plates = Plates { v_0: self.v_0.q, spread: self.spread.q, regime: self.regime.q };
        Val { q: Catch::Plates(plates), at: self.at }
    }

    /// Share of one size that it catches.
    ///
    /// # Errors
    /// [`Stop`] when the page has no answer.
    pub fn caught<T: Trail>(&self, t: &mut T, label: &str, rise: Val<Velocity>) -> Result<Val<Ratio>, Stop> {
        by!(t, label, plate_removal::removal(rise, self.v_0, self.spread, self.regime))
    }

    fn with<T: Trail>(&self, t: &mut T, v_0: Val<Velocity>, spread: Val<Ratio>, regime: Val<GapRegime>) -> Self {
        let at = gathered(t, v_0, spread, regime);
        Self { v_0, spread, regime, at, ..*self }
    }

    /// Equal flow in laminar gaps.
    pub fn ideal<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        self.with(t, self.v_0, fixed.equal, fixed.laminar)
    }

    /// Mixed gaps.
    pub fn mixed<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        self.with(t, self.v_0, self.spread, fixed.turbulent)
    }

    /// At another flow, in a unit of another area.
    pub fn scaled<T: Trail>(&self, t: &mut T, more: Val<Ratio>, area: Val<Ratio>) -> Self {
        let v_0 = reckon!(t, "overflow rate of the plates then", [GPM_FT2, M_H], (v = self.v_0, flow = more, area = area) v * flow / area);
        self.with(t, v_0, self.spread, self.regime)
    }

    /// With a share of the plates lost.
    pub fn less<T: Trail>(&self, t: &mut T, lost: Val<Ratio>) -> Self {
        let v_0 = reckon!(t, "overflow rate of the plates left", [GPM_FT2, M_H], (v = self.v_0, lost = lost) v / (ratio(1.0) - lost));
        self.with(t, v_0, self.spread, self.regime)
    }

    /// What grains meet in it, clean; `lost` is the share of the plates that its numbers go without.
    pub fn for_grains<T: Trail>(&self, t: &mut T, lost: Option<Val<Ratio>>) -> Val<Catch> {
        let v = match lost {
            Some(lost) => {
                reckon!(t, "overflow rate of the plates for what sinks, clean", [GPM_FT2, M_H], (v = self.v_sinking, lost = lost) v * (ratio(1.0) - lost))
            }
            None => self.v_sinking,
        };
        self.with(t, v, self.spread, self.regime).catch()
    }
}
