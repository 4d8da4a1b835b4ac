//! The droplets of a feed: how their volume spreads over size, and how each size rises.
//!
//! Sizes are counted by `y`, the logarithm of size over the median. Integrals over the feed run over a
//! variable that gives size and velocity without solving for either.

use super::catch::Met;
use super::drag_rise::{DRAG, FLOOR, POWER, slowing};
use super::remaining_oil::{DropletLaw, RiseLaw};
use super::stokes_rise;
use crate::page::Series;
use stillrise_units::lanes::{self, Lanes, WIDTH};
use stillrise_units::math::{abs, exp, ln, max, min, normal_cdf};

/// Standard normal deviates, or as rare, between which a distribution is integrated.
const TAIL: f64 = 5.0;
/// What lies below them: the standard normal distribution function of -5.
pub(super) const BELOW: f64 = 2.866_515_718_791_939e-7;
/// No droplet is taken to be faster (m/s): keeps the far tail within the pages' domains.
const FASTEST: f64 = 1e5;
const INVERSE_SQRT_2_PI: f64 = 0.398_942_280_401_432_7;
const INVERSE_SQRT_PI: f64 = 0.564_189_583_547_756_3;
const SQRT_2: f64 = core::f64::consts::SQRT_2;
const THIRD: f64 = 1.0 / 3.0;
const LN_2: f64 = core::f64::consts::LN_2;

/// How the volume spreads over size.
pub(super) enum Spread {
    /// Log-normal: the logarithm of the geometric standard deviation, and one over it.
    LogNormal(f64, f64),
    /// Rosin-Rammler: its exponent.
    RosinRammler(f64),
    /// Upper limit: its shape, and largest over median size.
    UpperLimit(f64, f64),
    /// A table: `y` and the share of the volume that is finer, rising.
    Measured(Vec<(f64, f64)>),
}

impl Spread {
    /// From the arguments of the page.
    pub(super) fn new(law: DropletLaw, d50: f64, shape: f64, largest: f64, table: &Series) -> Self {
        match law {
            DropletLaw::LogNormal => {
                let s = ln(shape);
                Spread::LogNormal(s, 1.0 / s)
            }
            DropletLaw::RosinRammler => Spread::RosinRammler(shape),
            DropletLaw::UpperLimit => Spread::UpperLimit(shape, max(largest / d50, 1.0 + 1e-9)),
            DropletLaw::Measured => Spread::Measured(table.0.iter().map(|(d, f)| (ln(d / d50), *f)).collect()),
        }
    }

    /// The `y` between which all but a ten-millionth of the volume lies.
    pub(super) fn ends(&self) -> (f64, f64) {
        match self {
            Spread::LogNormal(s, _) => (-TAIL * s, TAIL * s),
            // ln 2 (d/d50)^n = -ln(share that is coarser).
            Spread::RosinRammler(n) => ((ln(BELOW) - ln(LN_2)) / n, (ln(-ln(BELOW)) - ln(LN_2)) / n),
            Spread::UpperLimit(shape, ratio) => {
                let end = |u: f64| ln(ratio * exp(u) / (ratio - 1.0 + exp(u)));
                (end(-TAIL / (SQRT_2 * shape)), end(TAIL / (SQRT_2 * shape)))
            }
            Spread::Measured(rows) => (rows.first().map_or(0.0, |(y, _)| *y), rows.last().map_or(0.0, |(y, _)| *y)),
        }
    }

    /// Share of the volume above the high end.
    pub(super) fn above(&self) -> f64 {
        match self {
            Spread::Measured(rows) => rows.last().map_or(0.0, |(_, finer)| 1.0 - finer),
            _ => BELOW,
        }
    }

    /// Where the density jumps.
    pub(super) fn breaks(&self) -> &[(f64, f64)] {
        match self {
            Spread::Measured(rows) => rows,
            _ => &[],
        }
    }

    /// The step in `y` over which the density bends.
    pub(super) fn bend(&self) -> f64 {
        match self {
            Spread::LogNormal(s, _) => *s,
            Spread::RosinRammler(n) => 1.0 / n,
            Spread::UpperLimit(shape, _) => 0.5 / shape,
            Spread::Measured(_) => 1.0,
        }
    }

