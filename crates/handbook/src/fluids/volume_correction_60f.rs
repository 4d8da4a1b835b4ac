//! Formula: volume correction of an oil from 60 °F

use super::oil_density::{ALPHA_ESTER, OilGroup};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{API_MPMS_2004, ASTM_D1250_1980, TEXTBOOK_OILS};
use stillrise_units::math::{exp, pow};
use stillrise_units::{Density, Ratio, Temperature};

// Tables 6A, 6B and 6D of 1980, kg/m3 and °F; the 2004 procedure keeps these constants. They belong to
// 60 °F and must never be mixed with those of `oil-density`, which belong to 15 °C.
const K0_CRUDE_F: f64 = 341.0957;
const K0_FUEL_F: f64 = 103.8720;
const K1_FUEL_F: f64 = 0.2701;
const K0_JET_F: f64 = 330.3010;
const K0_TRANSITION_F: f64 = 1489.0670;
const K2_TRANSITION_F: f64 = -0.001_868_40;
const K0_GASOLINE_F: f64 = 192.4571;
const K1_GASOLINE_F: f64 = 0.2438;
const K1_LUBE_F: f64 = 0.348_78;

formula! {
    /// Volume at 60 °F over that at temperature, which is density at temperature over that at 60 °F, by
    /// the closed form of the petroleum measurement tables in °F.
    ///
    /// The 2004 procedure, which corrects for the change of the temperature scale in 1990, differs by
    /// 0.0017 % at most from 32 to 140 °F. For the transition group (770 to 787.5 kg/m3) this form is the
    /// better one: the metric constants of `oil-density` drift from it by 0.013 % at 40 °C.
    "volume-correction-60f" "Volume correction of an oil from 60 °F"
    fn correction(
        rho_60: Density = "rho_60" "density of the oil at 60 °F" [LB_FT3, KG_M3: 610.6 .. 1163.5 in 500.0 .. 1300.0];
        t: Temperature = "t" "temperature of the oil" [DEG_F, DEG_C: -20.0 .. 95.0 in -50.0 .. 150.0];
        group: OilGroup = "group" "group of the oil";
    ) -> Ratio = "C_TL" "volume correction" [ONE, ONE];
    reduced [rho_60 KG_M3, t DEG_F => ONE] {
        let alpha = if group == OilGroup::Crude { K0_CRUDE_F / pow(rho_60, 2.0) }
            else if group == OilGroup::FuelOil { K0_FUEL_F / pow(rho_60, 2.0) + K1_FUEL_F / rho_60 }
            else if group == OilGroup::Jet { K0_JET_F / pow(rho_60, 2.0) }
            else if group == OilGroup::Transition { K0_TRANSITION_F / pow(rho_60, 2.0) + K2_TRANSITION_F }
            else if group == OilGroup::Gasoline { K0_GASOLINE_F / pow(rho_60, 2.0) + K1_GASOLINE_F / rho_60 }
            else if group == OilGroup::Lubricating { K1_LUBE_F / rho_60 }
            else { ALPHA_ESTER / 1.8 };
        let delta_t = t - 60.0;
        exp(-alpha * delta_t * (1.0 + 0.8 * alpha * delta_t))
    }
    constants [
        K0_CRUDE_F "K0_crude", K0_FUEL_F "K0_fuel", K1_FUEL_F "K1_fuel", K0_JET_F "K0_jet",
        K0_TRANSITION_F "K0_transition", K2_TRANSITION_F "K2_transition",
        K0_GASOLINE_F "K0_gasoline", K1_GASOLINE_F "K1_gasoline", K1_LUBE_F "K1_lube", ALPHA_ESTER "alpha_ester",
    ]
    sources [ASTM_D1250_1980, API_MPMS_2004, TEXTBOOK_OILS]
    checks [
        "rho_60=845 kg/m3, t=60 °F, group=fuel-oil" => "1.0000000", Limit("at 60 °F nothing changes");
        "rho_60=920 kg/m3, t=60 °F, group=ester" => "1.0000000", Limit("at 60 °F nothing changes");
        "rho_60=920 kg/m3, t=50 °F, group=ester" => "1.004106", ByHand("exp(0.0041111 x (1 - 0.8 x 0.0041111)) = exp(0.0040976)");
    ]
}
