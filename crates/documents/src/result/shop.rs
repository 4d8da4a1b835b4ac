//! Shop and installation in `result.json`.

use super::{fields, val};
use serde_json::{Value, json};
use stillrise_design::performance::Performance;
use stillrise_design::performance::shop::cylinder::Printed;
use stillrise_design::provenance::{Ledger, Node};
use stillrise_handbook::ground::electrical_areas::AREAS;
use stillrise_units::System;

/// What a shop and whoever installs the unit would ask; null of a unit that stands.
pub(super) fn shop(p: &Performance, ledger: &Ledger, system: System) -> Value {
    let v = |at: Node| val(ledger, at, system);
    let Some(shop) = &p.shop else { return Value::Null };
    json!({
        "weights": shop.weights.as_ref().map(|w| json!({
            "empty": w.empty.map(|x| v(x.at)), "stated": w.stated, "options_added": w.options_added, "water": v(w.water.at),
            "sludge_over_water": w.sludge.map(|x| v(x.at)), "operating": w.operating.map(|x| v(x.at)),
            "full_to_top": w.test.map(|x| v(x.at)), "under_floor": w.bearing.map(|x| v(x.at)), "on_a_leg": w.leg.map(|x| v(x.at)), "centre": w.centre.map(|x| v(x.at)),
        })),
        "lifting": shop.lifting.as_ref().map(|l| json!({
            "points": v(l.points.at), "angle": v(l.angle.at), "legs": v(l.legs.at), "pulls": l.pulls.as_ref().map(|x| fields(ledger, &x.fields(), system)),
        })),
        "walls": shop.walls.as_ref().map(|w| json!({
            "thickness": v(w.thickness.at), "pressure": v(w.pressure.at), "panel": v(w.panel.at), "stiffeners": w.stiffeners.map(|x| v(x.at)), "stiff_rim": w.rim,
            "stress": w.stress.map(|x| v(x.at)), "deflection": w.deflection.map(|x| v(x.at)), "allowable": v(w.allowable.at), "spacing": v(w.spacing.at),
            "bar": v(w.bar.at), "bar_depth": v(w.bar_depth.at), "rim_push": v(w.rim_push.at), "rim_bar": v(w.rim_bar.at), "rim_depth": v(w.rim_depth.at),
        })),
        "cylinder": shop.cylinder.as_ref().map(|c| {
            let printed = |p: &Printed| json!({ "code": p.code.word, "thickness": v(p.thickness.at) });
            json!({
                "thickness": v(c.thickness.at), "capacity": v(c.capacity.at), "printed": c.printed.as_ref().map(|both| both.iter().map(printed).collect::<Vec<_>>()),
                "pressure": v(c.pressure.at), "hoop": v(c.hoop.at), "flat_head": c.head.map(|x| v(x.at)), "allowable": v(c.allowable.at),
            })
        }),
        "saddles": shop.saddles.as_ref().map(|x| fields(ledger, &x.fields(), system)),
        "frost": shop.frost.as_ref().map(|f| json!({
            "air": v(f.air.at), "area": v(f.area.at), "insulation": f.insulation.map(|x| v(x.at)), "water": v(f.water.at), "loss": v(f.loss.at),
            "freezes_in": f.freezes_in.map(|x| v(x.at)), "kept_at": v(f.kept.at), "with_insulation": v(f.with.at), "heater": v(f.heater.at), "heater_bare": v(f.heater_bare.at),
        })),
        "vent": shop.vent.as_ref().map(|x| json!({
            "air": v(x.air.at), "difference": v(x.difference.at), "bore": v(x.bore.at), "proposed": v(x.least.at), "pipe": x.size.map(|size| size.word),
        })),
        "protection": shop.protection.as_ref().map(|x| fields(ledger, &x.fields(), system)),
        "areas": {
            "oils": shop.areas.oils.iter().map(|o| json!({ "oil": o.oil, "flash": v(o.flash.at), "class": o.shown() })).collect::<Vec<_>>(),
            "drawn": AREAS.iter().filter(|_| shop.areas.volatile).map(|a| json!({
                "place": a.place, "class": a.class, "up_in": a.up_in, "out_ft": a.out_ft, "source": a.source.to_string(),
            })).collect::<Vec<_>>(),
        },
        "stops": shop.stops.iter().map(ToString::to_string).collect::<Vec<_>>(),
    })
}
