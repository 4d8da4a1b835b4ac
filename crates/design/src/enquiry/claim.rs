//! Reading a quantity and the claims on it: plain, as a range, or a table that says who said so.

use super::declared::Declared;
use super::distribution::Distribution;
use super::keys::{Because, Claim, Differing, Field, KeyKind, KeySpec, Quantity, Safe};
use super::reader::Reader;
use std::cell::RefCell;
use stillrise_units::parse::{self, DECIMAL_POINT, Extent, Gallon, ROUND_POINT, Reading, Span, Written};
use stillrise_units::{Dim, Typed, nearest};
use toml::de::DeValue;

impl Reader {
    /// One number and its unit.
    pub(super) fn quantity(
        &mut self,
        spec: &'static KeySpec,
        dim: Dim,
        place: &str,
        value: &DeValue<'_>,
    ) -> Option<Written> {
        let text = self.typed(spec, place, value)?;
        let written = match parse::quantity_of(&text, dim, &self.reading) {
            Ok(written) => written,
            Err(fault) => {
                self.fault(place, fault.reason, fault.remedy);
                return None;
            }
        };
        if !self.within_bounds(spec, dim, place, &written) {
            return None;
        }
        self.note_read(spec, dim, place, &written);
        self.gallon_open |= written.gallon_open;
        Some(written)
    }

    /// One number or a range.
    fn span(&mut self, spec: &'static KeySpec, dim: Dim, place: &str, value: &DeValue<'_>) -> Option<Span> {
        let text = self.typed(spec, place, value)?;
        let span = match parse::span_of(&text, dim, &self.reading) {
            Ok(span) => span,
            Err(fault) => {
                self.fault(place, fault.reason, fault.remedy);
                return None;
            }
        };
        let numbers = match &span.extent {
            Extent::One(value) => vec![value],
            Extent::Around { low, value, high } => vec![value, low, high],
            Extent::Between { low, high } => vec![low, high],
        };
        self.gallon_open |= numbers.iter().any(|number| number.gallon_open);
        if !numbers.into_iter().all(|number| self.within_bounds(spec, dim, place, number)) {
            return None;
        }
        match &span.extent {
            Extent::One(value) => {
                let value = Written { notes: span.notes.clone(), ..value.clone() };
                self.note_read(spec, dim, place, &value);
            }
            _ => self.note(place, &span.notes),
        }
        Some(span)
    }

    /// Takes up what was interpreted of one number: of a point that might part thousands nothing, where a thousand times as
    /// much cannot be meant.
    fn note_read(&mut self, spec: &'static KeySpec, dim: Dim, place: &str, written: &Written) {
        let beyond = spec.bounds.is_some() && written.unit.to_si(written.value * 1e3) > bounds(spec, dim).1;
        let point = |note: &&String| note.ends_with(DECIMAL_POINT) || note.ends_with(ROUND_POINT);
        let kept: Vec<String> = written.notes.iter().filter(|note| !(beyond && point(note))).cloned().collect();
        self.note(place, &kept);
    }

