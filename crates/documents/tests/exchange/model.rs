//! The model in space: nothing leaks, and what it holds is what the unit holds.

use crate::{every_unit, job};
use stillrise_design::provenance::Off;
use stillrise_documents::Edition;
use stillrise_documents::model::{model, nodes};
use stillrise_documents::render::glb::Node;
use stillrise_search::Settled;
use stillrise_units::{System, Typed};

/// Units of arrangements that the range may not hold.
const DESCRIBED: [&str; 6] = [
    "[unit]\ncustom = true",
    "[unit]\ncustom = true\ncount = 3",
    "[unit]\ncount = 2\n[unit.dimensions]\nmodel = \"Old\"\nlength = \"3 m\"\nwidth = \"1 m\"\nheight = \"1.6 m\"\n\
     control = \"weir\"\nweir_crest = \"1.1 m\"\nweir_length = \"0.8 m\"\noutlet_invert = \"0.9 m\"\noutlet_pipe = \"DN 150\"\n\
     inlet_invert = \"1.3 m\"\ninlet_pipe = \"DN 150\"\ninlet_length = \"300 mm\"\npack_length = \"1200 mm\"\n\
     pack_height = \"700 mm\"\npack_bottom = \"150 mm\"\ngap = \"12 mm\"\nangle = \"45 deg\"\nrun = \"counter-current\"\n\
     pack_modules = 3\nretention_length = \"400 mm\"\nwell_length = \"300 mm\"\nlip = \"220 mm\"\n",
    "[unit.dimensions]\nmodel = \"Open\"\narrangement = \"open tank\"\nlength = \"6 m\"\nwidth = \"2 m\"\nheight = \"2 m\"\n\
     wall = \"8 mm\"\noutlet_invert = \"1.5 m\"\noutlet_pipe = \"DN 150\"\ninlet_invert = \"1.65 m\"\n\
     inlet_pipe = \"DN 150\"\ninlet_length = \"600 mm\"\nretention_length = \"800 mm\"\nwell_length = \"500 mm\"\nlip = \"400 mm\"\n",
    "[unit.dimensions]\nmodel = \"Lying\"\narrangement = \"open cylinder\"\ndiameter = \"1.8 m\"\nlength = \"5 m\"\n\
     heads = \"torispherical\"\nwall = \"6 mm\"\noutlet_invert = \"1.3 m\"\noutlet_pipe = \"DN 150\"\n\
     inlet_invert = \"1.4 m\"\ninlet_pipe = \"DN 150\"\ninlet_length = \"600 mm\"\nretention_length = \"800 mm\"\n\
     well_length = \"500 mm\"\nlip = \"400 mm\"\n",
    "[unit.dimensions]\nmodel = \"Flat\"\narrangement = \"plate cylinder\"\ndiameter = \"72 in\"\nlength = \"160 in\"\n\
     heads = \"flat\"\ncontrol = \"weir\"\nweir_crest = \"52 in\"\noutlet_invert = \"40 in\"\noutlet_pipe = \"6 in\"\n\
     inlet_invert = \"61 in\"\ninlet_pipe = \"6 in\"\ninlet_length = \"14 in\"\npack_length = \"72 in\"\n\
     pack_height = \"28 in\"\npack_bottom = \"10 in\"\ngap = \"0.75 in\"\nangle = \"55 deg\"\nmesh = \"4 in\"\n\
     retention_length = \"20 in\"\nwell_length = \"14 in\"\nlip = \"14 in\"\n",
];

fn node<'a>(all: &'a [Node], id: &str) -> &'a Node {
    all.iter().find(|node| node.id == id).unwrap_or_else(|| panic!("no {id}"))
}

