//! What a person does to an enquiry, one action at a time.

use crate::block::{add_block, decide, remove_block, undecide};
use crate::claim::{choose, claim, withdraw};
use crate::heading::Heading;
use crate::path::Path;
use crate::set::set;
use crate::tree;
use crate::unset::unset;
use stillrise_units::Fault;

/// One change of an enquiry. Values are texts as a person types them: `120 gpm`, `yes`, `20 um: 5 %; 60 um: 40 %`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Action {
    /// Writes the value of a key in place of all that was claimed on it. Block and table are made where they do not
    /// stand, but for a block of which there may be several.
    ///
    /// The value that stands already changes nothing, unless `from` says otherwise. Another one, where a single claim
    /// stood, keeps what that said of its range (`low`, `high`, `distribution`); `from` is written anew or goes, and
    /// `chosen` and `because` go, for they spoke of the value before. Where one of several claims says the value, it
    /// stays as it is and the others go; comments in them stand above the line of the key from then on.
    Set {
        /// The key.
        path: Path,
        /// The value. Lists are parted by semicolons or lines, texts by commas too.
        value: String,
        /// Who or what says so. Of a value that stands already, none leaves its source as it is and a blank one takes
        /// it out.
        from: Option<String>,
    },
    /// Adds a claim beside those that stand.
    Claim {
        /// The key.
        path: Path,
        /// The value.
        value: String,
        /// Who or what says so.
        from: Option<String>,
    },
    /// Marks one of several claims as the one that is designed for, and no other.
    Choose {
        /// The key.
        path: Path,
        /// Which claim, in the order of the file, from 0.
        nth: usize,
        /// Why; may be empty.
        because: String,
    },
    /// Takes a claim out; with the last one the key goes.
    Withdraw {
        /// The key.
        path: Path,
        /// Which claim, in the order of the file, from 0.
        nth: usize,
    },
    /// Takes a key out, with the table and the block that it leaves empty; one of several blocks stays. The comment
    /// behind it on its line goes too; those on lines of their own stay.
    Unset {
        /// The key.
        path: Path,
    },
    /// Adds a block behind the last of its kind, or where the order of the blocks has it.
    AddBlock {
        /// What it is called in the file: `stream`.
        block: String,
        /// Its keys, as they are called in it (`oil.mean`), and their values.
        keys: Vec<(String, String)>,
    },
    /// Takes a block out with all that stands in it and the comments right above it.
    RemoveBlock {
        /// The block.
        heading: Heading,
    },
    /// Writes what was decided on a rule, in place of what was decided before.
    Decide {
        /// The rule.
        rule: String,
        /// `accepted`, `by others` or `open`.
        decision: String,
        /// Why.
        because: String,
        /// Who.
        who: Option<String>,
        /// On which day, as he states it.
        date: Option<String>,
    },
    /// Takes the decision on a rule back.
    Undecide {
        /// The rule.
        rule: String,
    },
}

/// The text with a change made. Whatever it does not concern keeps its bytes: comments, order, blanks and line breaks.
///
/// # Errors The text is no TOML, there is no such place in it, or the change cannot be made there. What the value says
/// is not judged: that is for the reader of the enquiry.
pub fn apply(text: &str, action: &Action) -> Result<String, Fault> {
    let out = match action {
        Action::Set { path, value, from } => set(text, path, value, from.as_deref()),
        Action::Claim { path, value, from } => claim(text, path, value, from.as_deref()),
        Action::Choose { path, nth, because } => choose(text, path, *nth, because),
        Action::Withdraw { path, nth } => withdraw(text, path, *nth),
        Action::Unset { path } => unset(text, path),
        Action::AddBlock { block, keys } => add_block(text, block, keys),
        Action::RemoveBlock { heading } => remove_block(text, heading),
        Action::Decide { rule, decision, because, who, date } => {
            decide(text, rule, decision, because, who.as_deref(), date.as_deref())
        }
        Action::Undecide { rule } => undecide(text, rule),
    }?;
    // Whatever layout the text has, what comes out can be read again or the text stays as it was.
    if out == text {
        return Ok(out);
    }
    match tree::read(&out) {
        Ok(_) => Ok(out),
        Err(_) => Err(Fault::new(action.says(), "cannot be written in the layout of this text", "write it by hand")),
    }
}

impl Action {
    /// What it does, in a phrase for a list of steps: `set water.coldest to 45 °F`.
    #[must_use]
    pub fn says(&self) -> String {
        let source = |from: &Option<String>| from.as_ref().map_or_else(String::new, |f| format!(", from {}", brief(f)));
        let why =
            |text: &str| if text.trim().is_empty() { String::new() } else { format!(", because {}", brief(text)) };
        match self {
            Self::Set { path, value, from } => format!("set {path} to {}{}", brief(value), source(from)),
            Self::Claim { path, value, from } => format!("noted {} for {path}{}", brief(value), source(from)),
            Self::Choose { path, nth, because } => {
                format!("chose claim {} on {path}{}", nth.saturating_add(1), why(because))
            }
            Self::Withdraw { path, nth } => format!("withdrew claim {} on {path}", nth.saturating_add(1)),
            Self::Unset { path } => format!("cleared {path}"),
            Self::AddBlock { block, keys } => match keys.first() {
                Some((_, value)) => format!("added {block} \"{}\"", brief(value)),
                None => format!("added {block}"),
            },
            Self::RemoveBlock { heading } => format!("removed {heading}"),
            Self::Decide { rule, decision, because, who, .. } => {
                let who = who.as_ref().map_or_else(String::new, |who| format!(", by {}", brief(who)));
                format!("decided on {}: {}{}{who}", brief(rule), brief(decision), why(because))
            }
            Self::Undecide { rule } => format!("took back the decision on {}", brief(rule)),
        }
    }
}

/// A text in one line, cut where it is long.
fn brief(text: &str) -> String {
    const MOST: usize = 60;
    let plain = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let plain: String = plain.chars().filter(|c| !c.is_control()).collect();
    match plain.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}..", plain[..end].trim_end()),
        None => plain,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_action_says_what_it_does() -> Result<(), Fault> {
        let path: Path = "water.coldest".parse()?;
        let set = |value: &str, from: Option<&str>| {
            Action::Set { path: path.clone(), value: value.to_owned(), from: from.map(str::to_owned) }.says()
        };
        assert_eq!(set("45 °F", None), "set water.coldest to 45 °F");
        assert_eq!(set("4\n5", Some("mail: \"cold\"")), "set water.coldest to 4 5, from mail: \"cold\"");
        assert_eq!(set(&"é".repeat(100), None).chars().count(), "set water.coldest to ..".len() + 60);
        let choose = Action::Choose { path: path.clone(), nth: usize::MAX, because: " ".to_owned() };
        assert!(choose.says().starts_with("chose claim "));
        Ok(())
    }
}
