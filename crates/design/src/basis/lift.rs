//! The rising main of the feed pump: the head that it asks for at a flow, and where the pump's curve meets it.

use super::stated::{StandIn, declared, is_tried, stand_in, stated, stated_or};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Lift as Block;
use crate::enquiry::keys::{Key, Quantity};
use crate::provenance::{Off, Stop, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::hydraulics::pipes::PIPE_SIZES;
use stillrise_handbook::hydraulics::{
    circle_area, colebrook, full_pipe_head, laminar_friction, mean_velocity, pipe_reynolds, pump_operating_point,
};
use stillrise_handbook::page::Series;
use stillrise_units::catalog::{FT, GPM, IN, M, M_S, M3_H, MIL, MM, ONE};
use stillrise_units::{Flow, KinematicViscosity, Length, Ratio, Typed, Velocity, ratio};

/// The rising main as it is taken.
#[derive(Debug, Clone)]
pub struct Main {
    /// Static lift.
    pub lift: Val<Length>,
    /// Its length.
    pub length: Val<Length>,
    /// Its bore.
    pub bore: Val<Length>,
    /// Roughness of its wall.
    pub roughness: Val<Length>,
    /// Sum of the loss coefficients.
    pub fittings: Val<Ratio>,
    /// Viscosity of the coldest water.
    nu: Val<KinematicViscosity>,
    /// The main that resists least and the one that resists most within the plausible ranges of what is assumed of it:
    /// length, bore, roughness, coefficients; nothing where all was stated.
    ends: Option<[Pipe; 2]>,
}

/// Length, bore, roughness and coefficients of a main.
type Pipe = (Length, Length, Length, Ratio);

/// The head that so much water asks for.
#[derive(Debug, Clone)]
pub struct Duty {
    /// Pumps that lift it.
    pub pumps: Val<Ratio>,
    /// All of the flow.
    pub flow: Val<Flow>,
    /// Static lift and losses.
    pub head: Val<Length>,
}

/// Why a curve does not meet its system.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Missed {
    /// Even without flow its head is below the static lift.
    CannotLift,
    /// The two would meet at less flow than the curve begins with.
    Below,
    /// The two would meet beyond the last point of the curve.
    Beyond,
}

impl Missed {
    /// In print.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Missed::CannotLift => "the curve does not reach the static lift: the pump cannot lift the water",
            Missed::Below => "curve and system would meet ahead of the first point of the curve",
            Missed::Beyond => "curve and system would meet beyond the last point of the curve",
        }
    }
}

/// Where pumps meet their system.
#[derive(Debug, Clone)]
pub struct Point {
    /// Pumps that run.
    pub pumps: Val<Ratio>,
    /// All of their flow and the head at it, or why there is none.
    pub at: Result<(Val<Flow>, Val<Length>), Missed>,
    /// The flow at which they were said to run.
    pub stated: Option<Val<Flow>>,
    /// How far that is from the flow found, as a share of it; negative where less was said.
    pub off: Option<Val<Ratio>>,
    /// Least and largest flow within the plausible ranges of what is assumed of the main, either nothing where the curve does
    /// not meet that main; nothing at all where all was stated.
    pub within: Option<[Option<Val<Flow>>; 2]>,
}

/// What the pump has to lift.
#[derive(Debug, Clone)]
pub struct Lift {
    /// Its rising main; nothing where the static lift was not said.
    pub main: Option<Main>,
    /// The curve of one pump.
    pub curve: Option<Val<Series>>,
    /// What the stated flows ask for.
    pub duties: Vec<Duty>,
    /// Where the curve meets the system: one pump alone, then all that run together.
    pub points: Vec<Point>,
}

impl Lift {
    /// The flow at which one pump alone meets the system.
    #[must_use]
    pub fn one(&self) -> Option<Val<Flow>> {
        self.points.first().and_then(|p| p.at.ok()).map(|(flow, _)| flow)
    }
    /// That of all that run together.
    #[must_use]
    pub fn all(&self) -> Option<Val<Flow>> {
        self.points.last().and_then(|p| p.at.ok()).map(|(flow, _)| flow)
    }
}

/// How many pumps there are: of those whose rate was stated, else of those that have the curve.
#[must_use]
pub fn pumps(e: &Enquiry) -> usize {
    match e.inlet.rate.0.len() {
        0 => e.lift.as_ref().and_then(|l| l.pumps.0).map_or(1, |n| n as usize),
        n => n,
    }
}

