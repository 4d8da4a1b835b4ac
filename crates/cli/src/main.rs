//! `stillrise`: sizes, checks and documents oil-water separators.
//!
//! The rooms of `ARCHITECTURE.md`, from left to right, each using only what is left of it: [`stillrise_units`],
//! [`stillrise_handbook`], [`stillrise_design`], `stillrise_edit`, [`stillrise_mail`], [`stillrise_checks`], [`stillrise_search`],
//! [`stillrise_documents`], [`stillrise_desk`], [`stillrise_web`]; a command a file in `commands`.

mod commands;
mod out;
mod progress;

use clap::{Parser, Subcommand};
use std::process::ExitCode;
use stillrise_desk::Trouble;
use stillrise_search::Settled;

/// A third of the time of `size` went into getting and giving back small pieces of memory; measured in
/// `docs/decisions/allocator.md`.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Sizes, checks and documents oil-water separators; without a command it opens the sheet on a worked
/// job. Preliminary results, for review by a licensed engineer; local codes and the permit govern.
#[derive(Parser)]
#[command(name = "stillrise", version, propagate_version = true, max_term_width = 100, after_help = EXIT_CODES)]
struct Cli {
    #[command(subcommand)]
    command: Option<Command>,
}

const EXIT_CODES: &str =
    "Exit codes: 0 done, 1 done but a rule or a check fails, 2 input refused, 3 failure of the machine.";

#[derive(Subcommand)]
enum Command {
    Serve(commands::serve::Args),
    New(commands::new::Args),
    Size(commands::size::Args),
    Remedy(commands::remedy::Args),
    Reply(commands::reply::Args),
    Documents(commands::documents::Args),
    Submittal(commands::submittal::Args),
    Risk(commands::risk::Args),
    Flow(commands::flow::Args),
    Rate(commands::rate::Args),
    Read(commands::read::Args),
    Compare(commands::compare::Args),
    Issue(commands::issue::Args),
    Work(commands::work::Args),
    Words(commands::words::Args),
    Verify(commands::verify::Args),
    Schema(commands::schema::Args),
    Completions(commands::completions::Args),
    Man(commands::man::Args),
    Manual(commands::manual::Args),
}

/// How a command ended, and with what words on the error stream.
pub enum End {
    /// Done.
    Done,
    /// Done, but a rule or a check fails.
    Fails,
    /// The input is refused; every fault.
    Refused(Vec<stillrise_units::Fault>),
    /// The machine failed: file, disk, library.
    Machine(String),
}

impl From<Trouble> for End {
    fn from(trouble: Trouble) -> Self {
        match trouble {
            Trouble::Refused(faults) => End::Refused(faults),
            Trouble::Machine(reason) => End::Machine(reason),
        }
    }
}

/// How a command ends that settled a job.
fn ended(settled: &Settled) -> End {
    if settled.fails() { End::Fails } else { End::Done }
}

fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => {
            let code = u8::from(error.use_stderr()) * 2;
            let text = error.render().to_string();
            if code == 0 {
                out::print(&text);
            } else {
                out::complain(&text);
            }
            return ExitCode::from(code);
        }
    };
    let end = match cli.command {
        None => commands::serve::trial(),
        Some(Command::Serve(args)) => commands::serve::run(&args),
        Some(Command::New(args)) => commands::new::run(&args),
        Some(Command::Size(args)) => commands::size::run(&args),
        Some(Command::Remedy(args)) => commands::remedy::run(&args),
        Some(Command::Reply(args)) => commands::reply::run(&args),
        Some(Command::Documents(args)) => commands::documents::run(&args),
        Some(Command::Submittal(args)) => commands::submittal::run(&args),
        Some(Command::Risk(args)) => commands::risk::run(&args),
        Some(Command::Flow(args)) => commands::flow::run(&args),
        Some(Command::Rate(args)) => commands::rate::run(&args),
        Some(Command::Read(args)) => commands::read::run(&args),
        Some(Command::Compare(args)) => commands::compare::run(&args),
        Some(Command::Issue(args)) => commands::issue::run(&args),
        Some(Command::Work(args)) => commands::work::run(&args),
        Some(Command::Words(args)) => commands::words::run(&args),
        Some(Command::Verify(args)) => commands::verify::run(&args),
        Some(Command::Schema(args)) => commands::schema::run(&args),
        Some(Command::Completions(args)) => commands::completions::run(&args),
        Some(Command::Man(args)) => commands::man::run(&args),
        Some(Command::Manual(args)) => commands::manual::run(&args),
    };
    if let Some(error) = out::lost() {
        out::complain(&format!("the output could not be written: {error}\n"));
        return ExitCode::from(3);
    }
    ExitCode::from(match end {
        End::Done => 0,
        End::Fails => 1,
        End::Refused(faults) => {
            out::complain(&out::faults(&faults));
            2
        }
        End::Machine(reason) => {
            out::complain(&format!("{reason}\n"));
            3
        }
    })
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_sound() {
        super::Cli::command().debug_assert();
    }
}
