//! What single sheets of a set tell, and whose they are.

use crate::{ENQUIRY, RAIN, job, range, well_formed};
use std::sync::Arc;
use stillrise_design::enquiry::settings::read_settings;
use stillrise_design::enquiry::{read_enquiry, read_enquiry_under};
use stillrise_documents::Edition;
use stillrise_documents::drawings::{Drawing, kinds, kinds_of, set};
use stillrise_documents::logo::logo;
use stillrise_documents::render::dxf::{Options, dxf};
use stillrise_documents::render::geometry::Rect;
use stillrise_documents::render::item::{Item, Shape};
use stillrise_documents::render::pdf;
use stillrise_documents::render::pen::Layer;
use stillrise_documents::render::scale::Scale;
use stillrise_search::{Settled, settle};
use stillrise_units::catalog::M;
use stillrise_units::{System, Typed};

/// A unit in the ground with a sand compartment, and pumps behind.
const MARKET: &str = include_str!("../../../../enquiries/market-wash/enquiry.toml");

fn read(text: &str) -> Settled {
    settle(&read_enquiry(text, &|_| None).unwrap_or_else(|faults| panic!("{faults:?}")), &range())
}

/// Paths alone, as a logo may be.
const LOGO: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 20\">\
    <path d=\"M0 20L20 0L40 20Z\" fill=\"#1a5\"/></svg>";

fn of<'a>(all: &'a [Drawing], name: &str) -> &'a Drawing {
    all.iter().find(|drawing| drawing.name == name).unwrap_or_else(|| panic!("no sheet {name}"))
}

/// The vehicle yard under a company's settings.
fn owned(number: &str) -> Settled {
    let text = format!(
        "[company]\nname = \"Invented Separators\"\nlogo = \"logo.svg\"\n[drawing]\nowner = \"Invented Separators, works\"\n\
         drawn_by = \"A. Example\"\nchecked_by = \"B. Example\"\napproved_by = \"C. Example\"\nnumber = \"{number}\"\n\
         [documents]\nnotes = [\"Dimensions are to be checked on site.\"]\n"
    );
    let mut settings = read_settings(&text);
    assert_eq!(settings.faults, []);
    settings.file.logo = Some(logo("logo.svg", LOGO.as_bytes()).unwrap_or_else(|fault| panic!("{fault:?}")));
    let beside = |_: &str| Some(RAIN.as_bytes().to_vec());
    let read = read_enquiry_under(ENQUIRY, &beside, Some(&Arc::new(settings.file)));
    settle(&read.unwrap_or_else(|faults| panic!("{faults:?}")), &range())
}

#[test]
fn the_title_block_is_the_companys() {
    let all = set(&owned("D-{project}-{sheet}-{revision}"), Edition::Client);
    for (k, drawing) in all.iter().enumerate() {
        let lines: Vec<&str> = drawing.sheet_texts.lines().collect();
        for wanted in ["Invented Separators, works", "A. Example", "B. Example", "C. Example"] {
            assert!(lines.contains(&wanted), "{}: {wanted}", drawing.title);
        }
        assert!(lines.contains(&format!("D-Q-1042-{}-A", k + 1).as_str()), "{}: {lines:?}", drawing.title);
        assert_eq!(drawing.cut, [""; 0], "{}", drawing.title);
        assert_eq!(drawing.scene.overlaps(), [], "{}", drawing.title);
        assert!(drawing.svg.contains("href=\"data:image/svg+xml;base64,"), "{}: no logo", drawing.title);
        well_formed(&drawing.svg);
        // The logo stands inside the frame of the title block.
        let block = Rect { x0: drawing.scene.width - 190.0, y0: drawing.scene.height - 63.0, x1: 1e3, y1: 1e3 };
        let [picture] = drawing.scene.pictures() else { panic!("{}: one logo", drawing.title) };
        assert!(block.holds(&picture.area) && (picture.area.width() / picture.area.height() - 2.0).abs() < 1e-9);
        assert!(drawing.scene.text_boxes().iter().all(|(_, text)| text.overlap(&picture.area) <= 0.0));
    }
    let notes: String = all.iter().map(|drawing| drawing.sheet_texts.as_str()).collect();
    assert!(notes.replace('\n', " ").contains("Dimensions are to be checked on site."), "the company's notes");
    let dxf = dxf(&all[0].scene, &Options { scale: Scale::series(System::Us)[0], system: System::Us });
    let dxf = String::from_utf8_lossy(&dxf).into_owned();
    assert!(dxf.contains("Invented Separators, works") && dxf.contains("C. Example"));
}