/// Finds main, curve and operating points; nothing where nobody said a word of it.
pub(super) fn lift<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, nu: Val<KinematicViscosity>) -> Option<Lift> {
    let block = e.lift.as_ref()?;
    t.section("rising main");
    let main = main(t, w, e, block, nu);
    let curve = block.curve.is_given().then(|| {
        let source = block.curve.claims.source(block.curve().place());
        given(t, "curve of one pump", None, block.curve.rows.clone(), &source, &block.curve.text)
    });
    let mut lift = Lift { main, curve, duties: Vec::new(), points: Vec::new() };
    if let (Some(main), Some(curve)) = (&lift.main, &lift.curve) {
        let n = pumps(e);
        let counts = core::iter::once(1).chain((n > 1).then_some(n));
        let points = counts.map(|n| {
            let pumps = running(t, n);
            point(t, main, curve, pumps)
        });
        lift.points = points.collect();
    }
    Some(lift)
}

fn running<T: Trail>(t: &mut T, n: usize) -> Val<Ratio> {
    let count = f64::from(u32::try_from(n).unwrap_or(u32::MAX));
    given(t, "pumps that run", Some((&ONE, &ONE)), ratio(count), "pumps", &say!(T, "{n}"))
}

/// What the stated flows ask for, one pump alone and all together, and how far they are from the operating points.
pub(super) fn duties<T: Trail>(t: &mut T, lift: &mut Lift, one: Option<Val<Flow>>, all: Option<Val<Flow>>, n: usize) {
    t.section("rising main");
    let Some(main) = lift.main.clone() else { return };
    let flows = one.into_iter().map(|flow| (1, flow)).chain(all.filter(|_| n > 1).map(|flow| (n, flow)));
    for (k, (count, flow)) in flows.enumerate() {
        let pumps = running(t, count);
        let label = if count > 1 { "head at the rate of all pumps" } else { "head at the rate of one pump" };
        if let Ok(head) = head(t, label, &main, flow) {
            lift.duties.push(Duty { pumps, flow, head });
        }
        let Some(point) = lift.points.get_mut(k) else { continue };
        point.stated = Some(flow);
        if let Ok((found, _)) = point.at {
            let label = "rate stated over that of the operating point, less one";
            point.off =
                Some(reckon!(t, label, [PERCENT, PERCENT], (stated = flow, found = found) stated / found - ratio(1.0)));
        }
    }
}

/// A stated value, or a default with its range, the declared one where there is no other; the range is kept.
fn or_default<T: Trail, Q: Typed>(
    t: &mut T,
    w: &WhatIf,
    key: Key<'_, Quantity<Q>>,
    label: &str,
    stand_in: Option<StandIn<'_, Q>>,
) -> (Val<Q>, Option<[Q; 2]>) {
    let stand_in = stand_in.unwrap_or_else(|| declared(key.spec));
    let ends = (!key.said.is_given() && !is_tried(w, &key)).then(|| stand_in.ends());
    (stated_or(t, w, key, label, || stand_in), ends)
}

fn main<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, block: &Block, nu: Val<KinematicViscosity>) -> Option<Main> {
    let lift = stated(t, w, "static lift", &block.static_lift)?;
    let (length, lengths) = or_default(t, w, block.length(), "length of the rising main", None);
    let why = "common practice: no more than some {4.9 ft/s|1.5 m/s} in a rising main; schedule 40, one nominal size either way";
    let usual = stand_in(usual_bore(e, block), why);
    let (bore, bores) = or_default(t, w, block.bore(), "bore of the rising main", Some(usual));
    let (roughness, walls) = or_default(t, w, block.roughness(), "roughness of the rising main", None);
    let (fittings, sums) = or_default(t, w, block.fittings(), "loss coefficients of the rising main", None);
    let open = lengths.is_some() || bores.is_some() || walls.is_some() || sums.is_some();
    let ends = open.then(|| {
        let of = |k: usize| {
            let at = |ends: Option<[Length; 2]>, taken: Length, k: usize| {
                ends.map_or(taken, |[low, high]| if k == 0 { low } else { high })
            };
            let sum = sums.map_or(fittings.q, |[low, high]| if k == 0 { low } else { high });
            // A narrow bore resists most.
            (at(lengths, length.q, k), at(bores, bore.q, 1 - k), at(walls, roughness.q, k), sum)
        };
        [of(0), of(1)]
    });
    Some(Main { lift, length, bore, roughness, fittings, nu, ends })
}

/// The bore of the smallest nominal pipe in which the flow of all pumps stays below 1.5 m/s, and those beside it.
fn usual_bore(e: &Enquiry, block: &Block) -> (Length, Length, Length) {
    let rates = e.inlet.rate.0.iter().filter_map(|rate| rate.q()).map(Typed::si);
    let stated: f64 = rates.sum();
    let last = block.curve.rows.0.last().map_or(0.0, |(flow, _)| *flow);
    let n = f64::from(u32::try_from(pumps(e)).unwrap_or(1));
    // A pump runs at some six tenths of the flow at which its curve ends.
    let flow = if stated > 0.0 { stated } else { 0.6 * last * n };
    let fast = |bore: Length| {
        let area = circle_area::area(bore).ok();
        let v = area.and_then(|area| mean_velocity::velocity(Flow::from_si(flow), area).ok());
        v.is_none_or(|v| v > Velocity::of(1.5, &M_S))
    };
    let bores: Vec<Length> = PIPE_SIZES.iter().map(|size| size.inside()).collect();
    let at = bores.iter().position(|bore| !fast(*bore)).unwrap_or(bores.len().saturating_sub(1));
    let size = |k: usize| bores.get(k).copied();
    let taken = size(at).unwrap_or_else(|| Length::of(50.0, &MM));
    let below = at.checked_sub(1).and_then(size).unwrap_or(taken * 0.75);
    let above = size(at + 1).unwrap_or(taken * 1.25);
    (below, taken, above)
}

