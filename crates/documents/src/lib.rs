//! The documents of a submittal, from the one model; no physics is computed here.
//!
//! One document a folder; [`render`] knows how text, drawings and pages are made, never what.
//! Every document comes back as a name and its bytes; nothing here touches a file.

pub mod alternatives;
pub(crate) mod bill;
pub mod charts;
pub mod company;
pub mod compare;
pub mod contents;
pub mod decisions;
pub mod drawings;
pub mod edition;
mod exchange;
pub mod flow;
pub mod glance;
pub(crate) mod instruments;
pub mod issue;
pub mod logo;
pub mod model;
pub mod package;
pub mod papers;
pub mod profile;
pub mod rating;
pub mod reading;
pub mod regulation;
pub mod remedies;
pub mod render;
pub mod reply;
pub(crate) mod report;
pub mod result;
pub mod risk;
pub mod schema;
pub(crate) mod scope;
pub mod section;
pub mod settings;
pub mod sizes;
pub mod summary;
pub mod trail;
pub mod views;
pub mod with_range;
pub mod workbook;

pub use edition::Edition;
