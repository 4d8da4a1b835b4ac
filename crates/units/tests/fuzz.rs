//! Anything may be written where a quantity is wanted: it is read or refused with a remedy, never a panic.
//! Runs for `STILLRISE_FUZZ_SECONDS`, 5 when nothing is said.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use std::time::{Duration, Instant};
use stillrise_units::parse::quantity;
use stillrise_units::{Gallon, Reading};

fn seconds() -> u64 {
    std::env::var("STILLRISE_FUZZ_SECONDS").ok().and_then(|s| s.parse().ok()).unwrap_or(5)
}

fn texts() -> impl Strategy<Value = String> {
    prop_oneof![
        any::<String>(),
        "[-+]?[0-9]{0,9}[.,]?[0-9]{0,9}([eE][-+]?[0-9]{1,4})? ?[a-zA-Z°µ/%23²³ ]{0,12}",
        "[-+.,_eE0-9]{1,24}(gpm|gal|mg/L|ppm|°F|in|ft2| )?",
        r"\PC{0,40}",
    ]
}

#[test]
fn any_text_is_read_or_refused_with_a_remedy() {
    let end = Instant::now() + Duration::from_secs(seconds());
    let mut count = 0;
    while Instant::now() < end {
        let mut runner = TestRunner::new(Config { cases: 2000, failure_persistence: None, ..Config::default() });
        runner
            .run(&texts(), |text| {
                for gallon in [None, Some(Gallon::Us), Some(Gallon::Imperial)] {
                    match quantity(&text, &Reading { gallon }) {
                        Ok(written) => {
                            prop_assert!(written.value.is_finite());
                            let again = quantity(&written.text, &Reading { gallon })
                                .map_err(|f| TestCaseError::fail(f.to_string()))?;
                            prop_assert_eq!(written.si().to_bits(), again.si().to_bits());
                        }
                        Err(fault) => prop_assert!(!fault.reason.is_empty() && !fault.remedy.is_empty()),
                    }
                }
                Ok(())
            })
            .expect("no text breaks the reader");
        count += 2000;
    }
    assert!(count >= 2000);
}
