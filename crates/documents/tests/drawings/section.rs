//! What the long section must keep, for every model of the demo range in both systems of units.

use crate::{EXISTING, HOSTILE, content, inside, job, printed, range, well_formed};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::Edition;
use stillrise_documents::render::scale::dimension_text;
use stillrise_documents::section::{Drawing, section};
use stillrise_documents::views::views;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::{Settled, settle};
use stillrise_units::catalog::MM;
use stillrise_units::{Length, System, Typed};

fn drawn(settled: &Settled) -> Drawing {
    section(settled, Edition::Us).unwrap_or_else(|| panic!("nothing drawn"))
}

/// All that holds for any unit.
fn holds(settled: &Settled, system: System) {
    let drawing = drawn(settled);
    let name = &drawing.title;
    let scene = &drawing.scene;
    assert_eq!(scene.overlaps(), [], "{name}");
    inside(&drawing);

    // Every dimension states a value of the unit, and all that are asked for are there.
    let Some(train) = &settled.job.design.train else { panic!("no unit") };
    let unit = &train.unit;
    let mut stated: Vec<Length> = unit.compartments.iter().map(|c| c.length.q).collect();
    stated.extend([unit.body.over_all().q, unit.body.height().q, unit.below_floor()]);
    // Both heads have their depth.
    stated.extend([unit.body.head(), unit.body.head()]);
    stated.extend([unit.inlet.invert.q, unit.outlet.invert.q, unit.underflow.edge().q]);
    stated.extend(unit.pack.iter().flat_map(|pack| [pack.laid.bottom.q, pack.laid.height.q]));
    stated.retain(|l| l.si() > 0.0);
    let mut open: Vec<&Length> = stated.iter().collect();
    for dimension in scene.dimensions() {
        let near = |l: &&Length| (l.si() - dimension.length.si()).abs() < 1e-9;
        let of = |l: &&Length| near(l) && dimension.text == dimension_text(**l, system);
        let Some(at) = open.iter().position(of) else {
            panic!("{name}: {} for {:?} is no value of the unit", dimension.text, dimension.length)
        };
        open.swap_remove(at);
        let ratio = dimension.length.in_unit(&MM) / dimension.paper_length();
        assert!((ratio / printed(drawing.scale.text()) - 1.0).abs() < 1e-9, "{name}: {ratio}");
    }
    assert_eq!(open.len(), 0, "{name}: not dimensioned: {open:?}");

    // The scale drawn is the one the title block and the view state.
    let texts: Vec<&str> = drawing.sheet_texts.lines().collect();
    assert!(texts.contains(&drawing.scale.text()), "{name}");
    assert!(texts.contains(&format!("SCALE {}", drawing.scale.text()).as_str()), "{name}");
    well_formed(&drawing.svg);
    let in_picture: Vec<String> = drawing.svg.split("<text ").skip(1).map(content).collect();
    let mut in_list: Vec<String> = texts.iter().map(|t| (*t).to_owned()).collect();
    let mut sorted = in_picture.clone();
    sorted.sort();
    in_list.sort();
    assert_eq!(sorted, in_list, "{name}: the list of texts is the drawing's");
}

#[test]
fn every_model_is_drawn_to_scale_with_its_own_values() {
    let models: Vec<String> = range().models.iter().filter_map(|m| m.model.0.clone()).collect();
    assert!(models.len() > 3);
    for model in models {
        for system in [System::Us, System::Si] {
            holds(&job(system, &format!("[unit]\nmodel = \"{model}\""), |t| t), system);
        }
    }
}

#[test]
fn a_unit_made_to_measure_and_an_existing_one_are_drawn_too() {
    for unit in ["[unit]\ncustom = true", "[unit]\ncustom = true\ncount = 3", EXISTING] {
        for system in [System::Us, System::Si] {
            // Three side by side do not go into the place of this yard.
            let anywhere = |t: String| t.replace("max_length = \"20 ft\"\n", "").replace("max_width = \"8 ft\"\n", "");
            holds(&job(system, unit, anywhere), system);
        }
    }
}

/// An outlet baffle is drawn behind the pack, numbered and listed, in both kinds of unit; where none is stated nothing is.
#[test]
fn an_outlet_baffle_is_drawn_where_one_is_stated() {
    let stated = EXISTING.replace("retention_length", "outlet_baffle_open = \"15 %\"\nretention_length");
    let with_mesh = stated.replace("retention_length", "mesh = \"100 mm\"\nretention_length");
    for unit in [stated.as_str(), with_mesh.as_str()] {
        for system in [System::Us, System::Si] {
            let settled = job(system, unit, |t| t);
            holds(&settled, system);
            let drawing = drawn(&settled);
            assert!(drawing.svg.contains("outlet-baffle"));
            // The list of parts breaks its lines.
            let texts = drawing.sheet_texts.replace('\n', " ");
            assert!(texts.contains("Outlet baffle") && texts.contains("perforated, 15 % open"), "{texts}");
        }
    }
    let without = drawn(&job(System::Us, EXISTING, |t| t));
    assert!(!without.svg.contains("outlet-baffle") && !without.sheet_texts.contains("Outlet baffle"));
}

