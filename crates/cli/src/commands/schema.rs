//! `schema`: JSON Schema of the files.

use crate::{End, out};
use clap::ValueEnum;
use stillrise_documents::package::pretty;
use stillrise_documents::schema::{enquiry_schema, range_schema, rating_schema, result_schema};

/// JSON Schema of an enquiry file, a range file, or the result
#[derive(clap::Args)]
pub struct Args {
    /// Of which file
    #[arg(value_enum)]
    of: Of,
}

/// Of which file.
#[derive(Clone, Copy, ValueEnum)]
enum Of {
    /// The enquiry
    Enquiry,
    /// A range of units
    Range,
    /// The result of `size --json` and of a package
    Result,
    /// What `rate --json` prints
    Rating,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let schema = match args.of {
        Of::Enquiry => enquiry_schema(),
        Of::Range => range_schema(),
        Of::Result => result_schema(),
        Of::Rating => rating_schema(),
    };
    out::print(&String::from_utf8_lossy(&pretty(&schema)));
    End::Done
}
