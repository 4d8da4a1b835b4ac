//! Any action on any text: nothing panics, what comes out is TOML, no comment goes by a set, and what was typed is
//! data.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod common;

use common::{after, comments, is_toml, jobs, path, set};
use proptest::prelude::*;
use std::sync::LazyLock;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind};
use stillrise_design::enquiry::{blocks, read_enquiry};
use stillrise_edit::{Action, Heading, History, Path, apply, mark, said};

/// Layouts that people and programs write, beside those of the worked jobs.
const LAYOUTS: &[&str] = &[
    "",
    "# only a comment",
    "stream = [ { name = \"a\", flow = \"1 gpm\" }, # one\n  { name = \"b\" } # two\n]\n",
    "stream = { name = \"a\" } # one\nwater.coldest = \"4 °C\" # cold\nwater.warmest = \"9 °C\"\n",
    "[stream]\nname = \"a\" # x\n[stream.oil]\nmean = [ # list\n  \"5 mg/L\", # a\n  # b\n  \"6 mg/L\"\n]\n# end",
    "[unit.dimensions]\nlength = \"\"\"10 ft\"\"\"\n\n[unit] # late\ncount = 2\n[site]\r\nground = '''\n# no comment\n1 ft'''\r\n",
    "\u{feff}rain = { oil.mean = \"1 mg/L\", oil . \"kind\" = 'diesel', path = \"1 ft\", } # r\r\n[\"inlet\"]\r\n\"rate\"=[\"1 gpm\",{value=\"2 gpm\"},[\"3 gpm\",\"4 gpm\"]]#c\r\n",
    "[[limit]]\npollutant = \"oil and grease\"\n# two\n[[limit]]\npollutant = \"oil-and-grease\"\nvalue = { value = \"5 mg/L\",\n  # why\n  from = \"x\", }\n[[stream]]\n[[stream]]\n[stream.droplets]\n",
    "[[stream.flow]]\nvalue = \"1 gpm\"\n[rain.oil]\n[rain.droplets]\ntable = [[\"1 um: 5 %\", \"2 um: 100 %\"], { value = [\"1 um: 7 %\", \"2 um: 100 %\"] }]\n",
    "water = 3\nrain = [1, 2]\nstream = [3, { }]\n[solids]\nd50.value = \"9 um\"\nd50.from = \"x\"\n[change.date]\n",
    "enquiry = {}\n[inlet]\nrate = []\nfeed = [ ]\npump = [ # nothing\n]\n",
    "[broken",
];

/// Keys that blocks are called by.
const NAMING: &[&str] = &["name", "model", "product", "pollutant", "rule"];

static TEXTS: LazyLock<Vec<String>> = LazyLock::new(|| {
    jobs().into_iter().map(|job| job.text).chain(LAYOUTS.iter().map(|text| (*text).to_owned())).collect()
});

/// The names of all keys of all blocks.
static KEYS: LazyLock<Vec<(&'static str, bool, String)>> = LazyLock::new(|| {
    fn gather(block: &'static BlockSpec, before: &str, found: &mut Vec<String>) {
        for key in block.keys() {
            let own = format!("{before}{}", key.name);
            if let KeyKind::Table(inner) = key.kind {
                gather(inner(), &format!("{own}."), found);
            }
            if let KeyKind::Quantities(_) = key.kind {
                found.extend([format!("{own}.1"), format!("{own}.2")]);
            }
            found.push(own);
        }
    }
    let of = |(block, many): (&'static BlockSpec, bool)| {
        let mut found = Vec::new();
        gather(block, "", &mut found);
        found.into_iter().map(move |key| (block.name, many, key)).collect::<Vec<_>>()
    };
    blocks().flat_map(of).collect()
});

fn value() -> impl Strategy<Value = String> {
    let words = [
        "5 gpm",
        "1.5",
        "2",
        "yes",
        "diesel",
        "oil and grease",
        "",
        " ",
        ";",
        "a; b",
        "a, b\nc",
        "20 um: 5 %; 60 um: 100 %",
    ];
    let hostile = [
        "\"",
        "\"\"\"",
        "'''",
        "\\",
        "\n[x]\n",
        "#",
        "\u{0}\u{7f}\u{85}",
        "\u{202e}é\u{feff}",
        "{ value = 1 }",
        "\r\n",
        "]]",
        "x\ty",
    ];
    prop_oneof![
        proptest::sample::select(words.to_vec()).prop_map(str::to_owned),
        proptest::sample::select(hostile.to_vec()).prop_map(str::to_owned),
        any::<String>(),
    ]
}

