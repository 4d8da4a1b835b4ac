//! Formula: oil left behind tank, plate pack and mesh in series
//!
//! Longer than a page, because the integral over the droplets stands here too.

use super::feed::{BELOW, Place, Rise, Sizes, Spread};
use super::plate_removal::GapRegime;
use super::tank_removal::{self, TankModel};
use super::mesh_curve;
use super::mesh_removal::Bed;
use crate::memo::Memo;
use crate::page::Evidence::Limit;
use crate::page::Series;
use crate::sources::{COMMON_PRACTICE, HAZEN_CAMP, KUWABARA, MUGELE_EVANS, ROSIN_RAMMLER, SINGLE_FIBRE, SURFACE_LOADING, VETTER};
use crate::{choice, formula};
use pulp::{Arch, Simd, WithSimd};
use stillrise_units::lanes::{self, Lanes, WIDTH};
use stillrise_units::math::{ceil, ln, max, min};
use stillrise_units::{Density, Length, Ratio, Temperature, Typed, Velocity, Viscosity, ratio};

choice! {
    /// By which law droplets rise.
    RiseLaw {
        /// Stokes' law: what hand calculations and the API chain use
        Stokes "stokes",
        /// drag of a sphere at any Reynolds number: slower for coarse droplets
        Drag "drag",
    }
}

choice! {
    /// How the oil's volume spreads over droplet size.
    DropletLaw {
        /// log-normal; its shape is the geometric standard deviation
        LogNormal "log-normal",
        /// Rosin-Rammler (Weibull); its shape is the exponent
        RosinRammler "rosin-rammler",
        /// upper-limit log-normal (Mugele and Evans); its shape is their delta, its end the largest droplet
        UpperLimit "upper-limit",
        /// a measured table, straight between its rows over the logarithm of size
        Measured "measured",
    }
}

