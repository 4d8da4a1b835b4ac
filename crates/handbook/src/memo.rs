//! Results of a pure function, kept while a search asks for the same again and again.
//!
//! Ranking the questions of one enquiry asks some thousand times for the oil left behind a unit, and most
//! answers to a question change none of its arguments. Each thread keeps its own; what is kept is the
//! result itself, bit for bit, so nothing depends on what was asked before.

use std::cell::RefCell;

/// Slots of a memo; a later result takes the place of an earlier one with the same hash.
const SLOTS: usize = 512;

/// 2^64 over the golden ratio.
const GOLDEN: u64 = 0x9E37_79B9_7F4A_7C15;

/// A result with the bits of its arguments, or nothing yet.
type Slot<const N: usize> = Option<([u64; N], f64)>;

/// Results by the bits of their `N` arguments.
pub(crate) struct Memo<const N: usize>(RefCell<Vec<Slot<N>>>);

impl<const N: usize> Memo<N> {
    pub(crate) const fn new() -> Self {
        Self(RefCell::new(Vec::new()))
    }

    /// The result kept for these arguments, or the one that `find` gives now.
    pub(crate) fn get(&self, arguments: [u64; N], find: impl FnOnce() -> f64) -> f64 {
        // Fibonacci hashing: the golden ratio spreads keys that differ in few bits. Four chains side by side, which do
        // not wait for one another.
        let mut chains = [0_u64; 4];
        for part in arguments.chunks(4) {
            for (chain, a) in chains.iter_mut().zip(part) {
                *chain = (chain.rotate_left(5) ^ a).wrapping_mul(GOLDEN);
            }
        }
        let hash = chains.iter().fold(0_u64, |h, chain| (h.rotate_left(17) ^ chain).wrapping_mul(GOLDEN));
        let slot = usize::try_from(hash >> 48).unwrap_or(0) % SLOTS;
        if let Some(Some((kept, result))) = self.0.borrow().get(slot)
            && *kept == arguments
        {
            return *result;
        }
        let result = find();
        let mut slots = self.0.borrow_mut();
        if slots.is_empty() {
            slots.resize(SLOTS, None);
        }
        slots[slot] = Some((arguments, result));
        result
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    #[test]
    fn what_is_kept_is_not_found_again_and_nothing_else_is_taken_for_it() {
        let memo = Memo::<2>::new();
        let found = Cell::new(0);
        let ask = |a: u64, b: u64| {
            memo.get([a, b], || {
                found.set(found.get() + 1);
                f64::from_bits(a) - f64::from_bits(b)
            })
        };
        for _ in 0..3 {
            assert_eq!(ask(1.0_f64.to_bits(), 3.0_f64.to_bits()).to_bits(), (-2.0_f64).to_bits());
        }
        assert_eq!(found.get(), 1);
        // Many more keys than slots.
        for k in 0..4000_u32 {
            let (a, b) = (f64::from(k), f64::from(k % 7));
            assert_eq!(ask(a.to_bits(), b.to_bits()).to_bits(), (a - b).to_bits(), "{k}");
        }
    }
}
