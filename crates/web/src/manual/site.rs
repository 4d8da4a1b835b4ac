//! The manual as a folder that opens from the disk: names and bytes. Nothing in it is loaded from elsewhere, and every way leads
//! to a file beside it.

use super::{Shelf, Ways, contents, found, pictures, shelves};
use crate::pages::{Frame, Page, cautions, framed};
use maud::{Markup, html};
use serde_json::json;

/// From a page on a shelf to the folder.
pub const UP: &str = "../";

/// All files of it, by name. The same program writes the same bytes.
#[must_use]
pub fn site() -> Vec<(String, Vec<u8>)> {
    let asset = |name: &str, text: &str| (format!("assets/{name}"), text.as_bytes().to_vec());
    let mut files = vec![
        ("index.html".to_owned(), page("Manual", &contents(Ways::Written("")), "")),
        asset("sheet.css", include_str!("../../assets/sheet.css")),
        asset("light.js", include_str!("../../assets/light.js")),
        asset("manual.js", include_str!("../../assets/manual.js")),
        asset("icon.svg", include_str!("../../assets/icon.svg")),
        asset("index.js", &index()),
    ];
    for shelf in Shelf::ALL {
        for leaf in shelf.leaves() {
            if let Some(body) = shelf.body(&leaf.id, Ways::Written(UP), "") {
                files.push((format!("{}/{}.html", shelf.folder(), leaf.id), page(&leaf.title, &body, UP)));
            }
        }
    }
    files.extend(
        pictures::all().iter().map(|made| (format!("pictures/{}.svg", made.id), made.svg.clone().into_bytes())),
    );
    files
}

/// One page.
fn page(title: &str, inner: &Markup, up: &'static str) -> Vec<u8> {
    let ways = Ways::Written(up);
    let home = ways.home();
    let assets = format!("{up}assets/");
    let bar =
        html! { nav aria-label="Views" { a href=(home) aria-current=[up.is_empty().then_some("page")] { "Manual" } } };
    let body = html! {
        main #main.page.manual {
            form.finder action=(home) method="get" role="search" data-finder=(up) {
                label.unseen for="q" { "Find in the manual" }
                input #q type="search" name="q" placeholder="rise of a droplet, diesel, short circuit" autocomplete="off";
                button type="submit" { "Find" }
            }
            div #found aria-live="polite" {}
            noscript { p.small { "Finding by words needs a script; the contents list every page." } }
            (shelves(ways))
            (inner)
        }
        (cautions())
    };
    let scripts = html! {
        script src=(format!("{assets}light.js")) {}
        script src=(format!("{assets}manual.js")) defer {}
    };
    let whole = framed(
        &Page { title, sheet: None, class: "page", bar, body },
        &Frame { assets: &assets, home: &home, scripts },
    );
    whole.into_string().into_bytes()
}

/// What a search looks through: kind, title, address, short words and text of each entry, as a script, because a page from the
/// disk may load nothing else.
fn index() -> String {
    let entries = found::entries();
    let ways = Ways::Written("");
    let lines = entries.iter().map(|e| {
        json!([e.kind.word(), e.title, found::address(e, ways), format!("{} {}", e.id, e.keys), e.text]).to_string()
    });
    format!("window.entries = [\n{}\n];\n", lines.collect::<Vec<_>>().join(",\n"))
}