formula! {
    /// Share of the free oil that is left after a tank, then a plate pack, then a mesh.
    ///
    /// Each size meets the removal of tank, pack and mesh in turn (`tank-removal`, `plate-removal`,
    /// `mesh-removal`); droplets neither grow nor break on the way. A stage that is absent has a boundless
    /// overflow rate (1e12 mm/s), or no depth. Where the law knows no largest droplet, all above `d_max`
    /// are taken to be broken down to it. Only droplets from one size up to another are counted, as a
    /// share of all free oil. Finer than the finest row of a measured table nothing is caught; coarser
    /// than its coarsest, droplets count as of that size. Droplet size governs the result and is rarely
    /// measured: print it over a range of medians, not alone. Emulsified and dissolved oil come on top.
    /// Oil as heavy as the water stays, all of it.
    "remaining-oil" "Oil left behind tank, plate pack and mesh"
    fn fraction(
        droplets: DropletLaw = "droplets" "how the oil's volume spreads over size";
        d50: Length = "d_50" "median droplet of the oil's volume" [UM, UM: 5.0 .. 500.0 in 0.01 .. 10000.0];
        shape: Ratio = "s_g" "shape of the distribution" [ONE, ONE: 0.5 .. 4.0 in 0.2 .. 20.0];
        largest: Length = "d_max" "largest droplet" [UM, UM: 10.0 .. 1e9 in 0.01 .. 1e9];
        table: Series = "d|F" "measured: size, and share of the volume that is finer" {UM, UM; PERCENT, PERCENT};
        from: Length = "d_1" "counted from this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        to: Length = "d_2" "counted up to this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        rho_w: Density = "rho_w" "density of the water" [KG_M3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [KG_M3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        law: RiseLaw = "law" "law of rise";
        v_tank: Velocity = "v_tank" "overflow rate of the tank" [GPM_FT2, MM_S: 0.001 .. 1e12 in 1e-9 .. 1e12];
        tank: TankModel = "tank" "how the water moves in the tank";
        index: Ratio = "n" "index of the tank model" [ONE, ONE: 0.0 .. 1e6 in 0.0 .. 1e9];
        v_pack: Velocity = "v_pack" "flow over projected plate area" [GPM_FT2, MM_S: 0.001 .. 1e12 in 1e-9 .. 1e12];
        spread: Ratio = "s" "how unequal the flow in the gaps is" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 95.0];
        regime: GapRegime = "regime" "flow in the gaps";
        solidity: Ratio = "alpha" "share of the mesh's volume that is fibre" [PERCENT, PERCENT: 0.5 .. 20.0 in 0.1 .. 60.0];
        fibre: Length = "d_f" "diameter of the fibre" [UM, UM: 5.0 .. 1000.0 in 0.5 .. 10000.0];
        depth: Length = "L" "depth of the mesh along the flow" [IN, MM: 0.0 .. 300.0 in 0.0 .. 10000.0];
        face: Velocity = "U" "velocity on the face of the mesh" [FT_MIN, MM_S: 0.0 .. 50.0 in 1e-6 .. 1000.0];
        sticking: Ratio = "s_m" "share of the droplets that touch a fibre and stay" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
        saturation: Ratio = "S" "share of the mesh's voids that holds oil" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 99.0];
        t: Temperature = "T" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 100.0];
        curve: Series = "d|E_m" "measured: size, and share that the mesh catches" {UM, UM; PERCENT, PERCENT};
    ) -> Ratio = "R" "share of the free oil that is left" [PERCENT, PERCENT];
    reduced [d50 M, shape ONE, largest M, from M, to M, rho_w KG_M3, rho_o KG_M3, mu PA_S, v_tank M_S, index ONE, v_pack M_S, spread ONE, solidity ONE, fibre M, depth M, face M_S, sticking ONE, saturation ONE, t K => ONE] {
        integral(droplets, d50, shape, largest, table, from, to, rho_w, rho_o, mu, law, v_tank, tank, index, v_pack, spread, regime, solidity, fibre, depth, face, sticking, saturation, t, curve)
    }
    helpers [integral(DropletLaw, f64, f64, f64, Series, f64, f64, f64, f64, f64, RiseLaw, f64, TankModel, f64, f64, f64, GapRegime, f64, f64, f64, f64, f64, f64, f64, Series)
        "integral" "of (1 - E_tank)(1 - E_pack)(1 - E_mesh) dF over the volume distribution F, each E at the size and its rise velocity"]
    sources [HAZEN_CAMP, VETTER, SURFACE_LOADING, ROSIN_RAMMLER, MUGELE_EVANS, SINGLE_FIBRE, KUWABARA, COMMON_PRACTICE]
    checks [
        "droplets=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=drag, v_tank=1e12 mm/s, tank=mixed, index=0, v_pack=1e12 mm/s, spread=20 %, regime=turbulent, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "1.000000",
            Limit("stages that are not there");
        "droplets=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=drag, v_tank=1e-9 mm/s, tank=ideal, index=0, v_pack=1e12 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "0.000000",
            Limit("a boundless tank");
        "droplets=log-normal, d50=60 um, shape=1.001, largest=1e9 um, table=[], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=stokes, v_tank=0.588399 mm/s, tank=ideal, index=0, v_pack=0.588399 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "0.25000",
            Limit("equal droplets, each stage catches half");
        "droplets=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 cP, law=stokes, v_tank=0.1 mm/s, tank=ideal, index=0, v_pack=0.1 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "1.000000",
            Limit("oil as heavy as the water stays");
        "droplets=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[], from=60 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=stokes, v_tank=1e12 mm/s, tank=mixed, index=0, v_pack=1e12 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "0.500000",
            Limit("half of the volume lies above the median");
        "droplets=log-normal, d50=600 um, shape=1.5, largest=60 um, table=[], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=stokes, v_tank=0.588399 mm/s, tank=ideal, index=0, v_pack=1e12 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "0.50000",
            Limit("all broken to 60 um, which rise at half the overflow rate");
        "droplets=measured, d50=60 um, shape=2, largest=1e9 um, table=[20 um: 0.25; 40 um: 0.75], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=stokes, v_tank=1e-9 mm/s, tank=ideal, index=0, v_pack=1e12 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=0 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[]" => "0.25000",
            Limit("finer than the finest row nothing is caught, all else is");
        "droplets=measured, d50=30 um, shape=2, largest=1e9 um, table=[60 um: 0; 60.000001 um: 1], from=0 um, to=1e9 um, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=stokes, v_tank=1e12 mm/s, tank=mixed, index=0, v_pack=1e12 mm/s, spread=0 %, regime=laminar, solidity=3 %, fibre=250 um, depth=100 mm, face=3 mm/s, sticking=100 %, saturation=0 %, t=20 °C, curve=[10 um: 0; 100 um: 1]" => "0.2218",
            Limit("one size, straight on the measured curve over the logarithm of size: 1 - log10(6)");
    ]
}

