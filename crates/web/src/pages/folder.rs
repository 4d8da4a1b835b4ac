//! The enquiries of the folder: due date, state and headline of each, and ways to start another.

use super::{Page, cautions, page, refused};
use crate::answer::Refusal;
use crate::desk::Desk;
use crate::listed::{Listed, listed};
use crate::parts::glance::words_in_short;
use axum::Router;
use axum::extract::State;
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;
use stillrise_desk::jobs::JOBS;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/", get(show))
}

async fn show(State(desk): State<Arc<Desk>>, headers: HeaderMap) -> Response {
    match crate::sheet::apart(move || lines(&desk)).await {
        Ok((root, lines)) => whole(&root, &lines).into_response(),
        Err(refusal) => refused(&refusal, &headers),
    }
}

/// The folder, and all its enquiries, each settled.
fn lines(desk: &Desk) -> Result<(String, Vec<Listed>), Refusal> {
    Ok((desk.folder.root().display().to_string(), listed(desk)?))
}

/// What an enquiry comes to, in short.
fn headline(one: &Listed) -> Markup {
    match (&one.glance, one.faults) {
        (Some(glance), _) => words_in_short(glance),
        (None, Some(faults)) => html! { span.word.open { "not complete: " (faults) " to mend or to add" } },
        (None, None) => html! { span.word.bad { "cannot be read" } },
    }
}

fn whole(root: &str, lines: &[Listed]) -> Markup {
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
                                td { (line.client.as_deref().unwrap_or_default()) } td.number { (line.due.as_deref().unwrap_or_default()) } td { (line.status) } td { (headline(line)) }
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
        bar: html! { nav { a href="/settings" { "Settings" } a href="/manual" { "Manual" } } },
        body,
    })
}

/// The title that a worked job states.
fn title_of(files: &[stillrise_desk::jobs::File]) -> String {
    let text = files.iter().find(|(name, _)| *name == "enquiry.toml").map_or("", |(_, text)| text);
    let line = text.lines().find_map(|line| line.strip_prefix("title = "));
    line.map_or_else(|| "A worked job".to_owned(), |title| title.trim_matches('"').to_owned())
}