    /// Share of the volume in droplets finer than `y`.
    pub(super) fn finer(&self, y: f64) -> f64 {
        match self {
            Spread::LogNormal(s, _) => normal_cdf(y / s),
            Spread::RosinRammler(n) => 1.0 - exp(-LN_2 * exp(n * y)),
            Spread::UpperLimit(shape, ratio) => {
                let size = exp(y) / ratio;
                if size < 1.0 { normal_cdf(SQRT_2 * shape * ln((ratio - 1.0) * size / (1.0 - size))) } else { 1.0 }
            }
            Spread::Measured(rows) => {
                let mut below = (f64::NEG_INFINITY, 0.0);
                for row in rows {
                    if y < row.0 {
                        return if below.0.is_finite() {
                            below.1 + (row.1 - below.1) * (y - below.0) / (row.0 - below.0)
                        } else {
                            row.1
                        };
                    }
                    below = *row;
                }
                1.0
            }
        }
    }

    /// Slope of [`Self::finer`].
    pub(super) fn density(&self, y: f64) -> f64 {
        match self {
            Spread::LogNormal(s, _) => INVERSE_SQRT_2_PI * exp(-0.5 * (y / s) * (y / s)) / s,
            Spread::RosinRammler(n) => {
                let x = LN_2 * exp(n * y);
                n * x * exp(-x)
            }
            Spread::UpperLimit(shape, ratio) => {
                let size = exp(y) / ratio;
                if size >= 1.0 {
                    return 0.0;
                }
                let u = shape * ln((ratio - 1.0) * size / (1.0 - size));
                shape * INVERSE_SQRT_PI * exp(-u * u) / (1.0 - size)
            }
            Spread::Measured(rows) => {
                let step = rows.windows(2).find(|pair| y < pair[1].0);
                step.map_or(0.0, |p| if y < p[0].0 { 0.0 } else { (p[1].1 - p[0].1) / (p[1].0 - p[0].0) })
            }
        }
    }
}

impl Spread {
    /// Weighs eight sizes by the density there.
    #[allow(clippy::needless_range_loop, reason = "one index runs through several lanes")]
    #[inline(always)]
    pub(super) fn weigh(&self, y: &Lanes, met: &mut Met) {
        if let Spread::LogNormal(_, per) = self {
            let scale = INVERSE_SQRT_2_PI * per;
            for k in 0..WIDTH {
                let z = y[k] * per;
                met.factor[k] *= scale;
                met.exponent[k] -= 0.5 * z * z;
            }
        } else {
            for k in 0..WIDTH {
                met.factor[k] *= self.density(y[k]);
            }
        }
    }
}

/// How the droplets rise.
pub(super) struct Rise {
    law: RiseLaw,
    d50: f64,
    /// Stokes velocity at the median, and the logarithm of the Reynolds number it would give.
    v_50: f64,
    ln_re_50: f64,
}

/// Eight sizes at once.
pub(super) struct Sizes {
    pub(super) y: Lanes,
    /// Cube root of size over the median.
    pub(super) root: Lanes,
    pub(super) d: Lanes,
    pub(super) v: Lanes,
    pub(super) dy: Lanes,
}

/// A place on the way of integration: the size and the variable there.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub(super) y: f64,
    pub(super) x: f64,
}

/// The logarithm of a Reynolds number up to which the drag coefficient is far from its floor.
const CREEPING: f64 = 6.0;
/// A step of Newton over the logarithm of size behind which the next is some 1e-5.
const NEAR: f64 = 2e-2;

impl Rise {
    pub(super) fn new(law: RiseLaw, d50: f64, rho_w: f64, rho_o: f64, mu: f64) -> Self {
        let v_50 = stokes_rise::plain(d50, rho_w, rho_o, mu);
        let re_50 = rho_w * v_50 * d50 / mu;
        Self { law, d50, v_50, ln_re_50: ln(re_50) }
    }

    /// The variable of integration at a size. With drag it is the logarithm of the droplet's own
    /// Reynolds number: from that, size and velocity follow without solving for either.
    pub(super) fn variable(&self, y: f64) -> f64 {
        match self.law {
            RiseLaw::Stokes => y,
            RiseLaw::Drag => {
                let ln_stokes = self.ln_re_50 + 3.0 * y;
                ln_stokes + ln(slowing(exp(ln_stokes)))
            }
        }
    }

