//! Formula: removal of one droplet size in a plate pack

use super::catch::{Bends, Lane, Met};
use super::feed::Sizes;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{COMMON_PRACTICE, SURFACE_LOADING};
use crate::{choice, formula};
use stillrise_units::math::{exp, max, min};
use stillrise_units::lanes::{self, WIDTH};
use stillrise_units::{Ratio, Typed, Velocity};

choice! {
    /// How the water flows in the gaps between plates.
    GapRegime {
        /// laminar: every droplet keeps its line; the default below a Reynolds number of some 2000
        Laminar "laminar",
        /// turbulent: mixed across the gap
        Turbulent "turbulent",
    }
}

formula! {
    /// Share of droplets of one rise velocity that a plate pack catches, gaps unequally fed.
    ///
    /// In laminar flow a gap catches in proportion to its projected area, whatever the velocity
    /// profile. Plates resist so little that they do not distribute the water: here half of the
    /// gaps carry `1 + s` of the mean flow and half `1 - s`. Unequal flow always loses. The share
    /// `s` is a judgement; 0 is a perfect distribution.
    "plate-removal" "Removal of one droplet size in a plate pack"
    fn removal(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e9 .. 1e9];
    ) with Plates "plates" (
        v_0: Velocity = "v_0" "flow over projected plate area" [GPM_FT2, MM_S: 0.001 .. 5.0 in 1e-9 .. 1e12];
        spread: Ratio = "s" "how unequal the flow in the gaps is" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 95.0];
        regime: GapRegime = "regime" "flow in the gaps";
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [v MM_S, v_0 MM_S, spread ONE => ONE] {
        let x = max(v / v_0, 0.0);
        if regime == GapRegime::Laminar {
            (1.0 + spread) / 2.0 * min(1.0, x / (1.0 + spread)) + (1.0 - spread) / 2.0 * min(1.0, x / (1.0 - spread))
        } else {
            (1.0 + spread) / 2.0 * (1.0 - exp(-x / (1.0 + spread))) + (1.0 - spread) / 2.0 * (1.0 - exp(-x / (1.0 - spread)))
        }
    }
    sources [SURFACE_LOADING, COMMON_PRACTICE]
    checks [
        "v=1 mm/s, v_0=1 mm/s, spread=20 %, regime=laminar" => "0.900", ByHand("0.6 x 1/1.2 + 0.4 x 1");
        "v=1 mm/s, v_0=1 mm/s, spread=0 %, regime=laminar" => "1.000", Limit("equal gaps at their surface loading catch all");
        "v=0.5 mm/s, v_0=1 mm/s, spread=20 %, regime=laminar" => "0.500", Limit("while no gap is saturated, unequal flow costs nothing");
        "v=1.2 mm/s, v_0=1 mm/s, spread=20 %, regime=laminar" => "1.000", Limit("the gaps with most flow are saturated");
        "v=0 mm/s, v_0=1 mm/s, spread=20 %, regime=laminar" => "0", Limit("what does not rise is not caught");
        "v=-1 mm/s, v_0=1 mm/s, spread=20 %, regime=turbulent" => "0", Limit("what sinks is not caught");
        "v=1 mm/s, v_0=1 mm/s, spread=0 %, regime=turbulent" => "0.6321", Limit("equal gaps: 1 - 1/e");
        "v=1 mm/s, v_0=1 mm/s, spread=20 %, regime=turbulent" => "0.6246",
            ByHand("0.6 (1 - e^(-1/1.2)) + 0.4 (1 - e^(-1/0.8)) = 0.33924 + 0.28540");
    ]
}

/// A pack as eight droplets at once meet it: two halves, one with more than its share of the flow.
pub(super) struct PlatesLane {
    regime: GapRegime,
    /// What the halves carry of the mean flow, and one over the overflow rate of each.
    more: f64,
    less: f64,
    per_more: f64,
    per_less: f64,
    v_0: f64,
}

impl Plates {
    pub(super) fn lane(&self) -> PlatesLane {
        let (v_0, spread) = (self.v_0.si(), self.spread.si());
        let (more, less) = (1.0 + spread, 1.0 - spread);
        PlatesLane {
            regime: self.regime,
            more,
            less,
            per_more: 1.0 / (v_0 * more),
            per_less: 1.0 / (v_0 * less),
            v_0,
        }
    }
}

impl Lane for PlatesLane {
    #[inline(always)]
    fn pass(&self, at: &Sizes, met: &mut Met) {
        let Self { more, less, per_more, per_less, .. } = *self;
        if self.regime == GapRegime::Laminar {
            for k in 0..WIDTH {
                let (fast, slow) = (min(1.0, at.v[k] * per_more), min(1.0, at.v[k] * per_less));
                met.factor[k] *= 1.0 - 0.5 * (more * fast + less * slow);
            }
        } else {
            let (fast, slow) = (lanes::exp(at.v.map(|v| -v * per_more)), lanes::exp(at.v.map(|v| -v * per_less)));
            for k in 0..WIDTH {
                met.factor[k] *= 0.5 * (more * fast[k] + less * slow[k]);
            }
        }
    }
    fn bends(&self) -> Bends {
        match self.regime {
            GapRegime::Laminar => Bends { all: Some(self.v_0 * self.more), kink: Some(self.v_0 * self.less) },
            GapRegime::Turbulent => Bends { all: None, kink: None },
        }
    }
}
