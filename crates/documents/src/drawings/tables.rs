//! Schedules of the set: nozzles, weights, and those of the section.

use super::scope;
use crate::render::text::Table;
use crate::section::place::Section;
use crate::section::schedules;
use stillrise_handbook::hydraulics::pipes::pipe_size;
use stillrise_units::catalog::{IN, KG, KPA, LB, LBF, KN, MM, PSF};
use stillrise_units::{System, Typed, print};

/// What the maker decides.
const MAKER: &str = "by maker";

/// A schedule under its heading.
pub type Titled = (String, Table);

/// A nominal size as the system of units writes it.
fn size(s: &Section, word: Option<&str>) -> String {
    let Some(word) = word.filter(|word| !word.is_empty()) else { return MAKER.to_owned() };
    match (pipe_size(word), s.system) {
        (Some(row), System::Si) => row.metric_word(),
        (Some(row), System::Us) => row.word.to_owned(),
        (None, _) => word.to_owned(),
    }
}

/// Nozzles, and where they are.
pub fn nozzles(s: &Section) -> Table {
    let unit = s.unit();
    let mut table = Table::new(["Mark", "Qty", "Size", "Service", "At", "Over floor"]);
    if s.datum(unit.outlet.crest.q).is_some() {
        table.header.push("EL".to_owned());
    }
    let known = &unit.particulars;
    let (inlet, outlet) = &known.nozzles;
    let (draw, drain) = &known.drains;
    let mut row = |mark: &str, qty: String, size: String, service: &str, at: &str, z: Option<_>| {
        let mut cells = vec![mark.to_owned(), qty, size, service.to_owned(), at.to_owned()];
        match z {
            Some(z) => {
                cells.push(s.write(z));
                cells.extend(s.datum(z));
            }
            None => cells.push("–".to_owned()),
        }
        table.row(cells);
    };
    let one = || "1".to_owned();
    row("N1", one(), size(s, Some(inlet)), "Inlet", "invert", Some(unit.inlet.invert.q));
    row("N2", one(), size(s, Some(outlet)), "Outlet", "invert", Some(unit.outlet.invert.q));
    row("N3", one(), size(s, draw.as_deref()), "Oil draw-off", "invert", Some(unit.retention.oil_draw.q));
    if s.hopper().is_some() {
        row("N4", one(), size(s, drain.as_deref()), "Sludge drain", "hopper floor", Some(unit.shape.bottom()));
    }
    if let Some(access) = &unit.access {
        let count = print::digits(access.count.q.si(), 2);
        row("M", count, s.write(access.opening.q), "Manway", "clear opening", Some(s.top()));
    }
    let vent = s.performance.and_then(|p| p.shop.as_ref()?.vent.as_ref()?.size);
    if let Some(vent) = vent {
        let word = match s.system {
            System::Us => vent.word.to_owned(),
            System::Si => vent.metric_word(),
        };
        row("V", "per room".to_owned(), format!("{word} least"), "Vent", "top", None);
    }
    table
}

/// What is to be known of all nozzles.
pub fn nozzle_note(s: &Section) -> String {
    match &s.unit().particulars.flanges {
        Some(flanges) => format!(
            "Nozzles: flanges {}; projection and place across the unit by the maker.",
            crate::render::text::plain(flanges)
        ),
        None => "Nozzles: rating, facing, projection and place across the unit by the maker.".to_owned(),
    }
}

/// What it weighs and how it is lifted; `None` where nothing of it was found.
pub fn weights(s: &Section) -> Option<Titled> {
    let shop = s.performance?.shop.as_ref()?;
    let found = shop.weights.as_ref()?;
    let say = |si: f64, (us, metric)| print::in_prose(si, s.system.pick((us, metric)));
    let mut table = Table::new(["Weight and load, one unit", "Value"]);
    let mut row = |name: &str, value: String| {
        table.row([name.to_owned(), value]);
    };
    if let Some(empty) = &found.empty {
        row("Empty", say(empty.q.si(), (&LB, &KG)));
    }
    if let Some(operating) = &found.operating {
        row("Operating, water to the crest", say(operating.q.si(), (&LB, &KG)));
    }
    if let Some(test) = &found.test {
        row("Full to its top, test", say(test.q.si(), (&LB, &KG)));
    }
    if let Some(bearing) = &found.bearing {
        row("Under its whole floor, test", say(bearing.q.si(), (&PSF, &KPA)));
    }
    if let Some(centre) = &found.centre {
        row("Centre of gravity, empty, from the inlet end", say(centre.q.si(), (&IN, &MM)));
    }
    if let Some(lifting) = &shop.lifting {
        row("Lifting points", print::digits(lifting.points.q.si(), 2));
        if let Some(pulls) = &lifting.pulls {
            row("Design pull of a lug", say(pulls.lug.q.si(), (&LBF, &KN)));
        }
    }
    (!table.rows.is_empty()).then(|| ("Weights and lifting".to_owned(), table))
}

/// Every schedule that does not stand on the general arrangement.
pub fn rest(s: &Section, carried: Vec<Titled>) -> Vec<Titled> {
    let mut all = carried;
    all.push(("Parts".to_owned(), schedules::parts(s)));
    all.extend(schedules::oils(s));
    all.extend(schedules::waters(s));
    // Loads stand on the sheet of the setting, where there is one.
    if s.unit().arrangement.is_built_in() {
        all.extend(weights(s));
    }
    all.push(("Scope, as proposed".to_owned(), scope::table(s)));
    all
}
