//! What the mail says: what a word rests on, what is asked, what was claimed, what stands beside the unit.

mod besides;
mod drain;
mod lanes;
mod rack;
mod seen;
mod site;
mod spills;

use std::error::Error;
use std::path::Path;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::reply::reply;
use stillrise_documents::summary::summary;
use stillrise_search::{Settled, settle};

type Outcome = Result<(), Box<dyn Error>>;

fn settled(text: &str) -> Result<Settled, Box<dyn Error>> {
    let range = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ranges/demo.toml");
    let range = read_range(&std::fs::read_to_string(range)?).file;
    let enquiry = read_enquiry(text, &|_| None).map_err(|faults| format!("{faults:?}"))?;
    let mut settled = settle(&enquiry, &range);
    settled.work_alternatives(&range);
    Ok(settled)
}

/// The text on one line, as a reader takes it in.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn mail(text: &str) -> Result<String, Box<dyn Error>> {
    Ok(flat(&reply(&settled(text)?)))
}

/// Two rinses of a yard that does not exist.
const RINSES: &str = r#"
[enquiry]
title = "Two rinses"
print = "us"
[[stream]]
name = "north rinse"
flow = "40 gpm"
hours_per_day = 2
[[stream]]
name = "south rinse"
flow = "20 gpm"
hours_per_day = 1
[[oil]]
kind = "diesel"
[[limit]]
pollutant = "oil and grease"
value = "15 mg/L"
statistic = "daily maximum"
authority = "the permit"
method = "hexane extraction"
"#;

#[test]
fn what_several_waters_are_asked_alike_is_asked_once() -> Outcome {
    let text = mail(RINSES)?;
    let asked = "How much oil and grease does each of these waters carry?";
    assert_eq!(text.matches(asked).count(), 1, "{text}");
    let all = text.split(asked).nth(1).unwrap_or_default();
    assert!(all.starts_with(" North rinse (we took 100 mg/L), south rinse (100 mg/L)."), "{text}");
    // What is asked is not told again as taken.
    let taken = text.split("We based this on:").nth(1).unwrap_or_default();
    assert!(!taken.contains("total oil and grease, north rinse"), "{taken}");
    Ok(())
}

#[test]
fn a_word_names_its_water_and_the_figures_nobody_confirmed() -> Outcome {
    let emulsified =
        RINSES.replace("name = \"north rinse\"", "name = \"north rinse\"\noil = { emulsified = \"40 %\" }");
    let text = mail(&emulsified)?;
    assert!(text.contains("not by gravity"), "{text}");
    assert!(
        text.contains("It rests on figures that nobody has confirmed: total oil and grease, north rinse, 100 mg/L"),
        "{text}"
    );
    // What was told is no such figure.
    assert!(!text.contains("emulsified share of the oil, north rinse, 40 %"), "{text}");
    // A weakened word begins with what the calculation alone says, and so contradicts nothing.
    let known = RINSES.replace("hours_per_day = 2", "hours_per_day = 2\noil = { mean = \"30 mg/L\" }");
    let text = mail(&known.replace("15 mg/L", "60 mg/L"))?;
    if let Some((_, rest)) = text.split_once("by the calculation alone") {
        assert!(rest.starts_with(" it would be \""), "{text}");
    }
    Ok(())
}

#[test]
fn contradicting_claims_are_told_as_they_were_typed() -> Outcome {
    let two = RINSES.replace(
        "flow = \"40 gpm\"",
        "flow = [{ value = \"2,400 gal/h\", from = \"the mail\" }, { value = \"35 gpm\", from = \"the drawing\" }]",
    );
    let text = mail(&two)?;
    assert!(text.contains("2,400 gal/h (the mail); 35 gpm (the drawing). We took 2,400 gal/h."), "{text}");
    Ok(())
}

/// A comma parts thousands in a file that prints US units; elsewhere it may be a decimal one, and the note stands.
#[test]
fn a_thousands_comma_is_told_only_where_it_may_be_read_otherwise() -> Outcome {
    let comma = RINSES.replace("\"40 gpm\"", "\"2,400 gal/h\"");
    let note = "thousands comma";
    assert!(!summary(&settled(&comma)?, 100).contains(note));
    assert!(summary(&settled(&comma.replace("\"us\"", "\"si\""))?, 100).contains(note));
    Ok(())
}

