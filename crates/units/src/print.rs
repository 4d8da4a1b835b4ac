//! Printing numbers: four significant digits, no more zeros than were earned, unit always there.

use crate::catalog::Unit;

/// In which units results are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum System {
    /// US customary.
    Us,
    /// SI and the metric units of the trade.
    #[default]
    Si,
}

impl System {
    /// The unit of a (US, SI) pair that belongs to this system.
    #[must_use]
    pub fn pick(self, pair: (&'static Unit, &'static Unit)) -> &'static Unit {
        match self {
            System::Us => pair.0,
            System::Si => pair.1,
        }
    }
}

/// A number in print units, or zero where it is no more than what rounding leaves of nothing.
#[must_use]
pub fn or_nothing(value: f64) -> f64 {
    if value.abs() < 1e-9 { 0.0 } else { value }
}

/// `value` rounded to `digits` significant digits, without trailing zeros behind the point.
///
/// Numbers of ten millions and more, or below a ten-thousandth, are written with a power of ten.
#[must_use]
pub fn digits(value: f64, digits: usize) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    if !value.is_finite() {
        return if value.is_nan() {
            "not a number".to_owned()
        } else if value > 0.0 {
            "infinite".to_owned()
        } else {
            "-infinite".to_owned()
        };
    }
    let scientific = format!("{value:.*e}", digits.saturating_sub(1));
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let exponent: i32 = exponent.parse().unwrap_or(0);
    if (-4..7).contains(&exponent) {
        let places = usize::try_from(i32::try_from(digits).unwrap_or(4) - 1 - exponent).unwrap_or(0);
        // Rounding to significant digits first, so that 12 346 prints as 12350.
        let rounded: f64 = scientific.parse().unwrap_or(value);
        trim(&format!("{rounded:.places$}"))
    } else {
        format!("{}e{exponent}", trim(mantissa))
    }
}

fn trim(text: &str) -> String {
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text.to_owned() }
}

/// A number and its unit for prose: three significant digits.
#[must_use]
pub fn in_prose(si: f64, unit: &Unit) -> String {
    with_symbol(digits(unit.from_si(si), 3), unit)
}

/// A number and its unit in prose and tables: three significant digits, lengths and levels to a step of their rule, as
/// differences of them count. Zero is zero, whatever rounding left of it.
#[must_use]
pub fn told(si: f64, unit: &Unit) -> String {
    let value = or_nothing(unit.from_si(si));
    if matches!(unit.symbol, "mm" | "in" | "ft" | "m") {
        with_unit(unit.to_si(value), unit)
    } else {
        with_symbol(digits(value, 3), unit)
    }
}

/// The same of what something must be at least: never rounded down.
#[must_use]
pub fn at_least(si: f64, unit: &Unit) -> String {
    let value = unit.from_si(si);
    let near = format!("{value:.2e}");
    let (rounded, exponent) =
        (near.parse().unwrap_or(value), near.split_once('e').and_then(|(_, e)| e.parse::<i32>().ok()));
    let step: Option<f64> = exponent.and_then(|e| format!("1e{}", e - 2).parse().ok());
    // What rounding leaves of the last digit is no reason to add one to it.
    let short = value - rounded > 1e-9 * value.abs();
    let up = step.filter(|_| short).map_or(value, |step| rounded + step);
    with_symbol(digits(up, 3), unit)
}

/// A number and its unit: `"45.2 gpm"`; four significant digits.
#[must_use]
pub fn with_unit(si: f64, unit: &Unit) -> String {
    let value = unit.from_si(si);
    // Levels in a site's datum differ by hundredths, however high the site lies.
    let level = matches!(unit.symbol, "m" | "ft") && value.abs() >= 100.0;
    let more = if !level {
        0
    } else if value.abs() < 1000.0 {
        1
    } else {
        2
    };
    with_symbol(digits(value, 4 + more), unit)
}

fn with_symbol(number: String, unit: &Unit) -> String {
    match unit.symbol {
        "" => number,
        "%" => format!("{number} %"),
        symbol => format!("{number} {symbol}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::{DEG_F, GPM, M2, MM, PERCENT};

    /// 110.4 is rounded to 110 in prose, which would not do where that much is needed.
    #[test]
    fn what_is_needed_is_never_rounded_down() {
        assert_eq!((in_prose(110.4, &M2), at_least(110.4, &M2)), ("110 m2".to_owned(), "111 m2".to_owned()));
        assert_eq!(at_least(0.684_2, &MM), "685 mm");
        assert_eq!(at_least(0.684, &MM), "684 mm");
        assert_eq!(at_least(0.009_99, &M2), "0.00999 m2");
        assert_eq!(at_least(9.999, &M2), "10 m2");
        assert_eq!(at_least(0.0, &M2), "0 m2");
    }

    #[test]
    fn four_digits_and_no_more_zeros_than_earned() {
        for (value, text) in [
            (45.0, "45"),
            (0.62, "0.62"),
            (11.808, "11.81"),
            (12_346.0, "12350"),
            (0.000_241_7, "0.0002417"),
            (1.25e-6, "1.25e-6"),
            (-0.5, "-0.5"),
            (123_456_789.0, "1.235e8"),
        ] {
            assert_eq!(digits(value, 4), text);
        }
        assert_eq!(with_unit(6.309_019_64e-5 * 45.25, &GPM), "45.25 gpm");
        assert_eq!(in_prose(6.309_019_64e-5 * 45.25, &GPM), "45.2 gpm");
        assert_eq!(with_unit(0.125, &PERCENT), "12.5 %");
        assert_eq!((told(0.123_45, &PERCENT), told(1e-14, &PERCENT)), ("12.3 %".to_owned(), "0 %".to_owned()));
        assert_eq!((told(1.1234, &MM), told(60.666, &M2)), ("1123 mm".to_owned(), "60.7 m2".to_owned()));
        assert_eq!(with_unit(283.15, &DEG_F), "50 °F");
    }
}
