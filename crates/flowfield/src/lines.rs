//! Lines of a grid through all edges of what stands in the water, so that thin walls lie on them.

/// Places through which lines must run, and how far apart others may lie between them.
#[derive(Debug, Clone)]
pub struct Musts {
    at: Vec<f64>,
}

impl Musts {
    /// From one end to the other, and through the places between; what lies closer than `snap` to another is one with it.
    #[must_use]
    pub fn new(from: f64, to: f64, places: impl IntoIterator<Item = f64>, snap: f64) -> Self {
        let mut between: Vec<f64> = places.into_iter().filter(|x| *x > from + snap && *x < to - snap).collect();
        between.sort_by(f64::total_cmp);
        let mut at = vec![from];
        for x in between {
            if at.last().is_none_or(|last| x - last > snap) {
                at.push(x);
            }
        }
        at.push(to);
        Self { at }
    }
    /// The place that stands for one: the nearest of them.
    #[must_use]
    pub fn nearest(&self, x: f64) -> f64 {
        let near = |a: &&f64, b: &&f64| (**a - x).abs().total_cmp(&(**b - x).abs());
        self.at.iter().min_by(near).copied().unwrap_or(x)
    }
    /// The lines: between two places as many as keep them no further apart than `step`, and `least` at the least.
    #[must_use]
    pub fn lines(&self, step: f64, least: usize) -> Vec<f64> {
        let mut lines = Vec::new();
        for pair in self.at.windows(2) {
            let over = pair[1] - pair[0];
            // Half a cell more is not worth a line.
            let mut n = least.max(1);
            while over / n as f64 > 1.25 * step {
                n += 1;
            }
            lines.extend((0..n).map(|k| pair[0] + over * k as f64 / n as f64));
        }
        lines.extend(self.at.last());
        lines
    }
}
