//! Formula: oil left behind stages in a row
//!
//! Longer than a page, because the integral over the droplets stands here too.

use super::catch::{Catches, MOST, Row};
use super::feed::{BELOW, Place, Rise, Spread};
use crate::memo::{Key, Memo};
use crate::page::Evidence::Limit;
use crate::page::{Argument, Series};
use crate::sources::{COMMON_PRACTICE, HAZEN_CAMP, KUWABARA, MUGELE_EVANS, ROSIN_RAMMLER, SINGLE_FIBRE, SURFACE_LOADING, VETTER};
use crate::{choice, formula, group};
use arrayvec::ArrayVec;
use pulp::{Arch, Simd, WithSimd};
use stillrise_units::lanes::{self, Lanes, WIDTH};
use stillrise_units::math::{ceil, ln, max, min};
use stillrise_units::{Density, Length, Ratio, Temperature, Typed, Viscosity};

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

group! {
    /// The droplets of a feed: how the oil's volume spreads over size.
    Droplets "droplets" {
        law: DropletLaw = "law" "how the oil's volume spreads over size";
        d50: Length = "d_50" "median droplet of the oil's volume" [UM, UM: 5.0 .. 500.0 in 0.01 .. 10000.0];
        shape: Ratio = "s_g" "shape of the distribution" [ONE, ONE: 0.5 .. 4.0 in 0.2 .. 20.0];
        largest: Length = "d_max" "largest droplet" [UM, UM: 10.0 .. 1e9 in 0.01 .. 1e9];
        table: Series = "d|F" "measured: size, and share of the volume that is finer" {UM, UM; PERCENT, PERCENT};
    }
}

group! {
    /// Water and oil: how droplets rise.
    Liquids "liquids" {
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        t: Temperature = "T" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 100.0];
        law: RiseLaw = "law" "law of rise";
    }
}

formula! {
    /// Share of the free oil that is left after any number of stages in a row: tanks, plate packs, meshes.
    ///
    /// Each size meets the removal of one stage after the other (`tank-removal`, `plate-removal`,
    /// `mesh-removal`, `mesh-curve`); droplets neither grow nor break on the way. Where the law knows no
    /// largest droplet, all above `d_max` are taken to be broken down to it. Only droplets from one size up
    /// to another are counted, as a share of all free oil. Finer than the finest row of a measured table
    /// nothing is caught; coarser than its coarsest, droplets count as of that size. Droplet size governs
    /// the result and is rarely measured: print it over a range of medians, not alone. Emulsified and
    /// dissolved oil come on top. Oil as heavy as the water stays, all of it.
    "remaining-oil" "Oil left behind stages in a row"
    fn fraction(
        droplets: Droplets = "droplets" "the droplets that arrive";
        from: Length = "d_1" "counted from this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        to: Length = "d_2" "counted up to this size" [UM, UM: 0.0 .. 1e9 in 0.0 .. 1e9];
        liquids: Liquids = "liquids" "water and oil";
        stages: Catches = "stages" "what they pass, in the order of the flow";
    ) -> Ratio = "R" "share of the free oil that is left" [PERCENT, PERCENT];
    reduced [from M, to M => ONE] { integral(droplets, from, to, liquids, stages) }
    helpers [integral(Droplets, f64, f64, Liquids, Catches)
        "integral" "of the product of (1 - E) of all stages, dF, over the volume distribution F, each E at the size and its rise velocity"]
    sources [HAZEN_CAMP, VETTER, SURFACE_LOADING, ROSIN_RAMMLER, MUGELE_EVANS, SINGLE_FIBRE, KUWABARA, COMMON_PRACTICE]
    checks [
        "droplets=(law=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=drag), stages=[]" => "1.000000",
            Limit("no stage catches anything");
        "droplets=(law=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=drag), stages=[tank(v_0=1e12 mm/s, model=mixed, index=0); plates(v_0=1e12 mm/s, spread=20 %, regime=turbulent)]" => "1.000000",
            Limit("stages too small to catch anything");
        "droplets=(law=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=drag), stages=[tank(v_0=1e-9 mm/s, model=ideal, index=0)]" => "0.000000",
            Limit("a boundless tank");
        "droplets=(law=log-normal, d50=60 um, shape=1.001, largest=1e9 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[tank(v_0=0.588399 mm/s, model=ideal, index=0); plates(v_0=0.588399 mm/s, spread=0 %, regime=laminar)]" => "0.25000",
            Limit("equal droplets, each stage catches half");
        "droplets=(law=log-normal, d50=60 um, shape=1.001, largest=1e9 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[tank(v_0=0.588399 mm/s, model=ideal, index=0); plates(v_0=0.588399 mm/s, spread=0 %, regime=laminar); tank(v_0=0.588399 mm/s, model=ideal, index=0); plates(v_0=0.588399 mm/s, spread=0 %, regime=laminar)]" => "0.06250",
            Limit("four stages that catch half each");
        "droplets=(law=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[tank(v_0=0.1 mm/s, model=ideal, index=0); plates(v_0=0.1 mm/s, spread=0 %, regime=laminar)]" => "1.000000",
            Limit("oil as heavy as the water stays");
        "droplets=(law=log-normal, d50=60 um, shape=2, largest=1e9 um, table=[]), from=60 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[]" => "0.500000",
            Limit("half of the volume lies above the median");
        "droplets=(law=log-normal, d50=600 um, shape=1.5, largest=60 um, table=[]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[tank(v_0=0.588399 mm/s, model=ideal, index=0)]" => "0.50000",
            Limit("all broken to 60 um, which rise at half the overflow rate");
        "droplets=(law=measured, d50=60 um, shape=2, largest=1e9 um, table=[20 um: 0.25; 40 um: 0.75]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[tank(v_0=1e-9 mm/s, model=ideal, index=0)]" => "0.25000",
            Limit("finer than the finest row nothing is caught, all else is");
        "droplets=(law=measured, d50=30 um, shape=2, largest=1e9 um, table=[60 um: 0; 60.000001 um: 1]), from=0 um, to=1e9 um, liquids=(rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, t=20 °C, law=stokes), stages=[mesh-curve(curve=[10 um: 0; 100 um: 1])]" => "0.2218",
            Limit("one size, straight on the measured curve over the logarithm of size: 1 - log10(6)");
    ]
}

