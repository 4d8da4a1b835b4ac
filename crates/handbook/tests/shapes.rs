//! Identities that every kind of vessel must keep, run on every kind over a table of dimensions.

use stillrise_handbook::vessel::shape::Shape;
use stillrise_handbook::vessel::shapes::{Hopper, HorizontalCylinder, Rectangular, RectangularHopper};
use stillrise_handbook::vessel::{cylinder_ellipsoidal_volume, hopper_volume, horizontal_cylinder_volume};
use stillrise_units::{Length, Typed, Volume};

fn m(value: f64) -> Length {
    Length::from_si(value)
}

/// Dimensions in metres, from a small unit to the largest basin.
const BOXES: &[(f64, f64, f64)] = &[(1.2, 0.6, 0.9), (3.048, 1.524, 1.8288), (12.0, 2.4, 2.6), (40.0, 6.0, 3.0)];
const CYLINDERS: &[(f64, f64)] = &[(1.2192, 3.6576), (2.4384, 9.144), (3.05, 12.0), (0.9, 1.1)];
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
        let shape = HorizontalCylinder { diameter: m(*diameter), length: m(*length) };
        all.push((shape.into(), core::f64::consts::PI * diameter * diameter / 4.0 * length));
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
        assert!((shape.capacity().si() - expected).abs() <= 1e-12 * expected, "{shape:?}");
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
            Shape::HorizontalCylinder(c) => {
                assert!((area - (c.length * c.diameter).si()).abs() < 1e-12 * area);
            }
        }
    }
}

#[test]
fn the_cross_section_times_the_length_is_the_volume_above_the_floor() {
    for (shape, _) in shapes() {
        for z in levels(&shape) {
            let above = (shape.volume(m(z)) - shape.volume(m(0.0))).si();
            let made = (shape.cross_section(m(z)) * shape.length()).si();
            assert!((made - above.max(0.0)).abs() < 1e-11 * shape.capacity().si(), "{shape:?} {z}");
        }
    }
}

/// Volume, wetted wall and free surface of a flat-headed cylinder, from fluids 1.3.1.
#[test]
fn the_cylinder_agrees_with_a_library_and_with_its_page() {
    let (diameter, length) = (m(1.2192), m(3.6576));
    let shape: Shape = HorizontalCylinder { diameter, length }.into();
    let text = include_str!("../check/tank_partial.csv");
    let mut rows = 0;
    for row in text.lines().filter(|l| l.starts_with("H_flat_")) {
        let cells: Vec<f64> = row.split(',').skip(2).map(|c| c.parse().unwrap_or(f64::NAN)).collect();
        let level = m(cells[0]);
        assert!((shape.volume(level).si() - cells[1]).abs() < 6e-9, "{row}");
        assert!((shape.wetted_area(level).si() - cells[3]).abs() < 6e-8, "{row}");
        // The library gives no surface; the table's is a numeric slope.
        assert!((shape.surface(level).si() - cells[4]).abs() < 2e-6, "{row}");
        let page = horizontal_cylinder_volume::volume(diameter, length, level).map_or(f64::NAN, |v| v.si());
        assert!((shape.volume(level).si() - page).abs() < 1e-14, "{row}");
        let flat = cylinder_ellipsoidal_volume::volume(diameter, length, m(0.0), level).map_or(f64::NAN, |v| v.si());
        assert_eq!(page, flat, "{row}");
        rows += 1;
    }
    assert_eq!(rows, 9);
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
