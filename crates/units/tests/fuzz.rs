//! Anything may be written where a quantity is wanted: it is read or refused with a remedy, never a panic.
//! Runs for `STILLRISE_FUZZ_SECONDS`, 5 when nothing is said.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::{Config, TestRunner};
use std::cell::Cell;
use std::time::{Duration, Instant};
use stillrise_units::catalog::UNITS;
use stillrise_units::parse::{Extent, Written, quantity, quantity_of, span_of};
use stillrise_units::{Dim, Fault, Gallon, Reading, print};

const GALLONS: [Option<Gallon>; 3] = [None, Some(Gallon::Us), Some(Gallon::Imperial)];

/// Cases between two looks at the clock.
const CASES: u32 = 2000;

fn seconds() -> u64 {
    std::env::var("STILLRISE_FUZZ_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(5)
}

/// Every spelling of every unit.
fn spellings() -> Vec<&'static str> {
    UNITS.iter().flat_map(|u| std::iter::once(u.symbol).chain(u.also.iter().copied())).collect()
}

fn numbers() -> impl Strategy<Value = String> {
    prop_oneof![
        "[-+]?[0-9]{0,9}[.,]?[0-9]{0,9}([eE][-+]?[0-9]{1,4})?",
        "[-+]?[0-9]{1,3}([,_.][0-9]{1,4}){0,4}",
        "[-+.,_eE0-9]{0,24}",
        any::<f64>().prop_map(|x| format!("{x:?}")),
        any::<i128>().prop_map(|n| n.to_string()),
        select(vec!["nan", "inf", "-inf", "1e308", "1e-308", "1e999", "-0", "5e-324", "0x10", "1e", "١٢", "½", "−5"])
            .prop_map(str::to_owned),
        "[1-9][0-9]{0,2}([ \u{a0}\u{2009}'’.,][0-9]{2,3}){0,3}([.,][0-9]{1,2})?",
        "[-−]?([0-9]{1,3}[ -]?)?([0-9]{1,2}[/⁄][0-9]{1,2}|[¼½¾⅓⅔⅛⅜⅝⅞])",
        (1_usize..400).prop_map(|n| "9".repeat(n)),
    ]
}

/// Words and marks around and between the numbers of a range.
fn ranges() -> impl Strategy<Value = String> {
    let lead = select(vec!["", "", "about ", "~", "ca. ", "max ", "<", "≤ ", "min. ", "between ", "from ", "up to "]);
    let mark = select(vec![" to ", "-", " - ", "–", "—", "…", " and ", " ± ", "+/-", "' ", " ft ", "'-"]);
    let unit = || select(spellings()).prop_map(str::to_owned);
    (lead, numbers(), unit(), mark, numbers(), unit(), 0_u8..4).prop_map(
        |(lead, a, u, mark, b, v, which)| match which {
            0 => format!("{lead}{a}{mark}{b} {v}"),
            1 => format!("{lead}{a} {u}{mark}{b}"),
            2 => format!("{lead}{a} {v}{mark}{b} {v}"),
            _ => format!("{lead}{a} {u}{mark}{b} {v}"),
        },
    )
}

fn texts() -> impl Strategy<Value = String> {
    let unit = prop_oneof![
        select(spellings()).prop_map(str::to_owned),
        select(spellings()).prop_map(str::to_uppercase),
        r"[a-zA-Z°µ/%23²³ ()]{0,12}",
        r"\PC{0,8}",
    ];
    prop_oneof![
        1 => any::<String>(),
        1 => r"\PC{0,40}",
        2 => ranges(),
        6 => (numbers(), r"\s{0,3}", unit, r"\s{0,2}").prop_map(|(n, gap, unit, end)| format!("{n}{gap}{unit}{end}")),
    ]
}

fn refusal(fault: &Fault) -> Result<(), TestCaseError> {
    let said = !fault.reason.trim().is_empty() && !fault.remedy.trim().is_empty();
    prop_assert!(said, "a refusal lacks reason or remedy: {:?}", fault);
    Ok(())
}

/// What was read is read again from its own text, and from the number and the unit it was read as.
fn same_again(text: &str, written: &Written, reading: &Reading) -> Result<(), TestCaseError> {
    prop_assert!(written.value.is_finite(), "{:?} gave {}", text, written.value);
    let plain = format!("{:?} {}", written.value, written.unit.symbol);
    // Symbols are unambiguous in the default reading; `gpm` in an enquiry of imperial gallons is another unit.
    for (form, reading) in [(written.text.as_str(), reading), (plain.as_str(), &Reading::default())] {
        let again = quantity(form, reading).map_err(|f| TestCaseError::fail(format!("{text:?}, {form:?}: {f}")))?;
        let (was, is) = (written.si().to_bits(), again.si().to_bits());
        prop_assert!(was == is && written.unit.dim == again.unit.dim, "{:?} became {:?}", text, form);
    }
    // The dimension it has is accepted, and no other.
    for dim in UNITS.iter().map(|u| u.dim) {
        match quantity_of(text, dim, reading) {
            Ok(again) => prop_assert!(dim == written.unit.dim && again.value.to_bits() == written.value.to_bits()),
            Err(fault) => {
                prop_assert!(dim != written.unit.dim, "{:?} is refused as what it is: {}", text, fault);
                refusal(&fault)?;
            }
        }
    }
    prop_assert!(written.notes.iter().all(|n| !n.trim().is_empty()));
    prop_assert!(!print::with_unit(written.si(), written.unit).is_empty());
    Ok(())
}

