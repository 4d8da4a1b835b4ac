//! The heads of a cylinder: surfaces of revolution closed over its end, by their meridian.

use crate::choice;
use arrayvec::ArrayVec;
use core::f64::consts::{FRAC_PI_2, PI};
use stillrise_units::math::{abs, acos, cos, max, min, sin, sqrt};

/// How the ends of a cylinder are closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Head {
    /// A flat plate.
    Flat,
    /// Half an ellipsoid, this share of the diameter deep: a quarter for a 2:1 head, a half for a hemisphere.
    Ellipsoidal(f64),
    /// A crown as round as the diameter, joined by a knuckle whose radius is this share of it.
    Torispherical(f64),
}

choice! {
    /// The forms of head that are common.
    HeadForm {
        /// a flat plate
        Flat "flat",
        /// half an ellipsoid, a quarter of the diameter deep: a 2:1 head
        Ellipsoidal "ellipsoidal",
        /// a crown as round as the diameter, its knuckle a tenth of it
        Torispherical "torispherical",
        /// the same with a knuckle of 6 %
        TorisphericalShallow "torispherical-shallow",
        /// half a sphere
        Hemispherical "hemispherical",
    }
}

impl HeadForm {
    /// Its shape.
    #[must_use]
    pub fn head(self) -> Head {
        match self {
            HeadForm::Flat => Head::Flat,
            HeadForm::Ellipsoidal => Head::TWO_TO_ONE,
            HeadForm::Torispherical => Head::KNUCKLE_10,
            HeadForm::TorisphericalShallow => Head::KNUCKLE_6,
            HeadForm::Hemispherical => Head::HEMISPHERE,
        }
    }
}

/// One arc of a meridian; its angle runs from the shell to the axis.
#[derive(Debug, Clone, Copy)]
struct Arc {
    /// Centre: distance from the shell's end, outwards, and from the axis.
    centre: (f64, f64),
    /// Half axes, along and across.
    axes: (f64, f64),
    /// Angles.
    from: f64,
    to: f64,
}

impl Arc {
    /// Distance from the shell's end.
    fn out(&self, angle: f64) -> f64 {
        self.centre.0 + self.axes.0 * sin(angle)
    }
    /// Distance from the axis.
    fn radius(&self, angle: f64) -> f64 {
        max(0.0, self.centre.1 + self.axes.1 * cos(angle))
    }
    /// Slope of the distance from the shell's end, and of the length of the arc.
    fn slopes(&self, angle: f64) -> (f64, f64) {
        let (along, across) = (self.axes.0 * cos(angle), self.axes.1 * sin(angle));
        (along, sqrt(along * along + across * across))
    }
    /// The angle at a distance from the shell's end.
    fn at(&self, out: f64) -> f64 {
        let sine = min(1.0, max(-1.0, (out - self.centre.0) / self.axes.0));
        min(self.to, max(self.from, FRAC_PI_2 - acos(sine)))
    }
    /// The angle at a distance from the axis.
    fn where_radius(&self, radius: f64) -> f64 {
        min(self.to, max(self.from, acos(min(1.0, max(-1.0, (radius - self.centre.1) / self.axes.1)))))
    }
}

/// Nodes and weights of Gauss-Legendre, eight points (Abramowitz and Stegun, 25.4); the others lie as far below the middle.
const RULE: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_48),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
];
/// Panels between two breaks.
const PANELS: u32 = 4;

/// The integral of a function that may bend like a root at both ends, which the substitution takes away.
fn integral(from: f64, to: f64, of: impl Fn(f64) -> f64) -> f64 {
    let smooth = |u: f64| u * u * (3.0 - 2.0 * u);
    let at = |u: f64| of(from + (to - from) * smooth(u)) * 6.0 * u * (1.0 - u);
    let half = 0.5 / f64::from(PANELS);
    let mut sum = 0.0;
    for k in 0..PANELS {
        let middle = half * f64::from(2 * k + 1);
        sum += RULE
            .iter()
            .map(|(node, weight)| weight * (at(middle - half * node) + at(middle + half * node)))
            .sum::<f64>();
    }
    half * (to - from) * sum
}

/// Area of a circle below a chord that lies `over` its centre.
pub(super) fn segment(radius: f64, over: f64) -> f64 {
    if over <= -radius {
        return 0.0;
    }
    if over >= radius {
        return PI * radius * radius;
    }
    radius * radius * half_angle(radius, over) + over * half_chord(radius, over)
}

/// Half of a chord that lies `over` the centre.
pub(super) fn half_chord(radius: f64, over: f64) -> f64 {
    sqrt(max(0.0, radius * radius - over * over))
}

/// Angle at the centre from straight down to the end of the chord.
pub(super) fn half_angle(radius: f64, over: f64) -> f64 {
    if radius <= 0.0 {
        return if over >= 0.0 { PI } else { 0.0 };
    }
    acos(max(-1.0, min(1.0, -over / radius)))
}

