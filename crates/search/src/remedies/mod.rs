//! What would settle a finding: changes of the enquiry that the designer or the client may decide, each tried by working the
//! changed enquiry through, so that what is offered was computed.
//!
//! What the customer states as a fact, areas, flows, contents, limits and levels, is never among them. The caller makes the
//! changed enquiry, because the text of one is none of this room's affair.

mod after;
mod client;
mod ours;
mod site;
mod tried;

pub use after::{After, Word as WordThen};

use crate::Settled;
use crate::side_by_side::side_by_side;
use stillrise_checks::{Grade, Judged, Rule};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::Design;
use tried::tried;

/// Remedies of one rule that are told.
const MOST: usize = 3;

/// What a change says that is the client's to decide; taken, it stands with these words as an open decision until he did.
pub const AGREE: &str = "the client must agree";

/// A change of the enquiry after which a rule is settled.
#[derive(Debug, Clone)]
pub struct Remedy {
    /// What is done, and who must agree where it is the client's: "Take Demo 260".
    pub says: String,
    /// The keys that are set, each as the program prints its path, with the value as it is typed.
    pub keys: Vec<(String, String)>,
    /// What follows from it.
    pub then: After,
}

/// The enquiry with keys set, each by its path and as it is typed; `None` where it cannot be read then.
pub type Changed<'a> = &'a dyn Fn(&[(String, String)]) -> Option<Enquiry>;

/// A kind of change: where several of one kind would do, the first of them is offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Family {
    Size,
    Parallel,
    Arrangement,
    SandTrap,
    PumpOut,
    Standby,
    OutletPipe,
    Interlock,
    GentlePump,
    Damper,
    Evened,
    Cleaner,
    CleanerAndPump,
    Drains,
    Roof,
    Closure,
    FrostProtected,
    Indoors,
    Cover,
    Anchors,
    Slings,
    LiftingPoints,
    Screen,
}

impl Family {
    /// Whether it takes another unit, or the same one otherwise fitted.
    fn is_other_unit(self) -> bool {
        matches!(
            self,
            Family::Size
                | Family::Parallel
                | Family::Arrangement
                | Family::SandTrap
                | Family::PumpOut
                | Family::Standby
        )
    }
    /// Whether it keeps frost off, however cold it gets.
    fn is_frost(self) -> bool {
        matches!(self, Family::FrostProtected | Family::Indoors)
    }
}

/// A change that may settle something.
#[derive(Debug, Clone)]
struct Offer {
    family: Family,
    says: String,
    keys: Vec<(String, String)>,
}

impl Offer {
    fn new(family: Family, says: impl Into<String>, keys: impl IntoIterator<Item = (String, String)>) -> Self {
        Self { family, says: says.into(), keys: keys.into_iter().collect() }
    }
}

/// What the changes are found by.
struct Around<'a> {
    settled: &'a Settled,
    enquiry: &'a Enquiry,
    design: &'a Design,
    range: &'a Range,
}

/// Whether a rule waits for something: it fails, warns or cannot judge.
fn is_open(grade: Grade) -> bool {
    matches!(grade, Grade::Fails | Grade::Warns | Grade::CannotJudge)
}

/// Whether a rule that said the one is settled where it says the other; a failure that is only a warning then is so in part.
/// Another unit at which there is nothing to look at any more settles nothing: a unit without plates is no answer to a question
/// about them.
fn settles(was: Grade, then: Grade, family: Family) -> bool {
    match then {
        Grade::Passes => true,
        Grade::NotApplicable => !family.is_other_unit(),
        Grade::Warns => was == Grade::Fails,
        Grade::CannotJudge | Grade::Fails => false,
    }
}

/// Whether a change may settle a rule: one that cannot judge waits for an answer, and what does not give it is none.
fn may_settle(judged: &Judged, offer: &Offer) -> bool {
    let answers = |key: &str| offer.keys.iter().any(|(path, _)| path == key);
    judged.grade() != Grade::CannotJudge
        || offer.family.is_frost()
        || judged.verdict.asks().iter().filter_map(|ask| ask.key.as_deref()).any(answers)
}

/// What would settle a rule that fails, warns or cannot judge: at most three changes, those first that break nothing else, then
/// the cheapest; nothing where none was found. `demo` is the range to pick from when the enquiry names none, and `change` the
/// enquiry with these keys set, or `None` where it cannot be.
#[must_use]
pub fn remedies(settled: &Settled, demo: &Range, rule: &Rule, change: Changed<'_>) -> Vec<Remedy> {
    let Some(judged) = settled.verdicts.iter().find(|judged| *judged.rule == *rule) else { return Vec::new() };
    // What stands behind the place where the chain stopped is nobody's finding yet.
    if !is_open(judged.grade()) || judged.verdict.stopped_ahead() {
        return Vec::new();
    }
    let (enquiry, design) = (&settled.job.enquiry, &settled.job.design);
    let around = Around { settled, enquiry, design, range: enquiry.range.as_ref().unwrap_or(demo) };
    let offers = ours::offers(&around).into_iter().chain(client::offers(&around)).chain(site::offers(&around));
    let offers = offers.filter(|offer| may_settle(judged, offer));
    let made: Vec<(Offer, Enquiry)> =
        offers.filter_map(|offer| change(&offer.keys).map(|enquiry| (offer, enquiry))).collect();
    let was = judged.grade();
    let tries = side_by_side(
        made.len(),
        1,
        || (),
        |k, ()| tried(&made[k].1, demo, rule, &|then| settles(was, then, made[k].0.family)),
    );
    let mut seen: Vec<Family> = Vec::new();
    let mut found: Vec<Remedy> = Vec::new();
    for ((Offer { family, says, keys }, other), tried) in made.iter().zip(&tries) {
        let Some(tried) = tried else { continue };
        let then = After::of(settled, demo, rule, other, tried);
        // What does two things is not told where one of them does, and what costs the unit settles nothing.
        let more = *family == Family::CleanerAndPump
            && [Family::Cleaner, Family::GentlePump].iter().any(|one| seen.contains(one));
        if more || seen.contains(family) || settled.pick.is_some() && tried.pick.is_none() {
            continue;
        }
        seen.push(*family);
        found.push(Remedy { says: says.clone(), keys: keys.clone(), then });
    }
    // Whether it settles the rule in full goes before all else.
    let dearer = |r: &Remedy| r.then.dearer.unwrap_or(f64::INFINITY);
    found.sort_by(|a, b| {
        let by = |r: &Remedy| (r.then.grade == Grade::Warns, r.then.fails.len(), r.then.warns.len());
        by(a).cmp(&by(b)).then(dearer(a).total_cmp(&dearer(b)))
    });
    found.truncate(MOST);
    found
}
