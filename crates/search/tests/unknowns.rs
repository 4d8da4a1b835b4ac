//! Each rule that may lack a fact cannot judge without it, asks for it, and never passes on its absence; through
//! the real chain. (Long because one row a fact.)

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::{Bases, claims_to_pass_on_nothing, look};
use common::{OUT, Sheet, demo, worked};
use stillrise_checks::{Subject, judge, unsettled};
use stillrise_search::Settled;

/// What is not said: a base that the rule judges, the keys that are taken out or set so that something is not
/// known, and the keys for which the rule then asks.
struct Silence {
    rule: &'static str,
    base: &'static str,
    with: &'static [(&'static str, &'static str)],
    was: &'static str,
    /// What is taken out or set.
    then: &'static [(&'static str, &'static str)],
    /// Keys of the questions; an empty one for a question without a key.
    asks: &'static [&'static str],
}

macro_rules! silences {
    ($($rule:literal: $base:literal $([$($k:literal = $v:expr),+])? $was:literal; $($key:literal = $value:expr),+ => $($ask:literal),+;)+) => {
        &[$(Silence {
            rule: $rule, base: $base, with: &[$($(($k, $v)),+)?], was: $was,
            then: &[$(($key, $value)),+], asks: &[$($ask),+],
        }),+]
    };
}

