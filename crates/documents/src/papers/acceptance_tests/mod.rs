//! The acceptance-test plan: what shop and site test, what is expected, and what samples would show.

mod samples;

use super::site::{AGREED, MAKER, Site, signed};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::Report;
use crate::report::blocks::{Table, blank, slim, wide};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::train::StageKind;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::catalog::{DEG, FT, IN, KG, KN, KPA, LB, LBF, M, MIN, MM, NEWTON, PERCENT, PSF};
use stillrise_units::{Typed, print};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "acceptance-tests",
    title: "Acceptance-test plan",
    about: "For shop, contractor and client: what is tested where, how, what is expected, and with what the result is recorded.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::unit,
    make: |r, _| make(r),
};

/// No drop of water comes out.
const NONE: &str = "none";

/// Tests of one place, numbered behind its letter.
struct Tests {
    letter: char,
    table: Table,
    count: usize,
}

impl Tests {
    fn new(letter: char) -> Self {
        let table = Table::new([
            slim("No."),
            wide("Test", 1.1),
            wide("How", 2.0),
            wide("Expected", 1.9),
            wide("Tolerance", 1.0),
            blank("Found", 20.0),
            blank("Signed, date", 20.0),
        ]);
        Self { letter, table, count: 0 }
    }
    fn add(&mut self, test: &str, how: &str, expected: &str, tolerance: &str) {
        self.count += 1;
        self.table.row([&format!("{}{}", self.letter, self.count), test, how, expected, tolerance, "", ""]);
    }
}

fn make(r: &mut Report<'_>) {
    let Some(u) = Site::of(r) else { return };
    u.opening(r);
    r.out.remark("Where a tolerance is \"to be agreed\", client and maker put a number before the test; none is proposed where none is published. What is found is written with its unit. The tests on site are made in their order, before any oily water comes, with the unit set, piped and wired.");
    if !r.settled.job.enquiry.unit_stands() {
        r.out.section(if u.built_in() { "Tests of the internals in the shop" } else { "Tests in the shop" });
        let tests = shop(&u);
        r.out.form(&tests.table, 5.0);
    }
    r.out.section("Tests on site, with clean water");
    let tests = site(&u);
    r.out.form(&tests.table, 5.0);
    samples::samples(r, &u);
    r.out.section("Result");
    signed(r, &["Maker", "Contractor on site", "Client", "Witness, authority"]);
    u.cautions(r, &["not treated", "confined space", "vapour", "lifting", "open covers", "fill first", "waste"]);
}

/// How level what must be level is.
fn within(u: &Site<'_>) -> String {
    format!("{AGREED}; {} is common practice", u.slope())
}

