//! The one list of keys (long because it is one list) of an enquiry. The reader, the schema, `new` and the docs follow from it.

use super::fields::{Count, Curve, Flag, Quantities, Text, Word};
use super::keys::Quantity;
use super::keys::keys;
use super::range::{Model, pipe_names};
use stillrise_handbook::choice;
use stillrise_handbook::fluids::{chemicals, facilities, oils, pollutants};
use stillrise_handbook::hydraulics::pipes;
use stillrise_handbook::rain::{rational_flow::RationalFactor, surfaces};
use stillrise_handbook::separation::{
    api_factor::FactorRounding,
    gap_reynolds::ReynoldsBasis,
    grit_settling::GrainShape,
    pumps,
    remaining_oil::{DropletLaw, RiseLaw},
    tank_removal::TankModel,
};
use stillrise_handbook::vessel::triggers;
use stillrise_units::catalog::*;
use stillrise_units::{Area, Concentration, Density, Flow, Length, Mass, Ratio, Temperature, Time, Velocity, Volume};

choice! {
    /// Units of print.
    Print {
        /// US customary units
        Us "us",
        /// SI and metric units
        Si "si",
    }
}
choice! {
    /// Which gallon a bare gallon is.
    GallonWord {
        /// 231 cubic inches
        Us "us",
        /// 4.54609 litres
        Imperial "imperial",
    }
}
choice! {
    /// What the documents are issued as.
    Status {
        /// for discussion, not for construction
        Preliminary "preliminary",
        /// for the client's approval
        ForApproval "for approval",
        /// released
        Issued "issued",
        /// as installed
        AsBuilt "as built",
    }
}
choice! {
    /// How the water reaches the unit.
    Feed {
        /// by gravity
        Gravity "gravity",
        /// by pump
        Pump "pump",
    }
}
choice! {
    /// How water looks that leaves a separator.
    Look {
        /// clear
        Clear "clear",
        /// a slight haze
        Hazy "hazy",
        /// like thin milk
        Milky "milky",
        /// an oil film or slugs of oil on it
        Film "oil film",
    }
}
choice! {
    /// What a jar of the water does when it stands.
    Jar {
        /// oil rises and the water is clear within an hour
        Soon "clears within an hour",
        /// clear after a night
        Overnight "clears overnight",
        /// stays as it is
        Stays "stays",
    }
}
choice! {
    /// What an oil alarm does.
    AlarmSign {
        /// silent, and little oil is found
        Silent "silent",
        /// silent although the oil layer is thick
        Missed "thick oil, no alarm",
        /// sounds, and oil is found
        True "oil found",
        /// sounds, and no oil is found
        False "no oil found",
    }
}
choice! {
    /// What a distribution of droplets counts.
    DropletBase {
        /// shares of the oil's volume
        Volume "volume",
        /// shares of the number of droplets
        Number "number",
    }
}
choice! {
    /// What a shear leaves of the droplets that reach it.
    AfterPump {
        /// another distribution, log-normal about the median that the shear leaves
        Replaced "replaced",
        /// the same, with all that is larger than what survives broken down to that
        Capped "capped",
    }
}
choice! {
    /// Where the water goes.
    Receiver {
        /// to a storm drain or a water body
        StormWater "storm water",
        /// to a sewer with a treatment works
        SanitarySewer "sanitary sewer",
    }
}
choice! {
    /// What a limit is a limit of.
    Statistic {
        /// every single sample must keep it
        AnySample "any sample",
        /// the largest daily value
        DailyMaximum "daily maximum",
        /// the mean of a month's samples
        MonthlyAverage "monthly average",
        /// a type test of the unit on a rig
        RigTest "rig test",
    }
}
choice! {
    /// How the time of concentration is found.
    ConcentrationTime {
        /// as stated in the enquiry
        Stated "stated",
        /// Kirpich's formula over the longest path
        Kirpich "kirpich",
        /// the kinematic wave, with the rain table
        KinematicWave "kinematic wave",
    }
}
choice! {
    /// What the engineer decided about a finding.
    Settled {
        /// accepted, with a reason
        Accepted "accepted",
        /// somebody else's scope
        ByOthers "by others",
        /// not yet settled
        Open "open",
    }
}

