//! Scale: how large a thing stands on paper, and views that draw it so.

use super::geometry::{Point, Rect, pt};
use super::item::Item;
use super::lettering::{Anchor, HEADING, Text};
use super::mark::{ARROW, Axis, Dimension, Ends, ROW, STEP, Seat};
use super::pen::{Layer, Pen};
use super::scene::Scene;
use stillrise_units::catalog::{FT, IN, M, MM};
use stillrise_units::{Length, System, Typed};

/// A scale that draughtsmen use: the paper shows one part in `ratio`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    ratio: f64,
    text: &'static str,
}

/// The reductions recommended by ISO 5455, and full size.
const METRIC: &[Scale] = &[
    of(1.0, "1:1"),
    of(2.0, "1:2"),
    of(5.0, "1:5"),
    of(10.0, "1:10"),
    of(20.0, "1:20"),
    of(50.0, "1:50"),
    of(100.0, "1:100"),
    of(200.0, "1:200"),
    of(500.0, "1:500"),
    of(1000.0, "1:1000"),
    of(2000.0, "1:2000"),
    of(5000.0, "1:5000"),
    of(10000.0, "1:10000"),
];

/// The scales of US architects' and engineers' rules, as commonly used.
const CUSTOMARY: &[Scale] = &[
    of(1.0, "FULL SIZE"),
    of(2.0, "6\" = 1'-0\""),
    of(4.0, "3\" = 1'-0\""),
    of(8.0, "1 1/2\" = 1'-0\""),
    of(12.0, "1\" = 1'-0\""),
    of(16.0, "3/4\" = 1'-0\""),
    of(24.0, "1/2\" = 1'-0\""),
    of(32.0, "3/8\" = 1'-0\""),
    of(48.0, "1/4\" = 1'-0\""),
    of(64.0, "3/16\" = 1'-0\""),
    of(96.0, "1/8\" = 1'-0\""),
    of(192.0, "1/16\" = 1'-0\""),
    of(240.0, "1\" = 20'-0\""),
    of(360.0, "1\" = 30'-0\""),
    of(480.0, "1\" = 40'-0\""),
    of(600.0, "1\" = 50'-0\""),
    of(1200.0, "1\" = 100'-0\""),
    of(2400.0, "1\" = 200'-0\""),
    of(6000.0, "1\" = 500'-0\""),
];

/// Those between, for a drawing whose room is given and not chosen: ISO 5455 allows them where the others do not serve.
const METRIC_BETWEEN: &[Scale] = &[
    of(15.0, "1:15"),
    of(25.0, "1:25"),
    of(30.0, "1:30"),
    of(40.0, "1:40"),
    of(60.0, "1:60"),
    of(75.0, "1:75"),
    of(125.0, "1:125"),
    of(150.0, "1:150"),
    of(250.0, "1:250"),
    of(300.0, "1:300"),
    of(400.0, "1:400"),
    of(750.0, "1:750"),
];

/// The same of US rules, architects' and engineers'.
const CUSTOMARY_BETWEEN: &[Scale] = &[
    of(38.4, "5/16\" = 1'-0\""),
    of(60.0, "1\" = 5'-0\""),
    of(76.8, "5/32\" = 1'-0\""),
    of(120.0, "1\" = 10'-0\""),
    of(128.0, "3/32\" = 1'-0\""),
    of(160.0, "3/40\" = 1'-0\""),
    of(300.0, "1\" = 25'-0\""),
    of(720.0, "1\" = 60'-0\""),
    of(960.0, "1\" = 80'-0\""),
];

const fn of(ratio: f64, text: &'static str) -> Scale {
    Scale { ratio, text }
}

