//! Pumping out, cleaning and gauging, step by step.

use super::super::site::Site;
use super::STORE;
use crate::report::Report;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_handbook::vessel::testing::MEASURING;
use stillrise_units::catalog::{FT, IN, KG, LB, M, MM, PSI};
use stillrise_units::{Pressure, Typed, spoken};

/// Three lists of steps.
pub(super) fn emptying(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("Gauging, pumping out, cleaning");
    r.out.heading("Gauging");
    let inner = u.unit().pack.is_some() || u.unit().mesh.is_some();
    let system = u.system;
    // Sampling is a task of its own; without plates and mesh there is no head to compare.
    if let [sludge, oil, interface, head, ..] = MEASURING {
        let steps = [sludge, oil, interface].into_iter().chain(inner.then_some(head));
        r.out.list(false, steps.map(|step| (spoken(step.text, system), step.source.title.to_owned())));
    }
    r.out.heading("Pumping out, from outside");
    list(r, pumping(u));
    r.out.heading("Cleaning");
    list(r, cleaning(u));
}

fn list(r: &mut Report<'_>, all: Vec<String>) {
    r.out.list(true, all.into_iter().map(|text| (text, String::new())));
}

fn pumping(u: &Site<'_>) -> Vec<String> {
    let unit = u.unit();
    let mut all = Vec::new();
    if u.in_ground() {
        let floats = u.performance.and_then(|p| p.flotation.as_ref());
        let above = floats.and_then(|f| f.floats_above).map_or_else(String::new, |x| {
            format!("; empty it floats with the groundwater {} over its floor", u.say(x.q, (&FT, &M)))
        });
        all.push(format!("Before anything is emptied: how high does the groundwater stand today, and what holds the unit down{above}. If nobody knows, only oil and sludge are taken, and water is filled up as they go."));
    }
    let stop = if u.pumped() { "Feed pumps off and locked" } else { "Inlet shut and locked" };
    all.push(format!("{stop}. Gauge oil and sludge, and write both down."));
    all.push("Tanker bonded to the unit, no ignition source near, covers opened gently, fall guarded.".to_owned());
    let oil = u.governing().filter(|_| u.layer().is_some()).and_then(|oil| oil.level(Mark::PumpOut).zip(Some(oil)));
    if let Some((level, oil)) = oil {
        let left = if oil.residue.q.si() > 0.0 {
            format!("; the fixed draw-off leaves a layer of about {}", u.say(oil.residue.q, (&IN, &MM)))
        } else {
            String::new()
        };
        all.push(format!("Oil first, slowly, by the draw-off at {}: about {}{} at the routine limit{left}. Fill up with clean water as it sinks, or air is drawn.", u.len(unit.retention.oil_draw.q), u.say(level.volume.q, STORE), u.each()));
    }
    let from = if u.hopper().is_some() {
        "by the drain of the hopper, or by a suction hose down to it"
    } else {
        "by a suction hose along the floor"
    };
    let sludge = u.performance.and_then(|p| p.storage.sludge_trigger).map_or_else(String::new, |v| {
        format!(": about {}{} at its limit, and some water with it", u.say(v.q, STORE), u.each())
    });
    all.push(format!("Then sludge, {from}{sludge}."));
    if unit.sand_trap.is_some() {
        all.push("Then the sand compartment, down to its floor.".to_owned());
    }
    let tank = u.train.around.oil_tank.as_ref().map_or_else(String::new, |tank| {
        format!(" Oil may go to the oil holding tank ({} of room) while it has room.", u.say(tank.room.q, STORE))
    });
    all.push(format!("Where it goes: oil, sludge and rinse water are regulated wastes, characterised and given to a licensed carrier with their papers; never into a drain.{tank}"));
    all.push(format!("Fill up with clean water to the crest (from empty {}{}), then open the inlet; test the alarm; write volumes, carrier and paper number into the log.", u.fill(), u.each()));
    all
}

fn cleaning(u: &Site<'_>) -> Vec<String> {
    let unit = u.unit();
    let known = &unit.particulars;
    let pressure = u.say(Pressure::of(60.0, &PSI), (&PSI, &stillrise_units::catalog::KPA));
    let mut all = vec!["Pump out as above; take the water last, to the tanker, not to the outlet.".to_owned()];
    if unit.pack.is_some() {
        let weighs = known
            .module_weight
            .map_or_else(|| "weight by maker".to_owned(), |w| format!("the heaviest {}", u.say(w.q, (&LB, &KG))));
        if known.lifts_out == Some(false) {
            all.push(format!(
                "Plates stay in: rinse them from above with cold water below {pressure}, no detergent, no steam."
            ));
        } else {
            all.push(format!("Lift the plate modules one by one with a crane ({weighs}, wet and fouled), over the inlet side; rinse with cold water below {pressure}, no detergent, no steam."));
        }
    }
    if unit.mesh.is_some() {
        all.push(format!("Lift the mesh out; wash it with cold water below {pressure} over the inlet side; renew it where it is torn, hard or does not come clean."));
    }
    all.push("Rinse walls and floor; let rinse water run to the inlet side, never to the outlet.".to_owned());
    let mut seen = vec!["walls", "coating"];
    if unit.pack.is_some() {
        seen.push("plates");
    }
    if u.layer().is_some() {
        seen.push("float");
    }
    if !unit.body.is_open() {
        seen.push("vents");
    }
    all.push(format!("Look at {}; write down what is found.", seen.join(", ")));
    if unit.pack.is_some() {
        all.push("Set the modules back as they were, clipped down.".to_owned());
    }
    all.push("Refill with clean water before the inlet is opened, test the alarm, begin with a small flow: the start-up sheet serves for that too.".to_owned());
    all
}
