//! Closed surfaces of triangles in metres, x along, y across, z up, outside seen counter-clockwise.

use std::collections::BTreeMap;
use stillrise_units::math;

/// A point in space, m.
pub type Spot = [f64; 3];

/// Corners nearer than this are one, m.
const NEAR: f64 = 1e-6;

/// Triangles over shared corners.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Mesh {
    /// Corners.
    pub corners: Vec<Spot>,
    /// Triangles, by their corners.
    pub triangles: Vec<[u32; 3]>,
}

/// Gathers triangles; corners that stand on each other become one, triangles without area fall away.
#[derive(Debug, Default)]
pub struct Builder {
    mesh: Mesh,
    known: BTreeMap<[i64; 3], u32>,
}

impl Builder {
    /// A corner.
    pub fn corner(&mut self, at: Spot) -> u32 {
        #[allow(clippy::cast_possible_truncation, reason = "no model is larger than 1e12 m")]
        let key = at.map(|v| (v / NEAR).round() as i64);
        let next = u32::try_from(self.mesh.corners.len()).unwrap_or(u32::MAX);
        *self.known.entry(key).or_insert_with(|| {
            self.mesh.corners.push(at);
            next
        })
    }

    /// A triangle.
    pub fn triangle(&mut self, at: [Spot; 3]) {
        let [a, b, c] = at.map(|p| self.corner(p));
        if a != b && b != c && c != a {
            self.mesh.triangles.push([a, b, c]);
        }
    }

    /// Four corners of a face, one after the other.
    pub fn quad(&mut self, [a, b, c, d]: [Spot; 4]) {
        self.triangle([a, b, c]);
        self.triangle([a, c, d]);
    }

    /// What was gathered, its outside outward.
    #[must_use]
    pub fn closed(self) -> Mesh {
        if self.mesh.volume() < 0.0 { self.mesh.reversed() } else { self.mesh }
    }
}

impl Mesh {
    /// Volume that it encloses, m3: the sum over its triangles that Gauss's theorem makes of it.
    #[must_use]
    pub fn volume(&self) -> f64 {
        self.faces().map(|[a, b, c]| dot(a, cross(b, c))).sum::<f64>() / 6.0
    }

