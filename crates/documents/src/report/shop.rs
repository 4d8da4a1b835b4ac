//! Shop and installation, preliminary: weights, walls, frost, vent, protection, areas.

use super::blocks::{Table, slim, wide};
use super::{Report, sentence};
use crate::summary::shop::{PRELIMINARY, Says};
use stillrise_design::Node;
use stillrise_design::performance::shop::Shop;
use stillrise_design::performance::shop::cylinder::Cylinder;
use stillrise_design::performance::shop::walls::Walls;
use stillrise_design::provenance::Pair;
use stillrise_design::train::Train;
use stillrise_handbook::ground::electrical_areas::AREAS;
use stillrise_handbook::shop::vents;
use stillrise_units::catalog::{FT, IN, KN, KPA, LBF, M, MM, PSI};
use stillrise_units::{print, spoken};

const LENGTH: Pair = (&IN, &MM);
const STRESS: Pair = (&PSI, &KPA);

/// The section; nothing of a unit that stands, or where none was worked.
pub(super) fn shop(r: &mut Report<'_>) {
    let settled = r.settled;
    let (Some(says), Some(train)) = (Says::of(settled), &settled.job.design.train) else { return };
    let shop = says.shop;
    r.out.section("Shop and installation, preliminary");
    r.out.para(PRELIMINARY);
    weights(r, &says);
    walls(r, shop, train);
    let nodes = shop.saddles.as_ref().map(|x| x.fields().into_iter().map(|(_, at)| at).collect());
    matter(r, "Saddles, before it lies in the ground", says.saddles(), nodes);
    if shop.saddles.is_some() {
        r.out.remark("As a beam of even weight. Stress at the horn of a saddle, the saddle itself and what it stands on are for the engineer who signs. In the ground the cylinder lies on its bedding, not on saddles.");
    }
    matter(
        r,
        "Frost",
        says.frost(),
        shop.frost.as_ref().map(|f| {
            let mut nodes = vec![f.air.at, f.area.at, f.loss.at];
            nodes.extend(f.freezes_in.map(|x| x.at));
            nodes.extend([f.kept.at, f.with.at, f.heater.at, f.heater_bare.at]);
            nodes
        }),
    );
    if shop.frost.is_some() {
        r.out.remark("All of the surface counts, top and floor included. Nozzles, legs and covers lose more than the wall. A heater in oily water runs cool, below the lowest level, with a cut-out at low level.");
    }
    matter(r, "Vent", says.vent(), shop.vent.as_ref().map(|x| vec![x.air.at, x.difference.at, x.bore.at, x.least.at]));
    if shop.vent.is_some() {
        r.out.list(
            false,
            vents::applying(shop.areas.volatile).map(|rule| (spoken(rule.text, r.system), rule.source.to_string())),
        );
    }
    let nodes = shop.protection.as_ref().map(|x| x.fields().into_iter().map(|(_, at)| at).collect());
    matter(r, "Cathodic protection", says.protection(), nodes);
    areas(r, &says);
    if !shop.stops.is_empty() {
        r.out.lead("Not worked to its end.", "Here a formula had no answer:");
        r.out.list(false, shop.stops.iter().map(|stop| (sentence(&stop.to_string()), String::new())));
    }
}

/// A heading, its sentence and the values behind it.
fn matter(r: &mut Report<'_>, title: &str, says: Option<String>, nodes: Option<Vec<Node>>) {
    let (Some(says), Some(nodes)) = (says, nodes) else { return };
    r.out.heading(title);
    r.out.para(&says);
    let table = r.rows(nodes);
    r.out.table(&table);
}

fn weights(r: &mut Report<'_>, says: &Says<'_>) {
    let Some(found) = &says.shop.weights else { return };
    let mut nodes: Vec<Node> = found.empty.iter().map(|x| x.at).collect();
    nodes.push(found.water.at);
    nodes.extend(found.sludge.map(|x| x.at));
    nodes.extend([found.operating, found.test].into_iter().flatten().map(|x| x.at));
    nodes.extend(found.bearing.map(|x| x.at));
    nodes.extend(found.leg.map(|x| x.at));
    nodes.extend(found.centre.map(|x| x.at));
    if let Some(lifting) = &says.shop.lifting {
        nodes.extend([lifting.points.at, lifting.angle.at, lifting.legs.at]);
        nodes.extend(lifting.pulls.iter().flat_map(|pulls| pulls.fields()).map(|(_, at)| at));
    }
    matter(r, "Weights and lifting", says.weights(), Some(nodes));
    if let Some(lifting) = says.lifting() {
        r.out.para(&lifting);
        r.out.remark("Sling, lugs and crane follow a lift plan of their own. The first lift, a hand's breadth off the ground, shows where the weight hangs: plates and nozzles are not in the estimate of the centre.");
    }
    r.out.remark("Oil is not counted apart: it floats, and weighs what the water weighs that it takes the place of.");
}

