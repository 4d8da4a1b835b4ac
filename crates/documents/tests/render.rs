//! What drawings and sheets must keep, whatever they show. (Long: most tests look at one and the same sheet.)

use std::collections::BTreeMap;
use stillrise_design::enquiry::blocks::Paper;
use stillrise_documents::render::geometry::{Point, Rect, pt};
use stillrise_documents::render::hatch::{Hatch, strokes};
use stillrise_documents::render::mark::{ARROW, Axis, Balloon, Level, LevelKind, STEP, spread};
use stillrise_documents::render::pdf::{self, PdfFault};
use stillrise_documents::render::pen::{Layer, Pen};
use stillrise_documents::render::scale::{Scale, View, dimension_text};
use stillrise_documents::render::scene::{ADVANCE, Anchor, EM, Fill, Item, Scene, TEXT, Text, around};
use stillrise_documents::render::sheet::{Revision, Sheet, SheetSize};
use stillrise_documents::render::text::Table;
use stillrise_documents::render::title_block::{Projection, TitleBlock};
use stillrise_documents::render::{schedule, svg};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, System, Typed};

/// What a customer may write; to be seen as written, nowhere to be obeyed.
const HOSTILE: &str = "</text><script>alert(1)</script> #panic() *x* $ \"&'\u{1b}[31m\u{0} =A1";

fn mm(value: f64) -> Length {
    Length::of(value, &MM)
}

fn block(title: &str) -> TitleBlock {
    TitleBlock {
        title: title.to_owned(),
        subtitle: "Long section".to_owned(),
        project: "Bus depot, north apron".to_owned(),
        number: "SR-0001-GA-01".to_owned(),
        revision: "B".to_owned(),
        sheet: (1, 2),
        status: "Preliminary".to_owned(),
        scale: "as shown".to_owned(),
        date: "2026-03-02".to_owned(),
        projection: Projection::Third,
        stamp: "PRELIMINARY, NOT FOR CONSTRUCTION".to_owned(),
        cautions: "For review by a licensed engineer. Confined space.".to_owned(),
        ..TitleBlock::default()
    }
}

/// A box with a chain of dimensions, some too short for their text, and its overall length.
fn dimensioned(system: System, size: SheetSize) -> Sheet {
    let mut sheet = Sheet::new(size, &block("Separator"), "A box with its dimensions.");
    let area = sheet.drawing;
    let (w, h) = (mm(3600.0), mm(1500.0));
    let Some(scale) = Scale::fitting(w, h, (200.0, 140.0), system) else {
        return sheet;
    };
    let view = View::centred("Section A-A", scale, w, h, &area);
    let scene = &mut sheet.scene;
    let zero = mm(0.0);
    let corners = [view.at(zero, zero), view.at(w, zero), view.at(w, h), view.at(zero, h)];
    scene.on(Layer::Vessel).polygon(&corners, Some(Pen::Outline), Fill::Hatch(Hatch::Water));
    let xs = [0.0, 1200.0, 2200.0, 2350.0, 2500.0, 2900.0, 3100.0, 3600.0].map(|x| (mm(x), zero));
    let write = |length| dimension_text(length, system);
    let next = view.dimensions(scene, Axis::Across, &xs, corners[0].y + STEP, write);
    view.across(scene, xs[0], xs[7], next, &write(w));
    let next =
        view.dimensions(scene, Axis::Up, &[(zero, zero), (zero, mm(1400.0)), (zero, h)], corners[0].x - STEP, write);
    view.up(scene, (zero, zero), (zero, h), next, &write(h));
    view.title(scene, pt(area.centre().x, area.y1 - 10.0));
    let (at, room) = sheet.bar();
    view.scale_bar(&mut sheet.scene, at, room, system);
    sheet
}

