//! Levels in the long section: each line carries a letter at the outlet end, and a schedule tells what it is.

use crate::render::geometry::{apart, pt};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::{Anchor, Scene, TEXT, Text};
use crate::render::text::Table;
use crate::section::levels::{Mark, marks};
use crate::section::place::{STUB, Section, zero};
use crate::section::vessel::outlet;

/// Room that they need at the outlet end, mm.
pub const ROOM: f64 = STUB + 17.0;
/// Distance of letters, mm.
const APART: f64 = TEXT + 1.1;

/// The level marks, each with its letter, from above to below.
pub fn lettered(s: &Section) -> Vec<(String, Mark)> {
    marks(s).into_iter().enumerate().map(|(k, mark)| (format!("L{}", k + 1), mark)).collect()
}

/// The schedule of levels.
pub fn table(s: &Section) -> Table {
    let datum = s.datum(zero()).is_some();
    let mut table = Table::new(["Mark", "Level", "Over floor"]);
    if datum {
        table.header.push("EL".to_owned());
    }
    for (letter, mark) in lettered(s) {
        let mut cells = vec![letter, name(&mark), s.write(mark.level)];
        cells.extend(s.datum(mark.level));
        table.row(cells);
    }
    if let Some(level) = s.sludge() {
        let mut cells = vec!["–".to_owned(), "Sludge at its trigger".to_owned(), s.write(level)];
        cells.extend(s.datum(level));
        table.row(cells);
    }
    table
}

/// What a mark is, in words.
fn name(mark: &Mark) -> String {
    match mark.name.as_str() {
        "AT REST" => "Water at rest".to_owned(),
        "OIL SURFACE" => "Oil surface at the alarm".to_owned(),
        "INTERFACE" => "Interface at the alarm".to_owned(),
        "MAX, OIL ZONE" => "Oil zone at the largest flow".to_owned(),
        "MAX, WELL" => "Clear well at the largest flow".to_owned(),
        "MAX" => "Largest flow".to_owned(),
        "GROUND" => "Ground".to_owned(),
        "FLOOR" => "Floor, inside".to_owned(),
        other => other.to_owned(),
    }
}

/// Draws lines and letters.
pub fn draw(s: &Section, scene: &mut Scene) {
    let wall = s.at(s.unit().shape.length(), zero()).x + s.wall();
    let (start, kink, end) = (wall + STUB + 2.0, wall + STUB + 4.0, wall + STUB + 9.0);
    let stub = outlet(s);
    let behind = s.at(s.oil_zone().1, zero()).x;
    let all = lettered(s);
    let mut heights: Vec<f64> = all.iter().map(|(_, mark)| s.at(zero(), mark.level).y).collect();
    let own = heights.clone();
    apart(&mut heights, APART);
    for (((letter, mark), y), shown) in all.into_iter().zip(own).zip(heights) {
        scene.on(Layer::Level);
        if mark.ahead {
            scene.line(pt(behind, y), pt(wall - s.wall(), y), Pen::Hatching);
        }
        let from = if y < stub.y0 || y > stub.y1 { wall } else { start };
        scene.polyline(&[pt(from, y), pt(kink, y), pt(end, shown), pt(end + 1.0, shown)], Pen::Thin);
        let text = Text::new(pt(end + 1.6, shown + 0.5 * TEXT), &letter).anchored(Anchor::Start);
        scene.text(text);
    }
}
