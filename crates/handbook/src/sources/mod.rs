//! Every published source the handbook rests on, written once, by area.
//!
//! `Seen` tells the reader how the text is known: read, second hand, or from memory. A source
//! from memory is to be checked against the document before it is quoted.

use crate::page::Source;

macro_rules! sources {
    ($($id:ident $title:literal $year:literal $seen:ident;)*) => {
        use crate::page::{Seen, Source};
        $(#[doc = $title] pub static $id: Source = Source { title: $title, year: $year, seen: Seen::$seen };)*
        /// All of this area.
        pub(super) static ALL: &[&Source] = &[$(&$id),*];
    };
}

/// Lists the areas: a new one needs its file and its name here.
macro_rules! areas {
    ($($area:ident),* $(,)?) => {
        $(mod $area; pub use $area::*;)*

        /// All of them.
        // Each area's list is named with its area: the globs above bring several lists of one name.
        #[allow(unused_qualifications)]
        pub fn all() -> impl Iterator<Item = &'static Source> {
            [$($area::ALL),*].into_iter().flatten().copied()
        }
    };
}
areas! { fluids, general, ground, hydraulics, laboratory, rain, separation, shop, vessel }
