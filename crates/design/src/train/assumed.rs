//! Dimensions of a unit that stands which nobody sent: length, width and height must be stated, the rest is assumed
//! in stated proportions, each with its question and its plausible range (long because it is one list of proportions).
//!
//! All proportions are our proposal: what units of this kind commonly look like, from memory, no source behind the
//! figures. Ranges are so narrow that no two of them contradict one another.

use crate::arrangements::{Arrangement, Form, Side};
use crate::basis::stated::{assumed, declared, stand_in, stated, stated_or_usual};
use crate::enquiry::blocks::UnitBlock;
use crate::enquiry::keys::{Key, KeySpec, Quantity};
use crate::enquiry::range::Model;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, choose, given};
use crate::stages::plate_pack::PackWord;
use crate::stages::underflow::A_DIP_PIPE;
use crate::{reckon, say};
use stillrise_handbook::hydraulics::pipes::PIPE_SIZES;
use stillrise_handbook::page::Argument;
use stillrise_units::catalog::{FT_S, FT3, IN, M3, MM};
use stillrise_units::{Angle, Fault, Flow, Length, Typed, Velocity, Volume, math, print};

const L: Pair = (&IN, &MM);

/// Dimensions that were assumed, or worked from what was stated in their place.
#[derive(Debug, Default)]
pub struct Assumed {
    lengths: Vec<(&'static KeySpec, Val<Length>)>,
    /// Angle of the plates.
    pub angle: Option<Val<Angle>>,
}

impl Assumed {
    /// Whether all was stated.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.lengths.is_empty() && self.angle.is_none()
    }

    /// The dimension of this key, if it was assumed.
    #[must_use]
    pub fn get(&self, key: &'static KeySpec) -> Option<Val<Length>> {
        self.lengths.iter().find(|(known, _)| core::ptr::eq(*known, key)).map(|(_, value)| *value)
    }
}

/// Zones along the unit: label, key, share of the length that is left for those that nobody stated. The primary zone takes
/// the rest of it.
fn zones(m: &Model) -> [(&'static str, Key<'_, Quantity<Length>>, f64); 4] {
    [
        ("length of the inlet chamber", m.stages.inlet_chamber.length(), 0.08),
        ("length of the pack", m.stages.pack.length(), 0.35),
        ("length of the oil retention zone", m.stages.retention.length(), 0.15),
        ("length of the clear well", m.stages.clear_well.length(), 0.08),
    ]
}
/// Share of the primary zone among them.
const PRIMARY: f64 = 0.34;
/// How far a zone may be shorter or longer: with all at their longest the primary zone still keeps a tenth.
const OFF: f64 = 0.35;
/// The water is led into a nozzle no faster, as for a unit made to measure.
const NOZZLE: f64 = 2.0;

/// Where the dimensions of a described unit stand: `unit: dimensions`.
pub(super) fn dimensions_place() -> String {
    UnitBlock::default().dimensions().place()
}

