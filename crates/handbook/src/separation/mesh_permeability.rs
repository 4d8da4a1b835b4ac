//! Formula: permeability of a bed of fibres

use super::fibre_interception::ku;
use super::happel_factor;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DAVIES, HAPPEL, KUWABARA};
use crate::{choice, formula};
use stillrise_units::math::pow;
use stillrise_units::{Area, Length, Ratio, Typed, ratio};

const CELL: &str = "drag of the cell from four linear equations, solved in Python";
const OWN: &str = "independent evaluation in Python";

choice! {
    /// By which account of the drag on the fibres.
    BedModel {
        /// Davies' fit of measured fibrous filters, as in `mesh-loss`: the default
        Davies "davies",
        /// Happel's cell of parallel fibres across the flow
        Happel "happel",
        /// Kuwabara's cell of parallel fibres across the flow
        Kuwabara "kuwabara",
    }
}

formula! {
    /// Permeability of a clean bed of fibres in creeping flow: the loss is `mu U L / k`.
    ///
    /// Kuwabara's cell gives a third or so less than Davies' fit, Happel's 11 to 28 % less. Oil and sludge
    /// held in the bed close it; by judgement multiply by `(1 - S)³` at a saturation S, and
    /// set the alarm at five to ten times the clean loss. At millimetres per second the inertia of the
    /// water adds nothing.
    "mesh-permeability" "Permeability of a bed of fibres"
    fn permeability(
        fibre: Length = "d_f" "diameter of the fibres" [MIL, UM: 5.0 .. 600.0 in 0.1 .. 10000.0];
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
        model: BedModel = "model" "account of the drag";
    ) -> Area = "k" "permeability" [UM2, UM2];
    reduced [fibre M, solidity ONE => M2] {
        let r = fibre / 2.0;
        if model == BedModel::Davies { r * r / (16.0 * pow(solidity, 1.5) * (1.0 + 56.0 * pow(solidity, 3.0))) }
        else if model == BedModel::Happel { r * r * ha(solidity) / (4.0 * solidity) }
        else { r * r * ku(solidity) / (4.0 * solidity) }
    }
    helpers [
        ha(f64) "Ha" "Happel's factor, `happel-factor`";
        ku(f64) "Ku" "Kuwabara's factor, `kuwabara-factor`";
    ]
    sources [DAVIES, HAPPEL, KUWABARA]
    checks [
        "fibre=2 um, solidity=2 %, model=happel" => "18.20514 um2", ByHand(CELL);
        "fibre=2 um, solidity=5 %, model=happel" => "5.001800 um2", ByHand(CELL);
        "fibre=2 um, solidity=10 %, model=happel" => "1.652984 um2", ByHand(CELL);
        "fibre=2 um, solidity=2 %, model=kuwabara" => "15.32389 um2", ByHand(CELL);
        "fibre=2 um, solidity=5 %, model=kuwabara" => "3.986206 um2", ByHand(CELL);
        "fibre=2 um, solidity=10 %, model=kuwabara" => "1.246981 um2", ByHand(CELL);
        "fibre=2 um, solidity=2 %, model=davies" => "22.08719 um2", ByHand(OWN);
        "fibre=2 um, solidity=5 %, model=davies" => "5.551311 um2", ByHand(OWN);
        "fibre=2 um, solidity=10 %, model=davies" => "1.871613 um2", ByHand(OWN);
        "fibre=150 um, solidity=5 %, model=davies" => "31226.12 um2", ByHand("the loss of 48.04 Pa at 1 mPa s, 10 mm/s and 150 mm");
        "fibre=200 um, solidity=5 %, model=kuwabara" => "39862.06 um2", Limit("a hundred times the fibre, ten thousand times the permeability");
    ]
}

fn ha(solidity: f64) -> f64 {
    happel_factor::factor(ratio(solidity)).map_or(f64::NAN, Typed::si)
}

