//! What a shop builds from and what it still has to say itself: sizes outside, edges of what stands inside, surfaces, and the
//! nozzles with all that a flange is ordered by. "By maker" stands wherever nobody said it.

use super::tables::{MAKER, Titled, all_nozzles};
use crate::instruments;
use crate::render::text::{Table, plain};
use crate::section::place::{Section, zero};
use stillrise_design::stages::stage::Line;
use stillrise_units::catalog::{DEG, IN, MM};
use stillrise_units::{Angle, Length, Typed, math, print};

/// What it builds from.
pub fn for_shop(s: &Section) -> Titled {
    ("For the shop".to_owned(), shop(s))
}

/// The nozzles with all that they are ordered by.
pub fn for_ordering(s: &Section) -> Titled {
    ("Nozzles, for ordering".to_owned(), nozzles(s))
}

fn maker(said: Option<String>) -> String {
    said.unwrap_or_else(|| MAKER.to_owned())
}

fn shop(s: &Section) -> Table {
    let unit = s.unit();
    let known = &unit.particulars;
    let (shape, l) = (&unit.shape, |q: Length| s.write(q));
    let fine = |q: Length| print::with_unit(q.si(), s.system.pick((&IN, &MM)));
    let text = |said: &Option<String>| maker(said.as_deref().map(plain));
    let mut table = Table::new(["Of what", "Value"]);
    let mut row = |what: &str, value: String| {
        table.row([what.to_owned(), value]);
    };
    row("Inside, length x width x height", sizes([shape.length(), s.broad(), shape.height()].map(l)));
    if let Some(channels) = &unit.channels {
        let (count, clear) = (print::digits(channels.count.q.si(), 2), l(channels.width.q));
        row("Channels, clear width of each", format!("{count} of {clear}"));
        row(
            "Walls between channels, in the width above",
            if s.between().si() > 0.0 { l(s.between()) } else { MAKER.to_owned() },
        );
    }
    let wall = known.wall.map(|wall| wall.q);
    let outside = wall.map(|wall| {
        // Added up as the footprint measures it, so that both round alike.
        let over = |q: Length| (q + wall) - (zero() - wall);
        let high = if unit.body.is_open() { shape.height() + wall } else { over(shape.height()) };
        sizes([over(shape.length()), over(s.broad()), high].map(l))
    });
    row("Outside, without nozzles, hopper and cover", maker(outside));
    if !unit.arrangement.is_built_in() {
        let shipped = known.shipping.as_ref().map(|all| sizes([all[0].q, all[1].q, all[2].q].map(l)));
        row("Shipping box, as stated", maker(shipped));
        let over = |wall: Length| shape.length() + wall * 2.0;
        let left = known.shipping.as_ref().zip(wall).map(|(all, wall)| all[0].q - over(wall));
        if let Some(left) = left.filter(|left| *left >= zero()) {
            row("Its length less the outside length, for end nozzles", l(left));
        } else {
            row("Whether end nozzles are within the shipping box", MAKER.to_owned());
        }
    }
    row("Walls", maker(wall.map(fine)));
    if let Some(steel) = known.steel {
        row("Steel of walls and floor", fine(steel.q));
    }
    if !unit.arrangement.is_built_in() && unit.body.is_open() {
        row("Stiffeners of the walls, no farther apart than", maker(known.stiffener_spacing.map(|q| l(q.q))));
        let rim = known.stiff_rim.map(|stiff| if stiff { "stiffened" } else { "free" }.to_owned());
        row("Rim", maker(rim));
    }
    row("Material", text(&known.material));
    row("Coating", text(&known.coating));
    hopper(s, &mut row);
    for drawn in s.drawn() {
        for line in &drawn.lines {
            let Line::Perforated { at, low, high } = line else { continue };
            let bottom = if *low < zero() {
                format!("{} under the floor", l(zero() - *low))
            } else {
                format!("{} over the floor", l(*low))
            };
            row(&format!("{}, foot", drawn.name), bottom);
            let top =
                if *high < shape.height() { l(*high) } else { format!("{MAKER}, drawn up to the top, {}", l(*high)) };
            row(&format!("{}, top", drawn.name), top);
            row(&format!("{}, from the inlet end", drawn.name), l(*at));
        }
    }
    if let Some(pack) = &unit.pack {
        row("Plates, material", text(&known.plate_material));
        row("Plates, thickness and gap", format!("{}, {}", fine(pack.laid.plate.q), fine(pack.laid.gap.q)));
        row("Plates, angle from the level", print::with_unit(pack.laid.angle.q.si(), &DEG));
    }
    if let Some(mesh) = &unit.mesh {
        let high = unit.pack.as_ref().map(|pack| {
            let (high, low) = (l(pack.laid.height.q), l(pack.laid.bottom.q));
            format!("{MAKER}; drawn as the plates, {high} from {low} over the floor")
        });
        row("Mesh, height", maker(high));
        row("Mesh, thickness along the flow", fine(mesh.laid.thickness.q));
    }
    row("Lower edge ahead of the outlet, over the floor", l(unit.underflow.edge().q));
    let floats = instruments::of_oil(s);
    if !floats.is_empty() {
        let (from, to) = s.oil_end();
        row("Level switches of the oil, from the inlet end", format!("between {} and {}; {MAKER}", l(from), l(to)));
    }
    for switch in floats {
        row(&format!("{}, trips over the floor at", switch.tag()), l(switch.level));
    }
    if !unit.arrangement.is_built_in() {
        let lifting = s.performance.and_then(|p| p.shop.as_ref()?.lifting.as_ref());
        let lugs = lifting.map(|lifting| format!("{}; places {MAKER}", print::digits(lifting.points.q.si(), 2)));
        row("Lifting lugs", maker(lugs));
        row("Lug for bonding, sample tap, plate with the maker's name", MAKER.to_owned());
    }
    row("Drains of rooms without a hopper", MAKER.to_owned());
    table
}

