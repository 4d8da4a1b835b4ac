//! A server over a folder of worked jobs, and a client that sends what it is told, byte for byte.

use serde_json::Value;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;
use stillrise_desk::folder::Folder;
use stillrise_desk::jobs::JOBS;
use stillrise_web::{Options, start};
use tempfile::TempDir;

/// The job that requests are about.
pub const JOB: &str = "machine-shop";

pub struct Served {
    pub at: SocketAddr,
    pub token: String,
    folder: TempDir,
}

pub struct Answer {
    pub status: u16,
    pub kind: String,
    pub body: Vec<u8>,
}

impl Answer {
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body)
            .unwrap_or_else(|_| panic!("no JSON: {}", String::from_utf8_lossy(&self.body)))
    }
}

pub fn served(jobs: &[&str]) -> Served {
    let folder = tempfile::tempdir().unwrap();
    for job in JOBS.iter().filter(|job| jobs.contains(&job.name)) {
        let files: Vec<(&str, &[u8])> = job.files.iter().map(|(name, text)| (*name, text.as_bytes())).collect();
        Folder::open(folder.path()).unwrap().create(job.name, &files).unwrap();
    }
    let serving = start(&Options { folder: folder.path().to_owned(), port: None }).unwrap();
    let (at, token) = (serving.socket(), serving.token().to_owned());
    std::thread::spawn(move || serving.run());
    Served { at, token, folder }
}

impl Served {
    pub fn ask(&self, method: &str, path: &str, key: &str, kind: Option<&str>, body: &[u8]) -> Answer {
        let mut stream = TcpStream::connect(self.at).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(60))).unwrap();
        let kind = kind.map_or_else(String::new, |kind| format!("Content-Type: {kind}\r\n"));
        let head = format!(
            "{method} {path} HTTP/1.1\r\nHost: {}\r\nAuthorization: Bearer {key}\r\n{kind}Content-Length: {}\r\nConnection: close\r\n\r\n",
            self.at,
            body.len()
        );
        // A server that refuses a body need not read it to its end.
        let _ = stream.write_all(head.as_bytes()).and_then(|()| stream.write_all(body));
        let mut bytes = Vec::new();
        let _ = stream.read_to_end(&mut bytes);
        let end = bytes.windows(4).position(|four| four == b"\r\n\r\n").unwrap_or(bytes.len());
        let head = String::from_utf8_lossy(&bytes[..end]).to_lowercase();
        let status = head.split(' ').nth(1).and_then(|code| code.parse().ok()).unwrap_or(0);
        let kind = head.lines().find_map(|line| line.strip_prefix("content-type: ")).unwrap_or_default().to_owned();
        let body = bytes.get(end + 4..).unwrap_or_default();
        let body = if head.contains("transfer-encoding: chunked") { unchunked(body) } else { body.to_vec() };
        Answer { status, kind, body }
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask("GET", path, &self.token, None, b"")
    }

    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.ask("POST", path, &self.token, Some("application/json"), body.to_string().as_bytes())
    }

    pub fn file(&self) -> String {
        std::fs::read_to_string(self.folder.path().join(JOB).join("enquiry.toml")).unwrap()
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
