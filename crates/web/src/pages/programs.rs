//! The page of the manual on the interface for programs, from the list of its ways.

use super::manual::of_manual;
use crate::api::{Route, ways};
use crate::desk::Desk;
use axum::Router;
use axum::routing::get;
use maud::{Markup, html};
use std::sync::Arc;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/manual/programs", get(show))
}

/// A first call.
const FIRST: &str = "curl -H \"Authorization: Bearer KEY\" http://127.0.0.1:PORT/api/sheets";
/// A first change.
const CHANGE: &str = "curl -H \"Authorization: Bearer KEY\" -H \"Content-Type: application/json\" \\\n     \
                      -d '[{\"do\":\"set\",\"path\":\"water.coldest\",\"value\":\"50 °F\",\"from\":\"telephone\"}]' \\\n     \
                      http://127.0.0.1:PORT/api/sheets/NAME/actions";

async fn show() -> Markup {
    let inner = html! {
        h1 { "For programs" }
        p { "All that the pages do can be done by a program, over the same functions and with the same answers." }
        h2 { "The key" }
        p { "The address that is printed when the sheet is started holds the port and, behind " code { "key=" } ", the key. Each start has its own. A program sends it as " code { "Authorization: Bearer KEY" } "." }
        h2 { "A first call" }
        pre tabindex="0" { (FIRST) }
        p { "It lists the enquiries of the folder. A value is set so:" }
        pre tabindex="0" { (CHANGE) }
        p { "A change is saved when it is answered. One that is refused changes nothing: the answer tells every fault with its place, the reason and what helps." }
        h2 { "All ways" }
        p { "Parameters, bodies and answers with their shapes stand in " a href="/openapi.json" { "the description" } ", in OpenAPI 3.1." }
        div.scroll { table.list {
            thead { tr { th scope="col" { "Method" } th scope="col" { "Path" } th scope="col" { "What it does" } } }
            tbody { @for way in &ways() { (row(way)) } }
        } }
    };
    of_manual("For programs", &inner)
}

fn row(way: &Route) -> Markup {
    let asks: Vec<String> = way.asks.iter().map(|asked| format!("{}: {}", asked.name, asked.says)).collect();
    html! { tr {
        td { (way.method.to_uppercase()) }
        th scope="row" { code { (way.described_path()) } }
        td { (way.says) @if !asks.is_empty() { p.small { (asks.join("; ")) } } }
    } }
}
