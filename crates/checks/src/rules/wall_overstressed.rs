//! Rule: walls bend too far when full of water

use crate::ask::{Ask, METAL, THICKNESS};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::shell::metal;
use stillrise_design::performance::shop::cylinder::Cylinder;
use stillrise_design::performance::shop::plate;
use stillrise_design::performance::shop::saddles::Saddles;
use stillrise_design::performance::shop::walls::Walls;
use stillrise_units::catalog::{IN, KPA, MM, PSI};
use stillrise_units::{Length, Pressure};

rule! {
    "wall-overstressed" "Walls bend too far when full of water", Unit;
    client "The walls bend more than they should when the unit is full of water."
    looks "Of a steel unit full of water to its top: bending of the widest wall panel of a tank, hoop stress, bending on two saddles and bending of flat heads of a cylinder, against 0.6 of the yield. A wall above it fails; a deflection of more than a two-hundredth of the panel's width, or a flat head that needs stays, warns. What nobody said of stiffeners and rim counts as none: where the wall keeps it even so it passes, else it cannot judge, nor where thickness or metal is not known."
    matters "A tank is filled to its rim in the test, and whenever its outlet is blocked: a wall too thin bulges, and its seams tear."
    remedy "Thicker plate, stiffeners closer together, a rim beam or cross ties."
    source "Plate coefficients worked by finite elements, as the handbook gives them; strip over stiffeners; saddles after Zick, 1951; 0.6 of the yield and a two-hundredth are proposals, from memory"
    limits "Water alone, from inside; no allowance for rust, no weld, no nozzle, no ground or groundwater outside, no earthquake. Inner walls that stay the sides are not counted. For a licensed engineer."
}

/// Width over deflection, at least.
const STIFF: f64 = 200.0;

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    let unit = &train.unit;
    if unit.arrangement.is_built_in() || s.enquiry.unit_stands() {
        return Verdict::skips("it is built in its place, or stands already");
    }
    if plate::thickness(unit).is_none() {
        return Verdict::cannot_judge(
            "the thickness of the walls is not stated",
            [Ask::unit(s, "wall", THICKNESS)],
            None,
        );
    }
    if metal(unit).is_none() {
        return Verdict::cannot_judge(
            "it is not known to be of a steel that stands in our table",
            [Ask::unit(s, "material", METAL)],
            None,
        );
    }
    let shop = performance.shop.as_ref();
    if let Some(walls) = shop.and_then(|shop| shop.walls.as_ref()) {
        return flat(s, walls);
    }
    if let Some(cylinder) = shop.and_then(|shop| shop.cylinder.as_ref()) {
        return round(s, cylinder, shop.and_then(|shop| shop.saddles.as_ref()));
    }
    let why = shop.and_then(|shop| shop.stops.first()).map_or_else(String::new, |stop| format!(": {stop}"));
    Verdict::cannot_judge(format!("the walls could not be worked{why}"), [], None)
}

/// The walls of a tank.
fn flat(s: &Subject<'_>, walls: &Walls) -> Verdict {
    let (stress, length) = (|q: Pressure| s.show(q, (&PSI, &KPA)), |q: Length| s.show(q, (&IN, &MM)));
    let plate = length(walls.thickness.q);
    let closer = format!(
        "stiffeners no more than {} apart, under a stiff rim, would do",
        length(walls.spacing.q)
    );
    let spacing = || Ask::unit(s, "stiffener_spacing", "How far apart do the stiffeners of the walls stand?");
    let rim = || Ask::unit(s, "stiff_rim", "Does a beam or an angle stiffen the rim of the unit?");
    let unknown = || {
        let mut asks = Vec::new();
        asks.extend(walls.stiffeners.is_none().then(spacing));
        asks.extend(walls.rim.is_none().then(rim));
        asks
    };
    let judged = |says: String, asks: Vec<Ask>, at| {
        if asks.is_empty() { Verdict::fails(says, at) } else { Verdict::cannot_judge(says, asks, at) }
    };
    let Some(bends) = walls.stress else {
        let Some(stated) = walls.stiffeners.filter(|_| walls.by_strip()) else {
            let says = format!("a plate of {plate} over a panel {} wide under a free rim is not in the table; {closer}", length(walls.panel.q));
            return judged(says, unknown(), walls.panel.at);
        };
        let says = format!("plate of {plate}, stiffeners {} apart, {} allowed", length(stated.q), length(walls.spacing.q));
        return if stated.q > walls.spacing.q {
            Verdict::fails(says, stated.at)
        } else if walls.rim.is_none() {
            Verdict::cannot_judge(format!("{says}; whether a stiff rim holds their upper ends is not stated"), [rim()], stated.at)
        } else if walls.rim == Some(false) {
            Verdict::warns(format!("{says}; the rim is free, and nothing holds their upper ends"), stated.at)
        } else {
            Verdict::passes(says)
        };
    };
    let how = match (walls.stiffeners, walls.rim) {
        (None, None) => ", no stiffeners and a free rim counted,",
        (None, Some(true)) => ", no stiffeners counted,",
        (Some(_), None) => ", a free rim counted,",
        _ => "",
    };
    let says = format!(
        "full to the rim a plate of {plate} over a panel {} wide{how} bends to {}, {} allowed",
        length(walls.panel.q),
        stress(bends.q),
        stress(walls.allowable.q)
    );
    if bends.q > walls.allowable.q {
        return judged(format!("{says}; {closer}"), unknown(), bends.at);
    }
    match walls.deflection {
        Some(bulges) if bulges.q * STIFF > walls.panel.q => Verdict::warns(
            format!("{says}, but bulges by {}, more than a two-hundredth of that width", length(bulges.q)),
            bulges.at,
        ),
        _ => Verdict::passes(says),
    }
}

/// Shell and heads of a cylinder.
fn round(s: &Subject<'_>, cylinder: &Cylinder, saddles: Option<&Saddles>) -> Verdict {
    let stress = |q| s.show(q, (&PSI, &KPA));
    let allowed = stress(cylinder.allowable.q);
    let says = format!("full to the top the shell is stretched to {}, {allowed} allowed", stress(cylinder.hoop.q));
    if cylinder.hoop.q > cylinder.allowable.q {
        return Verdict::fails(says, cylinder.hoop.at);
    }
    if let Some(worst) = saddles.map(Saddles::worst).filter(|worst| worst.q.abs() > cylinder.allowable.q) {
        return Verdict::fails(
            format!("{says}; full to the top on two saddles above the ground it bends to {}", stress(worst.q.abs())),
            worst.at,
        );
    }
    match cylinder.head {
        Some(head) if head.q > cylinder.allowable.q => Verdict::warns(
            format!("{says}; a flat head without stays bends to {}: it needs stays or a dished form", stress(head.q)),
            head.at,
        ),
        Some(head) => Verdict::passes(format!("{says}; its flat heads bend to {}", stress(head.q))),
        None => Verdict::passes(says),
    }
}