#[test]
fn letters_are_as_wide_as_those_of_the_font() -> Result<(), PdfFault> {
    // The typesetter measures the font; what it finds must be what the drawing reckons with.
    let main = format!(
        "#set text(font: \"DejaVu Sans Mono\", size: 100pt, top-edge: \"bounds\", bottom-edge: \"baseline\")\n\
         #for weight in (\"regular\", \"bold\") {{\n set text(weight: weight)\n\
         for letter in (\"A\", \"i\", \"'\", \"°\", \"µ\", \"–\", \"…\", \"▽\") {{ context {{\n\
         let size = measure(letter)\n\
         assert(calc.abs(size.width / 100pt - {}) < 1e-6, message: letter + repr(size))\n\
         if letter == \"A\" {{ assert(calc.abs(size.height / 100pt - {}) < 1e-6, message: repr(size)) }} }} }} }}",
        ADVANCE / EM,
        1.0 / EM
    );
    pdf::pdf(&main, BTreeMap::new(), "metrics").map(|_| ())
}

#[test]
fn dimensions_keep_the_scale_stated_and_their_texts_stand_clear() {
    for (system, size) in [(System::Us, SheetSize::AnsiB), (System::Si, SheetSize::A3)] {
        let sheet = dimensioned(system, size);
        let ratio = Scale::fitting(mm(3600.0), mm(1500.0), (200.0, 140.0), system).map_or(0.0, |s| s.ratio());
        let mut count = 0;
        for dimension in sheet.scene.dimensions() {
            let measured = dimension.paper_length() * ratio;
            assert!((measured - dimension.length.in_unit(&MM)).abs() < 1e-6, "{}", dimension.text);
            assert_eq!(dimension.text, dimension_text(dimension.length, system));
            assert_eq!(dimension.view, "Section A-A");
            count += 1;
        }
        assert_eq!(count, 11);
        assert_eq!(sheet.scene.overlaps(), []);
        assert_eq!(sheet.scene.outside(), [""; 0]);
        assert_eq!(sheet.cut, [""; 0]);
    }
}

#[test]
fn a_dimension_line_has_its_arrow_heads_outside_where_they_find_no_room() {
    let view = View { name: "V".to_owned(), scale: Scale::series(System::Si)[0], origin: pt(50.0, 50.0) };
    for (length, reach) in [(40.0, 40.0), (ARROW, ARROW)] {
        let mut scene = Scene::new("t", "d", 200.0, 200.0);
        view.across(&mut scene, (mm(0.0), mm(0.0)), (mm(length), mm(0.0)), 70.0, "12345");
        let tips: Vec<f64> =
            scene.items().iter().flat_map(|p| p.item.lines()).map(|(a, b)| (b.x - a.x).abs()).collect();
        let line = tips.iter().copied().fold(0.0, f64::max);
        assert!(if length > 10.0 { line == reach } else { line > reach + 4.0 * ARROW }, "{line}");
    }
}

#[test]
fn lengths_are_written_as_on_drawings() {
    // Feet and inches by hand: 12 in to the foot, rounded to the eighth.
    for (inches, text) in [
        (0.0, "0\""),
        (0.125, "1/8\""),
        (0.05, "0\""),
        (11.97, "1'-0\""),
        (50.5, "4'-2 1/2\""),
        (48.0, "4'-0\""),
        (12.25, "1'-0 1/4\""),
        (-3.75, "-3 3/4\""),
        (11.0, "11\""),
    ] {
        assert_eq!(dimension_text(Length::of(inches, &IN), System::Us), text);
    }
    for (value, text) in [(1249.6, "1250"), (0.2, "0"), (-0.2, "0"), (-15.0, "-15")] {
        assert_eq!(dimension_text(mm(value), System::Si), text);
    }
}

#[test]
fn the_scale_is_the_largest_that_fits_and_says_what_it_is() {
    let si = Scale::fitting(mm(3600.0), mm(1500.0), (200.0, 140.0), System::Si);
    assert_eq!(si.map(|s| s.text()), Some("1:20"));
    let us = Scale::fitting(mm(3600.0), mm(1500.0), (200.0, 140.0), System::Us);
    assert_eq!(us.map(|s| s.text()), Some("1/2\" = 1'-0\""));
    assert_eq!(Scale::fitting(mm(1e9), mm(1.0), (200.0, 140.0), System::Si), None);
    for system in [System::Us, System::Si] {
        for scale in Scale::series(system) {
            // Either "1:n", or inches on paper = feet of the thing.
            let stated = match (scale.text().split_once(':'), scale.text().split_once("\" = ")) {
                (Some((one, n)), _) => parse(n) / parse(one),
                (_, Some((inches, feet))) => {
                    12.0 * parse(feet.trim_end_matches("'-0\"")) / inches.split(' ').map(parse).sum::<f64>()
                }
                _ => 1.0,
            };
            assert_eq!(stated, scale.ratio(), "{}", scale.text());
        }
    }
}

