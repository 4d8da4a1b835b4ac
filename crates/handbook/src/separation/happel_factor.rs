//! Formula: Happel's factor of a bed of fibres

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HAPPEL;
use stillrise_units::Ratio;
use stillrise_units::math::ln;

const CELL: &str = "the stream function of the cell as four linear equations, solved in Python";

formula! {
    /// How much the neighbours of a fibre slow the creeping water around it, by Happel's cell.
    ///
    /// Parallel fibres across the flow, each in a cell of its own whose rim drags nothing. For
    /// `mesh-permeability`; the capture of droplets here rests on `kuwabara-factor`, and the two must
    /// not be mixed in one chain. Trusted for 1 to 20 % solids in creeping flow.
    "happel-factor" "Happel's factor of a bed of fibres"
    fn factor(
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
    ) -> Ratio = "Ha" "Happel's factor" [ONE, ONE];
    reduced [solidity ONE => ONE] {
        -0.5 * ln(solidity) - 0.5 * (1.0 - solidity * solidity) / (1.0 + solidity * solidity)
    }
    sources [HAPPEL]
    checks [
        "solidity=2 %" => "1.456411343", ByHand(CELL);
        "solidity=5 %" => "1.000359902", ByHand(CELL);
        "solidity=10 %" => "0.6611935366", ByHand(CELL);
        "solidity=0.01 %" => "4.105170", Limit("a lone fibre: -ln(0.0001)/2 - 1/2");
    ]
}
