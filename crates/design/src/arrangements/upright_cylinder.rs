//! Arrangement: an upright cylinder in the ground, one open space: the water enters through a bend and leaves through a pipe
//! that dip under the oil.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Upright, plates: false, in_ground: true, built_in: false };
