//! Reproducible arithmetic.
//!
//! `+ - * /` and `sqrt` are exact by IEEE 754; everything else is taken from `libm`, compiled
//! from the same source on every machine, because the standard library's versions differ from
//! machine to machine in the last bits. A test over the tree forbids the others elsewhere.

/// e^x.
#[must_use]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}
/// Natural logarithm.
#[must_use]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}
/// Decimal logarithm.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}
/// 10^x.
#[must_use]
pub fn exp10(x: f64) -> f64 {
    libm::exp10(x)
}
/// x^y.
#[must_use]
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}
/// Square root.
#[must_use]
pub fn sqrt(x: f64) -> f64 {
    x.sqrt()
}
/// Sine of an angle in radians.
#[must_use]
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}
/// Cosine of an angle in radians.
#[must_use]
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}
/// Tangent of an angle in radians.
#[must_use]
pub fn tan(x: f64) -> f64 {
    libm::tan(x)
}
/// Arc cosine, radians.
#[must_use]
pub fn acos(x: f64) -> f64 {
    libm::acos(x)
}
/// The smaller of two numbers.
#[must_use]
pub fn min(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}
/// The larger of two numbers.
#[must_use]
pub fn max(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}
/// Magnitude.
#[must_use]
pub fn abs(x: f64) -> f64 {
    x.abs()
}
/// Smallest whole number not below x.
#[must_use]
pub fn ceil(x: f64) -> f64 {
    x.ceil()
}
/// Largest whole number not above x.
#[must_use]
pub fn floor(x: f64) -> f64 {
    x.floor()
}

/// The standard normal deviate below which 95 % lie.
pub const Z_95: f64 = 1.644_853_626_951_472_2;

/// Cumulative standard normal distribution.
#[must_use]
pub fn normal_cdf(z: f64) -> f64 {
    0.5 * libm::erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// The z with `normal_cdf(z) = p`; infinite at 0 and 1, not a number outside.
///
/// Bisection down to neighbouring numbers: slow by the standards of a sampler, exact to the
/// last bits of `normal_cdf`, and free of fitted coefficients.
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    if !(0.0..=1.0).contains(&p) {
        return f64::NAN;
    }
    if p > 0.5 {
        return -normal_quantile(1.0 - p);
    }
    if p == 0.0 {
        return f64::NEG_INFINITY;
    }
    let kept = QUANTILES.get();
    if let Some((_, quantile)) = kept.iter().find(|(share, _)| *share == p) {
        return *quantile;
    }
    let found = lower_quantile(p);
    let [newest, second, third, _] = kept;
    QUANTILES.set([(p, found), newest, second, third]);
    found
}

thread_local! {
    /// Shares asked for last and their quantiles: a search asks for the same few percentiles thousands of times.
    static QUANTILES: core::cell::Cell<[(f64, f64); 4]> = const { core::cell::Cell::new([(f64::NAN, f64::NAN); 4]) };
}

