//! Papers: every worked job has its accepted outputs, every decision its title.

use super::{Fault, File, Look, Rule};
use std::collections::BTreeSet;

/// The rule.
pub const RULE: Rule = Rule {
    name: "papers",
    holds: "every worked job has an enquiry and accepted outputs, every decision begins with a title",
    look: Look::Tree(look),
};

/// The accepted outputs of a worked job: what the terminal says, in parts; the trail as a line for each of its sections; every
/// text of the drawing set; a hash of every file of the package.
pub const ACCEPTED: &[&str] = &["size.txt", "size-2.txt", "size-3.txt", "trail.txt", "drawings.txt", "hashes.txt"];
/// None is larger, bytes: a difference is read by a person.
pub const LARGEST: usize = 20 * 1024;

/// Faults in the whole tree.
#[must_use]
pub fn look(files: &[File]) -> Vec<Fault> {
    let mut faults = jobs(files);
    let accepted = files.iter().filter(|f| f.path.starts_with("enquiries/") && f.path.contains("/accepted/"));
    faults.extend(
        accepted
            .filter(|f| f.text.len() > LARGEST)
            .map(|f| Fault::new(&f.path, 0, "larger than 20 KiB: a difference in it is read by nobody")),
    );
    faults.extend(files.iter().filter_map(|f| decision(&f.path, &f.text)));
    faults
}

/// Accepted outputs are asked for as soon as one job has some: before that there is no program.
fn jobs(files: &[File]) -> Vec<Fault> {
    let inside = || files.iter().filter_map(|f| f.path.strip_prefix("enquiries/")?.split_once('/'));
    let folders: BTreeSet<&str> = inside().map(|(job, _)| job).collect();
    let present: BTreeSet<(&str, &str)> = inside().collect();
    let begun = inside().any(|(_, file)| file.starts_with("accepted/"));
    let mut faults = Vec::new();
    for job in folders {
        let wanted = ACCEPTED.iter().map(|name| format!("accepted/{name}")).filter(|_| begun);
        for file in wanted.chain(["enquiry.toml".to_owned()]) {
            if !present.contains(&(job, file.as_str())) {
                faults.push(Fault::new(&format!("enquiries/{job}/{file}"), 0, "missing; see `cargo xtask bless`"));
            }
        }
    }
    faults
}

fn decision(path: &str, text: &str) -> Option<Fault> {
    let name = path.strip_prefix("docs/decisions/")?;
    let titled = text.lines().next().is_some_and(|l| l.starts_with("# ") && l.trim().len() > 2);
    (name.ends_with(".md") && !titled).then(|| Fault::new(path, 1, "a decision begins with `# title`"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn accepted(job: &str) -> Vec<File> {
        let mut files = vec![File::new(&format!("enquiries/{job}/enquiry.toml"), "")];
        files.extend(ACCEPTED.iter().map(|a| File::new(&format!("enquiries/{job}/accepted/{a}"), "")));
        files
    }

    #[test]
    fn a_job_without_outputs_is_found_once_another_has_some() {
        let bare = File::new("enquiries/yard/enquiry.toml", "");
        assert_eq!(look(std::slice::from_ref(&bare)), [], "none has any");
        let mut files = accepted("depot");
        assert_eq!(look(&files), []);
        files.push(bare);
        assert_eq!(look(&files).len(), ACCEPTED.len());
    }

    #[test]
    fn a_job_without_an_enquiry_is_found() {
        assert_eq!(look(&[File::new("enquiries/yard/rain.csv", "")]).len(), 1);
    }

    #[test]
    fn a_decision_needs_a_title() {
        assert_eq!(look(&[File::new("docs/decisions/1.md", "Some text\n# Late\n")]).len(), 1);
        assert_eq!(look(&[File::new("docs/decisions/1.md", "# Units by the compiler\n")]), []);
        assert_eq!(look(&[File::new("docs/notes.md", "Some text\n")]), []);
    }
}
