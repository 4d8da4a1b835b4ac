//! The step that works the sheet in a real browser: Chromium and the checker for accessibility are brought where that may be
//! done, else it is said how.

use crate::run;
use crate::test::Done;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Names the browser, where it lies elsewhere.
const NAMED: &str = "STILLRISE_CHROMIUM";
/// Where it usually lies.
const USUAL: [&str; 3] = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
/// The checker, with its version.
const CHECKER: &str = "axe-core@4.14.1";

/// Runs the step.
pub fn run(root: &Path) -> Result<Done, String> {
    if let Some(why) = chromium()? {
        return Ok(Done::NotRun(why));
    }
    if let Some(why) = checker(root)? {
        return Ok(Done::NotRun(why));
    }
    run::show(run::cargo(root).args(["test", "--workspace", "--quiet", "--test", "browser"]))?;
    Ok(Done::Passed)
}

fn there() -> bool {
    let named = std::env::var_os(NAMED).map(PathBuf::from);
    named.into_iter().chain(USUAL.map(PathBuf::from)).any(|path| path.exists())
}

/// Brings the browser; why it cannot be had, where it may not be installed.
fn chromium() -> Result<Option<String>, String> {
    if there() {
        return Ok(None);
    }
    let is_root = run::capture(Command::new("id").arg("-u")).is_ok_and(|out| out.stdout.trim() == "0");
    if !(is_root && run::answers("apt-get", "--version")) {
        return Ok(Some(format!(
            "there is no Chromium: install it (Debian: apt-get install chromium), or name one in {NAMED}, then `cargo xtask test browser`"
        )));
    }
    run::show(Command::new("apt-get").args(["update", "-qq"]))?;
    let quiet = ["install", "-y", "-qq", "--no-install-recommends", "chromium"];
    run::show(Command::new("apt-get").env("DEBIAN_FRONTEND", "noninteractive").args(quiet))?;
    if there() { Ok(None) } else { Err("Chromium was installed and is not found".to_owned()) }
}

/// Brings the checker; why it cannot be had.
fn checker(root: &Path) -> Result<Option<String>, String> {
    let folder = root.join("target/browser");
    let script = folder.join("node_modules/axe-core/axe.min.js");
    if script.is_file() || std::env::var_os("STILLRISE_AXE").is_some() {
        return Ok(None);
    }
    if !run::answers("npm", "--version") {
        return Ok(Some(
            "there is no npm to bring axe-core with: install it, or name its axe.min.js in STILLRISE_AXE, then `cargo xtask test browser`"
                .to_owned(),
        ));
    }
    std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let prefix = folder.to_string_lossy().into_owned();
    run::show(Command::new("npm").args([
        "install",
        "--silent",
        "--no-save",
        "--no-audit",
        "--prefix",
        &prefix,
        CHECKER,
    ]))?;
    if script.is_file() { Ok(None) } else { Err(format!("{} was not brought", script.display())) }
}
