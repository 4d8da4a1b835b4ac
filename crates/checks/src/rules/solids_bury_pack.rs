//! Rule: solids bury the pack

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{D, GAL, GPD, M3, M3_D};
use stillrise_units::{Time, Typed, print};

rule! {
    "solids-bury-pack" "Sludge fills its room too soon", Hopper;
    client "Sludge fills its room so fast that it must be pumped out very often, or the plates are buried."
    looks "The days until the sludge that calls for pumping out has collected in one unit: less than 14 fails, less than 30 warns."
    matters "Sludge that is not pumped in time rises into the plates, narrows the gaps and is carried on with the oil on it."
    remedy "Solids held ahead (a grit trap takes the coarse grains only, a settling basin the fine ones too), a larger hopper or unit, or sweeping where a yard brings most of them: the room for sludge is too small for these solids. Only where none of that can be had is a contract for pumping out at that interval left."
    source "The rule for pumping out is named with the storage; 14 and 30 days are our proposal"
    limits "Settling, thickness of the sludge and hours of flow are mostly assumed; the days are good to a factor of two or three."
}

/// Days between two pump-outs of sludge below which it is too often. Our proposal.
pub const TOO_OFTEN: f64 = 14.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let storage = &performance.storage;
    let (Some(days), Some(volume)) = (storage.sludge_days, storage.sludge_trigger) else {
        return Verdict::skips("no sludge collects, or the rule for pumping out gives no amount of it");
    };
    let (room, rate) = (s.show(volume.q, (&GAL, &M3)), s.show(storage.sludge_rate.q, (&GPD, &M3_D)));
    let count = print::digits(days.q.in_unit(&D), 3);
    let rule = storage.trigger.title;
    let says = format!(
        "{room} of sludge call for pumping out one unit, by the strictest rule we know ({rule}); at {rate} that takes {count} days"
    );
    if days.q < Time::of(TOO_OFTEN, &D) {
        Verdict::fails(format!("{says}, less than 14"), days.at)
    } else if days.q < Time::of(30.0, &D) {
        Verdict::warns(format!("{says}, less than 30"), days.at)
    } else {
        Verdict::passes(says)
    }
}
