//! The customer's text beside the sheet: everything in it that an enquiry asks for is marked until a key has used it, and each
//! mark offers the keys that it could answer.

use super::View;
use super::leaf::leaf;
use crate::sheet::State;
use maud::{Markup, html};
use serde_json::json;
use stillrise_design::enquiry::blocks::GallonWord;
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_edit::{Claimed, Heading, Said, headings, said};
use stillrise_mail::keys::place;
use stillrise_mail::{Find, Mail, Offer, What};
use stillrise_units::parse::{Gallon, Reading};

/// Letters of a sentence that a claim keeps as its source.
const LONGEST: usize = 300;

/// How the text is read for this enquiry.
fn reading(state: &State) -> Reading {
    let word = state.outcome.settled.as_ref().and_then(|settled| settled.job.enquiry.head.gallon.0);
    let gallon = word.map(|word| match word {
        GallonWord::Us => Gallon::Us,
        GallonWord::Imperial => Gallon::Imperial,
    });
    Reading { gallon }
}

/// A text without the blanks and breaks that a mail puts into it.
fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The sentence of a find, as a claim keeps it.
fn sentence(text: &str, mail: &Mail, find: &Find) -> String {
    let whole =
        mail.sentences.get(find.sentence).map_or_else(|| plain(&text[find.at.clone()]), |s| plain(&text[s.at.clone()]));
    whole.chars().take(LONGEST).collect()
}

/// Whether a claim of the enquiry says what a find says, by its sentence.
fn is_used(claims: &[Said], sentence: &str, find: &Find) -> bool {
    claims.iter().any(|said| {
        let path = unnamed(&said.path);
        let is_listed = |claim: &Claimed, offer: &Offer| {
            place(&path).is_some_and(|place| matches!(place.key.kind, KeyKind::Results(_)))
                && claim.value.split(';').any(|one| plain(one) == plain(&offer.value))
        };
        said.claims.iter().any(|claim| {
            find.offers.first().is_some_and(|offer| offer.path == path && is_listed(claim, offer))
                // A word says the same wherever it stands.
                || matches!(find.what, What::Word(..))
                    && find.offers.iter().any(|offer| offer.path == path && plain(&offer.value) == plain(&claim.value))
                || claim.from.as_deref().is_some_and(|from| plain(from) == sentence)
                && find.offers.iter().any(|offer| offer.path == path && plain(&offer.value) == plain(&claim.value))
        })
    })
}

/// A path without names and numbers: `stream.oil.mean`.
fn unnamed(path: &stillrise_edit::Path) -> String {
    let keys = path.tables().iter().map(|key| key.name).chain(core::iter::once(path.key().name));
    core::iter::once(path.block().name).chain(keys).collect::<Vec<_>>().join(".")
}

/// The whole of it.
#[must_use]
pub fn piece(state: &State, view: &View) -> Markup {
    html! {
        h2 { "The customer's text" }
        @match &state.mail {
            Some(customer) => {
                @let text = &customer.text;
                @let reading = reading(state);
                @let mail = customer.read(&reading);
                @let claims = said(&state.text).unwrap_or_default();
                @let used: Vec<bool> = mail.finds.iter().map(|find| is_used(&claims, &sentence(text, &mail, find), find)).collect();
                @let open = used.iter().filter(|used| !**used).count();
                p { b { (open) } " of " (mail.finds.len()) " not used yet. Each mark offers the keys that it could answer; what is used is struck." }
                (super::answers::piece(state, (text, &mail), &reading, &claims))
                (leaf(view, html! { div.mail { (marked(text, &mail, &used)) } }))
                (leaf(view, html! { details { summary { "Paste another text" } (paste(Some(text))) } }))
            }
            None => { p { "Paste the customer's mail: quantities, oils, products, surfaces, pumps and limits in it are marked, and a click makes each a claim with its sentence as source." } (paste(None)) }
        }
    }
}

/// The form that takes a text; one that stands is kept above it.
fn paste(stands: Option<&str>) -> Markup {
    html! {
        form data-mail="" {
            label.unseen for="mail-text" { "The customer's text" }
            textarea #mail-text name="mail" rows="14" { "\n" @if let Some(stands) = stands { (stands) "\n\n----\n\n" } }
            p { button.main type="submit" { "Read it" } " " span.small { "It is kept beside the enquiry and leaves this machine nowhere." } }
        }
    }
}

