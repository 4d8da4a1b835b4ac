//! Formula: soil beside the prism that a leaning plane adds

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{BUOYANCY_PERMIT, HEAD_WEDGE};
use stillrise_units::math::{max, tan};
use stillrise_units::{Angle, Length, Volume};

formula! {
    /// The wedge between the upright plane at a wall and a plane that leans outward from its foot, up to a level.
    ///
    /// Soil tears along such a plane when a unit lifts. One permit calculation leans it by a quarter of its height (14°)
    /// from the underside of the tank and along both sides, another by 30° from the widest line: the factor of one and
    /// the same tank goes from 0.66 to 1.48 by the method, so say which was used. Corners and ends left out are on the
    /// safe side. Use the geotechnical engineer's angle, none in doubt; planes of neighbouring units must not overlap.
    "soil-wedge" "Soil beside the prism that a leaning plane adds"
    fn volume(
        along: Length = "L" "length of the walls along which the plane runs, all together" [FT, M: 0.0 .. 60.0 in 0.0 .. 1000.0];
        level: Length = "z" "level up to which soil counts, above the foot of the plane" [FT, M: -20.0 .. 20.0 in -10000.0 .. 10000.0];
        lean: Angle = "theta" "lean of the plane from upright" [DEG, DEG: 0.0 .. 35.0 in 0.0 .. 60.0];
    ) -> Volume = "V_wedge" "volume of the soil" [FT3, M3];
    reduced [along M, level M, lean RAD => M3] { max(0.0, level) * max(0.0, level) * tan(lean) / 2.0 * along }
    sources [BUOYANCY_PERMIT, HEAD_WEDGE]
    checks [
        "along=2 ft, level=10.83 ft, lean=14.0362 deg" => "29.20 ft3" within 0.02 "the source rounds the end area to 114 ft2",
            Published(&BUOYANCY_PERMIT, "end area of 114 ft2 with both wedges, less 7.83 x 10.83 = 84.80 ft2");
        "along=12.5 ft, level=10.83 ft, lean=14.0362435 deg" => "183.264 ft3", ByHand("10.83 x 10.83 x 0.25 / 2 x 12.5");
        "along=10 ft, level=6 ft, lean=30 deg" => "103.923 ft3", ByHand("36 x 0.577350 / 2 x 10");
        "along=10 ft, level=6 ft, lean=45 deg" => "180.0000 ft3", Limit("at 45 degrees half a square of 6 ft");
        "along=10 ft, level=6 ft, lean=0 deg" => "0 ft3", Limit("an upright plane adds nothing");
        "along=10 ft, level=-1 ft, lean=30 deg" => "0 ft3", Limit("a level below the foot");
    ]
}
