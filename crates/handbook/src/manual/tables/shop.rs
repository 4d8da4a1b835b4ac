//! What a shop asks: metals, thickness by code, vents, insulation.

use crate::manual::table::{Row, Table};
use crate::shop::insulation::{INSULATIONS, SURFACES};
use crate::shop::strengths::STRENGTHS;
use crate::shop::tank_thickness::CODES;
use crate::shop::vents::VENTS;
use stillrise_units::catalog::{FT, KPA, M, ONE, PSI};
use stillrise_units::{Typed, print};

pub(super) fn tables() -> Vec<Table> {
    vec![strengths(), codes(), vents(), insulations(), resistances()]
}

fn strengths() -> Table {
    let about = "For a first design, from memory: a mill certificate or the standard of the plate governs.";
    let columns = [
        ("modulus of elasticity", Some((&PSI, &KPA))),
        ("Poisson's ratio", None),
        ("yield", Some((&PSI, &KPA))),
        ("stress to which a plate may bend", Some((&PSI, &KPA))),
    ];
    Table::new("strengths", "Metals", about, &columns).with(STRENGTHS.iter().map(|s| {
        let row = Row::new(s.word, s.title).number(s.modulus_psi, &PSI).number(s.poisson, &ONE);
        row.number(s.yield_psi, &PSI).number(s.allowable().in_unit(&PSI), &PSI).from(s.source)
    }))
}

fn codes() -> Table {
    let about = "Least plate of buried steel tanks by capacity, as city codes print it. They contradict each other, and a \
        wall that follows one still has to bear what presses from outside (`cylinder-collapse`).";
    let columns = [("plates, each up to a capacity", None), ("note", None)];
    Table::new("thickness", "Thickness of buried tanks", about, &columns).with(CODES.iter().map(|c| {
        let bands: Vec<String> = c
            .bands
            .iter()
            .map(|b| {
                let heads = b.heads.map_or_else(String::new, |heads| format!(", heads {heads}"));
                format!("{} gal {}{heads}", print::digits(b.up_to_gal, 5), b.shell)
            })
            .collect();
        Row::new(c.word, c.word).text(bands.join("; ")).text(c.note).from(c.source)
    }))
}

fn vents() -> Table {
    let about = "What codes ask of the vents of buried tanks for flammable liquids, taken over for separators; where two \
        give different lengths for one thing, the larger is the safe one.";
    let columns = [("what it asks", None), ("least length", Some((&FT, &M))), ("for which liquids", None)];
    Table::new("vents", "Vents", about, &columns).with(VENTS.iter().map(|v| {
        let row = Row::new(v.word, v.word).text(v.text).number_if(v.least().map(|least| least.in_unit(&FT)), &FT);
        row.text(if v.volatile_only { "flash point below 100 °F" } else { "any" }).from(v.source)
    }))
}

fn insulations() -> Table {
    let about = "The first is the safer for glass fibre.";
    let rows = INSULATIONS.iter().map(|i| Row::new(i.word, i.title).number(i.conductivity, &ONE).from(i.source));
    Table::new("insulation", "Insulation", about, &[("conductivity, W/(m K)", None)]).with(rows)
}

fn resistances() -> Table {
    let about = "Resistance of a surface to the air.";
    let rows = SURFACES.iter().map(|s| Row::new(s.word, s.title).number(s.resistance, &ONE).from(s.source));
    Table::new("air-films", "Surfaces to the air", about, &[("resistance, m2 K/W", None)]).with(rows)
}
