//! A range of many rows of all arrangements, to time a choice among them or a comparison of them all: those of the demo range,
//! several times over, and a worked job that picks from it.

use std::path::{Path, PathBuf};
use toml::{Table, Value};

/// Writes a range of so many rows and the enquiry into a folder of their own; the enquiry's file.
pub fn of(count: usize, root: &Path, scratch: &Path, job: &str) -> Result<PathBuf, String> {
    let scratch = &scratch.join(format!("rows-{count}"));
    std::fs::create_dir_all(scratch).map_err(|e| format!("{}: {e}", scratch.display()))?;
    let read = |path: PathBuf| -> Result<Table, String> {
        let text = std::fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
        text.parse().map_err(|e| format!("{}: {e}", path.display()))
    };
    let write = |name: &str, table: &Table| -> Result<PathBuf, String> {
        let text = toml::to_string(table).map_err(|e| format!("{name}: {e}"))?;
        let path = scratch.join(name);
        std::fs::write(&path, text).map_err(|e| format!("{}: {e}", path.display())).map(|()| path)
    };
    let mut range = read(root.join("ranges/demo.toml"))?;
    let rows = range.get("model").and_then(Value::as_array).cloned().unwrap_or_default();
    let many: Vec<Value> = rows.iter().cycle().take(count).enumerate().map(|(k, row)| named(row, k)).collect();
    if many.len() < count {
        return Err("the demo range holds no rows".to_owned());
    }
    range.insert("model".to_owned(), Value::Array(many));
    write("rows.toml", &range)?;
    let folder = root.join("enquiries").join(job);
    let mut enquiry = read(folder.join("enquiry.toml"))?;
    let mut unit = Table::new();
    unit.insert("from".to_owned(), Value::String("rows.toml".to_owned()));
    enquiry.insert("unit".to_owned(), Value::Table(unit));
    // What it names beside it comes along.
    for entry in std::fs::read_dir(&folder).map_err(|e| e.to_string())?.flatten() {
        if entry.path().extension().is_some_and(|ext| ext == "csv") {
            std::fs::copy(entry.path(), scratch.join(entry.file_name())).map_err(|e| e.to_string())?;
        }
    }
    write("enquiry.toml", &enquiry)
}

/// A row under a name of its own.
fn named(row: &Value, k: usize) -> Value {
    let mut row = row.clone();
    if let Some(table) = row.as_table_mut() {
        let name = table.get("model").and_then(Value::as_str).unwrap_or("row").to_owned();
        table.insert("model".to_owned(), Value::String(format!("{name}, {k}")));
    }
    row
}
