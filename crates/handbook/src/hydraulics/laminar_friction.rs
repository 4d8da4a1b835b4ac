//! Formula: friction factor of a full pipe, laminar

use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::DARCY;
use stillrise_units::Ratio;

formula! {
    /// Darcy friction factor of laminar flow in a full round pipe.
    ///
    /// Up to a Reynolds number of about 2300; `colebrook` from 4000. In between either may occur.
    "laminar-friction" "Friction factor of a full pipe, laminar"
    fn factor(
        re: Ratio = "Re" "Reynolds number of the pipe" [ONE, ONE: 0.001 .. 2300.0 in 0.0 .. 4000.0];
    ) -> Ratio = "f" "Darcy friction factor" [ONE, ONE];
    typed { 64.0 / re }
    sources [DARCY]
    checks [
        "re=64" => "1.000000", Limit("Hagen and Poiseuille's law");
        "re=0" => "outside: result", Limit("no flow has no friction factor");
    ]
}
