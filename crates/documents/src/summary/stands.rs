//! How the unit stands, and the room that it needs: the same words in summary, report and mail.

use super::{capital, section};
use crate::render::text::hang;
use stillrise_checks::ask::outfall;
use stillrise_design::performance::installation::Stands;
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, KG, LB, M};
use stillrise_units::{Length, Typed, print};

pub(super) fn stands(out: &mut String, settled: &Settled, width: usize) {
    let lines = [how(settled), outlet(settled), room(settled), lift(settled)];
    if lines.iter().all(Option::is_none) {
        return;
    }
    out.push_str(&section("How it stands"));
    for line in lines.into_iter().flatten() {
        out.push_str(&hang(&format!("{}{}", capital(&line), if line.ends_with('?') { "" } else { "." }), width, 0, 2));
    }
}

fn show(settled: &Settled, length: Length) -> String {
    print::in_prose(length.si(), settled.job.enquiry.system().pick((&FT, &M)))
}

/// How it stands and why: "stands in a pit, its lowest point 4 ft below the ground: ...".
pub(crate) fn how(settled: &Settled) -> Option<String> {
    let installation = &settled.job.design.performance.as_ref()?.site.installation;
    let because = installation.because.word();
    let far = |negative: bool| {
        let over = installation.over_ground.map_or(Length::from_si(0.0), |v| v.q);
        show(settled, if negative { -over } else { over })
    };
    let below = || format!("its lowest point {} below the ground", far(true));
    Some(match installation.stands.q {
        Stands::Unknown => format!("how it stands is open: {because}"),
        Stands::OnGround => format!("stands on the ground: {because}"),
        Stands::OnPlinth => format!("stands on a plinth, its lowest point {} over the ground: {because}", far(false)),
        Stands::InPit => {
            format!("stands in a pit, {}: {because}; behind a lift pump it would stand on the ground", below())
        }
        Stands::Buried => {
            format!("would be buried, {}: {because}; behind a lift pump it would stand on the ground", below())
        }
        Stands::LiftPump => format!("needs a lift pump ahead of it: {because}"),
    })
}

/// The question for the outfall, with the highest that would do.
pub(crate) fn outlet(settled: &Settled) -> Option<String> {
    settled.job.design.performance.as_ref()?.site.installation.highest_outfall?;
    Some(outfall(&settled.subject()).question.into_owned())
}

/// The room in plan and overhead.
pub(crate) fn room(settled: &Settled) -> Option<String> {
    let fit = &settled.job.design.performance.as_ref()?.fit;
    let way = fit.way();
    let how = fit.choice.map_or_else(String::new, |choice| format!(" {}", choice.q.word()));
    Some(format!(
        "needs{how} {} x {} in plan with a walkway of {}, and a clear height of {} over the ground",
        show(settled, way.length.q),
        show(settled, way.width.q),
        show(settled, fit.access.q),
        show(settled, fit.headroom.q)
    ))
}

/// The heaviest lift.
fn lift(settled: &Settled) -> Option<String> {
    let particulars = &settled.job.design.train.as_ref()?.unit.particulars;
    let weight = particulars.module_weight.filter(|_| particulars.lifts_out != Some(false))?;
    let shown = print::in_prose(weight.q.si(), settled.job.enquiry.system().pick((&LB, &KG)));
    Some(format!("heaviest module of the pack to lift, wet and fouled: {shown}"))
}
