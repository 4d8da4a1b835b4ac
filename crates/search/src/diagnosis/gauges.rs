//! Depths gauged in the unit, against what they must not reach.

use super::causes::Gauge;
use super::signs::CLEAR;
use stillrise_design::enquiry::blocks::Observed;
use stillrise_design::performance::Performance;
use stillrise_design::train::unit::Unit;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::catalog::IN;
use stillrise_units::{Length, Typed, print};

/// So many inches below its level the water stands for no good reason: half of it goes by evaporation, as the oil
/// levels reckon.
const FALL: f64 = 2.0;

/// What a layer of oil is held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layers {
    /// The thickest that is permitted, of the lightest oil.
    pub permitted: Length,
    /// The one at which the alarm belongs.
    pub alarm: Length,
    /// Whether they rest on dimensions that nobody stated.
    pub assumed: bool,
}

/// What a depth gauged in the unit is held against.
pub(super) struct Gauges {
    /// Thickest permitted layer of oil.
    cap: Option<Length>,
    /// Where the alarm for oil stands over the level of the water, as the deepest layer that it lets pass.
    alarm: Option<Length>,
    /// Sludge from the bottom of the hopper to the underside of the plates.
    plates: Length,
    /// Whether somebody said where the underside of the plates is.
    stated: bool,
    /// Sludge from the bottom of the hopper that calls for pumping out.
    trigger: Option<Length>,
    /// From the bottom of the hopper to the top of the walls.
    whole: Length,
}

/// From the bottom of the hopper to the underside of the plates.
pub(super) fn under_plates(unit: &Unit) -> Option<Length> {
    unit.pack.as_ref().map(|pack| unit.below_floor() + pack.laid.bottom.q)
}

impl Gauges {
    pub(super) fn new(performance: &Performance, unit: &Unit, stated: bool) -> Self {
        // As deep as its volume reaches in the vessel.
        let trigger = performance.storage.sludge_trigger.and_then(|v| unit.shape.level(v.q));
        let trigger = trigger.map(|level| level - unit.shape.bottom()).filter(|depth| depth.si() > 0.0);
        let limits: Vec<Length> = performance.levels.iter().map(|l| l.limit.q).filter(|q| q.si() > 0.0).collect();
        let alarms: Vec<Length> =
            performance.levels.iter().filter_map(|l| Some(l.level(Mark::Alarm)?.thickness.q)).collect();
        let least = |all: &mut dyn Iterator<Item = Length>| all.reduce(|a, b| if b < a { b } else { a });
        Self {
            cap: least(&mut limits.into_iter()),
            alarm: least(&mut alarms.into_iter()),
            plates: under_plates(unit).unwrap_or(Length::from_si(0.0)),
            stated,
            trigger,
            whole: unit.below_floor() + unit.body.height().q,
        }
    }

    /// What a layer of oil is held against.
    pub(super) fn layers(&self) -> Option<Layers> {
        let (permitted, alarm) = self.cap.zip(self.alarm)?;
        Some(Layers { permitted, alarm, assumed: !self.stated })
    }

    /// Depths over what they must not reach.
    pub(super) fn shares(&self, o: &Observed) -> impl Iterator<Item = (Gauge, f64)> {
        let oil = o.oil_layer.q().zip(self.cap).map(|(layer, cap)| (Gauge::OilLayer, layer.si() / cap.si()));
        let sludge = o.sludge.q().filter(|_| self.plates.si() > 0.0);
        let sludge = sludge.map(|depth| (Gauge::Sludge, depth.si() / self.plates.si()));
        // Sludge below plates whose underside is known is not in them.
        let sludge =
            sludge.map(|(gauge, share)| (gauge, if self.stated && share < 1.0 { share.min(CLEAR) } else { share }));
        let trigger = o.sludge.q().zip(self.trigger).map(|(depth, at)| (Gauge::Trigger, depth.si() / at.si()));
        let level = o.level_drop.q().map(|drop| (Gauge::Level, drop.in_unit(&IN) / FALL));
        oil.into_iter().chain(sludge).chain(trigger).chain(level)
    }

    /// Depths that the unit cannot hold.
    pub(super) fn absurd<'a>(&self, observed: impl Iterator<Item = &'a Observed>) -> Vec<String> {
        let mut says = Vec::new();
        for o in observed {
            for (what, depth) in [
                ("oil_layer", &o.oil_layer),
                ("sludge", &o.sludge),
                ("backed_up", &o.backed_up),
                ("level_drop", &o.level_drop),
            ] {
                if let Some(claim) = depth.claim().filter(|c| c.written.si() > self.whole.si()) {
                    let whole = print::with_unit(self.whole.si(), claim.written.unit);
                    says.push(format!(
                        "{}: {} is more than the {whole} of the whole unit; check {what}",
                        depth.place, claim.written.text
                    ));
                }
            }
        }
        says
    }
}
