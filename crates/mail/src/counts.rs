//! What is counted or said in words: hoses, days of a week, times a week, hours of a day, a gravity without a unit, a return
//! period as odds.

use crate::What;
use core::ops::Range;
use stillrise_handbook::hydraulics::pipes::PIPE_SIZES;

/// Numbers that people write out.
const SPOKEN: [(&str, f64); 33] = [
    ("one", 1.0),
    ("two", 2.0),
    ("three", 3.0),
    ("four", 4.0),
    ("five", 5.0),
    ("six", 6.0),
    ("seven", 7.0),
    ("eight", 8.0),
    ("nine", 9.0),
    ("ten", 10.0),
    ("twelve", 12.0),
    ("an", 1.0),
    ("a", 1.0),
    ("einem", 1.0),
    ("einer", 1.0),
    ("eine", 1.0),
    ("ein", 1.0),
    ("zwei", 2.0),
    ("drei", 3.0),
    ("vier", 4.0),
    ("fünf", 5.0),
    ("sechs", 6.0),
    ("sieben", 7.0),
    ("acht", 8.0),
    ("zehn", 10.0),
    ("once", 1.0),
    ("twice", 2.0),
    ("thrice", 3.0),
    ("einmal", 1.0),
    ("zweimal", 2.0),
    ("dreimal", 3.0),
    ("every", 1.0),
    ("half", 0.5),
];

/// What is counted: words behind the number, what one of them is worth, and the key.
const COUNTED: [(&[&str], f64, &str); 11] = [
    (
        &[
            "hoses",
            "hose",
            "taps",
            "lances",
            "lance",
            "wash points",
            "monitors",
            "pressure washers",
            "jet washers",
            "schläuche",
        ],
        1.0,
        "stream.hoses",
    ),
    (
        &[
            "days a week",
            "days per week",
            "days/week",
            "day week",
            "days each week",
            "tage pro woche",
            "tage die woche",
            "shifts a week",
            "night a week",
            "nights a week",
            "nights",
        ],
        1.0,
        "stream.days_per_week",
    ),
    (&["times a week", "times per week", "a week", "per week", "in der woche"], 1.0, "dump.per_week"),
    (&["a fortnight", "every two weeks"], 0.5, "dump.per_week"),
    (&["a month", "per month", "im monat"], 0.25, "dump.per_week"),
    (&["times a year", "a year", "per year", "im jahr"], 1.0, A_YEAR),
    (
        &["hours a day", "hours per day", "h/day", "hours daily", "hours each day", "stunden am tag", "hour", "hours"],
        1.0,
        "stream.hours_per_day",
    ),
    (&["days", "day"], 1.0, "stream.days_per_week"),
    (&["years", "year", "jahr", "jahren"], 1.0, "rain.return_period"),
    (&["months", "month", "monate"], 1.0, "asked.interval"),
    (&["minutes", "minute", "minuten"], 1.0, "rain.duration"),
];

/// Stands for the interval of what is done so many times a year.
const A_YEAR: &str = "asked.interval, times a year";

/// Units of time, whose numbers in digits are quantities.
const UNITS: [&str; 12] =
    ["hour", "hours", "days", "day", "years", "year", "jahr", "jahren", "months", "month", "minutes", "minute"];

/// Units of time that an article makes a rate of.
const PER: [&str; 4] = ["day", "month", "year", "night"];

/// Words that say how often without a number.
const OFTEN: [(&[&str], f64, &str); 5] = [
    (&["weekly", "every friday", "on saturdays", "on sundays", "every saturday", "on a sunday"], 1.0, "dump.per_week"),
    (&["every other friday", "fortnightly", "every other week"], 0.5, "dump.per_week"),
    (&["daily", "every day", "every night", "each night", "täglich"], 7.0, "stream.days_per_week"),
    (&["monday to friday", "mon-fri", "weekdays"], 5.0, "stream.days_per_week"),
    (&["round the clock", "around the clock", "24/7"], 24.0, "stream.hours_per_day"),
];

/// A count: its bytes, the key that it answers first, and its value as typed in a file.
pub(crate) type Counted = (Range<usize>, What);

