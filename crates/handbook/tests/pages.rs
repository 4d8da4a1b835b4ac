//! What every formula page must keep.

use stillrise_handbook::equation::{Style, evaluate_page, printed};
use stillrise_handbook::page::{Arg, Body, Group, Kind, Symbol};
use stillrise_handbook::{evidence, pages, read};

#[test]
fn every_check_value_agrees_within_the_digits_printed() {
    let failed: Vec<String> = evidence::verify()
        .into_iter()
        .filter(|o| !o.holds)
        .map(|o| format!("{} ({}) gave {}, {} says {}", o.page, o.given, o.obtained, o.evidence, o.expected))
        .collect();
    assert!(failed.is_empty(), "{} checks fail:\n{}", failed.len(), failed.join("\n"));
}

#[test]
fn every_page_rests_on_more_than_itself() {
    let outcomes = evidence::verify();
    let weak: Vec<_> = pages()
        .filter(|p| !outcomes.iter().any(|o| o.page == p.id && matches!(o.kind, "published" | "library" | "limit")))
        .map(|p| p.id)
        .collect();
    assert!(weak.is_empty(), "no published, library or limit check: {weak:?}");
}

#[test]
fn every_table_has_rows() {
    for table in evidence::tables() {
        assert!(!evidence::rows(table).is_empty(), "{} has no rows for {}", table.file, table.page.id);
    }
}

#[test]
fn the_id_is_the_file_stem_and_is_used_once() {
    let mut seen = std::collections::BTreeSet::new();
    for page in pages() {
        let stem = page.file.rsplit('/').next().and_then(|f| f.strip_suffix(".rs")).unwrap_or("");
        assert_eq!(page.id, stem.replace('_', "-"), "{}", page.file);
        assert!(seen.insert(page.id), "{} twice", page.id);
    }
}

/// The printed equation, evaluated, gives the function's result bit for bit, at every check.
#[test]
fn what_is_printed_is_what_ran() {
    for page in pages() {
        for args in cases(page) {
            let Ok(result) = (page.call)(&args) else { continue };
            match page.body {
                Body::Solves(..) => assert!(page.holds.is_some(), "{}", page.id),
                _ => assert_eq!(evaluate_page(page, &args).as_ref(), Some(&result), "{} {args:?}", page.id),
            }
            let lines = printed(page, &args, &result, Style::Typst);
            assert!(!lines.is_empty(), "{} cannot be printed", page.id);
            assert!(!printed(page, &args, &result, Style::Plain).is_empty());
        }
    }
}

/// Names are part of the interface: `work`, stored trails and checks speak of them.
#[test]
fn ids_and_argument_names_are_frozen() {
    let list: String =
        pages().map(|p| format!("{}({})\n", p.id, p.args.iter().map(name).collect::<Vec<_>>().join(", "))).collect();
    let accepted = include_str!("names.txt");
    for line in accepted.lines() {
        assert!(list.contains(line), "{line} was renamed or removed; see tests/names.txt");
    }
}

/// The name of an argument, with those of the fields that go together under it.
fn name(symbol: &Symbol) -> String {
    let fields = |group: &Group| group.fields.iter().map(name).collect::<Vec<_>>().join(", ");
    match symbol.kind {
        Kind::Group(group) => format!("{}({})", symbol.name, fields(group)),
        Kind::Groups(kinds) => {
            let kinds: Vec<String> = kinds.iter().map(|group| format!("{}({})", group.word, fields(group))).collect();
            format!("{}[{}]", symbol.name, kinds.join("; "))
        }
        _ => symbol.name.to_owned(),
    }
}

fn cases(page: &'static stillrise_handbook::page::Page) -> Vec<Vec<Arg>> {
    let mut texts: Vec<String> = page.checks.iter().map(|c| c.given.to_owned()).collect();
    texts.extend(evidence::tables().filter(|t| t.page == page).flat_map(evidence::rows).map(|o| o.given));
    texts.iter().filter_map(|t| read::arguments(page, &read::split(t)).ok()).collect()
}
