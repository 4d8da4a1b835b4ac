//! Results of a pure function, kept while a search asks for the same again and again.
//!
//! Ranking the questions of one enquiry asks some thousand times for the oil left behind a unit, and most
//! answers to a question change none of its arguments. Each thread keeps its own; what is kept is the
//! result itself, bit for bit, so nothing depends on what was asked before.

use arrayvec::ArrayVec;
use std::cell::{Cell, RefCell};

/// Slots of a memo; a later result takes the place of an earlier one with the same hash.
const SLOTS: usize = 512;

/// 2^64 over the golden ratio.
const GOLDEN: u64 = 0x9E37_79B9_7F4A_7C15;

/// Words that a key holds; a longer one, as of a measured table, is not kept.
const MOST: usize = 34;

/// The bits of a page's arguments, in order: each argument adds its own.
#[derive(Debug, Clone, Default)]
pub struct Key {
    bits: ArrayVec<u64, MOST>,
    /// Whether some found no room.
    overflows: bool,
}

impl Key {
    /// The bits of plain numbers.
    pub(crate) fn of(numbers: &[f64]) -> Self {
        let mut key = Self::default();
        numbers.iter().for_each(|number| key.push(number.to_bits()));
        key
    }

    /// Adds one word.
    #[inline]
    pub fn push(&mut self, word: u64) {
        self.overflows |= self.bits.try_push(word).is_err();
    }

    /// The words, where they found room.
    fn words(&self) -> Option<&[u64]> {
        (!self.overflows).then_some(&self.bits[..])
    }

    /// Fibonacci hashing: the golden ratio spreads keys that differ in few bits. Four chains side by side, which do
    /// not wait for one another.
    fn hash(words: &[u64]) -> u64 {
        let mut chains = [0_u64; 4];
        for part in words.chunks(4) {
            for (chain, a) in chains.iter_mut().zip(part) {
                *chain = (chain.rotate_left(5) ^ a).wrapping_mul(GOLDEN);
            }
        }
        chains.iter().fold(0_u64, |h, chain| (h.rotate_left(17) ^ chain).wrapping_mul(GOLDEN))
    }
}

thread_local! {
    static KEEPS: Cell<bool> = const { Cell::new(true) };
}

/// Works something out with every result found anew: a replay that is answered from what was kept proves nothing.
pub fn without<T>(work: impl FnOnce() -> T) -> T {
    let before = KEEPS.replace(false);
    let out = work();
    KEEPS.set(before);
    out
}

/// Results by the bits of their arguments.
pub(crate) struct Memo(RefCell<Vec<Option<(Key, f64)>>>);

impl Memo {
    pub(crate) const fn new() -> Self {
        Self(RefCell::new(Vec::new()))
    }

    /// The result kept for these arguments, or the one that `find` gives now.
    pub(crate) fn get(&self, key: &Key, find: impl FnOnce() -> f64) -> f64 {
        let Some(words) = key.words().filter(|_| KEEPS.get()) else { return find() };
        let slot = usize::try_from(Key::hash(words) >> 48).unwrap_or(0) % SLOTS;
        if let Some(Some((kept, result))) = self.0.borrow().get(slot)
            && kept.words() == Some(words)
        {
            return *result;
        }
        let result = find();
        let mut slots = self.0.borrow_mut();
        if slots.is_empty() {
            slots.resize(SLOTS, None);
        }
        slots[slot] = Some((key.clone(), result));
        result
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(words: &[u64]) -> Key {
        let mut key = Key::default();
        words.iter().for_each(|word| key.push(*word));
        key
    }

    #[test]
    fn what_is_kept_is_not_found_again_and_nothing_else_is_taken_for_it() {
        let memo = Memo::new();
        let found = Cell::new(0);
        let ask = |a: u64, b: u64| {
            memo.get(&key(&[a, b]), || {
                found.set(found.get() + 1);
                f64::from_bits(a) - f64::from_bits(b)
            })
        };
        for _ in 0..3 {
            assert_eq!(ask(1.0_f64.to_bits(), 3.0_f64.to_bits()).to_bits(), (-2.0_f64).to_bits());
        }
        assert_eq!(found.get(), 1);
        without(|| ask(1.0_f64.to_bits(), 3.0_f64.to_bits()));
        assert_eq!(found.get(), 2, "found anew where nothing may be kept");
        ask(1.0_f64.to_bits(), 3.0_f64.to_bits());
        assert_eq!(found.get(), 2);
        // Many more keys than slots.
        for k in 0..4000_u32 {
            let (a, b) = (f64::from(k), f64::from(k % 7));
            assert_eq!(ask(a.to_bits(), b.to_bits()).to_bits(), (a - b).to_bits(), "{k}");
        }
    }

    #[test]
    fn a_key_with_more_words_than_another_is_another_and_one_without_room_is_not_kept() {
        let memo = Memo::new();
        assert!((memo.get(&key(&[1]), || 1.0) - 1.0).abs() < 1e-12);
        assert!((memo.get(&key(&[1, 0]), || 2.0) - 2.0).abs() < 1e-12);
        let long = vec![7; MOST + 1];
        assert!((memo.get(&key(&long), || 3.0) - 3.0).abs() < 1e-12);
        assert!((memo.get(&key(&long), || 4.0) - 4.0).abs() < 1e-12);
    }
}
