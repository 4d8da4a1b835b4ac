//! A folder with worked jobs, a server over it, and a browser at its door.

use crate::chromium::launched;
use crate::served::folder_with;
use chromiumoxide::browser::Browser;
use chromiumoxide::cdp::browser_protocol::input::{DispatchKeyEventParams, DispatchKeyEventType};
use chromiumoxide::cdp::browser_protocol::log::EventEntryAdded;
use chromiumoxide::cdp::js_protocol::runtime::{EvaluateParams, EventConsoleApiCalled, EventExceptionThrown};
use chromiumoxide::element::Element;
use chromiumoxide::error::CdpError;
use chromiumoxide::page::Page;
use futures_util::StreamExt;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};
use stillrise_web::{Options, start};
use tempfile::TempDir;

/// How long something may take to show on the page.
const PATIENCE: Duration = Duration::from_secs(20);

/// Everything that one test stands on.
pub struct Desk {
    /// The folder of enquiries.
    pub folder: TempDir,
    /// The page.
    pub page: Page,
    root: String,
    browser: Browser,
    faults: Arc<Mutex<Vec<String>>>,
    _profile: TempDir,
}

impl Desk {
    /// A folder with some of the worked jobs, and a window of a size.
    pub async fn open(jobs: &[&str], window: (u32, u32)) -> Self {
        let folder = folder_with(jobs);
        let options = Options { folder: folder.path().to_owned(), port: None };
        // The server has threads of its own, which may not be started on those that wait for the browser.
        let serving = std::thread::spawn(move || start(&options).unwrap()).join().unwrap();
        let (address, root) = (serving.address(None), format!("http://{}", serving.socket()));
        std::thread::spawn(move || serving.run());
        let (browser, page, profile) = launched(window).await;
        let faults = Arc::new(Mutex::new(Vec::new()));
        listen(&page, &faults).await;
        page.goto(address).await.unwrap();
        Self { folder, page, root, browser, faults, _profile: profile }
    }

    /// Goes to a page.
    pub async fn go(&self, path: &str) {
        self.page.goto(format!("{}{path}", self.root)).await.unwrap();
        self.see("document.readyState === 'complete'").await;
    }

