//! A folder with worked jobs, a server over it, and a browser at its door.

use crate::chromium::Chromium;
use crate::served::{begun, folder_with};
use serde_json::{Value, json};
use std::cell::{RefCell, RefMut};
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// How long something may take to show on the page.
const PATIENCE: Duration = Duration::from_secs(20);

/// Everything that one test stands on.
pub struct Desk {
    /// The folder of enquiries.
    pub folder: TempDir,
    root: String,
    browser: RefCell<Chromium>,
}

impl Desk {
    /// A folder with some of the worked jobs, and a window of a size.
    pub fn open(jobs: &[&str], window: (u32, u32)) -> Self {
        let folder = folder_with(jobs);
        let (at, key) = begun(folder.path());
        let root = format!("http://{at}");
        let mut browser = Chromium::launched(window);
        browser.goto(&format!("{root}/?key={key}"));
        Self { folder, root, browser: RefCell::new(browser) }
    }

    fn page(&self) -> RefMut<'_, Chromium> {
        self.browser.borrow_mut()
    }

    /// Goes to a page.
    pub fn go(&self, path: &str) {
        self.page().goto(&format!("{}{path}", self.root));
    }

    /// Does something on the page by a script.
    pub fn script(&self, script: &str) {
        self.page().evaluate(script).unwrap();
    }

    /// Waits until something is so on the page.
    pub fn see(&self, condition: &str) {
        let begun = Instant::now();
        while self.page().evaluate(&format!("Boolean({condition})")) != Ok(Value::Bool(true)) {
            if begun.elapsed() > PATIENCE {
                let (told, text) = (self.text("#trouble"), self.text("body"));
                panic!("never seen: {condition}\nmessage: {told:?}\non a page that says:\n{text}");
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// The text of an element; empty where there is none.
    pub fn text(&self, css: &str) -> String {
        self.value(&format!("document.querySelector({css:?})?.innerText ?? ''"))
    }

    /// A text that a script finds on the page.
    pub fn value(&self, script: &str) -> String {
        let found = self.page().evaluate(&format!("(async () => String({script}))()")).unwrap();
        found.as_str().unwrap().to_owned()
    }

    /// Clicks on an element, as with a mouse.
    pub fn click(&self, css: &str) {
        let spot = self.reach(css);
        for kind in ["mouseMoved", "mousePressed", "mouseReleased"] {
            let button = if kind == "mouseMoved" { "none" } else { "left" };
            let event = json!({ "type": kind, "x": spot.0, "y": spot.1, "button": button, "clickCount": 1 });
            self.page().call("Input.dispatchMouseEvent", event).unwrap();
        }
    }

    /// Types a text into a field in place of what stands there, and leaves it.
    pub fn fill(&self, css: &str, text: &str) {
        let begun = Instant::now();
        loop {
            self.reach(css);
            let script = format!("{{ const field = document.querySelector({css:?}); field.focus(); field.select(); }}");
            self.script(&script);
            self.page().call("Input.insertText", json!({ "text": text })).unwrap();
            // What just opened may take the focus as its heading is read out: then it is typed again, as a person would.
            if self.value(&format!("document.querySelector({css:?})?.value")) == text {
                break;
            }
            assert!(begun.elapsed() < PATIENCE, "{css} takes no text");
        }
        self.press("Tab");
    }

    /// Chooses from a list, as a person does.
    pub fn choose(&self, css: &str, value: &str) {
        self.reach(css);
        self.script(&format!(
            "{{ const list = document.querySelector({css:?}); list.value = {value:?}; \
             for (const kind of ['input', 'change']) list.dispatchEvent(new Event(kind, {{ bubbles: true }})); }}"
        ));
    }

    /// Brings an element into sight; where its middle is. One that was just replaced by a fresh piece is looked for again.
    fn reach(&self, css: &str) -> (f64, f64) {
        self.see(&format!("document.querySelector({css:?})"));
        let begun = Instant::now();
        loop {
            let script = format!(
                "(() => {{ const one = document.querySelector({css:?}); if (!one) return null; \
                 one.scrollIntoView({{ block: 'center', inline: 'center', behavior: 'instant' }}); \
                 const box = one.getClientRects()[0]; \
                 return box && box.width > 0 ? [box.x + box.width / 2, box.y + box.height / 2] : null; }})()"
            );
            let found = self.page().evaluate(&script).unwrap();
            if let (Some(x), Some(y)) = (found[0].as_f64(), found[1].as_f64()) {
                return (x, y);
            }
            assert!(begun.elapsed() < PATIENCE, "{css} cannot be reached");
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Presses a key.
    pub fn press(&self, key: &str) {
        let code = match key {
            "Tab" => 9,
            "Enter" => 13,
            "Escape" => 27,
            " " => 32,
            other => other.chars().next().map_or(0, |c| c.to_ascii_uppercase() as u32),
        };
        let text = match key {
            "Enter" => "\r",
            " " => " ",
            _ => "",
        };
        for kind in ["keyDown", "keyUp"] {
            let mut event = json!({
                "type": kind, "key": key, "code": if key == " " { "Space" } else { key },
                "windowsVirtualKeyCode": code, "nativeVirtualKeyCode": code,
            });
            if kind == "keyDown" && !text.is_empty() {
                event["text"] = json!(text);
            }
            self.page().call("Input.dispatchKeyEvent", event).unwrap();
        }
    }

    /// The text of an enquiry as it stands on the disk.
    pub fn file(&self, name: &str) -> String {
        std::fs::read_to_string(self.folder.path().join(name).join("enquiry.toml")).unwrap()
    }

    /// Ends the test: nothing may have gone wrong on the page meanwhile.
    pub fn close(self) {
        self.end(false);
    }

    /// The same where the server refused something, which the console calls an error by itself.
    pub fn close_after_refusals(self) {
        self.end(true);
    }

    fn end(self, refused: bool) {
        // What was said up to now comes before this answer.
        self.script("1");
        let mut faults: Vec<String> =
            self.page().events.iter().filter_map(|(event, told)| fault(event, told)).collect();
        faults.retain(|fault| !(refused && (fault.contains("422") || fault.contains("409"))));
        assert!(faults.is_empty(), "errors in the console: {faults:#?}");
    }
}

/// What a page complains of: errors in its console, scripts that fail, requests that are refused.
fn fault(event: &str, told: &Value) -> Option<String> {
    let is_bad = match event {
        "Log.entryAdded" => told["entry"]["level"] == "error",
        "Runtime.exceptionThrown" => true,
        "Runtime.consoleAPICalled" => told["type"] == "error",
        _ => false,
    };
    is_bad.then(|| told.to_string())
}
