//! A section with a diffusion baffle, plates, a mesh and a downcomer, resolved: `cargo run --example section`.

#![allow(clippy::print_stdout, reason = "an example tells what it made")]

use std::error::Error;
use stillrise_flowfield::problem::Drag;
use stillrise_flowfield::resolve::resolve;
use stillrise_flowfield::section::{Section, Zone};
use stillrise_units::{Flow, Typed};

fn main() -> Result<(), Box<dyn Error>> {
    let plates = Drag { xx: 0.0332, yy: 33.2, ..Drag::default() };
    let mesh = Drag { xx: 1.0, yy: 1.0, ..Drag::default() };
    let zone = |name, between, drag, is_pack| Zone { name, between, levels: (0.3, 1.3), drag, is_pack };
    let section = Section {
        length: 6.0,
        top: 1.5,
        floor: vec![(0.0, 0.0), (6.0, 0.0)],
        width: vec![(0.0, 1.0), (1.5, 1.0)],
        walls: vec![
            ("diffusion baffle", 0.6, 0.3, 1.5),
            ("wall under the plates", 2.0, 0.0, 0.3),
            ("wall over the plates", 2.0, 1.3, 1.5),
            ("wall under the mesh", 4.0, 0.0, 0.3),
            ("wall over the mesh", 4.0, 1.3, 1.5),
            ("downcomer", 5.0, 0.3, 1.5),
        ],
        // The lowest and the highest plate, and the frame of the mesh.
        shelves: vec![
            ("plates", 0.3, 2.0, 3.5),
            ("plates", 1.3, 2.0, 3.5),
            ("mesh", 0.3, 4.0, 4.2),
            ("mesh", 1.3, 4.0, 4.2),
        ],
        zones: vec![zone("plates", (2.0, 3.5), plates, true), zone("mesh", (4.0, 4.2), mesh, false)],
        inlet: (1.0, 1.2),
        outlet: (1.2, 1.4),
        ..Section::default()
    };
    let found = resolve(&section, Flow::from_si(0.03), &|_, _| true).map_err(|unfit| unfit.to_string())?;
    for reading in &found.grids {
        println!(
            "{} x {} cells: met {}, {:.1} mm of head, the gap fed most {:.0} % over its share, {:.0} % runs back",
            reading.cells.0,
            reading.cells.1,
            reading.is_found,
            reading.head.map_or(f64::NAN, |head| head.si() * 1000.0),
            reading.uneven().map_or(f64::NAN, |share| share.si() * 100.0),
            reading.back.si() * 100.0
        );
    }
    Ok(())
}
