//! How the unit stands, and the room that it needs: the same words in summary, report and mail.

use super::{capital, section};
use crate::render::text::hang;
use stillrise_checks::ask::outfall;
use stillrise_checks::rules::{does_not_fit, floats_when_emptied};
use stillrise_checks::{Grade, Verdict};
use stillrise_design::enquiry::keys::{Claim, Quantity};
use stillrise_design::performance::fit::Way;
use stillrise_design::performance::installation::{Because, Stands};
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, IN, KG, LB, M, MM};
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
    if let (Some(least), Some(cover)) = (installation.least_cover, installation.cover) {
        let pump = if installation.pump_behind { "; a pump behind it must lift the water to the outfall" } else { "" };
        let taken = match settled.subject().assumed(least.at) {
            Some(_) => {
                format!(
                    ", {}, which we took; with another cover it lies higher or deeper by as much",
                    show(settled, least.q)
                )
            }
            None => String::new(),
        };
        let because =
            if installation.because == Because::Covered { format!("{because}{taken}") } else { because.to_owned() };
        return Some(format!(
            "lies in the ground, its top {} and its floor {} below it: {because}{pump}",
            show(settled, cover.q),
            show(settled, cover.q + settled.job.design.train.as_ref()?.unit.body.height().q)
        ));
    }
    let built_in = settled.job.design.train.as_ref().is_some_and(|train| train.unit.arrangement.is_built_in());
    if built_in && matches!(installation.stands.q, Stands::InPit | Stands::Buried) {
        return Some(format!("built into the ground, {}, as high as the incoming pipe reaches it", below()));
    }
    if built_in && matches!(installation.stands.q, Stands::OnGround | Stands::OnPlinth) {
        let over = match installation.stands.q {
            Stands::OnPlinth => format!(", its lowest point {} over the ground", far(false)),
            _ => String::new(),
        };
        return Some(format!(
            "built into the ground, how deep is not decided by these levels: worked as if it stood on the ground{over} ({because})"
        ));
    }
    Some(match installation.stands.q {
        Stands::Unknown => format!("at what height it stands is open: {because}"),
        Stands::OnGround => format!("stands on the ground: {because}"),
        Stands::OnPlinth => format!("stands on a plinth, its lowest point {} over the ground: {because}", far(false)),
        Stands::InPit => {
            format!("stands in a pit, {}: {because}; behind a lift pump it would stand on the ground", below())
        }
        Stands::Buried => {
            format!("would be buried, {}: {because}; behind a lift pump it would stand on the ground", below())
        }
        Stands::LiftPump => {
            let over = installation.over_ground.map(|v| v.q);
            let stands = match over {
                Some(over) if over.si() > 0.0 => {
                    format!(" sets the unit on a plinth, its lowest point {} over the ground", far(false))
                }
                Some(_) if built_in => " lifts the water to the unit".to_owned(),
                Some(_) => " sets the unit on the ground".to_owned(),
                None => " lifts the water to the unit".to_owned(),
            };
            let deep = installation.over_ground_ahead_of_pump.filter(|over| over.q.si() < 0.0);
            let depth = deep.map_or_else(String::new, |over| {
                let ends = walls_under(settled).map_or_else(String::new, |under| {
                    format!(" and the top of its walls {} below it", show(settled, under))
                });
                format!(", its lowest point {} below the ground{ends}", show(settled, -over.q))
            });
            let (because, seldom) = drowned(settled).unwrap_or_else(|| (because.to_owned(), String::new()));
            format!(
                "needs a pump on these levels: {because}{seldom}. A pump behind it, after a free weir, leaves flow, droplets and limits here as they are; the unit then stands at the depth of the incoming pipe{depth}, and room and frost are to be worked for that depth. Ahead of it as a lift pump it{stands}, as the room below is worked; flow, droplets, plates and polisher are then to be worked again with that pump, which sends all that it lifts whenever it runs and breaks the oil"
            )
        }
    })
}

