//! Stage: a pack of inclined plates (long because it is one stage: its keys, dimensions, head, what it catches and how it is
//! drawn).

use super::in_water::InWater;
use super::stage::{Datum, Drawn, Line, Stage};
use super::{Crossing, Pass, Place, Reach, Through};
use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::enquiry::fields::{Count, Flag, Word};
use crate::enquiry::keys::{Quantity, keys};
use crate::performance::caps::{Cap, Caps, Margins};
use crate::performance::passage::Fixed;
use crate::performance::removal::Removal;
use crate::provenance::{Node, Pair, Stop, Trail, Val, choose, given};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, gather, reckon, record};
use stillrise_handbook::choice;
use stillrise_handbook::hydraulics::{mean_velocity, pack_loss};
use stillrise_handbook::separation::catch::Catch;
use stillrise_handbook::separation::entrance_length::EntranceForm;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_handbook::separation::plate_removal::{GapRegime, Plates};
use stillrise_handbook::separation::{
    capture_area, entrance_length, film_shear_ratio, film_thickness, gap_reynolds, plate_removal,
};
use stillrise_handbook::vessel::{pack_area, pack_cap, pack_open_area, plate_count};
use stillrise_units::catalog::{DEG, FT3, IN, KG, LB, M3, MM};
use stillrise_units::{Angle, Area, Length, Mass, Ratio, Typed, Velocity, Volume, math, ratio};

choice! {
    /// Whether there are plates.
    PackWord {
        /// a pack of plates
        Present "present",
        /// an open tank without plates
        None "none",
    }
}

keys! {
    /// Keys of the plates.
    PlatePackKeys "model" {
        /// Whether there is a pack of plates
        is_there as "pack": Word<PackWord> = spec.like("\"present\"");
        /// Volume of the plate pack over all, in place of its length
        volume as "pack_volume": Quantity<Volume> = spec.units(&FT3, &M3).between("0.01 ft3", "100000 ft3").like("\"24 ft3\"");
        /// Length of the plate pack, along the flow
        length as "pack_length": Quantity<Length> = spec.units(&IN, &MM).between("2 in", "600 in").like("\"48 in\"")
            .asks("How long is the pack of plates?")
            .found("its share of the length that is left");
        /// Height of the plate pack
        height as "pack_height": Quantity<Length> = spec.units(&IN, &MM).between("2 in", "200 in").like("\"30 in\"")
            .asks("What is the height of the pack of plates?")
            .found("60 % of the depth of water");
        /// Underside of the plate pack, above the floor
        bottom as "pack_bottom": Quantity<Length> = spec.units(&IN, &MM).between("0 in", "120 in").like("\"6 in\"")
            .asks("What is the room below the pack of plates?")
            .found("a quarter of the depth that the pack leaves");
        /// Clear gap between plates, square to them
        gap: Quantity<Length> = spec.units(&IN, &MM).between("0.05 in", "6 in").like("\"0.75 in\"")
            .asks("What is the clear gap between the plates?")
            .usual("0.25 in", "0.75 in", "2 in", "our proposal: {0.75 in|19 mm}, the least gap of API 421, from memory; packs from {0.25 to 2 in|6 to 51 mm} are built");
        /// Thickness of a plate
        plate: Quantity<Length> = spec.units(&IN, &MM).between("0.005 in", "1 in").like("\"0.04 in\"");
        /// Angle of the plates to the horizontal
        angle: Quantity<Angle> = spec.units(&DEG, &DEG).between("5 deg", "80 deg").like("\"55 deg\"")
            .asks("At what angle to the horizontal do the plates stand?")
            .usual("45 deg", "55 deg", "60 deg", "our proposal: within the 45 to 60 degrees of published guides");
        /// How the water runs through the plates
        run: Word<PlateRun> = spec.like("\"cross-flow\"");
        /// Number of modules of the pack
        modules as "pack_modules": Count = spec.like("2");
        /// Whether the modules lift out from above without entering the vessel
        lifts_out as "pack_lifts_out": Flag = spec.like("true");
        /// Length of a module of the pack, along the flow
        module_length: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "600 in").like("\"24 in\"");
        /// Width of a module of the pack, across the flow
        module_width: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "480 in").like("\"24 in\"");
        /// Weight of the heaviest module, wet and fouled
        module_weight: Quantity<Mass> = spec.units(&LB, &KG).between("1 lb", "20000 lb").like("\"160 lb\"");
    }
}

record! {
    /// A pack as it is laid out.
    Dimensions {
        /// length of the pack
        length: Length;
        /// height of the pack
        height: Length;
        /// underside of the pack
        bottom: Length;
        /// clear gap between plates
        gap: Length;
        /// thickness of a plate
        plate: Length;
        /// angle of the plates to the horizontal
        angle: Angle;
        /// how the water runs through them
        run: PlateRun;
    }
}

