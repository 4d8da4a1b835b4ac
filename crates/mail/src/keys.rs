//! The keys that a text may answer: every quantity of an enquiry with its path, as the file writes it.

use std::sync::LazyLock;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_units::Dim;
use stillrise_units::parse::{Reading, quantity_of};

/// A key of an enquiry.
#[derive(Debug, Clone)]
pub struct Place {
    /// Its path without names: `stream.oil.mean`.
    pub path: String,
    /// The block that it stands in.
    pub block: &'static BlockSpec,
    /// Whether there may be several such blocks.
    pub many: bool,
    /// The key as declared.
    pub key: &'static KeySpec,
    /// The least and the largest value that it takes, in SI, as far as it is bounded.
    ends: (Option<f64>, Option<f64>),
}

impl Place {
    /// What it measures; nothing where it holds no quantity.
    #[must_use]
    pub fn dim(&self) -> Option<Dim> {
        measures(self.key)
    }

    /// Whether a value lies within what the key takes.
    #[must_use]
    pub fn takes(&self, si: f64) -> bool {
        self.ends.0.is_none_or(|low| si >= low) && self.ends.1.is_none_or(|high| si <= high)
    }
}

/// What a key measures; nothing where it holds no quantity.
fn measures(key: &KeySpec) -> Option<Dim> {
    match key.kind {
        KeyKind::Quantity(dim) | KeyKind::Quantities(dim) => Some(dim),
        _ => None,
    }
}

/// The bounds of a key, read once for all texts.
fn ends(key: &KeySpec) -> (Option<f64>, Option<f64>) {
    let Some((dim, (low, high))) = measures(key).zip(key.bounds) else { return (None, None) };
    let end = |text: &str| quantity_of(text, dim, &Reading::default()).map(|w| w.si()).ok();
    (end(low), end(high))
}

/// All keys of an enquiry.
pub static PLACES: LazyLock<Vec<Place>> = LazyLock::new(|| {
    let mut all = Vec::new();
    for (block, many) in blocks() {
        gather(block.name, block, (block, many), &mut all);
    }
    all
});

fn gather(path: &str, of: &'static BlockSpec, (block, many): (&'static BlockSpec, bool), all: &mut Vec<Place>) {
    for key in of.keys() {
        let own = format!("{path}.{}", key.name);
        if let KeyKind::Table(inner) = key.kind {
            gather(&own, inner(), (block, many), all);
        } else {
            all.push(Place { path: own, block, many, key, ends: ends(key) });
        }
    }
}

/// The key of a path.
#[must_use]
pub fn place(path: &str) -> Option<&'static Place> {
    PLACES.iter().find(|place| place.path == path)
}
