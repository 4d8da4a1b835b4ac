//! Pumps, pipes, fittings, motors.

use crate::hydraulics::fittings::FITTINGS;
use crate::hydraulics::pipes::{MATERIALS, PIPE_SIZES};
use crate::hydraulics::pumping::CYCLE_TIMES;
use crate::manual::table::{Row, Table};
use crate::separation::pumps::PUMPS;
use stillrise_units::catalog::{HP, IN, KW, MIN, MM, ONE, W_KG};
use stillrise_units::{Typed, print};

pub(super) fn tables() -> Vec<Table> {
    vec![pumps(), pipe_sizes(), pipe_materials(), fittings(), motors()]
}

fn pumps() -> Table {
    let about = "Pumps ahead of a separator, least shearing first. The order is published, the figures are judgement: no \
        measured droplet sizes behind pumps were found. `hinze-droplet` takes the dissipation.";
    let columns = [
        ("dissipation where droplets break", Some((&W_KG, &W_KG))),
        ("rests on", None),
        ("peak over mean flow", None),
        ("rests on", None),
    ];
    Table::new("pumps", "Pumps by class", about, &columns).with(PUMPS.iter().map(|p| {
        let [low, likely, high] = p.dissipation().map(Typed::si);
        let row = Row::new(p.word, p.meaning).three((low, likely, high), &W_KG).text(p.shear_mark.text());
        let row = row.number(p.pulsation().si(), &ONE).text(p.pulsation_mark.text());
        p.sources.iter().fold(row, |row, source| row.from(source))
    }))
}

fn pipe_sizes() -> Table {
    let about = "Steel pipe. Standard weight is schedule 40 up to 10 in, with thinner walls above.";
    let columns = [
        ("outside diameter", Some((&IN, &MM))),
        ("bore of schedule 40", Some((&IN, &MM))),
        ("bore of standard weight", Some((&IN, &MM))),
    ];
    Table::new("pipe-sizes", "Pipe sizes", about, &columns).with(PIPE_SIZES.iter().map(|s| {
        let row = Row::new(s.word, format!("{}, {}", s.word, s.metric_word())).number(s.outside_in, &IN);
        row.number(s.inside_in, &IN).number(s.inside_std_in, &IN).from(s.source())
    }))
}

fn pipe_materials() -> Table {
    let about = "For friction in full pipes and flow in part-full ones.";
    let columns = [("equivalent sand roughness", Some((&IN, &MM))), ("Manning's n", None)];
    Table::new("pipe-materials", "Pipe materials", about, &columns).with(MATERIALS.iter().map(|m| {
        let row = Row::new(m.word, m.title).three(m.roughness_mm, &MM).cited(m.source);
        row.three(m.manning_n, &ONE).cited(m.n_source)
    }))
}

fn fittings() -> Table {
    let about = "Loss on the velocity head of the pipe. Rows that follow the friction factor are for 6 in schedule 40: 27 % \
        more in 2 in, 13 % less in 12 in.";
    let columns = [("K", None), ("K as sources print it", None), ("note", None)];
    Table::new("fittings", "Losses of fittings", about, &columns).with(FITTINGS.iter().map(|f| {
        Row::new(f.word, f.title).number(f.k, &ONE).range(f.range.0, f.range.1, &ONE).text(f.note).from(f.source)
    }))
}

fn motors() -> Table {
    let about = "Least time from one start of a pump to the next, motors at constant speed. Above 250 hp the maker of the \
        motor says.";
    let columns = [("power below", Some((&HP, &KW))), ("least time", Some((&MIN, &MIN)))];
    Table::new("motors", "Starts of motors", about, &columns).with(CYCLE_TIMES.iter().map(|c| {
        let title = format!("below {} hp", print::digits(c.below_hp, 4));
        Row::new(title.clone(), title).number(c.below_hp, &HP).number(c.least_min, &MIN).from(c.source)
    }))
}
