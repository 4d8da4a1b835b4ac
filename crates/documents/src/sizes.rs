//! Units of the range side by side, as a card each: what it is, what it takes of room, weight and money, what would leave,
//! and what speaks against it.

use crate::summary::limit as named;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::Promise;
use stillrise_search::Settled;
use stillrise_search::sizes::Size;
use stillrise_units::catalog::{FT, IN, KG, LB, M, MM};
use stillrise_units::{Typed, Unit, print};

/// One unit on its card.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    /// Its name, with how many.
    pub name: String,
    /// The model alone, as a file names it.
    pub model: String,
    /// Whether it is the one taken.
    pub taken: bool,
    /// What is told of it, as pairs of what and how much.
    pub facts: Vec<(&'static str, String)>,
    /// The limits, each with the word of the calculation.
    pub words: Vec<(String, Word)>,
    /// What bars it: each rule and what it says.
    pub barred: Vec<(String, String)>,
}

/// A card for each size.
#[must_use]
pub fn cards(settled: &Settled, sizes: &[Size]) -> Vec<Card> {
    sizes.iter().map(|size| card(settled, size)).collect()
}

fn card(settled: &Settled, size: &Size) -> Card {
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: (&'static Unit, &'static Unit)| print::in_prose(si, system.pick(pair));
    let design = &size.design;
    let (train, performance) = (design.train.as_ref(), design.performance.as_ref());
    let mut facts: Vec<(&'static str, String)> = Vec::new();
    if let Some(train) = train {
        let (what, sides) = train.unit.body.sizes();
        let sides: Vec<String> = sides.iter().map(|side| show(side.si(), (&IN, &MM))).collect();
        facts.push((what, sides.join(" x ")));
    }
    if let Some(performance) = performance {
        let way = performance.fit.way();
        let sides = [way.length.q.si(), way.width.q.si()].map(|si| show(si, (&FT, &M)));
        facts.push(("room in plan, walkway included", sides.join(" x ")));
        if let Some(worst) = performance.worst() {
            facts.push(("oil that leaves, mg/L", Promise::of(worst.total.expected.q, worst.content.total.q).brief()));
        }
    }
    if let Some(train) = train {
        let row = &train.unit.particulars;
        facts.extend(row.empty_weight.map(|weight| ("weight empty, each", show(weight.q.si(), (&LB, &KG)))));
        facts.extend(row.price.as_ref().map(|(each, currency)| {
            ("price of all by the range", format!("{} {currency}", print::digits(each * train.bought(), 4)))
        }));
    }
    let limits = design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let words = performance.iter().flat_map(|p| &p.limits);
    let model = match &size.unit {
        stillrise_search::offered::Offered::Row { model, .. } => model.clone(),
        other => other.name(),
    };
    Card {
        name: size.unit.name(),
        model,
        taken: size.taken,
        facts,
        words: words.filter_map(|v| Some((named(limits.get(v.limit)?), v.word))).collect(),
        barred: size.barred.clone(),
    }
}
