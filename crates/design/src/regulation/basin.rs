//! The chain of API Publication 421, from rise velocity to length, in the order of the source. Methods differ in droplet,
//! water, shape and factor.

use super::Worksheet;
use crate::provenance::{Stop, Trail, Val, choose};
use crate::{by, reckon};
use stillrise_handbook::separation::api_factor::FactorRounding;
use stillrise_handbook::separation::{
    api_area, api_channels, api_cross_section, api_factor, api_horizontal_velocity, api_length,
};
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Area, Flow, Length, Ratio, Typed, Velocity, math};

/// How depth and width of a channel are chosen.
pub(super) struct Shape {
    /// Least depth.
    pub(super) least: Length,
    /// Width over depth.
    pub(super) wide: f64,
    /// Among what the depth is chosen.
    pub(super) among: &'static str,
    /// Why so.
    pub(super) because: &'static str,
}

/// Which velocity the factor and the length are taken at.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum At {
    /// That of the channels as chosen, which may be below the highest allowed.
    Own,
    /// The highest allowed.
    Allowed,
}

/// A basin as a method has it.
pub(super) struct Basin {
    pub(super) width: Val<Length>,
    pub(super) channels: Val<Ratio>,
    /// Length by the factor alone.
    pub(super) by_factor: Val<Length>,
    /// Least surface, of all channels.
    pub(super) surface: Val<Area>,
    /// Highest velocity.
    pub(super) allowed: Val<Velocity>,
}

/// Works the chain; its values are taken up in the sheet under the source's symbols.
///
/// # Errors
/// [`Stop`] where the table of the factor ends, or the oil does not rise.
pub(super) fn basin<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    (flow, rise): (Val<Flow>, Val<Velocity>),
    shape: &Shape,
    rounding: Val<FactorRounding>,
    at: At,
) -> Result<Basin, Stop> {
    let allowed = sheet.term("V_Hmax", by!(t, "highest horizontal velocity", api_horizontal_velocity::velocity(rise))?);
    let section = sheet.term("A_c", by!(t, "least cross-section", api_cross_section::area(flow, allowed))?);
    let channels = sheet.term("n", by!(t, "least number of channels", api_channels::count(section))?);
    let each = section.q.si() / channels.q.si();
    let depth = Length::from_si(math::max(math::sqrt(each / shape.wide), shape.least.si()));
    let inputs = [section.at, channels.at];
    let depth = choose(t, "depth of the water", Some((&FT, &M)), depth, shape.among, shape.because, &inputs);
    let depth = sheet.term("d", depth);
    let width = if shape.wide == 2.0 {
        reckon!(t, "width of a channel", [FT, M], (d = depth) d * 2.0)
    } else {
        reckon!(t, "width of a channel", [FT, M], (d = depth) d * 2.5)
    };
    let width = sheet.term("B", width);
    let velocity = match at {
        At::Allowed => allowed,
        At::Own => {
            let own = reckon!(t, "horizontal velocity in the channels as chosen", [FT_MIN, M_H], (q = flow, n = channels, b = width, d = depth) q / (n * b * d));
            sheet.term("V_H", own)
        }
    };
    let ratio =
        reckon!(t, "horizontal velocity over rise velocity", [ONE, ONE], (v_h = velocity, v_t = rise) v_h / v_t);
    let ratio = sheet.term("V_H/V_t", ratio);
    let factor = by!(t, "factor for turbulence and short-circuiting", api_factor::factor(ratio, rounding))?;
    let factor = sheet.term("F", factor);
    let by_factor = by!(t, "length by the factor", api_length::length(factor, velocity, rise, depth))?;
    let by_factor = sheet.term("L", by_factor);
    let surface = sheet.term("A_H", by!(t, "least surface of all channels", api_area::area(factor, flow, rise))?);
    Ok(Basin { width, channels, by_factor, surface, allowed })
}
