//! The stages that the water passes, as droplets and grains meet them: tanks, plates, a mesh, in the order of the flow.
//!
//! Each stage stands in the file of its formula page: the page for one size, and beside it the same for eight sizes at
//! once, which integrals over the feed run through. This file only lists them.

use super::feed::Sizes;
use super::mesh_curve::MeshCurve;
use super::mesh_removal::{Mesh, MeshLane};
use super::plate_removal::{self, Plates, PlatesLane};
use super::tank_removal::{self, Tank, TankLane, TankModel};
use crate::memo::Key;
use crate::page::{Arg, Argument, Group, Kind, Outside};
use arrayvec::ArrayVec;
use stillrise_units::lanes::Lanes;
use stillrise_units::{Length, Temperature, Typed, Velocity, Viscosity};

/// Most stages in a row.
pub const MOST: usize = 6;

/// One stage.
#[derive(Debug, Clone, PartialEq)]
pub enum Catch {
    /// Open water over a plan area.
    Tank(Tank),
    /// A pack of plates.
    Plates(Plates),
    /// A bed of fibres, by its theory.
    Mesh(Mesh),
    /// A mesh by its measured curve.
    MeshCurve(MeshCurve),
}

/// The stages in the order of the flow; none catch nothing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Catches(pub ArrayVec<Catch, MOST>);

/// What eight droplets meet on their way: the share that passes is a factor times e to an exponent.
pub(super) struct Met {
    pub(super) factor: Lanes,
    pub(super) exponent: Lanes,
}

/// Where the share that a stage catches bends, by rise velocity.
pub(super) struct Bends {
    /// From here on all is caught.
    pub(super) all: Option<f64>,
    /// Here the share has a kink.
    pub(super) kink: Option<f64>,
}

/// A stage made ready for eight sizes at once.
pub(super) trait Lane {
    /// Lets eight sizes pass.
    fn pass(&self, at: &Sizes, met: &mut Met);
    /// Where its share bends.
    fn bends(&self) -> Bends;
}

/// Any stage made ready.
pub(super) enum Ready<'a> {
    Tank(TankLane),
    Plates(PlatesLane),
    Mesh(MeshLane),
    MeshCurve(&'a MeshCurve),
}

impl Lane for Ready<'_> {
    #[inline(always)]
    fn pass(&self, at: &Sizes, met: &mut Met) {
        match self {
            Ready::Tank(tank) => tank.pass(at, met),
            Ready::Plates(plates) => plates.pass(at, met),
            Ready::Mesh(mesh) => mesh.pass(at, met),
            Ready::MeshCurve(mesh) => mesh.pass(at, met),
        }
    }
    fn bends(&self) -> Bends {
        match self {
            Ready::Tank(tank) => tank.bends(),
            Ready::Plates(plates) => plates.bends(),
            Ready::Mesh(mesh) => mesh.bends(),
            Ready::MeshCurve(mesh) => mesh.bends(),
        }
    }
}

/// A row of stages made ready.
pub(super) struct Row<'a> {
    /// Tanks that are mixed over their depth catch together what one with the sum of their surfaces does: one over its
    /// overflow rate.
    mixed: f64,
    others: ArrayVec<Ready<'a>, MOST>,
}

impl Row<'_> {
    /// Lets eight sizes pass, of which so much is counted.
    #[inline(always)]
    pub(super) fn pass(&self, at: &Sizes, factor: Lanes) -> Met {
        let mut met = Met { factor, exponent: at.v.map(|v| -v * self.mixed) };
        for stage in &self.others {
            stage.pass(at, &mut met);
        }
        met
    }
    /// Where the shares that they catch bend.
    pub(super) fn bends(&self) -> impl Iterator<Item = Bends> {
        self.others.iter().map(Ready::bends)
    }
}

impl Catches {
    /// One after the other; those beyond the most that there may be are left out, which no unit comes near.
    #[inline]
    #[must_use]
    pub fn new(stages: impl IntoIterator<Item = Catch>) -> Self {
        Self(stages.into_iter().take(MOST).collect())
    }

