//! What every sheet of a drawing set must keep, for every model of the demo range in both systems of units.

use crate::{EXISTING, HOSTILE, content, inside, job, printed, range, well_formed};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::Edition;
use stillrise_documents::drawings::{Drawing, set};
use stillrise_documents::profile::Paper;
use stillrise_documents::render::geometry::{Point, Rect};
use stillrise_documents::render::item::Item;
use stillrise_documents::render::scale::dimension_text;
use stillrise_documents::render::scene::Scene;
use stillrise_documents::views::bare;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::{Settled, settle};
use stillrise_units::catalog::MM;
use stillrise_units::{Length, System, Typed};

fn drawn(settled: &Settled) -> Vec<Drawing> {
    let all = set(settled, Edition::Us);
    assert!(all.len() >= 3, "a set has an arrangement, internals and schedules");
    all
}

fn texts(all: &[Drawing]) -> String {
    all.iter().map(|d| d.sheet_texts.as_str()).collect()
}

/// The straight lines of leaders, each without its ends, where it touches what it points at and its own words.
fn leaders(scene: &Scene) -> Vec<(String, Point, Point)> {
    let mut all = Vec::new();
    for placed in scene.items() {
        match &placed.item {
            Item::Balloon(b) => {
                let radius = 0.5 * b.area().width();
                if b.centre.distance(b.tip) > radius + 0.2 {
                    let from = b.centre.toward(b.tip, radius + 0.1);
                    all.push((b.number.clone(), from, b.tip.toward(b.centre, 0.1)));
                }
            }
            Item::Leader(l) => all.push((l.text.clone(), l.knee.toward(l.tip, 0.1), l.tip.toward(l.knee, 0.1))),
            _ => {}
        }
    }
    all
}

