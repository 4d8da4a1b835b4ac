//! The range file: one block a model, the same machinery as the enquiry.

use super::fields::{Count, Curve, Flag, Text, Word};
use super::keys::{Block, Quantity, keys};
use super::reader::{Outcome, Slot, read, slots};
use crate::arrangements::Arrangement;
use stillrise_handbook::choice;
use stillrise_handbook::hydraulics::pipes;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_handbook::vessel::shapes::HeadForm;
use stillrise_units::catalog::*;
use stillrise_units::{Angle, Density, Flow, Length, Mass, Ratio, Velocity, Volume};

choice! {
    /// What holds the water level of the clear well.
    OutletControl {
        /// the outlet pipe itself
        Pipe "pipe",
        /// a weir ahead of the outlet pipe
        Weir "weir",
    }
}

/// Nominal pipe sizes, in inches and as DN.
pub(super) fn pipe_names() -> Vec<String> {
    let sizes = pipes::PIPE_SIZES.iter();
    sizes.flat_map(|row| [row.word.to_owned(), format!("DN {}", row.dn)]).collect()
}

choice! {
    /// Whether there are plates.
    PackWord {
        /// a pack of plates
        Present "present",
        /// an open tank without plates
        None "none",
    }
}
keys! {
    /// The maker's range as a whole.
    RangeHead "range" {
        /// Title
        title: Text = spec.like("\"Demo range\"").needed();
        /// Anything a reader must know
        note: Text = spec.like("\"invented\"");
        /// Currency of the prices
        currency: Text = spec.like("\"USD\"");
        /// Date of the prices
        date: Text = spec.like("\"2026-01\"");
        /// Which gallon a bare gallon is
        gallon: Word<super::blocks::GallonWord> = spec.like("\"us\"");
    }
}
/// When the lip is asked for of a unit that draws its water by a dip pipe.
pub const A_DIP_PIPE: &str = "a dip pipe";

