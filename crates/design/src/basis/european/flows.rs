//! Rain and waste water as EN 858-2 counts them.

use super::{Compared, SIZE};
use crate::basis::cases::Kind;
use crate::basis::chemicals::Which;
use crate::basis::stated::stated;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{self, WaterKind};
use crate::enquiry::european::{taps, waste_waters};
use crate::provenance::{Node, Trail, Val, WhatIf, given};
use crate::{by, reckon, say};
use stillrise_handbook::rain::rational_flow;
use stillrise_handbook::separation::en858_impediment_factor::UseCategory;
use stillrise_handbook::separation::en858_tap_flow::TapBore;
use stillrise_handbook::separation::{en858_tap_flow, en858_wash_equipment};
use stillrise_handbook::sources::EN_858_RUNOFF;
use stillrise_units::catalog::ONE;
use stillrise_units::{Flow, Typed, ratio};

/// Rain and waste water, and what sets them.
pub(super) struct Flows {
    pub(super) rain: Val<Flow>,
    pub(super) rain_is_storm: bool,
    pub(super) without_loss: bool,
    pub(super) waste: Val<Flow>,
    pub(super) by_units: Option<Val<Flow>>,
    pub(super) left_out: Option<Val<Flow>>,
    pub(super) pumps: Option<Val<Flow>>,
    pub(super) parts: Vec<(&'static str, Node)>,
}

pub(super) fn flows<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    block: &blocks::European,
    of: &Compared<'_>,
) -> Flows {
    let local = stated(t, w, "rain flow by the local rule", &block.rain_flow);
    let mut parts = Vec::new();
    let taps = tap_flow(t, block, &mut parts);
    let waste_places: Vec<usize> = waste_waters(e).collect();
    let streams = |wanted: &dyn Fn(usize) -> bool| -> Vec<Val<Flow>> {
        let of_them = of.waters.iter().filter(|water| matches!(water.which, Which::Stream(i) if wanted(i)));
        of_them.map(|water| water.flow).collect()
    };
    let waste = sum(t, "streams of waste water together", &streams(&|i| waste_places.contains(&i)));
    let by_units = taps.filter(|taps| block.taps.is_empty() && waste.is_some_and(|own| taps.q > own.q));
    let left_out = taps.filter(|taps| waste.is_some_and(|own| taps.q <= own.q));
    let waste = match (taps, waste) {
        (Some(taps), Some(own)) => Some(
            reckon!(t, "waste water, the larger of taps and streams", [L_S, L_S], (taps = taps, own = own) taps.max(own)),
        ),
        (one, other) => one.or(other),
    };
    let mut drained = streams(&|i| e.streams.get(i).is_some_and(|s| s.water.0 == Some(WaterKind::Dewatering)));
    let pits = of.containment.iter().flat_map(|ahead| &ahead.all).filter(|c| c.to.is_none());
    drained.extend(pits.filter_map(|c| c.drain.as_ref()).filter(|drain| drain.in_rain).map(|drain| drain.rate));
    let without_loss = local.is_none() && of.storm.is_some_and(|storm| storm.sealed);
    let storm = match of.storm.filter(|_| without_loss) {
        Some(storm) => {
            let c = given(
                t,
                "runoff coefficient of the European standard",
                Some((&ONE, &ONE)),
                ratio(1.0),
                &say!(T, "{}", EN_858_RUNOFF),
                "1",
            );
            let label = "rain without loss";
            by!(t, label, rational_flow::flow(c, storm.intensity, storm.area, storm.factor)).ok().or(Some(storm.flow))
        }
        None => of.storm.map(|storm| storm.flow),
    };
    let largest =
        of.cases.iter().filter(|case| case.kind != Kind::Spill).max_by(|a, b| a.feed.q.si().total_cmp(&b.feed.q.si()));
    // Where the pump is known, what it lifts comes while it runs, whatever arrives.
    let pumps = largest.filter(|_| of.feed.pump_flow.is_some()).map(|case| case.feed);
    let rain_comes = local.is_some()
        || storm.is_some()
        || !drained.is_empty()
        || of.cases.iter().any(|case| case.kind == Kind::DrainDown);
    let rain_is_storm = local.is_none() && pumps.is_none() && drained.is_empty() && storm.is_some();
    let (mut rain, mut own) = match (pumps, waste) {
        (Some(pumps), Some(waste)) if rain_comes => {
            let (rain, waste) = shared(t, pumps, waste);
            (Some(rain), Some(waste))
        }
        (Some(pumps), Some(_)) => (None, Some(pumps)),
        // Without a word on what it is, the water below counts as waste water.
        (Some(pumps), None) => {
            let unknown = !rain_comes && largest.is_some_and(|case| case.kind == Kind::Stated);
            (Some(pumps).filter(|_| !unknown), None)
        }
        (None, waste) => {
            let rain = storm.into_iter().chain(drained).collect::<Vec<_>>();
            (local.or_else(|| sum(t, "rain water and water pumped from pits", &rain)), waste)
        }
    };
    if let (None, None, Some(case)) = (rain, own, largest) {
        // A flow of unknown kind counts as waste water, the safe side, unless all that comes is said to be rain.
        if block.category.0 == Some(UseCategory::Rain) {
            rain = Some(case.feed);
        } else {
            own = Some(case.feed);
        }
    }
    let or_none = |t: &mut T, found: Option<Val<Flow>>, label: &str| {
        found.unwrap_or_else(|| given(t, label, Some(SIZE), Flow::from_si(0.0), "the enquiry", "none is declared"))
    };
    Flows {
        rain: or_none(t, rain, "rain water"),
        rain_is_storm,
        without_loss: without_loss && pumps.is_none(),
        waste: or_none(t, own, "waste water"),
        by_units: by_units.filter(|_| pumps.is_none()),
        left_out: left_out.filter(|_| pumps.is_none()),
        pumps,
        parts,
    }
}

