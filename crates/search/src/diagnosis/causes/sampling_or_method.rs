//! Cause: the sample or the method, not the water

use super::{Cause, Id, Size};
use stillrise_units::catalog::ONE;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::SamplingOrMethod,
    title: "The sample or the method, not the water",
    how: "It reads too high with the first flush, or with a method that counts fats, soaps and waxes; too low with a bottle rinsed out or decanted, oil left on its wall, or a sample left warm without acid.",
    often: 0.1,
    size: Some(Size {
        label: "measured over true oil",
        units: (&ONE, &ONE),
        low: 0.4,
        likely: 1.8,
        high: 5.0,
        least: 0.1,
        most: 20.0,
    }),
    act: |s, x| s.bias *= x,
    settled_by: &[],
    looks: Some([0.6, 0.2, 0.1, 0.1]),
    jar: Some([0.5, 0.2, 0.3]),
    alarm: None,
    taken: Some([0.2, 0.1, 0.1, 0.2, 0.4]),
    backed_up: 0.0,
    gauge: None,
    capacity: false,
    test: "Three bottles at once from mid-depth of the sample point, no film, acidified and cold, to one laboratory; one of them with silica gel clean-up.",
    cost: 3,
    settles: 1,
    remedy: "A sample point with a free fall, a written procedure, and the method that the permit names.",
};
