//! The machinery behind the keys: each key is declared once, in `blocks/`, `shear.rs`, `range.rs` or the file of its stage, and
//! the reader, the schema, `new` and the documentation follow from that line.

use super::declared::Declared;
use super::distribution::Distribution;
pub use super::key::{Key, Place};
use super::paired::PAIRED;
use super::reader::Reader;
use super::said::Claimed;
pub use super::spec::{KeySpec, Safe};
use stillrise_units::{Dim, Typed, parse::Written};
use toml::de::DeValue;

/// What a key holds.
#[derive(Debug, Clone, Copy)]
pub enum KeyKind {
    /// Free text.
    Text,
    /// A text of this form, a regular expression.
    Pattern(&'static str),
    /// A quantity, possibly with its source, possibly claimed more than once.
    Quantity(Dim),
    /// A list of quantities, one for each thing.
    Quantities(Dim),
    /// One of a closed set of words: word, meaning.
    Choice(&'static [(&'static str, &'static str)]),
    /// Such a word, possibly with its source, possibly claimed more than once.
    ClaimedChoice(&'static [(&'static str, &'static str)]),
    /// One of the names of a list of the handbook.
    Named(fn() -> Vec<String>),
    /// A list of texts.
    Texts,
    /// A list of laboratory results, some below a reporting limit.
    Results(Dim),
    /// Rows of a curve, each a size and a share.
    Curve,
    /// Yes or no.
    Flag,
    /// A whole number, one or more.
    Count,
    /// Several keys of their own.
    Table(fn() -> &'static BlockSpec),
}

/// One block of a file.
#[derive(Debug)]
pub struct BlockSpec {
    /// Its name in the file.
    pub name: &'static str,
    /// What it holds.
    pub doc: &'static str,
    /// The keys that it declares itself.
    pub own: &'static [KeySpec],
    /// Blocks whose keys stand among its own: each stage of a unit declares those of its dimensions.
    pub parts: &'static [fn() -> &'static BlockSpec],
}

impl BlockSpec {
    /// Its keys, with those of its parts.
    #[must_use]
    pub fn keys(&self) -> Vec<&'static KeySpec> {
        self.own.iter().chain(self.parts.iter().flat_map(|part| part().keys())).collect()
    }
    /// Whether it or a part of it declares a key.
    #[must_use]
    pub fn declares(&self, key: &KeySpec) -> bool {
        self.own.iter().any(|own| core::ptr::eq(own, key)) || self.parts.iter().any(|part| part().declares(key))
    }
}

/// A block with its keys.
pub trait Block: Default + Clone {
    /// The block as declared.
    fn spec() -> &'static BlockSpec;
    /// One that stands there, of which nobody said a word.
    #[must_use]
    fn standing(at: Place) -> Self {
        let mut block = Self::default();
        block.stand(at);
        block
    }
    /// Says where it stands, and with it where its tables stand.
    fn stand(&mut self, at: Place);
    /// Whether anything was said of one of its keys.
    fn is_said(&self, key: &str) -> bool;
    /// Reads one key of it. `false` when there is no such key.
    fn read_key(&mut self, key: &str, reader: &mut Reader, place: &str, value: &DeValue<'_>) -> bool;
    /// Its keys that hold no quantity, with those of the tables in it.
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>);
    /// The same, so that another claim may be taken.
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>);
    /// Its quantities on which claims differ and nobody chose, with those of the tables in it.
    fn differing<'a>(&'a self, found: &mut Vec<Differing<'a>>);
}

/// A quantity on which claims differ and nobody chose.
#[derive(Debug, Clone, Copy)]
pub struct Differing<'a> {
    /// Where it stands.
    pub place: &'a str,
    /// How its key is declared.
    pub declared: Declared,
    /// The claims.
    pub claims: &'a [Claim],
    /// The one that is designed for.
    pub taken: &'a Claim,
}

/// What can be the value of a key.
pub trait Field: Default {
    /// Its kind.
    const KIND: KeyKind;
    /// Reads it; faults go to the reader.
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self;
    /// Whether anything was said.
    fn is_said(&self) -> bool;
    /// Says where the table under it stands, if it is one.
    fn stand(&mut self, _: impl FnOnce() -> Place) {}
    /// What it holds besides quantities.
    fn claimed<'a>(&'a self, _: &mut Vec<&'a dyn Claimed>) {}
    /// The same, so that another claim may be taken.
    fn claimed_mut<'a>(&'a mut self, _: &mut Vec<&'a mut dyn Claimed>) {}
    /// What of its quantities claims differ on and nobody chose.
    fn differing<'a>(&'a self, _: &mut Vec<Differing<'a>>) {}
}

