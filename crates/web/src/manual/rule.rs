//! A rule.

use super::{Ways, guide};
use maud::{Markup, html};
use stillrise_checks::Rule;

/// What the page says.
pub(super) fn body(rule: &Rule, ways: Ways) -> Markup {
    html! {
        h1 { (rule.title) }
        dl.about {
            dt { "What a client is told" } dd { (rule.client) }
            dt { "What it looks for" } dd { (rule.looks.in_both()) }
            dt { "Why it matters" } dd { (rule.matters) }
            dt { "What to do" } dd { (rule.remedy) }
            dt { "Source" } dd { (rule.source.in_both()) }
            dt { "Limits" } dd { (rule.limits.in_both()) }
        }
        @if rule.bars_pick { p { "A unit that fails it is not picked from a range." } }
        p.small { "An engineer who decides on it names it so: " code { (rule.id) } "." }
        (guide::to_correct(rule.file, "add-a-rule", ways))
    }
}
