//! Exponential and logarithm of eight numbers at once, for integrals that studies ask for millions of times.
//!
//! No branch, no table, no library call: the compiler turns each loop into the machine's wide arithmetic, and
//! every machine gives the same bits, because only `+ - * /` and moves of bits are used. Within two units of the
//! last place of [`crate::math`] over the ranges stated; elsewhere the scalar functions are the better ones.

use core::f64::consts::LOG2_E;

/// How many numbers go side by side.
pub const WIDTH: usize = 8;

/// Numbers side by side.
pub type Lanes = [f64; WIDTH];

/// ln 2 in two parts: the first has so many zeros at its end that a whole multiple of it is exact.
const LN2_HIGH: f64 = 6.931_471_803_691_238e-1;
const LN2_LOW: f64 = 1.908_214_929_270_587_7e-10;
/// 1.5 x 2^52: a number added to it is rounded to a whole one, which then stands in the lowest bits.
const WHOLE: f64 = 6_755_399_441_055_744.0;
/// Beyond these the result leaves the range of a normal double.
const LEAST: f64 = -708.0;
const MOST: f64 = 709.0;

/// e^x between -708 and 709; held at the ends beyond them.
#[must_use]
#[inline(always)]
pub fn exp(x: Lanes) -> Lanes {
    let mut out = [0.0; WIDTH];
    for (out, x) in out.iter_mut().zip(x) {
        let x = if x < LEAST { LEAST } else { x };
        let x = if x > MOST { MOST } else { x };
        // x = n ln 2 + r with r within half of ln 2.
        let shifted = x * LOG2_E + WHOLE;
        let n = shifted - WHOLE;
        let r = (x - n * LN2_HIGH) - n * LN2_LOW;
        // Taylor's series to the 13th power: what is left out is below 5e-18.
        let (r2, r4) = (r * r, r * r * r * r);
        let r8 = r4 * r4;
        let a = (1.0 + r) + r2 * (0.5 + r * (1.0 / 6.0));
        let b = (1.0 / 24.0 + r * (1.0 / 120.0)) + r2 * (1.0 / 720.0 + r * (1.0 / 5040.0));
        let c = (1.0 / 40_320.0 + r * (1.0 / 362_880.0)) + r2 * (1.0 / 3_628_800.0 + r * (1.0 / 39_916_800.0));
        let d = 1.0 / 479_001_600.0 + r * (1.0 / 6_227_020_800.0);
        let series = (a + r4 * b) + r8 * (c + r4 * d);
        // 2^n: its exponent is n + 1023.
        let power = f64::from_bits(shifted.to_bits().wrapping_add(1023) << 52);
        *out = series * power;
    }
    out
}

/// Natural logarithm of normal positive numbers.
#[must_use]
#[inline(always)]
pub fn ln(x: Lanes) -> Lanes {
    // The bits of the root of one half: mantissas are taken from there to the root of two.
    const HALF_ROOT: u64 = 0x3fe6_a09e_667f_3bcd;
    const ONE: u64 = 0x3ff0_0000_0000_0000;
    // 2^52 with a whole number in its lowest bits is 2^52 and that number.
    const TWO_52: u64 = 0x4330_0000_0000_0000;
    let mut out = [0.0; WIDTH];
    for (out, x) in out.iter_mut().zip(x) {
        let lifted = x.to_bits().wrapping_add(ONE - HALF_ROOT);
        let field = lifted >> 52;
        let exponent = f64::from_bits(TWO_52 | field) - (4_503_599_627_370_496.0 + 1023.0);
        let mantissa = f64::from_bits((lifted & 0x000f_ffff_ffff_ffff).wrapping_add(HALF_ROOT));
        let f = (mantissa - 1.0) / (mantissa + 1.0);
        let s = f * f;
        let s2 = s * s;
        let s4 = s2 * s2;
        // 2 artanh f to the 19th power: what is left out is below 3e-17.
        let a = (1.0 / 3.0 + s * (1.0 / 5.0)) + s2 * (1.0 / 7.0 + s * (1.0 / 9.0));
        let b = (1.0 / 11.0 + s * (1.0 / 13.0)) + s2 * (1.0 / 15.0 + s * (1.0 / 17.0));
        let series = a + s4 * (b + s4 * (1.0 / 19.0));
        *out = exponent * LN2_HIGH + (2.0 * f + (2.0 * f * s * series + exponent * LN2_LOW));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::math;

    /// A walk over the range that meets every exponent and no pattern of mantissas twice.
    fn walk(from: f64, to: f64, count: u32) -> impl Iterator<Item = f64> {
        (0..count).map(move |k| from + (to - from) * (f64::from(k) * 0.618_033_988_749_894_9).fract())
    }

    fn near(got: f64, expected: f64, of: f64) {
        let ulp = f64::EPSILON * expected.abs();
        assert!((got - expected).abs() <= 2.0 * ulp + 1e-300, "{of}: {got} instead of {expected}");
    }

    #[test]
    fn exponentials_are_those_of_the_scalar() {
        for x in walk(-708.0, 709.0, 200_000).chain(walk(-1.0, 1.0, 200_000)) {
            near(exp([x; WIDTH])[0], math::exp(x), x);
        }
        assert_eq!(exp([0.0, 0.0, -0.0, 0.0, 0.0, 0.0, 0.0, 0.0]), [1.0; WIDTH]);
        assert!(exp([-1e300; WIDTH])[3] < 1e-300 && exp([1e300; WIDTH])[3].is_finite());
    }

    #[test]
    fn logarithms_are_those_of_the_scalar() {
        for x in walk(-700.0, 700.0, 200_000).map(math::exp).chain(walk(0.5, 2.0, 200_000)) {
            let expected = math::ln(x);
            // Next to 1 the logarithm is small and its absolute error counts.
            assert!((ln([x; WIDTH])[0] - expected).abs() <= 4e-16 * expected.abs().max(0.35), "{x}");
        }
        assert_eq!(ln([1.0; WIDTH]), [0.0; WIDTH]);
    }
}