impl Head {
    /// A 2:1 ellipsoidal head.
    pub const TWO_TO_ONE: Head = Head::Ellipsoidal(0.25);
    /// A hemisphere.
    pub const HEMISPHERE: Head = Head::Ellipsoidal(0.5);
    /// A torispherical head with a knuckle of a tenth of the diameter, as of DIN 28011.
    pub const KNUCKLE_10: Head = Head::Torispherical(0.1);
    /// One with a knuckle of 6 %, the least that the ASME code for pressure vessels allows.
    pub const KNUCKLE_6: Head = Head::Torispherical(0.06);

    /// How far the inside reaches beyond the shell, m.
    pub(in crate::vessel) fn depth(self, diameter: f64) -> f64 {
        self.meridian(diameter).last().map_or(0.0, |arc| arc.out(arc.to))
    }

    /// The arcs of the meridian, from the shell to the axis; none for a flat head.
    fn meridian(self, diameter: f64) -> ArrayVec<Arc, 2> {
        let radius = 0.5 * diameter;
        match self {
            Head::Flat => ArrayVec::new(),
            Head::Ellipsoidal(share) => ArrayVec::from_iter([Arc {
                centre: (0.0, 0.0),
                axes: (share * diameter, radius),
                from: 0.0,
                to: FRAC_PI_2,
            }]),
            Head::Torispherical(share) => {
                let (crown, knuckle) = (diameter, share * diameter);
                // The centre of the crown lies on the axis, inside the shell, so far that both arcs meet.
                let behind = sqrt((crown - knuckle) * (crown - knuckle) - (radius - knuckle) * (radius - knuckle));
                let meet = acos((radius - knuckle) / (crown - knuckle));
                ArrayVec::from_iter([
                    Arc { centre: (0.0, radius - knuckle), axes: (knuckle, knuckle), from: 0.0, to: meet },
                    Arc { centre: (-behind, 0.0), axes: (crown, crown), from: meet, to: FRAC_PI_2 },
                ])
            }
        }
    }

    /// Distance from the axis at a distance from the shell's end, m.
    pub(super) fn radius(self, diameter: f64, out: f64) -> f64 {
        let meridian = self.meridian(diameter);
        let arc = meridian.iter().find(|arc| out <= arc.out(arc.to)).or(meridian.last());
        arc.map_or(0.5 * diameter, |arc| arc.radius(arc.at(out)))
    }

    /// The sum of something over the head between two distances from the shell's end: of a radius, and of what a step of the
    /// angle makes in distance and in length of arc. `over` is the level over the axis, where the radius bends the sum.
    fn sum(self, diameter: f64, (from, to): (f64, f64), over: f64, of: impl Fn(f64, (f64, f64)) -> f64) -> f64 {
        let mut sum = 0.0;
        for arc in self.meridian(diameter) {
            let (low, high) = (arc.at(from), arc.at(to));
            let touch = min(high, max(low, arc.where_radius(abs(over))));
            let at = |angle: f64| of(arc.radius(angle), arc.slopes(angle));
            sum += integral(low, touch, at) + integral(touch, high, at);
        }
        sum
    }

    /// Volume between two distances from the shell's end, below a level, m3.
    pub(in crate::vessel) fn volume(self, diameter: f64, part: (f64, f64), over: f64) -> f64 {
        self.sum(diameter, part, over, |radius, (along, _)| segment(radius, over) * along)
    }
    /// Free surface there, m2.
    pub(in crate::vessel) fn surface(self, diameter: f64, part: (f64, f64), over: f64) -> f64 {
        self.sum(diameter, part, over, |radius, (along, _)| 2.0 * half_chord(radius, over) * along)
    }
    /// Wall that is wetted up to a level, m2.
    pub(super) fn wetted(self, diameter: f64, over: f64) -> f64 {
        if self == Head::Flat {
            return segment(0.5 * diameter, over);
        }
        let whole = (0.0, self.depth(diameter));
        self.sum(diameter, whole, over, |radius, (_, arc)| 2.0 * radius * half_angle(radius, over) * arc)
    }

    /// Points of the meridian from the shell to the axis: distance from the shell's end, and from the axis, m.
    pub(super) fn points(self, diameter: f64) -> Vec<(f64, f64)> {
        const STEPS: u32 = 12;
        let step = |arc: &Arc, k: u32| arc.from + (arc.to - arc.from) * f64::from(k) / f64::from(STEPS);
        let meridian = self.meridian(diameter);
        let points = meridian.iter().flat_map(|arc| (0..=STEPS).map(move |k| (arc, step(arc, k))));
        points.map(|(arc, angle)| (arc.out(angle), arc.radius(angle))).collect()
    }

    /// Whether it can be made.
    pub(super) fn is_sound(self) -> bool {
        match self {
            Head::Flat => true,
            Head::Ellipsoidal(share) => share > 0.0 && share <= 0.5,
            Head::Torispherical(knuckle) => knuckle > 0.0 && knuckle < 0.5,
        }
    }
}
