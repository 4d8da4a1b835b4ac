//! Formula: oil left behind a tank and a plate pack in series
//!
//! Longer than a page, because the integral over the droplets stands here too.

use super::drag_rise::{drag_and_slope, slowing};
use super::plate_removal::{self, GapRegime};
use super::tank_removal::{self, TankModel};
use crate::memo::Memo;
use crate::page::Evidence::Limit;
use crate::page::Outside;
use crate::sources::{COMMON_PRACTICE, HAZEN_CAMP, SURFACE_LOADING, VETTER};
use crate::{choice, formula};
use stillrise_units::math::{abs, ceil, exp, ln, max, min, sqrt};
use stillrise_units::{Density, G, Length, Ratio, Typed, Velocity, Viscosity, ratio};

choice! {
    /// By which law droplets rise.
    RiseLaw {
        /// Stokes' law: what hand calculations and the API chain use
        Stokes "stokes",
        /// drag of a sphere at any Reynolds number: slower for coarse droplets
        Drag "drag",
    }
}

formula! {
    /// Share of the free oil that is left after a tank and then a plate pack.
    ///
    /// The oil's volume is log-normal over diameter; each size meets the tank's and the pack's
    /// removal in turn (`tank-removal`, `plate-removal`), and droplets neither grow nor break on the
    /// way. A stage that is absent has a boundless overflow rate (1e12 mm/s). Droplet size governs
    /// the result and is rarely measured: print it over a range of medians, not alone. Emulsified
    /// and dissolved oil come on top. Oil as heavy as the water stays, all of it.
    "remaining-oil" "Oil left behind a tank and a plate pack"
    fn fraction(
        d50: Length = "d_50" "median droplet of the oil's volume" [UM, UM: 5.0 .. 500.0 in 0.01 .. 10000.0];
        sg: Ratio = "s_g" "geometric spread" [ONE, ONE: 1.2 .. 4.0 in 1.001 .. 20.0];
        rho_w: Density = "rho_w" "density of the water" [KG_M3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [KG_M3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        law: RiseLaw = "law" "law of rise";
        v_tank: Velocity = "v_tank" "overflow rate of the tank" [GPM_FT2, MM_S: 0.001 .. 1e12 in 1e-9 .. 1e12];
        tank: TankModel = "tank" "how the water moves in the tank";
        v_pack: Velocity = "v_pack" "flow over projected plate area" [GPM_FT2, MM_S: 0.001 .. 1e12 in 1e-9 .. 1e12];
        spread: Ratio = "s" "how unequal the flow in the gaps is" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 95.0];
        regime: GapRegime = "regime" "flow in the gaps";
    ) -> Ratio = "R" "share of the free oil that is left" [PERCENT, PERCENT];
    reduced [d50 M, sg ONE, rho_w KG_M3, rho_o KG_M3, mu PA_S, v_tank M_S, v_pack M_S, spread ONE => ONE] {
        if rho_o < rho_w {
            integral(d50, sg, rho_w, rho_o, mu, law, v_tank, tank, v_pack, spread, regime)
        } else { 1.0 }
    }
    helpers [integral(f64, f64, f64, f64, f64, RiseLaw, f64, TankModel, f64, f64, GapRegime)
        "integral" "of (1 - E_tank)(1 - E_pack) dF over the log-normal volume distribution F, each E at the rise velocity of the size"]
    sources [HAZEN_CAMP, VETTER, SURFACE_LOADING, COMMON_PRACTICE]
    checks [
        "d50=60 um, sg=2, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=drag, v_tank=1e12 mm/s, tank=mixed, v_pack=1e12 mm/s, spread=20 %, regime=turbulent" => "1.000000",
            Limit("two stages that are not there");
        "d50=60 um, sg=2, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=drag, v_tank=1e-9 mm/s, tank=ideal, v_pack=1e12 mm/s, spread=0 %, regime=laminar" => "0.000000",
            Limit("a boundless tank");
        "d50=60 um, sg=1.001, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP, law=stokes, v_tank=0.588399 mm/s, tank=ideal, v_pack=0.588399 mm/s, spread=0 %, regime=laminar" => "0.25000",
            Limit("equal droplets, each stage catches half");
        "d50=60 um, sg=2, rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 cP, law=stokes, v_tank=0.1 mm/s, tank=ideal, v_pack=0.1 mm/s, spread=0 %, regime=laminar" => "1",
            Limit("oil as heavy as the water stays");
    ]
}

/// Standard normal deviates between which the distribution is integrated.
const TAIL: f64 = 5.0;
/// What lies below them (the standard normal distribution function of -5): droplets so small that one
/// removal, that of the largest of them, serves for all. What lies above them is caught.
const BELOW: f64 = 2.866_515_718_791_939e-7;
/// Width of a panel; the integrand is smooth between its kinks.
const PANEL: f64 = 2.0;
/// A panel that can hold no more than this is left out with all above it.
const NOTHING: f64 = 1e-10;
/// Nodes and weights of Gauss-Legendre, eight points, one half (Abramowitz and Stegun, 25.4).
const NODES: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_48),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
];
/// No droplet is taken to be faster (m/s): keeps the far tail within the pages' domains.
const FASTEST: f64 = 1e5;
const INVERSE_SQRT_2_PI: f64 = 0.398_942_280_401_432_7;

/// The feed: sizes by their deviate z = ln(d/d50) / s, and how they rise.
struct Feed {
    s: f64,
    law: RiseLaw,
    /// Stokes velocity and the Reynolds number it would give, at the median.
    v_50: f64,
    re_50: f64,
}

