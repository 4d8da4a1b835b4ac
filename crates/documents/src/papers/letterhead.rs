//! What a paper shows of the company: name, logo and address at its head, standard notes at its end. Where nobody said anything,
//! nothing stands.

use crate::company::{about, company};
use crate::report::{Report, sentence};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use stillrise_design::enquiry::Enquiry;

/// Brings name, address and logo, author and day, to the template.
pub(super) fn letterhead(enquiry: &Enquiry, data: &mut Value, files: &mut BTreeMap<String, Vec<u8>>) {
    let company = company(enquiry);
    let logo = company.logo.map(|logo| {
        let name = format!("logo.{}", if logo.is_svg { "svg" } else { "png" });
        files.insert(name.clone(), logo.bytes.clone());
        json!({ "file": name, "aspect": logo.aspect })
    });
    data["company"] = json!({ "name": company.name, "address": company.address, "logo": logo });
    let about = about(enquiry);
    data["author"] = about.author.into();
    data["day"] = json!(about.day);
}

/// Standard notes; ahead of a page of its own at the end, such as a sheet to copy.
pub(super) fn notes(r: &mut Report<'_>) {
    let notes = company(&r.settled.job.enquiry).notes;
    if notes.is_empty() {
        return;
    }
    let last = r.out.0.iter().rposition(|block| block["t"] == "break").unwrap_or(r.out.0.len());
    let behind = r.out.0.split_off(last);
    let notes = notes.iter().enumerate().map(|(k, note)| format!("{}. {}", k + 1, sentence(note)));
    r.out.remark(&format!("Standard notes: {}", notes.collect::<Vec<_>>().join(" ")));
    r.out.0.extend(behind);
}
