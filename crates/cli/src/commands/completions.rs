//! `completions`: completions of the shell, from the one definition of the command line.

use crate::{End, out};
use clap::CommandFactory;
use clap_complete::Shell;

/// Completions for a shell
#[derive(clap::Args)]
pub struct Args {
    /// The shell
    #[arg(value_enum)]
    shell: Shell,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let mut bytes = Vec::new();
    clap_complete::generate(args.shell, &mut crate::Cli::command(), "stillrise", &mut bytes);
    out::print(&String::from_utf8_lossy(&bytes));
    End::Done
}
