//! The data of the shop and of pumps: words used once, rows that say what their sources say.

use stillrise_handbook::hydraulics::pumping;
use stillrise_handbook::shop::{insulation, strengths, tank_thickness, vents};
use stillrise_handbook::vessel::materials;
use stillrise_units::catalog::{GAL, HP, IN, MIN, PSI};
use stillrise_units::{Power, Typed, Volume};

fn once<'a>(words: impl Iterator<Item = &'a str>) {
    let mut seen = std::collections::BTreeSet::new();
    for word in words {
        assert!(seen.insert(word), "{word} twice");
    }
    assert!(!seen.is_empty());
}

#[test]
fn words_are_used_once() {
    once(tank_thickness::CODES.iter().map(|c| c.word));
    once(strengths::STRENGTHS.iter().map(|s| s.word));
    once(insulation::INSULATIONS.iter().map(|i| i.word));
    once(insulation::SURFACES.iter().map(|s| s.word));
    once(vents::VENTS.iter().map(|v| v.word));
}

/// Thickness grows with capacity in every code, and every plate is one that is sold.
#[test]
fn thickness_grows_with_capacity() {
    for code in tank_thickness::CODES {
        let mut last = (0.0, 0.0);
        for band in code.bands {
            let plate = materials::plate(band.shell).map_or(f64::NAN, |p| p.inches);
            let heads = band.heads.map_or(Some(plate), |h| materials::plate(h).map(|p| p.inches));
            assert!(band.up_to_gal > last.0 && plate >= last.1, "{}: {}", code.word, band.shell);
            assert!(heads.is_some_and(|h| h >= plate), "{}: heads of {}", code.word, band.up_to_gal);
            last = (band.up_to_gal, plate);
        }
    }
}

/// Rows of the codes: 1,000 gal is 12 ga in one, 10 ga in the next, 3/16 in in the third; nobody lists 50,000 gal.
#[test]
fn codes_contradict_each_other_as_printed() {
    let tank = |gallons: f64| Volume::of(gallons, &GAL);
    let shell =
        |word: &str, gallons: f64| tank_thickness::code(word).and_then(|c| c.shell(tank(gallons))).map(|p| p.word);
    assert_eq!(shell("chicago", 1000.0), Some("12 ga"));
    assert_eq!(shell("floral park", 1000.0), Some("10 ga"));
    assert_eq!(shell("rye", 1000.0), Some("3/16 in"));
    assert_eq!(shell("new york", 1000.0), None);
    assert_eq!(shell("chicago", 285.0), Some("16 ga"));
    assert_eq!(tank_thickness::heaviest(tank(1000.0)).map(|(c, p)| (c.word, p.word)), Some(("rye", "3/16 in")));
    assert_eq!(tank_thickness::heaviest(tank(15000.0)).map(|(c, p)| (c.word, p.word)), Some(("chicago", "5/16 in")));
    assert!(tank_thickness::heaviest(tank(50000.0)).is_none());
}

/// 0.6 x 36 ksi; 0.30 Btu in/(h ft2 °F) at 0.14423 W/(m K) each; 0.17 h ft2 °F/Btu at 0.17611 m2 K/W each.
#[test]
fn strengths_and_resistances_are_as_printed() {
    let steel = strengths::strength("steel").map(|s| s.allowable().in_unit(&PSI));
    assert!(steel.is_some_and(|s| (s - 21_600.0).abs() < 1e-6));
    let glass = insulation::insulation("glass fibre").map_or(f64::NAN, |i| i.conductivity);
    assert!((glass - 0.30 * 0.144_228).abs() < 5e-5);
    for (word, us) in [("outside", 0.17), ("inside up", 0.61), ("inside wall", 0.68), ("inside down", 0.92)] {
        let found = insulation::surface(word).map_or(f64::NAN, |s| s.resistance);
        assert!((found - us * 0.176_110).abs() < 6e-5, "{word}: {found}");
    }
}

#[test]
fn vents_of_volatile_liquids_ask_for_more() {
    assert!(vents::applying(true).count() > vents::applying(false).count());
    let bore = vents::applying(false).find(|v| v.word == "bore").and_then(vents::VentRule::least);
    assert!(bore.is_some_and(|b| (b.in_unit(&IN) - 1.25).abs() < 1e-12));
}

/// Table 7-1: less than 20 hp 10 min, to 100 hp 15, to 250 hp 20; above as the maker says.
#[test]
fn large_motors_start_less_often() {
    let least = |hp: f64| pumping::least_cycle(Power::of(hp, &HP)).map(|t| t.in_unit(&MIN).round());
    assert_eq!((least(5.0), least(20.0), least(100.0), least(300.0)), (Some(10.0), Some(15.0), Some(20.0), None));
}