/// An oil has a name longer than its schedule is wide.
#[test]
fn a_heading_wider_than_its_schedule_runs_into_nothing() {
    let text = "[enquiry]\ntitle = \"Little said\"\nprint = \"si\"\n[[stream]]\nflow = \"20 m3/h\"\n\
        [[oil]]\nname = \"diesel of the old yard, dyed\"\nkind = \"diesel\"\n";
    let enquiry = read_enquiry(text, &|_| None).unwrap_or_else(|faults| panic!("{faults:?}"));
    let drawing = drawn(&settle(&enquiry, &range()));
    assert!(drawing.sheet_texts.contains("Oil: diesel of the old yard, dyed"), "{}", drawing.sheet_texts);
    assert_eq!(drawing.scene.overlaps(), []);
}

#[test]
fn what_a_user_writes_stays_text() {
    let hostile = |text: String| {
        let quoted = HOSTILE.replace('\u{1b}', "\\u001b");
        ["title", "client", "project", "prepared_by"].iter().fold(text, |text, key| {
            let line = text.lines().find(|l| l.starts_with(&format!("{key} ="))).unwrap_or("").to_owned();
            text.replacen(&line, &format!("{key} = \"{quoted}\""), 1)
        })
    };
    let settled = job(System::Us, EXISTING, hostile);
    let drawing = drawn(&settled);
    assert!(!drawing.svg.contains("<script") && drawing.svg.contains("&lt;script&gt;alert(1)"));
    assert!(drawing.svg.contains("Old &lt;unit&gt; &amp; co") && drawing.svg.contains("light &lt;oil&gt;"));
    holds(&settled, System::Us);
}

#[test]
fn the_same_job_is_the_same_bytes() {
    let once = || drawn(&job(System::Si, "[unit]\nmodel = \"Demo 120\"", |t| t));
    let (one, two) = (once(), once());
    assert!(one == two && one.svg == two.svg);
}

#[test]
fn what_one_sheet_does_not_hold_stands_on_the_next() {
    // Three oils fill the column in US units.
    let settled = job(System::Us, EXISTING, |t| t);
    let first = drawn(&settled);
    let told = first.sheet_texts.lines().position(|line| line.starts_with("On sheet 2:"));
    assert!(told.is_some(), "{}", first.sheet_texts);
    assert_eq!(first.cut, [""; 0]);
    let Some(second) = views(&settled, Edition::Us) else { panic!("nothing drawn") };
    assert!(second.sheet_texts.contains("Of sheet 1:"), "{}", second.sheet_texts);
    let names = first.sheet_texts.lines().skip(told.unwrap_or_default()).take(2).collect::<Vec<_>>().join(" ");
    for mark in names.split(|c: char| !c.is_ascii_alphanumeric()).filter(|w| w.starts_with('F') && w.len() < 4) {
        assert!(second.sheet_texts.lines().any(|line| line == mark), "{mark} is lost");
    }
    let drawing = drawn(&job(System::Us, "[unit]\nmodel = \"Demo 120\"", |t| t));
    assert!(!drawing.sheet_texts.contains("On sheet 2"), "{}", drawing.sheet_texts);
}

#[test]
fn remarks_of_ours_stay_with_us_and_the_status_is_stamped() {
    let settled = job(System::Us, "[unit]\nmodel = \"Demo 120\"", |t| t);
    let drawing = |edition| section(&settled, edition).map(|d| d.sheet_texts).unwrap_or_default();
    assert!(drawing(Edition::Us).contains("Why this unit"));
    for edition in [Edition::Client, Edition::Regulator] {
        assert!(!drawing(edition).contains("Why this unit") && !drawing(edition).contains("range \""));
    }
    assert!(drawing(Edition::Client).contains("PRELIMINARY - NOT"));
    let issued = job(System::Us, "[unit]\nmodel = \"Demo 120\"", |t| t.replace("\"preliminary\"", "\"issued\""));
    assert!(!drawn(&issued).sheet_texts.contains("PRELIMINARY"));
}

#[test]
fn levels_are_those_of_the_job() {
    let settled = job(System::Si, "[unit]\nmodel = \"Demo 700\"", |t| t);
    let texts = drawn(&settled).sheet_texts;
    let Some(p) = &settled.job.design.performance else { panic!("no performance") };
    let write = |l: Length| dimension_text(l, System::Si);
    let Some(alarm) = p.levels.first().and_then(|l| l.level(Mark::Alarm)) else { panic!("no alarm") };
    assert!(texts.contains(&format!("INTERFACE {}\n", write(alarm.interface.q))));
    assert!(texts.contains(&format!("OIL SURFACE {}\n", write(alarm.surface.q))));
    let well = write(p.highest().well.q);
    assert!(texts.lines().any(|l| l.starts_with("MAX") && l.ends_with(&well)), "{well}");
    let Some(floor) = p.site.floor else { panic!("no datum") };
    assert!(texts.contains(&format!("EL {:.3} m\n", floor.q.si())));
}

#[test]
fn without_a_unit_there_is_no_section() {
    let settled = job(System::Us, "[unit]\nmodel = \"Not in the range\"", |t| t);
    assert!(section(&settled, Edition::Us).is_none());
}
