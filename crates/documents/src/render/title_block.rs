//! The title block: the data fields of ISO 7200 in a layout of our own.

use super::geometry::{Point, Rect, pt};
use super::item::Fill;
use super::lettering::{Anchor, CAPTION, HEADING, TEXT, Text};
use super::pen::{Layer, Pen};
use super::scene::{Picture, Scene};
use super::schedule::letters;
use super::sheet::SheetSize;
use super::text::{lines, plain};
use stillrise_design::enquiry::settings::Logo;
use stillrise_units::math;

/// Width, mm.
pub const WIDTH: f64 = 180.0;
/// Height, mm.
pub const HEIGHT: f64 = 53.0;

/// Arrangement of views.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Projection {
    /// A view lies on the far side of what it shows.
    #[default]
    First,
    /// A view lies on the side it is seen from.
    Third,
}

/// What the title block says. Empty fields stay empty boxes to be filled by hand.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct TitleBlock {
    /// What is drawn.
    pub title: String,
    /// A second line of the title.
    pub subtitle: String,
    /// The project or site.
    pub project: String,
    /// Who answers for the drawing (legal owner).
    pub owner: String,
    /// Kind of document: general arrangement, section.
    pub kind: String,
    /// Drawing number.
    pub number: String,
    /// Revision index.
    pub revision: String,
    /// This sheet and the number of sheets.
    pub sheet: (u16, u16),
    /// Status: preliminary, for approval, issued, as built.
    pub status: String,
    /// Scale as written; "as shown" where views differ.
    pub scale: String,
    /// Date of issue.
    pub date: String,
    /// What the dimensions are in.
    pub units: String,
    /// Arrangement of views.
    pub projection: Projection,
    /// Drawn by.
    pub drawn: String,
    /// Checked by.
    pub checked: String,
    /// Approved by.
    pub approved: String,
    /// Language of the text.
    pub language: String,
    /// Large letters beside the title block: "PRELIMINARY, NOT FOR CONSTRUCTION"; empty for none.
    pub stamp: String,
    /// What stands over the stamp on every sheet, where the duty itself is in doubt; empty where it is not.
    pub warning: String,
    /// One or two lines on what must be minded.
    pub cautions: String,
    /// The owner's logo, beside the title.
    pub logo: Option<Logo>,
}

/// A field: caption, text, width in mm, heights of capitals to try.
type Field<'a> = (&'a str, &'a str, f64, &'a [f64]);

/// Draws it with its upper left corner at a point; returns the texts that had to be cut.
pub(super) fn draw(scene: &mut Scene, at: Point, size: SheetSize, block: &TitleBlock) -> Vec<String> {
    scene.on(Layer::Frame);
    let whole = Rect::new(at.x, at.y, WIDTH, HEIGHT);
    scene.rect(&whole, Some(Pen::Outline), Fill::None);
    let mut cut = Vec::new();
    let sheet = if block.sheet == (0, 0) { String::new() } else { format!("{} / {}", block.sheet.0, block.sheet.1) };
    let large: &[f64] = &[5.0, HEADING, TEXT, CAPTION];
    let usual: &[f64] = &[TEXT, CAPTION];
    // Each row: its height, then caption, text, width and lettering of its fields.
    let rows: [(f64, Vec<Field>); 5] = [
        (
            18.0,
            vec![
                ("", "", 108.0, large),
                ("Drawing number", &block.number, 56.0, large),
                ("Rev.", &block.revision, 16.0, large),
            ],
        ),
        (
            9.0,
            vec![
                ("Project", &block.project, 108.0, &[HEADING, TEXT, CAPTION]),
                ("Status", &block.status, 52.0, &[HEADING, TEXT, CAPTION]),
                ("Sheet", &sheet, 20.0, usual),
            ],
        ),
        (
            9.0,
            vec![
                ("Owner", &block.owner, 58.0, usual),
                ("Kind of document", &block.kind, 50.0, usual),
                ("Date", &block.date, 32.0, usual),
                ("Size", size.name(), 20.0, usual),
                ("Language", &block.language, 20.0, usual),
            ],
        ),
        (
            9.0,
            vec![
                ("Scale", &block.scale, 32.0, usual),
                ("Dimensions in", &block.units, 35.0, usual),
                ("", "", 23.0, usual),
                ("Drawn", &block.drawn, 30.0, usual),
                ("Checked", &block.checked, 30.0, usual),
                ("Approved", &block.approved, 30.0, usual),
            ],
        ),
        (8.0, vec![("", &block.cautions, WIDTH, &[CAPTION])]),
    ];
    let mut y = at.y;
    for (r, (height, fields)) in rows.iter().enumerate() {
        let mut x = at.x;
        if r > 0 {
            scene.line(pt(at.x, y), pt(at.x + WIDTH, y), if r == 1 || r == 4 { Pen::Medium } else { Pen::Thin });
        }
        for (f, &(caption, text, width, sizes)) in fields.iter().enumerate() {
            let field = Rect::new(x, y, width, *height);
            if f > 0 {
                scene.line(pt(x, y), pt(x, y + height), Pen::Thin);
            }
            match (r, f) {
                (0, 0) => title(scene, &field, block, &mut cut),
                (3, 2) => symbol(scene, &field, block.projection),
                _ => self::field(scene, &field, caption, text, sizes, &mut cut),
            }
            x += width;
        }
        y += height;
    }
    cut
}