/// Finds them in a text of which `low` is the same in small letters, byte for byte.
pub(crate) fn counts(low: &str) -> Vec<Counted> {
    let mut found: Vec<Counted> = Vec::new();
    for (at, number, end) in numbers(low) {
        let rest = &low[end..];
        let body = rest.trim_start_matches([' ', '\n', '\u{a0}', '-']);
        let gap = rest.len() - body.len();
        // "2 wash hoses", "two 1/2 in hoses": one word may stand between.
        let second = body.find(' ').map(|k| (k, body[k..].trim_start()));
        let spoken = !low[at..].starts_with(|c: char| c.is_ascii_digit());
        let hit = COUNTED.iter().find_map(|(words, worth, path)| {
            let of = |body: &str, from: usize| {
                words.iter().find(|word| closed(body, word)).map(|word| (from + word.len(), number * worth, *path))
            };
            let own = of(body, end + gap);
            // A number of units is a quantity, and found as such: here it is found where it is spoken.
            let own = own.filter(|(stop, ..)| spoken || !UNITS.contains(&low[end + gap..*stop].trim()));
            let next = second.filter(|_| *path == "stream.hoses");
            // "3 hours a day" counts hours; its "a day" counts no days.
            let own = own.filter(|(stop, ..)| {
                !(matches!(&low[at..end], "a" | "an") && PER.contains(&low[end + gap..*stop].trim()))
            });
            own.or_else(|| next.and_then(|(k, body)| of(body, end + gap + k + 1)))
        });
        if let Some((stop, value, path)) = hit {
            let (value, path) =
                if path == A_YEAR { ((1200.0 / value).round() / 100.0, "asked.interval") } else { (value, path) };
            found.push((at..stop.min(low.len()), What::Count(path, value)));
        }
    }
    for (words, value, path) in OFTEN {
        for word in words {
            for (at, _) in low.match_indices(word) {
                let taken = found.iter().any(|(other, _)| other.start < at + word.len() && at < other.end);
                if apart(low, at) && closed(&low[at..], word) && !taken {
                    found.push((at..at + word.len(), What::Count(path, value)));
                }
            }
        }
    }
    found.extend(gravity(low));
    found.extend(bores(low));
    found.sort_by_key(|(at, _)| at.start);
    found
}

/// Return periods as odds: "1 in 5 years", "1-in-50-year".
pub(crate) fn odds(low: &str) -> Vec<Counted> {
    let mut found = Vec::new();
    for lead in ["1 in ", "1-in-", "one in ", "1:", "once in "] {
        for (at, _) in low.match_indices(lead) {
            let rest = &low[at + lead.len()..];
            let len = rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len());
            let Ok(years) = rest[..len].parse::<f64>() else { continue };
            let body = rest[len..].trim_start_matches([' ', '-']);
            let word = ["years", "year", "yr", "jahre"].into_iter().find(|word| closed(body, word));
            if let (true, Some(word)) = (apart(low, at), word) {
                let end = low.len() - body.len() + word.len();
                found.push((at..end, What::Count("rain.return_period", years)));
            }
        }
    }
    found
}

/// Whole numbers and spoken ones: where each begins, what it is, where it ends.
fn numbers(low: &str) -> Vec<(usize, f64, usize)> {
    let mut all = Vec::new();
    for (word, value) in SPOKEN {
        for (at, _) in low.match_indices(word) {
            let end = at + word.len();
            if apart(low, at) && !low[end..].starts_with(char::is_alphanumeric) {
                all.push((at, value, end));
            }
        }
    }
    let mut at = 0;
    while let Some(k) = low[at..].find(|c: char| c.is_ascii_digit()) {
        let start = at + k;
        let len = low[start..].find(|c: char| !c.is_ascii_digit()).unwrap_or(low.len() - start);
        at = start + len;
        let alone =
            !low[at..].starts_with(['.', ',', '/', ':']) || low[at..].starts_with(", ") || low[at..].starts_with(". ");
        let first = !low[..start].ends_with(|c: char| c.is_alphanumeric() || matches!(c, '.' | ',' | '/' | '-' | ':'));
        if let (true, true, Ok(value)) = (alone, first && len <= 3, low[start..at].parse::<f64>()) {
            all.push((start, value, at));
        }
    }
    all
}

