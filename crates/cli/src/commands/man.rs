//! `man`: the manual page, from the one definition of the command line.

use crate::{End, out};
use clap::CommandFactory;

/// The manual page, in roff
#[derive(clap::Args)]
pub struct Args {}

/// Runs it.
pub fn run(_: &Args) -> End {
    let mut bytes = Vec::new();
    let page = clap_mangen::Man::new(crate::Cli::command());
    if let Err(error) = page.render(&mut bytes) {
        return End::Machine(format!("the manual page could not be made: {error}"));
    }
    out::print(&String::from_utf8_lossy(&bytes));
    End::Done
}