/// The text with its marks.
fn marked(text: &str, mail: &Mail, used: &[bool]) -> Markup {
    let mut at = 0;
    let mut pieces: Vec<Markup> = Vec::new();
    for (k, find) in mail.finds.iter().enumerate() {
        if find.at.start < at {
            continue;
        }
        pieces.push(html! { (text[at..find.at.start]) });
        let said = &text[find.at.clone()];
        pieces.push(match used.get(k) {
            Some(true) => html! { mark.used data-find=(k) tabindex="0" role="button" aria-label=(format!("{said}, used")) { (said) } },
            _ => html! { mark data-find=(k) tabindex="0" role="button" aria-label=(format!("{said}, not used yet")) { (said) } },
        });
        at = find.at.end;
    }
    pieces.push(html! { (text[at..]) });
    html! { @for piece in &pieces { (piece) } }
}

/// The panel of one find: what it could answer.
#[must_use]
pub fn offers(state: &State, nth: usize) -> Option<Markup> {
    let customer = state.mail.as_ref()?;
    let (text, mail) = (&customer.text, customer.read(&reading(state)));
    let find = mail.finds.get(nth)?;
    let from = sentence(text, &mail, find);
    let stand = headings(&state.text).unwrap_or_default();
    let claims = said(&state.text).unwrap_or_default();
    let found = plain(&text[find.at.clone()]);
    Some(html! {
        aside #panel data-patch aria-label="What is pointed at" {
            button.close type="button" data-close="panel" { "Close" }
            h2 tabindex="-1" { (found) }
            blockquote { (from) }
            @if find.offers.is_empty() { p { "Its words point to no key. Whatever it says, the inputs beside the sheet take it." } }
            ul.offers { @for offer in &find.offers { (one(offer, &from, &stand, &claims, &found)) } }
        }
    })
}

/// The key of the ground's elevation.
const GROUND: &str = "site.ground";

/// One key that a find could answer: in each block of its kind that stands, and in a new one.
fn one(offer: &Offer, from: &str, stand: &[Heading], claims: &[Said], said_as: &str) -> Markup {
    let Some((block, keys)) = offer.path.split_once('.') else { return html! {} };
    let Ok(kind) = Heading::new(block, None, None) else { return html! {} };
    let own: Vec<&Heading> = stand.iter().filter(|heading| core::ptr::eq(heading.block(), kind.block())).collect();
    let path = |head: &str| format!("{head}.{keys}{}", next(offer, head, claims));
    // A depth below the ground is an elevation where the ground stands at nothing.
    let ground = claims.iter().find(|said| said.path.to_string() == GROUND);
    let is_depth = offer.value.starts_with('-');
    let is_zero =
        |claim: &Claimed| claim.value.trim_start_matches(['0', '.']).trim_start().starts_with(char::is_alphabetic);
    if is_depth && ground.is_some_and(|said| !said.claims.iter().all(is_zero)) {
        let at = ground.and_then(|said| said.claims.first()).map_or("", |claim| claim.value.as_str());
        return html! { li { code { (offer.path) } ": counted down from the ground, which stands at " (at) "; the inputs take the elevation." } };
    }
    let is_list = place(&offer.path).is_some_and(|place| matches!(place.key.kind, KeyKind::Results(_)));
    let claim = |head: &str| {
        let path = path(head);
        let own = match is_list {
            // Results of a laboratory stand in one list, which has no sources of its own.
            true => {
                let stands =
                    claims.iter().find(|said| said.path.to_string() == path).and_then(|said| said.claims.first());
                let value =
                    stands.map_or_else(|| offer.value.clone(), |claim| format!("{}; {}", claim.value, offer.value));
                json!({ "do": "set", "path": path, "value": value })
            }
            false => json!({ "do": "claim", "path": path, "value": offer.value, "from": from }),
        };
        match is_depth && ground.is_none() {
            true => json!([own, { "do": "set", "path": GROUND, "value": "0 m", "from": from }]),
            false => json!([own]),
        }
    };
    // What stands already stays: the two are shown as a contradiction to choose from.
    let beside = |path: &str| {
        let stands = claims.iter().find(|said| said.path.to_string() == path).and_then(|said| said.claims.first());
        html! { @if let Some(claim) = stands.filter(|_| !is_list) { " " span.small { "beside " (claim.value) ", which stays" } } }
    };
    html! {
        li {
            @if !kind.is_many() {
                button type="button" data-act=(claim(block)) { code { (path(block)) } " = " (offer.value) } (beside(&path(block)))
                @if is_depth && ground.is_none() { " " span.small { "with the ground at 0" } }
            } @else {
                // A limit on one pollutant is none on another, nor is one product another: these begin a block of their own.
                @for heading in own.iter().filter(|_| !matches!(keys, "pollutant" | "product")) {
                    @let head = heading.to_string();
                    button type="button" data-act=(claim(&head)) { code { (head) "." (keys) } " = " (offer.value) } (beside(&path(&head)))
                }
                (fresh(kind.block(), keys, offer, from, (said_as, own.len()), stand))
            }
        }
    }
}

