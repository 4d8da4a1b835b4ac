//! Evaluating an equation as printed, to compare it with the function bit for bit.

use super::{Condition, Line, Tree, parse_lines};
use crate::page::{Arg, Body, Page, Series, sum_x, sum_xy, sum_y};
use stillrise_units::{G, Typed, math};

/// Names with their values, and the functions beyond the built-in ones.
pub struct Scope<'a> {
    /// Values by name; the latest of a name counts.
    pub values: Vec<(String, Arg)>,
    /// Functions by name.
    pub call: &'a dyn Fn(&str, &[Arg]) -> Option<f64>,
}

impl Scope<'_> {
    /// The value of a tree as a number; `None` for an unknown name or function.
    #[must_use]
    pub fn number(&self, tree: &Tree) -> Option<f64> {
        match self.value(tree)? {
            Arg::Number(value) => Some(value),
            _ => None,
        }
    }

    fn value(&self, tree: &Tree) -> Option<Arg> {
        Some(Arg::Number(match tree {
            Tree::Number(value, _) => *value,
            Tree::Name(name) => {
                if let Some((_, value)) = self.values.iter().rev().find(|(n, _)| n == name) {
                    return Some(value.clone());
                }
                match name.as_str() {
                    "G" => G.si(),
                    "PI" => core::f64::consts::PI,
                    _ => return None,
                }
            }
            Tree::Word(_) => return None,
            Tree::Minus(inner) => -self.number(inner)?,
            Tree::Binary(operator, left, right) => {
                let (left, right) = (self.number(left)?, self.number(right)?);
                match operator {
                    '+' => left + right,
                    '-' => left - right,
                    '*' => left * right,
                    _ => left / right,
                }
            }
            Tree::Call(name, args) => {
                let args: Option<Vec<Arg>> = args.iter().map(|a| self.value(a)).collect();
                let args = args?;
                builtin(name, &args).or_else(|| (self.call)(name, &args))?
            }
            Tree::If(condition, then, other) => {
                return self.value(if self.holds(condition)? { then } else { other });
            }
        }))
    }

    /// Whether a condition holds.
    #[must_use]
    pub fn holds(&self, condition: &Condition) -> Option<bool> {
        Some(match condition {
            Condition::Compare(compare, left, right) => {
                if let (Some(Arg::Choice(word)), Tree::Word(variant)) = (self.value(left), right) {
                    return Some(same_word(word, variant));
                }
                let (left, right) = (self.number(left)?, self.number(right)?);
                match *compare {
                    "<" => left < right,
                    "<=" => left <= right,
                    ">" => left > right,
                    ">=" => left >= right,
                    _ => left == right,
                }
            }
            Condition::Join("&&", a, b) => self.holds(a)? && self.holds(b)?,
            Condition::Join(_, a, b) => self.holds(a)? || self.holds(b)?,
        })
    }

    /// The tree with every branch replaced by the one that holds.
    #[must_use]
    pub fn folded(&self, tree: &Tree) -> Tree {
        let boxed = |tree: &Tree| Box::new(self.folded(tree));
        match tree {
            Tree::If(condition, then, other) => match self.holds(condition) {
                Some(holds) => self.folded(if holds { then } else { other }),
                None => tree.clone(),
            },
            Tree::Minus(inner) => Tree::Minus(boxed(inner)),
            Tree::Binary(operator, a, b) => Tree::Binary(*operator, boxed(a), boxed(b)),
            Tree::Call(name, args) => Tree::Call(name.clone(), args.iter().map(|a| self.folded(a)).collect()),
            other => other.clone(),
        }
    }

    /// Runs the lines of a body and gives the value of each, the result last.
    #[must_use]
    pub fn run(&mut self, lines: &[Line]) -> Option<Vec<f64>> {
        let mut out = Vec::new();
        for line in lines {
            let value = self.number(&line.tree)?;
            if let Some(name) = &line.name {
                self.values.push((name.clone(), Arg::Number(value)));
            }
            out.push(value);
        }
        Some(out)
    }
}

