//! Schedules of the set: nozzles, weights, and those of the section.

use super::scope;
use crate::instruments;
use crate::render::text::Table;
use crate::section::place::Section;
use crate::section::schedules;
use stillrise_handbook::hydraulics::pipes::pipe_size;
use stillrise_units::catalog::{IN, KG, KN, KPA, LB, LBF, MM, PSF};
use stillrise_units::{Length, System, Typed, print};

/// What the maker decides.
pub const MAKER: &str = "by maker";

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

/// One nozzle, or several alike.
pub struct Nozzle {
    /// Its mark on the drawing.
    pub mark: &'static str,
    /// How many, in print.
    pub count: String,
    /// Its size; "by maker" where it is not stated.
    pub size: String,
    /// What for.
    pub service: &'static str,
    /// Which point of it the level is of.
    pub at: &'static str,
    /// That level over the floor; `None` where it follows from nothing.
    pub level: Option<Length>,
}

/// All nozzles of one unit.
pub fn all_nozzles(s: &Section) -> Vec<Nozzle> {
    let unit = s.unit();
    let known = &unit.particulars;
    let (inlet, outlet) = &known.nozzles;
    let (draw, drain) = &known.drains;
    let one =
        |mark, size, service, at, level| Nozzle { mark, count: "1".to_owned(), size, service, at, level: Some(level) };
    let mut all = vec![
        one("N1", size(s, Some(inlet)), "Inlet", "invert", unit.inlet.invert.q),
        one("N2", size(s, Some(outlet)), "Outlet", "invert", unit.outlet.invert.q),
        one("N3", size(s, draw.as_deref()), "Oil draw-off", "invert", unit.retention.oil_draw.q),
    ];
    // Each channel holds its oil apart.
    let channels = instruments::channels(s);
    if let Some(draw) = all.last_mut().filter(|_| channels > 1.0) {
        draw.count = print::digits(channels, 2);
    }
    if s.hopper().is_some() {
        let service = if s.is_sunk() { "Sludge suction, from above" } else { "Sludge drain" };
        all.push(one("N4", size(s, drain.as_deref()), service, "hopper floor", unit.shape.bottom()));
    }
    if let Some(access) = &unit.access {
        let count = print::digits(access.count.q.si(), 2);
        all.push(Nozzle { count, ..one("M", s.write(access.opening.q), "Manway", "clear opening", s.top()) });
    }
    let vent = s.performance.and_then(|p| p.shop.as_ref()?.vent.as_ref()?.size);
    let vents = u8::try_from(s.vents().len()).unwrap_or(u8::MAX);
    if vents > 0 {
        let size = vent.map_or_else(
            || MAKER.to_owned(),
            |vent| match s.system {
                System::Us => format!("{} least", vent.word),
                System::Si => format!("{} least", vent.metric_word()),
            },
        );
        let count = vents.to_string();
        all.push(Nozzle { mark: "V", count, size, service: "Vent", at: "top", level: None });
    }
    all
}

/// Nozzles, and where they are.
pub fn nozzles(s: &Section) -> Table {
    let mut table = Table::new(["Mark", "Qty", "Size", "Service", "At", "Over floor"]);
    if s.datum(s.unit().outlet.crest.q).is_some() {
        table.header.push("EL".to_owned());
    }
    for nozzle in all_nozzles(s) {
        let mut cells =
            vec![nozzle.mark.to_owned(), nozzle.count, nozzle.size, nozzle.service.to_owned(), nozzle.at.to_owned()];
        match nozzle.level {
            Some(z) => {
                cells.push(s.write(z));
                cells.extend(s.datum(z));
            }
            None => cells.push("–".to_owned()),
        }
        table.row(cells);
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
    let on_legs = s.performance.is_some_and(|p| crate::scope::has_supports(p, s.train));
    if let Some(leg) = found.leg.as_ref().filter(|_| on_legs) {
        row("On each of four legs that share it evenly, test", say(leg.q.si(), (&LB, &KG)));
    }
    if let Some(bearing) = &found.bearing {
        row("Under its whole floor, test", say(bearing.q.si(), (&PSF, &KPA)));
    }
    if let Some(centre) = &found.centre {
        row("Centre of gravity, empty, about, from the inlet end", say(centre.q.si(), (&IN, &MM)));
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
    all.push(super::fabrication::for_ordering(s));
    all.extend(schedules::oils(s));
    all.extend(schedules::waters(s));
    all.push(super::fabrication::for_shop(s));
    // Loads stand on the sheet of the setting, where there is one.
    if s.unit().arrangement.is_built_in() {
        all.extend(weights(s));
    }
    all.extend(scope::table(s).map(|table| ("Scope, as proposed".to_owned(), table)));
    all
}
