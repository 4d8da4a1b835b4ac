//! A job: the enquiry and all that follows from it.

use crate::basis::{self, Basis, Ready};
use crate::claims;
use crate::enquiry::Enquiry;
use crate::performance::installation::{Installation, Stands};
use crate::performance::site::site;
use crate::performance::{self, Depth, Performance};
use crate::provenance::{Ledger, Off, Stop, Trail, WhatIf};
use crate::train::{self, Source, Train};
use crate::triage::{self, Line};

/// Basis, train and performance around one unit, and where the chain stopped if it did.
#[derive(Debug, Clone, Default)]
pub struct Design {
    /// Findings of the triage, weightiest first.
    pub triage: Vec<Line>,
    /// What is designed for.
    pub basis: Option<Basis>,
    /// The train.
    pub train: Option<Train>,
    /// What it will do.
    pub performance: Option<Performance>,
    /// Branches that could not go on.
    pub stops: Vec<Stop>,
}

/// A settled job.
#[derive(Debug, Clone)]
pub struct Job {
    /// The enquiry.
    pub enquiry: Enquiry,
    /// What follows from it.
    pub design: Design,
    /// The trail of every value.
    pub ledger: Ledger,
}

/// Builds triage and basis.
pub fn begin<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Design {
    begun(t, w, e, |t| basis::basis(t, w, e))
}

/// The same on what no answer changes, found before.
pub fn begin_on<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, ready: &Ready<'_>) -> Design {
    begun(t, w, e, |t| basis::basis_on(t, w, ready))
}

fn begun<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, basis: impl FnOnce(&mut T) -> Result<Basis, Stop>) -> Design {
    let mut design = Design { triage: triage::triage(e), ..Design::default() };
    t.speaks(e.system());
    claims::record(t, w, e);
    match basis(t) {
        Ok(basis) => {
            triage::add_heavy_oils(&mut design.triage, e, &basis);
            design.basis = Some(basis);
        }
        Err(stop) => design.stops.push(stop),
    }
    design
}

/// Takes a design that was completed to [`Depth::Screen`] on to [`Depth::Limits`], nothing recorded; `begun` is the one
/// that it was completed from.
#[must_use]
pub fn deepen(begun: &Design, mut design: Design) -> Design {
    // How products weigh was judged by what the screen found.
    design.triage.clone_from(&begun.triage);
    let Design { triage, basis, train, performance, stops } = &mut design;
    if let (Some(basis), Some(train), Some(found)) = (basis, train, performance.as_mut()) {
        let blocked = triage::blocked(triage);
        match performance::deepen(basis, train, blocked.as_deref(), found) {
            Ok(()) => triage::weigh_products(triage, found),
            Err(stop) => {
                *performance = None;
                stops.push(stop);
            }
        }
    }
    design
}

/// How a unit would stand on the site, by the levels alone; nothing recorded. `None` where no such unit can be laid out.
#[must_use]
pub fn would_stand(e: &Enquiry, w: &WhatIf, begun: &Design, source: &Source<'_>) -> Option<Installation> {
    let basis = begun.basis.as_ref()?;
    let unit = train::unit_of(&mut Off, w, source).ok()?;
    site(&mut Off, w, e, &unit, basis.feed.pumped).ok().map(|site| site.installation)
}

/// Builds train and performance on a basis already found, to the depth asked for.
pub fn complete<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    mut design: Design,
    source: &Source<'_>,
    count: u32,
    depth: Depth,
) -> Design {
    let Some(basis) = &design.basis else { return design };
    match train::train(t, w, e, basis, source, count) {
        Err(stop) => design.stops.push(stop),
        Ok(mut train) => {
            let blocked = triage::blocked(&design.triage);
            match performance::performance(t, w, e, basis, &train, blocked.as_deref(), depth) {
                Ok(performance) => {
                    triage::weigh_products(&mut design.triage, &performance);
                    if performance.site.installation.stands.q == Stands::LiftPump {
                        train::polisher::beside_pump(&mut train, basis, e.system());
                    }
                    if depth == Depth::Full {
                        match train::around::around(t, w, e, basis, &train, &performance) {
                            Ok(around) => train.around = around,
                            Err(stop) => design.stops.push(stop),
                        }
                    }
                    design.performance = Some(performance);
                }
                Err(stop) => design.stops.push(stop),
            }
            design.train = Some(train);
        }
    }
    design
}
