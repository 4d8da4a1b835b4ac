//! Formula: friction factor of a full pipe

use crate::formula;
use crate::page::Evidence::Published;
use crate::sources::{COLEBROOK, R_HYDRAULICS};
use stillrise_units::Ratio;
use stillrise_units::math::{log10, root, sqrt};

formula! {
    /// Darcy friction factor of turbulent flow in a full pipe, by Colebrook and White's relation.
    ///
    /// Below a Reynolds number of 2300 the flow is laminar and `laminar-friction` holds instead.
    "colebrook" "Friction factor of a full pipe, turbulent"
    fn factor(
        re: Ratio = "Re" "Reynolds number of the pipe" [ONE, ONE: 4000.0 .. 1e8 in 2000.0 .. 1e10];
        rough: Ratio = "epsilon_r" "roughness over diameter" [ONE, ONE: 0.0 .. 0.05 in 0.0 .. 0.2];
    ) -> Ratio = "f" "Darcy friction factor" [ONE, ONE];
    solves [re ONE, rough ONE => f ONE] {
        1.0 / sqrt(f) => -2.0 * log10(rough / 3.7 + 2.51 / (re * sqrt(f)))
    } by {
        root(1e-4, 1.0, |f| 1.0 / sqrt(f) + 2.0 * log10(rough / 3.7 + 2.51 / (re * sqrt(f))))
    }
    sources [COLEBROOK]
    checks [
        "re=248625, rough=0.0003" => "0.0173", Published(&R_HYDRAULICS, "pipe example, 4 cfs in 20 in: f 0.0173");
    ]
}