/// Writes number and sheet into a block that was drawn without them; returns the texts that had to be cut.
pub(super) fn number(scene: &mut Scene, at: Point, block: &TitleBlock) -> Vec<String> {
    scene.on(Layer::Frame);
    let sheet = format!("{} / {}", block.sheet.0, block.sheet.1);
    let mut cut = Vec::new();
    let large: &[f64] = &[5.0, HEADING, TEXT, CAPTION];
    for (area, text, sizes) in [
        (Rect::new(at.x + 108.0, at.y, 56.0, 18.0), block.number.as_str(), large),
        (Rect::new(at.x + 160.0, at.y + 18.0, 20.0, 9.0), &sheet, &[TEXT, CAPTION]),
    ] {
        said(scene, &area, text, sizes, &mut cut);
    }
    cut
}

/// The title over its subtitle.
fn title(scene: &mut Scene, field: &Rect, block: &TitleBlock, cut: &mut Vec<String>) {
    let field = &block.logo.as_ref().map_or(*field, |logo| beside_logo(scene, field, block, logo));
    let split = if block.subtitle.is_empty() { field.height() } else { 10.5 };
    let upper = Rect { y1: field.y0 + split, ..*field }.grown(-1.0);
    let (lines, size, whole) = fit(&block.title, &upper, &[5.0, HEADING, TEXT, CAPTION]);
    if !whole {
        cut.push(block.title.clone());
    }
    stack(scene, &upper, &lines, size, true);
    if !block.subtitle.is_empty() {
        let lower = Rect { y0: field.y0 + split, ..*field }.grown(-1.0);
        let (lines, size, whole) = fit(&block.subtitle, &lower, &[TEXT, CAPTION]);
        if !whole {
            cut.push(block.subtitle.clone());
        }
        stack(scene, &lower, &lines, size, false);
    }
}

/// The logo at the left of a field, as high as that or as wide as its share of it; answers what is left of the field.
fn beside_logo(scene: &mut Scene, field: &Rect, block: &TitleBlock, logo: &Logo) -> Rect {
    let (room, most) = (field.height() - 4.0, 32.0);
    let wide = math::min(room * logo.aspect, most);
    let high = math::min(wide / logo.aspect, room);
    let area = Rect::new(field.x0 + 2.0, field.centre().y - 0.5 * high, wide, high);
    scene.picture(Picture {
        area,
        kind: logo.kind(),
        bytes: logo.bytes.clone(),
        alt: format!("Logo of {}", if block.owner.is_empty() { "the owner" } else { &block.owner }),
    });
    let x0 = area.x1 + 2.0;
    scene.line(pt(x0, field.y0), pt(x0, field.y1), Pen::Thin);
    Rect { x0, ..*field }
}

/// A small caption above what the field says.
fn field(scene: &mut Scene, field: &Rect, caption: &str, text: &str, sizes: &[f64], cut: &mut Vec<String>) {
    let inner = field.grown(-1.2);
    if !caption.is_empty() {
        scene.text(Text::new(pt(inner.x0, inner.y0 + CAPTION), caption).sized(CAPTION));
        return said(scene, field, text, sizes, cut);
    }
    set(scene, &inner, text, sizes, cut);
}

