//! Formulas worked by the program itself, each set of arguments once.

use crate::run;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::path::Path;
use stillrise_handbook::page::{Kind, Page};
use stillrise_handbook::pages;

/// A result of `stillrise work`.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    /// The number in SI.
    pub si: f64,
    /// The number with its SI unit, as an argument of another formula takes it.
    pub written: String,
}

/// The program, and what it has worked already.
pub struct Worker<'a> {
    program: &'a Path,
    root: &'a Path,
    known: RefCell<BTreeMap<String, Worked>>,
}

impl<'a> Worker<'a> {
    /// None worked yet.
    pub fn new(program: &'a Path, root: &'a Path) -> Self {
        Self { program, root, known: RefCell::default() }
    }

    /// Works a formula whose result is a number.
    pub fn number(&self, formula: &str, given: &[&str]) -> Result<Worked, String> {
        let mut command = run::plain(self.program, self.root);
        command.args(["work", formula]).args(given).arg("--json");
        let asked = run::words(&command);
        if let Some(known) = self.known.borrow().get(&asked) {
            return Ok(known.clone());
        }
        let done = run::capture(&mut command)?;
        if done.code != Some(0) {
            return Err(format!("`{asked}` ended with {:?}\n{}", done.code, done.stderr));
        }
        let answer: serde_json::Value = serde_json::from_str(&done.stdout).map_err(|e| e.to_string())?;
        let si = answer["result"]["si"].as_f64().ok_or_else(|| format!("`{asked}` gave no number"))?;
        let page = pages().find(|p| p.id == formula).ok_or_else(|| format!("no formula `{formula}`"))?;
        let worked = Worked { si, written: written(page, si) };
        self.known.borrow_mut().insert(asked, worked.clone());
        Ok(worked)
    }
}

fn written(page: &Page, si: f64) -> String {
    let unit = if let Kind::Quantity(dim) = page.out.kind { dim.coherent().symbol } else { "" };
    format!("{si:e} {unit}").trim().to_owned()
}

/// A text of a case.
pub fn text<'a>(table: &'a toml::Table, key: &str) -> Result<&'a str, String> {
    table.get(key).and_then(toml::Value::as_str).ok_or_else(|| format!("no text \"{key}\" in {table}"))
}

/// A number of a case.
pub fn number(table: &toml::Table, key: &str) -> Result<f64, String> {
    table.get(key).and_then(toml::Value::as_float).ok_or_else(|| format!("no number \"{key}\" in {table}"))
}

/// The tables of an array; none when there is no such array.
pub fn array<'a>(table: &'a toml::Table, key: &str) -> Vec<&'a toml::Table> {
    let all = table.get(key).and_then(toml::Value::as_array);
    all.map(|a| a.iter().filter_map(toml::Value::as_table).collect()).unwrap_or_default()
}
