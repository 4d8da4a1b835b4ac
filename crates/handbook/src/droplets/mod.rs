//! Droplets: how their sizes are described, and how they come together.

use crate::evidence::Table;
use crate::page::Evidence::Library;

crate::list_pages! {
    measured_median,
    volume_finer,
    hatch_choate,
    sauter_median,
    rosin_rammler_finer,
    rosin_rammler_removal,
    upper_limit_finer,
    rosin_rammler_median,
    turbulent_collision_rate,
    shear_collision_time,
    smoluchowski_number,
    smoluchowski_constant,
    smoluchowski_sum,
    smoluchowski_equal,
}

/// Check tables of this area.
pub static TABLES: &[Table] = &[Table {
    file: "psd_rosin_rammler.csv",
    text: include_str!("../../check/psd_rosin_rammler.csv"),
    page: &rosin_rammler_finer::PAGE,
    fixed: "",
    columns: &[("d_um", "d", "um"), ("dm_um", "delta", "um"), ("n", "n", "")],
    expect: ("cdf_scipy", ""),
    within: None,
    only: None,
    evidence: Library("scipy 1.17.1, stats.weibull_min.cdf"),
}];

/// Number, volume and squares of volume of droplets of a given density in volume: Simpson's rule over the
/// logarithm of volume. The tails that it leaves out are below a millionth for means up to a hundred.
#[cfg(test)]
fn moments<E>(density: impl Fn(stillrise_units::Ratio) -> Result<stillrise_units::Ratio, E>) -> [f64; 3] {
    use stillrise_units::Typed;
    const STEPS: i32 = 4000;
    let (low, high) = (-30.0, 12.0);
    let step = (high - low) / f64::from(STEPS);
    let mut sums = [0.0; 3];
    for i in 0..=STEPS {
        let x = stillrise_units::math::exp(low + step * f64::from(i));
        let weight = if i == 0 || i == STEPS { 1.0 } else { f64::from(2 + 2 * (i % 2)) } * step / 3.0;
        let n = density(stillrise_units::ratio(x)).map_or(f64::NAN, Typed::si);
        for (sum, power) in sums.iter_mut().zip([x, x * x, x * x * x]) {
            *sum += weight * n * power;
        }
    }
    sums
}
