//! The trade's units, each once, each exact.
//!
//! A factor is written here and nowhere else in the workspace. Factors are the definitions of
//! NIST SP 811 and NIST Handbook 44, Appendix C; `tests/exact.rs` compares them with an
//! independent library row by row.

/// The dimension of a unit, named after the quantity type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Dim {
    Ratio,
    Length,
    Area,
    Volume,
    Time,
    Velocity,
    Acceleration,
    Flow,
    Mass,
    MassRate,
    Density,
    Viscosity,
    KinematicViscosity,
    Pressure,
    SurfaceTension,
    Force,
    Power,
    Dissipation,
    PerLength,
    ShearRate,
    Angle,
    Temperature,
}

impl Dim {
    /// What a person would call it in a message.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Dim::Ratio => "pure number",
            Dim::Length => "length",
            Dim::Area => "area",
            Dim::Volume => "volume",
            Dim::Time => "time",
            Dim::Velocity => "velocity or intensity",
            Dim::Acceleration => "acceleration",
            Dim::Flow => "flow",
            Dim::Mass => "mass",
            Dim::MassRate => "mass per time",
            Dim::Density => "density or concentration",
            Dim::Viscosity => "dynamic viscosity",
            Dim::KinematicViscosity => "kinematic viscosity",
            Dim::Pressure => "pressure",
            Dim::SurfaceTension => "interfacial tension",
            Dim::Force => "force",
            Dim::Power => "power",
            Dim::Dissipation => "power per mass",
            Dim::PerLength => "reciprocal length",
            Dim::ShearRate => "shear rate or speed of rotation",
            Dim::Angle => "angle",
            Dim::Temperature => "temperature",
        }
    }
}

impl Dim {
    /// The coherent SI unit of the dimension, in which typed formulas multiply out.
    #[must_use]
    pub fn coherent(self) -> &'static Unit {
        match self {
            Dim::Ratio => &ONE,
            Dim::Length => &M,
            Dim::Area => &M2,
            Dim::Volume => &M3,
            Dim::Time => &S,
            Dim::Velocity => &M_S,
            Dim::Acceleration => &M_S2,
            Dim::Flow => &M3_S,
            Dim::Mass => &KG,
            Dim::MassRate => &KG_S,
            Dim::Density => &KG_M3,
            Dim::Viscosity => &PA_S,
            Dim::KinematicViscosity => &M2_S,
            Dim::Pressure => &PA,
            Dim::SurfaceTension => &N_M,
            Dim::Force => &NEWTON,
            Dim::Power => &WATT,
            Dim::Dissipation => &W_KG,
            Dim::PerLength => &PER_M,
            Dim::ShearRate => &PER_S,
            Dim::Angle => &RAD,
            Dim::Temperature => &K,
        }
    }
}

/// One unit: `si = (number + offset) * scale`. Only temperatures have an offset.
#[derive(Debug)]
pub struct Unit {
    /// As printed.
    pub symbol: &'static str,
    /// Other spellings that are read.
    pub also: &'static [&'static str],
    /// What it measures.
    pub dim: Dim,
    /// SI units in one of these.
    pub scale: f64,
    /// Added before scaling.
    pub offset: f64,
}

impl Unit {
    /// A number in this unit to SI.
    #[must_use]
    pub fn to_si(&self, value: f64) -> f64 {
        (value + self.offset) * self.scale
    }
    /// A number in SI to this unit.
    #[must_use]
    pub fn from_si(&self, value: f64) -> f64 {
        value / self.scale - self.offset
    }
    /// All units of a dimension, in the order of the catalogue.
    pub fn of_dim(dim: Dim) -> impl Iterator<Item = &'static Unit> {
        UNITS.iter().copied().filter(move |u| u.dim == dim)
    }
}

impl PartialEq for Unit {
    fn eq(&self, other: &Self) -> bool {
        self.symbol == other.symbol && self.dim == other.dim
    }
}

// The exact building blocks.
const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
/// Inches in a foot.
pub(crate) const INCHES_IN_FOOT: f64 = 12.0;
const ACRE: f64 = 4_046.856_422_4; // 43 560 ft2, international foot
const GALLON: f64 = 3.785_411_784e-3; // 231 in3
const IMPERIAL_GALLON: f64 = 4.546_09e-3;
const POUND: f64 = 0.453_592_37;
const POUND_FORCE: f64 = 4.448_221_615_260_5; // pound x 9.80665
const MINUTE: f64 = 60.0;
const HOUR: f64 = 3600.0;
const DAY: f64 = 86_400.0;

