//! Formula: density of an oil at another temperature

use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{API_MPMS_2004, ASTM_D1250_1980, NOAA_OIL_DATA, TEXTBOOK_OILS};
use crate::{choice, formula};
use stillrise_units::math::{exp, pow};
use stillrise_units::{Density, Temperature};

choice! {
    /// Groups of the petroleum measurement tables, and esters beside them.
    OilGroup {
        /// crude oil: table A
        Crude "crude",
        /// fuel oils, diesel and heavier products from 838 kg/m3: table B
        FuelOil "fuel-oil",
        /// jet fuel, kerosene and products of 788 to 838 kg/m3: table B
        Jet "jet",
        /// products of 770 to 788 kg/m3, between gasoline and jet fuel: table B
        Transition "transition",
        /// gasoline and products up to 770 kg/m3: table B
        Gasoline "gasoline",
        /// lubricating oil: table D
        Lubricating "lubricating",
        /// vegetable oil and natural ester: outside the tables, expansion from memory
        Ester "ester",
    }
}

// Tables 54A, 54B and 54D of 1980: base 15 °C, kg/m3 and °C. Each is 1.8 times the constant of
// the Fahrenheit set; the two sets must never be mixed.
const K0_CRUDE: f64 = 613.9723;
const K0_FUEL: f64 = 186.9696;
const K1_FUEL: f64 = 0.4862;
const K0_JET: f64 = 594.5418;
const K0_TRANSITION: f64 = 2680.3206;
const K2_TRANSITION: f64 = -0.003_363_12;
const K0_GASOLINE: f64 = 346.4228;
const K1_GASOLINE: f64 = 0.4388;
const K1_LUBE: f64 = 0.6278;
// From memory; one published record of soybean oil gives 7.9e-4.
pub(super) const ALPHA_ESTER: f64 = 7.4e-4;

const PROCEDURE: &str = "the 2004 procedure coded apart in Python: density at 60 °F, scale shift, rounding left out";

