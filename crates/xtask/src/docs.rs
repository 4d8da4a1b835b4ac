//! `cargo xtask docs`: the manual as a folder, and the step that looks through it; the pictures of `docs/pictures/`.
//!
//! The program writes the manual; this one runs it, so that nothing heavy is built into the chores.

use crate::run;
use crate::test::Done;
use std::fs;
use std::path::{Path, PathBuf};
use xtask::{site, tree};

/// Where pictures are kept.
const PICTURES: &str = "docs/pictures";

/// The command.
pub fn main(args: &[String]) -> Result<(), String> {
    let root = tree::root()?;
    let out = match args {
        [] => run::target()?.join("manual"),
        [name, dir] if name == "--out" => PathBuf::from(dir),
        _ => return Err("`docs` takes nothing, or `--out DIR`".to_owned()),
    };
    let program = run::stillrise(&root)?;
    written(&program, &root, &out)?;
    look_through(&out)?;
    println!("open {}", out.join(site::HOME).display());
    Ok(())
}

/// The step: the documentation of the code, the manual twice alike and in order, the pictures as they are kept.
pub fn step(root: &Path) -> Result<Done, String> {
    let mut doc = run::cargo(root);
    doc.env("RUSTDOCFLAGS", "-D warnings").args(["doc", "--workspace", "--no-deps", "--quiet"]);
    run::show(&mut doc)?;
    let program = run::stillrise(root)?;
    let out = run::target()?.join("manual");
    written(&program, root, &out)?;
    look_through(&out)?;
    let again = tempfile::tempdir().map_err(|e| format!("no scratch folder: {e}"))?;
    let other = again.path().join("manual");
    written(&program, root, &other)?;
    let diff = xtask::diff::lines(&crate::bless::hashes(&out)?, &crate::bless::hashes(&other)?);
    if !diff.is_empty() {
        return Err(format!("the manual is not the same twice\n{diff}"));
    }
    let old = pictures(&root.join(PICTURES))?;
    if old != pictures(&out.join("pictures"))? {
        return Err(format!(
            "{PICTURES} is not what the program draws; `cargo xtask bless pictures`, then look at them"
        ));
    }
    Ok(Done::Passed)
}

/// Writes the pictures where they are kept.
pub fn bless_pictures(program: &Path, root: &Path) -> Result<(), String> {
    let scratch = tempfile::tempdir().map_err(|e| format!("no scratch folder: {e}"))?;
    let made = scratch.path().join("manual");
    written(program, root, &made)?;
    let (folder, new) = (root.join(PICTURES), pictures(&made.join("pictures"))?);
    let told = |e: std::io::Error| format!("{PICTURES}: {e}");
    fs::create_dir_all(&folder).map_err(told)?;
    let old = pictures(&folder)?;
    for (name, _) in old.iter().filter(|(name, _)| !new.iter().any(|(kept, _)| kept == name)) {
        fs::remove_file(folder.join(name)).map_err(told)?;
    }
    for (name, text) in new.iter().filter(|one| !old.contains(one)) {
        fs::write(folder.join(name), text).map_err(told)?;
        println!("wrote {PICTURES}/{name}");
    }
    Ok(())
}

/// Names and texts of the pictures in a folder; none where there is no folder.
fn pictures(folder: &Path) -> Result<Vec<(String, String)>, String> {
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let all = tree::read(folder)?.into_iter().map(|file| (file.path, file.text));
    Ok(all.filter(|(name, _)| name.ends_with(".svg")).collect())
}

fn written(program: &Path, root: &Path, out: &Path) -> Result<(), String> {
    run::show(run::plain(program, root).args(["manual", "--out"]).arg(out))
}

fn look_through(folder: &Path) -> Result<(), String> {
    let files = tree::read(folder)?;
    let (faults, links) = site::check(&files);
    if faults.is_empty() {
        println!("{} files, {links} links followed", files.len());
        return Ok(());
    }
    let shown: Vec<&str> = faults.iter().take(40).map(String::as_str).collect();
    Err(format!("{}\n{} faults in {}", shown.join("\n"), faults.len(), folder.display()))
}
