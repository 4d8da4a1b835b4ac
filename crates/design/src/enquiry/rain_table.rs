//! Rain tables: depth or intensity by duration (rows) and return period (columns), as CSV.
//!
//! The head line names the units once: `duration, 2 yr, 10 yr`; the second line may be a unit line
//! (`min, in, in` or `min, in/h, in/h`); or every cell carries its own unit. Depth and intensity
//! are told apart by their unit.

use stillrise_handbook::page::Series;
use stillrise_units::catalog::YR;
use stillrise_units::parse::{Reading, quantity, quantity_of};
use stillrise_units::{Dim, Fault};

/// A rain table.
#[derive(Debug, Clone, PartialEq)]
pub struct RainTable {
    /// Return period in years, and depth (m) by duration (s) for it.
    pub columns: Vec<(f64, Series)>,
}

impl RainTable {
    /// The column of a return period (years), if it is in the table.
    #[must_use]
    pub fn column(&self, years: f64) -> Option<&Series> {
        self.columns.iter().find(|(y, _)| (y - years).abs() < 1e-6 * years).map(|(_, s)| s)
    }
}

/// Reads a rain table.
///
/// # Errors
/// All faults: cells that cannot be read, durations that do not rise, depths that fall with
/// duration or return period, intensities that rise with duration.
pub fn read_table(bytes: &[u8]) -> Result<RainTable, Vec<Fault>> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .comment(Some(b'#'))
        .trim(csv::Trim::All)
        .from_reader(bytes);
    let mut faults = Vec::new();
    let mut rows: Vec<(u64, csv::StringRecord)> = Vec::new();
    for record in reader.records() {
        match record {
            Ok(record) => rows.push((record.position().map_or(0, csv::Position::line), record)),
            Err(error) => faults.push(Fault::new("rain table", error.to_string(), "save it as CSV in UTF-8")),
        }
    }
    let reading = Reading::default();
    let Some((_, head)) = rows.first().cloned() else {
        return Err(vec![Fault::new("rain table", "is empty", "write a head line and at least two durations")]);
    };
    if head.len() < 2 {
        faults.push(Fault::new(
            "rain table, head",
            "has no return period",
            "write for instance \"duration, 2 yr, 10 yr\"",
        ));
    }
    let mut years = Vec::new();
    for (i, cell) in head.iter().enumerate().skip(1) {
        let text = if cell.chars().all(|c| c.is_ascii_digit() || c == '.') {
            format!("{cell} yr")
        } else {
            cell.replace('-', " ")
        };
        match quantity_of(&text, Dim::Time, &reading) {
            Ok(w) if w.si() > 0.0 => years.push(YR.from_si(w.si())),
            _ => faults.push(Fault::new(
                format!("rain table, head, column {}", i + 1),
                format!("\"{cell}\" is not a return period"),
                "write for instance \"10 yr\"",
            )),
        }
    }
    let mut units: Vec<String> = vec![String::new(); head.len()];
    let mut first = 1;
    if let Some((_, second)) = rows.get(1)
        && second.iter().all(|c| !c.starts_with(|ch: char| ch.is_ascii_digit()))
    {
        units = second.iter().map(|c| format!(" {c}")).collect();
        units.resize(head.len(), String::new());
        first = 2;
    }
    let mut columns: Vec<(f64, Series)> = years.iter().map(|y| (*y, Series::default())).collect();
    for (line, row) in rows.iter().skip(first) {
        let place = |i: usize| format!("rain table, line {line}, column {}", i + 1);
        let duration = match quantity_of(&format!("{}{}", row.get(0).unwrap_or(""), units[0]), Dim::Time, &reading) {
            Ok(w) if w.si() > 0.0 => w.si(),
            Ok(_) => {
                faults.push(Fault::new(place(0), "a duration must be above zero", "state the duration"));
                continue;
            }
            Err(f) => {
                faults.push(f.at(&place(0)));
                continue;
            }
        };
        for (i, column) in columns.iter_mut().enumerate() {
            let Some(cell) = row.get(i + 1) else {
                faults.push(Fault::new(
                    place(i + 1),
                    "is missing",
                    "give every duration a value for every return period",
                ));
                continue;
            };
            let unit = units.get(i + 1).map_or("", String::as_str);
            match quantity(&format!("{cell}{unit}"), &reading) {
                Ok(w) if w.si() <= 0.0 => faults.push(Fault::new(
                    place(i + 1),
                    format!("{cell} is not above zero"),
                    "give the depth or intensity",
                )),
                Ok(w) if w.unit.dim == Dim::Length => column.1.0.push((duration, w.si())),
                Ok(w) if w.unit.dim == Dim::Velocity => column.1.0.push((duration, w.si() * duration)),
                Ok(w) => faults.push(Fault::new(
                    place(i + 1),
                    format!("\"{}\" is neither a depth nor an intensity", w.text),
                    "use in, mm, in/h or mm/h",
                )),
                Err(f) => faults.push(f.at(&place(i + 1))),
            }
        }
    }
    if faults.is_empty() {
        order(&columns, &mut faults);
    }
    if faults.is_empty() { Ok(RainTable { columns }) } else { Err(faults) }
}

