//! `new`: starts an enquiry.

use crate::{End, out};
use std::fs;
use std::io::Write;
use std::path::PathBuf;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind};
use stillrise_design::enquiry::settings::{self, SETTINGS};
use stillrise_design::enquiry::spec::without_options;
use stillrise_desk::jobs::JOBS;
use stillrise_units::{Fault, nearest};

/// Starts an enquiry in a folder: from a worked job, or blank with every key explained
#[derive(clap::Args)]
pub struct Args {
    /// The folder; made if it does not exist
    #[arg(default_value = "enquiry")]
    dir: PathBuf,
    /// The worked job to start from
    #[arg(long, value_name = "NAME", default_value = "vehicle-yard")]
    like: String,
    /// Every key, explained and commented out, in place of a worked job
    #[arg(long, conflicts_with = "like")]
    blank: bool,
    /// A company's settings, every key explained and commented out, in place of an enquiry
    #[arg(long, conflicts_with_all = ["like", "blank"])]
    settings: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let (blank_text, settings_text) = (blank(), blank_settings());
    let files: Vec<(&str, &str)> = if args.settings {
        vec![(SETTINGS, settings_text.as_str())]
    } else if args.blank {
        vec![("enquiry.toml", blank_text.as_str())]
    } else {
        match JOBS.iter().find(|j| j.name == args.like) {
            Some(job) => job.files.to_vec(),
            None => {
                let names: Vec<&str> = JOBS.iter().map(|j| j.name).collect();
                let remedy = match nearest(&args.like, names.iter().copied()) {
                    Some(near) => format!("did you mean {near}?"),
                    None => format!("the worked jobs are {}", names.join(", ")),
                };
                return End::Refused(vec![Fault::new(
                    "--like",
                    format!("there is no worked job \"{}\"", args.like),
                    remedy,
                )]);
            }
        }
    };
    let there: Vec<Fault> = files
        .iter()
        .map(|(name, _)| args.dir.join(name))
        .filter(|path| path.exists())
        .map(|path| {
            Fault::new(path.display().to_string(), "exists already", "name another folder; nothing is overwritten")
        })
        .collect();
    if !there.is_empty() {
        return End::Refused(there);
    }
    if let Some(file) = args.dir.ancestors().find(|above| above.is_file()) {
        return End::Refused(vec![Fault::new(file.display().to_string(), "is a file, not a folder", "name a folder")]);
    }
    if let Err(error) = fs::create_dir_all(&args.dir) {
        return End::Machine(format!("{} cannot be made: {error}", args.dir.display()));
    }
    let mut text = String::new();
    for (name, bytes) in files {
        let path = args.dir.join(name);
        let written = fs::File::create_new(&path).and_then(|mut file| file.write_all(bytes.as_bytes()));
        if let Err(error) = written {
            return End::Machine(format!("{} cannot be written: {error}", path.display()));
        }
        text.push_str(&format!("{}\n", path.display()));
    }
    text.push_str(&match args.settings {
        true => "It holds for the enquiries in this folder and in the folders right below it.\n".to_owned(),
        false => format!("Now: stillrise size {}\n", args.dir.join("enquiry.toml").display()),
    });
    out::print(&text);
    End::Done
}

/// What may be written for a word or a name, a line each: words with their meanings, names in lines of some length.
fn choices(kind: KeyKind) -> Vec<String> {
    match kind {
        KeyKind::Choice(words) => words.iter().map(|(word, meaning)| format!("\"{word}\": {meaning}")).collect(),
        KeyKind::Named(names) => {
            let mut lines = vec![String::new()];
            for name in names() {
                let name = format!("\"{name}\"");
                match lines.last_mut() {
                    Some(line) if line.is_empty() => *line = name,
                    Some(line) if line.chars().count() + name.chars().count() < LINE => {
                        line.push_str(", ");
                        line.push_str(&name);
                    }
                    _ => lines.push(name),
                }
            }
            lines
        }
        _ => Vec::new(),
    }
}

/// Characters in a line of names.
const LINE: usize = 100;

/// Every key, explained and commented out, from the one list of keys.
fn blank() -> String {
    let text = String::from(
        "# An enquiry. Every number has a unit; any value may be { value = \"..\", from = \"who said so\" },\n# and a list of such claims when they contradict each other; a number may be a range, as \"10 to 20 gpm\".\n# Who decides between claims writes chosen = true and because = \"..\" into one of them.\n# Remove the # of what is known.\n",
    );
    explained(text, "enquiry", blocks())
}

/// The same of a company's settings.
fn blank_settings() -> String {
    let text = String::from(
        "# What a company says once for all its enquiries. It stands below what an enquiry states and above defaults.\n# Remove the # of what holds.\n",
    );
    explained(text, "company", settings::blocks())
}

/// All blocks behind a head; one of them must stand.
fn explained(mut text: String, stands: &str, blocks: impl Iterator<Item = (&'static BlockSpec, bool)>) -> String {
    for (spec, many) in blocks {
        let (open, close) = if many { ("[[", "]]") } else { ("[", "]") };
        let mark = if spec.name == stands { "" } else { "# " };
        text.push_str(&format!("\n# {}\n{mark}{open}{}{close}\n", spec.doc, spec.name));
        for key in spec.keys() {
            let mark = if spec.name == stands && key.needed { "" } else { "# " };
            let like = if key.like.is_empty() { "..." } else { key.like };
            text.push_str(&format!("{mark}{} = {like}   # {}\n", key.name, key.doc));
            for line in choices(key.kind) {
                text.push_str(&format!("#     {line}\n"));
            }
            for question in key.questions() {
                text.push_str(&format!("#     asked as: {}\n", without_options(question)));
            }
            if let Some(stands_in) = key.stands_in() {
                text.push_str(&format!("#     where nobody says: {stands_in}\n"));
            }
        }
    }
    text
}