    /// Eight sizes at eight values of the variable.
    #[inline(always)]
    pub(super) fn sizes(&self, x: &Lanes) -> Sizes {
        let (mut y, mut drag, mut dy) = (*x, [1.0; WIDTH], [1.0; WIDTH]);
        if self.law == RiseLaw::Drag {
            let bend = lanes::exp(x.map(|x| POWER * x));
            for k in 0..WIDTH {
                let c = DRAG * bend[k];
                drag[k] = 1.0 + c;
                dy[k] = THIRD + THIRD * POWER * c / (1.0 + c);
            }
            if x.iter().any(|x| *x > CREEPING) {
                let re = lanes::exp(*x);
                for k in 0..WIDTH {
                    let floor = FLOOR / 24.0 * re[k];
                    let held = floor > drag[k];
                    drag[k] = if held { floor } else { drag[k] };
                    dy[k] = if held { 2.0 / 3.0 } else { dy[k] };
                }
            }
            let ln_drag = lanes::ln(drag);
            for k in 0..WIDTH {
                y[k] = (x[k] + ln_drag[k] - self.ln_re_50) * THIRD;
            }
        }
        // The cube root serves diffusion too.
        let root = lanes::exp(y.map(|y| THIRD * y));
        let (mut d, mut v) = ([0.0; WIDTH], [0.0; WIDTH]);
        for k in 0..WIDTH {
            let size = root[k] * root[k] * root[k];
            d[k] = self.d50 * size;
            v[k] = min(FASTEST, self.v_50 * size * size / drag[k]);
        }
        Sizes { y, root, d, v, dy }
    }

    /// The place of a size in the far fine tail, which need not be met exactly: what it moves, nobody sees.
    #[inline(always)]
    pub(super) fn tail(&self, y: f64) -> Place {
        let x = match self.law {
            RiseLaw::Stokes => y,
            RiseLaw::Drag => {
                let ln_stokes = self.ln_re_50 + 3.0 * y;
                let [bend] = lanes::exp([POWER * ln_stokes]);
                let slow = DRAG * bend;
                let [ln_slowing] = lanes::ln([1.0 + slow / (1.0 + POWER * slow)]);
                ln_stokes - ln_slowing
            }
        };
        Place { y, x }
    }

    /// The place of a size.
    pub(super) fn place(&self, y: f64) -> Place {
        Place { y, x: self.variable(y) }
    }

    /// The places whose velocities are `v`, two at once: where a removal curve has its kinks.
    #[inline(always)]
    pub(super) fn at(&self, v: [f64; 2]) -> [Place; 2] {
        let over = lanes::ln(v.map(|v| v / self.v_50));
        let stokes = over.map(|over| 0.5 * over);
        let mut y = stokes;
        if self.law == RiseLaw::Stokes {
            return y.map(|y| Place { y, x: y });
        }
        // The droplet's own Reynolds number goes with v d, and d = d_Stokes sqrt(drag over Stokes), by Newton over the
        // logarithm of size. A kink that is found to 1e-5 costs the integral less than 1e-9.
        for _ in 0..30 {
            let ln_re = [0, 1].map(|k| self.ln_re_50 + over[k] + y[k]);
            let bend = lanes::exp(ln_re.map(|x| POWER * x));
            let (mut drag, mut slope) = ([0.0; 2], [0.0; 2]);
            for k in 0..2 {
                let c = DRAG * bend[k];
                drag[k] = 1.0 + c;
                slope[k] = POWER * c / drag[k];
            }
            if ln_re.iter().any(|x| *x > CREEPING) {
                let re = lanes::exp(ln_re);
                for k in 0..2 {
                    let floor = FLOOR / 24.0 * re[k];
                    if floor > drag[k] {
                        (drag[k], slope[k]) = (floor, 1.0);
                    }
                }
            }
            let ln_drag = lanes::ln(drag);
            let step = [0, 1].map(|k| (stokes[k] + 0.5 * ln_drag[k] - y[k]) / (1.0 - 0.5 * slope[k]));
            for k in 0..2 {
                y[k] += step[k];
            }
            // Newton doubles the digits.
            if step.iter().all(|step| abs(*step) < NEAR) {
                break;
            }
        }
        [0, 1].map(|k| Place { y: y[k], x: self.ln_re_50 + over[k] + y[k] })
    }
}
