//! Stage: a compartment behind the clear well, from which pumps lift the clean water to the outfall.
//!
//! The clear well runs over its weir into it, so that the levels ahead do not follow the pumps.

use super::Place;
use super::stage::{Datum, Drawn, Line, Stage, over_water};
use crate::enquiry::fields::Count;
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Pair, Stop, Trail, Val, given};
use crate::train::row::Row;
use crate::train::unit::{Parts, Unit};
use crate::vessel::{Body, Stretch};
use crate::{by, reckon, record, say};
use stillrise_handbook::hydraulics::{pump_cycle_time, pump_run_time};
use stillrise_units::catalog::{GPM, IN, M3_H, MM, ONE};
use stillrise_units::{Flow, Length, Ratio, Time, Typed, Volume, ratio};

keys! {
    /// Keys of the pump-out compartment.
    PumpOutKeys "model" {
        /// Length of the pump-out compartment behind, an option that makes the vessel longer by it
        length as "pump_out_length": Quantity<Length> = spec.units(&IN, &MM).between("12 in", "400 in").like("\"48 in\"");
        /// Level at which the effluent pumps stop, above the floor
        stop as "pump_stop": Quantity<Length> = spec.units(&IN, &MM).between("2 in", "200 in").like("\"18 in\"");
        /// Level at which the first effluent pump starts
        start as "pump_start": Quantity<Length> = spec.units(&IN, &MM).between("3 in", "200 in").like("\"36 in\"");
        /// Level at which the second starts and the alarm calls
        alarm as "pump_alarm": Quantity<Length> = spec.units(&IN, &MM).between("4 in", "200 in").like("\"44 in\"");
        /// Flow of one effluent pump at its duty
        flow as "pump_flow": Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "10000 gpm").like("\"150 gpm\"");
        /// Number of effluent pumps, one of them standing by
        pumps as "effluent_pumps": Count = spec.like("2");
    }
}

record! {
    /// The compartment with its pumps.
    PumpOut {
        /// length of the compartment
        length: Length;
        /// level at which the pumps stop
        stop: Length;
        /// level at which the first starts
        start: Length;
        /// level at which the second starts, and the alarm calls
        alarm: Length;
        /// flow of one pump at its duty
        pump: Flow;
        /// pumps; one of them stands by
        pumps: Ratio;
    }
}

/// How it runs.
#[derive(Debug, Clone)]
pub struct Runs {
    /// Water between start and stop.
    pub between: Val<Volume>,
    /// Shortest time from one start to the next, at half of what a pump lifts.
    pub cycle: Val<Time>,
    /// How long a pump runs at the largest flow; `None` where it does not keep up.
    pub run: Option<Val<Time>>,
    /// Water that it still takes between the alarm and the weir ahead.
    pub reserve: Val<Volume>,
    /// For how long, at the largest flow with no pump running.
    pub lasts: Val<Time>,
    /// From the stop level up to the outfall, where both are known.
    pub lift: Option<Val<Length>>,
}