macro_rules! names {
    ($($name:ident = $list:expr;)*) => { $(fn $name() -> Vec<String> { $list.iter().map(|row| row.word.to_owned()).collect() })* };
}
names! {
    oil_names = oils::OILS;
    chemical_names = chemicals::CHEMICALS;
    pollutant_names = pollutants::POLLUTANTS;
    surface_names = surfaces::SURFACES;
    pump_names = pumps::PUMPS;

    material_names = pipes::MATERIALS;
    trigger_names = triggers::TRIGGERS;
}

/// Facilities and the other words for them.
fn facility_names() -> Vec<String> {
    facilities::FACILITIES
        .iter()
        .flat_map(|f| core::iter::once(f.word).chain(f.also.iter().copied()))
        .map(str::to_owned)
        .collect()
}

keys! {
    /// Who asks, for what, and how the documents are printed.
    Head "enquiry" {
        /// Title of the job
        title: Text = spec.like("\"Bus depot, north apron\"").needed();
        /// For whom
        client: Text = spec.like("\"Invented Transit Authority\"");
        /// Number of the project or quotation
        project: Text = spec.like("\"Q-1042\"");
        /// Who prepared it
        prepared_by: Text = spec.like("\"applications desk\"");
        /// Revision of the documents
        revision: Text = spec.like("\"A\"");
        /// What the documents are issued as
        status: Word<Status> = spec.like("\"preliminary\"");
        /// Date on the documents; nothing is dated by a clock
        date: Text = spec.like("\"2026-03-02\"");
        /// Units of print; inputs may mix
        print: Word<Print> = spec.like("\"us\"");
        /// Which gallon a bare gallon is
        gallon: Word<GallonWord> = spec.like("\"us\"");
        /// What kind of place it is; lends typical loads where nobody knows better
        facility: Text = spec.named(facility_names).like("\"vehicle-yard\"");
    }
}
keys! {
    /// A surface that drains to the unit.
    Surface "surface" {
        /// Its name
        name: Text = spec.like("\"fuelling apron\"");
        /// Its area in plan
        area: Quantity<Area> = spec.units(&FT2, &M2).between("1 ft2", "1000 acre").safe_larger().like("\"0.62 acre\"").needed();
        /// What it is made of
        kind: Text = spec.named(surface_names).like("\"concrete\"");
        /// Runoff coefficient, in place of the one of its kind
        runoff: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "1").safe_larger().like("0.9");
        /// Whether a canopy keeps vertical rain off it
        canopy: Flag = spec.like("true");
        /// Height of the open side under the canopy
        canopy_height: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "100 ft").like("\"14.5 ft\"");
        /// Longest side of the canopy
        canopy_side: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "3000 ft").like("\"60 ft\"");
    }
}
keys! {
    /// The rain that is designed for, and what it carries.
    Rain "rain" {
        /// File with depth or intensity by duration and return period
        table: Text = spec.like("\"rain.csv\"");
        /// Design intensity, in place of a table
        intensity: Quantity<Velocity> = spec.units(&IN_H, &MM_H).between("0.01 in/h", "30 in/h").safe_larger().like("\"3.1 in/h\"");
        /// Return period
        return_period: Quantity<Time> = spec.units(&YR, &YR).between("0.1 yr", "1000 yr").like("\"10 yr\"");
        /// Time of concentration, if it is stated
        concentration_time: Quantity<Time> = spec.units(&MIN, &MIN).between("1 min", "24 h").safe_smaller().like("\"10 min\"");
        /// Longest path of the water over the surface
        path: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "30000 ft").like("\"250 ft\"");
        /// Slope along that path
        slope: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.01 %", "50 %").like("\"1.5 %\"");
        /// Depth of rain in a year
        annual: Quantity<Length> = spec.units(&IN, &MM).between("0.1 in", "500 in").like("\"38 in\"");
        /// What the rain water carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"60 mg/L\" }");
        /// Suspended solids in the rain water
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"150 mg/L\"");
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
    }
}
keys! {
    /// Water that is not rain: washing, process, condensate, dewatering.
    Stream "stream" {
        /// Its name
        name: Text = spec.like("\"bus wash rinse\"");
        /// Flow while it runs
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"45 gpm\"");
        /// Number of hoses, in place of a flow
        hoses: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "200").safe_larger().like("3");
        /// Flow of one hose
        hose_flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "1000 gpm").safe_larger().like("\"25 gpm\"");
        /// Share of the hoses that run together
        together: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "100 %").safe_larger().like("\"100 %\"");
        /// Hours a day that it runs
        hours_per_day: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "24").safe_larger().like("3");
        /// Days a week that it runs
        days_per_week: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "7").safe_larger().like("5");
        /// Whether it may run while it rains
        with_rain: Flag = spec.like("false");
        /// What it carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"200 mg/L\", emulsified = \"10 %\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"300 mg/L\"");
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
    /// Droplets of the free oil at the inlet, by volume.
    Droplets "droplets" {
        /// Half of the free oil's volume is in larger droplets
        d50: Quantity<Length> = spec.units(&UM, &UM).between("0.1 um", "5000 um").safe_smaller().like("\"90 um\"");
        /// The same ahead of a pump, where the pump breaks them further
        arriving: Quantity<Length> = spec.units(&UM, &UM).between("0.1 um", "5000 um").safe_smaller().like("\"120 um\"");
        /// Geometric standard deviation of the diameters, of the log-normal law
        spread: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1.01", "10").safe_larger().like("2");
        /// How the volume spreads over size
        law: Word<DropletLaw> = spec.like("\"log-normal\"");
        /// Exponent of the Rosin-Rammler law
        exponent: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.3", "10").safe_smaller().like("2.6");
        /// Mugele and Evans' delta, of the upper-limit law
        delta: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.2", "5").safe_smaller().like("0.72");
        /// Largest droplet: the end of the upper-limit law; larger ones of another law are broken down to it
        largest: Quantity<Length> = spec.units(&UM, &UM).between("1 um", "100000 um").safe_smaller().like("\"400 um\"");
        /// Measured at the unit: size, and share of the volume that is finer
        table: Curve = spec.like("[\"20 um: 5 %\", \"60 um: 40 %\", \"200 um: 100 %\"]");
        /// Whether d50 or table count volume or droplets
        base: Word<DropletBase> = spec.like("\"volume\"");
        /// What the hardest shear ahead leaves of the distribution, where it breaks the droplets
        after_pump: Word<AfterPump> = spec.like("\"replaced\"");
    }
}
keys! {
    /// Solids and sludge.
    Solids "solids" {
        /// Median size of the grains
        d50: Quantity<Length> = spec.units(&UM, &UM).between("0.1 um", "20000 um").safe_larger().like("\"100 um\"");
        /// Density of the grains
        density: Quantity<Density> = spec.units(&KG_M3, &KG_M3).between("1010 kg/m3", "8000 kg/m3").like("\"2650 kg/m3\"");
        /// Geometric standard deviation of the sizes, by mass
        spread: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1.01", "20").like("2.5");
        /// Sieved: size, and share of the mass that is finer; in place of d50 and spread
        table: Curve = spec.like("[\"20 um: 15 %\", \"63 um: 55 %\", \"250 um: 100 %\"]");
        /// Oil that clings to the grains, as a share of the mass of both
        oil: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "95 %").safe_larger().like("\"10 %\"");
        /// Dry solids in settled sludge, by mass
        in_sludge: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "90 %").safe_smaller().like("\"20 %\"");
        /// Density of settled sludge
        sludge_density: Quantity<Density> = spec.units(&LB_FT3, &KG_M3).between("1000 kg/m3", "2500 kg/m3").like("\"1100 kg/m3\"");
    }
}
keys! {
    /// A product that goes into the water.
    ChemicalBlock "chemical" {
        /// Its name on site
        product: Text = spec.like("\"alkaline degreaser\"");
        /// What it is
        kind: Text = spec.named(chemical_names).like("\"alkaline-degreaser\"");
    }
}
keys! {
    /// A limit on what leaves.
    Limit "limit" {
        /// Of what
        pollutant: Text = spec.named(pollutant_names).like("\"oil and grease\"").needed();
        /// How much
        value: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0.000001 mg/L", "100000 mg/L").safe_smaller().like("\"15 mg/L\"").needed();
        /// Of which statistic
        statistic: Word<Statistic> = spec.like("\"daily maximum\"");
        /// Samples in a monthly average
        samples: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "100").like("4");
        /// Coefficient of variation of the effluent
        variation: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "5").safe_larger().like("0.6");
        /// Method of analysis
        method: Text = spec.like("\"EPA 1664B\"");
        /// Who set it
        authority: Text = spec.like("\"city permit\"");
    }
}
keys! {
    /// How the water reaches the unit.
    Inlet "inlet" {
        /// By gravity or by pump
        feed: Word<Feed> = spec.like("\"gravity\"");
        /// Kind of pump
        pump: Text = spec.named(pump_names).like("\"diaphragm\"");
        /// Rate of each pump
        rate: Quantities<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").like("[\"60 gpm\", \"60 gpm\"]");
        /// Whether the pumps can run at once
        together: Flag = spec.like("true");
        /// Peak over mean flow of a pulsating pump
        pulsation: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "5").safe_larger().like("1.6");
        /// Invert of the incoming pipe, in the site's datum
        invert: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_smaller().like("\"98.40 ft\"");
    }
}
keys! {
    /// Where the water goes and what holds it back.
    Outlet "outlet" {
        /// Storm water or sanitary sewer
        to: Word<Receiver> = spec.like("\"storm water\"");
        /// Invert at the outfall, in the site's datum
        invert: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_larger().like("\"97.60 ft\"");
        /// Water level at the outfall, in the site's datum
        tailwater: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_larger().like("\"97.10 ft\"");
        /// Most that may leave
        flow_cap: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_smaller().like("\"80 gpm\"");
        /// Nominal size of the outlet pipe, in place of the unit's
        pipe: Text = spec.named(pipe_names).like("\"6 in\"");
        /// Length of the outlet pipe
        length: Quantity<Length> = spec.units(&FT, &M).between("0 ft", "30000 ft").safe_larger().like("\"40 ft\"");
        /// Slope of the outlet pipe
        slope: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "50 %").safe_smaller().like("\"1 %\"");
        /// Material of the outlet pipe
        material: Text = spec.named(material_names).like("\"pvc\"");
    }
}
keys! {
    /// The spill that must stay in.
    Spill "spill" {
        /// Volume of oil
        volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0.1 gal", "1000000 gal").safe_larger().like("\"300 gal\"").needed();
        /// Rate at which it arrives
        rate: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"100 gpm\"");
        /// Whether a closure shuts the outlet when oil comes near it
        closure: Flag = spec.like("true");
    }
}
keys! {
    /// The place.
    Site "site" {
        /// Ground at the unit, in the site's datum
        ground: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").like("\"100.0 ft\"");
        /// Coldest air
        coldest_air: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-70 °C", "40 °C").safe_smaller().like("\"-5 °F\"");
        /// Whether the unit stands in a heated room
        indoors: Flag = spec.like("false");
        /// Whether the unit is heated or insulated and traced
        frost_protected: Flag = spec.like("false");
        /// What can be lifted over the unit
        lifting: Quantity<Mass> = spec.units(&LB, &KG).between("10 lb", "1000000 lb").safe_smaller().like("\"500 lb\"");
        /// Longest unit that fits
        max_length: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "500 ft").safe_smaller().like("\"16 ft\"");
        /// Widest unit that fits
        max_width: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "500 ft").safe_smaller().like("\"8 ft\"");
    }
}
keys! {
    /// The design flow somebody stated, to be held against what the site gives.
    Stated "stated" {
        /// Design flow
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"120 gpm\"");
        /// What it carries, when no water is described that makes it up
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"100 mg/L\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"150 mg/L\"");
    }
}
keys! {
    /// A case beyond those that follow from rain, streams and spill.
    CaseBlock "case" {
        /// Its name
        name: Text = spec.like("\"foam test\"").needed();
        /// Flow to the unit
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"250 gpm\"").needed();
        /// What it carries
        oil: Option<OilContent> = spec.like("{ kind = \"diesel\", mean = \"50 mg/L\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"150 mg/L\"");
    }
}
keys! {
    /// Methods and margins where there is a choice.
    Method "method" {
        /// Factor of the rational method
        rational: Word<RationalFactor> = spec.like("\"exact\"");
        /// How the time of concentration is found
        concentration_time: Word<ConcentrationTime> = spec.like("\"kinematic wave\"");
        /// Droplet for which the plates are sized
        droplet: Quantity<Length> = spec.units(&UM, &UM).between("5 um", "1000 um").safe_smaller().like("\"60 um\"");
        /// Law of rise
        rise: Word<RiseLaw> = spec.like("\"drag\"");
        /// How well the tank ahead of the plates is thought to separate
        tank: Word<TankModel> = spec.like("\"mixed\"");
        /// Index of that model: tanks in series, or dispersion number
        tank_index: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.001", "1000").like("3");
        /// Whether the mesh counts in the headline
        mesh_credit: Flag = spec.like("false");
        /// Share of the droplets that touch a fibre of the mesh and stay
        mesh_sticking: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_smaller().like("\"50 %\"");
        /// Share of the mesh's voids that oil fills
        mesh_saturation: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"15 %\"");
        /// How much the oil's own viscosity resists breaking: 0 for a thin oil, the safe side
        viscosity_group: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0", "2").safe_smaller().like("0.25");
        /// Which rounding of the API factor
        factor: Word<FactorRounding> = spec.like("\"product\"");
        /// Basis of the gap Reynolds number
        reynolds: Word<ReynoldsBasis> = spec.like("\"hydraulic-diameter\"");
        /// Shape of grit
        grains: Word<GrainShape> = spec.like("\"natural\"");
        /// Unequal flow between the gaps of the pack, as a share of the mean
        maldistribution: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"20 %\"");
        /// Plate area lost to oil and solids at the end of the interval
        fouling: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"20 %\"");
        /// Reserve of plate area that a picked unit must have
        reserve: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "300 %").safe_larger().like("\"15 %\"");
        /// Share of the thickest permitted layer at which the high-oil alarm stands
        alarm: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("5 %", "100 %").safe_smaller().like("\"60 %\"");
        /// Rule for pumping out
        trigger: Text = spec.named(trigger_names).like("\"en-858-2\"");
    }
}
keys! {
    /// Which unit.
    UnitBlock "unit" {
        /// Range file to pick from; the demo range when nothing is said
        from: Text = spec.like("\"range.toml\"");
        /// The model wanted, in place of a pick
        model: Text = spec.like("\"PK-120\"");
        /// A unit made to measure
        custom: Flag = spec.like("true");
        /// Number in parallel
        count: Count = spec.like("2");
        /// Its dimensions, when it is stated or exists
        dimensions: Option<Model> = spec.like("{ length = \"10 ft\", width = \"4 ft\" }");
    }
}
keys! {
    /// What was measured or seen on one occasion, at a unit that stands and runs.
    Observed "observed" {
        /// The occasion
        name: Text = spec.like("\"composite of 3 May\"").needed();
        /// Total oil that left
        oil_out: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0.01 mg/L", "100000 mg/L").like("\"85 mg/L\"");
        /// Total oil that arrived
        oil_in: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0.01 mg/L", "500000 mg/L").like("\"300 mg/L\"");
        /// Flow through the unit
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").like("\"60 gpm\"");
        /// Temperature of the water
        temperature: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "80 °C").like("\"55 °F\"");
        /// Thickness of the oil layer in the unit
        oil_layer: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "200 in").like("\"2 in\"");
        /// Depth of the sludge, from the bottom of the hopper
        sludge: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "200 in").like("\"8 in\"");
        /// How far the water stands above its usual level ahead of the mesh
        backed_up: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "100 in").like("\"3 in\"");
        /// How the water that leaves looks
        looks: Word<Look> = spec.like("\"milky\"");
        /// What a jar of it does when it stands
        jar: Word<Jar> = spec.like("\"stays\"");
        /// What the oil alarm does
        alarm: Word<AlarmSign> = spec.like("\"no oil found\"");
    }
}
keys! {
    /// What the engineer decided about a finding.
    Decision "decision" {
        /// The rule
        rule: Text = spec.like("\"frost-outdoors\"").needed();
        /// Accepted, by others, or open
        decision: Word<Settled> = spec.like("\"accepted\"").needed();
        /// Why
        because: Text = spec.like("\"heat tracing by the electrical contractor\"").needed();
        /// Who
        who: Text = spec.like("\"J. Example\"");
    }
}
