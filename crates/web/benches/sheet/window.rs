//! What a person waits for: the first paint of a sheet, and the redrawn sheet after a change, in the browser's own clock.

use crate::chromium::Chromium;
use crate::program::Program;
use crate::times::Times;
use serde_json::json;
use std::ffi::OsStr;
use std::time::Duration;
use stillrise_desk::jobs::JOBS;

/// Changes by which the slowest of the worked enquiries is found.
const FEW: usize = 12;
/// Changes of that one.
const EDITS: usize = 200;
const BATCH: usize = 20;
const OPENED: usize = 10;
const REDRAW: f64 = 50.0;
const PAINT: f64 = 300.0;
const WEIGHT: f64 = 300.0;

/// From a value typed and left to the frame that shows the redrawn sheet, so many times. A peer goes along: one small file
/// asked for, put on the page and shown.
const CHANGES: &str = r##"async (times) => {
    const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    const wait = (so) => new Promise((done, lost) => {
        if (so()) return done();
        const watch = new MutationObserver(() => { if (so()) { watch.disconnect(); done(); } });
        watch.observe(document.body, { childList: true, subtree: true, attributes: true });
        setTimeout(() => lost(new Error("never seen")), 10000);
    });
    await wait(() => document.querySelector("#key-water-coldest"));
    const [edits, peers] = [[], []];
    for (let n = 0; n < times; n += 1) {
        // A person looks at the sheet before the next change.
        await new Promise((done) => setTimeout(done, 250));
        const field = document.querySelector("#key-water-coldest");
        const typed = `${(41 + (n % 40) * 0.25 + Math.random() / 100).toFixed(4)} °F`;
        let begun = performance.now();
        field.value = typed;
        field.dispatchEvent(new Event("change", { bubbles: true }));
        // The answer says in one go what it undoes and what is drawn.
        await wait(() => document.querySelector("[data-step=undo]").title.includes(typed));
        await frame();
        edits.push(performance.now() - begun);
        begun = performance.now();
        const answer = await (await fetch(`/api/sheets/${document.body.dataset.sheet}/version`)).text();
        document.querySelector("#told").textContent = answer;
        await frame();
        peers.push(performance.now() - begun);
        document.querySelector("#told").textContent = "";
    }
    return { edits, peers };
}"##;

/// What the page took to be painted, and what came for it over the line, compressed as it came.
const OPENING: &str = r##"async () => {
    const paint = () => performance.getEntriesByName("first-contentful-paint")[0];
    for (let n = 0; n < 500 && !paint(); n += 1) await new Promise((done) => setTimeout(done, 10));
    const all = [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")];
    return { paint: paint().startTime, bytes: all.reduce((sum, one) => sum + one.encodedBodySize, 0), files: all.length };
}"##;

fn changes(page: &mut Chromium, root: &str, sheet: &str, times: usize) -> (Times, Times) {
    page.goto(&format!("{root}/sheet/{sheet}"));
    page.evaluate("document.querySelector('[data-beside=inputs]').click()").unwrap();
    let (mut edits, mut peers) = (Vec::new(), Vec::new());
    // The browser is not asked for longer than it waits.
    while edits.len() < times {
        let told = page.evaluate(&format!("({CHANGES})({})", BATCH.min(times - edits.len()))).unwrap();
        for (all, key) in [(&mut edits, "edits"), (&mut peers, "peers")] {
            all.extend(told[key].as_array().unwrap().iter().map(|ms| ms.as_f64().unwrap()));
        }
    }
    (Times::of(edits), Times::of(peers))
}

/// Measures and tells it.
pub fn measure(program: &OsStr, fixed: f64) {
    let copies: Vec<(String, &str)> = JOBS.iter().map(|job| (job.name.to_owned(), job.name)).collect();
    let program = Program::over(program, &copies);
    {
        let mut page = Chromium::launched((1440, 900));
        page.goto(&program.door);
        let root = program.root();
        let mut slowest = (JOBS[0].name, 0.0);
        for job in JOBS {
            let (edits, _) = changes(&mut page, root, job.name, FEW);
            let median = edits.share(0.5);
            println!("  {:<42} {median:>8.2} median of {FEW}", job.name);
            if median > slowest.1 {
                slowest = (job.name, median);
            }
        }
        let (edits, peers) = changes(&mut page, root, slowest.0, EDITS);
        println!(
            "{:<44} {:>8.2} median {:>8.2} p95",
            "peer: a number asked for and shown",
            peers.share(0.5),
            peers.share(0.95)
        );
        edits.tell(&format!("{}, change to redrawn sheet", slowest.0), 0.95, REDRAW, fixed);
        page.call("Network.setCacheDisabled", json!({ "cacheDisabled": true })).unwrap();
        let (mut paints, mut weight) = (Vec::new(), 0.0_f64);
        for _ in 0..OPENED {
            page.call("Network.clearBrowserCache", json!({})).unwrap();
            page.goto(&format!("{root}/sheet/{}", slowest.0));
            std::thread::sleep(Duration::from_millis(200));
            let told = page.evaluate(&format!("({OPENING})()")).unwrap();
            paints.push(told["paint"].as_f64().unwrap());
            weight = weight.max(told["bytes"].as_f64().unwrap() / 1000.0);
        }
        Times::of(paints).tell("a sheet opened, first paint", 0.95, PAINT, fixed);
        let word = if weight < WEIGHT { "under" } else { "OVER" };
        println!("{:<44} {weight:>8.1} kB compressed, {word} {WEIGHT:.0} kB", "all that a sheet loads");
    }
}
