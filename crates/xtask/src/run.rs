//! Starting other programs, always from the root of the tree.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicUsize, Ordering};

/// What a finished program left.
pub struct Output {
    /// Exit code; `None` when a signal ended it.
    pub code: Option<i32>,
    /// Standard output.
    pub stdout: String,
    /// Standard error.
    pub stderr: String,
}

/// The cargo that started us, or the one on the path.
pub fn cargo(root: &Path) -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(root);
    command
}

/// Runs with the terminal attached; `Err` says what failed.
pub fn show(command: &mut Command) -> Result<(), String> {
    let shown = words(command);
    println!("$ {shown}");
    let status = command.stdin(Stdio::null()).status().map_err(|e| format!("`{shown}` did not start: {e}"))?;
    if status.success() { Ok(()) } else { Err(format!("`{shown}` ended with {status}")) }
}

/// Runs and keeps what it says.
pub fn capture(command: &mut Command) -> Result<Output, String> {
    let out = command.stdin(Stdio::null()).output().map_err(|e| format!("`{}` did not start: {e}", words(command)))?;
    Ok(Output {
        code: out.status.code(),
        stdout: String::from_utf8_lossy(&out.stdout).into_owned(),
        stderr: String::from_utf8_lossy(&out.stderr).into_owned(),
    })
}

/// True when the program is there and answers with success.
pub fn answers(program: &str, arg: &str) -> bool {
    let quiet =
        Command::new(program).arg(arg).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null()).status();
    quiet.is_ok_and(|status| status.success())
}

/// The command as one would type it.
pub fn words(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or(command.get_program());
    let all = std::iter::once(program).chain(command.get_args());
    all.map(OsStr::to_string_lossy).collect::<Vec<_>>().join(" ")
}

/// Where cargo puts what it builds: two folders above this program itself.
pub fn target() -> Result<PathBuf, String> {
    let here = std::env::current_exe().map_err(|e| format!("this program cannot find itself: {e}"))?;
    let target = here.parent().and_then(Path::parent).map(Path::to_path_buf);
    target.ok_or_else(|| format!("{} is not in a build folder", here.display()))
}

/// A program that cargo has built in the given profile folder.
pub fn built(profile: &str, name: &str) -> Result<PathBuf, String> {
    let path = target()?.join(profile).join(format!("{name}{}", std::env::consts::EXE_SUFFIX));
    if path.is_file() { Ok(path) } else { Err(format!("{} was not built", path.display())) }
}

/// Builds `stillrise` in the development profile and returns where it is: with the whole workspace and its examples, so that
/// nothing the tests were built from is built anew for another set of features.
pub fn stillrise(root: &Path) -> Result<PathBuf, String> {
    show(cargo(root).args(["build", "--quiet", "--workspace", "--bin", "stillrise", "--examples"]))?;
    built("debug", "stillrise")
}

/// `stillrise` with the surroundings that accepted outputs assume.
pub fn plain(program: &Path, root: &Path) -> Command {
    let mut command = Command::new(program);
    command.current_dir(root).env("NO_COLOR", "1").env("COLUMNS", "100").env_remove("RUST_BACKTRACE");
    command
}

/// Names of the worked jobs: folders of `enquiries` with an enquiry in them, sorted.
pub fn jobs(root: &Path) -> Result<Vec<String>, String> {
    let folder = root.join("enquiries");
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let mut names = Vec::new();
    for entry in std::fs::read_dir(&folder).map_err(|e| format!("{}: {e}", folder.display()))? {
        let path = entry.map_err(|e| format!("{}: {e}", folder.display()))?.path();
        if let Some(name) = path.file_name().filter(|_| path.join("enquiry.toml").is_file()) {
            names.push(name.to_string_lossy().into_owned());
        }
    }
    names.sort();
    Ok(names)
}

/// Path of a job's enquiry from the root, as it is given to the program and may appear in output.
pub fn enquiry(job: &str) -> String {
    format!("enquiries/{job}/enquiry.toml")
}

/// Works on every job, as many side by side as the machine has cores; results in the order of the jobs, or the first fault.
pub fn each<T: Send>(jobs: &[String], work: impl Fn(&str) -> Result<T, String> + Sync) -> Result<Vec<T>, String> {
    let cores = std::thread::available_parallelism().map_or(1, usize::from).min(jobs.len());
    let next = AtomicUsize::new(0);
    let mut all: Vec<(usize, Result<T, String>)> = std::thread::scope(|scope| {
        let one = || {
            let mut own = Vec::new();
            loop {
                let k = next.fetch_add(1, Ordering::Relaxed);
                let Some(job) = jobs.get(k) else { break own };
                own.push((k, work(job)));
            }
        };
        let threads: Vec<_> = (0..cores).map(|_| scope.spawn(one)).collect();
        threads.into_iter().flat_map(|thread| thread.join().unwrap_or_default()).collect()
    });
    if all.len() < jobs.len() {
        return Err("a job was not worked to its end".to_owned());
    }
    all.sort_by_key(|(k, _)| *k);
    all.into_iter().map(|(_, result)| result).collect()
}
