//! Which key of the enquiry something belongs to, by how it is declared.

use super::blocks::{CaseBlock, Containment, Dump, Rain, Stated, Stream};
use super::key::Key;
use super::keys::{Block, KeySpec};

/// How the key of something is declared; nothing where it has none of its own. Two are the same where they are declared in
/// one line, wherever their block stands.
#[derive(Clone, Copy, Default)]
pub struct Declared(pub Option<&'static KeySpec>);

impl Declared {
    /// Whether it is this key: `declared.is(OilContent::mean)`.
    #[must_use]
    pub fn is<B: Default, F: 'static>(self, key: for<'a> fn(&'a B) -> Key<'a, F>) -> bool {
        self.0.is_some_and(|spec| core::ptr::eq(spec, key(&B::default()).spec))
    }
    /// Whether it is any key of a block itself.
    #[must_use]
    pub fn is_of<B: Block>(self) -> bool {
        self.0.is_some_and(|spec| B::spec().own.iter().any(|own| core::ptr::eq(own, spec)))
    }
    /// Whether it is any key of a block or of a part of it: `declared.is_within::<Model>()` of every dimension of a unit.
    #[must_use]
    pub fn is_within<B: Block>(self) -> bool {
        self.0.is_some_and(|spec| B::spec().declares(spec))
    }
    /// Whether it is the suspended solids of some water.
    #[must_use]
    pub fn is_solids(self) -> bool {
        self.is(Stream::solids)
            || self.is(Rain::solids)
            || self.is(Stated::solids)
            || self.is(CaseBlock::solids)
            || self.is(Dump::solids)
            || self.is(Containment::solids)
    }
}

impl PartialEq for Declared {
    fn eq(&self, other: &Self) -> bool {
        match (self.0, other.0) {
            (Some(a), Some(b)) => core::ptr::eq(a, b),
            (None, None) => true,
            _ => false,
        }
    }
}

impl Eq for Declared {}

impl core::fmt::Debug for Declared {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.0.map_or("no key", |spec| spec.path))
    }
}