impl Scale {
    /// The scales of a system, largest picture first.
    #[must_use]
    pub fn series(system: System) -> &'static [Scale] {
        match system {
            System::Us => CUSTOMARY,
            System::Si => METRIC,
        }
    }

    /// The largest picture of something `width` by `height` that fits into a paper area of mm;
    /// `None` when even the smallest scale is too large.
    #[must_use]
    pub fn fitting(width: Length, height: Length, paper: (f64, f64), system: System) -> Option<Scale> {
        let fits = |s: &&Scale| s.mm(width) <= paper.0 && s.mm(height) <= paper.1;
        Scale::series(system).iter().find(fits).copied()
    }

    /// The same among more scales, those between the usual ones too.
    #[must_use]
    pub fn fitting_between(width: Length, height: Length, paper: (f64, f64), system: System) -> Option<Scale> {
        let between = match system {
            System::Us => CUSTOMARY_BETWEEN,
            System::Si => METRIC_BETWEEN,
        };
        let fits = |s: &&Scale| s.mm(width) <= paper.0 && s.mm(height) <= paper.1;
        let all = Scale::series(system).iter().chain(between).filter(fits);
        all.min_by(|a, b| a.ratio.total_cmp(&b.ratio)).copied()
    }

    /// All scales of a system, those between the usual ones too, largest picture first.
    #[must_use]
    pub fn all(system: System) -> Vec<Scale> {
        let between = match system {
            System::Us => CUSTOMARY_BETWEEN,
            System::Si => METRIC_BETWEEN,
        };
        let mut all: Vec<Scale> = Scale::series(system).iter().chain(between).copied().collect();
        all.sort_by(|a, b| a.ratio.total_cmp(&b.ratio));
        all
    }

    /// True size per size on paper: 20 for 1:20.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        self.ratio
    }

    /// As written in a title block.
    #[must_use]
    pub fn text(&self) -> &'static str {
        self.text
    }

    /// A length on paper, mm.
    #[must_use]
    pub fn mm(&self, length: Length) -> f64 {
        length.in_unit(&MM) / self.ratio
    }
}

/// A length as written on a drawing: whole millimetres, or feet and inches to the eighth.
#[must_use]
pub fn dimension_text(length: Length, system: System) -> String {
    let sign = if length.si() < 0.0 { "-" } else { "" };
    match system {
        System::Si => {
            let whole = format!("{:.0}", length.in_unit(&MM).abs());
            if whole == "0" { whole } else { format!("{sign}{whole}") }
        }
        System::Us => {
            let eighths = (length.in_unit(&IN).abs() * 8.0).round();
            let feet = (eighths / 96.0).floor();
            let rest = eighths - feet * 96.0;
            let inches = (rest / 8.0).floor();
            let fraction = match rest - inches * 8.0 {
                1.0 => " 1/8",
                2.0 => " 1/4",
                3.0 => " 3/8",
                4.0 => " 1/2",
                5.0 => " 5/8",
                6.0 => " 3/4",
                7.0 => " 7/8",
                _ => "",
            };
            let sign = if eighths == 0.0 { "" } else { sign };
            match (feet > 0.0, inches > 0.0 || fraction.is_empty()) {
                (true, _) => format!("{sign}{feet:.0}'-{inches:.0}{fraction}\""),
                (false, true) => format!("{sign}{inches:.0}{fraction}\""),
                (false, false) => format!("{sign}{}\"", fraction.trim()),
            }
        }
    }
}

/// A point of the model: x to the right, y up.
pub type Spot = (Length, Length);

/// True distance of the first and last point along an axis.
fn measured(axis: Axis, points: &[Spot]) -> Length {
    let (Some(from), Some(to)) = (points.first(), points.last()) else {
        return Length::from_si(0.0);
    };
    let signed = match axis {
        Axis::Across => to.0.si() - from.0.si(),
        Axis::Up => to.1.si() - from.1.si(),
    };
    Length::from_si(signed.abs())
}

/// One view on a sheet: model coordinates (x to the right, y up) at a scale.
#[derive(Debug, Clone, PartialEq)]
pub struct View {
    /// As written under it: "Section A-A".
    pub name: String,
    /// Its scale.
    pub scale: Scale,
    /// Where the model's origin stands on paper.
    pub origin: Point,
}

impl View {
    /// A view of a model from (0, 0) to (width, height), centred in an area of paper.
    #[must_use]
    pub fn centred(name: &str, scale: Scale, width: Length, height: Length, area: &Rect) -> View {
        let middle = area.centre();
        let origin = pt(middle.x - 0.5 * scale.mm(width), middle.y + 0.5 * scale.mm(height));
        View { name: name.to_owned(), scale, origin }
    }

    /// A point of the model on paper.
    #[must_use]
    pub fn at(&self, x: Length, y: Length) -> Point {
        self.origin.by(self.scale.mm(x), -self.scale.mm(y))
    }

    /// Dimensions the distance across from `from` to `to`, text where it stands clearest. `line` is
    /// the y of the dimension line on paper; the answer is where the next one outward may stand.
    /// The length stated is taken from the model.
    pub fn across(&self, scene: &mut Scene, from: Spot, to: Spot, line: f64, text: &str) -> f64 {
        self.dimensions(scene, Axis::Across, &[from, to], line, |_| text.to_owned())
    }

