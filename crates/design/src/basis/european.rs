//! What EN 858-2 would ask for with our waters: a comparison, never our basis. Nothing of the main chain rests on it,
//! and where a formula has no answer it says why and stops nothing.

use super::cases::{Case, Kind};
use super::feed::FeedState;
use super::fluids::Fluids;
use super::stated::stated;
use super::storm::Storm;
use super::waters::Water;
use crate::basis::chemicals::Which;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{self, SeparatorClass, WaterKind};
use crate::enquiry::european::{nominal_size, taps, waste_waters};
use crate::provenance::{Pair, Standby, Trail, Val, WhatIf, assume, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::page::{Argument, Outside};
use stillrise_handbook::rain::rational_flow;
use stillrise_handbook::separation::en858_density_factor::SeparatorSystem;
use stillrise_handbook::separation::en858_impediment_factor::UseCategory;
use stillrise_handbook::separation::en858_sludge_trap::SludgeLoad;
use stillrise_handbook::separation::en858_tap_flow::TapBore;
use stillrise_handbook::separation::ppg3_size::Ppg3Kind;
use stillrise_handbook::separation::{
    en858_density_factor, en858_impediment_factor, en858_nominal_size, en858_sludge_trap, en858_standard_size,
    en858_tap_flow, en858_wash_equipment, ppg3_oil_store, ppg3_size,
};
use stillrise_handbook::sources::EN_858_RUNOFF;
use stillrise_units::catalog::{L_S, ONE};
use stillrise_units::{Density, Flow, Ratio, Typed, Volume, ratio};

/// Nominal sizes are in litres per second wherever they are printed.
pub const SIZE: Pair = (&L_S, &L_S);

/// The question for the category of use.
pub const CATEGORY: &str =
    "Is the water of washing or a process, or rain from a place where oil may spill, or rain with little oil alone?";

/// What EN 858-2 would ask for.
#[derive(Debug, Clone)]
pub struct European {
    /// The nominal size that somebody named.
    pub named: Option<Val<Flow>>,
    /// Rain water.
    pub rain: Val<Flow>,
    /// Whether that is our storm's rain and nothing else.
    pub rain_is_storm: bool,
    /// Whether it is that rain without loss, by the standard's runoff coefficient.
    pub without_loss: bool,
    /// What the high-pressure units and washes that were declared count for, where no taps beside them were and the streams
    /// are less.
    pub by_units: Option<Val<Flow>>,
    /// Waste water.
    pub waste: Val<Flow>,
    /// What the pumps lift, where it and not what arrives sets the flow.
    pub pumps: Option<Val<Flow>>,
    /// Category of use, where there is waste water or somebody said it.
    pub category: Option<Val<UseCategory>>,
    /// Impediment factor.
    pub impediment: Val<Ratio>,
    /// Arrangement of the system.
    pub system: Val<SeparatorSystem>,
    /// The heaviest oil, by name.
    pub oil: String,
    /// Its density at 15 °C.
    pub density: Val<Density>,
    /// How much sludge comes.
    pub load: Val<SludgeLoad>,
    /// What follows, or why nothing does.
    pub sizes: Result<Sizes, String>,
}

/// The sizes that follow.
#[derive(Debug, Clone)]
pub struct Sizes {
    /// Density factor.
    pub factor: Val<Ratio>,
    /// Nominal size that is needed.
    pub need: Val<Flow>,
    /// The same, were the answers that nobody gave the mildest there are.
    pub least: Flow,
    /// What the larger of rain and waste water alone asks for, where no waste water runs while it rains.
    pub apart: Option<Val<Flow>>,
    /// Next size of the series; none above its end.
    pub standard: Option<Val<Flow>>,
    /// Volume of the sludge trap.
    pub sludge_trap: Option<Val<Volume>>,
    /// Oil store by the British rule.
    pub oil_store: Option<Val<Volume>>,
}

impl European {
    /// The nominal size that is needed with another rain and another density; `None` where there is none.
    #[must_use]
    pub fn need_with(&self, rain: Flow, density: Density) -> Option<Flow> {
        let factor = en858_density_factor::factor(density, self.system.q).ok()?;
        en858_nominal_size::flow(rain, self.impediment.q, self.waste.q, factor).ok()
    }
    /// Whether the size that was named covers the need; `None` where either is not known.
    #[must_use]
    pub fn covers(&self) -> Option<bool> {
        let sizes = self.sizes.as_ref().ok()?;
        Some(covers(self.named?.q, sizes.need.q))
    }
}

/// Whether one size covers another, but for the last digits of arithmetic.
#[must_use]
pub fn covers(size: Flow, need: Flow) -> bool {
    size.si() >= need.si() * (1.0 - 1e-9)
}

/// What of the basis is compared.
pub(super) struct Compared<'a> {
    pub fluids: &'a Fluids,
    pub storm: Option<&'a Storm>,
    pub waters: &'a [Water],
    pub feed: &'a FeedState,
    pub cases: &'a [Case],
}