    /// What was typed for a quantity.
    fn typed(&mut self, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Option<String> {
        match value {
            DeValue::String(text) => Some(text.to_string()),
            DeValue::Integer(number) => Some(number.as_str().to_owned()),
            DeValue::Float(number) => Some(number.as_str().to_owned()),
            other => {
                self.fault(
                    place,
                    format!("is a {}, not a quantity", other.type_str()),
                    format!("write {} = {}", spec.name, spec.like),
                );
                None
            }
        }
    }

    fn within_bounds(&mut self, spec: &'static KeySpec, dim: Dim, place: &str, written: &Written) -> bool {
        let Some((low, high)) = spec.bounds else { return true };
        let (least, most) = bounds(spec, dim);
        let si = written.si();
        let within = si >= least && si <= most;
        if !within {
            self.fault(place, format!("{} is not between {low} and {high}", written.text), "check number and unit");
        }
        within
    }

    /// Takes up what was interpreted at a place.
    pub(super) fn note(&mut self, place: &str, notes: &[String]) {
        self.notes.extend(notes.iter().map(|note| (place.to_owned(), note.clone())));
    }

    /// The value that a range stands for, and its ends.
    fn settled(&mut self, spec: &'static KeySpec, place: &str, span: Span) -> (Written, Option<(Written, Written)>) {
        let (low, high) = match span.extent {
            Extent::One(value) => return (value, None),
            Extent::Around { low, value, high } => return (value, Some((low, high))),
            Extent::Between { low, high } => (low, high),
        };
        let (unit, value, said) = match spec.safe {
            Safe::Larger => (high.unit, high.value, "the larger end of the range was taken, the safe side"),
            Safe::Smaller => (low.unit, low.value, "the smaller end of the range was taken, the safe side"),
            Safe::First => {
                let same = low.unit == high.unit;
                let from = if same { low.value } else { high.unit.from_si(low.si()) };
                (high.unit, (from + high.value) / 2.0, "the middle of the range was taken; neither end is the safe one")
            }
        };
        self.note(place, &[format!("of \"{}\" {said}", span.text)]);
        let gallon_open = low.gallon_open || high.gallon_open;
        (Written { text: span.text, value, unit, notes: Vec::new(), gallon_open }, Some((low, high)))
    }

    /// One claim: a plain quantity, or a table with value, low, high, distribution, from, chosen, because.
    pub(super) fn claim(
        &mut self,
        spec: &'static KeySpec,
        dim: Dim,
        place: &str,
        value: &DeValue<'_>,
    ) -> Option<Claim> {
        let DeValue::Table(table) = value else {
            let span = self.span(spec, dim, place, value)?;
            let (written, ends) = self.settled(spec, place, span);
            let range = ends.map(|(low, high)| (low, high, Distribution::Uniform));
            return Some(Claim { written, from: None, chosen: false, because: None, range });
        };
        let mut claim = Claim { written: placeholder(dim), from: None, chosen: false, because: None, range: None };
        let mut typed_range = None;
        let mut found = false;
        let mut ends = [None, None];
        let mut distribution = None;
        for (key, value) in table {
            let name: &str = key.get_ref();
            match (name, value.get_ref()) {
                ("value", value) => {
                    let span = self.span(spec, dim, place, value)?;
                    (claim.written, typed_range) = self.settled(spec, place, span);
                    found = true;
                }
                ("low" | "high", value) => {
                    ends[usize::from(name == "high")] =
                        Some(self.quantity(spec, dim, &format!("{place}: {name}"), value)?);
                }
                ("distribution", DeValue::String(text)) => distribution = Some(self.distribution(place, text)?),
                ("from", DeValue::String(text)) => claim.from = Some(text.to_string()),
                ("because", DeValue::String(text)) => claim.because = Some(Because::Said(text.to_string())),
                ("chosen", DeValue::Boolean(chosen)) => claim.chosen = *chosen,
                (other, _) => self.fault(
                    place,
                    format!("\"{other}\" does not belong to a claim, or is of the wrong kind"),
                    "a claim has value, low, high, distribution, from, chosen and because",
                ),
            }
        }
        if !found {
            self.fault(
                place,
                "a claim without value",
                format!("write {} = {{ value = {}, from = \"...\" }}", spec.name, spec.like),
            );
            return None;
        }
        if let Some((low, high)) = typed_range {
            if ends.iter().any(Option::is_some) {
                self.fault(
                    place,
                    format!("\"{}\" is a range, and low or high stands beside it", claim.written.text),
                    "write the range once",
                );
                return None;
            }
            ends = [Some(low), Some(high)];
            distribution = distribution.or(Some(Distribution::Uniform));
        }
        claim.range = self.range(spec, place, &claim.written, ends, distribution)?;
        Some(claim)
    }

    /// The word that says how a value spreads over its range.
    fn distribution(&mut self, place: &str, text: &str) -> Option<Distribution> {
        let found = Distribution::from_word(text);
        if found.is_none() {
            let words: Vec<&str> = Distribution::ALL.iter().map(|d| d.word()).collect();
            let remedy = match nearest(text, words.iter().copied()) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => format!("use one of {}", words.join(", ")),
            };
            self.fault(&format!("{place}: distribution"), format!("\"{text}\" is not known"), remedy);
        }
        found
    }

