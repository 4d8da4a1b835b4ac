//! The train and the unit: stages, dimensions, neighbours, long section.

use super::blocks::{Table, number, slim, wide};
use super::effluent::brief;
use super::{Report, capital, sentence};
use crate::scope::By;
use stillrise_design::Node;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::installation::Stands;
use stillrise_design::provenance::{Pair, told};
use stillrise_design::train::{StageKind, Train};
use stillrise_units::catalog::{GAL, IN, KG, LB, M3, MM};

const LENGTH: Pair = (&IN, &MM);

/// Section 4.
pub(super) fn unit(r: &mut Report<'_>) {
    r.out.section("Treatment train and unit");
    let settled = r.settled;
    let Some(train) = &settled.job.design.train else {
        r.out.para("No unit was laid out.");
        let stops = &settled.job.design.stops;
        r.out.list(false, stops.iter().map(|s| (sentence(&s.to_string()), String::new())));
        return;
    };
    stages(r, train);
    super::around::around(r, train);
    neighbours(r);
    others(r);
    dimensions(r, train);
    particulars(r, train);
}

fn stages(r: &mut Report<'_>, train: &Train) {
    r.out.heading("Stages in the direction of flow");
    let mut table =
        Table::new([number("", ""), wide("Stage", 1.2), wide("Why", 2.2), slim("First size"), wide("Scope", 1.0)]);
    // The levels may ask for a pump that no train was laid out with.
    let design = &r.settled.job.design;
    let lifted = design.performance.as_ref().is_some_and(|p| p.site.installation.stands.q == Stands::LiftPump);
    let mut k = 0;
    for stage in &train.stages {
        if lifted && stage.kind == StageKind::Separator {
            k += 1;
            let flow = design.basis.as_ref().and_then(|basis| basis.design_flow());
            table.row([
                k.to_string(),
                "Pump, behind the separator or ahead of it".to_owned(),
                "on the levels stated the outlet is drowned, or the fall too small; ahead of the separator its flow and droplets decide, and all is to be worked again".to_owned(),
                flow.map_or_else(|| "–".to_owned(), |flow| format!("flow: {}", r.show(flow.q, FLOW_UNITS))),
                "needed; open who brings it".to_owned(),
            ]);
        }
        k += 1;
        let size = stage.size.as_ref().map_or_else(
            || "–".to_owned(),
            |(label, value, units)| format!("{label}: {}", told(value, Some(*units), r.system)),
        );
        let scope = match crate::scope::of_stage(stage) {
            By::Maker => "in this scope",
            By::Others | By::Nobody => "by others",
            By::Open => "needed; open who brings it",
        };
        table.row([k.to_string(), capital(&stage.name), stage.why.clone(), size, scope.to_owned()]);
    }
    r.out.table(&table);
}

/// The unit taken between its neighbours of the range.
fn neighbours(r: &mut Report<'_>) {
    let settled = r.settled;
    let Some(pick) = &settled.pick else { return };
    r.out.heading("Why this unit");
    r.out.para(&sentence(&format!("taken: {}", crate::summary::taken::because(settled, pick))));
    let mut table =
        Table::new([wide("Unit", 0.9), slim(""), number("Total oil out", "mg/L"), wide("What speaks against it", 3.0)]);
    let influent = settled.job.design.performance.as_ref().and_then(|p| p.worst()).map(|worst| worst.content.total.q);
    for c in &settled.candidates {
        let out = c.effluent.map_or_else(|| "–".to_owned(), |e| brief(e, influent));
        let bars = stillrise_search::pick::barred_by(c).unwrap_or_else(|| "no rule bars it".to_owned());
        let row = [c.unit.name(), if c.taken { "taken" } else { "" }.to_owned(), out, bars];
        if c.taken { table.strong_row(row) } else { table.row(row) }
    }
    if settled.job.enquiry.range.is_none() && settled.job.enquiry.unit.dimensions.is_none() {
        r.out.remark(
            "The units are those of a demonstration range, which is invented: their sizes, weights and prices are no offer.",
        );
    }
    if settled.candidates.len() > 1 {
        r.out.table(&table);
        r.out.remark("One size below, the one taken, one above; oil out as expected in the case that is held against the limits.");
    }
}

/// Other trains than the one asked for, worked through.
fn others(r: &mut Report<'_>) {
    let lines = crate::reply::alternatives::lines(r.settled, r.edition.is_internal());
    if lines.is_empty() {
        return;
    }
    r.out.heading("What else was worked through");
    r.out.list(false, lines.into_iter().map(|line| (line, String::new())));
    r.out.remark("Each is a job of its own, worked from the same enquiry with this one thing changed; its numbers stand in no trail here.");
}

