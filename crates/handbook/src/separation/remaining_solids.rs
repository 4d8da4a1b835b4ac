//! Formula: solids left behind tank and plate pack

use super::feed::Spread;
use super::grit_settling::{self, GrainShape};
use super::plate_removal::{self, GapRegime};
use super::remaining_oil::DropletLaw;
use super::tank_removal::{self, TankModel};
use crate::formula;
use crate::memo::Memo;
use crate::page::Evidence::{Library, Limit};
use crate::page::Series;
use crate::sources::{FERGUSON_CHURCH, HAZEN_CAMP, SURFACE_LOADING, VETTER};
use stillrise_units::math::{ceil, exp, ln, max, min, root};
use stillrise_units::{Density, KinematicViscosity, Length, Ratio, Typed, Velocity, ratio};

const QUAD: &str = "scipy 1.17.1, integrate.quad over the logarithm of size, parts split at the kinks, 1e-10";

formula! {
    /// Share of the solids' mass that is left after a tank, then a plate pack, counted from one grain size up
    /// to another, as a share of all solids.
    ///
    /// The way of `remaining-oil`, upside down: each size settles by `grit-settling` and meets
    /// `tank-removal` and `plate-removal` in turn; what settles stays. Sizes spread log-normally by mass, or as
    /// sieved: straight between the rows over the logarithm of size; what is finer than the finest row counts as of
    /// that size, which is cautious for sludge and not for what leaves.
    /// Flocs, and grains that carry oil, settle otherwise than clean single grains: give the density they have.
    /// Solids no heavier than the water stay in it.
    "remaining-solids" "Solids left behind tank and plate pack"
    fn fraction(
        d50: Length = "d_50" "median grain of the solids' mass" [UM, UM: 1.0 .. 2000.0 in 0.01 .. 100000.0];
        sg: Ratio = "sigma_g" "geometric standard deviation of the grains" [ONE, ONE: 1.2 .. 6.0 in 1.001 .. 20.0];
        table: Series = "d|F" "sieved: size, and share of the mass that is finer" {UM, UM; PERCENT, PERCENT};
        from: Length = "d_1" "counted from this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        to: Length = "d_2" "counted up to this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        rho_s: Density = "rho_s" "density of the grains" [KG_M3, KG_M3: 1050.0 .. 3000.0 in 500.0 .. 20000.0];
        rho_w: Density = "rho_w" "density of the water" [KG_M3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        shape: GrainShape = "shape" "kind of grain";
        v_tank: Velocity = "v_tank" "overflow rate of the tank" [GPM_FT2, MM_S: 0.001 .. 1e12 in 1e-9 .. 1e12];
        tank: TankModel = "tank" "how the water moves in the tank";
        index: Ratio = "n" "index of the tank model" [ONE, ONE: 0.0 .. 1e6 in 0.0 .. 1e9];
        v_pack: Velocity = "v_pack" "flow over projected plate area" [GPM_FT2, MM_S: 0.001 .. 1e12 in 1e-9 .. 1e12];
        spread: Ratio = "s" "how unequal the flow in the gaps is" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 95.0];
        regime: GapRegime = "regime" "flow in the gaps";
    ) -> Ratio = "R_s" "share of the solids that is left" [PERCENT, PERCENT];
    reduced [d50 M, sg ONE, from M, to M, rho_s KG_M3, rho_w KG_M3, nu M2_S, v_tank M_S, index ONE, v_pack M_S, spread ONE => ONE] {
        integral(d50, sg, table, from, to, rho_s, rho_w, nu, shape, v_tank, tank, index, v_pack, spread, regime)
    }
    helpers [integral(f64, f64, Series, f64, f64, f64, f64, f64, GrainShape, f64, TankModel, f64, f64, f64, GapRegime)
        "integral" "of (1 - E_tank)(1 - E_pack) dF over the mass distribution F, each E at the grain's settling velocity"]
    sources [FERGUSON_CHURCH, HAZEN_CAMP, VETTER, SURFACE_LOADING]
    checks [
        "d50=60 um, sg=2, table=[], from=0 um, to=1e9 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural, v_tank=1e12 mm/s, tank=mixed, index=0, v_pack=1e12 mm/s, spread=20 %, regime=laminar" => "1.00000",
            Limit("stages that are not there");
        "d50=60 um, sg=2, table=[], from=60 um, to=1e9 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural, v_tank=1e12 mm/s, tank=mixed, index=0, v_pack=1e12 mm/s, spread=20 %, regime=laminar" => "0.50000",
            Limit("half of the mass lies above the median");
        "d50=60 um, sg=2, table=[], from=0 um, to=1e9 um, rho_s=1000 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural, v_tank=0.1 mm/s, tank=ideal, index=0, v_pack=0.1 mm/s, spread=0 %, regime=laminar" => "1.00000",
            Limit("grains as heavy as the water stay in it");
        "d50=60 um, sg=2, table=[], from=20 um, to=1e9 um, rho_s=900 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural, v_tank=0.1 mm/s, tank=ideal, index=0, v_pack=0.1 mm/s, spread=0 %, regime=laminar" => "0.94351",
            Limit("what floats does not settle: the share above 20 µm, scipy 1.17.1, 1 - stats.norm.cdf(ln(20/60)/ln 2)");
        "d50=30 um, sg=2, table=[20 um: 0.25; 40 um: 0.75], from=0 um, to=1e9 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural, v_tank=1e-9 mm/s, tank=ideal, index=0, v_pack=1e12 mm/s, spread=0 %, regime=laminar" => "0.00000",
            Limit("all settles in a boundless tank");
        "d50=60 um, sg=2, table=[], from=0 um, to=1e9 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1.0 mm2/s, shape=natural, v_tank=0.5 mm/s, tank=mixed, index=0, v_pack=1e12 mm/s, spread=20 %, regime=laminar" => "0.09093", Library(QUAD);
        "d50=60 um, sg=2.5, table=[], from=0 um, to=1e9 um, rho_s=2650 kg/m3, rho_w=999.7 kg/m3, nu=1.3 mm2/s, shape=natural, v_tank=0.5 mm/s, tank=mixed, index=0, v_pack=0.3 mm/s, spread=20 %, regime=laminar" => "0.05190", Library(QUAD);
        "d50=60 um, sg=2.5, table=[], from=20 um, to=63 um, rho_s=2650 kg/m3, rho_w=999.7 kg/m3, nu=1.3 mm2/s, shape=natural, v_tank=0.5 mm/s, tank=mixed, index=0, v_pack=0.3 mm/s, spread=20 %, regime=laminar" => "0.00131", Library(QUAD);
        "d50=20 um, sg=3, table=[], from=0 um, to=1e9 um, rho_s=1200 kg/m3, rho_w=998.2 kg/m3, nu=1.0 mm2/s, shape=sphere, v_tank=0.2 mm/s, tank=ideal, index=0, v_pack=0.1 mm/s, spread=0 %, regime=laminar" => "0.43826", Library(QUAD);
        "d50=100 um, sg=4, table=[], from=0 um, to=1e9 um, rho_s=2000 kg/m3, rho_w=999.1 kg/m3, nu=1.14 mm2/s, shape=natural, v_tank=2.0 mm/s, tank=tanks, index=3, v_pack=0.5 mm/s, spread=10 %, regime=turbulent" => "0.16029", Library(QUAD);
        "d50=45 um, sg=2, table=[20 um: 0.1; 63 um: 0.7; 200 um: 1.0], from=0 um, to=1e9 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1.0 mm2/s, shape=natural, v_tank=1.0 mm/s, tank=mixed, index=0, v_pack=0.5 mm/s, spread=20 %, regime=laminar" => "0.03341", Library(QUAD);
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

/// What the grains pass.
struct Stages {
    d50: f64,
    rho_s: f64,
    rho_w: f64,
    nu: f64,
    shape: GrainShape,
    v_tank: f64,
    tank: TankModel,
    index: f64,
    v_pack: f64,
    spread: f64,
    regime: GapRegime,
}

impl Stages {
    /// Settling velocity of a size, by the logarithm of size over the median.
    fn velocity(&self, y: f64) -> f64 {
        let d = Length::from_si(min(COARSEST, self.d50 * exp(y)));
        let nu = KinematicViscosity::from_si(self.nu);
        let settling =
            grit_settling::settling(d, Density::from_si(self.rho_s), Density::from_si(self.rho_w), nu, self.shape);
        settling.map_or(f64::NAN, |v| v.si())
    }

    /// The size that settles at `v`.
    fn size(&self, v: f64) -> Option<f64> {
        root(ln(FINEST / self.d50), ln(COARSEST / self.d50), |y| self.velocity(y) - v)
    }

    /// Sizes at which a removal curve has a kink.
    fn kinks(&self) -> Vec<f64> {
        if self.rho_s <= self.rho_w {
            return Vec::new();
        }
        let ideal = (self.tank == TankModel::Ideal).then_some(self.v_tank);
        let laminar = self.regime == GapRegime::Laminar;
        let gaps = [1.0 + self.spread, 1.0 - self.spread].map(|share| self.v_pack * share);
        ideal.into_iter().chain(gaps.into_iter().filter(|_| laminar)).filter_map(|v| self.size(v)).collect()
    }

    /// Share of one size that passes both.
    fn pass(&self, y: f64) -> f64 {
        if self.rho_s <= self.rho_w {
            return 1.0;
        }
        let v = Velocity::from_si(self.velocity(y));
        let tank = tank_removal::removal(v, Velocity::from_si(self.v_tank), self.tank, ratio(self.index));
        let pack = plate_removal::removal(v, Velocity::from_si(self.v_pack), ratio(self.spread), self.regime);
        match (tank, pack) {
            (Ok(tank), Ok(pack)) => (1.0 - tank.si()) * (1.0 - pack.si()),
            _ => f64::NAN,
        }
    }
}

thread_local! {
    static KEPT: Memo<14> = const { Memo::new() };
}

/// The integral, kept: a search asks for the same ones again and again.
#[allow(clippy::too_many_arguments)]
fn integral(
    d50: f64,
    sg: f64,
    table: Series,
    from: f64,
    to: f64,
    rho_s: f64,
    rho_w: f64,
    nu: f64,
    shape: GrainShape,
    v_tank: f64,
    tank: TankModel,
    index: f64,
    v_pack: f64,
    spread: f64,
    regime: GapRegime,
) -> f64 {
    let words = [shape as u64, tank as u64, regime as u64];
    let numbers = [d50, sg, from, to, rho_s, rho_w, nu, v_tank, index, v_pack, spread].map(f64::to_bits);
    let mut arguments = [0; 14];
    for (slot, bits) in arguments.iter_mut().zip(words.into_iter().chain(numbers)) {
        *slot = bits;
    }
    let stages = Stages { d50, rho_s, rho_w, nu, shape, v_tank, tank, index, v_pack, spread, regime };
    let find = || stages.through(sg, &table, (from, to));
    if table.0.is_empty() { KEPT.with(|kept| kept.get(arguments, find)) } else { find() }
}

impl Stages {
    /// Share of the solids between two sizes that passes, of all.
    fn through(&self, sg: f64, table: &Series, (from, to): (f64, f64)) -> f64 {
    let (stages, d50) = (self, self.d50);
    let law = if table.0.is_empty() { DropletLaw::LogNormal } else { DropletLaw::Measured };
    let feed = Spread::new(law, d50, sg, 1e9, table);
    let (from, to) = (ln(from / d50), ln(to / d50));
    let (low, high) = feed.ends();
    let mut left = 0.0;
    // What lies beyond the ends counts as of the end.
    if from < low && to >= low {
        left += feed.finer(low) * stages.pass(low);
    }
    if to > high && from <= high {
        left += feed.above() * stages.pass(high);
    }
    let (mut here, end) = (max(low, from), min(high, to));
    let kinks = stages.kinks();
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
                left += half * weight * feed.density(y) * stages.pass(y);
            }
            i += 1.0;
        }
        here = next;
    }
    left
    }
}
