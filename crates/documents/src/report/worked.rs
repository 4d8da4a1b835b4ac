//! A value as a reviewer works it out again: equation typeset, numbers substituted, result.
//!
//! The numbers show only the branch that was taken; what is printed is read off the same tree
//! that the handbook proves to be what ran.

use super::blocks::units;
use serde_json::{Value, json};
use stillrise_design::provenance::Entry;
use stillrise_handbook::equation::{Scope, Style, Tree, parse_lines, plain_symbol, printed, render, typst_symbol};
use stillrise_handbook::page::{Arg, Body, Page};
use stillrise_units::print::{self, digits};
use stillrise_units::{System, Typed};

/// Longest line, in characters of its plain form, that carries equation and numbers together.
const TOGETHER: usize = 95;

/// One line of mathematics and its plain form.
struct Line {
    math: String,
    plain: String,
}

impl Line {
    fn json(&self) -> Value {
        // A bracket right behind a subscript would belong to it: set it apart.
        json!({ "m": self.math.replace("\"(", "\" ("), "alt": self.plain })
    }
}

/// The lines of a derived value; `first` with the equation in symbols, else numbers only.
pub(super) fn lines(entry: &Entry, page: &'static Page, args: &[Arg], first: bool, system: System) -> Vec<Value> {
    let typeset = sides(page, args, &entry.value, Style::Typst);
    let plain = sides(page, args, &entry.value, Style::Plain);
    let count = typeset.len();
    let mut out = Vec::new();
    for (k, (t, p)) in typeset.into_iter().zip(plain).enumerate() {
        let end = if k + 1 == count {
            result(page, entry, t.value, system)
        } else {
            (format!(" = {}", typst_number(t.value)), format!(" = {}", digits(t.value, 6)))
        };
        let equation =
            Line { math: format!("{} = {}", t.symbol, t.equation), plain: format!("{} = {}", p.symbol, p.equation) };
        let Some((numbers_t, numbers_p)) = t.numbers.zip(p.numbers) else {
            // Nothing to put in: the equation alone, with what it comes to.
            out.push(Line { math: equation.math + &end.0, plain: equation.plain + &end.1 }.json());
            continue;
        };
        if let Body::Solves(..) = page.body {
            if first {
                out.push(equation.json());
            }
            out.push(Line { math: numbers_t, plain: numbers_p }.json());
            let symbol = (typst_symbol(page.out.math), plain_symbol(page.out.math));
            out.push(Line { math: symbol.0 + &end.0, plain: symbol.1 + &end.1 }.json());
            continue;
        }
        let numbers = Line {
            math: format!("{} = {numbers_t}{}", t.symbol, end.0),
            plain: format!("{} = {numbers_p}{}", p.symbol, end.1),
        };
        let both = Line {
            math: format!("{} = {numbers_t}{}", equation.math, end.0),
            plain: format!("{} = {numbers_p}{}", equation.plain, end.1),
        };
        if !first {
            out.push(numbers.json());
        } else if both.plain.chars().count() <= TOGETHER {
            out.push(both.json());
        } else {
            out.push(equation.json());
            out.push(numbers.json());
        }
    }
    out
}

/// What the last line comes to: in the unit in which the formula works, and as printed elsewhere.
fn result(page: &Page, entry: &Entry, value: f64, system: System) -> (String, String) {
    let Arg::Number(si) = entry.value else { return (String::new(), String::new()) };
    if !value.is_finite() {
        return (String::new(), String::new());
    }
    let works = page.working_unit(&page.out);
    let symbol = works.map_or("", |u| u.symbol);
    let mut math = format!(" = {}{}", typst_number(value), typst_unit(symbol));
    let mut plain = format!(" = {} {symbol}", digits(value, 6)).trim_end().to_owned();
    if let Some(unit) = entry.units.map(|pair| system.pick(pair)).filter(|u| Some(u.symbol) != works.map(|w| w.symbol))
    {
        math += &format!(" = {}{}", typst_number(unit.from_si(si)), typst_unit(unit.symbol));
        plain += &format!(" = {}", print::with_unit(si, unit));
    }
    (math, plain)
}

fn typst_number(value: f64) -> String {
    let text = digits(value, 6);
    match text.split_once('e') {
        None => text,
        Some((mantissa, power)) => format!("{mantissa} dot 10^({power})"),
    }
}

fn typst_unit(symbol: &str) -> String {
    if symbol.is_empty() {
        String::new()
    } else {
        format!(" thin \"{}\"", units(&format!("= {symbol}")).trim_start_matches("= "))
    }
}

/// One line of a page: both sides, numbers where there are any to put in.
struct Sides {
    symbol: String,
    equation: String,
    numbers: Option<String>,
    value: f64,
}

