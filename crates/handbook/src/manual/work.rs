//! One formula worked with somebody's arguments.

use crate::equation::{Printed, Style, printed};
use crate::page::{Arg, Page, Symbol};
use crate::{page, pages, read};
use stillrise_units::{Fault, System, nearest, print};

/// A formula with arguments and what it gave.
#[derive(Debug, Clone)]
pub struct Worked {
    /// The page.
    pub page: &'static Page,
    /// The arguments in order.
    pub values: Vec<Arg>,
    /// What it gave.
    pub result: Arg,
}

/// The page of this id.
///
/// # Errors
/// That there is none, with the nearest one.
pub fn named(id: &str) -> Result<&'static Page, Fault> {
    page(id).ok_or_else(|| {
        let remedy = nearest(id, pages().map(|p| p.id))
            .map_or_else(|| "see `stillrise work --list`".to_owned(), |near| format!("did you mean {near}?"));
        Fault::new(id, "is not a formula of the handbook", remedy)
    })
}

/// Works a page with arguments as a person writes them, `d=60 um`.
///
/// # Errors
/// Every fault of the arguments, or where the formula has no answer.
pub fn work(page: &'static Page, given: &[&str]) -> Result<Worked, Vec<Fault>> {
    let values = read::arguments(page, given)
        .map_err(|faults| faults.into_iter().map(|fault| fault.at(page.id)).collect::<Vec<_>>())?;
    match (page.call)(&values) {
        Ok(result) => Ok(Worked { page, values, result }),
        Err(outside) => {
            let place = format!("{}: {}", page.id, outside.argument);
            Err(vec![Fault::new(place, outside.reason, "give a value inside the domain")])
        }
    }
}

impl Worked {
    /// The lines of the equation, the result's last, each with the unit of its value. A line on the way has a unit of
    /// its own that the code does not name, and the result's would be false there: it has none.
    #[must_use]
    pub fn lines(&self, style: Style) -> Vec<(Printed, &'static str)> {
        let unit = self.page.working_unit(&self.page.out).map_or("", |u| u.symbol);
        let lines = printed(self.page, &self.values, &self.result, style);
        let last = lines.len().saturating_sub(1);
        lines.into_iter().enumerate().map(|(k, line)| (line, if k == last { unit } else { "" })).collect()
    }
    /// The arguments as they were read, with their numbers in US and SI units.
    pub fn given(&self) -> impl Iterator<Item = (&'static Symbol, String)> {
        self.page.args.iter().zip(&self.values).map(|(symbol, value)| (symbol, shown(symbol, value)))
    }
    /// The result in US and SI units.
    #[must_use]
    pub fn result_shown(&self) -> String {
        shown(&self.page.out, &self.result)
    }
    /// What a reader must know because an argument lies outside the trusted range.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        self.page.notes(&self.values, System::Si)
    }
}

/// A value in US and SI print units.
#[must_use]
pub fn shown(symbol: &Symbol, value: &Arg) -> String {
    match (value, symbol.units) {
        (Arg::Number(si), Some((us, metric))) if us == metric => print::with_unit(*si, us),
        (Arg::Number(si), Some((us, metric))) => {
            format!("{} = {}", print::with_unit(*si, us), print::with_unit(*si, metric))
        }
        (Arg::Number(si), None) => print::digits(*si, 6),
        (Arg::Choice(word), _) => (*word).to_owned(),
        (Arg::Series(pairs), _) if pairs.is_empty() => "none".to_owned(),
        (Arg::Series(pairs), _) => pairs
            .iter()
            .map(|(x, y)| format!("{}: {}", print::digits(*x, 5), print::digits(*y, 5)))
            .collect::<Vec<_>>()
            .join("; "),
        (Arg::Group(group, fields), _) => {
            let each =
                group.fields.iter().zip(fields).map(|(field, arg)| format!("{} {}", field.name, shown(field, arg)));
            format!("{}({})", group.word, each.collect::<Vec<_>>().join(", "))
        }
        (Arg::Groups(groups), _) => groups.iter().map(|group| shown(symbol, group)).collect::<Vec<_>>().join("; "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::separation::stokes_rise;

    /// The published example of the page: 0.000242 m/s, which is 0.242 mm/s.
    #[test]
    fn a_formula_is_worked_from_what_somebody_typed() {
        let given = ["d=60 um", "rho_w=1000 kg/m3", "rho_o=830 kg/m3", "mu=1.38 mPa s"];
        let worked = work(&stokes_rise::PAGE, &given).unwrap();
        assert!(worked.result_shown().contains("0.24") && worked.result_shown().contains("mm/s"), "{worked:?}");
        let lines = worked.lines(Style::Plain);
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].1, "m/s");
        assert_eq!(lines[0].0.numbers, "9.80665·(1000 - 830)·6e-5·6e-5/(18·0.00138)");
        assert_eq!(worked.given().map(|(s, _)| s.name).collect::<Vec<_>>(), ["d", "rho_w", "rho_o", "mu"]);
        assert!(worked.notes().is_empty());
    }

    #[test]
    fn faults_come_at_once_and_name_their_page() {
        let faults = work(&stokes_rise::PAGE, &["d=60 gpm", "rho=1 kg/m3"]).unwrap_err();
        assert!(faults.len() >= 4, "{faults:?}");
        assert!(faults.iter().all(|f| f.to_string().starts_with("stokes-rise")), "{faults:?}");
        let outside =
            work(&stokes_rise::PAGE, &["d=1 m", "rho_w=1000 kg/m3", "rho_o=830 kg/m3", "mu=1 cP"]).unwrap_err();
        assert!(outside[0].to_string().starts_with("stokes-rise: d"), "{outside:?}");
        assert!(named("stokes-ris").is_err_and(|fault| fault.to_string().contains("stokes-rise")));
    }
}
