//! Drawings as DXF, read back by another library.

use crate::{every_unit, job};
use dxf::entities::{Entity, EntityType};
use std::collections::BTreeMap;
use stillrise_documents::Edition;
use stillrise_documents::drawings::{Drawing, set};
use stillrise_documents::render::dxf::{Options, Shown, dxf, layer_name};
use stillrise_documents::render::geometry::pt;
use stillrise_documents::render::item::Item;
use stillrise_documents::render::lettering::Text;
use stillrise_documents::render::mark::Axis;
use stillrise_documents::render::pen::{Layer, Pen};
use stillrise_documents::render::scale::{Scale, View};
use stillrise_documents::render::scene::Scene;
use stillrise_search::Settled;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, System, Typed};

fn drawings(settled: &Settled) -> Vec<Drawing> {
    set(settled, Edition::Us)
}

/// The main scale of a sheet; one without is as large as its paper.
fn scale(drawing: &Drawing, system: System) -> Scale {
    drawing.scale.unwrap_or(Scale::series(system)[0])
}

fn read(bytes: &[u8]) -> dxf::Drawing {
    dxf::Drawing::load(&mut &*bytes).unwrap_or_else(|fault| panic!("{fault}"))
}

/// A true length in units of the file.
fn units(length: Length, system: System) -> f64 {
    match system {
        System::Si => length.in_unit(&MM),
        System::Us => length.in_unit(&IN),
    }
}

fn counts<'a>(entities: impl Iterator<Item = &'a Entity>) -> BTreeMap<String, usize> {
    let mut all = BTreeMap::new();
    for entity in entities {
        *all.entry(entity.common.layer.clone()).or_default() += 1;
    }
    all
}

fn holds(scene: &Scene, scale: Scale, system: System) {
    let bytes = dxf(scene, &Options { scale, system });
    let file = read(&bytes);
    let name = &scene.title;
    let found = counts(file.entities());
    // Texts and dimensions, layer by layer, are those of the scene.
    for layer in Layer::ALL {
        let of = |shown| found.get(&layer_name(layer, shown)).copied().unwrap_or(0);
        let items: Vec<&Item> = scene.items().iter().filter(|p| p.layer == layer).map(|p| &p.item).collect();
        let dimensions = items.iter().filter(|item| matches!(item, Item::Dimension(_))).count();
        let texts: usize =
            items.iter().filter(|item| !matches!(item, Item::Dimension(_))).map(|item| item.text_boxes().len()).sum();
        assert_eq!((of(Shown::Dimension), of(Shown::Text)), (dimensions, texts), "{name}: {}", layer.name());
    }
    for layer in found.keys() {
        assert!(file.layers().any(|known| known.name == *layer), "{layer} is in the table");
    }
    // The sheet is as large as its paper at the main scale.
    let paper = |mm: f64| units(Length::of(mm, &MM), system) * scale.ratio();
    let far = &file.header.maximum_drawing_extents;
    assert!((far.x - paper(scene.width)).abs() < 1e-6 && (far.y - paper(scene.height)).abs() < 1e-6, "{name}");
    // Each dimension says and measures what the scene says, at its own scale.
    let mut wanted: Vec<_> = scene.dimensions().collect();
    for entity in file.entities() {
        let EntityType::RotatedDimension(own) = &entity.specific else { continue };
        let base = &own.dimension_base;
        let (a, b) = (&own.definition_point_2, &own.definition_point_3);
        let across = own.rotation_angle == 0.0;
        let drawn = if across { (a.x - b.x).abs() } else { (a.y - b.y).abs() };
        let style = file.dim_styles().find(|style| style.name == base.dimension_style_name);
        let style = style.unwrap_or_else(|| panic!("{} is in the table", base.dimension_style_name));
        let measured = drawn * style.dimension_linear_measurement_scale_factor;
        let at = wanted.iter().position(|d| {
            d.text == base.text
                && (units(d.length, system) - base.actual_measurement).abs() < 1e-6
                && (d.axis == Axis::Across) == across
        });
        let Some(at) = at else { panic!("{name}: {} {} is no dimension", base.text, base.actual_measurement) };
        wanted.swap_remove(at);
        assert!((measured / base.actual_measurement - 1.0).abs() < 1e-6, "{name}: {}: {measured}", base.text);
        let picture = file.blocks().find(|block| block.name == base.block_name);
        let picture = picture.unwrap_or_else(|| panic!("{name}: {} has its picture", base.text));
        let text = picture.entities.iter().find_map(|entity| match &entity.specific {
            EntityType::Text(text) => Some(text.value.clone()),
            _ => None,
        });
        assert_eq!(text.as_ref(), Some(&base.text), "{name}");
    }
    assert_eq!(wanted.len(), 0, "{name}: {wanted:?}");
    // Handles are each given once, and the seed is beyond them.
    let text = String::from_utf8(bytes).unwrap_or_else(|_| panic!("UTF-8"));
    let lines: Vec<&str> = text.lines().collect();
    let own = lines.chunks_exact(2).filter(|pair| matches!(pair[0].trim(), "5" | "105"));
    let mut handles: Vec<u32> = own.map(|pair| u32::from_str_radix(pair[1], 16).unwrap_or(0)).collect();
    let seed = handles.remove(0);
    assert!(handles.iter().all(|handle| *handle > 0 && *handle < seed), "{name}");
    let count = handles.len();
    handles.sort_unstable();
    handles.dedup();
    assert_eq!(handles.len(), count, "{name}");
}

