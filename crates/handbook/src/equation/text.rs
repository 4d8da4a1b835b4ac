//! Printing a tree: the printer of typst's mathematics and of plain text.

use super::{Condition, Style, Tree, mathml, mathml_number};
use stillrise_units::print::digits;

pub(super) fn word_text(style: Style, word: &str) -> String {
    match style {
        Style::Typst => format!("\"{word}\""),
        Style::Plain => word.to_owned(),
        Style::MathMl => mathml::word(word),
    }
}

/// A number with up to six digits, its power of ten set apart.
pub(super) fn number(style: Style, value: f64) -> String {
    if style == Style::MathMl {
        return mathml_number(value);
    }
    let text = digits(value, 6);
    match text.split_once('e') {
        None => text,
        Some((mantissa, power)) if style == Style::Typst => format!("{mantissa} dot 10^({power})"),
        Some(_) => text,
    }
}

/// Renders a tree; `leaf` prints names, `function` prints the names of functions, both in the style asked for.
pub fn render(tree: &Tree, style: Style, leaf: &dyn Fn(&str) -> String, function: &dyn Fn(&str) -> String) -> String {
    match style {
        Style::MathMl => mathml::render(tree, leaf, function),
        Style::Typst | Style::Plain => Printer { style, leaf, function }.tree(tree).0,
    }
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