/// What every table of rain keeps.
fn order(columns: &[(f64, Series)], faults: &mut Vec<Fault>) {
    for (years, series) in columns {
        let place = format!("rain table, {years} yr");
        if series.0.len() < 2 {
            faults.push(Fault::new(&place, "has fewer than two durations", "give at least two"));
        }
        for pair in series.0.windows(2) {
            let ((t0, d0), (t1, d1)) = (pair[0], pair[1]);
            let minutes = t1 / 60.0;
            if t1 <= t0 {
                faults.push(Fault::new(
                    &place,
                    format!("the duration {minutes} min does not rise"),
                    "sort the durations",
                ));
            } else if d1 < d0 * (1.0 - 1e-9) {
                faults.push(Fault::new(
                    &place,
                    format!("the depth at {minutes} min is smaller than before"),
                    "depth grows with duration; check depth against intensity",
                ));
            } else if d1 / t1 > d0 / t0 * (1.0 + 1e-9) {
                faults.push(Fault::new(
                    &place,
                    format!("the intensity at {minutes} min is larger than before"),
                    "intensity falls with duration; check depth against intensity",
                ));
            }
        }
    }
    for pair in columns.windows(2) {
        let falls = pair[0].1.0.iter().zip(&pair[1].1.0).any(|(a, b)| b.1 < a.1);
        if pair[1].0 > pair[0].0 && falls {
            faults.push(Fault::new(
                "rain table",
                format!("{} yr is smaller than {} yr", pair[1].0, pair[0].0),
                "rarer rain is heavier; check the columns",
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn depth_and_intensity_tables_are_the_same_table() {
        let depth = read_table(b"duration,2 yr,10 yr\nmin,in,in\n5,0.40,0.55\n10,0.60,0.85\n");
        let intensity = read_table(b"duration,2-yr,10\n5 min,4.8 in/h,6.6 in/h\n10 min,3.6 in/h,5.1 in/h\n");
        let (depth, intensity) =
            (depth.unwrap_or_else(|f| panic!("{f:?}")), intensity.unwrap_or_else(|f| panic!("{f:?}")));
        for (a, b) in depth.columns.iter().zip(&intensity.columns) {
            for (x, y) in a.1.0.iter().zip(&b.1.0) {
                assert!((x.1 - y.1).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn all_faults_of_a_table_come_at_once() {
        let faults =
            read_table(b"duration,2 yr,10 yr\n5 min,0.40 in,x\n-,0.60 in,0.85 gpm\n").err().unwrap_or_default();
        assert!(faults.len() >= 2, "{faults:?}");
        let wrong = read_table(b"duration,2 yr\n10 min,0.6 in\n5 min,0.4 in\n").err().unwrap_or_default();
        assert!(wrong[0].to_string().contains("sort"), "{wrong:?}");
    }
}