/// What keeps a described unit from being laid out: the three dimensions that must be stated, and contradictions among
/// those that were.
pub fn faults(m: &Model, faults: &mut Vec<Fault>) {
    let mut fault =
        |reason: String, remedy: &str| faults.push(Fault::new(dimensions_place(), reason, remedy.to_owned()));
    let form = Arrangement::of(m).form();
    let sides = form.sides(m);
    let missing: Vec<&str> =
        sides.iter().filter(|side| !side.key.said.is_given()).map(|side| side.key.spec.name).collect();
    if !missing.is_empty() {
        let keys: Vec<&str> = sides.iter().map(|side| side.key.spec.name).collect();
        let remedy = format!("state {}; the rest is assumed where nobody knows it, and asked for", listed(&keys));
        fault(format!("lacks {}", missing.join(", ")), &remedy);
        return;
    }
    // With every dimension stated the layout itself says what does not fit.
    if m.missing().is_empty() && *m.outside != Some(true) {
        return;
    }
    let si = |q: &Quantity<Length>| q.q().map(Typed::si);
    let wall = if *m.outside == Some(true) { si(&m.wall).unwrap_or(0.0) } else { 0.0 };
    for side in &sides {
        if si(side.key.said).is_some_and(|x| x <= 2.0 * wall) {
            fault(format!("{} is no more than twice the wall", side.key.spec.name), "check both");
        }
    }
    if m.stages.pack.is_there.0 == Some(PackWord::None)
        && (m.stages.pack.length.is_given()
            || m.stages.pack.height.is_given()
            || m.stages.pack.volume.is_given()
            || m.stages.pack.gap.is_given())
    {
        fault("there is no pack, and dimensions of one are stated".to_owned(), "give one of the two");
    }
    if m.stages.pack.volume.is_given() && m.stages.pack.length.is_given() {
        fault("pack_volume and pack_length stand beside each other".to_owned(), "give one of the two");
    }
    let inner = |side: &Side<'_>| si(side.key.said).map(|x| x - f64::from(side.walls) * wall);
    let Some([inside, _, height]) = form.extents(m, inner) else { return };
    let along = [
        &m.stages.inlet_chamber.length,
        &m.stages.pack.length,
        &m.stages.mesh.thickness,
        &m.stages.retention.length,
        &m.stages.clear_well.length,
    ];
    let taken: f64 = along.into_iter().filter_map(si).sum();
    if taken >= inside {
        let [taken, inside] = [taken, inside].map(|x| print::with_unit(x, &MM));
        fault(
            format!("its internals, {taken} of them, leave nothing of an inside length of {inside}"),
            "check the lengths",
        );
    }
    let outlet = si(&m.stages.outlet.weir_crest).or(si(&m.stages.outlet.invert));
    for (name, z) in [("the outlet", outlet), ("the inlet", si(&m.stages.inlet.invert))] {
        if z.is_some_and(|z| z >= height) {
            fault(format!("{name} lies no lower than the top of the walls"), "check the levels, above the floor");
        }
    }
    let water = outlet.unwrap_or(height);
    if si(&m.stages.pack.bottom).unwrap_or(0.0) + si(&m.stages.pack.height).unwrap_or(0.0) >= water {
        fault("the pack reaches above the water".to_owned(), "check pack_bottom and pack_height");
    }
}

/// Several words as one reads them.
fn listed(words: &[&str]) -> String {
    match words {
        [front @ .., last] if !front.is_empty() => format!("{} and {last}", front.join(", ")),
        _ => words.concat(),
    }
}

/// Gathers what is assumed.
struct Gather<'a, T> {
    t: &'a mut T,
    w: &'a WhatIf,
    out: Assumed,
}

impl<T: Trail> Gather<'_, T> {
    /// A length that is stated, else assumed between `low` and `high`, SI.
    fn length(
        &mut self,
        label: &str,
        key: Key<'_, Quantity<Length>>,
        (low, value, high): (f64, f64, f64),
        why: &str,
    ) -> f64 {
        if let Some(stated) = key.said.q() {
            return stated.si();
        }
        let range = (Length::from_si(low), Length::from_si(value), Length::from_si(high));
        let why = say!(T, "our proposal: {why}");
        let found = assumed(self.t, self.w, &key, label, stand_in(range, why));
        self.out.lengths.push((key.spec, found));
        found.q.si()
    }
}