/// Width of a panel in bends of the distribution; the integrand is smooth between its kinks.
const PANEL: f64 = 2.0;
/// Nodes and weights of Gauss-Legendre, eight points (Abramowitz and Stegun, 25.4).
const NODES: Lanes = [
    -0.960_289_856_497_536_3,
    -0.796_666_477_413_626_7,
    -0.525_532_409_916_329,
    -0.183_434_642_495_649_8,
    0.183_434_642_495_649_8,
    0.525_532_409_916_329,
    0.796_666_477_413_626_7,
    0.960_289_856_497_536_3,
];
const WEIGHTS: Lanes = [
    0.101_228_536_290_376_26,
    0.222_381_034_453_374_48,
    0.313_706_645_877_887_3,
    0.362_683_783_378_362,
    0.362_683_783_378_362,
    0.313_706_645_877_887_3,
    0.222_381_034_453_374_48,
    0.101_228_536_290_376_26,
];

/// What the droplets pass.
struct Stages {
    v_tank: f64,
    tank: TankModel,
    index: f64,
    v_pack: f64,
    spread: f64,
    regime: GapRegime,
    mesh: Option<Mesh>,
    /// One over the tank's overflow rate, and over that of the two halves of the pack.
    per_tank: f64,
    per_pack: (f64, f64),
}

/// The mesh: by its fibres, or by a measured curve.
enum Mesh {
    Fibres(Bed),
    Curve(Series),
}

#[allow(clippy::needless_range_loop, reason = "one index runs through several lanes")]
impl Stages {
    /// Share of eight sizes that passes all stages: a factor, and what is to be added to the exponent behind it.
    #[inline(always)]
    fn pass(&self, at: &Sizes, factor: &mut Lanes, exponent: &mut Lanes) {
        match self.tank {
            TankModel::Mixed => {
                for k in 0..WIDTH {
                    exponent[k] -= at.v[k] * self.per_tank;
                }
            }
            TankModel::Ideal => {
                for k in 0..WIDTH {
                    factor[k] *= 1.0 - min(1.0, at.v[k] / self.v_tank);
                }
            }
            _ => {
                for k in 0..WIDTH {
                    factor[k] *= self.behind_tank(at.v[k]);
                }
            }
        }
        // Two halves of the pack, one with more than its share of the flow.
        let (more, less) = (1.0 + self.spread, 1.0 - self.spread);
        let (per_more, per_less) = self.per_pack;
        if self.regime == GapRegime::Laminar {
            for k in 0..WIDTH {
                let (fast, slow) = (min(1.0, at.v[k] * per_more), min(1.0, at.v[k] * per_less));
                factor[k] *= 1.0 - 0.5 * (more * fast + less * slow);
            }
        } else {
            let (fast, slow) = (lanes::exp(at.v.map(|v| -v * per_more)), lanes::exp(at.v.map(|v| -v * per_less)));
            for k in 0..WIDTH {
                factor[k] *= 0.5 * (more * fast[k] + less * slow[k]);
            }
        }
        match &self.mesh {
            None => {}
            Some(Mesh::Fibres(bed)) => {
                let met = bed.met(&at.d, &at.v, &at.root);
                for k in 0..WIDTH {
                    exponent[k] -= met[k];
                }
            }
            Some(Mesh::Curve(curve)) => {
                for k in 0..WIDTH {
                    factor[k] *= 1.0 - mesh_curve::on_curve(at.d[k], curve);
                }
            }
        }
    }