impl Dimensions {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        const ANGLE: Pair = (&DEG, &DEG);
        let m = row.m;
        let length = row.need("length of the pack", m.stages.pack.length())?;
        let height = row.need("height of the pack", m.stages.pack.height())?;
        let bottom = row.need("underside of the pack", m.stages.pack.bottom())?;
        let gap = row.need("clear gap between plates", m.stages.pack.gap())?;
        let usual = Length::of(1.0, &MM);
        let plate =
            row.or_usual("thickness of a plate", DIMENSION, &m.stages.pack.plate, usual, "not stated: {0.04 in|1 mm}");
        let angle = row.assumed.angle.or_else(|| row.laid("angle of the plates", ANGLE, &m.stages.pack.angle));
        let angle = angle.ok_or_else(|| row.stop("angle of the plates is not stated"))?;
        let run = m.stages.pack.run.0.unwrap_or(PlateRun::CrossFlow);
        let source = m.stages.pack.run.1.source(row.source);
        let run = given(row.t, "how the water runs through the plates", None, run, &source, run.word());
        Ok(Self { length, height, bottom, gap, plate, angle, run })
    }
}

record! {
    /// What follows from it.
    Follows {
        /// top of the pack
        top: Length;
        /// width that the vessel leaves it
        width: Length;
        /// plates in the pack
        plates: Ratio;
        /// projected area of all plates
        area: Area;
        /// open cross-section between the plates
        open: Area;
    }
}

/// A pack of plates.
#[derive(Debug, Clone)]
pub struct PlatePack {
    /// How it is laid out.
    pub laid: Dimensions,
    /// What follows.
    pub follows: Follows,
}

/// Thickness of the film of oil under a plate, and the water's pull on it over its drive.
pub type Film = (Val<Length>, Val<Ratio>);

impl PlatePack {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, body: &Body) -> Result<Self, Stop> {
        let laid = Dimensions::laid(row)?;
        Self::new(row.t, laid, body)
    }

    /// In the body of a unit.
    ///
    /// # Errors
    /// [`Stop`] where it does not fit into it.
    pub fn new<T: Trail>(t: &mut T, laid: Dimensions, body: &Body) -> Result<Self, Stop> {
        let l = &laid;
        let top = reckon!(t, "top of the pack", [IN, MM], (bottom = l.bottom, height = l.height) bottom + height);
        let width = body.clear_width(t, "width of the pack", l.bottom, top)?;
        let plates = by!(t, "plates in the pack", plate_count::count(l.height, l.gap, l.plate, l.angle))?;
        let area = by!(t, "projected area of the plates", pack_area::area(plates, l.length, width))?;
        let open = by!(t, "open cross-section of the pack", pack_open_area::area(width, l.height, l.gap, l.plate))?;
        Ok(Self { laid, follows: Follows { top, width, plates, area, open } })
    }

    /// Length over which the flow in the gaps develops.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn entrance<T: Trail>(&self, t: &mut T, basis: &Basis, plates: &PlatesPass) -> Result<Val<Length>, Stop> {
        let form =
            given(t, "form of the entrance length", None, EntranceForm::ShahLondon, "our proposal", "shah-london");
        let nu = basis.fluids.cold.kinematic;
        by!(
            t,
            "length over which the flow in the gaps develops",
            entrance_length::length(plates.gap_velocity, self.laid.gap, nu, form)
        )
    }

    /// The film that the governing oil makes under a plate, if everything free is caught there; `None` for an oil whose
    /// viscosity is not known there, or that does not rise.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn film<T: Trail>(
        &self,
        t: &mut T,
        basis: &Basis,
        worst: &Removal,
        plates: &PlatesPass,
    ) -> Result<Option<Film>, Stop> {
        let (l, cold) = (&self.laid, &basis.fluids.cold);
        let oil = basis.fluids.heaviest(Season::Cold);
        let Some(kinematic) = oil.viscosity.filter(|_| oil.cold.q < cold.density.q) else { return Ok(None) };
        let caught = reckon!(t, "oil caught by one plate, at most", [GPH, L_H],
            (flow = worst.flow, free = worst.content.free, rho = oil.cold, plates = self.follows.plates) flow * free / rho / plates);
        if caught.q.si() <= 0.0 {
            return Ok(None);
        }
        let viscosity = reckon!(t, "viscosity of the oil", [CP, MPA_S], (nu = kinematic, rho = oil.cold) nu * rho);
        // Across the flow the oil drains along the width, over the length of the plates; else along the flow.
        let across = if l.run.q == PlateRun::CrossFlow { l.length } else { self.follows.width };
        let film = by!(
            t,
            "film of oil under a plate",
            film_thickness::thickness(caught, across, viscosity, cold.density, oil.cold, l.angle)
        )?;
        let pull = by!(
            t,
            "pull of the water on it, over its drive",
            film_shear_ratio::pull(cold.viscosity, plates.gap_velocity, l.gap, cold.density, oil.cold, l.angle, film)
        )?;
        Ok(Some((film, pull)))
    }
}

impl PlatePack {
    /// Its dimensions as laid out: name, and place in the trail.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        self.laid.fields()
    }
}