/// What is assumed of a unit of which some dimensions are stated; `flow` runs through one unit.
///
/// # Errors
/// [`Stop`] when length, width or height is not stated, or the internals stated fill the vessel.
pub fn dimensions<T: Trail>(t: &mut T, w: &WhatIf, m: &Model, flow: Flow) -> Result<Assumed, Stop> {
    let stop = |reason: &str| Stop {
        doing: format!("unit {}", m.model.as_deref().unwrap_or("stated unit")),
        reason: reason.to_owned(),
        formula: false,
    };
    if m.missing().is_empty() && *m.outside != Some(true) {
        return Ok(Assumed::default());
    }
    let form = Arrangement::of(m).form();
    let Some([mut length, mut width, mut height]) = form.extents(m, |side| side.key.said.q().map(Typed::si)) else {
        let keys: Vec<&str> = form.sides(m).iter().map(|side| side.key.spec.name).collect();
        return Err(stop(&format!("{} are not all stated", listed(&keys))));
    };
    t.section("unit: what is assumed of it");
    let mut g = Gather { t, w, out: Assumed::default() };
    if *m.outside == Some(true) {
        [length, width, height] = g.inside(m, form)?;
    }
    if [length, width, height].into_iter().any(|side| side <= 0.0) {
        return Err(stop("its walls leave no room between them"));
    }
    let share = |whole: f64, low: f64, value: f64, high: f64| (whole * low, whole * value, whole * high);
    // Levels, from the wall down.
    let outlet = match m.stages.outlet.weir_crest.q() {
        Some(crest) => share(crest.si(), 0.85, 0.95, 1.0),
        None => share(height, 0.65, 0.75, 0.8),
    };
    let outlet = g.length(
        "invert of the outlet pipe",
        m.stages.outlet.invert(),
        outlet,
        "75 % of the height of the walls; 95 % of the crest of a weir",
    );
    let crest = m.stages.outlet.weir_crest.q().map_or(outlet, Typed::si);
    let above = height - crest;
    g.length(
        "invert of the inlet nozzle",
        m.stages.inlet.invert(),
        (crest + 0.25 * above, crest + 0.5 * above, crest + 0.75 * above),
        "half-way between outlet and top of the walls",
    );
    g.bores(m, flow);
    let deep = crest;
    if form == Form::Upright {
        g.length(
            "mouth of the dip pipe",
            m.stages.underflow.lip().when(A_DIP_PIPE),
            share(deep, 0.25, 0.4, 0.6),
            "40 % of the depth of water",
        );
        g.length(
            "mouth of the inlet bend",
            m.stages.inlet_bend.mouth(),
            share(deep, 0.5, 0.7, 0.85),
            "70 % of the depth of water",
        );
        return Ok(g.out);
    }
    if !Arrangement::of(m).has_plates() {
        let lip = deep / 6.0;
        g.length(
            "lip of the downcomer",
            m.stages.underflow.lip(),
            (0.6 * lip, lip, 2.0 * lip),
            "a sixth of the depth of water",
        );
        g.zones(m, length, width, None).ok_or_else(|| stop("its internals fill the whole length"))?;
        return Ok(g.out);
    }
    let pack_height = g.length(
        "height of the pack",
        m.stages.pack.height(),
        share(deep, 0.5, 0.6, 0.7),
        "60 % of the depth of water",
    );
    let under = (deep - pack_height).max(0.0);
    let bottom = g.length(
        "underside of the pack",
        m.stages.pack.bottom(),
        share(under, 0.1, 0.25, 0.4),
        "a quarter of the depth that the pack leaves",
    );
    let lip = (bottom + 0.1 * pack_height).min(0.6 * deep);
    g.length(
        "lip of the downcomer",
        m.stages.underflow.lip(),
        (0.6 * lip, lip, (1.5 * lip).min(0.8 * deep)),
        "a tenth of the pack above its underside",
    );
    g.plates(m);
    g.zones(m, length, width, Some(pack_height)).ok_or_else(|| stop("its internals fill the whole length"))?;
    Ok(g.out)
}