    /// Share of the droplets of one velocity that passes the tank.
    fn behind_tank(&self, v: f64) -> f64 {
        let caught = tank_removal::removal(
            Velocity::from_si(v),
            Velocity::from_si(self.v_tank),
            self.tank,
            ratio(self.index),
        );
        caught.map_or(f64::NAN, |e| 1.0 - e.value)
    }
}

thread_local! {
    static KEPT: Memo<23> = const { Memo::new() };
}

/// The integral, kept: a search asks for the same ones again and again.
#[allow(clippy::too_many_arguments)]
fn integral(
    droplets: DropletLaw,
    d50: f64,
    shape: f64,
    largest: f64,
    table: Series,
    from: f64,
    to: f64,
    rho_w: f64,
    rho_o: f64,
    mu: f64,
    law: RiseLaw,
    v_tank: f64,
    tank: TankModel,
    index: f64,
    v_pack: f64,
    spread: f64,
    regime: GapRegime,
    solidity: f64,
    fibre: f64,
    depth: f64,
    face: f64,
    sticking: f64,
    saturation: f64,
    t: f64,
    curve: Series,
) -> f64 {
    let words = [droplets as u64, law as u64, tank as u64, regime as u64];
    let numbers = [
        d50, shape, largest, from, to, rho_w, rho_o, mu, v_tank, index, v_pack, spread, solidity, fibre, depth, face,
        sticking, saturation, t,
    ]
    .map(f64::to_bits);
    let mut arguments = [0; 23];
    for (slot, bits) in arguments.iter_mut().zip(words.into_iter().chain(numbers)) {
        *slot = bits;
    }
    let plain = table.0.is_empty() && curve.0.is_empty();
    let find = || {
        let feed = Spread::new(droplets, d50, shape, largest, &table);
        let sizes = (ln(from / d50), ln(to / d50), ln(largest / d50));
        if rho_o >= rho_w {
            // Nothing rises and nothing is caught: what is left is what is counted.
            let finer = |y: f64| if y >= sizes.2 { 1.0 } else { feed.finer(y) };
            return max(0.0, finer(sizes.1) - finer(sizes.0));
        }
        let mesh = if !curve.0.is_empty() {
            Some(Mesh::Curve(curve))
        } else if depth > 0.0 {
            let bed = Bed::new(solidity, fibre, depth, face, sticking, saturation, mu, t, d50);
            Some(Mesh::Fibres(bed))
        } else {
            None
        };
        let per_pack = (1.0 / (v_pack * (1.0 + spread)), 1.0 / (v_pack * (1.0 - spread)));
        let stages = Stages { v_tank, tank, index, v_pack, spread, regime, mesh, per_tank: 1.0 / v_tank, per_pack };
        let rise = Rise::new(law, d50, rho_w, rho_o, mu);
        // The same operations in the widest form this machine has: the same bits, sooner.
        Arch::new().dispatch(Passing { feed: &feed, rise: &rise, stages: &stages, sizes })
    };
    if plain { KEPT.with(|kept| kept.get(arguments, find)) } else { find() }
}

/// [`through`], for the widest arithmetic of this machine.
struct Passing<'a> {
    feed: &'a Spread,
    rise: &'a Rise,
    stages: &'a Stages,
    sizes: (f64, f64, f64),
}

impl WithSimd for Passing<'_> {
    type Output = f64;

    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) -> f64 {
        through(self.feed, self.rise, self.stages, self.sizes)
    }
}

