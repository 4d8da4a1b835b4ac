//! Formula: thickest oil layer above the plate pack

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Length};

formula! {
    /// How thick the layer may grow before its underside sinks into the plates or the mesh.
    ///
    /// A clearance of 2 in is a proposal of this handbook. A negative result means that the pack stands
    /// too high for any layer.
    "pack-cap" "Thickest oil layer above the plate pack"
    fn thickness(
        z_water: Length = "Z_cw" "lowest possible level of the clear water" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        z_pack: Length = "Z_pack" "elevation of the top of the pack" [IN, MM: 0.0 .. 6000.0 in -20000.0 .. 50000.0];
        clearance: Length = "c" "clear water kept above the pack" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 50000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_max" "thickest oil layer that stays above the pack" [IN, MM];
    typed {
        let r = rho_o / rho_w;
        (z_water - z_pack - clearance) / r
    }
    sources [HYDROSTATICS]
    checks [
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=0.74 g/cm3, rho_w=0.998 g/cm3" => "21.58 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=0.80 g/cm3, rho_w=0.998 g/cm3" => "19.96 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "18.79 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=0.88 g/cm3, rho_w=0.998 g/cm3" => "18.15 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=0.93 g/cm3, rho_w=0.998 g/cm3" => "17.17 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=0.95 g/cm3, rho_w=0.998 g/cm3" => "16.81 in",
            ByHand("hand arithmetic; water 0.998");
        "z_water=40 in, z_pack=38 in, clearance=2 in, rho_o=0.85 g/cm3, rho_w=1 g/cm3" => "0.00000 in",
            Limit("the clearance takes all the water above the pack");
        "z_water=56 in, z_pack=38 in, clearance=2 in, rho_o=1 g/cm3, rho_w=1 g/cm3" => "16.00000 in",
            Limit("an oil as heavy as the water fills the depth itself");
    ]
}