fn shop(u: &Site<'_>) -> Tests {
    let mut t = Tests::new('S');
    let unit = u.unit();
    let known = &unit.particulars;
    let shop = u.performance.and_then(|p| p.shop.as_ref());
    if !u.built_in() {
        t.add(
            "Dimensions and nozzles",
            "Measure against the sheets \"General arrangement\" and \"Internals\"; levels from the floor inside",
            &sizes(u),
            AGREED,
        );
    }
    if let Some(pack) = &unit.pack {
        let modules = known.modules.map_or_else(|| format!("modules {MAKER}"), |n| format!("{n} modules"));
        let of = known.plate_material.as_ref().map_or_else(String::new, |of| format!(", {of}"));
        let expected = format!(
            "{modules}; gap {}, plates at {}{of}",
            u.say(pack.laid.gap.q, (&IN, &MM)),
            u.say(pack.laid.angle.q, (&DEG, &DEG))
        );
        t.add("Plates", "Count the modules; gauge the gap at five places of each; look for bent or loose plates; lift one out and set it back", &expected, AGREED);
    }
    if let Some(mesh) = &unit.mesh {
        let expected = format!("{} thick along the flow, no way round it", u.say(mesh.laid.thickness.q, (&IN, &MM)));
        t.add("Mesh", "Measure it; look along its edges for gaps", &expected, AGREED);
    }
    if u.coated() {
        let coating = known.coating.as_deref().map_or_else(|| format!("system and thickness {MAKER}"), str::to_owned);
        t.add(
            "Coating",
            "Look at all of it, inside and out; gauge its thickness; search for pinholes with a detector, before the water test",
            &format!("{coating}; no pinhole, no bare weld"),
            "as the coating's maker writes",
        );
    }
    if u.built_in() {
        let heaviest = known.module_weight.map_or_else(|| MAKER.to_owned(), |w| u.say(w.q, (&LB, &KG)));
        if unit.pack.is_some() {
            t.add("Weight of the heaviest module", "Weigh it, wet", &heaviest, AGREED);
        }
    } else {
        let weighs = shop.and_then(|shop| shop.weights.as_ref()).map_or_else(String::new, |w| {
            let mass = |q| u.say(q, (&LB, &KG));
            let test = w.test.map_or_else(
                || format!("; the water alone weighs {}", mass(w.full.q)),
                |x| format!("; it weighs {} then", mass(x.q)),
            );
            let floor =
                w.bearing.map_or_else(String::new, |p| format!(", {} under its floor", u.say(p.q, (&PSF, &KPA))));
            test + &floor
        });
        let saddle = shop.and_then(|shop| shop.saddles.as_ref()).map_or_else(String::new, |saddles| {
            format!(". On two saddles the heavier end carries {}", u.say(saddles.load.q, (&LBF, &KN)))
        });
        t.add(
            "Water test, full to the top",
            &format!("Nozzles closed, on a base that carries it; fill with clean water to the top, let it stand, wipe dry and look at every weld, joint and nozzle{saddle}"),
            &format!("No drop comes out, the level does not fall, nothing bulges for good{weighs}"),
            &format!("leaks: {NONE}; how long: {AGREED}, overnight is common practice"),
        );
    }
    float(u, &mut t);
    if let (false, Some(lifting)) = (u.built_in(), shop.and_then(|shop| shop.lifting.as_ref())) {
        let weights = shop.and_then(|shop| shop.weights.as_ref());
        let weight =
            weights.and_then(|w| w.empty).map_or_else(|| format!("weight {MAKER}"), |w| u.say(w.q, (&LB, &KG)));
        let hook = weights.and_then(|w| w.centre).map_or_else(String::new, |x| {
            format!("; level with the hook {} from the tip of the inlet end", u.len(x.q))
        });
        let how = format!(
            "Empty and dry, a hand's breadth off the floor, by all {} points at once, over a scale",
            print::digits(lifting.points.q.si(), 2)
        );
        t.add("Trial lift", &how, &format!("{weight}{hook}"), AGREED);
    }
    t
}

/// Levels and sizes that are measured, in a sentence.
fn sizes(u: &Site<'_>) -> String {
    let unit = u.unit();
    let mut says = format!(
        "inlet invert {}, outlet invert {}, crest {}",
        u.len(unit.inlet.invert.q),
        u.len(unit.outlet.invert.q),
        u.len(unit.outlet.crest.q)
    );
    if let Some([length, width, height]) = unit.particulars.shipping.as_ref().filter(|_| !u.built_in()) {
        says += &format!("; over all {} x {} x {}", u.len(length.q), u.len(width.q), u.len(height.q));
    }
    says
}

/// The alarm's float, before it is hung.
fn float(u: &Site<'_>, t: &mut Tests) {
    let Some(alarm) = u.layer() else { return };
    let force = |q| u.say(q, (&LBF, &NEWTON));
    let levels = u.performance.map_or(&[][..], |p| &p.levels);
    for oil in levels {
        let (down, up) = (oil.float.down.q, oil.float.up.q);
        let expected = if down.si() > 0.0 && up.si() > 0.0 {
            format!(
                "Sinks in the oil with {}, rises in the water with {}; contact changes both times",
                force(down),
                force(up)
            )
        } else {
            "By the calculation it does not change over in this oil: another float before this test".to_owned()
        };
        let how = format!(
            "Hang it in a bucket of {}, then in a bucket of the water that it will stand in, with a meter on its contact",
            oil.oil
        );
        t.add("Float in oil and in water", &how, &expected, "changes over, or does not");
    }
    t.add(
        "Float, where it hangs",
        "Measure from the floor to the float's middle on its bracket; lift and drop it",
        &format!("Changes over at {} above the floor", u.len(alarm.interface.q)),
        AGREED,
    );
}

