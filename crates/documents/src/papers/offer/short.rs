//! The five answers in short, for whoever has a minute: what is bought, what it needs, what it will do, what is not in it, what must be
//! answered. The sections below say the same at length.

use super::{Condition, answers, condition, excluded, leaves_at_most};
use crate::reply::{self, Of};
use crate::report::sentence;
use crate::summary::{self, lower, stands};
use serde_json::{Value, json};
use stillrise_checks::Grade;
use stillrise_checks::ask::oil_is_named;
use stillrise_checks::rules::no_measured_results;
use stillrise_design::basis::cases::largest;
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_design::performance::heard::By;
use stillrise_design::performance::installation::Stands;
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::train::Train;
use stillrise_design::triage::{About, Line, Weight};
use stillrise_search::Settled;
use stillrise_search::standing::Asks;
use stillrise_units::catalog::{DEG_C, DEG_F, GAL, M3};
use stillrise_units::{Typed, print};

/// The block: each question with its answers, a paragraph each.
pub(super) fn block(settled: &Settled) -> Value {
    let rows = [
        ("What you buy", bought(settled)),
        ("What it needs of you", needs(settled)),
        ("What it will do", does(settled)),
        (
            "What is not in it",
            if settled.job.enquiry.unit_stands() { Vec::new() } else { excluded::paragraphs(settled) },
        ),
        ("What you must answer", asked(settled)),
    ];
    let rows = rows.into_iter().filter(|(_, lines)| !lines.is_empty()).map(|(question, lines)| {
        let lines: Vec<String> = lines.iter().map(|line| crate::report::blocks::set(line)).collect();
        json!({ "q": question, "lines": lines })
    });
    json!({ "t": "answers", "title": "In short", "rows": rows.collect::<Vec<Value>>() })
}

/// What the unit is: "one oil-water separator, Demo 180: a rectangular tank with plates, above the ground, for up to 162 gpm"; `about`
/// stands ahead of its name.
fn unit(settled: &Settled, train: &Train, about: &str) -> String {
    let (_, facts) = reply::offered(settled, train);
    let name = facts.iter().find(|(of, _)| *of == Of::Name).map(|(_, name)| name.as_str()).unwrap_or_default();
    let (what, each) =
        if train.count.q.si() > 1.0 { ("oil-water separators", ", each") } else { ("one oil-water separator", "") };
    let basis = settled.job.design.basis.as_ref();
    let show = |si: f64| print::in_prose(si, settled.job.enquiry.system().pick(FLOW_UNITS));
    let flow =
        basis.and_then(|basis| Some((basis, largest(&basis.cases)?))).map_or_else(String::new, |(basis, case)| {
            let cap = basis.feed.cap.filter(|cap| cap.q < case.feed.q);
            let cap = cap.map_or_else(String::new, |cap| {
                format!("; what may leave is capped at {}, which is to be settled", show(cap.q.si()))
            });
            format!(", for up to {} in all{cap}", show(case.feed.q.si()))
        });
    let flow = if train.count.q.si() > 1.0 { flow } else { flow.replace(" in all", "") };
    format!("{what}, {about}{name}{each}: {}{flow}", train.unit.arrangement.meaning())
}