/// The quantile of a share up to one half, to the last bit.
fn lower_quantile(p: f64) -> f64 {
    let (mut low, mut high) = (-40.0, 0.0);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if normal_cdf(middle) < p {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// Gamma function.
#[must_use]
pub fn gamma(a: f64) -> f64 {
    libm::tgamma(a)
}

/// The incomplete gamma function from 0 to `x` over the whole one: the share of a gamma
/// distribution of shape `a` and scale 1 that lies below `x`. Not a number unless `a > 0`, `x >= 0`.
///
/// The series below the bulk of the distribution, the continued fraction above it; both from
/// textbooks of special functions.
#[must_use]
pub fn gamma_share(a: f64, x: f64) -> f64 {
    if !(a > 0.0 && x >= 0.0) {
        return f64::NAN;
    }
    if x == 0.0 || x == f64::INFINITY {
        return if x == 0.0 { 0.0 } else { 1.0 };
    }
    let front = exp(a * ln(x) - x - libm::lgamma(a));
    if x < a + 1.0 {
        let (mut term, mut sum, mut at) = (1.0 / a, 1.0 / a, a);
        for _ in 0..STEPS {
            at += 1.0;
            term *= x / at;
            sum += term;
            if term < sum * 1e-17 {
                break;
            }
        }
        return min(1.0, front * sum);
    }
    // Lentz's way, from the front; the partial denominators stay well off zero here.
    let mut b = x + 1.0 - a;
    let mut upper = 1.0 / f64::MIN_POSITIVE;
    let mut lower = 1.0 / b;
    let mut fraction = lower;
    for k in 1..STEPS {
        let k = f64::from(k);
        let numerator = -k * (k - a);
        b += 2.0;
        lower = 1.0 / (numerator * lower + b);
        upper = b + numerator / upper;
        let change = upper * lower;
        fraction *= change;
        if abs(change - 1.0) < 1e-16 {
            break;
        }
    }
    max(0.0, 1.0 - front * fraction)
}

/// Terms after which a sum ends in any case; shapes of a million need some ten thousand.
const STEPS: u32 = 20_000;

/// `e^-x I_1(x)` for `x >= 0`: the modified Bessel function of the first kind and order one, scaled
/// so that it overflows nowhere. Not a number below zero.
#[must_use]
pub fn bessel_i1_scaled(x: f64) -> f64 {
    if x.is_nan() || x < 0.0 {
        return f64::NAN;
    }
    if x < 30.0 {
        let half = 0.5 * x;
        let (mut term, mut sum) = (half, half);
        for k in 1..100 {
            let k = f64::from(k);
            term *= half * half / (k * (k + 1.0));
            sum += term;
            if term < sum * 1e-17 {
                break;
            }
        }
        return exp(-x) * sum;
    }
    // The asymptotic series: its terms shrink until the sixtieth, far below the last digit.
    let (mut term, mut sum) = (1.0, 1.0);
    for k in 1..30 {
        let k = f64::from(k);
        let odd = 2.0 * k - 1.0;
        term *= (odd * odd - 4.0) / (8.0 * x * k);
        sum += term;
        if abs(term) < 1e-17 {
            break;
        }
    }
    sum / sqrt(2.0 * core::f64::consts::PI * x)
}

/// The root of `f` between `low` and `high`, to the last digits of the number.
///
/// Inverse quadratic interpolation where it is safe, bisection where it is not (T. R. Chandrupatla,
/// Advances in Engineering Software 28, 1997, from memory), so that a bracket is never lost.
/// `None` when `f` does not change sign there, or is not a number on the way.
pub fn root(low: f64, high: f64, f: impl Fn(f64) -> f64) -> Option<f64> {
    // The root stays between a, the latest point, and b; c is the one before.
    let (mut a, mut at_a) = (high, f(high));
    let (mut b, mut at_b) = (low, f(low));
    if at_b == 0.0 {
        return Some(b);
    }
    if at_a == 0.0 {
        return Some(a);
    }
    if at_a.is_nan() || at_b.is_nan() || (at_a < 0.0) == (at_b < 0.0) {
        return None;
    }
    let mut share = 0.5;
    let mut best = a;
    for _ in 0..2100 {
        let x = a + share * (b - a);
        let at_x = f(x);
        if at_x.is_nan() {
            return None;
        }
        let (c, at_c) = if (at_x < 0.0) == (at_a < 0.0) {
            (a, at_a)
        } else {
            let old = (b, at_b);
            (b, at_b) = (a, at_a);
            old
        };
        (a, at_a) = (x, at_x);
        best = if abs(at_a) < abs(at_b) { a } else { b };
        let least = f64::EPSILON * abs(best) / abs(b - a);
        // Nothing lies between neighbours; their distance may be no number at all.
        if at_a == 0.0 || a == b || least > 0.5 {
            break;
        }
        let place = (a - b) / (c - b);
        let rise = (at_a - at_b) / (at_c - at_b);
        share = if rise * rise < place && (1.0 - rise) * (1.0 - rise) < 1.0 - place {
            at_a / (at_b - at_a) * (at_c / (at_b - at_c))
                + (c - a) / (b - a) * (at_a / (at_c - at_a)) * (at_b / (at_c - at_b))
        } else {
            0.5
        };
        share = max(least, min(1.0 - least, share));
    }
    Some(best)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test values printed with algorithm AS 241 (Wichura, Applied Statistics 37, 1988), memory;
    /// the first two agree with any table of the normal distribution.
    #[test]
    fn quantiles_of_the_normal_distribution() {
        for (p, z) in
            [(0.25, -0.674_489_750_196_081_7), (0.001, -3.090_232_306_167_814), (1e-20, -9.262_340_089_798_408)]
        {
            assert!((normal_quantile(p) - z).abs() < 2e-14 * z.abs(), "{p}");
        }
        assert!(normal_quantile(0.5).abs() < 1e-15);
        assert!(normal_quantile(1.5).is_nan());
    }

    /// scipy 1.17.1, special.gammainc.
    #[test]
    fn shares_of_the_gamma_distribution() {
        for (a, x, share) in [
            (1.0, 1.0, 0.632_120_558_828_557_7),
            (0.5, 0.1, 0.345_279_153_981_423_17),
            (0.1, 1e-5, 0.332_398_405_040_503_2),
            (1.8, 0.3, 0.056_474_802_125_704_02),
            (2.3, 2.3, 0.587_685_616_082_922_6),
            (3.0, 10.0, 0.997_230_604_284_488_4),
            (7.5, 8.6, 0.692_950_314_309_426_6),
            (10.0, 25.0, 0.999_778_523_361_751_2),
            (50.0, 41.2, 0.100_592_758_210_606_8),
            (1000.0, 900.0, 0.000_549_902_265_711_781_8),
            (1000.0, 1040.0, 0.895_973_088_456_892_9),
        ] {
            assert!((gamma_share(a, x) - share).abs() < 2e-12 * share, "{a} {x}: {}", gamma_share(a, x));
        }
        assert_eq!((gamma_share(2.0, 0.0), gamma_share(2.0, f64::INFINITY)), (0.0, 1.0));
        assert!(gamma_share(0.0, 1.0).is_nan() && gamma_share(1.0, -1.0).is_nan());
        assert!((gamma(5.0) - 24.0).abs() < 1e-13);
    }

    /// scipy 1.17.1, special.i1e; on both sides of where the series changes.
    #[test]
    fn bessel_functions_of_order_one() {
        for (x, scaled) in [
            (1e-6, 4.999_995_000_003_124e-7),
            (0.1, 0.045_298_446_808_809_324),
            (1.0, 0.207_910_415_349_708_5),
            (5.0, 0.163_972_266_944_542_34),
            (20.0, 0.087_506_222_183_288_67),
            (29.9, 0.072_033_374_911_868_8),
            (30.0, 0.071_916_330_598_647_55),
            (30.5, 0.071_339_539_285_261_99),
            (100.0, 0.039_744_153_025_130_1),
            (1e4, 0.003_989_273_195_983_662),
        ] {
            assert!((bessel_i1_scaled(x) - scaled).abs() < 1e-14 * scaled, "{x}: {}", bessel_i1_scaled(x));
        }
        assert!(bessel_i1_scaled(0.0) == 0.0 && bessel_i1_scaled(-1.0).is_nan());
    }

    #[test]
    fn a_root_needs_a_change_of_sign() {
        let r = root(0.0, 2.0, |x| x * x - 2.0).unwrap_or(0.0);
        assert!((r - core::f64::consts::SQRT_2).abs() < 1e-15);
        assert_eq!(root(2.0, 3.0, |x| x * x - 2.0), None);
        assert_eq!(root(-1.0, 1.0, |x| if x < 0.0 { -1.0 } else { f64::NAN }), None);
    }

    /// Steps, poles, flat roots and boundless ends, where interpolation leads astray.
    #[test]
    fn awkward_roots_are_found() {
        let near =
            |found: Option<f64>, x: f64, off: f64| assert!(found.is_some_and(|r| (r - x).abs() <= off), "{found:?}");
        near(root(0.0, 3.0, |x| if x < 1.0 { -1.0 } else { 1.0 }), 1.0, 1e-15);
        near(root(0.0, 3.0, |x| pow(x - 1.0, 9.0)), 1.0, 1e-1);
        near(root(0.0, 1e9, |x| x * x * x - 1e-6), 1e-2, 1e-16);
        near(root(0.0, 4.0, |x| if x == 0.0 { f64::NEG_INFINITY } else { ln(x) }), 1.0, 1e-15);
    }
}
