//! The water of every unit of the demo range, resolved.

use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::flow::{files, flow_json, flow_text, resolved};
use stillrise_flowfield::newton::{Effort, cold};
use stillrise_flowfield::of_unit::section;
use stillrise_flowfield::resolve::SWIRLS;
use stillrise_search::settle;
use stillrise_search::sizes::every;
use stillrise_units::{Flow, Typed};

type Outcome = Result<(), Box<dyn std::error::Error>>;

fn settled(job: &str) -> Result<stillrise_search::Settled, Box<dyn std::error::Error>> {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let folder = root.join("enquiries").join(job);
    let text = std::fs::read_to_string(folder.join("enquiry.toml"))?;
    let enquiry = read_enquiry(&text, &|file| std::fs::read(folder.join(file)).ok()).map_err(|f| format!("{f:?}"))?;
    let range = read_range(&std::fs::read_to_string(root.join("ranges/demo.toml"))?).file;
    Ok(settle(&enquiry, &range))
}

/// Whatever its arrangement and its flow, from a quarter of what it is rated for to a quarter more, a steady flow is found on the coarse grid
/// with the first account of the swirl.
#[test]
fn every_unit_of_the_range_has_its_flow() -> Outcome {
    let job = settled("vehicle-yard")?;
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let range = read_range(&std::fs::read_to_string(root.join("ranges/demo.toml"))?).file;
    let (mut worked, mut missed) = (0, Vec::new());
    for entrant in every(&job, &range) {
        let (Some(train), Some(basis)) = (&entrant.job.design.train, &entrant.job.design.basis) else { continue };
        let name = &train.unit.particulars.model;
        let Some((rated, _)) = &train.unit.particulars.rated else { continue };
        let s = section(&train.unit, basis.fluids.cold.kinematic.q).map_err(|u| format!("{name}: {u}"))?;
        for share in [0.25, 0.6, 1.0, 1.25] {
            let flow = Flow::from_si(rated.q.si() * share);
            let eddy = SWIRLS[0].share * flow.si() / s.mean_width();
            let grid = s.grid().map_err(|u| format!("{name}: {u}"))?;
            let p = s.problem(grid, flow, eddy).map_err(|u| format!("{name}: {u}"))?;
            let found = cold(&p, Effort { residual: 1e-9, steps: 60 }).map_err(|s| format!("{name}: {s:?}"))?;
            worked += 1;
            if !found.is_found {
                missed.push(format!("{name} at {share}: {:e}", found.residual));
            }
        }
    }
    assert!(worked > 60, "{worked}");
    assert!(missed.is_empty(), "{missed:?}");
    Ok(())
}

#[test]
fn the_terminal_and_the_json_say_the_same() -> Outcome {
    let job = settled("fuel-pad")?;
    let found = resolved(&job, &|_, _| true).ok_or("no unit")?.map_err(|u| u.to_string())?;
    let (text, json) = (flow_text(&job, &found, 100), flow_json(&job, &found));
    let says = json["says"].as_array().ok_or("nothing is said")?;
    assert!(!says.is_empty());
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for one in says {
        let one = one.as_str().ok_or("no text")?;
        assert!(flat.contains(&one.split_whitespace().collect::<Vec<_>>().join(" ")), "{one}\n{text}");
    }
    assert!(text.contains("not validated") && text.contains("Preliminary"));
    let grids = json["grids"].as_array().ok_or("no grids")?;
    assert_eq!(grids.len(), 3);
    assert!(grids.iter().all(|grid| grid["met"] == true));
    Ok(())
}

/// What goes to other programs: as many values as the grid has nodes and cells; the same bytes each time.
#[test]
fn the_files_hold_every_node_and_cell() -> Outcome {
    let job = settled("vehicle-yard")?;
    let found = resolved(&job, &|_, _| true).ok_or("no unit")?.map_err(|u| u.to_string())?;
    let made = files(&job, &found);
    let text = |name: &str| -> Result<String, Box<dyn std::error::Error>> {
        let (_, bytes) = made.iter().find(|(file, _)| file == name).ok_or("missing")?;
        Ok(String::from_utf8(bytes.clone())?)
    };
    let g = &found.finest.0.grid;
    assert_eq!(text("water.csv")?.lines().count(), g.cells() + 1);
    let vtk = text("water.vtk")?;
    let (points, cells) = vtk.split_once("CELL_DATA").ok_or("no cells")?;
    let values = points.split_once("LOOKUP_TABLE default\n").ok_or("no values")?.1;
    assert_eq!(values.lines().count(), g.nodes());
    assert_eq!(cells.lines().count(), g.cells() + 2);
    // Nine lines part the flow in ten; a hopper, a pack and a downcomer stand in the picture.
    let svg = text("water.svg")?;
    assert!(svg.contains("<svg") && svg.matches("pen-thin").count() >= 9, "{}", svg.len());
    let again = resolved(&job, &|_, _| true).ok_or("no unit")?.map_err(|u| u.to_string())?;
    assert_eq!(files(&job, &again), made);
    Ok(())
}