/// The comparison; `None` where nobody asks by the European standard.
pub(super) fn european<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, of: &Compared<'_>) -> Option<European> {
    if e.european.is_none() && e.asked.nominal_size.is_none() {
        return None;
    }
    t.section("EN 858-2, a comparison");
    let block = e.european.clone().unwrap_or_default();
    let named = e.asked.nominal_size.as_deref().and_then(nominal_size).map(|size| {
        let source = e.asked.nominal_size.1.source("asked: nominal_size");
        let text = e.asked.nominal_size.as_deref().unwrap_or_default();
        given(t, "nominal size that was named", Some(SIZE), Flow::of(size, &L_S), &source, text)
    });
    let Flows { rain, rain_is_storm, without_loss, waste, by_units, pumps } = flows(t, w, e, &block, of);
    let category = category(t, w, &block, waste.q.si() > 0.0);
    let none =
        |t: &mut T| given(t, "impediment factor", Some((&ONE, &ONE)), ratio(0.0), "no waste water comes", "none");
    let impediment = match category {
        Some(category) => by!(t, "impediment factor", en858_impediment_factor::factor(category)).ok(),
        None => None,
    };
    let impediment = impediment.unwrap_or_else(|| none(t));
    let system = system(t, w, &block);
    let mut heaviest = of.fluids.oils.first()?;
    for oil in &of.fluids.oils {
        if oil.density_15.q > heaviest.density_15.q {
            heaviest = oil;
        }
    }
    let density = heaviest.density_15;
    let load = load(t, w, &block);
    let mut found = European {
        named,
        rain,
        rain_is_storm,
        without_loss,
        by_units,
        waste,
        pumps,
        category,
        impediment,
        system,
        oil: heaviest.name.clone(),
        density,
        load,
        sizes: Err(String::new()),
    };
    let waste_places: Vec<usize> = waste_waters(e).collect();
    let in_rain =
        |water: &Water| matches!(water.which, Which::Stream(i) if waste_places.contains(&i)) && water.with_rain;
    let apart = found.pumps.is_none() && of.waters.iter().all(|water| !in_rain(water));
    found.sizes = sizes(t, &found, &block, of.storm, apart);
    Some(found)
}

/// Rain and waste water, and what sets them.
struct Flows {
    rain: Val<Flow>,
    rain_is_storm: bool,
    without_loss: bool,
    waste: Val<Flow>,
    by_units: Option<Val<Flow>>,
    pumps: Option<Val<Flow>>,
}