/// A key that may stand in a text: often one that does.
fn key(text: usize) -> impl Strategy<Value = Path> {
    let standing: Vec<Path> = said(&TEXTS[text]).unwrap_or_default().into_iter().map(|said| said.path).collect();
    let any = (0..KEYS.len(), 1..4_usize).prop_map(|(i, number)| {
        let (block, many, key) = &KEYS[i];
        let heading = Heading::new(block, many.then_some(number), None).expect("a block");
        Path::new(heading, key).expect("a key")
    });
    if standing.is_empty() {
        return any.boxed();
    }
    prop_oneof![3 => proptest::sample::select(standing), 1 => any].boxed()
}

fn action(text: usize) -> impl Strategy<Value = Action> {
    let from = || proptest::option::of(value());
    let nth = 0..4_usize;
    prop_oneof![
        4 => (key(text), value(), from()).prop_map(|(path, value, from)| Action::Set { path, value, from }),
        3 => (key(text), value(), from()).prop_map(|(path, value, from)| Action::Claim { path, value, from }),
        2 => (key(text), nth.clone(), value()).prop_map(|(path, nth, because)| Action::Choose { path, nth, because }),
        2 => (key(text), nth).prop_map(|(path, nth)| Action::Withdraw { path, nth }),
        2 => key(text).prop_map(|path| Action::Unset { path }),
        1 => (0..KEYS.len(), value()).prop_map(|(i, value)| {
            let (block, _, key) = &KEYS[i];
            Action::AddBlock { block: (*block).to_owned(), keys: vec![(key.clone(), value)] }
        }),
        1 => key(text).prop_map(|path| Action::RemoveBlock { heading: path.heading().clone() }),
        1 => (value(), value(), from(), from()).prop_map(|(rule, because, who, date)| {
            Action::Decide { rule, decision: "open".to_owned(), because, who, date }
        }),
        1 => value().prop_map(|rule| Action::Undecide { rule }),
    ]
}

fn job() -> impl Strategy<Value = (usize, Vec<Action>)> {
    (0..TEXTS.len()).prop_flat_map(|text| (Just(text), proptest::collection::vec(action(text), 1..6)))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, max_shrink_iters: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_action_on_any_text((text, actions) in job()) {
        let mut text = TEXTS[text].clone();
        for action in actions {
            let Ok(out) = apply(&text, &action) else { continue };
            is_toml(&out);
            if let Action::Set { path, value, from } = &action {
                let (mut was, now) = (comments(&text), comments(&out));
                for comment in &now {
                    was.iter().position(|c| c == comment).map(|at| was.remove(at));
                }
                prop_assert!(was.is_empty(), "{was:?} is lost by {}\n{text}\n{out}", action.says());
                // Once more changes nothing; a block with a new name is called otherwise.
                match apply(&out, &action) {
                    Ok(again) => prop_assert_eq!(&again, &out, "{}", action.says()),
                    Err(fault) => prop_assert!(NAMING.contains(&path.key().name), "{fault}"),
                }
                if matches!(path.kind(), KeyKind::Text | KeyKind::Pattern(_) | KeyKind::Named(_) | KeyKind::Choice(_)) {
                    let number = path.heading().number();
                    let source = from.clone().filter(|from| !from.trim().is_empty());
                    let is_claim = |claim: &stillrise_edit::Claimed| {
                        &claim.value == value && (from.is_none() || claim.from == source)
                    };
                    let mine = said(&out).expect("TOML").into_iter().find(|said| {
                        core::ptr::eq(said.path.key(), path.key()) && said.claims.iter().any(is_claim)
                    });
                    prop_assert!(mine.is_some(), "{value:?} of {path} ({number:?})\n{out}");
                }
            }
            text = out;
        }
        let _ = read_enquiry(&text, &|_| None);
    }

    #[test]
    fn any_text_as_a_path_or_a_place(text in any::<String>(), block in 0..KEYS.len(), which in 0..TEXTS.len()) {
        let (block, _, key) = &KEYS[block];
        let behind = [format!("{block}{text}"), format!("{block} \"{text}\".{key}"), format!("{block}: {text}")];
        for path in behind.into_iter().chain([text.clone()]) {
            if let Ok(path) = path.parse::<Path>() {
                prop_assert_eq!(&path.to_string().parse::<Path>().expect("printed"), &path);
            }
            if let Some(at) = mark(&TEXTS[which], &path) {
                prop_assert!(TEXTS[which].get(at).is_some());
            }
        }
        let _ = said(&text);
        let _ = apply(&text, &set(&path("water.coldest"), "4 °C", None));
    }

    #[test]
    fn undone_and_done_again(moves in proptest::collection::vec((0..4_u8, "[a-c]"), 1..60)) {
        let mut history = History::new("start");
        let (mut past, mut future): (Vec<String>, Vec<String>) = (vec!["start".to_owned()], Vec::new());
        for (what, text) in moves {
            match what {
                0 => if past.len() > 1 {
                    prop_assert!(history.can_undo());
                    future.push(past.pop().expect("a text"));
                    prop_assert_eq!(history.undo().map(|step| &step.text), past.last());
                } else {
                    prop_assert!(!history.can_undo() && history.undo().is_none());
                },
                1 => match future.pop() {
                    Some(text) => {
                        prop_assert!(history.can_redo());
                        past.push(text);
                        prop_assert_eq!(history.redo().map(|step| &step.text), past.last());
                    }
                    None => prop_assert!(!history.can_redo() && history.redo().is_none()),
                },
                _ => if past.last() != Some(&text) {
                    history.push(text.clone(), "typed");
                    past.push(text);
                    future.clear();
                },
            }
            prop_assert_eq!(history.now().map(|step| &step.text), past.last());
            prop_assert_eq!(history.steps().len(), past.len() + future.len());
        }
    }
}

