//! Rule: screen wider than what it guards

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::provenance::Pair;
use stillrise_units::catalog::{IN, MM};

rule! {
    "screen-too-wide" "Screen wider than the narrowest passage behind it", Inlet;
    client "The screen ahead lets through what can clog the passages behind it."
    looks "The clear opening of a screen that stands, against the gap between the plates and the free passage of the pump: wider warns. Where one is asked for or stands and its opening was not said, or where neither passage is known, it cannot judge."
    matters "What passes the bars and not the passage behind them stays in it: gaps clog from the inlet on, and a pump jams."
    remedy "Bars, a basket or a perforated plate no wider than the narrowest passage, or plates further apart."
    source "Needs no authority: what is to pass must be smaller than the passage"
    limits "Rags and leaves fold and pass narrower bars; a screen keeps out most of them, not all. A screen that nobody provides yet is a matter of the stages that are asked for."
}

const SMALL: Pair = (&IN, &MM);
const SPACING: Ask =
    Ask::fixed("screen.spacing", "How wide are the clear openings of the screen, grating or basket ahead?");
const PASSAGE: Ask = Ask::fixed("lift.passage", "What is the largest grain that passes the feed pump?");

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let Some(screen) = &train.screen else {
        return Verdict::skips("no screen stands ahead, and none is asked for");
    };
    let Some(opening) = screen.stated else {
        if screen.exists == Some(false) {
            return Verdict::skips("no screen stands ahead; one is asked for");
        }
        return Verdict::cannot_judge("how wide the openings of a screen ahead are was not said", [SPACING], None);
    };
    let Some((passage, of)) = screen.narrowest else {
        let says = "the openings of the screen are known, what passes the pump behind it is not";
        return Verdict::cannot_judge(says, [PASSAGE], opening.at);
    };
    let says = format!("openings of {} ahead of the {of} of {}", s.show(opening.q, SMALL), s.show(passage.q, SMALL));
    if opening.q > passage.q * (1.0 + 1e-9) {
        Verdict::warns(format!("{says}: what passes the screen stays in it"), opening.at)
    } else {
        Verdict::passes(says)
    }
}
