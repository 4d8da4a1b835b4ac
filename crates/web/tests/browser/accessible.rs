//! Every page against the rules for accessibility that a program can check, light and dark, wide and narrow.

use crate::desk::Desk;
use std::path::Path;

/// The checker, as `cargo xtask test` brings it.
pub fn axe() -> String {
    let usual = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/browser/node_modules/axe-core/axe.min.js");
    let path = std::env::var_os("STILLRISE_AXE").map_or(usual, Into::into);
    std::fs::read_to_string(&path).unwrap_or_else(|_| {
        panic!(
            "axe-core is needed for this test at {}: `cargo xtask test` brings it, or name it in STILLRISE_AXE",
            path.display()
        )
    })
}

/// What the checker finds on a page, as a list in JSON.
pub const VIOLATIONS: &str = "JSON.stringify((await axe.run(document, { resultTypes: ['violations'] })).violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160) + ' ' + (n.any[0]?.message ?? '')).join(' | ')))";

/// Pages, and what is opened on each.
const PAGES: [(&str, &str); 16] = [
    ("/", ""),
    ("/sheet/vehicle-yard", ""),
    ("/sheet/vehicle-yard", "document.querySelector('[data-beside=inputs]').click()"),
    ("/sheet/vehicle-yard", "document.querySelector('[data-beside=text]').click()"),
    ("/sheet/vehicle-yard", "document.querySelector('[data-point=outfall]').click()"),
    ("/sheet/transformer-yard", ""),
    ("/sheet/vehicle-yard/basis", ""),
    ("/sheet/vehicle-yard/units", ""),
    ("/sheet/vehicle-yard/drawing", ""),
    ("/sheet/vehicle-yard/documents", ""),
    ("/manual", ""),
    ("/manual/formula/stokes-rise", ""),
    ("/manual/oil/diesel", ""),
    ("/manual/keys/enquiry-stream", ""),
    ("/manual/guide/contributing", ""),
    ("/manual?q=diesel", ""),
];

#[test]
fn no_page_breaks_a_rule() {
    let script = axe();
    let mut found = Vec::new();
    for size in [(1440, 900), (820, 1100), (390, 800)] {
        let desk = Desk::open(&["vehicle-yard", "transformer-yard"], size);
        // Colours do not hang on the width.
        let lights: &[&str] = if size.0 == 1440 { &["light", "dark"] } else { &["light"] };
        for light in lights {
            for (path, opened) in PAGES {
                desk.go(path);
                desk.script(&format!("document.documentElement.dataset.light = '{light}'; {opened}; 1"));
                std::thread::sleep(std::time::Duration::from_millis(120));
                desk.script(&script);
                let told = desk.value(VIOLATIONS);
                if told != "[]" {
                    found.push(format!("{path} {opened} {light} {size:?}: {told}"));
                }
                let wide = desk.value("document.documentElement.scrollWidth - document.documentElement.clientWidth");
                let tall = desk.value(
                    "document.documentElement.scrollHeight - Math.max(innerHeight, document.body.getBoundingClientRect().bottom + scrollY)",
                );
                if tall.parse::<f64>().unwrap() > 40.0 {
                    found.push(format!("{path} {opened} {size:?}: {tall} px of nothing under the page"));
                }
                if wide.parse::<i64>().unwrap() > 1 {
                    found.push(format!("{path} {opened} {size:?}: {wide} px wider than the window"));
                }
            }
        }
        desk.close();
    }
    assert!(found.is_empty(), "{} violations:\n{}", found.len(), found.join("\n"));
}
