//! How an oil's viscosity falls with temperature, for a picture.

use crate::fluids::oil_viscosity::viscosity;
use crate::fluids::oils::Oil;
use stillrise_units::catalog::DEG_C;
use stillrise_units::{KinematicViscosity, Temperature, Typed};

/// The temperatures at which water comes to a separator, in °C.
const COLDEST: i32 = 0;
const WARMEST: i32 = 60;

/// Viscosity of an oil at every second degree from 0 to 60 °C, by `oil-viscosity` from its two points; without the
/// temperatures at which that has no answer.
#[must_use]
pub fn viscosities(oil: &Oil) -> Vec<(Temperature, KinematicViscosity)> {
    let [(v_1, t_1), (v_2, t_2)] = oil.viscosity_points();
    let at = (COLDEST..=WARMEST).step_by(2).map(|t| Temperature::of(f64::from(t), &DEG_C));
    at.filter_map(|t| Some((t, viscosity(v_1, t_1, v_2, t_2, t).ok()?))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluids::oils::OILS;
    use stillrise_units::catalog::MM2_S;

    /// Every curve falls, and passes through the points from which it is worked, where these lie in it. ASTM D341 goes back to
    /// viscosity by a fit, which misses a thin oil by some 0.01 %: far less than the digits printed for any point.
    #[test]
    fn every_oil_has_a_falling_curve_through_its_points() {
        for oil in OILS {
            let curve = viscosities(oil);
            assert!(curve.len() > 20 && curve.windows(2).all(|w| w[0].1 > w[1].1), "{}", oil.word);
            for (v, t) in oil.viscosity {
                let found = curve.iter().find(|(at, _)| (at.in_unit(&DEG_C) - t).abs() < 1e-9);
                assert!(found.is_none_or(|(_, w)| (w.in_unit(&MM2_S) / v - 1.0).abs() < 1e-3), "{} at {t}", oil.word);
            }
        }
        assert!(OILS.iter().any(|oil| oil.viscosity.iter().any(|(_, t)| (*t - 40.0).abs() < 1e-9)));
    }
}
