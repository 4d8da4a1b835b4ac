//! Formula: flow over a rectangular weir

use super::circle::G;
use super::kindsvater_carter::{K_H, weir_a, weir_b, weir_k_b};
use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::{KINDSVATER_CARTER_BLEVINS, KINDSVATER_CARTER_ISO, WATER_MEASUREMENT};
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Flow, Length};

formula! {
    /// Free flow over a thin-plate weir, with or without side contractions, Kindsvater and Carter.
    ///
    /// Head above 30 mm, crest longer than 150 mm and higher than 100 mm, head less than twice the
    /// crest's height, air under the sheet of water. The coefficients are recalled and stand within
    /// 0.4 % of the Bureau of Reclamation's; the method itself is good to 1 %. The head is measured
    /// four heads upstream, above the crest. For the suppressed weir two sets go by the authors' names: this page
    /// takes a crest 0.9 mm shorter, as ISO 1438 does, Blevins 1 mm: 0.01 % less for a crest of a metre.
    "rectangular-weir" "Flow over a rectangular weir"
    fn flow(
        h: Length = "h" "head above the crest" [IN, MM: 30.0 .. 1000.0 in 0.0 .. 10000.0];
        b: Length = "b" "length of the crest" [IN, MM: 150.0 .. 10000.0 in 10.0 .. 100000.0];
        channel: Length = "B" "width of the channel upstream" [IN, MM: 150.0 .. 20000.0 in 10.0 .. 100000.0];
        p: Length = "p" "height of the crest above the floor" [IN, MM: 100.0 .. 5000.0 in 10.0 .. 100000.0];
    ) -> Flow = "Q" "flow" [GPM, L_S];
    reduced [h M, b M, channel M, p M => M3_S] {
        let a = weir_a(b / channel);
        let a_1 = weir_b(b / channel);
        let k_b = weir_k_b(b / channel);
        let c_e = a + a_1 * (h / p);
        c_e * (2.0 / 3.0) * sqrt(2.0 * G) * (b + k_b) * pow(h + K_H, 1.5)
    }
    constants [G "g", K_H "k_h"]
    helpers [
        weir_a(f64) "a" "coefficient at no head, table over b/B";
        weir_b(f64) "a_1" "growth of the coefficient with h/p, table over b/B";
        weir_k_b(f64) "k_b" "correction of the crest's length, table over b/B";
    ]
    sources [KINDSVATER_CARTER_ISO, KINDSVATER_CARTER_BLEVINS, WATER_MEASUREMENT]
    checks [
        "h=0.1 m, b=1 m, channel=1 m, p=0.5 m" => "0.058393 m3/s" within 0.005 "another law of the full-width weir; the laws spread by 1.1 %",
            Library("fluids 1.3.1, Q_weir_rectangular_full_Ackers");
        "h=0.1 m, b=1 m, channel=1 m, p=0.5 m" => "0.058846 m3/s" within 0.01 "another law of the full-width weir; the laws spread by 1.1 %",
            Library("fluids 1.3.1, Q_weir_rectangular_full_Rehbock");
        "h=0.2 m, b=1 m, channel=2 m, p=0.5 m" => "0.15915 m3/s",
            ByHand("0.5964 x 2/3 x 4.42869 x 1.003 x 0.201^1.5");
        "h=0.1 m, b=0.6 m, channel=1 m, p=0.4 m" => "0.03418 m3/s", ByHand("independent evaluation in Python of the same table");
        "h=0.15 m, b=0.9 m, channel=1 m, p=0.6 m" => "0.09628 m3/s", ByHand("independent evaluation in Python of the same table");
        "h=0.1 m, b=1.1 m, channel=1 m, p=0.5 m" => "outside: result", Limit("no crest longer than its channel");
    ]
}
