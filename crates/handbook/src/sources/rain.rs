//! Sources on rain and process flows.

sources! {
}
