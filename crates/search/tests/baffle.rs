//! A diffusion baffle that ends over an open hopper: what passes underneath is spread by nothing, and the prediction knows it.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{MG_L, PERCENT};

fn found(gap: &str) -> Settled {
    Sheet::data("wash").with("unit.dimensions.baffle_gap", gap).settle(&demo())
}

/// How unequally the gaps are fed in the worst case, and the free oil that leaves there.
fn fed(settled: &Settled) -> (f64, f64) {
    let worst = settled.job.design.performance.as_ref().and_then(|p| p.worst()).expect("a worst case");
    let plates = worst.passage.plates().expect("plates");
    (plates.spread.q.in_unit(&PERCENT), worst.total.expected.q.in_unit(&MG_L))
}

/// 46 in of water; the baffle is 6 % open: K = (1 / (0.6 x 0.06) ...) stands on its page. Under 1 in pass 0.6 x 1 of
/// 0.6 x 1 + 46 / sqrt(K), the width cancels.
#[test]
fn what_passes_under_the_baffle_is_spread_by_nothing() {
    let closed = found("0 in");
    let zones = |settled: &Settled| {
        let zones = settled.job.design.performance.as_ref().and_then(|p| p.zones.clone()).expect("zones");
        zones.baffle.expect("a baffle")
    };
    assert!(zones(&closed).under.is_none());
    for gap in [0.5, 1.0, 6.0] {
        let open = found(&format!("{gap} in"));
        let baffle = zones(&open);
        let crest = open.job.design.train.as_ref().expect("a train").unit.outlet.crest.q.si() / 0.0254;
        let below = 0.6 * gap;
        let by_hand = below / (below + crest / baffle.zeta.q.si().sqrt());
        let share = baffle.under.expect("an opening").q.si();
        assert!((share / by_hand - 1.0).abs() < 1e-9, "{gap} in: {share}, by hand {by_hand}");
        let ((spread, leaves), (usual, before)) = (fed(&open), fed(&closed));
        assert!((spread - (share * 100.0).clamp(usual, 90.0)).abs() < 1e-9, "{spread} %");
        assert!(leaves >= before, "{leaves} mg/L after {before}");
    }
    assert!(fed(&found("6 in")).1 > fed(&closed).1, "an open baffle costs oil");
}
