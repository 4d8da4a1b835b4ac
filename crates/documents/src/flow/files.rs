//! The flow for other programs: a grid with its values in the legacy text form of VTK, and a table by cell.

use core::fmt::Write;
use stillrise_flowfield::momentum::speeds;
use stillrise_flowfield::resolve::Resolved;

/// Stream function at the nodes, speeds and zones by cell, on a rectilinear grid; SI.
#[must_use]
pub fn vtk(title: &str, found: &Resolved) -> String {
    let (problem, psi) = &found.finest;
    let (g, speeds) = (&problem.grid, speeds(problem, psi));
    let mut out = String::new();
    let title: String = title.chars().filter(|c| c.is_ascii() && !c.is_control()).take(200).collect();
    out += &format!("# vtk DataFile Version 3.0\n{title}\nASCII\nDATASET RECTILINEAR_GRID\n");
    out += &format!("DIMENSIONS {} {} 1\n", g.nx() + 1, g.ny() + 1);
    let line = |out: &mut String, name: &str, at: &[f64]| {
        *out += &format!("{name} {} double\n", at.len());
        for x in at {
            let _ = write!(out, "{x} ");
        }
        out.push('\n');
    };
    line(&mut out, "X_COORDINATES", g.x());
    line(&mut out, "Y_COORDINATES", g.y());
    line(&mut out, "Z_COORDINATES", &[0.0]);
    out += &format!("POINT_DATA {}\nSCALARS stream_function double 1\nLOOKUP_TABLE default\n", g.nodes());
    for j in 0..=g.ny() {
        for i in 0..=g.nx() {
            let _ = writeln!(out, "{}", psi[g.node(i, j)]);
        }
    }
    out += &format!("CELL_DATA {}\nVECTORS velocity double\n", g.cells());
    for j in 0..g.ny() {
        for i in 0..g.nx() {
            let u = 0.5 * (speeds.u[g.upright(i, j)] + speeds.u[g.upright(i + 1, j)]);
            let v = 0.5 * (speeds.v[g.level(i, j)] + speeds.v[g.level(i, j + 1)]);
            let _ = writeln!(out, "{u} {v} 0");
        }
    }
    out
}

/// A row for each cell: its middle, m; speeds along and up in it, m/s; SI.
#[must_use]
pub fn csv(found: &Resolved) -> String {
    let (problem, psi) = &found.finest;
    let (g, speeds) = (&problem.grid, speeds(problem, psi));
    let mut out = "x_m,y_m,u_m_per_s,v_m_per_s\n".to_owned();
    for i in 0..g.nx() {
        for j in 0..g.ny() {
            let (x, y) = g.middle(i, j);
            let u = 0.5 * (speeds.u[g.upright(i, j)] + speeds.u[g.upright(i + 1, j)]);
            let v = 0.5 * (speeds.v[g.level(i, j)] + speeds.v[g.level(i, j + 1)]);
            let _ = writeln!(out, "{x},{y},{u},{v}");
        }
    }
    out
}
