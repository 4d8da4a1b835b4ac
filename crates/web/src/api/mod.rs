//! The interface for programs: one list of ways, from which the router, the description and the page of the manual are made.

mod actions;
mod described;
mod handbook;
mod packages;
mod results;
mod route;
mod shapes;
mod sheets;
pub mod taken;

pub use route::Route;

use crate::answer::{Refusal, panicked_json};
use crate::desk::Desk;
use axum::Router;
use axum::http::header::HeaderMap;
use axum::http::{Method, StatusCode};
use axum::response::Response;
use axum::routing::get;
use route::Holds;
use serde_json::json;
use shapes::{named, of};
use std::sync::Arc;
use tower_http::catch_panic::CatchPanicLayer;

/// All ways, as they stand in the description.
pub fn ways() -> Vec<Route> {
    let mut all = sheets();
    all.extend(results());
    all.extend(packages());
    all.extend(handbook());
    all
}

/// Enquiries, what is said in them, and what changes them.
fn sheets() -> Vec<Route> {
    let text = || json!({ "type": "string" });
    vec![
        Route::get("/api/sheets", "listSheets", sheets::list)
            .says("Enquiries of the folder, each with state, due day and what it comes to")
            .answers(named("Listed")),
        Route::post("/api/sheets", "beginSheet", sheets::begin)
            .says("Begins an enquiry: empty, with a customer's text, or as a copy of a worked job")
            .takes(named("Beginning"))
            .ends(201, Holds::Json(named("Begun")))
            .refuses(&[404, 409]),
        Route::get("/api/sheets/{name}/text", "readText", sheets::written)
            .says("The text of the enquiry, and its version")
            .answers(named("Text"))
            .refuses(&[404]),
        Route::put("/api/sheets/{name}/text", "writeText", actions::text)
            .says("Replaces the text of the enquiry, if it still is of the version that it was written over")
            .takes(named("NewText"))
            .answers(named("Sheet"))
            .refuses(&[404, 409]),
        Route::get("/api/sheets/{name}/version", "readVersion", sheets::version)
            .says("The version of the enquiry, which counts up with every change")
            .answers(named("Version"))
            .refuses(&[404]),
        Route::post("/api/sheets/{name}/actions", "act", actions::act)
            .says("Changes single keys, blocks and decisions, all of them or none")
            .takes(named("Actions"))
            .answers(named("Sheet"))
            .refuses(&[404, 409]),
        Route::post("/api/sheets/{name}/undo", "undo", actions::undo)
            .says("Takes the last change back")
            .answers(named("Sheet"))
            .refuses(&[404, 409, 422]),
        Route::post("/api/sheets/{name}/redo", "redo", actions::redo)
            .says("Does again what was taken back")
            .answers(named("Sheet"))
            .refuses(&[404, 409, 422]),
        Route::get("/api/sheets/{name}/mail", "readMail", sheets::mail)
            .says("The customer's text beside the enquiry")
            .answers(named("Mail"))
            .refuses(&[404]),
        Route::put("/api/sheets/{name}/mail", "keepMail", actions::mail)
            .says("Keeps a customer's text beside the enquiry")
            .takes(named("NewMail"))
            .answers(named("Sheet"))
            .refuses(&[404, 409]),
        Route::get("/api/sheets/{name}/inputs", "readInputs", sheets::inputs)
            .says("Every key of the enquiry: what it takes, what is said of it, what stands in")
            .answers(named("Inputs"))
            .refuses(&[404]),
        Route::get("/api/sheets/{name}/settings", "readSettings", sheets::settings)
            .says("The company's settings that hold for the enquiry: where they lie, their text, and what comes from them")
            .answers(named("Settings"))
            .refuses(&[404]),
        Route::post("/api/read", "readCustomer", sheets::read)
            .says("Finds in a customer's text what an enquiry asks for; keeps nothing")
            .takes(named("Reading"))
            .answers(named("Read")),
        Route::get("/api/jobs", "listJobs", sheets::jobs)
            .says("Worked jobs that an enquiry can be begun from")
            .answers(of(text())),
    ]
}