    /// The range of a claim: both ends or none, in order, around the value. `None` when it is faulty.
    fn range(
        &mut self,
        spec: &'static KeySpec,
        place: &str,
        value: &Written,
        ends: [Option<Written>; 2],
        distribution: Option<Distribution>,
    ) -> Option<Option<(Written, Written, Distribution)>> {
        let (reason, remedy) = match ends {
            [None, None] => match distribution {
                None => return Some(None),
                Some(_) => ("a distribution without a range".to_owned(), "give low and high with it".to_owned()),
            },
            [Some(low), Some(high)] => {
                let distribution = distribution.unwrap_or(Distribution::Triangular);
                if low.si() <= value.si() && value.si() <= high.si() {
                    let (from, to) = distribution.reach(low.si(), value.si(), high.si());
                    let (least, most) = bounds(spec, value.unit.dim);
                    // The ends of the others were held against the key's bounds already.
                    let ends = matches!(distribution, Distribution::Triangular | Distribution::Uniform);
                    if ends || from.is_finite() && from >= least && to <= most {
                        return Some(Some((low, high, distribution)));
                    }
                    let reason = format!(
                        "a {} range from {} to {}, with one in twenty beyond each end, reaches outside what \"{}\" can be",
                        distribution.word(),
                        low.text,
                        high.text,
                        spec.name
                    );
                    let remedy = "write distribution = \"triangular\" or \"uniform\", whose ends are the ends";
                    self.fault(place, reason, remedy);
                    return None;
                }
                let between = format!("from {} to {}", low.text, high.text);
                if low.si() > high.si() {
                    (format!("the range runs {between}: upside down"), "write the lower end as low".to_owned())
                } else {
                    (
                        format!("{} lies outside its own range {between}", value.text),
                        "give a range that holds the value".to_owned(),
                    )
                }
            }
            [low, _] => {
                let missing = if low.is_none() { "low" } else { "high" };
                (format!("the range has no \"{missing}\""), "give both low and high, or neither".to_owned())
            }
        };
        self.fault(place, reason, remedy);
        None
    }
}

/// A key, what it holds, and its bounds.
type Bounds = (&'static KeySpec, Dim, (f64, f64));

thread_local! {
    /// Bounds that were read before: a range asks for the same ones with every row.
    static READ: RefCell<Vec<Bounds>> = const { RefCell::new(Vec::new()) };
}

/// What a key can be at all, SI.
fn bounds(spec: &'static KeySpec, dim: Dim) -> (f64, f64) {
    let is_known = |(s, d, _): &&Bounds| core::ptr::eq(*s, spec) && *d == dim;
    if let Some((.., known)) = READ.with_borrow(|read| read.iter().find(is_known).copied()) {
        return known;
    }
    let found = read_bounds(spec, dim);
    READ.with_borrow_mut(|read| read.push((spec, dim, found)));
    found
}

fn read_bounds(spec: &KeySpec, dim: Dim) -> (f64, f64) {
    let bound = |text: &str| {
        parse::quantity_of(text, dim, &Reading { gallon: Some(Gallon::Us) }).map(|w| w.si()).unwrap_or(f64::NAN)
    };
    spec.bounds.map_or((f64::NEG_INFINITY, f64::INFINITY), |(low, high)| (bound(low), bound(high)))
}

fn placeholder(dim: Dim) -> Written {
    Written { text: String::new(), value: 0.0, unit: dim.coherent(), notes: Vec::new(), gallon_open: false }
}

impl<Q: Typed> Field for Quantity<Q> {
    const KIND: KeyKind = KeyKind::Quantity(Q::DIM);
    fn is_said(&self) -> bool {
        self.is_given()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        let claims: Vec<Claim> = match value {
            DeValue::Array(list) => {
                list.iter().filter_map(|v| reader.claim(spec, Q::DIM, place, v.get_ref())).collect()
            }
            value => reader.claim(spec, Q::DIM, place, value).into_iter().collect(),
        };
        if claims.iter().filter(|c| c.chosen).count() > 1 {
            reader.fault(place, "more than one claim is marked chosen", "mark one");
        }
        Quantity::new(claims, spec, place)
    }
    fn differing<'a>(&'a self, found: &mut Vec<Differing<'a>>) {
        let taken = self.claim().filter(|claim| self.is_contradicted() && !claim.chosen);
        found.extend(taken.map(|taken| Differing {
            place: &self.place,
            declared: Declared(self.spec),
            claims: &self.claims,
            taken,
        }));
    }
}
