//! Days and times of day as an enquiry states them: ISO texts, validated, in order.

use super::keys::{Field, KeyKind, KeySpec};
use super::reader::Reader;
use toml::de::DeValue;

/// A day of the Gregorian calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year, 1900 to 2199.
    pub year: i32,
    /// Month, 1 to 12.
    pub month: u32,
    /// Day of the month, from 1.
    pub day: u32,
}

/// First and last year that is read: others are slips.
const YEARS: core::ops::RangeInclusive<i32> = 1900..=2199;

impl Date {
    /// Reads `2026-05-04`; the fault as reason.
    ///
    /// # Errors
    /// Why the text is no day.
    pub fn read(text: &str) -> Result<Self, String> {
        let plain = |t: &str, n: usize| t.len() == n && t.bytes().all(|b| b.is_ascii_digit());
        let parts: Vec<&str> = text.trim().split('-').collect();
        let [year, month, day] = parts[..] else { return Err(format!("\"{text}\" is not year-month-day")) };
        if !plain(year, 4) || !plain(month, 2) || !plain(day, 2) {
            return Err(format!("\"{text}\" is not year-month-day in digits"));
        }
        let number = |t: &str| t.parse::<u32>().unwrap_or(0);
        let date = Self { year: i32::try_from(number(year)).unwrap_or(0), month: number(month), day: number(day) };
        if !YEARS.contains(&date.year) {
            return Err(format!("the year {year} is not between {} and {}", YEARS.start(), YEARS.end()));
        }
        if !(1..=12).contains(&date.month) {
            return Err(format!("there is no month {month}"));
        }
        let days = days_of(date.year, date.month);
        if !(1..=days).contains(&date.day) {
            return Err(format!("month {month} of {year} has {days} days, not {day}"));
        }
        Ok(date)
    }

    /// Days since 1 January 1900.
    #[must_use]
    pub fn number(self) -> i64 {
        let years: i64 = (*YEARS.start()..self.year).map(|y| if is_leap(y) { 366 } else { 365 }).sum();
        let months: i64 = (1..self.month).map(|m| i64::from(days_of(self.year, m))).sum();
        years + months + i64::from(self.day) - 1
    }
}

impl core::fmt::Display for Date {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

fn is_leap(year: i32) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

fn days_of(year: i32, month: u32) -> u32 {
    match month {
        2 if is_leap(year) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// A day, or not said.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Day(pub Option<Date>);

/// A time of day in minutes after midnight, or not said.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Clock(pub Option<u32>);

/// The text of a value: as a string, or as TOML's own day or time.
fn text_of(value: &DeValue<'_>) -> Option<String> {
    match value {
        DeValue::String(text) => Some(text.to_string()),
        DeValue::Datetime(stamp) => Some(stamp.to_string()),
        _ => None,
    }
}

impl Field for Day {
    const KIND: KeyKind = KeyKind::Pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
    fn is_said(&self) -> bool {
        self.0.is_some()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let read = text_of(value)
            .ok_or_else(|| format!("is a {}, not a day", value.type_str()))
            .and_then(|text| Date::read(&text));
        match read {
            Ok(date) => Day(Some(date)),
            Err(reason) => {
                reader.fault(place, reason, format!("write {} = {}, year, month and day", spec.name, spec.like));
                Day(None)
            }
        }
    }
}

/// Minutes after midnight of `07:30`.
fn clock(text: &str) -> Result<u32, String> {
    let wrong = || format!("\"{text}\" is not an hour and minutes of the day");
    let (hour, rest) = text.trim().split_once(':').ok_or_else(wrong)?;
    // TOML's own times end with seconds; they say nothing here.
    let minute = rest.split(':').next().unwrap_or(rest);
    let number = |t: &str| (t.len() == 2 && t.bytes().all(|b| b.is_ascii_digit())).then(|| t.parse::<u32>().ok());
    match (number(hour).flatten(), number(minute).flatten()) {
        (Some(hour), Some(minute)) if hour < 24 && minute < 60 => Ok(hour * 60 + minute),
        _ => Err(wrong()),
    }
}

impl Field for Clock {
    const KIND: KeyKind = KeyKind::Pattern("^([01][0-9]|2[0-3]):[0-5][0-9]$");
    fn is_said(&self) -> bool {
        self.0.is_some()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let read = text_of(value)
            .ok_or_else(|| format!("is a {}, not a time of day", value.type_str()))
            .and_then(|text| clock(&text));
        match read {
            Ok(minutes) => Clock(Some(minutes)),
            Err(reason) => {
                reader.fault(place, reason, format!("write {} = {}, from 00:00 to 23:59", spec.name, spec.like));
                Clock(None)
            }
        }
    }
}

impl core::fmt::Display for Clock {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        self.0.map_or(Ok(()), |m| write!(f, "{:02}:{:02}", m / 60, m % 60))
    }
}

#[cfg(test)]
#[allow(clippy::panic, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    /// Differences of day numbers: Python 3 `datetime.date.toordinal`.
    #[test]
    fn days_are_counted_as_the_calendar_has_them() {
        let number = |text: &str| Date::read(text).unwrap_or_else(|e| panic!("{e}")).number();
        assert_eq!(number("1900-01-01"), 0);
        assert_eq!(number("1970-01-01"), 25567);
        assert_eq!(number("2000-03-01"), 36584);
        assert_eq!(number("2026-05-04") - number("2024-02-29"), 795);
        assert_eq!(number("2100-03-01") - number("2100-02-28"), 1);
    }

    #[test]
    fn what_is_no_day_is_refused_with_its_reason() {
        for (text, words) in [
            ("4 May 2026", "year-month-day"),
            ("2026-5-4", "digits"),
            ("2026-13-01", "no month"),
            ("2026-02-29", "28 days"),
            ("1066-10-14", "1066"),
            ("2026-05-04T07:30:00", "digits"),
        ] {
            assert!(Date::read(text).is_err_and(|e| e.contains(words)), "{text}");
        }
        assert_eq!(clock("07:30"), Ok(450));
        assert_eq!(clock("23:59:00"), Ok(1439));
        for text in ["7:30", "24:00", "12:60", "noon", "-1:00"] {
            assert!(clock(text).is_err(), "{text}");
        }
    }
}
