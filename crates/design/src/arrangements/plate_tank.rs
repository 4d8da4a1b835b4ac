//! Arrangement: a rectangular tank above the ground, with plates and mesh.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Tank, plates: true, in_ground: false, built_in: false };
