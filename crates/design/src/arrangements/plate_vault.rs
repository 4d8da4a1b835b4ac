//! Arrangement: a rectangular vault built into the ground, open under its covers, with plates: as storm-water manuals describe a
//! vault with coalescing plates. It is of concrete as a rule, of which the row speaks, and is one channel.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Tank, plates: true, in_ground: false, built_in: true };