/// How far the walls end below the ground with the pump behind the unit; nothing where they reach over it.
fn walls_under(settled: &Settled) -> Option<Length> {
    let design = &settled.job.design;
    let floor = design.performance.as_ref()?.site.installation.floor_ahead_of_pump?.q;
    let top = floor + design.train.as_ref()?.unit.body.height().q;
    let under = settled.job.enquiry.site.ground.q()? - top;
    (under.si() > 0.0).then_some(under)
}

/// How the water at the outfall drowns the outlet, and what may do where it comes seldom; nothing where other levels decide.
fn drowned(settled: &Settled) -> Option<(String, String)> {
    let installation = &settled.job.design.performance.as_ref()?.site.installation;
    let over = installation.water_over_crest?;
    let outlet = &settled.job.enquiry.outlet.tailwater;
    let level = outlet.claim()?;
    let shown = print::in_prose(over.q.si(), settled.job.enquiry.system().pick((&IN, &MM)));
    let because = format!(
        "where the incoming pipe reaches it, the water at the outfall, at {}, stands {shown} over its crest",
        level.written.text
    );
    let pipe = settled.job.enquiry.inlet.invert.q();
    let room = pipe.zip(outlet.q()).map(|(pipe, water)| pipe - water).filter(|room| room.si() > 0.0);
    let seldom = room.map_or_else(String::new, |room| {
        format!(
            " and {} under that pipe; where it comes seldom, a check valve, with levels and alarm set for it, may do instead",
            show(settled, room)
        )
    });
    Some((because, seldom))
}

/// When it floats, where it stands in the ground and nobody said how high the groundwater is; and where that stands over its
/// floor, what keeps it down. That it floats is told with what must change.
pub(crate) fn floats(settled: &Settled) -> Option<String> {
    let found = settled.judged(&floats_when_emptied::RULE)?;
    let asks = found.verdict.asks().iter().any(|ask| ask.key.as_deref() == Some("site.groundwater"));
    let floor = settled.job.design.performance.as_ref().and_then(|p| p.site.installation.floor);
    let over = settled.job.enquiry.site.groundwater.q().zip(floor).is_some_and(|(water, floor)| water > floor.q);
    let keeps = over && matches!(found.verdict, Verdict::Passes(_));
    let why = if keeps {
        ": it does not float while the groundwater stands no higher than was stated and what holds it down is there, both to be confirmed"
    } else {
        ""
    };
    // Ground beside water that floods may stand as full as the flood.
    let flood = &settled.job.enquiry.outlet.tailwater;
    let higher = flood.q().zip(settled.job.enquiry.site.groundwater.q()).is_some_and(|(flood, ground)| flood > ground);
    let flood = flood.claim().filter(|_| higher && over).map_or_else(String::new, |level| {
        format!(
            "; the water at the outfall may stand at {}, higher than that groundwater: where the ground between lets it through, the unit has to be held down, and its shell to bear, against that level",
            level.written.text
        )
    });
    (asks || keeps).then(|| format!("{}{why}{flood}", found.verdict.says()))
}

/// The question for the outfall, with the highest that would do.
pub(crate) fn outlet(settled: &Settled) -> Option<String> {
    let highest = settled.job.design.performance.as_ref()?.site.installation.highest_outfall?;
    // Where it may end as high as the ground, no outfall lies too high.
    let ground = settled.job.enquiry.site.ground.q();
    if ground.is_some_and(|ground| highest.q >= ground) {
        return None;
    }
    Some(outfall(&settled.subject()).question.into_owned())
}

/// The place that was stated, as it was typed: " of 12 ft x 8 ft, with 10 ft clear overhead,"; empty where nothing was.
pub(crate) fn place(settled: &Settled) -> String {
    let site = &settled.job.enquiry.site;
    let side = |q: &Quantity<Length>| q.claim().map(|claim| claim.written.text.clone());
    let room = match (side(&site.max_length), side(&site.max_width)) {
        (Some(length), Some(width)) => format!(" of {length} x {width}"),
        (Some(length), None) => format!(" of {length} in length"),
        (None, Some(width)) => format!(" of {width} in width"),
        (None, None) => String::new(),
    };
    let clear = side(&site.headroom).map_or_else(String::new, |clear| format!(", with {clear} clear overhead,"));
    room + &clear
}

