//! Rule: does not fit

use crate::ask::{ACCESS, MAX_LENGTH, MAX_WIDTH};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Node;
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Length, Typed};

rule! {
    "does-not-fit" "Units too large for their place", Site, bars_pick;
    looks "Inside length and width of all units, with the walkways between them, against what the site has room for, in the arrangement that fits best: larger fails. A stated shipping size that is larger warns, and so does room without the walkway around them that was asked for. Where length or width of the room was not said, or the walkway is only assumed and does not fit, it cannot judge."
    matters "A unit that does not fit is found out when the crane is there."
    remedy "Another place, a unit of other proportions, or more and smaller units; where an arrangement was asked for, the other one."
    source "Geometry of the site and the units"
    limits "Inside measures: walls, nozzles and ladders come on top. Length runs along the flow; a unit turned by a quarter is not tried. Room that was stated may or may not count the walkway around the units."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else { return s.stopped() };
    let (site, fit) = (&s.enquiry.site, &performance.fit);
    let way = fit.way();
    let rows = [
        (site.max_length.q(), way.row_length, "long", 0, MAX_LENGTH),
        (site.max_width.q(), way.row_width, "wide", 1, MAX_WIDTH),
    ];
    let show = |x: Length| s.show(x, (&FT, &M));
    let several = train.count.q.si() > 1.0;
    let (who, are, ship) = if several {
        ("the units with the walkways between them", "are", "each is shipped")
    } else {
        ("the unit", "is", "it is shipped")
    };
    let how = if several { format!(" {}", way.arrangement.word()) } else { String::new() };
    let mut fits = Vec::new();
    let mut asks = Vec::new();
    let mut tight: Option<(String, Node)> = None;
    let mut around: Option<(String, Node)> = None;
    let mut too_large: Option<(Vec<String>, Node)> = None;
    for (room, row, word, place, ask) in rows {
        let Some(room) = room else {
            fits.push(format!("{} {word} inside{how}, the room for it was not said", show(row.q)));
            asks.push(ask);
            continue;
        };
        if row.q > room {
            let says = format!("{} {word} inside, there is room for {}", show(row.q), show(room));
            too_large.get_or_insert((Vec::new(), row.at)).0.push(says);
            continue;
        }
        if let Some(size) = train.unit.particulars.shipping.map(|sizes| sizes[place]).filter(|size| size.q > room) {
            tight.get_or_insert((format!("{ship} {} {word}, there is room for {}", show(size.q), show(room)), size.at));
        }
        let whole = row.q + fit.access.q * 2.0;
        if whole > room {
            let says = format!(
                "with a walkway of {} around that is {} {word}, there is room for {}",
                show(fit.access.q),
                show(whole),
                show(room)
            );
            around.get_or_insert((says, row.at));
        }
        fits.push(format!("{} {word} inside{how} in {}", show(row.q), show(room)));
    }
    if let Some((says, at)) = too_large {
        return Verdict::fails(format!("{who}{how} {are} {}", says.join(", and ")), at);
    }
    if let Some((says, at)) = tight {
        let fit = if several { "fit" } else { "fits" };
        return Verdict::warns(format!("{who} {fit} inside to inside, but {says}"), at);
    }
    match around {
        Some((says, at)) if site.access.is_given() => {
            return Verdict::warns(format!("{}; but {says}", fits.join(", ")), at);
        }
        Some((says, _)) => {
            fits.push(says);
            asks.push(ACCESS);
        }
        None => {}
    }
    if asks.is_empty() {
        Verdict::passes(fits.join(", "))
    } else {
        Verdict::cannot_judge(fits.join(", "), asks, way.row_length.at)
    }
}