impl Stage for PlatePack {
    fn name(&self) -> &'static str {
        "plate pack"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::PlatePack, self.laid.length))
    }
    fn loses(&self) -> bool {
        true
    }
    /// Through its gaps.
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let mut v = by!(t, "velocity in the gaps", mean_velocity::velocity(way.flow, self.follows.open))?;
        if way.fouled {
            v = reckon!(t, "velocity in the gaps, fouled", [FT_MIN, MM_S], (u = v, fouling = way.basis.methods.fouling) u / (ratio(1.0) - fouling));
        }
        let (l, water) = (&self.laid, &way.basis.fluids.cold);
        by!(t, "loss of the pack", pack_loss::loss(water.viscosity, v, l.length, l.gap, water.density)).map(Some)
    }
    /// Over its top.
    fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Option<Cap>, Stop> {
        let thickness = by!(
            t,
            "cap by the top of the pack",
            pack_cap::thickness(m.lowest, self.follows.top, m.pack, c.oil.cold, c.cold)
        )?;
        Ok(Some(Cap { of: Reach::Pack, thickness }))
    }
    fn pass<T: Trail>(&self, t: &mut T, unit: &Unit, way: &Through<'_>) -> Result<Option<Pass>, Stop> {
        PlatesPass::through(t, unit, self, way).map(|pass| Some(Pass::Plates(pass)))
    }
    fn in_water(&self, unit: &Unit) -> Vec<InWater> {
        let Some(zone) = unit.compartment(Place::PlatePack) else { return Vec::new() };
        let l = &self.laid;
        let (low, high) = (l.bottom.q, self.follows.top.q);
        // Across the oil water runs level, however the plates slope to the sides.
        let angle = match l.run.q {
            PlateRun::CrossFlow => Angle::from_si(0.0),
            PlateRun::CoCurrent => l.angle.q,
            PlateRun::CounterCurrent => -l.angle.q,
        };
        // No water is counted on to pass below it or over it: its face is closed there.
        let shut = |low, high| InWater::Wall { at: zone.from, low, high };
        let floor = unit.floor_at(zone.from);
        let between = (zone.from, zone.to);
        let mut all = vec![
            InWater::Plates { between, low, high, gap: l.gap.q, plate: l.plate.q, angle },
            shut(floor, low),
            shut(high, unit.shape.height()),
        ];
        // Where water runs level, the lowest and the highest plate part it from what stands below and above.
        if l.run.q == PlateRun::CrossFlow {
            all.extend([InWater::Shelf { at: low, between }, InWater::Shelf { at: high, between }]);
        }
        all
    }
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let zone = unit.compartment(Place::PlatePack)?;
        let (l, top) = (&self.laid, self.follows.top.q);
        let of = &unit.particulars;
        // Modules may stand side by side across the flow; along it there are as many as their length goes into the pack.
        let along = of.module.map(|[length, _]| math::max((l.length.q / length.q).si().round(), 1.0));
        let along = along.unwrap_or_else(|| f64::from(of.modules.unwrap_or(1)));
        let modules = (1..=40_u32).rev().find(|n| f64::from(*n) <= along).unwrap_or(1);
        let mut data = vec![
            Datum::Count(self.follows.plates.q),
            Datum::Words(" plates one over another, gap "),
            Datum::Fine(l.gap.q),
            Datum::Words(", "),
            Datum::Angle(l.angle.q),
            Datum::Words(", "),
            Datum::Words(l.run.q.word()),
        ];
        if let Some(n) = of.modules {
            let word = if n == 1 { " module" } else { " modules" };
            data.extend([Datum::Words("; "), Datum::Count(ratio(f64::from(n))), Datum::Words(word)]);
        }
        if let Some(mass) = &of.module_weight {
            data.extend([Datum::Words(", heaviest "), Datum::Mass(mass.q), Datum::Words(" wet")]);
        }
        let between = (zone.from, zone.to);
        let at = zone.from + (zone.to - zone.from) * 0.42;
        let lines = vec![Line::Plates { between, laid: l.clone(), top, modules }];
        Some(Drawn::new("pack", "Plate pack", data, (at, top - l.height.q * 0.1), lines))
    }
}

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
    /// A pack.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn through<T: Trail>(t: &mut T, unit: &Unit, pack: &PlatePack, way: &Through<'_>) -> Result<Self, Stop> {
        let (l, f) = (&pack.follows, &pack.laid);
        let (m, flow) = (&way.basis.methods, way.flow);
        let (plates, open) = if way.state.is_end() {
            let lost = m.fouling;
            (
                reckon!(t, "plate area left at the end of the interval", [FT2, M2], (area = l.area, lost = lost) area * (ratio(1.0) - lost)),
                reckon!(t, "open section left at the end of the interval", [FT2, M2], (area = l.open, lost = lost) area * (ratio(1.0) - lost)),
            )
        } else {
            (l.area, l.open)
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
        let spread = match &unit.baffle {
            Some(baffle) => baffle.feeds(t, unit, m.maldistribution)?,
            None => m.maldistribution,
        };
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
