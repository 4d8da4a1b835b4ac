//! Rule: water too fast through the mesh

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::separation::floors;
use stillrise_units::catalog::{FT_MIN, MM_S};

rule! {
    "mesh-too-fast" "Water too fast through the mesh", Pack;
    client "The water passes the coalescing mesh so fast that it may make droplets finer."
    looks "The velocity on the face of the mesh at the largest flow that brings oil, fouled, against the one the range states as measured; without one, against the fastest published test: above it it warns, below it cannot judge."
    matters "A coalescing bed catches, grows and sheds drops; above a critical velocity it sheds them as fine as they came, and what leaves is worse."
    remedy "A larger face, a coarser or thicker bed of known limit, or no credit for the mesh."
    source "Abstract on beds of foam chips, {0.547 to 2.46 ft/min|10 to 45 m/h}; that a critical velocity exists, from an abstract without a number for such meshes"
    limits "The critical velocity is a property of one bed and one oil: a published test of another bed shows only that such velocities were run."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else {
        return s.stopped();
    };
    if performance.worst().is_none() {
        return s.stopped();
    }
    let faces = performance.removals.iter().filter_map(|removal| Some(removal.passage.mesh()?.bed.face));
    let Some(face) = faces.reduce(|a, b| if b.q > a.q { b } else { a }) else {
        return Verdict::skips("there is no mesh");
    };
    let show = |q| s.show(q, (&FT_MIN, &MM_S));
    match train.unit.mesh.as_ref().and_then(|mesh| mesh.velocity_limit) {
        Some(limit) => {
            let says = format!("{} on the face, measured to hold up to {}", show(face.q), show(limit.q));
            if face.q > limit.q { Verdict::fails(says, face.at) } else { Verdict::passes(says) }
        }
        None => {
            let tested = floors::fastest_bed().value;
            let says = format!(
                "{} on the face; no limit is stated, the fastest published test of a bed ran at {}",
                show(face.q),
                show(tested)
            );
            if face.q > tested {
                return Verdict::warns(says, face.at);
            }
            let question = "Up to which velocity on its face was the mesh measured to hold the oil it has caught?";
            Verdict::cannot_judge(says, [Ask::unit(s, "mesh_velocity_limit", question)], face.at)
        }
    }
}
