//! Sources on vessels, levels and operation.

sources! {
}
