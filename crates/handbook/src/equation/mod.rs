//! Equations read off the code: parsed once into a tree, printed in typeset form, in MathML or in plain
//! words, with symbols or with numbers, and evaluated to prove that what is printed is what ran.

mod evaluate;
mod mathml;
mod parse;
mod print;
mod symbol;
mod text;

pub use evaluate::{Scope, evaluate_page};
pub use mathml::{block, inline, mathml_number, page_math, symbol_math};
pub use parse::{parse, parse_lines};
pub use print::{Printed, Stated, Style, printed, stated};
pub use symbol::{mathml_symbol, plain_symbol, typst_symbol};
pub use text::render;

/// One node of an equation.
#[derive(Debug, Clone, PartialEq)]
pub enum Tree {
    /// A literal number.
    Number(f64, String),
    /// A name: argument, constant, or an earlier line.
    Name(String),
    /// A word of a choice, as `OilGroup::Crude` in the code.
    Word(String),
    /// Minus one node.
    Minus(Box<Tree>),
    /// Two nodes and the operator `+ - * /`.
    Binary(char, Box<Tree>, Box<Tree>),
    /// A function and its arguments.
    Call(String, Vec<Tree>),
    /// Condition, then, else.
    If(Box<Condition>, Box<Tree>, Box<Tree>),
}

/// A comparison, or two joined by `&&` or `||`.
#[derive(Debug, Clone, PartialEq)]
pub enum Condition {
    /// `< <= > >= ==` between two nodes.
    Compare(&'static str, Tree, Tree),
    /// Both, or either.
    Join(&'static str, Box<Condition>, Box<Condition>),
}

/// One line of a body: a named intermediate, or the last, unnamed expression.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Name of the intermediate; `None` for the result.
    pub name: Option<String>,
    /// Its expression.
    pub tree: Tree,
}
