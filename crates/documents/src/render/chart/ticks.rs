//! Graduations: where the ticks of an axis stand and what is written at them.

use stillrise_units::math;

/// A tick with its text.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// The value.
    pub value: f64,
    /// As written at the axis.
    pub text: String,
}

/// An axis divided: its range, the ticks with text and those without.
#[derive(Debug, Clone, PartialEq)]
pub struct Graduation {
    /// Value at the lower or left end.
    pub low: f64,
    /// Value at the upper or right end.
    pub high: f64,
    /// Whether equal ratios, not equal differences, stand equally far apart.
    pub log: bool,
    /// Ticks with text.
    pub major: Vec<Tick>,
    /// Ticks without.
    pub minor: Vec<f64>,
}

/// Two values this close, as a share of the larger or of a step, are the same.
const SAME: f64 = 1e-9;

impl Graduation {
    /// How far along the axis a value stands, 0 at the low end, 1 at the high end, beyond these
    /// outside the range; `None` for what has no place on the axis at all.
    #[must_use]
    pub fn share(&self, value: f64) -> Option<f64> {
        let share = if self.log {
            let low = math::log10(self.low);
            (math::log10(value) - low) / (math::log10(self.high) - low)
        } else {
            (value - self.low) / (self.high - self.low)
        };
        share.is_finite().then_some(share)
    }

    /// Whether a value lies within the range.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        self.share(value).is_some_and(|s| (-SAME..=1.0 + SAME).contains(&s))
    }

    /// Equal divisions of 1, 2 or 5 times a power of ten, at most `most` of them. The range is
    /// widened to whole divisions unless it was `stated`.
    pub(super) fn linear((low, high): (f64, f64), stated: bool, most: u16) -> Graduation {
        let least = math::log10((high - low) / f64::from(most.max(1))).floor();
        let mut best = (low, high, 1.0, least);
        for (power, unit) in (0..4_u8).flat_map(|p| [1.0, 2.0, 5.0].map(|u| (least + f64::from(p), u))) {
            let step = decimal(unit, power);
            let (under, over) = if stated {
                ((low / step - SAME).ceil(), (high / step + SAME).floor())
            } else {
                ((low / step + SAME).floor(), (high / step - SAME).ceil())
            };
            best = (under, over, unit, power);
            if over - under <= f64::from(most) {
                break;
            }
        }
        let (first, last, unit, power) = best;
        let parts = if unit == 2.0 { 4.0 } else { 5.0 };
        let mut minor = Vec::new();
        let whole = whole_numbers(first, last);
        for k in whole_numbers(first - 1.0, last) {
            let between = (1..5_u8).map(f64::from).filter(|j| *j < parts);
            minor.extend(between.map(|j| decimal(unit, power) * (k + j / parts)));
        }
        let major: Vec<Tick> = whole.iter().map(|k| Tick::at(decimal(k * unit, power))).collect();
        let (low, high) =
            if stated { (low, high) } else { (decimal(first * unit, power), decimal(last * unit, power)) };
        minor.retain(|v| *v > low && *v < high);
        Graduation { low, high, log: false, major, minor }
    }

    /// Decades with their 1, 2, 5 or all whole multiples written, as `most` allows; else every second,
    /// fifth .. decade. The range is widened to a 1, 2 or 5 unless it was `stated`.
    pub(super) fn logarithmic((low, high): (f64, f64), stated: bool, most: u16) -> Graduation {
        let decades = whole_numbers(math::log10(low).floor() - 1.0, math::log10(high).ceil() + 1.0);
        let all: Vec<(f64, u8, f64)> =
            decades.iter().flat_map(|&e| (1..10_u8).map(move |m| (decimal(f64::from(m), e), m, e))).collect();
        let (mut from, mut to) = (low, high);
        if !stated {
            let round = || all.iter().filter(|(_, m, _)| matches!(m, 1 | 2 | 5)).map(|(v, _, _)| *v);
            let narrow = high <= low * (1.0 + SAME);
            let (pull, push) = if narrow { (1.0 - SAME, 1.0 + SAME) } else { (1.0 + SAME, 1.0 - SAME) };
            from = round().filter(|v| *v <= low * pull).fold(from, |_, v| v);
            to = round().find(|v| *v >= high * push).unwrap_or(to);
        }
        let inside = |v: f64| v >= from * (1.0 - SAME) && v <= to * (1.0 + SAME);
        let short = to / from < 10.0;
        let written = |every: u8| -> Vec<f64> {
            let kept = |m: u8, e: f64| match every {
                0 => short,
                1 => matches!(m, 1 | 2 | 5),
                n => m == 1 && e % f64::from(n - 1) == 0.0,
            };
            all.iter().filter(|(v, m, e)| kept(*m, *e) && inside(*v)).map(|(v, _, _)| *v).collect()
        };
        let fits = |values: &Vec<f64>| values.len() >= 2 && values.len() <= usize::from(most);
        let Some(values) = [0, 1, 2, 3, 4, 6, 11, 21, 51, 101].into_iter().map(written).find(fits) else {
            // Less than a decade without two round values: equal differences serve.
            return Graduation { log: true, ..Graduation::linear((from, to), true, most) };
        };
        let many = decades.len() > 15;
        let minor = all.iter().filter(|(v, m, _)| inside(*v) && !values.contains(v) && (!many || *m == 1));
        let minor = minor.map(|(v, _, _)| *v).collect();
        Graduation { low: from, high: to, log: true, major: values.iter().map(|v| Tick::at(*v)).collect(), minor }
    }
}

impl Tick {
    /// A tick with its value written in full, or with a power of ten when very large or small.
    fn at(value: f64) -> Tick {
        let plain = value == 0.0 || (1e-4..1e6).contains(&value.abs());
        Tick { value, text: if plain { format!("{value}") } else { format!("{value:e}") } }
    }
}

/// `whole` times ten to the `power`, the number nearest to the decimal as written.
fn decimal(whole: f64, power: f64) -> f64 {
    // Reading the digits rounds once; multiplying by a power of ten would round twice.
    let value = format!("{}e{power}", whole + 0.0).parse().unwrap_or(f64::NAN);
    if value == 0.0 { 0.0 } else { value }
}

/// The whole numbers from `first` to `last`; some hundreds at most.
fn whole_numbers(first: f64, last: f64) -> Vec<f64> {
    (0..1000_u16).map(|k| first + f64::from(k)).take_while(|k| *k <= last).collect()
}
