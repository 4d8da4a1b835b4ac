//! What the section is drawn from, and where it stands on the sheet.

use crate::Edition;
use crate::render::geometry::{Point, pt};
use crate::render::scale::{Scale, View, dimension_text};
use stillrise_design::job::Design;
use stillrise_design::performance::Performance;
use stillrise_design::performance::hydraulics::Profile;
use stillrise_design::performance::levels::{Level, OilLevels};
use stillrise_design::stages::Place;
use stillrise_design::stages::stage::{Drawn, Stage};
use stillrise_design::stages::underflow::Underflow;
use stillrise_design::train::Train;
use stillrise_design::train::unit::Unit;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_handbook::vessel::shape::Part;
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, M};
use stillrise_units::print::told;
use stillrise_units::{Length, System, Typed, Unit as UnitOf, math};

/// Thinnest wall on paper, mm: nominal where the true one is not stated or would be thinner.
pub const WALL: f64 = 0.9;
/// Length of nozzle stubs on paper, mm.
pub const STUB: f64 = 8.0;
/// The view's name.
pub const NAME: &str = "Long section";

/// What is drawn, and the view it is drawn in.
pub struct Section<'a> {
    /// The job.
    pub settled: &'a Settled,
    /// For whom.
    pub edition: Edition,
    /// Units of print.
    pub system: System,
    /// The train.
    pub train: &'a Train,
    /// What it will do, if that was found.
    pub performance: Option<&'a Performance>,
    /// Scale and origin.
    pub view: View,
}

impl<'a> Section<'a> {
    /// Not yet placed; `None` without a unit.
    pub fn new(settled: &'a Settled, edition: Edition) -> Option<Section<'a>> {
        Section::of(settled, &settled.job.design, edition)
    }

    /// The same of another design of the job.
    pub fn of(settled: &'a Settled, design: &'a Design, edition: Edition) -> Option<Section<'a>> {
        let system = settled.job.enquiry.system();
        let train = design.train.as_ref()?;
        let performance = design.performance.as_ref();
        let scale = *Scale::series(system).last()?;
        let view = View { name: NAME.to_owned(), scale, origin: pt(0.0, 0.0) };
        Some(Section { settled, edition, system, train, performance, view })
    }

    /// Thickness of the walls on paper, mm: true where it is stated and can be drawn.
    pub fn wall(&self) -> f64 {
        let stated = self.unit().particulars.wall.map_or(0.0, |wall| self.view.scale.mm(wall.q));
        math::max(stated, WALL)
    }

    /// Whether that is the true one.
    pub fn wall_is_true(&self) -> bool {
        self.wall() > WALL
    }

    /// The ground at a unit that is built into it, over its floor, where both are known.
    pub fn grade(&self) -> Option<Length> {
        let floor = self.performance?.site.installation.floor.filter(|_| self.unit().arrangement.is_built_in())?;
        let over = self.settled.job.enquiry.site.ground.q()? - floor.q;
        (over > zero() && over <= self.top()).then_some(over)
    }

    /// The highest that is drawn: the top of the vessel, or the ground over it.
    pub fn top(&self) -> Length {
        let height = self.unit().shape.height();
        self.cover().map_or(height, |cover| height + cover)
    }

    /// The cover over a vessel that lies in the ground.
    pub fn cover(&self) -> Option<Length> {
        self.performance?.site.installation.cover.map(|cover| cover.q).filter(|cover| cover.si() > 0.0)
    }

