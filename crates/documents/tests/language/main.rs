//! What every document says, in both systems, of every worked job: units of the reader's system alone, three digits, and no word
//! that a client's engineer would stumble over.

mod digits;
mod texts;
mod units;
mod words;

use std::error::Error;
use texts::Texts;

type Outcome = Result<(), Box<dyn Error>>;

/// Worked once for all three: most of the time goes into the papers.
#[test]
fn documents_speak_one_system_in_three_digits_and_plain_words() -> Outcome {
    let all = Texts::of_all_jobs()?;
    assert!(all.sentences() > 50_000, "few sentences came up: {}", all.sentences());
    let mut found = units::of_the_other_system(&all)?;
    found.extend(digits::too_many(&all)?);
    found.extend(words::to_stumble_over(&all));
    found.extend(words::undefined(&all));
    found.extend(words::of_no_text(&all));
    assert!(found.is_empty(), "{} faults:\n{}", found.len(), found.join("\n"));
    Ok(())
}
