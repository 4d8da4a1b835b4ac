//! How an uncertain quantity spreads over its range.

use stillrise_units::math::{Z_95, exp, ln, sqrt};

stillrise_handbook::choice! {
    /// How a quantity spreads over its range.
    Distribution {
        /// between the ends, likeliest at the value; over the logarithm where they lie more than threefold apart
        Triangular "triangular",
        /// between the ends, no value likelier than another
        Uniform "uniform",
        /// half above the value, one in twenty beyond each end
        Normal "normal",
        /// the same over the logarithm
        LogNormal "log-normal",
    }
}

/// Ends that lie further apart than this are spread over the logarithm.
const WIDE: f64 = 3.0;
/// Shares of the outcomes that are left out at each end of an endless distribution.
const TAIL: f64 = 0.001;

impl Distribution {
    /// The value below which a share `u` of the outcomes lies, `u` between 0 and 1; any unit, the same throughout.
    ///
    /// A normal one has two halves, each with its own width; one in a thousand is cut off at each end.
    #[must_use]
    pub fn quantile(self, low: f64, likely: f64, high: f64, u: f64) -> f64 {
        let drawn = match self {
            Distribution::Triangular if low > 0.0 && high / low > WIDE => {
                exp(triangle(ln(low), ln(likely), ln(high), u))
            }
            Distribution::Triangular => triangle(low, likely, high, u),
            Distribution::Uniform => low + (high - low) * u,
            Distribution::Normal => normal(low, likely, high, u),
            Distribution::LogNormal => exp(normal(ln(low), ln(likely), ln(high), u)),
        };
        // There and back over the logarithm may miss an end by its last digit.
        match self {
            Distribution::Triangular | Distribution::Uniform => drawn.clamp(low, high.max(low)),
            Distribution::Normal | Distribution::LogNormal => drawn,
        }
    }

    /// The least and the most that is ever drawn.
    #[must_use]
    pub fn reach(self, low: f64, likely: f64, high: f64) -> (f64, f64) {
        (self.quantile(low, likely, high, 0.0), self.quantile(low, likely, high, 1.0))
    }
}

/// The quantile of a triangular distribution.
fn triangle(low: f64, likely: f64, high: f64, u: f64) -> f64 {
    let width = high - low;
    if width <= 0.0 {
        return likely;
    }
    let below = (likely - low) / width;
    if u < below { low + width * sqrt(u * below) } else { high - width * sqrt((1.0 - u) * (1.0 - below)) }
}

/// The quantile of two half normal distributions that meet at the median.
fn normal(low: f64, median: f64, high: f64, u: f64) -> f64 {
    let z = stillrise_units::math::normal_quantile(u.clamp(TAIL, 1.0 - TAIL)) / Z_95;
    median + z * if z < 0.0 { median - low } else { high - median }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// scipy 1.17.1, stats.triang(c=0.25, loc=1, scale=4).ppf(0.1, 0.25, 0.5, 0.9).
    #[test]
    fn quantiles_of_a_triangle() {
        for (u, x) in
            [(0.1, 1.632_455_532_033_675_8), (0.25, 2.0), (0.5, 2.550_510_257_216_821_7), (0.9, 3.904_554_884_989_667)]
        {
            assert!((triangle(1.0, 2.0, 5.0, u) - x).abs() < 1e-12, "{u}");
        }
    }

    /// The ends are what one in twenty lies beyond, the value has half on either side; scipy 1.17.1,
    /// stats.norm(10, 2/1.6448536269514722).ppf(0.25) = 9.179878.
    #[test]
    fn the_ends_of_the_endless() {
        for (u, x) in [(0.05, 8.0), (0.25, 9.179_878), (0.5, 10.0), (0.95, 16.0)] {
            let q = Distribution::Normal.quantile(8.0, 10.0, 16.0, u);
            assert!((q - x).abs() < 1e-6, "{u}: {q}");
        }
        for (u, x) in [(0.05, 5.0), (0.5, 10.0), (0.95, 40.0)] {
            let q = Distribution::LogNormal.quantile(5.0, 10.0, 40.0, u);
            assert!((q / x - 1.0).abs() < 1e-9, "{u}: {q}");
        }
    }

    #[test]
    fn nothing_bounded_leaves_its_ends() {
        for k in 1..2000 {
            let low = 1e-7 * f64::from(k);
            let high = low * 7.3;
            let (from, to) = Distribution::Triangular.reach(low, low * 2.0, high);
            assert!(from >= low && to <= high, "{low}: {from} {to}");
        }
    }

    #[test]
    fn the_ends_of_the_bounded() {
        for u in [0.0, 0.25, 1.0] {
            assert!((Distribution::Uniform.quantile(2.0, 3.0, 6.0, u) - (2.0 + 4.0 * u)).abs() < 1e-12);
        }
        // Wide ends are spread over the logarithm.
        for (u, x) in [(0.0, 1.0), (0.5, 10.0), (1.0, 100.0)] {
            assert!((Distribution::Triangular.quantile(1.0, 10.0, 100.0, u) / x - 1.0).abs() < 1e-12, "{u}");
        }
        assert_eq!(Distribution::Triangular.reach(2.0, 3.0, 4.0), (2.0, 4.0));
    }
}
