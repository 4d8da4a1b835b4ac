//! What explains more than boxes: read off the program itself, so that it cannot be out of date.

use super::super::keys::blocks;
use super::words::{LINE, TEXT, fold, write};
use stillrise_checks::Grade;
use stillrise_design::enquiry::keys::KeySpec;
use stillrise_design::enquiry::read_enquiry;
use stillrise_design::enquiry::spec::without_options;
use stillrise_desk::jobs::{JOBS, demo_range};
use stillrise_documents::charts::oil::several;
use stillrise_documents::papers::ALL;
use stillrise_documents::regulation::sheets;
use stillrise_documents::render::chart::{Chart, Paper};
use stillrise_documents::render::geometry::{Rect, pt};
use stillrise_documents::render::item::Fill;
use stillrise_documents::render::lettering::{Anchor, Text, text_width};
use stillrise_documents::render::pen::Pen;
use stillrise_documents::render::scene::Scene;
use stillrise_handbook::fluids::oils::oil;
use stillrise_handbook::manual::{formula as described, named};
use stillrise_mail::read_mail;
use stillrise_search::diagnosis::causes::CAUSES;
use stillrise_search::{Settled, settle};
use stillrise_units::Reading;

/// Width of every figure, mm.
pub(super) const WIDTH: f64 = 100.0;
/// Higher than any; each is cut to what was drawn.
const HIGHEST: f64 = 300.0;

pub(super) fn blank(title: &str) -> Scene {
    Scene::new(title, "", WIDTH, HIGHEST)
}

/// A box with a heavy heading and words below it; where it ends.
fn boxed(scene: &mut Scene, from: f64, heading: &str, words: &str) -> f64 {
    let y = from + 1.4 + TEXT;
    scene.text(Text::new(pt(2.0, y), heading).sized(TEXT).bold());
    let end = write(scene, pt(2.0, y + LINE), words, WIDTH - 4.0) - TEXT;
    scene.rect(&Rect { x0: 0.0, y0: from, x1: WIDTH, y1: end }, Some(Pen::Thin), Fill::None);
    end
}

/// Boxes one under the other, each leading to the next.
fn chain(title: &str, boxes: &[(&str, String)]) -> Scene {
    let mut scene = blank(title);
    let mut y = 0.0;
    for (k, (heading, words)) in boxes.iter().enumerate() {
        if k > 0 {
            scene.arrow(pt(8.0, y), pt(8.0, y + 5.0), Pen::Thin);
            y += 5.0;
        }
        y = boxed(&mut scene, y, heading, words);
    }
    scene.height = y;
    scene
}

/// One page, and what follows from it.
pub(super) fn formula() -> Scene {
    let boxes = named("stokes-rise").ok().map(described).and_then(|f| {
        let check = f.checks.first()?;
        Some(vec![
            ("The body of the page", "one text, read three times".to_owned()),
            ("is what runs", "the typed function, with units".to_owned()),
            ("is what is printed", f.plain.join("; ")),
            ("is what is checked", format!("{}: expected {}, found {}", check.given, check.expected, check.obtained)),
        ])
    });
    chain("stokes_rise.rs: one page, and what follows from it", &boxes.unwrap_or_default())
}

