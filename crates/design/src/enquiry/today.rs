//! The plant as it is today: what the enquiry says, and on top of it the changes that stand.
//!
//! A change has a day; the other keys have none. A rating holds the time after the change against the time before, so the
//! enquiry goes on to say how the plant was fed before. Everything else (triage, basis, rules, questions) asks how it is
//! now, and looks at what is made here.

use super::Enquiry;
use super::blocks::{Change, ChangeKind, ChemicalBlock, Inlet};
use super::date::Date;
use super::declared::Declared;
use super::fields::Text;
use super::key::Key;
use super::keys::{Because, Block, Claim, Place, Quantity};
use super::said::{Claims, Told};
use stillrise_units::{Flow, Typed};

/// A rate that lies nearer to that of a change is the same pump, measured or read off another label. Judgement.
const SAME_RATE: f64 = 1.15;

impl Enquiry {
    /// The enquiry with the changes that stand, where its own keys are silent or speak of the time before; `None` where
    /// no change says more than the keys do.
    #[must_use]
    pub fn today(&self) -> Option<Self> {
        if self.changes.is_empty() {
            return None;
        }
        let mut now = self.clone();
        let fed = pump(self, &mut now);
        let dosed = chemical(self, &mut now);
        let moved = outlet(self, &mut now);
        (fed || dosed || moved).then_some(now)
    }

    /// The enquiry as the plant was before the changes, where its keys name a product that a change brought; `None` where
    /// they name none.
    #[must_use]
    pub fn before_changes(&self) -> Option<Self> {
        let kept = |c: &&ChemicalBlock| self.brought(c).is_none();
        let chemicals: Vec<ChemicalBlock> = self.chemicals.iter().filter(kept).cloned().collect();
        (chemicals.len() < self.chemicals.len()).then(|| Self { chemicals, ..self.clone() })
    }

    /// The change that brought a product which a key names as well. One that came back after another, which the keys do not
    /// name, had been there before.
    fn brought(&self, product: &ChemicalBlock) -> Option<&Change> {
        let kind = product.kind.as_deref()?;
        let of = |c: &&Change| c.what.0 == Some(ChangeKind::Chemical) && self.is_done(c);
        let brings = |c: &&Change| c.chemical.as_deref() == Some(kind);
        let first = self.changes.iter().filter(of).filter(brings).min_by_key(|c| c.date.0.map(Date::number))?;
        let named =
            |c: &Change| self.chemicals.iter().any(|b| b.kind.is_some() && b.kind.as_deref() == c.chemical.as_deref());
        let mut earlier = self.changes.iter().filter(of).filter(|c| c.date.0 < first.date.0);
        earlier.all(named).then_some(first)
    }

    /// Whether a change is no plan for later than the enquiry's own day.
    fn is_done(&self, change: &Change) -> bool {
        let written = self.head.date.as_deref().and_then(|text| Date::read(text).ok());
        written.is_none_or(|day| change.date.0.is_some_and(|of| of <= day))
    }

    /// The last change of what goes into the water, where it names no product.
    #[must_use]
    pub fn unnamed_product(&self) -> Option<&Change> {
        self.last_change(ChangeKind::Chemical, |_| true).filter(|c| c.chemical.is_none())
    }

    /// The last change of a kind that says something of a key, and is no plan for later than the enquiry's own day.
    fn last_change(&self, kind: ChangeKind, says: impl Fn(&Change) -> bool) -> Option<&Change> {
        let done = |c: &&Change| self.is_done(c);
        let mut last: Option<&Change> = None;
        for change in self.changes.iter().filter(|c| c.what.0 == Some(kind) && says(c)).filter(done) {
            if last.is_none_or(|l| l.date.0 <= change.date.0) {
                last = Some(change);
            }
        }
        last
    }
}

/// That a product stands both among the keys, which have no day, and in a change.
pub(super) fn notes(e: &Enquiry) -> Vec<(String, String)> {
    let note = |c: &ChemicalBlock| {
        let change = e.brought(c)?;
        let name = c.product.as_deref().or(c.kind.as_deref()).unwrap_or("product");
        let says = format!(
            "{} brings this product: it is taken to go into the water since then and not before, so results before that day are held against a plant without it; if it went in before as well, leave the change out",
            from(change)
        );
        Some((format!("chemical \"{name}\""), says))
    };
    e.chemicals.iter().filter_map(note).collect()
}

