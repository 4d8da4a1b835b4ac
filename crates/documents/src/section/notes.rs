//! Notes on the sheet.

use super::internals::{every, pitch};
use super::place::Section;
use stillrise_design::enquiry::range::Model;
use stillrise_design::performance::installation::Stands;
use stillrise_design::provenance::Origin;
use stillrise_design::stages::outlet::OutletControl;
use stillrise_design::triage::Weight;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_units::catalog::{GAL, GPM, L, M3_H, MM};
use stillrise_units::print::{digits, in_prose};
use stillrise_units::{System, Typed};

/// The notes, in order of weight.
pub fn notes(s: &Section) -> Vec<String> {
    let mut all = Vec::new();
    if s.settled.job.design.triage.first().is_some_and(|line| line.weight == Weight::Blocks) {
        all.push("NOT A GRAVITY DUTY AS IT STANDS: see the findings and the calculation report.".to_owned());
    }
    let count = s.train.count.q.si();
    if count > 1.0 {
        all.push(format!(
            "One of {} like units in parallel; a splitter shares the flow, and no share is exact.",
            digits(count, 6)
        ));
    }
    let floor = s.datum(super::place::zero());
    let floor =
        floor.map_or_else(|| "the site's datum is not known".to_owned(), |z| format!("EL: site datum, floor {z}"));
    all.push(format!("Elevations are above the floor, inside; {floor}."));
    if let Some(p) = s.performance
        && p.site.installation.stands.q == Stands::LiftPump
    {
        all.push("The levels ask for a pump, which is not drawn: site levels are shown as with the pump ahead of the unit; with the pump behind it the unit stands lower.".to_owned());
    }
    if let Some(oil) = s.governing() {
        let cap = oil.caps.get(oil.governing).map_or("cap", |c| c.of.word());
        all.push(match s.layer() {
            Some(_) => format!("Oil at the alarm, without flow: {}; its layer is limited by the {cap}.", oil.oil),
            None => format!("No oil layer is drawn: the {cap} leaves no room for one."),
        });
    }
    all.push(match s.highest() {
        Some(p) if p.inlet.q > s.unit().shape.height() => format!(
            "At {} through one unit the water would stand over its top: no level is drawn for that.",
            s.show(p.flow.q, (&GPM, &M3_H))
        ),
        Some(p) => {
            format!(
                "Chain lines: water at {} through one unit, end of interval.",
                in_prose(p.flow.q.si(), s.system.pick((&GPM, &M3_H)))
            )
        }
        None => "Levels under flow were not found.".to_owned(),
    });
    let trigger = s.performance.and_then(|p| p.storage.sludge_trigger.as_ref()).filter(|_| s.sludge().is_some());
    if let Some(volume) = trigger {
        all.push(format!("Sludge: {}, to be pumped out.", s.show(volume.q, (&GAL, &L))));
    }
    all.extend(converted(s));
    all.push("Fill with clean water to the outlet before any oily water comes.".to_owned());
    all.extend(plates(s));
    all.push(nominal(s));
    all.extend(assumed(s));
    if s.edition.is_internal() {
        all.push(format!("Unit: {}.", s.train.origin));
        if let Some(pick) = &s.settled.pick {
            all.push(format!("Why this unit: {}.", crate::summary::taken::because(s.settled, pick)));
        }
    }
    all
}

/// Lengths of a unit built in inches do not add up once each is rounded to a millimetre.
fn converted(s: &Section) -> Option<String> {
    let whole = |length: stillrise_units::Length| stillrise_units::math::floor(length.in_unit(&MM) + 0.5);
    let sum: f64 = s.unit().compartments.iter().map(|c| whole(c.length.q)).sum();
    let all = s.unit().shape.length() - s.unit().body.head() * 2.0;
    (s.system == System::Si && (sum - whole(all)).abs() > 0.5).then(|| {
        "Dimensions are converted from inches, each rounded to a millimetre: where a chain does not add up, the whole length holds.".to_owned()
    })
}

/// How the plates are drawn.
fn plates(s: &Section) -> Option<String> {
    let pack = s.unit().pack.as_ref()?;
    let step = every(pitch(s, &pack.laid));
    let which = if step > 1 { format!("one for {step} plates") } else { "at true pitch".to_owned() };
    Some(match pack.laid.run.q {
        PlateRun::CrossFlow => format!("Plates inclined across the unit are seen as level lines, {which}."),
        _ => format!("Plates are seen at their true angle, {which}."),
    })
}

/// What is drawn without data.
fn nominal(s: &Section) -> String {
    let top = if s.unit().body.is_open() { "cover" } else { "places of the manways" };
    let mut what = if s.wall_is_true() { vec![top] } else { vec!["walls", top] };
    if s.unit().inlet_bend.is_some() {
        what.extend(["nozzle stubs, float", "distance of inlet bend and dip pipe from the wall"]);
    } else {
        what.extend(["nozzle stubs, deflector, float", "tops of baffles"]);
    }
    if s.unit().mesh.is_some() {
        what.push("height of the mesh");
    }
    if s.unit().particulars.modules.is_some_and(|n| n > 1) {
        what.push("order of the modules");
    }
    if s.unit().outlet.control.q == OutletControl::Weir {
        what.push("place of the weir");
    }
    format!("Nominal, not stated: {}.", what.join(", "))
}

/// Dimensions that nobody stated: what is drawn there is an assumption, to be measured at the unit.
fn assumed(s: &Section) -> Option<String> {
    s.settled.job.enquiry.unit.dimensions.as_ref()?;
    let mut labels: Vec<&str> = Vec::new();
    for entry in &s.settled.job.ledger.entries {
        let Origin::Assumed(a) = &entry.origin else { continue };
        if a.declared.is_within::<Model>() && !labels.contains(&entry.label.as_str()) {
            labels.push(&entry.label);
        }
    }
    let more = labels.len().saturating_sub(NAMED);
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    let first = labels.iter().take(NAMED).copied().collect::<Vec<_>>().join(", ");
    (!labels.is_empty())
        .then(|| format!("ASSUMED, TO BE MEASURED AT THE UNIT, and all that is drawn from them: {first}{more}."))
}

/// Assumed dimensions that a note names.
const NAMED: usize = 8;
