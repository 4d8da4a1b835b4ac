//! Water and oils, in the coldest and the warmest season.

use super::stated::{assumed, declared, spread, stand_in, stated, stated_or, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::OilBlock;
use crate::enquiry::keys::{Block, Place};
use crate::enquiry::named::same;
use crate::provenance::{Stop, Trail, Val, WhatIf, given};
use crate::{by, record, say};
use stillrise_handbook::fluids::oil_density::OilGroup;
use stillrise_handbook::fluids::oils::{Oil, oil};
use stillrise_handbook::fluids::{
    kinematic_viscosity, oil_density, oil_viscosity, saline_density, saline_viscosity, water_density, water_viscosity,
};
use stillrise_units::catalog::{CST, DEG_C, DEG_F, MM2_S, MN_M};
use stillrise_units::{Density, KinematicViscosity, Ratio, SurfaceTension, Temperature, Typed, Viscosity};

/// The two seasons a design is held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Season {
    /// Coldest water: slowest rise.
    Cold,
    /// Warmest water: thinnest, fastest in the gaps.
    Warm,
}

impl Season {
    /// Both.
    pub const ALL: [Season; 2] = [Season::Cold, Season::Warm];
    /// Its name.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Season::Cold => "cold",
            Season::Warm => "warm",
        }
    }
}

record! {
    /// The water of one season.
    WaterState {
        /// temperature
        temperature: Temperature;
        /// density
        density: Density;
        /// dynamic viscosity
        viscosity: Viscosity;
        /// kinematic viscosity
        kinematic: KinematicViscosity;
    }
}

/// One oil that may come.
#[derive(Debug, Clone)]
pub struct OilState {
    /// Its name on site, or the handbook's title.
    pub name: String,
    /// The handbook's oil it is, or is nearest to.
    pub oil: &'static Oil,
    /// The group its expansion follows.
    pub group: Val<OilGroup>,
    /// Density at 15 °C.
    pub density_15: Val<Density>,
    /// Density in the cold season.
    pub cold: Val<Density>,
    /// Density in the warm season.
    pub warm: Val<Density>,
    /// Viscosity in the cold season, where the formula answers.
    pub viscosity: Option<Val<KinematicViscosity>>,
    /// Interfacial tension against water, without detergents.
    pub tension: Val<SurfaceTension>,
}

impl OilState {
    /// Density in a season.
    #[must_use]
    pub fn density(&self, season: Season) -> Val<Density> {
        match season {
            Season::Cold => self.cold,
            Season::Warm => self.warm,
        }
    }
}

/// How much lighter than the water an oil must be, as a share of the water's density, to be said to rise: with less,
/// temperature or salt decide whether it rises at all. Our proposal.
const LEAST_LIGHTER: f64 = 0.02;

/// Water and oils.
#[derive(Debug, Clone)]
pub struct Fluids {
    /// Dissolved salt.
    pub salinity: Val<Ratio>,
    /// Temperature of the water that flows in, where somebody said that it differs.
    pub inflow: Option<Val<Temperature>>,
    /// The coldest water.
    pub cold: WaterState,
    /// The warmest water.
    pub warm: WaterState,
    /// The oils, in the order of the enquiry.
    pub oils: Vec<OilState>,
}