    /// The unit.
    pub fn unit(&self) -> &'a Unit {
        &self.train.unit
    }

    /// A point of the vessel on paper.
    pub fn at(&self, x: Length, z: Length) -> Point {
        self.view.at(x, z)
    }

    /// x on paper of the middle of the vessel, mm.
    pub fn middle(&self) -> f64 {
        self.at(self.unit().shape.length() * 0.5, zero()).x
    }

    /// Where a compartment begins and ends.
    pub fn zone(&self, place: Place) -> Option<(Length, Length)> {
        self.unit().compartment(place).map(|c| (c.from, c.to))
    }

    /// Where oil is held: from the diffusion baffle to the downcomer.
    pub fn oil_zone(&self) -> (Length, Length) {
        let ahead = self.zone(Place::InletChamber).map_or(zero(), |(_, to)| to);
        let behind = self.zone(Place::ClearWell).map_or(self.unit().shape.length(), |(from, _)| from);
        (ahead, behind)
    }

    /// Where the clear well ends: at the end of the vessel, or at the wall of the pump-out compartment.
    pub fn well_end(&self) -> Length {
        self.zone(Place::ClearWell).map_or(self.unit().shape.length(), |(_, to)| to)
    }

    /// Where float and draw-off hang: the retention zone, or the last part of where oil is held.
    pub fn oil_end(&self) -> (Length, Length) {
        self.zone(Place::Retention).unwrap_or_else(|| {
            let (from, to) = self.oil_zone();
            // Clear of a pipe that dips ahead of the outlet.
            let to = self.dip_pipe().map_or(to, |(pipe, _)| pipe - (pipe - from) * 0.1);
            (to - (to - from) * 0.2, to)
        })
    }

    /// x on paper at a share of a stretch.
    pub fn along(&self, (from, to): (Length, Length), share: f64) -> f64 {
        self.at(from + (to - from) * share, zero()).x
    }

    /// A length as written on the drawing.
    pub fn write(&self, length: Length) -> String {
        dimension_text(length, self.system)
    }

    /// A quantity with its unit.
    pub fn show<Q: Typed>(&self, q: Q, units: (&'static UnitOf, &'static UnitOf)) -> String {
        told(q.si(), self.system.pick(units))
    }

    /// An elevation in the site's datum, if the floor's is known.
    pub fn datum(&self, z: Length) -> Option<String> {
        let z = self.performance?.site.floor.as_ref()?.q + z;
        Some(match self.system {
            System::Us => format!("{:.2} ft", z.in_unit(&FT)),
            System::Si => format!("{:.3} m", z.in_unit(&M)),
        })
    }

    /// The oil with the thinnest permitted layer: the alarm float is mounted for it.
    pub fn governing(&self) -> Option<&'a OilLevels> {
        let levels = &self.performance?.levels;
        levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()))
    }

    /// Its alarm.
    pub fn alarm(&self) -> Option<&'a Level> {
        self.governing()?.level(Mark::Alarm)
    }

    /// Its alarm, if there is a layer to draw.
    pub fn layer(&self) -> Option<&'a Level> {
        self.alarm().filter(|alarm| alarm.surface.q > alarm.interface.q)
    }

    /// Levels at the largest flow.
    pub fn highest(&self) -> Option<&'a Profile> {
        self.performance?.profiles.last()
    }

    /// Level of the sludge when it is to be pumped, if that is known.
    pub fn sludge(&self) -> Option<Length> {
        let volume = self.performance?.storage.sludge_trigger.as_ref()?.q;
        let part = Part { from: zero(), to: self.well_end() };
        self.unit().shape.level_of(part, volume).filter(|z| *z > self.unit().shape.bottom())
    }

    /// Between which stations the leg of a dip pipe hangs; `None` without one.
    pub fn dip_pipe(&self) -> Option<(Length, Length)> {
        let Underflow::DipPipe(pipe) = &self.unit().underflow else { return None };
        Some(pipe.leg(self.unit()))
    }

    /// Its internals, in the direction of flow.
    pub fn drawn(&self) -> Vec<Drawn> {
        let unit = self.unit();
        unit.stages.all().into_iter().filter_map(|stage| stage.drawn(unit)).collect()
    }

    /// Both ends of the lowest edge of the outline, if it lies below the floor: the hopper's bottom.
    pub fn hopper(&self) -> Option<(Length, Length)> {
        let bottom = self.unit().shape.bottom();
        if bottom >= zero() {
            return None;
        }
        let lowest: Vec<Length> =
            self.unit().shape.outline().into_iter().filter(|(_, z)| *z == bottom).map(|(x, _)| x).collect();
        Some((*lowest.first()?, *lowest.get(1).or(lowest.first())?))
    }
}

/// No length: the floor, the inside of the inlet end.
pub fn zero() -> Length {
    Length::from_si(0.0)
}
