//! The kinds of vessel, one a file.

mod head;
mod horizontal_cylinder;
mod rectangular;
mod rectangular_hopper;
mod upright_cylinder;

pub use head::{Head, HeadForm};
pub use horizontal_cylinder::HorizontalCylinder;
pub use rectangular::Rectangular;
pub use rectangular_hopper::{Hopper, RectangularHopper};
pub use upright_cylinder::UprightCylinder;
