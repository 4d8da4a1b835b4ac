//! Whether a study lays the train anew in every sample: only where a dimension of its unit is uncertain.

use super::inputs::Input;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::train::{Source, Train};

/// How the keys of a unit's dimensions begin: those the enquiry states, and those of a row.
const DIMENSIONS: &str = "unit.dimensions.";
const ROW: &str = "model \"";

/// What a train is laid from again, where a dimension of its unit is uncertain: the dimensions stated, or a row of
/// the enquiry's range.
pub(super) fn laid_from<'a>(enquiry: &'a Enquiry, train: &Train, inputs: &[Input]) -> Option<Source<'a>> {
    let of_a_unit = |input: &Input| [DIMENSIONS, ROW].iter().any(|start| input.key.starts_with(start));
    if !inputs.iter().any(of_a_unit) {
        return None;
    }
    if let Some(model) = &enquiry.unit.dimensions {
        return Some(Source::Stated(model));
    }
    let range = enquiry.range.as_ref()?;
    let name = &train.unit.particulars.model;
    range.models.iter().find(|m| m.model.as_ref() == Some(name)).map(|model| Source::Row(range, model))
}
