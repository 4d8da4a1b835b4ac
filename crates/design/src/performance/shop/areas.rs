//! Vapour that may ignite: the class of each oil by its flash point, and the areas that codes draw around a separator.

use super::SHOP;
use crate::basis::Basis;
use crate::provenance::{Trail, Val, given};
use crate::say;
use stillrise_handbook::ground::liquid_classes::{LiquidClass, class};
use stillrise_units::catalog::{DEG_C, DEG_F};
use stillrise_units::{Temperature, Typed};

/// Below this, in °F, a liquid is of class I.
const CLASS_I: f64 = 100.0;

/// One oil.
#[derive(Debug, Clone)]
pub struct Class {
    /// Its name.
    pub oil: String,
    /// The lowest flash point of its kind.
    pub flash: Val<Temperature>,
    /// Its class; the severer where the boiling point would decide.
    pub class: &'static LiquidClass,
}

impl Class {
    /// Its class in print: below 73 °F the boiling point decides between the first two.
    #[must_use]
    pub fn shown(&self) -> &'static str {
        if self.class.is_by_boiling_point() { "IA or IB, by its boiling point" } else { self.class.word }
    }
}

/// What the oils ask for.
#[derive(Debug, Clone, Default)]
pub struct Areas {
    /// Each oil, the most volatile first.
    pub oils: Vec<Class>,
    /// Whether one of them may flash below 100 °F.
    pub volatile: bool,
}

/// Finds it.
pub(super) fn areas<T: Trail>(t: &mut T, basis: &Basis) -> Areas {
    t.section(format_args!("{SHOP}: electrical areas"));
    let mut oils: Vec<Class> = Vec::new();
    for state in &basis.fluids.oils {
        let spread = &state.oil.flash_c;
        let label = say!(T, "flash point of {}, lowest", state.name);
        let lowest = Temperature::from_si(spread.low_si());
        let flash = given(t, &label, Some((&DEG_F, &DEG_C)), lowest, &say!(T, "{}", spread.source), state.oil.title);
        oils.extend(class(flash.q, None).map(|class| Class { oil: state.name.clone(), flash, class }));
    }
    oils.sort_by(|a, b| a.flash.q.si().total_cmp(&b.flash.q.si()));
    let volatile = oils.first().is_some_and(|oil| oil.flash.q < Temperature::of(CLASS_I, &DEG_F));
    Areas { oils, volatile }
}
