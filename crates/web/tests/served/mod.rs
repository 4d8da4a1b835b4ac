//! A server over a folder of worked jobs, and a client that sends what it is told, byte for byte.

#![allow(dead_code, reason = "each test uses what it needs of it")]

use serde_json::Value;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;
use stillrise_desk::folder::Folder;
use stillrise_desk::jobs::JOBS;
use stillrise_web::{Options, start};
use tempfile::TempDir;

/// How long an answer is waited for.
const PATIENCE: Duration = Duration::from_secs(60);

/// A server that runs until the test ends.
pub struct Served {
    pub at: SocketAddr,
    pub token: String,
    pub folder: Arc<TempDir>,
}

/// What came back.
pub struct Answer {
    pub status: u16,
    /// The head, as it came.
    pub head: String,
    pub body: Vec<u8>,
}

/// A folder with copies of worked jobs.
pub fn folder_with(jobs: &[&str]) -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    for job in JOBS.iter().filter(|job| jobs.contains(&job.name)) {
        let files: Vec<(&str, &[u8])> = job.files.iter().map(|(name, text)| (*name, text.as_bytes())).collect();
        Folder::open(folder.path()).unwrap().create(job.name, &files).unwrap();
    }
    folder
}

/// A server over such a folder.
pub fn served(jobs: &[&str]) -> Served {
    let folder = folder_with(jobs);
    let (at, token) = begun(folder.path());
    Served { at, token, folder: Arc::new(folder) }
}

/// Starts a server over a folder; where it listens, and its key.
pub fn begun(folder: &Path) -> (SocketAddr, String) {
    let serving = start(&Options { folder: folder.to_owned(), port: None }).unwrap();
    let (at, token) = (serving.socket(), serving.token().to_owned());
    std::thread::spawn(move || serving.run());
    (at, token)
}

impl Answer {
    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap_or_else(|_| panic!("no JSON: {}", self.text()))
    }

    /// The type of what it holds.
    pub fn kind(&self) -> String {
        let head = self.head.to_lowercase();
        head.lines().find_map(|line| line.strip_prefix("content-type: ")).unwrap_or_default().to_owned()
    }
}

impl Served {
    /// A second server over the same folder.
    pub fn another(&self) -> Served {
        let (at, token) = begun(self.folder.path());
        Served { at, token, folder: Arc::clone(&self.folder) }
    }

    /// Sends what is written and reads to the end.
    pub fn raw(&self, request: &[&[u8]]) -> Answer {
        let mut stream = TcpStream::connect(self.at).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        // A server that refuses a body need not read it to its end.
        let _ = request.iter().try_for_each(|part| stream.write_all(part));
        let mut bytes = Vec::new();
        let _ = stream.read_to_end(&mut bytes);
        let end = bytes.windows(4).position(|four| four == b"\r\n\r\n").unwrap_or(bytes.len());
        let head = String::from_utf8_lossy(&bytes[..end]).into_owned() + "\r\n";
        let status = head.split(' ').nth(1).and_then(|code| code.parse().ok()).unwrap_or(0);
        let body = bytes.get(end + 4..).unwrap_or_default();
        let chunked = head.to_lowercase().contains("transfer-encoding: chunked");
        Answer { status, body: if chunked { unchunked(body) } else { body.to_vec() }, head }
    }

    /// Asks with whatever headers; the host and the length of the body are told where they do not say otherwise.
    pub fn ask(&self, method: &str, path: &str, headers: &[&str], body: &[u8]) -> Answer {
        let mut head = format!("{method} {path} HTTP/1.1\r\nConnection: close\r\n");
        if !headers.iter().any(|header| header.starts_with("Host:")) {
            head.push_str(&format!("Host: {}\r\n", self.at));
        }
        for header in headers {
            head.push_str(&format!("{header}\r\n"));
        }
        head.push_str(&format!("Content-Length: {}\r\n\r\n", body.len()));
        self.raw(&[head.as_bytes(), body])
    }

    /// The line that shows the key, as a program does.
    pub fn key(&self) -> String {
        format!("Authorization: Bearer {}", self.token)
    }

    /// The line that shows the key, as a browser does.
    pub fn cookie(&self) -> String {
        format!("Cookie: sheet-{}={}", self.at.port(), self.token)
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask("GET", path, &[&self.key()], b"")
    }

    /// Sends a body of JSON, sound or not.
    pub fn send(&self, method: &str, path: &str, body: &str) -> Answer {
        self.ask(method, path, &[&self.key(), "Content-Type: application/json"], body.as_bytes())
    }

    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.send("POST", path, &body.to_string())
    }

    /// The text of an enquiry as it stands on the disk.
    pub fn file(&self, job: &str) -> String {
        std::fs::read_to_string(self.folder.path().join(job).join("enquiry.toml")).unwrap()
    }
}

fn unchunked(mut rest: &[u8]) -> Vec<u8> {
    let mut all = Vec::new();
    while let Some(end) = rest.windows(2).position(|two| two == b"\r\n") {
        let size = usize::from_str_radix(String::from_utf8_lossy(&rest[..end]).trim(), 16).unwrap_or(0);
        let Some(chunk) = rest.get(end + 2..end + 2 + size).filter(|_| size > 0) else { break };
        all.extend_from_slice(chunk);
        rest = rest.get(end + 4 + size..).unwrap_or_default();
    }
    all
}
