//! Steady evaluations for studies, beside the same formulas in vectorised numpy, in one run on one core.

use std::path::Path;
use std::process::Command;
use std::time::Instant;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::catch::{Catch, Catches};
use stillrise_handbook::separation::mesh_removal::Mesh;
use stillrise_handbook::separation::plate_removal::{GapRegime, Plates};
use stillrise_handbook::separation::remaining_oil::{DropletLaw, Droplets, Liquids, RiseLaw, fraction};
use stillrise_handbook::separation::tank_removal::{Tank, TankModel};
use stillrise_units::catalog::{DEG_C, KG_M3, MM, MM_S, MPA_S, UM};
use stillrise_units::{Density, Length, Temperature, Typed, Velocity, Viscosity, ratio};

/// Evaluations of a round, and rounds; the best counts on both sides.
const COUNT: usize = 20_000;
const ROUNDS: usize = 5;
/// What is asked.
const BAR: f64 = 5.0;
/// Steps of the inputs' sequence; `steady.py` has the same.
const STEPS: [f64; 6] =
    [0.618_033_988_7, 0.754_877_666_2, 0.819_172_513_4, 0.856_674_883_8, 0.881_271_461_6, 0.898_653_712_6];

/// Prints both times and their ratio; says so where there is no numpy.
pub fn main(root: &Path) -> Result<(), String> {
    let (ours, mean) = ours()?;
    println!("\nsteady evaluations, oil left behind tank, plates and mesh, {COUNT} inputs, one core, best of {ROUNDS}");
    println!("{:<28} {:>9.2} µs each, mean {mean:.6}", "remaining-oil", ours * 1e6);
    let script = root.join("crates/xtask/src/bench/steady.py");
    let out = Command::new("python3").arg(&script).arg(COUNT.to_string()).output();
    let text = match &out {
        Ok(out) if out.status.success() => String::from_utf8_lossy(&out.stdout).into_owned(),
        _ => {
            println!("peer: no python3 with numpy here; the ratio was not measured");
            return Ok(());
        }
    };
    let words: Vec<&str> = text.split_whitespace().collect();
    let number = |k: usize| words.get(k).and_then(|w| w.parse::<f64>().ok());
    let (Some(seconds), Some(theirs)) = (number(0), number(1)) else {
        return Err(format!("the peer said `{text}`"));
    };
    if (mean / theirs - 1.0).abs() > 1e-5 {
        return Err(format!("the peer's mean is {theirs}, ours {mean}: not the same chain"));
    }
    let peer = seconds / COUNT as f64;
    let version = words.get(2).copied().unwrap_or("");
    println!("{:<28} {:>9.2} µs each, mean {theirs:.6}", format!("peer: numpy {version}"), peer * 1e6);
    let word = if peer / ours >= BAR { "over" } else { "UNDER" };
    println!("{:<28} {:>9.2}  {word} the bar of {BAR}", "ratio", peer / ours);
    Ok(())
}

/// Seconds of one evaluation, and the mean share left.
fn ours() -> Result<(f64, f64), String> {
    let (um, speed) = (|x: f64| Length::of(x, &UM), |x: f64| Velocity::of(x, &MM_S));
    // The inputs are laid out before the clock runs, on both sides.
    let inputs: Vec<_> = (1..=COUNT)
        .map(|k| {
            let u = STEPS.map(|step| (k as f64 * step).fract());
            let droplets = (um(30.0 + 170.0 * u[0]), ratio(1.5 + 1.5 * u[1]));
            let unit = (speed(0.5 + 2.5 * u[3]), speed(0.1 + 0.5 * u[4]), ratio(0.1 + 0.3 * u[5]));
            (droplets, Density::of(820.0 + 100.0 * u[2], &KG_M3), unit)
        })
        .collect();
    let (water, viscosity) = (Density::of(999.1, &KG_M3), Viscosity::of(1.138, &MPA_S));
    let (fibre, depth, face) = (um(250.0), Length::of(100.0, &MM), speed(3.0));
    let (none, all, temperature) = (um(0.0), um(1e9), Temperature::of(15.0, &DEG_C));
    let (mut best, mut mean) = (f64::INFINITY, 0.0);
    for _ in 0..ROUNDS {
        let begin = Instant::now();
        let mut sum = 0.0;
        for ((d50, sg), oil, (v_tank, v_pack, spread)) in &inputs {
            let droplets =
                Droplets { law: DropletLaw::LogNormal, d50: *d50, shape: *sg, largest: all, table: Series::default() };
            let liquids = Liquids { rho_w: water, rho_o: *oil, mu: viscosity, t: temperature, law: RiseLaw::Drag };
            let stages = Catches::new([
                Catch::Tank(Tank { v_0: *v_tank, model: TankModel::Mixed, index: ratio(0.0) }),
                Catch::Plates(Plates { v_0: *v_pack, spread: *spread, regime: GapRegime::Laminar }),
                Catch::Mesh(Mesh {
                    solidity: ratio(0.03),
                    fibre,
                    length: depth,
                    u: face,
                    sticking: ratio(0.5),
                    saturation: ratio(0.15),
                }),
            ]);
            let left = fraction(droplets, none, all, liquids, stages);
            sum += left.map_err(|o| o.to_string())?.si();
        }
        best = best.min(begin.elapsed().as_secs_f64() / COUNT as f64);
        mean = sum / COUNT as f64;
    }
    Ok((best, mean))
}
