//! The first answer: is this a gravity duty at all? Said before anything is sized.

use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::OilState;
use crate::basis::waters::Content;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::ChemicalBlock;
use crate::enquiry::named::{NONE, is_called, same};
use crate::performance::Performance;
use crate::performance::limit::Word;
use stillrise_handbook::fluids::chemicals::{Effect, Way, chemical};
use stillrise_handbook::fluids::oils::oil;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_handbook::page::Source;
use stillrise_handbook::sources::JUDGEMENT;
use stillrise_units::catalog::{DEG_C, DEG_F, KG_M3, LB_FT3};
use stillrise_units::{Typed, print};

/// How much a finding of the triage weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// To be known.
    Note,
    /// A separator alone will not do.
    Partly,
    /// Not a gravity duty.
    Blocks,
}

impl Weight {
    /// In print.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Weight::Note => "note",
            Weight::Partly => "a separator alone will not do",
            Weight::Blocks => "not a gravity duty",
        }
    }
}

/// What a finding is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum About {
    /// A product that goes into the water: it changes fractions and droplets, and the limits say what comes of it.
    Chemical,
    /// An oil.
    Oil,
    /// A limit.
    Limit,
}

/// One finding of the triage.
#[derive(Debug, Clone)]
pub struct Line {
    /// What it is about.
    pub about: About,
    /// What it concerns.
    pub subject: String,
    /// How much it weighs.
    pub weight: Weight,
    /// What a separator cannot do about it, and why.
    pub says: String,
    /// What could, wherever it is.
    could: String,
    /// What could too, where it is open.
    also: Option<Way>,
    /// Source.
    pub source: Option<&'static Source>,
}

impl Line {
    /// What could, with the way out that is not open everywhere, where it is `open`.
    #[must_use]
    pub fn could(&self, open: impl Fn(Way) -> bool) -> String {
        match self.also.filter(|way| open(*way)) {
            Some(way) => format!("{}; {}.", self.could.trim_end_matches('.'), way.words()),
            None => self.could.clone(),
        }
    }
}

/// Whether a product is said to go into no water that comes, and none lists it.
fn goes_nowhere(e: &Enquiry, block: &ChemicalBlock) -> bool {
    let none = !block.stream.is_empty() && block.stream.iter().all(|word| same(word, NONE));
    none && !e.streams.iter().any(|s| s.chemicals.iter().any(|name| is_called(block, name)))
}

/// Looks at what the enquiry declares.
#[must_use]
pub fn triage(e: &Enquiry) -> Vec<Line> {
    let mut lines = Vec::new();
    for block in &e.chemicals {
        let product =
            block.product.0.clone().or_else(|| block.kind.0.clone()).unwrap_or_else(|| "a product".to_owned());
        let Some(row) = block.kind.as_deref().and_then(chemical) else {
            lines.push(Line {
                about: About::Chemical,
                subject: product,
                weight: Weight::Partly,
                says: "a product of unknown kind goes into the water; some products keep oil from rising altogether"
                    .to_owned(),
                could: "its safety data sheet, and a jar test with the site's water".to_owned(),
                also: None,
                source: None,
            });
            continue;
        };
        // Said to go into none of these waters it is no matter of the separator, until it does.
        let kept_out = goes_nowhere(e, block);
        let weight = match row.effect {
            Effect::Harmless => continue,
            _ if kept_out => Weight::Note,
            Effect::NotSeparable | Effect::Emulsifies if row.emulsified.typical >= 50.0 => Weight::Blocks,
            // What mixes with water and holds no oil passes by itself; the oil beside it still rises.
            Effect::NotSeparable | Effect::Emulsifies | Effect::Dissolves => Weight::Partly,
            Effect::ShiftsDensity => Weight::Note,
        };
        lines.push(Line {
            about: About::Chemical,
            subject: product,
            weight,
            says: if kept_out {
                format!("Said to go into none of the waters that come here. Where it does: {}", row.explains)
            } else {
                row.explains.to_owned()
            },
            could: row.what_could.to_owned(),
            also: row.also,
            source: Some(row.source),
        });
    }
    let contents = e
        .rain
        .iter()
        .filter_map(|r| r.oil.as_ref())
        .chain(e.streams.iter().filter_map(|s| s.oil.as_ref()))
        .chain(e.cases.iter().filter_map(|c| c.oil.as_ref()))
        .chain(e.dumps.iter().filter_map(|d| d.oil.as_ref()))
        .chain(e.stated.oil.as_ref());
    let mut words: Vec<&str> =
        contents.filter_map(|o| o.kind.as_deref()).chain(e.oils.iter().filter_map(|o| o.kind.as_deref())).collect();
    words.sort_unstable();
    words.dedup();
    for row in words.into_iter().filter_map(oil) {
        if row.animal_or_vegetable {
            lines.push(Line {
            about: About::Oil,
                subject: row.title.to_owned(), weight: Weight::Partly,
                says: "animal and vegetable oils are outside the scope of the separator standards and set off as fat in the cold".to_owned(),
                could: "a grease separator of its own standard, ahead".to_owned(), also: None, source: Some(&JUDGEMENT),
            });
        }
        if let Some(note) = row.gravity_note {
            lines.push(Line {
                about: About::Oil,
                subject: row.title.to_owned(),
                weight: Weight::Note,
                says: note.to_owned(),
                could: "see the prediction for the cold season".to_owned(),
                also: None,
                // Sources of its figures say nothing of that.
                source: Some(&JUDGEMENT),
            });
        }
    }
    for (row, name) in e.limits.iter().filter_map(|l| Some((l.of()?, l.name.as_deref()))) {
        let weight = match row.gravity {
            Gravity::Touches => continue,
            Gravity::Partly => Weight::Note,
            Gravity::Cannot => Weight::Partly,
        };
        lines.push(Line {
            about: About::Limit,
            subject: format!("limit on {}", name.unwrap_or(row.title)),
            weight,
            says: row.explains.to_owned(),
            could: row.what_could.to_owned(),
            also: None,
            source: Some(row.source),
        });
    }
    lines.sort_by_key(|l| core::cmp::Reverse(l.weight));
    lines
}

