//! What EN 858-2 would ask for with our waters: a comparison, never our basis. Nothing of the main chain rests on it,
//! and where a formula has no answer it says why and stops nothing.

mod flows;

use crate::basis::cases::Case;
use crate::basis::chemicals::Which;
use crate::basis::containment::Containments;
use crate::basis::feed::FeedState;
use crate::basis::fluids::Fluids;
use crate::basis::stated::{assumed, stand_in};
use crate::basis::storm::Storm;
use crate::basis::waters::Water;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{self, Regulator, SeparatorClass};
use crate::enquiry::european::{nominal_size, waste_waters};
use crate::enquiry::fields::Word;
use crate::enquiry::keys::Key;
use crate::enquiry::regulation::asks_for;
use crate::provenance::{Node, Pair, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon};
use flows::{Flows, flows};
use stillrise_handbook::page::{Argument, Outside};
use stillrise_handbook::separation::en858_density_factor::SeparatorSystem;
use stillrise_handbook::separation::en858_impediment_factor::UseCategory;
use stillrise_handbook::separation::en858_sludge_trap::SludgeLoad;
use stillrise_handbook::separation::ppg3_size::Ppg3Kind;
use stillrise_handbook::separation::{
    en858_density_factor, en858_impediment_factor, en858_nominal_size, en858_sludge_trap, en858_standard_size,
    ppg3_oil_store, ppg3_size,
};
use stillrise_units::catalog::{L_S, ONE};
use stillrise_units::{Density, Flow, Ratio, Typed, Volume, ratio};

/// Nominal sizes are in litres per second wherever they are printed.
pub const SIZE: Pair = (&L_S, &L_S);

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
    /// What the taps, high-pressure units and washes that were declared count for, where the streams are more and stand alone.
    pub left_out: Option<Val<Flow>>,
    /// Waste water.
    pub waste: Val<Flow>,
    /// What the pumps lift, where it and not what arrives sets the flow.
    pub pumps: Option<Val<Flow>>,
    /// What rain and waste water are made of, under the standard's symbols, in order.
    pub parts: Vec<(&'static str, Node)>,
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
    /// Whether somebody said of each waste water that it does not run while it rains.
    pub said_apart: bool,
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
    /// With the system of class I, where nobody said which is asked for and that of class II was taken.
    pub class_one: Option<Val<Flow>>,
    /// What the larger of rain and waste water alone asks for, where no waste water runs while it rains.
    pub apart: Option<Val<Flow>>,
    /// What the waste water alone asks for, where rain comes too.
    pub waste_alone: Option<Val<Flow>>,
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

    /// Whether the size that was named covers the larger water alone, where no waste water runs while it rains.
    #[must_use]
    pub fn covers_apart(&self) -> Option<bool> {
        Some(covers(self.named?.q, self.sizes.as_ref().ok()?.apart?.q))
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
    pub containment: Option<&'a Containments>,
    pub cases: &'a [Case],
}

/// The comparison; `None` where nobody asks by the European standard.
pub(super) fn european<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, of: &Compared<'_>) -> Option<European> {
    if e.european.is_none() && e.asked.nominal_size.is_none() && !asks_for(e, Regulator::En858) {
        return None;
    }
    t.section("EN 858-2, a comparison");
    let block = e.european.clone().unwrap_or_default();
    let named = e.asked.nominal_size.as_deref().and_then(nominal_size).map(|size| {
        let source = e.asked.nominal_size().source();
        let text = e.asked.nominal_size.as_deref().unwrap_or_default();
        given(t, "nominal size that was named", Some(SIZE), Flow::of(size, &L_S), &source, text)
    });
    let Flows { rain, rain_is_storm, without_loss, waste, by_units, left_out, pumps, parts } =
        flows(t, w, e, &block, of);
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
    let muddy = e.head.facility.as_deref().is_some_and(|place| MUDDY.contains(&place));
    let load = load(t, w, &block, muddy);
    let mut found = European {
        named,
        rain,
        rain_is_storm,
        without_loss,
        by_units,
        left_out,
        waste,
        pumps,
        parts,
        category,
        impediment,
        system,
        oil: heaviest.name.clone(),
        density,
        load,
        said_apart: waste_waters(e).next().is_some()
            && waste_waters(e).all(|i| e.streams.get(i).is_some_and(|s| s.with_rain.0 == Some(false))),
        sizes: Err(String::new()),
    };
    let waste_places: Vec<usize> = waste_waters(e).collect();
    let in_rain =
        |water: &Water| matches!(water.which, Which::Stream(i) if waste_places.contains(&i)) && water.with_rain;
    let apart = found.pumps.is_none() && of.waters.iter().all(|water| !in_rain(water));
    found.sizes = sizes(t, &found, &block, of.storm, (apart, e.spill.is_some()));
    Some(found)
}

fn category<T: Trail>(t: &mut T, w: &WhatIf, block: &blocks::European, waste: bool) -> Option<Val<UseCategory>> {
    if let Some(category) = block.category.0 {
        let source = block.category().source();
        return Some(given(t, "category of use", None, category, &source, category.word()));
    }
    waste.then(|| {
        let ends = (UseCategory::SpillRetention, UseCategory::WashWater);
        word(t, w, &block.category(), "category of use", ends, "the factor of wash water is the larger")
    })
}

