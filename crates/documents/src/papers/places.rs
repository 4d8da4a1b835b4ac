//! On which page of which paper something stands, as far as the papers are typeset.

use super::Paper;
use crate::render::pdf::Place;
use std::collections::BTreeMap;

/// The places of the papers that are typeset.
#[derive(Debug, Default)]
pub(crate) struct Places {
    papers: BTreeMap<&'static str, (&'static str, Vec<Place>)>,
}

/// A place, as it is told and as a reader gets there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Found {
    /// `Calculation report, page 12`.
    pub(crate) says: String,
    /// The file and its page.
    pub(crate) link: String,
}

impl Places {
    /// Takes up the places of a paper.
    pub(super) fn learn(&mut self, paper: &Paper, places: &[Place]) {
        self.papers.insert(paper.name, (paper.title, places.to_vec()));
    }
    /// Whether a paper is typeset.
    pub(super) fn knows(&self, paper: &str) -> bool {
        self.papers.contains_key(paper)
    }
    /// Where something stands in a paper: under a heading of these words, or where a mark was set.
    pub(crate) fn find(&self, paper: &str, what: &str) -> Option<Found> {
        let (title, places) = self.papers.get(paper)?;
        let page = places.iter().find(|place| place.what == what)?.page;
        Some(Found { says: format!("{title}, page {page}"), link: format!("{paper}.pdf#page={page}") })
    }
}

/// The mark of a rule: where a paper tells what became of it.
pub(crate) fn of_rule(id: &str) -> String {
    format!("rule {id}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_told_by_paper_and_page() {
        let mut places = Places::default();
        let paper = super::super::named("calculation-report").expect("a paper");
        assert!(!places.knows(paper.name));
        places.learn(
            paper,
            &[Place { what: of_rule("a"), page: 3, down: 0.5 }, Place { what: of_rule("a"), page: 7, down: 0.5 }],
        );
        let found = places.find(paper.name, "rule a").expect("a place");
        assert_eq!(found.says, "Calculation report, page 3");
        assert_eq!(found.link, "calculation-report.pdf#page=3");
        assert_eq!(places.find(paper.name, "rule b"), None);
    }
}
