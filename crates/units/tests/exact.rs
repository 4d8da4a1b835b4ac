//! Every factor of the catalogue against Pint 0.25.3 (`units.csv`), an independent library.

use stillrise_units::catalog::UNITS;

/// The rows of the table and the pair of our symbols they speak of.
const PAIRS: &[(&str, &str, &str)] = &[
    ("US gallon", "gal", "m3"),
    ("US gpm", "gpm", "m3/s"),
    ("US gpm -> L/s", "gpm", "L/s"),
    ("US gpd", "gpd", "m3/s"),
    ("MGD (US)", "MGD", "m3/s"),
    ("cfs", "cfs", "m3/s"),
    ("cfs -> gpm", "cfs", "gpm"),
    ("oil barrel 42 gal", "bbl", "m3"),
    ("ft", "ft", "m"),
    ("in", "in", "m"),
    ("mil", "mil", "m"),
    ("acre (international)", "acre", "m2"),
    ("hectare", "ha", "m2"),
    ("ft/min", "ft/min", "m/s"),
    ("ft/s", "ft/s", "m/s"),
    ("gpm/ft2 (surface loading)", "gpm/ft2", "m/s"),
    ("gpm/ft2 -> m/h", "gpm/ft2", "m/h"),
    ("lb avoirdupois", "lb", "kg"),
    ("lbf", "lbf", "N"),
    ("psf", "psf", "Pa"),
    ("pcf", "lb/ft3", "kg/m3"),
    ("cP", "cP", "Pa s"),
    ("cSt", "cSt", "m2/s"),
    ("ft2/s", "ft2/s", "m2/s"),
    ("yd3", "yd3", "m3"),
    ("hp mechanical", "hp", "W"),
];

fn scale(symbol: &str) -> f64 {
    UNITS.iter().find(|u| u.symbol == symbol).map_or(f64::NAN, |u| u.scale)
}

#[test]
fn factors_agree_with_an_independent_library() {
    let table = include_str!("units.csv");
    for (name, from, to) in PAIRS {
        let row = table.lines().find(|l| l.starts_with(&format!("{name},")));
        let expected: f64 = row.and_then(|r| r.split(',').nth(3)).and_then(|f| f.parse().ok()).unwrap_or(f64::NAN);
        let ours = scale(from) / scale(to);
        assert!((ours / expected - 1.0).abs() < 2e-14, "{name}: {ours} against {expected}");
    }
}

#[test]
fn every_unit_goes_there_and_back() {
    for unit in UNITS {
        for value in [0.0, 1.0, 57.3, 1e4] {
            let back = unit.from_si(unit.to_si(value));
            assert!((back - value).abs() <= 1e-12 * value.abs().max(1e3), "{} {value} {back}", unit.symbol);
        }
    }
}

#[test]
fn no_spelling_means_two_units() {
    let mut seen = std::collections::BTreeMap::new();
    for unit in UNITS {
        for name in std::iter::once(unit.symbol).chain(unit.also.iter().copied()) {
            if let Some(other) = seen.insert(name, unit.symbol) {
                panic!("\"{name}\" is both {other} and {}", unit.symbol);
            }
        }
    }
}