/// Where a value comes from that a change brings.
fn from(change: &Change) -> String {
    change.date.0.map_or_else(|| "a change".to_owned(), |day| format!("the change of {day}"))
}

/// Puts the last pump in place, and what it delivers.
fn pump(before: &Enquiry, now: &mut Enquiry) -> bool {
    let kind = before.last_change(ChangeKind::Pump, |c| c.pump.is_some());
    let rate = before.last_change(ChangeKind::Pump, |c| c.rate.is_given());
    // What an earlier pump delivered says nothing of a later one.
    let rate = rate.filter(|r| kind.is_none_or(|k| k.date.0 <= r.date.0));
    let kind = kind.is_some_and(|change| new_kind(before, now, change));
    let rate = rate.is_some_and(|change| new_rate(before, now, change));
    kind || rate
}

fn new_kind(before: &Enquiry, now: &mut Enquiry, change: &Change) -> bool {
    let Some(word) = change.pump.0.clone() else { return false };
    let old = &before.inlet.pump;
    if old.as_deref() == Some(&word) || old.1.list.iter().any(|told| told.chosen) {
        return false;
    }
    let later = old.is_some();
    if let Some(old) = old.0.as_ref() {
        let note = format!("{} puts a {word} pump in place of the {old} pump, and is taken for today", from(change));
        now.notes.push((before.inlet.pump().place(), note));
        // Power, head, speed and strokes were those of the pump that went.
        let Inlet { feed, rate, together, interlocked, sump_volume, .. } = before.inlet.clone();
        let Inlet { start_level, stop_level, sump_area, invert, .. } = before.inlet.clone();
        let levels = Inlet { start_level, stop_level, sump_area, invert, ..Inlet::default() };
        now.inlet = Inlet { feed, rate, together, interlocked, sump_volume, ..levels };
    }
    now.inlet.pump = told(old.1.list.clone(), word, change, before.inlet.pump(), later);
    true
}

fn new_rate(before: &Enquiry, now: &mut Enquiry, change: &Change) -> bool {
    let Some(claim) = change.rate.claim() else { return false };
    let old = &before.inlet.rate.0;
    // Which of several pumps was changed is not known.
    let claims = match old.as_slice() {
        [] => Vec::new(),
        [one] => one.claims.clone(),
        _ => return false,
    };
    let same = |old: Flow| {
        let times = claim.written.si() / old.si();
        (1.0 / SAME_RATE..SAME_RATE).contains(&times)
    };
    if old.first().and_then(Quantity::q).is_some_and(same) || claims.iter().any(|c| c.chosen) {
        return false;
    }
    let (spec, place) = (before.inlet.rate().spec, before.inlet.rate().place());
    let later = !claims.is_empty();
    let contradicted = change.rate.is_contradicted() && !claim.chosen;
    if let Some(old) = old.first().and_then(Quantity::claim) {
        let said: Vec<&str> = change.rate.claims.iter().map(|c| c.written.text.as_str()).collect();
        let (old, new) = (&old.written.text, if contradicted { said.join(" or ") } else { claim.written.text.clone() });
        let note = format!("{} has the pump deliver {new} in place of {old}, and is taken for today", from(change));
        now.notes.push((place.clone(), note));
    }
    if contradicted {
        // What contradicts about the new pump says nothing of the old one, whose rate is not among it.
        let told = |c: &Claim| {
            let by = c.from.as_ref().map_or_else(|| from(change), |by| format!("{}: {by}", from(change)));
            Claim { from: Some(by), ..c.clone() }
        };
        let claims = change.rate.claims.iter().map(told).collect();
        now.inlet.rate.0 = vec![Quantity::new(claims, spec, &place)];
        return true;
    }
    let because = later.then(|| Because::Said(later_than_the_key(change)));
    let new = Claim { from: Some(from(change)), chosen: later, because, ..claim.clone() };
    let claims = claims.into_iter().chain([new]).collect();
    now.inlet.rate.0 = vec![Quantity::new(claims, spec, &place)];
    true
}