    /// All of them, ready for droplets of a median size in this water.
    pub(super) fn ready(&self, mu: Viscosity, t: Temperature, median: Length) -> Row<'_> {
        let mut row = Row { mixed: 0.0, others: ArrayVec::new() };
        for stage in &self.0 {
            match stage {
                Catch::Tank(tank) if tank.model == TankModel::Mixed => row.mixed += tank.lane().per(),
                Catch::Tank(tank) => row.others.push(Ready::Tank(tank.lane())),
                Catch::Plates(plates) => row.others.push(Ready::Plates(plates.lane())),
                Catch::Mesh(mesh) => row.others.push(Ready::Mesh(mesh.lane(mu, t, median))),
                Catch::MeshCurve(mesh) => row.others.push(Ready::MeshCurve(mesh)),
            }
        }
        row
    }
}

/// The same for whichever kind of stage.
macro_rules! each {
    ($catch:expr, $stage:ident => $does:expr) => {
        match $catch {
            Catch::Tank($stage) => $does,
            Catch::Plates($stage) => $does,
            Catch::Mesh($stage) => $does,
            Catch::MeshCurve($stage) => $does,
        }
    };
}

impl Catch {
    /// The kinds that there are.
    pub const KINDS: &'static [&'static Group] = &[Tank::GROUP, Plates::GROUP, Mesh::GROUP, MeshCurve::GROUP];

    /// The same as a group of arguments.
    #[must_use]
    pub fn arg(&self) -> Arg {
        each!(self, stage => stage.arg())
    }

    /// Share of grains that settle at `v` that is left behind it; no mesh is counted on for grains.
    pub(super) fn grains_left(&self, v: Velocity) -> f64 {
        let caught = match self {
            Catch::Tank(tank) => tank_removal::removal(v, tank.v_0, tank.model, tank.index),
            Catch::Plates(plates) => plate_removal::removal(v, plates.v_0, plates.spread, plates.regime),
            Catch::Mesh(_) | Catch::MeshCurve(_) => return 1.0,
        };
        caught.map_or(f64::NAN, |caught| 1.0 - caught.si())
    }

    /// Where the share of grains that it catches bends.
    pub(super) fn bends_for_grains(&self) -> Option<Bends> {
        match self {
            Catch::Tank(tank) => Some(tank.lane().bends()),
            Catch::Plates(plates) => Some(plates.lane().bends()),
            Catch::Mesh(_) | Catch::MeshCurve(_) => None,
        }
    }

    /// From a group of arguments; `None` when it is of another kind.
    #[must_use]
    pub fn from_arg(arg: &Arg) -> Option<Self> {
        let tank = Tank::from_arg(arg).map(Catch::Tank);
        let plates = || Plates::from_arg(arg).map(Catch::Plates);
        let mesh = || Mesh::from_arg(arg).map(Catch::Mesh);
        tank.or_else(plates).or_else(mesh).or_else(|| MeshCurve::from_arg(arg).map(Catch::MeshCurve))
    }
}

