//! A key of an enquiry as the program calls it: `water.coldest`, `stream "wash".oil.mean`, `inlet.rate.2`.

use crate::heading::Heading;
use core::fmt;
use core::str::FromStr;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_units::{Dim, Fault, nearest};

/// A key where it stands, or would stand.
#[derive(Clone)]
pub struct Path {
    heading: Heading,
    tables: Vec<&'static KeySpec>,
    key: &'static KeySpec,
    item: Option<usize>,
}

impl Path {
    /// A key of a block, by its name and those of the tables that it stands in: `oil.mean`.
    ///
    /// # Errors
    /// A name is that of no key there; the nearest is named.
    pub fn new(heading: Heading, keys: &str) -> Result<Self, Fault> {
        let mut block = heading.block();
        let mut tables = Vec::new();
        let mut names = keys.split('.');
        loop {
            let place = || tables.iter().fold(heading.to_string(), |at, t: &&KeySpec| format!("{at}.{}", t.name));
            let name = names.next().unwrap_or_default();
            let key = known(block, name).map_err(|fault| fault.at(&place()))?;
            let rest: Vec<&str> = names.clone().collect();
            match (key.kind, rest.as_slice()) {
                (_, []) => return Ok(Self { heading, tables, key, item: None }),
                (KeyKind::Table(inner), _) => {
                    tables.push(key);
                    block = inner();
                }
                (KeyKind::Quantities(_), [item]) if item.parse::<usize>().is_ok_and(|n| (1..=MOST).contains(&n)) => {
                    let item = item.parse().ok();
                    return Ok(Self { heading, tables, key, item });
                }
                _ => {
                    let reason = format!("\"{name}\" has no keys of its own");
                    return Err(Fault::new(format!("{}.{name}", place()), reason, "leave out what stands behind it"));
                }
            }
        }
    }
    /// The same key as a whole, not one of the things that it lists.
    #[must_use]
    pub fn without_item(&self) -> Self {
        Self { item: None, ..self.clone() }
    }
    /// The same for one of the things that the key lists, from 1.
    pub(crate) fn with_item(&self, item: usize) -> Self {
        Self { item: Some(item), ..self.clone() }
    }
    /// The same key in another block of its kind.
    pub(crate) fn under(&self, heading: &Heading) -> Self {
        Self { heading: heading.clone(), ..self.clone() }
    }
    /// A key that is known.
    pub(crate) fn known(heading: &Heading, tables: &[&'static KeySpec], key: &'static KeySpec) -> Self {
        Self { heading: heading.clone(), tables: tables.to_vec(), key, item: None }
    }
    /// The block that it stands in.
    #[must_use]
    pub fn heading(&self) -> &Heading {
        &self.heading
    }
    /// That block as declared.
    #[must_use]
    pub fn block(&self) -> &'static BlockSpec {
        self.heading.block()
    }
    /// The tables in the block that lead to it.
    #[must_use]
    pub fn tables(&self) -> &[&'static KeySpec] {
        &self.tables
    }
    /// The key as declared.
    #[must_use]
    pub fn key(&self) -> &'static KeySpec {
        self.key
    }
    /// Which of the things that the key lists is meant, from 1; none where it is the whole list.
    #[must_use]
    pub fn item(&self) -> Option<usize> {
        self.item
    }
    /// What the key holds; of one of several things what is held of it.
    #[must_use]
    pub fn kind(&self) -> KeyKind {
        match (self.key.kind, self.item) {
            (KeyKind::Quantities(dim), Some(_)) => KeyKind::Quantity(dim),
            (kind, _) => kind,
        }
    }
    /// What it measures; nothing where it holds no quantity.
    #[must_use]
    pub fn dim(&self) -> Option<Dim> {
        match self.key.kind {
            KeyKind::Quantity(dim) | KeyKind::Quantities(dim) | KeyKind::Results(dim) => Some(dim),
            _ => None,
        }
    }
    /// The names of its tables and its own.
    pub(crate) fn keys(&self) -> impl Iterator<Item = &'static KeySpec> {
        self.tables.iter().copied().chain([self.key])
    }
}

/// More things than that are listed by no key.
const MOST: usize = 1000;

fn known(block: &'static BlockSpec, name: &str) -> Result<&'static KeySpec, Fault> {
    let keys = block.keys();
    keys.iter().copied().find(|key| key.name == name).ok_or_else(|| {
        let remedy = match nearest(name, keys.iter().map(|key| key.name)) {
            Some(near) if !name.is_empty() => format!("did you mean \"{near}\"?"),
            _ => format!("the keys here are {}", keys.iter().map(|key| key.name).collect::<Vec<_>>().join(", ")),
        };
        Fault::new("", format!("\"{name}\" is not a key of this block"), remedy)
    })
}

impl FromStr for Path {
    type Err = Fault;
    fn from_str(text: &str) -> Result<Self, Fault> {
        let (heading, rest) = Heading::lead(text.trim())?;
        Self::new(heading, rest.strip_prefix('.').unwrap_or(rest))
    }
}

impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.heading)?;
        self.keys().try_for_each(|key| write!(f, ".{}", key.name))?;
        self.item.map_or(Ok(()), |item| write!(f, ".{item}"))
    }
}

impl fmt::Debug for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")
    }
}

impl PartialEq for Path {
    fn eq(&self, other: &Self) -> bool {
        let same = |(a, b): (&KeySpec, &KeySpec)| core::ptr::eq(a, b);
        self.heading == other.heading
            && self.item == other.item
            && self.tables.len() == other.tables.len()
            && self.keys().zip(other.keys()).all(same)
    }
}

impl Eq for Path {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_print_as_they_are_read() -> Result<(), Fault> {
        for (text, dim) in [
            ("water.coldest", Some(Dim::Temperature)),
            ("stream \"wash\".oil.mean", Some(Dim::Density)),
            ("stream 2.flow", Some(Dim::Flow)),
            ("limit 2 \"oil and grease\".value", Some(Dim::Density)),
            ("unit.dimensions.length", Some(Dim::Length)),
            ("inlet.rate.2", Some(Dim::Flow)),
            ("stream \"a: \"b\". 2\".flow", Some(Dim::Flow)),
            ("stream.flow", Some(Dim::Flow)),
            ("rain.oil", None),
        ] {
            let path: Path = text.parse()?;
            assert_eq!((path.to_string().as_str(), path.dim()), (text, dim));
        }
        Ok(())
    }

    #[test]
    fn what_is_no_path_is_refused_with_the_nearest() {
        for (text, words) in [
            ("water.coldset", "water: \"coldset\" is not a key of this block; did you mean \"coldest\"?"),
            (
                "stream \"wash\".oil.maen",
                "stream \"wash\".oil: \"maen\" is not a key of this block; did you mean \"mean\"?",
            ),
            ("watr.coldest", "did you mean \"water\"?"),
            ("water", "the keys here are coldest"),
            ("water.coldest.mean", "has no keys of its own"),
            ("inlet.rate.0", "has no keys of its own"),
        ] {
            let fault = text.parse::<Path>().err().map(|f| f.to_string()).unwrap_or_default();
            assert!(fault.contains(words), "{text}: {fault}");
        }
    }
}