/// Less than this beside inside measures hardly takes the walls: our proposal.
const WALLS: f64 = 0.2;

/// What stays free around the units: in the ground nobody walks there.
fn free(settled: &Settled) -> &'static str {
    let train = settled.job.design.train.as_ref();
    if train.is_some_and(|train| train.unit.arrangement.is_in_ground()) { "room to fill in" } else { "a walkway" }
}

/// What the stated place lacks for the units with the walkway around them, and how little it leaves for walls where those
/// come on top; nothing where it has room for all.
fn lacks(settled: &Settled, way: &Way, outside: bool) -> Option<String> {
    let site = &settled.job.enquiry.site;
    let side = |claim: Option<&Claim>, room: Option<Length>, needs: Length, word: &str| {
        let (typed, left) = (&claim?.written.text, room? - needs);
        if left.si() < 0.0 {
            return Some((true, format!("the place's {word} of {typed} is {} too little", show(settled, -left))));
        }
        let shown = || print::in_prose(left.si(), settled.job.enquiry.system().pick((&IN, &MM)));
        (!outside && left.si() < WALLS)
            .then(|| (false, format!("the place's {word} of {typed} leaves {} for the walls", shown())))
    };
    let sides = [
        side(site.max_length.claim(), site.max_length.q(), way.length.q, "length"),
        side(site.max_width.claim(), site.max_width.q(), way.width.q, "width"),
    ];
    let (missing, short): (Vec<bool>, Vec<String>) = sides.into_iter().flatten().unzip();
    if short.is_empty() {
        return None;
    }
    let is = if missing.contains(&true) { "too small for that" } else { "tight" };
    let access = settled.job.design.performance.as_ref().map_or(0.0, |p| p.fit.access.q.si());
    let walkway = access > 0.0;
    // Alone it may go in where it does not with our walkway.
    let bare = [(site.max_length.q(), way.length.q), (site.max_width.q(), way.width.q)];
    let one = settled.job.design.train.as_ref().is_some_and(|train| train.count.q.si() < 1.5);
    let goes =
        |(room, needs): &(Option<Length>, Length)| room.is_none_or(|room| needs.si() - 2.0 * access <= room.si());
    if one && outside && walkway && !site.access.is_given() && bare.iter().all(goes) {
        // Without it: what is left is for slings, pipes and insulation.
        let spare = bare.iter().zip(["length", "width"]).filter_map(|((room, needs), word)| {
            let left = (*room)?.si() - (needs.si() - 2.0 * access);
            let shown = print::in_prose(left, settled.job.enquiry.system().pick((&IN, &MM)));
            Some(format!("{shown} of the {word}"))
        });
        return Some(format!(
            "; the place that was stated takes the unit itself, with {} to spare for pipes, insulation and hands, but not a walkway all round, of which nobody spoke and which is our figure: {}",
            spare.collect::<Vec<_>>().join(" and "),
            short.join(", ")
        ));
    }
    let whose = if site.access.is_given() || !walkway {
        String::new()
    } else {
        format!(", with {} that nobody stated", free(settled))
    };
    Some(format!("; the place that was stated is {is}: {}{whose}", short.join(", ")))
}

/// The clear height where the unit stands otherwise than it is worked: deeper with a pump behind it, higher with one ahead.
fn elsewhere(settled: &Settled) -> String {
    let design = &settled.job.design;
    let (Some(performance), Some(train)) = (&design.performance, &design.train) else { return String::new() };
    // What is built into the ground stands nowhere else.
    if train.unit.arrangement.is_built_in() {
        return String::new();
    }
    let (fit, installation) = (&performance.fit, &performance.site.installation);
    let over = |lower: Length| {
        let needs = fit.headroom.q - lower;
        if needs.si() > 0.0 { show(settled, needs) } else { "nothing".to_owned() }
    };
    match installation.stands.q {
        Stands::LiftPump => installation
            .over_ground
            .zip(installation.over_ground_ahead_of_pump.filter(|deep| deep.q.si() < 0.0))
            .map(|(stands, deep)| {
                format!(
                    " with the pump ahead of it; with the pump behind it, {} over the ground",
                    over(stands.q - deep.q)
                )
            }),
        Stands::InPit | Stands::Buried => installation
            .over_ground
            .map(|deep| format!(" as it stands there; behind a lift pump, on the ground, {} over it", over(deep.q))),
        Stands::OnGround | Stands::OnPlinth | Stands::Unknown => None,
    }
    .unwrap_or_default()
}