/// `fuel oil` in files is `FuelOil` in code.
fn same_word(word: &str, variant: &str) -> bool {
    let plain = |text: &str| text.chars().filter(|c| c.is_alphanumeric()).collect::<String>().to_lowercase();
    plain(word) == plain(variant)
}

fn builtin(name: &str, args: &[Arg]) -> Option<f64> {
    if let [Arg::Series(pairs)] = args {
        let series = Series(pairs.clone());
        return match name {
            "sum_x" => Some(sum_x(&series)),
            "sum_y" => Some(sum_y(&series)),
            "sum_xy" => Some(sum_xy(&series)),
            _ => None,
        };
    }
    let numbers: Option<Vec<f64>> = args.iter().map(|a| if let Arg::Number(v) = a { Some(*v) } else { None }).collect();
    Some(match (name, numbers?.as_slice()) {
        ("exp", [x]) => math::exp(*x),
        ("ln", [x]) => math::ln(*x),
        ("log10", [x]) => math::log10(*x),
        ("exp10", [x]) => math::exp10(*x),
        ("pow", [x, y]) => math::pow(*x, *y),
        ("sqrt", [x]) => math::sqrt(*x),
        ("sin", [x]) => math::sin(*x),
        ("cos", [x]) => math::cos(*x),
        ("tan", [x]) => math::tan(*x),
        ("acos", [x]) => math::acos(*x),
        ("min", [x, y]) => math::min(*x, *y),
        ("max", [x, y]) => math::max(*x, *y),
        ("abs", [x]) => math::abs(*x),
        ("ceil", [x]) => math::ceil(*x),
        ("floor", [x]) => math::floor(*x),
        ("normal_cdf", [x]) => math::normal_cdf(*x),
        ("normal_quantile", [x]) => math::normal_quantile(*x),
        _ => return None,
    })
}

/// Runs the equation printed on a page. The result is in SI.
///
/// `None` for a solved relation (see [`Page::holds`]) and for what the printed form cannot say.
#[must_use]
pub fn evaluate_page(page: &Page, args: &[Arg]) -> Option<Arg> {
    let (Body::Typed(text) | Body::Reduced(text) | Body::Maps(text)) = &page.body else {
        return None;
    };
    let lines = parse_lines(text).ok()?;
    let unit = page.working_unit(&page.out);
    let call = |name: &str, args: &[Arg]| page.helpers.iter().find(|h| h.name == name).and_then(|h| (h.apply)(args));
    let mut values: Vec<(String, Arg)> =
        page.constants.iter().map(|(name, _, value)| ((*name).to_owned(), Arg::Number(*value))).collect();
    let mut series = None;
    for (symbol, arg) in page.args.iter().zip(args) {
        let value = match (arg, page.working_unit(symbol)) {
            (Arg::Number(si), Some(unit)) => Arg::Number(unit.from_si(*si)),
            (Arg::Series(pairs), _) => {
                series.get_or_insert_with(|| pairs.clone());
                arg.clone()
            }
            _ => arg.clone(),
        };
        values.push((symbol.name.to_owned(), value));
    }
    if let Body::Maps(_) = page.body {
        let [(x, x_unit), (y, y_unit), ..] = page.works_in else { return None };
        let (_, out_unit) = page.works_in.last()?;
        let rows = series?.into_iter().map(|pair| {
            let mut row = values.clone();
            row.push(((*x).to_owned(), Arg::Number(x_unit.from_si(pair.0))));
            row.push(((*y).to_owned(), Arg::Number(y_unit.from_si(pair.1))));
            let result = Scope { values: row, call: &call }.run(&lines)?;
            Some((pair.0, out_unit.to_si(*result.last()?)))
        });
        return rows.collect::<Option<Vec<_>>>().map(Arg::Series);
    }
    let result = Scope { values, call: &call }.run(&lines)?;
    Some(Arg::Number(unit?.to_si(*result.last()?)))
}
