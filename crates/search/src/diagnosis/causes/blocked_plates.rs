//! Cause: sludge has filled hopper and plates

use super::{Cause, Gauge, Id, Size};
use stillrise_units::catalog::PERCENT;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::BlockedPlates,
    title: "Sludge has filled hopper and plates",
    how: "Sludge over its trigger rises into the pack; the plates left carry all of the flow.",
    often: 0.1,
    size: Some(Size {
        label: "plate area lost",
        units: (&PERCENT, &PERCENT),
        low: 0.2,
        likely: 0.5,
        high: 0.9,
        least: 0.01,
        most: 0.99,
    }),
    act: |s, x| s.plates_lost = 1.0 - (1.0 - s.plates_lost) * (1.0 - x),
    settled_by: &[],
    looks: Some([0.2, 0.5, 0.15, 0.15]),
    jar: Some([0.55, 0.35, 0.1]),
    alarm: None,
    taken: None,
    backed_up: 0.3,
    gauge: Some(Gauge::Sludge),
    capacity: true,
    test: "Dip the sludge with a pole or a clear tube in hopper and under the pack.",
    cost: 2,
    settles: 2,
    remedy: "Pump out, lift the modules and rinse them; then shorten the interval, or a grit trap ahead. Confined space: no entry without permit.",
};
