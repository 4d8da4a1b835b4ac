//! The long section of a vessel with what stands in its water, and the problem that it makes of a flow.

use crate::grid::Grid;
use crate::joined::{Joined, steps};
use crate::lines::Musts;
use crate::problem::{Drag, Node, Problem};
use stillrise_units::{Flow, Length, Typed, Velocity};

/// A place in the section: station, level.
pub type Spot = (f64, f64);

/// The long section, in metres and seconds: what a grid is laid through.
#[derive(Debug, Clone, Default)]
pub struct Section {
    /// Length of the water.
    pub length: f64,
    /// Level of its surface above the floor.
    pub top: f64,
    /// Lowest level of the water by station: straight between corners.
    pub floor: Vec<(f64, f64)>,
    /// Width of the water by level: straight between corners.
    pub width: Vec<(f64, f64)>,
    /// Upright walls: what they are called, station, lower and upper edge.
    pub walls: Vec<(&'static str, f64, f64, f64)>,
    /// Level walls: level, from, to.
    pub shelves: Vec<(&'static str, f64, f64, f64)>,
    /// Plates askew, from one end to the other.
    pub askew: Vec<(&'static str, Spot, Spot)>,
    /// Walls with openings: station, lower and upper edge, loss coefficient on the speed ahead.
    pub screens: Vec<(&'static str, f64, f64, f64, f64)>,
    /// Zones that hold water back.
    pub zones: Vec<Zone>,
    /// Lower and upper edge of the inlet in the left end.
    pub inlet: (f64, f64),
    /// Lower and upper edge of the outlet in the right end.
    pub outlet: (f64, f64),
}

/// A zone that holds water back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zone {
    /// What it is called.
    pub name: &'static str,
    /// From one station to the other.
    pub between: (f64, f64),
    /// Underside and top.
    pub levels: (f64, f64),
    /// What it takes.
    pub drag: Drag,
    /// Whether it is the pack of plates.
    pub is_pack: bool,
}

/// Why a section makes no problem, what it is and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unfit {
    /// What and where.
    pub place: String,
    /// Why.
    pub why: String,
    /// What to do.
    pub remedy: String,
}

impl core::fmt::Display for Unfit {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}: {}; {}", self.place, self.why, self.remedy)
    }
}

fn unfit(place: impl Into<String>, why: &str, remedy: &str) -> Unfit {
    Unfit { place: place.into(), why: why.to_owned(), remedy: remedy.to_owned() }
}

/// A value by place, straight between corners, level beyond them.
fn between(corners: &[(f64, f64)], at: f64) -> f64 {
    let k = corners.partition_point(|(x, _)| *x <= at);
    match (k.checked_sub(1).and_then(|k| corners.get(k)), corners.get(k)) {
        (Some((x0, y0)), Some((x1, y1))) if x1 > x0 => y0 + (y1 - y0) * (at - x0) / (x1 - x0),
        (Some((_, y)), _) | (None, Some((_, y))) => *y,
        (None, None) => 0.0,
    }
}

/// Cells over the depth of the coarsest grid, about.
const ROWS: f64 = 24.0;
/// Cells along for each cell of the depth, about: water changes faster up than along.
const SLENDER: f64 = 1.0;
/// What lies closer than this share of the depth is one edge.
const SNAP: f64 = 0.012;
/// Least width, of the widest: where a cylinder ends in a line.
const LEAST_WIDTH: f64 = 0.05;

impl Section {
    /// The coarsest grid that follows the section.
    ///
    /// # Errors
    /// [`Unfit`] where the section has no extent.
    pub fn grid(&self) -> Result<Grid, Unfit> {
        let (x, y) = self.musts();
        let bottom = self.bottom();
        let step = (self.top - bottom) / ROWS;
        Grid::new(x.lines(step / SLENDER, 2), y.lines(step, 2)).ok_or_else(|| {
            unfit("the vessel", "has no extent", "state its length, and a level of water above its floor")
        })
    }

    fn bottom(&self) -> f64 {
        self.floor.iter().map(|(_, z)| *z).fold(0.0, f64::min)
    }

    fn musts(&self) -> (Musts, Musts) {
        let bottom = self.bottom();
        let snap = SNAP * (self.top - bottom);
        let x = self.walls.iter().map(|w| w.1);
        let x = x.chain(self.shelves.iter().flat_map(|s| [s.2, s.3]));
        let x = x.chain(self.screens.iter().map(|s| s.1));
        let x = x.chain(self.zones.iter().flat_map(|z| [z.between.0, z.between.1]));
        let x = x.chain(self.floor.iter().map(|(x, _)| *x));
        let y = self.walls.iter().flat_map(|w| [w.2, w.3]);
        let y = y.chain(self.shelves.iter().map(|s| s.1));
        let y = y.chain(self.screens.iter().flat_map(|s| [s.2, s.3]));
        let y = y.chain(self.zones.iter().flat_map(|z| [z.levels.0, z.levels.1]));
        let y = y.chain(self.floor.iter().map(|(_, z)| *z));
        let y = y.chain([self.inlet.0, self.inlet.1, self.outlet.0, self.outlet.1]);
        (Musts::new(0.0, self.length, x, snap), Musts::new(bottom, self.top, y, snap))
    }

