//! What was asked besides, what an invented price is no part of, and changes that do together what none does alone.

use super::{Outcome, RINSES, flat, mail, settled};
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::reply::reply;
use stillrise_documents::summary::summary;
use stillrise_search::alternatives::Change;
use stillrise_search::settle;
use stillrise_units::Typed;

/// A rack beside a sewer: a hose-down with a degreaser, a soluble oil in the rain, and pumps that break what comes.
const RACK: &str = r#"
[enquiry]
title = "A rack that does not exist"
print = "us"
[[surface]]
name = "slab"
area = "5000 ft2"
kind = "concrete"
[rain]
intensity = "2 in/hr"
duration = "30 min"
[[stream]]
name = "hose-down"
flow = "8 gpm"
hours_per_day = 1
days_per_week = 1
with_rain = false
[[chemical]]
product = "degreaser"
kind = "alkaline-degreaser"
stream = ["hose-down"]
[[chemical]]
product = "cutting oil"
kind = "soluble-coolant"
stream = ["rain"]
[[oil]]
kind = "diesel"
[[limit]]
pollutant = "oil and grease"
value = "15 mg/L"
statistic = "daily maximum"
authority = "the permit"
method = "hexane extraction"
[inlet]
feed = "pump"
pump = "submersible"
rate = ["100 gpm"]
invert = "-7 ft"
[outlet]
to = "storm water"
[site]
ground = "0 ft"
groundwater = "-20 ft"
[asked]
alarm = true
tank_ahead = "600 gal"
ahead_of_pumps = true
slab = "6 in"
double_wall = true
sampling = true
material = "stainless"
delivery = "2027-08-31"
interval = "1 yr"
"#;

#[test]
fn what_was_asked_besides_is_answered_one_by_one() -> Outcome {
    let text = mail(RACK)?;
    // 600 gal at 100 gpm: 6 min.
    for says in [
        "An alarm: yes.",
        "In the unit offered it would call at a layer of",
        "Emptied once in 1 yr:",
        "The tank of 600 gal that stands, kept ahead: at 100 gpm the water passes it in 6 min",
        "Ahead of the pumps:",
        "A slab of 6 in: whether it carries the unit hangs on its reinforcement",
        "A double wall: no unit of our range is stated to have one",
        "A place for samples: behind the unit",
        "Of stainless: ",
        "Delivery by 2027-08-31: not confirmed on a first answer; the time of delivery comes with the quotation.",
    ] {
        assert!(text.contains(says), "{says}: {text}");
    }
    let quiet = mail(RACK.split("[asked]").next().unwrap_or_default())?;
    assert!(!quiet.contains("What you asked besides"), "{quiet}");
    Ok(())
}

/// One year is no when the first pump-out comes sooner, by whatever comes first.
#[test]
fn an_interval_is_held_against_what_collects_first() -> Outcome {
    let dirty = RACK.replace("days_per_week = 1\n", "days_per_week = 7\nsolids = \"5000 mg/L\"\n");
    let text = mail(&dirty.replace("hours_per_day = 1\n", "hours_per_day = 8\n"))?;
    assert!(
        text.contains("Emptied once in 1 yr: no, not on these figures: sludge is to be pumped out about every"),
        "{text}"
    );
    Ok(())
}

/// The demonstration range is invented: a client gets no price of it. One's own range is told.
#[test]
fn an_invented_price_stands_in_no_mail() -> Outcome {
    let text = mail(RACK)?;
    assert!(!text.contains("USD") && text.contains("budget and delivery: to follow"), "{text}");
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ranges/demo.toml");
    let demo = std::fs::read_to_string(demo)?;
    let own = RACK.replace("print = \"us\"\n", "print = \"us\"\n[unit]\nfrom = \"own.toml\"\n");
    let read = |name: &str| (name == "own.toml").then(|| demo.clone().into_bytes());
    let enquiry = read_enquiry(&own, &read).map_err(|faults| format!("{faults:?}"))?;
    let mut found = settle(&enquiry, &read_range(&demo).file);
    found.work_alternatives(&read_range(&demo).file);
    let text = flat(&reply(&found));
    assert!(text.contains("budget ") && text.contains(" USD") && !text.contains("demonstration"), "{text}");
    Ok(())
}

