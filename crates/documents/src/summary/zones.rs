//! What plate theory takes for granted, zone by zone, with the number that shows it.

use super::section;
use crate::render::text::Table;
use stillrise_design::Node;
use stillrise_design::stages::underflow::Pull;
use stillrise_search::Settled;

/// A number, where it stands, and what to read from it.
pub(crate) struct Row {
    pub(crate) what: &'static str,
    pub(crate) at: Node,
    pub(crate) says: &'static str,
}

/// The rows; none where the zones were not looked at.
pub(crate) fn rows(settled: &Settled) -> Vec<Row> {
    let Some(z) = settled.job.design.performance.as_ref().and_then(|p| p.zones.as_ref()) else { return Vec::new() };
    let mut rows = Vec::new();
    let mut row = |what, at, says| rows.push(Row { what, at, says });
    if z.baffle.is_some() {
        row("inlet jet, power per mass in its chamber", z.jet.dissipation.at, "what the diffusion baffle has to still");
    } else {
        row("inlet jet, power per mass in the unit", z.jet.dissipation.at, "stirs the open water, nothing stills it");
    }
    row("mean shear rate there", z.jet.shear.at, "stirs droplets together and apart");
    if let Some(baffle) = &z.baffle {
        row(
            "loss coefficient of the diffusion baffle",
            baffle.zeta.at,
            "some hundred and more spread the water over the section",
        );
    }
    if let Some(power) = z.baffle.as_ref().and_then(|baffle| baffle.power) {
        row("power of the baffle's jets in the primary zone", power.at, "what is left to stir the tank");
    }
    if let Some(survives) = z.jet.survives {
        row("largest droplet that the jet leaves whole", survives.at, "larger ones break in the chamber");
    }
    if let Some(entrance) = z.entrance {
        row("length over which the flow in the gaps develops", entrance.at, "changes no ideal catch; edges shed there");
    }
    if let Some((film, pull)) = z.film {
        row("film of oil under a plate, at most", film.at, "thin beside the gap as long as it drains");
        row("pull of the water on it, over its own drive", pull.at, "above 0.3 the film is dragged along");
    }
    row("size of drops shed from an edge", z.shed.at, "rise at once, unless the stream breaks them");
    match z.pull {
        Some(Pull::UnderBaffle(layer)) => {
            row("Froude number under the oil at the alarm", layer.at, "near one the layer is drawn under the lip");
        }
        Some(Pull::IntoMouth { over, least }) => {
            row("oil over the dip pipe's mouth at the alarm", over.at, "so high the interface stands over it");
            row("height at which oil is drawn into it", least.at, "at the largest flow; keep well above it");
        }
        None => {}
    }
    if let Some(r) = &z.retention {
        row("overflow rate of the oil retention zone", r.overflow.at, "how fast the water sinks to the lip");
        row("largest droplet drawn under the downcomer", r.drawn.at, "larger ones outrun the sinking water");
    }
    if let Some(scour) = z.scour {
        row("velocity that scours the median grain", scour.at, "the flow along the floor must stay below");
    }
    row(
        "water that flows in",
        z.current.inflow.at,
        if z.current.stated {
            "as stated, or as waters of a stated temperature mix"
        } else {
            "a little warmer than in the unit, to show how little it takes"
        },
    );
    if let Some(froude) = z.current.froude {
        row("densimetric Froude number along the unit", froude.at, "far below one a current runs through");
    }
    if let Some(speed) = z.current.speed {
        row("speed of that current", speed.at, "against the velocity along the unit");
    }
    rows
}

pub(super) fn zones(out: &mut String, settled: &Settled, width: usize) {
    let rows = rows(settled);
    if rows.is_empty() {
        return;
    }
    let system = settled.job.enquiry.system();
    out.push_str(&section("Zone by zone, in the worst case"));
    let mut table = Table::new(["number", "value", "what it says"]);
    for row in rows {
        let value = settled.job.ledger.entry(row.at).map_or_else(String::new, |e| e.told(system));
        table.row([row.what.to_owned(), value, row.says.to_owned()]);
    }
    out.push_str(&table.render(width));
}
