//! The keys of a block of a file: what each is, what it takes, how it is asked for, and what stands in where nobody says.

use super::{Ways, guide};
use maud::{Markup, html};
use stillrise_design::enquiry::keys::{Block as _, BlockSpec, KeyKind, KeySpec, Safe};
use stillrise_design::enquiry::range::{Model, RangeHead};
use stillrise_design::enquiry::spec::without_options;
use stillrise_design::enquiry::{self, settings};
use stillrise_units::Unit;

/// A file that holds blocks.
pub(super) struct File {
    /// What begins the ids of its pages.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What it is for.
    pub about: &'static str,
}

/// The files.
pub(super) static FILES: [File; 3] = [
    File { id: "enquiry", title: "An enquiry", about: "What the customer said: enquiry.toml, block by block." },
    File { id: "range", title: "A range of units", about: "The rows from which a unit is picked." },
    File {
        id: "settings",
        title: "A company's settings",
        about: "What holds for all its enquiries: stillrise-settings.toml.",
    },
];

/// A block of a file.
pub(super) struct Block {
    file: &'static File,
    spec: &'static BlockSpec,
    many: bool,
}

/// All blocks of all files.
pub(super) fn blocks() -> impl Iterator<Item = Block> {
    let [of_enquiry, of_range, of_settings] = &FILES;
    let range = [(RangeHead::spec(), false), (Model::spec(), true)].into_iter();
    let of = |file: &'static File| move |(spec, many): (&'static BlockSpec, bool)| Block { file, spec, many };
    enquiry::blocks().map(of(of_enquiry)).chain(range.map(of(of_range))).chain(settings::blocks().map(of(of_settings)))
}

impl Block {
    /// The id of its page.
    pub fn id(&self) -> String {
        format!("{}-{}", self.file.id, self.spec.name)
    }
    /// Its title.
    pub fn title(&self) -> String {
        format!("{}: {}", self.file.title, self.spec.name)
    }
    /// Its head in the file.
    fn head(&self) -> String {
        if self.many { format!("[[{}]]", self.spec.name) } else { format!("[{}]", self.spec.name) }
    }
    /// Its keys, those in tables after the key of the table: the name in the file, and the key.
    pub fn keys(&self) -> Vec<(String, &'static KeySpec)> {
        let mut all = Vec::new();
        gather(self.spec, "", &mut all);
        all
    }
    /// What it holds.
    pub fn about(&self) -> &'static str {
        self.spec.doc
    }
}

fn gather(spec: &'static BlockSpec, before: &str, all: &mut Vec<(String, &'static KeySpec)>) {
    for key in spec.keys() {
        let name = format!("{before}{}", key.name);
        all.push((name.clone(), key));
        if let KeyKind::Table(inner) = key.kind {
            gather(inner(), &format!("{name}."), all);
        }
    }
}

/// What the page says.
pub(super) fn body(block: &Block, ways: Ways) -> Markup {
    let keys = block.keys();
    let written = keys.iter().filter(|(name, key)| !key.like.is_empty() && !name.contains('.'));
    let example: Vec<String> = written.map(|(name, key)| format!("{name} = {}", key.like)).collect();
    html! {
        p.small { (block.file.title) }
        h1 { code { (block.head()) } }
        p { (sentence(block.spec.doc)) @if block.many { " It may stand more than once." } }
        @if !example.is_empty() { pre tabindex="0" { (block.head()) "\n" (example.join("\n")) } }
        p.small { "The lines are examples of how each key is written, not one enquiry." }
        @for (name, key) in &keys { (one(name, key)) }
        (guide::how("add-a-key", ways))
    }
}

fn one(name: &str, key: &'static KeySpec) -> Markup {
    html! {
        section.key #(name) {
            h2 { code { (name) } @if key.needed { " " span.small { "needed" } } }
            p { (sentence(key.doc)) }
            dl.about {
                dt { "Takes" } dd { (takes(key.kind)) }
                @if let Some((low, high)) = key.bounds { dt { "Between" } dd { (low) " and " (high) "; outside it is taken for a slip and refused" } }
                @if key.safe != Safe::First { dt { "Of contradicting claims" } dd { "the " @if key.safe == Safe::Larger { "larger" } @else { "smaller" } " is designed for, until somebody chooses" } }
                @if !key.like.is_empty() { dt { "Written" } dd { code { (name.rsplit('.').next().unwrap_or(name)) " = " (key.like) } } }
                @for question in key.questions() { dt { "Asked of the customer" } dd { (without_options(question)) } }
                @if let Some(stands_in) = key.stands_in() { dt { "Where nobody says" } dd { (stands_in) } }
            }
        }
    }
}

/// A text that ends with a full stop.
fn sentence(text: &str) -> String {
    format!("{}.", text.trim_end_matches('.'))
}

/// What may be written.
fn takes(kind: KeyKind) -> Markup {
    match kind {
        KeyKind::Text => html! { "text" },
        KeyKind::Texts => html! { "a text, or a list of texts" },
        KeyKind::Pattern(form) => html! { "text of the form " code { (form) } },
        KeyKind::Flag => html! { code { "true" } " or " code { "false" } },
        KeyKind::Count => html! { "a whole number, 1 or more" },
        KeyKind::Curve => html! { "a list of rows, each a size and a share" },
        KeyKind::Table(_) => html! { "the keys that follow under its name" },
        KeyKind::Choice(words) | KeyKind::ClaimedChoice(words) => html! {
            "one of: " @for (k, (word, meaning)) in words.iter().enumerate() { @if k > 0 { "; " } code { (word) } " " (meaning) }
        },
        KeyKind::Named(names) => html! {
            "one of: " @for (k, name) in names().iter().enumerate() { @if k > 0 { ", " } code { (name) } }
        },
        KeyKind::Quantity(dim) => html! { "a number with a unit" (units(dim)) },
        KeyKind::Quantities(dim) => html! { "a list of numbers with units" (units(dim)) },
        KeyKind::Results(dim) => {
            html! { "laboratory results, each a number with a unit, below a limit as " code { "\"<5 mg/L\"" } (units(dim)) }
        }
    }
}

fn units(dim: stillrise_units::Dim) -> Markup {
    let all: Vec<&str> = Unit::of_dim(dim).map(|unit| unit.symbol).filter(|symbol| !symbol.is_empty()).collect();
    html! { @if all.is_empty() { "; it has no unit" } @else { ": " (all.join(", ")) } }
}
