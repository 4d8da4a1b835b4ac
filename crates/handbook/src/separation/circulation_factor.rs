//! Formula: how much faster a clean droplet rises

use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::HADAMARD_RYBCZYNSKI;
use stillrise_units::{Ratio, Viscosity};

formula! {
    /// Rise of a droplet whose inside circulates, over that of a rigid one, creeping flow.
    ///
    /// An upper bound, never a design value: traces of surface-active matter, which waste water always
    /// holds, stop the circulation of droplets below some millimetres. It would matter for petrol and
    /// solvents alone (1.29 at 0.5 mPa s); diesel 1.08, oils 1.02 and less.
    "circulation-factor" "Rise of a clean droplet over a rigid one"
    fn factor(
        mu_o: Viscosity = "mu_o" "viscosity of the oil" [CP, MPA_S: 0.3 .. 1e5 in 0.0 .. 1e9];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Ratio = "c" "factor" [ONE, ONE];
    typed { 3.0 * (mu + mu_o) / (2.0 * mu + 3.0 * mu_o) }
    sources [HADAMARD_RYBCZYNSKI]
    checks [
        "mu_o=0 cP, mu=1 cP" => "1.500000", Limit("a gas bubble with a clean skin");
        "mu_o=1 cP, mu=1 cP" => "1.200000", Limit("equal viscosities: six fifths");
        "mu_o=1000000000 cP, mu=1 cP" => "1.000000", Limit("so thick an oil is rigid");
    ]
}
