//! The arrangements of a unit, one a file: which body, which stages, from which keys. A new one is a file here, a word in
//! [`Arrangement`] and a line in `own`; `parts` composes them all.

mod channel_basin;
mod open_cylinder;
mod open_tank;
mod parts;
mod plate_cylinder;
mod plate_tank;
mod plate_vault;
mod upright_cylinder;

use crate::enquiry::keys::{Key, Quantity};
use crate::enquiry::range::Model;
use crate::provenance::{Stop, Trail};
use crate::stages::plate_pack::PackWord;
use crate::train::row::Row;
use crate::train::unit::Parts;
use arrayvec::ArrayVec;
use stillrise_handbook::choice;
use stillrise_units::Length;

choice! {
    /// How a unit is arranged.
    Arrangement {
        /// a rectangular tank with plates, above the ground
        PlateTank "plate tank",
        /// a rectangular tank without plates, above the ground
        OpenTank "open tank",
        /// a lying cylinder with plates, in the ground
        PlateCylinder "plate cylinder",
        /// a lying cylinder without plates, in the ground
        OpenCylinder "open cylinder",
        /// a long basin of parallel channels without plates, built into the ground
        ChannelBasin "channel basin",
        /// an upright cylinder without plates, in the ground
        UprightCylinder "upright cylinder",
        /// a rectangular vault with plates, built into the ground
        PlateVault "plate vault",
    }
}

/// What an arrangement says of itself.
struct Own {
    /// The form of its body.
    form: Form,
    /// Whether it has plates.
    plates: bool,
    /// Whether it is made to lie in the ground.
    in_ground: bool,
    /// Whether it is open and built into the ground, as a basin is.
    built_in: bool,
}

/// The form of a body.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A rectangular tank.
    Tank,
    /// Parallel channels.
    Channels,
    /// A lying cylinder.
    Lying,
    /// An upright cylinder.
    Upright,
}

/// A side of a body, by which it is described.
pub struct Side<'a> {
    /// What it is called, inside.
    pub label: &'static str,
    /// How many walls lie between it and the outside.
    pub walls: u8,
    /// Its key.
    pub key: Key<'a, Quantity<Length>>,
}

impl Form {
    /// The sides by which it is described.
    #[must_use]
    pub fn sides(self, m: &Model) -> ArrayVec<Side<'_>, 3> {
        let side = |key, label, walls| Side { key, label, walls };
        let length = |label| side(m.length(), label, 2);
        let height = || side(m.height(), "height of the walls", 1);
        let diameter = || side(m.diameter(), "inside diameter", 2);
        match self {
            Form::Tank | Form::Channels => {
                ArrayVec::from([length("inside length"), side(m.width(), "inside width", 2), height()])
            }
            Form::Lying => [length("length of the shell"), diameter()].into_iter().collect(),
            Form::Upright => [diameter(), height()].into_iter().collect(),
        }
    }

    /// Length, width and height of the box around it, each the same measure of the sides that `of` takes; `None` where one
    /// is not known.
    pub fn extents<'a>(self, m: &'a Model, of: impl Fn(&Side<'a>) -> Option<f64>) -> Option<[f64; 3]> {
        let sides = self.sides(m);
        let mut found = sides.iter().map(of);
        let mut next = || found.next().flatten();
        Some(match self {
            Form::Tank | Form::Channels => [next()?, next()?, next()?],
            Form::Lying => {
                let (length, diameter) = (next()?, next()?);
                [length, diameter, diameter]
            }
            Form::Upright => {
                let (diameter, height) = (next()?, next()?);
                [diameter, diameter, height]
            }
        })
    }
}

impl Arrangement {
    fn own(self) -> &'static Own {
        match self {
            Arrangement::PlateTank => &plate_tank::OWN,
            Arrangement::OpenTank => &open_tank::OWN,
            Arrangement::PlateCylinder => &plate_cylinder::OWN,
            Arrangement::OpenCylinder => &open_cylinder::OWN,
            Arrangement::ChannelBasin => &channel_basin::OWN,
            Arrangement::UprightCylinder => &upright_cylinder::OWN,
            Arrangement::PlateVault => &plate_vault::OWN,
        }
    }

    /// That of a row or a described unit; where none is named, a tank above the ground.
    #[must_use]
    pub fn of(m: &Model) -> Self {
        let open = m.stages.pack.is_there.0 == Some(PackWord::None);
        match m.arrangement.0 {
            Some(Self::PlateTank) | None if open => Self::OpenTank,
            Some(Self::PlateCylinder) if open => Self::OpenCylinder,
            Some(named) => named,
            None => Self::PlateTank,
        }
    }

    /// Keys without which it cannot be laid out.
    pub fn needed(self) -> impl Iterator<Item = &'static str> {
        parts::needed(self.own())
    }

    /// Whether it is made to lie in the ground.
    #[must_use]
    pub fn is_in_ground(self) -> bool {
        self.own().in_ground
    }

    /// Whether it is open and built into the ground, as a basin is.
    #[must_use]
    pub fn is_built_in(self) -> bool {
        self.own().built_in
    }

    /// Whether it is set up above the ground, as a tank is.
    #[must_use]
    pub fn is_set_up(self) -> bool {
        !self.is_in_ground() && !self.is_built_in()
    }

    /// The form of its body.
    #[must_use]
    pub fn form(self) -> Form {
        self.own().form
    }

    /// Whether it has plates.
    #[must_use]
    pub fn has_plates(self) -> bool {
        self.own().plates
    }

    /// Its parts as a row or a described unit lays them out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn parts<T: Trail>(self, row: &mut Row<'_, T>) -> Result<Parts, Stop> {
        parts::parts(self.own(), row)
    }
}
