//! When to pump out; steps of start-up, test, cleaning and measuring; cautions.

use crate::manual::table::{Row, Table};
use crate::vessel::cautions::CAUTIONS;
use crate::vessel::testing::{ACCEPTANCE, CLEANING, MEASURING, START_UP, Step};
use crate::vessel::triggers::{Amount, Reach, TRIGGERS};
use stillrise_units::catalog::PERCENT;
use stillrise_units::print;

pub(super) fn tables() -> Vec<Table> {
    vec![
        triggers(),
        steps("start-up", "Start-up", "Putting the unit into service, in order.", START_UP),
        steps("acceptance", "Acceptance test", "The test in service, in order.", ACCEPTANCE),
        steps("cleaning", "Cleaning", "Emptying and cleaning, in order.", CLEANING),
        steps("measuring", "Measuring", "Measuring what has collected.", MEASURING),
        cautions(),
    ]
}

fn triggers() -> Table {
    let about = "Published rules contradict each other by a factor of ten. None is the rule: a county's or city's binds \
        there; elsewhere the most stringent of the general ones is the default.";
    let columns = [("oil", None), ("sludge", None), ("where it binds", None), ("note", None)];
    Table::new("triggers", "When to pump out", about, &columns).with(TRIGGERS.iter().map(|t| {
        let reach = match t.reach {
            Reach::General => "anywhere".to_owned(),
            Reach::Local(place) => place.to_owned(),
            Reach::OtherTrade => "written for another kind of trap".to_owned(),
        };
        let row = Row::new(t.word, t.title).text(amount(t.oil)).text(amount(t.sludge));
        row.text(reach).text(t.note).from(t.source)
    }))
}

fn amount(amount: Amount) -> String {
    let share = |share: f64, of: &str| format!("{} of {of}", print::with_unit(share, &PERCENT));
    match amount {
        Amount::Any => "any that is seen".to_owned(),
        Amount::Depth(depth, unit) => print::with_unit(unit.to_si(depth), unit),
        Amount::ShareOfStore(s) => share(s, "the store meant for it"),
        Amount::ShareOfSeparator(s) => share(s, "the separator's volume"),
        Amount::ShareOfDepthTogether(s) => share(s, "the liquid depth, oil and sludge together"),
        Amount::NotStated => "not stated".to_owned(),
    }
}

fn steps(id: &'static str, title: &'static str, about: &'static str, steps: &'static [Step]) -> Table {
    let rows = steps.iter().map(|s| Row::new(s.word, s.word).text(s.text).from(s.source));
    Table::new(id, title, about, &[("what to do", None)]).with(rows)
}

fn cautions() -> Table {
    let about = "What documents carry where it could be acted on.";
    let rows = CAUTIONS.iter().map(|c| {
        let row = Row::new(c.word, c.title).text(c.text);
        c.source.into_iter().fold(row, Row::from)
    });
    Table::new("cautions", "Cautions", about, &[("caution", None)]).with(rows)
}
