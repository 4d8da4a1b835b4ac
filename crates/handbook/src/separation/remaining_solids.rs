//! Formula: solids left behind stages in a row

use super::catch::{Catch, Catches};
use super::feed::Spread;
use super::grit_settling::{self, GrainShape};
use super::remaining_oil::DropletLaw;
use crate::memo::{Key, Memo};
use crate::page::Evidence::{Library, Limit};
use crate::page::{Argument, Series};
use crate::sources::{FERGUSON_CHURCH, HAZEN_CAMP, SURFACE_LOADING, VETTER};
use crate::{formula, group};
use stillrise_units::math::{ceil, exp, ln, max, min, root};
use stillrise_units::{Density, KinematicViscosity, Length, Ratio, Typed, Velocity};

const QUAD: &str = "scipy 1.17.1, integrate.quad over the logarithm of size, parts split at the kinks, 1e-10";

group! {
    /// The solids: how their mass spreads over grain size.
    Grains "grains" {
        d50: Length = "d_50" "median grain of the solids' mass" [UM, UM: 1.0 .. 2000.0 in 0.01 .. 100000.0];
        sg: Ratio = "sigma_g" "geometric standard deviation of the grains" [ONE, ONE: 1.2 .. 6.0 in 1.001 .. 20.0];
        table: Series = "d|F" "sieved: size, and share of the mass that is finer" {UM, UM; PERCENT, PERCENT};
        rho_s: Density = "rho_s" "density of the grains" [LB_FT3, KG_M3: 1050.0 .. 3000.0 in 500.0 .. 20000.0];
        shape: GrainShape = "shape" "kind of grain";
    }
}