fn system<T: Trail>(t: &mut T, w: &WhatIf, block: &blocks::European) -> Val<SeparatorSystem> {
    let label = "arrangement of the system";
    if let Some(system) = block.system.0 {
        return given(t, label, None, system, block.system().source(), system.word());
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
            let ends = (SeparatorSystem::SiiIP, SeparatorSystem::SiiP);
            word(t, w, &block.system(), label, ends, "its density factor is the largest of the table")
        }
    }
}

/// Places whose washing brings much mud.
const MUDDY: [&str; 4] = ["truck-wash", "bus-wash", "washrack", "tactical-washrack"];

fn load<T: Trail>(t: &mut T, w: &WhatIf, block: &blocks::European, muddy: bool) -> Val<SludgeLoad> {
    let label = "how much sludge comes";
    let washes = block.automatic_wash.is_some();
    match block.sludge_load.0 {
        Some(SludgeLoad::Large) | None if washes => {
            let because = "an automatic wash is declared, whose trap is the largest";
            choose(t, label, None, SludgeLoad::AutomaticWash, "the loads of the table", because, &[])
        }
        Some(load) => given(t, label, None, load, block.sludge_load().source(), load.word()),
        None => {
            let (value, why) = if muddy {
                (SludgeLoad::Large, "the row of the table that names washes of trucks, buses, site and farm vehicles")
            } else {
                (
                    SludgeLoad::Medium,
                    "the middle row of the table, which names filling stations, workshops and washing by hand",
                )
            };
            assumed(t, w, &block.sludge_load(), label, stand_in((SludgeLoad::Small, value, SludgeLoad::Large), why))
        }
    }
}

/// A word that nobody said: the end that asks for more stands in.
fn word<T: Trail, C: Argument + Copy>(
    t: &mut T,
    w: &WhatIf,
    key: &Key<'_, Word<C>>,
    label: &str,
    (low, high): (C, C),
    source: &str,
) -> Val<C> {
    assumed(t, w, key, label, stand_in((low, high, high), source))
}

fn sizes<T: Trail>(
    t: &mut T,
    of: &European,
    block: &blocks::European,
    storm: Option<&Storm>,
    (apart, may_spill): (bool, bool),
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
    let open = block.system.0.is_none() && block.class.0.is_none() && of.system.q == SeparatorSystem::SiiP;
    let class_one = open.then(|| {
        let source = "a plain separator of class I";
        let system =
            given(t, "arrangement with class I", None, SeparatorSystem::SiP, source, SeparatorSystem::SiP.word());
        let factor = by!(t, "density factor with class I", en858_density_factor::factor(of.density, system)).ok()?;
        let label = "nominal size with class I";
        by!(t, label, en858_nominal_size::flow(of.rain, of.impediment, of.waste, factor)).ok()
    });
    // One that asks for the same says nothing.
    let class_one = class_one.flatten().filter(|one| !covers(one.q, need.q));
    let both = of.rain.q.si() > 0.0 && of.waste.q.si() > 0.0;
    let alone = both.then(|| {
        let none = given(t, "the other water", Some(SIZE), Flow::from_si(0.0), "the enquiry", "not at the same time");
        let label = "nominal size for the rain alone";
        let rain = by!(t, label, en858_nominal_size::flow(of.rain, of.impediment, none, factor)).ok()?;
        let label = "nominal size for the waste water alone";
        let waste = by!(t, label, en858_nominal_size::flow(none, of.impediment, of.waste, factor)).ok()?;
        Some((rain, waste))
    });
    let alone = alone.flatten();
    let apart = alone.filter(|_| apart).map(|(rain, waste)| {
        reckon!(t, "nominal size for the larger of both alone", [L_S, L_S], (rain = rain, waste = waste) rain.max(waste))
    });
    let waste_alone = alone.map(|(_, waste)| waste);
    let standard = by!(t, "next nominal size of the series", en858_standard_size::size(need)).ok();
    let size = standard.unwrap_or(need);
    let sludge_trap = by!(t, "sludge trap", en858_sludge_trap::volume(size, factor, of.load)).ok();
    let kind = ppg3_kind(t, *block.bypass == Some(true), of.waste.q.si() > 0.0 || may_spill);
    // Behind a bypass only a tenth of the rain is treated, and the British store goes by that size.
    let treated = match storm.filter(|_| kind.q == Ppg3Kind::Bypass) {
        Some(storm) => by!(t, "nominal size behind a bypass, PPG3", ppg3_size::flow(storm.area, kind)).ok(),
        None => None,
    };
    let oil_store = by!(t, "oil store, PPG3", ppg3_oil_store::volume(treated.unwrap_or(size), kind)).ok();
    let least = least(of, block).map_err(|outside| outside.reason)?;
    Ok(Sizes { factor, need, least, class_one, apart, waste_alone, standard, sludge_trap, oil_store })
}

/// Full retention or bypass. Where waste water or a spill can come, `barred`, none is allowed, whoever asks for it.
pub(crate) fn ppg3_kind<T: Trail>(t: &mut T, asked: bool, barred: bool) -> Val<Ppg3Kind> {
    let (kind, because) = match (asked, barred) {
        (true, false) => (Ppg3Kind::Bypass, "a bypass is asked for"),
        (true, true) => (Ppg3Kind::Full, "a bypass is asked for, and waste water or a spill can come, which bars it"),
        (false, _) => (Ppg3Kind::Full, "no bypass is asked for"),
    };
    choose(t, "full retention or bypass", None, kind, "full, bypass", because, &[])
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
