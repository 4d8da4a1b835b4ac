//! Quantities that our own sentences tell in either system say the same in both.

use std::path::Path;
use stillrise_units::spoken::{agree, pairs};

type Outcome = Result<(), Box<dyn std::error::Error>>;

/// Every pair of a file: both ways begin with a number, which no code between braces does.
fn of_file(path: &Path, found: &mut Vec<(String, String)>) -> Outcome {
    let text = std::fs::read_to_string(path)?;
    let begins = |way: &str| way.starts_with(|c: char| c.is_ascii_digit()) && !way.contains(['"', '\n', '(']);
    let both = pairs(&text).into_iter().filter(|(us, si)| begins(us) && begins(si));
    found.extend(both.map(|(us, si)| (us.to_owned(), si.to_owned())));
    Ok(())
}

fn under(folder: &Path, found: &mut Vec<(String, String)>) -> Outcome {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            under(&path, found)?;
        } else if path.extension().is_some_and(|e| e == "rs") {
            of_file(&path, found)?;
        }
    }
    Ok(())
}

#[test]
fn defaults_and_their_sources_say_the_same_in_both_systems() -> Outcome {
    let mut found = Vec::new();
    under(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut found)?;
    assert!(found.len() > 30, "{}", found.len());
    for (us, si) in found {
        assert!(agree(&us, &si), "{us}, {si}");
    }
    Ok(())
}
