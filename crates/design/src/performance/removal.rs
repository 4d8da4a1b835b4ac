//! What is removed: stage by stage, in both seasons, clean and at the end of the interval.

use super::{Depth, State};
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::Season;
use crate::basis::waters::Content;
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::train::unit::Unit;
use crate::{by, reckon};
use stillrise_handbook::hydraulics::mean_velocity;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::plate_removal::GapRegime;
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::separation::{
    gap_reynolds, plate_removal, remaining_oil, residence_time, stokes_cut, tank_removal,
};
use stillrise_units::catalog::{PERCENT, UM};
use stillrise_units::{Concentration, Flow, Length, Ratio, Time, Typed, Velocity, ratio};

/// A prediction with its two bounds. A bound that the [`Depth`] does not ask for repeats the prediction:
/// only the mixed one is held against limits, and only whoever prints needs the ideal one.
#[derive(Debug, Clone, Copy)]
pub struct Bounded {
    /// Everything ideal: the least that can be left.
    pub ideal: Val<Concentration>,
    /// Tank as chosen, laminar gaps with unequal flow.
    pub expected: Val<Concentration>,
    /// Tank and gaps mixed: the most.
    pub mixed: Val<Concentration>,
}

/// What leaves in one case, season and state.
#[derive(Debug, Clone)]
pub struct Removal {
    /// The case.
    pub case: String,
    /// Its place among the cases.
    pub case_index: usize,
    /// The season.
    pub season: Season,
    /// The state.
    pub state: State,
    /// Flow through one unit.
    pub flow: Val<Flow>,
    /// Overflow of the tank ahead of the pack.
    pub tank_overflow: Val<Velocity>,
    /// Overflow of the pack.
    pub pack_overflow: Val<Velocity>,
    /// Velocity in the gaps.
    pub gap_velocity: Val<Velocity>,
    /// Reynolds number of the gaps, on the chosen basis.
    pub reynolds: Val<Ratio>,
    /// Whether the gaps run laminar.
    pub regime: Val<GapRegime>,
    /// Droplet that rises at the overflow rate of the plates, by Stokes: caught wholly if all gaps run equal.
    pub cut: Option<Val<Length>>,
    /// Time in the unit up to the crest.
    pub residence: Val<Time>,
    /// Share of the free oil left: ideal, expected, mixed.
    pub left: [Val<Ratio>; 3],
    /// Free oil out.
    pub free: Bounded,
    /// Free, emulsified and dissolved oil out.
    pub total: Bounded,
    /// What came in.
    pub content: Content,
}

/// One droplet class and what each stage leaves of it.
#[derive(Debug, Clone)]
pub struct Class {
    /// Diameter.
    pub d: Val<Length>,
    /// Rise.
    pub rise: Val<Velocity>,
    /// Caught in the tank.
    pub tank: Val<Ratio>,
    /// Caught by the plates, of what reaches them.
    pub pack: Val<Ratio>,
    /// Left behind both.
    pub left: Val<Ratio>,
}

/// Overflow rates of a flow through the unit.
struct Rates {
    tank: Val<Velocity>,
    pack: Val<Velocity>,
    gap: Val<Velocity>,
}

fn rates<T: Trail>(t: &mut T, basis: &Basis, unit: &Unit, flow: Val<Flow>, state: State) -> Result<Rates, Stop> {
    let l = &unit.layout;
    let tank =
        reckon!(t, "overflow rate ahead of the pack", [GPM_FT2, M_H], (flow = flow, area = l.tank_area) flow / area);
    let (plates, open) = if state.is_end() {
        let lost = basis.methods.fouling;
        (
            reckon!(t, "plate area left at the end of the interval", [FT2, M2], (area = l.plate_area, lost = lost) area * (ratio(1.0) - lost)),
            reckon!(t, "open section left at the end of the interval", [FT2, M2], (area = l.open_area, lost = lost) area * (ratio(1.0) - lost)),
        )
    } else {
        (l.plate_area, l.open_area)
    };
    let pack = reckon!(t, "overflow rate of the plates", [GPM_FT2, M_H], (flow = flow, area = plates) flow / area);
    let gap = by!(t, "velocity in the gaps", mean_velocity::velocity(flow, open))?;
    Ok(Rates { tank, pack, gap })
}

