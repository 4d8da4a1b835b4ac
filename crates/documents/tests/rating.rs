//! What rating, mail and study say of a unit that was observed: one story, of which no sentence contradicts another.

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::rating::{change, is_observed, larger, rating_text};
use stillrise_documents::reply::reply;
use stillrise_documents::risk::sentences;
use stillrise_documents::summary::summary;
use stillrise_search::{Settled, settle};

type Outcome = Result<(), Box<dyn Error>>;

fn read(path: &str) -> Result<String, Box<dyn Error>> {
    Ok(std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path))?)
}

fn demo() -> Result<Range, Box<dyn Error>> {
    Ok(read_range(&read("ranges/demo.toml")?).file)
}

/// A unit that quit after a pump and a cleaner were changed.
fn quit(edit: impl Fn(String) -> String) -> Result<Settled, Box<dyn Error>> {
    let text = edit(read("crates/search/tests/data/quit.toml")?);
    let enquiry = read_enquiry(&text, &|_| None).map_err(|faults| format!("{faults:?}"))?;
    let mut settled = settle(&enquiry, &demo()?);
    settled.diagnose().map_err(|stop| stop.to_string())?;
    Ok(settled)
}

/// The text on one line, as a reader takes it in.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn rated(settled: &Settled) -> Result<String, Box<dyn Error>> {
    let found = settled.diagnosis.as_ref().ok_or("no diagnosis")?;
    Ok(flat(&rating_text(settled, found, 100)))
}

#[test]
fn what_a_jar_showed_is_told_and_not_asked_as_if_none_had_stood() -> Outcome {
    let text = rated(&quit(|t| t)?)?;
    assert!(text.contains("Mid-September: looks milky; a jar of it stays."), "{text}");
    assert!(text.contains("A jar has stood already (mid-September: stays). Repeat it with the influent"), "{text}");
    assert!(!text.contains("Let a jar of the influent stand for a day"), "{text}");
    let without = rated(&quit(|t| t.replace("jar = \"stays\"\n", ""))?)?;
    assert!(without.contains("Let a jar of the influent stand for a day") && !without.contains("has stood already"));
    Ok(())
}

#[test]
fn an_expectation_holds_if_its_cause_is_at_work() -> Outcome {
    let text = rated(&quit(|t| t)?)?;
    assert!(text.contains("if this is at work, and it alone is put right"), "{text}");
    assert!(!text.contains("; with this alone put right"), "{text}");
    Ok(())
}

/// An explanation with 12 % before one with 11 % leads nothing, and no word on a larger unit rests on it alone.
#[test]
fn what_does_not_stand_out_does_not_lead() -> Outcome {
    let mut settled = quit(|t| t)?;
    let found = settled.diagnosis.as_mut().ok_or("no diagnosis")?;
    for (e, weight) in found.explanations.iter_mut().zip([0.12, 0.11]) {
        e.weight = weight;
    }
    let says = larger(&settled, settled.diagnosis.as_ref().ok_or("no diagnosis")?).join(" ");
    assert!(says.starts_with("No explanation stands out"), "{says}");
    let text = rated(&settled)?;
    assert!(!text.contains("eading explanation"), "{text}");
    let found = settled.diagnosis.as_mut().ok_or("no diagnosis")?;
    found.explanations[0].weight = 0.5;
    let says = larger(&settled, settled.diagnosis.as_ref().ok_or("no diagnosis")?).join(" ");
    assert!(
        says.contains("Under the leading explanation") && !says.contains("The unit is not what falls short"),
        "{says}"
    );
    Ok(())
}

/// Where rules fail by the calculation, the rating says that this is the calculation.
#[test]
fn a_failing_rule_is_no_explanation() -> Outcome {
    let text = rated(&quit(|t| t)?)?;
    let (fails, explains) = (
        text.find("Plates too small"),
        text.find("By the calculation for the plant as it is today; whether that explains"),
    );
    assert!(explains.zip(fails).is_some_and(|(a, b)| a < b), "{text}");
    Ok(())
}

