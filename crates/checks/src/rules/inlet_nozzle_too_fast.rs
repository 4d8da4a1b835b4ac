//! Rule: inlet nozzle too fast

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT_S, M_S};
use stillrise_units::{Typed, Velocity};

rule! {
    "inlet-nozzle-too-fast" "Water too fast in the inlet nozzle", Inlet;
    client "The water enters fast, which stirs the inlet chamber."
    looks "The velocity in the inlet nozzle, full bore, at the largest flow: above {3 ft/s|0.914 m/s} it warns."
    matters "A jet breaks droplets, stirs the inlet chamber and shoots past the diffusion baffle."
    remedy "A larger nozzle, a wider pipe for the last ten bores ahead of it, or a deflector."
    source "From memory: {3 ft/s|0.914 m/s} as the usual bound of inlet pipes to gravity separators"
    limits "A nozzle that runs part full is faster than this shows."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let inlet = performance.velocities.inlet;
    let most = Velocity::of(3.0, &FT_S);
    let show = |v| s.show(v, (&FT_S, &M_S));
    let says = format!("{} in the inlet nozzle at the largest flow", show(inlet.q));
    if inlet.q > most {
        Verdict::warns(format!("{says}: above {}", show(most)), inlet.at)
    } else {
        Verdict::passes(format!("{says}, at most {}", show(most)))
    }
}
