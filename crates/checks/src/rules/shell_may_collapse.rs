//! Rule: the empty shell may be pressed in from outside

use crate::ask::{Ask, GROUND, METAL, THICKNESS};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::shell::metal;
use stillrise_units::catalog::{IN, KPA, MM, PSI};
use stillrise_units::print;

rule! {
    "shell-may-collapse" "Empty shell may be pressed in", Unit;
    client "The empty shell may be pressed in by groundwater or under a blocked vent."
    looks "Of a cylinder in the ground, empty: the pressure at which a round shell between its heads, or between floor and top, would collapse against that of the water outside at its lowest line, groundwater at grade where nobody said. Less than twice fails. Where the thickness or the metal is not known it cannot judge."
    matters "A shell that is pumped out in high groundwater, or with a blocked vent, buckles inward at once."
    remedy "A thicker shell, rings or inner bulkheads that shorten its free length, groundwater kept down while it is emptied, vents kept open."
    source "Roark's short tube, coefficient from memory; twice is our proposal for what is not round, codes of pressure vessels take about 3"
    limits "Elastic, a perfect shell of one length between its heads, inner walls not counted; the flat floor of an upright one is not looked at; soil, traffic and vacuum come on top. For a licensed engineer."
}

/// Collapse over the pressure outside, at least.
const LEAST: f64 = 2.0;

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    if !train.unit.arrangement.is_in_ground() || s.enquiry.unit_stands() {
        return Verdict::skips("it is not made to lie in the ground, or stands already");
    }
    let Some(shell) = &performance.shell else {
        if train.unit.particulars.wall.is_none() {
            return Verdict::cannot_judge(
                "the thickness of the shell is not stated",
                [Ask::unit(s, "wall", THICKNESS)],
                None,
            );
        }
        if metal(&train.unit).is_none() {
            return Verdict::cannot_judge(
                "it is not known to be of a steel that stands in our table",
                [Ask::unit(s, "material", METAL)],
                None,
            );
        }
        return if performance.site.installation.floor.is_some() && s.enquiry.site.ground.is_given() {
            Verdict::passes("the groundwater stays below it, and no water presses on it")
        } else {
            Verdict::cannot_judge("how deep it lies is not known", [GROUND], None)
        };
    };
    let pressure = |q| s.show(q, (&PSI, &KPA));
    let says = format!(
        "a shell of {} would collapse at {}, the water outside presses with {}: {} times, {LEAST} at least is asked for",
        s.show(shell.wall.q, (&IN, &MM)),
        pressure(shell.collapse.q),
        pressure(shell.outside.q),
        print::digits(stillrise_units::Typed::si(shell.ratio.q), 2)
    );
    if stillrise_units::Typed::si(shell.ratio.q) < LEAST {
        Verdict::fails(says, shell.ratio.at)
    } else {
        Verdict::passes(says)
    }
}
