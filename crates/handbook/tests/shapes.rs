//! Identities that every kind of vessel must keep, run on every kind over a table of dimensions.

use stillrise_handbook::vessel::shape::{Part, Shape};
use stillrise_handbook::vessel::shapes::{
    Head, Hopper, HorizontalCylinder, Rectangular, RectangularHopper, UprightCylinder,
};
use stillrise_handbook::vessel::{cylinder_ellipsoidal_volume, hopper_volume, horizontal_cylinder_volume};
use stillrise_units::{Length, Typed, Volume};

fn m(value: f64) -> Length {
    Length::from_si(value)
}

/// Dimensions in metres, from a small unit to the largest basin.
const BOXES: &[(f64, f64, f64)] = &[(1.2, 0.6, 0.9), (3.048, 1.524, 1.8288), (12.0, 2.4, 2.6), (40.0, 6.0, 3.0)];
const CYLINDERS: &[(f64, f64)] = &[(1.2192, 3.6576), (2.4384, 9.144), (3.05, 12.0), (0.9, 1.1)];
/// Volume of one head over the cube of the diameter: half an ellipsoid, and for the torispherical ones a quadrature of their
/// two arcs about the axis (scipy 1.17.1, integrate.quad), which fluids 1.3.1 gives too (0.0989660, 0.0809990, of
/// `tank_total.csv` less the shell).
const HEADS: &[(Head, f64)] = &[
    (Head::Flat, 0.0),
    (Head::TWO_TO_ONE, core::f64::consts::PI / 24.0),
    (Head::HEMISPHERE, core::f64::consts::PI / 12.0),
    (Head::KNUCKLE_10, KNUCKLE_10),
    (Head::KNUCKLE_6, KNUCKLE_6),
];
const KNUCKLE_10: f64 = 0.098_965_995_118_083_02;
const KNUCKLE_6: f64 = 0.080_999_004_291_151_6;
/// Position, top length, bottom length and width, depth, as shares of the box.
type Shares = (f64, f64, f64, f64, f64);
const HOPPERS: &[&[Shares]] = &[
    &[(0.0, 0.4, 0.1, 0.3, 0.5)],
    &[(0.0, 1.0, 0.1, 0.2, 0.3)],
    &[(0.6, 0.4, 0.2, 1.0, 0.4), (0.1, 0.3, 0.0, 0.0, 0.2)],
];

fn shapes() -> Vec<(Shape, f64)> {
    let mut all: Vec<(Shape, f64)> = Vec::new();
    for (length, width, height) in BOXES {
        let plain = Rectangular { length: m(*length), width: m(*width), height: m(*height) };
        all.push((plain.into(), length * width * height));
        for set in HOPPERS {
            let hoppers: Vec<Hopper> = set
                .iter()
                .map(|(at, top, bottom, wide, depth)| Hopper {
                    at: m(at * length),
                    top_length: m(top * length),
                    bottom_length: m(bottom * length),
                    bottom_width: m(wide * width),
                    depth: m(depth * height),
                })
                .collect();
            let closed: f64 = hoppers
                .iter()
                .map(|h| {
                    hopper_volume::volume(h.top_length, m(*width), h.bottom_length, h.bottom_width, h.depth)
                        .map_or(f64::NAN, |v| v.si())
                })
                .sum();
            all.push((RectangularHopper { chamber: plain, hoppers }.into(), length * width * height + closed));
        }
    }
    for (diameter, length) in CYLINDERS {
        let section = core::f64::consts::PI * diameter * diameter / 4.0;
        for (head, share) in HEADS {
            let shape = HorizontalCylinder { diameter: m(*diameter), shell: m(*length), head: *head };
            // Both heads, as a share of the cube of the diameter.
            all.push((shape.into(), section * length + 2.0 * share * diameter * diameter * diameter));
        }
        all.push((UprightCylinder { diameter: m(*diameter), height: m(*length) }.into(), section * length));
    }
    all
}

/// Levels strictly inside the vessel, none of them at the floor, where a hopper ends.
fn levels(shape: &Shape) -> Vec<f64> {
    let (low, high) = (shape.bottom().si(), shape.height().si());
    (1..40).map(|i| low + (high - low) * f64::from(i) / 40.123).collect()
}

#[test]
fn every_kind_is_in_the_table() {
    let tried: std::collections::BTreeSet<_> = shapes().iter().map(|(s, _)| s.kind()).collect();
    let listed: std::collections::BTreeSet<_> = Shape::KINDS.iter().map(|(kind, _)| *kind).collect();
    assert_eq!(tried, listed);
    assert!(shapes().iter().all(|(s, _)| s.faults().is_empty()));
}

