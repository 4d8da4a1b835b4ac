//! A section, its grid and what is refused of it.

use stillrise_flowfield::problem::{Drag, Node};
use stillrise_flowfield::resolve::resolve;
use stillrise_flowfield::section::{Section, Zone};
use stillrise_units::{Flow, Typed};

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn open(length: f64, depth: f64) -> Section {
    Section {
        length,
        top: depth,
        floor: vec![(0.0, 0.0), (length, 0.0)],
        width: vec![(0.0, 1.0), (depth, 1.0)],
        inlet: (0.6 * depth, 0.8 * depth),
        outlet: (0.6 * depth, 0.8 * depth),
        ..Section::default()
    }
}

fn with_plates() -> Section {
    let mut s = open(6.0, 1.5);
    s.walls = vec![
        ("diffusion baffle", 0.6, 0.3, 1.5),
        ("under the plates", 2.0, 0.0, 0.3),
        ("over the plates", 2.0, 1.3, 1.5),
        ("downcomer", 5.0, 0.3, 1.5),
    ];
    s.shelves = vec![("plates", 0.3, 2.0, 3.5), ("plates", 1.3, 2.0, 3.5)];
    let drag = Drag { xx: 0.0332, yy: 33.2, ..Drag::default() };
    s.zones = vec![Zone { name: "plates", between: (2.0, 3.5), levels: (0.3, 1.3), drag, is_pack: true }];
    s
}

/// Every edge of what stands in the water lies on a line of the grid.
#[test]
fn lines_run_through_all_edges() -> Outcome {
    let grid = with_plates().grid().map_err(|u| u.to_string())?;
    for x in [0.6, 2.0, 3.5, 5.0, 6.0] {
        assert!(grid.x().iter().any(|line| (line - x).abs() < 1e-9), "{x}");
    }
    for y in [0.0, 0.3, 0.9, 1.2, 1.3, 1.5] {
        assert!(grid.y().iter().any(|line| (line - y).abs() < 1e-9), "{y}");
    }
    Ok(())
}

/// A hopper is water below the floor, and earth lies beside it.
#[test]
fn a_hopper_is_water_below_the_floor() -> Outcome {
    let mut s = open(4.0, 1.0);
    s.floor = vec![(0.0, 0.0), (1.0, 0.0), (1.2, -0.4), (1.8, -0.4), (2.0, 0.0), (4.0, 0.0)];
    let p = s.problem(s.grid().map_err(|u| u.to_string())?, Flow::from_si(0.01), 1e-4).map_err(|u| u.to_string())?;
    let at = |x: f64, y: f64| p.nodes[p.grid.node(p.grid.column_of(x), p.grid.row_of(y))];
    assert_eq!(at(1.5, -0.2), Node::Free);
    assert!(matches!(at(0.5, -0.2), Node::Held { psi, .. } if psi == 0.0));
    Ok(())
}

/// The plates are fed the more evenly the more head they take; on three grids the answer stays.
#[test]
fn plates_that_take_more_head_are_fed_more_evenly() -> Outcome {
    let uneven = |times: f64| -> Result<[f64; 2], Box<dyn std::error::Error>> {
        let mut s = with_plates();
        s.zones[0].drag = Drag { xx: 0.0332 * times, yy: 33.2 * times, ..Drag::default() };
        let found = resolve(&s, Flow::from_si(0.01), &|_, _| true).map_err(|u| u.to_string())?;
        assert!(found.grids.iter().all(|r| r.is_found), "{:?}", found.grids);
        let over = |k: usize| found.grids.get(k).and_then(|r| r.uneven()).map(Typed::si).ok_or("no pack");
        Ok([over(1)?, over(2)?])
    };
    let (light, heavy) = (uneven(0.3)?, uneven(10.0)?);
    assert!(heavy[1] < 0.5 * light[1], "{light:?} {heavy:?}");
    assert!((light[1] - light[0]).abs() < 0.15 * light[1] && (heavy[1] - heavy[0]).abs() < 0.05, "{light:?} {heavy:?}");
    Ok(())
}

/// What lets no water pass is refused by name, with what to do.
#[test]
fn what_lets_no_water_pass_is_named() -> Outcome {
    let flow = Flow::from_si(0.01);
    let refused = |s: &Section| resolve(s, flow, &|_, _| true).err().map(|u| u.to_string()).unwrap_or_default();
    let mut shut = open(4.0, 1.0);
    shut.walls = vec![("downcomer", 2.0, 0.0, 1.0)];
    let says = refused(&shut);
    assert!(
        says.contains("downcomer") && says.contains("no water passes") && says.contains("leave an opening"),
        "{says}"
    );
    let mut dry = open(4.0, 1.0);
    dry.inlet = (1.2, 1.4);
    let says = refused(&dry);
    assert!(says.contains("inlet") && says.contains("outside the water"), "{says}");
    let mut flat = open(4.0, 1.0);
    flat.zones =
        vec![Zone { name: "mesh", between: (2.0, 2.0), levels: (0.2, 0.8), drag: Drag::default(), is_pack: false }];
    let says = refused(&flat);
    assert!(says.contains("mesh") && says.contains("takes no room"), "{says}");
    let none = Section { length: 0.0, ..open(4.0, 1.0) };
    assert!(refused(&none).contains("has no extent"));
    Ok(())
}

/// It stops when it is told to, with what was found until then.
#[test]
fn it_stops_when_it_is_told_to() -> Outcome {
    let found = resolve(&with_plates(), Flow::from_si(0.01), &|done, _| done < 1).map_err(|u| u.to_string())?;
    assert!(found.is_stopped && found.grids.len() == 1 && found.swirls.is_empty());
    Ok(())
}
