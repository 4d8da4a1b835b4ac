//! A unit laid out: zones, areas, volumes, all from the frame, consistent by construction.

use super::frame::{Frame, Particulars};
use crate::provenance::{Stop, Trail, Val};
use crate::{by, reckon, record, say};
use stillrise_handbook::vessel::shape::Shape;
use stillrise_handbook::vessel::shapes::{Hopper, Rectangular, RectangularHopper};
use stillrise_handbook::vessel::{box_volume, hopper_volume, pack_area, pack_open_area, plate_count};
use stillrise_units::{Area, Length, Ratio, Typed, Volume};

record! {
    /// What follows from a frame. Areas in plan unless said otherwise.
    Layout {
        /// length of the tank between diffusion baffle and pack
        primary_length: Length;
        /// top of the pack
        pack_top: Length;
        /// plates in the pack
        plates: Ratio;
        /// projected area of all plates
        plate_area: Area;
        /// open cross-section between the plates
        open_area: Area;
        /// surface of the tank ahead of the pack, inlet chamber included
        tank_area: Area;
        /// area over which oil is held
        oil_area: Area;
        /// water up to the crest, above the floor
        water_volume: Volume;
        /// hopper below the floor
        hopper_volume: Volume;
    }
}

/// One zone along the unit.
#[derive(Debug, Clone)]
pub struct Zone {
    /// Its name.
    pub name: &'static str,
    /// Where it begins.
    pub from: Length,
    /// Its length.
    pub length: Val<Length>,
    /// Its water volume up to the crest, above the floor.
    pub volume: Val<Volume>,
}

/// One unit.
#[derive(Debug, Clone)]
pub struct Unit {
    /// Dimensions that were given or chosen.
    pub frame: Frame,
    /// What follows from them.
    pub layout: Layout,
    /// Zones in the direction of flow.
    pub zones: Vec<Zone>,
    /// The vessel.
    pub shape: Shape,
    /// What the range says beyond.
    pub particulars: Particulars,
}

/// Lays a unit out.
///
/// # Errors
/// [`Stop`] when the internals do not fit into the vessel.
pub fn lay_out<T: Trail>(t: &mut T, frame: Frame, particulars: Particulars) -> Result<Unit, Stop> {
    let name = particulars.model.clone();
    let stop = |reason: String| Stop { doing: format!("laying out unit {name}"), reason, formula: false };
    let f = &frame;
    let primary_length = reckon!(t, "length of the primary zone", [IN, MM],
        (length = f.length, inlet = f.inlet_length, pack = f.pack_length, mesh = f.mesh, retention = f.retention_length, well = f.well_length)
        length - inlet - pack - mesh - retention - well);
    if primary_length.q.si() < -1e-9 {
        return Err(stop(format!("its internals are {:.0} mm longer than the vessel", -primary_length.q.si() * 1e3)));
    }
    let pack_top =
        reckon!(t, "top of the pack", [IN, MM], (bottom = f.pack_bottom, height = f.pack_height) bottom + height);
    if f.lip.q >= f.crest.q {
        return Err(stop("the downcomer's lip is not under water".to_owned()));
    }
    if f.crest.q >= f.height.q {
        return Err(stop("the water would stand above the walls".to_owned()));
    }
    let hopper_room = f.inlet_length.q + primary_length.q;
    if f.hopper_length.q.si() > hopper_room.si() + 1e-9 {
        return Err(stop("the hopper is longer than inlet chamber and primary zone together".to_owned()));
    }
    let plates = by!(t, "plates in the pack", plate_count::count(f.pack_height, f.gap, f.plate, f.angle))?;
    let plate_area = by!(t, "projected area of the plates", pack_area::area(plates, f.pack_length, f.width))?;
    let open_area =
        by!(t, "open cross-section of the pack", pack_open_area::area(f.width, f.pack_height, f.gap, f.plate))?;
    let tank_area = reckon!(
        t,
        "surface ahead of the pack",
        [FT2, M2],
        (inlet = f.inlet_length, primary = primary_length, width = f.width)(inlet + primary) * width
    );
    let oil_area = reckon!(
        t,
        "area over which oil is held",
        [FT2, M2],
        (
            primary = primary_length,
            pack = f.pack_length,
            mesh = f.mesh,
            retention = f.retention_length,
            width = f.width
        )(primary + pack + mesh + retention)
            * width
    );
    let water_volume =
        by!(t, "water up to the crest, above the floor", box_volume::volume(f.length, f.width, f.crest))?;
    let hopper_volume = by!(
        t,
        "volume of the hopper",
        hopper_volume::volume(f.hopper_length, f.width, f.hopper_bottom, f.hopper_bottom, f.hopper_depth)
    )?;
    let mut zones = Vec::new();
    let mut from = Length::from_si(0.0);
    for (zone, length) in [
        ("inlet chamber", f.inlet_length),
        ("primary zone", primary_length),
        ("plate pack", f.pack_length),
        ("mesh", f.mesh),
        ("oil retention zone", f.retention_length),
        ("clear well", f.well_length),
    ] {
        let volume = by!(t, &say!(T, "water in the {zone}"), box_volume::volume(length, f.width, f.crest))?;
        zones.push(Zone { name: zone, from, length, volume });
        from += length.q;
    }
    let chamber = Rectangular { length: f.length.q, width: f.width.q, height: f.height.q };
    let shape = if f.hopper_depth.q.si() > 0.0 && f.hopper_length.q.si() > 0.0 {
        let hopper = Hopper {
            at: Length::from_si(0.0),
            top_length: f.hopper_length.q,
            bottom_length: f.hopper_bottom.q,
            bottom_width: f.hopper_bottom.q,
            depth: f.hopper_depth.q,
        };
        Shape::RectangularHopper(RectangularHopper { chamber, hoppers: vec![hopper] })
    } else {
        Shape::Rectangular(chamber)
    };
    let layout = Layout {
        primary_length,
        pack_top,
        plates,
        plate_area,
        open_area,
        tank_area,
        oil_area,
        water_volume,
        hopper_volume,
    };
    Ok(Unit { frame, layout, zones, shape, particulars })
}
