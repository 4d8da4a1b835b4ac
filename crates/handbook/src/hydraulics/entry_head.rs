//! Formula: head at the free entry of a pipe

use super::circle::{G, segment_area};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::CRITICAL_FLOW;
use stillrise_units::{Flow, Length, Ratio, Typed};

/// Critical depth of a flow in a round pipe, m; not a number when the pipe runs full.
fn critical(q: f64, d: f64) -> f64 {
    super::critical_depth::depth(Flow::from_si(q), Length::from_si(d)).map_or(f64::NAN, Typed::si)
}

formula! {
    /// Depth of still water above the invert just upstream of a pipe that draws it off freely.
    ///
    /// The entry controls: the pipe falls away or discharges free, so the flow passes its critical
    /// depth just inside. A backed-up pipe needs more. No answer where the pipe runs full: there
    /// `full-pipe-head` from the centre line of the outlet holds.
    "entry-head" "Head at the free entry of a pipe"
    fn head(
        q: Flow = "Q" "flow" [GPM, L_S: 0.01 .. 5000.0 in 1e-6 .. 1e5];
        d: Length = "D" "inside diameter" [IN, MM: 50.0 .. 3000.0 in 1.0 .. 20000.0];
        k: Ratio = "K" "loss coefficient of the entry" [ONE, ONE: 0.0 .. 1.03 in 0.0 .. 10.0];
    ) -> Length = "h" "head above the invert" [IN, MM];
    reduced [q M3_S, d M, k ONE => M] {
        let y_c = critical(q, d);
        let a_c = segment_area(d, y_c);
        let v_c = q / a_c;
        y_c + (1.0 + k) * v_c * v_c / (2.0 * G)
    }
    constants [G "g"]
    helpers [
        critical(f64, f64) "y_c" "critical depth, `critical-depth`";
        segment_area(f64, f64) "A" "wetted area of the round pipe";
    ]
    sources [CRITICAL_FLOW]
    checks [
        "q=770.6375495821 L/s, d=1 m, k=0" => "0.6963495 m", Limit("half full without loss: d/2 + A/2T = 1/2 + pi/16");
        "q=0.01 m3/s, d=0.2 m, k=0.5" => "0.1324911 m", ByHand("independent evaluation, root by scipy 1.17.1 brentq");
        "q=0.05 m3/s, d=0.3 m, k=0.78" => "0.3001499 m", ByHand("independent evaluation, root by scipy 1.17.1 brentq");
        "q=0.1 m3/s, d=0.2 m, k=0.5" => "outside: result", Limit("the pipe runs full");
    ]
}