/// A range stands the right way round, holds its value, and each of its numbers reads again from print.
fn a_sound_span(text: &str, dim: Dim, reading: &Reading) -> Result<bool, TestCaseError> {
    let span = match span_of(text, dim, reading) {
        Ok(span) => span,
        Err(fault) => {
            prop_assert!(quantity_of(text, dim, reading).is_err(), "{:?} is a quantity and no span", text);
            refusal(&fault)?;
            return Ok(false);
        }
    };
    prop_assert_eq!(format!("{:?}", span_of(text, dim, reading)), format!("{:?}", Ok::<_, Fault>(span.clone())));
    prop_assert!(span.notes.iter().all(|n| !n.trim().is_empty()));
    let numbers: Vec<&Written> = match &span.extent {
        Extent::One(value) => vec![value],
        Extent::Around { low, value, high } => vec![low, value, high],
        Extent::Between { low, high } => vec![low, high],
    };
    prop_assert!(numbers.len() == 1 || !span.notes.is_empty(), "{:?} is a range and nobody says so", text);
    for pair in numbers.windows(2) {
        prop_assert!(pair[0].si() <= pair[1].si(), "{:?} runs downwards", text);
    }
    for written in numbers {
        prop_assert!(written.value.is_finite() && written.unit.dim == dim, "{:?}", text);
        let printed = print::with_unit(written.si(), written.unit);
        if !written.si().is_finite() || printed.contains("infinite") {
            continue;
        }
        let again = quantity_of(&printed, dim, &Reading { gallon: Some(Gallon::Us) });
        let again = again.map_err(|f| TestCaseError::fail(format!("{text:?} printed {printed:?}: {f}")))?;
        // Four digits are printed of the number in its unit.
        let off = (again.value - written.unit.from_si(written.si())).abs();
        prop_assert!(off <= 6e-4 * again.value.abs(), "{:?} printed {:?}", text, printed);
    }
    Ok(true)
}

#[test]
fn any_text_is_a_range_or_refused_with_a_remedy() {
    let (taken, refused) = (Cell::new(0_u64), Cell::new(0_u64));
    let end = Instant::now() + Duration::from_secs(seconds());
    while Instant::now() < end {
        let mut runner = TestRunner::new(Config { cases: CASES, failure_persistence: None, ..Config::default() });
        runner
            .run(
                &(prop_oneof![ranges(), texts()], select(UNITS.iter().map(|u| u.dim).collect::<Vec<_>>())),
                |(text, dim)| {
                    // The dimension its units have, where it has one, and another.
                    let own =
                        spellings().into_iter().filter(|s| !s.is_empty() && text.ends_with(*s)).max_by_key(|s| s.len());
                    let own = own.and_then(|s| UNITS.iter().find(|u| u.symbol == s || u.also.contains(&s)));
                    for dim in own.map(|u| u.dim).into_iter().chain([dim]) {
                        let count = if a_sound_span(&text, dim, &Reading::default())? { &taken } else { &refused };
                        count.set(count.get() + 1);
                    }
                    Ok(())
                },
            )
            .expect("no text breaks the reader");
    }
    assert!(taken.get() > 100 && refused.get() > 100, "{} read, {} refused", taken.get(), refused.get());
}

#[test]
fn any_text_is_read_or_refused_with_a_remedy() {
    let (taken, refused) = (Cell::new(0_u64), Cell::new(0_u64));
    let end = Instant::now() + Duration::from_secs(seconds());
    while Instant::now() < end {
        let mut runner = TestRunner::new(Config { cases: CASES, failure_persistence: None, ..Config::default() });
        runner
            .run(&texts(), |text| {
                for reading in GALLONS.map(|gallon| Reading { gallon }) {
                    match quantity(&text, &reading) {
                        Ok(written) => {
                            taken.set(taken.get() + 1);
                            same_again(&text, &written, &reading)?;
                        }
                        Err(fault) => {
                            refused.set(refused.get() + 1);
                            refusal(&fault)?;
                        }
                    }
                }
                Ok(())
            })
            .expect("no text breaks the reader");
    }
    assert!(taken.get() > 100 && refused.get() > 100, "{} read, {} refused", taken.get(), refused.get());
}

/// Every spelling of every unit is read, in any reading, as that unit or as its imperial brother.
#[test]
fn every_spelling_of_the_catalogue_is_read() {
    for unit in UNITS.iter().filter(|u| u.dim != Dim::Ratio || !u.symbol.is_empty()) {
        for spelling in std::iter::once(unit.symbol).chain(unit.also.iter().copied()) {
            for gallon in GALLONS {
                let read = quantity(&format!("2.5 {spelling}"), &Reading { gallon }).map(|w| w.unit);
                let read = read.expect("a spelling of the catalogue");
                assert_eq!(read.dim, unit.dim, "{spelling}");
                let same = read.symbol == unit.symbol;
                let imperial = gallon == Some(Gallon::Imperial) && read.symbol.contains("imp");
                assert!(same || imperial, "{spelling} was read as {}", read.symbol);
            }
        }
    }
}
