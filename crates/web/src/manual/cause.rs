//! A cause of trouble.

use super::{Ways, guide};
use maud::{Markup, html};
use stillrise_search::diagnosis::causes::Cause;
use stillrise_units::print::digits;

/// Words for the grades of what a test costs.
const COSTS: [&str; 5] = ["a look", "an hour", "a laboratory sample", "a day", "a shutdown"];

/// What the page says.
pub(super) fn body(cause: &Cause, ways: Ways) -> Markup {
    let cost = usize::from(cause.cost).checked_sub(1).and_then(|k| COSTS.get(k));
    html! {
        h1 { (cause.title) }
        dl.about {
            dt { "How it comes about" } dd { (cause.how) }
            dt { "The test that would show it" } dd { (cause.test) @if let Some(cost) = cost { " It costs " (cost) "." } }
            dt { "What to do" } dd { (cause.remedy) }
            dt { "Days of normal operation before a sample says anything" } dd { (cause.settles) }
            @if let Some(size) = cause.size {
                @let (us, si) = size.units;
                dt { "Its size" }
                dd { (size.label) ": half of the cases lie below " (digits(si.from_si(size.likely), 3)) " " (si.symbol) ", nine in ten between " (digits(si.from_si(size.low), 3)) " and " (digits(si.from_si(size.high), 3)) " " (si.symbol)
                    @if us != si { " (" (digits(us.from_si(size.likely), 3)) "; " (digits(us.from_si(size.low), 3)) " and " (digits(us.from_si(size.high), 3)) " " (us.symbol) ")" } "." }
            }
            dt { "Of all complaints" } dd { "some " (digits(100.0 * cause.often, 2)) " in 100" }
        }
        p.small { "How often causes occur and how large they are is engineering judgement put into numbers; a rating weighs them by what was observed." }
        (guide::how("add-a-cause-of-trouble", ways))
    }
}
