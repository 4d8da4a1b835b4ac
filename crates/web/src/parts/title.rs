//! Title block and revision block.

use crate::sheet::State;
use maud::{Markup, html};
use serde_json::json;
use stillrise_design::enquiry::blocks::Status;

/// The block.
#[must_use]
pub fn piece(state: &State) -> Markup {
    html! {
        section #title data-patch aria-label="Title block" {
            @if let Some(settled) = &state.outcome.settled {
                @let head = &settled.job.enquiry.head;
                @let locked = state.is_locked();
                div.block {
                    (cell("enquiry.title", "Title", head.title.0.as_deref(), "wide", locked))
                    (cell("enquiry.client", "Client", head.client.0.as_deref(), "wide", locked))
                    (cell("enquiry.project", "Project", head.project.0.as_deref(), "", locked))
                    (cell("enquiry.prepared_by", "Prepared by", head.prepared_by.0.as_deref(), "", locked))
                    (cell("enquiry.date", "Date", head.date.0.as_deref(), "", locked))
                    (cell("enquiry.due", "Due", head.due.0.map(|day| day.to_string()).as_deref(), "", locked))
                    (cell("enquiry.revision", "Revision", head.revision.0.as_deref(), "", locked))
                    div.cell {
                        label for="title-status" { "Status" }
                        select #title-status data-set="enquiry.status" disabled[locked] {
                            @let now = head.status.0.unwrap_or(Status::Preliminary);
                            @for status in [Status::Preliminary, Status::ForApproval, Status::Issued, Status::AsBuilt] {
                                option value=(status.word()) selected[status == now] { (status.word()) }
                            }
                        }
                    }
                }
                @if locked { (next(head.revision.0.as_deref())) }
            }
        }
    }
}

/// The button that opens the next revision of one that is issued.
fn next(revision: Option<&str>) -> Markup {
    let next = following(revision);
    let act = json!([
        { "do": "set", "path": "enquiry.revision", "value": next },
        { "do": "set", "path": "enquiry.status", "value": "preliminary" },
    ]);
    html! { p { button type="button" data-act=(act) { "Start revision " (next) } } }
}

/// The revision after one: the next letter or number.
fn following(revision: Option<&str>) -> String {
    let Some(now) = revision.map(str::trim).filter(|now| !now.is_empty()) else { return "A".to_owned() };
    if let Ok(number) = now.parse::<u32>() {
        return number.saturating_add(1).to_string();
    }
    match now.chars().next_back() {
        Some(last @ ('A'..='Y' | 'a'..='y')) => {
            let front = &now[..now.len() - last.len_utf8()];
            let next = u8::try_from(last).map_or('A', |byte| char::from(byte + 1));
            format!("{front}{next}")
        }
        _ => format!("{now}1"),
    }
}

fn cell(path: &str, label: &str, value: Option<&str>, class: &str, locked: bool) -> Markup {
    let id = format!("title-{}", super::notes::slug(path));
    html! {
        div.cell.(class) {
            label for=(id) { (label) }
            input #(id) data-set=(path) value=(value.unwrap_or_default()) autocomplete="off" disabled[locked];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::following;

    #[test]
    fn revisions_follow_one_another() {
        for (now, next) in
            [(None, "A"), (Some("A"), "B"), (Some("P2"), "P21"), (Some("3"), "4"), (Some("Z"), "Z1"), (Some(" "), "A")]
        {
            assert_eq!(following(now), next, "{now:?}");
        }
    }
}
