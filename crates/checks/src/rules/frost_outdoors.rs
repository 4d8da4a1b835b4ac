//! Rule: frost outdoors

use crate::ask::COLDEST_AIR;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::installation::Stands;
use stillrise_units::catalog::{D, DEG_C, DEG_F, FT, H, IN, KW, M, MM};
use stillrise_units::{Temperature, Typed};

rule! {
    "frost-outdoors" "Frost on a unit outdoors", Site;
    client "What of the unit stands above the frost depth may freeze in winter where it is neither heated nor insulated."
    looks "The coldest air at a unit that is not said to stand indoors and not said to be protected: below freezing it fails, for walls below the ground it warns, unknown it cannot judge."
    matters "Still water freezes: ice lifts plates, blocks outlet, floats and sample pipe, and can burst nozzles."
    remedy "Insulation with a heater or tracing of what stands above the local frost depth, or, for one above the ground, a heated room; to drain it for the winter only where no water comes then and no groundwater can lift it."
    source "Common practice of the trade; water freezes at {32 °F|0 °C}"
    limits "Takes the air alone. Warm water that never stops keeps a unit open in light frost; a cold week without flow does not."
}

/// Freezing point of fresh water.
const FREEZING: f64 = 0.0;

/// How soon it begins to freeze, and what a heater has to give.
fn cools(s: &Subject<'_>) -> String {
    let shop = s.design.performance.as_ref().and_then(|p| p.shop.as_ref());
    let Some(frost) = shop.and_then(|shop| shop.frost.as_ref()) else { return String::new() };
    let warm = |q| s.show(q, (&DEG_F, &DEG_C));
    let insulated = frost.insulation.is_some_and(|thickness| thickness.q.si() > 0.0);
    let freezes = frost.freezes_in.map_or_else(String::new, |time| {
        format!(
            "; standing still behind {} walls, water of {} begins to freeze after some {}",
            if insulated { "its insulated" } else { "bare" },
            warm(frost.water.q),
            s.show(time.q, if time.q.si() < 172_800.0 { (&H, &H) } else { (&D, &D) })
        )
    });
    format!(
        "{freezes}; to hold it at {} a heater has to give {} behind {} of insulation, {} behind none",
        warm(frost.kept.q),
        s.show(frost.heater.q, (&KW, &KW)),
        s.show(frost.with.q, (&IN, &MM)),
        s.show(frost.heater_bare.q, (&KW, &KW))
    )
}

fn look(s: &Subject<'_>) -> Verdict {
    let site = &s.enquiry.site;
    if *site.indoors == Some(true) {
        return Verdict::skips("the unit stands in a heated room");
    }
    let air = site.coldest_air.q();
    if *site.frost_protected == Some(true) {
        return Verdict::passes("the unit is said to be protected against frost");
    }
    let Some(air) = air else {
        let says = "the unit is not said to stand in a heated room or to be protected, and the coldest air, to be held against freezing, is not stated";
        return Verdict::cannot_judge(says, [COLDEST_AIR], None);
    };
    let shown = s.show(air, (&DEG_F, &DEG_C));
    let installation = s.design.performance.as_ref().map(|p| &p.site.installation);
    // Where nothing was laid out, what was asked for is what will be.
    let built_in = s.design.train.as_ref().is_some_and(|train| train.unit.arrangement.is_built_in());
    let buried = built_in || installation.map_or(*site.buried == Some(true), |i| i.stands.q == Stands::Buried);
    if air < Temperature::of(FREEZING, &DEG_C) && buried {
        let depth = |q| s.show(q, (&FT, &M));
        let cover = installation.and_then(|i| i.cover).map(|cover| cover.q);
        return match (site.frost_depth.q(), cover) {
            (Some(frost), Some(cover)) if cover >= frost => Verdict::passes(format!(
                "coldest air {shown}; {} of ground lie over its top, and it freezes {} deep: covers and vents above that have to stay open",
                depth(cover),
                depth(frost)
            )),
            (Some(frost), Some(cover)) => Verdict::warns(
                format!(
                    "coldest air {shown}; {} of ground lie over its top, and it freezes {} deep: covers, vents, the pipes and the water that stand as high freeze",
                    depth(cover),
                    depth(frost)
                ),
                None,
            ),
            (Some(frost), None) => Verdict::warns(
                format!("coldest air {shown}; it is to lie in the ground, and what of it lies less than {} deep freezes", depth(frost)),
                None,
            ),
            (None, _) => Verdict::warns(
                format!("coldest air {shown}; it lies in the ground, and what lies above the local frost depth freezes: covers, inlet, vents, and the water where it stands as high"),
                None,
            ),
        };
    }
    let unprotected = if *site.frost_protected == Some(false) {
        "nothing protects the unit"
    } else {
        "the unit is not said to stand in a heated room or to be protected"
    };
    if air < Temperature::of(FREEZING, &DEG_C) {
        Verdict::fails(format!("coldest air {shown}, and {unprotected}{}", cools(s)), None)
    } else {
        Verdict::passes(format!("coldest air {shown}, not below freezing"))
    }
}