/// What a field with a caption says.
fn said(scene: &mut Scene, field: &Rect, text: &str, sizes: &[f64], cut: &mut Vec<String>) {
    let mut inner = field.grown(-1.2);
    inner.y0 += CAPTION + 1.1;
    set(scene, &inner, text, sizes, cut);
}

fn set(scene: &mut Scene, inner: &Rect, text: &str, sizes: &[f64], cut: &mut Vec<String>) {
    let (lines, size, whole) = fit(text, inner, sizes);
    if !whole {
        cut.push(text.to_owned());
    }
    stack(scene, inner, &lines, size, size > TEXT);
}

/// Lines of text that fit an area, with the height of capitals, and whether nothing was cut.
///
/// The sizes are tried in turn; in the last one, the text is cut with an ellipsis if need be.
pub(super) fn fit(text: &str, area: &Rect, sizes: &[f64]) -> (Vec<String>, f64, bool) {
    let text = plain(text);
    let mut best = (Vec::new(), CAPTION, text.is_empty());
    for &size in sizes {
        let width = letters(area.width(), size);
        let most = rows(area.height(), size);
        let mut folded = lines(&text, width);
        let broken = text.split(' ').any(|word| super::text::cells(word) > width);
        if folded.len() <= most && !broken {
            return (folded, size, true);
        }
        let whole = folded.len() <= most;
        folded.truncate(most);
        if let (false, Some(last)) = (whole, folded.last_mut()) {
            while super::text::cells(last) + 1 > width.max(1) && last.pop().is_some() {}
            last.push('…');
        }
        best = (folded, size, whole);
    }
    best
}

/// How many lines of a size an area's height holds; one at least.
fn rows(height: f64, size: f64) -> usize {
    (2..20_u8).take_while(|&n| size + 1.5 * size * f64::from(n - 1) <= height + 0.2).last().map_or(1, usize::from)
}

/// Lines from the left, centred in height.
fn stack(scene: &mut Scene, area: &Rect, lines: &[String], size: f64, bold: bool) {
    for (k, line) in lines.iter().enumerate() {
        let text = Text::new(pt(area.x0, base(area, lines.len(), size, k)), line).sized(size);
        scene.text(if bold { text.bold() } else { text });
    }
}

/// Lines centred in width and height.
pub(super) fn centred(scene: &mut Scene, area: &Rect, lines: &[String], size: f64) {
    for (k, line) in lines.iter().enumerate() {
        let at = pt(area.centre().x, base(area, lines.len(), size, k));
        scene.text(Text::new(at, line).sized(size).anchored(Anchor::Middle).bold());
    }
}

/// Baseline of line `k` of `count`.
fn base(area: &Rect, count: usize, size: f64, k: usize) -> f64 {
    let small = |n: usize| f64::from(u8::try_from(n).unwrap_or(u8::MAX));
    let height = size + 1.5 * size * (small(count) - 1.0);
    area.centre().y - 0.5 * height + size + 1.5 * size * small(k)
}

/// The symbol of the projection method: a cone's frustum seen from the side and from its end.
fn symbol(scene: &mut Scene, field: &Rect, projection: Projection) {
    let Point { x, y } = field.centre();
    let side = |x0: f64, left: f64, right: f64| {
        vec![pt(x0, y - left), pt(x0 + 7.0, y - right), pt(x0 + 7.0, y + right), pt(x0, y + left)]
    };
    // The small end is on the left and the circles are seen from there: in the first angle they
    // stand on the far side of the cone, in the third on the near side.
    let (cone, circles) = match projection {
        Projection::First => (x - 8.5, x + 5.5),
        Projection::Third => (x + 1.5, x - 5.5),
    };
    scene.polygon(&side(cone, 1.6, 3.0), Some(Pen::Medium), Fill::None);
    scene.circle(pt(circles, y), 3.0, Some(Pen::Medium), Fill::None);
    scene.circle(pt(circles, y), 1.6, Some(Pen::Medium), Fill::None);
    scene.line(pt(cone - 1.5, y), pt(cone + 8.5, y), Pen::Centre);
    scene.line(pt(circles - 4.0, y), pt(circles + 4.0, y), Pen::Centre);
    scene.line(pt(circles, y - 4.0), pt(circles, y + 4.0), Pen::Centre);
}
