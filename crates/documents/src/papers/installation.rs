//! The installation guide: from the truck to the hand-over.

use super::site::{AGREED, MAKER, Site, schedule};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::drawings;
use crate::drawings::tables;
use crate::report::blocks::{Checks, Table, slim, wide};
use crate::report::{Report, sentence};
use crate::section::place::zero;
use crate::summary::ground::planes;
use crate::summary::shop::Says;
use crate::summary::stands;
use stillrise_design::performance::flotation::Flotation;
use stillrise_design::train::StageKind;
use stillrise_handbook::ground::anchors::RULES;
use stillrise_handbook::shop::vents;
use stillrise_units::catalog::{FT, KG, KN, LB, LBF, M, M3, YD3};
use stillrise_units::{System, Typed, print, spoken};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "installation-guide",
    title: "Installation guide",
    about: "For the contractor: unloading, base or pit, setting, holding down, filling in, pipes, vents and electrics, up to the hand-over.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::offer,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let Some(u) = Site::of(r) else { return };
    u.opening(r);
    let sheets = r.sheets.clone().unwrap_or_else(|| drawings::kinds(r.settled, r.edition));
    let named = |title: &str| sheets.iter().any(|sheet| sheet == title);
    if !sheets.is_empty() {
        r.out.para(&format!("Read with the drawing set of the same revision; its sheets: {}.", sheets.join("; ")));
    }
    let says = Says::of(r.settled);
    lifting(r, &u, says.as_ref());
    base(r, &u, named("setting and loads"));
    if let Some(f) = u.performance.and_then(|p| p.flotation.as_ref()) {
        hold_down(r, &u, f);
    }
    if u.in_ground() {
        backfill(r, &u);
    }
    pipes(r, &u, named("installation profile"));
    vents_and_power(r, &u, says.as_ref());
    r.out.section("Hand-over");
    let checks = hand_over(&u);
    r.out.checks(&checks);
    let mut words = vec!["lifting", "confined space", "vapour", "hot work", "open covers"];
    if u.in_ground() {
        words.push("flotation");
    }
    u.cautions(r, &words);
}

fn items(r: &mut Report<'_>, numbered: bool, all: impl IntoIterator<Item = String>) {
    r.out.list(numbered, all.into_iter().map(|text| (text, String::new())));
}

fn lifting(r: &mut Report<'_>, u: &Site<'_>, says: Option<&Says<'_>>) {
    let known = &u.unit().particulars;
    r.out.section("Unloading and lifting");
    if u.built_in() {
        let module = known
            .module_weight
            .map(|w| format!(" The heaviest module of the plates weighs {}, wet and fouled.", u.say(w.q, (&LB, &KG))));
        let module = module.filter(|_| u.unit().pack.is_some()).unwrap_or_default();
        r.out.para(&format!("The vessel is built in its place; only its internals arrive.{module} They stay in their packing, under cover and off the ground, until the vessel is tight and clean."));
        return;
    }
    if let Some((heading, table)) = tables::weights(u) {
        let table = schedule(u.system, &table, 0);
        r.out.heading(&heading);
        r.out.table(&table);
    } else {
        r.out.para("Weights are not known: the maker's plate and papers say them before a crane is ordered.");
    }
    if let Some(text) = says.and_then(Says::lifting) {
        r.out.para(&text);
    }
    items(r, true, [
        "Look at the unit on the truck: dents, coating, nozzle faces; write damage on the carrier's paper before it is unloaded.".to_owned(),
        "Lift empty and dry, by all lifting points at once, with slings no flatter than above; tag lines on both ends; never by nozzles, pipes or covers.".to_owned(),
        "Stop a hand's breadth off the ground: where it hangs out of level, set down and move the hook. Hopper, internals and nozzles are not in the estimate of the centre of gravity.".to_owned(),
        if u.lies() {
            "Set it down on its saddles or on sand, chocked against rolling, not on nozzles.".to_owned()
        } else {
            "Set it down on timber under its floor, level, not on nozzles or drain.".to_owned()
        },
    ]);
}

