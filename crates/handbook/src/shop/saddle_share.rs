//! Formula: share of the shell that works at an unstiffened saddle

use crate::page::Evidence::{ByHand, Limit, Memory};
use crate::sources::ZICK;
use crate::{choice, formula};
use core::f64::consts::PI;
use stillrise_units::math::{cos, sin};
use stillrise_units::{Angle, Ratio};

choice! {
    /// Which part of the shell's section.
    ShellPart {
        /// the highest part that still works, above which the shell gives way
        Top "top",
        /// the lowest line
        Bottom "bottom",
    }
}

formula! {
    /// Share of the shell's section modulus that is left at a saddle where neither a ring nor a near head keeps the shell
    /// round: its upper part gives way and only an arc about the saddle carries.
    ///
    /// The stress there is four to nine times that of the whole section, so keep saddles within half a radius of the
    /// heads, or weld a ring in. Usual wraps are 120° and 150°.
    "saddle-share" "Share of the shell that works at an unstiffened saddle"
    fn share(
        wrap: Angle = "theta" "angle over which the saddle wraps the shell" [DEG, DEG: 120.0 .. 180.0 in 60.0 .. 360.0];
        part: ShellPart = "part" "which part of the section";
    ) -> Ratio = "K_1" "share of the section modulus" [ONE, ONE];
    reduced [wrap RAD => ONE] {
        let arc = PI / 6.0 + 5.0 * wrap / 12.0;
        let held = arc + sin(arc) * cos(arc) - 2.0 * sin(arc) * sin(arc) / arc;
        if part == ShellPart::Top { held / (PI * (sin(arc) / arc - cos(arc))) } else { held / (PI * (1.0 - sin(arc) / arc)) }
    }
    sources [ZICK]
    checks [
        "wrap=120 deg, part=top" => "0.1066", ByHand("arc 80 degrees, 1.396263: 0.178071 / (3.141593 x 0.531668)");
        "wrap=120 deg, part=bottom" => "0.1923", ByHand("0.178071 / (3.141593 x 0.294684)");
        "wrap=150 deg, part=top" => "0.161", Memory("pressure vessel code, table of saddles: 0.161 at 150°");
        "wrap=150 deg, part=bottom" => "0.279", Memory("pressure vessel code, table of saddles: 0.279 at 150°");
        "wrap=360 deg, part=top" => "1.000000", Limit("wrapped all around, the whole section works");
        "wrap=360 deg, part=bottom" => "1.000000", Limit("wrapped all around, the whole section works");
    ]
}
