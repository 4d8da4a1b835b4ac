//! Notation and steps of a worksheet: each formula with its source's symbols, and with the numbers put in.
//!
//! The equations are read off the trees of the handbook's pages, which are what ran; only names are changed to the symbols of
//! the method.

use crate::report::worked::values;
use stillrise_design::provenance::{Entry, Ledger, Origin, show, show_in_prose};
use stillrise_design::regulation::{Worksheet, about};
use stillrise_design::{Node, provenance::Pair};
use stillrise_handbook::equation::{Scope, Style, parse, parse_lines, plain_symbol, printed, render};
use stillrise_handbook::page::{Arg, Body, Page};
use stillrise_search::Settled;
use stillrise_units::catalog::{FT_S2, M_S2};
use stillrise_units::print::{self, digits};
use stillrise_units::{System, Typed};

/// One quantity of the notation.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notation {
    /// Its symbol.
    pub symbol: String,
    /// What it is.
    pub meaning: String,
    /// Its value, with its unit.
    pub value: String,
    /// Where it comes from.
    pub origin: String,
    /// Its place in the trail.
    pub at: Node,
}

/// One line of mathematics.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// The symbol on the left.
    pub symbol: String,
    /// The right side in symbols.
    pub equation: String,
    /// The right side with numbers, in the units in which the formula works; empty where there are none to put in.
    pub numbers: String,
    /// What it comes to, with its unit.
    pub value: String,
}

impl Line {
    /// The line in plain text.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = self.symbol.clone();
        let mut said = vec![self.symbol.as_str(), self.value.as_str()];
        for part in [&self.equation, &self.numbers] {
            if !part.is_empty() && !said.contains(&part.as_str()) {
                said.push(part);
                out.push_str(&format!(" = {part}"));
            }
        }
        format!("{out} = {}", self.value)
    }
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// What is found.
    pub what: String,
    /// The lines, the result's last.
    pub lines: Vec<Line>,
    /// What it comes to in units of print.
    pub value: String,
    /// What a reader must know of it.
    pub notes: Vec<String>,
    /// Its place in the trail.
    pub at: Node,
}

/// An input of a step: its symbol, and its value with its unit.
struct Named {
    symbol: String,
    shown: String,
}

/// Rows that are written out in the notation; of more only the number of rows is said.
const ROWS: usize = 8;

/// The symbol of a series, both its columns.
fn columns(math: &str) -> String {
    math.split('|').map(plain_symbol).collect::<Vec<_>>().join(" ")
}

/// Symbols by place in the trail.
struct Symbols<'a> {
    sources: Vec<String>,
    ledger: &'a Ledger,
    system: System,
    known: Vec<(Node, String)>,
    taken: Vec<Node>,
    notation: Vec<Notation>,
}

impl Symbols<'_> {
    /// Where a value comes from, in few words.
    fn origin(&self, entry: &Entry, at: Node) -> String {
        match &entry.origin {
            Origin::Given { source, .. } => {
                let text = source.to_string();
                let own = self.sources.iter().find_map(|source| text.strip_prefix(source.as_str()));
                own.map_or_else(|| text.clone(), |rest| format!("the method{rest}"))
            }
            Origin::Assumed(a) => {
                let show = |end| show_in_prose(end, entry.units, self.system);
                format!("assumed, plausibly {} to {}", show(&a.low), show(&a.high))
            }
            Origin::Chosen { because, .. } => because.clone(),
            _ if self.taken.contains(&at) => "our basis".to_owned(),
            Origin::Derived { .. } | Origin::Reckoned { .. } | Origin::Gathered { .. } => {
                if self.known.iter().any(|(known, _)| *known == at) { "worked below" } else { "our basis" }.to_owned()
            }
        }
    }
    fn of(&self, at: Node) -> Option<&str> {
        self.known.iter().find(|(known, _)| *known == at).map(|(_, symbol)| symbol.as_str())
    }
    /// Takes a quantity up in the notation, under the method's symbol or else its own.
    fn take(&mut self, at: Node, own: &str) -> String {
        let symbol = self.of(at).map_or_else(|| columns(own), str::to_owned);
        if self.notation.iter().any(|row| row.at == at) {
            return symbol;
        }
        if let Some(entry) = self.ledger.entry(at) {
            self.notation.push(Notation {
                symbol: symbol.clone(),
                meaning: entry.label.clone(),
                value: entry.shown(self.system),
                origin: self.origin(entry, at),
                at,
            });
        }
        symbol
    }
}