impl Fluids {
    /// The water of a season.
    #[must_use]
    pub fn water(&self, season: Season) -> &WaterState {
        match season {
            Season::Cold => &self.cold,
            Season::Warm => &self.warm,
        }
    }
    /// The oils that rise in the coldest water, each with its place among all.
    pub fn lighter(&self) -> impl Iterator<Item = (usize, &OilState)> {
        self.oils.iter().enumerate().filter(|(_, oil)| oil.cold.q < self.cold.density.q)
    }
    /// The place of the oil that somebody named: by the name of its block, else by its kind; `None` where there is none.
    #[must_use]
    pub fn named(&self, name: &str) -> Option<usize> {
        let by_name = self.oils.iter().position(|oil| same(&oil.name, name));
        by_name.or_else(|| self.oils.iter().position(|oil| oil.oil.word == name))
    }
    /// Whether an oil rises in the coldest water, and not hardly.
    #[must_use]
    pub fn rises(&self, oil: &OilState) -> bool {
        let water = self.cold.density.q;
        water - oil.cold.q > water * LEAST_LIGHTER
    }
    /// Whether an oil rises in fresh water of a temperature, and not hardly; never where no formula answers.
    #[must_use]
    pub fn rises_at(&self, oil: &OilState, temperature: Temperature) -> bool {
        let water = water_density::density(temperature);
        let own = oil_density::density(oil.density_15.q, temperature, oil.group.q);
        matches!((water, own), (Ok(water), Ok(own)) if water - own > water * LEAST_LIGHTER)
    }
    /// Whether an oil rises in water that is never colder than so: the coldest of the site where nobody said it.
    #[must_use]
    pub fn rises_in(&self, oil: &OilState, coldest: Option<Temperature>) -> bool {
        self.rises(oil) || coldest.is_some_and(|own| own > self.cold.temperature.q && self.rises_at(oil, own))
    }
    /// The heaviest oil in a season, slowest to rise; of several, those that do not rise at all are left out, unless none
    /// does.
    #[must_use]
    pub fn heaviest(&self, season: Season) -> &OilState {
        self.extreme(season, None, |a, b| a > b)
    }
    /// The same of the cold season, in water that is never colder than so.
    #[must_use]
    pub fn heaviest_in(&self, coldest: Temperature) -> &OilState {
        self.extreme(Season::Cold, Some(coldest), |a, b| a > b)
    }
    /// The lightest oil in a season: highest surface.
    #[must_use]
    pub fn lightest(&self, season: Season) -> &OilState {
        self.extreme(season, None, |a, b| a < b)
    }
    fn extreme(
        &self,
        season: Season,
        coldest: Option<Temperature>,
        beats: impl Fn(Density, Density) -> bool,
    ) -> &OilState {
        let some = self.oils.iter().any(|oil| self.rises_in(oil, coldest));
        let mut oils = self.oils.iter().filter(|oil| !some || self.rises_in(oil, coldest));
        let mut best = oils.next().unwrap_or(&self.oils[0]);
        for oil in oils {
            if beats(oil.density(season).q, best.density(season).q) {
                best = oil;
            }
        }
        best
    }
}

/// Finds water and oils.
///
/// # Errors
/// [`Stop`] when a temperature or density lies where no formula answers.
pub fn fluids<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Result<Fluids, Stop> {
    t.section("water and oils");
    let celsius = |c: f64| Temperature::of(c, &DEG_C);
    let sheltered = e.site.indoors.0 == Some(true) && e.surfaces.is_empty() && e.containments.is_empty();
    let coldest = stated_or(t, w, e.water.coldest(), "coldest water", || match sheltered {
        true => stand_in(
            (celsius(5.0), celsius(10.0), celsius(20.0)),
            "engineering judgement: winter water of a temperate site, indoors, where no rain comes",
        ),
        false => declared(e.water.coldest().spec),
    });
    let warmest = stated_or_usual(t, w, e.water.warmest(), "warmest water");
    let salinity = stated_or_usual(t, w, e.water.salinity(), "dissolved salt");
    let inflow = stated(t, w, "temperature of the water that flows in", &e.water.inflow);
    let cold = water(t, coldest, salinity)?;
    let warm = water(t, warmest, salinity)?;
    let mut oils = Vec::new();
    for block in &e.oils {
        if let Some(row) = block.kind.as_deref().and_then(oil) {
            let name = block.name.0.clone().unwrap_or_else(|| row.title.to_owned());
            let stated = stated(t, w, &say!(T, "density of {name} at {{59 °F|15 °C}}"), &block.density);
            oils.push(state(t, w, row, &name, stated, &cold, &warm)?);
        }
    }
    for word in words(e) {
        if oils.iter().all(|o: &OilState| o.oil.word != word)
            && let Some(row) = oil(word)
        {
            oils.push(state(t, w, row, row.title, None, &cold, &warm)?);
        }
    }
    if oils.is_empty() {
        let row = oil("diesel").ok_or_else(|| Stop {
            doing: "oils".to_owned(),
            reason: "the handbook has no diesel".to_owned(),
            formula: false,
        })?;
        oils.push(state(t, w, row, "oil taken as diesel", None, &cold, &warm)?);
    }
    Ok(Fluids { salinity, inflow, cold, warm, oils })
}