/// A rule that can find a thing unknown has a row for each key that it may miss.
static SILENCES: &[Silence] = silences! {
    "not-a-gravity-duty": "wash" "passes"; "chemical.product" = "a cleaner" => "chemical \"a cleaner\".kind";
    "not-a-gravity-duty": "wash" "passes"; "stream.oil.emulsified" = OUT => "chemical.kind";
    "not-a-gravity-duty": "wash" ["oil" = OUT] "passes"; "stream.oil.kind" = OUT => "oil.kind";
    "only-partly-gravity": "wash" "passes"; "stream.oil.emulsified" = OUT => "chemical.kind";
    "limit-it-cannot-touch": "wash" "passes"; "limit" = OUT => "limit.value";
    "rig-test-class": "wash" "not applicable"; "limit" = OUT => "limit.value";
    "rig-test-class": "wash" "not applicable"; "limit.statistic" = OUT => "limit \"oil and grease\".statistic";
    "nominal-size-too-small": "wash" [
        "asked.nominal_size" = "NS 4", "european.category" = "spill retention", "european.system" = "S-II-P"
    ] "passes"; "european.category" = OUT => "european.category";
    "nominal-size-too-small": "wash" [
        "asked.nominal_size" = "NS 10", "european.category" = "wash water", "european.system" = "S-II-I-P", "oil.density" = "870 kg/m3"
    ] "passes"; "european.system" = OUT => "european.system";
    "short-of-method-asked-for": "twin_us" [
        "regulation.methods" = "faa", "rain.path" = "100 ft", "rain.slope" = "1 %"
    ] "passes"; "rain.path" = OUT => "rain.path";
    "short-of-method-asked-for": "twin_us" [
        "regulation.methods" = "faa", "rain.path" = "100 ft", "rain.slope" = "1 %"
    ] "passes"; "rain.slope" = OUT => "rain.slope";
    "short-of-method-asked-for": "twin_us" [
        "regulation.methods" = "water-quality", "regulation.treated_depth" = "1 in", "regulation.sealed" = "100 %", "regulation.storm_type" = "type-ii"
    ] "passes"; "regulation.treated_depth" = OUT => "regulation.treated_depth";
    "short-of-method-asked-for": "twin_us" [
        "regulation.methods" = "water-quality", "regulation.treated_depth" = "1 in", "regulation.sealed" = "100 %", "regulation.storm_type" = "type-ii"
    ] "passes"; "regulation.sealed" = OUT => "regulation.sealed";
    "short-of-method-asked-for": "twin_us" [
        "regulation.methods" = "water-quality", "regulation.treated_depth" = "1 in", "regulation.sealed" = "100 %", "regulation.storm_type" = "type-ii"
    ] "passes"; "regulation.storm_type" = OUT => "regulation.storm_type";
    "short-of-method-asked-for": "wash" [
        "regulation.methods" = "residence-time", "regulation.residence" = "2 min"
    ] "passes"; "regulation.residence" = OUT => "regulation.droplet", "regulation.depth";
    "oil-outside-scope": "wash" ["asked.nominal_size" = "NS 10", "oil" = OUT] "passes"; "stream.oil.kind" = OUT => "oil.kind";
    "oil-outside-scope": "wash" ["asked.nominal_size" = "NS 10"] "passes"; "stream.oil.emulsified" = OUT => "chemical.kind";
    "bypass-with-spill": "twin_us" [
        "stream" = OUT, "spill" = OUT, "european.bypass" = "true", "european.category" = "rain"
    ] "passes"; "european.category" = OUT => "european.category";
    "stated-flow-contradicts-site": "wash" "passes"; "stream" = OUT => "stream.flow";
    "return-period-beyond-table": "twin_us" [
        "rain.table" = "rain.csv", "rain.return_period" = "10 yr"
    ] "passes"; "rain.return_period" = OUT => "rain.return_period";
    "oil-hardly-rises": "wash" ["oil" = OUT] "passes"; "stream.oil.kind" = OUT => "oil.kind";
    "oil-hardly-rises": "wash" ["oil" = OUT] "passes"; "stream.oil.kind" = "natural-ester" => "oil \"natural-ester\".density";
    "salt-in-water": "wash" "passes"; "water.salinity" = OUT => "water.salinity";
    "not-enough-fall": "wash" "passes"; "inlet.invert" = OUT => "inlet.invert";
    "not-enough-fall": "wash" "passes"; "outlet.invert" = OUT => "outlet.invert";
    "dug-too-deep": "buried" ["site.max_depth" = "9 ft"] "passes"; "site.ground" = OUT => "site.ground";
    "levels-upside-down": "buried" "passes"; "site.ground" = OUT => "site.ground";
    "rain-table-starts-late": "twin_us" ["rain.duration" = "10 min"] "passes"; "rain.duration" = OUT => "rain.duration";
    "baffle-passed-under": "wash" "passes"; "unit.dimensions.baffle_gap" = OUT => "unit.dimensions.baffle_gap";
    "density-current": "wash" ["water.inflow" = "50 °F"] "passes"; "water.inflow" = OUT => "water.inflow";
    "mesh-too-fast": "wash" [
        "unit.dimensions.mesh_velocity_limit" = "20 mm/s"
    ] "passes"; "unit.dimensions.mesh_velocity_limit" = OUT => "unit.dimensions.mesh_velocity_limit";
    "solids-hover": "wash" ["solids.oil" = "0 %"] "passes"; "solids.oil" = OUT => "solids.oil";
    "oil-leaves-on-solids": "wash" ["solids.oil" = "1 %"] "passes"; "solids.oil" = OUT => "solids.oil";
    "oil-leaves-on-solids": "wash" ["solids.oil" = "1 %"] "passes"; "limit" = OUT => "limit.value";
    "outlet-drowned": "wash" "passes"; "outlet.tailwater" = OUT => "outlet.tailwater";
    "outlet-drowned": "wash" ["inlet.invert" = OUT] "passes"; "outlet.tailwater" = "101.50 ft" => "inlet.invert";
    "outlet-drowned": "wash" ["site.ground" = OUT] "passes"; "outlet.invert" = OUT => "outlet.invert";
    "shut-off-late": "wash" [
        "unit.dimensions.mesh" = OUT, "stream.flow" = "0.1 gpm", "stated.flow" = OUT, "spill.rate" = "0.1 gpm"
    ] "passes"; "spill.closure" = OUT => "spill.closure";
    "shut-off-late": "wash" [
        "unit.dimensions.mesh" = OUT, "stream.flow" = "0.1 gpm", "stated.flow" = OUT, "spill.rate" = "0.1 gpm"
    ] "passes"; "spill" = OUT => "spill.volume", "spill.closure";
    "pump-outside-class": "pumped" [
        "inlet.pump" = "centrifugal", "inlet.pump_head" = "26 ft"
    ] "passes"; "inlet.pump" = OUT => "inlet.pump";
    "float-never-trips": "wash" "passes"; "unit.dimensions.float_density" = OUT => "unit.dimensions.float_density";
    "float-off-best": "wash" "passes"; "unit.dimensions.float_density" = OUT => "unit.dimensions.float_density";
    "draw-leaves-oil": "wash" "passes"; "unit.dimensions.oil_draw" = OUT => "unit.dimensions.oil_draw";
    "spill-above-room": "wash" "passes"; "spill" = OUT => "spill.volume";
    "spill-above-room": "wash" "passes"; "oil.density" = "1010 kg/m3" => "oil \"diesel\".density";
    "spill-without-closure": "wash" "passes"; "spill" = OUT => "spill.volume", "spill.closure";
    "spill-without-closure": "wash" "passes"; "spill.closure" = OUT => "spill.closure";
    "hopper-missing": "wash" [
        "unit.dimensions.hopper_depth" = OUT, "stream.solids" = "40 mg/L"
    ] "passes"; "stream.solids" = OUT => "stream \"wash\".solids";
    "plates-too-flat": "wash" [
        "unit.dimensions.angle" = "25 deg", "stream.solids" = "40 mg/L"
    ] "passes"; "stream.solids" = OUT => "stream \"wash\".solids";
    "shell-may-collapse": "buried" "passes"; "unit.dimensions.wall" = OUT => "unit.dimensions.wall";
    "shell-may-collapse": "buried" "passes"; "unit.dimensions.material" = "glass-fibre plastic", "site.groundwater" = "106.00 ft" => "unit.dimensions.material";
    "wall-overstressed": "wash" [
        "unit.dimensions.wall" = "0.25 in", "unit.dimensions.material" = "carbon steel",
        "unit.dimensions.stiffener_spacing" = "24 in", "unit.dimensions.stiff_rim" = "true"
    ] "passes"; "unit.dimensions.wall" = OUT => "unit.dimensions.wall";
    "wall-overstressed": "wash" [
        "unit.dimensions.wall" = "0.25 in", "unit.dimensions.material" = "carbon steel",
        "unit.dimensions.stiffener_spacing" = "24 in", "unit.dimensions.stiff_rim" = "true"
    ] "passes"; "unit.dimensions.material" = OUT => "unit.dimensions.material";
    "wall-overstressed": "wash" [
        "unit.dimensions.wall" = "0.25 in", "unit.dimensions.material" = "carbon steel",
        "unit.dimensions.stiffener_spacing" = "24 in", "unit.dimensions.stiff_rim" = "true"
    ] "passes"; "unit.dimensions.stiff_rim" = OUT => "unit.dimensions.stiff_rim";
    "wall-overstressed": "wash" [
        "unit.dimensions.wall" = "0.25 in", "unit.dimensions.material" = "carbon steel",
        "unit.dimensions.stiffener_spacing" = "24 in", "unit.dimensions.stiff_rim" = "true"
    ] "passes"; "unit.dimensions.stiffener_spacing" = OUT => "unit.dimensions.stiffener_spacing";
    "wall-overstressed": "wash" [
        "unit.dimensions.wall" = "0.25 in", "unit.dimensions.material" = "carbon steel",
        "unit.dimensions.stiffener_spacing" = "24 in", "unit.dimensions.stiff_rim" = "true"
    ] "passes"; "unit.dimensions.stiffener_spacing" = OUT, "unit.dimensions.stiff_rim" = OUT => "unit.dimensions.stiffener_spacing", "unit.dimensions.stiff_rim";
    "shell-thinner-than-codes": "buried" "passes"; "unit.dimensions.wall" = OUT => "unit.dimensions.wall";
    "shell-thinner-than-codes": "buried" "passes"; "unit.dimensions.material" = "glass-fibre plastic" => "unit.dimensions.material";
    "module-through-manway": "buried" "passes"; "unit.dimensions.module_length" = OUT => "unit.dimensions.module_length", "unit.dimensions.module_width";
    "floats-when-emptied": "buried" "passes"; "site.groundwater" = OUT => "site.groundwater";
    "pack-cannot-be-lifted": "wash" "passes"; "unit.dimensions.pack_lifts_out" = OUT => "unit.dimensions.pack_lifts_out";
    "pack-cannot-be-lifted": "wash" "passes"; "unit.dimensions.module_weight" = OUT => "unit.dimensions.module_weight";
    "pack-cannot-be-lifted": "wash" "passes"; "site.lifting" = OUT => "site.lifting";
    "does-not-fit": "wash" "passes"; "site.max_length" = OUT => "site.max_length";
    "does-not-fit": "wash" "passes"; "site.max_width" = OUT => "site.max_width";
    "floor-in-a-pit": "wash" "passes"; "site.ground" = OUT => "site.ground";
    "does-not-fit": "wash" ["site.access" = "1 ft", "site.max_width" = "7 ft"] "passes"; "site.access" = OUT => "site.access";
    "headroom-too-low": "wash" ["site.headroom" = "14 ft"] "passes"; "site.headroom" = OUT => "site.headroom";
    "floor-in-a-pit": "wash" "passes"; "inlet.invert" = OUT => "inlet.invert";
    "meter-contradicts-hours": "wash" ["stream.volume_per_day" = "7000 gal"] "passes"; "stream.flow" = OUT, "stream.hoses" = "1" => "stream \"wash\".flow";
    "floats-when-emptied": "wash" ["site.ground" = "99.00 ft", "site.groundwater" = "90.00 ft"] "passes"; "site.groundwater" = OUT => "site.groundwater";
    "inlet-falls-far": "wash" "passes"; "inlet.invert" = OUT => "inlet.invert";
    "inlet-falls-far": "wash" "passes"; "site.ground" = OUT, "outlet.invert" = OUT => "site.ground", "outlet.invert";
    "inlet-falls-far": "wash" "passes"; "site.ground" = OUT, "outlet.invert" = "97.00 ft" => "site.ground";
    "screen-too-wide": "wash" "passes"; "screen.spacing" = OUT => "screen.spacing";
    "screen-too-wide": "basin" [
        "inlet.feed" = "pump", "inlet.pump" = "centrifugal", "inlet.rate" = r#"["100 gpm"]"#, "screen.exists" = "true",
        "screen.spacing" = "1 in", "lift.passage" = "2 in"
    ] "passes"; "lift.passage" = OUT => "lift.passage";
    "no-unit-to-spare": "wash" ["unit.count" = "2"] "passes"; "unit.dimensions.rated_flow" = OUT => "unit.dimensions.rated_flow";
    "oil-tank-too-small": "wash" ["oil_tank.volume" = "600 gal"] "passes"; "spill" = OUT => "spill.volume";
    "pump-off-its-curve": "wash" "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "pump-off-its-curve": "pumped" ["inlet.pump" = "centrifugal"] "cannot judge"; "inlet.rate" = OUT => "inlet.rate";
    "pump-off-its-curve": "pumped" [
        "inlet.pump" = "centrifugal", "lift.static_lift" = "10 ft", "lift.length" = "10 ft", "lift.bore" = "6.065 in", "lift.roughness" = "0.15 mm", "lift.fittings" = "5", "lift.curve" = r#"["0 gpm: 20 ft", "50 gpm: 10.2 ft", "80 gpm: 2 ft"]"#
    ] "passes"; "lift.curve" = OUT => "lift.curve";
    "pump-off-its-curve": "pumped" [
        "inlet.pump" = "centrifugal", "lift.static_lift" = "10 ft", "lift.length" = "10 ft", "lift.bore" = "6.065 in", "lift.roughness" = "0.15 mm", "lift.fittings" = "5", "lift.curve" = r#"["0 gpm: 20 ft", "50 gpm: 10.2 ft", "80 gpm: 2 ft"]"#
    ] "passes"; "lift.static_lift" = OUT => "lift.static_lift";
    "pump-off-its-curve": "pumped" [
        "inlet.pump" = "centrifugal", "lift.static_lift" = "10 ft", "lift.length" = "10 ft", "lift.bore" = "6.065 in", "lift.roughness" = "0.15 mm", "lift.fittings" = "5", "lift.curve" = r#"["0 gpm: 20 ft", "50 gpm: 10.2 ft", "80 gpm: 2 ft"]"#
    ] "passes"; "lift.bore" = OUT => "lift.bore";
    "pump-above-rating": "wash" "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "pump-above-rating": "pumped" "passes"; "inlet.rate" = OUT => "inlet.rate";
    "pump-above-rating": "pumped" "passes"; "unit.dimensions.rated_flow" = OUT => "unit.dimensions.rated_flow";
    "pumps-together-above-rating": "wash" "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "pumps-together-above-rating": "pumped" "passes"; "inlet.rate" = OUT => "inlet.rate";
    "pumps-together-above-rating": "pumped" "passes"; "unit.dimensions.rated_flow" = OUT => "unit.dimensions.rated_flow";
    "pulsation-above-rating": "wash" "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "pulsation-above-rating": "pumped" "passes"; "inlet.rate" = OUT => "inlet.rate";
    "pulsation-above-rating": "pumped" "passes"; "inlet.pump" = OUT => "inlet.pulsation";
    "pulsation-above-rating": "pumped" "passes"; "unit.dimensions.rated_flow" = OUT => "unit.dimensions.rated_flow";
    "feed-above-cap": "wash" ["outlet.flow_cap" = "100 gpm"] "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "feed-above-cap": "pumped" "passes"; "inlet.rate" = OUT => "inlet.rate";
    "feed-above-cap": "pumped" "passes"; "inlet.pump" = OUT => "inlet.pulsation";
    "sump-overflows": "wash" "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "sump-overflows": "pumped" "passes"; "inlet.rate" = OUT => "inlet.rate";
    "sump-overflows": "pumped" "passes"; "spill.rate" = OUT => "spill.rate";
    "sump-overflows": "pumped" "passes"; "stream" = OUT => "stream.flow";
    "kind-of-pump-unknown": "wash" "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "kind-of-pump-unknown": "pumped" "passes"; "inlet.pump" = OUT => "inlet.pump";
    "kind-of-pump-unknown": "pumped" ["droplets.d50" = "90 um"] "passes"; "inlet.pump" = OUT => "inlet.pump";
    "sheared-before-unit": "wash" ["droplets.d50" = OUT] "not applicable"; "inlet.feed" = OUT => "inlet.feed";
    "sheared-before-unit": "pumped" ["inlet.dissipation" = "10 W/kg"] "passes"; "inlet.dissipation" = OUT => "inlet.dissipation";
    "emulsion-above-limit": "wash" "passes"; "limit" = OUT => "limit.value";
    "promise-under-floor": "wash" "passes"; "limit" = OUT => "limit.value";
    "promise-under-floor": "wash" [
        "limit.value" = "8 mg/L", "stream.oil.mean" = "7 mg/L", "enquiry.facility" = "residential", "stream.water" = "dewatering"
    ] "passes"; "stream.oil.mean" = OUT => "stream \"wash\".oil.mean";
    "statistic-against-mean": "wash" ["limit.variation" = "0.1"] "passes"; "limit.statistic" = OUT => "limit \"oil and grease\".statistic";
    "statistic-against-mean": "wash" ["limit.variation" = "0.1"] "passes"; "limit" = OUT => "limit.value";
    "limit-not-shown": "wash" "passes"; "limit" = OUT => "limit.value";
    "containment-too-small": "pit" ["spill.volume" = "15.3 m3"] "passes"; "containment \"pit\".voids" = OUT => "containment \"pit\".voids";
    "containment-too-small": "pit" ["spill.volume" = "13 m3"] "passes"; "rain.event_depth" = OUT => "rain.event_depth";
    "fire-water-not-held": "pit" ["spill.fire_volume" = "1 m3"] "passes"; "spill.fire_volume" = OUT => "spill.fire_volume";
    "drain-valve-open": "pit" "passes"; "containment \"pit\".drain" = OUT => "containment \"pit\".drain";
    "drain-valve-open": "pit" "passes"; "containment \"pit\".drain" = r#"["closed", { value = "open", from = "operator" }]"# => "containment \"pit\".drain";
    "containment-rain-not-drained": "pit" ["containment \"pit\".roof" = "true"] "passes"; "containment \"pit\".roof" = "false" => "containment \"pit\".drain_rate";
    "drained-water-unknown": "pit" "passes"; "containment \"basin\".oil.mean" = OUT => "containment \"basin\".oil.mean";
    "misleading-samples": "wash" ["samples.name" = "outfall", "samples.where" = "out", "samples.results" = r#"["12 mg/L", "9 mg/L"]"#, "samples.manner" = "grab"] "passes"; "samples.manner" = OUT => "samples \"outfall\".manner";
    "frost-outdoors": "wash" "passes"; "site.coldest_air" = OUT => "site.coldest_air";
    "oil-too-thick": "wash" ["oil" = OUT] "passes"; "stream.oil.kind" = OUT => "oil.kind";
    "rain-not-allowed": "wash" ["surface.name" = "yard", "surface.area" = "2000 ft2", "surface.kind" = "asphalt", "outlet.to" = "sanitary sewer", "outlet.rain_allowed" = "true"] "passes"; "outlet.rain_allowed" = OUT => "outlet.rain_allowed";
    "rain-not-allowed": "wash" ["surface.name" = "yard", "surface.area" = "2000 ft2", "surface.kind" = "asphalt", "outlet.to" = "sanitary sewer", "outlet.rain_allowed" = "true"] "passes"; "outlet.to" = OUT => "outlet.to";
    "fuel-dissolves-uncounted": "wash" ["oil" = OUT] "passes"; "stream.oil.kind" = OUT => "oil.kind";
    "gasoline-vapour": "wash" ["oil" = OUT] "passes"; "stream.oil.kind" = OUT => "oil.kind";
};

#[test]
fn what_nobody_said_cannot_be_judged_and_is_asked_for() {
    let (demo, mut bases, mut wrong) = (demo(), Bases::default(), Vec::new());
    for row in SILENCES {
        let (sheet, base) = bases.of(row.base, row.with, &demo);
        let before = look(base, row.rule);
        let silent = row.then.iter().fold(sheet.clone(), |sheet, (key, value)| sheet.with(key, value)).settle(&demo);
        let after = look(&silent, row.rule);
        let asks: Vec<&str> = after.asks().iter().map(|ask| ask.key.as_deref().unwrap_or("")).collect();
        wrong.extend(claims_to_pass_on_nothing(&silent));
        if before.word() != row.was || after.word() != "cannot judge" || asks != row.asks {
            wrong.push(format!(
                "{}: {} {:?}, {:?}\n  base, should be {}: {}: {}\n  then, should ask for {:?}: {}: {}: {:?}",
                row.rule,
                row.base,
                row.with,
                row.then,
                row.was,
                before.word(),
                before.says(),
                row.asks,
                after.word(),
                after.says(),
                after.asks(),
            ));
        }
        // Whatever else is open in these jobs has a row of its own.
        for judged in silent.verdicts.iter().filter(|j| j.verdict.word() == "cannot judge") {
            assert!(SILENCES.iter().any(|s| s.rule == judged.rule.id), "{} has no row", judged.rule.id);
        }
        // Each question is one sentence that can be sent, and the caller gets it once.
        let asked = unsettled(&silent.verdicts);
        for ask in after.asks() {
            assert!(ask.question.ends_with('?'), "{}: {}", row.rule, ask.question);
            assert_eq!(asked.iter().filter(|u| u.ask.same() == ask.same()).count(), 1, "{}", row.rule);
        }
    }
    assert!(wrong.is_empty(), "{} of {} rows\n{}", wrong.len(), SILENCES.len(), wrong.join("\n"));
}

#[test]
fn no_worked_job_passes_on_nothing() {
    for job in worked() {
        assert_eq!(claims_to_pass_on_nothing(&job.settle(&demo())), Vec::<String>::new(), "{}", job.name);
    }
}

/// Rules that look at the enquiry, the basis or the unit as laid out, and need nothing that a unit will do.
const NEED_NO_PERFORMANCE: &[&str] = &[
    "unknown-decision",
    "not-a-gravity-duty",
    "only-partly-gravity",
    "no-limit-stated",
    "limit-it-cannot-touch",
    "rig-test-class",
    "class-without-type-test",
    "nominal-size-too-small",
    "oil-outside-scope",
    "bypass-with-spill",
    "claims-contradict",
    "levels-upside-down",
    "rain-not-allowed",
    "stated-flow-contradicts-site",
    "meter-contradicts-hours",
    "rain-table-starts-late",
    "return-period-beyond-table",
    "oil-hardly-rises",
    "salt-in-water",
    "droplet-table-starts-late",
    "oil-too-thick",
    "feed-above-cap",
    "pump-above-rating",
    "pumps-together-above-rating",
    "pulsation-above-rating",
    "containment-too-small",
    "fire-water-not-held",
    "drain-valve-open",
    "containment-rain-not-drained",
    "drained-water-unknown",
    "misleading-samples",
    "polar-oil",
    "reporting-limit-above-limit",
    "pump-outside-class",
    "pump-off-its-curve",
    "screen-too-wide",
    "oil-tank-too-small",
    "sump-overflows",
    "kind-of-pump-unknown",
    "sheared-before-unit",
    "emulsion-above-limit",
    "promise-under-floor",
    "outside-trusted-range",
    "frost-outdoors",
    "fuel-dissolves-uncounted",
    "gasoline-vapour",
];

#[test]
fn where_the_chain_stops_no_rule_passes_on_what_is_missing() {
    let demo = demo();
    let settled = Sheet::data("wash").with("unit.dimensions.lip", "47 in").settle(&demo);
    assert!(settled.job.design.performance.is_none(), "the chain is meant to stop");
    for judged in settled.verdicts.iter().filter(|j| !NEED_NO_PERFORMANCE.contains(&j.rule.id)) {
        let expected = match judged.rule.id {
            "chain-stopped" => "fails",
            // Whether there is a spill with a closure is known without a unit.
            "spill-without-closure" => "passes",
            // Nobody said how deep may be dug, with or without a unit.
            "dug-too-deep" => "not applicable",
            // No authority's method is asked for.
            "short-of-method-asked-for" => "not applicable",
            _ => "cannot judge",
        };
        assert_eq!(judged.verdict.word(), expected, "{}: {}", judged.rule.id, judged.verdict.says());
    }
    let asked: Vec<_> = unsettled(&settled.verdicts).into_iter().filter(|u| u.ask.key.is_none()).collect();
    assert_eq!(asked.len(), 1, "{asked:?}");
    assert!(asked[0].ask.question.contains("lip"), "{asked:?}");
}

const ONLY_IN_THE_TRAIL: &[&str] = &["claims-contradict", "outside-trusted-range"];

#[test]
fn without_a_trail_what_only_the_trail_shows_cannot_be_judged() {
    let settled = Sheet::data("wash").settle(&demo());
    let bare = Subject { ledger: None, ..settled.subject() };
    for judged in judge(&bare).iter().filter(|j| ONLY_IN_THE_TRAIL.contains(&j.rule.id)) {
        assert_eq!(judged.verdict.word(), "cannot judge", "{}", judged.rule.id);
        assert!(judged.verdict.asks().is_empty(), "a customer cannot help");
    }
}

#[test]
fn what_cannot_be_judged_neither_fails_nor_bars_and_a_decision_takes_its_question() {
    let demo = demo();
    let silent = Sheet::data("wash").with("spill", OUT).with("outlet.tailwater", OUT);
    let settled = silent.settle(&demo);
    assert_eq!(look(&settled, "spill-above-room").word(), "cannot judge");
    assert!(!settled.fails(), "what is not known is no failure");
    assert!(settled.pick.as_ref().is_some_and(|pick| pick.fits), "and bars no unit");
    let keys = |settled: &Settled| {
        let asked = unsettled(&settled.verdicts);
        asked.iter().map(|u| (u.rule.id, u.ask.same().to_owned())).collect::<Vec<_>>()
    };
    let asked = keys(&settled);
    // Three rules ask for the spill, two for its closure; the first of each is named.
    assert_eq!(asked.iter().filter(|(_, key)| key == "spill.volume").count(), 1, "{asked:?}");
    assert!(asked.contains(&("outlet-drowned", "outlet.tailwater".to_owned())), "{asked:?}");
    let decided = silent
        .with("decision.rule", "outlet-drowned")
        .with("decision.decision", "by others")
        .with("decision.because", "the municipality keeps the outfall free")
        .settle(&demo);
    assert_eq!(look(&decided, "outlet-drowned").word(), "cannot judge", "a decision hides nothing");
    assert!(keys(&decided).iter().all(|(_, key)| key != "outlet.tailwater"));
}

#[test]
fn an_oil_of_unknown_viscosity_is_neither_thin_nor_without_a_film() {
    let settled = Sheet::data("wash").settle(&demo());
    // No oil of the handbook is without an answer within the bounds of an enquiry, so the answer is taken out.
    let mut design = settled.job.design.clone();
    for oil in design.basis.iter_mut().flat_map(|b| &mut b.fluids.oils) {
        oil.viscosity = None;
    }
    if let Some(zones) = design.performance.as_mut().and_then(|p| p.zones.as_mut()) {
        zones.film = None;
    }
    let verdicts = judge(&Subject { design: &design, ..settled.subject() });
    for rule in ["oil-too-thick", "film-dragged"] {
        assert_eq!(look(&settled, rule).word(), "passes");
        let found = verdicts.iter().find(|j| j.rule.id == rule).expect("a rule");
        assert_eq!(found.verdict.word(), "cannot judge", "{rule}: {}", found.verdict.says());
    }
    assert_eq!(unsettled(&verdicts).iter().filter(|u| u.ask.question.contains("viscosity")).count(), 1, "asked once");
}
