//! What is asked for millions of times takes nothing from the heap.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use stillrise_handbook::memo;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::catch::{Catch, Catches};
use stillrise_handbook::separation::mesh_removal::Mesh;
use stillrise_handbook::separation::plate_removal::{GapRegime, Plates};
use stillrise_handbook::separation::remaining_oil::{DropletLaw, Droplets, Liquids, RiseLaw, fraction};
use stillrise_handbook::separation::tank_removal::{Tank, TankModel};
use stillrise_units::catalog::{DEG_C, KG_M3, MM, MM_S, MPA_S, UM};
use stillrise_units::{Density, Length, Temperature, Typed, Velocity, Viscosity, ratio};

fn left(um: f64) -> f64 {
    let (speed, all) = (|x: f64| Velocity::of(x, &MM_S), Length::of(1e9, &UM));
    let droplets = Droplets {
        law: DropletLaw::LogNormal,
        d50: Length::of(um, &UM),
        shape: ratio(2.0),
        largest: all,
        table: Series::default(),
    };
    let liquids = Liquids {
        rho_w: Density::of(999.1, &KG_M3),
        rho_o: Density::of(850.0, &KG_M3),
        mu: Viscosity::of(1.138, &MPA_S),
        t: Temperature::of(15.0, &DEG_C),
        law: RiseLaw::Drag,
    };
    let stages = Catches::new([
        Catch::Tank(Tank { v_0: speed(1.5), model: TankModel::Mixed, index: ratio(0.0) }),
        Catch::Plates(Plates { v_0: speed(0.3), spread: ratio(0.2), regime: GapRegime::Laminar }),
        Catch::Mesh(Mesh {
            solidity: ratio(0.03),
            fibre: Length::of(250.0, &UM),
            length: Length::of(100.0, &MM),
            u: speed(3.0),
            sticking: ratio(0.5),
            saturation: ratio(0.15),
        }),
    ]);
    fraction(droplets, Length::from_si(0.0), all, liquids, stages).expect("in the domain").si()
}

#[test]
fn an_integral_over_the_droplets_takes_nothing_from_the_heap() {
    // The first fills the place where results are kept.
    assert!(left(60.0) > left(61.0));
    let taken = allocation_counter::measure(|| {
        for k in 0..100 {
            assert!(left(62.0 + f64::from(k)) < 1.0);
        }
    });
    assert_eq!(taken.count_total, 0, "with results kept");
    let taken = allocation_counter::measure(|| memo::without(|| assert!(left(60.0) < 1.0)));
    assert_eq!(taken.count_total, 0, "with none kept");
}
