//! Formula: removal of one droplet size in an oleophilic mesh

use super::catch::{Bends, Lane, Met};
use super::feed::Sizes;
use super::{fibre_brownian, fibre_interception, mesh_penetration};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{FIBRE_DIFFUSION, JUDGEMENT, KUWABARA, SINGLE_FIBRE};
use core::f64::consts::PI;
use stillrise_units::lanes::{self, WIDTH};
use stillrise_units::math::{max, sqrt};
use stillrise_units::{Length, Ratio, Temperature, Typed, Velocity, Viscosity, ratio};

const OWN: &str = "independent evaluation in Python at 20 °C, oil of 850 kg/m3 by Stokes' law";

formula! {
    /// Share of droplets of one size and rise velocity that a bed of fibres catches.
    ///
    /// The three ways of `fibre-interception`, `fibre-gravity` and `fibre-brownian` are added and
    /// put through `mesh-penetration`; inertia is nothing in water. Oil held in the bed narrows the
    /// water's way, which shortens the time for rising but leaves interception as it is. A theory of clean,
    /// even, oil-wet fibres across a level or rising flow: it holds up no longer than the bed does. Such
    /// beds catch, grow and let go large drops, and above a critical velocity, which only a trial shows,
    /// they shed small ones. Fibre diameter governs: the catch of small droplets falls with its cube.
    "mesh-removal" "Removal of one droplet size in a mesh"
    fn removal(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 500.0 in 0.001 .. 10000.0];
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 100.0 in -1e9 .. 1e9];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        t: Temperature = "T" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 100.0];
    ) with Mesh "mesh" (
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
        fibre: Length = "d_f" "diameter of the fibres" [MIL, UM: 5.0 .. 600.0 in 0.1 .. 10000.0];
        length: Length = "L" "depth of the bed along the flow" [IN, MM: 5.0 .. 1000.0 in 0.0 .. 100000.0];
        u: Velocity = "U" "velocity on the face of the bed" [FT_MIN, MM_S: 0.1 .. 20.0 in 1e-6 .. 1000.0];
        sticking: Ratio = "s" "share of the collisions that stick" [PERCENT, PERCENT: 1.0 .. 100.0 in 0.0 .. 100.0];
        saturation: Ratio = "S" "share of the pores that holds oil" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 99.0];
    ) -> Ratio = "E" "share caught" [PERCENT, PERCENT];
    reduced [d M, v M_S, solidity ONE, fibre M, length M, u M_S, sticking ONE, saturation ONE, mu PA_S, t K => ONE] {
        let u_in = u / (1.0 - saturation);
        let eta = intercepted(d / fibre, solidity) + max(v, 0.0) / u_in + diffused(d, fibre, u_in, solidity, mu, t);
        1.0 - left(solidity, eta, sticking, length, fibre)
    }
    helpers [
        intercepted(f64, f64) "eta_R" "share by interception, `fibre-interception`";
        diffused(f64, f64, f64, f64, f64, f64) "eta_D" "share by Brownian motion, `fibre-brownian`";
        left(f64, f64, f64, f64, f64) "P" "share left, `mesh-penetration`";
    ]
    sources [SINGLE_FIBRE, KUWABARA, FIBRE_DIFFUSION, JUDGEMENT]
    checks [
        "d=10 um, v=0.008061668 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "6.383 %", ByHand(OWN);
        "d=20 um, v=0.03224667 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "22.854 %", ByHand(OWN);
        "d=40 um, v=0.1289867 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "63.921 %", ByHand(OWN);
        "d=60 um, v=0.2902200 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "89.556 %", ByHand(OWN);
        "d=10 um, v=0.008061668 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "3.536 %", ByHand(OWN);
        "d=20 um, v=0.03224667 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "13.129 %", ByHand(OWN);
        "d=40 um, v=0.1289867 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "42.031 %", ByHand(OWN);
        "d=60 um, v=0.2902200 mm/s, solidity=3 %, fibre=250 um, length=100 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "69.65 %", ByHand(OWN);
        "d=10 um, v=0.008061668 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "40.7332 %", ByHand(OWN);
        "d=20 um, v=0.03224667 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "86.7741 %", ByHand(OWN);
        "d=40 um, v=0.1289867 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "99.9544 %", ByHand(OWN);
        "d=10 um, v=0.008061668 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "32.628 %", ByHand(OWN);
        "d=20 um, v=0.03224667 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "78.073 %", ByHand(OWN);
        "d=40 um, v=0.1289867 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=10 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "99.66 %", ByHand(OWN);
        "d=5 um, v=0.002015417 mm/s, solidity=10 %, fibre=30 um, length=50 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "99.998 %", ByHand(OWN);
        "d=20 um, v=0.03224667 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=50 %, saturation=0 %, mu=1.001596 mPa s, t=20 °C" => "63.6326 %", ByHand(OWN);
        "d=10 um, v=0.008061668 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=100 %, saturation=15 %, mu=1.001596 mPa s, t=20 °C" => "39.0864 %", ByHand(OWN);
        "d=20 um, v=0.03224667 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=50 %, saturation=15 %, mu=1.001596 mPa s, t=20 °C" => "61.6091 %", ByHand(OWN);
        "d=60 um, v=0.29 mm/s, solidity=5 %, fibre=150 um, length=0 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1 mPa s, t=20 °C" => "0.000000 %", Limit("no bed");
        "d=60 um, v=0.29 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=0 %, saturation=0 %, mu=1 mPa s, t=20 °C" => "0.000000 %", Limit("nothing sticks");
        "d=1 mm, v=50 mm/s, solidity=5 %, fibre=150 um, length=150 mm, u=3 mm/s, sticking=100 %, saturation=0 %, mu=1 mPa s, t=20 °C" => "100.000 %", Limit("a droplet wider than the gaps");
    ]
}

