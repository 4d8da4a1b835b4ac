//! The words and symbols that this very document uses, each with what it means.

use super::blocks::{Table, wide};
use super::{Report, capital};
use serde_json::Value;
use stillrise_handbook::manual::WORDS;
use stillrise_handbook::manual::words::symbols_of;
use stillrise_handbook::pages;

/// The last section of a paper; what stands behind it in the paper is not looked at.
pub(super) fn glossary(r: &mut Report<'_>) {
    let mut said = String::new();
    r.out.0.iter().for_each(|block| texts(block, "", &mut said));
    let small = said.to_lowercase();
    let mut words = Table::new([wide("Word", 0.6), wide("What it means here", 3.0)]);
    for w in WORDS.iter().filter(|w| w.is_used_in(&small)) {
        words.row([capital(w.word), w.says.to_owned()]);
    }
    // An equation is written out where a formula is first worked, by its title.
    let shown = pages().filter(|page| r.out.0.iter().any(|block| works(block, page.title)));
    let mut symbols = Table::new([wide("Symbol", 0.6), wide("What it is", 3.0)]);
    for s in symbols_of(shown) {
        symbols.row([s.symbol, capital(s.meaning)]);
    }
    if words.is_empty() && symbols.is_empty() {
        return;
    }
    r.out.section("Words and symbols");
    r.out.table(&words);
    r.out.table(&symbols);
}

/// Every text of a block; names of kinds and files are none.
fn texts(value: &Value, key: &str, out: &mut String) {
    match value {
        Value::String(text) if key != "t" && key != "file" => {
            out.push_str(text);
            out.push('\n');
        }
        Value::Array(all) => all.iter().for_each(|one| texts(one, key, out)),
        Value::Object(all) => all.iter().for_each(|(key, one)| texts(one, key, out)),
        _ => {}
    }
}

/// Whether a block works a formula with its symbols.
fn works(block: &Value, title: &str) -> bool {
    let rows = block["rows"].as_array().map_or(&[][..], Vec::as_slice);
    rows.iter().any(|row| {
        row["with"].is_array() && row["origin"].as_str().is_some_and(|origin| origin == format!("by {title}"))
    })
}