keys! {
    /// One model. Elevations are above the floor, of a lying cylinder above its lowest line.
    Model "model" {
        /// Its designation
        model: Text = spec.like("\"Model A\"");
        /// Flow on the name plate
        rated_flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "10000 gpm").like("\"120 gpm\"");
        /// On what basis it is rated
        rated_basis: Text = spec.like("\"60 um, oil 850 kg/m3, 60 F, clean\"");
        /// How it is arranged; a rectangular tank above the ground where nothing is said
        arrangement: Word<Arrangement> = spec.like("\"plate tank\"");
        /// Inside length of the vessel; of a lying cylinder that of its shell, without the heads
        length: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "4000 in").like("\"120 in\"");
        /// Inside diameter of a cylinder
        diameter: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "200 in").like("\"72 in\"");
        /// Form of the heads of a lying cylinder; flat where nothing is said
        heads: Word<HeadForm> = spec.like("\"ellipsoidal\"");
        /// Number of parallel channels of a basin
        channels: Count = spec.like("2");
        /// Inside width; of a basin that of one channel
        width: Quantity<Length> = spec.units(&IN, &MM).between("6 in", "480 in").like("\"48 in\"");
        /// Whether length, width and height are outside dimensions
        outside: Flag = spec.like("true");
        /// Thickness of the walls, insulation and lining included
        wall: Quantity<Length> = spec.units(&IN, &MM).between("0.02 in", "24 in").like("\"0.25 in\"")
            .asks("How thick are the walls of the unit, insulation and lining included?")
            .usual("0.125 in", "0.25 in", "2 in", "our proposal: coated steel plate; plastic, concrete or insulation is thicker");
        /// Thickness of the steel of walls and floor, where they are lined or insulated
        steel: Quantity<Length> = spec.units(&IN, &MM).between("0.02 in", "4 in").like("\"0.1875 in\"");
        /// Greatest distance of the upright stiffeners of a wall; as long as the wall where there are none
        stiffener_spacing: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "4000 in").like("\"30 in\"");
        /// Whether a beam, an angle or a cover welded on stiffens the rim of an open tank
        stiff_rim: Flag = spec.like("true");
        /// Height of the walls above the floor; of an upright cylinder up to its top
        height: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "240 in").like("\"60 in\"");
        /// What holds the water level
        control: Word<OutletControl> = spec.like("\"pipe\"");
        /// Invert of the outlet pipe, above the floor
        outlet_invert: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "200 in").like("\"46 in\"")
            .asks("What is the height of the outlet pipe's invert above the floor of the unit?")
            .found("75 % of the height of the walls; 95 % of the crest of a weir");
        /// Nominal size of the outlet pipe
        outlet_pipe: Text = spec.named(pipe_names).like("\"6 in\"")
            .asks("How wide is the outlet pipe of the unit, inside or by its nominal size?")
            .found("the nominal pipe, 3 in or larger, in which the flow stays below 2 ft/s");
        /// Crest of the outlet weir, above the floor
        weir_crest: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "200 in").like("\"47 in\"");
        /// Length of the outlet weir
        weir_length: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "480 in").like("\"36 in\"");
        /// Invert of the inlet nozzle, above the floor
        inlet_invert: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "240 in").like("\"50 in\"")
            .asks("What is the height of the inlet pipe's invert above the floor of the unit?")
            .found("half-way between outlet and top of the walls");
        /// Nominal size of the inlet nozzle
        inlet_pipe: Text = spec.named(pipe_names).like("\"6 in\"")
            .asks("How wide is the inlet pipe of the unit, inside or by its nominal size?")
            .found("the nominal pipe, 3 in or larger, in which the flow stays below 2 ft/s");
        /// Length of the inlet chamber, up to the diffusion baffle
        inlet_length: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "400 in").like("\"12 in\"")
            .asks("How long is the inlet chamber, up to the first baffle?")
            .found("its share of the length that is left");
        /// Mouth of the bend that turns the incoming water down in an upright cylinder, above the floor
        inlet_mouth: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "240 in").like("\"40 in\"")
            .asks("What is the height of the mouth of the inlet's bend above the floor?")
            .found("70 % of the depth of water");
        /// Open share of the diffusion baffle
        baffle_open: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.5 %", "60 %").like("\"6 %\"")
            .usual("3 %", "5 %", "10 %", "from memory: 3 to 7 % of the section for slotted baffles");
        /// Opening left under the diffusion baffle; none where it reaches down to the hopper's floor
        baffle_gap: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "120 in").like("\"0 in\"")
            .asks("Does the first baffle reach down into the hopper, or can water pass under it: how high is the opening?")
            .found("none; as high as the hopper is deep at most, where that reaches beyond the inlet chamber");
        /// Length of the sludge hopper, along the unit
        hopper_length: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"24 in\"");
        /// Length of the hopper's bottom
        hopper_bottom: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"6 in\"");
        /// Depth of the hopper below the floor
        hopper_depth: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "120 in").like("\"14 in\"");
        /// Whether there is a pack of plates
        pack: Word<PackWord> = spec.like("\"present\"");
        /// Volume of the plate pack over all, in place of its length
        pack_volume: Quantity<Volume> = spec.units(&FT3, &M3).between("0.01 ft3", "100000 ft3").like("\"24 ft3\"");
        /// Length of the plate pack, along the flow
        pack_length: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "600 in").like("\"48 in\"")
            .asks("How long is the pack of plates?")
            .found("its share of the length that is left");
        /// Height of the plate pack
        pack_height: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "200 in").like("\"30 in\"")
            .asks("What is the height of the pack of plates?")
            .found("60 % of the depth of water");
        /// Underside of the plate pack, above the floor
        pack_bottom: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "120 in").like("\"6 in\"")
            .asks("What is the room below the pack of plates?")
            .found("a quarter of the depth that the pack leaves");
        /// Clear gap between plates, square to them
        gap: Quantity<Length> = spec.units(&IN, &MM).between("0.05 in", "6 in").like("\"0.75 in\"")
            .asks("What is the clear gap between the plates?")
            .usual("0.25 in", "0.75 in", "2 in", "our proposal: 3/4 in, the least gap of API 421, from memory; packs from 1/4 to 2 in are built");
        /// Thickness of a plate
        plate: Quantity<Length> = spec.units(&IN, &MM).between("0.005 in", "1 in").like("\"0.04 in\"");
        /// Angle of the plates to the horizontal
        angle: Quantity<Angle> = spec.units(&DEG, &DEG).between("5 deg", "80 deg").like("\"55 deg\"")
            .asks("At what angle to the horizontal do the plates stand?")
            .usual("45 deg", "55 deg", "60 deg", "our proposal: within the 45 to 60 degrees of published guides");
        /// How the water runs through the plates
        run: Word<PlateRun> = spec.like("\"cross-flow\"");
        /// Number of modules of the pack
        pack_modules: Count = spec.like("2");
        /// Whether the modules lift out from above without entering the vessel
        pack_lifts_out: Flag = spec.like("true");
        /// Length of a module of the pack, along the flow
        module_length: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "600 in").like("\"24 in\"");
        /// Width of a module of the pack, across the flow
        module_width: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "480 in").like("\"24 in\"");
        /// Number of manways of a closed vessel
        manways: Count = spec.like("2");
        /// Clear opening of a manway
        manway: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "120 in").like("\"36 in\"");
        /// Weight of the heaviest module, wet and fouled
        module_weight: Quantity<Mass> = spec.units(&LB, &KG).between("1 lb", "20000 lb").like("\"160 lb\"");
        /// Thickness of the coalescing mesh, along the flow
        mesh: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "60 in").like("\"4 in\"");
        /// Diameter of the mesh's fibre
        mesh_fibre: Quantity<Length> = spec.units(&MIL, &MM).between("0.001 mm", "5 mm").like("\"0.28 mm\"");
        /// Share of the mesh's volume that is fibre
        mesh_solidity: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.1 %", "60 %").like("\"3 %\"");
        /// Measured on the mesh: droplet size, and share it catches
        mesh_curve: Curve = spec.like("[\"10 um: 20 %\", \"60 um: 90 %\"]");
        /// Velocity on the face of the mesh above which it was measured to let collected oil go
        mesh_velocity_limit: Quantity<Velocity> = spec.units(&FT_MIN, &MM_S).between("0.01 mm/s", "1 m/s").like("\"8 mm/s\"");
        /// Open share of a perforated baffle on the outlet face of pack and mesh, as wide and as high as the pack; none where
        /// nothing is said
        outlet_baffle_open: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.5 %", "60 %").like("\"20 %\"");
        /// Length of the oil retention zone, up to the downcomer baffle
        retention_length: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"20 in\"")
            .asks("How long is the zone between pack and downcomer baffle?")
            .found("its share of the length that is left");
        /// Length of the clear well behind the downcomer baffle
        well_length: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"10 in\"")
            .asks("How long is the clear well behind the downcomer baffle?")
            .found("its share of the length that is left");
        /// Lip of the downcomer baffle, or mouth of the dip pipe in its place, above the floor
        lip: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "120 in").like("\"10 in\"")
            .asks("What is the gap between the floor and the lower edge of the last baffle?")
            .asks_when(A_DIP_PIPE, "What is the height of the mouth of the pipe that draws the water, above the floor?")
            .found("a tenth of the pack above its underside; without a pack a sixth of the depth of water, of a dip pipe 40 % of it");
        /// Length of the sand compartment ahead, an option that makes the vessel longer by it
        sand_trap_length: Quantity<Length> = spec.units(&IN, &MM).between("6 in", "400 in").like("\"36 in\"");
        /// Height of the opening out of the sand compartment, under water
        sand_trap_opening: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "60 in").like("\"12 in\"");
        /// Length of the pump-out compartment behind, an option that makes the vessel longer by it
        pump_out_length: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "400 in").like("\"48 in\"");
        /// Level at which the effluent pumps stop, above the floor
        pump_stop: Quantity<Length> = spec.units(&IN, &MM).between("2 in", "200 in").like("\"18 in\"");
        /// Level at which the first effluent pump starts
        pump_start: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "200 in").like("\"36 in\"");
        /// Level at which the second starts and the alarm calls
        pump_alarm: Quantity<Length> = spec.units(&IN, &MM).between("4 in", "200 in").like("\"44 in\"");
        /// Flow of one effluent pump at its duty
        pump_flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "10000 gpm").like("\"150 gpm\"");
        /// Number of effluent pumps, one of them standing by
        effluent_pumps: Count = spec.like("2");
        /// Elevation at which oil is drawn off, above the floor
        oil_draw: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "240 in").like("\"44 in\"");
        /// Density of the level float
        float_density: Quantity<Density> = spec.units(&KG_M3, &KG_M3).between("300 kg/m3", "1500 kg/m3").like("\"930 kg/m3\"");
        /// Weight empty
        empty_weight: Quantity<Mass> = spec.units(&LB, &KG).between("10 lb", "20000000 lb").like("\"2100 lb\"");
        /// Material of the vessel
        material: Text = spec.like("\"coated carbon steel\"");
        /// Shipping length
        ship_length: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "1500 in").like("\"140 in\"");
        /// Shipping width
        ship_width: Quantity<Length> = spec.units(&IN, &MM).between("6 in", "600 in").like("\"60 in\"");
        /// Shipping height
        ship_height: Quantity<Length> = spec.units(&IN, &MM).between("12 in", "300 in").like("\"84 in\"");
        /// Budget price, in the range's currency
        price: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "1e9").like("38500");
        /// Delivery time
        lead_time: Text = spec.like("\"12 weeks\"");
        /// Measured results, with their conditions
        measured: Text = spec.like("\"none published\"");
    }
}

