//! Formula: volume of the sludge trap by EN 858-2

use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::EN_858_SLUDGE;
use crate::{choice, formula};
use stillrise_units::math::max;
use stillrise_units::{Flow, Ratio, Volume};

choice! {
    /// How much sludge comes.
    SludgeLoad {
        /// no sludge, as from condensate
        None "none",
        /// rain from surfaces with little grit and little traffic
        Small "small",
        /// parking under a roof, the one use whose small trap may serve small separators
        CoveredParking "covered parking",
        /// filling stations, washing by hand, workshops, open parking, power plants
        Medium "medium",
        /// washes of trucks, buses, site and farm vehicles
        Large "large",
        /// automatic car wash
        AutomaticWash "automatic wash",
    }
}

formula! {
    /// Least volume of the sludge trap that EN 858-2 asks for.
    ///
    /// 100, 200 or 300 litres for each unit of nominal size, over the density factor, because that factor makes the
    /// size larger without bringing more sludge. The small load is not for separators below NS 10, except under covered
    /// parking; the two texts differ whether NS 10 itself is included, and here it is, which is the safe side.
    "en858-sludge-trap" "Volume of the sludge trap by EN 858-2"
    fn volume(
        ns: Flow = "NS" "nominal size, as a flow" [L_S, L_S: 1.5 .. 500.0 in 0.0 .. 1e6];
        f_d: Ratio = "f_d" "density factor" [ONE, ONE: 1.0 .. 3.0 in 1.0 .. 10.0];
        load: SludgeLoad = "load" "how much sludge comes";
    ) -> Volume = "V_s" "volume of the sludge trap" [L, L];
    reduced [ns L_S, f_d ONE => L] {
        if load == SludgeLoad::None { 0.0 * ns }
        else if load == SludgeLoad::CoveredParking || load == SludgeLoad::Small && ns > 10.0 { 100.0 * ns / f_d }
        else if load == SludgeLoad::Small || load == SludgeLoad::Medium { max(200.0 * ns / f_d, 600.0) }
        else if load == SludgeLoad::Large { max(300.0 * ns / f_d, 600.0) }
        else { max(300.0 * ns / f_d, 5000.0) }
    }
    sources [EN_858_SLUDGE]
    checks [
        "ns=1 L/s, f_d=1, load=covered parking" => "100 L", Published(&EN_858_SLUDGE, "small: 100 NS / fd");
        "ns=1 L/s, f_d=1, load=medium" => "600 L", Published(&EN_858_SLUDGE, "medium: at least 600 L");
        "ns=1 L/s, f_d=1, load=large" => "600 L", Published(&EN_858_SLUDGE, "high: at least 600 L");
        "ns=1 L/s, f_d=1, load=automatic wash" => "5000 L", Published(&EN_858_SLUDGE, "automatic car wash: at least 5000 L");
        "ns=20 L/s, f_d=2, load=small" => "1000 L", ByHand("100 x 20 / 2");
        "ns=10 L/s, f_d=1, load=small" => "2000 L", ByHand("200 x 10: the small load is not for this size");
        "ns=15 L/s, f_d=1.5, load=medium" => "2000 L", ByHand("200 x 15 / 1.5");
        "ns=20 L/s, f_d=1, load=large" => "6000 L", ByHand("300 x 20");
        "ns=20 L/s, f_d=1, load=automatic wash" => "6000 L", ByHand("300 x 20, above 5000");
        "ns=20 L/s, f_d=1, load=none" => "0 L", Limit("no sludge, no trap");
    ]
}