formula! {
    /// Share of the solids' mass that is left after any number of stages in a row, counted from one grain size up
    /// to another, as a share of all solids.
    ///
    /// The way of `remaining-oil`, upside down: each size settles by `grit-settling` and meets
    /// `tank-removal` and `plate-removal` in turn; what settles stays. No mesh is counted on for grains. Sizes spread
    /// log-normally by mass, or as sieved: straight between the rows over the logarithm of size; what is finer than the
    /// finest row counts as of that size, which is cautious for sludge and not for what leaves.
    /// Flocs, and grains that carry oil, settle otherwise than clean single grains: give the density they have.
    /// Solids no heavier than the water stay in it.
    "remaining-solids" "Solids left behind stages in a row"
    fn fraction(
        grains: Grains = "grains" "the solids that arrive";
        from: Length = "d_1" "counted from this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        to: Length = "d_2" "counted up to this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        stages: Catches = "stages" "what they pass, in the order of the flow";
    ) -> Ratio = "R_s" "share of the solids that is left" [PERCENT, PERCENT];
    reduced [from M, to M, rho_w KG_M3, nu M2_S => ONE] { integral(grains, from, to, rho_w, nu, stages) }
    helpers [integral(Grains, f64, f64, f64, f64, Catches)
        "integral" "of the product of (1 - E) of all stages, dF, over the mass distribution F, each E at the grain's settling velocity"]
    sources [FERGUSON_CHURCH, HAZEN_CAMP, VETTER, SURFACE_LOADING]
    checks [
        "grains=(d50=60 um, sg=2, table=[], rho_s=2650 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=1000 kg/m3, nu=1 mm2/s, stages=[]" => "1.00000",
            Limit("stages that are not there");
        "grains=(d50=60 um, sg=2, table=[], rho_s=2650 kg/m3, shape=natural), from=60 um, to=1e9 um, rho_w=1000 kg/m3, nu=1 mm2/s, stages=[]" => "0.50000",
            Limit("half of the mass lies above the median");
        "grains=(d50=60 um, sg=2, table=[], rho_s=1000 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=1000 kg/m3, nu=1 mm2/s, stages=[tank(v_0=0.1 mm/s, model=ideal, index=0); plates(v_0=0.1 mm/s, spread=0 %, regime=laminar)]" => "1.00000",
            Limit("grains as heavy as the water stay in it");
        "grains=(d50=60 um, sg=2, table=[], rho_s=900 kg/m3, shape=natural), from=20 um, to=1e9 um, rho_w=1000 kg/m3, nu=1 mm2/s, stages=[tank(v_0=0.1 mm/s, model=ideal, index=0); plates(v_0=0.1 mm/s, spread=0 %, regime=laminar)]" => "0.94351",
            Limit("what floats does not settle: the share above 20 µm, scipy 1.17.1, 1 - stats.norm.cdf(ln(20/60)/ln 2)");
        "grains=(d50=30 um, sg=2, table=[20 um: 0.25; 40 um: 0.75], rho_s=2650 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=1000 kg/m3, nu=1 mm2/s, stages=[tank(v_0=1e-9 mm/s, model=ideal, index=0)]" => "0.00000",
            Limit("all settles in a boundless tank");
        "grains=(d50=60 um, sg=2, table=[], rho_s=2650 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=1000 kg/m3, nu=1.0 mm2/s, stages=[tank(v_0=0.5 mm/s, model=mixed, index=0)]" => "0.09093", Library(QUAD);
        "grains=(d50=60 um, sg=2.5, table=[], rho_s=2650 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=999.7 kg/m3, nu=1.3 mm2/s, stages=[tank(v_0=0.5 mm/s, model=mixed, index=0); plates(v_0=0.3 mm/s, spread=20 %, regime=laminar)]" => "0.05190", Library(QUAD);
        "grains=(d50=60 um, sg=2.5, table=[], rho_s=2650 kg/m3, shape=natural), from=20 um, to=63 um, rho_w=999.7 kg/m3, nu=1.3 mm2/s, stages=[tank(v_0=0.5 mm/s, model=mixed, index=0); plates(v_0=0.3 mm/s, spread=20 %, regime=laminar)]" => "0.00131", Library(QUAD);
        "grains=(d50=20 um, sg=3, table=[], rho_s=1200 kg/m3, shape=sphere), from=0 um, to=1e9 um, rho_w=998.2 kg/m3, nu=1.0 mm2/s, stages=[tank(v_0=0.2 mm/s, model=ideal, index=0); plates(v_0=0.1 mm/s, spread=0 %, regime=laminar)]" => "0.43826", Library(QUAD);
        "grains=(d50=100 um, sg=4, table=[], rho_s=2000 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=999.1 kg/m3, nu=1.14 mm2/s, stages=[tank(v_0=2.0 mm/s, model=tanks, index=3); plates(v_0=0.5 mm/s, spread=10 %, regime=turbulent)]" => "0.16029", Library(QUAD);
        "grains=(d50=45 um, sg=2, table=[20 um: 0.1; 63 um: 0.7; 200 um: 1.0], rho_s=2650 kg/m3, shape=natural), from=0 um, to=1e9 um, rho_w=1000 kg/m3, nu=1.0 mm2/s, stages=[tank(v_0=1.0 mm/s, model=mixed, index=0); plates(v_0=0.5 mm/s, spread=20 %, regime=laminar)]" => "0.03341", Library(QUAD);
    ]
}

/// Width of a panel in bends of the distribution; the integrand is smooth between its kinks.
const PANEL: f64 = 0.5;
/// Sizes (m) between which a kink is looked for; coarser grains count as of the coarsest.
const FINEST: f64 = 1e-12;
const COARSEST: f64 = 0.1;
/// Nodes and weights of Gauss-Legendre, four points (Abramowitz and Stegun, 25.4).
const RULE: [(f64, f64); 4] = [
    (-0.861_136_311_594_052_6, 0.347_854_845_137_453_85),
    (-0.339_981_043_584_856_26, 0.652_145_154_862_546_2),
    (0.339_981_043_584_856_26, 0.652_145_154_862_546_2),
    (0.861_136_311_594_052_6, 0.347_854_845_137_453_85),
];