fn chemical(before: &Enquiry, now: &mut Enquiry) -> bool {
    // A later change to a product that nobody named leaves open what goes into the water: the question stays.
    let Some(change) = before.last_change(ChangeKind::Chemical, |_| true) else { return false };
    let Some(kind) = change.chemical.0.clone() else { return false };
    if before.chemicals.iter().any(|c| c.kind.as_deref() == Some(&kind)) {
        return false;
    }
    let title = stillrise_handbook::fluids::chemicals::chemical(&kind).map_or(kind.as_str(), |row| row.title);
    let block = ChemicalBlock::standing(Place::named(ChemicalBlock::spec().name, title));
    let product = told(Vec::new(), title.to_owned(), change, block.product(), false);
    let kind = told(Vec::new(), kind, change, block.kind(), false);
    now.chemicals.push(ChemicalBlock { product, kind, ..block });
    true
}

/// Puts the last outlet in place: the crest of the weir where one holds the level, else the invert of the pipe.
fn outlet(before: &Enquiry, now: &mut Enquiry) -> bool {
    let Some(change) = before.last_change(ChangeKind::Outlet, |c| c.outlet_level.is_given()) else { return false };
    let (Some(claim), Some(unit)) = (change.outlet_level.claim(), now.unit.dimensions.as_mut()) else { return false };
    let crest = unit.stages.outlet.weir_crest.is_given();
    let key = if crest { unit.stages.outlet.weir_crest() } else { unit.stages.outlet.invert() };
    let (spec, place) = (key.spec, key.place());
    let key = if crest { &mut unit.stages.outlet.weir_crest } else { &mut unit.stages.outlet.invert };
    if key.claims.iter().any(|c| c.chosen) {
        return false;
    }
    let old = key.claim().map_or_else(
        || {
            "where it stood before was not said, so that inlet, plates and baffle are assumed about the new level"
                .to_owned()
        },
        |old| format!("in place of {}", old.written.text),
    );
    let note = format!("{} sets the outlet to {}, and is taken for today: {old}", from(change), claim.written.text);
    let later = key.is_given();
    let because = later.then(|| Because::Said(later_than_the_key(change)));
    let new = Claim { from: Some(from(change)), chosen: later, because, ..claim.clone() };
    let claims = key.claims.iter().cloned().chain([new]).collect();
    *key = Quantity::new(claims, spec, &place);
    now.notes.push((place, note));
    true
}

fn later_than_the_key(change: &Change) -> String {
    format!("{} is later than what stood there before", from(change))
}

/// A text with the claims on it, and last the one of a change.
fn told(mut list: Vec<Told<String>>, word: String, change: &Change, key: Key<'_, Text>, later: bool) -> Text {
    let because = later.then(|| later_than_the_key(change));
    list.push(Told { text: word.clone(), value: word, from: Some(from(change)), chosen: later, because });
    Claims { list, place: key.place(), declared: Declared(Some(key.spec)) }.into()
}

#[cfg(test)]
#[allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]
mod tests {
    use crate::enquiry::{Enquiry, read_enquiry};
    use crate::provenance::Whence;
    use stillrise_units::catalog::GPM;

    fn read(more: &str) -> Enquiry {
        let head = "[enquiry]\ntitle = \"a\"\ndate = \"2026-09-22\"\n[[stream]]\nname = \"wash\"\nflow = \"40 gpm\"\n";
        read_enquiry(&format!("{head}{more}"), &|_| None).unwrap_or_else(|f| panic!("{f:?}"))
    }

    fn change(day: &str, more: &str) -> String {
        format!("[[change]]\ndate = \"{day}\"\n{more}\n")
    }

    fn rate(e: &Enquiry) -> Option<f64> {
        e.inlet.rate.0.first().and_then(|q| q.claim()).map(|c| GPM.from_si(c.written.si()).round())
    }

    const DEGREASER: &str = "what = \"chemical\"\nchemical = \"alkaline-degreaser\"";
    const PUMP: &str = "what = \"pump\"\npump = \"centrifugal\"\nrate = \"75 gpm\"";

    #[test]
    fn a_change_speaks_where_the_keys_are_silent() {
        let e = read(&(change("2026-08-10", PUMP) + &change("2026-08-20", DEGREASER)));
        let now = e.today().expect("changes");
        let chemical = now.chemicals.first().expect("a product");
        assert_eq!(chemical.kind.as_deref(), Some("alkaline-degreaser"));
        assert_eq!(chemical.kind.1.source("chemical"), Whence::said("chemical", Some("the change of 2026-08-20")));
        assert_eq!((now.inlet.pump.as_deref(), rate(&now)), (Some("centrifugal"), Some(75.0)));
        // What was said of the time before stays as it was.
        assert!(e.chemicals.is_empty() && e.inlet.pump.is_none() && e.inlet.rate.0.is_empty());
    }