fn intercepted(r: f64, solidity: f64) -> f64 {
    fibre_interception::interception(ratio(r), ratio(solidity)).map_or(f64::NAN, Typed::si)
}

fn diffused(d: f64, fibre: f64, u: f64, solidity: f64, mu: f64, t: f64) -> f64 {
    let [d, fibre] = [d, fibre].map(Length::from_si);
    let (u, mu, t) = (Velocity::from_si(u), Viscosity::from_si(mu), Temperature::from_si(t));
    fibre_brownian::diffusion(d, fibre, u, ratio(solidity), mu, t).map_or(f64::NAN, Typed::si)
}

fn left(solidity: f64, eta: f64, sticking: f64, length: f64, fibre: f64) -> f64 {
    let [length, fibre] = [length, fibre].map(Length::from_si);
    mesh_penetration::penetration(ratio(solidity), ratio(eta), ratio(sticking), length, fibre)
        .map_or(f64::NAN, Typed::si)
}

/// A bed as eight droplets at once meet it, with all that does not change from droplet to droplet, in SI.
pub(super) struct MeshLane {
    /// Solid share, and the widest share by interception.
    solidity: f64,
    edge: f64,
    /// One over fibre, velocity in the pores that oil leaves open, and twice Kuwabara's factor.
    per_fibre: f64,
    per_u: f64,
    half_ku: f64,
    /// Share of the median droplet by Brownian motion, which goes with d to the power -2/3.
    diffused: f64,
    /// Fibres met on the way through, times the share that sticks.
    met: f64,
}

impl Mesh {
    /// `median` is the droplets' own; the lane's sizes are counted from it.
    pub(super) fn lane(&self, mu: Viscosity, t: Temperature, median: Length) -> MeshLane {
        let [solidity, sticking, saturation] = [self.solidity, self.sticking, self.saturation].map(Typed::si);
        let [fibre, length] = [self.fibre, self.length].map(Typed::si);
        let (u_in, ku) = (self.u.si() / (1.0 - saturation), fibre_interception::ku(solidity));
        MeshLane {
            solidity,
            edge: 1.0 / sqrt(solidity),
            per_fibre: 1.0 / fibre,
            per_u: 1.0 / u_in,
            half_ku: 0.5 / ku,
            diffused: fibre_brownian::share(median.si(), fibre, u_in, solidity, ku, mu.si(), t.si()),
            met: 4.0 * solidity * sticking * length / (PI * fibre * (1.0 - solidity)),
        }
    }
}

impl Lane for MeshLane {
    /// The share left is e to minus the fibres met; nothing sinks here.
    #[inline(always)]
    fn pass(&self, at: &Sizes, met: &mut Met) {
        let a = self.solidity;
        let m = at.d.map(|d| 1.0 + d * self.per_fibre);
        let ln_m = lanes::ln(m);
        for k in 0..WIDTH {
            let square = m[k] * m[k];
            let inside = m[k] * self.half_ku * (2.0 * ln_m[k] - 1.0 + a + (1.0 - a / 2.0) / square - a / 2.0 * square);
            let touched = if m[k] < self.edge { inside } else { self.edge };
            met.exponent[k] -=
                self.met * (touched + at.v[k] * self.per_u + self.diffused / (at.root[k] * at.root[k]));
        }
    }
    fn bends(&self) -> Bends {
        Bends { all: None, kink: None }
    }
}
