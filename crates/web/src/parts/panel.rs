//! What is pointed at: a station of the water's way or a part of the unit, with its few inputs, its findings, and what it does
//! to the water.

use super::leaf::leaf;
use super::{View, fields, picture};
use crate::inputs::groups;
use crate::sheet::State;
use maud::{Markup, html};
use stillrise_checks::Part;
use stillrise_design::stages::stage::Stage;
use stillrise_design::train::unit::Unit;
use stillrise_documents::profile::{findings, profile};
use stillrise_search::Settled;
use stillrise_units::catalog::{PERCENT, UM};
use stillrise_units::{Typed, print};

/// The panel of a part, by its id on the drawing; nothing where there is no such part.
#[must_use]
pub fn piece(state: &State, id: &str, view: &View) -> Option<Markup> {
    let settled = state.outcome.settled.as_ref()?;
    let drawn = profile(settled, picture::paper(view));
    let station = drawn.stations.iter().find(|station| station.id == id);
    let title = match station {
        Some(station) => station.title.clone(),
        None => drawn.scene.parts().iter().find(|part| part.id == id)?.title.clone(),
    };
    let heads: Vec<&str> = match station {
        Some(station) => station.blocks.iter().map(String::as_str).collect(),
        None => vec!["unit", "method"],
    };
    let all = groups(state);
    let own: Vec<_> = all.iter().filter(|group| heads.contains(&group.head.as_str())).collect();
    let locked = state.is_locked();
    Some(html! {
        aside #panel data-patch aria-label="What is pointed at" {
            button.close type="button" data-close="panel" { "Close" }
            h2 tabindex="-1" { (title) }
            @if let Some(station) = station { @if !station.says.is_empty() { ul { @for says in &station.says { li { (says) } } } } }
            @if station.is_none() { (sizes(settled, id)) (does(settled, id)) }
            (concerns(settled, id))
            @for group in own { (leaf(view, fields::block(group, locked))) }
        }
    })
}

/// The dimensions of a part of the unit, each with its place in the trail.
fn sizes(settled: &Settled, id: &str) -> Markup {
    let Some(train) = &settled.job.design.train else { return html! {} };
    let unit: &Unit = &train.unit;
    let own = unit.stages.all().into_iter().find(|stage| stage.drawn(unit).is_some_and(|drawn| drawn.id == id));
    let nozzles =
        |which: &str| unit.stages.all().into_iter().find(|stage| stage.name().contains(which)).map(|s| s.fields());
    let fields = match (own, id) {
        (Some(stage), _) => stage.fields(),
        (None, "shell" | "cover" | "manway") => unit.body.fields(),
        (None, "inlet" | "outlet") => nozzles(id).unwrap_or_default(),
        (None, "oil" | "oil-draw" | "float") => unit.retention.fields(),
        (None, "hopper" | "sludge" | "drain") => unit.hopper.as_ref().map(|hopper| hopper.fields()).unwrap_or_default(),
        _ => Vec::new(),
    };
    let ledger = &settled.job.ledger;
    let system = settled.job.enquiry.system();
    html! {
        @if !fields.is_empty() {
            table.sizes { tbody { @for (name, node) in &fields {
                @if let (Some(entry), Some(index)) = (ledger.entry(*node), node.index()) {
                    tr { th scope="row" { (name) } td { button.plain.number type="button" data-trail=(index) { (entry.shown(system)) } } }
                }
            } } }
        }
    }
}

/// What a stage takes out of the water, by droplet size.
fn does(settled: &Settled, id: &str) -> Markup {
    let Some((train, ladder)) =
        settled.job.design.train.as_ref().zip(settled.job.design.performance.as_ref().and_then(|p| p.ladder.as_ref()))
    else {
        return html! {};
    };
    let unit = &train.unit;
    let stage = unit.stages.all().into_iter().find(|stage| stage.drawn(unit).is_some_and(|drawn| drawn.id == id));
    let place = stage.and_then(|stage| ladder.stages.iter().position(|name| *name == stage.name()));
    html! {
        @if let Some(place) = place {
            h3 { "What it catches of what reaches it, at the end of the interval" }
            table.sizes { tbody { tr { @for grade in &ladder.grades { th scope="col" { (print::digits(UM.from_si(grade.d.q.si()), 3)) } } th { "µm" } }
                tr { @for grade in &ladder.grades { td.number { (grade.caught.get(place).map_or_else(String::new, |caught| print::digits(PERCENT.from_si(caught.q.si()), 2))) } } td { "%" } } } }
        }
    }
}

/// The rules' parts that a part of the drawing stands for.
fn of_rules(id: &str) -> &'static [Part] {
    match id {
        "inlet" | "pump" => &[Part::Inlet],
        "chamber" | "diffusion-baffle" | "baffle" => &[Part::Chamber],
        "hopper" | "sludge" | "drain" => &[Part::Hopper],
        "pack" | "plate-pack" => &[Part::Pack],
        "oil" | "oil-draw" | "float" => &[Part::OilZone],
        "downcomer" | "dip-pipe" => &[Part::Downcomer],
        "outlet" => &[Part::Outlet],
        "outfall" => &[Part::Outlet, Part::Effluent],
        "unit" | "shell" => &[Part::Unit],
        "ground" => &[Part::Site],
        _ => &[],
    }
}

/// The findings on a part.
fn concerns(settled: &Settled, id: &str) -> Markup {
    let parts = of_rules(id);
    let groups = findings(settled);
    html! {
        @for group in groups.iter().filter(|group| parts.contains(&group.part)) {
            @for judged in &group.findings {
                p { span.balloon { (group.mark) } b { (judged.rule.title) } ": " (judged.verdict.says()) ". " span.small { (judged.rule.remedy) } }
            }
        }
    }
}
