//! Every assumption can be answered: its key is one that the enquiry, or the row of a range, takes; and what is asked and
//! what stands in for an answer is declared with that key.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use std::collections::BTreeSet;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::{Block, BlockSpec, KeyKind, KeySpec};
use stillrise_design::enquiry::range::Model;
use stillrise_design::enquiry::spec::without_options;
use stillrise_design::provenance::Origin;
use stillrise_units::parse::{Gallon, Reading, quantity_of};

/// The key of a block by its path, also one of a table in it.
fn key_in(block: &'static BlockSpec, key: &str) -> Option<&'static KeySpec> {
    let (first, rest) = key.split_once('.').map_or((key, None), |(first, rest)| (first, Some(rest)));
    // Items of a list are numbered from one.
    let first = first.split([' ', '[']).next().unwrap_or(first);
    let spec = block.keys().into_iter().find(|spec| spec.name == first)?;
    match (rest, &spec.kind) {
        (None, _) => Some(spec),
        (Some(rest), KeyKind::Table(inner)) => key_in(inner(), rest),
        (Some(_), _) => None,
    }
}

/// The key of any block of the enquiry, or of a row of a range, by its path: `stream "wash".oil.mean`.
fn key(path: &str) -> Option<&'static KeySpec> {
    let name_ends = path.rfind('"').map_or(0, |at| at + 1);
    let (named, plain) = path.split_at(name_ends);
    let (block, rest) = match (named.split_once(" \""), plain.split_once('.')) {
        (Some((block, _)), Some((_, rest))) => (block, rest),
        (None, Some((block, rest))) => (block, rest),
        _ => return None,
    };
    // One of several of a name is counted: `limit 2 "oil and grease"`.
    let block = block.split(' ').next().unwrap_or(block);
    let found = blocks().find(|(spec, _)| spec.name == block).and_then(|(spec, _)| key_in(spec, rest));
    found.or_else(|| (block == Model::spec().name).then(|| key_in(Model::spec(), rest)).flatten())
}

/// Whether a question is one that is declared, with words in place of its placeholders.
fn is_declared(question: &str, declared: &str) -> bool {
    let Some((before, (option, behind))) =
        declared.split_once('[').and_then(|(before, after)| Some((before, after.split_once(']')?)))
    else {
        return is_filled(question, declared);
    };
    is_declared(question, &[before, behind].concat()) || is_declared(question, &[before, option, behind].concat())
}

fn is_filled(question: &str, declared: &str) -> bool {
    let Some((before, (_, behind))) =
        declared.split_once('{').and_then(|(before, after)| Some((before, after.split_once('}')?)))
    else {
        return question == declared;
    };
    let rest = question.strip_prefix(before);
    rest.is_some_and(|rest| rest.char_indices().skip(1).any(|(at, _)| is_filled(&rest[at..], behind)))
}

/// All worked jobs, and bases of other tests that ask for more.
fn sheets() -> Vec<Sheet> {
    let mut sheets = common::worked();
    assert!(sheets.len() >= 8, "{} worked jobs", sheets.len());
    let bases =
        ["basin", "buried", "changed", "laboratory", "mixed", "pit", "pumped", "ranged", "train", "upright", "wash"];
    sheets.extend(bases.map(Sheet::data));
    sheets
}

#[test]
fn what_is_assumed_is_asked_for_and_declared_at_its_key() {
    let range = demo();
    let (mut without, mut asked_otherwise, mut from_nowhere) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
    let mut seen = BTreeSet::new();
    for sheet in sheets() {
        let settled = sheet.settle(&range);
        for entry in &settled.job.ledger.entries {
            let Origin::Assumed(assumption) = &entry.origin else { continue };
            let Some(key) = key(&assumption.key) else {
                without.insert(format!("{} ({})", assumption.key, entry.label));
                continue;
            };
            // Between claims that contradict it is asked which one holds.
            if assumption.contradiction {
                continue;
            }
            seen.insert(key.path);
            let question = &assumption.question;
            if !question.is_empty() && !key.questions().any(|declared| is_declared(question, declared)) {
                asked_otherwise.insert(format!("{}: {question}", assumption.key));
            }
            if key.stands_in().is_none() {
                from_nowhere.insert(assumption.key.clone());
            }
        }
    }
    assert!(without.is_empty(), "no key takes the answer: {without:#?}");
    assert!(asked_otherwise.is_empty(), "not the question of the key: {asked_otherwise:#?}");
    assert!(from_nowhere.is_empty(), "the key does not say what stands in: {from_nowhere:#?}");
    assert!(seen.len() > 60, "{} keys were assumed", seen.len());
}

/// Every key, with those of tables, each once.
fn all_keys() -> Vec<&'static KeySpec> {
    let mut open: Vec<&'static BlockSpec> = blocks().map(|(spec, _)| spec).chain([Model::spec()]).collect();
    let (mut seen, mut keys) = (BTreeSet::new(), Vec::new());
    while let Some(block) = open.pop() {
        if !seen.insert(block.name) {
            continue;
        }
        for key in block.keys() {
            keys.push(key);
            if let KeyKind::Table(inner) = key.kind {
                open.push(inner());
            }
        }
    }
    keys
}

#[test]
fn declared_defaults_are_quantities_within_the_bounds_of_their_keys() {
    let reading = Reading { gallon: Some(Gallon::Us) };
    let mut count = 0;
    for key in all_keys() {
        let Some(usual) = &key.usual else { continue };
        count += 1;
        let KeyKind::Quantity(dim) = key.kind else { panic!("{} holds no quantity", key.path) };
        let si = |text: &str| quantity_of(text, dim, &reading).unwrap_or_else(|f| panic!("{}: {f}", key.path)).si();
        let [low, typical, high] = [usual.low, usual.typical, usual.high].map(si);
        assert!(low <= typical && typical <= high, "{}: {low}, {typical}, {high}", key.path);
        let (least, most) = key.bounds.unwrap_or_else(|| panic!("{} has no bounds", key.path));
        assert!(si(least) <= low && high <= si(most), "{}: {low} to {high}", key.path);
        assert!(!usual.why.to_string().is_empty(), "{} does not say where its default comes from", key.path);
    }
    assert!(count > 60, "{count} keys have a default");
}

#[test]
fn declared_questions_are_whole() {
    for key in all_keys() {
        for question in key.questions() {
            let shown = without_options(question);
            let ends = shown.ends_with('?') || shown.ends_with('.');
            assert!(ends && shown.matches('{').count() == shown.matches('}').count(), "{}: {question}", key.path);
            assert!(!shown.contains(['[', ']']), "{}: {question}", key.path);
        }
        let others = key.asks_when.iter().any(|(_, question)| !question.is_empty());
        assert!(!others || !key.asks.is_empty(), "{} is asked in a situation only", key.path);
    }
}

#[test]
fn a_key_is_found_where_it_stands() {
    for path in ["unit.lip_margin", "stream \"a wash\".oil.mean", "model \"M 1\".baffle_gap", "unit.dimensions.lip"] {
        assert!(key(path).is_some(), "{path}");
    }
    for path in ["unit.colour", "stream \"a wash\".oil.colour", "model \"M 1\".colour", "colour"] {
        assert!(key(path).is_none(), "{path}");
    }
}
