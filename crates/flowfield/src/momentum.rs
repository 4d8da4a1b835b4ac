//! What drives and holds the water of each face, and how that changes with the stream function.
//!
//! The speeds follow from the stream function, so that no cell gains or loses water. What is left of the balance of momentum in each
//! face is the gradient of a pressure; added up round a node it must vanish, and that is the node's equation.

use crate::problem::{Node, Problem};

/// Speeds, m/s: along on upright faces, up on level faces.
#[derive(Debug, Clone, PartialEq)]
pub struct Speeds {
    /// Along.
    pub u: Vec<f64>,
    /// Up.
    pub v: Vec<f64>,
}

/// The speeds that a stream function stands for.
#[must_use]
pub fn speeds(problem: &Problem, psi: &[f64]) -> Speeds {
    let g = &problem.grid;
    let (nx, ny) = (g.nx(), g.ny());
    let mut u = vec![0.0; (nx + 1) * ny];
    let mut v = vec![0.0; nx * (ny + 1)];
    for i in 0..=nx {
        for j in 0..ny {
            u[g.upright(i, j)] = (psi[g.node(i, j + 1)] - psi[g.node(i, j)]) / (g.dy(j) * problem.width[j]);
        }
    }
    for i in 0..nx {
        for j in 0..=ny {
            v[g.level(i, j)] = -(psi[g.node(i + 1, j)] - psi[g.node(i, j)]) / (g.dx(i) * problem.width_at[j]);
        }
    }
    Speeds { u, v }
}

/// Most speeds that the balance of one face knows: five of its own direction, four of the other.
const TERMS: usize = 9;

/// The balance of one face, m/s², and its change with each speed that it knows.
pub(crate) struct Balance {
    pub(crate) left: f64,
    terms: [(Place, f64); TERMS],
    count: usize,
}

/// A speed, by its face.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Place {
    U(usize, usize),
    V(usize, usize),
}

impl Balance {
    fn new() -> Self {
        Self { left: 0.0, terms: [(Place::U(0, 0), 0.0); TERMS], count: 0 }
    }
    fn add(&mut self, place: Place, slope: f64) {
        if let Some((_, s)) = self.terms[..self.count].iter_mut().find(|(p, _)| *p == place) {
            *s += slope;
        } else if self.count < TERMS {
            self.terms[self.count] = (place, slope);
            self.count += 1;
        }
    }
    /// The same, held back by inertia against a change of the face's own speed; the balance itself stays.
    pub(crate) fn held(mut self, i: usize, j: usize, along: bool, inertia: f64) -> Self {
        if inertia > 0.0 {
            self.add(if along { Place::U(i, j) } else { Place::V(i, j) }, inertia);
        }
        self
    }
    /// Changes with the stream function at nodes: each speed is a difference of two.
    pub(crate) fn by_nodes(&self, problem: &Problem, mut add: impl FnMut(usize, f64)) {
        let g = &problem.grid;
        for (place, slope) in &self.terms[..self.count] {
            match *place {
                Place::U(i, j) => {
                    let each = slope / (g.dy(j) * problem.width[j]);
                    add(g.node(i, j + 1), each);
                    add(g.node(i, j), -each);
                }
                Place::V(i, j) => {
                    let each = slope / (g.dx(i) * problem.width_at[j]);
                    add(g.node(i + 1, j), -each);
                    add(g.node(i, j), each);
                }
            }
        }
    }
}

/// The balances of a flow.
pub(crate) struct Momentum<'a> {
    problem: &'a Problem,
    speeds: &'a Speeds,
    has_drag: bool,
}

impl<'a> Momentum<'a> {
    pub(crate) fn new(problem: &'a Problem, speeds: &'a Speeds) -> Self {
        Self { problem, speeds, has_drag: problem.has_drag() }
    }
    fn u(&self, i: usize, j: usize) -> f64 {
        self.speeds.u[self.problem.grid.upright(i, j)]
    }
    fn v(&self, i: usize, j: usize) -> f64 {
        self.speeds.v[self.problem.grid.level(i, j)]
    }