    /// A key that names another pump than a later change does speaks of the time before it: the change is taken, and the
    /// key stands beside it.
    #[test]
    fn a_change_is_later_than_a_key_that_says_otherwise() {
        let inlet = "[inlet]\nfeed = \"pump\"\npump = \"diaphragm\"\nrate = \"40 gpm\"\npulsation = 1.5\n";
        let now = read(&(inlet.to_owned() + &change("2026-08-10", PUMP))).today().expect("a change");
        assert_eq!((now.inlet.pump.as_deref(), rate(&now)), (Some("centrifugal"), Some(75.0)));
        assert_eq!(now.inlet.pump.1.list.len(), 2);
        assert!(!now.inlet.pulsation.is_given(), "the strokes were those of the other pump");
        assert!(now.notes.iter().any(|(place, note)| place == "inlet: rate" && note.contains("in place of 40 gpm")));
        // 70 gpm is 75 gpm read off another label: the key speaks of the pump that runs.
        let same = "[inlet]\nfeed = \"pump\"\npump = \"centrifugal\"\nrate = \"70 gpm\"\n";
        assert!(read(&(same.to_owned() + &change("2026-08-10", PUMP))).today().is_none());
    }

    /// 1.45 m after the road works in place of 1.2 m before: the water stands at the later one, and the earlier stays beside it.
    #[test]
    fn a_moved_outlet_is_where_it_stands_today() {
        let unit = "[unit]\nexists = true\ndimensions = { length = \"3 m\", width = \"1.2 m\", height = \"1.6 m\", outlet_invert = \"1.2 m\" }\n";
        let e = read(&(unit.to_owned() + &change("2026-02-23", "what = \"outlet\"\noutlet_level = \"1.45 m\"")));
        let level = |e: &Enquiry| {
            let unit = e.unit.dimensions.as_ref().expect("dimensions");
            unit.stages.outlet.invert.q().map(|q| (stillrise_units::Typed::si(q) * 1000.0).round())
        };
        let now = e.today().expect("a change");
        assert_eq!((level(&e), level(&now)), (Some(1200.0), Some(1450.0)));
        assert!(now.notes.iter().any(|(_, note)| note.contains("1.45 m") && note.contains("in place of 1.2 m")));
    }

    /// 40 or 25 gpm since the change: both are claims on the pump of today, the larger is designed for, and the 15 gpm of the
    /// old pump are none.
    #[test]
    fn contradicting_rates_of_a_change_stay_contradicting() {
        let inlet = "[inlet]\nfeed = \"pump\"\npump = \"diaphragm\"\nrate = \"15 gpm\"\n";
        let rates = "what = \"pump\"\npump = \"centrifugal\"\nrate = [{ value = \"25 gpm\", from = \"the fitter\" }, { value = \"40 gpm\", from = \"the curve\" }]";
        let now = read(&(inlet.to_owned() + &change("2026-08-10", rates))).today().expect("a change");
        let today = now.inlet.rate.0.first().expect("a rate");
        assert!(today.is_contradicted() && today.claims.len() == 2, "{:?}", today.claims);
        assert_eq!(rate(&now), Some(40.0));
        assert!(now.notes.iter().any(|(_, note)| note.contains("25 gpm or 40 gpm in place of 15 gpm")));
    }

    #[test]
    fn what_was_taken_back_or_is_to_come_does_not_count() {
        let back = change("2026-09-01", "what = \"chemical\"\nchemical = \"hot-water\"");
        let now = read(&(change("2026-08-20", DEGREASER) + &back)).today().expect("a change");
        let kinds: Vec<_> = now.chemicals.iter().filter_map(|c| c.kind.as_deref()).collect();
        assert_eq!(kinds, ["hot-water"]);
        assert!(read(&change("2026-11-20", DEGREASER)).today().is_none());
        // Nobody named the product that came last.
        assert!(
            read(&(change("2026-08-20", DEGREASER) + &change("2026-09-01", "what = \"chemical\""))).today().is_none()
        );
    }
}
