//! Pages and rules are listed: a file with the head line of one is named in its folder's list.

use super::source::{code, is_word, places};
use super::{Fault, File, Look, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "registered",
    holds: "every formula page and every rule file is listed in its folder's mod.rs",
    look: Look::Tree(look),
};

/// Head line of a formula page.
const FORMULA: &str = "//! Formula:";
/// Head line of a rule page.
const CHECK: &str = "//! Rule:";

/// Faults in the whole tree.
#[must_use]
pub fn look(files: &[File]) -> Vec<Fault> {
    files.iter().filter_map(|file| page(file, files)).collect()
}

fn page(file: &File, files: &[File]) -> Option<Fault> {
    let folder = file.path.strip_suffix(".rs")?;
    let (folder, stem) = folder.rsplit_once('/')?;
    let (room, head) = [("crates/handbook/src/", FORMULA), ("crates/checks/src/", CHECK)]
        .into_iter()
        .find(|(room, _)| file.path.starts_with(room))?;
    if !file.text.starts_with(head) {
        // A page that loses its head line would otherwise leave this rule's sight.
        let is_page = head == FORMULA && code(&file.text).lines().any(|l| l.starts_with("formula! {"));
        return is_page.then(|| Fault::new(&file.path, 1, format!("a formula page begins with `{FORMULA} title`")));
    }
    let list = [format!("{folder}/mod.rs"), format!("{folder}.rs"), format!("{room}lib.rs")]
        .iter()
        .find_map(|path| files.iter().find(|f| f.path == *path))?;
    let message = || Fault::new(&file.path, 1, format!("not listed in {}, so nothing runs it", list.path));
    (!is_listed(&list.text, stem)).then(message)
}

/// True when the list names the module other than by declaring or re-exporting it.
fn is_listed(list: &str, stem: &str) -> bool {
    let code = code(list);
    places(&code, stem).any(|at| {
        let line = &code[code[..at].rfind('\n').map_or(0, |n| n + 1)..at];
        let words: Vec<&str> = line.split(|c| !is_word(c)).filter(|w| !w.is_empty()).collect();
        words.last() != Some(&"mod") && !words.contains(&"use")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn faults(list: &str, head: &str) -> usize {
        let files = [
            File::new("crates/handbook/src/rain/mod.rs", list),
            File::new("crates/handbook/src/rain/peak_flow.rs", head),
        ];
        look(&files).len()
    }

    #[test]
    fn an_unlisted_page_is_found() {
        assert_eq!(faults("crate::list_pages! {\n    other,\n}", "//! Formula: peak flow"), 1);
        assert_eq!(faults("pub mod peak_flow;\npub use peak_flow::flow;\n", "//! Formula: peak flow"), 1);
        assert_eq!(faults("crate::list_pages! {\n    // peak_flow,\n}", "//! Formula: peak flow"), 1);
        assert_eq!(
            faults("crate::list_pages! {\n    peak_flow,\n}", "//! Peak flow\nformula! {\n}"),
            1,
            "head line lost"
        );
    }

    #[test]
    fn a_listed_page_passes() {
        assert_eq!(faults("crate::list_pages! {\n    peak_flow,\n}", "//! Formula: peak flow"), 0);
        assert_eq!(faults("", "//! Helpers of the pages here"), 0);
    }

    #[test]
    fn rules_are_held_to_the_same() {
        let file = File::new("crates/checks/src/levels/alarm_high.rs", "//! Rule: the alarm stands too high");
        let list = |text: &str| look(&[File::new("crates/checks/src/levels/mod.rs", text), file.clone()]).len();
        assert_eq!(list("mod alarm_high;\npub const ALL: &[Rule] = &[];"), 1);
        assert_eq!(list("mod alarm_high;\npub const ALL: &[Rule] = &[alarm_high::RULE];"), 0);
    }
}
