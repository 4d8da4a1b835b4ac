//! Links: what the project's front pages point at exists.

use super::{Fault, File, Look, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "links",
    holds: "every link of README, ARCHITECTURE and CONTRIBUTING to a file or heading leads somewhere",
    look: Look::Tree(look),
};

const PAGES: &[&str] = &["README.md", "ARCHITECTURE.md", "CONTRIBUTING.md"];

/// Faults in the front pages.
#[must_use]
pub fn look(files: &[File]) -> Vec<Fault> {
    let pages = files.iter().filter(|f| PAGES.contains(&f.path.as_str()));
    pages.flat_map(|page| page_faults(page, files)).collect()
}

fn page_faults(page: &File, files: &[File]) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut fenced = false;
    for (n, line) in page.text.lines().enumerate() {
        fenced ^= line.trim_start().starts_with("```");
        for target in targets(line).into_iter().filter(|_| !fenced) {
            if target.contains("://") || target.starts_with("mailto:") {
                continue;
            }
            let (path, heading) = target.split_once('#').unwrap_or((target, ""));
            let path = path.trim_start_matches("./").trim_end_matches('/');
            let found = if path.is_empty() { Some(page) } else { files.iter().find(|f| f.path == path) };
            let folder = path.is_empty() || files.iter().any(|f| f.path.starts_with(&format!("{path}/")));
            if found.is_none() && !folder {
                faults.push(Fault::new(&page.path, n + 1, format!("`{target}` does not exist")));
            } else if !heading.is_empty() && !found.is_some_and(|f| has_heading(&f.text, heading)) {
                faults.push(Fault::new(&page.path, n + 1, format!("`{target}` names no heading")));
            }
        }
    }
    faults
}

/// Targets of `[text](target)` and `[name]: target` on a line, code spans left out.
fn targets(line: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut from = 0;
    while let Some(at) = line[from..].find("](").map(|at| from + at + 2) {
        let in_code = line[..at].matches('`').count() % 2 == 1;
        let end = line[at..].find(')').map_or(line.len(), |e| at + e);
        if !in_code {
            found.extend(line[at..end].split_whitespace().next());
        }
        from = end;
    }
    if let Some((_, target)) = line.split_once("]: ").filter(|_| line.starts_with('[')) {
        found.extend(target.split_whitespace().next());
    }
    found
}

/// Headings become anchors in lower case, blanks as dashes, other marks dropped.
fn has_heading(text: &str, anchor: &str) -> bool {
    text.lines().filter(|l| l.starts_with('#')).any(|line| {
        let title = line.trim_start_matches('#').trim().to_lowercase();
        let made: String = title
            .chars()
            .filter(|c| c.is_alphanumeric() || matches!(c, ' ' | '-' | '_'))
            .map(|c| if c == ' ' { '-' } else { c })
            .collect();
        made == anchor
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn faults(text: &str) -> usize {
        look(&[File::new("README.md", text), File::new("docs/a.md", "# One, two\n"), File::new("LICENSE-MIT", "")])
            .len()
    }

    #[test]
    fn dead_links_are_found() {
        assert_eq!(faults("see [a](docs/b.md) and [c](LICENSE)"), 2);
        assert_eq!(faults("[a]: docs/b.md"), 1);
        assert_eq!(faults("[a](docs/a.md#three) [b](#nowhere)"), 2);
    }

    #[test]
    fn live_links_pass() {
        assert_eq!(faults("# Top\n[a](docs/a.md#one-two) [b](./docs/) [c](LICENSE-MIT \"t\") [d](#top)"), 0);
        assert_eq!(faults("[a](https://example.org/x) [m](mailto:a@example.org)\n```\n[x](y)\n```\n`[x](y)`"), 0);
    }
}
