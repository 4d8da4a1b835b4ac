//! The way of the droplets through one unit: everything that decides how much free oil is left.
//!
//! One [`Passage`] holds the droplets, the water and the stages as one flow meets them; bounds, stages one by one and studies
//! are the same passage with one thing changed.

use super::State;
use super::portion::{Portion, all_alike, arrives};
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::droplets::Droplets;
use crate::basis::fluids::Season;
use crate::provenance::{Node, Stop, Trail, Val, Whence, given};
use crate::stages::gravity_zone::TankPass;
use crate::stages::mesh::MeshPass;
use crate::stages::plate_pack::PlatesPass;
use crate::stages::{Pass, Passes, Stage, Through, in_a_row};
use crate::train::unit::Unit;
use crate::{by, gather, reckon, say};
use std::sync::Arc;
use stillrise_handbook::separation::plate_removal::GapRegime;
use stillrise_handbook::separation::remaining_oil::{self, Liquids, RiseLaw};
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::separation::{drag_cut, stokes_cut};
use stillrise_units::catalog::{ONE, PERCENT, UM};
use stillrise_units::{
    Concentration, Density, Flow, Length, Ratio, Temperature, Typed, Velocity, Viscosity, print, ratio,
};

/// Bounds, recorded once for a whole performance.
#[derive(Debug, Clone)]
pub struct Fixed {
    /// Equal flow in all gaps.
    pub equal: Val<Ratio>,
    /// An ideal tank.
    pub ideal: Val<TankModel>,
    /// A mixed tank.
    pub mixed: Val<TankModel>,
    /// Laminar gaps.
    pub laminar: Val<GapRegime>,
    /// Mixed gaps.
    pub turbulent: Val<GapRegime>,
    /// The smallest and the largest size that counts.
    pub sizes: [Val<Length>; 2],
    /// The index of a tank model that has none.
    pub no_index: Val<Ratio>,
}

impl Fixed {
    /// Records them.
    pub fn new<T: Trail>(t: &mut T) -> Self {
        t.section("bounds");
        let percent = Some((&PERCENT, &PERCENT) as _);
        let size = Some((&UM, &UM) as _);
        let um = |x: f64| Length::of(x, &UM);
        let at = "bound";
        Self {
            equal: given(t, "equal flow in all gaps", percent, ratio(0.0), at, "0 %"),
            ideal: given(t, "ideal tank", None, TankModel::Ideal, at, "ideal"),
            mixed: given(t, "mixed tank", None, TankModel::Mixed, at, "mixed"),
            laminar: given(t, "laminar gaps", None, GapRegime::Laminar, at, "laminar"),
            turbulent: given(t, "mixed gaps", None, GapRegime::Turbulent, at, "turbulent"),
            sizes: [
                given(t, "smallest size that counts", size, um(0.0), Whence::Definition, "all"),
                given(t, "largest size that counts", size, um(1e9), Whence::Definition, "all"),
            ],
            no_index: given(t, "index of a tank model without one", Some((&ONE, &ONE)), ratio(0.0), at, "not used"),
        }
    }
}

/// Water and oil on the way.
#[derive(Debug, Clone, Copy)]
pub struct Fluids {
    /// Density of the water.
    pub water: Val<Density>,
    /// Density of the oil.
    pub oil: Val<Density>,
    /// Viscosity of the water.
    pub viscosity: Val<Viscosity>,
    /// Temperature of the water.
    pub temperature: Val<Temperature>,
    /// Law of rise.
    pub law: Val<RiseLaw>,
}

impl Fluids {
    /// The droplet that rises at a velocity.
    ///
    /// # Errors
    /// [`Stop`] when the law has no answer.
    pub fn just_rises<T: Trail>(&self, t: &mut T, label: &str, v: Val<Velocity>) -> Result<Val<Length>, Stop> {
        match self.law.q {
            RiseLaw::Stokes => by!(t, label, stokes_cut::diameter(v, self.water, self.oil, self.viscosity)),
            RiseLaw::Drag => by!(t, label, drag_cut::diameter(v, self.water, self.oil, self.viscosity)),
        }
    }

    /// Whether the oil rises.
    #[must_use]
    pub fn rises(&self) -> bool {
        self.oil.q < self.water.q
    }
}

/// Everything that decides how much free oil is left.
#[derive(Debug, Clone)]
pub struct Passage {
    /// The droplets that arrive, those first that bring most of the oil; never empty.
    pub arriving: Arc<[Portion]>,
    /// Water and oil.
    pub fluids: Fluids,
    /// Counted from this size.
    pub from: Val<Length>,
    /// Counted up to this size.
    pub to: Val<Length>,
    /// The stages in the direction of flow.
    pub stages: Passes,
    /// Free oil and, of it, what does not rise; `None` where all of it does.
    pub heavy: Option<(Val<Concentration>, Val<Concentration>)>,
    /// Where the liquids stand together in the trail.
    liquids: Node,
}

