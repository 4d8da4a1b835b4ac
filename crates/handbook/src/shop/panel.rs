//! Coefficients of a rectangular wall under water to its rim: stress and deflection by how its edges are held.

use crate::choice;

choice! {
    /// How the edges of a wall panel are held.
    PanelEdges {
        /// bottom and sides supported and free to turn, rim free
        ThreeSupported "three supported",
        /// bottom and sides fixed, rim free
        ThreeFixed "three fixed",
        /// all four supported and free to turn: sides that turn, a stiff rim
        FourSupported "four supported",
        /// all four fixed
        FourFixed "four fixed",
        /// bottom and sides fixed, a stiff rim that lets the plate turn
        FixedWithRim "fixed with rim",
    }
}

/// Width over height of the rows.
const RATIOS: [f64; 8] = [0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0];

/// Stress over p0 H2/t2, and deflection over p0 H4/(E t3), by width over height. Plate elements, 48 x 48, Poisson's
/// ratio 0.3, worked apart from this code.
fn rows(edges: PanelEdges) -> (&'static [f64; 8], &'static [f64; 8]) {
    match edges {
        PanelEdges::ThreeSupported => (
            &[0.085, 0.142, 0.202, 0.282, 0.358, 0.473, 0.588, 0.629],
            &[0.0038, 0.0141, 0.0402, 0.0910, 0.168, 0.401, 1.16, 2.28],
        ),
        PanelEdges::ThreeFixed => (
            &[0.075, 0.136, 0.209, 0.285, 0.363, 0.519, 0.776, 0.910],
            &[0.0010, 0.0037, 0.0088, 0.0174, 0.0351, 0.0893, 0.213, 0.294],
        ),
        PanelEdges::FourSupported => (
            &[0.084, 0.126, 0.162, 0.215, 0.258, 0.317, 0.367, 0.381],
            &[0.0037, 0.0117, 0.0224, 0.0331, 0.0424, 0.0555, 0.0670, 0.0701],
        ),
        PanelEdges::FourFixed => (
            &[0.075, 0.135, 0.200, 0.248, 0.277, 0.299, 0.301, 0.301],
            &[0.0010, 0.0035, 0.0070, 0.0100, 0.0121, 0.0139, 0.0144, 0.0143],
        ),
        PanelEdges::FixedWithRim => (
            &[0.075, 0.136, 0.208, 0.272, 0.320, 0.373, 0.399, 0.400],
            &[0.0010, 0.0037, 0.0080, 0.0129, 0.0171, 0.0225, 0.0257, 0.0260],
        ),
    }
}

/// Linear between rows; not a number beyond the first or the last.
fn between(row: &[f64; 8], ratio: f64) -> f64 {
    for (x, y) in RATIOS.windows(2).zip(row.windows(2)) {
        if let ([x0, x1], [y0, y1]) = (x, y)
            && ratio >= x0 - 1e-9
            && ratio <= x1 + 1e-9
        {
            return y0 + (y1 - y0) * (ratio - x0) / (x1 - x0);
        }
    }
    f64::NAN
}

/// Coefficient of the stress.
pub(super) fn stress_factor(edges: PanelEdges, ratio: f64) -> f64 {
    between(rows(edges).0, ratio)
}

/// Coefficient of the deflection.
pub(super) fn deflection_factor(edges: PanelEdges, ratio: f64) -> f64 {
    between(rows(edges).1, ratio)
}