    /// Dimensions the height from `from` to `to`; `line` is the x of the dimension line on paper,
    /// and so is the answer.
    pub fn up(&self, scene: &mut Scene, from: Spot, to: Spot, line: f64, text: &str) -> f64 {
        self.dimensions(scene, Axis::Up, &[from, to], line, |_| text.to_owned())
    }

    /// Dimensions from each point to the next on one line, each length written by `text`. Where
    /// one is too short for arrow heads, the whole chain has oblique strokes. The answer is where
    /// the next line outward may stand.
    pub fn dimensions(
        &self,
        scene: &mut Scene,
        axis: Axis,
        points: &[Spot],
        line: f64,
        text: impl Fn(Length) -> String,
    ) -> f64 {
        let narrow = points.windows(2).any(|pair| self.scale.mm(measured(axis, pair)) < 3.0 * ARROW);
        let ends = if narrow && points.len() > 2 { Ends::Ticks } else { Ends::Arrows };
        scene.on(Layer::Dimension);
        let (mut rows, mut outward) = (0_u8, 1.0);
        for (k, pair) in points.windows(2).enumerate() {
            let &[from, to] = pair else { continue };
            let dimension = Dimension { joined: k > 0, ..self.dimension(axis, (from, to), (line, ends), &text) };
            outward = dimension.outward();
            scene.place(dimension.seats().into_iter().map(Item::Dimension));
            if let Some(Item::Dimension(Dimension { seat: Seat::Off(row), .. })) = scene.items().last().map(|p| &p.item)
            {
                rows = rows.max(*row);
            }
        }
        line + outward * (STEP + f64::from(rows) * ROW)
    }

    /// One dimension from a point to another, its line at `line`, the length written by `text`.
    #[must_use]
    pub fn dimension(
        &self,
        axis: Axis,
        (from, to): (Spot, Spot),
        (line, ends): (f64, Ends),
        text: impl Fn(Length) -> String,
    ) -> Dimension {
        let length = measured(axis, &[from, to]);
        Dimension {
            axis,
            from: self.at(from.0, from.1),
            to: self.at(to.0, to.1),
            line,
            text: super::text::plain(&text(length)),
            length,
            view: self.name.clone(),
            ends,
            seat: Seat::Between(0.5),
            joined: false,
        }
    }

    /// Writes name and scale under the view, centred at a point, underlined.
    pub fn title(&self, scene: &mut Scene, at: Point) {
        let text = Text::new(at, &self.name.to_uppercase()).sized(HEADING).bold().anchored(Anchor::Middle);
        let area = text.area();
        let below = at.y + 1.6;
        scene.on(Layer::Note).text(text);
        scene.line(pt(area.x0 - 2.0, below), pt(area.x1 + 2.0, below), Pen::Medium);
        let scale = format!("SCALE {}", self.scale.text);
        scene.text(Text::new(at.by(0.0, 6.0), &scale).anchored(Anchor::Middle));
    }

    /// Draws a graphic scale of about `room` mm from `at` to the right: true on any print.
    pub fn scale_bar(&self, scene: &mut Scene, at: Point, room: f64, system: System) {
        // Steps of 1, 2, 5 times a power of ten of the printed unit; four of them.
        let (unit, name) = match system {
            System::Us => (&FT, FT.symbol),
            System::Si => (&M, M.symbol),
        };
        let mut step = 0.01;
        for next in [0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0] {
            if 4.0 * self.scale.mm(Length::of(next, unit)) <= room {
                step = next;
            }
        }
        let mm = self.scale.mm(Length::of(step, unit));
        scene.on(Layer::Note);
        for k in 0..4_u8 {
            let x = at.x + f64::from(k) * mm;
            let fill = if k % 2 == 0 { super::item::Fill::Ink } else { super::item::Fill::Paper };
            scene.rect(&Rect::new(x, at.y, mm, 1.2), Some(Pen::Thin), fill);
        }
        let labels: &[u8] = if mm > 12.0 {
            &[0, 1, 2, 4]
        } else if mm > 7.0 {
            &[0, 2, 4]
        } else {
            &[0, 4]
        };
        for &k in labels {
            let number = stillrise_units::print::digits(step * f64::from(k), 3);
            let text = if k == 4 { format!("{number} {name}") } else { number };
            let place = pt(at.x + f64::from(k) * mm, at.y - 1.0);
            scene.text(Text::new(place, &text).sized(super::lettering::CAPTION).anchored(Anchor::Middle));
        }
    }
}
