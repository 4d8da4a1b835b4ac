//! Lines by purpose, and the layers of a drawing.

/// A line by purpose. Widths are of the ISO 128 series 0.18, 0.25, 0.35, 0.5, 0.7 mm, wide to narrow 2:1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Pen {
    /// Border of the sheet, 0.7 mm.
    Frame,
    /// Visible outline, 0.5 mm.
    Outline,
    /// Edges of lesser parts and fittings, 0.35 mm.
    Medium,
    /// Dimension, extension, leader lines and table rules, 0.25 mm.
    Thin,
    /// Hidden outline, dashed, 0.25 mm.
    Hidden,
    /// Centre line, long-dashed dotted, 0.25 mm.
    Centre,
    /// Adjacent or alternative part, long-dashed double-dotted, 0.25 mm.
    Phantom,
    /// Free surface of a liquid, 0.35 mm.
    Surface,
    /// Hatching, 0.18 mm.
    Hatching,
}

impl Pen {
    /// Every pen.
    pub const ALL: [Pen; 9] = [
        Pen::Frame,
        Pen::Outline,
        Pen::Medium,
        Pen::Thin,
        Pen::Hidden,
        Pen::Centre,
        Pen::Phantom,
        Pen::Surface,
        Pen::Hatching,
    ];

    /// Width on paper, mm.
    #[must_use]
    pub fn width(self) -> f64 {
        match self {
            Pen::Frame => 0.7,
            Pen::Outline => 0.5,
            Pen::Medium | Pen::Surface => 0.35,
            Pen::Thin | Pen::Hidden | Pen::Centre | Pen::Phantom => 0.25,
            Pen::Hatching => 0.18,
        }
    }

    /// Dash and gap lengths in turn, mm; empty for a continuous line.
    ///
    /// The proportions are common practice (dash 12, gap 3, long dash 24 line widths); the dot is
    /// drawn as a short dash so that it survives copying.
    #[must_use]
    pub fn dashes(self) -> &'static [f64] {
        match self {
            Pen::Hidden => &[3.0, 0.75],
            Pen::Centre => &[6.0, 0.75, 0.75, 0.75],
            Pen::Phantom => &[6.0, 0.75, 0.75, 0.75, 0.75, 0.75],
            _ => &[],
        }
    }

    /// The name, lower-case: a class in SVG, a line type elsewhere.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Pen::Frame => "frame",
            Pen::Outline => "outline",
            Pen::Medium => "medium",
            Pen::Thin => "thin",
            Pen::Hidden => "hidden",
            Pen::Centre => "centre",
            Pen::Phantom => "phantom",
            Pen::Surface => "surface",
            Pen::Hatching => "hatching",
        }
    }
}

/// A layer; layers are painted in this order, so that marks stand over the parts they mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Layer {
    /// Ground, foundations, what was there before.
    Ground,
    /// Water, oil, sludge.
    Liquid,
    /// Plate packs, mesh, baffles, weirs, floats.
    Internals,
    /// Shell, heads, walls, lids.
    Vessel,
    /// Nozzles, pipes, pumps, valves.
    Piping,
    /// Centre and section lines.
    Centre,
    /// Level marks.
    Level,
    /// Dimensions.
    Dimension,
    /// Leaders, balloons, names.
    Note,
    /// Schedules.
    Table,
    /// Frame and title block.
    Frame,
}

impl Layer {
    /// Every layer, in the order of painting.
    pub const ALL: [Layer; 11] = [
        Layer::Ground,
        Layer::Liquid,
        Layer::Internals,
        Layer::Vessel,
        Layer::Piping,
        Layer::Centre,
        Layer::Level,
        Layer::Dimension,
        Layer::Note,
        Layer::Table,
        Layer::Frame,
    ];

    /// The name, lower-case.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Layer::Ground => "ground",
            Layer::Liquid => "liquid",
            Layer::Internals => "internals",
            Layer::Vessel => "vessel",
            Layer::Piping => "piping",
            Layer::Centre => "centre",
            Layer::Level => "level",
            Layer::Dimension => "dimension",
            Layer::Note => "note",
            Layer::Table => "table",
            Layer::Frame => "frame",
        }
    }
}