/// Static lift and losses of so much water.
fn head<T: Trail>(t: &mut T, label: &str, main: &Main, flow: Val<Flow>) -> Result<Val<Length>, Stop> {
    let area = by!(t, "section of the rising main", circle_area::area(main.bore))?;
    let v = by!(t, "velocity in the rising main", mean_velocity::velocity(flow, area))?;
    let re = by!(t, "Reynolds number of the rising main", pipe_reynolds::reynolds(v, main.bore, main.nu))?;
    let f = if re.q.si() < 2300.0 {
        by!(t, "friction factor, laminar", laminar_friction::factor(re))?
    } else {
        let rough = reckon!(t, "relative roughness", [ONE, ONE], (roughness = main.roughness, bore = main.bore) roughness / bore);
        by!(t, "friction factor", colebrook::factor(re, rough))?
    };
    let lost =
        by!(t, "head lost in the rising main", full_pipe_head::head(main.fittings, f, main.length, main.bore, v))?;
    Ok(reckon!(t, label, [FT, M], (lift = main.lift, lost = lost) lift + lost))
}

/// Where so many pumps meet the system.
fn point<T: Trail>(t: &mut T, main: &Main, curve: &Val<Series>, pumps: Val<Ratio>) -> Point {
    let several = pumps.q.si() > 1.0;
    let label =
        if several { "flow at which all pumps meet the system" } else { "flow at which one pump meets the system" };
    let found = by!(
        t,
        label,
        pump_operating_point::flow(
            curve,
            pumps,
            main.lift,
            main.fittings,
            main.length,
            main.bore,
            main.roughness,
            main.nu
        )
    );
    let label =
        if several { "head at which all pumps meet the system" } else { "head at which one pump meets the system" };
    let at = match found {
        Ok(flow) => head(t, label, main, flow).map(|head| (flow, head)).map_err(|_| Missed::Beyond),
        Err(_) => Err(missed(main, curve, pumps)),
    };
    let within = main.ends.filter(|_| T::RECORDS && at.is_ok()).map(|[least, most]| {
        let mut end = |label: &str, pipe: Pipe| {
            let (length, bore, roughness, fittings) = pipe;
            let why = "its plausible range, the end that makes the flow so";
            let length = choose(t, "length", Some((&FT, &M)), length, "its range", why, &[main.length.at]);
            let bore = choose(t, "bore", Some((&IN, &MM)), bore, "its range", why, &[main.bore.at]);
            let rough = choose(t, "roughness", Some((&MIL, &MM)), roughness, "its range", why, &[main.roughness.at]);
            let k = choose(t, "coefficients", Some((&ONE, &ONE)), fittings, "their range", why, &[main.fittings.at]);
            by!(t, label, pump_operating_point::flow(curve, pumps, main.lift, k, length, bore, rough, main.nu)).ok()
        };
        let low = end("the same with the main that resists most", most);
        [low, end("the same with the main that resists least", least)]
    });
    Point { pumps, at, stated: None, off: None, within }
}

/// Why the curve does not meet the system.
fn missed(main: &Main, curve: &Val<Series>, pumps: Val<Ratio>) -> Missed {
    let (first, last) = (curve.q.0.first(), curve.q.0.last());
    let rises = |(flow, gives): &(f64, f64)| {
        let flow = given(&mut Off, "", None, Flow::from_si(flow * pumps.q.si()), "", "");
        let asks = if flow.q.si() > 0.0 { head(&mut Off, "", main, flow).ok().map(|h| h.q) } else { Some(main.lift.q) };
        asks.is_none_or(|asks| asks.si() >= *gives)
    };
    match (first, last) {
        (Some(first), _) if first.0 <= 0.0 && rises(first) => Missed::CannotLift,
        (Some(first), _) if rises(first) => Missed::Below,
        _ => Missed::Beyond,
    }
}

/// The rate of one pump, or of all together, read off its curve where none was stated.
pub(super) fn rate<T: Trail>(t: &mut T, label: &str, found: Val<Flow>) -> Val<Flow> {
    let because = "no rate is stated, and there the pump meets its system";
    choose(t, label, Some((&GPM, &M3_H)), found.q, "flows on the curve of the pump", because, &[found.at])
}
