//! Printing an equation in MathML, of elements of MathML Core alone.
//!
//! Every piece is one element, so that it can stand as numerator, base or exponent as it is. Minus is `−`; a product
//! carries a dot before a number, a bracket or a fraction, else the invisible sign that a screen reader says.

use super::{Condition, Style, Tree, mathml_symbol, plain_symbol, stated};
use crate::page::Page;
use stillrise_units::print::digits;

/// What applies a function to what follows it; nothing is seen of it.
const APPLY: &str = "<mo>\u{2061}</mo>";
/// What multiplies without being seen, a thin space wide.
const TIMES: &str = "<mo rspace=\"0.1667em\">\u{2062}</mo>";
/// What stands between the columns of a series.
const BETWEEN: &str = "<mspace width=\"0.2222em\"/>";

/// The equation of a page as one `<math>` of its own paragraph, with its plain form as `alttext`; several lines stand
/// below each other in a table of class `lines`: left side, `=`, right side.
///
/// Empty when the body cannot be printed, which a test excludes for every page.
#[must_use]
pub fn page_math(page: &Page) -> String {
    let lines = stated(page, Style::MathMl);
    let plain: Vec<String> =
        stated(page, Style::Plain).iter().map(|line| format!("{} = {}", line.symbol, line.equation)).collect();
    let content = match lines.as_slice() {
        [] => return String::new(),
        [line] => format!("{}<mo>=</mo>{}", line.symbol, line.equation),
        lines => {
            let rows: String = lines
                .iter()
                .map(|l| format!("<mtr>{}{}{}</mtr>", cell(&l.symbol), cell("<mo>=</mo>"), cell(&l.equation)))
                .collect();
            format!("<mtable class=\"lines\" displaystyle=\"true\">{rows}</mtable>")
        }
    };
    block(&content, &plain.join("; "))
}

/// Printed pieces as one `<math>` of its own paragraph; `plain` is what stands in where it cannot be shown.
#[must_use]
pub fn block(content: &str, plain: &str) -> String {
    format!("<math display=\"block\" alttext=\"{}\">{content}</math>", escaped(plain))
}

/// Printed pieces as one `<math>` within a sentence; `plain` is what stands in where it cannot be shown.
#[must_use]
pub fn inline(content: &str, plain: &str) -> String {
    format!("<math alttext=\"{}\">{content}</math>", escaped(plain))
}

/// A number with up to six digits, its power of ten set apart.
#[must_use]
pub fn mathml_number(value: f64) -> String {
    if !value.is_finite() {
        return word(&digits(value, 6));
    }
    let text = digits(value, 6);
    match text.split_once('e') {
        None => signed(&text),
        Some((mantissa, power)) => {
            let power = format!("<msup><mn>10</mn>{}</msup>", signed(power));
            match mantissa.strip_prefix('-') {
                None => format!("<mrow><mn>{mantissa}</mn><mo>×</mo>{power}</mrow>"),
                Some(mantissa) => format!("<mrow><mo>−</mo><mn>{mantissa}</mn><mo>×</mo>{power}</mrow>"),
            }
        }
    }
}

fn signed(text: &str) -> String {
    match text.strip_prefix('-') {
        None => format!("<mn>{text}</mn>"),
        Some(rest) => format!("<mrow><mo>−</mo><mn>{rest}</mn></mrow>"),
    }
}

/// A word within an equation.
pub(super) fn word(text: &str) -> String {
    format!("<mtext>{}</mtext>", escaped(text))
}

/// The symbols of a series' columns, side by side.
pub(super) fn columns(math: &str) -> String {
    math.split('|').map(mathml_symbol).collect::<Vec<_>>().join(BETWEEN)
}

/// Both sides of a relation.
pub(super) fn equal(left: &str, right: &str) -> String {
    format!("<mrow>{left}<mo>=</mo>{right}</mrow>")
}

/// Text that is data, not markup.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Renders a tree; `leaf` and `function` give markup.
pub(super) fn render(tree: &Tree, leaf: &dyn Fn(&str) -> String, function: &dyn Fn(&str) -> String) -> String {
    Printer { leaf, function }.tree(tree).0
}