/// The room in plan and overhead.
pub(crate) fn room(settled: &Settled) -> Option<String> {
    let design = &settled.job.design;
    let fit = &design.performance.as_ref()?.fit;
    let outside = design.train.as_ref().is_some_and(|train| train.unit.particulars.shipping.is_some());
    let way = fit.way();
    let how = fit.choice.map_or_else(String::new, |choice| format!(" {}", choice.q.word()));
    // Deep enough in the ground nothing has to be clear over it, but it has to be reached.
    let closed = design.train.as_ref().is_some_and(|train| !train.unit.body.is_open());
    let overhead = if closed {
        format!(
            "a clear height of {} over the ground, to lift what comes out of its manways",
            show(settled, fit.headroom.q)
        )
    } else if fit.headroom.q.si() > 0.0 {
        format!("a clear height of {} over the ground{}", show(settled, fit.headroom.q), elsewhere(settled))
    } else {
        format!(
            "a shaft or slab over it: its walls end {} below the ground, so that nothing has to be clear over that{}",
            show(settled, -fit.top.q),
            elsewhere(settled)
        )
    };
    let walkway = if fit.access.q.si() > 0.0 {
        format!(" with {} of {}", free(settled), show(settled, fit.access.q))
    } else {
        String::new()
    };
    Some(format!(
        "needs{how} {} x {} in plan{walkway}{}, and {overhead}{}",
        show(settled, way.length.q),
        show(settled, way.width.q),
        if outside { "" } else { " (inside measures, walls come on top)" },
        lacks(settled, way, outside).unwrap_or_default()
    ))
}

/// The room in short, and whether the place that was stated has it.
pub(crate) fn room_in_short(settled: &Settled) -> Option<String> {
    let fit = &settled.job.design.performance.as_ref()?.fit;
    let way = fit.way();
    let with = if fit.access.q.si() > 0.0 {
        format!(", {} of {} included", free(settled), show(settled, fit.access.q))
    } else {
        String::new()
    };
    let over = if fit.headroom.q.si() > 0.0 {
        format!(" and {} clear over the ground", show(settled, fit.headroom.q))
    } else {
        String::new()
    };
    let site = &settled.job.enquiry.site;
    let stated = site.max_length.is_given() || site.max_width.is_given();
    let grade = settled.judged(&does_not_fit::RULE).filter(|_| stated).map(|found| found.verdict.grade());
    let outside = settled.job.design.train.as_ref().is_some_and(|train| train.unit.particulars.shipping.is_some());
    let bare = lacks(settled, way, outside).is_some();
    let place = match grade {
        Some(Grade::Passes) => ": the stated place has it",
        Some(Grade::Fails) => ": the stated place is too small",
        Some(Grade::Warns) => ": the stated place has not all of it",
        Some(Grade::CannotJudge) if bare => {
            ": the stated place takes the unit, but not that walkway all round, which is our figure"
        }
        _ => "",
    };
    Some(format!("room of {} x {}{with}{over}{place}", show(settled, way.length.q), show(settled, way.width.q)))
}

/// The heaviest lift.
fn lift(settled: &Settled) -> Option<String> {
    let particulars = &settled.job.design.train.as_ref()?.unit.particulars;
    let weight = particulars.module_weight.filter(|_| particulars.lifts_out != Some(false))?;
    let shown = print::in_prose(weight.q.si(), settled.job.enquiry.system().pick((&LB, &KG)));
    Some(format!("heaviest module of the pack to lift, wet and fouled: {shown}"))
}