/// Degreaser, soluble oil and pump each hold the oil: any one taken away leaves the others, all of them together do not.
#[test]
fn causes_are_taken_away_together() -> Outcome {
    let found = settled(RACK)?;
    let of = |change| found.alternatives.iter().find(|a| a.change == change);
    let all = of(Change::OnlyWhatRises).ok_or("all together")?;
    let out = |a: Option<&stillrise_search::alternatives::Alternative>| a.and_then(|a| a.effluent).map(|c| c.si());
    let (all, one) = (out(Some(all)), out(of(Change::GentlePump)));
    assert!(all.is_some_and(|all| one.is_none_or(|one| all < 0.95 * one)), "{all:?} {one:?}");
    // Where one cause is all there is, it stands for itself.
    let single = RACK
        .replace("stream = [\"rain\"]", "stream = [\"none\"]")
        .replace("feed = \"pump\"\npump = \"submersible\"\nrate = [\"100 gpm\"]\n", "");
    assert!(settled(&single)?.alternatives.iter().all(|a| a.change != Change::OnlyWhatRises));
    Ok(())
}

/// Where nothing fits, two changes of which neither does alone are worked together.
#[test]
fn two_changes_do_together_what_neither_does() -> Outcome {
    let text = r#"
[enquiry]
title = "A yard that does not exist"
print = "si"
[[surface]]
name = "parking"
area = "9000 m2"
kind = "asphalt"
[[surface]]
name = "fuelling"
area = "100 m2"
kind = "concrete"
[rain]
intensity = "200 L/s/ha"
duration = "10 min"
[[stream]]
name = "rinse"
flow = "3 m3/h"
hours_per_day = 2
[[oil]]
kind = "diesel"
[[limit]]
pollutant = "oil and grease"
value = "50 mg/L"
[outlet]
to = "sanitary sewer"
[spill]
volume = "8 m3"
rate = "800 L/min"
[site]
ground = "4.6 m"
groundwater = "1 m"
buried = true
max_length = "7 m"
max_width = "2.6 m"
[inlet]
invert = "2.7 m"
"#;
    let found = settled(text)?;
    assert!(found.pick.is_none(), "something fits");
    let pair = found.alternatives.iter().find(|a| a.also.is_some()).ok_or("no pair")?;
    assert!(pair.pick.is_some());
    for change in [pair.change, pair.also.unwrap_or(pair.change)] {
        let alone = found.alternatives.iter().find(|a| a.change == change && a.also.is_none());
        assert!(alone.is_none_or(|a| a.pick.is_none()), "{change:?} does alone");
    }
    let mail = flat(&reply(&found));
    assert!(mail.contains(pair.also.unwrap_or(pair.change).text()));
    // 4.6 - 2.7 m and 4.6 - 1 m: what any unit meets on the site is told all the same.
    assert!(
        mail.contains("By the levels you gave the pipe comes in 1.9 m below the ground; groundwater stands up to 3.6 m below the ground. Fed by gravity any unit lies in the ground."),
        "{mail}"
    );
    Ok(())
}

/// What sheared a wash that is treated apart shears no rain: the rain alone is what it is without wash and pump.
#[test]
fn what_sheared_a_wash_goes_with_it() -> Outcome {
    let gravity = RACK
        .replace("feed = \"pump\"\npump = \"submersible\"\nrate = [\"100 gpm\"]\n", "")
        .replace("stream = [\"rain\"]", "stream = [\"none\"]");
    let with = gravity.replace("with_rain = false\n", "with_rain = false\nshear = [\"pit pump\"]\n")
        + "[[shear]]\nname = \"pit pump\"\nkind = \"pump\"\npump = \"centrifugal\"\n";
    let wash =
        "[[stream]]\nname = \"hose-down\"\nflow = \"8 gpm\"\nhours_per_day = 1\ndays_per_week = 1\nwith_rain = false\n";
    let product = "[[chemical]]\nproduct = \"degreaser\"\nkind = \"alkaline-degreaser\"\nstream = [\"hose-down\"]\n";
    let alone = settled(&gravity.replace(wash, "").replace(product, ""))?;
    let found = settled(&with)?;
    let apart = found.alternatives.iter().find(|a| a.change == Change::WashApart).ok_or("the rain alone")?;
    let out = alone.job.design.performance.as_ref().and_then(|p| p.worst()).map(|w| w.total.expected.q.si().to_bits());
    assert_eq!(apart.effluent.map(|c| c.si().to_bits()), out);
    Ok(())
}

