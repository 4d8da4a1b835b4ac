//! A fixed piece of arithmetic: a time by itself says as much about the machine and its other guests as about the program.

use std::time::Instant;

const STEPS: u64 = 1_000_000;

/// Milliseconds of a chain of divisions that no compiler can shorten, the best of five.
pub fn fixed() -> f64 {
    let once = || {
        let begun = Instant::now();
        let mut root = 1.0_f64;
        for n in 0..STEPS {
            let target = 2.0 + (n % 1000) as f64;
            root -= (root * root * root - target) / (3.0 * root * root);
            root = root.abs().max(0.5);
        }
        std::hint::black_box(root);
        begun.elapsed().as_secs_f64() * 1e3
    };
    (0..5).map(|_| once()).fold(f64::INFINITY, f64::min)
}
