//! Printing an equation: typeset (typst mathematics) or in plain text, with symbols or numbers.

use super::{Condition, Scope, Tree, parse, parse_lines, plain_symbol, typst_symbol};
use crate::page::{Arg, Body, Page};
use stillrise_units::print::digits;

/// How an equation is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Style {
    /// Mathematics of typst.
    Typst,
    /// One line of plain text.
    Plain,
}

/// One line of a worked formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed {
    /// The symbol on the left.
    pub symbol: String,
    /// The right side in symbols.
    pub equation: String,
    /// The right side with numbers, in the units the body works in.
    pub numbers: String,
    /// What it comes to, in the same units.
    pub value: f64,
}

/// The lines of a page's equation with these arguments substituted; the result's line last.
///
/// `result` is the value in SI that the formula gave; a solved relation shows it on both sides.
/// Empty when the body cannot be printed, which a test excludes for every page.
#[must_use]
pub fn printed(page: &Page, args: &[Arg], result: &Arg, style: Style) -> Vec<Printed> {
    build(page, args, result, style).unwrap_or_default()
}

fn build(page: &Page, args: &[Arg], result: &Arg, style: Style) -> Option<Vec<Printed>> {
    let mut values: Vec<(String, Arg)> =
        page.constants.iter().map(|(n, _, v)| ((*n).to_owned(), Arg::Number(*v))).collect();
    for (symbol, arg) in page.args.iter().zip(args) {
        values.push((
            symbol.name.to_owned(),
            match (arg, page.working_unit(symbol)) {
                (Arg::Number(si), Some(unit)) => Arg::Number(unit.from_si(*si)),
                _ => arg.clone(),
            },
        ));
    }
    let call = |name: &str, args: &[Arg]| page.helpers.iter().find(|h| h.name == name).and_then(|h| (h.apply)(args));
    let function = |name: &str| {
        page.helpers.iter().find(|h| h.name == name).map_or_else(|| name.to_owned(), |h| symbol(style, h.math))
    };
    let out = symbol(style, page.out.math.split('|').next_back().unwrap_or(page.out.math));
    match &page.body {
        Body::Typed(text) | Body::Reduced(text) => {
            let lines = parse_lines(text).ok()?;
            let results = Scope { values: values.clone(), call: &call }.run(&lines)?;
            let mut printed = Vec::new();
            for (line, value) in lines.iter().zip(results) {
                let name = line.name.as_deref().map_or_else(|| out.clone(), |n| symbol(style, n));
                printed.push(Printed {
                    symbol: name,
                    equation: render(&line.tree, style, &|n| name_of(page, style, n), &function),
                    numbers: render(&line.tree, style, &|n| number_of(&values, style, n, page), &function),
                    value,
                });
                if let Some(n) = &line.name {
                    values.push((n.clone(), Arg::Number(value)));
                }
            }
            Some(printed)
        }
        Body::Maps(text) => {
            let lines = parse_lines(text).ok()?;
            let names = |n: &str| match page.works_in.iter().take(2).position(|(w, _)| *w == n) {
                Some(column) => {
                    let series = page.args.iter().find(|a| a.second.is_some());
                    let math = series.and_then(|s| s.math.split('|').nth(column)).unwrap_or(n);
                    symbol(style, math)
                }
                None => name_of(page, style, n),
            };
            Some(
                lines
                    .iter()
                    .map(|line| Printed {
                        symbol: line.name.as_deref().map_or_else(|| out.clone(), |n| symbol(style, n)),
                        equation: render(&line.tree, style, &names, &function),
                        numbers: String::new(),
                        value: f64::NAN,
                    })
                    .collect(),
            )
        }
        Body::Solves(left, right) => {
            let (left, right) = (parse(left).ok()?, parse(right).ok()?);
            let Arg::Number(si) = result else { return None };
            let value = page.working_unit(&page.out).map_or(*si, |u| u.from_si(*si));
            let solved = page.works_in.last().map_or("result", |(n, _)| n);
            values.push((solved.to_owned(), Arg::Number(value)));
            let names = |n: &str| if n == solved { out.clone() } else { name_of(page, style, n) };
            let side = |t: &Tree, f: &dyn Fn(&str) -> String| render(t, style, f, &function);
            let numbers = |n: &str| number_of(&values, style, n, page);
            Some(vec![Printed {
                symbol: side(&left, &names),
                equation: side(&right, &names),
                numbers: format!("{} = {}", side(&left, &numbers), side(&right, &numbers)),
                value,
            }])
        }
    }
}

