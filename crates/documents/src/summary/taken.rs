//! Why a unit is taken, in words: the same in summary, report, drawing and mail.

use stillrise_design::enquiry::Enquiry;
use stillrise_search::Settled;
use stillrise_search::arrangement::{Wanted, Why};
use stillrise_search::because::Because;
use stillrise_search::pick::{Condition, MOST_IN_PARALLEL, Pick, not_more};
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Typed, print};

/// Why a unit is taken.
#[must_use]
pub fn because(settled: &Settled, pick: &Pick) -> String {
    match &pick.because {
        Because::Stated => "its dimensions are stated in the enquiry".to_owned(),
        Because::Named => "the enquiry asks for it".to_owned(),
        Because::Smallest { wanted, below: None } => format!(
            "{}it is the smallest of the range, and passes the rules by which a unit is chosen{}",
            looked_for(wanted, &settled.job.enquiry),
            not_all(settled)
        ),
        Because::Smallest { wanted, below: Some(barrier) } => format!(
            "{}it is the smallest of the range that passes the rules by which a unit is chosen{}; the next smaller one fails this: {}",
            looked_for(wanted, &settled.job.enquiry),
            not_all(settled),
            barrier.title().to_lowercase()
        ),
        Because::MadeAsAsked => "made to measure from the basis".to_owned(),
        Because::MadeAsNoneWillDo => {
            format!("no unit of the range will do, alone or up to {MOST_IN_PARALLEL} in parallel")
        }
        Because::OnCondition { asked_for } => match &pick.condition {
            Some(Condition::Ahead(rule)) => format!(
                "the smallest that will do once something ahead of it answers this: {}",
                rule.title.to_lowercase()
            ),
            Some(Condition::Limit) | None => format!(
                "of those that take the water and leave the fewest limits open the smallest; {} shown to keep them all",
                not_more(*asked_for)
            ),
        },
        Because::Nearest => String::new(),
    }
}

/// That other rules fail all the same, where some do.
fn not_all(settled: &Settled) -> &'static str {
    if settled.fails() { " (other rules fail and are to be settled)" } else { "" }
}

/// What is said ahead of why a unit was taken; nothing where nobody would ask.
fn looked_for(wanted: &Wanted, enquiry: &Enquiry) -> String {
    let kind = wanted.arrangement.meaning();
    match wanted.why {
        Why::Usual => String::new(),
        Why::Named => format!("the enquiry asks for {kind}; "),
        Why::MustLieInGround => format!("it must lie in the ground, hence {kind}; "),
        Why::PumpBehind => {
            format!("a tank would need a pump ahead of it, which breaks the oil, hence {kind}, with pumps behind it; ")
        }
        Why::TankTooLow(below) => {
            let below = print::in_prose(below.si(), enquiry.system().pick((&FT, &M)));
            format!(
                "even the smallest tank would stand {below} below the ground for the incoming pipe to reach it: hence {kind}; "
            )
        }
    }
}