#[test]
fn the_full_vessel_has_the_volume_of_the_textbook() {
    for (shape, expected) in shapes() {
        assert!((shape.capacity().si() - expected).abs() <= 2e-9 * expected, "{shape:?}");
        assert_eq!(shape.volume(shape.height() + m(1.0)), shape.capacity(), "{shape:?}");
        assert_eq!(shape.volume(shape.bottom()).si(), 0.0, "{shape:?}");
        assert_eq!(shape.volume(shape.bottom() - m(1.0)).si(), 0.0, "{shape:?}");
    }
}

#[test]
fn a_level_is_found_again_from_its_volume() {
    for (shape, _) in shapes() {
        let span = (shape.height() - shape.bottom()).si();
        for z in levels(&shape) {
            let back = shape.level(shape.volume(m(z))).map_or(f64::NAN, Typed::si);
            assert!((back - z).abs() < 1e-9 * span, "{shape:?} {z} {back}");
        }
        assert_eq!(shape.level(Volume::from_si(-1.0)), None);
        assert_eq!(shape.level(shape.capacity() * 1.001), None);
        assert!(shape.level(shape.capacity()).is_some_and(|z| (z - shape.height()).si().abs() < 1e-6 * span));
    }
}

#[test]
fn the_surface_is_the_slope_of_the_volume() {
    for (shape, _) in shapes() {
        let step = 1e-5 * (shape.height() - shape.bottom()).si();
        for z in levels(&shape).into_iter().filter(|z| z.abs() > 2.0 * step) {
            let slope = (shape.volume(m(z + step)) - shape.volume(m(z - step))).si() / (2.0 * step);
            let surface = shape.surface(m(z)).si();
            assert!((slope - surface).abs() < 1e-6 * surface, "{shape:?} {z}: {slope} {surface}");
        }
    }
}

#[test]
fn wetted_area_grows_and_never_falls_short_of_the_surface() {
    for (shape, _) in shapes() {
        let mut before = 0.0;
        for z in levels(&shape) {
            let wet = shape.wetted_area(m(z)).si();
            assert!(wet > before, "{shape:?} {z}");
            // A cup of liquid has more wall than surface; a hopper with an open top too.
            assert!(wet >= shape.surface(m(z)).si(), "{shape:?} {z}");
            before = wet;
        }
        assert_eq!(shape.wetted_area(shape.bottom() - m(0.1)).si(), 0.0);
    }
}

/// Area of a polygon by its corners, positive when they run counter-clockwise.
fn polygon(corners: &[(Length, Length)]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(a, b)| (a.0 * b.1 - b.0 * a.1).si()).sum::<f64>() / 2.0
}

#[test]
fn the_outline_encloses_the_long_section() {
    for (shape, _) in shapes() {
        let corners = shape.outline();
        let top = corners.iter().map(|c| c.1.si()).fold(f64::MIN, f64::max);
        let low = corners.iter().map(|c| c.1.si()).fold(f64::MAX, f64::min);
        assert_eq!((top, low), (shape.height().si(), shape.bottom().si()), "{shape:?}");
        let area = polygon(&corners);
        match &shape {
            Shape::Rectangular(b) => {
                assert!((area * b.width.si() - shape.capacity().si()).abs() < 1e-12 * area);
            }
            Shape::RectangularHopper(b) => {
                let expected = (b.chamber.length * b.chamber.height).si()
                    + b.hoppers.iter().map(|h| ((h.top_length + h.bottom_length) * h.depth / 2.0).si()).sum::<f64>();
                assert!((area - expected).abs() < 1e-12 * expected, "{shape:?}");
                // A hopper is nowhere wider than the box.
                assert!(area * b.chamber.width.si() >= shape.capacity().si() * (1.0 - 1e-12));
            }
            // Dished heads are drawn by short straight lines.
            _ => {
                let steps = 20_000;
                let step = shape.length().si() / f64::from(steps);
                let high = |k: i32| {
                    let x = m((f64::from(k) + 0.5) * step);
                    // Under the crown at the axis the section is a circle of the radius there.
                    match &shape {
                        Shape::HorizontalCylinder(c) => shape.width_at(x, 0.5 * c.diameter).si(),
                        _ => shape.height().si(),
                    }
                };
                let expected: f64 = (0..steps).map(|k| high(k) * step).sum();
                assert!((area - expected).abs() < 2e-3 * expected, "{shape:?}: {area} {expected}");
            }
        }
    }
}

