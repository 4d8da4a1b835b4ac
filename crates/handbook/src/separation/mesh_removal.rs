//! Formula: removal of one droplet size in an oleophilic mesh

use super::{fibre_brownian, fibre_interception, mesh_penetration};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{FIBRE_DIFFUSION, JUDGEMENT, KUWABARA, SINGLE_FIBRE};
use core::f64::consts::PI;
use stillrise_units::lanes::{self, Lanes, WIDTH};
use stillrise_units::math::{exp, ln, max, pow, sqrt};
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
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
        fibre: Length = "d_f" "diameter of the fibres" [MIL, UM: 5.0 .. 600.0 in 0.1 .. 10000.0];
        length: Length = "L" "depth of the bed along the flow" [IN, MM: 5.0 .. 1000.0 in 0.0 .. 100000.0];
        u: Velocity = "U" "velocity on the face of the bed" [FT_MIN, MM_S: 0.1 .. 20.0 in 1e-6 .. 1000.0];
        sticking: Ratio = "s" "share of the collisions that stick" [PERCENT, PERCENT: 1.0 .. 100.0 in 0.0 .. 100.0];
        saturation: Ratio = "S" "share of the pores that holds oil" [PERCENT, PERCENT: 0.0 .. 50.0 in 0.0 .. 99.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        t: Temperature = "T" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 100.0];
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

/// One bed with all that does not change from droplet to droplet, in SI, for integrals over droplets.
#[derive(Debug, Clone, Copy)]
pub struct Bed {
    /// Diameter of the fibres.
    fibre: f64,
    /// Solid share, Kuwabara's factor, and the widest share by interception.
    solidity: f64,
    ku: f64,
    edge: f64,
    /// Velocity in the pores that oil leaves open.
    u_in: f64,
    per: Per,
    /// The median droplet, and its share by Brownian motion, which goes with d to the power -2/3.
    median: f64,
    diffused: f64,
    /// Fibres met on the way through, times the share that sticks.
    met: f64,
}

/// What is divided by for every droplet.
#[derive(Debug, Clone, Copy)]
struct Per {
    fibre: f64,
    u: f64,
    half_ku: f64,
}

impl Bed {
    /// From plain SI numbers, in the order of the page, and the droplets' median; the arguments must lie in its domain.
    #[must_use]
    #[allow(clippy::too_many_arguments)]
    pub fn new(
        solidity: f64,
        fibre: f64,
        length: f64,
        u: f64,
        sticking: f64,
        saturation: f64,
        mu: f64,
        t: f64,
        median: f64,
    ) -> Self {
        let (u_in, ku) = (u / (1.0 - saturation), fibre_interception::ku(solidity));
        Self {
            fibre,
            solidity,
            ku,
            edge: 1.0 / sqrt(solidity),
            u_in,
            per: Per { fibre: 1.0 / fibre, u: 1.0 / u_in, half_ku: 0.5 / ku },
            median,
            diffused: fibre_brownian::share(median, fibre, u_in, solidity, ku, mu, t),
            met: 4.0 * solidity * sticking * length / (PI * fibre * (1.0 - solidity)),
        }
    }

    /// As [`Self::caught`] for eight droplets, with the cube roots of their sizes over the median: the share left is
    /// e to minus this. Nothing sinks here.
    #[inline(always)]
    pub(crate) fn met(&self, d: &Lanes, v: &Lanes, root: &Lanes) -> Lanes {
        let (a, edge) = (self.solidity, self.edge);
        let Per { fibre: per_fibre, u: per_u, half_ku } = self.per;
        let m = d.map(|d| 1.0 + d * per_fibre);
        let ln_m = lanes::ln(m);
        let mut met = [0.0; WIDTH];
        for k in 0..WIDTH {
            let square = m[k] * m[k];
            let inside = m[k] * half_ku * (2.0 * ln_m[k] - 1.0 + a + (1.0 - a / 2.0) / square - a / 2.0 * square);
            let touched = if m[k] < edge { inside } else { edge };
            met[k] = self.met * (touched + v[k] * per_u + self.diffused / (root[k] * root[k]));
        }
        met
    }

    /// Share caught of droplets of diameter `d` (m) that rise at `v` (m/s): the page's number without
    /// its guards, what is common to all droplets being worked out once.
    #[must_use]
    pub fn caught(&self, d: f64, v: f64) -> f64 {
        let (m, a) = (1.0 + d / self.fibre, self.solidity);
        let touched = if m < self.edge {
            m / (2.0 * self.ku) * (2.0 * ln(m) - 1.0 + a + (1.0 - a / 2.0) / (m * m) - a / 2.0 * m * m)
        } else {
            self.edge
        };
        let eta = touched + max(v, 0.0) / self.u_in + self.diffused * pow(d / self.median, -2.0 / 3.0);
        1.0 - exp(-self.met * eta)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The quick form is a second writing of the page; they must never part.
    #[test]
    fn the_bed_gives_the_page() {
        let (mu, t) = (1.001_596e-3, 293.15);
        for (solidity, fibre, u, s, oil) in
            [(0.03, 250e-6, 3e-3, 1.0, 0.0), (0.05, 150e-6, 1e-2, 0.4, 0.15), (0.1, 30e-6, 1e-3, 0.1, 0.3)]
        {
            let bed = Bed::new(solidity, fibre, 0.1, u, s, oil, mu, t, 6e-5);
            for d in [1e-7, 1e-6, 5e-6, 2e-5, 6e-5, 1.5e-4, 1e-3] {
                for v in [-1e-4, 0.0, 81e3 * d * d, 1e-2] {
                    let page = removal(
                        Length::from_si(d),
                        Velocity::from_si(v),
                        ratio(solidity),
                        Length::from_si(fibre),
                        Length::from_si(0.1),
                        Velocity::from_si(u),
                        ratio(s),
                        ratio(oil),
                        Viscosity::from_si(mu),
                        Temperature::from_si(t),
                    )
                    .map_or(f64::NAN, Typed::si);
                    let quick = bed.caught(d, v);
                    assert!((quick - page).abs() < 1e-12, "{d} {v}: {quick} against {page}");
                }
            }
        }
    }
}
