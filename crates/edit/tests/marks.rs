//! Faults of the reader, provoked one by one, and the words of the text that are marked for each.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::path;
use stillrise_design::enquiry::read_enquiry;
use stillrise_edit::{mark, span_of};

const HEAD: &str = "[enquiry]\ntitle = \"x\"\n\n";
const WASH: &str = "[[stream]]\nname = \"wash: a. 'b'\"\nflow = \"5 gpm\"\n\n";

/// What is marked for each fault of a text behind a plain head.
fn marked(text: &str) -> Vec<String> {
    let whole = format!("{HEAD}{WASH}{text}");
    let faults = read_enquiry(&whole, &|_| None).err().unwrap_or_default();
    assert!(!faults.is_empty(), "{text}");
    let say =
        |place: &str| mark(&whole, place).map_or_else(|| format!("nothing of {place}"), |at| whole[at].to_owned());
    faults.iter().map(|fault| say(&fault.place)).collect()
}

#[test]
fn a_fault_marks_its_key() {
    let stream = |keys: &str| format!("[[stream]]\nname = \"b\"\nflow = \"5 gpm\"\n{keys}\n");
    for (text, words) in [
        (stream("solids = \"5 ft\""), vec!["solids = \"5 ft\""]),
        (stream("oil = { kind = \"diesel\", mean = \"5 ft\" }"), vec!["mean = \"5 ft\""]),
        (stream("oil = { mean = \"9 mg/L\", dissolved = \"10 mg/L\" }"), vec!["dissolved = \"10 mg/L\""]),
        (
            stream("oil = { mean = { value = \"9 mg/L\", low = \"x\", high = \"9 mg/L\" } }"),
            vec!["mean = { value = \"9 mg/L\", low = \"x\", high = \"9 mg/L\" }"],
        ),
        (stream("[stream.oil]\nkind = \"deisel\""), vec!["kind = \"deisel\""]),
        (stream("coldest = \"50 °C\"\nwarmest = \"40 °C\""), vec!["[[stream]]"]),
        (stream("shear = [\"pump\"]"), vec!["shear = [\"pump\"]"]),
        ("[[stream]]\nname = \"b\"\n".to_owned(), vec!["[[stream]]"]),
        ("[[stream]]\nhours_per_day = 3\n".to_owned(), vec!["[[stream]]"]),
        (stream("flwo = \"5 gpm\""), vec!["flwo = \"5 gpm\""]),
        ("[inlet]\nrate = [\"60 gpm\", \"x\"]\n".to_owned(), vec!["\"x\""]),
        ("[inlet]\nfeed = \"pomp\" # c\n".to_owned(), vec!["feed = \"pomp\""]),
        ("[solids]\ntable = [\"20 um: 5 %\",\n \"60 um\"]\n".to_owned(), vec!["\"60 um\""]),
        (
            "[solids]\ntable = [\"20 um: 5 %\", \"60 um: 50 %\"]\n".to_owned(),
            vec!["table = [\"20 um: 5 %\", \"60 um: 50 %\"]"],
        ),
        ("[droplets]\nlaw = \"measured\"\n".to_owned(), vec!["law = \"measured\""]),
        ("[droplets]\nlaw = \"upper limit\"\nd50 = \"9 um\"\n".to_owned(), vec!["law = \"upper limit\""]),
        ("[water]\ncoldest = \"20 °C\"\nwarmest = \"9 °C\"\n".to_owned(), vec!["[water]"]),
        ("[rain]\ntable = \"none.csv\"\n[[surface]]\narea = \"1 acre\"\n".to_owned(), vec!["table = \"none.csv\""]),
        ("[rain]\nannual = \"38 in\"\n".to_owned(), vec!["[rain]"]),
        ("[unit.dimensions]\nlength = \"10 gpm\"\n".to_owned(), vec!["length = \"10 gpm\""]),
        ("[[change]]\ndate = 2026-13-01\n".to_owned(), vec!["date = 2026-13-01"]),
        ("[watr]\ncoldest = \"1 °C\"\n".to_owned(), vec!["[watr]"]),
        ("[european]\ntaps = [\"DN15 x 2\", \"two\"]\n".to_owned(), vec!["\"two\""]),
        ("[spill]\nvolume = \"1 m3\"\ninto = \"pit\"\n".to_owned(), vec!["into = \"pit\""]),
        (
            "[[shear]]\nname = \"v\"\nkind = \"valve\"\nfitting = \"elbow-90\"\n".to_owned(),
            vec!["fitting = \"elbow-90\"", "[[shear]]"],
        ),
        ("[[water]]\n".to_owned(), vec!["[[water]]"]),
        ("[water]\ncoldest = 5 °C\n".to_owned(), vec!["coldest = 5 °C"]),
    ] {
        let found = marked(&text);
        assert!(words.iter().all(|word| found.iter().any(|f| f == word)), "{text}: {found:?}");
        assert!(found.iter().all(|found| !found.starts_with("nothing")), "{text}: {found:?}");
    }
}

#[test]
fn of_two_blocks_of_one_name_the_line_tells_which() {
    let text = "[[limit]]\npollutant = \"oil and grease\"\nvalue = \"15 mg/L\"\n[[limit]]\npollutant = \"oil and grease\"\nvalue = \"5 ft\"\n";
    assert_eq!(marked(text).first().map(String::as_str), Some("value = \"5 ft\""));
}

#[test]
fn of_blocks_that_are_called_the_same_the_last_is_marked() {
    let place = |text: &str, last: &str| {
        let whole = format!("{HEAD}{WASH}{text}");
        let faults = read_enquiry(&whole, &|_| None).err().unwrap_or_default();
        let at = faults.iter().find(|f| f.reason.contains("two of that name")).and_then(|f| mark(&whole, &f.place));
        assert_eq!(at.map(|at| at.start), whole.rfind(last), "{faults:?}");
    };
    place(
        "[[surface]]\nname = \"a\"\narea = \"1 acre\"\n[[surface]]\nname = \"a\"\narea = \"2 acre\"\n",
        "[[surface]]",
    );
    place("[[stream]]\nname = \"A\"\nflow = \"1 gpm\"\n[[stream]]\nname = \"a\"\nflow = \"1 gpm\"\n", "[[stream]]");
    place("[[case]]\nname = \"WASH: a. 'b'\"\nflow = \"1 gpm\"\n", "[[case]]");
    let limit = "[[limit]]\npollutant = \"oil and grease\"\nvalue = \"15 mg/L\"\nauthority = \"city\"\n";
    place(&limit.repeat(2), "[[limit]]");
}

#[test]
fn places_without_bytes_mark_nothing() {
    for place in
        ["the file", "line 999, the file", "rain: table", "", "line 0, x", "line x, y", "stream \"", "\"", ": : :"]
    {
        assert_eq!(mark(HEAD, place), None, "{place}");
    }
    assert_eq!(mark("[x\n", "line 1, the file"), Some(0..2));
}

#[test]
fn a_key_is_found_by_its_path() {
    let text = format!("{HEAD}{WASH}[unit]\ncount = 2 # c\n[unit.dimensions]\nlength = \"1 m\"\n");
    let found = |key: &str| span_of(&text, &path(key)).map(|at| &text[at]);
    assert_eq!(found("unit.count"), Some("count = 2"));
    assert_eq!(found("unit.dimensions.length"), Some("length = \"1 m\""));
    assert_eq!(found("stream \"wash: a. 'b'\".flow"), Some("flow = \"5 gpm\""));
    assert_eq!(found("unit.model"), None);
    assert_eq!(span_of("[x", &path("unit.model")), None);
}