/// Parts along a vessel, in shares of its length.
const PARTS: &[(f64, f64)] = &[(0.0, 1.0), (0.0, 0.13), (0.07, 0.41), (0.41, 0.9), (0.86, 1.0), (0.3, 0.3)];

fn part(shape: &Shape, (from, to): (f64, f64)) -> Part {
    Part { from: shape.length() * from, to: shape.length() * to }
}

/// Volume, surface and section are all sums of the clear width.
#[test]
fn all_is_made_of_the_clear_width() {
    const N: i32 = 300;
    for (shape, _) in shapes() {
        let (low, high) = (shape.bottom().si(), shape.height().si());
        for share in PARTS {
            let part = part(&shape, *share);
            let length = (part.to - part.from).si();
            for level in [0.31, 0.5, 0.77].map(|share| low + share * (high - low)) {
                let (dx, dz) = (length / f64::from(N), (level - low) / f64::from(N));
                let x = |i: i32| part.from + m((f64::from(i) + 0.5) * dx);
                let z = |k: i32| m(low + (f64::from(k) + 0.5) * dz);
                let surface: f64 = (0..N).map(|i| shape.width_at(x(i), m(level)).si() * dx).sum();
                let section = |i: i32| (0..N).map(|k| shape.width_at(x(i), z(k)).si() * dz).sum::<f64>();
                let volume: f64 = (0..N).map(|i| section(i) * dx).sum();
                let near = |found: f64, summed: f64, whole: f64| (found - summed).abs() < 4e-3 * whole + 1e-12;
                let found = shape.volume_of(part, m(level)).si();
                assert!(near(found, volume, shape.capacity().si()), "{shape:?} {share:?} {level}: {found} {volume}");
                let found = shape.surface_of(part, m(level)).si();
                let plan = (shape.length() * shape.width()).si();
                assert!(near(found, surface, plan), "{shape:?} {share:?} {level}: {found} {surface}");
                let found = shape.section(x(N / 3), m(level)).si();
                let face = ((shape.height() - shape.bottom()) * shape.width()).si();
                assert!(near(found, section(N / 3), face), "{shape:?} {share:?} {level}: {found}");
            }
        }
    }
}

/// Compartments side by side make up the vessel, at every level.
#[test]
fn parts_sum_to_the_whole() {
    for (shape, _) in shapes() {
        let ends = [0.0, 0.05, 0.2, 0.5, 0.93, 1.0];
        for z in levels(&shape) {
            let parts = || ends.windows(2).map(|pair| part(&shape, (pair[0], pair[1])));
            let volume: f64 = parts().map(|part| shape.volume_of(part, m(z)).si()).sum();
            let surface: f64 = parts().map(|part| shape.surface_of(part, m(z)).si()).sum();
            assert!((volume - shape.volume(m(z)).si()).abs() < 2e-9 * shape.capacity().si(), "{shape:?} {z}");
            let plan = (shape.length() * shape.width()).si();
            assert!((surface - shape.surface(m(z)).si()).abs() < 2e-9 * plan, "{shape:?} {z}");
        }
    }
}

/// A part of a cylinder of a huge radius is the box between the same stations.
#[test]
fn a_huge_cylinder_is_a_box_near_its_floor() {
    let (radius, depth) = (1e6, 1e-3);
    let shape: Shape = HorizontalCylinder { diameter: m(2.0 * radius), shell: m(5.0), head: Head::Flat }.into();
    let part = Part { from: m(1.0), to: m(3.5) };
    // A flat segment is two thirds of its chord times its depth; its surface is the chord.
    let chord = shape.width_at(m(2.0), m(depth)).si();
    assert!((shape.surface_of(part, m(depth)).si() - 2.5 * chord).abs() < 1e-9 * chord);
    // Near the middle the walls stand upright.
    let (low, high) = (radius - depth, radius + depth);
    let slice = (shape.volume_of(part, m(high)) - shape.volume_of(part, m(low))).si();
    let made = 2.5 * 2.0 * radius * 2.0 * depth;
    assert!((slice - made).abs() < 1e-3 * made, "{slice} {made}");
}

