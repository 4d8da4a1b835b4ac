//! What a draughtsman or a shop redlined once: things that stand on several sheets must stand there alike.

use crate::common::{job, text_of};
use crate::range;
use std::error::Error;
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::Edition;
use stillrise_documents::drawings::{Drawing, set};
use stillrise_documents::render::geometry::{Point, Rect};
use stillrise_documents::render::item::{Item, Shape};
use stillrise_documents::render::pdf;
use stillrise_documents::render::xlsx::Cell;
use stillrise_documents::workbook::grids;
use stillrise_search::{Settled, settle};
use stillrise_units::catalog::MM;
use stillrise_units::{Length, Typed};

type Outcome = Result<(), Box<dyn Error>>;

fn of<'a>(all: &'a [Drawing], name: &str) -> Result<&'a Drawing, String> {
    all.iter().find(|drawing| drawing.name == name).ok_or_else(|| format!("no sheet {name}"))
}

fn drawn(name: &str) -> Result<(Settled, Vec<Drawing>), Box<dyn Error>> {
    let settled = job(name, "")?;
    let all = set(&settled, Edition::Us);
    Ok((settled, all))
}

/// What of a sheet belongs to a part.
fn part<'a>(drawing: &'a Drawing, id: &str) -> Vec<&'a Item> {
    let scene = &drawing.scene;
    let index = scene.parts().iter().position(|part| part.id == id);
    scene.items().iter().filter(|placed| index.is_some() && placed.part == index).map(|placed| &placed.item).collect()
}

/// Bounding boxes of what of a sheet belongs to a part.
fn boxes(drawing: &Drawing, id: &str) -> Vec<Rect> {
    let ends = |item: &&Item| item.lines().into_iter().flat_map(|(a, b)| [a, b]).collect::<Vec<Point>>();
    part(drawing, id).iter().filter_map(|item| Rect::around(&ends(item))).collect()
}

/// The lines of a schedule behind its heading, up to the next.
fn said(drawing: &Drawing) -> String {
    drawing.sheet_texts.replace('\n', " ")
}

/// Tags of a list: what stands before the number, and it.
fn tags(text: &str) -> Vec<String> {
    let words: Vec<&str> = text.split([' ', ',', '\n']).filter(|word| !word.is_empty()).collect();
    let mut all: Vec<String> = words
        .windows(2)
        .filter(|pair| ["LSL", "LSH", "LSHH"].contains(&pair[0]) && pair[1].parse::<u8>().is_ok())
        .map(|pair| pair.join(" "))
        .collect();
    all.sort();
    all.dedup();
    all
}

/// Diagram, list of parts, bill and plan count the same switches by the same tags.
#[test]
fn switches_are_counted_alike_everywhere() -> Outcome {
    for (name, wanted, each) in [
        ("vehicle-yard", vec!["LSH 1", "LSHH 2"], 1),
        ("market-wash", vec!["LSH 1", "LSH 3", "LSHH 2", "LSHH 3", "LSL 3"], 1),
        ("refinery-basin", vec!["LSH 1", "LSHH 2"], 2),
    ] {
        let (settled, all) = drawn(name)?;
        assert_eq!(tags(&of(&all, "piping-and-instruments")?.sheet_texts), wanted, "{name}: the diagram");
        let schedules: String = all.iter().filter(|d| d.name == "schedules").map(said).collect();
        let parts = schedules.split("Nozzles, for ordering").next().unwrap_or("");
        assert_eq!(tags(parts), wanted, "{name}: the list of parts");
        let grids = grids(&settled, Edition::Us);
        let bill = grids.iter().find(|grid| grid.name == "Bill of materials").ok_or("no bill")?;
        let rows: Vec<(String, f64)> = bill
            .rows
            .iter()
            .filter_map(|row| {
                let Cell::Text(item) = &row[1] else { return None };
                let count = row.iter().find_map(|cell| match cell {
                    Cell::Number(number) => Some(*number),
                    _ => None,
                });
                item.starts_with("Level switch").then(|| (item.clone(), count.unwrap_or(0.0)))
            })
            .collect();
        let items: Vec<&str> = rows.iter().map(|(item, _)| item.as_str()).collect();
        assert_eq!(tags(&items.join(" ")), wanted, "{name}: the bill");
        let count: f64 = rows.iter().map(|(_, count)| count).sum();
        let pumps = wanted.iter().filter(|tag| tag.ends_with('3')).count();
        let oil = each * (wanted.len() - pumps);
        assert!((count - f64::from(u8::try_from(oil + pumps)?)).abs() < 1e-9, "{name}: {count} in the bill");
        // Each of those that hang in the oil is a circle in the plan.
        let circles = part(of(&all, "general-arrangement")?, "float");
        let circles = circles.iter().filter(|item| matches!(item, Item::Shape(Shape::Circle { .. }))).count();
        assert_eq!(circles, oil, "{name}: the plan");
    }
    Ok(())
}