impl<T: Trail> Gather<'_, T> {
    /// Inside dimensions from outside ones: two walls off length and width, one floor off the height.
    fn inside(&mut self, m: &Model, form: Form) -> Result<[f64; 3], Stop> {
        let wall = stated_or_usual(self.t, self.w, m.wall(), "thickness of the walls");
        let mut inner = Vec::with_capacity(3);
        for side in form.sides(m) {
            let outside = stated(self.t, self.w, &say!(T, "outside {}", side.key.spec.name), side.key.said)
                .ok_or_else(|| Stop::said("unit", format!("outside {} is not stated", side.key.spec.name)))?;
            let t = &mut *self.t;
            let value = if side.walls == 2 {
                reckon!(t, side.label, [IN, MM], (outside = outside, wall = wall) outside - wall - wall)
            } else {
                reckon!(t, side.label, [IN, MM], (outside = outside, floor = wall) outside - floor)
            };
            self.out.lengths.push((side.key.spec, value));
            inner.push((side.key.spec.name, value.q.si()));
        }
        let of = |side: &Side<'_>| inner.iter().find(|(key, _)| *key == side.key.spec.name).map(|(_, x)| *x);
        form.extents(m, of).ok_or_else(|| Stop::said("unit", "its sides are not all stated"))
    }

    /// Bores of the nozzles: the smallest nominal pipe in which the flow stays slow.
    fn bores(&mut self, m: &Model, flow: Flow) {
        let section = flow.si() / Velocity::of(NOZZLE, &FT_S).si();
        let wanted = math::max(2.0 * math::sqrt(section / core::f64::consts::PI), Length::of(2.9, &IN).si());
        let last = PIPE_SIZES.len().saturating_sub(1);
        let at = PIPE_SIZES.iter().position(|s| s.inside().si() >= wanted).unwrap_or(last);
        let bore = |k: usize| PIPE_SIZES.get(k).map_or_else(|| Length::from_si(wanted), |s| s.inside());
        let range = (bore(at.saturating_sub(1)), bore(at), bore((at + 1).min(last)));
        for (label, key) in
            [("bore of the outlet pipe", m.stages.outlet.pipe()), ("bore of the inlet nozzle", m.stages.inlet.pipe())]
        {
            if key.said.is_none() {
                let key = key.in_units(L.0, L.1);
                let why = "our proposal: the nominal pipe, {3 in|DN 80} or larger, in which the flow stays below {2 ft/s|0.61 m/s}";
                let value = assumed(self.t, self.w, &key, label, stand_in(range, why));
                self.out.lengths.push((key.spec, value));
            }
        }
    }

    /// Gap and angle of the plates.
    fn plates(&mut self, m: &Model) {
        let key = m.stages.pack.gap();
        if !key.said.is_given() {
            let gap = assumed(self.t, self.w, &key, "clear gap between plates", declared(key.spec));
            self.out.lengths.push((key.spec, gap));
        }
        let key = m.stages.pack.angle();
        if !key.said.is_given() {
            self.out.angle = Some(assumed(self.t, self.w, &key, "angle of the plates", declared(key.spec)));
        }
    }

    /// Zones along the unit, in what the stated ones leave of it; `None` when they leave nothing.
    ///
    /// An open tank has neither pack nor zone behind it.
    fn zones(&mut self, m: &Model, length: f64, width: f64, pack_height: Option<f64>) -> Option<()> {
        let zones = || {
            let all = zones(m).into_iter().enumerate();
            all.filter(|(k, _)| pack_height.is_some() || !matches!(k, 1 | 2))
        };
        let mut left = length - m.stages.mesh.thickness.q().map_or(0.0, Typed::si);
        let mut open = PRIMARY;
        let volume = m.stages.pack.volume.q().filter(|_| !m.stages.pack.length.is_given()).zip(pack_height);
        let from_volume = volume.map(|(volume, height)| self.pack(m, volume, width, height));
        for (k, (_, key, part)) in zones() {
            // An answer that is tried takes its length from the others as one that is given does.
            let tried = self.w.0.get(&*key.path()).and_then(Length::from_arg).map(Typed::si);
            let known = if k == 1 { from_volume } else { None };
            match key.said.q().map(Typed::si).or(known).or(tried) {
                Some(x) => left -= x,
                None => open += part,
            }
        }
        if left <= 0.0 {
            return None;
        }
        for (k, (label, key, part)) in zones() {
            if k == 1 && from_volume.is_some() {
                continue;
            }
            let value = left * part / open;
            let range = (value * (1.0 - OFF), value, value * (1.0 + OFF));
            let why = say!(T, "{} % of the length that is left for it", print::digits(part / open * 100.0, 2));
            self.length(label, key, range, &why);
        }
        Some(())
    }

    /// Length of a pack of which volume and height are known; it fills the width.
    fn pack(&mut self, m: &Model, volume: Volume, width: f64, height: f64) -> f64 {
        let text = m.stages.pack.volume.claim().map_or_else(String::new, |c| c.written.text.clone());
        let place = dimensions_place();
        let at = given(self.t, "volume of the pack", Some((&FT3, &M3)), volume, &place, &text).at;
        let length = Length::from_si(volume.si() / (width * height));
        let because = "its volume over the inside width and its height";
        let found = choose(self.t, "length of the pack", Some(L), length, "the volume stated", because, &[at]);
        self.out.lengths.push((m.stages.pack.length().spec, found));
        length.si()
    }
}
