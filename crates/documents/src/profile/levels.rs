//! Levels of the site on paper: true where they fit, at the edge and marked as broken where they lie beyond.

use crate::render::geometry::Rect;
use crate::section::place::{Section, zero};
use stillrise_search::Settled;
use stillrise_units::{Length, Typed, math};

/// Elevations that were stated, in the site's datum.
#[derive(Debug, Clone, Copy)]
pub struct Heights {
    /// Invert of the pipe that comes in.
    pub incoming: Option<Length>,
    /// Ground at the unit.
    pub ground: Option<Length>,
    /// Invert at the outfall.
    pub outfall: Option<Length>,
    /// Water there.
    pub tailwater: Option<Length>,
    /// Highest groundwater.
    pub groundwater: Option<Length>,
}

impl Heights {
    /// As the enquiry says.
    pub fn of(settled: &Settled) -> Heights {
        let e = &settled.job.enquiry;
        Heights {
            incoming: e.inlet.invert.q(),
            ground: e.site.ground.q(),
            outfall: e.outlet.invert.q(),
            tailwater: e.outlet.tailwater.q(),
            groundwater: e.site.groundwater.q(),
        }
    }

    fn all(&self) -> impl Iterator<Item = Length> {
        [self.incoming, self.ground, self.outfall, self.tailwater, self.groundwater].into_iter().flatten()
    }
}

/// A level on paper.
#[derive(Debug, Clone, Copy)]
pub struct Height {
    /// Its y, mm.
    pub y: f64,
    /// Whether it lies beyond the drawing, at whose edge it stands.
    pub beyond: bool,
    /// Its elevation.
    pub z: Length,
}

/// Levels of the way, on paper. What was not stated stands where it is drawn clearest, and is not marked.
pub struct Levels {
    /// Ground at the unit.
    pub ground: Option<Height>,
    /// Invert of the pipe that comes in.
    pub incoming: Option<Height>,
    /// Invert at the outfall.
    pub outfall: Option<Height>,
    /// Water there.
    pub tailwater: Option<Height>,
    /// Highest groundwater.
    pub groundwater: Option<Height>,
    /// Invert of the pipe from the sources as drawn.
    pub pipe: f64,
    /// Rim of what stands ahead, and the surfaces.
    pub rim: f64,
    /// Invert of the unit's inlet.
    pub inlet: f64,
    /// Invert of the unit's outlet.
    pub outlet: f64,
    /// Invert at the end of the outlet pipe.
    pub end: f64,
    /// Invert at the outfall as drawn.
    pub out: f64,
    /// Bore of the pipes, mm on paper.
    pub bore: f64,
    /// Whether heights are to scale.
    pub to_scale: bool,
}

/// Room that rain and a canopy take over the surfaces, mm.
const OVER: f64 = 18.0;
/// Levels nearer than this are drawn as one, mm.
const SAME: f64 = 0.8;

impl Levels {
    /// Finds them all. Without a unit whose floor is known nothing but the unit's own levels are to scale.
    pub fn new(settled: &Settled, section: Option<&Section>, heights: &Heights, drawing: &Rect) -> Levels {
        let floor = section.and_then(|s| s.performance?.site.floor.as_ref()).map(|floor| floor.q);
        let pumped = settled.job.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped);
        let (y0, y1) = (drawing.y0, drawing.y1);
        let true_y: Box<dyn Fn(Length) -> Option<f64> + '_> = match (section, floor) {
            (Some(s), Some(floor)) => Box::new(move |z| Some(s.at(zero(), z - floor).y)),
            (Some(_), None) => Box::new(|_| None),
            (None, _) => without(heights, drawing),
        };
        let held = |z: Option<Length>, up: f64, down: f64| {
            let z = z?;
            let y = true_y(z)?;
            let held = math::max(y0 + up, math::min(y1 - down, y));
            Some(Height { y: held, beyond: (held - y).abs() > 0.05, z })
        };
        let middle = y0 + 0.45 * drawing.height();
        let (inlet, outlet, end, bore) = match section {
            Some(s) => {
                let unit = s.unit();
                let bore = s.view.scale.mm(unit.inlet.bore.q);
                let outlet = s.at(zero(), unit.outlet.invert.q).y;
                let lifted = unit.pump_out.is_some();
                let end = s.performance.filter(|_| !lifted).map_or(outlet, |p| s.at(zero(), p.site.outfall.q).y);
                let end = math::min(math::max(end, outlet), outlet + 8.0);
                (s.at(zero(), unit.inlet.invert.q).y, outlet, end, math::min(math::max(bore, 1.5), 4.5))
            }
            None => (middle, middle + 4.0, middle + 5.0, 2.0),
        };
        let incoming = held(heights.incoming, OVER + 7.0 + bore, 14.0);
        let ground = held(heights.ground, OVER, 4.0);
        // A sump lies in the ground, however deep the pipe to it.
        let usual = match ground.filter(|_| pumped) {
            Some(ground) => math::min(ground.y + bore + 4.5, y1 - 11.0),
            None if pumped => math::min(inlet + 12.0, y1 - 16.0),
            None => inlet,
        };
        let mut pipe = math::max(incoming.map_or(usual, |h| h.y), y0 + OVER + 7.0 + bore);
        if (pipe - inlet).abs() < SAME || (incoming.is_none() && !pumped) {
            pipe = inlet;
        }
        let outfall = held(heights.outfall, 14.0, 8.0);
        let mut out = outfall.map_or(end, |h| h.y);
        if (out - end).abs() < SAME {
            out = end;
        }
        let (inlet, outlet, end) = match section {
            Some(_) => (inlet, outlet, end),
            None => (if pumped { pipe - 10.0 } else { pipe }, out, out),
        };
        // Chambers reach the ground where the pipe lies in it.
        let at_ground = ground.filter(|g| g.y < pipe - bore - 2.5);
        Levels {
            ground,
            incoming,
            outfall,
            tailwater: held(heights.tailwater, 9.0, 5.0),
            groundwater: held(heights.groundwater, 9.0, 4.0),
            pipe,
            rim: at_ground.map_or(pipe - bore - 7.0, |g| g.y),
            inlet,
            outlet,
            end,
            out,
            bore,
            to_scale: floor.is_some(),
        }
    }
}

/// Heights without a unit: all that were stated within a third of the drawing.
fn without<'a>(heights: &Heights, drawing: &Rect) -> Box<dyn Fn(Length) -> Option<f64> + 'a> {
    let high = heights.all().map(|z| z.si()).reduce(f64::max);
    let low = heights.all().map(|z| z.si()).reduce(f64::min);
    let (Some(high), Some(low)) = (high, low) else { return Box::new(|_| None) };
    let span = math::max(high - low, 1.0);
    let (top, room) = (drawing.y0 + 26.0, math::max(drawing.height() - 46.0, 10.0));
    Box::new(move |z| Some(top + (high - z.si()) / span * room))
}