    /// Of an upright face within the grid; `carried` is the share of convection that counts, none for creeping flow.
    pub(crate) fn along(&self, i: usize, j: usize, carried: f64) -> Balance {
        let (p, g) = (self.problem, &self.problem.grid);
        let mut b = Balance::new();
        let (dx_w, dx_e, dx) = (g.dx(i - 1), g.dx(i), g.between_x(i));
        let (dy, width) = (g.dy(j), p.width[j]);
        let volume = width * dy * dx;
        let own = self.u(i, j);
        // Through the cells ahead and behind: what is carried, and the stress along.
        for (sign, from, to, cell, length) in
            [(1.0, i, i + 1, g.cell(i, j), dx_e), (-1.0, i - 1, i, g.cell(i - 1, j), dx_w)]
        {
            let (a, c) = (self.u(from, j), self.u(to, j));
            let area = sign * width * dy / volume;
            let mean = 0.5 * (a + c);
            let stress = 2.0 * p.viscosity[cell] / length;
            b.left += area * (carried * mean * mean - stress * (c - a));
            b.add(Place::U(from, j), area * (carried * mean + stress));
            b.add(Place::U(to, j), area * (carried * mean - stress));
        }
        // Through the level lines above and below, at their nodes.
        for (sign, line) in [(1.0, j + 1), (-1.0, j)] {
            let node = g.node(i, line);
            let viscosity = p.viscosity_at[node];
            let area = sign * p.width_at[line] * dx / volume;
            match p.nodes[node] {
                Node::Free => {
                    let (below, above) = (line - 1, line);
                    let (dy_b, dy_a) = (g.dy(below), g.dy(above));
                    let (share_b, share_a) = (dy_a / (dy_b + dy_a), dy_b / (dy_b + dy_a));
                    let (u_b, u_a) = (self.u(i, below), self.u(i, above));
                    let (v_w, v_e) = (self.v(i - 1, line), self.v(i, line));
                    // What passes is the water of both halves; what it carries, the speed between the two.
                    let (half_w, half_e) = (0.5 * dx_w / dx, 0.5 * dx_e / dx);
                    let passes = half_w * v_w + half_e * v_e;
                    let mean = share_b * u_b + share_a * u_a;
                    let (by_y, by_x) = (viscosity / g.between_y(line), viscosity / dx);
                    b.left += area * (carried * passes * mean - by_y * (u_a - u_b) - by_x * (v_e - v_w));
                    b.add(Place::U(i, below), area * (carried * passes * share_b + by_y));
                    b.add(Place::U(i, above), area * (carried * passes * share_a - by_y));
                    b.add(Place::V(i - 1, line), area * (carried * mean * half_w + by_x));
                    b.add(Place::V(i, line), area * (carried * mean * half_e - by_x));
                }
                // The face lies beside the wall, half its height away.
                Node::Held { slide: Some(_), .. } | Node::Island(_) => {
                    let slide = p.nodes[node].slide();
                    // Of the water beside the wall: what lies behind it may be another.
                    let beside = 0.5 * (p.viscosity[g.cell(i - 1, j)] + p.viscosity[g.cell(i, j)]);
                    let rub = 2.0 * beside / dy;
                    b.left += area * sign * rub * (own - slide);
                    b.add(Place::U(i, j), area * sign * rub);
                }
                Node::Held { slide: None, .. } | Node::Leaves => {}
            }
        }
        let screen = p.screens[g.upright(i, j)];
        if screen > 0.0 {
            b.left += screen * own.abs() * own;
            b.add(Place::U(i, j), 2.0 * screen * own.abs());
        }
        b.left -= p.push[g.upright(i, j)];
        if self.has_drag {
            self.drag_along(i, j, &mut b);
        }
        b
    }

