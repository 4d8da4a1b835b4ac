//! Formula: stub
use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::DEFINITION;
use stillrise_units::math::{exp, ln};
use stillrise_units::{Length, Ratio};
formula! {
    /// Stub.
    "hatch-choate" "Stub"
    fn diameter(
        number: Length = "d_n" "number median" [UM, UM: 1.0 .. 500.0 in 0.001 .. 1e6];
        sg: Ratio = "s_g" "spread" [ONE, ONE: 1.0 .. 4.0 in 1.0 .. 20.0];
    ) -> Length = "d_50" "volume median" [UM, UM];
    reduced [number M, sg ONE => M] { number * exp(3.0 * ln(sg) * ln(sg)) }
    sources [DEFINITION]
    checks ["number=10 um, sg=1" => "10 um", Limit("one size");]
}