/// Pipes by their nominal size: "DN 200".
fn bores(low: &str) -> Vec<Counted> {
    let mut found = Vec::new();
    for (at, _) in low.match_indices("dn") {
        let body = low[at + 2..].trim_start_matches([' ', '-', '\u{a0}']);
        let len = body.find(|c: char| !c.is_ascii_digit()).unwrap_or(body.len());
        let Ok(size) = body[..len].parse::<f64>() else { continue };
        let is_known = PIPE_SIZES.iter().any(|pipe| f64::from(pipe.dn) == size);
        if apart(low, at) && is_known && !body[len..].starts_with(char::is_alphanumeric) {
            found.push((at..low.len() - body.len() + len, What::Count("outlet.pipe", size)));
        }
    }
    found
}

/// A gravity that stands without a unit: "SG 0.885", "specific gravity of 0.87", "a density of 0.86".
fn gravity(low: &str) -> Vec<Counted> {
    let mut found = Vec::new();
    for lead in ["sg", "s.g.", "specific gravity", "sp. gr.", "sp.gr.", "spec. gravity", "density", "dichte"] {
        for (at, _) in low.match_indices(lead) {
            if !apart(low, at) {
                continue;
            }
            let rest = &low[at + lead.len()..];
            let body = rest.trim_start_matches([' ', '=', ':', '~', '\u{a0}']);
            let body = ["von ", "of ", "is ", "about ", "approx. ", "ca. "]
                .iter()
                .fold(body, |body, word| body.strip_prefix(word).unwrap_or(body));
            let len = body.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ','))).unwrap_or(body.len());
            let digits = body[..len].trim_end_matches(['.', ',']);
            let Ok(value) = digits.replace(',', ".").parse::<f64>() else { continue };
            let end = low.len() - body.len() + digits.len();
            if (0.5..1.3).contains(&value) && digits.contains(['.', ',']) {
                found.push((at..end, What::Gravity(format!("SG {}", digits.replace(',', ".")))));
            }
        }
    }
    found
}

/// Whether no letter or digit stands ahead of a place.
fn apart(text: &str, at: usize) -> bool {
    !text[..at].chars().next_back().is_some_and(|c| c.is_alphanumeric() || c == '-')
}

/// Whether a text begins with a word that ends there.
fn closed(text: &str, word: &str) -> bool {
    text.starts_with(word) && !text[word.len()..].starts_with(char::is_alphanumeric)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_are_found_however_they_are_said() {
        for (text, wanted) in [
            ("we have 2 wash hoses and one lance", &[("stream.hoses", 2.0), ("stream.hoses", 1.0)][..]),
            ("six days a week, seven days", &[("stream.days_per_week", 6.0), ("stream.days_per_week", 7.0)]),
            ("dumped twice a week, once a fortnight", &[("dump.per_week", 2.0), ("dump.per_week", 0.5)]),
            ("empty it twice a year, 800 mm a year", &[("asked.interval", 6.0)]),
            ("seven times a year", &[("asked.interval", 1.71)]),
            ("every night, monday to friday", &[("stream.days_per_week", 7.0), ("stream.days_per_week", 5.0)]),
            ("an hour; for 3 hours", &[("stream.hours_per_day", 1.0)]),
        ] {
            let found: Vec<(&str, f64)> = counts(text)
                .into_iter()
                .filter_map(|(_, what)| match what {
                    What::Count(path, value) => Some((path, value)),
                    _ => None,
                })
                .collect();
            assert_eq!(found, wanted, "{text}");
        }
        assert!(
            matches!(&counts("a density of about 0.86, cold")[..], [(_, What::Gravity(text))] if text == "SG 0.86")
        );
        assert!(
            matches!(&counts("outlet dn 200, dnx 3")[..], [(at, What::Count("outlet.pipe", 200.0))] if *at == (7..13))
        );
        assert!(matches!(&counts("oil of sg 0.885 at 60 f")[..], [(_, What::Gravity(text))] if text == "SG 0.885"));
    }
}
