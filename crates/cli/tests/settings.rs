//! The company's settings as a user meets them.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::{job, run, tree};
use serde_json::Value;
use std::fs;
use std::path::Path;
use tempfile::TempDir;

const SETTINGS: &str = r#"[company]
name = "Example Separators"
address = ["1 Example Road", "Exampletown"]
[documents]
print = "si"
notes = ["Dimensions are to be checked on site."]
[method]
reserve = "25 %"
maldistribution = "15 %"
mesh_credit = true
[[accept]]
rule = "no-measured-results"
because = "no unit of the range was measured by others yet"
who = "C. Example"
date = "2026-01-12"
"#;

/// A desk: settings, and an enquiry in a folder of its own.
fn desk(settings: &str) -> TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    fs::write(dir.path().join("stillrise-settings.toml"), settings).expect("written");
    fs::create_dir(dir.path().join("yard")).expect("a folder");
    for name in ["enquiry.toml", "rain.csv"] {
        fs::copy(job("vehicle-yard").join(name), dir.path().join("yard").join(name)).expect("copied");
    }
    dir
}

fn result(dir: &Path, more: &[&str]) -> Value {
    let (_, out, said) = run(dir, &[&["size", "yard", "--json"], more].concat());
    serde_json::from_str(&out).unwrap_or_else(|_| panic!("no JSON: {out}{said}"))
}

/// The line of the trail on something.
fn line<'a>(result: &'a Value, label: &str) -> &'a Value {
    result["trail"].as_array().expect("a list").iter().find(|line| line["label"] == label).expect("a line")
}

#[test]
fn settings_stand_above_defaults_and_below_the_enquiry_and_say_so() {
    let dir = desk(SETTINGS);
    let found = result(dir.path(), &[]);
    let reserve = line(&found, "reserve of plate area");
    assert_eq!((&reserve["value"], &reserve["origin"]["by"]), (&Value::from(25.0), &Value::from("settings")));
    assert_eq!(reserve["origin"]["source"], "method.reserve, by the company's settings");
    assert_eq!(line(&found, "unequal flow between the gaps")["value"], 15.0);
    assert_eq!(line(&found, "credit for the mesh")["word"], "yes");
    assert_eq!(found["settings"]["file"], "../stillrise-settings.toml");
    let says = found["settings"]["says"].as_array().expect("a list");
    let print = says.iter().find(|one| one["key"] == "documents.print").expect("said");
    assert_eq!((&print["instead"], &found["enquiry"]["print"]), (&Value::from("us"), &Value::from("us")));
    // What the enquiry states stands above.
    let enquiry = dir.path().join("yard/enquiry.toml");
    let text = fs::read_to_string(&enquiry).expect("read");
    fs::write(&enquiry, format!("{text}\n[method]\nreserve = \"10 %\"\nmesh_credit = false\n")).expect("written");
    let found = result(dir.path(), &[]);
    let reserve = line(&found, "reserve of plate area");
    assert_eq!((&reserve["value"], &reserve["origin"]["by"]), (&Value::from(10.0), &Value::Null));
    assert_eq!(line(&found, "credit for the mesh")["word"], "no");
    fs::write(&enquiry, text.replace("print = \"us\"\n", "")).expect("written");
    assert_eq!(result(dir.path(), &[])["enquiry"]["print"], "si");
    // Nearer settings hold whole.
    fs::write(dir.path().join("yard/stillrise-settings.toml"), "[company]\nname = \"Near\"\n").expect("written");
    let found = result(dir.path(), &[]);
    assert_eq!(found["settings"]["says"].as_array().map(Vec::len), Some(1));
    assert_eq!(line(&found, "reserve of plate area")["origin"]["kind"], "assumed");
    // And those that are named stand above both.
    fs::write(dir.path().join("other.toml"), SETTINGS.replace("25 %", "35 %")).expect("written");
    let found = result(dir.path(), &["--settings", "other.toml"]);
    assert_eq!(line(&found, "reserve of plate area")["value"], 35.0);
}

#[test]
fn a_warning_is_decided_by_company_rule_and_stays_in_sight() {
    let dir = desk(SETTINGS);
    let found = result(dir.path(), &[]);
    let of = |found: &Value, rule: &str| {
        found["verdicts"].as_array().expect("a list").iter().find(|v| v["rule"] == rule).expect("the rule").clone()
    };
    let judged = of(&found, "no-measured-results");
    assert_eq!(judged["verdict"], "warns");
    let decision = &judged["decision"];
    assert_eq!((&decision["by"], &decision["date"]), (&Value::from("company rule"), &Value::from("2026-01-12")));
    let (_, out, _) = run(dir.path(), &["size", "yard"]);
    let plain = out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(plain.contains("Decided: accepted by company rule: no unit of the range"), "{out}");
    // The enquiry may decide otherwise.
    let enquiry = dir.path().join("yard/enquiry.toml");
    let text = fs::read_to_string(&enquiry).expect("read");
    let own = "[[decision]]\nrule = \"no-measured-results\"\ndecision = \"open\"\nbecause = \"the client asks for results\"\n";
    fs::write(&enquiry, format!("{text}\n{own}")).expect("written");
    let judged = of(&result(dir.path(), &[]), "no-measured-results");
    assert_eq!(
        (&judged["decision"]["decision"], &judged["decision"]["by"]),
        (&Value::from("open"), &Value::from("engineer"))
    );
}