#[test]
fn a_logo_is_carried_into_the_pdf() {
    let first = |settled: &Settled| {
        let all = set(settled, Edition::Client);
        pdf::sheets(&[&all[0].scene], "t", &pdf::About::default(), "drawings").unwrap_or_else(|fault| panic!("{fault}"))
    };
    let with = first(&owned("{project}-{sheet}"));
    let without = first(&job(System::Us, "", |t| t));
    assert_eq!((with.warnings.len(), &with.inaccessible), (0, &None));
    // Its green is a colour that nothing else on a sheet has.
    assert!(with.bytes.len() > without.bytes.len());
}

/// Without a word that the number needs there is none, and the sheets are told apart by their places.
#[test]
fn a_number_lacks_no_word() {
    let settled = owned("{project}/{sheet}");
    let all = set(&settled, Edition::Us);
    assert!(all[2].sheet_texts.contains("Q-1042/3\n"), "{}", all[2].sheet_texts);
}

#[test]
fn catchment_and_flow_are_for_who_permits_the_discharge() {
    let settled = job(System::Us, "[unit]\nmodel = \"Demo 180\"", |t| t);
    let names = |edition| set(&settled, edition).into_iter().map(|d| d.name).collect::<Vec<_>>();
    let name = "catchment-and-flow";
    assert!(!names(Edition::Client).iter().any(|n| n == name));
    assert!(names(Edition::Regulator).iter().any(|n| n == name));
    let all = set(&settled, Edition::Regulator);
    let sheet = of(&all, name);
    let words = sheet.sheet_texts.replace('\n', " ");
    for wanted in ["fuelling apron", "bus lane", "bus rinse", "2600 ft2", "NO BYPASS", "sample point", "outfall"] {
        assert!(words.contains(wanted), "{wanted}: {words}");
    }
    let Some(basis) = &settled.job.design.basis else { panic!("no basis") };
    for case in &basis.cases {
        assert!(sheet.sheet_texts.lines().any(|line| line == case.name), "{}", case.name);
    }
}

/// More sources than the sheet has boxes for are told in the table; nothing runs over the edge.
#[test]
fn many_surfaces_stay_on_the_sheet() {
    let more: String = (1..=14)
        .map(|k| format!("\n[[surface]]\nname = \"bay {k}\"\narea = \"{k}0 ft2\"\nkind = \"concrete\"\n"))
        .collect();
    let settled = job(System::Us, &format!("[unit]\nmodel = \"Demo 700\"\n{more}"), |t| t);
    let all = set(&settled, Edition::Us);
    let sheet = of(&all, "catchment-and-flow");
    assert!(sheet.sheet_texts.contains(" more\n"), "{}", sheet.sheet_texts);
    assert_eq!((sheet.scene.overlaps(), sheet.scene.outside()), (Vec::new(), Vec::new()));
}

#[test]
fn a_bypass_that_is_asked_for_is_drawn_so() {
    let settled = job(System::Si, "[european]\nbypass = true\n", |t| t);
    let all = set(&settled, Edition::Us);
    assert!(of(&all, "catchment-and-flow").sheet_texts.contains("BYPASS: ASKED FOR, NOT DECIDED"));
}

/// The outline of the vessel on a sheet: its part and its points.
fn ring(drawing: &Drawing, id: &str) -> Vec<usize> {
    let part = drawing.scene.parts().iter().position(|part| part.id == id);
    let own = drawing.scene.items().iter().filter(|placed| placed.part.is_some() && placed.part == part);
    own.filter_map(|placed| match &placed.item {
        Item::Shape(Shape::Path { rings, closed: true, .. }) => rings.first().map(Vec::len),
        _ => None,
    })
    .collect()
}

#[test]
fn a_footprint_has_the_form_of_the_unit() {
    let drawn = |model: &str| set(&job(System::Si, &format!("[unit]\nmodel = \"{model}\""), |t| t), Edition::Us);
    assert!(ring(of(&drawn("Demo U 70"), "setting"), "shell").iter().any(|points| *points > 40), "round from above");
    assert!(ring(of(&drawn("Demo 180"), "setting"), "shell").contains(&4), "a box");
}

