//! The chain around one unit with other inputs, as far as what leaves.

use super::Model;
use std::borrow::Cow;
use std::sync::Arc;
use stillrise_design::basis::{Basis, Ready, basis, basis_on};
use stillrise_design::claims::{answered, any_open};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::performance::removal::Removal;
use stillrise_design::performance::{Depth, removals};
use stillrise_design::train::train;
use stillrise_design::{Off, Stop, Trail, WhatIf};
use stillrise_units::Typed;

/// What no sample and no answer changes; `None` where claims on words contradict, so that it may be another enquiry.
pub(crate) fn ready(enquiry: &Enquiry) -> Option<Arc<Ready<'_>>> {
    (!any_open(enquiry)).then(|| Arc::new(Ready::new(&mut Off, enquiry)))
}

impl Model<'_> {
    /// The enquiry as these inputs make it, where it may be another.
    pub(super) fn answered(&self, w: &WhatIf) -> Option<Cow<'_, Enquiry>> {
        self.ready.is_none().then(|| answered(self.enquiry, w))
    }

    pub(super) fn basis<T: Trail>(&self, t: &mut T, w: &WhatIf, enquiry: &Enquiry) -> Result<Basis, Stop> {
        match &self.ready {
            Some(ready) => basis_on(t, w, ready),
            None => basis(t, w, enquiry),
        }
    }

    /// Basis and removals with these inputs.
    pub(super) fn leaves<T: Trail>(&self, t: &mut T, depth: Depth, w: &WhatIf) -> Result<(Basis, Vec<Removal>), Stop> {
        let other = self.answered(w);
        let enquiry = other.as_deref().unwrap_or(self.enquiry);
        let basis = self.basis(t, w, enquiry)?;
        let laid = match &self.laid_from {
            Some(source) => Some(train(t, w, enquiry, &basis, source, self.train.count.q.si() as u32)?),
            None => None,
        };
        let removals = removals(t, &basis, laid.as_ref().unwrap_or(self.train), &self.fixed, depth)?;
        Ok((basis, removals))
    }
}
