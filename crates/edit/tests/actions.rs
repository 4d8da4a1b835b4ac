//! Each action on a small text, with what must come out written by hand.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::{after, path, set};
use stillrise_edit::{Action, apply, said};

const TEXT: &str = r#"# A yard. Invented.

[enquiry]
title = "Yard"   # as they call it

# from the plan
[[surface]]
name = "apron"
# two said so
area = [
  { value = "2600 ft2", from = "drawing", chosen = true, because = "measured" },  # C-3
  { value = "0.05 acre", from = "mail" },
]

[[stream]]
name = "wash"
oil = { kind = "diesel", mean = { value = "60 mg/L", low = "40 mg/L", high = "90 mg/L", from = "samples" } }

[[stream]]
name = "rinse"
flow = "5 gpm"

# the site is flat
[site]
ground = "97.0 ft"   # local datum
"#;

/// The lines that went and the lines that came, in order.
fn lines(before: &str, out: &str) -> (Vec<String>, Vec<String>) {
    let (a, b): (Vec<&str>, Vec<&str>) = (before.lines().collect(), out.lines().collect());
    let front = a.iter().zip(&b).take_while(|(a, b)| a == b).count();
    let rest = a.len().min(b.len()) - front;
    let back = a.iter().rev().zip(b.iter().rev()).take(rest).take_while(|(a, b)| a == b).count();
    let own = |lines: &[&str]| lines[front..lines.len() - back].iter().map(|line| (*line).to_owned()).collect();
    (own(&a), own(&b))
}

fn changed(action: &Action) -> (String, String) {
    let (gone, new) = lines(TEXT, &after(TEXT, action));
    (gone.join("\n"), new.join("\n"))
}

fn sets(key: &str, value: &str, from: Option<&str>) -> (String, String) {
    changed(&set(&path(key), value, from))
}

#[test]
fn a_value_is_set_where_it_stands() {
    let ground = "ground = \"97.0 ft\"   # local datum";
    assert_eq!(sets("site.ground", "98 ft", None), (ground.into(), "ground = \"98 ft\"   # local datum".into()));
    let (_, new) = sets("site.ground", "98 ft", Some("survey"));
    assert_eq!(new, "ground = { value = \"98 ft\", from = \"survey\" }   # local datum");
    let (_, new) = sets("site.ground", "97.0 ft", Some("survey"));
    assert_eq!(new, "ground = { value = \"97.0 ft\", from = \"survey\" }   # local datum");
    // The range stays; who said the former value goes.
    let (_, new) = sets("stream \"wash\".oil.mean", "70 mg/L", None);
    let oil = "oil = { kind = \"diesel\", mean = { value = \"70 mg/L\", low = \"40 mg/L\", high = \"90 mg/L\" } }";
    assert_eq!(new, oil);
    let (_, new) = sets("stream \"wash\".oil.mean", "60 mg/L", Some("mail"));
    let oil = "oil = { kind = \"diesel\", mean = { value = \"60 mg/L\", low = \"40 mg/L\", high = \"90 mg/L\", from = \"mail\" } }";
    assert_eq!(new, oil);
}

#[test]
fn what_says_the_same_changes_nothing() {
    let text = "[inlet]\ntogether = { value = true, from = \"mail\" }\nrate = [\"5 gpm\",\"6 gpm\"]\n[droplets]\nspread = \"1.8\"\n\
                table = [ \"20 um: 5 %\",\n  \"60 um: 100 %\" ] # c\n";
    for (key, value) in [
        ("inlet.together", "Yes"),
        ("inlet.rate", "5 gpm;6 gpm"),
        ("droplets.spread", "1.8"),
        ("droplets.table", "20 um: 5 %\n60 um: 100 %\n"),
    ] {
        assert_eq!(after(text, &set(&path(key), value, None)), text, "{key}");
    }
    // A blank source takes the one that stands out; no source leaves it.
    let out = after(text, &set(&path("inlet.together"), "true", Some(" ")));
    assert!(out.starts_with("[inlet]\ntogether = { value = true }\n"), "{out}");
    let out = after(text, &set(&path("inlet.together"), "no", None));
    assert!(out.starts_with("[inlet]\ntogether = { value = false }\n"), "{out}");
    let out = after(text, &set(&path("droplets.table"), "20 um: 6 %; 60 um: 100 %", None));
    assert!(out.ends_with("table = [\"20 um: 6 %\", \"60 um: 100 %\"] # c\n"), "{out}");
}

#[test]
fn of_several_claims_one_is_left() {
    let (_, new) = sets("surface.area", "2500 ft2", None);
    assert_eq!(new, "# C-3\narea = \"2500 ft2\"");
    let (_, new) = sets("surface \"apron\".area", "0.05 acre", None);
    assert_eq!(new, "# C-3\narea = { value = \"0.05 acre\", from = \"mail\" }");
}