#[test]
fn groundwater_runs_through_the_pit() {
    let without = MARKET.lines().filter(|line| !line.starts_with("groundwater")).collect::<Vec<_>>().join("\n");
    let (all, dry) = (set(&read(MARKET), Edition::Us), set(&read(&without), Edition::Us));
    let found = |all: &[Drawing]| of(all, "setting").scene.parts().iter().any(|part| part.id == "groundwater");
    assert!(found(&all) && !found(&dry));
    let setting = of(&all, "setting");
    let part = setting.scene.parts().iter().position(|part| part.id == "groundwater");
    let line = setting.scene.items().iter().find(|placed| placed.part == part && part.is_some());
    let [(a, b)] = line.map(|placed| placed.item.lines()).unwrap_or_default()[..] else { panic!("one line") };
    let shell = setting.scene.items().iter().filter(|placed| placed.layer == Layer::Vessel);
    let points: Vec<_> = shell.flat_map(|placed| placed.item.lines()).flat_map(|(p, q)| [p, q]).collect();
    // It reaches beyond the vessel at both sides.
    assert!(a.x < points.iter().map(|p| p.x).fold(f64::MAX, f64::min) && b.x - a.x > 60.0, "{a:?} {b:?}");
}

/// A unit made to measure in metric units has no dimension that was rounded in inches.
#[test]
fn made_to_measure_in_si_is_in_steps_of_50_mm() {
    let anywhere = |t: String| t.replace("max_length = \"20 ft\"\n", "").replace("max_width = \"8 ft\"\n", "");
    let settled = job(System::Si, "[unit]\ncustom = true", anywhere);
    let Some(p) = &settled.job.design.performance else { panic!("no performance") };
    let steps = p.site.installation.drain_room.q.in_unit(&M) / 0.05;
    assert!(steps > 0.0 && (steps - steps.round()).abs() < 1e-9, "{steps}");
}

#[test]
fn what_a_shop_builds_from_is_stated_or_the_makers() {
    let all = set(&job(System::Us, "[unit]\nmodel = \"Demo 180\"", |t| t), Edition::Client);
    let words: String = all.iter().map(|d| d.sheet_texts.as_str()).collect();
    // The wall of the row, 0.25 in, on both sides of 13 ft 4 in x 5 ft and under 7 ft 6 in.
    let words = words.replace('\n', " ");
    for wanted in ["13'-4 1/2\" x 5'-0 1/2\" x 7'-6 1/4\"", "class 150, raised face", "Lifting lugs", "by maker"] {
        assert!(words.contains(wanted), "{wanted}: {words}");
    }
    // By hand: 28 in deep, 46 in long at the floor, 6 in at its bottom; 28 on 20 is 54.46 deg.
    assert!(words.contains("54.5 deg"), "{words}");
}

#[test]
fn pumps_in_the_unit_have_their_stop_on_the_diagram() {
    let settled = read(MARKET);
    let Some(train) = &settled.job.design.train else { panic!("no unit") };
    assert!(train.unit.pump_out.is_some());
    let all = set(&settled, Edition::Us);
    let sheet = of(&all, "piping-and-instruments");
    let words = sheet.sheet_texts.replace('\n', " ");
    assert!(words.contains("stops the effluent pumps") && words.contains("LSL"), "{words}");
    assert!(sheet.scene.parts().iter().any(|part| part.id == "pump-out"));
}

#[test]
fn papers_name_the_sheets_without_drawing_them_out() {
    for edition in Edition::ALL {
        let settled = job(System::Si, "[unit]\nmodel = \"Demo V 250\"", |t| t);
        assert_eq!(kinds(&settled, edition), kinds_of(&set(&settled, edition)));
    }
}

/// What a shop or a builder could take for the other's is named, whatever the arrangement.
#[test]
fn the_scope_names_what_a_drawing_may_forget() {
    for (model, built_in) in
        [("Demo 180", false), ("Demo G 100", false), ("Demo U 70", false), ("Demo V 250", true), ("Demo B 1200", true)]
    {
        let settled = job(System::Us, &format!("[unit]\nmodel = \"{model}\""), |t| t);
        let words: String = set(&settled, Edition::Client).iter().map(|d| d.sheet_texts.as_str()).collect();
        let words = words.replace('\n', " ");
        for wanted in [
            "Drains and suction pipes of the rooms",
            "Earthing (grounding) and bonding",
            "Sample point behind the unit",
        ] {
            assert!(words.contains(wanted), "{model}: {wanted}");
        }
        for wanted in ["Vents, one for each space", "Lifting lugs", "anchors"] {
            assert!(built_in || words.contains(wanted), "{model}: {wanted}");
        }
        let access = ["Hatches over float", "Manways", "Cover over the basin"];
        assert!(access.iter().any(|wanted| words.contains(wanted)), "{model}: access");
    }
}
