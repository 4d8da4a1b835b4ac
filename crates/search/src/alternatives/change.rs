//! In what an alternative differs from what was asked for, and the enquiry with it.

use super::altered::{
    drains_open, even, gentle, may_take_rain, of_another_pump, one_pump_keeps_up, only_what_rises, quick_break,
    smaller_pump, spill_governs, without_orphans,
};
use super::pump_governs;
use crate::condition::Condition;
use crate::pick::Pick;
use crate::shortfall::{anywhere, has_place};
use stillrise_design::basis::cases::Kind;
use stillrise_design::basis::rain_kept_out::{is_barred, without_rain};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::{DrainValve, Feed, Surface};
use stillrise_design::enquiry::claimed_word::WordClaim;
use stillrise_design::job::Design;
use stillrise_handbook::rain::surfaces::ROOF;
use stillrise_units::Typed;

/// In what an alternative differs from what was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// The pumps are interlocked so that one runs at a time.
    OnePump,
    /// A slow positive-displacement pump in place of one that breaks the droplets.
    GentlePump,
    /// A pump for the flow that somebody asked a unit for, which keeps up with the water of dry weather.
    PumpAsAsked,
    /// The same with a slow positive-displacement pump.
    PumpAsAskedAndGentle,
    /// A cleaner that lets the oil go again in place of one that holds it.
    QuickBreak,
    /// Both that cleaner and the slow pump.
    QuickBreakAndGentle,
    /// The pumps pass no more than the flow cap; the rest waits in an equalisation.
    Capped,
    /// Rain is kept out; wash water alone is treated.
    RainKeptOut,
    /// The same with a pump that lifts no more than what then comes.
    RainKeptOutAndPump,
    /// Roofs drain elsewhere: no oil comes off them.
    RoofsApart,
    /// The largest paved area drains elsewhere; the others stay.
    LargestAreaApart,
    /// Rain that the sewer does not take comes with the rest, where its owner consents.
    WithTheRain,
    /// Wash water goes elsewhere; rain alone is treated.
    WashApart,
    /// The same with the spill held ahead, whose flow would else be that of the unit.
    WashApartSpillAhead,
    /// The baths that are dumped are hauled off, and none comes to the separator.
    BathApart,
    /// The drains of containments that stand open are kept closed, and what they hold is let down by hand.
    DrainClosed,
    /// The spill is held ahead, and none of it comes to the separator.
    SpillAhead,
    /// Waters whose oil a product holds go elsewhere, none of it comes with the others, and no pump breaks what is left.
    OnlyWhatRises,
    /// The unit ahead of the pumps, where somebody asked for that or they break the oil: it takes by gravity whatever arrives.
    AheadOfPumps,
    /// Pumps in a shaft of their own behind a unit in the ground, in place of a compartment that makes it longer.
    PumpApart,
    /// Two units in parallel in place of one.
    TwoInParallel,
    /// Another place, with room for whatever comes.
    MoreRoom,
}

impl Change {
    /// All, in the order of print.
    pub const ALL: [Change; 22] = [
        Change::OnePump,
        Change::GentlePump,
        Change::QuickBreak,
        Change::QuickBreakAndGentle,
        Change::PumpAsAsked,
        Change::PumpAsAskedAndGentle,
        Change::Capped,
        Change::RainKeptOut,
        Change::RainKeptOutAndPump,
        Change::RoofsApart,
        Change::LargestAreaApart,
        Change::WithTheRain,
        Change::WashApart,
        Change::WashApartSpillAhead,
        Change::BathApart,
        Change::DrainClosed,
        Change::SpillAhead,
        Change::OnlyWhatRises,
        Change::AheadOfPumps,
        Change::PumpApart,
        Change::TwoInParallel,
        Change::MoreRoom,
    ];

    /// Those that are tried in pairs where none alone lets anything fit.
    pub(super) const PAIRED: [Change; 10] = [
        Change::OnePump,
        Change::RoofsApart,
        Change::RainKeptOut,
        Change::LargestAreaApart,
        Change::WashApart,
        Change::BathApart,
        Change::GentlePump,
        Change::DrainClosed,
        Change::PumpApart,
        Change::SpillAhead,
    ];

    /// Whether another change is in it already, or undoes it.
    pub(super) fn holds(self, other: Change) -> bool {
        matches!(
            (self, other),
            (Change::RainKeptOut, Change::LargestAreaApart | Change::WashApart)
                | (Change::RoofsApart, Change::RainKeptOut)
                | (Change::WashApart, Change::BathApart)
        )
    }

