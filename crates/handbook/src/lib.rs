//! The engineer's handbook: one formula a file, each with its source, range and check values;
//! published data of oils, surfaces, pipes; and nothing about any particular design.
//!
//! Where things are: [`fluids`], [`droplets`], [`rain`], [`separation`], [`hydraulics`], [`vessel`], [`ground`], [`shop`],
//! [`laboratory`] hold the pages, [`sources`] every publication once, [`mod@page`] and [`formula`](mod@formula) what a page is,
//! [`equation`] how it is printed, [`evidence`] how it is checked, [`manual`] all of it for a reader.

#[doc(hidden)]
pub use stillrise_units as units;

pub mod equation;
pub mod evidence;
pub mod formula;
pub mod manual;
pub mod memo;
pub mod page;
pub mod read;
pub mod sources;
pub mod spread;

pub mod droplets;
pub mod fluids;
pub mod ground;
pub mod hydraulics;
pub mod laboratory;
pub mod rain;
pub mod separation;
pub mod shop;
pub mod vessel;

use evidence::Table;
use page::Page;

/// Lists the areas in reading order: a new one needs its `pub mod` above and its name below.
macro_rules! list_areas {
    ($($area:ident),* $(,)?) => {
        /// All pages, area by area.
        pub fn pages() -> impl Iterator<Item = &'static Page> {
            [$($area::PAGES),*].into_iter().flatten().copied()
        }

        /// All tables of check values, area by area.
        pub fn tables() -> impl Iterator<Item = &'static Table> {
            [$($area::TABLES),*].into_iter().flatten()
        }
    };
}
list_areas! { fluids, rain, droplets, separation, hydraulics, vessel, ground, shop, laboratory }

/// The page of this id.
#[must_use]
pub fn page(id: &str) -> Option<&'static Page> {
    pages().find(|p| p.id == id)
}

/// Declares the pages of an area and lists them.
macro_rules! list_pages {
    ($($page:ident),* $(,)?) => {
        $(pub mod $page;)*
        /// The pages of this area, in reading order.
        pub static PAGES: &[&crate::page::Page] = &[$(&$page::PAGE),*];
    };
}
pub(crate) use list_pages;
