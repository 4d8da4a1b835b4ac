//! Every key of every worked job: set to what it says, set and set back, taken out; what stands in the text and where.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::{after, comments, is_toml, jobs, set, told};
use stillrise_design::enquiry::keys::KeyKind;
use stillrise_edit::{Action, apply, mark, said, span_of};

#[test]
fn a_key_set_to_its_own_value_changes_nothing() {
    let mut keys = 0;
    for job in jobs() {
        for said in said(&job.text).expect("TOML") {
            let [claim] = said.claims.as_slice() else { continue };
            for from in [None, claim.from.as_deref()] {
                let action = set(&said.path, &claim.value, from);
                assert_eq!(after(&job.text, &action), job.text, "{}", action.says());
            }
            keys += 1;
        }
    }
    assert!(keys > 300, "{keys} keys");
}

#[test]
fn a_key_set_and_set_back_reads_the_same_and_keeps_all_comments() {
    let (mut keys, mut same) = (0, 0);
    for job in jobs() {
        let (before, all) = (told(&job.read(&job.text)), comments(&job.text));
        assert!(before.starts_with("Ok"), "{before}");
        for said in said(&job.text).expect("TOML") {
            let [claim] = said.claims.as_slice() else { continue };
            // The names of streams and products are said elsewhere too, and lead to their blocks.
            if matches!(said.path.key().name, "name" | "product" | "pollutant" | "rule") {
                continue;
            }
            let other = if matches!(said.path.kind(), KeyKind::Flag) { "perhaps" } else { "7 of 9" };
            let changed = after(&job.text, &set(&said.path, other, None));
            assert_ne!(changed, job.text, "{}", said.path);
            assert_eq!(comments(&changed), all, "{}", said.path);
            let back = after(&changed, &set(&said.path, &claim.value, claim.from.as_deref()));
            assert_eq!(comments(&back), all, "{}", said.path);
            assert_eq!(told(&job.read(&back)), before, "{}\n{back}", said.path);
            keys += 1;
            same += usize::from(back == job.text);
        }
    }
    assert!(keys > 250 && same * 100 > keys * 95, "{same} of {keys} byte for byte");
}

#[test]
fn of_several_claims_one_is_left_and_no_comment_goes() {
    let mut several = 0;
    for job in jobs() {
        for said in said(&job.text).expect("TOML").into_iter().filter(|said| said.claims.len() > 1) {
            for claim in &said.claims {
                let out = after(&job.text, &set(&said.path, &claim.value, claim.from.as_deref()));
                let left = said_of(&out, &said.path.to_string());
                assert_eq!((left.len(), &left[0].value, &left[0].from), (1, &claim.value, &claim.from));
                assert_eq!(comments(&out), comments(&job.text));
                several += 1;
            }
        }
    }
    assert!(several >= 2, "{several}");
}

fn said_of(text: &str, path: &str) -> Vec<stillrise_edit::Claimed> {
    let all = said(text).expect("TOML");
    all.into_iter().find(|said| said.path.to_string() == path).map(|said| said.claims).unwrap_or_default()
}

#[test]
fn a_key_taken_out_is_gone_and_the_rest_is_said_as_before() {
    for job in jobs() {
        let before = said(&job.text).expect("TOML");
        for said in &before {
            let out = after(&job.text, &Action::Unset { path: said.path.clone() });
            let left = stillrise_edit::said(&out).expect("TOML");
            let rest = || before.iter().filter(|other| other.path != said.path);
            // A block that lost its name is called otherwise.
            let is_name = matches!(said.path.key().name, "name" | "product" | "pollutant" | "rule");
            assert_eq!(left.len(), before.len() - 1, "{}", said.path);
            for (left, right) in left.iter().zip(rest()).filter(|_| !is_name) {
                assert_eq!(left.path, right.path);
                let values =
                    |said: &stillrise_edit::Said| said.claims.iter().map(|c| c.value.clone()).collect::<Vec<_>>();
                assert_eq!(values(left), values(right), "{}", left.path);
            }
            let _ = job.read(&out);
            assert_eq!(apply(&out, &Action::Unset { path: said.path.clone() }).unwrap_or(out.clone()), out);
            let back = set(&said.path, &said.claims[0].value, said.claims[0].from.as_deref());
            let Ok(back) = apply(&out, &back) else { continue };
            is_toml(&back);
            if said.claims.len() == 1 && said.claims[0].low.is_none() {
                let values = |text: &str| {
                    let mut all: Vec<String> = stillrise_edit::said(text)
                        .expect("TOML")
                        .iter()
                        .map(|said| format!("{} {:?} {:?}", said.path, said.claims[0].value, said.claims[0].from))
                        .collect();
                    all.sort();
                    all
                };
                assert_eq!(values(&back), values(&job.text), "{}\n{back}", said.path);
            }
        }
    }
}

#[test]
fn blocks_are_taken_out_one_by_one() {
    for job in jobs() {
        let mut text = job.text.clone();
        let mut left = said(&text).expect("TOML");
        while let Some(first) = left.first() {
            let heading = first.path.heading().clone();
            text = after(&text, &Action::RemoveBlock { heading: heading.clone() });
            let now = said(&text).expect("TOML");
            assert!(now.len() < left.len(), "{heading}\n{text}");
            left = now;
        }
        assert!(!text.contains("\n["), "{text}");
    }
}

/// What the program calls a key that it read is found in the text, where it was said.
#[test]
fn paths_of_the_program_lead_to_what_it_read() {
    for job in jobs() {
        let enquiry = job.read(&job.text).unwrap_or_else(|faults| panic!("{faults:?}"));
        let listed: Vec<String> = said(&job.text).expect("TOML").iter().map(|said| said.path.to_string()).collect();
        let mut found = 0;
        // Two limits on one pollutant are read under one name, and told apart only where their numbers are asked for.
        let is_one = |place: &str| !place.starts_with("limit");
        let claimed = enquiry.claimed().into_iter().filter(|claimed| !claimed.lines().is_empty());
        for claimed in claimed.filter(|claimed| is_one(claimed.place())) {
            let name = claimed.path();
            let at = name.parse().ok().and_then(|path| span_of(&job.text, &path));
            let at = at.unwrap_or_else(|| panic!("{name} is not found"));
            for line in claimed.lines().iter().filter(|line| !line.text.contains("; ")) {
                assert!(job.text[at.clone()].contains(line.text), "{name}: {}", line.text);
            }
            assert!(mark(&job.text, claimed.place()).is_some(), "{}", claimed.place());
            found += usize::from(listed.contains(&name));
        }
        assert!(found > 5, "{found}");
        let streams = enquiry.streams.iter().filter(|s| s.flow.is_given()).map(|s| s.flow().path().into_owned());
        let limits = enquiry.limits.iter().filter(|l| l.value.is_given()).map(|l| l.value().path().into_owned());
        for name in streams.chain(limits) {
            assert!(listed.contains(&name), "{name} of {listed:?}");
        }
    }
}