impl Symbols<'_> {
    /// Writes the rows of a series out in the notation.
    fn rows(&mut self, at: Node, rows: &[(f64, f64)], (first, second): (Pair, Pair)) {
        let (x, y) = (self.system.pick(first), self.system.pick(second));
        let one = |(a, b): &(f64, f64)| format!("{}: {}", print::with_unit(*a, x), print::with_unit(*b, y));
        let all = rows.iter().map(one).collect::<Vec<_>>().join("; ");
        if let Some(row) = self.notation.iter_mut().find(|row| row.at == at).filter(|_| rows.len() <= ROWS) {
            row.value = all;
        }
    }
}

/// Notation and steps.
pub(super) fn worked(settled: &Settled, sheet: &Worksheet) -> (Vec<Notation>, Vec<Step>) {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let known = sheet.terms.iter().map(|term| (term.at, plain_symbol(term.symbol))).collect();
    let taken = sheet.terms.iter().filter(|term| term.taken).map(|term| term.at).collect();
    let sources = about::sources(sheet.method).iter().map(ToString::to_string).collect();
    let mut symbols = Symbols { sources, ledger, system, known, taken, notation: Vec::new() };
    let mut steps: Vec<Step> = Vec::new();
    for term in &sheet.terms {
        let Some(entry) = ledger.entry(term.at) else { continue };
        let lines = match &entry.origin {
            _ if term.taken => Vec::new(),
            Origin::Derived { page, inputs } => formula(&mut symbols, entry, page, inputs, term.symbol),
            Origin::Reckoned { text, inputs } => reckoned(&mut symbols, entry, text, inputs, term.symbol),
            _ => Vec::new(),
        };
        symbols.take(term.at, term.symbol);
        if !lines.is_empty() && steps.iter().all(|step| step.at != term.at) {
            let (what, value) = (entry.label.clone(), entry.shown(system));
            steps.push(Step { what, lines, value, notes: entry.notes.clone(), at: term.at });
        }
    }
    (symbols.notation, steps)
}

/// A formula of the handbook under the method's symbols; each branch folded to the one that holds.
fn formula(symbols: &mut Symbols<'_>, entry: &Entry, page: &'static Page, inputs: &[Node], own: &str) -> Vec<Line> {
    let args: Option<Vec<Arg>> = inputs.iter().map(|at| symbols.ledger.value(*at).cloned()).collect();
    let Some(args) = args else { return Vec::new() };
    let mut named = Vec::new();
    for ((arg, at), value) in page.args.iter().zip(inputs).zip(&args) {
        let symbol = symbols.take(*at, arg.math);
        if let (Arg::Series(rows), Some(first), Some(second)) = (value, arg.units, arg.second) {
            symbols.rows(*at, rows, (first, second));
        }
        let shown = symbols.ledger.entry(*at).map_or_else(String::new, |entry| entry.shown(symbols.system));
        named.push(Named { symbol, shown });
    }
    in_symbols(symbols.system, entry, page, &args, &named, own).unwrap_or_else(|| {
        let lines = printed(page, &args, &entry.value, Style::Plain).into_iter();
        let end = |value: f64| in_its_unit(entry, page, value, symbols.system);
        lines
            .map(|l| Line { value: end(l.value), symbol: l.symbol, equation: l.equation, numbers: l.numbers })
            .collect()
    })
}

