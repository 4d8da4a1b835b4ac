//! What a formula page is: one definition that the typed function, the printed equation, the
//! trail, `work` and `verify` all share.

mod argument;

pub use argument::{Arg, Argument, Group, Kind, Series};
use stillrise_units::{System, Unit, print};

/// One argument, or the result, of a formula.
#[derive(Debug)]
pub struct Symbol {
    /// The name in the code, in `work` and in checks.
    pub name: &'static str,
    /// The symbol in print: `rho_w`, `V_h`; a Series has one for each column, parted by `|`.
    pub math: &'static str,
    /// What it is, in the trade's words.
    pub meaning: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// (US, SI) unit in print; for a Series that of the first column.
    pub units: Option<(&'static Unit, &'static Unit)>,
    /// (US, SI) unit of a Series' second column.
    pub second: Option<(&'static Unit, &'static Unit)>,
    /// Where the formula is trusted; outside it the value comes with a note. In the SI print unit.
    pub range: Option<(f64, f64)>,
    /// Where the formula has an answer at all. In the SI print unit.
    pub domain: Option<(f64, f64)>,
}

/// The formula has no answer there.
#[derive(Debug, Clone, PartialEq)]
pub struct Outside {
    /// Id of the page.
    pub page: &'static str,
    /// The argument, or `"result"`.
    pub argument: &'static str,
    /// What is wrong, with numbers and units.
    pub reason: String,
}

impl core::fmt::Display for Outside {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}: {}: {}", self.page, self.argument, self.reason)
    }
}

/// A published source, written once, in [`crate::sources`].
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// Author or body, title.
    pub title: &'static str,
    /// Year, or the edition.
    pub year: &'static str,
    /// Whether its text was read for this handbook or is quoted from memory or second hand.
    pub seen: Seen,
}

/// How a source is known to the handbook.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seen {
    /// The passage was read.
    Read,
    /// The passage was read as quoted by another text.
    SecondHand,
    /// From memory: check against the document before relying on it.
    Memory,
    /// Common practice of the trade; there is no document.
    Practice,
}

impl core::fmt::Display for Source {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}", self.title)?;
        if !self.year.is_empty() {
            write!(f, " ({})", self.year)?;
        }
        match self.seen {
            Seen::Read => Ok(()),
            Seen::SecondHand => write!(f, " [as quoted by another text]"),
            Seen::Memory => write!(f, " [from memory, not confirmed]"),
            Seen::Practice => Ok(()),
        }
    }
}

/// Where an expected value comes from, strongest first. Never our own output.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Evidence {
    /// A published example or table, and the place in it.
    Published(&'static Source, &'static str),
    /// A general-purpose reference library: name and version.
    Library(&'static str),
    /// An identity or limiting case that needs no authority.
    Limit(&'static str),
    /// Arithmetic done apart from this code, by hand or by an independent script.
    ByHand(&'static str),
    /// Recalled, not confirmed.
    Memory(&'static str),
}

impl Evidence {
    /// The kinds, strongest first.
    pub const KINDS: [&'static str; 5] = ["published", "library", "limit", "by hand", "memory"];
    /// The kind's name.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        Self::KINDS[match self {
            Evidence::Published(..) => 0,
            Evidence::Library(_) => 1,
            Evidence::Limit(_) => 2,
            Evidence::ByHand(_) => 3,
            Evidence::Memory(_) => 4,
        }]
    }
    /// The kind and what stands behind it.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            Evidence::Published(source, place) => format!("published: {source}, {place}"),
            Evidence::Library(name) => format!("library: {name}"),
            Evidence::Limit(text) => format!("limit: {text}"),
            Evidence::ByHand(text) => format!("by hand: {text}"),
            Evidence::Memory(text) => format!("memory: {text}"),
        }
    }
}