/// Legs stand at the same stations on the arrangement and the profile, outside the side walls, and are dimensioned.
#[test]
fn legs_stand_in_one_place_clear_of_the_hopper() -> Outcome {
    for name in ["vehicle-yard", "truck-wash"] {
        let (settled, all) = drawn(name)?;
        let Some(train) = &settled.job.design.train else { return Err("no unit".into()) };
        let mut stations: Vec<Vec<i64>> = Vec::new();
        for sheet in ["general-arrangement", "installation-profile"] {
            let drawing = of(&all, sheet)?;
            let scale = drawing.scale.ok_or("no scale")?;
            // Their distance along the unit, in its own millimetres.
            let mut middles: Vec<f64> =
                boxes(drawing, if sheet == "general-arrangement" { "support" } else { "ground" })
                    .into_iter()
                    .filter(|area| area.height() > 2.0 * area.width() && area.width() > 0.5)
                    .map(|area| area.centre().x * scale.ratio())
                    .collect();
            middles.sort_by(f64::total_cmp);
            middles.dedup_by(|a, b| (*a - *b).abs() < 1.0);
            stations.push(middles.windows(2).map(|pair| (pair[1] - pair[0]).round() as i64).collect());
        }
        let setting = of(&all, "setting")?;
        let spans: Vec<Length> = setting.scene.dimensions().map(|d| d.length).collect();
        let wide = train.unit.shape.width();
        assert!(spans.iter().any(|span| *span > wide && *span < wide * 1.5), "{name}: legs outside the walls");
        let along = spans.iter().find(|span| {
            let mm = span.in_unit(&MM).round() as i64;
            stations.iter().all(|all| all.contains(&mm))
        });
        assert!(along.is_some(), "{name}: {stations:?} among {spans:?}");
    }
    Ok(())
}

/// Nothing runs out of the bottom of what lies in the ground.
#[test]
fn a_hopper_in_a_pit_is_emptied_from_above() -> Outcome {
    // The incoming pipe comes in under the ground on which the unit would stand.
    let text = text_of("vehicle-yard")?;
    let lines = text.lines().map(|line| if line.starts_with("ground = ") { "ground = \"101 ft\"" } else { line });
    let low: String = lines.flat_map(|line| [line, "\n"]).collect();
    let rain = |_: &str| Some(crate::RAIN.as_bytes().to_vec());
    let settled = settle(&read_enquiry(&low, &rain).map_err(|faults| format!("{faults:?}"))?, &range());
    let all = set(&settled, Edition::Us);
    let first = of(&all, "general-arrangement")?;
    assert!(said(first).contains("Sludge suction, from above"), "{}", said(first));
    assert!(!said(first).contains("Sludge drain"));
    let (_, above) = drawn("vehicle-yard")?;
    assert!(said(&above[0]).contains("Sludge drain") && !said(&above[0]).contains("from above"));
    // The pipe stands over the rim, the drain under the hopper.
    let high = |all: &[Drawing], id: &str| boxes(&all[0], id).iter().map(|area| area.y0).fold(f64::INFINITY, f64::min);
    assert!(high(&all, "drain") < high(&all, "cover"), "the pipe comes out over the cover");
    assert!(high(&above, "hopper") < high(&above, "drain"), "the drain leaves the hopper");
    Ok(())
}