fn symbol(style: Style, math: &str) -> String {
    match style {
        Style::Typst => typst_symbol(math),
        Style::Plain => plain_symbol(math),
    }
}

fn name_of(page: &Page, style: Style, name: &str) -> String {
    let math = page
        .args
        .iter()
        .find(|a| a.name == name)
        .map(|a| a.math)
        .or_else(|| page.constants.iter().find(|(n, ..)| *n == name).map(|(_, m, _)| *m))
        .unwrap_or(match name {
            "G" => "g",
            "PI" => "pi",
            other => other,
        });
    if math.contains('|') {
        return math.split('|').map(|m| symbol(style, m)).collect::<Vec<_>>().join(" ");
    }
    symbol(style, math)
}

fn number_of(values: &[(String, Arg)], style: Style, name: &str, page: &Page) -> String {
    match values.iter().rev().find(|(n, _)| n == name) {
        Some((_, Arg::Number(value))) => number(style, *value),
        Some((_, Arg::Choice(word))) => word_text(style, word),
        Some((_, Arg::Series(_) | Arg::Group(..) | Arg::Groups(_))) => name_of(page, style, name),
        None => match name {
            "G" => number(style, stillrise_units::G.value),
            "PI" => number(style, core::f64::consts::PI),
            _ => name_of(page, style, name),
        },
    }
}

fn word_text(style: Style, word: &str) -> String {
    match style {
        Style::Typst => format!("\"{word}\""),
        Style::Plain => word.to_owned(),
    }
}

/// A number with up to six digits, its power of ten set apart.
fn number(style: Style, value: f64) -> String {
    let text = digits(value, 6);
    match text.split_once('e') {
        None => text,
        Some((mantissa, power)) if style == Style::Typst => format!("{mantissa} dot 10^({power})"),
        Some(_) => text,
    }
}

/// Renders a tree; `leaf` prints names, `function` prints the names of functions.
pub fn render(tree: &Tree, style: Style, leaf: &dyn Fn(&str) -> String, function: &dyn Fn(&str) -> String) -> String {
    Printer { style, leaf, function }.tree(tree).0
}

struct Printer<'a> {
    style: Style,
    leaf: &'a dyn Fn(&str) -> String,
    function: &'a dyn Fn(&str) -> String,
}

/// How tightly a printed piece binds: sums 1, products 2, powers 3, all else 4.
type Piece = (String, u8);

