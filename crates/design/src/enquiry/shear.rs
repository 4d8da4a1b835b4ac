//! Keys of what may break droplets on the way to the unit, besides the pump that feeds it.

use super::blocks::{EFFICIENCY, HEAD_COEFFICIENT, IMPELLER_WIDTH};
use super::fields::{Text, Word};
use super::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::hydraulics::fittings;
use stillrise_handbook::separation::pumps;
use stillrise_units::catalog::{FT, GPM, HP, IN, KPA, KW, M, M3_H, MM, ONE, PERCENT, PSI, RPM, W_KG};
use stillrise_units::{Dissipation, Fault, Flow, Length, Power, Pressure, Ratio, ShearRate};

choice! {
    /// What shears the oil.
    ShearKind {
        /// a pipe, by the friction on its wall
        Pipe "pipe",
        /// a bend, a tee, an entry, by its loss coefficient
        Fitting "fitting",
        /// a valve or an orifice, by the pressure lost in it
        Valve "valve",
        /// a pump ahead of the one that feeds the unit
        Pump "pump",
    }
}

fn fitting_names() -> Vec<String> {
    fittings::FITTINGS.iter().map(|f| f.word.to_owned()).collect()
}
fn pump_names() -> Vec<String> {
    pumps::PUMPS.iter().map(|p| p.word.to_owned()).collect()
}

keys! {
    /// Something on the way that may break droplets, besides the pump that feeds the unit.
    ShearBlock "shear" {
        /// Its name on site
        name: Text = spec.like("\"level control valve\"").needed();
        /// What it is
        kind: Word<ShearKind> = spec.like("\"valve\"").needed();
        /// Flow through it
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"60 gpm\"");
        /// Inside diameter of the pipe; of a valve or an orifice the bore of its seat, which the jet fills
        diameter: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "100 in").safe_smaller().like("\"2 in\"");
        /// Pressure lost in a valve
        pressure: Quantity<Pressure> = spec.units(&PSI, &KPA).between("0 psi", "10000 psi").safe_larger().like("\"15 psi\"");
        /// Which fitting
        fitting: Text = spec.named(fitting_names).like("\"elbow-90\"");
        /// Which kind of pump
        pump: Text = spec.named(pump_names).like("\"centrifugal\"");
        /// Power its shaft takes while it runs
        pump_power: Quantity<Power> = spec.units(&HP, &KW).between("1 W", "10000 kW").safe_larger().like("\"1.5 hp\"");
        /// Head it works against
        pump_head: Quantity<Length> = spec.units(&FT, &M).between("0.1 m", "1000 m").safe_larger().like("\"20 ft\"");
        /// Speed it turns at
        pump_speed: Quantity<ShearRate> = spec.units(&RPM, &RPM).between("10 rpm", "30000 rpm").safe_larger().like("\"1750 rpm\"")
            .asks("How fast does the {name} turn, and how large is its impeller?")
            .found("that of a motor of two poles on the mains of the place");
        /// Diameter of its impeller
        impeller: Quantity<Length> = spec.units(&IN, &MM).between("5 mm", "5000 mm").safe_smaller().like("\"6 in\"");
        /// Width of its impeller over the diameter
        impeller_width: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "150 %").safe_smaller().like("\"10 %\"").usually(IMPELLER_WIDTH);
        /// Share of the shaft's power that becomes head
        efficiency: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "95 %").safe_smaller().like("\"50 %\"").usually(EFFICIENCY);
        /// Head over the square of its tip speed
        head_coefficient: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.05", "1.2").like("0.5").usually(HEAD_COEFFICIENT);
        /// Length over which the jet of a valve spends its energy, in bores
        jet: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.1", "100").safe_smaller().like("3")
            .usual("2", "3", "5", "from memory: the loss is spent over two to five bores");
        /// Power dissipated where the droplets break, in place of all the above
        dissipation: Quantity<Dissipation> = spec.units(&W_KG, &W_KG).between("0.000001 W/kg", "10000000 W/kg").safe_larger().like("\"100 W/kg\"")
            .asks("May we have the curve or name plate of the {name}, with flow, head, power and speed, which show how hard it breaks the oil?")
            .found("by the kind of pump, from the handbook");
    }
}

impl ShearBlock {
    /// Keys that its kind has no use for.
    #[must_use]
    pub fn idle(&self) -> Vec<&'static str> {
        let Some(kind) = self.kind.0 else { return Vec::new() };
        let all = [
            ("pressure", kind == ShearKind::Valve, self.pressure.is_given()),
            ("fitting", kind == ShearKind::Fitting, self.fitting.is_some()),
            ("pump", kind == ShearKind::Pump, self.pump.is_some()),
            ("pump_power", kind == ShearKind::Pump, self.pump_power.is_given()),
            ("pump_head", kind == ShearKind::Pump, self.pump_head.is_given()),
            ("pump_speed", kind == ShearKind::Pump, self.pump_speed.is_given()),
            ("impeller", kind == ShearKind::Pump, self.impeller.is_given()),
            ("impeller_width", kind == ShearKind::Pump, self.impeller_width.is_given()),
            ("efficiency", kind == ShearKind::Pump, self.efficiency.is_given()),
            ("head_coefficient", kind == ShearKind::Pump, self.head_coefficient.is_given()),
        ];
        all.into_iter().filter(|(_, used, given)| *given && !used).map(|(name, ..)| name).collect()
    }

    /// What it lacks to find its dissipation.
    #[must_use]
    pub fn missing(&self) -> Vec<&'static str> {
        let Some(kind) = self.kind.0.filter(|_| !self.dissipation.is_given()) else { return Vec::new() };
        let all = [
            ("flow", kind != ShearKind::Pump, self.flow.is_given()),
            ("diameter", kind != ShearKind::Pump, self.diameter.is_given()),
            ("pressure", kind == ShearKind::Valve, self.pressure.is_given()),
            ("fitting", kind == ShearKind::Fitting, self.fitting.is_some()),
            ("pump", kind == ShearKind::Pump, self.pump.is_some()),
        ];
        all.into_iter().filter(|(_, needed, given)| *needed && !given).map(|(name, ..)| name).collect()
    }
}

/// Faults of blocks that lack what their kind needs.
pub(super) fn faults(blocks: &[ShearBlock], faults: &mut Vec<Fault>) {
    for (i, block) in blocks.iter().enumerate() {
        let place = block.name.as_ref().map_or_else(|| format!("shear {}", i + 1), |name| format!("shear \"{name}\""));
        // What was written and refused has its fault already.
        let refused = |key: &&str| faults.iter().any(|f| f.place.contains(&format!("{place}: {key}")));
        let missing: Vec<&str> = block.missing().into_iter().filter(|key| !refused(key)).collect();
        let kind = block.kind.0.map_or("", ShearKind::word);
        for key in block.idle() {
            faults.push(Fault::new(
                format!("{place}: {key}"),
                format!("a {kind} has no {key}"),
                "leave it out, or check kind",
            ));
        }
        if !missing.is_empty() {
            faults.push(Fault::new(
                place,
                format!("is a {kind} without {}", missing.join(" and ")),
                "state it, or the dissipation itself, as dissipation = \"100 W/kg\"",
            ));
        }
    }
}