/// What is bought, and whether it is offered.
fn bought(settled: &Settled) -> Vec<String> {
    let Some(train) = &settled.job.design.train else {
        return vec!["Nothing yet: on what was said no unit is offered. The answers below come first.".to_owned()];
    };
    if settled.job.enquiry.unit_stands() {
        return vec![
            "Nothing: the unit stands already. This paper says what it does, and what must be known to better it."
                .to_owned(),
        ];
    }
    let demo =
        if reply::prices_are_told(settled) { "" } else { " The model stands in an invented demonstration range." };
    let price = if train.unit.particulars.price.is_some() && reply::prices_are_told(settled) {
        ""
    } else {
        " Price and delivery: to follow."
    };
    let unit = |about| unit(settled, train, about);
    let says = match condition(settled) {
        Condition::None => sentence(&summary::capital(&unit(""))),
        Condition::Settled if reply::points(settled).is_empty() => format!(
            "Not offered yet, as this stands against it: {}. Nearest comes {}.",
            against(settled).join("; "),
            unit("")
        ),
        Condition::Settled => {
            let limits = settled.job.design.performance.as_ref().map_or(&[][..], |p| &p.limits);
            let open = |verdict: &LimitVerdict| verdict.word > Word::Likely;
            let beside = match (limits.iter().any(|v| v.calculated > Word::Likely), limits.iter().any(open)) {
                (true, _) => ", and with something beside it that keeps the limits",
                // By the calculation it keeps them, if what nobody has confirmed holds.
                (false, true) => ", and what the limit hangs on is confirmed",
                (false, false) => "",
            };
            format!("Offered once the points under \"What it needs of you\" are settled{beside}: {}.", unit(""))
        }
        Condition::Ahead(what) => {
            format!("Offered once this is dealt with ahead of it: {what}. It would then be {}.", unit("about a "))
        }
        Condition::Beside => format!(
            "Nothing yet: no separator of the range is shown to keep the limits alone. With what must stand beside it, it would be {}.",
            unit("about a ")
        ),
        Condition::Blocked => format!(
            "Nothing yet: a separator alone does not do what is asked of this water as it is. With what must come ahead of it or behind it, it would be {}.",
            unit("about a ")
        ),
    };
    vec![format!("{says}{demo}{price}")]
}

/// What fails, by its name.
fn against(settled: &Settled) -> Vec<String> {
    let failing = settled.verdicts.iter().filter(|judged| judged.stands_failed());
    failing.map(|judged| lower(judged.rule.title)).collect()
}

/// What it needs: what must be settled first, the ground under it, upkeep, what stands beside it.
fn needs(settled: &Settled) -> Vec<String> {
    let mut lines = Vec::new();
    let points = reply::points(settled);
    if !points.is_empty() {
        let heads: Vec<String> = points.iter().map(|point| lower(&point.short)).collect();
        lines.push(format!("To be settled first (what settles each stands below): {}.", heads.join("; ")));
    }
    let offered = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands());
    if let Some(train) = offered {
        // Why it stands so is told below, but what is missing where that is open.
        let open =
            settled.job.design.performance.as_ref().map(|p| p.site.installation.stands.q) == Some(Stands::Unknown);
        let way = stands::how(settled).map(|how| match how.split_once(':') {
            Some((way, _)) if !open => way.to_owned(),
            _ => how,
        });
        let load = reply::weight_full(settled).map(|full| {
            let each = if train.bought() > 1.0 { "each " } else { "" };
            let more =
                if train.unit.arrangement.is_in_ground() { ", with the soil and traffic over it besides" } else { "" };
            format!("{each}{full} full of water{more}, which the ground or floor must carry")
        });
        let said: Vec<String> = way.into_iter().chain(load).collect();
        if !said.is_empty() {
            lines.push(sentence(&summary::capital(&said.join("; "))));
        }
        lines.extend(stands::room_in_short(settled).map(|room| sentence(&summary::capital(&room))));
    }
    if let Some(often) = reply::emptied_in_short(settled) {
        lines.push(format!("To be pumped out: {often}."));
    }
    if let Some(train) = offered {
        let beside = reply::beside_in_short(settled, train);
        if !beside.is_empty() {
            lines.push(format!("Beside it, not part of it: {}.", lower(&beside.join("; "))));
        }
        let open = excluded::open(settled, &beside);
        if !open.is_empty() {
            lines.push(format!("Somebody must bring these too, and nobody is named yet: {}.", open.join("; ")));
        }
    }
    lines
}