/// Whether two straight lines cross.
fn cross((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    side(a, b, c) * side(a, b, d) < -1e-9 && side(c, d, a) * side(c, d, b) < -1e-9
}

/// All that holds for one sheet.
fn sheet(drawing: &Drawing, system: System) {
    let (name, scene) = (&drawing.title, &drawing.scene);
    assert_eq!(scene.overlaps(), [], "{name}: text over text");
    inside(drawing);
    well_formed(&drawing.svg);
    assert_eq!(drawing.cut, [""; 0], "{name}: the title block");
    let lines: Vec<&str> = drawing.sheet_texts.lines().collect();
    let in_picture: Vec<String> = drawing.svg.split("<text ").skip(1).map(content).collect();
    let (mut one, mut other) = (in_picture, lines.iter().map(|t| (*t).to_owned()).collect::<Vec<_>>());
    one.sort();
    other.sort();
    assert_eq!(one, other, "{name}: the list of texts is the drawing's");
    if let Some(scale) = drawing.scale {
        assert!(lines.contains(&scale.text()) && lines.contains(&format!("SCALE {}", scale.text()).as_str()), "{name}");
        for dimension in scene.dimensions() {
            let ratio = dimension.length.in_unit(&MM) / dimension.paper_length();
            assert!((ratio / printed(scale.text()) - 1.0).abs() < 1e-9, "{name}: {ratio}");
        }
    }
    for dimension in scene.dimensions() {
        assert_eq!(dimension.text, dimension_text(dimension.length, system), "{name}");
    }
    // Leaders cross neither each other nor any lettering but that of their own end.
    let leaders = leaders(scene);
    for (k, (own, a, b)) in leaders.iter().enumerate() {
        for (other, c, d) in leaders.iter().skip(k + 1) {
            assert!(!cross((*a, *b), (*c, *d)), "{name}: the leaders of {own} and {other} cross");
        }
        for (text, area) in scene.text_boxes() {
            let area = area.grown(-0.2);
            assert!(text == *own || !area.crossed_by(*a, *b), "{name}: the leader of {own} crosses {text:?}");
        }
    }
}

/// All that holds for the set of any unit.
fn holds(settled: &Settled, system: System) {
    let all = drawn(settled);
    for (k, drawing) in all.iter().enumerate() {
        sheet(drawing, system);
        assert!(drawing.sheet_texts.contains(&format!("{} / {}\n", k + 1, all.len())), "{}", drawing.title);
    }
    let (name, texts) = (&all[0].title, texts(&all));
    let Some(train) = &settled.job.design.train else { panic!("no unit") };
    let unit = &train.unit;
    // Every length that the unit states stands on the set.
    let mut stated: Vec<Length> = unit.compartments.iter().map(|c| c.length.q).collect();
    stated.extend([unit.body.over_all().q, unit.body.height().q, unit.below_floor()]);
    // Walls between channels stand on top of the clear widths, which are dimensioned each.
    stated.extend(unit.channels.is_none().then(|| unit.shape.width()));
    stated.extend([unit.body.head(), unit.inlet.invert.q, unit.outlet.invert.q, unit.underflow.edge().q]);
    stated.extend(unit.pack.iter().flat_map(|pack| [pack.laid.bottom.q, pack.laid.height.q]));
    stated.extend(unit.channels.iter().map(|channels| channels.width.q));
    stated.extend(unit.hopper.iter().map(|hopper| hopper.bottom.q));
    stated.retain(|l| l.si() > 0.0);
    let measured: Vec<Length> = all.iter().flat_map(|d| d.scene.dimensions()).map(|d| d.length).collect();
    for length in stated {
        let found = measured.iter().any(|m| (m.si() - length.si()).abs() < 1e-9);
        assert!(found, "{name}: {} is not dimensioned", dimension_text(length, system));
    }
    for title in ["PLAN", "LONG SECTION", "SECTION A-A"] {
        assert!(all[0].sheet_texts.lines().any(|line| line == title), "{name}: {title}");
    }
    assert!(all[0].sheet_texts.lines().filter(|line| *line == "A").count() >= 2, "{name}: both ends of the cut");
    // Each lettered level has its line in the schedule.
    let letters = all[0].sheet_texts.lines().filter(|l| l.starts_with('L') && l[1..].parse::<u8>().is_ok()).count();
    let listed = texts.lines().filter(|l| l.starts_with('L') && l[1..].parse::<u8>().is_ok()).count();
    assert!(letters >= 2 && listed % 2 == 0, "{name}: {letters} of {listed}");
    for word in ["Nozzles", "Levels", "Parts", "For the shop", "Nozzles, for ordering", "Scope, as proposed", "Notes"] {
        assert!(texts.lines().any(|line| line == word), "{name}: {word} is lost");
    }
    for width in [190.0, 300.0, 460.0] {
        let Some(scene) = bare(settled, Paper { width, height: 0.42 * width }) else { continue };
        assert_eq!(scene.outside(), [""; 0], "{name} on {width} mm");
    }
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
            let all = drawn(&settled);
            assert!(all[0].svg.contains("outlet-baffle") && all[1].svg.contains("outlet-baffle"));
            // The list of parts breaks its lines.
            let texts = texts(&all).replace('\n', " ");
            assert!(texts.contains("Outlet baffle") && texts.contains("perforated, 15 % open"), "{texts}");
        }
    }
    let without = drawn(&job(System::Us, EXISTING, |t| t));
    assert!(!without[0].svg.contains("outlet-baffle") && !texts(&without).contains("Outlet baffle"));
}

/// An oil has a name longer than its schedule is wide.
#[test]
fn a_heading_wider_than_its_schedule_runs_into_nothing() {
    let text = "[enquiry]\ntitle = \"Little said\"\nprint = \"si\"\n[[stream]]\nflow = \"20 m3/h\"\n\
        [[oil]]\nname = \"diesel of the old yard, dyed\"\nkind = \"diesel\"\n";
    let enquiry = read_enquiry(text, &|_| None).unwrap_or_else(|faults| panic!("{faults:?}"));
    let all = drawn(&settle(&enquiry, &range()));
    assert!(texts(&all).contains("Oil: diesel of the old yard, dyed"));
    all.iter().for_each(|drawing| assert_eq!(drawing.scene.overlaps(), []));
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
    for drawing in drawn(&settled) {
        assert!(!drawing.svg.contains("<script") && drawing.svg.contains("&lt;script&gt;alert(1)"));
        assert!(drawing.svg.contains("Old &lt;unit&gt; &amp; co"));
        well_formed(&drawing.svg);
    }
    let all = drawn(&settled);
    assert!(all.iter().any(|d| d.svg.contains("light &lt;oil&gt;")));
}

#[test]
fn the_same_job_is_the_same_bytes() {
    let once = || drawn(&job(System::Si, "[unit]\nmodel = \"Demo 120\"", |t| t));
    assert!(once() == once());
}

