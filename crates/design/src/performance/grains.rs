//! The way of the solids through one unit: what settles ahead of the pack, what between its plates, by size.

use super::ladder::STUDY;
use super::passage::Fixed;
use super::removal::Removal;
use super::storage::Storage;
use crate::basis::Basis;
use crate::provenance::{Pair, Part, Stop, Trail, Val, choose, given};
use crate::stages::in_a_row;
use crate::{by, gather, reckon, say};
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::catch::Catch;
use stillrise_handbook::separation::{camp_scour, remaining_solids};
use stillrise_units::catalog::{ONE, PERCENT, UM};
use stillrise_units::{Density, KinematicViscosity, Length, MassRate, Ratio, Typed, Velocity, ratio};

/// Ends of the size bands of grains, µm: clay and fine silt, silt, coarse silt, fine, medium and coarse sand; the
/// last band is open.
pub const BANDS: [f64; 6] = [0.0, 6.0, 20.0, 63.0, 200.0, 630.0];
const SIZE: Pair = (&UM, &UM);

/// Solids of one band of sizes.
#[derive(Debug, Clone)]
pub struct GrainBand {
    /// From this size.
    pub from: Val<Length>,
    /// Up to this size.
    pub to: Val<Length>,
    /// Share of all solids that arrives in it.
    pub arrives: Val<Ratio>,
    /// In each stage that grains settle in, in the direction of flow.
    pub stages: Vec<Settles>,
    /// Velocity that scours the finest of them off the floor; `None` for those that cohere, below 20 µm, and for
    /// grains no heavier than the water.
    pub scour: Option<Val<Velocity>>,
}

/// What settles of a band in one stage.
#[derive(Debug, Clone, Copy)]
pub struct Settles {
    /// The stage's name.
    pub stage: &'static str,
    /// Share of all solids left behind it.
    pub left: Val<Ratio>,
    /// Dry solids that settle in it.
    pub settles: Val<MassRate>,
}

/// Everything that decides how much of the solids is left.
#[derive(Debug, Clone)]
pub(super) struct Grains {
    solids: Val<remaining_solids::Grains>,
    table: Val<Series>,
    from: Val<Length>,
    to: Val<Length>,
    water: Val<Density>,
    nu: Val<KinematicViscosity>,
    /// Stages that grains settle in, by name.
    stages: Vec<(&'static str, Val<Catch>)>,
}

impl Grains {
    /// The way of a removal's flow, cold, plates clean; open water is taken as mixed.
    pub(super) fn new<T: Trail>(t: &mut T, basis: &Basis, fixed: &Fixed, usual: &Removal) -> Self {
        use remaining_solids::Grains;
        let (s, water) = (&basis.solids, &basis.fluids.cold);
        let shape = basis.methods.grains;
        let solids = gather!(
            t,
            "solids that arrive",
            Grains { d50: s.d50, sg: s.spread, table: s.table, rho_s: s.density, shape: shape }
        );
        let lost = usual.state.is_end().then_some(basis.methods.fouling);
        let stages = usual.passage.stages.iter();
        let stages = stages.filter_map(|stage| Some((stage.name(), stage.for_grains(t, fixed, lost)?))).collect();
        let [from, to] = fixed.sizes;
        Self { solids, table: s.table.clone(), from, to, water: water.density, nu: water.kinematic, stages }
    }

    /// The first so many stages alone.
    fn first(&self, count: usize) -> Self {
        let mut first = self.clone();
        first.stages.truncate(count);
        first
    }

    /// Share of the solids that is left.
    pub(super) fn left<T: Trail>(&self, t: &mut T, label: &str) -> Result<Val<Ratio>, Stop> {
        let stages = in_a_row(t, self.stages.iter().map(|(_, catch)| catch.clone()));
        by!(t, label, remaining_solids::fraction(self.solids, self.from, self.to, self.water, self.nu, stages))
    }

    /// Share of the solids that is left if what is finer than the finest sieve passes whole; `left` as it is for a law.
    pub(super) fn left_at_most<T: Trail>(&self, t: &mut T, left: Val<Ratio>) -> Result<Val<Ratio>, Stop> {
        let Some((finest, share)) = self.table.q.0.first().copied() else { return Ok(left) };
        let because = "the first row of the sieved grains";
        let at = [self.table.at];
        let from = choose(t, "finest sieve", Some(SIZE), Length::from_si(finest), "the sieves", because, &at);
        let pair = Some((&PERCENT, &PERCENT) as Pair);
        let unparted = choose(t, "finer than the finest sieve", pair, ratio(share), "the sieves", because, &at);
        let coarser = Grains { from, ..self.clone() }.left(t, "solids left that were sieved, of all")?;
        Ok(
            reckon!(t, "solids left, at most", [PERCENT, PERCENT], (unparted = unparted, sieved = coarser) unparted + sieved),
        )
    }
}

/// Camp's constant and the friction factor of the floor, for scour.
pub(super) fn camp<T: Trail>(t: &mut T) -> (Val<Ratio>, Val<Ratio>) {
    let number = Some((&ONE, &ONE) as Pair);
    let beta = given(t, "Camp's constant", number, ratio(0.04), "from memory, 0.04 to 0.06", "0.04");
    (beta, given(t, "friction factor of the floor", number, ratio(0.03), "from memory", "0.03"))
}

/// Solids by size, on an average day, in the case that runs most, clean.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn bands<T: Trail>(
    t: &mut T,
    basis: &Basis,
    fixed: &Fixed,
    usual: &Removal,
    storage: &Storage,
) -> Result<Vec<GrainBand>, Stop> {
    t.part(Part::Study, format_args!("{STUDY}, solids by size: {}, cold, clean", usual.case));
    let all = Grains::new(t, basis, fixed, usual);
    let (beta, friction) = camp(t);
    let mut from = fixed.sizes[0];
    let mut rows = Vec::new();
    for k in 1..=BANDS.len() {
        let to = match BANDS.get(k) {
            Some(um) => given(t, "end of a band", Some(SIZE), Length::of(*um, &UM), "bands", &format!("{um} µm")),
            None => fixed.sizes[1],
        };
        let part = |g: Grains| Grains { from, to, ..g };
        let arrives = part(all.first(0)).left(t, "solids that arrive in the band, of all")?;
        let (mut stages, mut before) = (Vec::new(), arrives);
        for (k, (stage, _)) in all.stages.iter().enumerate() {
            let left = part(all.first(k + 1)).left(t, &say!(T, "left behind the {stage}, of all"))?;
            let settles = reckon!(t, &say!(T, "dry solids that settle, {stage}"), [LB_D, KG_D],
                (all = storage.dry, before = before, left = left) all * (before - left));
            stages.push(Settles { stage, left, settles });
            before = left;
        }
        let s = &basis.solids;
        // Finer grains cohere: Camp's formula knows no such sludge.
        let heavy = s.density.q > basis.fluids.cold.density.q && from.q >= Length::of(20.0, &UM);
        let scour = if heavy {
            let water = basis.fluids.cold.density;
            Some(by!(
                t,
                "velocity that scours its finest",
                camp_scour::velocity(beta, s.density, water, from, friction)
            )?)
        } else {
            None
        };
        rows.push(GrainBand { from, to, arrives, stages, scour });
        from = to;
    }
    Ok(rows)
}
