//! The package: made in the background, looked at, downloaded.

use crate::desk::Desk;

#[tokio::test(flavor = "multi_thread")]
async fn a_package_is_made_and_kept_beside_the_enquiry() {
    let desk = Desk::open(&["machine-shop"], (1280, 900)).await;
    desk.go("/sheet/machine-shop/documents").await;
    assert!(desk.text("#reply").await.contains("machine shop") || desk.text("#reply").await.len() > 500);
    desk.click("form[data-package] button").await;
    desk.see("document.querySelector('#package progress, #package .documents')").await;
    desk.see("document.querySelector('#package .documents')").await;
    let listed = desk.text("#package").await;
    assert!(listed.contains("calculation-report.pdf") && listed.contains("manifest.json"), "{listed}");
    // Looked at in the page.
    desk.page
        .evaluate(
            "[...document.querySelectorAll('[data-look]')].find(b => b.innerText === 'long-section.svg').click(); 1",
        )
        .await
        .unwrap();
    desk.see("document.querySelector('#look').src.endsWith('long-section.svg')").await;
    // All in one, as a browser gets it.
    let size = desk.value("await fetch(document.querySelector('#package a[download]').href).then(a => a.arrayBuffer()).then(b => b.byteLength)").await;
    assert!(size.parse::<u32>().unwrap() > 50_000, "{size}");
    desk.click("[data-save]").await;
    desk.see("document.querySelector('#told').innerText.includes('Saved')").await;
    let report = desk.folder.path().join("machine-shop/package-client/calculation-report.pdf");
    assert!(std::fs::read(report).unwrap().starts_with(b"%PDF"));
    desk.close().await;
}
