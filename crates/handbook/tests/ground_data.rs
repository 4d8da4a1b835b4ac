//! The data of the ground: words used once, sources beside every row, rules that pick what they say they pick.

use stillrise_handbook::ground::cover::{self, Paving, Traffic};
use stillrise_handbook::ground::{anchors, electrical_areas, flotation, liquid_classes, soils};
use stillrise_units::catalog::{DEG_F, FT, IN, LB_FT3};
use stillrise_units::{Length, Temperature, Typed};

fn once<'a>(words: impl Iterator<Item = &'a str>) {
    let mut seen = std::collections::BTreeSet::new();
    for word in words {
        assert!(seen.insert(word), "{word} twice");
    }
    assert!(!seen.is_empty());
}

#[test]
fn words_are_used_once() {
    once(flotation::FACTORS.iter().map(|f| f.word));
    once(flotation::METHODS.iter().map(|m| m.word));
    once(soils::BACKFILLS.iter().map(|b| b.word));
    once(soils::GROUNDS.iter().map(|g| g.word));
    once(cover::COVERS.iter().map(|c| c.word));
    once(liquid_classes::CLASSES.iter().map(|c| c.word));
    once(electrical_areas::AREAS.iter().map(|a| a.word));
    once(anchors::RULES.iter().map(|r| r.word));
}

/// Factors are listed from the lowest; three authorities ask for three different ones.
#[test]
fn factors_rise() {
    let factors: Vec<f64> = flotation::FACTORS.iter().map(|f| f.factor).collect();
    assert!(factors.windows(2).all(|w| w[0] <= w[1]), "{factors:?}");
    assert_eq!(flotation::factor("flood agency").map(|f| f.factor), Some(1.3));
    assert_eq!(flotation::factor("septic sheet").map(|f| f.factor), Some(1.5));
}

/// 8 CCR 5597: 2 ft of earth, or 1 ft under 4 in of concrete; 3 ft under traffic, or 18 in under 6 in of concrete.
#[test]
fn covers_are_those_of_the_codes() {
    let earth = |t: Traffic| {
        let bare = cover::permitted(t).filter(|c| c.paving == Paving::None);
        bare.map(|c| c.earth().in_unit(&FT)).collect::<Vec<_>>()
    };
    assert!(earth(Traffic::None).iter().all(|feet| (feet - 2.0).abs() < 1e-12));
    assert!(earth(Traffic::Vehicles).iter().all(|feet| (feet - 3.0).abs() < 1e-12));
    for c in cover::COVERS {
        let total = (c.earth() + c.paving()).in_unit(&IN);
        assert!(c.paving == Paving::None || (16.0..=26.0).contains(&total), "{}: {total}", c.word);
    }
}

/// Impact falls with cover: 20 % at 2 ft, 10 % up to 3 ft, none below.
#[test]
fn impact_falls_with_cover() {
    for (feet, share) in [(0.5, 0.3), (1.0, 0.3), (2.0, 0.2), (2.5, 0.1), (3.0, 0.1), (3.1, 0.0), (8.0, 0.0)] {
        assert_eq!(cover::impact(Length::of(feet, &FT)), share, "{feet} ft");
    }
}

/// Submerged weights that the sources name: 57.6 lb/ft3 in the permit calculation, 60 in recommended practice.
#[test]
fn backfills_weigh_what_their_sources_say() {
    for (word, submerged) in [("permit", 57.6), ("tank practice", 60.0)] {
        let rho = soils::backfill(word).map_or(f64::NAN, |b| b.densities().1.in_unit(&LB_FT3));
        assert!((rho - 62.4 - submerged).abs() < 1e-9, "{word}: {rho}");
    }
    for b in soils::BACKFILLS {
        assert!(b.moist.is_ordered() && b.saturated.is_ordered(), "{}", b.word);
    }
    let bearing: Vec<f64> = soils::GROUNDS.iter().map(|g| g.bearing().si()).collect();
    assert!(bearing.windows(2).all(|w| w[0] < w[1]), "{bearing:?}");
}

/// The limits of the classes: below 73 °F I A or B, below 100 °F I C, below 140 °F II, below 200 °F III A.
#[test]
fn liquids_are_sorted_by_flash_point() {
    let at = |f: f64| Temperature::of(f, &DEG_F);
    let class = |flash: f64, boils: Option<f64>| liquid_classes::class(at(flash), boils.map(at)).map(|c| c.word);
    for (flash, boils, word) in [
        (-45.0, Some(110.0), "IB"),
        (-45.0, Some(95.0), "IA"),
        (-45.0, None, "IA"),
        (72.9, Some(180.0), "IB"),
        (73.0, None, "IC"),
        (99.9, None, "IC"),
        (100.0, None, "II"),
        (140.0, None, "IIIA"),
        (200.0, None, "IIIB"),
        (420.0, Some(700.0), "IIIB"),
    ] {
        assert_eq!(class(flash, boils), Some(word), "{flash} °F");
    }
    assert!(liquid_classes::class(Temperature::from_si(f64::NAN), None).is_none());
}

#[test]
fn areas_reach_as_far_as_the_table_says() {
    let around = electrical_areas::area("around");
    assert_eq!(around.and_then(electrical_areas::Area::up).map(|l| l.in_unit(&IN)), Some(18.0));
    assert!(around.and_then(electrical_areas::Area::out).is_some_and(|l| (l.in_unit(&FT) - 15.0).abs() < 1e-12));
}

/// Manuals: 12 x 12 in for 6 and 8 ft, 18 x 12 for 10 ft, 36 x 8 for 12 ft; slabs of 6 to 15 ft.
#[test]
fn anchors_grow_with_the_tank() {
    let at = |feet: f64| anchors::size(Length::of(feet, &FT));
    let deadman = |feet: f64| at(feet).map(|s| (s.deadman_width_in, s.deadman_depth_in));
    assert_eq!(deadman(3.0), Some((6.0, 6.0)));
    assert_eq!(deadman(8.0), Some((12.0, 12.0)));
    assert_eq!(deadman(9.0), Some((18.0, 12.0)));
    assert_eq!(deadman(12.0), Some((36.0, 8.0)));
    assert!(at(13.0).is_none());
    for s in anchors::SIZES {
        let (width, depth) = s.deadman();
        assert!(s.slab_width() > Length::of(s.up_to_ft, &FT) && width >= depth, "{}", s.up_to_ft);
    }
}