/// Logarithm of size over the median below which the low end of a distribution lies among sizes that hardly rise.
const FINE: f64 = -3.0;
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

thread_local! {
    static KEPT: Memo = const { Memo::new() };
}

/// The integral, kept: a search asks for the same ones again and again.
fn integral(droplets: Droplets, from: f64, to: f64, liquids: Liquids, stages: Catches) -> f64 {
    let mut key = Key::default();
    droplets.key(&mut key);
    key.push(from.to_bits());
    key.push(to.to_bits());
    liquids.key(&mut key);
    stages.key(&mut key);
    KEPT.with(|kept| kept.get(&key, || find(&droplets, (from, to), &liquids, &stages)))
}

fn find(droplets: &Droplets, (from, to): (f64, f64), liquids: &Liquids, stages: &Catches) -> f64 {
    let (d50, largest) = (droplets.d50.si(), droplets.largest.si());
    let feed = Spread::new(droplets.law, d50, droplets.shape.si(), largest, &droplets.table);
    let sizes = (ln(from / d50), ln(to / d50), ln(largest / d50));
    let Liquids { rho_w, rho_o, mu, t, law } = *liquids;
    if rho_o >= rho_w {
        // Nothing rises and nothing is caught: what is left is what is counted.
        let finer = |y: f64| if y >= sizes.2 { 1.0 } else { feed.finer(y) };
        return max(0.0, finer(sizes.1) - finer(sizes.0));
    }
    let stages = stages.ready(mu, t, droplets.d50);
    let rise = Rise::new(law, d50, rho_w.si(), rho_o.si(), mu.si());
    // The same operations in the widest form this machine has: the same bits, sooner.
    Arch::new().dispatch(Passing { feed: &feed, rise: &rise, stages: &stages, sizes })
}

/// [`through`], for the widest arithmetic of this machine.
struct Passing<'a> {
    feed: &'a Spread,
    rise: &'a Rise,
    stages: &'a Row<'a>,
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
fn through(feed: &Spread, rise: &Rise, stages: &Row<'_>, (from, to, largest): (f64, f64, f64)) -> f64 {
    let (low, high) = feed.ends();
    // What the law has above the largest droplet is of that size; what lies above the high end as of that end.
    let end = min(high, largest);
    let above = if largest < high { 1.0 - feed.finer(end) } else { feed.above() };
    // Beyond `top` one of the stages catches all; kinks part the panels, and so do jumps of the density.
    let mut caught: Option<Place> = None;
    let mut kinks: ArrayVec<Place, MOST> = ArrayVec::new();
    for bends in stages.bends() {
        let Some(all) = bends.all else { continue };
        let [place, other] = rise.at([all, bends.kink.unwrap_or(all)]);
        caught = Some(caught.filter(|c| c.y < place.y).unwrap_or(place));
        if bends.kink.is_some() {
            kinks.push(other);
        }
    }
    let top = caught.filter(|c| c.y < end).unwrap_or_else(|| rise.place(end));
    let mut left = 0.0;
    // Of what is finer than the low end a measured table says nothing, and nothing of it is caught. Of a law it is less than a
    // millionth: in a narrow one caught as the end is, in a wide one too small to be caught.
    if from < low && to >= low {
        left += match feed {
            Spread::Measured(_) => feed.finer(low),
            _ if low > FINE => BELOW * at(rise, stages, rise.tail(low)),
            _ => BELOW,
        };
    }
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
        for kink in &kinks {
            if kink.y > here.y && kink.y < next.y {
                next = *kink;
            }
        }
        left += panels(feed, rise, stages, here, next);
        here = next;
    }
    left
}

/// Share of one size that passes.
#[inline(always)]
fn at(rise: &Rise, stages: &Row<'_>, place: Place) -> f64 {
    let met = stages.pass(&rise.sizes(&[place.x; WIDTH]), [1.0; WIDTH]);
    met.factor[0] * lanes::exp(met.exponent)[0]
}

/// The integral of what passes from one place to another, panel by panel, eight nodes at once.
#[allow(clippy::needless_range_loop, reason = "one index runs through several lanes")]
#[inline(always)]
fn panels(feed: &Spread, rise: &Rise, stages: &Row<'_>, low: Place, high: Place) -> f64 {
    // A wide distribution passes from "all" to "nothing" within fewer of its bends.
    let count = ceil((high.y - low.y) / (PANEL * min(1.0, feed.bend())));
    let half = 0.5 * (high.x - low.x) / count;
    let mut sum = 0.0;
    let mut i = 0.0;
    while i < count {
        let middle = low.x + half * (2.0 * i + 1.0);
        let at = rise.sizes(&NODES.map(|node| middle + half * node));
        let mut factor = WEIGHTS;
        for k in 0..WIDTH {
            factor[k] *= at.dy[k];
        }
        let mut met = stages.pass(&at, factor);
        feed.weigh(&at.y, &mut met);
        let share = lanes::exp(met.exponent);
        let mut panel = 0.0;
        for k in 0..WIDTH {
            panel += met.factor[k] * share[k];
        }
        sum += half * panel;
        i += 1.0;
    }
    sum
}
