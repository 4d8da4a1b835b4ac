//! Work that is done side by side and put back in order, so that no result depends on the number of threads.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};

/// `one(k, space)` for every k below `count`, in order; each thread has a working space of its own.
///
/// Whoever is free takes the next `run` of them.
pub fn side_by_side<S, R: Send>(
    count: usize,
    run: usize,
    space: impl Fn() -> S + Sync,
    one: impl Fn(usize, &mut S) -> R + Sync,
) -> Vec<R> {
    // Asked once: the answer is read from files of the system.
    static THREADS: OnceLock<usize> = OnceLock::new();
    let threads =
        THREADS.get_or_init(|| std::thread::available_parallelism().map_or(1, core::num::NonZero::get).min(8));
    on_threads(*threads, count, run, space, one)
}

/// As [`side_by_side`], on a stated number of threads.
pub fn on_threads<S, R: Send>(
    threads: usize,
    count: usize,
    run: usize,
    space: impl Fn() -> S + Sync,
    one: impl Fn(usize, &mut S) -> R + Sync,
) -> Vec<R> {
    let run = run.max(1);
    let threads = threads.min(count.div_ceil(run)).max(1);
    let next = AtomicUsize::new(0);
    let work = || {
        let mut space = space();
        let mut done: Vec<(usize, Vec<R>)> = Vec::new();
        loop {
            let start = next.fetch_add(run, Ordering::Relaxed);
            if start >= count {
                return done;
            }
            let end = (start + run).min(count);
            done.push((start, (start..end).map(|k| one(k, &mut space)).collect()));
        }
    };
    let mut done = std::thread::scope(|scope| {
        let others: Vec<_> = (1..threads).map(|_| scope.spawn(work)).collect();
        let mut done = work();
        for other in others {
            // A fault of the program is passed on, never turned into a list with results missing.
            done.extend(other.join().unwrap_or_else(|fault| std::panic::resume_unwind(fault)));
        }
        done
    });
    done.sort_by_key(|(start, _)| *start);
    done.into_iter().flat_map(|(_, results)| results).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn order_is_kept_on_any_number_of_threads() {
        for threads in [1, 2, 5] {
            for count in [0, 1, 7, 100] {
                let done = on_threads(threads, count, 3, || (), |k, ()| k * k);
                assert_eq!(done, (0..count).map(|k| k * k).collect::<Vec<_>>(), "{threads} {count}");
            }
        }
    }
}
