//! Arrangement: a lying cylinder in the ground without plates, in which droplets rise over the whole of its surface.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Lying, plates: false, in_ground: true, built_in: false };
