//! Level switches of a unit: what hangs in it, with its tag, set point and what it does. Diagram, drawing, list of parts, bill and
//! data sheet take them from here, so that no two of them can count differently.

use crate::profile::stations::{What, stations};
use crate::section::place::Section;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::{Length, Typed};

/// Where a switch hangs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Hangs {
    /// Where oil is held, in each channel.
    Oil,
    /// In the compartment of the effluent pumps.
    Pumps,
}

/// What the signal of a switch acts on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Acts {
    /// Nothing but the panel.
    Rings,
    /// The closure of the outlet.
    Shuts,
    /// The pump that feeds the unit.
    StopsFeed,
    /// The pumps in it.
    Pumps,
}

/// One switch, or several alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Switch {
    /// Letters of its tag.
    pub(crate) letters: &'static str,
    /// Number of its tag.
    pub(crate) number: u8,
    /// Letters of its alarm on the panel, where it rings.
    pub(crate) alarm: Option<&'static str>,
    /// What it watches.
    pub(crate) what: &'static str,
    /// What happens when it trips.
    pub(crate) does: &'static str,
    /// Set point over the floor.
    pub(crate) level: Length,
    pub(crate) hangs: Hangs,
    pub(crate) acts: Acts,
}

impl Switch {
    /// Its tag: `LSH 1`.
    pub(crate) fn tag(&self) -> String {
        format!("{} {}", self.letters, self.number)
    }

    /// How many of it are in one unit: channels hold their oil apart.
    pub(crate) fn count(&self, s: &Section) -> f64 {
        if self.hangs == Hangs::Oil { channels(s) } else { 1.0 }
    }
}

/// How many channels hold oil apart; one without channels.
pub(crate) fn channels(s: &Section) -> f64 {
    s.unit().channels.as_ref().map_or(1.0, |channels| channels.count.q.si())
}

/// All of them, oil first.
pub(crate) fn switches(s: &Section) -> Vec<Switch> {
    let mut all = of_oil(s);
    let number = u8::try_from(all.len()).unwrap_or(u8::MAX).saturating_add(1);
    let Some(pumps) = &s.unit().pump_out else { return all };
    let one = |letters, alarm, level, does| Switch {
        letters,
        number,
        alarm,
        what: "pump-out compartment",
        does,
        level,
        hangs: Hangs::Pumps,
        acts: Acts::Pumps,
    };
    all.push(one("LSL", None, pumps.stop.q, "stops the effluent pumps"));
    all.push(one("LSH", None, pumps.start.q, "starts the first effluent pump"));
    all.push(one("LSHH", Some("LAHH"), pumps.alarm.q, "starts the second, rings on the panel"));
    all
}

/// Those that hang where oil meets water. A shut-off is one only where something stands that can shut or stop.
pub(crate) fn of_oil(s: &Section) -> Vec<Switch> {
    let Some(oil) = s.governing() else { return Vec::new() };
    let mut all = Vec::new();
    if let Some(level) = oil.level(Mark::Alarm) {
        all.push(Switch {
            letters: "LSH",
            number: 1,
            alarm: Some("LAH"),
            what: "oil interface, alarm",
            does: "rings on the panel; oil is pumped out",
            level: level.interface.q,
            hangs: Hangs::Oil,
            acts: Acts::Rings,
        });
    }
    let acts = shuts(s);
    if let (Some(level), Some(acts)) = (oil.level(Mark::ShutOff), acts) {
        all.push(Switch {
            letters: "LSHH",
            number: u8::try_from(all.len()).unwrap_or(u8::MAX).saturating_add(1),
            alarm: Some("LAHH"),
            what: "oil interface, shut-off",
            does: match acts {
                Acts::Shuts => "rings on the panel, shuts the outlet",
                _ => "rings on the panel, stops the feed pump",
            },
            level: level.interface.q,
            hangs: Hangs::Oil,
            acts,
        });
    }
    all
}

/// What a shut-off acts on: the closure, else a pump ahead of the unit.
fn shuts(s: &Section) -> Option<Acts> {
    let stops = stations(s.settled);
    if stops.iter().any(|stop| stop.what == What::Closure) {
        return Some(Acts::Shuts);
    }
    let ahead = stops.iter().take_while(|stop| stop.what != What::Unit);
    let fed = |what| matches!(what, What::Pump | What::LiftAsked | What::PumpBehind);
    ahead.into_iter().any(|stop| fed(stop.what)).then_some(Acts::StopsFeed)
}

/// Where those of the oil hang: station and place across, each with its switch; one in each channel. Nominal.
pub(crate) fn places(s: &Section) -> Vec<(Length, Length, Switch)> {
    let (from, to) = s.oil_end();
    let all = of_oil(s);
    let alone = all.len() < 2;
    let mut places = Vec::new();
    for (k, switch) in all.into_iter().enumerate() {
        // Ahead of the draw-off; side by side across, so that neither hides the other from above.
        let (along, aside) = match (alone, k) {
            (true, _) => (0.3, 0.0),
            (_, 0) => (0.38, 0.14),
            _ => (0.16, -0.14),
        };
        let x = from + (to - from) * along;
        match &s.unit().channels {
            Some(own) => places.extend(
                s.channels().into_iter().map(|(near, far)| (x, (near + far) * 0.5 + own.width.q * aside, switch)),
            ),
            None => places.push((x, s.broad() * (0.5 + aside), switch)),
        }
    }
    places
}

/// The tags of some, in print: `LSH 1 and LSHH 2`.
pub(crate) fn tags(all: &[Switch]) -> String {
    let tags: Vec<String> = all.iter().map(Switch::tag).collect();
    match tags.as_slice() {
        [rest @ .., last] if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => tags.join(""),
    }
}