impl Argument for Catches {
    const KIND: Kind = Kind::Groups(Catch::KINDS);
    fn arg(&self) -> Arg {
        Arg::Groups(self.0.iter().map(Catch::arg).collect())
    }
    fn from_arg(arg: &Arg) -> Option<Self> {
        let Arg::Groups(stages) = arg else { return None };
        let stages: Option<Vec<Catch>> = stages.iter().map(Catch::from_arg).collect();
        stages.filter(|stages| stages.len() <= MOST).map(Self::new)
    }
    #[inline]
    fn within(&self, page: &'static str) -> Result<(), Outside> {
        self.0.iter().try_for_each(|catch| each!(catch, stage => stage.within(page)))
    }
    #[inline]
    fn key(&self, key: &mut Key) {
        for catch in &self.0 {
            key.push(match catch {
                Catch::Tank(_) => 1,
                Catch::Plates(_) => 2,
                Catch::Mesh(_) => 3,
                Catch::MeshCurve(_) => 4,
            });
            each!(catch, stage => stage.key(key));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::Series;
    use crate::separation::plate_removal::GapRegime;
    use crate::separation::{mesh_curve, mesh_removal};
    use stillrise_units::lanes::{self, WIDTH};
    use stillrise_units::{Ratio, ratio};

    const MU: f64 = 1.001_596e-3;
    const T: f64 = 293.15;
    const MEDIAN: f64 = 6e-5;

    /// Share of one size that passes by the page.
    fn page(stage: &Catch, d: f64, v: f64) -> Option<f64> {
        let (d, v) = (Length::from_si(d), Velocity::from_si(v));
        let caught: Result<Ratio, Outside> = match stage.clone() {
            Catch::Tank(s) => tank_removal::removal(v, s.v_0, s.model, s.index),
            Catch::Plates(s) => plate_removal::removal(v, s.v_0, s.spread, s.regime),
            Catch::Mesh(s) => {
                let (mu, t) = (Viscosity::from_si(MU), Temperature::from_si(T));
                mesh_removal::removal(d, v, mu, t, s.solidity, s.fibre, s.length, s.u, s.sticking, s.saturation)
            }
            Catch::MeshCurve(s) => mesh_curve::caught(d, s.curve),
        };
        caught.ok().map(|caught| 1.0 - caught.si())
    }

    fn every_kind() -> Vec<Catch> {
        let mut all: Vec<Catch> = Vec::new();
        for model in TankModel::ALL {
            all.push(Catch::Tank(Tank { v_0: Velocity::from_si(4e-4), model: *model, index: ratio(3.0) }));
        }
        for regime in GapRegime::ALL {
            for spread in [0.0, 0.2, 0.5] {
                all.push(Catch::Plates(Plates {
                    v_0: Velocity::from_si(3e-4),
                    spread: ratio(spread),
                    regime: *regime,
                }));
            }
        }
        for (solidity, fibre, u, sticking, oil) in
            [(0.03, 250e-6, 3e-3, 1.0, 0.0), (0.05, 150e-6, 1e-2, 0.4, 0.15), (0.1, 30e-6, 1e-3, 0.1, 0.3)]
        {
            all.push(Catch::Mesh(Mesh {
                solidity: ratio(solidity),
                fibre: Length::from_si(fibre),
                length: Length::from_si(0.1),
                u: Velocity::from_si(u),
                sticking: ratio(sticking),
                saturation: ratio(oil),
            }));
        }
        all.push(Catch::MeshCurve(MeshCurve { curve: Series(vec![(1e-5, 0.2), (4e-5, 0.6)]) }));
        all
    }

    /// The lanes are a second writing of the pages; they must never part.
    #[test]
    fn eight_at_once_give_what_the_page_gives_for_each() {
        let sizes = [1e-7, 1e-6, 5e-6, 2e-5, 6e-5, 1.5e-4, 4e-4, 1e-3];
        let root = sizes.map(|d| stillrise_units::math::pow(d / MEDIAN, 1.0 / 3.0));
        let at = Sizes { y: sizes, root, d: sizes, v: sizes.map(|d| 81e3 * d * d), dy: sizes };
        let (mu, t) = (Viscosity::from_si(MU), Temperature::from_si(T));
        for stage in every_kind() {
            let list = Catches::new([stage.clone()]);
            let met = list.ready(mu, t, Length::from_si(MEDIAN)).pass(&at, [1.0; WIDTH]);
            let share = lanes::exp(met.exponent);
            let lanes = met.factor.iter().zip(share).map(|(factor, share)| factor * share);
            for ((lane, d), v) in lanes.zip(at.d).zip(at.v) {
                let page = page(&stage, d, v).unwrap_or(f64::NAN);
                assert!((lane - page).abs() < 1e-12, "{stage:?} at {d}: {lane} against {page}");
            }
        }
    }

    #[test]
    fn stages_come_back_from_arguments_and_no_two_share_a_key() {
        let all = every_kind();
        let mut keys = Vec::new();
        for stage in &all {
            assert_eq!(Catch::from_arg(&stage.arg()).as_ref(), Some(stage));
            let mut key = Key::default();
            Catches::new([stage.clone()]).key(&mut key);
            keys.push(format!("{key:?}"));
        }
        keys.sort();
        keys.dedup();
        assert_eq!(keys.len(), all.len());
    }
}