fn dimensions(r: &mut Report<'_>, train: &Train) {
    r.out.heading("Dimensions of one unit");
    r.out.para("Elevations are above the floor of the unit. Where these values come from is said in the trail.");
    let mut table = Table::new([
        wide("Given or chosen", 1.6),
        slim("Value"),
        number("No.", ""),
        wide("Given or chosen", 1.6),
        slim("Value"),
        number("No.", ""),
    ]);
    let stated: Vec<_> = train.unit.dimensions().into_iter().flat_map(|(_, all)| all).collect();
    paired(r, &mut table, &stated);
    r.out.table(&table);
    let mut table = Table::new([
        wide("Follows", 1.6),
        slim("Value"),
        number("No.", ""),
        wide("Follows", 1.6),
        slim("Value"),
        number("No.", ""),
    ]);
    paired(r, &mut table, &train.unit.follows());
    r.out.table(&table);
    let mut table = Table::new([
        wide("Compartment", 1.6),
        number("Length", r.symbol(LENGTH)),
        number("Water up to the crest", r.symbol((&GAL, &M3))),
        number("No.", ""),
    ]);
    for zone in &train.unit.compartments {
        table.row([
            capital(zone.place.word()),
            r.digits(zone.length.q, LENGTH, 4),
            r.digits(zone.volume.q, (&GAL, &M3), 3),
            r.no(zone.volume.at),
        ]);
    }
    r.out.table(&table);
}

/// Two entries a row. A value that serves as two things, such as an invert that is also the
/// crest, has one label in the trail; the second time it goes by its own name.
fn paired(r: &Report<'_>, table: &mut Table, fields: &[(&str, Node)]) {
    let half = fields.len().div_ceil(2);
    let cells = |k: usize| match fields.get(k).and_then(|(_, at)| r.row(*at)) {
        Some([label, value, _, no]) => {
            let again = fields.iter().filter(|(_, at)| r.no(*at) == no).count() > 1;
            let own = fields.get(k).map_or("", |(name, _)| name).replace('_', " ");
            [if again { capital(&own) } else { label }, value, no]
        }
        None => [String::new(), String::new(), String::new()],
    };
    for k in 0..half {
        table.row(cells(k).into_iter().chain(cells(half + k)));
    }
}

fn particulars(r: &mut Report<'_>, train: &Train) {
    let p = &train.unit.particulars;
    let mut table = Table::new([wide("Particulars", 1.2), wide("", 3.0)]);
    let mut add = |name: &str, value: Option<String>| {
        if let Some(value) = value.filter(|v| !v.is_empty()) {
            table.row([name.to_owned(), value]);
        }
    };
    add("Where it comes from", Some(train.origin.to_string()));
    add("Nozzles, in and out", Some(crate::summary::performance::bores(&p.nozzles, r.system)));
    let rated = p.rated.as_ref().map(|(flow, basis)| {
        let basis = if basis.is_empty() { "basis not stated" } else { basis };
        format!("{}: {basis}", r.show(flow.q, FLOW_UNITS))
    });
    add("Rated flow and its basis", rated);
    add("Weight empty, each", p.empty_weight.map(|w| r.show(w.q, (&LB, &KG))));
    let lifts = p.lifts_out.map_or("", |out| if out { ", lift out from above" } else { ", do not lift out" });
    let modules = p.modules.map(|n| format!("{n}{lifts}"));
    add("Modules of the pack", modules);
    add("Heaviest module", p.module_weight.map(|w| r.show(w.q, (&LB, &KG))));
    let shipping = p.shipping.as_ref().map(|[a, b, c]| {
        format!(
            "{} × {} × {} {}",
            r.digits(a.q, LENGTH, 4),
            r.digits(b.q, LENGTH, 4),
            r.digits(c.q, LENGTH, 4),
            r.symbol(LENGTH)
        )
    });
    add("Shipping box", shipping);
    add("Material", p.material.clone());
    add("Measured results", Some(p.measured.clone().unwrap_or_else(|| "none stated".to_owned())));
    if r.edition.is_internal() {
        add(
            "Price (internal)",
            p.price
                .as_ref()
                .map(|(value, currency)| format!("{} {currency}", stillrise_units::print::digits(*value, 6))),
        );
        add("Lead time (internal)", p.lead_time.clone());
    }
    r.out.table(&table);
}
