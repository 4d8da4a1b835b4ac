//! What a rule page is, and what it may say.

use crate::ask::{Ask, WATERS};
pub use crate::prose::Prose;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::job::Design;
use stillrise_design::provenance::{Assumption, Origin, Pair, show_in_prose};
use stillrise_design::{Ledger, Node, Val};
use stillrise_handbook::page::Arg;
use stillrise_units::catalog::{FT, M, PERCENT};
use stillrise_units::{Length, Ratio, System, Typed, Unit, print, spoken};

/// What a rule looks at: the enquiry, what follows from it, and the trail if one was kept.
#[derive(Clone, Copy)]
pub struct Subject<'a> {
    /// The enquiry.
    pub enquiry: &'a Enquiry,
    /// What follows from it.
    pub design: &'a Design,
    /// The trail, when one was kept.
    pub ledger: Option<&'a Ledger>,
    /// Whether anybody reads what the rules say: a search asks thousands of times which rules fail, and
    /// numbers written out would take a tenth of its time.
    pub read: bool,
}

impl<'a> Subject<'a> {
    /// What asks for a key: the question of the assumption that stands in for it, else a plain one.
    #[must_use]
    pub fn ask_for(&self, key: &str, what: &str) -> Ask {
        let entries = self.ledger.map_or(&[][..], |ledger| &ledger.entries);
        let assumption = entries.iter().find_map(|e| match &e.origin {
            Origin::Assumed(a) if a.key == key && !a.question.is_empty() => Some(a),
            _ => None,
        });
        assumption.map_or_else(|| Ask::new(key.to_owned(), format!("What is the {what}?")), Ask::of)
    }
    /// What a key is about, with what was taken for it where an assumption stands in for it, and, `wide`, what is as
    /// plausible.
    #[must_use]
    pub fn taken(&self, key: &str, what: &str, wide: bool) -> String {
        let entries = self.ledger.map_or(&[][..], |ledger| &ledger.entries);
        let found = entries.iter().find_map(|e| match &e.origin {
            Origin::Assumed(a) if a.key == key && self.read => Some((e, a)),
            _ => None,
        });
        let Some((entry, a)) = found else { return what.to_owned() };
        let show = |value| show_in_prose(value, entry.units, self.system());
        let ends = if wide { format!(", it may be {} to {}", show(&a.low), show(&a.high)) } else { String::new() };
        format!("{what} (we took {}{ends})", show(&entry.value))
    }
    /// A quantity in the print units of the job, three digits; empty when nobody reads it.
    #[must_use]
    pub fn show<Q: Typed>(&self, q: Q, units: (&'static Unit, &'static Unit)) -> String {
        if !self.read {
            return String::new();
        }
        let unit = self.enquiry.system().pick(units);
        print::in_prose(unit.to_si(print::or_nothing(unit.from_si(q.si()))), unit)
    }
    /// A text in the words of the job's system; empty when nobody reads it.
    #[must_use]
    pub fn spoken(&self, text: &str) -> String {
        if self.read { spoken(text, self.system()) } else { String::new() }
    }
    /// A level of the site, to a hundredth of a foot or a millimetre; empty when nobody reads it.
    #[must_use]
    pub fn level(&self, at: Length) -> String {
        if !self.read {
            return String::new();
        }
        let (unit, digits) = (self.system().pick((&FT, &M)), if self.system() == System::Us { 2 } else { 3 });
        format!("{:.digits$} {}", unit.from_si(at.si()), unit.symbol)
    }
    /// A plain number so many digits long; empty when nobody reads it.
    #[must_use]
    pub fn digits(&self, value: f64, digits: usize) -> String {
        if self.read { print::digits(value, digits) } else { String::new() }
    }
    /// A share in per cent, three digits; empty when nobody reads it.
    #[must_use]
    pub fn percent(&self, share: Ratio) -> String {
        if self.read { print::in_prose(share.si(), &PERCENT) } else { String::new() }
    }
    /// Units of print.
    #[must_use]
    pub fn system(&self) -> System {
        self.enquiry.system()
    }
    /// What a rule says when the chain stopped ahead of what it looks at.
    #[must_use]
    pub fn stopped(&self) -> Verdict {
        match self.design.stops.first() {
            _ if !self.read => Verdict::cannot_judge("", [], None),
            Some(stop) => Verdict::CannotJudge(Unknown {
                says: format!("the chain of results stopped ahead of it: {stop}"),
                asks: vec![Ask::open(if stop.formula {
                    format!("Which value is right where the chain stopped, {stop}?")
                } else {
                    format!("The chain stopped because {}. What may be changed?", stop.reason)
                })],
                at: None,
                stopped: true,
            }),
            None => Verdict::cannot_judge("no water comes whose flow and content are known", [WATERS], None),
        }
    }
    /// The assumption that a value is, if somebody could be asked about it.
    #[must_use]
    pub fn assumed(&self, at: Node) -> Option<&'a Assumption> {
        match &self.ledger?.entry(at)?.origin {
            Origin::Assumed(assumption) if !assumption.question.is_empty() => Some(assumption),
            _ => None,
        }
    }
    /// The question behind a value that is an assumption.
    #[must_use]
    pub fn asked(&self, at: Node) -> Vec<Ask> {
        self.assumed(at).map(Ask::of).into_iter().collect()
    }
    /// Cannot judge, where a value is an assumption and the rule would not pass at one end of its plausible range.
    #[must_use]
    pub fn rests_on<Q: Typed>(
        &self,
        says: &str,
        value: Val<Q>,
        units: Pair,
        passes: impl Fn(Q) -> bool,
    ) -> Option<Verdict> {
        let assumption = self.assumed(value.at)?;
        let ends = [&assumption.low, &assumption.high].into_iter().filter_map(|end| match end {
            Arg::Number(si) => Some(Q::from_si(*si)),
            _ => None,
        });
        let end = ends.into_iter().find(|end| !passes(Q::from_si(end.si())))?;
        let label = self.ledger?.entry(value.at).map_or("", |entry| entry.label.as_str());
        let says = format!(
            "{says}; but the {label} of {} is assumed, and would not pass at {}, which is as plausible",
            self.show(value.q, units),
            self.show(end, units)
        );
        Some(Verdict::cannot_judge(says, [Ask::of(assumption)], value.at))
    }
}