/// The nozzle of a dished head begins where the head stands at its height: inside of the end of the vessel.
#[test]
fn nozzles_reach_the_head_at_their_height() -> Outcome {
    let (settled, all) = drawn("fuel-pad")?;
    let drawing = of(&all, "internals")?;
    let Some(train) = &settled.job.design.train else { return Err("no unit".into()) };
    let scale = drawing.scale.ok_or("no scale")?;
    let shell = boxes(drawing, "shell").into_iter().reduce(|a, b| a.union(&b)).ok_or("no shell")?;
    let nozzle = boxes(drawing, "inlet").into_iter().reduce(|a, b| a.union(&b)).ok_or("no inlet")?;
    let (head, crown) = (train.unit.body.head(), train.unit.shape.height());
    let middle = train.unit.inlet.invert.q + train.unit.inlet.bore.q * 0.5;
    assert!(head.si() > 0.0 && middle > crown * 0.75, "the inlet is high on the head");
    // An ellipse is at its least there from the apex on.
    let rise = (middle - crown * 0.5).si() / (crown * 0.5).si();
    let least = head * (1.0 - (1.0 - rise * rise).sqrt()) * 0.8;
    assert!(nozzle.x1 - shell.x0 > scale.mm(least), "{nozzle:?} in {shell:?}, {} mm", scale.mm(least));
    Ok(())
}

/// The walls between channels come on top of the clear widths, and each channel has its own draw-off.
#[test]
fn channels_have_walls_and_what_each_needs() -> Outcome {
    let (settled, all) = drawn("refinery-basin")?;
    let Some(train) = &settled.job.design.train else { return Err("no unit".into()) };
    let channels = train.unit.channels.as_ref().ok_or("no channels")?;
    let wall = train.unit.particulars.wall.ok_or("no wall")?.q;
    let first = of(&all, "general-arrangement")?;
    let whole = channels.width.q * 2.0 + wall;
    let lengths: Vec<Length> = first.scene.dimensions().map(|d| d.length).collect();
    for wanted in [channels.width.q, wall, whole] {
        assert!(lengths.iter().any(|l| (*l - wanted).si().abs() < 1e-9), "{wanted:?} among {lengths:?}");
    }
    assert!(said(first).contains("N3 2 4 in"), "{}", said(first));
    Ok(())
}

/// What the plates of a cylinder are wide stands on the cross section.
#[test]
fn plates_that_do_not_fill_the_width_are_dimensioned() -> Outcome {
    let (settled, all) = drawn("fuel-pad")?;
    let Some(train) = &settled.job.design.train else { return Err("no unit".into()) };
    let pack = train.unit.pack.as_ref().ok_or("no plates")?;
    let middle = train.unit.shape.length() * 0.5;
    let widths = [pack.laid.bottom.q, pack.follows.top.q].map(|z| train.unit.shape.width_at(middle, z));
    let wide = if widths[0] < widths[1] { widths[0] } else { widths[1] };
    let first = of(&all, "general-arrangement")?;
    assert!(first.scene.dimensions().any(|d| (d.length - wide).si().abs() < 1e-6), "{wide:?}");
    Ok(())
}

/// The least of a draw-off stands at its invert, and its centre is told half a bore over it.
#[test]
fn a_draw_off_stands_on_its_invert() -> Outcome {
    let (settled, all) = drawn("vehicle-yard")?;
    let Some(train) = &settled.job.design.train else { return Err("no unit".into()) };
    let drawing = of(&all, "internals")?;
    let scale = drawing.scale.ok_or("no scale")?;
    let circles: Vec<(Point, f64)> = part(drawing, "oil-draw")
        .iter()
        .filter_map(|item| match item {
            Item::Shape(Shape::Circle { centre, radius, .. }) => Some((*centre, *radius)),
            _ => None,
        })
        .collect();
    let (centre, bore) = circles.into_iter().min_by(|a, b| a.1.total_cmp(&b.1)).ok_or("no circle")?;
    // The stub of the outlet tells where its own invert is drawn.
    let lines = boxes(drawing, "outlet").into_iter().filter(|line| line.height() < 0.01 && line.width() > 5.0);
    let outlet = lines.max_by(|a, b| a.y1.total_cmp(&b.y1)).ok_or("none")?;
    let down = scale.mm(train.unit.outlet.invert.q - train.unit.retention.oil_draw.q);
    assert!((centre.y + bore - (outlet.y1 + down)).abs() < 0.01, "{centre:?} {bore}, {outlet:?}, {down}");
    Ok(())
}

