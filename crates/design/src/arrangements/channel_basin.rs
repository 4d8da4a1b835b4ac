//! Arrangement: a long basin of parallel channels, open, built into the ground, without plates: the basin of API 421.
//!
//! The channels share the flow and are laid out as one tank of their width together, walls between them left out.

use super::{Form, Own};

/// What it says of itself.
pub(super) const OWN: Own = Own { form: Form::Channels, plates: false, in_ground: false, built_in: true };