    /// Of a level face within the grid.
    pub(crate) fn up(&self, i: usize, j: usize, carried: f64) -> Balance {
        let (p, g) = (self.problem, &self.problem.grid);
        let mut b = Balance::new();
        let (dy_b, dy_a, dy) = (g.dy(j - 1), g.dy(j), g.between_y(j));
        let dx = g.dx(i);
        let volume = p.width_at[j] * dx * dy;
        let own = self.v(i, j);
        for (sign, from, to, row, height) in [(1.0, j, j + 1, j, dy_a), (-1.0, j - 1, j, j - 1, dy_b)] {
            let (a, c) = (self.v(i, from), self.v(i, to));
            let area = sign * p.width[row] * dx / volume;
            let mean = 0.5 * (a + c);
            let stress = 2.0 * p.viscosity[g.cell(i, row)] / height;
            b.left += area * (carried * mean * mean - stress * (c - a));
            b.add(Place::V(i, from), area * (carried * mean + stress));
            b.add(Place::V(i, to), area * (carried * mean - stress));
        }
        for (sign, line) in [(1.0, i + 1), (-1.0, i)] {
            let node = g.node(line, j);
            let viscosity = p.viscosity_at[node];
            let area = sign / dx;
            match p.nodes[node] {
                Node::Free => {
                    let (behind, ahead) = (line - 1, line);
                    let (dx_w, dx_e) = (g.dx(behind), g.dx(ahead));
                    let (share_w, share_e) = (dx_e / (dx_w + dx_e), dx_w / (dx_w + dx_e));
                    let (v_w, v_e) = (self.v(behind, j), self.v(ahead, j));
                    let (u_b, u_a) = (self.u(line, j - 1), self.u(line, j));
                    let over = p.width_at[j] * dy;
                    let (half_b, half_a) = (0.5 * p.width[j - 1] * dy_b / over, 0.5 * p.width[j] * dy_a / over);
                    let passes = half_b * u_b + half_a * u_a;
                    let mean = share_w * v_w + share_e * v_e;
                    let (by_x, by_y) = (viscosity / g.between_x(line), viscosity / dy);
                    b.left += area * (carried * passes * mean - by_x * (v_e - v_w) - by_y * (u_a - u_b));
                    b.add(Place::V(behind, j), area * (carried * passes * share_w + by_x));
                    b.add(Place::V(ahead, j), area * (carried * passes * share_e - by_x));
                    b.add(Place::U(line, j - 1), area * (carried * mean * half_b + by_y));
                    b.add(Place::U(line, j), area * (carried * mean * half_a - by_y));
                }
                Node::Held { slide: Some(_), .. } | Node::Island(_) => {
                    let slide = p.nodes[node].slide();
                    let beside = 0.5 * (p.viscosity[g.cell(i, j - 1)] + p.viscosity[g.cell(i, j)]);
                    let rub = 2.0 * beside / dx;
                    b.left += area * sign * rub * (own - slide);
                    b.add(Place::V(i, j), area * sign * rub);
                }
                Node::Held { slide: None, .. } | Node::Leaves => {}
            }
        }
        b.left -= p.lift[g.level(i, j)];
        if self.has_drag {
            self.drag_up(i, j, &mut b);
        }
        b
    }

    /// What zones hold back on an upright face: of its two half cells each by its share.
    fn drag_along(&self, i: usize, j: usize, b: &mut Balance) {
        let (p, g) = (self.problem, &self.problem.grid);
        let own = self.u(i, j);
        let over = g.dx(i - 1) + g.dx(i);
        for column in [i - 1, i] {
            let drag = p.drag[g.cell(column, j)];
            let share = g.dx(column) / over;
            let (v_b, v_a) = (self.v(column, j), self.v(column, j + 1));
            let v = 0.5 * (v_b + v_a);
            let speed = (own * own + v * v).sqrt();
            let (square, by_u, by_v) = squared(drag.square, own, v, speed);
            b.left += share * (drag.xx * own + drag.xy * v + square);
            b.add(Place::U(i, j), share * (drag.xx + by_u));
            if drag.xy != 0.0 || drag.square != 0.0 {
                let each = share * 0.5 * (drag.xy + by_v);
                b.add(Place::V(column, j), each);
                b.add(Place::V(column, j + 1), each);
            }
        }
    }

    /// The same on a level face.
    fn drag_up(&self, i: usize, j: usize, b: &mut Balance) {
        let (p, g) = (self.problem, &self.problem.grid);
        let own = self.v(i, j);
        let over = g.dy(j - 1) + g.dy(j);
        for row in [j - 1, j] {
            let drag = p.drag[g.cell(i, row)];
            let share = g.dy(row) / over;
            let (u_w, u_e) = (self.u(i, row), self.u(i + 1, row));
            let u = 0.5 * (u_w + u_e);
            let speed = (own * own + u * u).sqrt();
            let (square, by_v, by_u) = squared(drag.square, own, u, speed);
            b.left += share * (drag.yy * own + drag.xy * u + square);
            b.add(Place::V(i, j), share * (drag.yy + by_v));
            if drag.xy != 0.0 || drag.square != 0.0 {
                let each = share * 0.5 * (drag.xy + by_u);
                b.add(Place::U(i, row), each);
                b.add(Place::U(i + 1, row), each);
            }
        }
    }
}

/// A drag by the square of the speed, and its changes with the face's own speed and with the one straight to it.
fn squared(drag: f64, own: f64, other: f64, speed: f64) -> (f64, f64, f64) {
    if drag == 0.0 || speed == 0.0 {
        return (0.0, 0.0, 0.0);
    }
    (drag * speed * own, drag * (speed + own * own / speed), drag * own * other / speed)
}

/// Whether the balance of the face between two nodes stands in an equation: one of them is sought, and no internal lies in it.
pub(crate) fn counts(problem: &Problem, a: usize, b: usize) -> bool {
    let is_sought = |node: Node| matches!(node, Node::Free | Node::Island(_));
    let (a, b) = (problem.nodes[a], problem.nodes[b]);
    match (a, b) {
        (Node::Island(a), Node::Island(b)) => a != b,
        _ => is_sought(a) || is_sought(b),
    }
}
