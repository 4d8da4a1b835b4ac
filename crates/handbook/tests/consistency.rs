//! Two rules that stand side by side and should agree. That they do validates neither.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use stillrise_handbook::separation::{camp_eddy, dobbins_camp, settling_peclet};
use stillrise_units::catalog::{M, MM_S, ONE, PERCENT};
use stillrise_units::{Length, Ratio, Typed, Velocity};

/// The turbulence factor of API 421 and its rows of V_H/V_t, from memory; removal of the design droplet in
/// a basin enlarged by that factor, after Dobbins and Camp with wall friction of 0.024: computed
/// independently (layers in Python).
const ROWS: [(f64, f64, f64); 5] =
    [(3.0, 1.07, 96.5), (6.0, 1.14, 96.1), (10.0, 1.27, 96.7), (15.0, 1.37, 96.5), (20.0, 1.45, 96.2)];

#[test]
fn the_api_factor_is_96_per_cent_of_dobbins_and_camp() {
    let depth = Length::of(1.5, &M);
    let rise = Velocity::of(1.0, &MM_S);
    for (ratio, factor, removal) in ROWS {
        let along = rise * ratio;
        let eddy = camp_eddy::diffusivity(along, depth, Ratio::of(0.024, &ONE)).expect("in the domain");
        let p = settling_peclet::peclet(rise, depth, eddy).expect("in the domain");
        // A basin enlarged by the factor has an overflow rate that much below the rise.
        let caught = dobbins_camp::removal(rise, rise / factor, p).expect("in the domain");
        let percent = PERCENT.from_si(caught.si());
        assert!((percent - removal).abs() < 0.1, "V_H/V_t = {ratio}: {percent} instead of {removal}");
    }
}