fn flows<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, block: &blocks::European, of: &Compared<'_>) -> Flows {
    let local = stated(t, w, "rain flow by the local rule", &block.rain_flow);
    let taps = tap_flow(t, block);
    let waste_places: Vec<usize> = waste_waters(e).collect();
    let streams = |wanted: &dyn Fn(usize) -> bool| -> Vec<Val<Flow>> {
        let of_them = of.waters.iter().filter(|water| matches!(water.which, Which::Stream(i) if wanted(i)));
        of_them.map(|water| water.flow).collect()
    };
    let waste = sum(t, "streams of waste water together", &streams(&|i| waste_places.contains(&i)));
    let by_units = taps.filter(|taps| block.taps.is_empty() && waste.is_some_and(|own| taps.q > own.q));
    let waste = match (taps, waste) {
        (Some(taps), Some(own)) => Some(
            reckon!(t, "waste water, the larger of taps and streams", [L_S, L_S], (taps = taps, own = own) taps.max(own)),
        ),
        (one, other) => one.or(other),
    };
    let drained = streams(&|i| e.streams.get(i).is_some_and(|s| s.water.0 == Some(WaterKind::Dewatering)));
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
        pumps,
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
fn tap_flow<T: Trail>(t: &mut T, block: &blocks::European) -> Option<Val<Flow>> {
    let count =
        |t: &mut T, label: &str, n: f64, key: &str| given(t, label, Some((&ONE, &ONE)), ratio(n), key, &say!(T, "{n}"));
    let mut flows = Vec::new();
    for bore in TapBore::ALL {
        let listed = block.taps.iter().filter_map(|text| taps(text)).filter(|(of, _)| of == bore);
        let n: f64 = listed.map(|(_, n)| f64::from(n)).sum();
        if n > 0.0 {
            let n = count(t, &say!(T, "taps of {}", bore.word()), n, "european: taps");
            let bore = given(t, "their bore", None, *bore, "european: taps", bore.word());
            flows.extend(by!(t, &say!(T, "flow of the taps of {}", bore.q.word()), en858_tap_flow::flow(n, bore)).ok());
        }
    }
    let (washes, pressure) = (block.automatic_wash.unwrap_or(0), block.high_pressure.unwrap_or(0));
    if washes > 0 || pressure > 0 {
        let washes = count(t, "automatic washes", f64::from(washes), "european: automatic_wash");
        let pressure = count(t, "high-pressure units", f64::from(pressure), "european: high_pressure");
        flows.extend(
            by!(t, "flow of washes and high-pressure units", en858_wash_equipment::flow(washes, pressure)).ok(),
        );
    }
    sum(t, "flow of taps, washes and high-pressure units", &flows)
}

fn category<T: Trail>(t: &mut T, w: &WhatIf, block: &blocks::European, waste: bool) -> Option<Val<UseCategory>> {
    if let Some(category) = block.category.0 {
        let source = block.category.1.source("european: category");
        return Some(given(t, "category of use", None, category, &source, category.word()));
    }
    waste.then(|| {
        let ends = (UseCategory::SpillRetention, UseCategory::WashWater);
        word(t, w, ("category of use", "european.category", CATEGORY), ends, "the factor of wash water is the larger")
    })
}

fn system<T: Trail>(t: &mut T, w: &WhatIf, block: &blocks::European) -> Val<SeparatorSystem> {
    let label = "arrangement of the system";
    if let Some(system) = block.system.0 {
        return given(t, label, None, system, &block.system.1.source("european: system"), system.word());
    }
    let of_class = |t: &mut T, system: SeparatorSystem| {
        choose(
            t,
            label,
            None,
            system,
            "S-II-P, S-I-P, S-II-I-P",
            "the plain arrangement of the class that is asked for",
            &[],
        )
    };
    match block.class.0 {
        Some(SeparatorClass::One) => of_class(t, SeparatorSystem::SiP),
        Some(SeparatorClass::Two) => of_class(t, SeparatorSystem::SiiP),
        None => {
            let question = "Is a gravity separator (class II), a coalescing one (class I) or both in series asked for?";
            let ends = (SeparatorSystem::SiiIP, SeparatorSystem::SiiP);
            word(t, w, (label, "european.system", question), ends, "its density factor is the largest of the table")
        }
    }
}

fn load<T: Trail>(t: &mut T, w: &WhatIf, block: &blocks::European) -> Val<SludgeLoad> {
    let label = "how much sludge comes";
    let washes = block.automatic_wash.is_some();
    match block.sludge_load.0 {
        Some(SludgeLoad::Large) | None if washes => {
            let because = "an automatic wash is declared, whose trap is the largest";
            choose(t, label, None, SludgeLoad::AutomaticWash, "the loads of the table", because, &[])
        }
        Some(load) => given(t, label, None, load, &block.sludge_load.1.source("european: sludge_load"), load.word()),
        None => assume(
            t,
            w,
            Standby {
                label,
                units: None,
                key: "european.sludge_load".into(),
                question: "How much sludge comes: little, as from clean rain; medium, as from filling stations and hand washing; or much, as from trucks and site vehicles?".into(),
                value: SludgeLoad::Medium,
                low: SludgeLoad::Small,
                high: SludgeLoad::Large,
                source: "the middle row of the table, which names filling stations, workshops and washing by hand".into(),
            },
        ),
    }
}