fn site(u: &Site<'_>) -> Tests {
    let mut t = Tests::new('C');
    let unit = u.unit();
    let (stands, crest) = (u.settled.job.enquiry.unit_stands(), unit.outlet.crest.q);
    if u.built_in() && !stands {
        t.add(
            "Dimensions and nozzles",
            "Measure against the sheets \"General arrangement\" and \"Internals\"; levels from the floor inside",
            &sizes(u),
            AGREED,
        );
        t.add("Water test of the walls", "Before the ground is filled in against them: full to the top, let it stand, look at every joint; a second, open vessel beside it shows what dries off", "Level falls no more than in the open vessel", &format!("{AGREED}; how long: {AGREED}"));
    }
    let of = if u.weir() {
        "Level on the weir's crest, both ways"
    } else {
        "Level on the rim or the nozzle faces, both ways; invert of the outlet by instrument"
    };
    t.add("Set level", of, &format!("crest at {}", u.level(crest)), &within(u));
    t.add(
        "Filling",
        "Clean water by meter from the inlet side until it runs out at the outlet",
        &format!("{}{}", u.fill(), u.each()),
        AGREED,
    );
    t.add(
        "Level at rest",
        "Inlet shut, wait until nothing runs out; measure from the floor or down from the rim",
        &u.level(crest),
        AGREED,
    );
    let buried = if u.cover().is_some() { ", before the covering fill" } else { "" };
    t.add(
        "Tightness",
        &format!("Let it stand full, outlet plugged{buried}; look at nozzles and joints"),
        "Level does not fall",
        &format!("{NONE}; how long: {AGREED}"),
    );
    trips(u, &mut t);
    pumps(u, &mut t);
    if let Some(highest) = u.highest() {
        let flow = u.say(highest.flow.q, FLOW_UNITS);
        if highest.inlet.q > unit.shape.height() {
            t.add(
                "Largest flow",
                &format!("Not to be run: {flow} through one unit"),
                "By the calculation the water would stand over its top",
                "settle this first",
            );
        } else {
            let how = format!(
                "Feed {flow} of clean water through one unit until levels are steady; by the feed's own means or from a tank"
            );
            let expected = format!(
                "Nothing runs over. No higher than: clear well {}, oil zone {}, inlet chamber {}; top of the vessel {}. Clean it stands lower: these are for fouled internals and the coldest water",
                u.len(highest.well.q),
                u.len(highest.chamber.q),
                u.len(highest.inlet.q),
                u.len(unit.shape.height())
            );
            t.add("Largest flow without overflow", &how, &expected, "not over these levels");
        }
    }
    if u.several() {
        let share = u.train.imbalance.map_or_else(
            || "like shares".to_owned(),
            |x| format!("none gets over {} more than its share", u.say(x.q, (&PERCENT, &PERCENT))),
        );
        t.add(
            "Shares of the units",
            "At the largest flow, compare the heads over the outlets or time a measured rise in each",
            &share,
            AGREED,
        );
    }
    if !unit.body.is_open() {
        let vent = u.performance.and_then(|p| p.shop.as_ref()?.vent.as_ref());
        let size = vent.map_or_else(String::new, |v| format!(", bore {} at least", u.len(v.least.q)));
        t.add("Vents", "Hold a ribbon to each while it fills", &format!("Air comes out of each{size}"), NONE);
    }
    if u.stage(StageKind::SamplePoint).is_some() {
        t.add(
            "Sample point",
            "Fill a bottle at the largest flow and at a small one",
            "The bottle fills from a falling stream, clear of the walls",
            NONE,
        );
    }
    t
}