/// What it will do: each limit, on what that hangs, and the spill.
fn does(settled: &Settled) -> Vec<String> {
    let design = &settled.job.design;
    let (Some(basis), Some(p)) = (&design.basis, &design.performance) else {
        return vec!["Nothing is calculated yet.".to_owned()];
    };
    let mut lines = Vec::new();
    for verdict in &p.limits {
        let Some(limit) = basis.limits.get(verdict.limit) else { continue };
        let at_most = leaves_at_most(verdict).map_or_else(String::new, |leaves| {
            let times = verdict
                .peak
                .map_or_else(String::new, |peak| format!(", {} times the mean", print::digits(peak.q.si(), 3)));
            let arrives = super::arrives_then(verdict);
            let arrives = arrives.map_or_else(String::new, |much| format!(", of {much} that arrives{times}"));
            let when = if verdict.peak.is_some() { " at the peak" } else { "" };
            format!("{leaves} leaves it{when}{arrives}; ")
        });
        let (allows, statistic) = (summary::allows(limit), limit.statistic.q.word());
        lines.push(format!("{}: {at_most}the limit is {allows}, {statistic}. {}", limit.title(), says(verdict)));
    }
    for limit in &basis.ph_limits {
        lines.push(format!("{}: no separator changes it.", limit.shown()));
    }
    let open = summary::in_a_cone(settled).into_iter().chain(summary::numberless(settled));
    lines.extend(open.map(|(title, _)| format!("{title}: open.")));
    if let Some(worst) = p.worst().filter(|_| lines.is_empty()) {
        let leaves = stillrise_design::performance::promise::Promise::of(worst.total.expected.q, worst.content.total.q);
        lines.push(format!("No limit was stated. What leaves: {} of oil.", leaves.sentence()));
    }
    let kept = p.limits.iter().any(|v| v.word <= Word::Likely && v.predicted);
    lines.extend(conditions(settled, basis, kept));
    lines.extend(summary::hardly(settled));
    lines.extend(spill(settled));
    lines
}

/// The word on a limit as an answer.
fn says(verdict: &LimitVerdict) -> String {
    // Of so many worked with all that is uncertain drawn at once.
    let share = verdict.chance.map(|chance| chance.percent());
    let deciding: Vec<_> = verdict.held_back.iter().filter(|held| held.word == verdict.word).collect();
    let figures = deciding.iter().filter(|held| matches!(held.by, By::Assumption { .. })).count();
    let more = if figures > 1 { format!(" and {} more", figures - 1) } else { String::new() };
    let hangs = deciding.first().map(|held| match &held.by {
        By::Assumption { label, .. } => format!("it hangs on what nobody has confirmed: {label}{more}"),
        By::Eye => "whether a film is seen is judged by eye".to_owned(),
        By::Chance => "results scatter, and too few would surely keep it".to_owned(),
        By::Measured(_) => "results that were measured speak against more".to_owned(),
    });
    let hangs = hangs.map_or_else(String::new, |hangs| format!("; {hangs}"));
    match (verdict.word, share) {
        (Word::Kept, Some(share)) => format!("We expect it to be kept: {share} of our trial calculations keep it."),
        (Word::Kept, None) => "We expect it to be kept.".to_owned(),
        (Word::Likely, Some(share)) => {
            format!("Likely kept, not certain: {share} of our trial calculations keep it{hangs}.")
        }
        (Word::Likely, None) => format!("Likely kept, not certain{hangs}."),
        (Word::NotShown, Some(share)) => {
            format!("{}: {share} of our trial calculations keep it{hangs}.", summary::capital(verdict.says()))
        }
        (Word::NotShown, None) => format!("{}{hangs}.", summary::capital(verdict.says())),
        (Word::NotByGravity, _) => "No separator alone keeps it.".to_owned(),
    }
}

