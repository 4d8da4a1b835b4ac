//! The way of the solids through one unit: what settles ahead of the pack, what between its plates, by size.

use super::ladder::STUDY;
use super::passage::Fixed;
use super::removal::Removal;
use super::storage::Storage;
use crate::basis::Basis;
use crate::by;
use crate::provenance::{Pair, Stop, Trail, Val, choose, given};
use crate::reckon;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::grit_settling::GrainShape;
use stillrise_handbook::separation::plate_removal::GapRegime;
use stillrise_handbook::separation::tank_removal::TankModel;
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
    /// Share of all solids left behind the tank.
    pub tank: Val<Ratio>,
    /// Share left behind the plates.
    pub pack: Val<Ratio>,
    /// Dry solids that settle ahead of the pack, where the hopper is.
    pub ahead: Val<MassRate>,
    /// Dry solids that settle between the plates and slide off them.
    pub between: Val<MassRate>,
    /// Velocity that scours the finest of them off the floor; `None` for those that cohere, below 20 µm, and for
    /// grains no heavier than the water.
    pub scour: Option<Val<Velocity>>,
}

/// Everything that decides how much of the solids is left.
#[derive(Debug, Clone)]
pub(super) struct Grains {
    d50: Val<Length>,
    spread: Val<Ratio>,
    table: Val<Series>,
    from: Val<Length>,
    to: Val<Length>,
    density: Val<Density>,
    water: Val<Density>,
    nu: Val<KinematicViscosity>,
    shape: Val<GrainShape>,
    v_tank: Val<Velocity>,
    tank: Val<TankModel>,
    index: Val<Ratio>,
    v_pack: Val<Velocity>,
    unequal: Val<Ratio>,
    regime: Val<GapRegime>,
}

impl Grains {
    /// The way of a removal's flow, cold; the tank is taken as mixed.
    pub(super) fn new(basis: &Basis, fixed: &Fixed, usual: &Removal) -> Self {
        let (s, water, p) = (&basis.solids, &basis.fluids.cold, &usual.passage);
        Self {
            d50: s.d50,
            spread: s.spread,
            table: s.table.clone(),
            from: fixed.sizes[0],
            to: fixed.sizes[1],
            density: s.density,
            water: water.density,
            nu: water.kinematic,
            shape: basis.methods.grains,
            v_tank: p.v_tank,
            tank: fixed.mixed,
            index: fixed.no_index,
            v_pack: p.v_sinking,
            unequal: p.spread,
            regime: p.regime,
        }
    }

    /// The same with the plates loaded otherwise.
    pub(super) fn at(self, v_pack: Val<Velocity>) -> Self {
        Self { v_pack, ..self }
    }

    /// Share of the solids that is left.
    pub(super) fn left<T: Trail>(&self, t: &mut T, label: &str) -> Result<Val<Ratio>, Stop> {
        let g = self;
        by!(
            t,
            label,
            remaining_solids::fraction(
                g.d50, g.spread, g.table, g.from, g.to, g.density, g.water, g.nu, g.shape, g.v_tank, g.tank, g.index,
                g.v_pack, g.unequal, g.regime
            )
        )
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
    t.section(format_args!("{STUDY}, solids by size: {}, cold, clean", usual.case));
    let plates = Grains::new(basis, fixed, usual);
    let tank = Grains { v_pack: fixed.absent, ..plates.clone() };
    let inlet = Grains { v_tank: fixed.absent, ..tank.clone() };
    let (beta, friction) = camp(t);
    let mut from = fixed.sizes[0];
    let mut rows = Vec::new();
    for k in 1..=BANDS.len() {
        let to = match BANDS.get(k) {
            Some(um) => given(t, "end of a band", Some(SIZE), Length::of(*um, &UM), "bands", &format!("{um} µm")),
            None => fixed.sizes[1],
        };
        let part = |g: &Grains| Grains { from, to, ..g.clone() };
        let arrives = part(&inlet).left(t, "solids that arrive in the band, of all")?;
        let behind = part(&tank).left(t, "left behind the tank, of all")?;
        let pack = part(&plates).left(t, "left behind the plates, of all")?;
        let ahead = reckon!(t, "dry solids that settle ahead of the pack", [LB_D, KG_D],
            (all = storage.dry, arrives = arrives, tank = behind) all * (arrives - tank));
        let between = reckon!(t, "dry solids that settle between the plates", [LB_D, KG_D],
            (all = storage.dry, tank = behind, pack = pack) all * (tank - pack));
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
        rows.push(GrainBand { from, to, arrives, tank: behind, pack, ahead, between, scour });
        from = to;
    }
    Ok(rows)
}