fn base(r: &mut Report<'_>, u: &Site<'_>, sheet: bool) {
    r.out.section(match (u.built_in(), u.in_ground()) {
        (true, _) => "Pit, walls and floor",
        (false, true) => "Pit and bed",
        (false, false) => "Base",
    });
    let lines = [stands::how(r.settled), stands::room(r.settled)].into_iter().flatten();
    for line in lines.collect::<Vec<_>>() {
        r.out.para(&sentence(&line));
    }
    let weights = u.performance.and_then(|p| p.shop.as_ref()?.weights.as_ref());
    let full = weights.and_then(|w| w.test).map_or_else(
        || "the unit full to its top".to_owned(),
        |w| format!("the unit full to its top, {}", u.say(w.q, (&LB, &KG))),
    );
    let place = if sheet { ", see the sheet \"Setting and loads\"" } else { "" };
    let mut steps = Vec::new();
    if u.built_in() {
        steps.push("Walls and floor are designed by others, for water inside with no ground outside, and for ground and groundwater outside with no water inside.".to_owned());
    } else if u.in_ground() {
        steps.push(format!("Dig as the ground allows, shored or sloped; keep the pit dry while the unit is set. The bed carries {full}{place}: evenly, of the material that the engineer names, without stones."));
    } else {
        steps.push(format!(
            "The base carries {full}{place}, and does not settle unevenly: the outlet decides every level in the unit."
        ));
    }
    let crest = u.unit().outlet.crest.q;
    steps.push(match u.datum(zero()) {
        Some(floor) => format!("Set the floor at EL {floor}, so that the crest stands at {}.", u.level(crest)),
        None => format!("The elevation of the floor is not known: it is to be given before the base is made. The crest stands {} above it.", u.len(crest)),
    });
    let how = match (u.built_in(), u.in_ground()) {
        (true, _) => "Inverts, crest and baffle seats are set by instrument from one bench mark.",
        (false, true) => "Lift it and mend the bed where it is out; no wedges. Look again when it is full.",
        (false, false) => "Shim under the frame, grout, and look again when it is full.",
    };
    steps.push(format!("Level along and across: {AGREED}; {} over the crest is common practice. {how}", u.slope()));
    if let Some(under) = drawings::base(u) {
        steps.push(format!("Hopper and drain need {} under the floor: supports {MAKER}.", u.len(under)));
    }
    if !u.in_ground() {
        steps.push(
            "Anchor it to the base against wind, earthquake and a knock: number and size by the engineer who signs."
                .to_owned(),
        );
    }
    items(r, true, steps);
}

fn hold_down(r: &mut Report<'_>, u: &Site<'_>, f: &Flotation) {
    r.out.section("Hold-down");
    let force = |q| u.say(q, (&LBF, &KN));
    let mut table = Table::new([wide("Against floating, empty, one unit", 2.4), slim("Value")]);
    let mut row = |name: &str, value: Option<String>| {
        if let Some(value) = value {
            table.row([name.to_owned(), value]);
        }
    };
    row("Highest groundwater over its floor", f.groundwater.filter(|w| w.q.si() > 0.0).map(|w| u.say(w.q, (&FT, &M))));
    row("It floats with the groundwater over its floor by", f.floats_above.map(|x| u.say(x.q, (&FT, &M))));
    row("Uplift", f.uplift.map(|x| force(x.q)));
    if let Some(held) = &f.held {
        row("Its own weight", Some(force(held.weight.q)));
        row("Soil straight above it", held.soil.map(|x| force(x.q)));
        row("Soil beside that", held.wedge.map(|x| force(x.q)));
        row("Anchors as stated, under water", held.anchors.map(|x| force(x.q)));
        row("Factor reached", Some(print::digits(held.factor.q.si(), 3)));
        row(
            "Factor asked for",
            Some(format!("{}, {}", print::digits(f.wanted.q.si(), 3), f.asked.title.to_lowercase())),
        );
        row(
            "Anchors must still add",
            Some(if held.needed.q.si() > 0.0 { force(held.needed.q) } else { "nothing".to_owned() }),
        );
        if held.needed.q.si() > 0.0 {
            row("The same as concrete, tied to it", Some(u.say(held.concrete.q, (&YD3, &M3))));
        }
    }
    if f.groundwater.is_none() {
        r.out.para("Nobody said how high the groundwater stands at its highest: until it is known the unit counts as one that floats when it is empty.");
    } else if f.groundwater.is_some_and(|w| w.q.si() <= 0.0) {
        r.out.para("At its highest the groundwater stays under the floor: it lifts nothing. Look again where the pit itself can fill with rain.");
    }
    r.out.table(&table);
    if f.held.is_some() {
        r.out.remark(&format!("How soil counts: {}{}. Preliminary; pit, ground and anchors are for a licensed engineer on the site's own soil report.", f.counts.title.to_lowercase(), planes(f)));
    }
    if u.cover().is_some() && u.lies() {
        r.out.list(
            true,
            RULES
                .iter()
                .filter(|rule| u.several() || !rule.text.starts_with("Two tanks"))
                .map(|rule| (spoken(rule.text, r.system), rule.source.title.to_owned())),
        );
    }
}

