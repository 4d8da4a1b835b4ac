//! The rules as entries of the manual, and a search over all that it holds: formulas, published data, rules.

use crate::{RULES, Rule};
use std::sync::LazyLock;
use stillrise_handbook::manual;
use stillrise_handbook::manual::search::{Entry, Hit, Index, Kind};

static INDEX: LazyLock<Index> = LazyLock::new(|| Index::new(entries()));

/// Formulas, published data and rules as a search finds them.
#[must_use]
pub fn entries() -> Vec<Entry> {
    manual::entries().into_iter().chain(RULES.iter().map(|rule| entry(rule))).collect()
}

/// What fits a query among formulas, published data and rules, the best first; see [`manual::search`].
#[must_use]
pub fn search(query: &str) -> Vec<Hit<'static>> {
    INDEX.search(query)
}

/// A rule as a search finds it.
#[must_use]
pub fn entry(rule: &Rule) -> Entry {
    Entry {
        kind: Kind::Rule,
        id: rule.id.to_owned(),
        title: rule.title.to_owned(),
        keys: String::new(),
        text: [
            rule.client,
            &rule.looks.in_both(),
            rule.matters,
            rule.remedy,
            &rule.source.in_both(),
            &rule.limits.in_both(),
        ]
        .join(" "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rule::Prose;

    #[test]
    fn rules_are_found_by_title_and_by_what_they_say() {
        for rule in RULES {
            let hits = search(rule.title);
            assert!(hits.iter().take(3).any(|hit| hit.entry.id == rule.id), "{}: {hits:?}", rule.title);
        }
        let laminar = search("laminar gaps");
        assert!(laminar.iter().any(|hit| hit.entry.id == "gap-not-laminar"), "{laminar:?}");
    }

    /// What a rule says in US units it says in SI, and what it says without numbers it says once.
    #[test]
    fn rules_say_the_same_in_both_systems() {
        let mut told = 0;
        for rule in RULES {
            for (us, si) in [rule.looks, rule.source, rule.limits].into_iter().flat_map(Prose::pairs) {
                assert!(stillrise_units::spoken::agree(us, si), "{}: {us}, {si}", rule.id);
                told += 1;
            }
            for text in [rule.title, rule.client, rule.matters, rule.remedy] {
                assert!(stillrise_units::spoken::pairs(text).is_empty(), "{}: {text}", rule.id);
            }
        }
        assert!(told > 30, "{told}");
    }

    /// What a client is told is one sentence, short, without a number that could differ from job to job.
    #[test]
    fn a_client_is_told_a_sentence_of_each_rule() {
        for rule in RULES {
            let text = rule.client.replace("EN 858-2", "").replace("EN 858", "");
            assert!(text.ends_with('.') && text.matches(". ").count() == 0, "{}: {text}", rule.id);
            assert!(text.len() < 140 && !text.chars().any(|c| c.is_ascii_digit()), "{}: {text}", rule.id);
        }
    }

    #[test]
    fn formulas_and_data_stand_beside_the_rules() {
        let kinds = |query: &str| search(query).iter().map(|hit| hit.entry.kind).collect::<Vec<_>>();
        assert!([Kind::Formula, Kind::Data, Kind::Rule].iter().all(|kind| kinds("oil").contains(kind)));
        assert_eq!(search("stokes-rise")[0].entry.id, "stokes-rise");
    }
}
