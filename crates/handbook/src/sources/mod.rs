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

mod fluids;
mod general;
mod hydraulics;
mod laboratory;
mod rain;
mod separation;
mod vessel;
pub use fluids::*;
pub use general::*;
pub use hydraulics::*;
pub use laboratory::*;
pub use rain::*;
pub use separation::*;
pub use vessel::*;

/// All of them.
// Each area's list is named with its area: the globs above bring seven lists of one name.
#[allow(unused_qualifications)]
pub fn all() -> impl Iterator<Item = &'static Source> {
    let areas: [&'static [&'static Source]; 7] =
        [fluids::ALL, general::ALL, hydraulics::ALL, laboratory::ALL, rain::ALL, separation::ALL, vessel::ALL];
    areas.into_iter().flatten().copied()
}