/// What a rule found wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// A sentence with numbers and units.
    pub says: String,
    /// The value it is about.
    pub at: Option<Node>,
}

/// What a rule would have to know.
#[derive(Debug, Clone, PartialEq)]
pub struct Unknown {
    /// What is not known, and what the rule would hold it against.
    pub says: String,
    /// The questions whose answers would let it judge; none where only the engineer can help.
    pub asks: Vec<Ask>,
    /// The value it is about.
    pub at: Option<Node>,
    /// Whether what it looks at was never found, because the chain of results stopped ahead of it.
    pub stopped: bool,
}

/// Which verdict it is, without what it says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grade {
    /// It does not apply.
    NotApplicable,
    /// It passes.
    Passes,
    /// It cannot judge.
    CannotJudge,
    /// It warns.
    Warns,
    /// It fails.
    Fails,
}

impl Grade {
    /// The word in print.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Grade::NotApplicable => "not applicable",
            Grade::Passes => "passes",
            Grade::CannotJudge => "cannot judge",
            Grade::Warns => "warns",
            Grade::Fails => "fails",
        }
    }
}

/// What a rule says. A rule never passes on what is not known.
#[derive(Debug, Clone, PartialEq)]
pub enum Verdict {
    /// Why it does not apply: what it looks at does not exist here.
    NotApplicable(String),
    /// With what margin it passes, in a sentence with numbers.
    Passes(String),
    /// What it looks at may exist, and nobody said enough of it: neither a pass nor a failure.
    CannotJudge(Unknown),
    /// To be known and decided.
    Warns(Finding),
    /// Not fit as it stands.
    Fails(Finding),
}

