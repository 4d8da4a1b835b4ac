//! Leaves: the parts of a piece that are sent again only when they changed. A leaf carries the hash of what it holds; a page
//! tells which it has, and gets a mark in place of each of those.

use super::View;
use core::hash::{BuildHasher, BuildHasherDefault};
use maud::{Markup, PreEscaped};
use std::hash::DefaultHasher;

/// An element that is as long as it is the same. Its own tag comes first in it.
#[must_use]
pub fn leaf(view: &View, element: Markup) -> Markup {
    let text = element.into_string();
    let Some(end) = text.find([' ', '>']).filter(|_| text.starts_with('<')) else { return PreEscaped(text) };
    let hash = format!("{:016x}", BuildHasherDefault::<DefaultHasher>::default().hash_one(&text));
    let tag = &text[1..end];
    if view.has.split('.').any(|known| known == hash) {
        return PreEscaped(format!("<{tag} data-same=\"{hash}\"></{tag}>"));
    }
    PreEscaped(format!("<{tag} data-hash=\"{hash}\"{}", &text[end..]))
}

#[cfg(test)]
mod tests {
    use super::leaf;
    use crate::parts::View;
    use maud::html;

    #[test]
    fn what_a_page_has_is_not_sent_again() {
        let element = || html! { li.finding id="one" { b { "text" } } };
        let first = leaf(&View::default(), element()).into_string();
        let hash = first.split('"').nth(1).unwrap_or_default();
        assert!(
            first.starts_with("<li data-hash=") && first.ends_with(" class=\"finding\" id=\"one\"><b>text</b></li>")
        );
        let has = View { has: format!("0.{hash}"), ..View::default() };
        assert_eq!(leaf(&has, element()).into_string(), format!("<li data-same=\"{hash}\"></li>"));
        let other = leaf(&has, html! { li { "other" } }).into_string();
        assert!(other.contains("data-hash") && !other.contains(hash), "{other}");
    }
}