/// One check value of a page.
#[derive(Debug)]
pub struct Check {
    /// The arguments as a person writes them: `"d=60 um, mu=1 cP"`.
    pub given: &'static str,
    /// The result as printed in its source; half a unit of its last digit is the tolerance.
    pub expect: &'static str,
    /// A wider relative tolerance, and why the printed digits do not hold.
    pub within: Option<(f64, &'static str)>,
    /// Where the expected value comes from.
    pub evidence: Evidence,
}

/// How the body of a formula is written.
#[derive(Debug)]
pub enum Body {
    /// On typed quantities; multiplies out in coherent SI.
    Typed(&'static str),
    /// On plain numbers in stated units.
    Reduced(&'static str),
    /// Gives the new second column of a Series, row by row; in stated units.
    Maps(&'static str),
    /// A relation between two sides, solved for the result; in stated units.
    Solves(&'static str, &'static str),
}

/// A named function that a body calls and the equation shows by its symbol.
#[derive(Debug)]
pub struct Helper {
    /// Its name in the code.
    pub name: &'static str,
    /// Its symbol in print.
    pub math: &'static str,
    /// What it is: a table, a chart, an integral.
    pub meaning: &'static str,
    /// The function itself, on numbers in the body's units.
    pub apply: fn(&[Arg]) -> Option<f64>,
}

/// Both sides of a solved relation, from the arguments and the root.
pub type Sides = fn(&[Arg], f64) -> Option<(f64, f64)>;

/// One formula page.
#[derive(Debug)]
pub struct Page {
    /// File stem in kebab case.
    pub id: &'static str,
    /// Title.
    pub title: &'static str,
    /// The doc comment: what it is, range, traps.
    pub note: &'static str,
    /// The source file, so that a reader can find and correct it.
    pub file: &'static str,
    /// The equation, read off the code.
    pub body: Body,
    /// Units in which a reduced or solved body works, by argument; the result's last.
    pub works_in: &'static [(&'static str, &'static Unit)],
    /// Named constants of the body: name, symbol, value.
    pub constants: &'static [(&'static str, &'static str, f64)],
    /// Named functions of the body.
    pub helpers: &'static [Helper],
    /// Arguments in order.
    pub args: &'static [Symbol],
    /// The result.
    pub out: Symbol,
    /// Where the formula comes from.
    pub sources: &'static [&'static Source],
    /// Its check values; tables of them stand in [`crate::evidence::tables`].
    pub checks: &'static [Check],
    /// The function on untyped values.
    pub call: fn(&[Arg]) -> Result<Arg, Outside>,
    /// Both sides of a solved relation at a result, to see that it holds.
    pub holds: Option<Sides>,
}

impl PartialEq for Page {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}

impl Page {
    /// The unit in which the body works on this argument, or on the result.
    #[must_use]
    pub fn working_unit(&self, symbol: &Symbol) -> Option<&'static Unit> {
        match symbol.kind {
            Kind::Quantity(dim) => Some(
                self.works_in
                    .iter()
                    .find(|(name, _)| *name == symbol.name)
                    .map_or_else(|| dim.coherent(), |(_, unit)| unit),
            ),
            _ => None,
        }
    }

    /// What a reader of a system must know because an argument lies outside the trusted range.
    #[must_use]
    pub fn notes(&self, args: &[Arg], system: System) -> Vec<String> {
        let mut notes = Vec::new();
        for (symbol, arg) in self.args.iter().zip(args) {
            self.note(symbol, arg, system, &mut notes);
        }
        notes
    }

    fn note(&self, symbol: &Symbol, arg: &Arg, system: System, notes: &mut Vec<String>) {
        let si = match arg {
            Arg::Number(si) => *si,
            Arg::Group(group, fields) => {
                return group.fields.iter().zip(fields).for_each(|(field, arg)| self.note(field, arg, system, notes));
            }
            Arg::Groups(groups) => return groups.iter().for_each(|group| self.note(symbol, group, system, notes)),
            Arg::Choice(_) | Arg::Series(_) => return,
        };
        let (Some((low, high)), Some(pair)) = (symbol.range, symbol.units) else { return };
        let (unit, shown) = (pair.1, system.pick(pair));
        let value = unit.from_si(si);
        let slack = 1e-9 * (high - low).abs();
        if value < low - slack || value > high + slack {
            notes.push(format!(
                "{}: {} is {}, outside the trusted range {} to {}",
                self.title,
                symbol.meaning,
                print::in_prose(si, shown),
                print::digits(print::or_nothing(shown.from_si(unit.to_si(low))), 3),
                print::in_prose(unit.to_si(high), shown),
            ));
        }
    }
}

/// One argument out of the untyped form; called by every page.
///
/// # Errors
/// [`Outside`] when it is missing or of another kind.
pub fn take<T: Argument>(page: &'static str, argument: &'static str, arg: Option<&Arg>) -> Result<T, Outside> {
    arg.and_then(T::from_arg).ok_or_else(|| Outside {
        page,
        argument,
        reason: "is missing or of another kind".to_owned(),
    })
}

/// Refuses an argument outside its domain; called by every generated function.
///
/// # Errors
/// [`Outside`] when the number is not finite or lies outside.
#[inline]
pub fn guard(
    page: &'static str,
    argument: &'static str,
    number: Option<f64>,
    unit: &'static Unit,
    low: f64,
    high: f64,
) -> Result<(), Outside> {
    let Some(si) = number else { return Ok(()) };
    let value = unit.from_si(si);
    let slack = 1e-12 * low.abs().max(high.abs());
    if value >= low - slack && value <= high + slack {
        return Ok(());
    }
    Err(outside(page, argument, si, unit, (low, high)))
}

#[cold]
fn outside(
    page: &'static str,
    argument: &'static str,
    si: f64,
    unit: &'static Unit,
    (low, high): (f64, f64),
) -> Outside {
    let (value, highest) = (print::with_unit(si, unit), print::with_unit(unit.to_si(high), unit));
    Outside { page, argument, reason: format!("{value} is outside {} to {highest}", print::digits(low, 4)) }
}

/// Refuses a result that is not a finite number; called by every generated function.
///
/// # Errors
/// [`Outside`] naming the result.
pub fn finish<T: Argument>(page: &'static str, out: T) -> Result<T, Outside> {
    let fine = match out.number().map_or_else(|| out.arg(), Arg::Number) {
        Arg::Number(value) => value.is_finite(),
        Arg::Series(pairs) => pairs.iter().all(|(x, y)| x.is_finite() && y.is_finite()),
        Arg::Choice(_) | Arg::Group(..) | Arg::Groups(_) => true,
    };
    if fine {
        Ok(out)
    } else {
        Err(Outside { page, argument: "result", reason: "the formula has no finite answer here".to_owned() })
    }
}

/// Sum of a Series' first column.
#[must_use]
pub fn sum_x(series: &Series) -> f64 {
    series.0.iter().fold(0.0, |sum, (x, _)| sum + x)
}
/// Sum of a Series' second column.
#[must_use]
pub fn sum_y(series: &Series) -> f64 {
    series.0.iter().fold(0.0, |sum, (_, y)| sum + y)
}
/// Sum of the products of a Series' two columns.
#[must_use]
pub fn sum_xy(series: &Series) -> f64 {
    series.0.iter().fold(0.0, |sum, (x, y)| sum + x * y)
}