/// One size: its deviate, its velocity, and the step in z of a step in the variable of integration.
struct Size {
    z: f64,
    v: f64,
    dz: f64,
}

impl Feed {
    /// The variable of integration at a deviate. With drag it is the logarithm of the droplet's own
    /// Reynolds number: from that, size and velocity follow without solving for either.
    fn variable(&self, z: f64) -> f64 {
        match self.law {
            RiseLaw::Stokes => z,
            RiseLaw::Drag => {
                let ln_stokes = ln(self.re_50) + 3.0 * self.s * z;
                ln_stokes + ln(slowing(exp(ln_stokes)))
            }
        }
    }

    fn size(&self, x: f64) -> Size {
        match self.law {
            RiseLaw::Stokes => Size { z: x, v: min(FASTEST, self.v_50 * exp(2.0 * self.s * x)), dz: 1.0 },
            RiseLaw::Drag => {
                let (drag, slope) = drag_and_slope(exp(x), x);
                let ln_size = (x + ln(drag) - ln(self.re_50)) / 3.0;
                Size {
                    z: ln_size / self.s,
                    v: min(FASTEST, self.v_50 * exp(2.0 * ln_size) / drag),
                    dz: (1.0 + slope) / (3.0 * self.s),
                }
            }
        }
    }

    /// The deviate whose velocity is `v`: where a removal curve has its kink.
    fn deviate(&self, v: f64) -> f64 {
        let stokes = sqrt(v / self.v_50);
        let mut size = stokes;
        if self.law == RiseLaw::Drag {
            // d = d_Stokes sqrt(drag over Stokes at v d), by Newton. A kink that is found to 1e-5 costs
            // the integral less than 1e-9.
            for _ in 0..30 {
                let re = self.re_50 * v / self.v_50 * size;
                let (drag, slope) = drag_and_slope(re, ln(re));
                let next = stokes * sqrt(drag);
                let step = (next - size) / (1.0 - 0.5 * slope * next / size);
                size += step;
                if abs(step) < 1e-7 * size {
                    break;
                }
            }
        }
        ln(size) / self.s
    }
}

thread_local! {
    static KEPT: Memo<11> = const { Memo::new() };
}

/// The integral, kept: half of a search's time went into finding the same ones again.
#[allow(clippy::too_many_arguments)]
fn integral(
    d50: f64,
    sg: f64,
    rho_w: f64,
    rho_o: f64,
    mu: f64,
    law: RiseLaw,
    v_tank: f64,
    tank: TankModel,
    v_pack: f64,
    spread: f64,
    regime: GapRegime,
) -> f64 {
    let [d, s, w, o, m, t, p, g] = [d50, sg, rho_w, rho_o, mu, v_tank, v_pack, spread].map(f64::to_bits);
    let arguments = [d, s, w, o, m, law as u64, t, tank as u64, p, g, regime as u64];
    let find = || {
        let v_50 = G.value * (rho_w - rho_o) * d50 * d50 / (18.0 * mu);
        let feed = Feed { s: ln(sg), law, v_50, re_50: rho_w * v_50 * d50 / mu };
        // Beyond `top` one of the stages catches all; the other kinks part the panels.
        let mut top = TAIL;
        let mut kink = TAIL;
        if tank == TankModel::Ideal {
            top = min(top, feed.deviate(v_tank));
        }
        if regime == GapRegime::Laminar {
            top = min(top, feed.deviate(v_pack * (1.0 + spread)));
            kink = feed.deviate(v_pack * (1.0 - spread));
        }
        let kink = max(-TAIL, min(kink, top));
        let left = |v: f64| {
            let v = Velocity::from_si(v);
            let kept = |caught: Result<Ratio, Outside>| caught.map_or(f64::NAN, |e| 1.0 - e.value);
            let tank = kept(tank_removal::removal(v, Velocity::from_si(v_tank), tank));
            tank * kept(plate_removal::removal(v, Velocity::from_si(v_pack), ratio(spread), regime))
        };
        let smallest = feed.size(feed.variable(-TAIL)).v;
        BELOW * left(smallest) + panels(&feed, -TAIL, kink, &left) + panels(&feed, kink, top, &left)
    };
    KEPT.with(|kept| kept.get(arguments, find))
}

/// The integral of `left` times the normal density from one deviate to another, panel by panel.
fn panels(feed: &Feed, low: f64, high: f64, left: &impl Fn(f64) -> f64) -> f64 {
    if high <= low {
        return 0.0;
    }
    // A wide distribution passes from "all" to "nothing" within fewer deviates.
    let count = ceil((high - low) * max(1.0, feed.s) / PANEL);
    let width = (high - low) / count;
    let mut sum = 0.0;
    let mut start = feed.variable(low);
    let mut i = 1.0;
    while i <= count {
        // Less is left of larger droplets, so the first of a panel bounds it.
        if NOTHING >= left(feed.size(start).v) {
            break;
        }
        let end = feed.variable(low + i * width);
        let (middle, half) = (0.5 * (start + end), 0.5 * (end - start));
        for (node, weight) in NODES {
            for x in [middle - node * half, middle + node * half] {
                let Size { z, v, dz } = feed.size(x);
                sum += weight * half * dz * left(v) * INVERSE_SQRT_2_PI * exp(-0.5 * z * z);
            }
        }
        start = end;
        i += 1.0;
    }
    sum
}
