//! What the section is drawn from, and where it stands on the sheet.

use crate::Edition;
use crate::render::geometry::{Point, pt};
use crate::render::scale::{Scale, View, dimension_text};
use stillrise_design::job::Design;
use stillrise_design::performance::Performance;
use stillrise_design::performance::hydraulics::Profile;
use stillrise_design::performance::installation::Stands;
use stillrise_design::performance::levels::{Level, OilLevels};
use stillrise_design::stages::Place;
use stillrise_design::stages::stage::{Drawn, Line, Stage};
use stillrise_design::stages::underflow::Underflow;
use stillrise_design::train::Train;
use stillrise_design::train::unit::Unit;
use stillrise_handbook::hydraulics::pipes::pipe_size;
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

    /// Whether its lowest point lies in the ground or in a pit, so that nothing runs out of it there.
    pub fn is_sunk(&self) -> bool {
        let stands = self.performance.map(|p| p.site.installation.stands.q);
        self.cover().is_some()
            || self.unit().arrangement.is_in_ground()
            || matches!(stands, Some(Stands::InPit | Stands::Buried))
    }

    /// Where its end wall or head stands at a height, inside.
    pub fn end_at(&self, z: Length, outlet: bool) -> Length {
        let outline = self.unit().shape.outline();
        let (mut near, mut far) = (self.unit().shape.length(), zero());
        let next = outline.iter().cycle().skip(1);
        for (&(a, low), &(b, high)) in outline.iter().zip(next) {
            let ((a, low), (b, high)) = if low <= high { ((a, low), (b, high)) } else { ((b, high), (a, low)) };
            if z < low || z > high {
                continue;
            }
            let share = if high > low { ((z - low) / (high - low)).si() } else { 0.0 };
            let x = a + (b - a) * share;
            near = if x < near { x } else { near };
            far = if x > far { x } else { far };
        }
        match (near <= far, outlet) {
            (true, false) => near,
            (true, true) => far,
            (false, false) => zero(),
            (false, true) => self.unit().shape.length(),
        }
    }

    /// Bore of the oil draw-off by its nominal size, of schedule 40; nothing where none is stated.
    pub fn draw_bore(&self) -> Option<Length> {
        let word = self.unit().particulars.drains.0.as_deref()?;
        pipe_size(word).map(|row| row.inside())
    }

    /// Thickness of a wall between channels: as the others, nothing where these are not known.
    pub fn between(&self) -> Length {
        let channels = self.unit().channels.as_ref();
        channels.and(self.unit().particulars.wall).map_or(zero(), |wall| wall.q)
    }

    /// Clear width from side wall to side wall, with the walls between channels, which stand on top of the clear widths.
    pub fn broad(&self) -> Length {
        self.unit().shape.width() + self.parted()
    }

    /// The same at a station and a height.
    pub fn broad_at(&self, x: Length, z: Length) -> Length {
        self.unit().shape.width_at(x, z) + self.parted()
    }

    /// What walls between channels take of the width together.
    fn parted(&self) -> Length {
        self.between() * (self.unit().channels.as_ref().map_or(1.0, |c| c.count.q.si()) - 1.0)
    }

    /// Both faces of each channel, from one side wall; none without channels.
    pub fn channels(&self) -> Vec<(Length, Length)> {
        let Some(channels) = &self.unit().channels else { return Vec::new() };
        let (width, wall) = (channels.width.q, self.between());
        let count = channels.count.q.si();
        let starts = (0..u8::MAX).map(f64::from).take_while(|k| *k + 0.5 < count);
        starts.map(|k| ((width + wall) * k, (width + wall) * k + width)).collect()
    }

    /// Where vents stand along it: one over each space of vapour that walls part, clear of manways and lugs; none over a basin that is
    /// built in its place, whose cover nobody has decided.
    pub fn vents(&self) -> Vec<Length> {
        let unit = self.unit();
        if unit.arrangement.is_built_in() {
            return Vec::new();
        }
        let rim = unit.shape.height().si();
        let lines = self.drawn().into_iter().flat_map(|part| part.lines);
        let mut walls: Vec<Length> = lines
            .filter_map(|line| match line {
                Line::Plate { at, high, .. } if high.si() >= rim - 1e-6 => Some(at),
                _ => None,
            })
            .collect();
        walls.sort_by(|a, b| a.si().total_cmp(&b.si()));
        walls.push(unit.shape.length());
        let half = unit.access.as_ref().map_or(zero(), |access| access.opening.q * 0.7);
        let taken = super::vessel::manways(self);
        let mut from = zero();
        let mut all = Vec::new();
        for to in walls {
            let at = |share: f64| from + (to - from) * share;
            let lugs = crate::drawings::lugs_at(self);
            let clear = |x: &Length| {
                taken.iter().all(|own| (*own - *x).abs() > half)
                    && lugs.iter().all(|own| (*own - *x).abs() > unit.shape.length() * 0.05)
            };
            // Beside its middle, where hooks and plates come through.
            let x = [0.42, 0.3, 0.58, 0.7, 0.2, 0.8, 0.1, 0.9].map(at).into_iter().find(clear);
            all.push(x.unwrap_or_else(|| at(0.5)));
            from = to;
        }
        all
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
