//! The package: made in the background, looked at, downloaded.

use crate::desk::Desk;

#[test]
fn a_package_is_made_and_kept_beside_the_enquiry() {
    let desk = Desk::open(&["machine-shop"], (1280, 900));
    desk.go("/sheet/machine-shop/documents");
    assert!(desk.text("#reply").contains("machine shop") || desk.text("#reply").len() > 500);
    desk.click("form[data-package] button");
    desk.see("document.querySelector('#package progress, #package .documents')");
    desk.see("document.querySelector('#package .documents')");
    let listed = desk.text("#package");
    assert!(listed.contains("calculation-report.pdf") && listed.contains("manifest.json"), "{listed}");
    // Looked at in the page.
    desk.script(
        "[...document.querySelectorAll('[data-look]')].find(b => b.innerText === 'drawings/1-general-arrangement.svg').click(); 1",
    );
    desk.see("document.querySelector('#look').src.endsWith('drawings/1-general-arrangement.svg')");
    // All in one, as a browser gets it.
    let size = desk.value("await fetch(document.querySelector('#package a[download]').href).then(a => a.arrayBuffer()).then(b => b.byteLength)");
    assert!(size.parse::<u32>().unwrap() > 50_000, "{size}");
    desk.click("[data-save]");
    desk.see("document.querySelector('#told').innerText.includes('Saved')");
    let report = desk.folder.path().join("machine-shop/package-client/calculation-report.pdf");
    assert!(std::fs::read(report).unwrap().starts_with(b"%PDF"));
    desk.close();
}
