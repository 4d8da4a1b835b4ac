//! Rule: the outlet does not drain, and no pump stands behind

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Length;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT, M};

rule! {
    "pump-behind-missing" "Outlet does not drain, and no pump stands behind", Outlet;
    client "The outlet cannot drain by itself, and no pump stands behind it."
    looks "Of a unit that lies in the ground: the lowest floor from which its outlet drains against the floor at which it lies. Lower fails, where it has no pump-out compartment."
    matters "Water that cannot leave stands up into the drains ahead, and oil with it."
    remedy "A pump-out compartment or a pump sump behind the separator, less cover over a slab, or a lower outfall."
    source "Geometry of the enquiry's levels"
    limits "The outfall's own water is looked at by another rule."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    let installation = &performance.site.installation;
    if s.enquiry.unit_stands() || installation.least_cover.is_none() {
        return Verdict::skips("it is not made to lie in the ground, or stands already");
    }
    if train.unit.pump_out.is_some() {
        return Verdict::passes("effluent pumps lift the water to the outfall");
    }
    let (Some(floor), Some(lowest)) = (installation.floor, installation.drains_from) else {
        return Verdict::skips("levels that decide it were not said");
    };
    let lacks = lowest.q - floor.q;
    let show = |x: Length| s.show(x, (&FT, &M));
    if lacks.si() > 0.0 {
        Verdict::fails(format!("it lies {} lower than its outlet drains from", show(lacks)), floor.at)
    } else {
        Verdict::passes(format!("it lies {} higher than its outlet needs to drain", show(-lacks)))
    }
}
