//! A drawing: items in millimetres on paper, on layers, some of them parts one can point at.

use super::geometry::{Point, Rect};
pub use super::item::{Fill, Item, Part, Placed, Shape};
pub use super::lettering::{ADVANCE, Anchor, CAPTION, EM, HEADING, TEXT, Text, Turn, around, text_width};
use super::mark::Dimension;
use super::pen::{Layer, Pen};
use super::text::plain;

/// A drawing in millimetres on paper, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// What it shows, in a few words.
    pub title: String,
    /// What someone who cannot see it should be told.
    pub description: String,
    /// Width of the paper, mm.
    pub width: f64,
    /// Height of the paper, mm.
    pub height: f64,
    items: Vec<Placed>,
    parts: Vec<Part>,
    layer: Layer,
    part: Option<usize>,
    boxes: Vec<(String, Rect)>,
    reserved: Vec<Rect>,
    lines: Vec<(Point, Point)>,
    pointers: Vec<(Point, Point)>,
    pictures: Vec<Picture>,
}

/// A picture that stands on the drawing as it is: a logo. Drafting programs get none of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// Where it stands, mm; it keeps its own proportions in there.
    pub area: Rect,
    /// What its bytes are, as a server says it: `image/png`.
    pub kind: &'static str,
    /// The file.
    pub bytes: Vec<u8>,
    /// What it is, for who cannot see it.
    pub alt: String,
}

impl Scene {
    /// An empty drawing.
    #[must_use]
    pub fn new(title: &str, description: &str, width: f64, height: f64) -> Scene {
        Scene {
            title: plain(title),
            description: plain(description),
            width,
            height,
            items: Vec::new(),
            parts: Vec::new(),
            layer: Layer::Vessel,
            part: None,
            boxes: Vec::new(),
            reserved: Vec::new(),
            lines: Vec::new(),
            pointers: Vec::new(),
            pictures: Vec::new(),
        }
    }

    /// Chooses the layer of what is added from now on.
    pub fn on(&mut self, layer: Layer) -> &mut Scene {
        self.layer = layer;
        self
    }

    /// Draws one part: everything added inside `draw` belongs to it.
    pub fn part(&mut self, id: &str, title: &str, draw: impl FnOnce(&mut Scene)) {
        let found = self.parts.iter().position(|p| p.id == id);
        let index = found.unwrap_or_else(|| {
            self.parts.push(Part { id: id.to_owned(), title: plain(title) });
            self.parts.len() - 1
        });
        let before = (self.part.replace(index), self.layer);
        draw(self);
        (self.part, self.layer) = before;
    }

    /// Adds an item as it is.
    pub fn add(&mut self, item: Item) {
        self.boxes.extend(item.text_boxes());
        self.lines.extend(item.lines());
        self.pointers.extend(item.pointer());
        self.items.push(Placed { layer: self.layer, part: self.part, item });
    }

    /// Adds a picture.
    pub fn picture(&mut self, picture: Picture) {
        self.pictures.push(picture);
    }

    /// The pictures on it.
    #[must_use]
    pub fn pictures(&self) -> &[Picture] {
        &self.pictures
    }

    /// Adds all of another drawing, moved on paper, with its layers and parts.
    pub fn take(&mut self, other: &Scene, dx: f64, dy: f64) {
        for placed in other.items() {
            let item = placed.item.moved(dx, dy);
            match placed.part.and_then(|part| other.parts.get(part)) {
                Some(part) => {
                    self.part(&part.id, &part.title, |scene| scene.on(placed.layer).add(item));
                }
                None => self.on(placed.layer).add(item),
            }
        }
    }

    /// A straight line.
    pub fn line(&mut self, from: Point, to: Point, pen: Pen) {
        self.polyline(&[from, to], pen);
    }

    /// An open line through points.
    pub fn polyline(&mut self, points: &[Point], pen: Pen) {
        let rings = vec![points.to_vec()];
        self.add(Item::Shape(Shape::Path { rings, closed: false, pen: Some(pen), fill: Fill::None }));
    }

    /// A closed outline with an inside.
    pub fn polygon(&mut self, points: &[Point], pen: Option<Pen>, fill: Fill) {
        self.area(vec![points.to_vec()], pen, fill);
    }

    /// A closed outline of several rings; a ring within a ring is a hole.
    pub fn area(&mut self, rings: Vec<Vec<Point>>, pen: Option<Pen>, fill: Fill) {
        self.add(Item::Shape(Shape::Path { rings, closed: true, pen, fill }));
    }

    /// An upright rectangle.
    pub fn rect(&mut self, rect: &Rect, pen: Option<Pen>, fill: Fill) {
        self.polygon(&rect.corners(), pen, fill);
    }

    /// A circle.
    pub fn circle(&mut self, centre: Point, radius: f64, pen: Option<Pen>, fill: Fill) {
        self.add(Item::Shape(Shape::Circle { centre, radius, pen, fill }));
    }