/// Of a list of things, as the rates of several pumps, the number of the next one, as a path ends with it; nothing of a key that
/// holds one quantity.
fn next(offer: &Offer, head: &str, claims: &[Said]) -> String {
    let several = place(&offer.path).is_some_and(|place| matches!(place.key.kind, KeyKind::Quantities(_)));
    if !several {
        return String::new();
    }
    let own = claims.iter().filter(|said| said.path.heading().to_string() == head && unnamed(&said.path) == offer.path);
    // Things without sources stand in one text, parted by semicolons.
    let things = own.map(|said| match (said.path.item(), said.claims.first()) {
        (None, Some(claim)) => claim.value.split(';').count(),
        _ => 1,
    });
    format!(".{}", things.sum::<usize>() + 1)
}

/// The keys without which a new block that begins with one says too little: a rate of each hose needs their number.
fn companions(block: &'static BlockSpec, keys: &str, called: Option<&str>) -> Vec<&'static KeySpec> {
    let special = match (block.name, keys) {
        ("stream", "hose_flow") => "hoses",
        ("stream", "flow" | "hoses" | "volume_per_day") => "",
        ("stream", _) => "flow",
        ("dump", _) => "stream",
        _ => "",
    };
    let asked =
        |key: &&'static KeySpec| key.name == special || key.needed && key.name != keys && Some(key.name) != called;
    block.keys().into_iter().filter(asked).collect()
}

/// The words of which a key takes one, as a list of the handbook has them.
fn names(block: &'static BlockSpec, name: &str) -> Option<Vec<String>> {
    block.keys().into_iter().find(|key| key.name == name).and_then(|key| match key.kind {
        KeyKind::Named(list) => Some(list()),
        _ => None,
    })
}

/// The form that starts a block with what was found.
fn fresh(
    block: &'static BlockSpec,
    keys: &str,
    offer: &Offer,
    from: &str,
    (said_as, count): (&str, usize),
    stand: &[Heading],
) -> Markup {
    let called =
        ["product", "pollutant", "name"].into_iter().find(|name| block.keys().iter().any(|key| key.name == *name));
    let id = format!("fresh-{}-{}", block.name, super::notes::slug(keys));
    let path = format!("{keys}{}", next(offer, "", &[]));
    let is_list = place(&offer.path).is_some_and(|place| matches!(place.key.kind, KeyKind::Results(_)));
    let stream = stand.iter().find(|heading| heading.block().name == "stream").and_then(Heading::name);
    html! {
        form.fresh data-fresh=(block.name) data-key=(path) data-list[is_list] data-value=(offer.value) data-from=(from) data-called=[called.filter(|called| *called != keys)] {
            @if let Some(called) = called.filter(|called| *called != keys) {
                label for=(id) { "a new " (block.name) ", " (called) " " }
                // What a word names is called by it, anything else by its number, until somebody knows better.
                @let name = if offer.path == "oil.kind" { said_as.to_owned() } else { format!("{} {}", block.name, count + 1) };
                @match names(block, called) {
                    Some(names) => select #(id) name="called" required { option value="" { "" } @for name in names { option { (name) } } },
                    None => input #(id) name="called" required autocomplete="off" value=[(called == "name").then_some(name)];
                }
            }
            @for key in companions(block, keys, called) {
                label { (key.name.replace('_', " ")) " "
                    @match names(block, key.name) {
                        Some(names) => select data-with=(key.name) required { option value="" { "" } @for name in names { option { (name) } } },
                        None => input data-with=(key.name) required autocomplete="off" placeholder=(key.like.trim_matches('"')) value=[stream.filter(|_| key.name == "stream")];
                    }
                }
                " "
            }
            button type="submit" { code { (block.name) "." (keys) } " = " (offer.value) @if called.is_none_or(|called| called == keys) { ", a new one" } }
        }
    }
}