#[test]
fn a_key_that_did_not_stand_comes_in_the_declared_order() {
    let none = String::new();
    assert_eq!(sets("surface.kind", "asphalt", None), (none.clone(), "kind = \"asphalt\"".into()));
    assert_eq!(sets("stream 1.flow", "9 gpm", None), (none.clone(), "flow = \"9 gpm\"".into()));
    let out = after(TEXT, &set(&path("stream 1.flow"), "9 gpm", None));
    assert!(out.contains("name = \"wash\"\nflow = \"9 gpm\"\noil"), "{out}");
    assert_eq!(sets("stream \"rinse\".oil.kind", "diesel", None).1, "oil = { kind = \"diesel\" }");
    assert_eq!(sets("enquiry.print", "us", None).1, "print = \"us\"");
    let (_, new) = sets("stream \"wash\".oil.emulsified", "5 %", Some("mail"));
    assert!(new.ends_with("from = \"samples\" }, emulsified = { value = \"5 %\", from = \"mail\" } }"), "{new}");
}

#[test]
fn a_block_that_did_not_stand_comes_where_the_order_has_it() {
    assert_eq!(sets("water.coldest", "45 °F", None).1, "[water]\ncoldest = \"45 °F\"\n");
    let out = after(TEXT, &set(&path("water.coldest"), "45 °F", None));
    assert!(out.contains("flow = \"5 gpm\"\n\n[water]\ncoldest = \"45 °F\"\n\n# the site is flat\n[site]"), "{out}");
    let out = after(TEXT, &set(&path("method.reserve"), "10 %", None));
    assert!(out.ends_with("# local datum\n\n[method]\nreserve = \"10 %\"\n"), "{out}");
    let out = after(TEXT, &set(&path("unit.dimensions.length"), "10 ft", None));
    assert!(out.ends_with("\n\n[unit.dimensions]\nlength = \"10 ft\"\n"), "{out}");
    let out = after(&out, &set(&path("unit.count"), "2", None));
    assert!(out.ends_with("# local datum\n\n[unit]\ncount = 2\n\n[unit.dimensions]\nlength = \"10 ft\"\n"), "{out}");
    let fault = apply(TEXT, &set(&path("stream \"wsah\".flow"), "1 gpm", None)).expect_err("no such stream");
    assert!(fault.to_string().contains("did you mean \"wash\"?"), "{fault}");
    let fault = apply(TEXT, &set(&path("oil.name"), "x", None)).expect_err("no oil");
    assert!(fault.remedy.contains("[[oil]]"), "{fault}");
}

#[test]
fn claims_stand_beside_each_other() {
    let claim = |key: &str, value: &str, from: &str| Action::Claim {
        path: path(key),
        value: value.to_owned(),
        from: Some(from.to_owned()),
    };
    let (_, new) = changed(&claim("surface.area", "2550 ft2", "phone"));
    assert_eq!(new, "  { value = \"2550 ft2\", from = \"phone\" },");
    assert_eq!(after(TEXT, &claim("surface.area", "0.05 acre", "mail")), TEXT);
    let twice = after(TEXT, &claim("stream \"rinse\".flow", "6 gpm", "mail"));
    assert!(twice.contains("flow = [\"5 gpm\", { value = \"6 gpm\", from = \"mail\" }]\n"), "{twice}");
    let chosen = after(&twice, &Action::Choose { path: path("stream 2.flow"), nth: 0, because: "read off".to_owned() });
    assert!(
        chosen.contains("flow = [{ value = \"5 gpm\", chosen = true, because = \"read off\" }, { value = \"6 gpm\", from = \"mail\" }]\n"),
        "{chosen}"
    );
    let other = after(&chosen, &Action::Choose { path: path("stream 2.flow"), nth: 1, because: String::new() });
    let expected = "flow = [{ value = \"5 gpm\" }, { value = \"6 gpm\", from = \"mail\", chosen = true }]\n";
    assert!(other.contains(expected), "{other}");
    let one = after(&twice, &Action::Withdraw { path: path("stream 2.flow"), nth: 1 });
    assert_eq!(one, TEXT);
    let none = after(TEXT, &Action::Withdraw { path: path("stream 2.flow"), nth: 0 });
    assert!(!none.contains("5 gpm"), "{none}");
    let first = changed(&claim("water.coldest", "4 °C", "mail"));
    assert_eq!(first.1, "[water]\ncoldest = { value = \"4 °C\", from = \"mail\" }\n");
    let out = after(TEXT, &Action::Withdraw { path: path("surface.area"), nth: 0 });
    assert!(out.contains("area = [\n  { value = \"0.05 acre\", from = \"mail\" },\n]"), "{out}");
    for key in ["stream 2.chemicals", "inlet.rate", "rain.oil", "change.date"] {
        let text = format!("{TEXT}[[change]]\ndate = \"2026-01-01\"\n");
        let fault = apply(&text, &claim(key, "x", "y")).expect_err(key);
        assert!(fault.reason.contains("does not hold claims"), "{key}: {fault}");
    }
    assert!(apply(TEXT, &Action::Choose { path: path("surface.area"), nth: 2, because: String::new() }).is_err());
}

