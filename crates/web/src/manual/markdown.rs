//! The project's own pages, written in Markdown, as pages of the manual.

use super::{Shelf, Ways, guide, pictures};
use core::fmt::Write;
use maud::{Markup, PreEscaped};
use pulldown_cmark::{CowStr, Event, Options, Parser, Tag, TagEnd, html::push_html};
use stillrise_documents::render::svg::escape;

/// A heading: its level, its text, the anchor that leads to it, and what stands under it in plain text.
pub(super) struct Part {
    /// 1 for the title.
    pub level: u8,
    /// Its text.
    pub title: String,
    /// What leads to it.
    pub anchor: String,
    /// What stands under it.
    pub text: String,
}

/// A page as HTML. A link to another page of the guide leads to it, one to a file of the tree is told as its path; a picture
/// of ours stands in the page.
pub(super) fn page(text: &str, ways: Ways) -> Markup {
    let mut out = Vec::new();
    let mut events = Parser::new_ext(text, Options::ENABLE_TABLES);
    while let Some(event) = events.next() {
        match event {
            Event::Start(Tag::Heading { level, .. }) => {
                let inner = until(&mut events, |end| matches!(end, TagEnd::Heading(_)));
                let anchor = anchor(&plain(&inner));
                out.push(raw(format!("<{level} id=\"{}\">", escape(&anchor))));
                out.extend(inner);
                out.push(raw(format!("</{level}>")));
            }
            Event::Start(Tag::Link { dest_url, .. }) => {
                let inner = until(&mut events, |end| *end == TagEnd::Link);
                out.push(raw(link(&dest_url, &plain(&inner), ways)));
            }
            Event::Start(Tag::Image { dest_url, .. }) => {
                let inner = until(&mut events, |end| *end == TagEnd::Image);
                out.push(raw(picture(&dest_url, &plain(&inner), ways)));
            }
            Event::Start(Tag::CodeBlock(_)) => {
                let inner = until(&mut events, |end| *end == TagEnd::CodeBlock);
                out.push(raw(format!("<pre tabindex=\"0\">{}</pre>", escape(&plain(&inner)))));
            }
            Event::Start(Tag::Table(alignments)) => {
                out.push(raw("<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Table\">".to_owned()));
                out.push(Event::Start(Tag::Table(alignments)));
            }
            Event::End(TagEnd::Table) => {
                out.push(Event::End(TagEnd::Table));
                out.push(raw("</div>".to_owned()));
            }
            // The pages hold no markup of their own.
            Event::Html(text) | Event::InlineHtml(text) => out.push(Event::Text(text)),
            other => out.push(other),
        }
    }
    let mut html = String::new();
    push_html(&mut html, out.into_iter());
    PreEscaped(html)
}

/// The headings of a page with what stands under each.
pub(super) fn parts(text: &str) -> Vec<Part> {
    let mut all: Vec<Part> = Vec::new();
    let mut events = Parser::new_ext(text, Options::ENABLE_TABLES);
    while let Some(event) = events.next() {
        match event {
            Event::Start(Tag::Heading { level, .. }) => {
                let title = plain(&until(&mut events, |end| matches!(end, TagEnd::Heading(_))));
                all.push(Part { level: level as u8, anchor: anchor(&title), title, text: String::new() });
            }
            Event::Text(text) | Event::Code(text) => {
                if let Some(part) = all.last_mut() {
                    part.text.push_str(&text);
                }
            }
            Event::SoftBreak | Event::HardBreak | Event::End(TagEnd::Paragraph) => {
                if let Some(part) = all.last_mut() {
                    part.text.push(' ');
                }
            }
            _ => {}
        }
    }
    all
}

/// Everything up to an end.
fn until<'a>(events: &mut impl Iterator<Item = Event<'a>>, is_end: impl Fn(&TagEnd) -> bool) -> Vec<Event<'a>> {
    events.take_while(|event| !matches!(event, Event::End(end) if is_end(end))).collect()
}

fn raw<'a>(html: String) -> Event<'a> {
    Event::InlineHtml(CowStr::from(html))
}

/// The words of some events.
fn plain(events: &[Event<'_>]) -> String {
    let mut out = String::new();
    for event in events {
        match event {
            Event::Text(text) | Event::Code(text) => out.push_str(text),
            Event::SoftBreak | Event::HardBreak => out.push(' '),
            _ => {}
        }
    }
    out
}

/// A heading's anchor: small letters, blanks as dashes, other marks dropped.
fn anchor(title: &str) -> String {
    let kept = title.to_lowercase();
    let kept = kept.chars().filter(|c| c.is_alphanumeric() || matches!(c, ' ' | '-' | '_'));
    kept.map(|c| if c == ' ' { '-' } else { c }).collect()
}

fn link(target: &str, text: &str, ways: Ways) -> String {
    let (path, place) = target.split_once('#').unwrap_or((target, ""));
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = match guide::page_of(path) {
        Some(id) if place.is_empty() => {
            write!(out, "<a href=\"{}\">{}</a>", ways.to(Shelf::Guide, id), escape(text))
        }
        Some(id) => write!(out, "<a href=\"{}\">{}</a>", escape(&ways.at(Shelf::Guide, id, place)), escape(text)),
        None if path.is_empty() => write!(out, "<a href=\"#{}\">{}</a>", escape(place), escape(text)),
        None if path.ends_with(text) => write!(out, "<code>{}</code>", escape(path)),
        None => write!(out, "{} (<code>{}</code>)", escape(text), escape(path)),
    };
    out
}

/// A picture of ours as it stands in the page; of another only what it shows.
fn picture(target: &str, text: &str, ways: Ways) -> String {
    let id = target.rsplit('/').next().and_then(|file| file.strip_suffix(".svg"));
    let Some(made) = id.and_then(pictures::made) else { return escape(text) };
    let alone = ways.picture(made.id).map_or_else(String::new, |at| {
        format!("<a class=\"small\" href=\"{at}\">The picture by itself: {}</a>", escape(made.title))
    });
    format!(
        "<span class=\"picture\" tabindex=\"0\" role=\"group\" aria-label=\"{}\">{}</span>{alone}",
        escape(text),
        made.svg
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn links_lead_to_pages_or_tell_paths() {
        let ways = Ways::Written("../");
        let told = |text: &str| page(text, ways).into_string();
        assert!(told("[how](CONTRIBUTING.md#add-a-key)").contains("href=\"../guide/contributing.html#add-a-key\""));
        assert!(told("[a.rs](crates/units/src/a.rs)").contains("<code>crates/units/src/a.rs</code>"));
        assert!(told("[why](docs/x.md)").contains("why (<code>docs/x.md</code>)"));
        assert!(told("a <b>bold</b> word").contains("&lt;b&gt;"));
        assert!(told("# Two words, `code`").contains("<h1 id=\"two-words-code\">"));
    }

    #[test]
    fn parts_are_the_headings() {
        let found = parts("# One\nfirst\n\n## Two, `three`\nsecond `word`\nmore\n");
        let seen: Vec<_> = found.iter().map(|p| (p.level, p.anchor.as_str(), p.text.trim())).collect();
        assert_eq!(seen, [(1, "one", "first"), (2, "two-three", "second word more")]);
    }
}
