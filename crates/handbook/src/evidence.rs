//! Running the check values: those on the pages, and the tables row by row.

use crate::page::{Arg, Check, Evidence, Page};
use crate::{pages, read};
use std::collections::HashSet;
use stillrise_units::print;

/// A table of check values: one page, many rows.
#[derive(Debug)]
pub struct Table {
    /// File name in `check/`.
    pub file: &'static str,
    /// Its text; lines that begin with `#` name its source.
    pub text: &'static str,
    /// The page it checks.
    pub page: &'static Page,
    /// Arguments that are the same for every row, as on a page; `{name}` stands for the text of a column.
    pub fixed: &'static str,
    /// Column, argument, unit (or "" for a word or a pure number).
    pub columns: &'static [(&'static str, &'static str, &'static str)],
    /// Column and unit of the expected value.
    pub expect: (&'static str, &'static str),
    /// A wider relative tolerance than half the last printed digit, and why.
    pub within: Option<(f64, &'static str)>,
    /// Only the rows for which this holds; for instance one law's range of Reynolds numbers.
    pub only: Option<fn(&Row<'_>) -> bool>,
    /// Where the values come from.
    pub evidence: Evidence,
}

/// One row of a table.
pub struct Row<'a> {
    headers: &'a csv::StringRecord,
    cells: &'a csv::StringRecord,
}

impl Row<'_> {
    /// The text in a column; empty when there is no such column.
    #[must_use]
    pub fn text(&self, column: &str) -> &str {
        let at = self.headers.iter().position(|h| h == column);
        at.and_then(|i| self.cells.get(i)).unwrap_or("").trim()
    }
    /// A text with `{name}` replaced by what stands in that column.
    fn filled(&self, text: &str) -> String {
        let columns = self.headers.iter().filter(|name| text.contains(&format!("{{{name}}}")));
        columns.fold(text.to_owned(), |out, name| out.replace(&format!("{{{name}}}"), self.text(name)))
    }
    /// The number in a column; not a number when there is none.
    #[must_use]
    pub fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or(f64::NAN)
    }
}

/// What came of one check.
#[derive(Debug, Clone)]
pub struct Outcome {
    /// Id of the page.
    pub page: &'static str,
    /// The arguments as written.
    pub given: String,
    /// The expected value as printed in its source.
    pub expected: String,
    /// What the formula gave, in the same unit, or why it gave nothing.
    pub obtained: String,
    /// Kind of the evidence.
    pub kind: &'static str,
    /// The evidence.
    pub evidence: String,
    /// How far the two may lie apart, in the same unit.
    pub tolerance: String,
    /// Why so far: the digits printed, or what else parts them.
    pub reason: String,
    /// Whether both agree within the tolerance.
    pub holds: bool,
}

/// All tables.
pub use crate::tables;

/// Runs every check of every page and every row of every table. One that repeats another of its page counts once.
#[must_use]
pub fn verify() -> Vec<Outcome> {
    pages().flat_map(verify_page).collect()
}

/// Runs every check of one page and every row of its tables. One that repeats another counts once.
#[must_use]
pub fn verify_page(page: &'static Page) -> Vec<Outcome> {
    let mut out: Vec<Outcome> = page.checks.iter().map(|check| run(page, check)).collect();
    out.extend(tables().filter(|t| t.page == page).flat_map(rows));
    let mut seen = HashSet::new();
    out.retain(|o| seen.insert((o.given.clone(), o.expected.clone())));
    out
}

/// Runs one check of a page.
#[must_use]
pub fn run(page: &'static Page, check: &Check) -> Outcome {
    compare(page, check.given, check.expect, check.within, &check.evidence)
}

/// Runs the rows of a table.
#[must_use]
pub fn rows(table: &Table) -> Vec<Outcome> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(table.text.as_bytes());
    let headers = reader.headers().cloned().unwrap_or_default();
    let mut out = Vec::new();
    for cells in reader.records().flatten() {
        let row = Row { headers: &headers, cells: &cells };
        if table.only.is_some_and(|only| !only(&row)) || row.text(table.expect.0).is_empty() {
            continue;
        }
        let mut given: Vec<String> = table
            .columns
            .iter()
            .map(|(name, arg, unit)| format!("{arg}={}", format!("{} {unit}", row.text(name)).trim()))
            .collect();
        if !table.fixed.is_empty() {
            given.push(row.filled(table.fixed));
        }
        let expect = format!("{} {}", row.text(table.expect.0), table.expect.1);
        out.push(compare(table.page, &given.join(", "), expect.trim(), table.within, &table.evidence));
    }
    out
}

