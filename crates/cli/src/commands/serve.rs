//! `serve`: the sheet in the browser, over a folder of enquiries.

use crate::{End, out};
use std::path::{Path, PathBuf};
use stillrise_desk::folder::Folder;
use stillrise_desk::jobs::JOBS;
use stillrise_web::{Options, start};

/// The sheet in the browser, over a folder of enquiries; prints its address
#[derive(clap::Args)]
pub struct Args {
    /// The folder of enquiries; made if it does not exist
    #[arg(default_value = ".")]
    dir: PathBuf,
    /// The port; one that is free where none is named
    #[arg(long)]
    port: Option<u16>,
    /// Only prints the address, and opens no browser
    #[arg(long)]
    no_open: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    serve(&Options { folder: args.dir.clone(), port: args.port }, None, !args.no_open, "")
}

/// The worked job that the sheet opens on where nothing was asked for.
const FIRST: &str = "vehicle-yard";

/// Runs it on a worked job, in a folder that goes when it ends.
pub fn trial() -> End {
    match tempfile::Builder::new().prefix("stillrise-").tempdir() {
        Ok(folder) => match filled(folder.path()) {
            Ok(()) => serve(&Options { folder: folder.path().to_owned(), port: None }, Some(FIRST), true, TRIAL),
            Err(trouble) => trouble.into(),
        },
        Err(error) => End::Machine(format!("no folder for a trial can be made: {error}")),
    }
}

/// What is told of the folder of a trial.
const TRIAL: &str = "This is a trial on a copy of a worked job: what is changed here goes when it ends. `stillrise serve FOLDER` keeps \
                     enquiries in a folder of yours; `stillrise --help` lists all commands.\n";

/// Copies the worked job into a folder.
fn filled(folder: &Path) -> Result<(), stillrise_desk::Trouble> {
    let Some(job) = JOBS.iter().find(|job| job.name == FIRST) else { return Ok(()) };
    let files: Vec<(&str, &[u8])> = job.files.iter().map(|(name, text)| (*name, text.as_bytes())).collect();
    Folder::open(folder)?.create(job.name, &files).map(|_| ())
}

fn serve(options: &Options, sheet: Option<&str>, opens: bool, more: &str) -> End {
    let serving = match start(options) {
        Ok(serving) => serving,
        Err(trouble) => return trouble.into(),
    };
    let address = serving.address(sheet);
    out::print(&format!(
        "The sheet is at\n\n    {address}\n\nWhoever has this address may read and change what lies in the folder. Ctrl-C ends it.\n{more}"
    ));
    // Where there is no screen, the address is all that can be given.
    if opens && has_screen() {
        let _ = open::that_detached(&address);
    }
    serving.run();
    End::Done
}

/// Whether a browser can show anything.
fn has_screen() -> bool {
    !cfg!(target_os = "linux") || ["DISPLAY", "WAYLAND_DISPLAY"].iter().any(|name| std::env::var_os(name).is_some())
}
