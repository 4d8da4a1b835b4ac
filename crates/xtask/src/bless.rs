//! `cargo xtask bless`: the accepted outputs of the worked jobs, rewritten or compared.
//!
//! Beside each enquiry stand the terminal's text, the trail by section, every text of the drawings, and a
//! hash of every file of the package, so that a change of any number shows in review.

use crate::test::Done;
use crate::{docs, run, validation};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};
use xtask::tree::papers::{ACCEPTED, LARGEST};
use xtask::tree::{self};

/// Lines of a difference that are printed.
const SHOWN: usize = 80;

/// The word for `docs/validation.md` alone.
const PAGE: &str = "validation";
/// The word for `docs/pictures/` alone.
const PICTURES: &str = "pictures";

/// The command.
pub fn main(args: &[String]) -> Result<(), String> {
    let root = tree::root()?;
    let compare = args.iter().any(|a| a == "--check");
    let named: Vec<&String> = args.iter().filter(|a| *a != "--check").collect();
    let mut jobs = run::jobs(&root)?;
    if let (false, [one]) = (compare, named.as_slice()) {
        match one.as_str() {
            PAGE => return write_page(&run::stillrise(&root)?, &root),
            PICTURES => return docs::bless_pictures(&run::stillrise(&root)?, &root),
            _ => {}
        }
    }
    if let Some(odd) = named.iter().find(|n| !jobs.contains(n)) {
        return Err(format!(
            "no worked job `{odd}`; there are: {}, and alone `{PAGE}` or `{PICTURES}`",
            jobs.join(", ")
        ));
    }
    jobs.retain(|job| named.is_empty() || named.contains(&job));
    if jobs.is_empty() {
        return Err("there are no worked jobs in enquiries/".to_owned());
    }
    let program = run::stillrise(&root)?;
    if compare {
        return compare_all(&program, &root, &jobs);
    }
    let all = run::each(&jobs, |job| outputs(&program, &root, job))?;
    for (job, made) in jobs.iter().zip(all) {
        let folder = accepted(&root, job);
        fs::create_dir_all(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
        for (name, new) in made {
            let path = folder.join(name);
            let old = fs::read_to_string(&path).unwrap_or_default();
            if old != new || !path.is_file() {
                fs::write(&path, new).map_err(|e| format!("{}: {e}", path.display()))?;
                println!("wrote enquiries/{job}/accepted/{name}");
            }
        }
    }
    if named.is_empty() {
        write_page(&program, &root)?;
        docs::bless_pictures(&program, &root)?;
    }
    println!("{} jobs blessed; read the difference before you commit it", jobs.len());
    Ok(())
}

fn write_page(program: &Path, root: &Path) -> Result<(), String> {
    let (path, page) = (validation::place(root), validation::page(program, root)?);
    fs::write(&path, page).map_err(|e| format!("{}: {e}", path.display()))
}

/// The step `accepted`.
pub fn check(root: &Path) -> Result<Done, String> {
    let jobs = run::jobs(root)?;
    if jobs.is_empty() {
        return Ok(Done::NotRun("there are no worked jobs in enquiries/ yet".to_owned()));
    }
    let program = run::stillrise(root)?;
    compare_all(&program, root, &jobs)?;
    let (old, new) =
        (fs::read_to_string(validation::place(root)).unwrap_or_default(), validation::page(&program, root)?);
    if old != new {
        let diff = head(&xtask::diff::lines(&old, &new));
        return Err(format!(
            "docs/validation.md differs (- accepted, + now)\n{diff}\n`cargo xtask bless` writes it anew"
        ));
    }
    Ok(Done::Passed)
}

fn compare_all(program: &Path, root: &Path, jobs: &[String]) -> Result<(), String> {
    let mut changed = Vec::new();
    let all = run::each(jobs, |job| outputs(program, root, job))?;
    for (job, made) in jobs.iter().zip(&all) {
        for (name, new) in made {
            let path = accepted(root, job).join(name);
            let title = format!("enquiries/{job}/accepted/{name}");
            match fs::read_to_string(&path) {
                Ok(old) if old == *new => {}
                Ok(old) => {
                    changed.push(format!("{title} (- accepted, + now)\n{}", head(&xtask::diff::lines(&old, new))))
                }
                Err(error) => changed.push(format!("{title}: {error}\n")),
            }
        }
        for stale in files(&accepted(root, job))?.into_iter().filter(|f| !ACCEPTED.contains(&f.as_str())) {
            changed.push(format!("enquiries/{job}/accepted/{stale}: nothing writes it any more\n"));
        }
    }
    if changed.is_empty() {
        println!("{} jobs give their accepted outputs", jobs.len());
        return Ok(());
    }
    Err(format!(
        "{}\n{} accepted outputs differ; `cargo xtask bless` accepts the new",
        changed.join("\n"),
        changed.len()
    ))
}

/// The beginning of a long difference.
fn head(diff: &str) -> String {
    let count = diff.lines().count();
    let mut text: String = diff.lines().take(SHOWN).map(|l| format!("{l}\n")).collect();
    if count > SHOWN {
        text.push_str(&format!("  ... and {} lines more\n", count - SHOWN));
    }
    text
}

fn accepted(root: &Path, job: &str) -> PathBuf {
    root.join("enquiries").join(job).join("accepted")
}

/// What a job gives now, in the order of [`ACCEPTED`].
fn outputs(program: &Path, root: &Path, job: &str) -> Result<Vec<(&'static str, String)>, String> {
    let mut command = run::plain(program, root);
    let size = run::capture(command.args(["size", &run::enquiry(job)]))?;
    if !matches!(size.code, Some(0 | 1)) {
        return Err(format!("`{}` ended with {:?}\n{}", run::words(&command), size.code, size.stderr));
    }
    let folder = package(program, root, job)?;
    let mut said = parts(&size.stdout).into_iter();
    ACCEPTED
        .iter()
        .map(|name| {
            let text = match *name {
                "size.txt" | "size-2.txt" | "size-3.txt" => said.next().unwrap_or_default(),
                "trail.txt" => by_section(&part(&folder, "trail.txt")?),
                "hashes.txt" => hashes(&folder)?,
                other => part(&folder, other)?,
            };
            Ok((*name, text))
        })
        .collect()
}

/// A long text in parts, each ending at an empty line, none larger than is read.
fn parts(text: &str) -> Vec<String> {
    let mut all = vec![String::new()];
    for paragraph in text.split_inclusive("\n\n") {
        match all.last_mut() {
            Some(last) if last.len() + paragraph.len() <= LARGEST => last.push_str(paragraph),
            _ => all.push(paragraph.to_owned()),
        }
    }
    all
}

/// The trail as a line for each section: how many values it has, a hash over all of its text, its name. A value that changes
/// shows where; what it was stands in the package.
fn by_section(trail: &str) -> String {
    let mut out = String::new();
    let mut section: Option<(&str, usize, Sha256)> = None;
    let mut end = |section: &mut Option<(&str, usize, Sha256)>| {
        if let Some((name, count, hash)) = section.take() {
            let hash: String = hash.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect();
            out.push_str(&format!("{count:>4}  {hash}  {name}\n"));
        }
    };
    for line in trail.lines() {
        if !line.is_empty() && !line.starts_with(' ') {
            end(&mut section);
            section = Some((line, 0, Sha256::new()));
        }
        if let Some((_, count, hash)) = &mut section {
            hash.update(line.as_bytes());
            hash.update([b'\n']);
            let number = line.trim_start().split(' ').next().unwrap_or_default();
            let indent = line.len() - line.trim_start().len();
            *count += usize::from(indent > 0 && indent < 5 && number.parse::<u32>().is_ok());
        }
    }
    end(&mut section);
    out
}

/// Writes the package of a worked job under the build folder and returns where.
pub fn package(program: &Path, root: &Path, job: &str) -> Result<PathBuf, String> {
    let folder = run::target()?.join("packages").join(job);
    if folder.exists() {
        fs::remove_dir_all(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
    }
    if let Some(parent) = folder.parent() {
        fs::create_dir_all(parent).map_err(|e| format!("{}: {e}", parent.display()))?;
    }
    submittal(program, root, job, &folder)?;
    Ok(folder)
}

/// The package of a worked job, as an earlier step wrote it with this program of the enquiry as it stands, else written anew.
pub fn written(program: &Path, root: &Path, job: &str) -> Result<PathBuf, String> {
    let folder = run::target()?.join("packages").join(job);
    let time = |path: &Path| fs::metadata(path).and_then(|m| m.modified()).ok();
    let from = root.join("enquiries").join(job);
    let mut sources = vec![program.to_path_buf()];
    sources
        .extend(fs::read_dir(&from).into_iter().flatten().flatten().map(|entry| entry.path()).filter(|p| p.is_file()));
    let newest = sources.iter().map(|path| time(path)).max().flatten();
    match (time(&folder.join("manifest.json")), newest) {
        (Some(written), Some(newest)) if written > newest => Ok(folder),
        _ => package(program, root, job),
    }
}

/// Runs `stillrise submittal` and sees that a package came of it.
pub fn submittal(program: &Path, root: &Path, job: &str, out: &Path) -> Result<(), String> {
    let mut command = run::plain(program, root);
    let done = run::capture(command.args(["submittal", &run::enquiry(job), "--for", "us", "--out"]).arg(out))?;
    if !matches!(done.code, Some(0 | 1)) {
        return Err(format!("`{}` ended with {:?}\n{}", run::words(&command), done.code, done.stderr));
    }
    if !out.join("manifest.json").is_file() {
        return Err(format!("`{}` wrote no manifest.json", run::words(&command)));
    }
    Ok(())
}

/// A text file of the package, wherever in it.
fn part(folder: &Path, name: &str) -> Result<String, String> {
    let all = files(folder)?;
    let found = all.iter().find(|f| f.rsplit('/').next() == Some(name));
    let path = found.ok_or_else(|| format!("the package has no {name}; it has: {}", all.join(", ")))?;
    fs::read_to_string(folder.join(path)).map_err(|e| format!("{path}: {e}"))
}

/// `sha256  name` of every file of a package, a line each, sorted by name.
pub fn hashes(folder: &Path) -> Result<String, String> {
    let mut text = String::new();
    for name in files(folder)? {
        let bytes = fs::read(folder.join(&name)).map_err(|e| format!("{name}: {e}"))?;
        for byte in Sha256::digest(&bytes) {
            text.push_str(&format!("{byte:02x}"));
        }
        text.push_str(&format!("  {name}\n"));
    }
    Ok(text)
}

/// Paths of all files under a folder, forward slashes, sorted; none when it does not exist.
pub fn files(folder: &Path) -> Result<Vec<String>, String> {
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    Ok(tree::read(folder)?.into_iter().map(|f| f.path).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hashes_are_those_of_the_standard() {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("b")).unwrap();
        fs::write(folder.path().join("b/abc.txt"), "abc").unwrap();
        fs::write(folder.path().join("a.txt"), "").unwrap();
        // FIPS 180-4: the empty message, and "abc".
        let expected = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  a.txt\n\
                        ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  b/abc.txt\n";
        assert_eq!(hashes(folder.path()).unwrap(), expected);
        assert_eq!(part(folder.path(), "abc.txt").unwrap(), "abc");
        assert!(part(folder.path(), "drawings.txt").is_err());
    }
}
