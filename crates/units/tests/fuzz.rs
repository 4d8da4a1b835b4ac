//! Anything may be written where a quantity is wanted: it is read or refused with a remedy, never a panic.
//! Runs for `STILLRISE_FUZZ_SECONDS`, 5 when nothing is said.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use proptest::sample::select;
use proptest::test_runner::{Config, TestRunner};
use std::cell::Cell;
use std::time::{Duration, Instant};
use stillrise_units::catalog::UNITS;
use stillrise_units::parse::{Written, quantity, quantity_of};
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
        (1_usize..400).prop_map(|n| "9".repeat(n)),
    ]
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
