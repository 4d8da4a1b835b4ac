//! Formula: flow at which a pump meets its system

use super::circle::G;
use super::{colebrook, laminar_friction};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::page::Series;
use crate::sources::{DARCY, R_HYDRAULICS};
use stillrise_units::math::root;
use stillrise_units::{Flow, KinematicViscosity, Length, Ratio, Typed, ratio};

/// Below this Reynolds number the flow in the pipe is laminar, as on the pages of the friction factors.
const LAMINAR: f64 = 2300.0;

/// Head of one pump at a flow, m over m3/s: straight between two points; not a number outside the curve, or where flows do
/// not rise or heads do not fall.
fn pump_head(curve: Series, q: f64) -> f64 {
    let rows = &curve.0;
    if rows.len() < 2 || !rows.windows(2).all(|w| matches!(w, [(q_1, h_1), (q_2, h_2)] if q_2 > q_1 && h_2 < h_1)) {
        return f64::NAN;
    }
    for pair in rows.windows(2) {
        if let [low, high] = pair
            && q >= low.0
            && q <= high.0
        {
            return low.1 + (high.1 - low.1) * ((q - low.0) / (high.0 - low.0));
        }
    }
    f64::NAN
}

/// Mean velocity of a full pipe, m/s.
fn speed(q: f64, d: f64) -> f64 {
    q / (core::f64::consts::PI / 4.0 * d * d)
}

/// Darcy's friction factor by the pages `laminar-friction` and `colebrook`; none of water that stands.
fn friction(re: f64, rough: f64) -> f64 {
    if re <= 0.0 {
        return 0.0;
    }
    let found = if re < LAMINAR { laminar_friction::factor(ratio(re)) } else { colebrook::factor(ratio(re), ratio(rough)) };
    found.map_or(f64::NAN, Typed::si)
}

formula! {
    /// Flow at which pumps, alike and side by side, meet their rising main: there the head that each gives at its share of
    /// the flow is the static lift and what pipe and fittings lose.
    ///
    /// The curve runs straight between its points, and no further than they do: a pump that would run out beyond the last
    /// one, or cannot lift the water at all, has no answer. The loss coefficient counts entry and exit too.
    "pump-operating-point" "Flow at which a pump meets its system"
    fn flow(
        curve: Series = "Q_i|H_i" "flows of one pump and its heads at them" {GPM, L_S; FT, M};
        pumps: Ratio = "n" "pumps that run side by side" [ONE, ONE: 1.0 .. 4.0 in 1.0 .. 100.0];
        lift: Length = "z" "static lift, level to level" [FT, M: 0.0 .. 50.0 in -100.0 .. 10000.0];
        k_sum: Ratio = "K" "sum of the loss coefficients" [ONE, ONE: 0.0 .. 60.0 in 0.0 .. 1e6];
        length: Length = "L" "length of the rising main" [FT, M: 0.0 .. 5000.0 in 0.0 .. 1e6];
        d: Length = "D" "inside diameter" [IN, MM: 25.0 .. 1500.0 in 1.0 .. 20000.0];
        rough: Length = "epsilon" "roughness of the wall" [MIL, MM: 0.0 .. 3.0 in 0.0 .. 100.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.3 .. 3.0 in 1e-3 .. 1e6];
    ) -> Flow = "Q" "flow of all pumps that run" [GPM, L_S];
    solves [pumps ONE, lift M, k_sum ONE, length M, d M, rough M, nu M2_S => q M3_S] {
        pump_head(curve.clone(), q / pumps) => lift + (k_sum + friction(speed(q, d) * d / nu, rough / d) * length / d) * (speed(q, d) * speed(q, d) / (2.0 * G))
    } by {
        let most = curve.0.last().map_or(f64::NAN, |(q, _)| *q) * pumps;
        let least = curve.0.first().map_or(f64::NAN, |(q, _)| *q) * pumps;
        root(least, most, |q| pump_head(curve.clone(), q / pumps) - lift - (k_sum + friction(speed(q, d) * d / nu, rough / d) * length / d) * (speed(q, d) * speed(q, d) / (2.0 * G)))
    }
    constants [G "g"]
    helpers [
        pump_head(Series, f64) "H" "head of one pump, straight between the points of its curve";
        friction(f64, f64) "f" "Darcy's friction factor: laminar below a Reynolds number of 2300, Colebrook and White's above";
        speed(f64, f64) "V" "mean velocity of the full pipe";
    ]
    sources [R_HYDRAULICS, DARCY]
    checks [
        "curve=[0 cfs: 82.4674 ft; 12.0 cfs: 53.5325 ft; 12.1 cfs: 53.0482 ft], pumps=1, lift=30 ft, k_sum=49.107, length=0 ft, d=20 in, rough=0 mm, nu=1.143 mm2/s" => "12.051 cfs",
            Published(&R_HYDRAULICS, "operating point 12.051 cfs at 53.285 ft: its parabola through 0, 5000 and 7850 gpm at points beside the crossing, its loss of 0.160336 ft s2/ft6 Q2 as K = 0.160336 x 2 g A2");
        "curve=[0 L/s: 20 m; 10 L/s: 16 m; 20 L/s: 8 m], pumps=1, lift=12 m, k_sum=0, length=0 m, d=100 mm, rough=0 mm, nu=1 mm2/s" => "15.0000 L/s",
            Limit("without losses the flow at which the curve gives the lift: half way between 16 m and 8 m");
        "curve=[0 L/s: 20 m; 10 L/s: 16 m; 20 L/s: 8 m], pumps=2, lift=12 m, k_sum=0, length=0 m, d=100 mm, rough=0 mm, nu=1 mm2/s" => "30.0000 L/s",
            Limit("without losses two give twice as much");
        "curve=[0 L/s: 20 m; 10 L/s: 16 m; 20 L/s: 8 m], pumps=1, lift=6 m, k_sum=5, length=100 m, d=100 mm, rough=0.15 mm, nu=1 mm2/s" => "15.5508 L/s",
            ByHand("independent bisection in Python with Colebrook's factor by iteration: head 11.5593 m");
        "curve=[0 L/s: 20 m; 10 L/s: 16 m; 20 L/s: 8 m], pumps=2, lift=6 m, k_sum=5, length=100 m, d=100 mm, rough=0.15 mm, nu=1 mm2/s" => "20.6696 L/s",
            ByHand("independent bisection in Python, half the flow through each: head 15.7322 m");
        "curve=[0 L/s: 20 m; 10 L/s: 16 m; 20 L/s: 8 m], pumps=1, lift=21 m, k_sum=0, length=0 m, d=100 mm, rough=0 mm, nu=1 mm2/s" => "outside: result", Limit("a lift above the head without flow");
        "curve=[0 L/s: 20 m; 10 L/s: 16 m; 20 L/s: 8 m], pumps=1, lift=5 m, k_sum=0, length=0 m, d=100 mm, rough=0 mm, nu=1 mm2/s" => "outside: result", Limit("never beyond the last point of the curve");
        "curve=[0 L/s: 20 m; 10 L/s: 21 m; 20 L/s: 8 m], pumps=1, lift=12 m, k_sum=0, length=0 m, d=100 mm, rough=0 mm, nu=1 mm2/s" => "outside: result", Limit("a curve that rises has two flows at a head");
    ]
}