/// A whole number or a fraction.
fn parse(text: &str) -> f64 {
    match text.split_once('/') {
        Some((a, b)) => parse(a) / parse(b),
        None => text.parse().unwrap_or(f64::NAN),
    }
}

#[test]
fn hatching_covers_its_area_and_spares_holes() {
    let outer = Rect::new(3.0, 4.0, 40.0, 30.0).corners();
    let hole = Rect::new(13.0, 14.0, 10.0, 10.0).corners();
    let length = |rings: &[Vec<Point>], hatch| strokes(rings, hatch).iter().map(|(a, b)| a.distance(*b)).sum::<f64>();
    for angle in [0.0, 25.0, 45.0, 90.0, 135.0] {
        // Lines a spacing apart: their length times the spacing is the area.
        let hatch = Hatch::Lines { angle, spacing: 0.1 };
        let whole = 0.1 * length(core::slice::from_ref(&outer), hatch);
        let holed = 0.1 * length(&[outer.clone(), hole.clone()], hatch);
        assert!((whole - 1200.0).abs() < 6.0, "{angle}: {whole}");
        assert!((holed - 1100.0).abs() < 8.0, "{angle}: {holed}");
    }
    for hatch in [
        Hatch::Section,
        Hatch::Concrete,
        Hatch::Earth,
        Hatch::Sand,
        Hatch::Water,
        Hatch::Oil,
        Hatch::Sludge,
        Hatch::Mesh,
    ] {
        let all = strokes(core::slice::from_ref(&outer), hatch);
        assert!(!all.is_empty(), "{hatch:?}");
        let edge = Rect::new(3.0, 4.0, 40.0, 30.0).grown(1e-9);
        assert!(all.iter().all(|(a, b)| Rect::around(&[*a, *b]).is_some_and(|r| edge.holds(&r))), "{hatch:?}");
    }
}

#[test]
fn absurd_coordinates_end_in_a_blank_and_not_in_a_hang() {
    for far in [f64::NAN, f64::INFINITY, 1e300, 1e17, -1e9] {
        let ring = vec![pt(0.0, 0.0), pt(far, 0.0), pt(far, far), pt(0.0, far)];
        assert_eq!(strokes(core::slice::from_ref(&ring), Hatch::Water), []);
        let mut scene = Scene::new("t", "d", 10.0, 10.0);
        scene.polygon(&ring, Some(Pen::Outline), Fill::Hatch(Hatch::Mesh));
        scene.add(Item::Balloon(Balloon {
            tip: pt(far, 0.0),
            centre: pt(0.0, far),
            number: "1".to_owned(),
            heavy: true,
            dot: true,
        }));
        scene.label(&Text::new(pt(0.0, 0.0), "x"), &around(pt(far, far), 2.0, TEXT));
        let mut levels = [0.0, far, 1.0].map(|y| Level::new(pt(0.0, y), "+1", LevelKind::Liquid));
        spread(&mut levels);
        let picture = svg::svg(&scene, &svg::Options::default());
        assert!(!picture.contains("NaN") && !picture.contains("inf"));
    }
    assert_eq!(strokes(&[], Hatch::Earth), []);
    assert_eq!(strokes(&[Vec::new()], Hatch::Earth), []);
}