impl Printer<'_> {
    fn typst(&self) -> bool {
        self.style == Style::Typst
    }

    fn within(&self, piece: Piece, least: u8) -> String {
        if piece.1 < least { format!("({})", piece.0) } else { piece.0 }
    }

    fn tree(&self, tree: &Tree) -> Piece {
        match tree {
            Tree::Number(value, _) => {
                (number(self.style, *value), if *value != 0.0 && (abs_small(*value)) { 2 } else { 4 })
            }
            Tree::Name(name) => {
                let text = (self.leaf)(name);
                let binds = if text.starts_with('-') {
                    1
                } else if text.contains(" dot ") {
                    2
                } else {
                    4
                };
                (text, binds)
            }
            Tree::Word(word) => (word_text(self.style, word), 4),
            Tree::Minus(inner) => (format!("-{}", self.within(self.tree(inner), 2)), 1),
            Tree::Binary('/', a, b) if self.typst() => (format!("frac({}, {})", self.tree(a).0, self.tree(b).0), 3),
            Tree::Binary('/', a, b) => {
                (format!("{}/{}", self.within(self.tree(a), 2), self.within(self.tree(b), 3)), 2)
            }
            Tree::Binary('*', a, b) => {
                let (a, b) = (self.within(self.tree(a), 2), self.within(self.tree(b), 2));
                let times = if !self.typst() {
                    "·"
                } else if b.starts_with(|c: char| c.is_ascii_digit() || c == '(' || c == 'f') {
                    " dot "
                } else {
                    " thin "
                };
                (format!("{a}{times}{b}"), 2)
            }
            Tree::Binary(operator, a, b) => {
                let right = self.within(self.tree(b), if *operator == '-' { 2 } else { 1 });
                let right = if right.starts_with('-') { format!("({right})") } else { right };
                (format!("{} {operator} {right}", self.tree(a).0), 1)
            }
            Tree::Call(name, args) => self.call(name, args),
            Tree::If(..) => self.cases(tree),
        }
    }

    fn call(&self, name: &str, args: &[Tree]) -> Piece {
        let list = || args.iter().map(|a| self.tree(a).0).collect::<Vec<_>>().join(", ");
        let typst = self.typst();
        match (name, args) {
            ("pow", [base, power]) => {
                let base = self.within(self.tree(base), 4);
                let power = self.tree(power).0;
                (format!("{base}^({power})"), 3)
            }
            ("exp", [x]) => {
                (if typst { format!("e^({})", self.tree(x).0) } else { format!("exp({})", self.tree(x).0) }, 3)
            }
            ("exp10", [x]) => (format!("10^({})", self.tree(x).0), 3),
            ("sqrt", [x]) => {
                (if typst { format!("sqrt({})", self.tree(x).0) } else { format!("√({})", self.tree(x).0) }, 4)
            }
            ("abs", [x]) => {
                (if typst { format!("abs({})", self.tree(x).0) } else { format!("|{}|", self.tree(x).0) }, 4)
            }
            ("log10", _) => (if typst { format!("log_10({})", list()) } else { format!("log10({})", list()) }, 4),
            ("normal_cdf", _) => (if typst { format!("Phi({})", list()) } else { format!("Φ({})", list()) }, 4),
            ("normal_quantile", _) => {
                (if typst { format!("Phi^(-1)({})", list()) } else { format!("Φ⁻¹({})", list()) }, 4)
            }
            ("acos", _) => (format!("arccos({})", list()), 4),
            ("sum_x" | "sum_y" | "sum_xy", [Tree::Name(series)]) => self.sum(name, series),
            ("ln" | "sin" | "cos" | "tan" | "min" | "max" | "ceil" | "floor", _) => (format!("{name}({})", list()), 4),
            _ => {
                let shown = (self.function)(name);
                (if args.is_empty() { shown } else { format!("{shown}({})", list()) }, 4)
            }
        }
    }

    fn sum(&self, name: &str, series: &str) -> Piece {
        let shown = (self.leaf)(series);
        let columns: Vec<&str> = shown.split(' ').collect();
        let what = match (name, columns.as_slice()) {
            ("sum_x", [x, ..]) | ("sum_y", [_, x]) => (*x).to_owned(),
            ("sum_xy", [x, y]) if self.typst() => format!("{x} thin {y}"),
            ("sum_xy", [x, y]) => format!("{x}·{y}"),
            _ => shown.clone(),
        };
        (if self.typst() { format!("sum {what}") } else { format!("Σ {what}") }, 2)
    }

    fn cases(&self, tree: &Tree) -> Piece {
        let mut rows = Vec::new();
        let mut rest = tree;
        while let Tree::If(condition, then, other) = rest {
            rows.push((self.tree(then).0, Some(self.condition(condition))));
            rest = other;
        }
        rows.push((self.tree(rest).0, None));
        if self.typst() {
            let rows: Vec<String> = rows
                .into_iter()
                .map(|(value, when)| match when {
                    Some(when) => format!("{value} quad & \"if\" {when}"),
                    None => format!("{value} quad & \"otherwise\""),
                })
                .collect();
            (format!("cases({})", rows.join(", ")), 4)
        } else {
            let rows: Vec<String> = rows
                .into_iter()
                .map(|(value, when)| match when {
                    Some(when) => format!("{value} if {when}"),
                    None => format!("else {value}"),
                })
                .collect();
            (format!("[{}]", rows.join("; ")), 4)
        }
    }

    fn condition(&self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(compare, a, b) => {
                let compare = match (*compare, self.typst()) {
                    ("==", _) => "=",
                    (other, true) => other,
                    ("<=", false) => "≤",
                    (">=", false) => "≥",
                    (other, false) => other,
                };
                format!("{} {compare} {}", self.tree(a).0, self.tree(b).0)
            }
            Condition::Join(join, a, b) => {
                let join = if *join == "&&" { "and" } else { "or" };
                let join = if self.typst() { format!("\"{join}\"") } else { join.to_owned() };
                format!("{} {join} {}", self.condition(a), self.condition(b))
            }
        }
    }
}

/// Whether a number prints with a power of ten, and so is a product in print.
fn abs_small(value: f64) -> bool {
    digits(value, 6).contains('e')
}