fn sizes(all: [String; 3]) -> String {
    all.join(" x ")
}

/// How the hopper is bent.
fn hopper(s: &Section, row: &mut impl FnMut(&str, String)) {
    let Some(hopper) = &s.unit().hopper else { return };
    let l = |q: Length| s.write(q);
    row("Hopper, length at the floor and at its bottom", format!("{}, {}", l(hopper.length.q), l(hopper.bottom.q)));
    row("Hopper, depth under the floor", l(hopper.depth.q));
    // Its bottom is square.
    let side = |top: Length| {
        let (run, deep) = ((top - hopper.bottom.q) * 0.5, hopper.depth.q);
        let edge = math::sqrt(run.si() * run.si() + deep.si() * deep.si());
        let angle = if edge > 0.0 { math::acos(math::max(run.si(), 0.0) / edge) } else { 0.0 };
        print::digits(Angle::from_si(angle).in_unit(&DEG), 3)
    };
    let (along, across) = (side(hopper.length.q), side(s.unit().shape.width()));
    row("Hopper, sides from the level, along and across", format!("{along} deg, {across} deg"));
}

/// What a flange is ordered by.
fn nozzles(s: &Section) -> Table {
    let unit = s.unit();
    let flanges = maker(unit.particulars.flanges.as_deref().map(plain));
    let mut table = Table::new(["Mark", "Rating and facing", "Projection", "Centre line over floor", "Across"]);
    let middle = |invert: Length, bore: Length| s.write(invert + bore * 0.5);
    for nozzle in all_nozzles(s) {
        let (centre, across) = match nozzle.mark {
            "N1" => (middle(unit.inlet.invert.q, unit.inlet.bore.q), "centre line"),
            "N2" => (middle(unit.outlet.invert.q, unit.outlet.bore.q), "centre line"),
            "N3" => {
                let bore = s.draw_bore();
                (bore.map_or_else(|| MAKER.to_owned(), |bore| middle(unit.retention.oil_draw.q, bore)), "side wall")
            }
            "N4" if s.is_sunk() => ("top".to_owned(), "centre line"),
            "N4" => ("bottom".to_owned(), "centre line"),
            _ => ("top".to_owned(), MAKER),
        };
        let rating = if nozzle.mark.starts_with('N') { flanges.clone() } else { MAKER.to_owned() };
        table.row([nozzle.mark.to_owned(), rating, MAKER.to_owned(), centre, across.to_owned()]);
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_nobody_said_is_the_makers() {
        assert_eq!(maker(None), "by maker");
        assert_eq!(maker(Some("x".to_owned())), "x");
        assert_eq!(sizes(["1", "2", "3"].map(str::to_owned)), "1 x 2 x 3");
    }
}