fn backfill(r: &mut Report<'_>, u: &Site<'_>) {
    let crest = u.len(u.unit().outlet.crest.q);
    let filled = u.built_in() || u.cover().is_some();
    r.out.section(if filled { "Filling in, and filling with water" } else { "The pit, and filling with water" });
    let mut steps = Vec::new();
    if u.built_in() {
        steps.push("The walls are tested with water before ground lies against them; they are filled in when their concrete has its strength, in layers, on all sides alike.".to_owned());
    } else if u.cover().is_some() {
        steps.push(format!("Ground and water rise together: clean water inside keeps a step ahead of the fill outside, never the other way, up to the crest at {crest} ({}). That holds the shell in shape and the unit down.", u.fill()));
        let layer = if u.system == System::Us { "12 in" } else { "300 mm" };
        let by_hand = if u.lies() { ", worked in under the haunches by hand" } else { "" };
        steps.push(format!("Fill in layers of {layer} at most, on all sides alike{by_hand}; no stones, no frozen lumps (common practice)."));
        if let Some(cover) = u.cover() {
            steps.push(format!("Cover over the top: {}. Where traffic passes, slab and thickness by the engineer; no vehicle before that.", u.say(cover, (&FT, &M))));
        }
    } else {
        steps.push(format!("The pit stays open around the unit, drained, and safe to stand in; water inside up to the crest at {crest} before the pit can fill with rain."));
    }
    steps.push(
        "Keep groundwater down until the unit is full and held; whoever stops the pump of the pit asks first."
            .to_owned(),
    );
    items(r, true, steps);
}

fn pipes(r: &mut Report<'_>, u: &Site<'_>, profile: bool) {
    r.out.section("Pipes");
    let table = schedule(u.system, &tables::nozzles(u), 3);
    r.out.table(&table);
    r.out.remark(&tables::nozzle_note(u));
    let mut steps = vec![
        "Pipes carry themselves: no weight and no pull on a nozzle; a flexible coupling where the ground can settle.".to_owned(),
        "Inlet: falls to the unit without a drop or an elbow close to the nozzle, so that oil is not broken up; no pump ahead that is not in this submittal.".to_owned(),
        "Outlet: falls away freely; a full pipe that goes on down is vented at its high point, or it sucks the unit below its level.".to_owned(),
    ];
    if profile {
        steps.push("Inverts, falls and the outfall: sheet \"Installation profile\".".to_owned());
    }
    if u.pumped() || u.unit().pump_out.is_some() {
        steps.push(
            "Every pressure pipe has a non-return valve and a shut-off; it is tested before it is covered.".to_owned(),
        );
    }
    if u.stage(StageKind::SamplePoint).is_some() {
        steps.push(
            "Sample point: behind the unit, a falling stream that a bottle reaches from where people may stand."
                .to_owned(),
        );
    }
    items(r, true, steps);
}

fn vents_and_power(r: &mut Report<'_>, u: &Site<'_>, says: Option<&Says<'_>>) {
    r.out.section("Vents, electrics and areas");
    if let Some(text) = says.and_then(Says::vent) {
        r.out.para(&text);
    }
    if let Some(shop) = says.map(|says| says.shop).filter(|shop| shop.vent.is_some()) {
        let rules = vents::applying(shop.areas.volatile);
        r.out.list(false, rules.map(|rule| (spoken(rule.text, u.system), rule.source.title.to_owned())));
    }
    if let Some(alarm) = u.layer() {
        r.out.para(&format!("Level float: it changes over at {} above the floor. Its cable comes out above the highest level, in a conduit that is sealed against vapour; the panel stands where the alarm is seen and heard, outside the areas below. Its label reads: {}.", u.len(alarm.interface.q), Site::LABEL));
    }
    if let Some(text) = says.and_then(Says::areas) {
        r.out.para(&text);
    }
    if let Some(text) = says.and_then(Says::frost) {
        r.out.lead("Frost.", &text);
    }
    if let Some(text) = says.and_then(Says::protection) {
        r.out.lead("Corrosion in the ground.", &text);
    }
    r.out.para("Vessel, pipes and hose connections are bonded and earthed as the local code asks. Wiring, protection against explosion and the drawing of areas are designed by others.");
}

fn hand_over(u: &Site<'_>) -> Checks {
    let mut c = Checks::new("Value");
    c.step("Crest set, and looked at again when full", &u.level(u.unit().outlet.crest.q));
    if u.performance.is_some_and(|p| p.flotation.is_some()) {
        c.step("Groundwater seen in the pit, and hold-down made as the engineer signed", "");
    }
    c.step("Pipes tight, falls measured", "");
    if !u.unit().body.is_open() {
        c.step("Vents carried up, open, with caps", "");
    }
    if u.layer().is_some() {
        c.step("Panel, float and label in place", "");
    }
    c.step("Covers on; way for the tanker to the draw-off kept free", "");
    c.step("Site tests of the acceptance-test plan signed", "");
    c.step("As-built levels marked on the drawings", "");
    c.step("Start-up sheet handed to whoever starts it", "");
    c
}
