//! What a search of the manual finds: formulas, data and rules, and what this room knows besides.

use super::{Shelf, Ways, guide, keys, method, words};
use crate::pages::sheet::encoded;
use std::sync::LazyLock;
use stillrise_design::enquiry::blocks::Regulator;
use stillrise_design::enquiry::spec::without_options;
use stillrise_design::regulation::about;
use stillrise_handbook::manual::search::{Entry, Hit, Index, Kind};
use stillrise_search::diagnosis::causes::CAUSES;

static INDEX: LazyLock<Index> = LazyLock::new(|| Index::new(entries()));

/// What fits a query, the best first.
#[must_use]
pub fn search(query: &str) -> Vec<Hit<'static>> {
    INDEX.search(query)
}

/// Where an entry leads.
#[must_use]
pub fn address(entry: &Entry, ways: Ways) -> String {
    let (first, rest) = entry.id.split_once('/').unwrap_or((&entry.id, ""));
    match entry.kind {
        Kind::Formula => ways.to(Shelf::Formula, &entry.id),
        Kind::Rule => ways.to(Shelf::Rule, &entry.id),
        Kind::Method => ways.to(Shelf::Method, &entry.id),
        Kind::Cause => ways.to(Shelf::Cause, &entry.id),
        Kind::Data if first == "oils" => ways.to(Shelf::Oil, rest),
        Kind::Data => ways.at(Shelf::Data, first, &encoded(rest)),
        Kind::Key => ways.at(Shelf::Keys, first, rest),
        Kind::Word => ways.at(Shelf::Words, words::WORD, &encoded(&entry.id)),
        Kind::Guide if rest.is_empty() => ways.to(Shelf::Guide, first),
        Kind::Guide => ways.at(Shelf::Guide, first, rest),
    }
}

/// All that can be found. Rows of the table of oils lead to the pages of the oils.
pub(super) fn entries() -> Vec<Entry> {
    let mut all = stillrise_checks::manual::entries();
    all.extend(Regulator::ALL.iter().map(|m| Entry {
        kind: Kind::Method,
        id: m.word().to_owned(),
        title: method::title(*m).to_owned(),
        keys: m.meaning().to_owned(),
        text: about::leaves_out(*m).join(" "),
    }));
    all.extend(keys::blocks().flat_map(|block| {
        let place = block.id();
        let title = block.title();
        let of_key = move |(name, key): (String, &'static stillrise_design::enquiry::keys::KeySpec)| {
            let asked = key.questions().map(without_options);
            let text: Vec<String> = asked.chain(key.stands_in()).collect();
            Entry {
                kind: Kind::Key,
                id: format!("{place}/{name}"),
                title: format!("{title}.{name}"),
                keys: key.doc.to_owned(),
                text: text.join(" "),
            }
        };
        let whole = Entry {
            kind: Kind::Key,
            id: format!("{}/", block.id()),
            title: block.title(),
            keys: block.about().to_owned(),
            text: String::new(),
        };
        core::iter::once(whole).chain(block.keys().into_iter().map(of_key)).collect::<Vec<_>>()
    }));
    all.extend(CAUSES.iter().map(|cause| Entry {
        kind: Kind::Cause,
        id: cause.id.word().to_owned(),
        title: cause.title.to_owned(),
        keys: String::new(),
        text: [cause.how, cause.test, cause.remedy].join(" "),
    }));
    all.extend(guide::entries());
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every shelf is searched, and what is found stands where it is said to.
    #[test]
    fn every_shelf_is_found() {
        for (query, kind, at) in [
            ("stokes-rise", Kind::Formula, "/manual/formula/stokes-rise"),
            ("gap-not-laminar", Kind::Rule, "/manual/rule/gap-not-laminar"),
            ("residence time", Kind::Method, "/manual/method/residence-time"),
            ("sae 40", Kind::Data, "/manual/oil/sae-40"),
            ("sludge has filled hopper", Kind::Cause, "/manual/cause/blocked-plates"),
            ("curve number of the area", Kind::Key, "/manual/keys/enquiry-regulation#curve_number"),
            ("surface loading", Kind::Word, "/manual/words/words#surface-loading"),
            ("add a vessel type", Kind::Guide, "/manual/guide/contributing#add-a-vessel-type"),
        ] {
            let hits = search(query);
            let found =
                hits.iter().take(5).find(|hit| hit.entry.kind == kind && address(hit.entry, Ways::Served) == at);
            let shown: Vec<String> = hits.iter().take(5).map(|hit| address(hit.entry, Ways::Served)).collect();
            assert!(found.is_some(), "{query}: {shown:?}");
        }
    }
}
