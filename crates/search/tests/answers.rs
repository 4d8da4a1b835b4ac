//! Every assumption can be answered: its key is one that the enquiry, or the row of a range, takes.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use std::collections::BTreeSet;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::{Block, BlockSpec, KeyKind};
use stillrise_design::enquiry::range::Model;
use stillrise_design::provenance::Origin;

/// Whether a block takes a key, also one of a table in it.
fn takes(block: &BlockSpec, key: &str) -> bool {
    let (first, rest) = key.split_once('.').map_or((key, None), |(first, rest)| (first, Some(rest)));
    // Items of a list are numbered from one.
    let first = first.split([' ', '[']).next().unwrap_or(first);
    block.keys.iter().filter(|spec| spec.name == first).any(|spec| match (rest, &spec.kind) {
        (None, _) => true,
        (Some(rest), KeyKind::Table(inner)) => takes(inner(), rest),
        (Some(_), _) => false,
    })
}

/// Whether any block of the enquiry, or a row of a range, takes it: `stream "wash".oil.mean`.
fn is_a_key(key: &str) -> bool {
    let name_ends = key.rfind('"').map_or(0, |at| at + 1);
    let (named, plain) = key.split_at(name_ends);
    let (block, rest) = match (named.split_once(" \""), plain.split_once('.')) {
        (Some((block, _)), Some((_, rest))) => (block, rest),
        (None, Some((block, rest))) => (block, rest),
        _ => return false,
    };
    // One of several of a name is counted: `limit 2 "oil and grease"`.
    let block = block.split(' ').next().unwrap_or(block);
    blocks().any(|(spec, _)| spec.name == block && takes(spec, rest))
        || block == Model::spec().name && takes(Model::spec(), rest)
}

#[test]
fn no_assumption_stands_that_no_key_can_answer() {
    let range = demo();
    let mut without = BTreeSet::new();
    let mut sheets = common::worked();
    assert!(sheets.len() >= 8, "{} worked jobs", sheets.len());
    let bases =
        ["basin", "buried", "changed", "laboratory", "mixed", "pit", "pumped", "ranged", "train", "upright", "wash"];
    sheets.extend(bases.map(Sheet::data));
    for sheet in sheets {
        let settled = sheet.settle(&range);
        for entry in &settled.job.ledger.entries {
            if let Origin::Assumed(assumption) = &entry.origin
                && !is_a_key(&assumption.key)
            {
                without.insert(format!("{} ({})", assumption.key, entry.label));
            }
        }
    }
    assert!(without.is_empty(), "{without:#?}");
}

#[test]
fn a_key_is_found_where_it_stands() {
    for key in ["unit.lip_margin", "stream \"a wash\".oil.mean", "model \"M 1\".baffle_gap", "unit.dimensions.lip"] {
        assert!(is_a_key(key), "{key}");
    }
    for key in ["unit.colour", "stream \"a wash\".oil.colour", "model \"M 1\".colour", "colour"] {
        assert!(!is_a_key(key), "{key}");
    }
}
