//! Which sets of causes are looked at: none, each alone, pairs, and triples among those that pairs point to.
//!
//! Not all triples are tried: a set of three whose members do not stand in a leading pair is not found.

use super::Sized;
use super::fit::Evidence;
use crate::side_by_side::side_by_side;

/// Suspects of which all pairs are tried; of more, pairs among those that explain best alone.
const PAIRED: usize = 26;
/// Suspects of which all triples are tried: those of the leading pairs.
const TRIPLED: usize = 9;

/// All sets looked at, each with its sizes and its score.
pub(super) fn all(evidence: &Evidence<'_>) -> Vec<(Vec<Sized>, f64)> {
    let score = |sets: &[Vec<usize>]| side_by_side(sets.len(), 1, || (), |k, ()| evidence.explain(&sets[k]));
    let count = evidence.suspects.len();
    let mut singles: Vec<Vec<usize>> = vec![Vec::new()];
    singles.extend((0..count).map(|k| vec![k]));
    let mut found = score(&singles);
    let mut ranked: Vec<usize> = (0..count).collect();
    ranked.sort_by(|a, b| found[a + 1].1.total_cmp(&found[b + 1].1));
    ranked.truncate(PAIRED);
    ranked.sort_unstable();
    let pairs = grown(evidence, &ranked, &ranked.iter().map(|k| vec![*k]).collect::<Vec<_>>());
    let scored = score(&pairs);
    let mut order: Vec<usize> = (0..pairs.len()).collect();
    order.sort_by(|a, b| scored[*a].1.total_cmp(&scored[*b].1));
    let mut leading: Vec<usize> = Vec::new();
    for k in order.iter().flat_map(|at| pairs[*at].iter()) {
        if leading.len() < TRIPLED && !leading.contains(k) {
            leading.push(*k);
        }
    }
    leading.sort_unstable();
    let among: Vec<Vec<usize>> = pairs.iter().filter(|p| p.iter().all(|k| leading.contains(k))).cloned().collect();
    let triples = grown(evidence, &leading, &among);
    found.extend(scored);
    found.extend(score(&triples));
    found
}

/// Each set with one suspect more, of a later place and with a cause of its own.
fn grown(evidence: &Evidence<'_>, suspects: &[usize], sets: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let cause = |k: usize| evidence.suspects[k].cause.id;
    let mut out = Vec::new();
    for set in sets {
        let last = set.last().copied();
        for k in suspects.iter().filter(|k| last.is_none_or(|last| **k > last)) {
            if set.iter().all(|member| cause(*member) != cause(*k)) {
                out.push(set.iter().copied().chain([*k]).collect());
            }
        }
    }
    out
}
