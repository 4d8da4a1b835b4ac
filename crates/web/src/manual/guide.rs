//! The guide: what a package holds, and how the program is built, corrected and added to.

use super::{Shelf, Ways, markdown};
use maud::{Markup, html};
use stillrise_documents::papers::ALL;
use stillrise_handbook::manual::search::{Entry, Kind};

/// How it is corrected and added to, as it stands in the tree.
pub const CONTRIBUTING: &str = include_str!("../../../../CONTRIBUTING.md");
const ARCHITECTURE: &str = include_str!("../../../../ARCHITECTURE.md");

/// A page of the guide.
pub(super) struct Page {
    /// Its id.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// The file of the tree that it shows, and its text; empty where it shows none.
    file: (&'static str, &'static str),
    /// What it says.
    pub body: fn(Ways) -> Markup,
}

/// All of them.
pub(super) static PAGES: [Page; 3] = [
    Page { id: "documents", title: "Documents of a package", file: ("", ""), body: documents },
    Page {
        id: "contributing",
        title: "To correct it and to add to it, with pictures",
        file: ("CONTRIBUTING.md", CONTRIBUTING),
        body: |ways| markdown::page(CONTRIBUTING, ways),
    },
    Page {
        id: "architecture",
        title: "How it is built",
        file: ("ARCHITECTURE.md", ARCHITECTURE),
        body: |ways| markdown::page(ARCHITECTURE, ways),
    },
];

/// The page that shows a file of the tree.
pub(super) fn page_of(path: &str) -> Option<&'static str> {
    PAGES.iter().find(|page| !path.is_empty() && page.file.0 == path).map(|page| page.id)
}

/// The file in which something is corrected, and the way to how.
pub(super) fn to_correct(file: &str, section: &str, ways: Ways) -> Markup {
    html! { p.small { "To correct it: " code { (file) } "; " a href=(ways.at(Shelf::Guide, "contributing", section)) { "how" } "." } }
}

/// The way to how one is added.
pub(super) fn how(section: &str, ways: Ways) -> Markup {
    html! { p.small { a href=(ways.at(Shelf::Guide, "contributing", section)) { "To correct it, or to add another" } } }
}

/// The pages as a search finds them, by their headings.
pub(super) fn entries() -> Vec<Entry> {
    let papers = ALL.iter().map(|paper| Entry {
        kind: Kind::Guide,
        id: format!("documents/{}", paper.name),
        title: paper.title.to_owned(),
        keys: paper.name.to_owned(),
        text: paper.about.to_owned(),
    });
    let parts = PAGES.iter().flat_map(|page| {
        markdown::parts(page.file.1).into_iter().map(|part| Entry {
            kind: Kind::Guide,
            id: if part.level == 1 { page.id.to_owned() } else { format!("{}/{}", page.id, part.anchor) },
            title: part.title,
            keys: String::new(),
            text: part.text,
        })
    });
    papers.chain(parts).collect()
}

/// Files of a package beside its papers: name, what it is, whether the client gets it.
const OTHERS: [(&str, &str, bool); 9] = [
    ("drawings.pdf", "all drawing sheets at their true size", true),
    ("drawings/1-general-arrangement.svg", "each sheet as a picture", true),
    ("drawings/1-general-arrangement.dxf", "each sheet for drafting programs", true),
    ("model.glb", "the unit in space", true),
    ("schedules.xlsx", "parts, connections, levels and results as a workbook", true),
    ("charts/ladder.svg", "each chart as a picture, once the spread was studied", false),
    ("data/trail.txt", "every value with where it comes from", false),
    ("data/result.json", "the result for programs", false),
    ("manifest.json", "all files with their hashes", true),
];

fn documents(_: Ways) -> Markup {
    html! {
        h1 { "Documents of a package" }
        p { code { "stillrise submittal ENQUIRY --for client" } " writes them; for an authority " code { "--for regulator" } ", for ourselves " code { "--for us" } ". A paper is left out where the job has nothing to say in it." }
        h2 { "Papers" }
        div.scroll { table.list {
            thead { tr { th scope="col" { "Paper" } th scope="col" { "What it is for" } th scope="col" { "Who gets it" } } }
            tbody { @for paper in ALL { tr #(paper.name) {
                th scope="row" { (paper.title) " " span.small { code { (paper.name) ".pdf" } } }
                td { (paper.about) }
                td { (paper.editions.iter().map(|edition| edition.word()).collect::<Vec<_>>().join(", ")) }
            } } }
        } }
        h2 { "Files beside them" }
        div.scroll { table.list {
            thead { tr { th scope="col" { "File" } th scope="col" { "What it is" } th scope="col" { "Who gets it" } } }
            tbody { @for (name, about, client) in OTHERS { tr {
                th scope="row" { code { (name) } } td { (about) } td { @if client { "client, regulator, us" } @else { "regulator, us" } }
            } } }
        } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What the page lists is in the accepted package of a worked job.
    #[test]
    fn files_that_are_listed_are_made() {
        let accepted = include_str!("../../../../enquiries/vehicle-yard/accepted/hashes.txt");
        for (name, ..) in OTHERS.iter().filter(|(name, ..)| *name != "manifest.json") {
            assert!(accepted.lines().any(|line| line.ends_with(&format!("  {name}"))), "{name}");
        }
    }

    #[test]
    fn ways_to_sections_lead_to_headings() {
        let anchors: Vec<String> = markdown::parts(CONTRIBUTING).into_iter().map(|part| part.anchor).collect();
        for section in [
            "correct-a-formula",
            "add-a-key",
            "add-an-oil",
            "add-a-rule",
            "add-an-authoritys-method",
            "add-a-cause-of-trouble",
        ] {
            assert!(anchors.iter().any(|anchor| anchor == section), "{section}: {anchors:?}");
        }
    }
}
