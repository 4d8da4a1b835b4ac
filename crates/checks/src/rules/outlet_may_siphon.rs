//! Rule: outlet may siphon

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::stages::outlet::OutletControl;
use stillrise_units::Typed;
use stillrise_units::catalog::{GPM, IN, M3_H, MM};

rule! {
    "outlet-may-siphon" "Outlet pipe may siphon", Outlet;
    client "The outlet pipe may siphon and draw oil out of the unit."
    looks "Whether the outlet pipe runs full at the largest flow: then it warns. It fails when no weir stands ahead of the pipe and the outfall lies below the lip of the downcomer or the mouth of the dip pipe."
    matters "A full pipe that falls away can siphon: it gulps, and it may draw the clear well down until oil passes under the downcomer."
    remedy "A larger or flatter outlet pipe that runs part full, a vent at its highest point, or a weir box open to the air ahead of it."
    source "Common practice: a vent of a quarter of the bore, at least {2 in|50 mm}; the bound at the lip is our proposal"
    limits "How the mouth of the pipe is made is not known: one open at its invert takes in air and breaks the siphon, a drop leg or tee under water does not."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else {
        return s.stopped();
    };
    let (highest, outfall) = (performance.highest(), performance.site.outfall);
    let flow = s.show(highest.flow.q, (&GPM, &M3_H));
    if !highest.runs_full {
        return Verdict::passes(format!("the outlet pipe runs part full at {flow}, the largest flow through one unit"));
    }
    let unit = &train.unit;
    let below = unit.underflow.edge().q - outfall.q;
    let full = format!("the outlet pipe runs full at {flow}, the largest flow through one unit");
    if unit.outlet.control.q == OutletControl::Pipe && below.si() > 0.0 {
        let below = s.show(below, (&IN, &MM));
        Verdict::fails(
            format!("{full}, and the outfall lies {below} below the {}: it needs a vent or a weir", unit.underflow.edge_name()),
            outfall.at,
        )
    } else {
        Verdict::warns(format!("{full}: it needs a vent"), highest.flow.at)
    }
}
