//! Formula: head over a rectangular weir

use super::circle::G;
use super::kindsvater_carter::{K_H, weir_a, weir_b, weir_k_b};
use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::{KINDSVATER_CARTER_ISO, WATER_MEASUREMENT};
use stillrise_units::math::{pow, root, sqrt};
use stillrise_units::{Flow, Length};

/// Highest head searched, m.
const HIGHEST: f64 = 10.0;

formula! {
    /// Head above the crest that a flow needs: `rectangular-weir` solved, with the same limits.
    ///
    /// The law's head correction makes it leave 0.017 L/s over a crest of 300 mm at no head at all:
    /// a smaller flow has no answer and no head worth printing.
    "rectangular-weir-head" "Head over a rectangular weir"
    fn head(
        q: Flow = "Q" "flow" [GPM, L_S: 0.1 .. 5000.0 in 0.0 .. 1e6];
        b: Length = "b" "length of the crest" [IN, MM: 150.0 .. 10000.0 in 10.0 .. 100000.0];
        channel: Length = "B" "width of the channel upstream" [IN, MM: 150.0 .. 20000.0 in 10.0 .. 100000.0];
        p: Length = "p" "height of the crest above the floor" [IN, MM: 100.0 .. 5000.0 in 10.0 .. 100000.0];
    ) -> Length = "h" "head above the crest" [IN, MM];
    solves [q M3_S, b M, channel M, p M => h M] {
        q => (weir_a(b / channel) + weir_b(b / channel) * (h / p)) * (2.0 / 3.0) * sqrt(2.0 * G) * (b + weir_k_b(b / channel)) * pow(h + K_H, 1.5)
    } by {
        let scale = (2.0 / 3.0) * sqrt(2.0 * G) * (b + weir_k_b(b / channel));
        root(0.0, HIGHEST, |h| (weir_a(b / channel) + weir_b(b / channel) * (h / p)) * scale * pow(h + K_H, 1.5) - q)
    }
    constants [G "g", K_H "k_h"]
    helpers [
        weir_a(f64) "a" "coefficient at no head, table over b/B";
        weir_b(f64) "a_1" "growth of the coefficient with h/p, table over b/B";
        weir_k_b(f64) "k_b" "correction of the crest's length, table over b/B";
    ]
    sources [KINDSVATER_CARTER_ISO, WATER_MEASUREMENT]
    checks [
        "q=0.0583927 m3/s, b=1 m, channel=1 m, p=0.5 m" => "0.1 m" within 0.003 "another law of the full-width weir",
            Library("fluids 1.3.1, Q_weir_rectangular_full_Ackers");
        "q=0.0962834 m3/s, b=0.9 m, channel=1 m, p=0.6 m" => "0.1500 m", ByHand("independent evaluation in Python: 0.09628 m3/s at 0.15 m");
        "q=0 L/s, b=1 m, channel=1 m, p=0.5 m" => "outside: result", Limit("the correction leaves a trickle at no head");
        "q=1 L/s, b=1.1 m, channel=1 m, p=0.5 m" => "outside: result", Limit("no crest longer than its channel");
    ]
}
