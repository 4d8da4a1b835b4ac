//! Service lanes of a depot that does not exist: a wash lane, a warm wash, a fuelling lane under a canopy.

use super::{Outcome, mail, settled};
use stillrise_design::basis::cases::{Case, Kind};
use stillrise_design::basis::fluids::WaterState;
use stillrise_design::provenance::Origin;
use stillrise_handbook::page::Arg;
use stillrise_units::Typed;
use stillrise_units::catalog::{DEG_F, GPM, MG_L};

const LANES: &str = r#"
[enquiry]
title = "Service lanes"
print = "us"
gallon = "us"
facility = "bus-depot"
[[surface]]
name = "fuelling lane"
area = "2100 ft2"
kind = "concrete"
canopy = true
canopy_height = "15 ft"
canopy_side = "70 ft"
[rain]
intensity = "4.2 in/h"
[[stream]]
name = "wash lane"
flow = "35 gpm"
hours_per_day = 4
days_per_week = 6
[[stream]]
name = "chassis wash"
flow = "5 gpm"
hours_per_day = 2
days_per_week = 5
temperature = "180 °F"
[[oil]]
kind = "diesel"
[water]
coldest = "50 °F"
warmest = "75 °F"
[[chemical]]
product = "mild detergent"
kind = "quick-break-detergent"
stream = ["wash lane"]
[[limit]]
pollutant = "oil and grease"
value = "100 mg/L"
statistic = "any sample"
authority = "the sewer authority"
[[limit]]
pollutant = "settleable solids"
value = { value = "1 ml/l", from = "the sewer authority, after half an hour" }
statistic = "any sample"
authority = "the sewer authority"
[inlet]
feed = "gravity"
invert = "96.80 ft"
[outlet]
to = "sanitary sewer"
rain_allowed = false
invert = "95.20 ft"
length = "40 ft"
[spill]
volume = "25 gal"
[site]
ground = "100.00 ft"
coldest_air = "0 °F"
"#;

/// The warm water is not counted on: 35 gpm at 50 °F and 5 gpm at 180 °F are, together, (35 x 50 + 5 x 180) / 40 = 66.25 °F as
/// they arrive, and 50 °F at the plates in the cold. Each runs alone, too, and the mean of all days mixes by volume:
/// in a week 35 gpm x 24 h at 200 mg/L and 5 gpm x 10 h at 50, (50400 x 200 + 3000 x 50) / 53400 = 191.57 mg/L.
#[test]
fn water_comes_without_what_warms_it() -> Outcome {
    let found = settled(LANES)?;
    let basis = found.job.design.basis.as_ref().ok_or("a basis")?;
    let of = |kind: Kind| basis.cases.iter().filter(move |c| c.kind == kind).collect::<Vec<_>>();
    let flow = |c: &&Case| GPM.from_si(c.feed.q.si());
    assert!(of(Kind::Dry).iter().map(flow).eq([40.0]), "{:?}", of(Kind::Dry));
    let own = of(Kind::Dry)[0].own.as_ref().ok_or("a temperature of its own")?;
    let degrees = |water: &WaterState| DEG_F.from_si(water.temperature.q.si());
    assert!((degrees(&own.arrives[0]) - 66.25).abs() < 0.05, "{}", degrees(&own.arrives[0]));
    assert!((degrees(&own.water[0]) - 50.0).abs() < 0.05, "{}", degrees(&own.water[0]));
    assert!(of(Kind::Alone).iter().map(|c| c.name.as_str()).eq(["wash lane alone", "chassis wash alone"]));
    let mean = of(Kind::Days)[0].content.as_ref().ok_or("a content")?.total.q;
    assert!((MG_L.from_si(mean.si()) - 191.57).abs() < 0.01, "{}", MG_L.from_si(mean.si()));
    Ok(())
}

