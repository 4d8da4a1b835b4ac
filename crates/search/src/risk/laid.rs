//! Whether a study lays the train anew in every sample: only where a dimension of its unit is uncertain.

use super::inputs::Input;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Model;
use stillrise_design::train::{Source, Train};

/// What a train is laid from again, where a dimension of its unit is uncertain: the dimensions stated, or a row of
/// the enquiry's range.
pub(super) fn laid_from<'a>(enquiry: &'a Enquiry, train: &Train, inputs: &[Input]) -> Option<Source<'a>> {
    if !inputs.iter().any(|input| input.declared.is_within::<Model>()) {
        return None;
    }
    if let Some(model) = &enquiry.unit.dimensions {
        return Some(Source::Stated(model));
    }
    let range = enquiry.range.as_ref()?;
    let name = &train.unit.particulars.model;
    range.models.iter().find(|m| m.model.as_ref() == Some(name)).map(|model| Source::Row(range, model))
}