    /// In a few words.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Change::OnePump => "one pump at a time, interlocked",
            Change::GentlePump => {
                "a slow positive-displacement pump (progressive cavity) that lifts no more at its peak, and breaks less of the oil"
            }
            Change::PumpAsAsked => "a pump for the flow you named, the rest held back ahead of it",
            Change::PumpAsAskedAndGentle => {
                "a slow positive-displacement pump (progressive cavity) for the flow you named, the rest held back ahead of it"
            }
            Change::QuickBreak => "a quick-break cleaner in place of what holds the oil",
            Change::QuickBreakAndGentle => "a quick-break cleaner together with a slow positive-displacement pump",
            Change::Capped => "evened out to the flow cap, equalisation ahead",
            Change::RainKeptOut => "without the rain off the surfaces, which is kept out",
            Change::RainKeptOutAndPump => {
                "without the rain off the surfaces, and with a pump that lifts no more than what then comes together"
            }
            Change::RoofsApart => {
                "without the water off the roofs, which carries no oil and is led elsewhere, all else as it is"
            }
            Change::LargestAreaApart => {
                "without the water off the largest paved area, which is led elsewhere, all else as it is"
            }
            Change::WithTheRain => "with the rain, and what may run while it rains, if the owner of the sewer consents",
            Change::WashApart => "the rain alone, all other water treated apart",
            Change::WashApartSpillAhead => "the rain alone, all other water treated apart, and the spill held ahead",
            Change::BathApart => "the bath hauled off or treated by itself, none of it let into the water",
            Change::DrainClosed => "the drain of the containment kept closed, its water let down by hand after a look",
            Change::SpillAhead => "the spill held ahead, none of it coming to the separator",
            Change::OnlyWhatRises => {
                "only water whose oil rises: what is washed with a product that holds the oil hauled off or treated apart, no such product let into the rest, and a slow positive-displacement pump where another would break the oil"
            }
            Change::AheadOfPumps => "ahead of the pumps, by gravity, so that they lift the water that leaves it",
            Change::PumpApart => "with the pumps in a shaft of their own behind the unit, which is shorter then",
            Change::TwoInParallel => "two units in parallel",
            Change::MoreRoom => "where there is room for it, clear height and lifting gear",
        }
    }

    /// The enquiry with this change; `None` where it makes no sense.
    pub(super) fn made(self, e: &Enquiry, taken: Option<&Pick>, design: &Design) -> Option<Enquiry> {
        let mut other = e.clone();
        match self {
            Change::OnePump
                if e.inlet.rate.0.len() > 1
                    && *e.inlet.together != Some(false)
                    && *e.inlet.interlocked != Some(true) =>
            {
                other.inlet.together.0 = None;
                other.inlet.interlocked.0 = Some(true);
            }
            Change::GentlePump if pump_governs(design) => return gentle(&other),
            Change::QuickBreak => return quick_break(&other),
            Change::QuickBreakAndGentle if pump_governs(design) => return gentle(&quick_break(&other)?),
            Change::PumpAsAsked => {
                let asked = e.asked.flow.q()?;
                let [pump] = &e.inlet.rate.0[..] else { return None };
                let dry = |kind: Kind| matches!(kind, Kind::Dry | Kind::Bath | Kind::Extra | Kind::DrainDown);
                let cases = &design.basis.as_ref()?.cases;
                let keeps_up = cases.iter().filter(|case| dry(case.kind)).all(|case| case.inflow.q <= asked);
                if pump.q()? <= asked || !keeps_up {
                    return None;
                }
                other.inlet.rate.0 = vec![e.asked.flow.clone()];
                // The figures are those of the pump that was named.
                of_another_pump(&mut other);
            }
            Change::PumpAsAskedAndGentle if pump_governs(design) => {
                return gentle(&Change::PumpAsAsked.made(e, taken, design)?);
            }
            Change::Capped => {
                let cap = e.outlet.flow_cap.q()?;
                if !e.inlet.rate.0.iter().filter_map(|pump| pump.q()).any(|rate| rate > cap) {
                    return None;
                }
                // The cap holds at the peak: what evens the flow out has no pulsation left behind it.
                other.inlet.rate.0 = vec![e.outlet.flow_cap.clone()];
                other.inlet.pulsation.claims = vec![even("evened out")];
                other.inlet.together.0 = None;
            }
            Change::RainKeptOut if !e.surfaces.is_empty() && !e.streams.is_empty() && !is_barred(e) => {
                other = without_rain(e);
                if one_pump_keeps_up(e) {
                    other.inlet.together.0 = None;
                    other.inlet.interlocked.0 = Some(true);
                }
                // Results of the waters together say nothing of one of them.
                other.samples.retain(|s| s.stream.is_some());
            }
            Change::RainKeptOutAndPump => return smaller_pump(&Change::RainKeptOut.made(e, taken, design)?),
            Change::RoofsApart if !is_barred(e) => {
                let roofs = e.surfaces.iter().filter(|s| is_roof(s)).count();
                let something_stays = roofs < e.surfaces.len() || !e.streams.is_empty();
                if roofs == 0 || !something_stays {
                    return None;
                }
                other.surfaces.retain(|s| !is_roof(s));
                other.samples.retain(|s| s.stream.is_some());
            }
            // Where one area brings most of the rain and nothing fits, the others may be what has to be treated.
            Change::LargestAreaApart
                if taken.is_none_or(|pick| !pick.fits) && e.surfaces.len() > 1 && !is_barred(e) =>
            {
                let area = |s: &Surface| s.area.q().map_or(0.0, Typed::si);
                let all: f64 = e.surfaces.iter().map(area).sum();
                let paved = e.surfaces.iter().enumerate().filter(|(_, s)| !is_roof(s));
                let (at, largest) = paved.max_by(|a, b| area(a.1).total_cmp(&area(b.1)))?;
                if area(largest) < 0.5 * all {
                    return None;
                }
                other.surfaces.remove(at);
                other.samples.retain(|s| s.stream.is_some());
            }
            // What the sewer does not take is left out, unless its owner consents.
            Change::WithTheRain if is_barred(e) => {
                other.outlet.rain_allowed.0 = Some(true);
                // Nobody was asked whether the others run in it too; that they do is the safe side.
                for stream in other.streams.iter_mut().filter(|s| s.with_rain.is_none()) {
                    stream.with_rain.0 = Some(true);
                }
            }
            // Rain that the sewer does not take is no alternative.
            Change::WashApart if !e.surfaces.is_empty() && !e.streams.is_empty() && may_take_rain(e) => {
                // A product that is said to go into the rain stays; one that names a stream went with it.
                let rain = |word: &String| e.streams.iter().all(|s| s.name.as_deref() != Some(word.as_str()));
                other.chemicals.retain(|c| c.stream.iter().any(rain));
                other.samples.retain(|s| s.stream.as_deref().is_some_and(|of| rain(&of.to_owned())));
                other.streams.clear();
                other.cases.clear();
                without_orphans(e, &mut other);
            }
            Change::WashApartSpillAhead if spill_governs(design) => {
                other = Change::WashApart.made(e, taken, design)?;
                other.spill = None;
            }
            // Results of the waters may hold the bath: they stay, as nothing says that they do.
            Change::BathApart if !e.dumps.is_empty() => other.dumps.clear(),
            Change::DrainClosed if drains_open(e).next().is_some() => {
                for at in drains_open(e).collect::<Vec<_>>() {
                    let closed = WordClaim { word: DrainValve::Closed, from: None, chosen: false, because: None };
                    other.containments[at].drain.claims = vec![closed];
                }
            }
            Change::SpillAhead
                if e.spill.is_some()
                    && taken.map_or_else(
                        // Where nothing fits, the rate of the spill may be why.
                        || e.spill.as_ref().is_some_and(|spill| spill.rate.is_given()),
                        |pick| matches!(pick.condition, Some(Condition::Ahead(_))) || spill_governs(design),
                    ) =>
            {
                other.spill = None;
            }
            Change::OnlyWhatRises => return only_what_rises(e, design),
            Change::AheadOfPumps
                if design.basis.as_ref()?.feed.pumped
                    && e.asked.ahead_of_pumps.0.unwrap_or_else(|| pump_governs(design)) =>
            {
                other.inlet.feed.0 = Some(Feed::Gravity);
                other.inlet.rate.0.clear();
                other.inlet.pump.0 = None;
                other.lift = None;
                of_another_pump(&mut other);
                // It stands where the pipe comes in, and what leaves it is lifted.
                if e.site.buried.0 == Some(false) {
                    other.site.buried.0 = None;
                }
                other.outlet.invert.claims.clear();
            }
            Change::PumpApart if taken.is_none() && e.unit.pump_out.is_none() && !e.unit_stands() => {
                other.unit.pump_out.0 = Some(false);
            }
            Change::TwoInParallel if e.unit.count.is_none() && taken.is_some_and(|pick| pick.count == 1) => {
                other.unit.count.0 = Some(2);
            }
            // Where the limits are missed, a larger one may keep them that does not go into the place.
            Change::MoreRoom if has_place(e) && taken.is_some_and(|pick| pick.condition == Some(Condition::Limit)) => {
                other = anywhere(e);
            }
            _ => return None,
        }
        Some(other)
    }
}

/// Whether no oil comes off a surface, being a roof.
fn is_roof(s: &Surface) -> bool {
    s.kind.as_deref() == Some(ROOF)
}
