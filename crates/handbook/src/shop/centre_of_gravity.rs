//! Formula: centre of gravity of several masses

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::page::{Series, sum_x, sum_xy};
use crate::sources::DEFINITION;
use stillrise_units::Length;

formula! {
    /// The mean of the places of all parts, each weighted by its mass: along one direction, from one end.
    ///
    /// Work it for length, width and height apart, and for the empty unit as it is lifted: water, oil and sludge move.
    "centre-of-gravity" "Centre of gravity of several masses"
    fn place(
        parts: Series = "m_i|x_i" "masses and the places of their centres" {LB, KG; FT, M};
    ) -> Length = "x" "place of the centre of gravity" [FT, M];
    reduced [ => M] { sum_xy(&parts) / sum_x(&parts) }
    sources [DEFINITION]
    checks [
        "parts=[2000 lb: 5 ft; 600 lb: 8 ft; 400 lb: 1 ft]" => "5.067 ft", ByHand("(10,000 + 4,800 + 400) / 3,000");
        "parts=[10 kg: 0 m; 10 kg: 2 m]" => "1.000000 m", Limit("two alike: midway");
        "parts=[10 kg: 3 m]" => "3.000000 m", Limit("one alone: its own centre");
    ]
}
