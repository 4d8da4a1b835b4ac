//! Pumps ahead of a separator, by class: how hard they shear oil, how unsteadily they deliver.
//!
//! The order of the classes is published; the figures are not. No measured droplet sizes behind
//! pumps were found, so the dissipation is an editable judgement over a wide spread, to be used with
//! `hinze-droplet` as the largest droplet that leaves the pump.

use crate::page::Evidence::{self, ByHand, Limit, Memory};
use crate::page::Source;
use crate::sources::{PUMP_JUDGEMENT, PUMP_RANKING};
use stillrise_units::{Dissipation, Ratio, Typed, ratio};

/// Which class of pumps, least shearing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each is told by its meaning")]
pub enum Class {
    FreeFlow,
    ProgressiveCavity,
    Diaphragm,
    Lobe,
    Vane,
    SlowCentrifugal,
    Centrifugal,
    Submersible,
    HighHeadCentrifugal,
}

impl Class {
    /// Whether it breaks few droplets: no pump at all, or one that displaces the water slowly.
    #[must_use]
    pub fn is_gentle(self) -> bool {
        self <= Class::Vane
    }
    /// Whether it lifts by an impeller.
    #[must_use]
    pub fn has_impeller(self) -> bool {
        matches!(self, Class::SlowCentrifugal | Class::Centrifugal | Class::Submersible | Class::HighHeadCentrifugal)
    }
}

/// One class of pumps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pump {
    /// Which class.
    pub class: Class,
    /// The word in files.
    pub word: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// Low, likely and high dissipation where the droplets break, W/kg.
    epsilon: [f64; 3],
    /// Peak flow over mean flow.
    pulsation: f64,
    /// Where the dissipation comes from, and how good it is.
    pub shear_mark: Evidence,
    /// Where the pulsation comes from.
    pub pulsation_mark: Evidence,
    /// Sources of the class's place in the order and of its figures.
    pub sources: &'static [&'static Source],
}

impl Pump {
    /// Low, likely and high dissipation where the droplets break.
    #[must_use]
    pub fn dissipation(&self) -> [Dissipation; 3] {
        self.epsilon.map(Dissipation::from_si)
    }

    /// Peak flow over mean flow: the separator sees the peak.
    #[must_use]
    pub fn pulsation(&self) -> Ratio {
        ratio(self.pulsation)
    }
}

/// The class of this word.
#[must_use]
pub fn pump(word: &str) -> Option<&'static Pump> {
    PUMPS.iter().find(|p| p.word == word)
}

const JUDGED: Evidence = Memory("engineering judgement; editable; no measured droplet sizes were found");
const STEADY: Evidence = Limit("a continuous flow peaks at its mean");
const LITTLE: Evidence = Memory("engineering judgement: nearly continuous displacement");
const BOTH: &[&Source] = &[&PUMP_RANKING, &PUMP_JUDGEMENT];

/// All classes, least shearing first. One published ranking puts diaphragm pumps beside progressive
/// cavity pumps, another puts lobe pumps between them.
pub static PUMPS: &[Pump] = &[
    Pump {
        class: Class::FreeFlow,
        word: "gravity",
        meaning: "no pump: free flow in pipes of 0.5 to 2 m/s",
        epsilon: [0.01, 0.1, 1.0],
        pulsation: 1.0,
        shear_mark: ByHand(
            "friction in smooth pipes of 100 to 300 mm at 0.5 to 2 m/s gives 0.013 to 0.6 W/kg; see pipe-dissipation",
        ),
        pulsation_mark: STEADY,
        sources: &[&PUMP_JUDGEMENT],
    },
    Pump {
        class: Class::ProgressiveCavity,
        word: "progressive-cavity",
        meaning: "progressive cavity (eccentric screw) pump, slow",
        epsilon: [10.0, 30.0, 100.0],
        pulsation: 1.05,
        shear_mark: JUDGED,
        pulsation_mark: LITTLE,
        sources: BOTH,
    },
    Pump {
        class: Class::Diaphragm,
        word: "diaphragm",
        meaning: "diaphragm pump, two chambers in turn, no pulsation damper",
        epsilon: [10.0, 100.0, 300.0],
        pulsation: core::f64::consts::FRAC_PI_2,
        shear_mark: JUDGED,
        pulsation_mark: Limit("two half-sine strokes in turn peak at pi/2 times their mean; a damper lowers it"),
        sources: BOTH,
    },
    Pump {
        class: Class::Lobe,
        word: "lobe",
        meaning: "rotary lobe pump, slow",
        epsilon: [10.0, 100.0, 300.0],
        pulsation: 1.1,
        shear_mark: JUDGED,
        pulsation_mark: LITTLE,
        sources: BOTH,
    },
    Pump {
        class: Class::Vane,
        word: "vane",
        meaning: "sliding vane pump",
        epsilon: [30.0, 200.0, 1000.0],
        pulsation: 1.1,
        shear_mark: JUDGED,
        pulsation_mark: LITTLE,
        sources: BOTH,
    },
    Pump {
        class: Class::SlowCentrifugal,
        word: "slow-centrifugal",
        meaning: "centrifugal pump, slow or of several gentle stages",
        epsilon: [100.0, 200.0, 1000.0],
        pulsation: 1.0,
        shear_mark: ByHand(
            "100 gpm against 30 ft at an efficiency of 0.6, lost in a volute of 2 L: 189 W/kg; the spread is a judgement",
        ),
        pulsation_mark: STEADY,
        sources: BOTH,
    },
    Pump {
        class: Class::Centrifugal,
        word: "centrifugal",
        meaning: "centrifugal pump of one stage, as in most sumps",
        epsilon: [300.0, 1000.0, 10_000.0],
        pulsation: 1.0,
        shear_mark: JUDGED,
        pulsation_mark: STEADY,
        sources: BOTH,
    },
    Pump {
        class: Class::Submersible,
        word: "submersible",
        meaning: "submersible sump pump, a centrifugal pump of one stage",
        epsilon: [300.0, 1000.0, 10_000.0],
        pulsation: 1.0,
        shear_mark: JUDGED,
        pulsation_mark: STEADY,
        sources: BOTH,
    },
    Pump {
        class: Class::HighHeadCentrifugal,
        word: "high-head-centrifugal",
        meaning: "centrifugal pump of high head, or one throttled by a valve over some bar",
        epsilon: [3000.0, 10_000.0, 100_000.0],
        pulsation: 1.0,
        shear_mark: JUDGED,
        pulsation_mark: STEADY,
        sources: BOTH,
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_is_that_of_shear_and_spreads_are_ordered() {
        for pair in PUMPS.windows(2) {
            assert!(pair[0].epsilon[1] <= pair[1].epsilon[1], "{}", pair[1].word);
        }
        for p in PUMPS {
            assert!(p.epsilon[0] < p.epsilon[1] && p.epsilon[1] < p.epsilon[2] && p.pulsation >= 1.0, "{}", p.word);
            assert_eq!(pump(p.word).map(|q| q.word), Some(p.word));
        }
    }

    /// 100 gpm against 30 ft at 0.6: shaft power less hydraulic power, over 2 kg of water.
    #[test]
    fn the_slow_centrifugal_figure_can_be_worked() {
        let hydraulic: f64 = 998.0 * 9.80665 * 6.309_02e-3 * 9.144;
        let lost = hydraulic / 0.6 * 0.4;
        assert!((lost / (998.0 * 0.002) - 189.0).abs() < 1.0);
    }
}