/// What only the basis shows: an oil as heavy as the water. It rules gravity out where no water carries an oil that
/// rises; else it passes while the others are separated.
pub fn add_heavy_oils(lines: &mut Vec<Line>, e: &Enquiry, basis: &Basis) {
    let f = &basis.fluids;
    let water = f.cold.density.q;
    // Water of a case that is said never to be colder than so, and as it arrives.
    let own = |c: &Case| c.own.as_ref().map(|own| own.water[0].temperature.q);
    let arrives = |c: &Case| c.own.as_ref().map(|own| own.arrives[0].temperature.q);
    let treated = || basis.cases.iter().filter(|c| c.content.is_some());
    let stays = |oil: &OilState| treated().any(|c| f.rises_in(oil, own(c)));
    let some_rise = f.oils.iter().any(|oil| f.rises(oil) || stays(oil));
    let rising = |c: &Content| c.heavy.is_none_or(|heavy| heavy.q < c.free.q);
    let mut contents = treated().filter_map(|c| c.content.as_ref()).peekable();
    let blocks = !some_rise || contents.peek().is_some() && !contents.any(rising);
    for oil in f.oils.iter().filter(|oil| !f.rises(oil)) {
        let warmest = treated().filter_map(arrives).max_by(|a, b| a.si().total_cmp(&b.si()));
        let warm = warmest.filter(|at| *at > f.cold.temperature.q).map(|at| {
            let degrees = print::in_prose(at.si(), e.system().pick((&DEG_F, &DEG_C)));
            match (stays(oil), f.rises_at(oil, at)) {
                (true, _) => format!("; in water that stays as warm as {degrees}, as is said of one, it rises"),
                (false, true) => format!(
                    "; at {degrees}, as one water arrives, it is lighter, but what stands in the unit cools unless that water never stops"
                ),
                (false, false) => format!(", nor at {degrees}, as one water arrives"),
            }
        });
        let says = format!(
            "in the coldest water it weighs {} against {} of the water: it does not rise, or hardly{}{}",
            print::in_prose(oil.cold.q.si(), e.system().pick((&LB_FT3, &KG_M3))),
            print::in_prose(water.si(), e.system().pick((&LB_FT3, &KG_M3))),
            warm.unwrap_or_default(),
            if blocks { "" } else { "; its share of the oil passes, and what rises is separated" }
        );
        lines.push(Line {
            about: About::Oil,
            subject: oil.name.clone(),
            weight: if blocks { Weight::Blocks } else { Weight::Partly },
            says,
            could: "heating, flotation with air, or a settling tank for sinking oil".to_owned(),
            also: None,
            source: None,
        });
    }
    lines.sort_by_key(|l| core::cmp::Reverse(l.weight));
}

/// A product alone makes no duty one that gravity cannot serve: where limits on oil are stated and the numbers say of
/// none of them that gravity cannot keep it, what it does is part of the picture.
pub fn weigh_products(lines: &mut [Line], performance: &Performance) {
    let predicted: Vec<Word> = performance.limits.iter().filter(|l| l.predicted).map(|l| l.calculated).collect();
    if predicted.is_empty() || predicted.contains(&Word::NotByGravity) {
        return;
    }
    for line in lines.iter_mut().filter(|l| l.about == About::Chemical && l.weight == Weight::Blocks) {
        line.weight = Weight::Partly;
    }
}

/// Why no oil rises, if none does.
#[must_use]
pub fn blocked(lines: &[Line]) -> Option<String> {
    let oil = lines.iter().find(|l| l.weight == Weight::Blocks && l.about == About::Oil);
    oil.map(|l| format!("{}: {}", l.subject, l.says))
}