    /// The corners of each triangle.
    pub fn faces(&self) -> impl Iterator<Item = [Spot; 3]> + '_ {
        self.triangles.iter().map(|t| t.map(|k| self.corners.get(k as usize).copied().unwrap_or_default()))
    }

    /// Whether every edge is passed once each way: nothing leaks, and all faces look outward or all inward.
    #[must_use]
    pub fn is_closed(&self) -> bool {
        !self.triangles.is_empty() && self.open_edges().is_empty()
    }

    /// Edges that are passed one way only.
    fn open_edges(&self) -> Vec<(u32, u32)> {
        let mut count: BTreeMap<(u32, u32), i32> = BTreeMap::new();
        for [a, b, c] in &self.triangles {
            for edge in [(*a, *b), (*b, *c), (*c, *a)] {
                *count.entry(edge).or_default() += 1;
            }
        }
        let other = |(a, b): (u32, u32)| count.get(&(b, a)).copied().unwrap_or(0);
        count.iter().filter(|(edge, n)| **n != other(**edge)).map(|(edge, _)| *edge).collect()
    }

    /// The same turned inside out.
    #[must_use]
    pub fn reversed(mut self) -> Mesh {
        self.triangles.iter_mut().for_each(|t| t.reverse());
        self
    }

    /// Both as one.
    #[must_use]
    pub fn with(mut self, other: Mesh) -> Mesh {
        let shift = u32::try_from(self.corners.len()).unwrap_or(u32::MAX);
        self.corners.extend(other.corners);
        self.triangles.extend(other.triangles.into_iter().map(|t| t.map(|k| k.saturating_add(shift))));
        self
    }

    /// A wall of a thickness around an inside; `open` tells the faces, by their corners, where there is none.
    #[must_use]
    pub fn wall(&self, thick: f64, open: impl Fn(&[Spot; 3]) -> bool) -> Mesh {
        let kept: Vec<[u32; 3]> =
            self.triangles.iter().zip(self.faces()).filter(|(_, face)| !open(face)).map(|(t, _)| *t).collect();
        let inner = Mesh { corners: self.corners.clone(), triangles: kept };
        let shift = u32::try_from(inner.corners.len()).unwrap_or(u32::MAX);
        let outer = |k: u32| k.saturating_add(shift);
        let rim = inner.open_edges();
        let mut all = inner.clone().reversed().with(Mesh { corners: inner.moved(thick), ..inner });
        // Where the wall ends, its thickness shows.
        for (a, b) in rim {
            all.triangles.extend([[a, b, outer(b)], [a, outer(b), outer(a)]]);
        }
        all.tidy()
    }

    /// The same without corners that no triangle has.
    fn tidy(self) -> Mesh {
        let mut out = Builder::default();
        // Corners of two faces of a thin wall are never taken for one.
        let mut place: BTreeMap<u32, u32> = BTreeMap::new();
        let mut triangles = Vec::with_capacity(self.triangles.len());
        for t in &self.triangles {
            triangles.push(t.map(|k| {
                *place.entry(k).or_insert_with(|| {
                    out.mesh.corners.push(self.corners.get(k as usize).copied().unwrap_or_default());
                    u32::try_from(out.mesh.corners.len() - 1).unwrap_or(u32::MAX)
                })
            }));
        }
        Mesh { corners: out.mesh.corners, triangles }
    }

    /// Corners moved outward so that each face that meets there is moved by a distance, as nearly as all of them allow.
    fn moved(&self, by: f64) -> Vec<Spot> {
        let mut sums = vec![([[0.0; 3]; 3], [0.0; 3]); self.corners.len()];
        for (t, [a, b, c]) in self.triangles.iter().zip(self.faces()) {
            let normal = cross(less(b, a), less(c, a));
            let size = dot(normal, normal).sqrt();
            if size < 1e-12 {
                continue;
            }
            let n = normal.map(|v| v / size);
            for k in t {
                let Some((matrix, right)) = sums.get_mut(*k as usize) else { continue };
                for (row, ni) in matrix.iter_mut().zip(n) {
                    row.iter_mut().zip(n).for_each(|(cell, nj)| *cell += ni * nj);
                }
                right.iter_mut().zip(n).for_each(|(cell, ni)| *cell += ni * by);
            }
        }
        let place = |(corner, (matrix, right)): (&Spot, &([Spot; 3], Spot))| {
            let step = solve(*matrix, *right);
            [corner[0] + step[0], corner[1] + step[1], corner[2] + step[2]]
        };
        self.corners.iter().zip(&sums).map(place).collect()
    }
}

/// The least answer of three equations in the sense of least squares.
fn solve(mut m: [Spot; 3], right: Spot) -> Spot {
    let trace = m[0][0] + m[1][1] + m[2][2];
    if trace <= 0.0 {
        return [0.0; 3];
    }
    for (k, row) in m.iter_mut().enumerate() {
        row[k] += 1e-7 * trace;
    }
    let [a, b, c] = m;
    let det = dot(a, cross(b, c));
    // The matrix is symmetrical, so that its rows are its columns.
    [dot(right, cross(b, c)) / det, dot(a, cross(right, c)) / det, dot(a, cross(b, right)) / det]
}