/// What the float does on site.
fn trips(u: &Site<'_>, t: &mut Tests) {
    let (Some(oil), Some(alarm)) = (u.governing(), u.layer()) else { return };
    t.add(
        "High-oil alarm",
        &format!("No flow, clean water only: draw water off slowly {} until it sounds; measure the water there, fill up again. Water that falls stands for an interface that falls", u.drain()),
        &format!("Sounds with the water at {}; the label reads {}; whoever is on duty is called", u.level(alarm.interface.q), Site::LABEL),
        &format!("{AGREED}: bracket, switch and density of the water"),
    );
    if let Some(shut) = oil.level(Mark::ShutOff) {
        let stops = match (u.stage(StageKind::Closure).is_some(), u.pumped()) {
            (true, _) => "the outlet closure shuts",
            (false, true) => "the feed pumps stop",
            (false, false) => "the valve ahead is shut, by hand where nothing drives it",
        };
        t.add(
            "Shut-off",
            "Draw off further, or lower the float of the shut-off by hand if there is one",
            &format!("With the water at {} {stops}; it stays so until somebody resets it", u.level(shut.interface.q)),
            AGREED,
        );
    }
    if u.stage(StageKind::Closure).is_some() {
        t.add(
            "Outlet closure",
            "Trip it by hand at a small flow; look at the outlet and at what rises behind it",
            "Shuts tight; where the water goes that still arrives was settled before",
            &format!("leak: {AGREED}"),
        );
    }
}

/// Pumps to it and in it.
fn pumps(u: &Site<'_>, t: &mut Tests) {
    if u.pumped() {
        let feed = u.settled.job.design.basis.as_ref().map(|basis| &basis.feed);
        let lift = feed.and_then(|feed| feed.lift.as_ref());
        let head = |q| u.say(q, (&FT, &M));
        let mut expected: Vec<String> = Vec::new();
        for point in lift.map_or(&[][..], |lift| &lift.points) {
            let Ok((flow, at)) = point.at else { continue };
            expected.push(format!(
                "{} of them: {} at a head of {}",
                print::digits(point.pumps.q.si(), 2),
                u.say(flow.q, FLOW_UNITS),
                head(at.q)
            ));
        }
        if expected.is_empty() {
            let all = feed.and_then(|feed| feed.all_pumps.filter(|_| feed.together));
            let one = feed.and_then(|feed| feed.one_pump);
            expected.extend(one.map(|q| format!("one pump {}", u.say(q.q, FLOW_UNITS))));
            expected.extend(
                all.filter(|all| one.is_none_or(|one| one.q != all.q))
                    .map(|q| format!("all together {}", u.say(q.q, FLOW_UNITS))),
            );
        }
        let expected = if expected.is_empty() { format!("flow {MAKER}") } else { expected.join("; ") };
        t.add("Feed pumps", "Raise and lower the sump by hand: each starts and stops at its level; time the draw-down of the sump for the flow", &format!("{expected}. Levels of start and stop {AGREED}"), AGREED);
    }
    if let Some(pumps) = &u.unit().pump_out {
        let runs = u.performance.and_then(|p| p.pump_out.as_ref());
        let cycle = runs.map_or_else(String::new, |runs| {
            format!("; no two starts closer than {}", u.say(runs.cycle.q, (&MIN, &MIN)))
        });
        let expected = format!(
            "First starts at {}, second and alarm at {}, both stop at {}; one lifts {}{cycle}",
            u.len(pumps.start.q),
            u.len(pumps.alarm.q),
            u.len(pumps.stop.q),
            u.say(pumps.pump.q, FLOW_UNITS)
        );
        t.add("Effluent pumps", "Let the compartment fill; watch both; time the draw-down for the flow; shut one off and see the other take over", &expected, AGREED);
    }
}
