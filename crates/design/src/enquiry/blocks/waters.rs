//! Waters that are not rain, and what any water carries.

use super::droplets::Droplets;
use super::observed::{Jar, Look};
use crate::enquiry::fields::{Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::fluids::chemicals;
use stillrise_handbook::fluids::oils;
use stillrise_units::catalog::{DEG_C, DEG_F, GAL, GPM, KG_M3, LB_FT3, M3, M3_H, MG_L, MN_M, ONE, PERCENT};
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
/// How the solids of any water are asked for.
pub(super) const SOLIDS: &str = "How much suspended solids does {water} carry?";
/// What stands in for them.
pub(super) const SOLIDS_FOUND: &str = "by the kind of place, from the handbook; 150 mg/L where none is named";

keys! {
    /// Oil in a water.
    OilContent "oil" {
        /// Which oil
        kind: Text = spec.named(oil_names).like("\"diesel\"");
        /// Total oil and grease in it
        mean: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "900000 mg/L").safe_larger().like("\"200 mg/L\"")
            .asks("How much oil and grease does {water} carry?")
            .found("by the kind of place, from the handbook; 100 mg/L where none is named");
        /// Share of it that is emulsified and does not rise
        emulsified: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"10 %\"")
            .asks("What share of the oil in {water} is emulsified (detergent, pressure washing, pumping)?")
            .found("by the products that go into the water, from the handbook, and by how it looks and what a jar of it does; 2 % of a dry yard without them");
        /// How the water looks as it comes, before any separator
        looks: Word<Look> = spec.like("\"milky\"");
        /// What a jar of it does when it stands
        jar: Word<Jar> = spec.like("\"clears overnight\"");
        /// Oil dissolved in the water, which does not rise either
        dissolved: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "10000 mg/L").safe_larger().like("\"2 mg/L\"")
            .asks("How much oil is dissolved in {water}?")
            .found("what a film of the oil leaves in water, from the handbook");
        /// Share of its free oil that is as heavy as the water and does not rise, where several oils may come
        heavy: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"0 %\"")
            .asks("What share of the oil in {water} is {names}, which does not rise?")
            .usual("0 %", "50 %", "100 %", "engineering judgement: oils that rise and oils that do not may come, and nobody said in which shares");
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
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"45 gpm\"")
            .asks("How fast does the {name} come while it runs?")
            .found("its volume a day over its hours, or over a shift");
        /// Number of hoses, in place of a flow
        hoses: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "200").safe_larger().like("3")
            .usual("1", "1", "1", "a stream without flow and volume has hoses");
        /// Flow of one hose
        hose_flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "1000 gpm").safe_larger().like("\"25 gpm\"")
            .asks("What is the flow of one hose of the {name}?")
            .usual("5 gpm", "25 gpm", "30 gpm", "UFC 4-214-03, par. 4-8: {25 gpm|5.68 m3/h} per wash hose at {75 psi|517 kPa}; low end for hand pressure washers from memory");
        /// Share of the hoses that run together
        together: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "100 %").safe_larger().like("\"100 %\"")
            .asks("How many of the hoses of the {name} run at once?")
            .usual("50 %", "100 %", "100 %", "all of them is the safe side");
        /// Volume on a running day; with the flow or the hoses, which it does not replace, it tells the hours
        volume_per_day: Quantity<Volume> = spec.units(&GAL, &M3).between("0.01 gal", "100000000 gal").safe_larger().like("\"4500 gal\"");
        /// Hours a day that it runs
        hours_per_day: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "24").safe_larger().like("3")
            .asks("How many hours a day does the {name} run?")
            .usual("1", "4", "12", "engineering judgement: one shift of intermittent use");
        /// Days a week that it runs
        days_per_week: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "7").safe_larger().like("5")
            .asks("How many days a week does the {name} run?")
            .usual("1", "5", "7", "engineering judgement: working days");
        /// Whether it may run while it rains
        with_rain: Flag = spec.safe_larger().like("false")
            .asks("Does the {name} also run while it rains?")
            .found("yes where an area lies under a canopy, else no");
        /// What it carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"200 mg/L\", emulsified = \"10 %\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"300 mg/L\"")
            .asks(SOLIDS).found(SOLIDS_FOUND);
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
        density: Quantity<Density> = spec.units(&LB_FT3, &KG_M3).between("500 kg/m3", "1500 kg/m3").safe_larger().like("\"842 kg/m3\"")
            .asks("What is the density of the {name}?")
            .found("that of the oil of the handbook");
    }
}
/// When peaks are asked for and some results of single samples are there.
pub const FEW_RESULTS: &str = "few results";

keys! {
    /// The water itself.
    Water "water" {
        /// Coldest water in the unit
        coldest: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-3 °C", "60 °C").safe_smaller().like("\"45 °F\"")
            .asks("What is the coldest water that reaches the separator?")
            .usual("1 °C", "5 °C", "15 °C", "engineering judgement: winter water of a temperate site");
        /// Warmest water in the unit
        warmest: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("0 °C", "95 °C").safe_larger().like("\"75 °F\"")
            .asks("What is the warmest water that reaches the separator?")
            .usual("15 °C", "25 °C", "40 °C", "engineering judgement: summer water of a temperate site");
        /// Highest over mean oil content of a single sample of the influent
        oil_peak: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "20").safe_larger().like("2")
            .asks("May we have the results of single samples of the water that comes, with their dates? They show how far peaks rise above the mean.")
            .asks_when(FEW_RESULTS, "May we have more results of single samples of the water that comes? {count} results hardly show how far peaks rise above the mean.")
            .found("twice the mean, or as far as results of single samples rise above it");
        /// Water that flows in, where it is warmer or colder than the water in the unit
        inflow: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "95 °C").like("\"140 °F\"");
        /// Dissolved salt, by mass
        salinity: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "10 %").like("\"0 %\"")
            .asks("Is the water salty or brackish, and how much?")
            .usual("0 %", "0 %", "3.5 %", "fresh water is the slower case for rising oil");
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
        stream: Vec<String> = spec.like("[\"bus wash rinse\"]")
            .asks("Which water does the {name} go into?")
            .found("every water but rain, fire-fighting water and dewatering; rain where no other is known");
        /// Share of the oil in those waters that it is, where it is an oil itself that mixes with water
        share: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"10 %\"")
            .asks("What share of the oil in the water that {name} goes into is {name}?")
            .usual("5 %", "100 %", "100 %", "the safe side: all of it, as nobody said that other oil comes with it");
        /// Tension between oil and water with it in the water
        tension: Quantity<SurfaceTension> = spec.units(&MN_M, &MN_M).between("0.001 mN/m", "60 mN/m").safe_smaller().like("\"4 mN/m\"")
            .usual("1 mN/m", "4 mN/m", "15 mN/m", "from memory: 3 to 5 mN/m with surfactant, less with strong detergent");
    }
}
