//! Formula: density factor of EN 858-2

use crate::page::Evidence::{Limit, Published};
use crate::sources::{EN_858_TABLES, SEPARATOR_SCOPE};
use crate::{choice, formula};
use stillrise_units::{Density, Ratio};

choice! {
    /// Arrangement of a separator system by EN 858-2: sludge trap S, separator of class I or II, sampling point P.
    SeparatorSystem {
        /// sludge trap, gravity separator (class II), sampling point
        SiiP "S-II-P",
        /// sludge trap, coalescing separator (class I), sampling point
        SiP "S-I-P",
        /// sludge trap, gravity separator and coalescing separator in series, sampling point
        SiiIP "S-II-I-P",
    }
}

formula! {
    /// Factor on the nominal size for oils that rise slower than the test oil.
    ///
    /// A table in three steps, at 850 and 900 kg/m3, by arrangement. The standard's scope ends at 950 kg/m3: a heavier
    /// oil has no factor, and neither have animal and vegetable oils or stable emulsions of any density.
    "en858-density-factor" "Density factor of EN 858-2"
    fn factor(
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 650.0 .. 950.0 in 400.0 .. 950.0];
        system: SeparatorSystem = "system" "arrangement of the separator system";
    ) -> Ratio = "f_d" "density factor" [ONE, ONE];
    reduced [rho_o KG_M3 => ONE] {
        if rho_o <= 850.0 || system == SeparatorSystem::SiiIP { 1.0 }
        else if system == SeparatorSystem::SiP && rho_o <= 900.0 { 1.5 }
        else if system == SeparatorSystem::SiP || rho_o <= 900.0 { 2.0 }
        else { 3.0 }
    }
    sources [EN_858_TABLES, SEPARATOR_SCOPE]
    checks [
        "rho_o=850 kg/m3, system=S-II-P" => "1", Published(&EN_858_TABLES, "table 4, up to 0.85");
        "rho_o=900 kg/m3, system=S-II-P" => "2", Published(&EN_858_TABLES, "table 4, above 0.85 to 0.90");
        "rho_o=950 kg/m3, system=S-II-P" => "3", Published(&EN_858_TABLES, "table 4, above 0.90 to 0.95");
        "rho_o=840 kg/m3, system=S-I-P" => "1", Published(&EN_858_TABLES, "table 4, up to 0.85");
        "rho_o=860 kg/m3, system=S-I-P" => "1.5", Published(&EN_858_TABLES, "table 4, above 0.85 to 0.90");
        "rho_o=920 kg/m3, system=S-I-P" => "2", Published(&EN_858_TABLES, "table 4, above 0.90 to 0.95");
        "rho_o=880 kg/m3, system=S-II-I-P" => "1", Published(&EN_858_TABLES, "table 4, both in series");
        "rho_o=940 kg/m3, system=S-II-I-P" => "1", Published(&EN_858_TABLES, "table 4, both in series");
        "rho_o=951 kg/m3, system=S-II-P" => "outside: rho_o", Limit("the standard's scope ends at 0.95");
    ]
}
