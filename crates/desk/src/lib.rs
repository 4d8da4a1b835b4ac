//! The desk that an enquiry lies on: the worked jobs and the demo range that come with the program, enquiries and packages on
//! disk. What every way in to the program shares.

pub mod files;
pub mod folder;
pub mod frozen;
pub mod jobs;
pub mod packages;
pub mod remedies;
pub mod revisions;
pub mod save;
pub mod settings;

use stillrise_units::Fault;

/// Why something could not be done.
#[derive(Debug)]
pub enum Trouble {
    /// The input is refused; every fault.
    Refused(Vec<Fault>),
    /// The machine failed: file, disk, library.
    Machine(String),
}