/// A word that nobody said: the end that asks for more stands in.
fn word<T: Trail, C: Argument + Copy>(
    t: &mut T,
    w: &WhatIf,
    (label, key, question): (&str, &str, &str),
    (low, high): (C, C),
    source: &str,
) -> Val<C> {
    let standby = Standby {
        label,
        units: None,
        key: key.into(),
        question: question.into(),
        value: high,
        low,
        high,
        source: source.into(),
    };
    assume(t, w, standby)
}

fn sizes<T: Trail>(
    t: &mut T,
    of: &European,
    block: &blocks::European,
    storm: Option<&Storm>,
    apart: bool,
) -> Result<Sizes, String> {
    if of.rain.q.si() + of.waste.q.si() <= 0.0 {
        return Err("no water comes whose flow is known".to_owned());
    }
    let outside = |density: Density| {
        format!("{} of {} kg/m3 lies outside the standard's scope, which ends at 950", of.oil, density.si().round())
    };
    let factor = by!(t, "density factor", en858_density_factor::factor(of.density, of.system))
        .map_err(|_| outside(of.density.q))?;
    let need =
        by!(t, "nominal size that is needed", en858_nominal_size::flow(of.rain, of.impediment, of.waste, factor))
            .map_err(|stop| stop.reason)?;
    let both = of.rain.q.si() > 0.0 && of.waste.q.si() > 0.0;
    let apart = (apart && both).then(|| {
        let none = given(t, "the other water", Some(SIZE), Flow::from_si(0.0), "the enquiry", "not at the same time");
        let label = "nominal size for the rain alone";
        let rain = by!(t, label, en858_nominal_size::flow(of.rain, of.impediment, none, factor)).ok()?;
        let label = "nominal size for the waste water alone";
        let waste = by!(t, label, en858_nominal_size::flow(none, of.impediment, of.waste, factor)).ok()?;
        Some(reckon!(t, "nominal size for the larger of both alone", [L_S, L_S], (rain = rain, waste = waste) rain.max(waste)))
    });
    let standard = by!(t, "next nominal size of the series", en858_standard_size::size(need)).ok();
    let size = standard.unwrap_or(need);
    let sludge_trap = by!(t, "sludge trap", en858_sludge_trap::volume(size, factor, of.load)).ok();
    let kind = if *block.bypass == Some(true) { Ppg3Kind::Bypass } else { Ppg3Kind::Full };
    let because = if kind == Ppg3Kind::Bypass { "a bypass is asked for" } else { "no bypass is asked for" };
    let kind = choose(t, "full retention or bypass", None, kind, "full, bypass", because, &[]);
    // Behind a bypass only a tenth of the rain is treated, and the British store goes by that size.
    let treated = match storm.filter(|_| kind.q == Ppg3Kind::Bypass) {
        Some(storm) => by!(t, "nominal size behind a bypass, PPG3", ppg3_size::flow(storm.area, kind)).ok(),
        None => None,
    };
    let oil_store = by!(t, "oil store, PPG3", ppg3_oil_store::volume(treated.unwrap_or(size), kind)).ok();
    let least = least(of, block).map_err(|outside| outside.reason)?;
    Ok(Sizes { factor, need, least, apart: apart.flatten(), standard, sludge_trap, oil_store })
}

/// The need with the mildest words in place of those that nobody said.
fn least(of: &European, block: &blocks::European) -> Result<Flow, Outside> {
    let impediment = match of.category {
        Some(_) if block.category.0.is_none() => en858_impediment_factor::factor(UseCategory::SpillRetention)?,
        _ => of.impediment.q,
    };
    let is_open = block.system.0.is_none() && block.class.0.is_none();
    let system = if is_open { SeparatorSystem::SiiIP } else { of.system.q };
    let factor = en858_density_factor::factor(of.density.q, system)?;
    en858_nominal_size::flow(of.rain.q, impediment, of.waste.q, factor)
}