/// The study and the cover know nothing of what was observed, and leave what helps to the rating.
#[test]
fn the_study_of_an_observed_unit_gives_no_advice() -> Outcome {
    let mut settled = quit(|t| t)?;
    settled.study(200);
    let risk = settled.risk.as_ref().ok_or("no study")?;
    let says = sentences(&settled, risk).join(" ");
    assert!(is_observed(&settled) && says.contains("without what was observed"), "{says}");
    assert!(!says.contains("is what helps"), "{says}");
    let limits = settled.job.design.performance.iter().flat_map(|p| &p.limits);
    assert!(limits.map(|l| change(&settled, l)).all(|text| !text.contains("plates")));
    Ok(())
}

/// A customer has no rating: the mail tells him the tests themselves, and which results are of which time.
#[test]
fn the_mail_names_the_tests() -> Outcome {
    let text = flat(&reply(&quit(|t| t)?));
    assert!(!text.contains("The rating says") && !text.contains("the rating names"), "{text}");
    assert!(text.contains("What we would look into first, the cheapest test first; beside each how likely it plays a part, several may: 1."), "{text}");
    assert!(text.contains("38 mg/L, 44 mg/L before the change of 2026-08-10, both within it"), "{text}");
    assert!(text.contains("310 mg/L, 265 mg/L since the change of 2026-08-20, both above it"), "{text}");
    assert!(text.contains("2 of 2 results measured since 2026-08-20 lie above it"), "{text}");
    Ok(())
}

/// The flow of an unknown pump is not called the pumps' own.
#[test]
fn a_flow_that_no_pump_was_said_to_deliver_is_the_waters() -> Outcome {
    let bare = |t: String| t.replace("rate = \"40 gpm\"\n", "").replace("rate = \"75 gpm\"\n", "");
    let asked = |t: String| format!("{}\n[asked]\nflow = \"30 gpm\"\n", bare(t));
    let text = flat(&reply(&quit(asked)?));
    assert!(text.contains("We find 40 gpm to the separator (floor wash)"), "{text}");
    assert!(!text.contains("what the pumps lift"), "{text}");
    let known = flat(&reply(&quit(|t| format!("{t}\n[asked]\nflow = \"30 gpm\"\n"))?));
    assert!(
        known.contains("We find 75 gpm to the separator (what the pumps lift, by the rates that were stated)"),
        "{known}"
    );
    Ok(())
}

/// What flowed before a change is said to be unknown where no key says it.
#[test]
fn the_flow_before_a_change_is_told_as_taken() -> Outcome {
    let text = rated(&quit(|t| t.replacen("rate = \"40 gpm\"\n", "", 1))?)?;
    assert!(text.contains("What the pumps delivered before the change of 2026-08-10 was not said"), "{text}");
    assert!(!rated(&quit(|t| t)?)?.contains("was not said (inlet.rate)"));
    Ok(())
}

/// A question has one number in the summary, before a study and after it.
#[test]
fn a_question_keeps_its_number() -> Outcome {
    let mut settled = quit(|t| t)?;
    let numbered = |s: &Settled| -> Vec<String> {
        let text = summary(s, 120);
        let open = text.split("Open questions").nth(1).unwrap_or_default().to_owned();
        open.lines()
            .filter(|l| l.starts_with(|c: char| c.is_ascii_digit()))
            .map(|l| l.chars().take(60).collect())
            .collect()
    };
    let before = numbered(&settled);
    settled.study(400);
    assert!(before.len() > 4);
    assert_eq!(numbered(&settled), before);
    Ok(())
}

/// The unit that quit, its results as samples.
fn sampled(text: String) -> String {
    let head = text.split("[[observed]]").next().unwrap_or_default().to_owned();
    head + "[[samples]]\nname = \"outfall\"\nwhere = \"out\"\nresults = [\"2026-05-12: 38 mg/L\", \"2026-06-09: 44 mg/L\", \"2026-09-03: 310 mg/L\", \"2026-09-17: 265 mg/L\", \"70 mg/L\"]\n"
}

