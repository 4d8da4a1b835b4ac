//! A transformer pit that does not exist, whose drain stands open, and a limit that is judged by eye.

use super::{Outcome, mail, settled};
use stillrise_design::performance::limit::{By, Word};
use stillrise_search::alternatives::Change;
use stillrise_units::Typed;
use stillrise_units::catalog::GPM;

const PIT: &str = r#"
[enquiry]
title = "Two transformers"
print = "us"
gallon = "us"
[[surface]]
name = "pit"
area = "2728 ft2"
kind = "containment"
[[surface]]
name = "drive"
area = "2400 ft2"
kind = "asphalt"
runoff = 0.9
[rain]
intensity = "2.1 in/h"
event_depth = "5.2 in"
oil = { kind = "insulating-oil", mean = { value = "2 mg/L", from = "analysis" }, emulsified = "2 %" }
[[oil]]
kind = "insulating-oil"
[[limit]]
pollutant = "sheen"
value = "none"
authority = "the permit"
[inlet]
feed = "pump"
pump = "submersible"
rate = [[{ value = "75 gpm", from = "nameplate" }, { value = "60 gpm", from = "stop watch" }]]
[outlet]
to = "storm water"
pipe = "6 in"
[[containment]]
name = "pit"
kind = "pit"
area = "2728 ft2"
depth = "30 in"
stone_depth = "18 in"
deducted_area = "500 ft2"
drains_to = "separator"
drain = "open"
vessel_oil = "8200 gal"
[spill]
volume = "8200 gal"
fire_volume = "0 gal"
closure = true
into = "pit"
[site]
ground = "812.5 ft"
coldest_air = "-15 °F"
indoors = false
frost_protected = false
"#;

/// With the drain closed the pit holds the spill, and its rain does not run on: 2400 ft2 x 0.9 x 2.1 in/h are 378 ft3/h or
/// 47.1 gpm, less than the pump lifts.
#[test]
fn a_drain_that_stands_open_is_the_first_thing_to_change() -> Outcome {
    let found = settled(PIT)?;
    let closed = found.alternatives.iter().find(|a| a.change == Change::DrainClosed).ok_or("no such alternative")?;
    assert!(found.alternatives.iter().all(|a| a.change != Change::SpillAhead), "both are told");
    let storm = closed.design.basis.as_ref().and_then(|b| b.storm.as_ref()).ok_or("no storm")?;
    let gpm = GPM.from_si(storm.flow.q.si());
    assert!((gpm - 47.12).abs() < 0.05, "{gpm}");
    assert!(closed.design.train.as_ref().is_some_and(|t| t.equalisation.is_none()), "something is held back");
    let text = mail(PIT)?;
    assert!(text.contains("pit would hold all of it, with the rain, if its drain were closed"), "{text}");
    // What the other claim would do: less pumped, more to be held back.
    assert!(text.contains("We took 75 gpm. With 60 gpm: "), "{text}");
    assert!(text.contains("and nothing protects the unit"), "{text}");
    Ok(())
}

/// Whatever arrives, no number shows that no film is seen.
#[test]
fn what_is_judged_by_eye_is_never_called_kept() -> Outcome {
    let found = settled(PIT)?;
    let limit = &found.job.design.performance.as_ref().ok_or("no performance")?.limits[0];
    assert_eq!((limit.word, limit.calculated), (Word::NotShown, Word::Kept));
    assert!(limit.held_back.iter().any(|h| h.by == By::Eye) && limit.chance.is_none(), "{limit:?}");
    assert!(found.alternatives.iter().all(|a| a.words.iter().all(|word| *word >= Word::NotShown)));
    // A number of free oil is held against what leaves.
    let number = settled(&PIT.replace("value = \"none\"", "value = \"15 mg/L\""))?;
    let limit = &number.job.design.performance.as_ref().ok_or("no performance")?.limits[0];
    assert!(limit.held_back.iter().all(|h| h.by != By::Eye));
    Ok(())
}

/// A sampling shows both what comes and how far it rises.
#[test]
fn one_sampling_is_asked_for_once() -> Outcome {
    let text = mail(&PIT.replace(", mean = { value = \"2 mg/L\", from = \"analysis\" }", ""))?;
    assert!(text.contains("how far peaks rise above the mean"), "{text}");
    assert!(!text.contains("May we have the results of single samples of the water that comes"), "{text}");
    Ok(())
}