fn sides(page: &'static Page, args: &[Arg], result: &Arg, style: Style) -> Vec<Sides> {
    let own = numbers(page, args, style).unwrap_or_default();
    let lines = printed(page, args, result, style);
    lines
        .into_iter()
        .enumerate()
        .map(|(k, line)| {
            let text = own.get(k).cloned().unwrap_or(line.numbers);
            let trivial = text.is_empty() || text == line.equation || text == digits(line.value, 6);
            Sides {
                symbol: line.symbol,
                equation: line.equation,
                numbers: (!trivial).then_some(text),
                value: line.value,
            }
        })
        .collect()
}

/// What the names of a page's body stand for: its constants, and its arguments in the units that it works in.
pub(crate) fn values(page: &Page, args: &[Arg]) -> Vec<(String, Arg)> {
    let mut values: Vec<(String, Arg)> =
        page.constants.iter().map(|(name, _, value)| ((*name).to_owned(), Arg::Number(*value))).collect();
    for (symbol, arg) in page.args.iter().zip(args) {
        let value = match (arg, page.working_unit(symbol)) {
            (Arg::Number(si), Some(unit)) => Arg::Number(unit.from_si(*si)),
            _ => arg.clone(),
        };
        values.push((symbol.name.to_owned(), value));
    }
    values
}

/// The right sides with numbers, each branch folded to the one that holds; none for relations.
fn numbers(page: &'static Page, args: &[Arg], style: Style) -> Option<Vec<String>> {
    let (Body::Typed(text) | Body::Reduced(text)) = &page.body else { return None };
    let values = values(page, args);
    let call = |name: &str, args: &[Arg]| page.helpers.iter().find(|h| h.name == name).and_then(|h| (h.apply)(args));
    let symbol = |math: &str| if style == Style::Typst { typst_symbol(math) } else { plain_symbol(math) };
    let function =
        |name: &str| page.helpers.iter().find(|h| h.name == name).map_or_else(|| name.to_owned(), |h| symbol(h.math));
    let mut scope = Scope { values, call: &call };
    let mut out = Vec::new();
    for line in parse_lines(text).ok()? {
        let folded = scope.folded(&line.tree);
        let leaf = |name: &str| leaf(page, &scope, style, name);
        out.push(render(&folded, style, &leaf, &function));
        if let Some(name) = line.name {
            let value = scope.number(&line.tree)?;
            scope.values.push((name, Arg::Number(value)));
        }
    }
    Some(out)
}

/// A name as its number.
fn leaf(page: &Page, scope: &Scope<'_>, style: Style, name: &str) -> String {
    let typst = style == Style::Typst;
    let shown = |value: f64| if typst { typst_number(value) } else { digits(value, 6) };
    match scope.values.iter().rev().find(|(n, _)| n == name) {
        Some((_, Arg::Number(value))) => shown(*value),
        Some((_, Arg::Choice(word))) => {
            if typst {
                format!("\"{word}\"")
            } else {
                (*word).to_owned()
            }
        }
        _ => match name {
            "G" => shown(stillrise_units::G.si()),
            "PI" => shown(core::f64::consts::PI),
            _ => {
                let math = page.args.iter().find(|a| a.name == name).map_or(name, |a| a.math);
                math.split('|')
                    .map(|m| if typst { typst_symbol(m) } else { plain_symbol(m) })
                    .collect::<Vec<_>>()
                    .join(" ")
            }
        },
    }
}

/// Plain arithmetic in words or numbers, as `36 m³/h / 3.61 m²`.
pub(super) fn plainly(tree: &Tree, leaf: &dyn Fn(&str) -> String) -> String {
    fn piece(tree: &Tree, leaf: &dyn Fn(&str) -> String) -> (String, u8) {
        let within = |tree: &Tree, least: u8| {
            let (text, binds) = piece(tree, leaf);
            if binds < least { format!("({text})") } else { text }
        };
        match tree {
            Tree::Number(value, _) => (digits(*value, 6), 4),
            Tree::Name(name) => {
                let text = leaf(name);
                let binds = if text.starts_with('-') { 1 } else { 4 };
                (text, binds)
            }
            Tree::Word(word) => (word.clone(), 4),
            Tree::Minus(inner) => (format!("−{}", within(inner, 2)), 1),
            Tree::Binary('*', a, b) => (format!("{} × {}", within(a, 2), within(b, 2)), 2),
            Tree::Binary('/', a, b) => (format!("{} / {}", within(a, 2), within(b, 3)), 2),
            Tree::Binary('-', a, b) => (format!("{} − {}", within(a, 1), within(b, 2)), 1),
            Tree::Binary(operator, a, b) => (format!("{} {operator} {}", within(a, 1), within(b, 1)), 1),
            Tree::Call(name, args) => {
                let args: Vec<String> = args.iter().map(|a| piece(a, leaf).0).collect();
                (format!("{name}({})", args.join("; ")), 4)
            }
            Tree::If(..) => (render(tree, Style::Plain, leaf, &|f: &str| f.to_owned()), 4),
        }
    }
    piece(tree, leaf).0
}
