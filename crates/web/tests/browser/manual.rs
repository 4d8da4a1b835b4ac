//! The manual opened from the disk, without a program behind it: accessible, searched, light and dark, on a phone, on paper.

use crate::accessible::{VIOLATIONS, axe};
use crate::chromium::Chromium;
use serde_json::{Value, json};
use std::time::{Duration, Instant};
use stillrise_web::manual::site;
use tempfile::TempDir;

/// A folder with the manual, and a window on it.
struct Opened {
    folder: TempDir,
    browser: Chromium,
}

impl Opened {
    fn new(window: (u32, u32)) -> Self {
        let folder = tempfile::tempdir().unwrap();
        for (name, bytes) in site() {
            let path = folder.path().join(name);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, bytes).unwrap();
        }
        Self { folder, browser: Chromium::launched(window) }
    }
    fn go(&mut self, page: &str) {
        let at = format!("file://{}/{page}", self.folder.path().display());
        self.browser.goto(&at);
    }
    fn value(&mut self, script: &str) -> String {
        let found = self.browser.evaluate(&format!("(async () => String({script}))()")).unwrap();
        found.as_str().unwrap().to_owned()
    }
    fn see(&mut self, condition: &str) {
        let begun = Instant::now();
        while self.browser.evaluate(&format!("Boolean({condition})")) != Ok(Value::Bool(true)) {
            assert!(begun.elapsed() < Duration::from_secs(20), "never seen: {condition}");
            std::thread::sleep(Duration::from_millis(20));
        }
    }
    fn resize(&mut self, (width, height): (u32, u32)) {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        self.browser.call("Emulation.setDeviceMetricsOverride", size).unwrap();
    }
    /// Nothing may have gone wrong on any page.
    fn close(mut self) {
        self.value("1");
        let bad = |(event, told): &&(String, Value)| {
            event == "Runtime.exceptionThrown" || event == "Log.entryAdded" && told["entry"]["level"] == "error"
        };
        let faults: Vec<String> = self.browser.events.iter().filter(bad).map(|(_, told)| told.to_string()).collect();
        assert!(faults.is_empty(), "{faults:#?}");
    }
}

const PAGES: [&str; 10] = [
    "index.html",
    "formula/stokes-rise.html",
    "formula/remaining-oil.html",
    "data/oils.html",
    "oil/diesel.html",
    "rule/gap-not-laminar.html",
    "method/washington.html",
    "keys/enquiry-stream.html",
    "cause/blocked-plates.html",
    "guide/contributing.html",
];

#[test]
fn no_page_of_the_folder_breaks_a_rule() {
    let script = axe();
    // The checker would fetch the style by itself, which no page from the disk may.
    let violations = VIOLATIONS.replace("{ resultTypes", "{ preload: false, resultTypes");
    assert_ne!(violations, VIOLATIONS);
    let mut opened = Opened::new((1440, 900));
    let mut found = Vec::new();
    for size in [(1440, 900), (390, 800)] {
        opened.resize(size);
        let lights: &[&str] = if size.0 == 1440 { &["light", "dark"] } else { &["light"] };
        for light in lights {
            for page in PAGES {
                opened.go(page);
                opened.value(&format!("document.documentElement.dataset.light = '{light}'"));
                opened.browser.evaluate(&script).unwrap();
                let told = opened.value(&violations);
                if told != "[]" {
                    found.push(format!("{page} {light} {size:?}: {told}"));
                }
                let wide = opened.value("document.documentElement.scrollWidth - document.documentElement.clientWidth");
                if wide.parse::<i64>().unwrap() > 1 {
                    found.push(format!("{page} {size:?}: {wide} px wider than the window"));
                }
            }
        }
    }
    assert!(found.is_empty(), "{} violations:\n{}", found.len(), found.join("\n"));
    opened.close();
}

#[test]
fn it_is_searched_from_the_disk_by_keyboard() {
    let mut opened = Opened::new((1280, 900));
    opened.go("rule/gap-not-laminar.html");
    // A stroke goes to the field; what is typed is found without a program, and leads to its page.
    for kind in ["keyDown", "keyUp"] {
        let text = if kind == "keyDown" { "/" } else { "" };
        let key = json!({ "type": kind, "key": "/", "code": "Slash", "text": text });
        opened.browser.call("Input.dispatchKeyEvent", key).unwrap();
    }
    opened.see("document.activeElement.id === 'q'");
    opened.browser.call("Input.insertText", json!({ "text": "rise of a droplet" })).unwrap();
    opened.see("document.querySelectorAll('#found .hits a').length > 3");
    // The same words find the same first page as at the program.
    for query in ["stokes-rise", "diesel", "sludge has filled hopper", "rise of a droplet", "laminar gaps"] {
        let hit = stillrise_web::manual::search(query)[0].entry.title.clone();
        opened.go(&format!("index.html?q={}", query.replace(' ', "%20")));
        opened.see("document.querySelector('#found .hits a')");
        assert_eq!(opened.value("document.querySelector('#found .hits a').innerText"), hit, "{query}");
    }
    let at = opened.value("document.querySelector('#found .hits a').getAttribute('href')");
    opened.go(&at);
    opened.see("document.querySelector('h1')");
    opened.go("index.html?q=qqqq");
    opened.see("document.querySelector('#found').innerText.includes('Nothing of the manual')");
    opened.close();
}

#[test]
fn light_is_kept_and_paper_is_white() {
    let mut opened = Opened::new((1280, 900));
    opened.go("index.html");
    let before = opened.value("getComputedStyle(document.querySelector('main')).backgroundColor");
    opened.value("document.querySelector('[data-light]').click()");
    let after = opened.value("getComputedStyle(document.querySelector('main')).backgroundColor");
    assert_ne!(before, after);
    opened.go("oil/diesel.html");
    assert_eq!(opened.value("getComputedStyle(document.querySelector('main')).backgroundColor"), after);
    opened.browser.call("Emulation.setEmulatedMedia", json!({ "media": "print" })).unwrap();
    assert_eq!(opened.value("getComputedStyle(document.body).backgroundColor"), "rgb(255, 255, 255)");
    assert_eq!(opened.value("getComputedStyle(document.querySelector('form')).display"), "none");
    opened.close();
}