#[test]
fn labels_go_where_there_is_room() {
    let mut scene = Scene::new("t", "d", 100.0, 100.0);
    let at = pt(50.0, 50.0);
    let label = Text::new(at, "label");
    for _ in 0..4 {
        assert!(scene.label(&label, &around(at, 6.0, TEXT)));
    }
    assert_eq!(scene.overlaps(), []);
    // A line is avoided where a place without one is left, and the paper's edge always.
    let mut scene = Scene::new("t", "d", 100.0, 100.0);
    scene.line(pt(55.0, 0.0), pt(55.0, 100.0), Pen::Outline);
    scene.label(&label, &around(at, 3.0, TEXT));
    assert!(scene.text_boxes().iter().all(|(_, r)| r.x1 < 55.0));
    let mut scene = Scene::new("t", "d", 100.0, 100.0);
    assert!(scene.label(&label, &around(pt(99.0, 50.0), 2.0, TEXT)));
    assert_eq!(scene.outside(), [""; 0]);
}

#[test]
fn near_levels_are_spread_in_order() {
    let mut scene = Scene::new("t", "d", 100.0, 100.0);
    let mut levels: Vec<Level> = [50.0, 48.5, 49.0, 80.0]
        .iter()
        .map(|&y| Level::new(pt(10.0, y), &format!("level {y}"), LevelKind::Liquid))
        .collect();
    spread(&mut levels);
    assert!(levels.windows(2).all(|w| w[0].at.y <= w[1].at.y && w[0].at.y + w[0].shift < w[1].at.y + w[1].shift));
    assert!(levels.last().is_some_and(|l| l.shift == 0.0));
    levels.into_iter().for_each(|l| scene.add(Item::Level(l)));
    assert_eq!(scene.overlaps(), []);
}

#[test]
fn what_a_customer_writes_is_text_in_a_picture() {
    let mut scene = Scene::new(HOSTILE, HOSTILE, 200.0, 50.0);
    scene.part("a\" onload=\"x", HOSTILE, |s| s.text(Text::new(pt(5.0, 20.0), HOSTILE).anchored(Anchor::Start)));
    let picture = svg::svg(&scene, &svg::Options { id: "\"><x".to_owned(), ..svg::Options::default() });
    assert!(!picture.contains("<script") && !picture.contains('\u{1b}') && !picture.contains("\" onload=\""));
    assert!(
        picture.contains("&lt;script&gt;alert(1)") && picture.contains("role=\"img\"") && picture.contains("<desc")
    );
    // A reader of SVG agrees that it is well formed.
    let result = pdf::sheets(&[&scene], HOSTILE, &pdf::About { author: HOSTILE.to_owned(), day: None }, "hostile");
    assert_eq!(result.map(|p| p.pages), Ok(1));
}

#[test]
fn the_same_drawing_is_the_same_bytes_and_has_its_size_on_paper() {
    let [one, two] =
        [(); 2].map(|()| svg::svg(&dimensioned(System::Si, SheetSize::A3).scene, &svg::Options::default()));
    assert_eq!(one, two);
    assert!(one.starts_with(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"420mm\" height=\"297mm\" viewBox=\"0 0 420 297\""
    ));
    assert!(!one.contains("style="), "a strict content policy forbids style attributes");
}

#[test]
fn sheets_become_accessible_pages_and_twice_the_same_bytes() -> Result<(), PdfFault> {
    let (us, si) = (dimensioned(System::Us, SheetSize::AnsiB), dimensioned(System::Si, SheetSize::A3));
    let one = pdf::sheets(&[&us.scene, &si.scene], "Drawings", &pdf::About::default(), "job-1")?;
    let two = pdf::sheets(&[&us.scene, &si.scene], "Drawings", &pdf::About::default(), "job-1")?;
    assert!(one.bytes == two.bytes, "not reproducible");
    assert_eq!((one.inaccessible, one.warnings, one.pages), (None, Vec::new(), 2));
    Ok(())
}

#[test]
fn a_long_title_is_set_smaller_and_at_last_cut_and_named() {
    let long = "Oil-water separator ".repeat(3);
    assert_eq!(Sheet::new(SheetSize::A3, &block(&long), "d").cut, [""; 0]);
    let absurd = "Oil-water separator ".repeat(60);
    let sheet = Sheet::new(SheetSize::A3, &block(&absurd), "d");
    assert_eq!(sheet.cut, [absurd]);
    assert_eq!(sheet.scene.overlaps(), []);
    assert_eq!(sheet.scene.outside(), [""; 0]);
}