/// On what all that hangs: flow, water, oil, and what keeps oil from rising; `kept` where a limit is kept under these.
fn conditions(settled: &Settled, basis: &Basis, kept: bool) -> Option<String> {
    let show = |si: f64, pair| print::in_prose(si, settled.job.enquiry.system().pick(pair));
    let flow = show(basis.design_flow()?.q.si(), FLOW_UNITS);
    let cold = show(basis.fluids.cold.temperature.q.si(), (&DEG_F, &DEG_C));
    let named = oil_is_named(&settled.subject());
    let oils: Vec<&str> =
        basis.fluids.oils.iter().map(|oil| if named { oil.name.as_str() } else { oil.oil.word }).collect();
    let taken = if named { "" } else { ", as we took it" };
    let oils = if oils.is_empty() { String::new() } else { format!(", oil like {}{taken}", oils.join(" or ")) };
    let asks = |wanted: &dyn Fn(&Asks) -> bool| settled.standing.iter().any(|s| wanted(&s.asks));
    let harms = |line: &Line| line.about == About::Chemical && line.weight >= Weight::Partly;
    let product = if settled.job.design.triage.iter().any(harms) {
        "the products that were declared and no other"
    } else if asks(&|a| matches!(a, Asks::Cleaner)) {
        "no cleaner or detergent in the water, of which nobody has spoken yet"
    } else if asks(&|a| matches!(a, Asks::DataSheet(_) | Asks::NewProduct(_))) {
        "no product in the water that keeps oil from rising, which the data sheets must show"
    } else {
        "no other product in the water that keeps oil from rising"
    };
    let unmeasured = settled.judged(&no_measured_results::RULE).is_some_and(|judged| judged.grade() == Grade::Warns);
    let calculated = if unmeasured { " Calculated: no unit of this type was measured." } else { "" };
    let while_ = if kept { "Only while" } else { "Reckoned for" };
    Some(format!(
        "{while_}: no more than {flow}, {cold} or warmer{oils}, {product}, pumped out in time. All conditions stand below.{calculated}"
    ))
}

/// What of a spill finds room, and when.
fn spill(settled: &Settled) -> Option<String> {
    let spill = settled.job.design.basis.as_ref()?.spill.as_ref()?;
    let show = |si: f64| print::in_prose(si, settled.job.enquiry.system().pick((&GAL, &M3)));
    if spill.is_held_ahead() {
        return Some(format!("A spill of {} is held ahead of it.", show(spill.volume.q.si())));
    }
    let performance = settled.job.design.performance.as_ref()?;
    let room = performance.storage.spill.as_ref().filter(|_| spill.is_told)?;
    let comes = show(spill.volume.q.si());
    // The float sounds late while water flows; what shuts the outlet then is a thing of its own.
    let shuts = match settled.job.enquiry.spill.as_ref().and_then(|block| block.closure.0) {
        Some(true) => "only the closure of the outlet keeps it in, which is not part of the unit",
        Some(false) => "nothing shuts the outlet",
        None => "only something that shuts the outlet keeps it in, of which nobody has spoken",
    };
    Some(if room.spare.q.si() >= 0.0 {
        format!(
            "A spill of {comes}: stays in the unit while no water flows. In heavy flow it may escape, as the alarm sounds late then; {shuts}."
        )
    } else if room.room.q.si() > 0.0 {
        format!("It does not hold a spill of {comes}: it has room for {}.", show(room.room.q.si()))
    } else {
        format!("It does not hold a spill of {comes}: it has no room for one.")
    })
}

/// What must be answered: how many questions, and the first of them.
fn asked(settled: &Settled) -> Vec<String> {
    let all = answers::texts(settled);
    let most = if all.len() <= ALL { ALL } else { ASKED };
    let told: Vec<String> =
        all.iter().take(most).enumerate().map(|(k, text)| format!("({}) {}", k + 1, first_sentence(text))).collect();
    match all.len() {
        0 => vec!["Nothing.".to_owned()],
        n if n <= ALL => vec![told.join(" ")],
        n => vec![format!("{n} things, of which these first: {}", told.join(" "))],
    }
}

/// Questions that are told here, where there are more.
const ASKED: usize = 3;
/// Questions that are told here, where there are no more.
const ALL: usize = 4;

/// A question without what was taken meanwhile.
fn first_sentence(text: &str) -> &str {
    text.find('?').and_then(|end| text.get(..=end)).unwrap_or(text)
}
