//! The bar of long work on a terminal, and the way to stop it.

use indicatif::{ProgressBar, ProgressStyle};
use std::io::IsTerminal;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// A bar on the error stream, if that is a terminal; Ctrl-C stops the work.
pub struct Progress {
    bar: Option<ProgressBar>,
    stopped: Arc<AtomicBool>,
}

impl Progress {
    /// A bar that has not begun.
    pub fn new() -> Self {
        let stopped = Arc::new(AtomicBool::new(false));
        let flag = Arc::clone(&stopped);
        // Without the handler Ctrl-C ends the program at once, which loses nothing either.
        let _ = ctrlc::set_handler(move || flag.store(true, Ordering::Relaxed));
        let bar = std::io::stderr().is_terminal().then(|| {
            let style = ProgressStyle::with_template("{bar:40} {percent} %, Ctrl-C stops");
            let bar = ProgressBar::new(0);
            if let Ok(style) = style {
                bar.set_style(style.progress_chars("##-"));
            }
            bar
        });
        Self { bar, stopped }
    }

    /// Shows how far the work is, and says whether it goes on.
    pub fn goes_on(&self, done: usize, of: usize) -> bool {
        if let Some(bar) = &self.bar {
            bar.set_length(of as u64);
            bar.set_position(done as u64);
        }
        !self.stopped.load(Ordering::Relaxed)
    }

    /// Takes the bar away.
    pub fn clear(&self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}