/// What was taken for a key, mg/L.
fn taken(text: &str, key: &str) -> Result<f64, Box<dyn std::error::Error>> {
    let found = settled(text)?;
    let entry = found.job.ledger.entries.iter().find(|e| matches!(&e.origin, Origin::Assumed(a) if a.key == key));
    match &entry.ok_or("an assumption")?.value {
        Arg::Number(si) => Ok(MG_L.from_si(*si)),
        other => Err(format!("{other:?}").into()),
    }
}

/// By the handbook's table a wash carries 200 mg/L of oil, a depot's yard 50; rain at a wash is runoff of a yard.
#[test]
fn a_wash_carries_what_a_wash_carries_and_rain_what_a_yard_does() -> Outcome {
    assert_eq!(taken(LANES, "stream \"wash lane\".oil.mean")?, 200.0);
    // Into which nothing is dosed, and for which no hose was named: nobody said that it is a wash.
    assert_eq!(taken(LANES, "stream \"chassis wash\".oil.mean")?, 50.0);
    let wash = LANES.replace("\"bus-depot\"", "\"wash-bay\"").replace("rain_allowed = false", "rain_allowed = true");
    assert_eq!(taken(&wash, "rain.oil.mean")?, 50.0);
    assert_eq!(taken(&wash, "stream \"wash lane\".oil.mean")?, 200.0);
    Ok(())
}

/// What is asked to be held is answered where it is held, what settles in a cone is no content, and a roofed lane is told so.
#[test]
fn the_mail_answers_spill_cone_and_canopy() -> Outcome {
    let text = mail(LANES)?;
    assert!(text.contains("a spill of 25 gal finds room between alarm and limit"), "{text}");
    assert!(text.contains("Limit on Settleable solids of 1 ml/l, any sample, set by the sewer authority: cannot be judged; it is a volume"), "{text}");
    assert!(!text.contains("What does the permit allow of settleable solids"), "{text}");
    assert!(text.contains("rain that is blown in under the canopy"), "{text}");
    assert!(!text.contains("while nothing is washed"), "{text}");
    assert!(text.contains("(the alarm sounds after "), "{text}");
    assert!(!text.contains("What clear height is there"), "it stands in the ground: {text}");
    Ok(())
}

/// Groundwater over the floor is told where the unit is heavy enough, too: by hand, with walls and floor of
/// 3/16 in, 110.375 in x 36.375 in of plan are 27.88 ft2, and the hopper's 32.14 gal are 4.30 ft3; 0.867 ft of water and 0.016 ft of
/// floor at 62.4 lb/ft3 lift (27.88 x 0.883 + 4.30) x 62.4 = 1804 lb of its 2710, told as 1800.
#[test]
fn groundwater_over_the_floor_is_told_where_the_unit_stays_down() -> Outcome {
    let tank = "[unit]\narrangement = \"plate tank\"\n[droplets]\nd50 = \"80 um\"\n[site]\ngroundwater = \"93 ft\"";
    let text = mail(&LANES.replace("[site]", tank))?;
    assert!(text.contains("groundwater 0.867 ft over its floor lifts it by 1800 lb, and it weighs 2710 lb"), "{text}");
    assert!(
        text.contains("it does not float while the groundwater stands no higher than was stated and what holds it down is there, both to be confirmed"),
        "{text}"
    );
    Ok(())
}

/// One area lies under a canopy: both washes run while it rains, and are told so, not as left out; said otherwise they are left out.
#[test]
fn a_wash_that_is_counted_in_rain_is_not_told_as_left_out() -> Outcome {
    let lanes = LANES.replace("rain_allowed = false", "rain_allowed = true");
    let text = mail(&lanes)?;
    assert!(
        text.contains("wash lane and chassis wash counted while it rains, as an area lies under a canopy"),
        "{text}"
    );
    assert!(!text.contains("no wash lane"), "{text}");
    let open = mail(&lanes.replace("canopy = true\ncanopy_height = \"15 ft\"\ncanopy_side = \"70 ft\"\n", ""))?;
    assert!(open.contains("no wash lane and no chassis wash counted while it rains"), "{open}");
    Ok(())
}