/// What leaves in one case, season and state.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn removal<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &Unit,
    (case_index, case, content): (usize, &Case, &Content),
    flow: Val<Flow>,
    (season, state): (Season, State),
    depth: Depth,
) -> Result<Removal, Stop> {
    t.section(format_args!("removal: {}, {}, {}", case.name, season.name(), state.name()));
    let water = basis.fluids.water(season);
    let oil = basis.fluids.heaviest(season).density(season);
    let rates = rates(t, basis, unit, flow, state)?;
    let reynolds = by!(
        t,
        "Reynolds number of the gaps",
        gap_reynolds::reynolds(rates.gap, unit.frame.gap, water.kinematic, basis.methods.reynolds)
    )?;
    // Laminar flow between plates holds to some 2000 on four hydraulic radii, whatever basis is printed.
    let on_four = gap_reynolds::reynolds(rates.gap.q, unit.frame.gap.q, water.kinematic.q, ReynoldsBasis::ALL[0])?;
    let laminar = on_four.si() <= 2000.0;
    let regime = choose(
        t,
        "flow in the gaps",
        None,
        if laminar { GapRegime::Laminar } else { GapRegime::Turbulent },
        "laminar, turbulent",
        "laminar up to 2000 on four times the hydraulic radius",
        &[reynolds.at],
    );
    let residence = by!(t, "time in the unit", residence_time::time(unit.layout.water_volume, flow))?;
    let cut = if oil.q < water.density.q {
        Some(by!(
            t,
            "droplet that rises at the overflow rate of the plates",
            stokes_cut::diameter(rates.pack, water.density, oil, water.viscosity)
        )?)
    } else {
        None
    };
    let d = &basis.droplets;
    let law = basis.methods.rise;
    let none = given(t, "equal flow in all gaps", Some((&PERCENT, &PERCENT)), ratio(0.0), "bound", "0 %");
    let ideal = given(t, "ideal tank", None, TankModel::Ideal, "bound", "ideal");
    let mixed = given(t, "mixed tank", None, TankModel::Mixed, "bound", "mixed");
    let laminar = given(t, "laminar gaps", None, GapRegime::Laminar, "bound", "laminar");
    let turbulent = given(t, "mixed gaps", None, GapRegime::Turbulent, "bound", "turbulent");
    let spread = basis.methods.maldistribution;
    let mut left = |label: &str, tank: Val<TankModel>, spread: Val<Ratio>, regime: Val<GapRegime>| {
        by!(
            t,
            label,
            remaining_oil::fraction(
                d.d50,
                d.spread,
                water.density,
                oil,
                water.viscosity,
                law,
                rates.tank,
                tank,
                rates.pack,
                spread,
                regime
            )
        )
    };
    let low = (depth == Depth::Full).then(|| left("free oil left, ideal bound", ideal, none, laminar)).transpose()?;
    let expected = left("free oil left, expected", basis.methods.tank, spread, regime)?;
    let high =
        (depth != Depth::Screen).then(|| left("free oil left, mixed bound", mixed, spread, turbulent)).transpose()?;
    let left = [low.unwrap_or(expected), expected, high.unwrap_or(expected)];
    let mut out = |label: &str, share: Val<Ratio>| reckon!(t, label, [MG_L, MG_L], (free = content.free, left = share) free * left);
    let free = Bounded {
        ideal: out("free oil out, ideal bound", left[0]),
        expected: out("free oil out, expected", left[1]),
        mixed: out("free oil out, mixed bound", left[2]),
    };
    let mut all = |label: &str, free: Val<Concentration>| reckon!(t, label, [MG_L, MG_L], (free = free, emulsified = content.emulsified, dissolved = content.dissolved) free + emulsified + dissolved);
    let total = Bounded {
        ideal: all("total oil out, ideal bound", free.ideal),
        expected: all("total oil out, expected", free.expected),
        mixed: all("total oil out, mixed bound", free.mixed),
    };
    Ok(Removal {
        case: case.name.clone(),
        case_index,
        season,
        state,
        flow,
        tank_overflow: rates.tank,
        pack_overflow: rates.pack,
        gap_velocity: rates.gap,
        reynolds,
        regime,
        cut,
        residence,
        left,
        free,
        total,
        content: content.clone(),
    })
}

/// Diameters of the class table.
pub const CLASSES: [f64; 9] = [10.0, 20.0, 30.0, 40.0, 60.0, 90.0, 120.0, 150.0, 200.0];

/// The class table of one removal.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn classes<T: Trail>(t: &mut T, basis: &Basis, removal: &Removal) -> Result<Vec<Class>, Stop> {
    t.section(format_args!("droplet classes: {}, {}, {}", removal.case, removal.season.name(), removal.state.name()));
    let water = basis.fluids.water(removal.season);
    let oil = basis.fluids.heaviest(removal.season).density(removal.season);
    let regime = removal.regime;
    let mut rows = Vec::new();
    for um in CLASSES {
        let d = given(t, "class", Some((&UM, &UM)), Length::of(um, &UM), "class table", &format!("{um} µm"));
        let rise = crate::train::rise(t, "rise of the class", basis, d, water.density, oil, water.viscosity)?;
        let tank =
            by!(t, "caught ahead of the pack", tank_removal::removal(rise, removal.tank_overflow, basis.methods.tank))?;
        let pack = by!(
            t,
            "caught by the plates",
            plate_removal::removal(rise, removal.pack_overflow, basis.methods.maldistribution, regime)
        )?;
        let left = reckon!(
            t,
            "left of the class",
            [ONE, ONE],
            (tank = tank, pack = pack)(ratio(1.0) - tank) * (ratio(1.0) - pack)
        );
        rows.push(Class { d, rise, tank, pack, left });
    }
    Ok(rows)
}