/// A key as it is declared, and what follows.
pub(super) fn key() -> Scene {
    let spec: Option<(String, &'static KeySpec)> = blocks()
        .filter(|block| block.id() == "enquiry-regulation")
        .flat_map(|block| block.keys())
        .find(|(name, _)| name == "droplet");
    let boxes = spec.map(|(name, key)| {
        let asked = key.questions().map(without_options).collect::<Vec<_>>().join(" ");
        vec![
            ("The file says", format!("{name} = {}", key.like)),
            (
                "it is read within its bounds",
                key.bounds.map(|(low, high)| format!("{low} to {high}")).unwrap_or_default(),
            ),
            ("where nobody said it, the customer is asked", asked),
            ("and meanwhile stands in", key.stands_in().unwrap_or_default()),
        ]
    });
    chain("regulation.droplet: one line, and what follows from it", &boxes.unwrap_or_default())
}

/// What the mails of customers are like.
const SENTENCE: &str = "The wash bay drains 60 gpm with diesel in it, the permit allows 15 mg/L.";

/// A sentence with what is found in it, and the key that each could answer.
pub(super) fn mail() -> Scene {
    let mut scene = blank("A sentence, what is found in it, and the first key it is offered to");
    let mut y = TEXT + 1.0;
    for line in fold(SENTENCE, WIDTH, TEXT) {
        scene.text(Text::new(pt(0.0, y), &line).sized(TEXT));
        y += LINE;
    }
    y += 2.0;
    let mail = read_mail(SENTENCE, &Reading::default());
    for find in &mail.finds {
        let said = SENTENCE.get(find.at.clone()).unwrap_or_default();
        let wide = text_width(said, TEXT);
        scene.rect(&Rect::new(0.0, y - TEXT - 1.0, wide + 3.0, TEXT + 2.4), Some(Pen::Thin), Fill::None);
        scene.text(Text::new(pt(1.5, y), said).sized(TEXT));
        scene.arrow(pt(wide + 3.0, y - 0.4 * TEXT), pt(38.0, y - 0.4 * TEXT), Pen::Thin);
        let offer = find.offers.first().map_or("no key yet: a cue is missing", |offer| offer.path.as_str());
        scene.text(Text::new(pt(40.0, y), offer).sized(TEXT).bold());
        y += 6.6;
    }
    scene.height = y - 3.0;
    scene
}

/// Oils that lie far apart.
const OILS: [&str; 4] = ["gasoline", "diesel", "sae-40", "heavy-fuel-oil"];

/// How oils thin as they warm.
pub(super) fn oils() -> Scene {
    let oils: Vec<_> = OILS.iter().filter_map(|word| oil(word)).collect();
    let mut scene = several(&oils).scene(&Paper { width: WIDTH, height: 70.0, titled: false });
    scene.title = "From two points the page of viscosity makes a curve".to_owned();
    scene
}

/// What a rule may say, and when.
pub(super) fn rule() -> Scene {
    let asked = [
        ("Can what it looks at exist here?", "no", Grade::NotApplicable),
        ("Is every number that it needs known, and safe within its range?", "no", Grade::CannotJudge),
        ("Is the bound kept?", "yes", Grade::Passes),
        ("Is it fit as it stands, if somebody knows and decides?", "yes", Grade::Warns),
    ];
    let mut scene = blank("What it may say");
    let mut y = 0.0;
    for (question, answer, grade) in asked {
        let lines = fold(question, 50.0, TEXT);
        let mut at = y + 1.4 + TEXT;
        for line in &lines {
            scene.text(Text::new(pt(2.0, at), line).sized(TEXT));
            at += LINE;
        }
        let end = at - TEXT;
        scene.rect(&Rect { x0: 0.0, y0: y, x1: 55.0, y1: end }, Some(Pen::Thin), Fill::None);
        let middle = 0.5 * (y + end);
        scene.arrow(pt(55.0, middle), pt(70.0, middle), Pen::Thin);
        scene.text(Text::new(pt(62.0, middle - 1.0), answer).sized(TEXT).anchored(Anchor::Middle));
        scene.text(Text::new(pt(71.5, middle + 0.5 * TEXT), grade.word()).sized(TEXT).bold());
        scene.arrow(pt(8.0, end), pt(8.0, end + 6.0), Pen::Thin);
        scene.text(Text::new(pt(10.0, end + 4.2), if answer == "no" { "yes" } else { "no" }).sized(TEXT));
        y = end + 6.0;
    }
    scene.text(Text::new(pt(2.0, y + 0.6 + TEXT), Grade::Fails.word()).sized(TEXT).bold());
    scene.height = y + TEXT + 3.0;
    scene
}

/// Worked jobs that have different things to say.
const JOBS_OF_PAPERS: [&str; 3] = ["vehicle-yard", "machine-shop", "foundry"];

/// Which papers a worked job has something to say in.
pub(super) fn papers() -> Scene {
    let mut scene = blank("The papers, and the worked jobs that have something to say in each");
    let settled: Vec<Option<Settled>> = JOBS_OF_PAPERS.iter().map(|name| worked(name)).collect();
    let place = |k: usize| 62.0 + 15.0 * [0.0, 1.0, 2.0][k.min(2)];
    let mut y = TEXT + 1.0;
    for (k, name) in JOBS_OF_PAPERS.iter().enumerate() {
        let (first, second) = name.split_once('-').unwrap_or((name, ""));
        for (line, word) in [first, second].into_iter().enumerate() {
            let at = y + if line == 0 { 0.0 } else { LINE };
            scene.text(Text::new(pt(place(k), at), word).sized(TEXT).anchored(Anchor::Middle));
        }
    }
    y += 2.0 * LINE + 0.8;
    for paper in ALL {
        scene.text(Text::new(pt(0.0, y), paper.name).sized(TEXT));
        for (k, job) in settled.iter().enumerate() {
            let says = job.as_ref().is_some_and(|job| paper.applies(job));
            let fill = if says { Fill::Ink } else { Fill::None };
            scene.circle(pt(place(k), y - 0.5 * TEXT), 1.1, Some(Pen::Thin), fill);
        }
        y += LINE;
    }
    scene.height = y - TEXT;
    scene
}

/// A worked job, settled.
pub(super) fn worked(name: &str) -> Option<Settled> {
    let job = JOBS.iter().find(|job| job.name == name)?;
    let file =
        |name: &str| job.files.iter().find(|(known, _)| *known == name).map(|(_, text)| text.as_bytes().to_vec());
    let text = job.files.iter().find(|(name, _)| *name == "enquiry.toml")?.1;
    Some(settle(&read_enquiry(text, &file).ok()?, &demo_range()))
}

/// A method on a worked job: its steps under the source's symbols, and what it asks beside what the unit has.
pub(super) fn method() -> Scene {
    let settled = worked("refinery-basin");
    let sheet = settled.as_ref().and_then(|settled| sheets(settled).into_iter().next());
    let boxes = sheet.map(|sheet| {
        let last = |step: &stillrise_documents::regulation::Step| step.lines.last().map(|line| line.symbol.clone());
        let steps = sheet.steps.iter().filter_map(|step| Some(format!("{} = {}", last(step)?, step.value)));
        let asked = sheet.beside.iter().filter(|row| row.matters);
        let asked = asked.map(|row| format!("{} {}; the unit has {}: {}", row.what, row.asked, row.has, row.word()));
        vec![
            ("The enquiry names it", format!("methods = [\"{}\"]", sheet.method.word())),
            ("its steps, under its own symbols", steps.collect::<Vec<_>>().join("; ")),
            ("what it asks, held against the unit", asked.collect::<Vec<_>>().join(". ")),
        ]
    });
    chain("A method on a worked job, refinery-basin", &boxes.unwrap_or_default())
}

/// How the water looks, in the order of the signs.
const LOOKS: [&str; 4] = ["clear", "hazy", "milky", "film"];

/// Which cause goes with which look of the water.
pub(super) fn causes() -> Scene {
    let mut scene = blank("One sign of several: how the water looks under each cause");
    let place = |k: usize| 58.0 + 12.0 * [0.0, 1.0, 2.0, 3.0][k.min(3)];
    let mut y = TEXT + 1.0;
    for (k, look) in LOOKS.iter().enumerate() {
        scene.text(Text::new(pt(place(k), y), look).sized(TEXT).anchored(Anchor::Middle));
    }
    y += LINE + 0.8;
    for (cause, looks) in CAUSES.iter().filter_map(|cause| Some((cause, cause.looks?))) {
        scene.text(Text::new(pt(0.0, y), cause.id.word()).sized(TEXT));
        for (k, chance) in looks.iter().enumerate() {
            // The area of the spot is the chance.
            let radius = 2.0 * chance.sqrt();
            scene.circle(pt(place(k), y - 0.5 * TEXT), radius, None, Fill::Ink);
        }
        y += LINE;
    }
    y = write(&mut scene, pt(0.0, y + 0.6), "The area of a spot is the chance; engineering judgement.", WIDTH);
    scene.height = y - TEXT;
    scene
}

/// What a case says.
pub(super) fn measured() -> Scene {
    chain(
        "What a case says, and in which order",
        &[
            ("Measured", "what others found, with its source, as printed".to_owned()),
            ("Predicted", "the formulas of the handbook and every assumption".to_owned()),
            ("Chosen after the data were seen", "named as such; nothing is fitted in silence".to_owned()),
            ("Where we miss, and why", "each row is within, above or below the measured range".to_owned()),
            ("What it tests", "and what it leaves untested".to_owned()),
        ],
    )
}