struct Printer<'a> {
    leaf: &'a dyn Fn(&str) -> String,
    function: &'a dyn Fn(&str) -> String,
}

/// One element and how tightly it binds: sums 1, products 2, powers and fractions 3, all else 4.
type Piece = (String, u8);

impl Printer<'_> {
    fn tree(&self, tree: &Tree) -> Piece {
        match tree {
            Tree::Number(value, _) => with_binding(mathml_number(*value)),
            Tree::Name(name) => {
                let text = (self.leaf)(name);
                with_binding(if text.contains(BETWEEN) { row(&text) } else { text })
            }
            Tree::Word(text) => (word(text), 4),
            Tree::Minus(inner) => (row(&format!("<mo>−</mo>{}", within(self.tree(inner), 2))), 1),
            Tree::Binary('/', a, b) => (format!("<mfrac>{}{}</mfrac>", self.tree(a).0, self.tree(b).0), 3),
            Tree::Binary('*', a, b) => {
                let (a, b) = (within(self.tree(a), 2), within(self.tree(b), 2));
                let times = if needs_dot(&b) { "<mo>⋅</mo>" } else { TIMES };
                (row(&format!("{a}{times}{b}")), 2)
            }
            Tree::Binary(operator, a, b) => {
                let (sign, least) = if *operator == '-' { ('−', 2) } else { (*operator, 1) };
                let right = within(self.tree(b), least);
                let right = if leads_with_minus(&right) { bracketed(&right) } else { right };
                (row(&format!("{}<mo>{sign}</mo>{right}", self.tree(a).0)), 1)
            }
            Tree::Call(name, args) => self.call(name, args),
            Tree::If(..) => self.cases(tree),
        }
    }

    fn call(&self, name: &str, args: &[Tree]) -> Piece {
        let applied = |function: &str| row(&format!("{function}{APPLY}{}", self.list(args)));
        let between =
            |open: char, x: &Tree, close: char| row(&format!("<mo>{open}</mo>{}<mo>{close}</mo>", self.tree(x).0));
        match (name, args) {
            ("pow", [base, power]) => (raised(&within(self.tree(base), 4), &self.tree(power).0), 3),
            ("exp", [x]) => {
                let x = self.tree(x).0;
                // What stands high above the line must stay legible.
                let tall = x.contains("<mfrac>") || x.contains("<mtable");
                if tall {
                    (row(&format!("<mi>exp</mi>{APPLY}{}", bracketed(&x))), 4)
                } else {
                    // Upright, so that it is no symbol of the page.
                    (raised("<mi mathvariant=\"normal\">e</mi>", &x), 3)
                }
            }
            ("exp10", [x]) => (raised("<mn>10</mn>", &self.tree(x).0), 3),
            ("sqrt", [x]) => (format!("<msqrt>{}</msqrt>", self.tree(x).0), 4),
            ("abs", [x]) => (between('|', x, '|'), 4),
            ("ceil", [x]) => (between('⌈', x, '⌉'), 4),
            ("floor", [x]) => (between('⌊', x, '⌋'), 4),
            ("log10", _) => (applied("<msub><mi>log</mi><mn>10</mn></msub>"), 4),
            ("normal_cdf", _) => (applied("<mi mathvariant=\"normal\">Φ</mi>"), 4),
            ("normal_quantile", _) => {
                (applied(&raised("<mi mathvariant=\"normal\">Φ</mi>", "<mrow><mo>−</mo><mn>1</mn></mrow>")), 4)
            }
            ("acos", _) => (applied("<mi>arccos</mi>"), 4),
            ("sum_x" | "sum_y" | "sum_xy", [Tree::Name(series)]) => self.sum(name, series),
            ("ln" | "sin" | "cos" | "tan" | "min" | "max", _) => (applied(&format!("<mi>{name}</mi>")), 4),
            (_, []) => with_binding((self.function)(name)),
            _ => (applied(&within(with_binding((self.function)(name)), 4)), 4),
        }
    }

    /// Arguments in their bracket.
    fn list(&self, args: &[Tree]) -> String {
        let args: Vec<String> = args.iter().map(|a| self.tree(a).0).collect();
        bracketed(&args.join("<mo separator=\"true\">,</mo>"))
    }

    fn sum(&self, name: &str, series: &str) -> Piece {
        let shown = (self.leaf)(series);
        let columns: Vec<&str> = shown.split(BETWEEN).collect();
        let what = match (name, columns.as_slice()) {
            ("sum_x", [x, ..]) | ("sum_y", [_, x]) => (*x).to_owned(),
            ("sum_xy", [x, y]) => format!("{x}{TIMES}{y}"),
            _ => shown.clone(),
        };
        (row(&format!("<mo>∑</mo>{what}")), 2)
    }

    fn cases(&self, tree: &Tree) -> Piece {
        let mut rows = String::new();
        let mut rest = tree;
        while let Tree::If(condition, then, other) = rest {
            let when = format!("<mtext>if\u{a0}</mtext>{}", self.condition(condition));
            rows.push_str(&format!("<mtr>{}{}</mtr>", cell(&self.tree(then).0), cell(&when)));
            rest = other;
        }
        let last = format!("<mtr>{}{}</mtr>", cell(&self.tree(rest).0), cell("<mtext>otherwise</mtext>"));
        (row(&format!("<mo>{{</mo><mtable class=\"cases\">{rows}{last}</mtable>")), 4)
    }

    fn condition(&self, condition: &Condition) -> String {
        match condition {
            Condition::Compare(compare, a, b) => {
                let compare = match *compare {
                    "==" => "=",
                    "<=" => "≤",
                    ">=" => "≥",
                    "<" => "&lt;",
                    _ => "&gt;",
                };
                row(&format!("{}<mo>{compare}</mo>{}", self.tree(a).0, self.tree(b).0))
            }
            Condition::Join(join, a, b) => {
                let join = if *join == "&&" { "and" } else { "or" };
                row(&format!("{}<mtext>\u{a0}{join}\u{a0}</mtext>{}", self.condition(a), self.condition(b)))
            }
        }
    }
}