/// The grains in one water, on their way through the stages.
struct Way<'a> {
    grains: &'a Grains,
    rho_w: Density,
    nu: KinematicViscosity,
    stages: &'a Catches,
}

impl Way<'_> {
    /// Settling velocity of a size, by the logarithm of size over the median.
    fn velocity(&self, y: f64) -> f64 {
        let Grains { d50, rho_s, shape, .. } = self.grains;
        let d = Length::from_si(min(COARSEST, d50.si() * exp(y)));
        let settling = grit_settling::settling(d, *rho_s, self.rho_w, self.nu, *shape);
        settling.map_or(f64::NAN, |v| v.si())
    }

    /// The size that settles at `v`.
    fn size(&self, v: f64) -> Option<f64> {
        let d50 = self.grains.d50.si();
        root(ln(FINEST / d50), ln(COARSEST / d50), |y| self.velocity(y) - v)
    }

    /// Whether they sink.
    fn sinks(&self) -> bool {
        self.grains.rho_s > self.rho_w
    }

    /// Sizes at which a removal curve bends.
    fn kinks(&self) -> Vec<f64> {
        if !self.sinks() {
            return Vec::new();
        }
        let bends = self.stages.0.iter().filter_map(Catch::bends_for_grains);
        bends.flat_map(|bends| [bends.all, bends.kink]).flatten().filter_map(|v| self.size(v)).collect()
    }

    /// Share of one size that passes all.
    fn pass(&self, y: f64) -> f64 {
        if !self.sinks() {
            return 1.0;
        }
        let v = Velocity::from_si(self.velocity(y));
        self.stages.0.iter().fold(1.0, |left, stage| left * stage.grains_left(v))
    }

    /// Share of the solids between two sizes that passes, of all.
    fn through(&self, (from, to): (f64, f64)) -> f64 {
        let Grains { sg, table, .. } = self.grains;
        let d50 = self.grains.d50.si();
        let law = if table.0.is_empty() { DropletLaw::LogNormal } else { DropletLaw::Measured };
        let feed = Spread::new(law, d50, sg.si(), 1e9, table);
        let (from, to) = (ln(from / d50), ln(to / d50));
        let (low, high) = feed.ends();
        let mut left = 0.0;
        // What lies beyond the ends counts as of the end.
        if from < low && to >= low {
            left += feed.finer(low) * self.pass(low);
        }
        if to > high && from <= high {
            left += feed.above() * self.pass(high);
        }
        let (mut here, end) = (max(low, from), min(high, to));
        let kinks = self.kinks();
        while here < end {
            let rows = feed.breaks().iter().map(|(y, _)| y);
            let next = rows.chain(&kinks).filter(|y| **y > here).fold(end, |next, y| min(next, *y));
            let count = ceil((next - here) / (PANEL * min(1.0, feed.bend())));
            let half = 0.5 * (next - here) / count;
            let mut i = 0.0;
            while i < count {
                let middle = here + half * (2.0 * i + 1.0);
                for (node, weight) in RULE {
                    let y = middle + half * node;
                    left += half * weight * feed.density(y) * self.pass(y);
                }
                i += 1.0;
            }
            here = next;
        }
        left
    }
}

thread_local! {
    static KEPT: Memo = const { Memo::new() };
}

/// The integral, kept: a search asks for the same ones again and again.
fn integral(grains: Grains, from: f64, to: f64, rho_w: f64, nu: f64, stages: Catches) -> f64 {
    let mut key = Key::default();
    grains.key(&mut key);
    for number in [from, to, rho_w, nu] {
        key.push(number.to_bits());
    }
    stages.key(&mut key);
    let (rho_w, nu) = (Density::from_si(rho_w), KinematicViscosity::from_si(nu));
    let find = || Way { grains: &grains, rho_w, nu, stages: &stages }.through((from, to));
    KEPT.with(|kept| kept.get(&key, find))
}