#[test]
fn all_faults_of_settings_are_told_at_once_with_those_of_the_enquiry() {
    let faulty = r#"[company]
nme = "x"
logo = "logo.svg"
[drawing]
size = "A9"
number = "{projct}-{sheet}"
[method]
reserve = ["10 %", "20 %"]
maldistribution = "10 to 20 %"
[[accept]]
rule = "gasoline-vapour"
because = "b"
who = "w"
date = "2026-13-01"
[[accept]]
rule = "frost-outdoor"
because = "b"
who = "w"
date = "2026-01-01"
"#;
    let dir = desk(faulty);
    fs::write(dir.path().join("logo.svg"), "<svg xmlns=\"http://www.w3.org/2000/svg\"><script/></svg>")
        .expect("written");
    let enquiry = dir.path().join("yard/enquiry.toml");
    let text = fs::read_to_string(&enquiry).expect("read");
    fs::write(&enquiry, text.replace("[enquiry]\n", "[enquiry]\ntitel = \"x\"\n")).expect("written");
    let before = tree(dir.path());
    let (code, out, said) = run(dir.path(), &["submittal", "yard", "--out", "package"]);
    assert_eq!((code, out.as_str()), (2, ""), "{said}");
    for word in [
        "did you mean \"title\"?",
        "did you mean \"name\"?",
        "\"A9\" is not a word of \"size\"",
        "did you mean {project}?",
        "method: reserve",
        "method: maldistribution",
        "not for a company to accept",
        "no month 13",
        "did you mean \"frost-outdoors\"?",
        "holds a <script>",
    ] {
        assert!(said.contains(word), "{word}: {said}");
    }
    assert_eq!(tree(dir.path()), before);
    let (code, _, said) = run(dir.path(), &["size", "yard", "--settings", "absent.toml"]);
    assert!(code == 2 && said.contains("absent.toml"), "{said}");
}

#[test]
fn a_blank_file_holds_every_key_and_is_read() {
    let dir = desk(SETTINGS);
    let (code, _, said) = run(dir.path(), &["new", "blank", "--settings"]);
    assert_eq!(code, 0, "{said}");
    let path = dir.path().join("blank/stillrise-settings.toml");
    let text = fs::read_to_string(&path).expect("read");
    let (_, schema, _) = run(dir.path(), &["schema", "settings"]);
    let schema: Value = serde_json::from_str(&schema).expect("JSON");
    for (block, stated) in schema["properties"].as_object().expect("blocks") {
        let keys = stated["properties"].as_object().or(stated["items"]["properties"].as_object()).expect("keys");
        for key in keys.keys() {
            assert!(text.contains(&format!("{key} = ")), "{block}.{key}");
        }
    }
    assert_eq!(
        result(dir.path(), &["--settings", "blank/stillrise-settings.toml"])["settings"]["says"]
            .as_array()
            .map(Vec::len),
        Some(1)
    );
    let (code, _, said) = run(dir.path(), &["new", "blank", "--settings"]);
    assert!(code == 2 && said.contains("exists already"), "{said}");
}

#[test]
fn a_package_can_be_made_again_from_its_own_inputs() {
    let dir = desk(SETTINGS);
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 4 2\"><path d=\"M0 0h4v2z\"/></svg>";
    fs::write(dir.path().join("logo.svg"), svg).expect("written");
    let with = SETTINGS.replace("address =", "logo = \"logo.svg\"\naddress =");
    fs::write(dir.path().join("stillrise-settings.toml"), with).expect("written");
    let (_, _, said) = run(dir.path(), &["submittal", "yard", "--out", "ours", "--for", "us"]);
    let inputs: Vec<String> = tree(&dir.path().join("ours/inputs")).into_iter().map(|(name, _)| name).collect();
    assert_eq!(inputs, ["enquiry.toml", "logo.svg", "rain.csv", "stillrise-settings.toml"], "{said}");
    let (_, first, _) = run(dir.path(), &["size", "yard", "--json"]);
    let (_, again, _) = run(dir.path(), &["size", "ours/inputs", "--json"]);
    let trail = |text: &str| serde_json::from_str::<Value>(text).expect("JSON")["trail"].clone();
    assert_eq!(trail(&first), trail(&again));
    // Others are not told who accepts what.
    let (_, _, said) = run(dir.path(), &["submittal", "yard", "--out", "theirs", "--for", "regulator"]);
    let text = fs::read_to_string(dir.path().join("theirs/data/result.json")).unwrap_or_else(|_| panic!("{said}"));
    assert!(!text.contains("C. Example") && text.contains("company rule"));
}
