//! Waters that are not rain, and what any water carries.

use super::droplets::Droplets;
use crate::enquiry::fields::{Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::fluids::chemicals;
use stillrise_handbook::fluids::oils;
use stillrise_units::catalog::{DEG_C, DEG_F, GAL, GPM, KG_M3, M3, M3_H, MG_L, MN_M, ONE, PERCENT};
use stillrise_units::{Concentration, Density, Flow, Ratio, SurfaceTension, Temperature, Volume};

names! {
    oil_names = oils::OILS;
    chemical_names = chemicals::CHEMICALS;
}

choice! {
    /// What kind of water comes.
    WaterKind {
        /// water that the unit is to treat
        Treated "treated",
        /// water pumped out of a pit or an excavation
        Dewatering "dewatering",
        /// fire-fighting water, which is to be held back
        Fire "fire-fighting",
    }
}
keys! {
    /// Oil in a water.
    OilContent "oil" {
        /// Which oil
        kind: Text = spec.named(oil_names).like("\"diesel\"");
        /// Total oil and grease in it
        mean: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "900000 mg/L").safe_larger().like("\"200 mg/L\"");
        /// Share of it that is emulsified and does not rise
        emulsified: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"10 %\"");
        /// Oil dissolved in the water, which does not rise either
        dissolved: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "10000 mg/L").safe_larger().like("\"2 mg/L\"");
        /// Share of its free oil that is as heavy as the water and does not rise, where several oils may come
        heavy: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"0 %\"");
    }
}
keys! {
    /// Water that is not rain: washing, process, condensate, dewatering.
    Stream "stream" {
        /// Its name
        name: Text = spec.like("\"bus wash rinse\"");
        /// What kind of water it is
        water: Word<WaterKind> = spec.like("\"treated\"");
        /// Flow while it runs
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"45 gpm\"");
        /// Number of hoses, in place of a flow
        hoses: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "200").safe_larger().like("3");
        /// Flow of one hose
        hose_flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "1000 gpm").safe_larger().like("\"25 gpm\"");
        /// Share of the hoses that run together
        together: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "100 %").safe_larger().like("\"100 %\"");
        /// Volume on a running day; with the flow or the hoses, which it does not replace, it tells the hours
        volume_per_day: Quantity<Volume> = spec.units(&GAL, &M3).between("0.01 gal", "100000000 gal").safe_larger().like("\"4500 gal\"");
        /// Hours a day that it runs
        hours_per_day: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "24").safe_larger().like("3");
        /// Days a week that it runs
        days_per_week: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "7").safe_larger().like("5");
        /// Whether it may run while it rains
        with_rain: Flag = spec.safe_larger().like("false");
        /// What it carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"200 mg/L\", emulsified = \"10 %\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"300 mg/L\"");
        /// Its temperature, where it differs from the water of the season
        temperature: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "95 °C").safe_smaller().like("\"120 °F\"");
        /// The coldest it comes, where that differs
        coldest: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "95 °C").safe_smaller().like("\"60 °F\"");
        /// The warmest it comes, where that differs
        warmest: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "95 °C").safe_larger().like("\"140 °F\"");
        /// Dissolved salt in it, by mass, where it differs
        salinity: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "10 %").safe_smaller().like("\"0.5 %\"");
        /// Droplets of its free oil, where they differ
        droplets: Option<Droplets> = spec.like("{ d50 = \"40 um\", spread = 2 }");
        /// What shears it on its way, by the names of their blocks; a block that no stream names shears all waters
        shear: Vec<String> = spec.like("[\"level control valve\"]");
        /// Products that go into it, by the names or kinds of their blocks
        chemicals: Vec<String> = spec.like("[\"alkaline degreaser\"]");
    }
}
keys! {
    /// An oil that may come, with what is known of it.
    OilBlock "oil" {
        /// Its name on site
        name: Text = spec.like("\"bus diesel\"");
        /// Which oil of the handbook it is nearest to
        kind: Text = spec.named(oil_names).like("\"diesel\"").needed();
        /// Its density at 15 °C, in place of the handbook's
        density: Quantity<Density> = spec.units(&KG_M3, &KG_M3).between("500 kg/m3", "1500 kg/m3").safe_larger().like("\"842 kg/m3\"");
    }
}
keys! {
    /// The water itself.
    Water "water" {
        /// Coldest water in the unit
        coldest: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-3 °C", "60 °C").safe_smaller().like("\"45 °F\"");
        /// Warmest water in the unit
        warmest: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("0 °C", "95 °C").safe_larger().like("\"75 °F\"");
        /// Highest over mean oil content of a single sample of the influent
        oil_peak: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "20").safe_larger().like("2");
        /// Water that flows in, where it is warmer or colder than the water in the unit
        inflow: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "95 °C").like("\"140 °F\"");
        /// Dissolved salt, by mass
        salinity: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "10 %").like("\"0 %\"");
    }
}
keys! {
    /// A product that goes into the water.
    ChemicalBlock "chemical" {
        /// Its name on site
        product: Text = spec.like("\"alkaline degreaser\"");
        /// What it is
        kind: Text = spec.named(chemical_names).like("\"alkaline-degreaser\"");
        /// What its safety data sheet says of surfactants and of oil, once it was seen
        data_sheet: Text = spec.like("\"non-ionic surfactant below 5 %, quick-break\"");
        /// Waters it goes into: names of streams and cases, "rain", or "streams", "all" or "none"
        stream: Vec<String> = spec.like("[\"bus wash rinse\"]");
        /// Tension between oil and water with it in the water
        tension: Quantity<SurfaceTension> = spec.units(&MN_M, &MN_M).between("0.001 mN/m", "60 mN/m").safe_smaller().like("\"4 mN/m\"");
    }
}
