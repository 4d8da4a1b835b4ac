//! What the engineer decided.

use crate::enquiry::date::Day;
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::keys;
use stillrise_handbook::choice;

choice! {
    /// What the engineer decided about a finding.
    Settled {
        /// accepted, with a reason
        Accepted "accepted",
        /// somebody else's scope
        ByOthers "by others",
        /// not yet settled
        Open "open",
    }
}
keys! {
    /// What the engineer decided about a finding.
    Decision "decision" {
        /// The rule
        rule: Text = spec.like("\"frost-outdoors\"").needed();
        /// Accepted, by others, or open
        decision: Word<Settled> = spec.like("\"accepted\"").needed();
        /// Why
        because: Text = spec.like("\"heat tracing by the electrical contractor\"").needed();
        /// Who
        who: Text = spec.like("\"J. Example\"");
        /// On which day; nothing is dated by a clock
        date: Day = spec.like("\"2026-03-02\"");
    }
}