fn compare(
    page: &'static Page,
    given: &str,
    expect: &str,
    within: Option<(f64, &str)>,
    evidence: &Evidence,
) -> Outcome {
    let (tolerance, reason) = allowance(expect, within, evidence);
    let within = within.map(|w| w.0);
    let mut outcome = Outcome {
        page: page.id,
        given: given.to_owned(),
        expected: expect.to_owned(),
        obtained: String::new(),
        kind: evidence.kind(),
        evidence: evidence.text(),
        tolerance,
        reason,
        holds: false,
    };
    let args = match read::arguments(page, &read::split(given)) {
        Ok(args) => args,
        Err(faults) => {
            outcome.obtained = faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ");
            return outcome;
        }
    };
    let got = match (page.call)(&args) {
        Ok(got) => got,
        Err(outside) => {
            // A check may expect that the formula refuses: the refusal names the argument.
            outcome.holds = expect == format!("outside: {}", outside.argument);
            outcome.obtained = outside.to_string();
            return outcome;
        }
    };
    let expected = match read::value(&page.out, expect) {
        Ok(expected) => expected,
        Err(fault) => {
            outcome.obtained = fault.to_string();
            return outcome;
        }
    };
    outcome.obtained = shown(&got, expect);
    outcome.holds = match (&got, &expected) {
        (Arg::Number(got), Arg::Number(expected)) => near(*got, *expected, expect, within),
        (Arg::Series(got), Arg::Series(expected)) => {
            let texts: Vec<&str> = expect.trim_matches(['[', ']']).split(';').collect();
            got.len() == expected.len()
                && got
                    .iter()
                    .zip(expected)
                    .zip(texts)
                    .all(|((g, e), text)| near(g.1, e.1, text.split(':').nth(1).unwrap_or(text), within))
        }
        (got, expected) => got == expected,
    } && page.holds.is_none_or(|holds| relation_holds(holds(&args, number(&got))));
    outcome
}

fn number(arg: &Arg) -> f64 {
    if let Arg::Number(value) = arg { *value } else { f64::NAN }
}

fn relation_holds(sides: Option<(f64, f64)>) -> bool {
    sides.is_some_and(|(left, right)| (left - right).abs() <= 1e-9 * left.abs().max(right.abs()).max(1e-12))
}

/// The tolerance of a check in words, and its reason.
fn allowance(expect: &str, within: Option<(f64, &str)>, evidence: &Evidence) -> (String, String) {
    if let Some((relative, why)) = within {
        return (format!("{} %", print::digits(100.0 * relative, 3)), why.to_owned());
    }
    if is_word(expect) {
        return ("exact".to_owned(), "a word or a refusal".to_owned());
    }
    let digits = match evidence {
        Evidence::Published(..) => "digits printed in the source",
        Evidence::Library(_) => "digits of the library's value",
        Evidence::Limit(_) => "digits of the limit",
        Evidence::ByHand(_) => "digits of the value worked apart",
        Evidence::Memory(_) => "digits recalled",
    };
    let reading = stillrise_units::Reading { gallon: Some(stillrise_units::Gallon::Us) };
    let half = half_digit(expect);
    match stillrise_units::parse::quantity(expect, &reading) {
        Ok(_) if is_exact_nothing(expect) => ("exact".to_owned(), "nothing, not something small".to_owned()),
        Ok(written) => {
            let number = print::digits(half / written.unit.scale, 2);
            (format!("{number} {}", written.unit.symbol).trim().to_owned(), digits.to_owned())
        }
        Err(_) => ("half a unit of the last digit".to_owned(), digits.to_owned()),
    }
}

/// Whether an expected value is no number: a word of a choice, or a refusal.
fn is_word(expect: &str) -> bool {
    !expect.trim_start().starts_with(|c: char| c.is_ascii_digit() || "+-.[".contains(c))
}

/// Whether an expected value is a zero written without decimals, which no small number meets.
fn is_exact_nothing(expect: &str) -> bool {
    let digits = leading_digits(expect);
    digits.trim_start_matches(['+', '-']) == "0"
}

/// The number at the start of a printed quantity.
fn leading_digits(text: &str) -> String {
    text.trim().chars().take_while(|c| c.is_ascii_digit() || "+-.,eE".contains(*c)).collect()
}

/// Equal within half a unit of the last digit printed, or within the stated relative tolerance. A zero
/// without decimals is nothing at all: half a micrometre would pass for it otherwise.
fn near(got: f64, expected: f64, text: &str, within: Option<f64>) -> bool {
    let allowed = match within {
        Some(relative) => relative * expected.abs(),
        None if expected == 0.0 && is_exact_nothing(text) => 0.0,
        None => half_digit(text) * (1.0 + 1e-9) + 1e-15 * expected.abs(),
    };
    (got - expected).abs() <= allowed
}

/// Half a unit of the last digit of a printed quantity, in SI.
fn half_digit(text: &str) -> f64 {
    let reading = stillrise_units::Reading { gallon: Some(stillrise_units::Gallon::Us) };
    let Ok(written) = stillrise_units::parse::quantity(text, &reading) else { return 0.0 };
    let digits = leading_digits(text);
    let (mantissa, exponent) = digits.split_once(['e', 'E']).unwrap_or((&digits, "0"));
    let places = mantissa.split_once('.').map_or(0, |(_, after)| after.len());
    let power = exponent.parse::<i32>().unwrap_or(0) - i32::try_from(places).unwrap_or(0);
    0.5 * written.unit.scale * stillrise_units::math::pow(10.0, f64::from(power))
}

fn shown(got: &Arg, expect: &str) -> String {
    let reading = stillrise_units::Reading { gallon: Some(stillrise_units::Gallon::Us) };
    match got {
        Arg::Number(si) => match stillrise_units::parse::quantity(expect, &reading) {
            Ok(written) => {
                let number = print::digits(written.unit.from_si(*si), 8);
                format!("{number} {}", written.unit.symbol).trim().to_owned()
            }
            Err(_) => print::digits(*si, 8),
        },
        Arg::Choice(word) => (*word).to_owned(),
        Arg::Series(pairs) => {
            let rows: Vec<String> =
                pairs.iter().map(|(x, y)| format!("{}: {}", print::digits(*x, 6), print::digits(*y, 6))).collect();
            format!("[{}]", rows.join("; "))
        }
        // No page gives a group.
        Arg::Group(..) | Arg::Groups(_) => String::new(),
    }
}
