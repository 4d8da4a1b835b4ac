//! Droplets as one or more waters bring them to a unit.

use crate::basis::droplets::Droplets;
use crate::gather;
use crate::provenance::{Node, Trail, Val, choose};
use stillrise_handbook::separation::remaining_oil;
use stillrise_units::catalog::UM;
use stillrise_units::{Ratio, Typed};

/// Droplets that arrive, and how much of the oil comes in them.
#[derive(Debug, Clone)]
pub struct Portion {
    /// Share of the oil that rises; `None` where all of it comes in them.
    pub share: Option<Val<Ratio>>,
    /// The droplets.
    pub droplets: Droplets,
    /// Where they stand together in the trail.
    pub(super) at: Node,
}

/// Gathers droplets for the formula that asks for them.
pub(super) fn arrives<T: Trail>(t: &mut T, d: &Droplets) -> Node {
    use remaining_oil::Droplets;
    let label = "droplets that arrive";
    gather!(t, label, Droplets { law: d.law, d50: d.d50, shape: d.shape, largest: d.largest, table: d.table }).at
}

/// The droplets of all waters, where each brings the same; `None` where they differ, or one brings all.
pub(super) fn all_alike<T: Trail>(t: &mut T, arriving: &[Portion]) -> Option<Droplets> {
    let [first, others @ ..] = arriving else { return None };
    let of = |p: &Portion| {
        let d = &p.droplets;
        (d.law.q, d.d50.q.si().to_bits(), d.shape.q.si().to_bits(), d.largest.q.si().to_bits())
    };
    let same = |other: &Portion| of(other) == of(first) && other.droplets.table.q == first.droplets.table.q;
    if others.is_empty() || !others.iter().all(same) {
        return None;
    }
    let medians: Vec<Node> = arriving.iter().map(|portion| portion.droplets.d50.at).collect();
    let (label, among) = ("volume median diameter at the unit", "the droplets of each water");
    let d50 = choose(t, label, Some((&UM, &UM)), first.droplets.d50.q, among, "they are alike", &medians);
    Some(Droplets { d50, ..first.droplets.clone() })
}
