//! Exponential and logarithm of several numbers at once, for integrals that studies ask for millions of times.
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

/// e^r is 1 + r + r²/2 and these times r³ to r^11, within half of ln 2 to 4e-17: nearly the least largest error, by
/// interpolation at Chebyshev's points with 50 digits (mpmath 1.3, `chebyfit`).
const EXP: [f64; 9] = [
    0.166_666_666_666_666_66,
    0.041_666_666_666_651_36,
    0.008_333_333_333_332_155,
    0.001_388_888_890_588_154_2,
    0.000_198_412_698_543_386_1,
    2.480_153_638_869_076_6e-5,
    2.755_728_006_701_698e-6,
    2.761_380_686_153_829e-7,
    2.509_555_467_711_111_2e-8,
];
/// artanh f is f and these times f³ to f^15, between the roots of one half and two to 5e-18; found likewise.
const LN: [f64; 7] = [
    0.333_333_333_333_333_5,
    0.199_999_999_999_494_44,
    0.142_857_143_131_269_18,
    0.111_111_055_446_897_48,
    0.090_914_462_162_684_65,
    0.076_658_058_610_275_04,
    0.073_089_035_767_086_63,
];

/// e^x between -708 and 709; held at the ends beyond them.
#[must_use]
#[inline(always)]
pub fn exp<const N: usize>(x: [f64; N]) -> [f64; N] {
    let mut out = [0.0; N];
    for (out, x) in out.iter_mut().zip(x) {
        let x = if x < LEAST { LEAST } else { x };
        let x = if x > MOST { MOST } else { x };
        // x = n ln 2 + r with r within half of ln 2.
        let shifted = x * LOG2_E + WHOLE;
        let n = shifted - WHOLE;
        let r = (x - n * LN2_HIGH) - n * LN2_LOW;
        let (r2, r4) = (r * r, r * r * r * r);
        let a = (1.0 + r) + r2 * (0.5 + r * EXP[0]);
        let b = (EXP[1] + r * EXP[2]) + r2 * (EXP[3] + r * EXP[4]);
        let c = (EXP[5] + r * EXP[6]) + r2 * (EXP[7] + r * EXP[8]);
        let series = a + r4 * (b + r4 * c);
        // 2^n: its exponent is n + 1023.
        let power = f64::from_bits(shifted.to_bits().wrapping_add(1023) << 52);
        *out = series * power;
    }
    out
}

/// Natural logarithm of normal positive numbers.
#[must_use]
#[inline(always)]
pub fn ln<const N: usize>(x: [f64; N]) -> [f64; N] {
    // The bits of the root of one half: mantissas are taken from there to the root of two.
    const HALF_ROOT: u64 = 0x3fe6_a09e_667f_3bcd;
    const ONE: u64 = 0x3ff0_0000_0000_0000;
    // 2^52 with a whole number in its lowest bits is 2^52 and that number.
    const TWO_52: u64 = 0x4330_0000_0000_0000;
    let mut out = [0.0; N];
    for (out, x) in out.iter_mut().zip(x) {
        let lifted = x.to_bits().wrapping_add(ONE - HALF_ROOT);
        let field = lifted >> 52;
        let exponent = f64::from_bits(TWO_52 | field) - (4_503_599_627_370_496.0 + 1023.0);
        let mantissa = f64::from_bits((lifted & 0x000f_ffff_ffff_ffff).wrapping_add(HALF_ROOT));
        let f = (mantissa - 1.0) / (mantissa + 1.0);
        let s = f * f;
        let s2 = s * s;
        let s4 = s2 * s2;
        let a = (LN[0] + s * LN[1]) + s2 * (LN[2] + s * LN[3]);
        let b = (LN[4] + s * LN[5]) + s2 * LN[6];
        let series = a + s4 * b;
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