#[test]
fn things_of_a_list_are_set_one_by_one() {
    let one = after(TEXT, &set(&path("inlet.rate"), "60 gpm", None));
    assert!(one.contains("[inlet]\nrate = \"60 gpm\"\n"), "{one}");
    let two = after(&one, &set(&path("inlet.rate.2"), "70 gpm", Some("plate")));
    let expected = "rate = [\"60 gpm\", { value = \"70 gpm\", from = \"plate\" }]\n";
    assert!(two.contains(expected), "{two}");
    assert!(apply(&two, &set(&path("inlet.rate.4"), "1 gpm", None)).is_err());
    let claim = Action::Claim { path: path("inlet.rate.1"), value: "65 gpm".to_owned(), from: None };
    let claimed = after(&two, &claim);
    assert!(claimed.contains("rate = [[\"60 gpm\", \"65 gpm\"], {"), "{claimed}");
    let paths: Vec<(String, usize)> =
        said(&claimed).expect("TOML").iter().map(|said| (said.path.to_string(), said.claims.len())).collect();
    assert!(paths.contains(&("inlet.rate.1".to_owned(), 2)) && paths.contains(&("inlet.rate.2".to_owned(), 1)));
    let out = after(&two, &Action::Unset { path: path("inlet.rate.1") });
    assert!(out.contains("rate = [{ value = \"70 gpm\", from = \"plate\" }]\n"), "{out}");
    assert_eq!(after(&out, &Action::Unset { path: path("inlet.rate.1") }), TEXT);
    let both = after(TEXT, &set(&path("inlet.rate"), "60 gpm; 60 gpm", None));
    assert!(both.contains("rate = [\"60 gpm\", \"60 gpm\"]\n"), "{both}");
}

#[test]
fn what_is_left_empty_goes() {
    let unset = |text: &str, key: &str| after(text, &Action::Unset { path: path(key) });
    let out = unset(TEXT, "site.ground");
    assert!(out.ends_with("flow = \"5 gpm\"\n\n# the site is flat\n"), "{out}");
    let out = unset(&unset(TEXT, "stream 1.oil.mean"), "stream 1.oil.kind");
    assert!(out.contains("name = \"wash\"\n\n[[stream]]"), "{out}");
    let out = unset(&unset(TEXT, "stream 2.name"), "stream 2.flow");
    assert!(out.contains("\n\n[[stream]]\n\n# the site"), "{out}");
    let out = unset("[unit.dimensions]\nlength = \"10 ft\" # x\n# stays\n", "unit.dimensions.length");
    assert_eq!(out, "# stays\n");
    assert_eq!(unset("water.coldest = \"1 °C\"\n", "water.coldest"), "");
    assert_eq!(unset("rain = { oil = { mean = \"1 mg/L\" } }\n", "rain.oil.mean"), "");
    let text = "rain = { oil.mean = \"1 mg/L\", path = \"1 ft\", oil.kind = \"diesel\" }\n";
    assert_eq!(unset(text, "rain.oil"), "rain = { path = \"1 ft\" }\n");
}