/// Volume, wetted wall and free surface of cylinders, from fluids 1.3.1 (`geometry.TANK`).
#[test]
fn cylinders_agree_with_a_library_and_with_their_pages() {
    let text = include_str!("../check/tank_partial.csv");
    let horizontal = |diameter: f64, shell: f64, head: Head| {
        Shape::from(HorizontalCylinder { diameter: m(diameter), shell: m(shell), head })
    };
    let kinds: [(&str, Shape, usize); 6] = [
        ("H_flat_", horizontal(1.2192, 3.6576, Head::Flat), 9),
        ("H_torisph_DIN", horizontal(2.4384, 9.144, Head::KNUCKLE_10), 9),
        ("H_torisph_ASME", horizontal(2.4384, 9.144, Head::KNUCKLE_6), 10),
        ("H_ellips2:1", horizontal(3.048, 12.192, Head::TWO_TO_ONE), 9),
        ("H_hemisph", horizontal(2.0, 6.0, Head::HEMISPHERE), 9),
        ("V_flat", UprightCylinder { diameter: m(1.8288), height: m(2.4384) }.into(), 9),
    ];
    for (name, shape, count) in kinds {
        let mut rows = 0;
        for row in text.lines().filter(|l| l.starts_with(name)) {
            let cells: Vec<f64> = row.split(',').skip(2).map(|c| c.parse().unwrap_or(f64::NAN)).collect();
            let level = m(cells[0]);
            let (volume, wet, surface) = (shape.volume(level), shape.wetted_area(level), shape.surface(level));
            let capacity = shape.capacity().si();
            assert!((volume.si() - cells[1]).abs() < 6e-9 + 1e-7 * capacity, "{row}: {}", volume.si());
            // The library gives no surface; the table's is a numeric slope.
            let full = (level - shape.height()).si().abs() < 1e-6;
            assert!(
                full || cells[4].is_nan() || (surface.si() - cells[4]).abs() < 3e-6 * (1.0 + cells[4]),
                "{row}: {}",
                surface.si()
            );
            assert!(cells[3].is_nan() || (wet.si() - cells[3]).abs() < 2e-6 * (1.0 + cells[3]), "{row}: {}", wet.si());
            rows += 1;
        }
        assert_eq!(rows, count, "{name}");
    }
    let (diameter, length) = (m(1.2192), m(3.6576));
    let flat = horizontal(1.2192, 3.6576, Head::Flat);
    let ends = horizontal(1.2192, 3.6576, Head::TWO_TO_ONE);
    for level in [0.1, 0.4, 0.7, 1.1].map(m) {
        let page = horizontal_cylinder_volume::volume(diameter, length, level).map_or(f64::NAN, |v| v.si());
        assert!((flat.volume(level).si() - page).abs() < 1e-14, "{page}");
        let page = cylinder_ellipsoidal_volume::volume(diameter, length, diameter / 4.0, level);
        let page = page.map_or(f64::NAN, |v| v.si());
        assert!((ends.volume(level).si() - page).abs() < 1e-10, "{page}");
        let plain = cylinder_ellipsoidal_volume::volume(diameter, length, m(0.0), level).map_or(f64::NAN, |v| v.si());
        assert!((flat.volume(level).si() - plain).abs() < 1e-14, "{plain}");
    }
}

#[test]
fn a_vessel_that_cannot_be_built_says_all_that_is_wrong() {
    let bad = Rectangular { length: m(-1.0), width: m(0.0), height: m(f64::NAN) };
    assert_eq!(Shape::from(bad).faults().len(), 3);
    assert_eq!(Shape::from(bad).level(Volume::from_si(1.0)), None);
    let fine = Rectangular { length: m(4.0), width: m(2.0), height: m(2.0) };
    let hopper = |at: f64, top: f64| Hopper {
        at: m(at),
        top_length: m(top),
        bottom_length: m(0.3),
        bottom_width: m(0.3),
        depth: m(0.8),
    };
    let count = |hoppers: Vec<Hopper>| Shape::from(RectangularHopper { chamber: fine, hoppers }).faults().len();
    assert_eq!(count(vec![hopper(0.0, 1.0), hopper(1.0, 1.0)]), 0);
    assert_eq!(count(vec![hopper(0.0, 1.0), hopper(0.5, 1.0)]), 1);
    assert_eq!(count(vec![hopper(3.5, 1.0)]), 1);
    assert_eq!(count(vec![hopper(0.0, 0.2)]), 1);
}

/// The shoulders of two hoppers that touch are one corner.
#[test]
fn an_outline_has_no_corner_twice() {
    let chamber = Rectangular { length: m(2.0), width: m(1.0), height: m(1.0) };
    let hopper =
        |at: f64| Hopper { at: m(at), top_length: m(1.0), bottom_length: m(0.2), bottom_width: m(0.2), depth: m(0.5) };
    let shape: Shape = RectangularHopper { chamber, hoppers: vec![hopper(1.0), hopper(0.0)] }.into();
    assert_eq!(shape.outline().len(), 9);
}