/// A name or number with how tightly it binds: one with a power of ten as a product, an expression as a sum.
fn with_binding(text: String) -> Piece {
    let binds = match (text.starts_with("<mrow>"), text.contains("<mo>×</mo>") && !leads_with_minus(&text)) {
        (false, _) => 4,
        (true, true) => 2,
        (true, false) => 1,
    };
    (text, binds)
}

fn within(piece: Piece, least: u8) -> String {
    if piece.1 < least { bracketed(&piece.0) } else { piece.0 }
}

fn bracketed(content: &str) -> String {
    row(&format!("<mo>(</mo>{content}<mo>)</mo>"))
}

fn row(content: &str) -> String {
    format!("<mrow>{content}</mrow>")
}

fn cell(content: &str) -> String {
    format!("<mtd>{content}</mtd>")
}

/// A power; that of a symbol with a subscript stands above the subscript.
pub(super) fn raised(base: &str, power: &str) -> String {
    match base.strip_prefix("<msub>").and_then(|rest| rest.strip_suffix("</msub>")) {
        Some(parts) => format!("<msubsup>{parts}{power}</msubsup>"),
        None => format!("<msup>{base}{power}</msup>"),
    }
}

/// What is read first in a piece.
fn first(mut markup: &str) -> &str {
    while let Some(rest) = ["<mrow>", "<msup>", "<msub>", "<msubsup>"].iter().find_map(|tag| markup.strip_prefix(tag)) {
        markup = rest;
    }
    markup
}

fn leads_with_minus(markup: &str) -> bool {
    first(markup).starts_with("<mo>−</mo>")
}

/// Whether a factor could be misread without a sign before it.
fn needs_dot(markup: &str) -> bool {
    ["<mn>", "<mo>(</mo>", "<mfrac>"].iter().any(|lead| first(markup).starts_with(lead))
}

/// A symbol within a sentence, with its plain form beside it.
#[must_use]
pub fn symbol_math(math: &str) -> String {
    let plain: Vec<String> = math.split('|').map(plain_symbol).collect();
    inline(&columns(math), &plain.join(" "))
}
