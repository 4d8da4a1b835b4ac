//! Quantities of the oil-water separator trade.
//!
//! Dimensions are proved by the compiler ([`uom`], SI inside), the trade's units are added
//! exactly ([`catalog`]), text such as `"120 gpm"` is read without losing what was typed
//! ([`parse`]), and results are printed in US or SI units ([`mod@print`]). [`math`] is the only
//! place where transcendental functions are called, so that the same input gives the same
//! bytes on every machine.
//!
//! ```
//! use stillrise_units::{Flow, Reading, Typed, catalog::M3_H, parse};
//! let flow = parse::quantity("120 gpm", &Reading::default()).unwrap();
//! assert_eq!(flow.unit.symbol, "gpm");
//! assert_eq!(Flow::from_si(flow.si()).in_unit(&M3_H), 120.0 * 0.22712470704);
//! ```

pub mod catalog;
mod fault;
pub mod lanes;
pub mod math;
pub mod parse;
pub mod print;
mod quantity;
pub mod spoken;

pub use catalog::{Dim, Unit};
pub use fault::{Fault, nearest};
pub use parse::{Gallon, Reading};
pub use print::System;
pub use quantity::*;
pub use spoken::spoken;