fn in_symbols(
    system: System,
    entry: &Entry,
    page: &'static Page,
    args: &[Arg],
    named: &[Named],
    own: &str,
) -> Option<Vec<Line>> {
    let (Body::Typed(text) | Body::Reduced(text)) = &page.body else { return None };
    // Where the body works on quantities, each number stands with its own unit.
    let typed = matches!(page.body, Body::Typed(_));
    let with_unit = |name: &str| {
        let at = page.args.iter().position(|arg| arg.name == name).filter(|_| typed)?;
        named.get(at).map(|input| input.shown.clone())
    };
    let values = values(page, args);
    let call = |name: &str, args: &[Arg]| page.helpers.iter().find(|h| h.name == name).and_then(|h| (h.apply)(args));
    let function = |name: &str| {
        page.helpers.iter().find(|h| h.name == name).map_or_else(|| name.to_owned(), |h| plain_symbol(h.math))
    };
    let mut scope = Scope { values, call: &call };
    let lines = parse_lines(text).ok()?;
    let last = lines.len().checked_sub(1)?;
    let mut out = Vec::new();
    for (k, line) in lines.into_iter().enumerate() {
        let folded = scope.folded(&line.tree);
        let symbol_of = |name: &str| {
            let argument = page
                .args
                .iter()
                .position(|arg| arg.name == name)
                .and_then(|at| named.get(at))
                .map(|input| input.symbol.clone());
            let constant = page.constants.iter().find(|(n, ..)| *n == name).map(|(_, math, _)| *math);
            argument.unwrap_or_else(|| match (constant, name) {
                (Some(math), _) => plain_symbol(math),
                (None, "G") => "g".to_owned(),
                (None, "PI") => "π".to_owned(),
                (None, other) => plain_symbol(other),
            })
        };
        let number_of = |name: &str| match scope.values.iter().rev().find(|(n, _)| n == name) {
            Some((_, Arg::Number(value))) => with_unit(name).unwrap_or_else(|| digits(*value, 6)),
            Some((_, Arg::Choice(word))) => (*word).to_owned(),
            None if name == "G" => gravity(system),
            _ => symbol_of(name),
        };
        let equation = render(&folded, Style::Plain, &symbol_of, &function);
        let numbers = render(&folded, Style::Plain, &number_of, &function);
        let value = scope.number(&line.tree)?;
        let trivial = numbers == equation || numbers == digits(value, 6);
        let symbol = line.name.as_deref().filter(|_| k < last).map_or_else(|| plain_symbol(own), plain_symbol);
        let value_shown = match (k < last, typed) {
            (true, _) => digits(value, 6),
            (false, true) => entry.shown(system),
            (false, false) => in_its_unit(entry, page, value, system),
        };
        let numbers = if trivial { String::new() } else { numbers };
        out.push(Line { symbol, equation, numbers, value: value_shown });
        if let Some(name) = line.name {
            scope.values.push((name, Arg::Number(value)));
        }
    }
    Some(out)
}

/// A result in the unit in which the formula works, and in that of print where it is another.
fn in_its_unit(entry: &Entry, page: &Page, value: f64, system: System) -> String {
    let works = page.working_unit(&page.out);
    let own = format!("{} {}", digits(value, 6), works.map_or("", |unit| unit.symbol)).trim_end().to_owned();
    match (&entry.value, entry.units.map(|pair: Pair| system.pick(pair))) {
        (Arg::Number(si), Some(unit)) if works.is_some_and(|works| works.symbol != unit.symbol) => {
            format!("{own} = {}", print::with_unit(*si, unit))
        }
        _ => own,
    }
}

/// Plain arithmetic under the method's symbols, each number with its unit.
fn reckoned(
    symbols: &mut Symbols<'_>,
    entry: &Entry,
    text: &str,
    inputs: &[(&'static str, Node)],
    own: &str,
) -> Vec<Line> {
    let Ok(tree) = parse(text) else { return Vec::new() };
    let names: Vec<(&str, String)> = inputs.iter().map(|(name, at)| (*name, symbols.take(*at, name))).collect();
    let symbol_of =
        |name: &str| names.iter().find(|(n, _)| *n == name).map_or_else(|| name.to_owned(), |(_, s)| s.clone());
    let number_of = |name: &str| {
        let at = inputs.iter().find(|(n, _)| *n == name).map(|(_, at)| *at);
        let shown = at.and_then(|at| symbols.ledger.entry(at)).map(|e| show(&e.value, e.units, symbols.system));
        shown.unwrap_or_else(|| name.to_owned())
    };
    let same = |name: &str| name.to_owned();
    vec![Line {
        symbol: plain_symbol(own),
        equation: render(&tree, Style::Plain, &symbol_of, &same),
        numbers: render(&tree, Style::Plain, &number_of, &same),
        value: entry.shown(symbols.system),
    }]
}

/// The acceleration of free fall in print.
fn gravity(system: System) -> String {
    print::told(stillrise_units::G.si(), system.pick((&FT_S2, &M_S2)))
}
