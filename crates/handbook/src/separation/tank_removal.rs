//! Formula: removal of one droplet size in a tank

use super::catch::{Bends, Lane, Met};
use super::feed::Sizes;
use super::{dispersed_removal, dobbins_camp};
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{EPA_DETENTION, HAZEN_CAMP, VETTER};
use crate::{choice, formula};
use stillrise_units::math::{exp, max, min, pow};
use stillrise_units::lanes::WIDTH;
use stillrise_units::{Ratio, Typed, Velocity};

const OWN: &str = "independent evaluation in Python";

choice! {
    /// How the water moves through a tank.
    TankModel {
        /// plug flow, nothing mixed (Hazen, Camp): an upper bound
        Ideal "ideal",
        /// mixed over the depth, plug flow along it (Vetter): the default
        Mixed "mixed",
        /// three mixed tanks in series (Hazen): a good basin by practice, a plain tank's lower bound
        ThreeTanks "three-tanks",
        /// as many mixed tanks in series as the index says
        Tanks "tanks",
        /// mixed over the depth and dispersed along it (Wehner and Wilhelm); the index is the dispersion number
        Dispersed "dispersed",
        /// mixed over the depth as far as its eddies reach (Dobbins, Camp); the index is overflow rate times
        /// depth over eddy diffusivity
        DobbinsCamp "dobbins-camp",
    }
}

formula! {
    /// Share of droplets of one rise velocity that a tank of one overflow rate catches.
    ///
    /// The models bracket what a real tank does; the truth between "ideal" and "mixed"
    /// depends on its turbulence. Tanks in series tend to "mixed" as their number grows, never to
    /// "ideal". Droplets that do not rise are not caught.
    "tank-removal" "Removal of one droplet size in a tank"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e9 .. 1e9];
    ) with Tank "tank" (
        v_0: Velocity = "v_0" "overflow rate: flow over plan area" [GPM_FT2, MM_S: 0.001 .. 20.0 in 1e-9 .. 1e12];
        model: TankModel = "model" "how the water moves";
        index: Ratio = "n" "index of the model, if it has one" [ONE, ONE: 0.0 .. 1e6 in 0.0 .. 1e9];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, v_0 MM_S, index ONE => ONE] {
        let x = max(v / v_0, 0.0);
        if model == TankModel::Ideal { min(1.0, x) }
        else if model == TankModel::Mixed { 1.0 - exp(-x) }
        else if model == TankModel::ThreeTanks { 1.0 - 1.0 / ((1.0 + x / 3.0) * (1.0 + x / 3.0) * (1.0 + x / 3.0)) }
        else if model == TankModel::Tanks { in_series(x, index) }
        else if model == TankModel::Dispersed { dispersed(x, index) }
        else { dobbins(x, index * x) }
    }
    helpers [
        in_series(f64, f64) "E_n" "`tanks-in-series`";
        dispersed(f64, f64) "E_d" "`dispersed-removal`";
        dobbins(f64, f64) "E_P" "`dobbins-camp`";
    ]
    sources [HAZEN_CAMP, VETTER, EPA_DETENTION]
    checks [
        "v=0.5 mm/s, v_0=1 mm/s, model=ideal, index=0" => "0.5000", Limit("half the depth is swept");
        "v=1 mm/s, v_0=1 mm/s, model=ideal, index=0" => "1.000", Limit("the whole depth is swept");
        "v=4 mm/s, v_0=1 mm/s, model=ideal, index=0" => "1.000", Limit("no more than all");
        "v=0 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0", Limit("what does not rise is not caught");
        "v=-1 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0", Limit("what sinks is not caught");
        "v=0.0001 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.000100", Limit("all models agree for slow droplets");
        "v=0.0001 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.000100", Limit("all models agree for slow droplets");
        "v=0.25 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.2212", ByHand(OWN);
        "v=0.5 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.3935", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.6321", ByHand(OWN);
        "v=1.5 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.7769", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.8647", ByHand(OWN);
        "v=4 mm/s, v_0=1 mm/s, model=mixed, index=0" => "0.9817", ByHand(OWN);
        "v=0.25 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.2135", ByHand(OWN);
        "v=0.5 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.3703", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.5781", ByHand(OWN);
        "v=1.5 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.7037", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.7840", ByHand(OWN);
        "v=4 mm/s, v_0=1 mm/s, model=three-tanks, index=0" => "0.9213", ByHand(OWN);
        "v=2 mm/s, v_0=1 mm/s, model=tanks, index=5" => "0.8141", ByHand(OWN);
        "v=1 mm/s, v_0=1 mm/s, model=dispersed, index=0.25" => "0.5761", ByHand(OWN);
        "v=0.8 mm/s, v_0=1 mm/s, model=dobbins-camp, index=6.25" => "0.6928", ByHand("layers in Python, at P = 6.25 x 0.8 = 5");
    ]
}

fn in_series(x: f64, n: f64) -> f64 {
    1.0 - pow(1.0 + x / n, -n)
}

fn dispersed(x: f64, d: f64) -> f64 {
    dispersed_removal::caught(x, d)
}

fn dobbins(x: f64, p: f64) -> f64 {
    dobbins_camp::caught(x, p)
}

/// A tank as eight droplets at once meet it.
pub(super) struct TankLane {
    tank: Tank,
    /// Its overflow rate, and one over it.
    v_0: f64,
    per: f64,
}

impl Tank {
    pub(super) fn lane(&self) -> TankLane {
        let v_0 = self.v_0.si();
        TankLane { tank: self.clone(), v_0, per: 1.0 / v_0 }
    }
}

impl TankLane {
    /// One over its overflow rate.
    pub(super) fn per(&self) -> f64 {
        self.per
    }

    /// Share of the droplets of one velocity that passes.
    fn left(&self, v: f64) -> f64 {
        let Tank { v_0, model, index } = self.tank;
        removal(Velocity::from_si(v), v_0, model, index).map_or(f64::NAN, |caught| 1.0 - caught.si())
    }
}

impl Lane for TankLane {
    #[inline(always)]
    fn pass(&self, at: &Sizes, met: &mut Met) {
        match self.tank.model {
            TankModel::Mixed => {
                for k in 0..WIDTH {
                    met.exponent[k] -= at.v[k] * self.per;
                }
            }
            TankModel::Ideal => {
                for k in 0..WIDTH {
                    met.factor[k] *= 1.0 - min(1.0, at.v[k] / self.v_0);
                }
            }
            _ => {
                for (factor, v) in met.factor.iter_mut().zip(at.v) {
                    *factor *= self.left(v);
                }
            }
        }
    }
    fn bends(&self) -> Bends {
        let all = (self.tank.model == TankModel::Ideal).then_some(self.v_0);
        Bends { all, kink: None }
    }
}
