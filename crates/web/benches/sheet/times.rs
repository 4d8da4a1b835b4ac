//! Times of one kind, and how they are told.

/// Milliseconds, smallest first.
pub struct Times(Vec<f64>);

impl Times {
    /// Of as many as were taken, at least one.
    pub fn of(mut all: Vec<f64>) -> Self {
        assert!(!all.is_empty(), "nothing was timed");
        all.sort_by(f64::total_cmp);
        Self(all)
    }

    /// The time that a share of them keeps.
    pub fn share(&self, share: f64) -> f64 {
        let rank = (share * self.0.len() as f64).ceil() as usize;
        self.0[rank.clamp(1, self.0.len()) - 1]
    }

    /// One line: median, the share that the bar is about, the ratio of that to the peer, and the bar.
    pub fn tell(&self, what: &str, share: f64, bar: f64, fixed: f64) {
        let at = self.share(share);
        let word = if at < bar { "under" } else { "OVER" };
        println!(
            "{what:<44} {:>8.2} median {at:>8.2} p{:.0} {:>7.2} /fixed   {word} {bar:.0} ms, n = {}",
            self.share(0.5),
            share * 100.0,
            at / fixed,
            self.0.len()
        );
    }
}
