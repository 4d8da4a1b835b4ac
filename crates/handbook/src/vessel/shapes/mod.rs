//! The kinds of vessel, one a file.

mod horizontal_cylinder;
mod rectangular;
mod rectangular_hopper;

pub use horizontal_cylinder::HorizontalCylinder;
pub use rectangular::Rectangular;
pub use rectangular_hopper::{Hopper, RectangularHopper};
