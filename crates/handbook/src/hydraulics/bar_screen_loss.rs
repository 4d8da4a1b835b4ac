//! Formula: loss of a bar screen

use super::circle::G;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::KIRSCHMER;
use crate::{choice, formula};
use stillrise_units::math::{pow, sin};
use stillrise_units::{Angle, Length, Velocity};

choice! {
    /// Section of the bars of a screen.
    BarShape {
        /// flat bars with sharp edges
        Rectangular "rectangular",
        /// flat bars, the edge against the flow rounded
        RoundedAhead "rounded ahead",
        /// flat bars, both edges rounded
        Rounded "rounded",
        /// round bars
        Round "round",
        /// bars shaped like a drop
        Drop "drop",
    }
}

/// Kirschmer's coefficient of the section of the bars.
fn shape_factor(shape: BarShape) -> f64 {
    match shape {
        BarShape::Rectangular => 2.42,
        BarShape::RoundedAhead => 1.83,
        BarShape::Round => 1.79,
        BarShape::Rounded => 1.67,
        BarShape::Drop => 0.76,
    }
}

formula! {
    /// Difference of levels across a clean screen of parallel bars that stands square to the stream.
    ///
    /// The velocity is that of the channel ahead. Nothing clings to the bars: what a screen holds narrows the openings, and
    /// its loss rises fast; take the opening that is left, and count what covers it to the bars. Measured losses of fine
    /// racks stray by a third from it.
    "bar-screen-loss" "Loss of a bar screen"
    fn loss(
        shape: BarShape = "shape" "section of the bars";
        bar: Length = "w" "thickness of a bar, across the flow" [IN, MM: 3.0 .. 30.0 in 0.0 .. 1000.0];
        gap: Length = "b" "clear opening between two bars" [IN, MM: 3.0 .. 100.0 in 0.1 .. 10000.0];
        v: Velocity = "V" "velocity ahead of the screen" [FT_S, M_S: 0.1 .. 1.2 in 0.0 .. 100.0];
        angle: Angle = "theta" "angle of the bars over the horizontal" [DEG, DEG: 30.0 .. 90.0 in 1.0 .. 90.0];
    ) -> Length = "h" "difference of levels" [IN, MM];
    reduced [bar M, gap M, v M_S, angle RAD => M] {
        shape_factor(shape) * pow(bar / gap, 4.0 / 3.0) * (v * v / (2.0 * G)) * sin(angle)
    }
    constants [G "g"]
    helpers [shape_factor(BarShape) "beta" "Kirschmer's coefficient: sharp edges 2.42, rounded ahead 1.83, round 1.79, both edges rounded 1.67, like a drop 0.76"]
    sources [KIRSCHMER]
    checks [
        "shape=rectangular, bar=10 mm, gap=20 mm, v=0.6 m/s, angle=60 deg" => "15.27 mm", ByHand("2.42 x 0.5^(4/3) x 0.36/19.6133 x 0.866025 = 2.42 x 0.396850 x 0.018355 x 0.866025");
        "shape=round, bar=10 mm, gap=20 mm, v=0.6 m/s, angle=60 deg" => "11.29 mm", ByHand("the same with 1.79");
        "shape=rectangular, bar=10 mm, gap=10 mm, v=1 m/s, angle=90 deg" => "123.39 mm", Limit("bars as thick as the openings, upright: 2.42 velocity heads of 50.986 mm");
        "shape=rounded ahead, bar=10 mm, gap=10 mm, v=1 m/s, angle=90 deg" => "93.304 mm", Limit("1.83 velocity heads");
        "shape=rounded, bar=10 mm, gap=10 mm, v=1 m/s, angle=90 deg" => "85.146 mm", Limit("1.67 velocity heads");
        "shape=drop, bar=10 mm, gap=10 mm, v=1 m/s, angle=90 deg" => "38.749 mm", Limit("0.76 velocity heads");
        "shape=rectangular, bar=0 mm, gap=20 mm, v=0.6 m/s, angle=60 deg" => "0 mm", Limit("no bars, no loss");
    ]
}