    /// The problem that a flow makes of it on a grid that follows it, with one viscosity outside the zones and none in them: what plates and
    /// fibres take of the water's speed is in their drag already.
    ///
    /// # Errors
    /// [`Unfit`] where water cannot pass.
    pub fn problem(&self, grid: Grid, flow: Flow, eddy: f64) -> Result<Problem, Unfit> {
        let (flow, (xs, ys)) = (flow.si(), self.musts());
        let widest = self.width.iter().map(|(_, w)| *w).fold(0.0, f64::max);
        let width = |y: f64| between(&self.width, y).max(LEAST_WIDTH * widest);
        let mut p = Problem::closed(grid, 1.0, eddy);
        let g = p.grid.clone();
        let (nx, ny) = (g.nx(), g.ny());
        for j in 0..ny {
            p.width[j] = width(g.middle(0, j).1);
        }
        for j in 0..=ny {
            p.width_at[j] = width(g.y()[j]);
        }
        // Earth below the floor.
        let solid: Vec<bool> = (0..g.cells())
            .map(|cell| {
                let (x, y) = g.middle(cell / ny, cell % ny);
                y < between(&self.floor, x)
            })
            .collect();
        let is_solid = |i: Option<usize>, j: Option<usize>| match (i, j) {
            (Some(i), Some(j)) if i < nx && j < ny => solid[g.cell(i, j)],
            _ => true,
        };
        let (inlet, outlet) = (self.slot(&ys, self.inlet, "inlet")?, self.slot(&ys, self.outlet, "outlet")?);
        let near = |lines: &[f64], x: f64| {
            let k = lines.partition_point(|line| *line < x - 1e-9);
            k.min(lines.len() - 1)
        };
        // Walls as steps between neighbours on the grid.
        let mut joined = Joined::new(g.nodes());
        let mut is_wall = vec![false; g.nodes()];
        let mut join = |a: usize, b: usize, joined: &mut Joined| {
            is_wall[a] = true;
            is_wall[b] = true;
            joined.join(a, b);
        };
        for i in 0..=nx {
            for j in 0..ny {
                let (left, right) = (is_solid(i.checked_sub(1), Some(j)), is_solid(Some(i), Some(j)));
                let mid = g.middle(0, j).1;
                let open = (i == 0 && mid > inlet.0 && mid < inlet.1) || (i == nx && mid > outlet.0 && mid < outlet.1);
                if (left || right) && !open {
                    join(g.node(i, j), g.node(i, j + 1), &mut joined);
                }
            }
        }
        for i in 0..nx {
            for j in 0..=ny {
                if is_solid(Some(i), j.checked_sub(1)) || is_solid(Some(i), Some(j)) {
                    join(g.node(i, j), g.node(i + 1, j), &mut joined);
                }
            }
        }
        for (_, at, low, high) in &self.walls {
            let i = near(g.x(), xs.nearest(*at));
            let (low, high) = (ys.nearest(low.max(self.bottom())), ys.nearest(high.min(self.top)));
            for j in near(g.y(), low)..near(g.y(), high) {
                join(g.node(i, j), g.node(i, j + 1), &mut joined);
            }
        }
        for (_, level, from, to) in &self.shelves {
            if *level >= self.top {
                continue;
            }
            let j = near(g.y(), ys.nearest(*level));
            for i in near(g.x(), xs.nearest(*from))..near(g.x(), xs.nearest(*to)) {
                join(g.node(i, j), g.node(i + 1, j), &mut joined);
            }
        }
        for (_, from, to) in &self.askew {
            for pair in steps(&g, *from, *to).windows(2) {
                join(pair[0], pair[1], &mut joined);
            }
        }
        let (low, high) = (joined.of(g.node(0, 0)), joined.of(g.node(0, ny)));
        if low == high {
            return Err(self.shut(&g, &joined));
        }
        // What a wall's stream function is: nothing at the floor, all of the flow at the surface, sought where it hangs on neither.
        let mut islands: Vec<usize> = Vec::new();
        let bottom_of = |x: f64| between(&self.floor, x);
        for i in 0..=nx {
            for j in 0..=ny {
                let at = g.node(i, j);
                let y = g.y()[j];
                p.nodes[at] = if is_wall[at] {
                    let group = joined.of(at);
                    // Water slips along its surface.
                    let slide = (j < ny).then_some(0.0);
                    if group == low {
                        Node::Held { psi: 0.0, slide }
                    } else if group == high {
                        Node::Held { psi: flow, slide }
                    } else {
                        let k = islands.iter().position(|other| *other == group).unwrap_or_else(|| {
                            islands.push(group);
                            islands.len() - 1
                        });
                        Node::Island(k)
                    }
                } else if i == 0 || i == nx {
                    let (from, to) = if i == 0 { inlet } else { outlet };
                    let share = self.share(&p, from, to, y);
                    Node::Held { psi: flow * share, slide: Some(0.0) }
                } else if y < bottom_of(g.x()[i]) - 1e-9 {
                    Node::Held { psi: 0.0, slide: Some(0.0) }
                } else {
                    Node::Free
                };
            }
        }
        for zone in &self.zones {
            let (x0, x1) = (xs.nearest(zone.between.0), xs.nearest(zone.between.1));
            let (y0, y1) = (ys.nearest(zone.levels.0.max(self.bottom())), ys.nearest(zone.levels.1.min(self.top)));
            let mut any = false;
            for i in 0..nx {
                for j in 0..ny {
                    let (x, y) = g.middle(i, j);
                    if x > x0 && x < x1 && y > y0 && y < y1 {
                        p.drag[g.cell(i, j)] = zone.drag;
                        p.viscosity[g.cell(i, j)] = 0.0;
                        any = true;
                    }
                }
            }
            if !any {
                return Err(unfit(
                    zone.name,
                    "takes no room in the water",
                    "give it a length and a height within the water",
                ));
            }
            for i in 1..nx {
                for j in 1..ny {
                    let (x, y) = (g.x()[i], g.y()[j]);
                    if x > x0 + 1e-9 && x < x1 - 1e-9 && y > y0 + 1e-9 && y < y1 - 1e-9 {
                        p.viscosity_at[g.node(i, j)] = 0.0;
                    }
                }
            }
        }
        for (_, at, low, high, zeta) in &self.screens {
            let i = near(g.x(), xs.nearest(*at));
            let (low, high) = (ys.nearest(low.max(self.bottom())), ys.nearest(high.min(self.top)));
            if i == 0 || i == nx {
                continue;
            }
            for j in near(g.y(), low)..near(g.y(), high) {
                p.screens[g.upright(i, j)] += 0.5 * zeta / g.between_x(i);
            }
        }
        Ok(p)
    }