/// A range: what a maker offers.
#[derive(Debug, Clone, Default)]
pub struct Range {
    /// The head block.
    pub head: RangeHead,
    /// The models, in the order of the file.
    pub models: Vec<Model>,
}

impl Model {
    /// The needed keys that are missing.
    #[must_use]
    pub fn missing(&self) -> Vec<&'static str> {
        Arrangement::of(self).needed().filter(|key| !self.is_said(key)).collect()
    }
}

/// Reads a range file; faults carry place, reason and remedy.
#[must_use]
pub fn read_range(text: &str) -> Outcome<Range> {
    let slots: &[Slot<Range>] = slots! {
        one RangeHead head;
        many Model models;
    };
    let mut outcome = read(text, slots);
    for model in &outcome.file.models {
        let place = format!("model \"{}\"", model.model.as_deref().unwrap_or("?"));
        let missing = model.missing();
        if !missing.is_empty() {
            outcome.faults.push(stillrise_units::Fault::new(
                place,
                format!("lacks {}", missing.join(", ")),
                "state them",
            ));
        }
    }
    if outcome.faults.is_empty() && outcome.file.models.is_empty() {
        outcome.faults.push(stillrise_units::Fault::new("the file", "holds no model", "write at least one [[model]]"));
    }
    outcome
}
