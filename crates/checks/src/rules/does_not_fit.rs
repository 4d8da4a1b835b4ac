//! Rule: does not fit

use crate::ask::{ACCESS, MAX_LENGTH, MAX_WIDTH, ROOM_BETWEEN};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Node;
use stillrise_design::enquiry::blocks::Arrangement;
use stillrise_units::catalog::{FT, IN, M, MM};
use stillrise_units::{Length, Typed};

rule! {
    "does-not-fit" "Units too large for their place", Site, bars_pick;
    client "The place that was stated is too small, or only just large enough, for what stands there."
    looks "Length and width of all units, over all where a shipping size is stated and else inside, with the walkways between them, against what the site has room for, in the arrangement that fits best: larger fails. Room without the walkway around them that was asked for warns. Where length or width of the room was not said, or the walkway around or between is only assumed and does not fit, it cannot judge."
    matters "A unit that does not fit is found out when the crane is there."
    remedy "Another place, a unit of other proportions, or more and smaller units; where an arrangement was asked for, the other one."
    source "Geometry of the site and the units"
    limits "Without a shipping size inside measures: walls, nozzles and ladders come on top; how much is left for them is said. Length runs along the flow; a unit turned by a quarter is not tried. Room that was stated may or may not count the walkway around the units."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else { return s.stopped() };
    let (site, fit) = (&s.enquiry.site, &performance.fit);
    let way = fit.way();
    let rows = [
        (site.max_length.q(), way.row_length, "long", MAX_LENGTH),
        (site.max_width.q(), way.row_width, "wide", MAX_WIDTH),
    ];
    let show = |x: Length| s.show(x, (&FT, &M));
    let several = train.count.q.si() > 1.0;
    let in_ground = train.unit.arrangement.is_in_ground();
    let (who, are) = match (several, in_ground) {
        (true, true) => ("the units with room to fill in between them", "are"),
        (true, false) => ("the units with the walkways between them", "are"),
        (false, _) => ("the unit", "is"),
    };
    let (free, access) = if in_ground { ("room to fill in", ROOM_BETWEEN) } else { ("a walkway", ACCESS) };
    let how = if several { format!(" {}", way.arrangement.word()) } else { String::new() };
    let outside = train.unit.particulars.shipping.is_some();
    let side = if outside { "outside" } else { "inside" };
    let mut fits = Vec::new();
    let mut asks = Vec::new();
    let mut around: Option<(Vec<String>, Node)> = None;
    let mut too_large: Option<(Vec<String>, Node)> = None;
    for (room, row, word, ask) in rows {
        let Some(room) = room else {
            fits.push(format!("{} {word} {side}{how}, the room for it was not said", show(row.q)));
            asks.push(ask);
            continue;
        };
        // A walkway that nobody asked for bars no pair, each of which is reached from its other side; of more the middle
        // ones are not.
        let stacked = match way.arrangement {
            Arrangement::SideBySide => word == "wide",
            Arrangement::InLine => word == "long",
        };
        let pair = several && train.count.q.si() < 2.5;
        let between = fit.access.q;
        if row.q > room && pair && stacked && !site.access.is_given() && row.q - between <= room {
            fits.push(format!(
                "{} {word} {side}{how} without {free} between them, {} with {}, there is room for {}",
                show(row.q - between),
                show(row.q),
                show(fit.access.q),
                show(room)
            ));
            asks.push(access.clone());
            continue;
        }
        if row.q > room {
            let says = format!("{} {word} {side}, there is room for {}", show(row.q), show(room));
            too_large.get_or_insert((Vec::new(), row.at)).0.push(says);
            continue;
        }
        let whole = row.q + fit.access.q * 2.0;
        if whole > room {
            let says = format!("{} {word}, there is room for {}, {} too little", show(whole), show(room), show(whole - room));
            around.get_or_insert((Vec::new(), row.at)).0.push(says);
        }
        let walls = if outside {
            String::new()
        } else {
            format!(", which leaves {} for walls and what stands out of them", s.show(room - row.q, (&IN, &MM)))
        };
        fits.push(format!("{} {word} {side}{how} in {}{walls}", show(row.q), show(room)));
    }
    if let Some((says, at)) = too_large {
        return Verdict::fails(format!("{who}{how} {are} {}", says.join(", and ")), at);
    }
    let around = around.map(|(says, at)| {
        let it = if several { "they are" } else { "it is" };
        (format!("with {free} of {} around {it} {}", show(fit.access.q), says.join(", and ")), at)
    });
    match around {
        Some((says, at)) if site.access.is_given() => {
            return Verdict::warns(format!("{}; but {says}", fits.join(", ")), at);
        }
        Some((says, _)) => {
            fits.push(says);
            asks.push(access);
        }
        None => {}
    }
    if asks.is_empty() {
        Verdict::passes(fits.join(", "))
    } else {
        Verdict::cannot_judge(fits.join(", "), asks, way.row_length.at)
    }
}
