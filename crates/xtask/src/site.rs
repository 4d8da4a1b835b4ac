//! The manual as a folder: every way in it leads somewhere, every page is reached, nothing is loaded from elsewhere.

use crate::tree::File;
use std::collections::{BTreeMap, BTreeSet};

/// The page from which all others are reached.
pub const HOME: &str = "index.html";
/// What a search looks through: a list for each entry, a line each.
pub const INDEX: &str = "assets/index.js";
/// Folders with the least number of pages that each must hold.
pub const LEAST: &[(&str, usize)] = &[
    ("formula", 200),
    ("rule", 85),
    ("oil", 20),
    ("method", 12),
    ("keys", 20),
    ("cause", 15),
    ("words", 2),
    ("data", 10),
    ("guide", 3),
];

/// All that is wrong, and how many links were followed.
#[must_use]
pub fn check(files: &[File]) -> (Vec<String>, usize) {
    let by_name: BTreeMap<&str, &File> = files.iter().map(|file| (file.path.as_str(), file)).collect();
    let ids: BTreeMap<&str, Vec<&str>> =
        pages(files).map(|page| (page.path.as_str(), values(&page.text, "id"))).collect();
    let mut faults = Vec::new();
    let mut count = 0;
    let mut leads: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    let mut follow = |from: &str, link: &str, faults: &mut Vec<String>| -> Option<String> {
        count += 1;
        let (path, place) = link.split_once('#').unwrap_or((link, ""));
        if path.contains(':') || path.starts_with('/') {
            faults.push(format!("{from}: `{link}` leads out of the folder"));
            return None;
        }
        let Some(target) = resolved(from, path) else {
            faults.push(format!("{from}: `{link}` leads above the folder"));
            return None;
        };
        if !by_name.contains_key(target.as_str()) {
            faults.push(format!("{from}: `{link}`: there is no {target}"));
            return None;
        }
        if !place.is_empty() && !ids.get(target.as_str()).is_some_and(|ids| ids.contains(&place)) {
            faults.push(format!("{from}: `{link}`: {target} has no such place"));
        }
        Some(target)
    };
    for page in pages(files) {
        for link in values(&page.text, "href").into_iter().chain(values(&page.text, "src")) {
            let target = follow(&page.path, &unescaped(link), &mut faults);
            leads.entry(&page.path).or_default().extend(target);
        }
        for form in values(&page.text, "action") {
            follow(&page.path, &unescaped(form), &mut faults);
        }
        let own = ids.get(page.path.as_str()).map_or(&[][..], Vec::as_slice);
        let mut seen = BTreeSet::new();
        faults.extend(own.iter().filter(|id| !seen.insert(**id)).map(|id| format!("{}: two places `{id}`", page.path)));
        for (what, mark) in
            [("a title", "<title>"), ("a main part", " id=\"main\""), ("cautions", "class=\"cautions\"")]
        {
            if !page.text.contains(mark) {
                faults.push(format!("{}: has no {what}", page.path));
            }
        }
    }
    let entries = by_name.get(INDEX).map_or("", |file| file.text.as_str());
    for line in entries.lines().filter(|line| line.starts_with("[\"")) {
        let entry: Result<Vec<String>, _> = serde_json::from_str(line.trim_end_matches(','));
        match entry.as_deref() {
            Ok([_, _, at, _, _]) => drop(follow(HOME, at, &mut faults)),
            _ => faults.push(format!("{INDEX}: `{line}` is no entry")),
        }
    }
    faults.extend(orphans(files, &leads));
    for (folder, least) in LEAST {
        let there = pages(files).filter(|page| page.path.starts_with(&format!("{folder}/"))).count();
        if there < *least {
            faults.push(format!("{folder}/: {there} pages, fewer than {least}"));
        }
    }
    (faults, count)
}

fn pages(files: &[File]) -> impl Iterator<Item = &File> {
    files.iter().filter(|file| file.path.ends_with(".html"))
}

/// Pages that nobody reaches from the first.
fn orphans(files: &[File], leads: &BTreeMap<&str, BTreeSet<String>>) -> Vec<String> {
    let mut reached: BTreeSet<&str> = BTreeSet::from([HOME]);
    let mut open = vec![HOME];
    while let Some(page) = open.pop() {
        for target in leads.get(page).into_iter().flatten() {
            if reached.insert(target) {
                open.push(target);
            }
        }
    }
    let lost = pages(files).filter(|page| !reached.contains(page.path.as_str()));
    lost.map(|page| format!("{}: no way leads to it", page.path)).collect()
}

/// Values of an attribute. Text holds no quotes of this kind: they are escaped.
fn values<'a>(text: &'a str, name: &str) -> Vec<&'a str> {
    let open = format!(" {name}=\"");
    text.match_indices(&open).filter_map(|(at, _)| text[at + open.len()..].split('"').next()).collect()
}

fn unescaped(link: &str) -> String {
    link.replace("&quot;", "\"").replace("&#39;", "'").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
}

/// The file that a path leads to from a page; nothing above the folder.
fn resolved(from: &str, path: &str) -> Option<String> {
    if path.is_empty() {
        return Some(from.to_owned());
    }
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in path.split('/') {
        match part {
            "." => {}
            ".." => drop(parts.pop()?),
            part => parts.push(part),
        }
    }
    Some(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: &str = "<title>t</title><main id=\"main\"><footer class=\"cautions\">";

    /// A small manual that is in order but for its numbers, with one page changed.
    fn faults(page: &str) -> Vec<String> {
        let files = [
            File::new("index.html", &format!("{FRAME}<a href=\"rule/a.html#here\">a</a><a href=\"rule/b.html\">b</a>")),
            File::new("rule/a.html", &format!("{FRAME}<p id=\"here\"></p>{page}")),
            File::new("rule/b.html", &format!("{FRAME}<a href=\"../index.html\">home</a>")),
            File::new("assets/index.js", "window.entries = [\n[\"rule\",\"A\",\"rule/a.html#here\",\"\",\"\"]\n];\n"),
        ];
        check(&files).0.into_iter().filter(|fault| !fault.contains("fewer than")).collect()
    }

    #[test]
    fn what_is_in_order_passes() {
        assert_eq!(faults("<a href=\"b.html\">b</a> <a href=\"#here\">here</a>"), Vec::<String>::new());
        assert!(check(&[]).0.iter().any(|fault| fault.contains("formula/: 0 pages")));
    }

    #[test]
    fn every_kind_of_fault_is_found() {
        for (page, told) in [
            ("<a href=\"c.html\">", "there is no rule/c.html"),
            ("<a href=\"b.html#there\">", "has no such place"),
            ("<a href=\"../../x.html\">", "above the folder"),
            ("<img src=\"https://example.org/x.png\">", "out of the folder"),
            ("<a href=\"/manual\">", "out of the folder"),
            ("<p id=\"here\">", "two places `here`"),
            ("<form action=\"find.html\">", "there is no rule/find.html"),
        ] {
            let found = faults(page);
            assert!(found.len() == 1 && found[0].contains(told), "{page}: {found:?}");
        }
        let lost = [File::new("index.html", FRAME), File::new("rule/a.html", FRAME)];
        assert!(check(&lost).0.contains(&"rule/a.html: no way leads to it".to_owned()));
        let bare = check(&[File::new("index.html", "")]).0;
        assert!(["title", "main part", "cautions"].iter().all(|w| bare.iter().any(|f| f.contains(w))), "{bare:?}");
        let odd = check(&[File::new("index.html", FRAME), File::new(INDEX, "[\"x\"],")]).0;
        assert!(odd.iter().any(|fault| fault.contains("is no entry")));
    }
}
