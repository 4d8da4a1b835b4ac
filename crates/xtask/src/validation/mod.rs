//! `docs/validation.md`: what was measured elsewhere beside what the handbook's formulas give.
//!
//! Each folder of `validation/` holds a README and a `case.toml` with what was measured and the arguments
//! of the prediction: rows of one number each (`[[row]]`), or a table of several predictions a row (`[[table]]`).
//! The numbers are worked by `stillrise work`, never written down by hand.

mod table;
mod work;

use std::fs;
use std::path::{Path, PathBuf};
use work::{Worker, array, number, text};

const HEAD: &str = "\
# Validation

Measured results of others, beside what the formulas of the handbook give under stated assumptions. No formula was
adjusted to them; a choice that was made after the measurements were seen is named as such. Few measurements in the
open say all that a prediction needs, droplet size least often: most cases bracket and do not test, and each says so.
Each is a validation, theory against measurement, or a verification, one reckoning against another. Written by
`cargo xtask bless`; the cases stand in `validation/`.
";

/// The page as it should be.
pub fn page(program: &Path, root: &Path) -> Result<String, String> {
    let worker = Worker::new(program, root);
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
        out.push_str(&body(&worker, &case).map_err(|e| format!("{}: {e}", folder.display()))?);
    }
    Ok(out)
}

/// Kind, source and all numbers of one case.
fn body(worker: &Worker<'_>, case: &toml::Table) -> Result<String, String> {
    let kind = text(case, "kind")?;
    let name = match kind {
        "validation" => "Validation",
        "verification" => "Verification",
        other => return Err(format!("kind is \"{other}\", neither \"validation\" nor \"verification\"")),
    };
    let mut out = format!("\n{name}. Source: {} ({}).\n\n", text(case, "source")?, text(case, "seen")?);
    let (rows, tables) = (array(case, "row"), array(case, "table"));
    if rows.is_empty() && tables.is_empty() {
        return Err("a case without [[row]] and [[table]]".to_owned());
    }
    if !rows.is_empty() {
        out.push_str("| | measured | predicted | |\n|---|---|---|---|\n");
    }
    for row in rows {
        out.push_str(&line(worker, row)?);
    }
    for (i, one) in tables.iter().enumerate() {
        out.push_str(if i == 0 { "" } else { "\n" });
        out.push_str(&table::print(worker, one)?);
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

/// One row: what, measured, predicted, and whether the prediction lies in the measured range.
fn line(worker: &Worker<'_>, row: &toml::Table) -> Result<String, String> {
    let given = row.get("given").and_then(toml::Value::as_array).ok_or("a row without \"given\"")?;
    let given: Vec<&str> = given.iter().filter_map(toml::Value::as_str).collect();
    let predicted = worker.number(text(row, "formula")?, &given)?.si * number(row, "scale")?;
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