#[test]
fn hostile_texts_are_data_and_come_back() {
    let long = "x\"'\\# \n".repeat(15_000);
    assert!(long.len() > 100_000);
    let all = [
        "\"",
        "\"\"\"",
        "''' # x",
        "\\u0041\\",
        "a\nb\r\n[enquiry]",
        "\u{0}\u{1}\u{1f}\u{7f}\u{9f}",
        "\u{2028}é漢\u{1F600}",
        &long,
    ];
    for text in TEXTS.iter().filter(|text| said(text).is_ok()) {
        // Of the long one a few are enough.
        let is_first = core::ptr::eq(text, &TEXTS[0]);
        for hostile in all.into_iter().filter(|hostile| is_first || hostile.len() < 100) {
            for key in ["enquiry.client", "site.ground"] {
                let Ok(out) = apply(text, &set(&path(key), hostile, Some(hostile))) else { continue };
                is_toml(&out);
                let said = said(&out).expect("TOML");
                let claims = said.iter().find(|said| said.path == path(key)).map(|said| &said.claims[0]).expect("said");
                assert_eq!((claims.value.as_str(), claims.from.as_deref()), (hostile, Some(hostile)));
                if hostile.len() < 100 {
                    assert_eq!(comments(&out), comments(text), "{hostile:?}");
                }
            }
        }
    }
    let name = "a \"b\" .c\n#";
    let add = Action::AddBlock { block: "stream".to_owned(), keys: vec![("name".to_owned(), name.to_owned())] };
    let out = after("", &add);
    let flow = said(&out).expect("TOML").first().map(|said| said.path.heading().clone()).expect("a stream");
    assert_eq!(flow.name(), Some(name));
    let again: Heading = flow.to_string().parse().expect("as printed");
    assert_eq!(after(&out, &Action::RemoveBlock { heading: again }), "");
}

#[test]
fn every_key_that_stands_is_found_again_by_its_path() {
    let mut count = 0;
    for text in TEXTS.iter() {
        for said in said(text).unwrap_or_default() {
            let again: Path = said.path.to_string().parse().expect("as printed");
            assert_eq!(again, said.path);
            let at = stillrise_edit::span_of(text, &again).unwrap_or_else(|| panic!("{again} is not found\n{text}"));
            assert!(at.start <= said.at.start && said.at.end <= at.end, "{again}: {at:?} {:?}", said.at);
            assert!(said.claims.iter().all(|claim| text.get(claim.at.clone()).is_some()), "{again}");
            count += 1;
        }
    }
    assert!(count > 400, "{count} keys");
}