/// The oils that waters are said to carry.
fn words(e: &Enquiry) -> Vec<&str> {
    let rain = e.rain.iter().filter_map(|r| r.oil.as_ref());
    let streams = e.streams.iter().filter_map(|s| s.oil.as_ref());
    let cases = e.cases.iter().filter_map(|c| c.oil.as_ref());
    rain.chain(streams)
        .chain(cases)
        .chain(e.dumps.iter().filter_map(|d| d.oil.as_ref()))
        .chain(e.stated.oil.as_ref())
        .filter_map(|o| o.kind.as_deref())
        .chain(e.spill.iter().filter_map(|spill| spill.oil.as_deref()).filter(|name| !is_block(e, name)))
        .collect()
}

/// Whether a block of an oil has that name.
fn is_block(e: &Enquiry, name: &str) -> bool {
    e.oils.iter().any(|oil| oil.name.as_deref().is_some_and(|own| same(own, name)))
}

/// The hottest salt water that the formula of its density answers for, °C.
const SALINE_TO: f64 = 60.0;

/// Water of one temperature and salinity; hotter than the formula for salt water goes, it is taken as fresh.
///
/// # Errors
/// [`Stop`] when the temperature lies where no formula answers.
pub fn water<T: Trail>(t: &mut T, temperature: Val<Temperature>, salinity: Val<Ratio>) -> Result<WaterState, Stop> {
    let mut density = by!(t, "density of the water", water_density::density(temperature))?;
    let mut viscosity = by!(t, "viscosity of the water", water_viscosity::viscosity(temperature))?;
    // Hotter salt water is beyond the formula; fresh water lifts the oil less, which is the safe side.
    if salinity.q.si() > 0.0 && temperature.q <= Temperature::of(SALINE_TO, &DEG_C) {
        density = by!(t, "density of the salt water", saline_density::density(temperature, salinity))?;
        viscosity =
            by!(t, "viscosity of the salt water", saline_viscosity::viscosity(viscosity, temperature, salinity))?;
    }
    let kinematic = by!(t, "kinematic viscosity of the water", kinematic_viscosity::viscosity(viscosity, density))?;
    Ok(WaterState { temperature, density, viscosity, kinematic })
}

fn state<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    row: &'static Oil,
    name: &str,
    stated: Option<Val<Density>>,
    cold: &WaterState,
    warm: &WaterState,
) -> Result<OilState, Stop> {
    let density_15 = match stated {
        Some(value) => value,
        None => {
            // Asked for by the word of the handbook: several waters may carry it, and no block need name it.
            let block = OilBlock::standing(Place::named(OilBlock::spec().name, row.word));
            let label = say!(T, "density of {name} at {{59 °F|15 °C}}");
            assumed(t, w, &block.density().of(name), &label, spread(&row.density_15))
        }
    };
    let group = given(t, &say!(T, "density group of {name}"), None, row.group, "handbook, oil", row.word);
    let density_cold =
        by!(t, &say!(T, "density of {name}, cold"), oil_density::density(density_15, cold.temperature, group))?;
    let density_warm =
        by!(t, &say!(T, "density of {name}, warm"), oil_density::density(density_15, warm.temperature, group))?;
    let tension = given(
        t,
        &say!(T, "interfacial tension of {name}"),
        Some((&MN_M, &MN_M)),
        SurfaceTension::from_si(row.interfacial_tension.typical_si()),
        &say!(T, "{}", row.interfacial_tension.source),
        "typical value of the handbook",
    );
    let [first, second] = row.viscosity_points();
    let units = |pair| Some(pair);
    let source = say!(T, "{}", row.viscosity_source);
    let point = |t: &mut T, n: &str, (v, at): (KinematicViscosity, Temperature)| {
        let v = given(t, &say!(T, "{n} viscosity of {name}"), units((&CST, &MM2_S)), v, &source, row.word);
        (v, given(t, &say!(T, "at {n} temperature"), units((&DEG_F, &DEG_C)), at, &source, row.word))
    };
    let (v_1, t_1) = point(t, "first", first);
    let (v_2, t_2) = point(t, "second", second);
    let viscosity =
        by!(t, &say!(T, "viscosity of {name}, cold"), oil_viscosity::viscosity(v_1, t_1, v_2, t_2, cold.temperature))
            .ok();
    Ok(OilState {
        name: name.to_owned(),
        oil: row,
        group,
        density_15,
        cold: density_cold,
        warm: density_warm,
        viscosity,
        tension,
    })
}
