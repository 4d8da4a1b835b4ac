//! The range file: one block a model, the same machinery as the enquiry.

use super::fields::{Flag, Text, Word};
use super::keys::{Block, Quantity, keys};
use super::reader::{Outcome, Slot, read, slots};
use crate::arrangements::Arrangement;
use crate::stages::StageKeys;
use crate::stages::access::AccessKeys;
use crate::stages::channels::ChannelKeys;
use stillrise_handbook::hydraulics::pipes;
use stillrise_handbook::vessel::shapes::HeadForm;
use stillrise_units::catalog::*;
use stillrise_units::{Flow, Length, Mass, Ratio};

/// Nominal pipe sizes, in inches and as DN.
pub(crate) fn pipe_names() -> Vec<String> {
    let sizes = pipes::PIPE_SIZES.iter();
    sizes.flat_map(|row| [row.word.to_owned(), format!("DN {}", row.dn)]).collect()
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
        /// Weight empty
        empty_weight: Quantity<Mass> = spec.units(&LB, &KG).between("10 lb", "20000000 lb").like("\"2100 lb\"");
        /// Material of the vessel
        material: Text = spec.like("\"coated carbon steel\"");
        /// Coating or lining, inside and outside
        coating: Text = spec.like("\"epoxy inside, polyurethane outside\"");
        /// Material of the plates
        plate_material: Text = spec.like("\"polypropylene\"");
        /// Rating and facing of the nozzles' flanges
        flanges: Text = spec.like("\"class 150, raised face\"");
        /// Nominal size of the oil draw-off
        oil_draw_pipe: Text = spec.named(pipe_names).like("\"3 in\"");
        /// Nominal size of the sludge drain or pump-out pipe
        drain_pipe: Text = spec.named(pipe_names).like("\"4 in\"");
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
    } with {
        /// Keys of the manways.
        access: AccessKeys;
        /// Keys of parallel channels.
        parallel: ChannelKeys;
        /// Keys of its stages.
        stages: StageKeys;
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