fn liquids<T: Trail>(t: &mut T, f: &Fluids) -> Node {
    gather!(t, "water and oil", Liquids { rho_w: f.water, rho_o: f.oil, mu: f.viscosity, t: f.temperature, law: f.law })
        .at
}

impl Passage {
    /// The passage of a flow through a unit.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn new<T: Trail>(
        t: &mut T,
        basis: &Basis,
        unit: &Unit,
        fixed: &Fixed,
        case: &Case,
        flow: Val<Flow>,
        (season, state): (Season, State),
    ) -> Result<Self, Stop> {
        let own = case.own.as_ref().map(|own| &own.water[usize::from(season == Season::Warm)]);
        let water = own.unwrap_or_else(|| basis.fluids.water(season));
        let way = Through { basis, fixed, flow, water, state };
        let mut stages = Passes::new();
        for stage in unit.stages.all() {
            stages.extend(stage.pass(t, unit, &way)?);
        }
        let mut portion = |share: Option<Val<Ratio>>, droplets: &Droplets| Portion {
            share,
            droplets: droplets.clone(),
            at: arrives(t, droplets),
        };
        let brought = case.brings.iter().filter_map(|one| Some((one.share, basis.arrivals.get(one.arrival)?)));
        let mut arriving: Vec<Portion> = brought.map(|(share, one)| portion(share, &one.droplets)).collect();
        if arriving.is_empty() {
            arriving.push(portion(None, &basis.droplets));
        }
        if let Some(droplets) = all_alike(t, &arriving) {
            arriving = vec![Portion { share: None, at: arrives(t, &droplets), droplets }];
        }
        let fluids = Fluids {
            water: water.density,
            oil: case.own.as_ref().map_or_else(
                || basis.fluids.heaviest(season).density(season),
                |own| own.oil[usize::from(season == Season::Warm)],
            ),
            viscosity: water.viscosity,
            temperature: water.temperature,
            law: basis.methods.rise,
        };
        let liquids = liquids(t, &fluids);
        let [from, to] = fixed.sizes;
        let heavy = case.content.as_ref().and_then(|c| Some((c.free, c.heavy?)));
        Ok(Self { arriving: arriving.into(), fluids, from, to, stages, heavy, liquids })
    }

    /// Share of the free oil that is left; all sizes are to count where a part of it does not rise.
    ///
    /// # Errors
    /// [`Stop`] when an argument lies outside the formula's domain.
    pub fn left<T: Trail>(&self, t: &mut T, label: &str) -> Result<Val<Ratio>, Stop> {
        let left = self.rising(t, label)?;
        let Some((free, heavy)) = self.heavy.filter(|(free, _)| free.q.si() > 0.0) else { return Ok(left) };
        // What does not rise passes every stage.
        Ok(
            reckon!(t, label, [PERCENT, PERCENT], (left = left, free = free, heavy = heavy) left + (ratio(1.0) - left) * (heavy / free)),
        )
    }

    /// The same of the oil that rises: of what each water brings, by its share.
    fn rising<T: Trail>(&self, t: &mut T, label: &str) -> Result<Val<Ratio>, Stop> {
        let mut sum: Option<Val<Ratio>> = None;
        for portion in self.arriving.iter() {
            let Some(share) = portion.share else { return self.of_portion(t, label, portion) };
            let median = portion.droplets.d50.q;
            let own = say!(T, "{label}, droplets of a median of {}", print::in_prose(median.si(), &UM));
            let left = self.of_portion(t, &own, portion)?;
            sum = Some(match sum {
                None => reckon!(t, label, [PERCENT, PERCENT], (left = left, share = share) left * share),
                Some(sum) => {
                    reckon!(t, label, [PERCENT, PERCENT], (sum = sum, left = left, share = share) sum + left * share)
                }
            });
        }
        sum.ok_or_else(|| Stop::said("droplets", "no water brings any"))
    }

    /// Share left of the oil that comes in some droplets.
    fn of_portion<T: Trail>(&self, t: &mut T, label: &str, portion: &Portion) -> Result<Val<Ratio>, Stop> {
        let stages = in_a_row(t, self.stages.iter().filter(|stage| stage.counts()).map(Pass::catch));
        let (d, f) = (&portion.droplets, &self.fluids);
        let droplets = remaining_oil::Droplets {
            law: d.law.q,
            d50: d.d50.q,
            shape: d.shape.q,
            largest: d.largest.q,
            table: d.table.q.clone(),
        };
        let liquids = Liquids { rho_w: f.water.q, rho_o: f.oil.q, mu: f.viscosity.q, t: f.temperature.q, law: f.law.q };
        let droplets = Val { q: droplets, at: portion.at };
        let liquids = Val { q: liquids, at: self.liquids };
        by!(t, label, remaining_oil::fraction(droplets, self.from, self.to, liquids, stages))
    }

    /// With other stages.
    fn through(&self, stages: Passes) -> Self {
        Self {
            arriving: Arc::clone(&self.arriving),
            fluids: self.fluids,
            from: self.from,
            to: self.to,
            stages,
            heavy: self.heavy,
            liquids: self.liquids,
        }
    }

    fn with_each(&self, change: impl FnMut(&Pass) -> Pass) -> Self {
        self.through(self.stages.iter().map(change).collect())
    }

    /// Everything ideal: the least that can be left.
    #[must_use]
    pub fn ideal<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        self.with_each(|stage| stage.ideal(t, fixed))
    }

    /// Tank and gaps mixed: the most.
    #[must_use]
    pub fn mixed<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        self.with_each(|stage| stage.mixed(t, fixed))
    }

    /// With every stage counted, also those that earn no credit in the headline.
    #[must_use]
    pub fn with_all(&self) -> Self {
        self.with_each(|stage| stage.counted(true))
    }

    /// With those alone that always count.
    #[must_use]
    pub fn without_credit(&self) -> Self {
        self.with_each(|stage| stage.counted(false))
    }

    /// Of the oil that rises alone.
    #[must_use]
    pub fn of_what_rises(self) -> Self {
        Self { heavy: None, ..self }
    }

    /// Counted from one size up to another.
    #[must_use]
    pub fn counted_over(self, from: Val<Length>, to: Val<Length>) -> Self {
        Self { from, to, ..self }
    }

    /// With the first so many stages alone, all of them counted.
    #[must_use]
    pub fn first(&self, count: usize) -> Self {
        self.through(self.stages.iter().take(count).map(|stage| stage.counted(true)).collect())
    }

    /// Through one stage alone.
    #[must_use]
    pub fn alone(&self, stage: Pass) -> Self {
        self.through(Passes::from_iter([stage]))
    }

    /// At another flow, in a unit of another area.
    #[must_use]
    pub fn scaled<T: Trail>(&self, t: &mut T, more: Val<Ratio>, area: Val<Ratio>) -> Self {
        self.with_each(|stage| stage.scaled(t, more, area))
    }

    /// With a share of the plates lost.
    #[must_use]
    pub fn with_plates_lost<T: Trail>(&self, t: &mut T, lost: Val<Ratio>) -> Self {
        self.with_each(|stage| match stage {
            Pass::Plates(plates) => Pass::Plates(plates.less(t, lost)),
            other => other.clone(),
        })
    }

    /// With the first open water of another overflow rate.
    #[must_use]
    pub fn with_tank(&self, tank: TankPass) -> Self {
        let mut other = self.clone();
        if let Some(slot) = other.stages.iter_mut().find(|stage| matches!(stage, Pass::Tank(_))) {
            *slot = Pass::Tank(tank);
        }
        other
    }

    /// The droplets that bring most of the oil.
    #[must_use]
    pub fn droplets(&self) -> &Droplets {
        &self.arriving[0].droplets
    }

    /// Whether any of them were measured, size by size.
    #[must_use]
    pub fn are_measured(&self) -> bool {
        self.arriving.iter().any(|portion| !portion.droplets.table.q.0.is_empty())
    }

    /// Of other droplets: what each portion of them becomes.
    #[must_use]
    pub fn of<T: Trail>(&self, t: &mut T, mut other: impl FnMut(&mut T, &Droplets) -> Droplets) -> Self {
        let mut changed = |portion: &Portion| {
            let droplets = other(t, &portion.droplets);
            Portion { share: portion.share, at: arrives(t, &droplets), droplets }
        };
        let arriving: Vec<Portion> = self.arriving.iter().map(&mut changed).collect();
        Self { arriving: arriving.into(), ..self.clone() }
    }

    /// With another median of those that bring most of the oil; the others are finer or coarser by as much.
    #[must_use]
    pub fn of_median<T: Trail>(&self, t: &mut T, d50: Val<Length>) -> Self {
        let first = self.droplets().d50;
        let mut is_first = true;
        self.of(t, |t, droplets| {
            let own = if core::mem::replace(&mut is_first, false) {
                d50
            } else {
                let label = "median of the others, finer or coarser by as much";
                reckon!(t, label, [UM, UM], (own = droplets.d50, then = d50, now = first) own * (then / now))
            };
            Droplets { d50: own, ..droplets.clone() }
        })
    }

    /// In other water, or of other oil.
    #[must_use]
    pub fn within<T: Trail>(&self, t: &mut T, fluids: Fluids) -> Self {
        let liquids = liquids(t, &fluids);
        Self { fluids, liquids, ..self.clone() }
    }

    /// Its first open water.
    #[must_use]
    pub fn tank(&self) -> Option<&TankPass> {
        self.stages.iter().find_map(|stage| if let Pass::Tank(tank) = stage { Some(tank) } else { None })
    }

    /// Its plates.
    #[must_use]
    pub fn plates(&self) -> Option<&PlatesPass> {
        self.stages.iter().find_map(|stage| if let Pass::Plates(plates) = stage { Some(plates) } else { None })
    }

    /// Its mesh.
    #[must_use]
    pub fn mesh(&self) -> Option<&MeshPass> {
        self.stages.iter().find_map(|stage| if let Pass::Mesh(mesh) = stage { Some(mesh) } else { None })
    }
}