#[test]
fn blocks_come_and_go() {
    let add = |block: &str, keys: &[(&str, &str)]| Action::AddBlock {
        block: block.to_owned(),
        keys: keys.iter().map(|(key, value)| ((*key).to_owned(), (*value).to_owned())).collect(),
    };
    let (_, new) = changed(&add("stream", &[("name", "drip"), ("flow", "1 gpm"), ("oil.mean", "9 mg/L")]));
    assert_eq!(new, "[[stream]]\nname = \"drip\"\nflow = \"1 gpm\"\noil = { mean = \"9 mg/L\" }\n");
    let out = after(TEXT, &add("stream", &[("name", "drip")]));
    assert!(out.contains("flow = \"5 gpm\"\n\n[[stream]]\nname = \"drip\"\n\n# the site is flat"), "{out}");
    assert_eq!(after(&out, &Action::RemoveBlock { heading: "stream \"drip\"".parse().expect("a heading") }), TEXT);
    assert_eq!(changed(&add("rain", &[("annual", "38 in")])).1, "[rain]\nannual = \"38 in\"\n");
    assert!(apply(TEXT, &add("site", &[])).is_err_and(|f| f.reason.contains("stands already")));
    assert!(apply(TEXT, &add("stream", &[("flwo", "1")])).is_err_and(|f| f.remedy.contains("flow")));
    let single = "[stream]\nname = \"a\"\n[stream.oil]\nkind = \"diesel\"\n";
    let out = after(single, &add("stream", &[("name", "b")]));
    assert_eq!(out, "[[stream]]\nname = \"a\"\n[stream.oil]\nkind = \"diesel\"\n\n[[stream]]\nname = \"b\"\n");
    let braces = "stream = { name = \"a\" }\n";
    assert_eq!(after(braces, &add("stream", &[("name", "b")])), "stream = [{ name = \"a\" }, { name = \"b\" }]\n");
    let out = after(TEXT, &Action::RemoveBlock { heading: "surface".parse().expect("a heading") });
    assert!(out.contains("# as they call it\n\n[[stream]]"), "{out}");
    assert!(apply(TEXT, &Action::RemoveBlock { heading: "rain".parse().expect("a heading") }).is_err());
}

#[test]
fn decisions_are_made_and_taken_back() {
    let decide = |word: &str, because: &str, who: Option<&str>| Action::Decide {
        rule: "frost-outdoors".to_owned(),
        decision: word.to_owned(),
        because: because.to_owned(),
        who: who.map(str::to_owned),
        date: who.map(|_| "2026-03-02".to_owned()),
    };
    let first = after(TEXT, &decide("accepted", "heat tracing", Some("J. Example")));
    let block = "\n[[decision]]\nrule = \"frost-outdoors\"\ndecision = \"accepted\"\nbecause = \"heat tracing\"\nwho = \"J. Example\"\ndate = \"2026-03-02\"\n";
    assert_eq!(first, format!("{TEXT}{block}"));
    let second = after(&first, &decide("by others", "client", None));
    let block = "\n[[decision]]\nrule = \"frost-outdoors\"\ndecision = \"by others\"\nbecause = \"client\"\n";
    assert_eq!(second, format!("{TEXT}{block}"));
    assert_eq!(after(&second, &Action::Undecide { rule: "frost-outdoors".to_owned() }), TEXT);
    assert!(apply(TEXT, &decide("acepted", "x", None)).is_err_and(|f| f.remedy.contains("accepted")));
    assert!(apply(TEXT, &Action::Undecide { rule: "frost-outdoors".to_owned() }).is_err());
}

#[test]
fn other_layouts_are_kept() {
    let windows = "\u{feff}[water]\r\ncoldest = \"4 °C\" # c\r\n";
    let out = after(windows, &set(&path("water.warmest"), "20 °C", None));
    assert_eq!(out, "\u{feff}[water]\r\ncoldest = \"4 °C\" # c\r\nwarmest = \"20 °C\"\r\n");
    let out = after(&out, &set(&path("rain.annual"), "1 m", None));
    assert_eq!(
        out,
        format!(
            "\u{feff}[rain]\r\nannual = \"1 m\"\r\n\r\n{}",
            &out["\u{feff}[rain]\r\nannual = \"1 m\"\r\n\r\n".len()..]
        )
    );
    let dotted = "water.coldest = \"4 °C\"\nenquiry.title = \"x\"\n";
    let out = after(dotted, &set(&path("water.warmest"), "20 °C", None));
    assert_eq!(out, "water.coldest = \"4 °C\"\nwater.warmest = \"20 °C\"\nenquiry.title = \"x\"\n");
    let out = after(&out, &set(&path("rain.annual"), "1 m", None));
    assert!(out.ends_with("enquiry.title = \"x\"\n\n[rain]\nannual = \"1 m\"\n"), "{out}");
    let open = "[water]\ncoldest = \"4 °C\"";
    let out = after(open, &set(&path("water.warmest"), "20 °C", None));
    assert_eq!(out, "[water]\ncoldest = \"4 °C\"\nwarmest = \"20 °C\"\n");
    let inner = "[rain]\n  droplets.d50 = \"90 um\"\n";
    let out = after(inner, &set(&path("rain.droplets.spread"), "2", None));
    assert_eq!(out, "[rain]\n  droplets.d50 = \"90 um\"\n  droplets.spread = 2\n");
    let headed = "[water.coldest]\nvalue = \"4 °C\"\n";
    assert!(apply(headed, &set(&path("water.coldest"), "5 °C", None)).is_err_and(|f| f.reason.contains("header")));
    assert!(apply("[water\n", &set(&path("water.coldest"), "5 °C", None)).is_err_and(|f| f.place.contains("line 1")));
}
