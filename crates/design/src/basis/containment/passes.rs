//! What of the declared spill passes the containments that hold it, and how sure that is.

use super::Containments;
use super::balance::Balance;
use super::drain::Shut;
use crate::provenance::{self, Pair, Trail, Val};
use crate::reckon;
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Typed, Volume};

/// What of a spill passes a chain, the least first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Passing {
    /// Nothing, whatever is not known.
    Nothing,
    /// What the chain is short of; all that decides it is known.
    Short,
    /// Counted as all of it, as what decides it was not said.
    Unknown,
    /// All of it, as a drain is known to stand open.
    Open,
}

impl Balance {
    /// What of this spill passes.
    #[must_use]
    pub fn passing(&self, spill: Volume) -> Passing {
        // What it is short of may be the largest vessel's oil, and this spill less.
        let holds = (self.spare.least + self.oil.high - spill).si() >= 0.0;
        if self.keeps_all() || (self.shut <= Shut::Device && holds) {
            Passing::Nothing
        } else if self.shut == Shut::Open {
            Passing::Open
        } else if self.spare.holds() == Some(false) && self.shut <= Shut::Device && self.open.is_empty() {
            Passing::Short
        } else {
            Passing::Unknown
        }
    }

    /// What would pass with the drains shut, if all that nobody said were as it is taken.
    #[must_use]
    pub fn passes_as_taken(&self, spill: Volume) -> Volume {
        let short = spill - self.oil.val.q - self.spare.val.q;
        short.max(Volume::from_si(0.0)).min(spill)
    }
}

impl Containments {
    /// The declared spill's balance that lets most of it pass, with how much; `None` where no containment is for it.
    #[must_use]
    pub fn passing(&self, spill: Volume) -> Option<(&Balance, Passing)> {
        let declared = self.balances.iter().filter(|b| b.declared).map(|b| (b, b.passing(spill)));
        declared.max_by_key(|(_, passing)| *passing)
    }
}

/// What of the declared spill reaches the separator; `None` where no containment is for it.
pub fn arrives<T: Trail>(t: &mut T, found: Option<&Containments>, spill: Val<Volume>) -> Option<Val<Volume>> {
    const AMONG: &str = "nothing, what is short, and all of it";
    let found = found?;
    let none = Volume::from_si(0.0);
    let mut most: Option<Val<Volume>> = None;
    for b in found.balances.iter().filter(|b| b.declared) {
        let label = format!("spill that passes {}", found.names(&b.chain));
        let choose = |t: &mut T, volume, because| {
            provenance::choose(
                t,
                &label,
                Some((&GAL, &M3) as Pair),
                volume,
                AMONG,
                because,
                &[b.spare.val.at, spill.at],
            )
        };
        let passes = match b.passing(spill.q) {
            Passing::Nothing if b.keeps_all() => choose(t, none, "it is held ahead, whatever is not known"),
            Passing::Nothing => {
                let because =
                    "it is held ahead, whatever is not known: what is short is short of the largest vessel's oil";
                choose(t, none, because)
            }
            Passing::Short => {
                reckon!(t, &label, [GAL, M3], (need = b.need, held = b.held, spill = spill)(need - held).min(spill))
            }
            Passing::Open => choose(t, spill.q, "a drain stands open and lets it through"),
            Passing::Unknown => {
                choose(t, spill.q, "how much is held was not said for sure: counted as if nothing were")
            }
        };
        most = Some(match most {
            Some(before) if before.q >= passes.q => before,
            _ => passes,
        });
    }
    most
}
