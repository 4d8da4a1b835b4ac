//! Which oil is spilled, and one float for all oils.

use super::{Outcome, mail, settled};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::Typed;

/// A loading place that does not exist.
const RACK: &str = r#"
[enquiry]
title = "Loading place"
print = "us"
[[stream]]
name = "hose-down"
flow = "60 gpm"
hours_per_day = 2
oil = { mean = "200 mg/L" }
[[oil]]
name = "bunker"
kind = "engine-oil"
[[oil]]
name = "kerosene"
kind = "jet-fuel"
[spill]
volume = "100 gal"
[[limit]]
pollutant = "oil and grease"
value = "100 mg/L"
statistic = "daily maximum"
authority = "the permit"
method = "hexane extraction"
"#;

#[test]
fn the_room_for_a_spill_is_that_of_its_own_oil() -> Outcome {
    let room = |text: &str| -> Result<(f64, usize), Box<dyn std::error::Error>> {
        let found = settled(text)?;
        let performance = found.job.design.performance.as_ref().ok_or("a performance")?;
        let spill = performance.storage.spill.as_ref().ok_or("a room")?;
        let own = performance.levels.iter().find(|l| l.place == spill.oil).ok_or("its levels")?;
        let volume = |mark| own.level(mark).map(|l| l.volume.q.si()).ok_or("a level");
        let count = found.job.design.train.as_ref().map_or(1.0, |train| train.count.q.si());
        let by_hand = (volume(Mark::Limit)? - volume(Mark::Alarm)?) * count;
        assert!((spill.room.q.si() / by_hand - 1.0).abs() < 1e-12);
        // What it pushes out weighs what it weighs.
        let basis = found.job.design.basis.as_ref().ok_or("a basis")?;
        let pushed = spill.displaced.ok_or("water that it pushes out")?.q.si();
        let oil = match basis.spill.as_ref().and_then(|spill| spill.oil) {
            Some(place) => &basis.fluids.oils[place],
            None => basis.fluids.heaviest(stillrise_design::basis::fluids::Season::Cold),
        };
        let weighs = 100.0 * 3.785_411_784e-3 * oil.cold.q.si() / basis.fluids.cold.density.q.si();
        assert!((pushed / weighs - 1.0).abs() < 1e-9, "{pushed} {weighs}");
        Ok((spill.room.q.si(), spill.oil))
    };
    let said = |oil: &str| RACK.replace("volume = \"100 gal\"", &format!("volume = \"100 gal\"\noil = \"{oil}\""));
    let (heavy, light) = (room(&said("bunker"))?, room(&said("jet-fuel"))?);
    assert_eq!((heavy.1, light.1), (0, 1));
    let (least, _) = room(RACK)?;
    assert_eq!(least, heavy.0.min(light.0));
    assert!(mail(RACK)?.contains("of the oils that may come the least room"));
    let wrong = stillrise_design::enquiry::read_enquiry(&said("bilge"), &|_| None).err().ok_or("refused")?;
    assert!(wrong.iter().any(|f| f.place == "spill: oil"), "{wrong:?}");
    Ok(())
}

/// The one float hangs where it was mounted for the oil whose layer may be thinnest: in another oil it meets the interface at
/// the same height.
#[test]
fn one_float_trips_at_one_height_in_every_oil() -> Outcome {
    let found = settled(RACK)?;
    let levels = &found.job.design.performance.as_ref().ok_or("a performance")?.levels;
    let heights: Vec<f64> = levels.iter().filter_map(|l| Some(l.level(Mark::Alarm)?.interface.q.si())).collect();
    assert!(heights.len() > 1 && heights.iter().all(|height| (height - heights[0]).abs() < 1e-12), "{heights:?}");
    Ok(())
}
