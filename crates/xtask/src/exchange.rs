//! The step `exchange`: drawings, model and workbook of every package, read back by programs that are not ours.

use crate::test::Done;
use crate::{bless, run};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The readers with their versions, as their index has them.
const READERS: [&str; 6] =
    ["ezdxf==1.4.5", "trimesh==5.2.0", "openpyxl==3.1.5", "numpy==2.4.6", "fonttools==4.68.0", "et-xmlfile==2.0.0"];
/// What is asked of them.
const ASKS: &str = include_str!("exchange.py");

/// The step.
pub fn run(root: &Path) -> Result<Done, String> {
    let jobs = run::jobs(root)?;
    if jobs.is_empty() {
        return Ok(Done::NotRun("there are no worked jobs in enquiries/ yet".to_owned()));
    }
    let python = match readers(root)? {
        Ok(python) => python,
        Err(why) => return Ok(Done::NotRun(why)),
    };
    let program = run::stillrise(root)?;
    let folders = run::each(&jobs, |job| bless::written(&program, root, job))?;
    let mut files = Vec::new();
    for folder in &folders {
        let named = |name: &String| [".dxf", ".glb", ".xlsx"].iter().any(|end| name.ends_with(end));
        let own: Vec<PathBuf> = bless::files(folder)?.into_iter().filter(named).map(|name| folder.join(name)).collect();
        files.extend(own);
    }
    if files.is_empty() {
        return Err("no package has a file for other programs".to_owned());
    }
    let script = root.join("target/exchange/exchange.py");
    std::fs::write(&script, ASKS).map_err(|e| format!("{}: {e}", script.display()))?;
    let out = run::capture(Command::new(python).arg("-B").arg(&script).args(&files))?;
    print!("{}", out.stdout);
    if out.code == Some(0) { Ok(Done::Passed) } else { Err(format!("a file is not as it should be\n{}", out.stderr)) }
}

/// Brings the readers into a folder of their own; the program to run them with, or why they cannot be had.
fn readers(root: &Path) -> Result<Result<PathBuf, String>, String> {
    let folder = root.join("target/exchange");
    let python = folder.join(if cfg!(windows) { "venv/Scripts/python.exe" } else { "venv/bin/python" });
    let all = READERS
        .map(|reader| reader.split("==").next().unwrap_or(reader).replace('-', "_").replace("fonttools", "fontTools"));
    let ready = |python: &Path| {
        let asks = format!("import {}", all.join(", "));
        run::capture(Command::new(python).args(["-c", &asks])).is_ok_and(|out| out.code == Some(0))
    };
    if ready(&python) {
        return Ok(Ok(python));
    }
    if !run::answers("python3", "--version") {
        return Ok(Err(
            "there is no python3 to run other readers with: install it, then `cargo xtask test exchange`".to_owned()
        ));
    }
    std::fs::create_dir_all(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
    run::show(Command::new("python3").args(["-m", "venv"]).arg(folder.join("venv")))?;
    let brought = run::show(Command::new(&python).args(["-m", "pip", "install", "--quiet"]).args(READERS));
    if brought.is_err() {
        return Ok(Err(format!(
            "the readers could not be brought: `pip install {}`, then `cargo xtask test exchange`",
            READERS.join(" ")
        )));
    }
    if ready(&python) { Ok(Ok(python)) } else { Err("the readers were brought and do not start".to_owned()) }
}
