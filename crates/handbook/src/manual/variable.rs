//! What an argument or a result is, in words for a table.

use crate::page::{Group, Kind, Page, Symbol};
use stillrise_units::{System, Unit, print};

/// An argument, a field of one, or a result, as a row of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Variable {
    /// Its name as it is typed; a field has that of its argument or group ahead of it, and a point.
    pub name: String,
    /// Its symbol; a series has one for each column, parted by `|`.
    pub math: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// What it takes: units, words to choose from, or the form of a list.
    pub takes: String,
    /// (US, SI) unit in print; of a series that of the first column.
    pub units: Option<(&'static Unit, &'static Unit)>,
    /// Words to choose from, with their meanings.
    pub words: &'static [(&'static str, &'static str)],
    /// Where it is trusted, in the SI print unit; see [`span`].
    pub range: Option<(f64, f64)>,
    /// Where the formula has an answer at all, in the SI print unit.
    pub domain: Option<(f64, f64)>,
    /// How many arguments or groups it stands within.
    pub depth: usize,
}

/// The arguments of a page in order, each followed by the fields that go together under it.
#[must_use]
pub fn variables(page: &Page) -> Vec<Variable> {
    let mut rows = Vec::new();
    page.args.iter().for_each(|symbol| add(&mut rows, symbol, "", 0));
    rows
}

/// The result of a page.
#[must_use]
pub fn result(page: &Page) -> Variable {
    row(&page.out, "", 0)
}

/// Ends of a range in the unit of a system, the unit at the end: `"1 to 150 µm"`.
#[must_use]
pub fn span(ends: (f64, f64), units: (&'static Unit, &'static Unit), system: System) -> String {
    let unit = system.pick(units);
    let shown = |value: f64| print::digits(print::or_nothing(unit.from_si(units.1.to_si(value))), 4);
    format!("{} to {} {}", shown(ends.0), shown(ends.1), unit.symbol).trim_end().to_owned()
}

fn add(rows: &mut Vec<Variable>, symbol: &'static Symbol, under: &str, depth: usize) {
    rows.push(row(symbol, under, depth));
    let mut fields = |group: &'static Group, under: &str| {
        group.fields.iter().for_each(|field| add(rows, field, &format!("{under}."), depth + 1));
    };
    match symbol.kind {
        Kind::Group(group) => fields(group, symbol.name),
        Kind::Groups(kinds) => kinds.iter().for_each(|group| fields(group, group.word)),
        Kind::Quantity(_) | Kind::Choice(_) | Kind::Series => {}
    }
}

fn row(symbol: &Symbol, under: &str, depth: usize) -> Variable {
    Variable {
        name: format!("{under}{}", symbol.name),
        math: symbol.math,
        meaning: symbol.meaning,
        takes: takes(symbol),
        units: symbol.units,
        words: if let Kind::Choice(words) = symbol.kind { words } else { &[] },
        range: symbol.range,
        domain: symbol.domain,
        depth,
    }
}

fn takes(symbol: &Symbol) -> String {
    match (symbol.kind, symbol.units) {
        (Kind::Choice(words), _) => words.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(" | "),
        (Kind::Series, Some((us, _))) => {
            format!("[{}: {}; ..]", us.symbol, symbol.second.map_or("", |(unit, _)| unit.symbol))
        }
        (Kind::Group(_), _) => "(name=value, ..)".to_owned(),
        (Kind::Groups(kinds), _) => {
            let words: Vec<String> = kinds.iter().map(|group| format!("{}(..)", group.word)).collect();
            format!("[one; ..] of {}", words.join(" | "))
        }
        (_, Some((us, si))) if us == si => us.symbol.to_owned(),
        (_, Some((us, si))) => format!("{}, {}", us.symbol, si.symbol),
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::separation::{remaining_oil, stokes_rise};
    use stillrise_units::catalog::{DEG_C, DEG_F};

    #[test]
    fn ranges_are_told_in_either_system() {
        // 32 °F is 0 °C and 104 °F is 40 °C, by definition.
        assert_eq!(span((0.0, 40.0), (&DEG_F, &DEG_C), System::Us), "32 to 104 °F");
        assert_eq!(span((0.0, 40.0), (&DEG_F, &DEG_C), System::Si), "0 to 40 °C");
    }

    #[test]
    fn fields_follow_what_they_belong_to() {
        let rows = variables(&remaining_oil::PAGE);
        let names: Vec<&str> = rows.iter().map(|v| v.name.as_str()).collect();
        let at = |name: &str| names.iter().position(|n| *n == name);
        assert!(at("droplets") < at("droplets.law") && at("droplets.law") < at("from"), "{names:?}");
        assert!(at("stages") < at("tank.v_0") && at("tank.v_0").is_some() && at("plates.v_0").is_some(), "{names:?}");
        assert!(rows.iter().all(|v| (v.depth > 0) == v.name.contains('.')), "{names:?}");
        let law = rows.iter().find(|v| v.name == "droplets.law");
        assert!(law.is_some_and(|v| v.words.len() > 1 && v.takes.contains(v.words[0].0)));
        let d = variables(&stokes_rise::PAGE).remove(0);
        assert_eq!((d.name.as_str(), d.takes.as_str(), d.range, d.depth), ("d", "µm", Some((1.0, 150.0)), 0));
    }
}