#[test]
fn what_one_sheet_does_not_hold_stands_on_the_next() {
    let long = |t: String| t.replace("title = \"", &format!("title = \"{}", "a very long name of a yard, ".repeat(2)));
    let settled = job(System::Us, EXISTING, long);
    let all = drawn(&settled);
    let texts = texts(&all);
    // Two oils with their set points, the scope and the notes to the last: none is lost.
    for word in ["Oil: light <oil>", "Oil: heavy & black", "Pump-out and disposal of oil and sludge"] {
        assert!(texts.contains(word), "{word} is lost");
    }
    assert!(texts.contains("Walls are drawn thicker than they are.") && !texts.contains("No room"));
}

#[test]
fn remarks_of_ours_stay_with_us_and_the_status_is_stamped() {
    let settled = job(System::Us, "[unit]\nmodel = \"Demo 120\"", |t| t);
    let drawing = |edition| texts(&set(&settled, edition));
    assert!(drawing(Edition::Us).contains("Why this unit"));
    for edition in [Edition::Client, Edition::Regulator] {
        assert!(!drawing(edition).contains("Why this unit") && !drawing(edition).contains("range \""));
    }
    for sheet in set(&settled, Edition::Client) {
        assert!(sheet.sheet_texts.contains("PRELIMINARY - NOT"), "{}", sheet.title);
    }
    let issued = job(System::Us, "[unit]\nmodel = \"Demo 120\"", |t| t.replace("\"preliminary\"", "\"issued\""));
    assert!(!texts(&drawn(&issued)).contains("PRELIMINARY"));
}

#[test]
fn levels_are_those_of_the_job() {
    let settled = job(System::Si, "[unit]\nmodel = \"Demo 700\"", |t| t);
    let texts = texts(&drawn(&settled));
    let Some(p) = &settled.job.design.performance else { panic!("no performance") };
    let write = |l: Length| dimension_text(l, System::Si);
    let Some(alarm) = p.levels.first().and_then(|l| l.level(Mark::Alarm)) else { panic!("no alarm") };
    let row = |name: &str, value: Length| {
        assert!(texts.contains(&format!("{name}\n{}\n", write(value))), "{name} {}: {texts}", write(value));
    };
    row("Interface at the alarm", alarm.interface.q);
    row("Oil surface at the alarm", alarm.surface.q);
    row("Clear well at the largest flow", p.highest().well.q);
    let Some(floor) = p.site.floor else { panic!("no datum") };
    assert!(texts.contains(&format!("\n{:.3} m\n", floor.q.si())));
}

#[test]
fn without_a_unit_there_is_nothing_to_draw() {
    let settled = job(System::Us, "[unit]\nmodel = \"Not in the range\"", |t| t);
    assert!(set(&settled, Edition::Us).is_empty() && bare(&settled, Paper { width: 300.0, height: 126.0 }).is_none());
}

/// The sheet is used: what is drawn takes most of its room.
#[test]
fn a_sheet_is_used() {
    for (model, least) in [("Demo 180", 0.55), ("Demo 700", 0.5), ("Demo G 200", 0.5), ("Demo U 70", 0.4)] {
        for system in [System::Us, System::Si] {
            let all = drawn(&job(system, &format!("[unit]\nmodel = \"{model}\""), |t| t));
            let scene = &all[0].scene;
            let items = scene.items().iter().filter(|p| p.layer != stillrise_documents::render::pen::Layer::Frame);
            let points: Vec<Point> = items.flat_map(|p| p.item.lines()).flat_map(|(a, b)| [a, b]).collect();
            let Some(area) = Rect::around(&points) else { panic!("nothing drawn") };
            let share = area.width() * area.height() / (scene.width * scene.height);
            assert!(share > least, "{model}: {share}");
        }
    }
}

/// What a company asks for in its settings or an enquiry: every paper carries the set as the usual ones do.
#[test]
fn larger_paper_carries_the_set_too() {
    for (size, system) in
        [("A2", System::Si), ("A1", System::Si), ("ANSI C", System::Us), ("ANSI D", System::Us), ("A4", System::Si)]
    {
        let asked = |t: String| t.replacen("[enquiry]\n", &format!("[enquiry]\nsheet = \"{size}\"\n"), 1);
        let settled = job(system, "[unit]\nmodel = \"Demo 180\"", asked);
        holds(&settled, system);
        let said = drawn(&settled)[0].sheet_texts.lines().any(|line| line == size);
        assert!(said || size == "A4", "{size}");
    }
}