#[test]
fn a_column_refuses_what_it_cannot_hold_and_keeps_the_rest() {
    let mut sheet = Sheet::new(SheetSize::A3, &block("t"), "d");
    let mut table = Table::new(["Mark", "Service", "Size", "Remarks"]);
    table.row(["N1", "Inlet", "4 in", "flange with a remark that is longer than its column is wide"]);
    table.row(["N2", "Oil pump-out pipe", "4 in", HOSTILE]);
    let mut notes = sheet.notes.clone();
    let mut set = 0;
    while notes.item(
        &mut sheet.scene,
        &(set + 1).to_string(),
        "A note of some length that takes two lines of the column.",
    ) && notes.table(&mut sheet.scene, &table)
    {
        set += 1;
    }
    assert!(set > 2 && notes.room() >= 0.0);
    assert!(!notes.paragraph(&mut sheet.scene, &"word ".repeat(10_000)));
    assert_eq!(sheet.scene.overlaps(), []);
    assert_eq!(sheet.scene.outside(), [""; 0]);
    assert_eq!(schedule::letters(ADVANCE * TEXT * 10.0, TEXT), 10);
}

#[test]
fn the_history_leaves_out_the_oldest_and_says_so() {
    let entry = |k: usize| Revision {
        index: k.to_string(),
        date: "2026-03-02".to_owned(),
        text: "Changed".to_owned(),
        by: String::new(),
    };
    let mut sheet = Sheet::new(SheetSize::A3, &block("t"), "d");
    assert!(sheet.revisions(&[entry(1), entry(2)]));
    let mut sheet = Sheet::new(SheetSize::A3, &block("t"), "d");
    assert!(!sheet.revisions(&(0..60).map(entry).collect::<Vec<_>>()));
    assert!(sheet.scene.text_boxes().iter().any(|(t, _)| t == "59"));
    assert!(sheet.scene.text_boxes().iter().any(|(t, _)| t.starts_with("earlier")));
    assert_eq!(sheet.scene.overlaps(), []);
}

/// ISO 216 (A1 to A4, from memory of its table) and ASME Y14.1 (A to D, in inches), all lying.
#[test]
fn every_size_of_paper_holds_its_title_block_and_history() {
    let inches = |w: f64, h: f64| (w * 25.4, h * 25.4);
    let sizes = [
        (SheetSize::A4, (297.0, 210.0)),
        (SheetSize::A3, (420.0, 297.0)),
        (SheetSize::A2, (594.0, 420.0)),
        (SheetSize::A1, (841.0, 594.0)),
        (SheetSize::AnsiA, inches(11.0, 8.5)),
        (SheetSize::AnsiB, inches(17.0, 11.0)),
        (SheetSize::AnsiC, inches(22.0, 17.0)),
        (SheetSize::AnsiD, inches(34.0, 22.0)),
    ];
    for (size, (width, height)) in sizes {
        let paper = size.paper();
        assert!((paper.0 - width).abs() < 1e-9 && (paper.1 - height).abs() < 1e-9, "{}", size.name());
        let mut sheet = Sheet::new(size, &block("t"), "d");
        let one = Revision {
            index: "A".to_owned(),
            date: "2026-03-02".to_owned(),
            text: "For approval".to_owned(),
            by: "desk".to_owned(),
        };
        assert!(sheet.revisions(&[one]), "{}", size.name());
        assert!(sheet.drawing.width() > 100.0 && sheet.drawing.height() > 80.0, "{}", size.name());
        assert_eq!(sheet.scene.overlaps(), [], "{}", size.name());
        assert_eq!(sheet.scene.outside(), [""; 0], "{}", size.name());
        assert_eq!(sheet.cut, [""; 0], "{}", size.name());
    }
    let word = |paper: Paper| (SheetSize::from(paper).name(), paper.word());
    assert!(Paper::ALL.iter().all(|paper| word(*paper).0 == word(*paper).1));
}
