//! Changes to the text of an enquiry, key by key.
//!
//! An enquiry is a file that people write, with comments, in their own order. [`apply`] makes one change in its text
//! and keeps every byte that the change does not concern; [`said`] tells what stands in it, [`mark`] which bytes a
//! fault speaks of, and [`History`] keeps the texts before. Values are taken and given as a person types them; whether
//! they can be is for the reader of enquiries to say. No file is touched here.
//!
//! ```
//! use stillrise_edit::{Action, apply};
//!
//! # fn main() -> Result<(), stillrise_units::Fault> {
//! let text = "[water]\ncoldest = \"46 °F\"   # in spring\n";
//! let action = Action::Set { path: "water.coldest".parse()?, value: "4 °C".to_owned(), from: Some("mail".to_owned()) };
//! assert_eq!(action.says(), "set water.coldest to 4 °C, from mail");
//! let text = apply(text, &action)?;
//! assert_eq!(text, "[water]\ncoldest = { value = \"4 °C\", from = \"mail\" }   # in spring\n");
//! # Ok(())
//! # }
//! ```

mod action;
mod block;
mod claim;
mod claims;
mod container;
mod heading;
mod history;
mod insert;
mod mark;
mod path;
mod said;
mod scan;
mod sections;
mod set;
mod splice;
mod spot;
mod standing;
mod tree;
mod unset;
mod written;

pub use action::{Action, apply};
pub use heading::Heading;
pub use history::{History, Step};
pub use mark::{mark, span_of};
pub use path::Path;
pub use said::{Claimed, Said, headings, said};
