//! The enquiries of the folder: due date, state and headline of each, and ways to start another.

use super::{Page, cautions, page, refused};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::parts::glance::words_in_short;
use axum::Router;
use axum::extract::State;
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;
use stillrise_desk::jobs::JOBS;
use stillrise_documents::glance::glance;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/", get(show))
}

/// One enquiry in the list.
struct Line {
    name: String,
    title: String,
    client: String,
    due: String,
    status: &'static str,
    headline: Markup,
}

async fn show(State(desk): State<Arc<Desk>>, headers: HeaderMap) -> Response {
    match crate::sheet::apart(move || lines(&desk)).await {
        Ok((root, lines)) => whole(&root, &lines).into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

/// All enquiries of the folder, each settled.
fn lines(desk: &Desk) -> Result<(String, Vec<Line>), Refusal> {
    let places = desk.folder.list()?;
    let lines = places.into_iter().map(|place| line(desk, place.name)).collect();
    Ok((desk.folder.root().display().to_string(), lines))
}

fn line(desk: &Desk, name: String) -> Line {
    let state = match desk.sheet(&name) {
        Ok(sheet) => sheet.now(),
        Err(_) => {
            let headline = html! { span.word.bad { "cannot be read" } };
            return Line { title: name.clone(), name, client: String::new(), due: String::new(), status: "", headline };
        }
    };
    let Some(settled) = &state.outcome.settled else {
        let faults = state.outcome.faults.len();
        let headline = html! { span.word.open { "not complete: " (faults) " to mend or to add" } };
        return Line {
            title: name.clone(),
            name,
            client: String::new(),
            due: String::new(),
            status: "draft",
            headline,
        };
    };
    let head = &settled.job.enquiry.head;
    let text = |value: &Option<String>| value.clone().unwrap_or_default();
    Line {
        title: head.title.0.clone().unwrap_or_else(|| name.clone()),
        client: text(&head.client.0),
        due: head.due.0.map(|day| day.to_string()).unwrap_or_default(),
        status: head.status.0.map_or("preliminary", |status| status.word()),
        headline: words_in_short(&glance(settled)),
        name,
    }
}

fn whole(root: &str, lines: &[Line]) -> Markup {
    let body = html! {
        main #main.folder {
            h1 { "Enquiries" }
            p.where { "In " code { (root) } }
            @if lines.is_empty() {
                p { "The folder holds no enquiry yet. Start with a customer's mail, with a worked job, or with an empty sheet." }
            } @else {
                table.list {
                    caption.unseen { "Enquiries of the folder" }
                    thead { tr { th scope="col" { "Enquiry" } th scope="col" { "Client" } th scope="col" { "Due" } th scope="col" { "State" } th scope="col" { "What it comes to" } } }
                    tbody {
                        @for line in lines {
                            tr {
                                th scope="row" { a href=(super::sheet::address(&line.name)) { (line.title) } }
                                td { (line.client) } td.number { (line.due) } td { (line.status) } td { (line.headline) }
                            }
                        }
                    }
                }
            }
            section.start {
                h2 { "Start another" }
                form.new method="post" data-new {
                    p { label for="new-mail" { "From a customer's mail" } }
                    textarea #new-mail name="mail" rows="6" placeholder="Paste the mail here. Nothing of it leaves this machine." {}
                    p {
                        label for="new-name" { "Name of the enquiry" }
                        input #new-name name="name" maxlength="80" autocomplete="off" placeholder="bus depot north";
                        button.main type="submit" { "Start" }
                    }
                    p.hint { "Without a mail the sheet starts empty and asks for what changes the answer, most important first." }
                }
                h3 { "From a worked job" }
                p.hint { "Invented sites, worked through: a copy is put into the folder." }
                ul.jobs {
                    @for job in JOBS {
                        li { button type="button" data-like=(job.name) { (title_of(job.files)) } }
                    }
                }
            }
        }
        (cautions())
    };
    page(&Page {
        title: "Enquiries",
        sheet: None,
        class: "folder",
        bar: html! { nav { a href="/manual" { "Manual" } } },
        body,
    })
}

/// The title that a worked job states.
fn title_of(files: &[stillrise_desk::jobs::File]) -> String {
    let text = files.iter().find(|(name, _)| *name == "enquiry.toml").map_or("", |(_, text)| text);
    let line = text.lines().find_map(|line| line.strip_prefix("title = "));
    line.map_or_else(|| "A worked job".to_owned(), |title| title.trim_matches('"').to_owned())
}