macro_rules! catalog {
    ($($(#[$doc:meta])* $id:ident $dim:ident $symbol:literal [$($also:literal),*] $scale:expr $(, offset $offset:expr)?;)*) => {
        $($(#[$doc])* pub static $id: Unit = Unit {
            symbol: $symbol, also: &[$($also),*], dim: Dim::$dim, scale: $scale,
            offset: 0.0 $(+ $offset)?,
        };)*
        /// Every unit that can be read or printed.
        pub static UNITS: &[&Unit] = &[$(&$id),*];
    };
}

catalog! {
    /// pure number
    ONE Ratio "" ["-", "1"] 1.0;
    /// per cent
    PERCENT Ratio "%" ["percent", "pct"] 0.01;
    /// gram per kilogram: salinity
    G_KG Ratio "g/kg" ["‰"] 1e-3;
    /// microlitre per litre: oil content by volume
    UL_L Ratio "µL/L" ["uL/L", "ppm(v)"] 1e-6;

    /// metre
    M Length "m" ["metre", "meter", "metres", "meters"] 1.0;
    /// millimetre
    MM Length "mm" ["millimetres", "millimeters"] 1e-3;
    /// centimetre
    CM Length "cm" ["centimetres", "centimeters"] 1e-2;
    /// kilometre
    KM Length "km" [] 1e3;
    /// micrometre
    UM Length "µm" ["um", "μm", "micron", "microns"] 1e-6;
    /// foot
    FT Length "ft" ["ft.", "feet", "foot", "'", "′", "’"] FOOT;
    /// inch
    IN Length "in" ["in.", "inch", "inches", "\"", "″", "”", "''", "′′"] INCH;
    /// thousandth of an inch
    MIL Length "mil" [] INCH * 1e-3;

    /// square metre
    M2 Area "m2" ["m²", "sq m", "sqm", "square metres", "square meters", "sq. m", "qm"] 1.0;
    /// square foot
    FT2 Area "ft2" ["ft²", "sq ft", "sqft", "sf", "square feet", "sq. ft", "sq. ft."] FOOT * FOOT;
    /// square yard
    YD2 Area "yd2" ["yd²", "sq yd", "sq yds", "sq. yd", "square yard", "square yards"] 9.0 * FOOT * FOOT;
    /// square inch
    IN2 Area "in2" ["in²", "sq in"] INCH * INCH;
    /// square micrometre: permeability
    UM2 Area "µm2" ["um2", "µm²", "um²"] 1e-12;
    /// acre of 43 560 square feet
    ACRES Area "acre" ["acres", "ac"] ACRE;
    /// Square mile, international.
    MI2 Area "mi2" ["mi²", "sq mi"] 640.0 * ACRE;
    /// hectare
    HA Area "ha" ["hectare", "hectares"] 1e4;

    /// cubic metre
    M3 Volume "m3" ["m³", "cu m", "cubic metres", "cubic meters", "cbm"] 1.0;
    /// litre
    L Volume "L" ["l", "litre", "liter", "litres", "liters", "Liter", "Litern"] 1e-3;
    /// US gallon
    GAL Volume "gal" ["US gal", "gallon", "gallons", "gals", "US gallons", "US gallon"] GALLON;
    /// imperial gallon
    IMP_GAL Volume "imp gal" ["imperial gal", "UK gal", "imperial gallons", "UK gallons"] IMPERIAL_GALLON;
    /// cubic foot
    FT3 Volume "ft3" ["ft³", "cu ft", "cf", "cubic feet"] FOOT * FOOT * FOOT;
    /// cubic yard
    YD3 Volume "yd3" ["yd³", "cu yd"] 27.0 * FOOT * FOOT * FOOT;
    /// barrel of 42 US gallons
    BBL Volume "bbl" ["barrel", "barrels"] 42.0 * GALLON;

    /// second
    S Time "s" ["sec", "second", "seconds"] 1.0;
    /// minute
    MIN Time "min" ["minute", "minutes", "Minuten"] MINUTE;
    /// hour
    H Time "h" ["hr", "hrs", "hour", "hours", "Stunden"] HOUR;
    /// day
    D Time "d" ["day", "days", "Tage", "Tagen"] DAY;
    /// week
    WK Time "wk" ["week", "weeks", "Wochen"] 7.0 * DAY;
    /// month, the twelfth of a year of 365.25 days
    MONTH Time "mo" ["month", "months", "Monate", "Monaten"] 365.25 / 12.0 * DAY;
    /// year of 365.25 days
    YR Time "yr" ["year", "years", "a", "Jahre", "Jahren"] 365.25 * DAY;

    /// metre per second
    M_S Velocity "m/s" [] 1.0;
    /// millimetre per second
    MM_S Velocity "mm/s" [] 1e-3;
    /// metre per hour
    M_H Velocity "m/h" ["m3/m2/h"] 1.0 / HOUR;
    /// foot per second
    FT_S Velocity "ft/s" ["fps"] FOOT;
    /// foot per minute
    FT_MIN Velocity "ft/min" ["fpm"] FOOT / MINUTE;
    /// inch per hour
    IN_H Velocity "in/h" ["in/hr", "iph", "inches per hour", "in per hour", "inches/hour", "inch per hour", "inches an hour", "inch an hour"] INCH / HOUR;
    /// millimetre per hour
    MM_H Velocity "mm/h" ["mm/hr", "mm per hour", "mm/hour"] 1e-3 / HOUR;
    /// US gallon per minute and square foot
    GPM_FT2 Velocity "gpm/ft2" ["gpm/ft²", "gpm/sq ft"] GALLON / MINUTE / (FOOT * FOOT);
    /// litre per second and hectare
    L_S_HA Velocity "L/(s ha)" ["L/s/ha", "l/(s.ha)", "l/s/ha", "l/(s ha)", "L/(s·ha)", "l/(s·ha)", "l/(s*ha)"] 1e-7;

    /// metre per second squared
    M_S2 Acceleration "m/s2" ["m/s²"] 1.0;
    /// foot per second squared
    FT_S2 Acceleration "ft/s2" ["ft/s²"] FOOT;

    /// cubic metre per second
    M3_S Flow "m3/s" ["m³/s"] 1.0;
    /// cubic metre per hour
    M3_H Flow "m3/h" ["m³/h", "m3/hr", "cmh", "m3 per hour", "m³/hr", "cubic metres per hour", "cubic meters per hour", "cbm/h"] 1.0 / HOUR;
    /// cubic metre per minute
    M3_MIN Flow "m3/min" ["m³/min", "cmm"] 1.0 / MINUTE;
    /// cubic metre per day
    M3_D Flow "m3/d" ["m³/d", "m3/day", "m3 per day", "m³/day", "cubic metres per day", "cubic meters per day"] 1.0 / DAY;
    /// litre per second
    L_S Flow "L/s" ["l/s", "lps", "litres per second", "liters per second", "litres/s", "liters/s", "litres a second"] 1e-3;
    /// litre per minute
    L_MIN Flow "L/min" ["l/min", "lpm", "litres per minute", "liters per minute", "litres/min", "liters/min", "l/minute", "litres a minute", "liters a minute"] 1e-3 / MINUTE;
    /// litre per hour
    L_H Flow "L/h" ["l/h", "litres per hour", "liters per hour"] 1e-3 / HOUR;
    /// litre per day
    L_D Flow "L/d" ["l/d", "L/day", "litres per day", "liters per day"] 1e-3 / DAY;
    /// US gallon per minute
    GPM Flow "gpm" ["gal/min", "USgpm", "US gpm", "gallons per minute", "gallons/min", "gallons/minute", "gal per min", "US gallons per minute", "gallons a minute"] GALLON / MINUTE;
    /// US gallon per hour
    GPH Flow "gph" ["gal/h", "gal/hr", "gallons per hour", "gallons/hour"] GALLON / HOUR;
    /// US gallon per day
    GPD Flow "gpd" ["gal/d", "gal/day", "gallons per day", "gallons/day", "gal per day"] GALLON / DAY;
    /// million US gallons per day
    MGD Flow "MGD" ["mgd"] 1e6 * GALLON / DAY;
    /// imperial gallon per minute
    IMP_GPM Flow "imp gpm" ["igpm", "imp gal/min"] IMPERIAL_GALLON / MINUTE;
    /// imperial gallon per hour
    IMP_GPH Flow "imp gph" ["imp gal/h"] IMPERIAL_GALLON / HOUR;
    /// imperial gallon per day
    IMP_GPD Flow "imp gpd" ["imp gal/d"] IMPERIAL_GALLON / DAY;
    /// cubic foot per second
    CFS Flow "cfs" ["ft3/s", "ft³/s"] FOOT * FOOT * FOOT;
    /// cubic foot per minute
    CFM Flow "ft3/min" ["cfm"] FOOT * FOOT * FOOT / MINUTE;

    /// kilogram
    KG Mass "kg" [] 1.0;
    /// tonne
    TONNE Mass "t" ["tonne", "tonnes"] 1000.0;
    /// pound
    LB Mass "lb" ["lbs", "pound", "pounds"] POUND;
    /// short ton of 2000 pounds
    US_TON Mass "US ton" ["short ton", "short tons", "US tons", "ton", "tons"] 2000.0 * POUND;

    /// kilogram per second
    KG_S MassRate "kg/s" [] 1.0;
    /// kilogram per day
    KG_D MassRate "kg/d" ["kg/day"] 1.0 / DAY;
    /// pound per day
    LB_D MassRate "lb/d" ["lb/day", "ppd"] POUND / DAY;

    /// kilogram per cubic metre
    KG_M3 Density "kg/m3" ["kg/m³"] 1.0;
    /// gram per cubic centimetre
    G_CM3 Density "g/cm3" ["g/cm³", "g/cc", "kg/L", "kg/l", "g/mL", "kg/dm3", "kg/dm³"] 1000.0;
    /// milligram per litre
    MG_L Density "mg/L" ["mg/l", "mg/litre", "g/m3", "mg per litre", "mg per liter", "milligrams per litre", "milligrams per liter", "parts per million"] 1e-3;
    /// microgram per litre
    UG_L Density "µg/L" ["ug/L", "ug/l", "µg/l"] 1e-6;
    /// gram per litre
    G_L Density "g/L" ["g/l"] 1.0;
    /// pound per cubic foot
    LB_FT3 Density "lb/ft3" ["lb/ft³", "pcf"] POUND / (FOOT * FOOT * FOOT);
    /// pound per US gallon
    LB_GAL Density "lb/gal" ["ppg"] POUND / GALLON;

    /// pascal second
    PA_S Viscosity "Pa s" ["Pa.s", "Pa·s"] 1.0;
    /// millipascal second
    MPA_S Viscosity "mPa s" ["mPa.s", "mPa·s"] 1e-3;
    /// centipoise, the same size
    CP Viscosity "cP" ["cp", "centipoise"] 1e-3;
    /// poise
    POISE Viscosity "P" ["poise"] 0.1;

    /// square metre per second
    M2_S KinematicViscosity "m2/s" ["m²/s"] 1.0;
    /// square millimetre per second
    MM2_S KinematicViscosity "mm2/s" ["mm²/s"] 1e-6;
    /// centistokes, the same size
    CST KinematicViscosity "cSt" ["cst", "centistokes"] 1e-6;
    /// square foot per second
    FT2_S KinematicViscosity "ft2/s" ["ft²/s"] FOOT * FOOT;

    /// pascal
    PA Pressure "Pa" [] 1.0;
    /// kilopascal
    KPA Pressure "kPa" [] 1e3;
    /// bar
    BAR Pressure "bar" [] 1e5;
    /// pound-force per square inch
    PSI Pressure "psi" ["lbf/in2"] POUND_FORCE / (INCH * INCH);
    /// pound-force per square foot
    PSF Pressure "psf" ["lbf/ft2"] POUND_FORCE / (FOOT * FOOT);

    /// newton per metre
    N_M SurfaceTension "N/m" [] 1.0;
    /// millinewton per metre
    MN_M SurfaceTension "mN/m" ["dyn/cm", "dyne/cm"] 1e-3;

    /// newton
    NEWTON Force "N" [] 1.0;
    /// kilonewton
    KN Force "kN" [] 1e3;
    /// pound-force
    LBF Force "lbf" [] POUND_FORCE;

    /// watt
    WATT Power "W" ["watt", "watts"] 1.0;
    /// kilowatt
    KW Power "kW" [] 1e3;
    /// mechanical horsepower, 550 foot pounds-force a second
    HP Power "hp" ["HP", "horsepower"] 550.0 * FOOT * POUND_FORCE;

    /// watt per kilogram
    W_KG Dissipation "W/kg" ["m2/s3"] 1.0;

    /// reciprocal metre
    PER_M PerLength "1/m" ["m-1"] 1.0;
    /// reciprocal foot
    PER_FT PerLength "1/ft" ["ft-1"] 1.0 / FOOT;

    /// reciprocal second: velocity gradient
    PER_S ShearRate "1/s" ["s-1"] 1.0;
    /// revolutions a minute: speed of rotation
    RPM ShearRate "rpm" ["1/min", "r/min"] 1.0 / MINUTE;

    /// radian
    RAD Angle "rad" ["radian", "radians"] 1.0;
    /// degree of arc
    DEG Angle "deg" ["°", "degree", "degrees"] core::f64::consts::PI / 180.0;

    /// kelvin
    K Temperature "K" ["kelvin"] 1.0;
    /// degree Celsius
    DEG_C Temperature "°C" ["C", "degC", "deg C", "celsius", "degrees C", "degree C", "degrees Celsius"] 1.0, offset 273.15;
    /// degree Fahrenheit
    DEG_F Temperature "°F" ["F", "degF", "deg F", "fahrenheit", "degrees F", "degree F", "degrees Fahrenheit"] 5.0 / 9.0, offset 459.67;
}
