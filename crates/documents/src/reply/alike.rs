//! Questions that ask the same of several waters, surfaces or places, in one.

use super::not_rising;
use stillrise_design::enquiry::blocks::{ChemicalBlock, Inlet};
use stillrise_design::enquiry::shear::ShearBlock;
use stillrise_search::questions::Question;

/// The water that a question is about: the name in its key, `stream "wash bay".solids`, or `rain.solids`.
pub(super) fn water(q: &Question) -> &str {
    let block = q.key.split('"').nth(1);
    block.unwrap_or_else(|| q.key.split('.').next().unwrap_or(""))
}

/// The text of a question with "each of these waters" in place of its water, and so of surfaces, oils and containments, and whether it has one.
pub(super) fn pattern(q: &Question) -> (String, bool) {
    let name = water(q);
    let places = [format!("the {name} water"), format!("the {name}")];
    let found = places.iter().position(|place| !name.is_empty() && q.text.contains(place.as_str()));
    match found {
        Some(at) => {
            let place = &places[at];
            let block = q.key.split([' ', '.']).next().unwrap_or("");
            let all = match block {
                _ if at == 0 => "each of these waters",
                "surface" => "each of these surfaces",
                "oil" => "each of these oils",
                "containment" => "each of these places",
                _ => "each of these waters",
            };
            (q.text.replace(place.as_str(), all), true)
        }
        None => (q.text.clone(), false),
    }
}

/// One question, or several that ask the same of several waters in one.
pub(super) fn together(alike: &[&Question]) -> String {
    let (text, of_waters) = alike.first().map_or_else(Default::default, |q| pattern(q));
    match alike {
        [one] => asked(one),
        _ if !of_waters => alike.first().map_or_else(String::new, |q| asked(q)),
        [first, rest @ ..] => {
            let each = rest.iter().map(|q| format!("{} ({})", water(q), q.now)).collect::<Vec<_>>().join(", ");
            format!("{text} {} (we took {}), {each}.", crate::summary::capital(water(first)), first.now)
        }
        [] => text,
    }
}

/// A question with the figure that was taken.
pub(super) fn asked(q: &Question) -> String {
    // What a pump dissipates stands for its kind; nobody who is asked for the kind wants that number.
    let now = match q.declared {
        key if key.is(Inlet::pump) => "a centrifugal pump",
        key if key.is(Inlet::dissipation) || key.is(ShearBlock::dissipation) => "what is usual for its kind",
        key if key.is(ChemicalBlock::stream) && q.now == "streams" => "every water but rain",
        key if key.is(ChemicalBlock::stream) && q.now == "all" => "every water",
        _ => &q.now,
    };
    format!("{} We took {now}.", q.text)
}

/// Whether a question stands among those of the mail, alone or with others.
pub(super) fn stands_in(mail: &[String], q: &Question) -> bool {
    let (text, _) = pattern(q);
    let name = water(q).to_lowercase();
    let stands = |line: &String| not_rising::stands_in(line, q, &name);
    // What is added to a question stands behind it.
    mail.iter().any(|line| {
        stands(line) || line.starts_with(&asked(q)) || line.starts_with(&text) && line.to_lowercase().contains(&name)
    })
}