formula! {
    /// Density of an oil at temperature from its density at 15 °C, by the closed form of the
    /// petroleum measurement tables of 1980 in °C. The 2004 procedure gives the same within 0.003 % from 0 to
    /// 60 °C, but for the transition group: there this form is 0.007 % low at 0 °C, 0.013 % high at 40 and
    /// 0.024 % high at 60, because its constants for 15 °C are those for 60 °F times 1.8 while the expansion
    /// falls steeply with density. `volume-correction-60f` has no such error.
    ///
    /// The product tables divide by density, not by name: 838 kg/m3 and up is fuel oil, a light
    /// diesel of 830 falls under jet. Lubricating oil has its own table, crude another. Against
    /// measured densities at 0 °C from those at 15 °C (open oil data, our comparison) the form is
    /// 0.1 kg/m3 off for distillate fuels (8 oils), 0.5 for lubricating oil (2), 1.3 for residual
    /// fuel (10) and 1.4 in the median for crude (63; one waxy crude 44). Vegetable oils and
    /// natural esters stand outside the tables; biodiesel follows the fuel-oil group within 0.5.
    "oil-density" "Density of an oil at another temperature"
    fn density(
        rho_15: Density = "rho_15" "density of the oil at 15 °C" [LB_FT3, KG_M3: 610.0 .. 1165.0 in 500.0 .. 1300.0];
        t: Temperature = "t" "temperature of the oil" [DEG_F, DEG_C: -20.0 .. 95.0 in -50.0 .. 150.0];
        group: OilGroup = "group" "group of the oil";
    ) -> Density = "rho_o" "density of the oil" [LB_FT3, KG_M3];
    reduced [rho_15 KG_M3, t DEG_C => KG_M3] {
        let alpha = if group == OilGroup::Crude { K0_CRUDE / pow(rho_15, 2.0) }
            else if group == OilGroup::FuelOil { K0_FUEL / pow(rho_15, 2.0) + K1_FUEL / rho_15 }
            else if group == OilGroup::Jet { K0_JET / pow(rho_15, 2.0) }
            else if group == OilGroup::Transition { K0_TRANSITION / pow(rho_15, 2.0) + K2_TRANSITION }
            else if group == OilGroup::Gasoline { K0_GASOLINE / pow(rho_15, 2.0) + K1_GASOLINE / rho_15 }
            else if group == OilGroup::Lubricating { K1_LUBE / rho_15 }
            else { ALPHA_ESTER };
        let delta_t = t - 15.0;
        rho_15 * exp(-alpha * delta_t * (1.0 + 0.8 * alpha * delta_t))
    }
    constants [
        K0_CRUDE "K0_crude", K0_FUEL "K0_fuel", K1_FUEL "K1_fuel", K0_JET "K0_jet",
        K0_TRANSITION "K0_transition", K2_TRANSITION "K2_transition",
        K0_GASOLINE "K0_gasoline", K1_GASOLINE "K1_gasoline", K1_LUBE "K1_lube", ALPHA_ESTER "alpha_ester",
    ]
    sources [ASTM_D1250_1980, API_MPMS_2004, NOAA_OIL_DATA, TEXTBOOK_OILS]
    checks [
        "rho_15=845 kg/m3, t=15 °C, group=fuel-oil" => "845 kg/m3", Limit("at 15 °C nothing changes");
        "rho_15=923 kg/m3, t=0 °C, group=ester" => "934 kg/m3" within 1e-3 "one oil, expansion 7.9e-4 against 7.4e-4 per °C",
            Published(&NOAA_OIL_DATA, "record AD02348, soybean oil: 934 kg/m3 at 0 °C, 923 at 15 °C");
        "rho_15=850 kg/m3, t=5 °C, group=crude" => "857.204 kg/m3", ByHand("independent evaluation in Python of the closed form");
        "rho_15=740 kg/m3, t=5 °C, group=gasoline" => "749.035 kg/m3", ByHand("independent evaluation in Python of the closed form");
        "rho_15=810 kg/m3, t=5 °C, group=jet" => "817.320 kg/m3", ByHand("independent evaluation in Python of the closed form");
        "rho_15=850 kg/m3, t=5 °C, group=fuel-oil" => "857.044 kg/m3", ByHand("independent evaluation in Python of the closed form");
        "rho_15=960 kg/m3, t=5 °C, group=fuel-oil" => "966.795 kg/m3", ByHand("independent evaluation in Python of the closed form");
        "rho_15=880 kg/m3, t=5 °C, group=lubricating" => "886.264 kg/m3", ByHand("independent evaluation in Python of the closed form");
        "rho_15=850.4013 kg/m3, t=0 °C, group=crude" => "861.193 kg/m3" within 1e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=850.4013 kg/m3, t=40 °C, group=crude" => "832.233 kg/m3" within 1.5e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=850.4013 kg/m3, t=60 °C, group=crude" => "817.553 kg/m3" within 3e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=850.3923 kg/m3, t=0 °C, group=fuel-oil" => "860.943 kg/m3" within 1e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=850.3923 kg/m3, t=40 °C, group=fuel-oil" => "832.633 kg/m3" within 1.5e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=850.3923 kg/m3, t=60 °C, group=fuel-oil" => "818.287 kg/m3" within 3e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=810.4078 kg/m3, t=0 °C, group=jet" => "821.371 kg/m3" within 1e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=810.4078 kg/m3, t=40 °C, group=jet" => "791.939 kg/m3" within 1.5e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=810.4078 kg/m3, t=60 °C, group=jet" => "777.008 kg/m3" within 3e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=740.5039 kg/m3, t=0 °C, group=gasoline" => "754.028 kg/m3" within 1e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=740.5039 kg/m3, t=40 °C, group=gasoline" => "717.637 kg/m3" within 1.5e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=740.5039 kg/m3, t=60 °C, group=gasoline" => "699.096 kg/m3" within 3e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=880.3488 kg/m3, t=0 °C, group=lubricating" => "889.735 kg/m3" within 1e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=880.3488 kg/m3, t=40 °C, group=lubricating" => "864.572 kg/m3" within 1.5e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=880.3488 kg/m3, t=60 °C, group=lubricating" => "851.842 kg/m3" within 3e-05 "the closed form of 1980 against the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=772.4865 kg/m3, t=0 °C, group=transition" => "785.548 kg/m3" within 7.1e-05 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=772.4865 kg/m3, t=40 °C, group=transition" => "750.424 kg/m3" within 0.00013 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=772.4865 kg/m3, t=60 °C, group=transition" => "732.549 kg/m3" within 0.00024 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=780.4517 kg/m3, t=0 °C, group=transition" => "792.587 kg/m3" within 7.1e-05 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=780.4517 kg/m3, t=40 °C, group=transition" => "759.976 kg/m3" within 0.00013 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=780.4517 kg/m3, t=60 °C, group=transition" => "743.401 kg/m3" within 0.00024 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=786.4260 kg/m3, t=0 °C, group=transition" => "797.872 kg/m3" within 7.1e-05 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=786.4260 kg/m3, t=40 °C, group=transition" => "767.128 kg/m3" within 0.00013 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
        "rho_15=786.4260 kg/m3, t=60 °C, group=transition" => "751.515 kg/m3" within 0.00024 "the metric constants of the transition group drift from the 2004 procedure", ByHand(PROCEDURE);
    ]
}