    /// An arrow: a line with a solid head at `to`, for flow and direction.
    pub fn arrow(&mut self, from: Point, to: Point, pen: Pen) {
        let length = 6.0 * pen.width() + 1.5;
        self.line(from, to.toward(from, 0.8 * length), pen);
        self.add(Item::Shape(super::mark::arrow_head(from, to, length)));
    }

    /// A line of text.
    pub fn text(&mut self, text: Text) {
        self.add(Item::Shape(Shape::Text(text)));
    }

    /// Keeps labels out of an area without drawing anything.
    pub fn reserve(&mut self, rect: Rect) {
        self.reserved.push(rect);
    }

    /// Adds the candidate that stands clearest, and tells whether it overlaps no text.
    ///
    /// Least overlap with texts and reserved areas comes first, then fewest leaders that cross lettering or each other, then
    /// fewest lines crossed, then the order given; so put the preferred place first. Without candidates nothing is added.
    pub fn place(&mut self, candidates: impl IntoIterator<Item = Item>) -> bool {
        let paper = Rect::new(0.0, 0.0, self.width, self.height);
        let mut best: Option<(f64, usize, usize, Item)> = None;
        for item in candidates {
            let boxes: Vec<Rect> = item.text_boxes().iter().map(|(_, rect)| rect.grown(0.4)).collect();
            let taken = self.boxes.iter().map(|(_, rect)| rect).chain(&self.reserved);
            let mut overlap: f64 = taken.map(|t| boxes.iter().map(|b| b.overlap(t)).sum::<f64>()).sum();
            for b in &boxes {
                overlap += b.width() * b.height() - b.overlap(&paper);
            }
            // Areas of some hundred mm2 carry rounding of this size.
            overlap = if overlap < 1e-9 { 0.0 } else { overlap };
            let struck = self.struck(&item, &boxes);
            let crossed = boxes.iter().map(|b| self.crossings(b)).sum();
            let better = best.as_ref().is_none_or(|(o, s, c, _)| {
                overlap < *o || (overlap == *o && (struck < *s || (struck == *s && crossed < *c)))
            });
            if better {
                best = Some((overlap, struck, crossed, item));
            }
        }
        let Some((overlap, .., item)) = best else {
            return false;
        };
        self.add(item);
        overlap == 0.0
    }

    /// How many leaders would cross lettering or each other with an item that takes these boxes.
    fn struck(&self, item: &Item, boxes: &[Rect]) -> usize {
        let over = |area: &Rect| self.pointers.iter().filter(|(a, b)| area.crossed_by(*a, *b)).count();
        let mut all: usize = boxes.iter().map(over).sum();
        if let Some((a, b)) = item.pointer() {
            // Lettering has its height and a little more; a leader may pass it closely.
            all += self.boxes.iter().filter(|(_, area)| area.crossed_by(a, b)).count();
            all += self.pointers.iter().filter(|(c, d)| super::geometry::cross((a, b), (*c, *d))).count();
        }
        all
    }

    /// How many lines drawn so far pass through an area.
    fn crossings(&self, rect: &Rect) -> usize {
        self.lines.iter().filter(|(a, b)| rect.crossed_by(*a, *b)).count()
    }

    /// Text at the clearest of several places; see [`Scene::place`].
    pub fn label(&mut self, text: &Text, places: &[(Point, Anchor)]) -> bool {
        let candidate = |&(at, anchor)| Item::Shape(Shape::Text(Text { at, anchor, ..text.clone() }));
        self.place(places.iter().map(candidate).collect::<Vec<_>>())
    }

    /// Everything drawn, in the order added.
    #[must_use]
    pub fn items(&self) -> &[Placed] {
        &self.items
    }

    /// The parts that can be pointed at.
    #[must_use]
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// The dimensions, with true length and paper length, for comparison with the scale stated.
    pub fn dimensions(&self) -> impl Iterator<Item = &Dimension> {
        self.items.iter().filter_map(|placed| match &placed.item {
            Item::Dimension(dimension) => Some(dimension),
            _ => None,
        })
    }

    /// Every text with the rectangle it takes.
    #[must_use]
    pub fn text_boxes(&self) -> Vec<(String, Rect)> {
        self.boxes.clone()
    }

    /// Pairs of texts that overlap; empty on a drawing that can be read.
    #[must_use]
    pub fn overlaps(&self) -> Vec<(String, String)> {
        let mut pairs = Vec::new();
        for (k, (a, here)) in self.boxes.iter().enumerate() {
            for (b, there) in self.boxes.iter().skip(k + 1) {
                if here.overlap(there) > 1e-6 {
                    pairs.push((a.clone(), b.clone()));
                }
            }
        }
        pairs
    }

    /// Texts that reach beyond the paper.
    #[must_use]
    pub fn outside(&self) -> Vec<String> {
        let paper = Rect::new(0.0, 0.0, self.width, self.height);
        self.boxes.iter().filter(|(_, rect)| !paper.holds(rect)).map(|(text, _)| text.clone()).collect()
    }
}
