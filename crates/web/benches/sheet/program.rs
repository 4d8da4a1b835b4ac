//! The built program, serving a folder of its own until it is dropped.

use std::ffi::OsStr;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use stillrise_desk::folder::Folder;
use stillrise_desk::jobs::JOBS;
use tempfile::TempDir;

/// A program that serves.
pub struct Program {
    child: Child,
    /// The folder of enquiries.
    pub folder: TempDir,
    /// The address with its key.
    pub door: String,
}

impl Program {
    /// Starts it over copies of worked jobs: the name of each, and the job it is a copy of.
    pub fn over(program: &OsStr, copies: &[(String, &str)]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        for (name, job) in copies {
            let job = JOBS.iter().find(|known| known.name == *job).unwrap();
            let files: Vec<(&str, &[u8])> = job.files.iter().map(|(name, text)| (*name, text.as_bytes())).collect();
            Folder::open(folder.path()).unwrap().create(name, &files).unwrap();
        }
        let mut child = Command::new(program)
            .args(["serve", "--no-open"])
            .arg(folder.path())
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let said = BufReader::new(child.stdout.take().unwrap()).lines().map_while(Result::ok);
        let door = said.map(|line| line.trim().to_owned()).find(|line| line.starts_with("http://"));
        Self { child, folder, door: door.expect("it tells its address") }
    }

    /// The address without its key.
    pub fn root(&self) -> &str {
        self.door.split("/?").next().unwrap()
    }

    /// The key.
    pub fn key(&self) -> &str {
        self.door.split("key=").nth(1).unwrap()
    }

    /// Megabytes that it holds in memory, where the system tells.
    pub fn memory(&self) -> Option<f64> {
        let told = std::fs::read_to_string(Path::new("/proc").join(self.child.id().to_string()).join("status")).ok()?;
        let line = told.lines().find(|line| line.starts_with("VmRSS:"))?;
        line.split_whitespace().nth(1)?.parse::<f64>().ok().map(|kilobytes| kilobytes / 1024.0)
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
