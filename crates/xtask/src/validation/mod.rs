//! `docs/validation.md`: what was measured elsewhere beside what the handbook's formulas give.
//!
//! Each folder of `validation/` holds a README and a `case.toml` with what was measured and the arguments
//! of the prediction. The numbers are worked by `stillrise work`, never written down by hand.

use crate::run;
use std::fs;
use std::path::{Path, PathBuf};

const HEAD: &str = "\
# Validation

Measured results of others, beside what the formulas of the handbook give under stated assumptions. Nothing was
adjusted to them. Few measurements in the open say all that a prediction needs, droplet size least often: most
cases bracket and do not test, and each says so. Written by `cargo xtask bless`; the cases stand in `validation/`.
";

/// The page as it should be.
pub fn page(program: &Path, root: &Path) -> Result<String, String> {
    let mut out = HEAD.to_owned();
    for folder in folders(root)? {
        let read = |name: &str| {
            let path = folder.join(name);
            fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))
        };
        let case: toml::Table = read("case.toml")?.parse().map_err(|e| format!("{}: {e}", folder.display()))?;
        out.push('\n');
        // The case's own heading becomes one of the page.
        out.push_str(&read("README.md")?.replacen("# ", "## ", 1));
        out.push_str(&format!("\nSource: {} ({}).\n\n", text(&case, "source")?, text(&case, "seen")?));
        out.push_str("| | measured | predicted | |\n|---|---|---|---|\n");
        let rows = case.get("row").and_then(toml::Value::as_array).ok_or("a case without [[row]]")?;
        for row in rows.iter().filter_map(toml::Value::as_table) {
            out.push_str(&line(program, root, row)?);
        }
    }
    Ok(out)
}

/// Where the page stands.
pub fn place(root: &Path) -> PathBuf {
    root.join("docs/validation.md")
}

fn folders(root: &Path) -> Result<Vec<PathBuf>, String> {
    let top = root.join("validation");
    let entries = fs::read_dir(&top).map_err(|e| format!("{}: {e}", top.display()))?;
    let mut all: Vec<PathBuf> = entries.flatten().map(|e| e.path()).filter(|p| p.is_dir()).collect();
    all.sort();
    if all.is_empty() { Err("validation/ holds no case".to_owned()) } else { Ok(all) }
}

fn text<'a>(table: &'a toml::Table, key: &str) -> Result<&'a str, String> {
    table.get(key).and_then(toml::Value::as_str).ok_or_else(|| format!("a case without \"{key}\""))
}

fn number(table: &toml::Table, key: &str) -> Result<f64, String> {
    table.get(key).and_then(toml::Value::as_float).ok_or_else(|| format!("a row without the number \"{key}\""))
}

/// One row: what, measured, predicted, and whether the prediction lies in the measured range.
fn line(program: &Path, root: &Path, row: &toml::Table) -> Result<String, String> {
    let given = row.get("given").and_then(toml::Value::as_array).ok_or("a row without \"given\"")?;
    let mut command = run::plain(program, root);
    command.args(["work", text(row, "formula")?]);
    command.args(given.iter().filter_map(toml::Value::as_str));
    let done = run::capture(command.arg("--json"))?;
    if done.code != Some(0) {
        return Err(format!("`{}` ended with {:?}\n{}", run::words(&command), done.code, done.stderr));
    }
    let worked: serde_json::Value = serde_json::from_str(&done.stdout).map_err(|e| e.to_string())?;
    let result = worked["result"]["si"].as_f64().ok_or("`work` gave no number")?;
    let predicted = result * number(row, "scale")?;
    let (low, high) = (number(row, "low")?, number(row, "high")?);
    let verdict = if predicted < low {
        "below"
    } else if predicted > high {
        "above"
    } else {
        "within"
    };
    // Two decimals serve per cents and mg/L alike.
    let unit = text(row, "unit")?;
    Ok(format!("| {} | {} | {predicted:.2} {unit} | {verdict} |\n", text(row, "what")?, text(row, "measured")?))
}
