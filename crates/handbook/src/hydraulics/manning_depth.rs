//! Formula: depth of flow in a round pipe, Manning

use super::circle::{FULLEST, segment_area, segment_radius};
use crate::formula;
use crate::memo::{Key, Memo};
use crate::page::Evidence::{ByHand, Library, Limit, Published};
use crate::sources::{MANNING, R_HYDRAULICS};
use stillrise_units::math::{pow, root, sqrt};
use stillrise_units::{Flow, Length, Ratio};

formula! {
    /// Depth at which a round pipe carries a flow on its own slope, free surface, steady.
    ///
    /// Above the flow of the full pipe two depths serve: this is the lower one. It exists up to 1.0757
    /// times the full flow, at 0.938 of the diameter; beyond, the pipe is pressed and there is no
    /// answer. Deeper than 0.8 of the diameter a pipe may fill at any disturbance.
    "manning-depth" "Depth of flow in a round pipe, Manning"
    fn depth(
        q: Flow = "Q" "flow" [GPM, L_S: 0.0 .. 5000.0 in 0.0 .. 1e6];
        d: Length = "D" "inside diameter" [IN, MM: 75.0 .. 3000.0 in 1.0 .. 20000.0];
        slope: Ratio = "S" "slope of the pipe" [PERCENT, PERCENT: 0.1 .. 15.0 in 0.0 .. 100.0];
        n: Ratio = "n" "Manning's roughness" [ONE, ONE: 0.009 .. 0.03 in 0.001 .. 0.5];
    ) -> Length = "y" "depth of flow" [IN, MM];
    solves [q M3_S, d M, slope ONE, n ONE => y M] {
        q => segment_area(d, y) * pow(segment_radius(d, y), 2.0 / 3.0) * sqrt(slope) / n
    } by {
        found(q, d, slope, n)
    }
    helpers [
        segment_area(f64, f64) "A" "wetted area of the round pipe";
        segment_radius(f64, f64) "R" "hydraulic radius of the round pipe";
    ]
    sources [MANNING]
    checks [
        "q=0.01 m3/s, d=0.2 m, slope=0.001, n=0.013" => "0.16 m", Published(&R_HYDRAULICS, "circular pipe, 0.01 m3/s in 0.2 m");
        "q=0.01 m3/s, d=0.2 m, slope=0.001, n=0.013" => "0.15783 m", ByHand("independent evaluation in Python");
        "q=0.0021764 m3/s, d=0.1524 m, slope=0.01, n=0.013" => "0.03810 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.25");
        "q=0.0079439 m3/s, d=0.1524 m, slope=0.01, n=0.013" => "0.07620 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.5");
        "q=0.0312013 m3/s, d=0.2032 m, slope=0.01, n=0.013" => "0.15240 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.75");
        "q=0.0097715 m3/s, d=0.3048 m, slope=0.005, n=0.013" => "0.07620 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.25");
        "q=0.0515192 m3/s, d=0.3048 m, slope=0.005, n=0.009" => "0.15240 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.5");
        "q=0.1212946 m3/s, d=0.4572 m, slope=0.002, n=0.013" => "0.34290 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.75");
        "q=0.0392408 m3/s, d=0.6096 m, slope=0.002, n=0.013" => "0.15240 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.25");
        "q=0.2986114 m3/s, d=0.9144 m, slope=0.001, n=0.013" => "0.45720 m", Library("fluids 1.3.1, open_flow.V_Manning at y/D 0.5");
        "q=1 L/s, d=0.2 m, slope=0, n=0.013" => "outside: result", Limit("a level pipe carries nothing on its own slope");
        "q=0 L/s, d=0.2 m, slope=0.001, n=0.013" => "0.000 mm", Limit("no flow, no depth");
        "q=0.0713343 m3/s, d=0.3048 m, slope=0.005, n=0.013" => "0.2498 m",
            ByHand("the full flow passes also at 0.81963 of the diameter; root by scipy 1.17.1 brentq");
        "q=0.0768 m3/s, d=0.3048 m, slope=0.005, n=0.013" => "outside: result", Limit("more than 1.0757 times the full flow of 0.0713343 m3/s");
    ]
}

thread_local! {
    static KEPT: Memo = const { Memo::new() };
}

/// The root, kept: a search lays the same pipe again and again.
fn found(q: f64, d: f64, slope: f64, n: f64) -> Option<f64> {
    let find = || root(0.0, FULLEST * d, |y| segment_area(d, y) * pow(segment_radius(d, y), 2.0 / 3.0) * sqrt(slope) / n - q).unwrap_or(f64::NAN);
    let root = KEPT.with(|kept| kept.get(&Key::of(&[q, d, slope, n]), find));
    (!root.is_nan()).then_some(root)
}