/// What an enquiry comes to.
fn results() -> Vec<Route> {
    let named_sheet = || json!({ "type": "string" });
    vec![
        Route::get("/api/sheets/{name}", "readResult", results::result).says("The result, with its trail").answers(named("Result")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/glance", "readGlance", results::glance).says("The job at a glance, or the faults that keep it from being worked").answers(named("Sheet")).refuses(&[404]),
        Route::get("/api/sheets/{name}/risk", "readRisk", results::risk).says("How sure the prediction is").answers(named("Risk")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/rating", "readRating", results::rating).says("What explains what was observed at a unit that stands").answers(named("Rating")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/compare", "compare", results::compare).says("Another enquiry, or an issued revision of this one, beside it")
            .asks("with", named_sheet(), "The enquiry that is held beside; `issued A` is revision A of this one, as it was issued").answers(named("Comparison")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/changes", "readChanges", results::changes).says("What has changed since a revision was issued, number by number, by the inputs or by the tool")
            .asks("since", named_sheet(), "The revision; without it that of the enquiry, or the only one").answers(named("Changes")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/range", "listRange", results::range).says("Every unit of the range for this duty, each with all rules").answers(named("WithRange")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/units", "listUnits", results::units).says("Units of the range side by side, about the one taken").answers(named("Units")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/alternatives", "listAlternatives", results::alternatives).says("Trains that would do, beside the one asked for").answers(named("Alternatives")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/questions", "listQuestions", results::questions).says("What the customer is asked, what moves the result most first").answers(named("Questions")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/trail/{entry}", "readTrail", results::trail).says("Where a number comes from: one line of the trail, counted from 0 as `entry` is elsewhere, with the lines it rests on").answers(named("TrailLine")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/remedies/{rule}", "listRemedies", results::remedies).says("Changes of the enquiry that settle what a rule says, each worked through").answers(named("Remedies")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/reply", "readReply", results::reply).says("The first answer as the text of a mail").answers(named("Reply")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/drawing.svg", "readDrawing", results::drawing).says("The first drawing sheet: the long section").ends(200, Holds::File("image/svg+xml")).refuses(&[404, 422]),
        Route::get("/api/sheets/{name}/views.svg", "readViews", results::views).says("The second drawing sheet: plan and cross section").ends(200, Holds::File("image/svg+xml")).refuses(&[404, 422]),
    ]
}

/// Packages of documents.
fn packages() -> Vec<Route> {
    vec![
        Route::get("/api/sheets/{name}/documents", "listDocuments", packages::list)
            .says("Editions that can be made, and packages of this enquiry that are kept")
            .answers(named("Documents"))
            .refuses(&[404]),
        Route::post("/api/sheets/{name}/packages", "beginPackage", packages::begin)
            .says("Begins to make the documents of an edition, in the background")
            .takes(named("Wish"))
            .ends(202, Holds::Json(named("PackageBegun")))
            .refuses(&[404, 409]),
        Route::get("/api/packages/{number}", "readPackage", packages::stand)
            .says("How a package stands")
            .answers(named("Package"))
            .refuses(&[404]),
        Route::delete("/api/packages/{number}", "stopPackage", packages::stop)
            .says("Stops a package that is being made")
            .ends(204, Holds::Nothing)
            .refuses(&[404]),
        Route::get("/api/packages/{number}/all.zip", "readDocuments", packages::all)
            .says("All documents of a package that is done")
            .ends(200, Holds::File("application/zip"))
            .refuses(&[404]),
        Route::get("/api/packages/{number}/files/{*file}", "readDocument", packages::one)
            .says("One document of a package that is done, by its name")
            .ends(200, Holds::File("*/*"))
            .refuses(&[404]),
        Route::post("/api/packages/{number}/save", "savePackage", packages::save)
            .says("Saves a package that is done beside its enquiry")
            .answers(named("Saved"))
            .refuses(&[404, 409, 422]),
    ]
}

/// The handbook, and this description.
fn handbook() -> Vec<Route> {
    vec![
        Route::get("/api/manual", "searchManual", handbook::search)
            .says("Finds in the manual")
            .asks("q", json!({ "type": "string" }), "Words to look for")
            .answers(named("Hits")),
        Route::get("/api/formulas/{id}", "readFormula", handbook::formula)
            .says("A formula with its symbols, sources and check values, run now")
            .answers(named("Formula"))
            .refuses(&[404]),
        Route::get("/openapi.json", "readDescription", description)
            .says("This description")
            .answers(json!({ "type": "object" })),
    ]
}

/// The description of all ways.
async fn description() -> axum::Json<serde_json::Value> {
    axum::Json(described::description(&ways()))
}

/// The router of all ways.
pub fn routes() -> Router<Arc<Desk>> {
    let mut router = Router::new();
    for way in ways() {
        router = router.route(way.path, way.by);
    }
    router
        .method_not_allowed_fallback(not_so)
        .route("/api/{*rest}", get(nowhere).fallback(nowhere))
        .layer(CatchPanicLayer::custom(panicked_json))
}

/// Another method than those that a path answers to.
async fn not_so(method: Method, headers: HeaderMap) -> Response {
    taken::refused(&headers, StatusCode::METHOD_NOT_ALLOWED, format!("This is not to be had by {method}."))
}

/// A path of the interface where nothing is.
async fn nowhere(headers: HeaderMap) -> Response {
    Refusal::missing("There is no such way; /openapi.json lists them all.").answer(&headers)
}
