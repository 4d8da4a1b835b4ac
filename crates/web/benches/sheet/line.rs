//! One connection to a program that serves, kept open from question to question.

use crate::program::Program;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;

/// The connection.
pub struct Line {
    stream: BufReader<TcpStream>,
    host: String,
    key: String,
}

impl Line {
    /// Opens one.
    pub fn to(program: &Program) -> Self {
        let host = program.root().trim_start_matches("http://").to_owned();
        let stream = TcpStream::connect(&host).unwrap();
        stream.set_nodelay(true).unwrap();
        Self { stream: BufReader::new(stream), host, key: program.key().to_owned() }
    }

    /// Asks as the page does; what came back, which has to be an answer and no refusal.
    pub fn ask(&mut self, method: &str, path: &str, body: &str) -> String {
        let (host, key, length) = (&self.host, &self.key, body.len());
        let request = format!(
            "{method} {path} HTTP/1.1\r\nHost: {host}\r\nAuthorization: Bearer {key}\r\nAccept: text/html\r\nContent-Type: application/json\r\nContent-Length: {length}\r\n\r\n{body}"
        );
        self.stream.get_mut().write_all(request.as_bytes()).unwrap();
        let (mut head, mut length) = (String::new(), 0);
        loop {
            let from = head.len();
            assert!(self.stream.read_line(&mut head).unwrap() > 0, "{method} {path}: the line was closed");
            let line = head[from..].trim().to_lowercase();
            if line.is_empty() {
                break;
            }
            length = line.strip_prefix("content-length:").map_or(length, |n| n.trim().parse().unwrap());
        }
        let mut body = vec![0; length];
        self.stream.read_exact(&mut body).unwrap();
        let text = String::from_utf8(body).unwrap();
        assert!(head.starts_with("HTTP/1.1 200"), "{method} {path}: {head}{text}");
        text
    }

    /// Sets a key of an enquiry.
    pub fn set(&mut self, sheet: &str, key: &str, value: &str) -> String {
        let body = serde_json::json!([{ "do": "set", "path": key, "value": value }]).to_string();
        self.ask("POST", &format!("/api/sheets/{sheet}/actions"), &body)
    }
}