/// A profile to scale says so in its title block, with its bar.
#[test]
fn the_profile_states_its_scale() -> Outcome {
    for name in ["vehicle-yard", "refinery-basin", "transformer-yard", "tram-depot"] {
        let (_, all) = drawn(name)?;
        let drawing = of(&all, "installation-profile")?;
        let scale = drawing.scale.ok_or("no scale")?;
        assert!(drawing.sheet_texts.lines().filter(|line| *line == scale.text()).count() == 1, "{name}");
        assert!(!drawing.sheet_texts.contains('…'), "{name}: a text is cut: {}", drawing.sheet_texts);
    }
    Ok(())
}

/// What keeps gravity from the duty stands on every sheet, and on none of a job where nothing does.
#[test]
fn a_duty_in_doubt_is_stamped_on_every_sheet() -> Outcome {
    for (name, doubt) in [("truck-wash", true), ("vehicle-yard", false)] {
        for drawing in drawn(name)?.1 {
            let stamped = drawing.sheet_texts.lines().any(|line| line == "NOT A GRAVITY DUTY AS IT STANDS");
            assert_eq!(stamped, doubt, "{name}: {}", drawing.title);
            assert!(drawing.sheet_texts.contains("PRELIMINARY - NOT"), "{name}: {}", drawing.title);
        }
    }
    Ok(())
}

/// One on legs loads these; one on its floor loads that.
#[test]
fn loads_are_those_of_what_it_stands_on() -> Outcome {
    let setting = |name| -> Result<String, Box<dyn Error>> { Ok(said(of(&drawn(name)?.1, "setting")?)) };
    let legs = setting("vehicle-yard")?;
    assert!(legs.contains("four legs") && !legs.contains("whole floor"), "{legs}");
    let (settled, _) = drawn("vehicle-yard")?;
    let weights = settled.job.design.performance.as_ref().and_then(|p| p.shop.as_ref()?.weights.as_ref());
    let weights = weights.ok_or("no weights")?;
    let (test, leg) = (weights.test.ok_or("no test")?.q, weights.leg.ok_or("no leg")?.q);
    assert!((leg * 4.0 - test).si().abs() < 1e-9 && weights.bearing.is_none());
    // The hopper at the inlet end draws the centre towards it: by hand, 6'-8" without it.
    let length = settled.job.design.train.as_ref().ok_or("no unit")?.unit.shape.length();
    assert!(weights.centre.ok_or("no centre")?.q < length * 0.5);
    Ok(())
}

/// Vents are counted alike by diagram and schedule.
#[test]
fn vents_are_counted_alike() -> Outcome {
    for (name, count) in [("vehicle-yard", 2), ("market-wash", 3), ("fuel-pad", 2), ("refinery-basin", 0)] {
        let (_, all) = drawn(name)?;
        let marks = |drawing: &Drawing| drawing.sheet_texts.lines().filter(|line| *line == "V").count();
        assert_eq!(marks(of(&all, "piping-and-instruments")?), count, "{name}: the diagram");
        // On the arrangement one more, of the schedule.
        let listed = usize::from(count > 0);
        assert_eq!(marks(of(&all, "general-arrangement")?), count + listed, "{name}: the arrangement");
        let row = format!("V {count} ");
        assert_eq!(said(of(&all, "general-arrangement")?).contains(&row), count > 0, "{name}: the schedule");
    }
    Ok(())
}

/// A reader of the PDF finds its sheets by their names.
#[test]
fn each_sheet_has_its_bookmark() -> Outcome {
    let (_, all) = drawn("vehicle-yard")?;
    let scenes: Vec<_> = all.iter().map(|drawing| &drawing.scene).collect();
    let pdf =
        pdf::sheets(&scenes, "Drawings", &pdf::About::default(), "drawings").map_err(|fault| fault.to_string())?;
    assert_eq!((pdf.pages, pdf.places.len()), (all.len(), all.len()));
    for (k, (place, drawing)) in pdf.places.iter().zip(&all).enumerate() {
        assert_eq!(place.page, k + 1);
        assert!(place.what.ends_with(drawing.kind), "{} names {}", place.what, drawing.kind);
    }
    assert!(pdf.inaccessible.is_none(), "{:?}", pdf.inaccessible);
    assert!(pdf.bytes.windows(9).any(|part| part == b"/Outlines"));
    Ok(())
}