/// A polisher is for the waters that miss a limit: none where only solids are limited and none arrive above it, and
/// only the flow of the water that carries the emulsion else.
#[test]
fn a_polisher_is_named_for_the_waters_that_ask_for_it() -> Outcome {
    let solids = RINSES.replace("oil and grease", "suspended solids").replace("\"15 mg/L\"", "\"500 mg/L\"");
    let solids = solids.replace("hours_per_day", "solids = \"60 mg/L\"\nhours_per_day");
    let text = mail(&solids)?;
    assert!(!text.contains("polisher") && text.contains("kept"), "{text}");
    let one = RINSES
        .replace("hours_per_day = 1", "hours_per_day = 1\noil = { mean = \"200 mg/L\", emulsified = \"40 %\" }")
        .replace("hours_per_day = 2", "hours_per_day = 2\noil = { mean = \"12 mg/L\", emulsified = \"0 %\" }\n")
        + "\n[water]\noil_peak = 1.0\n";
    let settled = settled(&one)?;
    let train = settled.job.design.train.as_ref().ok_or("a train")?;
    let polisher = train.stages.iter().find(|s| s.name == "emulsion splitting and polisher").ok_or("a polisher")?;
    assert!(polisher.why.contains("Oil and grease of 15 mg/L; emulsified oil has to be split"), "{}", polisher.why);
    Ok(())
}

#[test]
fn a_meter_that_contradicts_the_hours_is_asked_about() -> Outcome {
    let metered = RINSES.replace("hours_per_day = 2", "hours_per_day = 2\nvolume_per_day = \"9600 gal\"");
    let text = mail(&metered)?;
    assert!(text.contains("its volume of a day and its flow make 4 h a day, 2 h were said"), "{text}");
    // Less is no contradiction: not all runs all the time.
    assert!(!mail(&metered.replace("9600", "2400"))?.contains("2 h were said"));
    Ok(())
}

/// 10 in of pipe are DN 250 (ASME B36.10M); no customary unit stands in an answer that is asked for in SI.
#[test]
fn si_print_has_no_customary_units() -> Outcome {
    let text = RINSES.replace("\"us\"", "\"si\"")
        + "[[containment]]\nname = \"bund\"\narea = \"50 m2\"\ndepth = \"1 m\"\n[spill]\nvolume = \"1 m3\"\n";
    let settled = settled(&text)?;
    let text = flat(&summary(&settled, 110));
    assert!(text.contains("inlet and outlet DN "), "{text}");
    assert!(!text.contains("0 gal"), "{text}");
    // A cap is no deeper than the tank that has it.
    let levels = text.split("Thickest layer by each cap:").nth(1).and_then(|t| t.split("Governing").next());
    let deepest = settled.job.design.train.as_ref().map_or(0.0, |t| 1000.0 * t.unit.body.height().q.value);
    for number in levels.unwrap_or_default().split([' ', ',']).filter_map(|word| word.parse::<f64>().ok()) {
        assert!(number <= deepest, "{number} of {deepest}");
    }
    Ok(())
}

/// Results of a place where several waters meet say nothing of any one of them: the client who paid for them is told.
#[test]
fn results_that_are_not_used_are_told() -> Outcome {
    let pit =
        "[[samples]]\nname = \"pit, spring\"\nwhere = \"in\"\nresults = [\"120 mg/L\", \"340 mg/L\", \"90 mg/L\"]\n";
    let text = mail(&format!("{RINSES}{pit}"))?;
    assert!(text.contains("\"pit, spring\": The design does not use them: several waters come"), "{text}");
    assert!(!mail(RINSES)?.contains("laboratory results:"));
    Ok(())
}

/// 60 gpm through two units in parallel: all of it comes to the other while one is out.
#[test]
fn none_of_several_units_is_a_spare() -> Outcome {
    let text = mail(&format!("{RINSES}[unit]\ncount = 2\n"))?;
    assert!(text.contains("none stands by; while one is out of service 60 gpm comes to the other"), "{text}");
    assert!(text.contains("10 % more than an even share"), "{text}");
    Ok(())
}

/// A plant with three changes in two months, an alarm without oil, and no result in between.
const CHANGED: &str = r#"
[enquiry]
title = "Wash"
print = "si"
[[stream]]
name = "wash"
flow = "40 L/min"
hours_per_day = 5
[[limit]]
pollutant = "hydrocarbon index"
value = "20 mg/L"
statistic = "any sample"
[inlet]
feed = "gravity"
[[chemical]]
product = "hot water"
kind = "hot-water"
[unit]
exists = true
dimensions = { length = "3.0 m", width = "1.2 m", height = "1.6 m" }
[[samples]]
name = "lab"
where = "out"
pollutant = "hydrocarbon index"
results = ["2025-09-10: 12 mg/L", "2025-11-12: 14 mg/L", "2026-01-14: 12 mg/L", "2026-03-18: 68 mg/L", "2026-04-08: 74 mg/L"]
[[observed]]
name = "mornings"
alarm = "no oil found"
[[change]]
date = "2026-02-02"
what = "chemical"
chemical = "alkaline-degreaser"
[[change]]
date = "2026-02-23"
what = "outlet"
text = "new pipe 15 cm higher"
"#;

