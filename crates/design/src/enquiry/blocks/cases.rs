//! Flows and cases that somebody stated.

use super::waters::{OilContent, SOLIDS, SOLIDS_FOUND, WaterKind};
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{GPM, H, M3_H, MG_L};
use stillrise_units::{Concentration, Flow, Time};

keys! {
    /// The design flow somebody stated, to be held against what the site gives.
    Stated "stated" {
        /// Design flow
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"120 gpm\"");
        /// How long it lasts
        duration: Quantity<Time> = spec.units(&H, &H).between("1 min", "30 d").safe_larger().like("\"2 h\"")
            .asks("How long does the {name} last?")
            .usual("0.5 h", "2 h", "8 h", "engineering judgement: part of a shift");
        /// What it carries, when no water is described that makes it up
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"100 mg/L\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"150 mg/L\"")
            .asks(SOLIDS).found(SOLIDS_FOUND);
    }
}
keys! {
    /// A case beyond those that follow from rain, streams and spill.
    CaseBlock "case" {
        /// Its name
        name: Text = spec.like("\"foam test\"").needed();
        /// Flow to the unit
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"250 gpm\"").needed();
        /// How long it lasts
        duration: Quantity<Time> = spec.units(&H, &H).between("1 min", "30 d").safe_larger().like("\"2 h\"")
            .asks("How long does the {name} last?")
            .usual("0.5 h", "2 h", "8 h", "engineering judgement: part of a shift");
        /// What kind of water it is; fire-fighting water without oil stated is a matter of hydraulics alone
        water: Word<WaterKind> = spec.like("\"treated\"");
        /// What it carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"50 mg/L\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"150 mg/L\"")
            .asks(SOLIDS).found(SOLIDS_FOUND);
    }
}
