//! What arrives: chemicals, pollutants, what a kind of site sends, land uses, surfaces, curve numbers; and what units reach.

use crate::fluids::chemicals::CHEMICALS;
use crate::fluids::facilities::FACILITIES;
use crate::fluids::land_uses::LAND_USES;
use crate::fluids::pollutants::{Counts, POLLUTANTS};
use crate::manual::table::{Row, Table};
use crate::rain::curve_numbers::CURVE_NUMBERS;
use crate::rain::surfaces::SURFACES;
use crate::separation::floors;
use crate::sources::{SHEET_N, STORMWATER_RAW};
use stillrise_units::catalog::{FT_MIN, M_H, MG_L, ONE, PERCENT, UM};
use stillrise_units::{Typed, print};

pub(super) fn tables() -> Vec<Table> {
    vec![chemicals(), pollutants(), facilities(), land_uses(), surfaces(), curve_numbers(), reached()]
}

fn chemicals() -> Table {
    let about = "What comes with the water, and what it does to separation by gravity. The shares are judgement, to be \
        replaced by a jar test.";
    let columns = [
        ("effect", None),
        ("share of the oil out of gravity's reach", Some((&PERCENT, &PERCENT))),
        ("lowers the tension", None),
        ("why", None),
        ("what could", None),
    ];
    Table::new("chemicals", "Chemicals", about, &columns).with(CHEMICALS.iter().map(|c| {
        let could = [Some(c.what_could), c.also.map(|way| way.words())].into_iter().flatten().collect::<Vec<_>>();
        let row = Row::new(c.word, c.title).text(c.effect.meaning()).spread(&c.emulsified);
        row.text(if c.surfactant { "yes" } else { "no" }).text(c.explains).text(could.join(" Also: ")).from(c.source)
    }))
}

fn pollutants() -> Table {
    let about = "What limits name, and whether gravity acts on it.";
    let columns = [("gravity", None), ("counts", None), ("why", None), ("what could", None)];
    Table::new("pollutants", "Pollutants", about, &columns).with(POLLUTANTS.iter().map(|p| {
        let row = Row::new(p.word, p.title).text(p.gravity.meaning());
        let oil = p.is_total_oil() || p.counts == Counts::FreeOil;
        let counts = if oil { p.counts.word() } else { "" };
        row.text(counts).text(p.explains).text(p.what_could).from(p.source)
    }))
}

fn facilities() -> Table {
    let about = "Oil, solids and droplets that a kind of site sends, where nobody has measured: defaults to be asked \
        about, never findings.";
    let columns = [
        ("oil", Some((&MG_L, &MG_L))),
        ("suspended solids", Some((&MG_L, &MG_L))),
        ("median droplet by volume", Some((&UM, &UM))),
        ("geometric standard deviation of the droplets", None),
        ("note", None),
    ];
    Table::new("facilities", "Facilities", about, &columns).with(FACILITIES.iter().map(|f| {
        let row = Row::new(f.word, f.title).spread(&f.oil).spread(&f.solids);
        let row = row.spread(&f.droplet_d50).spread(&f.spread).text(f.note);
        Row { also: f.also, ..row }
    }))
}

fn land_uses() -> Table {
    let about = "Oil and grease measured in runoff as storm-water permits had it sampled; results below detection by \
        Kaplan and Meier, the log-normal by censored maximum likelihood.";
    let share = Some((&MG_L, &MG_L));
    let columns = [
        ("samples", None),
        ("sites", None),
        ("25th percentile", share),
        ("50th percentile", share),
        ("75th percentile", share),
        ("90th percentile", share),
        ("95th percentile", share),
        ("median of the log-normal", share),
        ("its geometric standard deviation", None),
    ];
    Table::new("land-uses", "Oil in the runoff of a land use", about, &columns).with(LAND_USES.iter().map(|u| {
        let row = Row::new(u.name, u.name).number(f64::from(u.samples), &ONE).number(f64::from(u.sites), &ONE);
        let row = u.oil.iter().fold(row, |row, oil| row.number(*oil, &MG_L));
        row.number(u.log_normal.0, &MG_L).number(u.log_normal.1, &ONE).from(&STORMWATER_RAW)
    }))
}

fn surfaces() -> Table {
    let about = "Runoff coefficients are for rain of up to ten years: rarer rain sheds more, by a factor of 1.1 at 25 \
        years and 1.25 at 100, never above 1 in all. Low and high have their own source where the typical value has another.";
    let columns = [("runoff coefficient", None), ("roughness to sheet flow", None)];
    Table::new("surfaces", "Surfaces", about, &columns).with(SURFACES.iter().map(|s| {
        let row = Row::new(s.word, s.title).three(s.runoff, &ONE).cited(s.source).number_if(s.manning_n, &ONE);
        let row = if s.manning_n.is_some() { row.cited(&SHEET_N) } else { row };
        row.from(s.typical_from)
    }))
}

fn curve_numbers() -> Table {
    let about = "Runoff curve numbers of surfaces on soils of groups A (takes up most) to D (least), for the methods of \
        NRCS; of a surface that is missing here the number is asked.";
    let columns = [("A", None), ("B", None), ("C", None), ("D", None), ("as the source calls it", None)];
    Table::new("curve-numbers", "Curve numbers", about, &columns).with(CURVE_NUMBERS.iter().map(|c| {
        let row = c.numbers.iter().fold(Row::new(c.word, c.word), |row, n| row.number(*n, &ONE));
        row.text(c.title).from(c.source)
    }))
}

fn reached() -> Table {
    let about = "What plate units and coalescing beds are published to reach, and what counts as free oil: bounds of \
        promise, not results.";
    let columns = [("figure", None), ("under which conditions", None)];
    let (floor, range, bed) = (floors::plate_floor(), floors::plate_range(), floors::fastest_bed());
    let (droplet, gravity) = (floors::free_droplet(), floors::free_gravity());
    let row = |word, title: &str, figure: String, condition: &'static str, source| {
        Row::new(word, title).text(figure).text(condition).from(source)
    };
    let (low, high) = range.value;
    let span = format!("{} to {}", print::digits(low.in_unit(&MG_L), 3), print::with_unit(high.si(), &MG_L));
    let (m_h, ft_min) = (print::with_unit(bed.value.si(), &M_H), print::with_unit(bed.value.si(), &FT_MIN));
    let least = print::with_unit(floor.value.si(), &MG_L);
    let size = print::with_unit(droplet.value.si(), &UM);
    Table::new("reached", "What units are published to reach", about, &columns).with([
        row("floor", "Practical floor of a plate unit", least, floor.condition, floor.source),
        row("usual", "Usual effluent of a plate unit", span, range.condition, range.source),
        row("free droplet", "Smallest droplet of free oil", size, droplet.condition, droplet.source),
        row(
            "free gravity",
            "Heaviest free oil",
            print::digits(gravity.value.si(), 3),
            gravity.condition,
            gravity.source,
        ),
        row("bed", "Fastest water on a coalescing bed", format!("{m_h} = {ft_min}"), bed.condition, bed.source),
    ])
}