#[test]
fn the_mail_of_a_unit_that_stands_answers_alarm_and_size() -> Outcome {
    let mut settled = settled(CHANGED)?;
    settled.diagnose().map_err(|stop| stop.to_string())?;
    let text = flat(&reply(&settled));
    assert!(text.contains("The alarm that sounds without oil"), "{text}");
    assert!(text.contains("Would a larger unit help?"), "{text}");
    assert!(text.contains("No result lies between the changes of 2026-02-02 and 2026-02-23"), "{text}");
    // The pipe went up: nobody is told that the water stands low for it, and hot water has no data sheet.
    assert!(!text.contains("stands below its level (since"), "{text}");
    assert!(!text.contains("data sheet of \"hot water\""), "{text}");
    Ok(())
}

/// 68 and 74 mg/L lie above 20 mg/L whatever their day.
#[test]
fn results_without_a_day_stand_against_the_limit() -> Outcome {
    let undated = ["2025-09-10: ", "2025-11-12: ", "2026-01-14: ", "2026-03-18: ", "2026-04-08: "];
    let text = undated.iter().fold(CHANGED.to_owned(), |text, day| text.replace(day, ""));
    let text = mail(&text)?;
    assert!(text.contains("2 of the 5 without a day lie above the limit of 20 mg/L"), "{text}");
    assert!(text.contains("On which days"), "{text}");
    Ok(())
}

/// Demo 80 is shipped 136 x 62 in: with 24 in of walkway around, which nobody stated, 184 x 110 in. A place of 144 x 96 in lacks
/// 40 in, 3.33 ft, and 14 in, 1.17 ft.
#[test]
fn a_place_without_room_for_the_walkway_is_told_and_asked_about() -> Outcome {
    let place = format!("{RINSES}[unit]\nmodel = \"Demo 80\"\n[site]\nmax_length = \"12 ft\"\nmax_width = \"8 ft\"\n");
    let text = mail(&place)?;
    assert!(
        text.contains(
            "the place's length of 12 ft is 3.33 ft too little, the place's width of 8 ft is 1.17 ft too little"
        ),
        "{text}"
    );
    assert!(
        text.contains("How wide a walkway must stay free around the unit, and between units where there are several?"),
        "{text}"
    );
    assert!(text.contains("but not a walkway all round, of which nobody spoke and which is our figure"), "{text}");
    let wide = mail(&place.replace("12 ft", "16 ft").replace("8 ft", "10 ft"))?;
    assert!(!wide.contains("too little") && !wide.contains("How wide a walkway"), "{wide}");
    Ok(())
}

/// A single pump of 80 gpm delivers them whenever it runs, though 85 arrive and some of them are held ahead of it: one for 75 is too small.
#[test]
fn a_unit_for_less_than_the_pump_delivers_is_too_small() -> Outcome {
    let north = RINSES.replace("\"40 gpm\"", "\"65 gpm\"");
    let pumped = format!(
        "{north}[inlet]\nfeed = \"pump\"\nrate = \"80 gpm\"\npulsation = 1\nsump_volume = \"200 gal\"\n[asked]\nflow = \"75 gpm\"\n"
    );
    let text = mail(&pumped)?;
    assert!(text.contains("A unit for 75 gpm: no. We find 80 gpm"), "{text}");
    Ok(())
}

/// A containment of which it was not said what stands in it: what is asked is its area and the fire water.
#[test]
fn what_a_containment_waits_for_is_asked() -> Outcome {
    let kerb = format!(
        "{RINSES}[[containment]]\nname = \"kerb\"\nkind = \"bund\"\narea = \"720 ft2\"\ndepth = \"4 in\"\ndrain = \"closed\"\nroof = true\n\
         [spill]\nvolume = \"500 gal\"\ninto = \"kerb\"\n"
    );
    let text = mail(&kerb)?;
    let asked = text.split("Please answer").nth(1).unwrap_or_default();
    assert!(asked.contains("Which area do foundations and equipment take in the kerb?"), "{asked}");
    assert!(asked.contains("Must fire water of a deluge or of hydrants be held too"), "{asked}");
    Ok(())
}