/// Of what the pumps lift, rain and waste water: no more waste water than arrives, and rain the rest.
fn shared<T: Trail>(t: &mut T, pumps: Val<Flow>, waste: Val<Flow>) -> (Val<Flow>, Val<Flow>) {
    let waste = if waste.q > pumps.q {
        reckon!(t, "waste water, no more than the pumps lift", [L_S, L_S], (waste = waste, pumps = pumps) waste.min(pumps))
    } else {
        waste
    };
    let label = "rain water, the rest of what the pumps lift";
    (reckon!(t, label, [L_S, L_S], (pumps = pumps, waste = waste) pumps - waste), waste)
}

fn sum<T: Trail>(t: &mut T, label: &str, flows: &[Val<Flow>]) -> Option<Val<Flow>> {
    let (first, rest) = flows.split_first()?;
    let mut total = *first;
    for flow in rest {
        total = reckon!(t, label, [L_S, L_S], (total = total, flow = *flow) total + flow);
    }
    Some(total)
}

/// What taps, high-pressure units and washes count for; none where none is declared.
fn tap_flow<T: Trail>(t: &mut T, block: &blocks::European, parts: &mut Vec<(&'static str, Node)>) -> Option<Val<Flow>> {
    let count =
        |t: &mut T, label: &str, n: f64, key: &str| given(t, label, Some((&ONE, &ONE)), ratio(n), key, &say!(T, "{n}"));
    let mut flows = Vec::new();
    for bore in TapBore::ALL {
        let listed = block.taps.iter().filter_map(|text| taps(text)).filter(|(of, _)| of == bore);
        let n: f64 = listed.map(|(_, n)| f64::from(n)).sum();
        if n > 0.0 {
            let n = count(t, &say!(T, "taps of {}", bore.word()), n, &block.taps().place());
            let bore = given(t, "their bore", None, *bore, &block.taps().place(), bore.word());
            let flow = by!(t, &say!(T, "flow of the taps of {}", bore.q.word()), en858_tap_flow::flow(n, bore)).ok();
            parts.extend(flow.map(|flow| ("Q_s1", flow.at)));
            flows.extend(flow);
        }
    }
    let (washes, pressure) = (block.automatic_wash.unwrap_or(0), block.high_pressure.unwrap_or(0));
    if washes > 0 || pressure > 0 {
        let washes = count(t, "automatic washes", f64::from(washes), &block.automatic_wash().place());
        let pressure = count(t, "high-pressure units", f64::from(pressure), &block.high_pressure().place());
        let flow = by!(t, "flow of washes and high-pressure units", en858_wash_equipment::flow(washes, pressure)).ok();
        parts.extend(flow.map(|flow| ("Q_s2+3", flow.at)));
        flows.extend(flow);
    }
    sum(t, "flow of taps, washes and high-pressure units", &flows)
}
