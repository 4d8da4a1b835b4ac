//! Cumulative shares of sizes: what no distribution can be.

use super::blocks::Solids;
use stillrise_units::{Fault, print};

/// Why rows are no cumulative shares, and the remedy.
pub(super) fn unlike_shares(rows: &[(f64, f64)]) -> Option<(String, &'static str)> {
    let percent = |share: f64| format!("{} %", print::digits(share * 100.0, 4));
    if let Some(pair) = rows.windows(2).find(|pair| pair[1].1 < pair[0].1) {
        let reason = format!("the share that is finer falls from {} to {}", percent(pair[0].1), percent(pair[1].1));
        return Some((reason, "give cumulative shares, finer than each size; they rise"));
    }
    let (_, last) = rows.last().filter(|(_, last)| (last - 1.0).abs() > 0.01)?;
    Some((format!("the shares end at {}, not at 100 %", percent(*last)), "add the size that all of it is finer than"))
}

/// What no distribution of grains can be.
pub(super) fn grains(s: &Solids, faults: &mut Vec<Fault>) {
    if !s.table.is_given() {
        return;
    }
    let rows = unlike_shares(&s.table.rows.0).map(|(reason, remedy)| ("table", reason, remedy));
    let both = (s.d50.is_given() || s.spread.is_given())
        .then(|| ("table", "a sieved table stands beside d50 or spread".to_owned(), "give one of the two"));
    for (key, reason, remedy) in rows.into_iter().chain(both) {
        faults.push(Fault::new(format!("solids: {key}"), reason, remedy));
    }
}
