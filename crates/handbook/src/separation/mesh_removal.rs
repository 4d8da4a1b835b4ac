//! Formula: stub
use crate::formula;
use crate::page::Evidence::Limit;
use crate::page::Series;
use crate::sources::DEFINITION;
use stillrise_units::{Length, Velocity, Ratio};
formula! {
    /// Stub.
    "mesh-removal" "Stub"
    fn removal(
        d: Length = "d" "size" [UM, UM: 0.001 .. 50.0 in 0.0 .. 1e9];
        v: Velocity = "v" "velocity" [FT_MIN, MM_S: 0.001 .. 50.0 in 0.0 .. 1e9];
        solidity: Ratio = "alpha" "share of the mesh's volume that is fibre" [PERCENT, PERCENT: 0.5 .. 20.0 in 0.1 .. 60.0];
        fibre: Length = "d_f" "diameter of the fibre" [UM, UM: 5.0 .. 1000.0 in 0.5 .. 10000.0];
        depth: Length = "L" "depth of the mesh along the flow" [IN, MM: 0.0 .. 300.0 in 0.0 .. 10000.0];
        face: Velocity = "U" "velocity through the mesh, over its free area" [FT_MIN, MM_S: 0.1 .. 30.0 in 1e-6 .. 1e6];
        sticking: Ratio = "s_m" "share of the droplets that touch a fibre and stay" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
        curve: Series = "d|E_m" "measured: size, and share that the mesh catches" {UM, UM; PERCENT, PERCENT};
    ) -> Ratio = "P" "number" [ONE, ONE];
    reduced [d M, v M_S, solidity ONE, fibre M, depth M, face M_S, sticking ONE => ONE] { whole(d, v, solidity, fibre, depth, face, sticking, curve) }
    helpers [whole(f64,f64,f64,f64,f64,f64,f64,Series) "x" "y"]
    sources [DEFINITION]
    checks ["d=1 um, v=0 mm/s, solidity=3 %, fibre=100 um, depth=0 mm, face=1 mm/s, sticking=0 %, curve=[]" => "0", Limit("none");]
}
#[allow(clippy::too_many_arguments)]
fn whole(d: f64, v: f64, solidity: f64, fibre: f64, depth: f64, face: f64, sticking: f64, curve: Series) -> f64 {
    if curve.0.is_empty() { caught(d,v,solidity,fibre,depth,face,sticking) } else { super::mesh_catch::on_curve(d,&curve) }
}
pub(crate) fn caught(d: f64, v: f64, solidity: f64, fibre: f64, depth: f64, face: f64, sticking: f64) -> f64 {
    let r = d / fibre;
    1.0 - stillrise_units::math::exp(-4.0 * solidity * (r * r + v / face) * sticking * depth / (core::f64::consts::PI * fibre * (1.0 - solidity)))
}
