//! Sources on water and oils.

sources! {
}