/// Rating, summary and mail count the same results, and say which they leave out.
#[test]
fn samples_tell_one_story() -> Outcome {
    let settled = quit(sampled)?;
    assert!(is_observed(&settled));
    for text in [rated(&settled)?, flat(&reply(&settled)), flat(&summary(&settled, 100))] {
        assert!(text.contains("2 of 2 results measured since 2026-08-20 lie above it"), "{text}");
        assert!(text.contains("38 mg/L, 44 mg/L before the change of 2026-08-10, both within it"), "{text}");
        assert!(text.contains("1 result of \"outfall\" has no day that can be read"), "{text}");
    }
    assert!(rated(&settled)?.contains("about the 40.9 mg/L that were measured then"));
    Ok(())
}

/// The mail lists its tests in the order of the rating, the next one among them.
#[test]
fn the_mail_has_the_order_of_the_rating() -> Outcome {
    let settled = quit(|t| t)?;
    let found = settled.diagnosis.as_ref().ok_or("no diagnosis")?;
    let next = found.next.ok_or("no test is open")?;
    let cheapest = found.steps.iter().map(|s| s.cause.cost).min();
    let first = found.steps.iter().find(|s| !found.is_tested(s.cause)).ok_or("no step")?;
    assert!(Some(next.cost) > cheapest || first.cause.id == next.id, "{:?} {:?}", first.cause.id, next.id);
    let text = flat(&reply(&settled));
    let places: Vec<usize> = found.steps.iter().filter_map(|s| text.find(&format!(". {}", s.cause.title))).collect();
    assert!(places.len() >= 2 && places.is_sorted(), "{places:?} {text}");
    assert!(text.contains(&format!(". {}", next.title)), "{text}");
    Ok(())
}

/// Nothing is built around a unit that stands: neither its clear height nor a closure is asked for.
#[test]
fn what_is_built_is_not_asked_for_a_unit_that_stands() -> Outcome {
    let spill = |t: String| format!("{t}\n[spill]\nvolume = \"10 gal\"\n");
    let text = flat(&reply(&quit(spill)?)).to_lowercase();
    assert!(!text.contains("clear height") && !text.contains("closure"), "{text}");
    let planned = read_enquiry(
        &spill(read("crates/search/tests/data/quit.toml")?.replace("exists = true", "exists = false")),
        &|_| None,
    )
    .map_err(|faults| format!("{faults:?}"))?;
    let text = flat(&reply(&settle(&planned, &demo()?))).to_lowercase();
    assert!(text.contains("clear height") || text.contains("closure"), "{text}");
    Ok(())
}

/// 40 or 25 gpm since the change stand beside each other, and no sentence says that it does not matter.
#[test]
fn contradicting_rates_of_a_change_are_told() -> Outcome {
    let two = "rate = [{ value = \"75 gpm\", from = \"the curve\" }, { value = \"50 gpm\", from = \"the fitter\" }]";
    let text = flat(&reply(&quit(|t| t.replace("rate = \"75 gpm\"", two))?));
    assert!(
        text.contains("75 gpm (the change of 2026-08-10: the curve); 50 gpm (the change of 2026-08-10: the fitter)"),
        "{text}"
    );
    assert!(!text.contains("Either leads to the same"), "{text}");
    Ok(())
}

/// A layer that was gauged stands beside what is permitted, and its age is asked for.
#[test]
fn a_gauged_layer_stands_beside_what_is_permitted() -> Outcome {
    let gauged = |t: String| t.replace("jar = \"stays\"\n", "jar = \"stays\"\noil_layer = \"30 in\"\n");
    let settled = quit(gauged)?;
    let text = flat(&reply(&settled));
    let d = settled.diagnosis.as_ref().ok_or("no diagnosis")?;
    let layers = d.layers.ok_or("no levels")?;
    assert!(layers.alarm < layers.permitted, "{layers:?}");
    let rating = rated(&settled)?;
    assert!(rating.contains("oil layer 30 in; oil is permitted up to"), "{rating}");
    assert!(text.contains("When was the oil last pumped out? With 30 in of it now"), "{text}");
    Ok(())
}
