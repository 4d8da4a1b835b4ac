//! Names of layers; what they mean stands with the writer.

use crate::render::item::Item;
use crate::render::pen::Layer;

/// How something is shown: the last field of a layer's name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shown {
    /// Outlines and fills.
    Element,
    /// Hatching.
    Hatching,
    /// Text.
    Text,
    /// Dimensions.
    Dimension,
    /// Lines of other marks.
    Annotation,
}

impl Shown {
    /// Every way.
    pub const ALL: [Shown; 5] = [Shown::Element, Shown::Hatching, Shown::Text, Shown::Dimension, Shown::Annotation];

    /// How the lines of an item are shown.
    #[must_use]
    pub fn of(item: &Item) -> Shown {
        match item {
            Item::Shape(_) => Shown::Element,
            Item::Dimension(_) => Shown::Dimension,
            Item::Leader(_) | Item::Balloon(_) | Item::Level(_) => Shown::Annotation,
        }
    }
}

/// The name of the layer for what is shown in a way on a layer of a scene.
#[must_use]
pub fn layer_name(layer: Layer, shown: Shown) -> String {
    let element = match layer {
        Layer::Ground => "GROUND",
        Layer::Liquid => "LIQUID",
        Layer::Internals => "INTERN",
        Layer::Vessel => "VESSEL",
        Layer::Piping => "PIPING",
        Layer::Centre => "CENTRE",
        Layer::Level => "LEVEL-",
        Layer::Dimension => "DIMENS",
        Layer::Note => "NOTES-",
        Layer::Table => "TABLE-",
        Layer::Frame => "FRAME-",
    };
    let shown = match shown {
        Shown::Element => "E-",
        Shown::Hatching => "H-",
        Shown::Text => "T-",
        Shown::Dimension => "D-",
        Shown::Annotation => "J-",
    };
    format!("Y-{element}{shown}")
}
