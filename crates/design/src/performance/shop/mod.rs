//! Shop and installation, preliminary: weights and lifting, walls, frost, vent, protection, electrical areas. Worked once, for
//! the unit that is taken; nothing of it decides which unit that is.
//!
//! Each matter goes by what the unit has. Where a formula has no answer, that matter stops and says so; the others stand.

pub mod areas;
pub mod cylinder;
pub mod frost;
pub mod lifting;
pub mod plate;
pub mod protection;
pub mod saddles;
pub mod vent;
pub mod walls;
pub mod weights;

use super::installation::Installation;
use super::storage::Storage;
use crate::basis::Basis;
use crate::enquiry::Enquiry;
use crate::provenance::{Stop, Trail, Val, WhatIf};
use crate::train::Train;
use stillrise_units::Flow;

/// How the sections of the trail begin that nothing else rests on: no answer here moves unit or effluent.
pub const SHOP: &str = "shop";

/// What a shop and whoever installs the unit would ask.
#[derive(Debug, Clone, Default)]
pub struct Shop {
    /// What it weighs.
    pub weights: Option<weights::Weights>,
    /// How it is lifted; `None` where it is built in its place.
    pub lifting: Option<lifting::Lifting>,
    /// Flat walls under water; `None` for another body, or where thickness or metal is not known.
    pub walls: Option<walls::Walls>,
    /// Shell and heads of a lying cylinder; `None` for another body, or where thickness or metal is not known.
    pub cylinder: Option<cylinder::Cylinder>,
    /// Two saddles under it before it is let into the ground; `None` for another body, or where thickness or weight is not
    /// known.
    pub saddles: Option<saddles::Saddles>,
    /// Outdoors above the ground in air below freezing.
    pub frost: Option<frost::Frost>,
    /// The vent of a closed unit.
    pub vent: Option<vent::Vent>,
    /// Cathodic protection of coated steel in the ground.
    pub protection: Option<protection::Protection>,
    /// Vapour that may ignite.
    pub areas: areas::Areas,
    /// Matters that could not be worked to their end.
    pub stops: Vec<Stop>,
}

/// What of the unit's performance the shop needs.
pub(super) struct Found<'a> {
    /// How it is installed.
    pub(super) installation: &'a Installation,
    /// What collects in it.
    pub(super) storage: &'a Storage,
    /// The largest flow through one unit.
    pub(super) largest: Val<Flow>,
}

/// Works all of it.
pub(super) fn shop<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    train: &Train,
    found: &Found<'_>,
) -> Shop {
    let unit = &train.unit;
    let mut shop = Shop { areas: areas::areas(t, basis), ..Shop::default() };
    let mut stops = Vec::new();
    shop.weights = heard(&mut stops, weights::weights(t, e, basis, unit, found.storage)).flatten();
    if let Some(weights) = &shop.weights {
        shop.lifting = heard(&mut stops, lifting::lifting(t, w, e, unit, weights)).flatten();
    }
    shop.walls = heard(&mut stops, walls::walls(t, basis, unit)).flatten();
    shop.cylinder = heard(&mut stops, cylinder::cylinder(t, basis, unit)).flatten();
    if let Some(weights) = &shop.weights {
        shop.saddles = heard(&mut stops, saddles::saddles(t, unit, weights)).flatten();
        shop.frost = heard(&mut stops, frost::frost(t, w, e, basis, unit, found.installation, weights)).flatten();
    }
    shop.vent = heard(&mut stops, vent::vent(t, w, e, unit, found.largest, shop.areas.volatile)).flatten();
    shop.protection = heard(&mut stops, protection::protection(t, w, e, unit)).flatten();
    shop.stops = stops;
    shop
}

/// What was found; a stop is kept for the report.
fn heard<A>(stops: &mut Vec<Stop>, found: Result<A, Stop>) -> Option<A> {
    found.map_err(|stop| stops.push(stop)).ok()
}
