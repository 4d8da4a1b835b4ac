//! Formula: critical depth in a round pipe

use super::circle::{G, segment_area, segment_top};
use crate::formula;
use crate::memo::{Key, Memo};
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{CRITICAL_FLOW, R_HYDRAULICS};
use stillrise_units::math::{pow, root};
use stillrise_units::{Flow, Length};

/// Deepest answer over the diameter: nearer the crown the pipe runs full and has no critical depth.
pub(super) const CROWN: f64 = 0.98;

formula! {
    /// Depth at which a flow in a round pipe has least energy: what it takes over a free brink or
    /// at a free entry, whatever the roughness.
    ///
    /// A flow that would need more than 0.98 of the diameter fills the pipe: no answer.
    "critical-depth" "Critical depth in a round pipe"
    fn depth(
        q: Flow = "Q" "flow" [GPM, L_S: 0.01 .. 5000.0 in 1e-6 .. 1e5];
        d: Length = "D" "inside diameter" [IN, MM: 50.0 .. 3000.0 in 1.0 .. 20000.0];
    ) -> Length = "y_c" "critical depth" [IN, MM];
    solves [q M3_S, d M => y_c M] {
        pow(q, 2.0) * segment_top(d, y_c) => G * pow(segment_area(d, y_c), 3.0)
    } by {
        found(q, d)
    }
    constants [G "g"]
    helpers [
        segment_top(f64, f64) "T" "width of the free surface";
        segment_area(f64, f64) "A" "wetted area of the round pipe";
    ]
    sources [CRITICAL_FLOW]
    checks [
        "q=0.01 m3/s, d=0.2 m" => "0.085 m", Published(&R_HYDRAULICS, "circular pipe, 0.01 m3/s in 0.2 m");
        "q=770.6375495821 L/s, d=1 m" => "0.500000 m", Limit("half full: Q2 = g (pi/8)^3 for a diameter of one");
        "q=0.05 m3/s, d=0.3 m" => "0.1732031 m", ByHand("independent evaluation, root by scipy 1.17.1 brentq");
        "q=0.002 m3/s, d=0.1 m" => "0.0450894 m", ByHand("independent evaluation, root by scipy 1.17.1 brentq");
        "q=0.1 m3/s, d=0.2 m" => "outside: result", Limit("the pipe runs full");
        "q=0 L/s, d=0.2 m" => "outside: q", Limit("no flow has no critical depth");
    ]
}

thread_local! {
    static KEPT: Memo = const { Memo::new() };
}

/// The root, kept: a search lays the same pipe again and again.
fn found(q: f64, d: f64) -> Option<f64> {
    let find = || root(1e-9 * d, CROWN * d, |y| pow(q, 2.0) * segment_top(d, y) - G * pow(segment_area(d, y), 3.0)).unwrap_or(f64::NAN);
    let root = KEPT.with(|kept| kept.get(&Key::of(&[q, d]), find));
    (!root.is_nan()).then_some(root)
}
