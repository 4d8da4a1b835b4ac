//! The data of vessels: words used once, rules that pick what they say they pick.

use stillrise_handbook::vessel::{alarms, cautions, materials, plate_weight, testing, triggers};
use stillrise_units::catalog::{FT2, IN, LB};
use stillrise_units::{Area, Length, Typed, Volume};

fn once<'a>(words: impl Iterator<Item = &'a str>) {
    let mut seen = std::collections::BTreeSet::new();
    for word in words {
        assert!(seen.insert(word), "{word} twice");
    }
    assert!(!seen.is_empty());
}

#[test]
fn words_are_used_once() {
    once(triggers::TRIGGERS.iter().map(|t| t.word));
    once(alarms::DEFAULTS.iter().chain(alarms::PUBLISHED).map(|s| s.word));
    once(cautions::CAUTIONS.iter().map(|c| c.word));
    once(materials::MATERIALS.iter().map(|m| m.word));
    once(materials::PLATES.iter().map(|p| p.word));
    for list in [testing::START_UP, testing::ACCEPTANCE, testing::CLEANING, testing::MEASURING] {
        once(list.iter().map(|s| s.word));
    }
}

#[test]
fn set_points_rise_to_the_limit() {
    let shares: Vec<f64> = alarms::DEFAULTS.iter().map(|s| s.share).collect();
    assert!(shares.windows(2).all(|w| w[0] < w[1]), "{shares:?}");
    assert_eq!(shares.last(), Some(&1.0));
}

/// A separator of 5 m3, 5 m2 and 1 m depth with an oil store of 0.5 m3 or a sludge trap of 1.5 m3.
fn room(store: f64) -> triggers::Room {
    triggers::Room {
        store: Volume::from_si(store),
        separator: Volume::from_si(5.0),
        area: Area::from_si(5.0),
        depth: Length::from_si(1.0),
    }
}

#[test]
fn the_default_is_the_most_stringent_rule_that_applies() {
    let oil = |place| triggers::strictest_oil(triggers::applying(place), &room(0.5)).map(|(t, v)| (t.word, v.si()));
    let sludge =
        |place| triggers::strictest_sludge(triggers::applying(place), &room(1.5)).map(|(t, v)| (t.word, v.si()));
    assert_eq!(oil(None), Some(("en 858-2", 0.4)));
    // A tenth of the separator, 0.5 m3, comes before half of the trap, 0.75 m3.
    assert_eq!(sludge(None), Some(("mil-hdbk-1138", 0.5)));
    assert_eq!(oil(Some("Charlotte, North Carolina")), Some(("charlotte", 0.0)));
    let county = Some("Thurston County, Washington");
    assert!(oil(county).is_some_and(|(word, v)| word == "thurston county" && (v - 0.127).abs() < 1e-12));
    assert!(triggers::applying(county).all(|t| t.reach != triggers::Reach::OtherTrade));
}

/// The table of weights that the trade quotes for steel of 490 lb/ft3, hand arithmetic.
#[test]
fn plates_weigh_what_the_trade_says() {
    let steel = materials::material("steel").map(materials::Material::density);
    for (word, pounds) in [
        ("16 ga", 2.44),
        ("14 ga", 3.05),
        ("12 ga", 4.27),
        ("11 ga", 4.88),
        ("10 ga", 5.49),
        ("7 ga", 7.32),
        ("3/16 in", 7.65),
        ("1/4 in", 10.2),
        ("5/16 in", 12.75),
        ("3/8 in", 15.3),
    ] {
        let weight = materials::plate(word)
            .zip(steel)
            .and_then(|(plate, rho)| plate_weight::mass(Area::of(1.0, &FT2), plate.thickness(), rho).ok())
            .map_or(f64::NAN, |m| m.in_unit(&LB));
        assert!((weight - pounds).abs() < 1.5e-3 * pounds, "{word}: {weight}");
    }
    assert_eq!(materials::plate("1/4 in").map(|p| p.thickness().in_unit(&IN)), Some(0.25));
}

#[test]
fn every_material_lies_within_its_own_range() {
    for m in materials::MATERIALS {
        assert!(m.range.0 <= m.density && m.density <= m.range.1, "{}", m.word);
    }
}
