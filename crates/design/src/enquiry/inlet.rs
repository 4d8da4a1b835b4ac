//! What no sump and no pump can be, and what of a pump is not used.

use super::blocks::Inlet;
use stillrise_handbook::separation::pumps::pump;
use stillrise_units::Fault;

/// Levels and surfaces that go with each other.
pub(super) fn faults(inlet: &Inlet, faults: &mut Vec<Fault>) {
    let levels = [
        ("start_level", inlet.start_level.is_given()),
        ("stop_level", inlet.stop_level.is_given()),
        ("sump_area", inlet.sump_area.is_given()),
    ];
    let refused = |key: &str| faults.iter().any(|f| f.place.contains(&format!("inlet: {key}")));
    let missing: Vec<&str> =
        levels.iter().filter(|(key, given)| !given && !refused(key)).map(|(key, _)| *key).collect();
    let given = levels.iter().any(|(_, given)| *given);
    if given && inlet.sump_volume.is_given() {
        let reason = "the volume between start and stop stands beside levels or surface";
        faults.push(Fault::new("inlet: sump_volume", reason, "give one of the two"));
    } else if given && !missing.is_empty() {
        let reason = format!("the sump's levels come without {}", missing.join(" and "));
        faults.push(Fault::new("inlet", reason, "state both levels and the surface, or sump_volume"));
    }
    if let (Some(start), Some(stop)) = (inlet.start_level.q(), inlet.stop_level.q())
        && start <= stop
    {
        let reason = "the pump starts no higher than it stops";
        faults.push(Fault::new("inlet: start_level", reason, "check the two levels"));
    }
    if *inlet.interlocked == Some(true) && *inlet.together == Some(true) {
        let reason = "an interlock keeps the pumps from running together, and they are said to run together";
        faults.push(Fault::new("inlet: interlocked", reason, "leave one of the two out"));
    }
}

/// What is said of a pump that its class makes no use of, and rates that may be two statements about one pump.
pub(super) fn notes(inlet: &Inlet) -> Vec<(String, String)> {
    idle(inlet).into_iter().chain(two_or_one(inlet)).collect()
}

/// Several rates that say where they come from may be several statements about one pump: they are read as one pump each,
/// and that is said.
fn two_or_one(inlet: &Inlet) -> Option<(String, String)> {
    let rates = &inlet.rate.0;
    let n = rates.len();
    let sourced = rates.iter().filter_map(|rate| rate.claim()).any(|claim| claim.from.is_some());
    (n > 1 && sourced).then(|| {
        let note = format!(
            "{n} rates were read as {n} pumps; two statements about one pump stand in brackets of their own: rate = [[.., ..]]"
        );
        ("inlet: rate".to_owned(), note)
    })
}

fn idle(inlet: &Inlet) -> Option<(String, String)> {
    let class = inlet.pump.as_deref().and_then(pump)?;
    let figures = [inlet.pump_power.is_given(), inlet.pump_head.is_given(), inlet.pump_speed.is_given()];
    let idle = !crate::basis::pump_shear::has_impeller(Some(class)) && figures.contains(&true);
    idle.then(|| {
        let note = format!(
            "power, head and speed say how hard a pump with an impeller shears; for a {} pump the range of its class stands",
            class.word
        );
        ("inlet".to_owned(), note)
    })
}
