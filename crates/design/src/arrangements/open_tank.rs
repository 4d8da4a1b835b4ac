//! Arrangement: a rectangular tank above the ground without plates, in which droplets rise over the whole of its plan.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Tank, plates: false, in_ground: false, built_in: false };
