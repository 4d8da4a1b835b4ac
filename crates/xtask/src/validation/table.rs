//! `[[table]]` of a case: several predictions a row, through a chain of formulas.
//!
//! `step` and `given` hold places like `{q}`, filled from the row, from the column and from the steps before.
//! A column with `low` and `high` predicts a band of two models; one with `measured` names its own key of the
//! row; without either the table's rows are compared through their key `measured`, if they have it.

use super::work::{Worker, array, number, text};
use std::collections::BTreeMap;

/// What the places stand for.
type Places = BTreeMap<String, String>;

/// One column, and what was predicted in it so far, beside what was measured.
struct Column<'a> {
    table: &'a toml::Table,
    sides: Vec<&'a toml::Table>,
    pairs: Vec<(f64, Vec<f64>)>,
}

/// The table as Markdown.
pub fn print(worker: &Worker<'_>, table: &toml::Table) -> Result<String, String> {
    let none = toml::Table::new();
    let side = |column: &'_ toml::Table, key: &str| column.get(key).and_then(toml::Value::as_table).cloned();
    let all = array(table, "column");
    let sets: Vec<Vec<toml::Table>> =
        all.iter().map(|c| ["low", "high"].iter().filter_map(|key| side(c, key)).collect()).collect();
    let mut columns: Vec<Column<'_>> = all
        .iter()
        .zip(&sets)
        .map(|(column, sets)| {
            let sides = if sets.is_empty() { vec![&none] } else { sets.iter().collect() };
            Column { table: column, sides, pairs: Vec::new() }
        })
        .collect();
    let rows = array(table, "line");
    if columns.is_empty() || rows.is_empty() {
        return Err("a table without [[table.column]] or [[table.line]]".to_owned());
    }
    let shared = rows.iter().any(|r| r.contains_key("measured"));
    let mut out = head(table, &columns, shared)?;
    for row in rows {
        out.push_str(&format!("| {} |", text(row, "what")?));
        if shared {
            out.push_str(&format!(" {} |", digits(table, number(row, "measured")?)));
        }
        for column in &mut columns {
            out.push_str(&cell(worker, table, row, column, shared)?);
        }
        out.push('\n');
    }
    out.push_str(&foot(table, &columns, shared)?);
    Ok(out)
}

