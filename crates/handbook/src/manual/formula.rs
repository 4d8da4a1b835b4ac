//! What the manual says of one formula.

use super::{Area, Variable, result, variables};
use crate::equation::{Style, page_math, stated};
use crate::evidence::{Outcome, verify_page};
use crate::page::{Evidence, Helper, Page};
use crate::{pages, read};

/// One formula, as the manual shows it.
#[derive(Debug, Clone)]
pub struct Formula {
    /// The page: id, title, sources, the file in which it is corrected.
    pub page: &'static Page,
    /// The area in which it stands.
    pub area: Option<&'static Area>,
    /// What it says, where it holds and what to mind, paragraph by paragraph. Ids of pages stand between backticks.
    pub says: Vec<String>,
    /// The equation in plain text, line by line.
    pub plain: Vec<String>,
    /// The equation in MathML: one `<math>`.
    pub math: String,
    /// The arguments, each followed by the fields that go together under it.
    pub arguments: Vec<Variable>,
    /// The result.
    pub result: Variable,
    /// Named constants of the equation: symbol and value.
    pub constants: Vec<(&'static str, f64)>,
    /// Named functions of the equation, with what they are.
    pub functions: &'static [Helper],
    /// Its check values, run now; the strongest evidence first.
    pub checks: Vec<Outcome>,
    /// Pages that it names.
    pub names: Vec<&'static Page>,
    /// Pages that name it.
    pub named_by: Vec<&'static Page>,
    /// Arguments that can be worked, of the first check: name and value.
    pub example: Vec<(&'static str, &'static str)>,
}

/// What the manual says of one formula. Runs its check values.
#[must_use]
pub fn formula(page: &'static Page) -> Formula {
    let plain = stated(page, Style::Plain).iter().map(|line| format!("{} = {}", line.symbol, line.equation)).collect();
    let mut checks = verify_page(page);
    checks.sort_by_key(|outcome| Evidence::KINDS.iter().position(|kind| *kind == outcome.kind));
    let example = page.checks.first().map(|check| read::split(check.given)).unwrap_or_default();
    Formula {
        page,
        area: Area::of(page),
        says: paragraphs(page.note),
        plain,
        math: page_math(page),
        arguments: variables(page),
        result: result(page),
        constants: page.constants.iter().map(|(_, math, value)| (*math, *value)).collect(),
        functions: page.helpers,
        checks,
        names: pages().filter(|other| *other != page && is_named(page, other)).collect(),
        named_by: pages().filter(|other| *other != page && is_named(other, page)).collect(),
        example: example.into_iter().filter_map(|given| given.split_once('=')).collect(),
    }
}

/// Whether a page's text names another page.
fn is_named(page: &Page, other: &Page) -> bool {
    page.note.contains(&format!("`{}`", other.id))
}

/// Paragraphs of a doc comment, each in one line.
#[must_use]
pub fn paragraphs(note: &str) -> Vec<String> {
    let mut found = vec![String::new()];
    for line in note.lines().map(str::trim) {
        match (line.is_empty(), found.last_mut()) {
            (false, Some(last)) if last.is_empty() => last.push_str(line),
            (false, Some(last)) => {
                last.push(' ');
                last.push_str(line);
            }
            _ => found.push(String::new()),
        }
    }
    found.retain(|text| !text.is_empty());
    found
}
