//! Calls one formula on typed quantities, and prints its equation with the numbers in it.

#![allow(clippy::print_stdout, reason = "an example shows its result")]

use stillrise_handbook::equation::{Style, printed};
use stillrise_handbook::page::{Argument, Outside};
use stillrise_handbook::separation::stokes_rise;
use stillrise_units::catalog::{CP, KG_M3, MM_S, UM};
use stillrise_units::{Density, Length, Typed, Viscosity};

fn main() -> Result<(), Outside> {
    let d = Length::of(60.0, &UM);
    let (water, oil) = (Density::of(999.7, &KG_M3), Density::of(850.0, &KG_M3));
    let mu = Viscosity::of(1.306, &CP);
    let v = stokes_rise::rise(d, water, oil, mu)?;
    println!("{:.4} mm/s", v.in_unit(&MM_S));
    let args = [d.arg(), water.arg(), oil.arg(), mu.arg()];
    for line in printed(&stokes_rise::PAGE, &args, &v.arg(), Style::Plain) {
        println!("{} = {} = {}", line.symbol, line.equation, line.numbers);
    }
    Ok(())
}
