//! Work that is done side by side and put back in order, so that no result depends on the number of threads.

use rayon::prelude::*;
use rayon::{ThreadPool, ThreadPoolBuilder};
use std::sync::OnceLock;

/// Most threads: more of them cost more to start than they do.
const MOST: usize = 8;
/// Stack of each, bytes: documents are typeset on them, which goes deep where the program is not optimised.
const STACK: usize = 8 << 20;

/// The threads of this process, started once: what they keep in mind serves the next piece of work too. `None` where
/// the machine gives none.
fn threads() -> Option<&'static ThreadPool> {
    static THREADS: OnceLock<Option<ThreadPool>> = OnceLock::new();
    let start = || {
        let there = std::thread::available_parallelism().map_or(1, core::num::NonZero::get);
        let builder = ThreadPoolBuilder::new().stack_size(STACK);
        // Where the machine has no more than that, the number is left to the library, which can be told another by its usual
        // variable: so that a test can ask for one thread.
        if there > MOST { builder.num_threads(MOST) } else { builder }.build().ok()
    };
    THREADS.get_or_init(start).as_ref()
}

/// Runs something on these threads, so that what it does side by side starts at once.
pub(crate) fn on_threads<R: Send>(work: impl FnOnce() -> R + Send) -> R {
    match threads() {
        Some(threads) => threads.install(work),
        None => work(),
    }
}

/// Two pieces of work side by side.
pub fn both<A: Send, B: Send>(one: impl FnOnce() -> A + Send, other: impl FnOnce() -> B + Send) -> (A, B) {
    match threads() {
        Some(threads) => threads.install(|| rayon::join(one, other)),
        None => (one(), other()),
    }
}

/// `one(k, space)` for every k below `count`, in order, each with a working space that no other uses meanwhile.
///
/// Whoever is free takes some of them, no fewer than `run` at a time.
pub fn side_by_side<S, R: Send>(
    count: usize,
    run: usize,
    space: impl Fn() -> S + Sync + Send,
    one: impl Fn(usize, &mut S) -> R + Sync + Send,
) -> Vec<R> {
    let Some(threads) = threads() else {
        let mut space = space();
        return (0..count).map(|k| one(k, &mut space)).collect();
    };
    let tasks = || (0..count).into_par_iter().with_min_len(run.max(1)).map_init(&space, |space, k| one(k, space));
    threads.install(|| tasks().collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn order_is_kept() {
        for run in [1, 3, 200] {
            for count in [0, 1, 7, 100] {
                let done = side_by_side(count, run, || (), |k, ()| k * k);
                assert_eq!(done, (0..count).map(|k| k * k).collect::<Vec<_>>(), "{run} {count}");
            }
        }
    }

    #[test]
    fn work_within_work_is_done() {
        let inner = |k: usize| side_by_side(5, 1, || (), |j, ()| j * k).iter().sum::<usize>();
        let (a, b) = both(|| side_by_side(4, 1, || (), |k, ()| inner(k)), || on_threads(|| inner(7)));
        assert_eq!((a, b), (vec![0, 10, 20, 30], 70));
    }
}
