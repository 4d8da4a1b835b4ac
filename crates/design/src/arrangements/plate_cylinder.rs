//! Arrangement: a lying cylinder in the ground, with plates and mesh.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Lying, plates: true, in_ground: true, built_in: false };
