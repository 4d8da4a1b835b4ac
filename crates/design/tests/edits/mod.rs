//! What a hurried hand or a broken transfer does to a text: lines lost, doubled or swapped, characters
//! lost or added, one value in the place of another.

use proptest::prelude::*;
use proptest::sample::{Index, select};

/// What customers type: ranges, bounds, fractions, claims.
const TYPED: &[&str] = &[
    "\"10 to 20 gpm\"",
    "\"20 gpm +/- 10 %\"",
    "\"max 20 mg/L\"",
    "\"about 3 600 ft2\"",
    "\"5' 6 1/2\\\"\"",
    "\"6-9\"",
    "\"pH 6-9 units\"",
    "{ value = \"10 - 20 ft\", from = \"e-mail\" }",
    "{ value = true, from = \"drawing\", chosen = true }",
    "[true, { value = false, from = \"call\" }]",
    "[\"pump\", { value = \"gravity\", because = \"seen\" }]",
    "{ value = 2 }",
    "{ value = [\"20 um: 15 %\", \"250 um: 100 %\"], from = \"sieve\" }",
    "[[\"60 gpm\", \"70 gpm\"], { value = \"50 gpm\", low = \"40 gpm\", high = \"55 gpm\" }]",
    "{ from = \"nobody\" }",
];

/// One thing done to a text.
#[derive(Debug, Clone)]
pub enum Edit {
    Drop(Index),
    Double(Index),
    Swap(Index, Index),
    Remove(Index),
    Insert(Index, String),
    Value(Index, String),
}

/// Up to three of them.
pub fn edits() -> impl Strategy<Value = Vec<Edit>> {
    let value = prop_oneof![
        Just("\"\"".to_owned()),
        Just("true".to_owned()),
        Just("[]".to_owned()),
        Just("{}".to_owned()),
        Just("1979-05-27".to_owned()),
        Just("nan".to_owned()),
        any::<i64>().prop_map(|n| n.to_string()),
        any::<f64>().prop_map(|x| format!("{x:?}")),
        (1_usize..400).prop_map(|n| "9".repeat(n)),
        (1_usize..400, "( gpm| ft| acre| mg/L| °C| gal)?").prop_map(|(n, unit)| format!("\"{}{unit}\"", "9".repeat(n))),
        r#""\PC{0,12}""#,
        "\"[-0-9.,eE]{0,12} ?[a-zA-Z°µ/%23²³]{0,8}\"",
        select(TYPED.to_vec()).prop_map(str::to_owned),
        "\"(low|high|none|gravity|pumped|us|si|clay|10|[0-9]{1,4} (to|of|at) [0-9]{1,4} (gpm|mg/L|m3/h|mm|°F|in))\"",
    ];
    let edit = prop_oneof![
        any::<Index>().prop_map(Edit::Drop),
        any::<Index>().prop_map(Edit::Double),
        (any::<Index>(), any::<Index>()).prop_map(|(a, b)| Edit::Swap(a, b)),
        any::<Index>().prop_map(Edit::Remove),
        (any::<Index>(), prop_oneof![r#"["\[\]=\\#,.\n{}-]"#, any::<char>().prop_map(String::from)])
            .prop_map(|(at, s)| Edit::Insert(at, s)),
        (any::<Index>(), value).prop_map(|(at, s)| Edit::Value(at, s)),
    ];
    prop::collection::vec(edit, 0..4)
}

/// The text with all of them done.
pub fn edited(text: &str, edits: &[Edit]) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    for edit in edits.iter().filter(|_| !text.is_empty()) {
        if lines.is_empty() {
            break;
        }
        let count = lines.len();
        match edit {
            Edit::Drop(at) => drop(lines.remove(at.index(count))),
            Edit::Double(at) => lines.insert(at.index(count), lines[at.index(count)].clone()),
            Edit::Swap(a, b) => lines.swap(a.index(count), b.index(count)),
            Edit::Remove(at) | Edit::Insert(at, _) => {
                let joined = lines.join("\n");
                let mut chars: Vec<char> = joined.chars().collect();
                let place = at.index(chars.len() + 1);
                match edit {
                    Edit::Insert(_, what) => chars.splice(place..place, what.chars()).for_each(drop),
                    _ => drop((place < chars.len()).then(|| chars.remove(place))),
                }
                lines = chars.into_iter().collect::<String>().lines().map(str::to_owned).collect();
            }
            Edit::Value(at, value) => {
                let keys: Vec<usize> = (0..count).filter(|i| lines[*i].contains('=')).collect();
                if let Some(line) = keys.get(at.index(keys.len().max(1))) {
                    let key = lines[*line].split('=').next().unwrap_or_default().to_owned();
                    lines[*line] = format!("{key}= {value}");
                }
            }
        }
    }
    lines.join("\n")
}
