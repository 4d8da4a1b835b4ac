//! Printing the equation of a page: typeset (typst mathematics), in MathML or in plain text, with symbols or numbers.

use super::text::{number, word_text};
use super::{Scope, mathml, mathml_symbol, parse, parse_lines, plain_symbol, render, typst_symbol};
use crate::page::{Arg, Body, Page};

/// How an equation is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Style {
    /// Mathematics of typst.
    Typst,
    /// One line of plain text.
    Plain,
    /// One element of MathML, to stand within `<math>` (see [`super::block`]).
    MathMl,
}

/// One line of an equation in symbols.
#[derive(Debug, Clone, PartialEq)]
pub struct Stated {
    /// The symbol on the left; of a solved relation, the left side.
    pub symbol: String,
    /// The right side.
    pub equation: String,
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

/// The lines of a page's equation in symbols; the result's line last.
///
/// Empty when the body cannot be printed, which a test excludes for every page.
#[must_use]
pub fn stated(page: &Page, style: Style) -> Vec<Stated> {
    in_symbols(page, style).unwrap_or_default()
}

fn in_symbols(page: &Page, style: Style) -> Option<Vec<Stated>> {
    let function = |name: &str| function_of(page, style, name);
    let out = symbol(style, page.out.math.split('|').next_back().unwrap_or(page.out.math));
    let (text, names): (_, &dyn Fn(&str) -> String) = match &page.body {
        Body::Typed(text) | Body::Reduced(text) => (text, &|n| name_of(page, style, n)),
        Body::Maps(text) => (text, &|n| match page.works_in.iter().take(2).position(|(w, _)| *w == n) {
            Some(column) => {
                let series = page.args.iter().find(|a| a.second.is_some());
                symbol(style, series.and_then(|s| s.math.split('|').nth(column)).unwrap_or(n))
            }
            None => name_of(page, style, n),
        }),
        Body::Solves(left, right) => {
            let solved = solved(page);
            let names = |n: &str| if n == solved { out.clone() } else { name_of(page, style, n) };
            let side = |text: &str| Some(render(&parse(text).ok()?, style, &names, &function));
            return Some(vec![Stated { symbol: side(left)?, equation: side(right)? }]);
        }
    };
    let lines = parse_lines(text).ok()?;
    let stated = lines.iter().map(|line| Stated {
        symbol: line.name.as_deref().map_or_else(|| out.clone(), |n| symbol(style, n)),
        equation: render(&line.tree, style, names, &function),
    });
    Some(stated.collect())
}

fn build(page: &Page, args: &[Arg], result: &Arg, style: Style) -> Option<Vec<Printed>> {
    let stated = in_symbols(page, style)?.into_iter();
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
    let function = |name: &str| function_of(page, style, name);
    match &page.body {
        Body::Typed(text) | Body::Reduced(text) => {
            let lines = parse_lines(text).ok()?;
            let results = Scope { values: values.clone(), call: &call }.run(&lines)?;
            let mut printed = Vec::new();
            for ((line, value), Stated { symbol, equation }) in lines.iter().zip(results).zip(stated) {
                let numbers = render(&line.tree, style, &|n| number_of(&values, style, n, page), &function);
                printed.push(Printed { symbol, equation, numbers, value });
                if let Some(n) = &line.name {
                    values.push((n.clone(), Arg::Number(value)));
                }
            }
            Some(printed)
        }
        Body::Maps(_) => Some(
            stated
                .map(|Stated { symbol, equation }| Printed {
                    symbol,
                    equation,
                    numbers: String::new(),
                    value: f64::NAN,
                })
                .collect(),
        ),
        Body::Solves(left, right) => {
            let Arg::Number(si) = result else { return None };
            let value = page.working_unit(&page.out).map_or(*si, |u| u.from_si(*si));
            values.push((solved(page).to_owned(), Arg::Number(value)));
            let numbers = |n: &str| number_of(&values, style, n, page);
            let side = |text: &str| Some(render(&parse(text).ok()?, style, &numbers, &function));
            let (left, right) = (side(left)?, side(right)?);
            let numbers = match style {
                Style::MathMl => mathml::equal(&left, &right),
                Style::Typst | Style::Plain => format!("{left} = {right}"),
            };
            Some(
                stated
                    .map(|Stated { symbol, equation }| Printed { symbol, equation, numbers: numbers.clone(), value })
                    .collect(),
            )
        }
    }
}

/// The name of the root in the body of a solved relation.
fn solved(page: &Page) -> &'static str {
    page.works_in.last().map_or("result", |(n, _)| n)
}

/// A function by its symbol, where the page names one.
fn function_of(page: &Page, style: Style, name: &str) -> String {
    match (page.helpers.iter().find(|h| h.name == name), style) {
        (Some(helper), _) => symbol(style, helper.math),
        (None, Style::MathMl) => mathml_symbol(name),
        (None, Style::Typst | Style::Plain) => name.to_owned(),
    }
}

fn symbol(style: Style, math: &str) -> String {
    match style {
        Style::Typst => typst_symbol(math),
        Style::Plain => plain_symbol(math),
        Style::MathMl => mathml_symbol(math),
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
    if math.contains('|') && style == Style::MathMl {
        return mathml::columns(math);
    }
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
