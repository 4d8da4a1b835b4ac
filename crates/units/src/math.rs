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

/// Regularised lower incomplete gamma function P(a, x), for a above 0 and x not below 0.
///
/// The series for small x, Lentz' continued fraction for large (Abramowitz and Stegun, 6.5.29 and 6.5.31).
#[must_use]
pub fn gamma_p(a: f64, x: f64) -> f64 {
    if !(a > 0.0 && x >= 0.0) {
        return f64::NAN;
    }
    if x == 0.0 {
        return 0.0;
    }
    let front = exp(a * ln(x) - x - libm::lgamma(a));
    if x < a + 1.0 {
        let (mut term, mut sum) = (1.0 / a, 1.0 / a);
        for k in 1..10_000 {
            term *= x / (a + f64::from(k));
            sum += term;
            if term < sum * f64::EPSILON {
                break;
            }
        }
        return min(1.0, front * sum);
    }
    let least = 1e-300;
    let mut b = x + 1.0 - a;
    let mut c = 1.0 / least;
    let mut d = 1.0 / b;
    let mut fraction = d;
    for k in 1..10_000 {
        let k = f64::from(k);
        let step = -k * (k - a);
        b += 2.0;
        d = 1.0 / (step * d + b);
        c = b + step / c;
        fraction *= c * d;
        if abs(c * d - 1.0) < f64::EPSILON {
            break;
        }
    }
    max(0.0, 1.0 - front * fraction)
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

    const GAMMA: [(f64, f64, f64); 9] = [
        (0.5, 0.1, 0.34527915398142317),
        (1.0, 1.0, 0.6321205588285577),
        (1.7692307692307692, 0.8, 0.25238337278583284),
        (2.0, 3.0, 0.8008517265285442),
        (3.0, 1.0, 0.08030139707139418),
        (5.0, 8.0, 0.9003675995129541),
        (10.0, 10.0, 0.5420702855281478),
        (50.0, 40.0, 0.07033506665939494),
        (50.0, 70.0, 0.994859497541494),
    ];

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
    fn incomplete_gamma() {
        for (a, x, p) in GAMMA {
            assert!((gamma_p(a, x) - p).abs() < 1e-13, "{a} {x} {}", gamma_p(a, x));
        }
        assert!(gamma_p(-1.0, 1.0).is_nan());
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
