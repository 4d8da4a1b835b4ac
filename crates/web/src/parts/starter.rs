//! What an empty sheet asks: only what changes the answer, most important first.

use super::fields;
use crate::inputs::{Group, Input, groups};
use crate::sheet::State;
use maud::{Markup, html};

/// One thing that is asked: why, and the keys that answer it.
struct Asks {
    title: &'static str,
    why: &'static str,
    keys: &'static [&'static str],
}

/// What is asked of blocks of which there is but one, in order of weight.
const ASKS: &[Asks] = &[
    Asks {
        title: "What kind of place is it?",
        why: "It lends loads that are typical of such places, until somebody knows better; each is shown as assumed.",
        keys: &["enquiry.facility"],
    },
    Asks {
        title: "How hard does it rain?",
        why: "With an area that drains to the unit the storm sets the largest flow. An intensity, or the storm that recurs so often.",
        keys: &["rain.intensity", "rain.duration", "rain.return_period"],
    },
    Asks {
        title: "Is a flow stated?",
        why: "Where somebody asks for a unit of a flow and says no more, that is what it is sized for.",
        keys: &["stated.flow"],
    },
    Asks {
        title: "Does the water come by gravity or by pump?",
        why: "A pump sets the flow, and may break the oil into droplets that no longer rise.",
        keys: &["inlet.feed", "inlet.pump", "inlet.rate"],
    },
    Asks { title: "Where does it go?", why: "A sewer and a stream ask for different limits.", keys: &["outlet.to"] },
    Asks {
        title: "How cold is the water at its coldest?",
        why: "Oil rises slower in cold water: the coldest sets the size of the plates.",
        keys: &["water.coldest"],
    },
];

/// The questions; nothing once the job can be worked.
#[must_use]
pub fn piece(state: &State) -> Markup {
    let all = groups(state);
    let find = |path: &str| -> Option<&Input> {
        all.iter().flat_map(|group: &Group| &group.inputs).find(|input| input.path == path)
    };
    html! {
        div.starter {
            p { "An enquiry needs a water before anything can be drawn. What changes the answer most comes first; whatever stays open is assumed, shown as assumed, and asked of the customer." }
            h2 { "What drains to the separator?" }
            p.small { "At least one: an area on which rain falls, or a water that flows by itself, such as a wash." }
            div.pair-of {
                (added("surface", "An area", &[("name", "fuelling apron"), ("area", "0.5 acre"), ("kind", "concrete")]))
                (added("stream", "A water that flows", &[("name", "bus wash"), ("flow", "45 gpm"), ("hours_per_day", "3")]))
            }
            h2 { "Which limit must it keep?" }
            (added("limit", "A limit", &[("pollutant", "oil and grease"), ("value", "15 mg/L"), ("statistic", "daily maximum")]))
            @for asks in ASKS {
                @let inputs: Vec<&Input> = asks.keys.iter().filter_map(|key| find(key)).collect();
                @if !inputs.is_empty() { h2 { (asks.title) } p.small { (asks.why) } (fields::rows(&inputs, state.is_locked())) }
            }
        }
    }
}

/// The form that adds a block with its first keys.
fn added(block: &str, title: &str, keys: &[(&str, &str)]) -> Markup {
    html! {
        form data-add=(block) {
            fieldset {
                legend { (title) }
                @for (key, like) in keys {
                    @let id = format!("start-{block}-{key}");
                    p { label for=(id) { (key.replace('_', " ")) } " " input #(id) name=(key) placeholder=(like) autocomplete="off"; }
                }
                button type="submit" { "Add it" }
            }
        }
    }
}