    /// Lower and upper edge of an opening in an end, as the grid has it.
    fn slot(&self, ys: &Musts, slot: (f64, f64), name: &str) -> Result<(f64, f64), Unfit> {
        let edges = (ys.nearest(slot.0.max(self.bottom())), ys.nearest(slot.1.min(self.top)));
        if edges.1 > edges.0 {
            Ok(edges)
        } else {
            Err(unfit(
                format!("the {name}"),
                "lies outside the water",
                "state an invert below the level of the water, and above the floor",
            ))
        }
    }

    /// Share of the flow below a level of an opening, even over its area.
    fn share(&self, p: &Problem, from: f64, to: f64, y: f64) -> f64 {
        let g = &p.grid;
        let area = |upto: f64| -> f64 {
            (0..g.ny())
                .map(|j| {
                    let (a, b) = (g.y()[j].max(from), g.y()[j + 1].min(upto));
                    (b - a).max(0.0) * p.width[j]
                })
                .sum()
        };
        (area(y.min(to)) / area(to)).clamp(0.0, 1.0)
    }

    /// Which wall closes the section: the first that joins floor and surface.
    fn shut(&self, g: &Grid, joined: &Joined) -> Unfit {
        let group = joined.of(g.node(0, 0));
        let (xs, ys) = self.musts();
        let closes = self.walls.iter().find(|(_, at, low, high)| {
            let near = |lines: &[f64], x: f64| lines.partition_point(|line| *line < x - 1e-9).min(lines.len() - 1);
            let i = near(g.x(), xs.nearest(*at));
            let j = near(g.y(), ys.nearest(high.min(self.top)));
            let _ = low;
            joined.of(g.node(i, j)) == group
        });
        let name = closes.map_or("the walls", |wall| wall.0);
        unfit(
            name,
            "no water passes: floor and surface are joined by walls",
            "leave an opening, or lower or raise an edge",
        )
    }

    /// Mean speed over the section in its middle, for scales.
    #[must_use]
    pub fn mean_speed(&self, flow: Flow) -> Velocity {
        let area = self.mean_width() * self.top;
        Velocity::from_si(flow.si() / area)
    }

    /// Mean width over the depth.
    #[must_use]
    pub fn mean_width(&self) -> f64 {
        let n = 40;
        let at = |k: i32| between(&self.width, self.top * (f64::from(k) + 0.5) / f64::from(n));
        (0..n).map(at).sum::<f64>() / f64::from(n)
    }

    /// The pack of plates, if it has one.
    #[must_use]
    pub fn pack(&self) -> Option<&Zone> {
        self.zones.iter().find(|zone| zone.is_pack)
    }

    /// The flow that a problem was made for.
    pub(crate) fn flow_of(&self, problem: &Problem) -> f64 {
        match problem.nodes[problem.grid.node(0, problem.grid.ny())] {
            Node::Held { psi, .. } => psi,
            _ => 0.0,
        }
    }

    /// Depth of the water over the floor.
    #[must_use]
    pub fn depth(&self) -> Length {
        Length::from_si(self.top)
    }
}