/// Why a claim is taken among contradicting ones.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Because {
    /// As a person says.
    Said(String),
    /// It is the level of the outlet that is taken, and no person chose it.
    Paired,
}

impl core::fmt::Display for Because {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(match self {
            Because::Said(text) => text,
            Because::Paired => PAIRED,
        })
    }
}

/// One claim on a quantity.
#[derive(Debug, Clone)]
pub struct Claim {
    /// As written, with its unit.
    pub written: Written,
    /// Where it comes from, if said.
    pub from: Option<String>,
    /// Whether a person chose it among contradicting ones.
    pub chosen: bool,
    /// Why.
    pub because: Option<Because>,
    /// Lowest and highest value it may have, if said, and how it spreads between.
    pub range: Option<(Written, Written, Distribution)>,
}

/// A quantity with all claims on it; empty when nobody said.
#[derive(Debug, Clone)]
pub struct Quantity<Q> {
    /// The claims, in the order of the file.
    pub claims: Vec<Claim>,
    /// The key as declared.
    pub spec: Option<&'static KeySpec>,
    /// Where it stands: `stream "bus wash rinse": flow`.
    pub place: String,
    of: core::marker::PhantomData<Q>,
}

impl<Q> Default for Quantity<Q> {
    fn default() -> Self {
        Self { claims: Vec::new(), spec: None, place: String::new(), of: core::marker::PhantomData }
    }
}

impl<Q: Typed> Quantity<Q> {
    /// With these claims.
    #[must_use]
    pub fn new(claims: Vec<Claim>, spec: &'static KeySpec, place: &str) -> Self {
        Self { claims, spec: Some(spec), place: place.to_owned(), of: core::marker::PhantomData }
    }
    /// Whether anybody said anything.
    #[must_use]
    pub fn is_given(&self) -> bool {
        !self.claims.is_empty()
    }
    /// Whether the claims differ.
    #[must_use]
    pub fn is_contradicted(&self) -> bool {
        let mut values = self.claims.iter().map(|c| c.written.si().to_bits());
        let first = values.next();
        values.any(|value| Some(value) != first)
    }
    /// The claim to design for: the one a person chose, else the safe one.
    #[must_use]
    pub fn claim(&self) -> Option<&Claim> {
        let safe = self.spec.map_or(Safe::First, |s| s.safe);
        self.claims.iter().find(|c| c.chosen).or_else(|| {
            let mut best = self.claims.first()?;
            for claim in &self.claims {
                let better = match safe {
                    Safe::Larger => claim.written.si() > best.written.si(),
                    Safe::Smaller => claim.written.si() < best.written.si(),
                    Safe::First => false,
                };
                if better {
                    best = claim;
                }
            }
            Some(best)
        })
    }
    /// The number to design for.
    #[must_use]
    pub fn q(&self) -> Option<Q> {
        self.claim().map(|c| Q::from_si(c.written.si()))
    }
}

/// The name of a key in the file: its field's, or the word it is given because the field's cannot be had.
macro_rules! key_name {
    ($key:ident) => {
        stringify!($key)
    };
    ($key:ident $word:literal) => {
        $word
    };
}
pub(crate) use key_name;

/// The path of a key whose block stands alone.
macro_rules! key_path {
    ($block:literal $key:ident) => {
        concat!($block, ".", stringify!($key))
    };
    ($block:literal $key:ident $word:literal) => {
        concat!($block, ".", $word)
    };
}
pub(crate) use key_path;