/// Two cylinders side by side in the ground, in soil that a leaning plane would hold.
const QUARRY: &str = r#"
[enquiry]
title = "A quarry that does not exist"
print = "si"
[[surface]]
name = "apron"
area = "1400 m2"
kind = "concrete"
[rain]
intensity = "90 mm/h"
duration = "10 min"
[[oil]]
kind = "diesel"
[[limit]]
pollutant = "oil and grease"
value = "60 mg/L"
authority = "the permit"
[outlet]
to = "storm water"
invert = "61.90 m"
[inlet]
feed = "gravity"
invert = "62.60 m"
[site]
ground = "64.00 m"
groundwater = "62.80 m"
buried = true
frost_depth = "0.8 m"
soil_counts = "wedge quarter"
max_length = "9 m"
[unit]
count = 2
"#;

/// Nobody walks between shells in the ground, and soil between two of them holds neither twice.
#[test]
fn two_in_the_ground_are_asked_for_room_and_share_no_soil() -> Outcome {
    let found = settled(QUARRY)?;
    let flotation = found.job.design.performance.as_ref().and_then(|p| p.flotation.as_ref()).ok_or("in the ground")?;
    assert!(flotation.held.as_ref().is_some_and(|held| held.soil.is_some() && held.wedge.is_none()));
    let told = flat(&summary(&found, 100));
    assert!(told.contains("its planes not counted here"), "{told}");
    let text = flat(&reply(&found));
    assert!(text.contains("How much room has to stay free around and between the units in the ground"), "{text}");
    assert!(text.contains("with room to fill in of") && !text.contains("walkway"), "{text}");
    assert!(text.contains("does traffic cross it?") && !text.contains("how deep does frost reach"), "{text}");
    Ok(())
}

/// Claims on what is no quantity are told by what the key means; two things that were asked for are no contradiction.
#[test]
fn a_flag_that_two_people_said_differently_is_told_in_words() -> Outcome {
    let asked = RACK.replace("material = \"stainless\"", "material = [\"steel\", \"fiberglass\"]");
    let flag =
        "[outlet]\nrain_allowed = [{ value = false, from = \"the city\" }, { value = true, from = \"the foreman\" }]\n";
    let text = mail(&asked.replace("[outlet]\n", flag))?;
    assert!(
        text.contains("Whether rain water is allowed in the sewer: no (the city); yes (the foreman). We took no."),
        "{text}"
    );
    assert!(!text.contains("Asked:") && !text.contains("rain_allowed"), "{text}");
    Ok(())
}

/// Fed by gravity the unit stands ahead of whatever pump there is: that is said, and no other train promised.
#[test]
fn ahead_of_the_pumps_is_how_a_unit_fed_by_gravity_stands() -> Outcome {
    let gravity =
        RACK.replace("feed = \"pump\"\npump = \"submersible\"\nrate = [\"100 gpm\"]\n", "feed = \"gravity\"\n");
    let text = mail(&gravity)?;
    assert!(text.contains("Ahead of the pumps, if there are any: that is how it is worked here."), "{text}");
    assert!(!text.contains("among the other trains"), "{text}");
    Ok(())
}

/// What settles a finding once the client agrees is no agreement: the mail asks for it.
#[test]
fn what_was_proposed_is_to_be_confirmed() -> Outcome {
    const DECISION: &str = "[[decision]]\nrule = \"RULE\"\ndecision = \"open\"\n\
                            because = \"Use a quick-break cleaner in place of what holds the oil; the client must agree\"\n";
    let lead = "We worked with this as if it were agreed; please confirm it: - Use a quick-break cleaner in place of what holds the oil.";
    let with = |rule: &str| mail(&format!("{RINSES}{}", DECISION.replace("RULE", rule)));
    assert!(with("oil-hardly-rises")?.contains(lead), "{}", with("oil-hardly-rises")?);
    // Of a rule that still finds fault the finding tells, and of another reason nothing is asked.
    assert!(!with("no-measured-results")?.contains(lead));
    let other = DECISION.replace("RULE", "oil-hardly-rises").replace("; the client must agree", "");
    assert!(!mail(&format!("{RINSES}{other}"))?.contains("as if it were agreed"));
    Ok(())
}
