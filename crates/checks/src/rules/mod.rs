//! The rules, one a file. A new rule is registered here by one line.

use crate::rule::Rule;

macro_rules! list_rules {
    ($($name:ident),* $(,)?) => {
        $(pub mod $name;)*
        /// All rules, in the order of print.
        pub static RULES: &[&Rule] = &[$(&$name::RULE),*];
    };
}

list_rules! {
    not_enough_fall,
    gap_not_laminar,
}
