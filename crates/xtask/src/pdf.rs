//! The step `pdf`: the documents, read back by a program that is not ours.

use crate::test::Done;
use crate::{bless, run};
use std::path::Path;
use std::process::Command;

/// The package that holds both readers, under the name most systems give it.
const PACKAGE: &str = "poppler-utils";

/// What older readers say of `/MarkInfo << /Suspects false >>`, though ISO 32000-1, table 321, makes it a
/// boolean that is false by default. The one complaint that is not the file's.
const NOT_A_FAULT: &str = "Syntax Error: Suspects object is wrong type (boolean)";

/// The step.
pub fn run(root: &Path) -> Result<Done, String> {
    let jobs = run::jobs(root)?;
    if jobs.is_empty() {
        return Ok(Done::NotRun("there are no worked jobs in enquiries/ yet".to_owned()));
    }
    if !readers() && !install() {
        return Ok(Done::NotRun(format!(
            "pdfinfo and pdftotext are missing: install {PACKAGE} (apt-get install {PACKAGE}, brew install poppler)"
        )));
    }
    let program = run::stillrise(root)?;
    let folders = run::each(&jobs, |job| bless::written(&program, root, job))?;
    let mut count = 0;
    for (job, folder) in jobs.iter().zip(&folders) {
        let title = title(root, job)?;
        let mut titled = false;
        for name in bless::files(folder)?.iter().filter(|f| f.ends_with(".pdf")) {
            let (pages, text) = read(&folder.join(name)).map_err(|why| format!("{job}/{name}: {why}"))?;
            let plain = squeeze(&text);
            titled |= plain.contains(&squeeze(&title));
            count += 1;
            println!("{job}/{name}: {pages} pages, {} characters of text", plain.chars().count());
        }
        if !titled {
            return Err(format!("{job}: no PDF file of the package reads \"{title}\""));
        }
    }
    println!("{count} PDF files of {} jobs read back", jobs.len());
    Ok(Done::Passed)
}

/// Both answer `-v` with success.
fn readers() -> bool {
    run::answers("pdfinfo", "-v") && run::answers("pdftotext", "-v")
}

/// Where the system lets us, we install them: on a fresh machine nobody else will.
fn install() -> bool {
    let is_root = run::capture(Command::new("id").arg("-u")).is_ok_and(|out| out.stdout.trim() == "0");
    if !is_root || !run::answers("apt-get", "--version") {
        return false;
    }
    let apt = |args: &[&str]| {
        run::show(Command::new("apt-get").env("DEBIAN_FRONTEND", "noninteractive").arg("-qq").args(args))
    };
    let done = apt(&["update"]).and_then(|()| apt(&["install", "--yes", "--no-install-recommends", PACKAGE]));
    done.is_ok() && readers()
}

/// Pages and text of a file that both programs read without complaint.
fn read(path: &Path) -> Result<(u32, String), String> {
    let info = run::capture(Command::new("pdfinfo").arg(path))?;
    let text = run::capture(Command::new("pdftotext").args(["-layout", "-enc", "UTF-8"]).arg(path).arg("-"))?;
    for (name, out) in [("pdfinfo", &info), ("pdftotext", &text)] {
        let complaints: Vec<&str> =
            out.stderr.lines().filter(|l| !l.trim().is_empty() && l.trim() != NOT_A_FAULT).collect();
        if out.code != Some(0) || !complaints.is_empty() {
            return Err(format!("{name} complains: {}", complaints.join("; ")));
        }
    }
    let pages = field(&info.stdout, "Pages").and_then(|n| n.parse().ok()).unwrap_or(0);
    if pages == 0 {
        return Err("no pages".to_owned());
    }
    if field(&info.stdout, "Title").is_none_or(str::is_empty) {
        return Err("no title in its properties".to_owned());
    }
    if text.stdout.trim().is_empty() {
        return Err("no text".to_owned());
    }
    Ok((pages, text.stdout))
}

/// A `Name:   value` line of `pdfinfo`.
fn field<'a>(info: &'a str, name: &str) -> Option<&'a str> {
    info.lines().find_map(|l| l.strip_prefix(name)?.strip_prefix(':')).map(str::trim)
}

/// The enquiry's title, which the documents must carry.
fn title(root: &Path, job: &str) -> Result<String, String> {
    let path = run::enquiry(job);
    let text = std::fs::read_to_string(root.join(&path)).map_err(|e| format!("{path}: {e}"))?;
    let table: toml::Table = text.parse().map_err(|e| format!("{path}: {e}"))?;
    let title = table.get("enquiry").and_then(|e| e.get("title")).and_then(|t| t.as_str());
    title.map(str::to_owned).ok_or_else(|| format!("{path} has no title"))
}

/// Letters and digits only: line breaks, hyphens and ligatures are the typesetter's affair.
fn squeeze(text: &str) -> String {
    let split = text.replace('ﬁ', "fi").replace('ﬂ', "fl").replace('ﬀ', "ff").replace('ﬃ', "ffi").replace('ﬄ', "ffl");
    split.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_and_words_are_found() {
        let info = "Title:          Bus depot\nPages:          3\n";
        assert_eq!(field(info, "Pages"), Some("3"));
        assert_eq!(field(info, "Author"), None);
        assert_eq!(squeeze("Bus de-\n  pot, of\u{fb01}ce"), "busdepotoffice");
    }
}