impl PumpOut {
    /// As a row or a described unit lays it out; `None` where it has none.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Option<Self>, Stop> {
        const FLOW: Pair = (&GPM, &M3_H);
        let m = row.m;
        if !(row.options.pump_out && m.stages.pump_out.length.is_given()) {
            return Ok(None);
        }
        let length = row.need("length of the pump-out compartment", m.stages.pump_out.length())?;
        let stop = row.need("level at which the effluent pumps stop", m.stages.pump_out.stop())?;
        let start = row.need("level at which the first effluent pump starts", m.stages.pump_out.start())?;
        let alarm = row.need("level at which the second starts and the alarm calls", m.stages.pump_out.alarm())?;
        let flow = row.laid("flow of one effluent pump", FLOW, &m.stages.pump_out.flow);
        let pump = flow.ok_or_else(|| row.stop("flow of one effluent pump is not stated"))?;
        if !(stop.q < start.q && start.q < alarm.q) {
            return Err(row.stop(
                "the effluent pumps must stop below the level at which the first starts, and that below the alarm",
            ));
        }
        let count = m.stages.pump_out.pumps.0.unwrap_or(2);
        let why = if m.stages.pump_out.pumps.0.is_some() {
            say!(T, "{count}")
        } else {
            "not stated: one and one standing by".to_owned()
        };
        let pumps = given(row.t, "effluent pumps", Some((&ONE, &ONE)), ratio(f64::from(count)), row.source, &why);
        Ok(Some(Self { length, stop, start, alarm, pump, pumps }))
    }

    /// How it runs at the largest flow through the unit; `crest` is that of the weir ahead, `lift` from the floor of the unit up
    /// to the outfall.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn runs<T: Trail>(
        &self,
        t: &mut T,
        body: &Body,
        of: Stretch,
        crest: Val<Length>,
        largest: Val<Flow>,
        outfall: Option<Val<Length>>,
    ) -> Result<Runs, Stop> {
        t.section("effluent pumps");
        let low = body.volume(t, "water in the pump-out compartment up to the stop level", of, self.stop)?;
        let high = body.volume(t, "the same up to the start level", of, self.start)?;
        let between = reckon!(t, "water between start and stop", [GAL, M3], (start = high, stop = low) start - stop);
        let half = reckon!(t, "half of what a pump lifts", [GPM, M3_H], (pump = self.pump) pump * 0.5);
        let cycle = by!(
            t,
            "shortest time from one start of an effluent pump to the next",
            pump_cycle_time::time(between, half, self.pump)
        )?;
        let run = if largest.q < self.pump.q {
            Some(by!(
                t,
                "run of an effluent pump at the largest flow",
                pump_run_time::time(between, largest, self.pump)
            )?)
        } else {
            None
        };
        let alarm = body.volume(t, "water up to the alarm level", of, self.alarm)?;
        let full = body.volume(t, "water up to the weir ahead", of, crest)?;
        let reserve = reckon!(t, "room between alarm and weir", [GAL, M3], (full = full, alarm = alarm) full - alarm);
        let lasts = reckon!(t, "time until that is full at the largest flow, no pump running", [MIN, MIN], (room = reserve, flow = largest) room / flow);
        let lift = outfall.map(|outfall| {
            reckon!(t, "lift from the stop level to the outfall, without friction", [FT, M], (outfall = outfall, stop = self.stop) outfall - stop)
        });
        Ok(Runs { between, cycle, run, reserve, lasts, lift })
    }

    /// Its levels, from below: stop, start, alarm.
    #[must_use]
    pub fn levels(&self) -> [Val<Length>; 3] {
        [self.stop, self.start, self.alarm]
    }
}

impl Stage for PumpOut {
    fn name(&self) -> &'static str {
        "pump-out compartment"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::PumpOut, self.length))
    }
    fn stands(&self, parts: &Parts, _: Length) -> Result<(), String> {
        if self.alarm.q >= parts.outlet.crest.q {
            return Err("the alarm of the effluent pumps stands no lower than the weir ahead of them".to_owned());
        }
        Ok(())
    }
    fn inner_wall(&self, unit: &Unit) -> Option<Length> {
        unit.compartment(Place::PumpOut).map(|c| c.from)
    }
    /// The wall over which the clear well runs into it, two pumps, and their levels.
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let zone = unit.compartment(Place::PumpOut)?;
        let along = |share: f64| zone.from + (zone.to - zone.from) * share;
        let wall = Line::Plate { at: zone.from, low: Length::from_si(0.0), high: unit.outlet.crest.q };
        let mut lines = vec![wall, Line::Pump(along(0.35)), Line::Pump(along(0.7))];
        lines.extend(self.levels().map(|level| Line::Level((zone.from, zone.to), level.q)));
        let data = vec![
            Datum::Count(self.pumps.q),
            Datum::Words(" pumps, "),
            Datum::Flow(self.pump.q),
            Datum::Words(" each; stop "),
            Datum::Length(self.stop.q),
            Datum::Words(", start "),
            Datum::Length(self.start.q),
            Datum::Words(", alarm "),
            Datum::Length(self.alarm.q),
        ];
        Some(Drawn::new("pump-out", "Effluent pumps", data, (along(0.35), over_water(unit)), lines))
    }
}
