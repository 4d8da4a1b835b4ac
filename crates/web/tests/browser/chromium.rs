//! A browser without a screen, in a fresh profile, spoken to over its debugging protocol: one page, a question at a time.
//! Why no crate for that protocol stands here: docs/decisions/web.md.

use serde_json::{Value, json};
use std::net::TcpStream;
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use tempfile::TempDir;
use tungstenite::protocol::WebSocketConfig;
use tungstenite::{Message, WebSocket};

/// How long the browser may take to start, and to answer.
const PATIENCE: Duration = Duration::from_secs(60);

/// A browser with one page; it ends when it is dropped.
pub struct Chromium {
    child: Child,
    socket: WebSocket<TcpStream>,
    session: String,
    asked: u64,
    /// What the page said between answers: events with their parameters.
    pub events: Vec<(String, Value)>,
    _profile: TempDir,
}

/// The browser, where it usually lies.
fn program() -> PathBuf {
    let said = std::env::var_os("STILLRISE_CHROMIUM").map(PathBuf::from);
    let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].map(PathBuf::from);
    let found = said.into_iter().chain(usual).find(|path| path.exists());
    found.expect(
        "Chromium is needed here: install it (Debian: apt-get install chromium), or name it in STILLRISE_CHROMIUM",
    )
}

impl Chromium {
    /// Starts one with an empty page of a size.
    pub fn launched((width, height): (u32, u32)) -> Self {
        let profile = tempfile::tempdir().unwrap();
        let mut child = Command::new(program())
            .args([
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-dev-shm-usage",
                "--remote-debugging-port=0",
            ])
            .arg(format!("--window-size={width},{height}"))
            .arg(format!("--user-data-dir={}", profile.path().display()))
            .arg("about:blank")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        // It writes where it listens into its profile.
        let begun = Instant::now();
        let (port, path) = loop {
            let told = std::fs::read_to_string(profile.path().join("DevToolsActivePort")).unwrap_or_default();
            if let Some((port, path)) = told.split_once('\n').filter(|(_, path)| path.contains('/')) {
                break (port.trim().to_owned(), path.trim().to_owned());
            }
            assert!(child.try_wait().unwrap().is_none(), "the browser ended at once");
            assert!(begun.elapsed() < PATIENCE, "the browser did not start");
            std::thread::sleep(Duration::from_millis(10));
        };
        let stream = TcpStream::connect(format!("127.0.0.1:{port}")).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        let config = WebSocketConfig::default().max_message_size(None).max_frame_size(None);
        let address = format!("ws://127.0.0.1:{port}{path}");
        let (socket, _) = tungstenite::client::client_with_config(address, stream, Some(config)).unwrap();
        let mut own = Self { child, socket, session: String::new(), asked: 0, events: Vec::new(), _profile: profile };
        let target = own.call("Target.createTarget", json!({ "url": "about:blank" })).unwrap();
        let attached = json!({ "targetId": target["targetId"], "flatten": true });
        let session = own.call("Target.attachToTarget", attached).unwrap();
        own.session = session["sessionId"].as_str().unwrap().to_owned();
        for domain in ["Page.enable", "Runtime.enable", "Log.enable"] {
            own.call(domain, json!({})).unwrap();
        }
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        own.call("Emulation.setDeviceMetricsOverride", size).unwrap();
        own
    }

    /// Asks the page, or before there is one the browser; why it refuses, where it does.
    pub fn call(&mut self, method: &str, parameters: Value) -> Result<Value, String> {
        self.asked += 1;
        let mut question = json!({ "id": self.asked, "method": method, "params": parameters });
        if !self.session.is_empty() {
            question["sessionId"] = json!(self.session);
        }
        self.socket.send(Message::text(question.to_string())).map_err(|error| error.to_string())?;
        loop {
            let message = self.socket.read().map_err(|error| format!("{method}: {error}"))?;
            let Message::Text(text) = message else { continue };
            let mut told: Value = serde_json::from_str(text.as_str()).map_err(|error| error.to_string())?;
            if told["id"] == json!(self.asked) {
                return match told.get("error") {
                    Some(error) => Err(format!("{method}: {error}")),
                    None => Ok(told["result"].take()),
                };
            }
            if let Some(event) = told["method"].as_str().map(str::to_owned) {
                self.events.push((event, told["params"].take()));
            }
        }
    }

    /// What a script comes to, once it is done; what it throws, where it throws.
    pub fn evaluate(&mut self, script: &str) -> Result<Value, String> {
        let call = json!({ "expression": script, "awaitPromise": true, "returnByValue": true, "userGesture": true });
        let mut told = self.call("Runtime.evaluate", call)?;
        match told.get("exceptionDetails") {
            Some(thrown) => Err(thrown.to_string()),
            None => Ok(told["result"]["value"].take()),
        }
    }

    /// Goes to a page, and waits until it stands.
    pub fn goto(&mut self, address: &str) {
        let told = self.call("Page.navigate", json!({ "url": address })).unwrap();
        assert!(told.get("errorText").is_none(), "{address}: {told}");
        let loader = told["loaderId"].clone();
        let begun = Instant::now();
        // The old page answers until the new one took its place.
        let is_there = |own: &mut Self| {
            let tree = own.call("Page.getFrameTree", json!({})).unwrap();
            loader.is_null() || tree["frameTree"]["frame"]["loaderId"] == loader
        };
        while !(is_there(self) && self.evaluate("document.readyState") == Ok(json!("complete"))) {
            assert!(begun.elapsed() < PATIENCE, "{address} never stood");
            std::thread::sleep(Duration::from_millis(10));
        }
    }
}

impl Drop for Chromium {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