fn less(a: Spot, b: Spot) -> Spot {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: Spot, b: Spot) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Spot, b: Spot) -> Spot {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// What lies between sections that stand one behind the other, each from its lowest point up one side and down the other: point k
/// of a section faces the point k from its end.
#[must_use]
pub fn loft(sections: &[Vec<Spot>]) -> Mesh {
    let mut out = Builder::default();
    for pair in sections.windows(2) {
        let [a, b] = pair else { continue };
        let around = |ring: &[Spot]| ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)).collect::<Vec<_>>();
        for ((a0, a1), (b0, b1)) in around(a).into_iter().zip(around(b)) {
            out.quad([a0, a1, b1, b0]);
        }
    }
    for (ring, forward) in [(sections.first(), false), (sections.last(), true)] {
        let Some(ring) = ring else { continue };
        let mut sides: Vec<(Spot, Spot)> = ring.iter().copied().zip(ring.iter().rev().copied()).collect();
        sides.truncate(ring.len() / 2);
        for pair in sides.windows(2) {
            let &[(l0, r0), (l1, r1)] = pair else { continue };
            out.quad(if forward { [r0, l0, l1, r1] } else { [l0, r0, r1, l1] });
        }
    }
    let mesh = out.closed();
    if mesh.is_closed() { mesh } else { Mesh::default() }
}

/// A convex outline drawn out along a way.
#[must_use]
pub fn prism(outline: &[Spot], along: Spot) -> Mesh {
    let mut out = Builder::default();
    let far = |p: Spot| [p[0] + along[0], p[1] + along[1], p[2] + along[2]];
    for (a, b) in outline.iter().copied().zip(outline.iter().copied().cycle().skip(1)) {
        out.quad([a, b, far(b), far(a)]);
    }
    if let Some((first, rest)) = outline.split_first() {
        for pair in rest.windows(2) {
            let &[b, c] = pair else { continue };
            out.triangle([*first, c, b]);
            out.triangle([far(*first), far(b), far(c)]);
        }
    }
    out.closed()
}

/// An upright box between two corners.
#[must_use]
pub fn block(low: Spot, high: Spot) -> Mesh {
    let [x0, y0, z0] = low;
    let [x1, y1, z1] = high;
    prism(&[[x0, y0, z0], [x1, y0, z0], [x1, y1, z0], [x0, y1, z0]], [0.0, 0.0, z1 - z0])
}

/// Corners of a circle that stands in for a pipe's.
const AROUND: u16 = 32;

/// A straight pipe from its beginning along a way, by its bore and the thickness of its wall; a bar where it has no bore.
#[must_use]
pub fn pipe(from: Spot, along: Spot, bore: f64, thick: f64) -> Mesh {
    let length = dot(along, along).sqrt();
    if length <= 0.0 {
        return Mesh::default();
    }
    let axis = along.map(|v| v / length);
    let across = cross(axis, if axis[2].abs() > 0.5 { [1.0, 0.0, 0.0] } else { [0.0, 0.0, 1.0] });
    let size = dot(across, across).sqrt();
    let u = across.map(|v| v / size);
    let v = cross(axis, u);
    let ring = |radius: f64, end: f64| -> Vec<Spot> {
        let point = |k: u16| {
            let angle = 2.0 * core::f64::consts::PI * f64::from(k) / f64::from(AROUND);
            let (c, s) = (radius * math::cos(angle), radius * math::sin(angle));
            let at = |k: usize| from[k] + end * along[k] + c * u[k] + s * v[k];
            [at(0), at(1), at(2)]
        };
        (0..AROUND).map(point).collect()
    };
    let outer = 0.5 * bore + thick;
    if bore <= 0.0 {
        return prism(&ring(outer, 0.0), along);
    }
    let rings = [ring(0.5 * bore, 0.0), ring(outer, 0.0), ring(outer, 1.0), ring(0.5 * bore, 1.0)];
    let mut out = Builder::default();
    for (a, b) in rings.iter().zip(rings.iter().cycle().skip(1)) {
        let next = |ring: &[Spot]| ring.iter().copied().cycle().skip(1).take(ring.len()).collect::<Vec<_>>();
        for (((a0, a1), b1), b0) in a.iter().copied().zip(next(a)).zip(next(b)).zip(b.iter().copied()) {
            out.quad([a0, a1, b1, b0]);
        }
    }
    out.closed()
}