fn head(table: &toml::Table, columns: &[Column<'_>], shared: bool) -> Result<String, String> {
    let (mut names, mut rule) = (format!("{}\n\n| |", text(table, "caption")?), "|---|".to_owned());
    let mut add = |name: &str| {
        names.push_str(&format!(" {name} |"));
        rule.push_str("---|");
    };
    if shared {
        add("measured");
    }
    for column in columns {
        let name = text(column.table, "head")?;
        if column.table.contains_key("measured") {
            add(&format!("{name}, measured"));
            add("predicted");
        } else {
            add(name);
        }
    }
    Ok(format!("{names}\n{rule}\n"))
}

fn digits(table: &toml::Table, value: f64) -> String {
    let count = table.get("digits").and_then(toml::Value::as_integer).and_then(|n| usize::try_from(n).ok());
    format!("{value:.*}", count.unwrap_or(2))
}

/// One prediction, or a band of two, with where it lies against the measurement.
fn cell(
    worker: &Worker<'_>,
    table: &toml::Table,
    row: &toml::Table,
    column: &mut Column<'_>,
    shared: bool,
) -> Result<String, String> {
    let predicted: Vec<f64> =
        column.sides.iter().map(|side| predict(worker, table, &[row, column.table, side])).collect::<Result<_, _>>()?;
    let shown = predicted.iter().map(|p| digits(table, *p)).collect::<Vec<_>>().join(" to ");
    let own = column.table.get("measured").and_then(toml::Value::as_str);
    if own.is_none() && !shared {
        return Ok(format!(" {shown} |"));
    }
    let measured = number(row, own.unwrap_or("measured"))?;
    let first = if own.is_some() { format!(" {} |", digits(table, measured)) } else { String::new() };
    let (low, high) = predicted.iter().fold((f64::MAX, f64::MIN), |(l, h), p| (l.min(*p), h.max(*p)));
    let verdict = if predicted.len() == 1 {
        let percent = (100.0 * (low / measured - 1.0)).round();
        // No sign before a nought.
        if percent == 0.0 { "0 %".to_owned() } else { format!("{percent:+.0} %") }
    } else if high < measured {
        "below".to_owned()
    } else if low > measured {
        "above".to_owned()
    } else {
        "holds it".to_owned()
    };
    column.pairs.push((measured, predicted));
    Ok(format!("{first} {shown}, {verdict} |"))
}

/// How often the bands hold the measurement and, where `misses` asks, the root mean square of each side's misses.
fn foot(table: &toml::Table, columns: &[Column<'_>], shared: bool) -> Result<String, String> {
    if columns.iter().any(|c| c.pairs.is_empty() || c.sides.len() < 2) {
        return Ok(String::new());
    }
    let gap = if shared { " |" } else { "" };
    let (mut held, mut miss) = (String::new(), String::new());
    for column in columns {
        let within = |(m, p): &&(f64, Vec<f64>)| p.iter().any(|p| p <= m) && p.iter().any(|p| p >= m);
        held.push_str(&format!(" {} of {} |", column.pairs.iter().filter(within).count(), column.pairs.len()));
        let each = (0..column.sides.len()).map(|i| {
            let square = |(m, p): &(f64, Vec<f64>)| p.get(i).map_or(f64::NAN, |p| (p - m) * (p - m));
            digits(table, (column.pairs.iter().map(square).sum::<f64>() / column.pairs.len() as f64).sqrt())
        });
        miss.push_str(&format!(" {} |", each.collect::<Vec<_>>().join(" and ")));
    }
    Ok(format!(
        "| rows whose measurement the band holds |{gap}{held}\n| root mean square miss of its two ends |{gap}{miss}\n"
    ))
}

/// Works the steps, then the formula of the table.
fn predict(worker: &Worker<'_>, table: &toml::Table, from: &[&toml::Table]) -> Result<f64, String> {
    let mut places = Places::new();
    for (key, value) in from.iter().flat_map(|t| t.iter()) {
        if let Some(word) = value.as_str() {
            places.insert(key.clone(), word.to_owned());
        }
    }
    for step in array(table, "step") {
        let worked = work(worker, step, &places)?;
        places.insert(text(step, "name")?.to_owned(), worked.written);
    }
    let result = work(worker, table, &places)?.si;
    let rest = table.get("rest").and_then(toml::Value::as_bool).unwrap_or(false);
    Ok(number(table, "scale")? * if rest { 1.0 - result } else { result })
}

fn work(worker: &Worker<'_>, call: &toml::Table, places: &Places) -> Result<super::work::Worked, String> {
    let given = call.get("given").and_then(toml::Value::as_array).ok_or("a step or table without \"given\"")?;
    let filled: Vec<String> =
        given.iter().filter_map(toml::Value::as_str).map(|g| fill(g, places)).collect::<Result<_, _>>()?;
    worker.number(text(call, "formula")?, &filled.iter().map(String::as_str).collect::<Vec<_>>())
}

/// An argument with its places filled; what fills a place may hold one itself.
fn fill(argument: &str, places: &Places) -> Result<String, String> {
    let once = |text: String| places.iter().fold(text, |text, (name, word)| text.replace(&format!("{{{name}}}"), word));
    let full = once(once(argument.to_owned()));
    if full.contains(['{', '}']) { Err(format!("nothing stands for a place of \"{full}\"")) } else { Ok(full) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_are_filled_and_a_place_without_a_word_is_a_fault() {
        let word = |name: &str, word: &str| (name.to_owned(), word.to_owned());
        let places = Places::from([word("fast", "240 L/h"), word("q", "{fast}")]);
        assert_eq!(fill("q={q}", &places).unwrap(), "q=240 L/h");
        assert!(fill("a={a}", &places).is_err());
    }
}
