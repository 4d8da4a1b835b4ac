//! Under which company's settings an enquiry is worked.

use std::path::{Path, PathBuf};

/// Where the company's settings lie.
#[derive(clap::Args)]
pub struct Under {
    /// The company's settings; else `stillrise-settings.toml` beside the enquiry, or in the folder above its own
    #[arg(long, value_name = "FILE")]
    settings: Option<PathBuf>,
}

impl Under {
    /// The file that was named.
    pub fn file(&self) -> Option<&Path> {
        self.settings.as_deref()
    }
}