/// The strips of parallel sheets that a rectangle holds, each as an outline in its plane: `(width, height)` of the rectangle from its
/// lower left corner, the angle that the sheets stand at (radians), their thickness, and the distance from one to the next.
#[must_use]
pub fn sheets((width, height): (f64, f64), angle: f64, thick: f64, pitch: f64) -> Vec<Vec<[f64; 2]>> {
    let (c, s) = (math::cos(angle), math::sin(angle));
    // How far a point lies above the sheet through the lower left corner, square to it.
    let over = |p: [f64; 2]| p[1] * c - p[0] * s;
    let corners = [[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]];
    let (low, high) = (over(corners[1]), over(corners[3]));
    let mut all = Vec::new();
    if !(pitch > 0.0 && thick > 0.0 && (high - low) / pitch < 1e4) {
        return all;
    }
    let mut at = low + 0.5 * pitch;
    while at + 0.5 * thick < high {
        let upper = half(&corners, |p| at + 0.5 * thick - over(p));
        let strip = half(&upper, |p| over(p) - (at - 0.5 * thick));
        if strip.len() > 2 {
            all.push(strip);
        }
        at += pitch;
    }
    all
}

/// The part of a convex outline where `side` is not negative.
fn half(area: &[[f64; 2]], side: impl Fn([f64; 2]) -> f64) -> Vec<[f64; 2]> {
    let mut left = Vec::new();
    for (a, b) in area.iter().copied().zip(area.iter().copied().cycle().skip(1)) {
        let (sa, sb) = (side(a), side(b));
        if sa >= 0.0 {
            left.push(a);
        }
        if (sa >= 0.0) != (sb >= 0.0) {
            let share = sa / (sa - sb);
            left.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
        }
    }
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn volumes_are_those_of_the_bodies_and_nothing_leaks() {
        let cube = block([0.0, 0.0, 0.0], [2.0, 3.0, 4.0]);
        assert!(cube.is_closed() && (cube.volume() - 24.0).abs() < 1e-12);
        let tube = pipe([1.0, 2.0, 3.0], [0.0, 0.0, 2.0], 1.0, 0.1);
        // A ring of 32 corners: n/2 sin(2 pi / n) of the square of the radius.
        let area = |r: f64| 16.0 * math::sin(core::f64::consts::PI / 16.0) * r * r;
        assert!(tube.is_closed() && (tube.volume() - 2.0 * (area(0.6) - area(0.5))).abs() < 1e-9, "{}", tube.volume());
        let wall = cube.wall(0.1, |_| false);
        assert!(wall.is_closed() && (wall.volume() - (2.2 * 3.2 * 4.2 - 24.0)).abs() < 1e-4, "{}", wall.volume());
        let open = cube.wall(0.1, |face| face.iter().all(|p| p[2] > 3.9));
        assert!(open.is_closed() && (open.volume() - (2.2 * 3.2 * 4.1 - 24.0)).abs() < 1e-4, "{}", open.volume());
    }

    #[test]
    fn sheets_fill_a_rectangle_at_their_pitch() {
        let all = sheets((2.0, 1.0), core::f64::consts::FRAC_PI_4, 0.01, 0.1);
        // Square to sheets at 45 degrees the rectangle is 3 / sqrt 2 = 2.12 wide.
        assert_eq!(all.len(), 21);
        assert!(
            all.iter().flatten().all(|p| (-1e-9..=2.0 + 1e-9).contains(&p[0]) && (-1e-9..=1.0 + 1e-9).contains(&p[1]))
        );
        for sheet in all {
            let body = prism(&sheet.iter().map(|p| [p[0], 0.0, p[1]]).collect::<Vec<_>>(), [0.0, 1.0, 0.0]);
            assert!(body.is_closed() && body.volume() > 0.0);
        }
    }
}
