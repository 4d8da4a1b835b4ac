//! What would hold what is short: a deeper one, a wider one, or more of the same.

use super::Containments;
use crate::provenance::{Trail, Val};
use crate::{by, reckon, say};
use stillrise_handbook::vessel::{containment_count, containment_depth};
use stillrise_units::{Area, Length, Ratio, Typed, Volume};

/// What would hold what is short, each for itself.
#[derive(Debug, Clone, Copy)]
pub struct Further {
    /// What is short.
    pub short: Val<Volume>,
    /// Depth of the containment of the spill, at its area.
    pub depth: Option<Val<Length>>,
    /// Its area, at its depth.
    pub area: Option<Val<Area>>,
    /// How many more of the kind.
    pub count: Option<Val<Ratio>>,
}

/// Finds them; none when nothing is short.
pub fn further<T: Trail>(
    t: &mut T,
    found: &Containments,
    place: usize,
    need: Val<Volume>,
    held: Val<Volume>,
    zero: Val<Volume>,
) -> Option<Further> {
    if need.q <= held.q {
        return None;
    }
    let c = &found.all[place];
    let short = reckon!(t, "volume that is short", [GAL, M3], (need = need, held = held) need - held);
    let mut out = Further { short, depth: None, area: None, count: None };
    // Each further one takes rain of its own, and so does each further square of a wider one.
    let own_rain = c.own_catch && c.catch.is_some();
    let rain = if own_rain { c.rain.val } else { zero };
    if let Some(shape) = &c.shape {
        let all = reckon!(t, "what it would have to hold, all deducted", [GAL, M3], (now = c.holds.val, taken = shape.taken, short = short) now + taken + short);
        let label = format!("depth at which {} holds it", c.name);
        out.depth = by!(t, &label, containment_depth::depth(all, shape.clear, shape.open_share)).ok();
        let rain_depth = found.rain_depth.map(|d| d.val).filter(|_| own_rain);
        let net = match rain_depth {
            Some(rain) => {
                reckon!(t, "what a square of it adds beside its own rain", [IN, MM], (depth = shape.depth, share = shape.open_share, rain = rain) depth * share - rain)
            }
            None => {
                reckon!(t, "what a square of it adds", [IN, MM], (depth = shape.depth, share = shape.open_share) depth * share)
            }
        };
        if net.q.si() > 1e-9 {
            let label = format!("area at which {} holds it", c.name);
            out.area = Some(
                reckon!(t, &label, [FT2, M2], (area = shape.area.val, short = short, net = net) area + short / net),
            );
        }
    }
    let each = reckon!(t, "what one more of it holds beside its own rain", [GAL, M3], (holds = c.holds.val, rain = rain) holds - rain);
    if each.q.si() > 0.0 {
        out.count = by!(t, &say!(T, "further ones like {}", c.name), containment_count::count(short, each)).ok();
    }
    Some(out)
}
