//! Known limits, and the box for signatures.

use super::Report;
use super::blocks::{Table, number, wide};
use super::{capital, sentence};
use serde_json::json;

/// What this calculation does not cover, whatever the job.
const LIMITS: &[&str] = &[
    "Structure, foundation, anchorage, wind, earthquake and corrosion of the vessel are not designed here: of its walls no more than how a new plate bends when it is full of water, of buoyancy whether the empty unit floats, by its inside measures, of protection its size.",
    "One outlet: all limits are held against all waters that come. Waters that go to two places want an enquiry each.",
    "Steady flow only: no years of weather, no pump cycles, no surge through the unit, no filling of the sump.",
    "The flow inside the unit is described by a tank and a plate pack in series, not by a resolved velocity field; short circuits beyond the unequal flow stated are not seen.",
    "Coalescence and breakage of droplets within the unit and re-entrainment of collected oil are left out.",
    "Emulsified and dissolved oil pass. Detergents, glycol, solvents and metals are outside what gravity can do.",
    "Results by different methods of analysis (extraction, infrared, gas chromatography) do not convert into each other.",
    "No calculation makes a unit one of an EN class: that is a full-scale type test.",
    "Explosion protection, wiring, the alarm panel and the classification of areas are designed by others.",
    "Values printed with four digits are not known to four digits; they are printed so that the calculation can be followed.",
];

/// Section 12 and the signatures.
pub(super) fn closing(r: &mut Report<'_>) {
    r.out.section("Known limits");
    r.out.list(false, LIMITS.iter().map(|text| ((*text).to_owned(), String::new())));
    let settled = r.settled;
    let stops = &settled.job.design.stops;
    if !stops.is_empty() {
        r.out.lead("Where the calculation stopped.", "These branches could not be followed to their end:");
        r.out.list(false, stops.iter().map(|s| (sentence(&s.to_string()), String::new())));
    }
    let mut table = Table::new([wide("Used outside its trusted range", 2.0), wide("For", 1.0), number("No.", "")]);
    for (k, entry, note) in settled.job.ledger.outside_trust() {
        table.row([note.to_owned(), capital(&entry.label), (k + 1).to_string()]);
    }
    if table.is_empty() {
        r.out.para("No formula was used outside its trusted range, but in studies beside the design.");
    } else {
        r.out.heading("Formulas used outside their trusted range");
        r.out.para("Each once, at the line of the trail where it comes first. Studies beside the design go beyond ranges on purpose and are left out; their notes stand in the trail.");
    }
    r.out.table(&table);
    from_settings(r);
    r.out.other(json!({ "t": "signatures" }));
}

/// What the company says in all its documents: its notes, and what of its settings stands in this one.
fn from_settings(r: &mut Report<'_>) {
    let enquiry = &r.settled.job.enquiry;
    let notes = crate::company::company(enquiry).notes;
    if !notes.is_empty() {
        r.out.heading("Standard notes");
        r.out.list(false, notes.into_iter().map(|note| (note, String::new())));
    }
    let said = crate::settings::shown(enquiry, r.edition);
    if said.is_empty() {
        return;
    }
    r.out.heading("From the company's settings");
    r.out.para("These stand where the enquiry says nothing else.");
    let mut table =
        Table::new([wide("What", 1.4), wide("By the settings", 1.4), wide("The enquiry says instead", 1.0)]);
    for one in said {
        table.row([capital(one.what), one.value, one.instead.unwrap_or_default()]);
    }
    r.out.table(&table);
}