/// Declares a block: a struct, its keys, and how to read it. One line a key.
macro_rules! keys {
    (
        $(#[doc = $bdoc:literal])+
        $block:ident $name:literal {
            $( $(#[doc = $doc:literal])+ $key:ident $(as $word:literal)? : $ty:ty = $spec:ident $(. $method:ident ( $($arg:expr),* ))* ; )*
        } $(with {
            $( $(#[doc = $pdoc:literal])+ $part:ident : $pty:ty ; )+
        })?
    ) => {
        $(#[doc = $bdoc])+
        #[derive(Debug, Clone)]
        pub struct $block {
            /// Where it stands.
            pub at: $crate::enquiry::keys::Place,
            $( $(#[doc = $doc])+ pub $key: $ty, )*
            $( $( $(#[doc = $pdoc])+ pub $part: $pty, )+ )?
        }

        impl Default for $block {
            fn default() -> Self {
                Self { at: $crate::enquiry::keys::Place::plain($name), $( $key: Default::default(), )* $( $( $part: Default::default(), )+ )? }
            }
        }

        const _: () = {
            /// The keys in their order, each by its field's name.
            #[allow(dead_code, non_camel_case_types, clippy::upper_case_acronyms)]
            enum Nth { $( $key, )* }
            impl $block {
                $(
                    $(#[doc = $doc])+
                    #[must_use]
                    pub fn $key(&self) -> $crate::enquiry::keys::Key<'_, $ty> {
                        let keys = <Self as $crate::enquiry::keys::Block>::spec().own;
                        $crate::enquiry::keys::Key::new(&self.$key, &keys[Nth::$key as usize], &self.at)
                    }
                )*
            }
        };

        impl $crate::enquiry::keys::Block for $block {
            fn spec() -> &'static $crate::enquiry::keys::BlockSpec {
                const NAMES: &[&str] = &[$(stringify!($key)),*];
                const COUNT: usize = NAMES.len();
                static KEYS: [$crate::enquiry::keys::KeySpec; COUNT] = [$(
                    $crate::enquiry::keys::KeySpec::new(
                        $crate::enquiry::keys::key_name!($key $($word)?),
                        $crate::enquiry::keys::key_path!($name $key $($word)?),
                        concat!($($doc),+).trim_ascii(),
                        <$ty as $crate::enquiry::keys::Field>::KIND,
                    ) $(. $method ($($arg),*))*
                ),*];
                static SPEC: $crate::enquiry::keys::BlockSpec = $crate::enquiry::keys::BlockSpec {
                    name: $name,
                    doc: concat!($($bdoc),+).trim_ascii(),
                    own: &KEYS,
                    parts: &[$( $( <$pty as $crate::enquiry::keys::Block>::spec ),+ )?],
                };
                &SPEC
            }
            fn stand(&mut self, at: $crate::enquiry::keys::Place) {
                $( $crate::enquiry::keys::Field::stand(
                    &mut self.$key,
                    || at.inside($crate::enquiry::keys::key_name!($key $($word)?)),
                ); )*
                $( $( $crate::enquiry::keys::Block::stand(&mut self.$part, at.clone()); )+ )?
                self.at = at;
            }
            fn is_said(&self, key: &str) -> bool {
                match key {
                    $($crate::enquiry::keys::key_name!($key $($word)?) => {
                        $crate::enquiry::keys::Field::is_said(&self.$key)
                    })*
                    _ => false $( $( || $crate::enquiry::keys::Block::is_said(&self.$part, key) )+ )?,
                }
            }
            fn read_key(
                &mut self,
                key: &str,
                reader: &mut $crate::enquiry::reader::Reader,
                place: &str,
                value: &toml::de::DeValue<'_>,
            ) -> bool {
                match key {
                    $($crate::enquiry::keys::key_name!($key $($word)?) => {
                        let Some(spec) = Self::spec().own.iter().find(|k| k.name == key) else { return false };
                        self.$key = <$ty as $crate::enquiry::keys::Field>::read(reader, spec, place, value);
                        true
                    })*
                    _ => false $( $(
                        || $crate::enquiry::keys::Block::read_key(&mut self.$part, key, reader, place, value)
                    )+ )?,
                }
            }
            fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn $crate::enquiry::said::Claimed>) {
                $( $crate::enquiry::keys::Field::claimed(&self.$key, found); )*
                $( $( $crate::enquiry::keys::Block::claimed(&self.$part, found); )+ )?
            }
            fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn $crate::enquiry::said::Claimed>) {
                $( $crate::enquiry::keys::Field::claimed_mut(&mut self.$key, found); )*
                $( $( $crate::enquiry::keys::Block::claimed_mut(&mut self.$part, found); )+ )?
            }
            fn differing<'a>(&'a self, found: &mut Vec<$crate::enquiry::keys::Differing<'a>>) {
                $( $crate::enquiry::keys::Field::differing(&self.$key, found); )*
                $( $( $crate::enquiry::keys::Block::differing(&self.$part, found); )+ )?
            }
        }
    };
}
pub(crate) use keys;
