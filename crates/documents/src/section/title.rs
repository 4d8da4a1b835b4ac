//! Title block and description.

use super::place::Section;
use crate::render::text::plain;
use crate::render::title_block::{Projection, TitleBlock};
use stillrise_design::enquiry::blocks::Status;
use stillrise_design::stages::Stage;
use stillrise_design::triage::Weight;
use stillrise_units::print::digits;
use stillrise_units::{System, Typed};

/// What must be minded by whoever acts on the sheet.
const CAUTIONS: &str = "For review by a licensed engineer; local codes and the permit govern. Confined space, flammable \
                        vapour, lifting, hot work: by permit only.";

/// The title block, from the head of the enquiry.
pub fn block(s: &Section) -> TitleBlock {
    let head = &s.settled.job.enquiry.head;
    let text = |field: &Option<String>| field.as_deref().map(plain).unwrap_or_default();
    let status = head.status.0.unwrap_or(Status::Preliminary);
    let (status, stamp) = match status {
        Status::Preliminary => ("Preliminary", "PRELIMINARY - NOT FOR CONSTRUCTION"),
        Status::ForApproval => ("For approval", "FOR APPROVAL - NOT FOR CONSTRUCTION"),
        Status::Issued => ("Issued", ""),
        Status::AsBuilt => ("As built", "AS BUILT"),
    };
    let count = s.train.count.q.si();
    let each = if count > 1.0 { format!(", one of {} in parallel", digits(count, 6)) } else { String::new() };
    let client = text(&head.client);
    let client = if client.is_empty() { client } else { format!(", for {client}") };
    let project = text(&head.project);
    let company = crate::company::company(&s.settled.job.enquiry);
    TitleBlock {
        title: title(s),
        subtitle: format!("{}{each}{client}", super::place::NAME),
        number: crate::company::drawing_number(&s.settled.job.enquiry, "S1"),
        project: [project, text(&head.title)].iter().filter(|t| !t.is_empty()).cloned().collect::<Vec<_>>().join(", "),
        owner: company.owner,
        drawn: company.drawn,
        checked: company.checked,
        approved: company.approved,
        logo: company.logo.cloned(),
        kind: "Section".to_owned(),
        revision: text(&head.revision),
        sheet: (1, 2),
        status: status.to_owned(),
        scale: s.view.scale.text().to_owned(),
        date: text(&head.date),
        units: match s.system {
            System::Us => "feet and inches".to_owned(),
            System::Si => "millimetres".to_owned(),
        },
        projection: match s.system {
            System::Us => Projection::Third,
            System::Si => Projection::First,
        },
        language: "en".to_owned(),
        stamp: stamp.to_owned(),
        warning: if not_gravity(s) { "NOT A GRAVITY DUTY AS IT STANDS".to_owned() } else { String::new() },
        cautions: CAUTIONS.to_owned(),
    }
}

/// Whether something in the water keeps gravity from doing the duty.
fn not_gravity(s: &Section) -> bool {
    s.settled.job.design.triage.first().is_some_and(|line| line.weight == Weight::Blocks)
}

fn title(s: &Section) -> String {
    format!("Oil-water separator, {}", plain(&s.unit().particulars.model))
}

/// For someone who cannot see the drawing.
pub fn description(s: &Section) -> String {
    let unit = s.unit();
    let oil = s.layer().map_or_else(String::new, |alarm| {
        format!(
            " Oil at the alarm lies from {} to {} above the floor.",
            s.write(alarm.interface.q),
            s.write(alarm.surface.q)
        )
    });
    format!(
        "Long section of {}: {} long and {} high inside. From the left: {}. The water stands at {} without flow.{oil}",
        plain(&unit.particulars.model),
        s.write(unit.body.over_all().q),
        s.write(unit.body.height().q),
        passed(s),
        s.write(unit.outlet.crest.q),
    )
}

/// What the water passes, from the left.
fn passed(s: &Section) -> String {
    let unit = s.unit();
    let all: Vec<&str> = unit.stages.all().into_iter().filter_map(|stage| stage.passed(unit)).collect();
    all.join(", ")
}
