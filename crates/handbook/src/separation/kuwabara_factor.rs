//! Formula: Kuwabara's factor of a bed of fibres

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::KUWABARA;
use stillrise_units::Ratio;
use stillrise_units::math::ln;

const CELL: &str = "the stream function of the cell as four linear equations, solved in Python";

formula! {
    /// How much the neighbours of a fibre slow the creeping water around it, by Kuwabara's cell.
    ///
    /// Parallel fibres across the flow, each in a cell of its own whose rim turns no water. Trusted
    /// for 1 to 20 % solids and a fibre's Reynolds number well below one, which oil-water meshes
    /// keep. `happel-factor` asks instead that the rim drags nothing; it is 15 to 40 % greater there.
    "kuwabara-factor" "Kuwabara's factor of a bed of fibres"
    fn factor(
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
    ) -> Ratio = "Ku" "Kuwabara's factor" [ONE, ONE];
    reduced [solidity ONE => ONE] { -0.5 * ln(solidity) - 0.75 + solidity - 0.25 * solidity * solidity }
    sources [KUWABARA]
    checks [
        "solidity=2 %" => "1.225911503", ByHand(CELL);
        "solidity=5 %" => "0.7972411368", ByHand(CELL);
        "solidity=10 %" => "0.4987925465", ByHand(CELL);
        "solidity=0.01 %" => "3.855" within 2e-4 "the solid share itself is left out",
            Limit("a lone fibre: -ln(0.0001)/2 - 3/4");
    ]
}