fn walls(r: &mut Report<'_>, shop: &Shop, train: &Train) {
    if train.unit.arrangement.is_built_in() {
        return;
    }
    r.out.heading(if train.unit.body.is_open() {
        "Walls, full of water to the rim"
    } else {
        "Shell and heads, full of water to the top"
    });
    match (&shop.walls, &shop.cylinder) {
        (Some(walls), _) => flat(r, walls),
        (_, Some(cylinder)) => round(r, cylinder),
        _ => r.out.para("They cannot be judged: the thickness of the steel, or the metal, is not stated."),
    }
}

fn flat(r: &mut Report<'_>, walls: &Walls) {
    let how = match (walls.stiffeners.is_some(), walls.rim) {
        (false, None) => "With no stiffeners and a free rim, for nobody spoke of either",
        (false, Some(true)) => "With no stiffeners, for nobody spoke of them, under a stiff rim",
        (false, Some(false)) => "With no stiffeners, for nobody spoke of them, under a free rim",
        (true, None) => "Between the stiffeners stated, under a free rim, for nobody spoke of it",
        (true, Some(true)) => "Between the stiffeners stated, under a stiff rim",
        (true, Some(false)) => "Between the stiffeners stated, under a free rim",
    };
    let bends = walls.stress.map_or_else(String::new, |stress| {
        format!(
            "{how}, full of water to the rim, a panel {} wide bends to {}; {} is allowed. ",
            r.show(walls.panel.q, LENGTH),
            r.show(stress.q, STRESS),
            r.show(walls.allowable.q, STRESS)
        )
    });
    r.out.para(&format!(
        "{bends}Stiffeners no more than {} apart, under a stiff rim, let the plate keep what is allowed; as flat bars of {} set on edge they are {} deep{}. The longest wall pushes its rim with {}: a flat bar of {}, laid level from corner to corner without a tie, is {} deep; a tie in the middle halves that.",
        r.show(walls.spacing.q, LENGTH),
        r.show(walls.bar.q, LENGTH),
        r.show(walls.bar_depth.q, LENGTH),
        if walls.stiffeners.is_some() { " at the distance stated" } else { " at that distance" },
        r.show(walls.rim_push.q, (&LBF, &KN)),
        r.show(walls.rim_bar.q, LENGTH),
        r.show(walls.rim_depth.q, LENGTH)
    ));
    let mut nodes = vec![walls.thickness.at, walls.pressure.at, walls.panel.at];
    nodes.extend(walls.stress.map(|x| x.at));
    nodes.extend(walls.deflection.map(|x| x.at));
    nodes.extend([walls.allowable.at, walls.spacing.at, walls.bar_depth.at, walls.rim_push.at, walls.rim_depth.at]);
    let table = r.rows(nodes);
    r.out.table(&table);
    r.out.remark("What nobody said of stiffeners and rim counts as none. The wall counts as steel throughout, unless its steel is stated apart; nothing is taken off for rust. By the theory of small deflections: beyond half the thickness the plate also carries by tension, and bends less than this says. The floor lies on a full bed and carries nothing. Ground and groundwater against a wall are not in it.");
}

fn round(r: &mut Report<'_>, cylinder: &Cylinder) {
    let printed = cylinder.printed.as_ref().map_or_else(
        || "No code of our table prints a shell for its capacity.".to_owned(),
        |[light, heavy]| {
            format!(
                "For its capacity city codes on buried tanks print shells of {} ({}) to {} ({}); they contradict one another, and hold where they are law.",
                r.show(light.thickness.q, LENGTH),
                light.code.word,
                r.show(heavy.thickness.q, LENGTH),
                heavy.code.word
            )
        },
    );
    r.out.para(&printed);
    let mut nodes = vec![cylinder.thickness.at, cylinder.capacity.at];
    nodes.extend(cylinder.printed.iter().flatten().map(|p| p.thickness.at));
    nodes.extend([cylinder.pressure.at, cylinder.hoop.at]);
    nodes.extend(cylinder.head.map(|x| x.at));
    nodes.push(cylinder.allowable.at);
    let table = r.rows(nodes);
    r.out.table(&table);
    r.out.remark("Water inside asks next to nothing of a shell; what presses from outside while it is empty governs, and is held by a rule of its own. A flat head counts under the pressure of its middle; that it is not even adds some 3 % (from memory).");
}

fn areas(r: &mut Report<'_>, says: &Says<'_>) {
    let Some(text) = says.areas() else { return };
    r.out.heading("Electrical areas, for the authority to decide");
    r.out.para(&text);
    if !says.shop.areas.volatile {
        return;
    }
    let mut table = Table::new([wide("Place", 2.0), slim("Class"), slim("Up"), slim("Out"), wide("Source", 1.6)]);
    let unit = |pair: Pair| r.system.pick(pair);
    for area in AREAS {
        let length = |q: Option<stillrise_units::Length>, pair: Pair| {
            q.map_or_else(|| "fills it".to_owned(), |q| print::in_prose(stillrise_units::Typed::si(q), unit(pair)))
        };
        table.row([
            super::capital(area.place),
            area.class.to_owned(),
            length(area.up(), LENGTH),
            length(area.out(), (&FT, &M)),
            match area.class_source {
                Some(class) => format!("{}; its class: {class}", area.source),
                None => area.source.to_string(),
            },
        ]);
    }
    r.out.table(&table);
}