impl Verdict {
    /// Whether it cannot judge because the chain of results stopped ahead of what it looks at.
    #[must_use]
    pub fn stopped_ahead(&self) -> bool {
        matches!(self, Verdict::CannotJudge(unknown) if unknown.stopped)
    }
    /// Warns.
    #[must_use]
    pub fn warns(says: impl Into<String>, at: impl Into<Option<Node>>) -> Self {
        Verdict::Warns(Finding { says: says.into(), at: at.into() })
    }
    /// Fails.
    #[must_use]
    pub fn fails(says: impl Into<String>, at: impl Into<Option<Node>>) -> Self {
        Verdict::Fails(Finding { says: says.into(), at: at.into() })
    }
    /// Cannot judge, and asks.
    #[must_use]
    pub fn cannot_judge(says: impl Into<String>, asks: impl Into<Vec<Ask>>, at: impl Into<Option<Node>>) -> Self {
        Verdict::CannotJudge(Unknown { says: says.into(), asks: asks.into(), at: at.into(), stopped: false })
    }
    /// Does not apply.
    #[must_use]
    pub fn skips(why: impl Into<String>) -> Self {
        Verdict::NotApplicable(why.into())
    }
    /// Passes.
    #[must_use]
    pub fn passes(margin: impl Into<String>) -> Self {
        Verdict::Passes(margin.into())
    }
    /// Which of the five it is.
    #[must_use]
    pub fn grade(&self) -> Grade {
        match self {
            Verdict::NotApplicable(_) => Grade::NotApplicable,
            Verdict::Passes(_) => Grade::Passes,
            Verdict::CannotJudge(_) => Grade::CannotJudge,
            Verdict::Warns(_) => Grade::Warns,
            Verdict::Fails(_) => Grade::Fails,
        }
    }
    /// The word in print.
    #[must_use]
    pub fn word(&self) -> &'static str {
        self.grade().word()
    }
    /// Whether it warns or fails.
    #[must_use]
    pub fn is_finding(&self) -> bool {
        matches!(self.grade(), Grade::Warns | Grade::Fails)
    }
    /// What it says, whatever it is.
    #[must_use]
    pub fn says(&self) -> &str {
        match self {
            Verdict::NotApplicable(text) | Verdict::Passes(text) => text,
            Verdict::CannotJudge(unknown) => &unknown.says,
            Verdict::Warns(finding) | Verdict::Fails(finding) => &finding.says,
        }
    }
    /// The value it is about, if it is about one.
    #[must_use]
    pub fn at(&self) -> Option<Node> {
        match self {
            Verdict::NotApplicable(_) | Verdict::Passes(_) => None,
            Verdict::CannotJudge(unknown) => unknown.at,
            Verdict::Warns(finding) | Verdict::Fails(finding) => finding.at,
        }
    }
    /// The questions whose answers would let it judge.
    #[must_use]
    pub fn asks(&self) -> &[Ask] {
        match self {
            Verdict::CannotJudge(unknown) => &unknown.asks,
            _ => &[],
        }
    }
}

/// The part of the train that a finding concerns, for balloons on drawings and sheets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Part {
    Enquiry,
    Inlet,
    Chamber,
    Hopper,
    Pack,
    OilZone,
    Downcomer,
    Outlet,
    Unit,
    Effluent,
    Site,
}

/// One rule.
pub struct Rule {
    /// Named for the fault: file stem in kebab case.
    pub id: &'static str,
    /// The fault in words.
    pub title: &'static str,
    /// What a warning or a failure of it means for whoever buys: a sentence without numbers, true of both.
    pub client: &'static str,
    /// What it looks for.
    pub looks: Prose,
    /// Why it matters.
    pub matters: &'static str,
    /// What to do.
    pub remedy: &'static str,
    /// Where it comes from.
    pub source: Prose,
    /// Where it may be wrong.
    pub limits: Prose,
    /// The part it concerns.
    pub part: Part,
    /// Whether a unit that fails it must not be picked from a range.
    pub bars_pick: bool,
    /// The source file.
    pub file: &'static str,
    /// The rule itself.
    pub look: fn(&Subject<'_>) -> Verdict,
}

impl PartialEq for Rule {
    /// A rule is itself alone: each stands once, in its own file.
    fn eq(&self, other: &Self) -> bool {
        core::ptr::eq(self, other)
    }
}

impl Eq for Rule {}

impl core::fmt::Debug for Rule {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.id)
    }
}

impl Rule {
    /// Whether it is one of these.
    #[must_use]
    pub fn is_among(&self, rules: &[&'static Rule]) -> bool {
        rules.contains(&self)
    }
}

/// Declares a rule; its function `look` stands below it in the same file.
macro_rules! rule {
    ($id:literal $title:literal, $part:ident $(, $bars:ident)?; client $client:literal looks $looks:literal matters $matters:literal remedy $remedy:literal source $source:literal limits $limits:literal) => {
        #[doc = concat!($title, ".\n\n*What a client is told.* ", $client, "\n\n*What it looks for.* ", $looks, "\n\n*Why it matters.* ", $matters, "\n\n*What to do.* ", $remedy, "\n\n*Source.* ", $source, "\n\n*Limits.* ", $limits)]
        pub static RULE: crate::rule::Rule = crate::rule::Rule {
            id: $id, title: $title, client: $client, looks: crate::rule::Prose($looks), matters: $matters, remedy: $remedy,
            source: crate::rule::Prose($source), limits: crate::rule::Prose($limits),
            part: crate::rule::Part::$part,
            bars_pick: crate::rule::bars!($($bars)?),
            file: file!(),
            look,
        };
    };
}
pub(crate) use rule;

macro_rules! bars {
    () => {
        false
    };
    (bars_pick) => {
        true
    };
}
pub(crate) use bars;