#[test]
fn every_unit_is_read_back_as_it_was_drawn() {
    every_unit(|_, system, settled| {
        let all = drawings(settled);
        assert!(all.len() >= 4, "{}", all.len());
        all.iter().for_each(|drawing| holds(&drawing.scene, scale(drawing, system), system));
    });
}

#[test]
fn the_same_scene_is_the_same_bytes() {
    let once = || {
        let drawing = drawings(&job(System::Si, "[unit]\nmodel = \"Demo 120\"", |t| t)).remove(0);
        dxf(&drawing.scene, &Options { scale: scale(&drawing, System::Si), system: System::Si })
    };
    assert!(once() == once());
}

/// Two views at two scales on one sheet: both measure true.
#[test]
fn a_view_at_another_scale_has_a_factor_of_its_own() {
    let mut scene = Scene::new("Two scales", "", 420.0, 297.0);
    let view = |k: usize, x: f64| View {
        name: format!("View {k}"),
        scale: Scale::series(System::Si)[k],
        origin: pt(x, 200.0),
    };
    let (main, detail) = (view(4, 30.0), view(2, 250.0));
    assert_eq!((main.scale.text(), detail.scale.text()), ("1:20", "1:5"));
    let mm = |value| Length::of(value, &MM);
    for (view, length) in [(&main, 2000.0), (&detail, 300.0)] {
        view.across(&mut scene, (mm(0.0), mm(0.0)), (mm(length), mm(0.0)), 215.0, &format!("{length:.0}"));
        view.up(&mut scene, (mm(0.0), mm(0.0)), (mm(0.0), mm(250.0)), view.origin.x - 10.0, "250");
    }
    holds(&scene, main.scale, System::Si);
    let bytes = dxf(&scene, &Options { scale: main.scale, system: System::Si });
    let file = read(&bytes);
    let factor = |name: &str| {
        let style = file.dim_styles().find(|style| style.name == name);
        style.map(|style| style.dimension_linear_measurement_scale_factor)
    };
    // 1:5 under 1:20: lengths come out four times as long as they are.
    assert_eq!((factor("SCALE-1-20"), factor("SCALE-1-5")), (Some(1.0), Some(0.25)));
}

#[test]
fn letters_and_lines_are_what_they_were() {
    let mut scene = Scene::new("Text", "", 100.0, 50.0);
    for (k, text) in ["\u{e9}\u{2205}\u{6c34} \u{2264} 5 %", "50 %% ^ 2", "{a} \\P b"].iter().enumerate() {
        scene.text(Text::new(pt(10.0, 10.0 + 5.0 * k as f64), text));
    }
    scene.on(Layer::Centre).line(pt(0.0, 40.0), pt(50.0, 40.0), Pen::Centre);
    let scale = Scale::series(System::Si)[3];
    let bytes = dxf(&scene, &Options { scale, system: System::Si });
    let file = read(&bytes);
    let texts: Vec<&str> = file
        .entities()
        .filter_map(|e| match &e.specific {
            EntityType::Text(text) => Some(text.value.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(texts, ["\u{e9}\u{2205}\u{6c34} \u{2264} 5 %", "50 %%%%%% ^ 2", "{a} \\P b"]);
    let line = file.entities().find(|e| matches!(e.specific, EntityType::Line(_))).unwrap();
    assert_eq!((line.common.line_type_name.as_str(), line.common.lineweight_enum_value), ("CENTRE", 25));
    let kind = file.line_types().find(|t| t.name == "CENTRE").unwrap();
    assert_eq!(
        (kind.dash_dot_space_lengths.as_slice(), file.header.line_type_scale),
        ([6.0, -0.75, 0.75, -0.75].as_slice(), 10.0)
    );
}
