//! The rule of thumb beside the prediction: the plain API basin that the same flow would ask for.

use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::{by, reckon, record};
use stillrise_handbook::separation::{
    api_area, api_channels, api_cross_section, api_factor, api_horizontal_velocity, api_length, stokes_rise,
};
use stillrise_units::catalog::{FT, M, UM};
use stillrise_units::{Area, Flow, Length, Ratio, Typed, Velocity, math};

record! {
    /// A plain API basin for droplets of 150 µm, for comparison only.
    Basin {
        /// rise of a droplet of 150 µm
        rise: Velocity;
        /// channels
        channels: Ratio;
        /// depth of the water
        depth: Length;
        /// width of a channel
        width: Length;
        /// velocity along it
        velocity: Velocity;
        /// factor on the area
        factor: Ratio;
        /// length
        length: Length;
        /// surface that the droplet asks for
        least: Area;
        /// surface of all channels
        area: Area;
    }
}

/// The basin for the design flow, heaviest oil, coldest water.
///
/// # Errors
/// [`Stop`] when the table of the factor ends, or no oil rises.
pub fn basin<T: Trail>(t: &mut T, basis: &Basis, flow: Val<Flow>) -> Result<Basin, Stop> {
    t.section("rule of thumb: plain API basin");
    let water = basis.fluids.water(Season::Cold);
    let oil = basis.fluids.heaviest(Season::Cold).cold;
    let d = given(
        t,
        "droplet of an API basin",
        Some((&UM, &UM)),
        Length::of(150.0, &UM),
        "API Publication 421 (1990)",
        "150 µm",
    );
    let rise = by!(t, "rise of that droplet", stokes_rise::rise(d, water.density, oil, water.viscosity))?;
    let allowed = by!(t, "velocity allowed", api_horizontal_velocity::velocity(rise))?;
    let section = by!(t, "least cross-section", api_cross_section::area(flow, allowed))?;
    let channels = by!(t, "channels", api_channels::count(section))?;
    // Depth between 3 and 8 ft, width two and a half times the depth: within the rule's shape.
    let feet = |x: f64| Length::of(x, &FT);
    let each = section.q.si() / channels.q.si();
    let depth = Length::from_si(math::max(math::sqrt(each / 2.5), feet(3.0).si()));
    let depth = choose(
        t,
        "depth",
        Some((&FT, &M)),
        depth,
        "{3 to 8 ft|0.914 to 2.44 m}",
        "two fifths of the width, and {3 ft|0.914 m} or more",
        &[section.at, channels.at],
    );
    let width = reckon!(t, "width", [FT, M], (depth = depth) depth * 2.5);
    let velocity = reckon!(t, "velocity along the basin", [FT_MIN, MM_S], (flow = flow, n = channels, width = width, depth = depth) flow / (n * width * depth));
    let ratio = reckon!(t, "velocity over rise", [ONE, ONE], (velocity = velocity, rise = rise) velocity / rise);
    let factor = by!(t, "factor for turbulence and short-circuiting", api_factor::factor(ratio, basis.methods.factor))?;
    let by_factor = by!(t, "length by the factor", api_length::length(factor, velocity, rise, depth))?;
    let length = reckon!(t, "length, at least five widths", [FT, M], (length = by_factor, width = width) length.max(5.0 * width));
    let least = by!(t, "least surface", api_area::area(factor, flow, rise))?;
    let area = reckon!(
        t,
        "surface",
        [FT2, M2],
        (length = length, width = width, n = channels, least = least)(length * width * n).max(least)
    );
    Ok(Basin { least, rise, channels, depth, width, velocity, factor, length, area })
}
