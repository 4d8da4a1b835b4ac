//! Rule: draw-off leaves oil

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed};

rule! {
    "draw-leaves-oil" "Draw-off leaves too much oil", OilZone;
    client "The draw-off leaves more oil in the unit than it should."
    looks "The layer of each oil that a fixed draw-off leaves behind: more than {1.5 in|38 mm} warns. A draw-off above the level at rest warns too. A unit that does not say where oil is drawn cannot be judged."
    matters "Oil that cannot be drawn ages, thickens and takes up the store; each interval begins with it."
    remedy "A draw-off nearer to the crest, or an adjustable skim weir."
    source "Hydrostatics; {1.5 in|38 mm} is our proposal, a draw-off {1 in|25 mm} below the crest leaves some {1.2 in|30 mm} of diesel"
    limits "Holds while water follows the oil from the clear well or a hose. A floating suction leaves less."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else {
        return s.stopped();
    };
    let thickest = performance.levels.iter().max_by(|a, b| a.residue.q.si().total_cmp(&b.residue.q.si()));
    let Some(oil) = thickest else { return Verdict::skips("no oil is lighter than the water") };
    let draw = train.unit.retention.oil_draw;
    let above = draw.q - train.unit.outlet.crest.q;
    if train.unit.particulars.left_out.contains(&"oil_draw") {
        let (usual, residue) = (s.show(-above, (&IN, &MM)), s.show(oil.residue.q, (&IN, &MM)));
        let says = format!(
            "where oil is drawn off is not stated; a draw-off {usual} below the crest would leave {residue} of {}",
            oil.oil
        );
        return Verdict::cannot_judge(
            says,
            [Ask::unit(s, "oil_draw", "At what height above the floor is oil drawn off?")],
            draw.at,
        );
    }
    if above.si() > 0.0 {
        let above = s.show(above, (&IN, &MM));
        return Verdict::warns(
            format!("the draw-off stands {above} above the level at rest: it takes only what rises above it"),
            draw.at,
        );
    }
    let most = Length::of(1.5, &IN);
    let says = format!("the draw-off leaves {} of {}", s.show(oil.residue.q, (&IN, &MM)), oil.oil);
    if oil.residue.q > most {
        Verdict::warns(format!("{says}, more than {}", s.show(most, (&IN, &MM))), oil.residue.at)
    } else {
        Verdict::passes(format!("{says}, at most {}", s.show(most, (&IN, &MM))))
    }
}
