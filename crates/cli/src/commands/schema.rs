//! `schema`: JSON Schema of the files and of what is answered to programs.

use crate::{End, out};
use clap::ValueEnum;
use stillrise_documents::package::pretty;
use stillrise_documents::schema::{
    changes_schema, compare_schema, enquiry_schema, flow_schema, glance_schema, issued_schema, range_schema,
    rating_schema, read_schema, result_schema, risk_schema, settings_schema, with_range_schema,
};

/// JSON Schema of an enquiry file, a range file, a company's settings, or what is answered to programs
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
    /// A company's settings
    Settings,
    /// The result of `size --json` and of a package
    Result,
    /// What `rate --json` prints
    Rating,
    /// What `risk --json` prints
    Risk,
    /// What `flow --json` prints
    Flow,
    /// What `compare --json` prints
    Compare,
    /// What `compare --with-issued --json` prints
    Changes,
    /// What `compare --with-range --json` prints
    WithRange,
    /// The manifest of an issued revision
    Issued,
    /// What `read --json` prints
    Read,
    /// A job at a glance, as the interface for programs answers it
    Glance,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let schema = match args.of {
        Of::Enquiry => enquiry_schema(),
        Of::Range => range_schema(),
        Of::Settings => settings_schema(),
        Of::Result => result_schema(),
        Of::Rating => rating_schema(),
        Of::Risk => risk_schema(),
        Of::Flow => flow_schema(),
        Of::Compare => compare_schema(),
        Of::Changes => changes_schema(),
        Of::WithRange => with_range_schema(),
        Of::Issued => issued_schema(),
        Of::Read => read_schema(),
        Of::Glance => glance_schema(),
    };
    out::print(&String::from_utf8_lossy(&pretty(&schema)));
    End::Done
}