    /// Waits until something is so on the page.
    pub async fn see(&self, condition: &str) {
        let begun = Instant::now();
        loop {
            let so = self.page.evaluate(format!("Boolean({condition})")).await;
            if so.ok().and_then(|value| value.into_value::<bool>().ok()) == Some(true) {
                return;
            }
            if begun.elapsed() > PATIENCE {
                let text = self.text("body").await;
                panic!("never seen: {condition}\non a page that says:\n{text}");
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    /// The text of an element; empty where there is none.
    pub async fn text(&self, css: &str) -> String {
        self.value(&format!("document.querySelector({css:?})?.innerText ?? ''")).await
    }

    /// A text that a script finds on the page.
    pub async fn value(&self, script: &str) -> String {
        let call = format!("(async () => String({script}))()");
        let params =
            EvaluateParams::builder().expression(call).await_promise(true).return_by_value(true).build().unwrap();
        let found = self.page.evaluate_expression(params).await.unwrap();
        found.into_value::<String>().unwrap()
    }

    /// Clicks on an element, as with a mouse.
    pub async fn click(&self, css: &str) {
        self.reach(css, async |element| element.click().await.map(|_| ())).await;
    }

    /// Types a text into a field in place of what stands there, and leaves it.
    pub async fn fill(&self, css: &str, text: &str) {
        self.reach(css, async |element| element.focus().await.map(|_| ())).await;
        self.page.evaluate(format!("document.querySelector({css:?}).select()")).await.unwrap();
        // The keys go to whatever has the focus.
        self.page.find_element("body").await.unwrap().type_str(text).await.unwrap();
        self.press("Tab").await;
    }

    /// Chooses from a list, as a person does.
    pub async fn choose(&self, css: &str, value: &str) {
        self.see(&format!("document.querySelector({css:?})")).await;
        let script = format!(
            "const list = document.querySelector({css:?}); list.value = {value:?}; list.dispatchEvent(new Event('input', {{ bubbles: true }})); list.dispatchEvent(new Event('change', {{ bubbles: true }})); 1"
        );
        self.page.evaluate(script).await.unwrap();
    }

    /// Does something with an element, once it is in sight; one that was just replaced by a fresh piece is looked for again.
    async fn reach(&self, css: &str, act: impl AsyncFn(&Element) -> Result<(), CdpError>) {
        self.see(&format!("document.querySelector({css:?})")).await;
        let begun = Instant::now();
        loop {
            let done = match self.page.find_element(css).await {
                Ok(element) => match element.scroll_into_view().await {
                    Ok(_) => act(&element).await,
                    Err(error) => Err(error),
                },
                Err(error) => Err(error),
            };
            match done {
                Ok(()) => return,
                Err(error) => assert!(begun.elapsed() < PATIENCE, "{css} cannot be reached: {error}"),
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    /// Presses a key.
    pub async fn press(&self, key: &str) {
        let code = match key {
            "Tab" => 9,
            "Enter" => 13,
            "Escape" => 27,
            " " => 32,
            other => other
                .chars()
                .next()
                .filter(char::is_ascii_alphanumeric)
                .map_or(0, |c| i64::from(c.to_ascii_uppercase() as u32)),
        };
        for kind in [DispatchKeyEventType::KeyDown, DispatchKeyEventType::KeyUp] {
            let mut event = DispatchKeyEventParams::builder()
                .r#type(kind.clone())
                .key(key)
                .code(if key == " " { "Space" } else { key })
                .windows_virtual_key_code(code)
                .native_virtual_key_code(code);
            if key == "Enter" && kind == DispatchKeyEventType::KeyDown {
                event = event.text("\r");
            }
            if key == " " && kind == DispatchKeyEventType::KeyDown {
                event = event.text(" ");
            }
            self.page.execute(event.build().unwrap()).await.unwrap();
        }
    }

    /// The text of an enquiry as it stands on the disk.
    pub fn file(&self, name: &str) -> String {
        std::fs::read_to_string(self.folder.path().join(name).join("enquiry.toml")).unwrap()
    }

    /// Ends the test: nothing may have gone wrong on the page meanwhile.
    pub async fn close(self) {
        self.end(false).await;
    }

    /// The same where the server refused something, which the console calls an error by itself.
    pub async fn close_after_refusals(self) {
        self.end(true).await;
    }

    async fn end(mut self, refused: bool) {
        let mut faults = self.faults.lock().unwrap().clone();
        faults.retain(|fault| !(refused && (fault.contains("422") || fault.contains("409"))));
        self.browser.close().await.unwrap();
        self.browser.wait().await.unwrap();
        assert!(faults.is_empty(), "errors in the console: {faults:#?}");
    }
}

/// Gathers what a page complains of: errors in its console, scripts that fail, requests that are refused.
async fn listen(page: &Page, faults: &Arc<Mutex<Vec<String>>>) {
    page.enable_log().await.unwrap();
    page.enable_runtime().await.unwrap();
    let mut entries = page.event_listener::<EventEntryAdded>().await.unwrap();
    let mut thrown = page.event_listener::<EventExceptionThrown>().await.unwrap();
    let mut said = page.event_listener::<EventConsoleApiCalled>().await.unwrap();
    let all = Arc::clone(faults);
    tokio::spawn(async move {
        loop {
            let text = tokio::select! {
                Some(entry) = entries.next() => {
                    if format!("{:?}", entry.entry.level) != "Error" { continue }
                    format!("{} {}", entry.entry.text, entry.entry.url.clone().unwrap_or_default())
                }
                Some(fault) = thrown.next() => format!("{:?}", fault.exception_details),
                Some(call) = said.next() => {
                    if format!("{:?}", call.r#type) != "Error" { continue }
                    format!("{:?}", call.args)
                }
                else => return,
            };
            all.lock().unwrap().push(text);
        }
    });
}
