//! Oils: one a file, each value with its source.
//!
//! For sizing take the heaviest oil that may arrive and the coldest water; for the surface and
//! for vapour the lightest. Where a note says "record", a sample of the open oil data is meant.

use super::oil_density::OilGroup;
use crate::page::Source;
use crate::spread::Spread;
use stillrise_units::catalog::{DEG_C, MM2_S};
use stillrise_units::{KinematicViscosity, Temperature, Typed};

mod biodiesel;
mod crude_light;
mod crude_medium;
mod crude_sour;
mod diesel;
mod diesel_en590;
mod engine_oil;
mod engine_oil_15w40;
mod gasoline;
mod gear_oil;
mod heating_oil;
mod heavy_fuel_oil;
mod hydraulic_oil_46;
mod insulating_oil;
mod jet_fuel;
mod natural_ester;
mod sae_30;
mod sae_40;
mod spindle_oil;
mod used_engine_oil;
mod vegetable_oil;

/// One oil.
#[derive(Debug)]
pub struct Oil {
    /// Its word in files.
    pub word: &'static str,
    /// Its name in print.
    pub title: &'static str,
    /// The group by which it expands with temperature.
    pub group: OilGroup,
    /// Density at 15 °C.
    pub density_15: Spread,
    /// Two points of kinematic viscosity: mm2/s at °C, the colder first, of a typical oil.
    pub viscosity: [(f64, f64); 2],
    /// Where the two points come from; the weaker of the two.
    pub viscosity_source: &'static Source,
    /// What a reader should know of the two points.
    pub viscosity_note: &'static str,
    /// Flash point.
    pub flash_c: Spread,
    /// Interfacial tension against clean fresh water; detergents take it to 5 mN/m and below.
    pub interfacial_tension: Spread,
    /// What is dissolved in water that has stood with the oil; no separator removes it.
    pub dissolved: Spread,
    /// Of it, what a test of oil and grease counts, where that is not all: volatile aromatics are driven off with the
    /// solvent (EPA method 1664).
    pub extracted: Option<Spread>,
    /// Whether it is of animal or vegetable origin, which many permits count apart.
    pub animal_or_vegetable: bool,
    /// What limits separation by gravity, beyond density.
    pub gravity_note: Option<&'static str>,
    /// All sources of this oil.
    pub sources: &'static [&'static Source],
}

impl Oil {
    /// What a test of oil and grease finds dissolved in water that has stood with the oil.
    #[must_use]
    pub fn dissolved_in_test(&self) -> &Spread {
        self.extracted.as_ref().unwrap_or(&self.dissolved)
    }
    /// The two points of viscosity as quantities, as `oil-viscosity` takes them.
    #[must_use]
    pub fn viscosity_points(&self) -> [(KinematicViscosity, Temperature); 2] {
        self.viscosity.map(|(v, t)| (KinematicViscosity::of(v, &MM2_S), Temperature::of(t, &DEG_C)))
    }
}

/// All oils, fuels first.
pub static OILS: &[&Oil] = &[
    &gasoline::OIL,
    &jet_fuel::OIL,
    &diesel::OIL,
    &diesel_en590::OIL,
    &heating_oil::OIL,
    &biodiesel::OIL,
    &heavy_fuel_oil::OIL,
    &engine_oil::OIL,
    &engine_oil_15w40::OIL,
    &used_engine_oil::OIL,
    &sae_30::OIL,
    &sae_40::OIL,
    &hydraulic_oil_46::OIL,
    &gear_oil::OIL,
    &insulating_oil::OIL,
    &natural_ester::OIL,
    &crude_light::OIL,
    &crude_medium::OIL,
    &crude_sour::OIL,
    &spindle_oil::OIL,
    &vegetable_oil::OIL,
];

/// The oil of this word.
#[must_use]
pub fn oil(word: &str) -> Option<&'static Oil> {
    OILS.iter().copied().find(|o| super::same(o.word, word))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluids::{oil_density, oil_viscosity};
    use crate::sources;
    use std::collections::BTreeSet;

    /// Density at 15 °C for which each group's constants stand, kg/m3.
    fn range(group: OilGroup) -> (f64, f64) {
        match group {
            OilGroup::Crude => (610.6, 1163.5),
            OilGroup::FuelOil => (838.3127, 1163.5),
            OilGroup::Jet => (787.5195, 838.3127),
            OilGroup::Transition => (770.352, 787.5195),
            OilGroup::Gasoline => (610.6, 770.352),
            OilGroup::Lubricating => (800.9, 1163.5),
            OilGroup::Ester => (900.0, 970.0),
        }
    }

    #[test]
    fn words_are_used_once_and_found() {
        let words: BTreeSet<_> = OILS.iter().map(|o| o.word).collect();
        assert_eq!(words.len(), OILS.len());
        assert!(OILS.iter().all(|o| oil(o.word).is_some_and(|found| found.title == o.title)));
        assert!(oil("water").is_none());
    }

    #[test]
    fn spreads_are_ordered_and_plausible() {
        for o in OILS {
            for spread in [&o.density_15, &o.flash_c, &o.interfacial_tension, &o.dissolved] {
                assert!(spread.is_ordered(), "{}: {spread}", o.word);
            }
            assert!(o.density_15.low_si() >= 700.0 && o.density_15.high_si() <= 1010.0, "{}", o.word);
            assert!(o.flash_c.low >= -50.0 && o.flash_c.high <= 360.0, "{}", o.word);
            assert!(o.interfacial_tension.low_si() >= 1e-3 && o.interfacial_tension.high_si() <= 0.06, "{}", o.word);
            assert!(o.dissolved.low > 0.0 && o.dissolved.high_si() <= 0.3, "{}", o.word);
            let counted = o.dissolved_in_test();
            assert!(counted.is_ordered() && counted.typical <= o.dissolved.typical, "{}", o.word);
        }
    }

    #[test]
    fn the_group_of_expansion_fits_the_typical_density() {
        for o in OILS {
            let (low, high) = range(o.group);
            let typical = o.density_15.typical_si();
            assert!(typical >= low && typical <= high, "{} {typical}", o.word);
            let cold = oil_density::density(typed(typical), Temperature::of(0.0, &DEG_C), o.group).map(Typed::si);
            assert!(cold.is_ok_and(|cold| cold > typical && cold < 1.02 * typical), "{}", o.word);
        }
    }

    #[test]
    fn viscosity_falls_with_temperature_and_serves_the_formula() {
        for o in OILS {
            let [(v_1, t_1), (v_2, t_2)] = o.viscosity_points();
            assert!(t_1 < t_2 && v_1 > v_2, "{}", o.word);
            let cold = oil_viscosity::viscosity(v_1, t_1, v_2, t_2, Temperature::of(5.0, &DEG_C));
            assert!(cold.is_ok_and(|v| v.si() > 5e-7 && v.si() < 0.1), "{}", o.word);
        }
    }

    #[test]
    fn every_source_is_in_the_list_of_sources() {
        for o in OILS {
            for used in [&o.density_15, &o.flash_c, &o.interfacial_tension, &o.dissolved, o.dissolved_in_test()]
                .map(|s| s.source)
            {
                assert!(o.sources.contains(&used), "{}: {used}", o.word);
            }
            assert!(o.sources.contains(&o.viscosity_source), "{}", o.word);
            assert!(o.sources.iter().all(|s| sources::all().any(|known| known == *s)), "{}", o.word);
        }
    }

    fn typed(kg_m3: f64) -> stillrise_units::Density {
        stillrise_units::Density::from_si(kg_m3)
    }
}
