//! The ground around a buried unit.

use crate::ground::anchors::{RULES, SIZES};
use crate::ground::cover::{COVERS, IMPACTS, Paving, Traffic};
use crate::ground::electrical_areas::AREAS;
use crate::ground::flotation::{FACTORS, METHODS};
use crate::ground::liquid_classes::CLASSES;
use crate::ground::soils::{BACKFILLS, GROUNDS};
use crate::manual::table::{Row, Table};
use stillrise_units::catalog::{DEG_C, DEG_F, FT, IN, KG_M3, KPA, LB_FT3, M, MM, ONE, PERCENT, PSF};
use stillrise_units::{Typed, print, ratio};

pub(super) fn tables() -> Vec<Table> {
    vec![
        factors(),
        methods(),
        backfills(),
        grounds(),
        covers(),
        impacts(),
        anchors(),
        anchor_rules(),
        classes(),
        areas(),
    ]
}

fn factors() -> Table {
    let about = "None is the factor: the authority or the client names it. What it multiplies differs as well.";
    let columns = [("factor", None), ("what it counts", None)];
    let rows = FACTORS.iter().map(|f| Row::new(f.word, f.title).number(f.factor, &ONE).text(f.note).from(f.source));
    Table::new("flotation-factors", "Factors against flotation", about, &columns).with(rows)
}

fn methods() -> Table {
    let about = "Ways to count what holds a unit down, from the least to the most.";
    let rows = METHODS.iter().map(|m| Row::new(m.word, m.title).text(m.note).from(m.source));
    Table::new("soil-methods", "How soil is counted", about, &[("what counts", None)]).with(rows)
}

fn backfills() -> Table {
    let about = "Densities that published calculations use.";
    let columns = [("moist", Some((&LB_FT3, &KG_M3))), ("saturated", Some((&LB_FT3, &KG_M3)))];
    let rows = BACKFILLS.iter().map(|b| Row::new(b.word, b.title).spread(&b.moist).spread(&b.saturated));
    Table::new("backfills", "Backfills", about, &columns).with(rows)
}

fn grounds() -> Table {
    let about = "What ground is presumed to bear where nobody has tested it. Mud, organic silt and clay, peat and \
        unprepared fill bear nothing without tests.";
    let columns =
        [("under a foundation", Some((&PSF, &KPA))), ("from the side", None), ("friction on the underside", None)];
    Table::new("grounds", "Ground", about, &columns).with(GROUNDS.iter().map(|g| {
        let side = format!("{} psf for each foot of depth", print::digits(g.lateral_psf_ft, 4));
        let row = Row::new(g.word, g.title).number(g.bearing_psf, &PSF).text(side);
        row.number_if(g.friction, &ONE).from(g.source)
    }))
}

fn covers() -> Table {
    let about = "Least cover of a buried unit; any one of a traffic class will do under the code that names it.";
    let columns =
        [("traffic", None), ("least earth", Some((&IN, &MM))), ("paving on it", Some((&IN, &MM))), ("of", None)];
    Table::new("covers", "Cover", about, &columns).with(COVERS.iter().map(|c| {
        let traffic = match c.traffic {
            Traffic::None => "none",
            Traffic::Vehicles => "vehicles cross, or may",
        };
        let (inches, of) = match c.paving {
            Paving::None => (None, ""),
            Paving::Concrete(inches) => (Some(inches), "reinforced concrete"),
            Paving::Asphalt(inches) => (Some(inches), "asphaltic concrete"),
        };
        let row = Row::new(c.word, c.word).text(traffic).number(c.earth_in, &IN);
        row.number_if(inches, &IN).text(of).from(c.source)
    }))
}

fn impacts() -> Table {
    let about =
        "What is added to the load of a wheel, from this cover on. On the border of two ranges the larger holds.";
    let columns = [("cover above", Some((&FT, &M))), ("added", Some((&PERCENT, &PERCENT)))];
    Table::new("impacts", "Impact of wheels", about, &columns).with(IMPACTS.iter().map(|i| {
        let title = format!("above {} ft", print::digits(i.above_ft, 4));
        let row = Row::new(title.clone(), title).number(i.above_ft, &FT);
        row.number(ratio(i.share).in_unit(&PERCENT), &PERCENT).from(i.source)
    }))
}

fn anchors() -> Table {
    let about = "Deadmen, or a slab below, by the diameter of the tank, as installation manuals of plastic tanks print \
        them: a start, what they weigh still has to reach the factor (`anchorage-needed`).";
    let columns = [
        ("width of each deadman", Some((&IN, &MM))),
        ("depth of each", Some((&IN, &MM))),
        ("width of a slab instead", Some((&FT, &M))),
    ];
    Table::new("anchors", "Anchors", about, &columns).with(SIZES.iter().map(|s| {
        let diameter = format!("{} ft", print::digits(s.up_to_ft, 4));
        let row = Row::new(diameter.clone(), format!("up to {diameter}"));
        let row = row.number(s.deadman_width_in, &IN).number(s.deadman_depth_in, &IN);
        row.number(s.slab_width_ft, &FT).from(s.source)
    }))
}

fn anchor_rules() -> Table {
    let about = "How deadmen, slabs and straps are laid.";
    let rows = RULES.iter().map(|r| Row::new(r.word, r.word).text(r.text).from(r.source));
    Table::new("anchor-rules", "Laying of anchors", about, &[("rule", None)]).with(rows)
}

fn classes() -> Table {
    let about = "Classes of liquids by flash point, as codes of the United States sort them, the most volatile first.";
    let units = Some((&DEG_F, &DEG_C));
    let columns =
        [("flash point from", units), ("flash point below", units), ("boils from", units), ("what it means", None)];
    Table::new("liquid-classes", "Classes of liquids", about, &columns).with(CLASSES.iter().map(|c| {
        let row = Row::new(c.word, format!("Class {}", c.word));
        let row = row.number_if(c.flash_from_f, &DEG_F).number_if(c.flash_below_f, &DEG_F);
        row.number_if(c.boils_from_f, &DEG_F).text(c.note).from(c.source)
    }))
}

fn areas() -> Table {
    let about =
        "Where vapour that may ignite is to be reckoned with; the authority decides, on a drawing of the areas.";
    let columns = [("where", None), ("class", None), ("upward", Some((&FT, &M))), ("sideways", Some((&FT, &M)))];
    Table::new("electrical-areas", "Electrical areas", about, &columns).with(AREAS.iter().map(|a| {
        let row = Row::new(a.word, a.word).text(a.place).text(a.class);
        let row = if let Some(source) = a.class_source { row.cited(source) } else { row };
        let row = row.number_if(a.up().map(|up| up.in_unit(&FT)), &FT);
        row.number_if(a.out_ft, &FT).from(a.source)
    }))
}