/// The share that passes, of the droplets between two sizes, those above the largest broken down to it.
#[inline(always)]
fn through(feed: &Spread, rise: &Rise, stages: &Stages, (from, to, largest): (f64, f64, f64)) -> f64 {
    let (low, high) = feed.ends();
    let mut left = 0.0;
    // Below the low end are droplets so small, or so few, that one removal serves for all; a measured
    // table says nothing of them, and nothing of them is caught.
    if from < low && to >= low {
        left += match feed {
            Spread::Measured(_) => feed.finer(low),
            _ => BELOW * at(rise, stages, rise.tail(low)),
        };
    }
    // What the law has above the largest droplet is of that size; what lies above the high end as of that end.
    let end = min(high, largest);
    let above = if largest < high { 1.0 - feed.finer(end) } else { feed.above() };
    // Beyond `top` one of the stages catches all; the kink parts the panels, and so do jumps of the density.
    let mut caught = None;
    let mut kink = None;
    if stages.regime == GapRegime::Laminar {
        let (fast, slow) = (stages.v_pack * (1.0 + stages.spread), stages.v_pack * (1.0 - stages.spread));
        let [place, other] = rise.at([fast, slow]);
        caught = Some(place);
        kink = Some(other);
    }
    if stages.tank == TankModel::Ideal {
        let [place, _] = rise.at([stages.v_tank, stages.v_tank]);
        caught = Some(caught.filter(|c: &Place| c.y < place.y).unwrap_or(place));
    }
    let top = caught.filter(|c| c.y < end).unwrap_or_else(|| rise.place(end));
    if end < to && from <= end && top.y >= end {
        left += above * at(rise, stages, top);
    }
    let start = max(low, from);
    let top = if to < top.y { rise.place(to) } else { top };
    if start >= top.y {
        return left;
    }
    let mut here = if start > low { rise.place(start) } else { rise.tail(low) };
    while here.y < top.y {
        let mut next = top;
        for (y, _) in feed.breaks() {
            if *y > here.y && *y < next.y {
                next = rise.place(*y);
            }
        }
        if let Some(kink) = kink.filter(|k| k.y > here.y && k.y < next.y) {
            next = kink;
        }
        left += panels(feed, rise, stages, here, next);
        here = next;
    }
    left
}

/// Share of one size that passes.
#[inline(always)]
fn at(rise: &Rise, stages: &Stages, place: Place) -> f64 {
    let (mut factor, mut exponent) = ([1.0; WIDTH], [0.0; WIDTH]);
    stages.pass(&rise.sizes(&[place.x; WIDTH]), &mut factor, &mut exponent);
    factor[0] * lanes::exp(exponent)[0]
}

/// The integral of what passes from one place to another, panel by panel, eight nodes at once.
#[inline(always)]
fn panels(feed: &Spread, rise: &Rise, stages: &Stages, low: Place, high: Place) -> f64 {
    // A wide distribution passes from "all" to "nothing" within fewer of its bends.
    let count = ceil((high.y - low.y) / (PANEL * min(1.0, feed.bend())));
    let half = 0.5 * (high.x - low.x) / count;
    let mut sum = 0.0;
    let mut i = 0.0;
    while i < count {
        let middle = low.x + half * (2.0 * i + 1.0);
        let at = rise.sizes(&NODES.map(|node| middle + half * node));
        let (mut factor, mut exponent) = ([0.0; WIDTH], [0.0; WIDTH]);
        for k in 0..WIDTH {
            factor[k] = WEIGHTS[k] * at.dy[k];
        }
        stages.pass(&at, &mut factor, &mut exponent);
        feed.weigh(&at.y, &mut factor, &mut exponent);
        let share = lanes::exp(exponent);
        let mut panel = 0.0;
        for k in 0..WIDTH {
            panel += factor[k] * share[k];
        }
        sum += half * panel;
        i += 1.0;
    }
    sum
}