fn holds(settled: &Settled, name: &str) {
    let all = nodes(settled, Edition::Us).unwrap_or_else(|| panic!("{name}: no model"));
    for part in &all {
        assert!(part.mesh.is_closed(), "{name}: {} leaks", part.name);
        assert!(part.mesh.volume() > 0.0, "{name}: {} is inside out", part.name);
    }
    let mut names: Vec<&str> = all.iter().map(|part| part.name.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), all.len(), "{name}: two parts of one name");
    let mut ids: Vec<&str> = all.iter().map(|part| part.id.as_str()).collect();
    ids.sort_unstable();
    let count = ids.len();
    ids.dedup();
    assert_eq!(ids.len(), count, "{name}");
    let Some(train) = &settled.job.design.train else { panic!("no unit") };
    let unit = &train.unit;
    // What the body answers for the water above its floor, worked on the handbook's pages, and the hopper below it.
    let crest = unit.outlet.crest;
    let above = unit.body.volume(&mut Off, "water", unit.body.whole(), crest);
    let above = above.unwrap_or_else(|stop| panic!("{name}: {stop:?}"));
    let told = above.q.si() + unit.hopper_volume().si();
    let drawn = node(&all, "water").mesh.volume();
    assert!((drawn / told - 1.0).abs() < 1e-3, "{name}: {drawn} m3 drawn, {told} m3 told");
    assert_eq!(node(&all, "water").volume, Some(unit.shape.volume(crest.q).si()));
    // Every part that the list of parts has is there, and so are the nozzles.
    for id in ["shell", "inlet", "outlet", "oil-draw"] {
        node(&all, id);
    }
    for stage in ["baffle", "downcomer", "pack", "mesh", "weir", "dip-pipe"] {
        let set = stillrise_documents::drawings::set(settled, Edition::Us);
        let is_drawn = set.first().is_some_and(|d| d.scene.parts().iter().any(|part| part.id == stage));
        assert_eq!(ids.contains(&stage), is_drawn, "{name}: {stage}");
    }
}

#[test]
fn nothing_leaks_and_the_water_is_what_the_unit_holds() {
    let mut arrangements = Vec::new();
    every_unit(|name, system, settled| {
        holds(settled, name);
        if let Some(train) = settled.job.design.train.as_ref().filter(|_| system == System::Si) {
            arrangements.push(train.unit.arrangement.word());
        }
    });
    arrangements.sort_unstable();
    arrangements.dedup();
    println!("{arrangements:?}");
    assert!(arrangements.len() > 3, "{arrangements:?}");
}

#[test]
fn units_made_to_measure_and_existing_ones_have_a_model_too() {
    for unit in DESCRIBED {
        let anywhere = |t: String| t.replace("max_length = \"20 ft\"\n", "").replace("max_width = \"8 ft\"\n", "");
        let settled = job(System::Si, unit, anywhere);
        holds(&settled, unit);
        // What was stated is what is drawn.
        let train = settled.job.design.train.as_ref();
        if let Some(stated) = unit.split("arrangement = \"").nth(1).and_then(|text| text.split('"').next()) {
            assert_eq!(train.map(|train| train.unit.arrangement.word()), Some(stated));
        }
    }
}

#[test]
fn the_file_is_what_the_standard_asks_for() {
    let once = || model(&job(System::Si, "[unit]\nmodel = \"Demo 120\"", |t| t), Edition::Us).unwrap();
    let file = once();
    assert!(file == once(), "the same bytes");
    let word = |at: usize| u32::from_le_bytes(file[at..at + 4].try_into().unwrap()) as usize;
    assert_eq!((&file[..4], word(4), word(8)), (b"glTF".as_slice(), 2, file.len()));
    assert_eq!(&file[16..20], b"JSON");
    let data = 20 + word(12);
    assert_eq!((data % 4, &file[data + 4..data + 8]), (0, b"BIN\0".as_slice()));
    assert_eq!(data + 8 + word(data), file.len());
    let text: serde_json::Value = serde_json::from_slice(&file[20..data]).unwrap();
    assert_eq!(text["asset"]["version"], "2.0");
    let all = text["nodes"].as_array().unwrap();
    assert!(all.iter().all(|node| node["name"].as_str().is_some_and(|name| !name.is_empty())));
    // The height is y: the shell reaches from below the floor to the rim.
    let top = text["accessors"][0]["max"][1].as_f64().unwrap();
    let low = text["accessors"][0]["min"][1].as_f64().unwrap();
    assert!(low < 0.0 && top > 1.0, "{low} {top}");
    println!("{} bytes, {} parts", file.len(), all.len());
}
