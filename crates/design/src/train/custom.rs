//! A unit made to measure: dimensions generated from the basis by stated rules (long because it is one list of rules).

use super::Made;
use super::particulars::Particulars;
use super::unit::Parts;
use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::basis::stated::usual_of;
use crate::enquiry::blocks::{Arrangement, Site};
use crate::enquiry::keys::Quantity;
use crate::provenance::{Pair, Stop, Trail, Val, choose, given};
use crate::stages::Stages;
use crate::stages::clear_well::ClearWell;
use crate::stages::diffusion_baffle::DiffusionBaffle;
use crate::stages::downcomer::Downcomer;
use crate::stages::hopper::Hopper;
use crate::stages::inlet::Inlet;
use crate::stages::inlet_chamber::InletChamber;
use crate::stages::mesh::{self, CoalescingMesh};
use crate::stages::outlet::Outlet;
use crate::stages::outlet::OutletControl;
use crate::stages::plate_pack::{self, PlatePack};
use crate::stages::retention::Retention;
use crate::stages::underflow::Underflow;
use crate::vessel::{Body, Rectangular};
use crate::{by, reckon};
use stillrise_handbook::hydraulics::pipes::PIPE_SIZES;
use stillrise_handbook::hydraulics::{circle_area, mean_velocity};
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_handbook::separation::plate_area;
use stillrise_handbook::vessel::float_density;
use stillrise_units::catalog::{DEG, FT, FT_S, IN, M, MIL, MM, PERCENT};
use stillrise_units::{Angle, Area, Flow, Length, Ratio, System, Typed, Velocity, math, print, ratio};

const L: Pair = (&IN, &MM);

/// What a shop builds from: dimensions of a unit made to measure are whole steps of 2 in or of 50 mm, and round in the system
/// in which it will be drawn, not converted from the other.
#[derive(Clone, Copy)]
struct Stock(System);

impl Stock {
    /// A length that is round in either system, in inches and in millimetres.
    fn round(self, us: f64, si: f64) -> Length {
        match self.0 {
            System::Us => Length::of(us, &IN),
            System::Si => Length::of(si, &MM),
        }
    }
    fn step(self) -> Length {
        self.round(2.0, 50.0)
    }
    /// The next whole step not below a length.
    fn stepped(self, x: Length) -> Length {
        self.step() * math::ceil((x / self.step()).si() - 1e-9)
    }
    /// Words in the units of the system.
    fn words(self, us: &'static str, si: &'static str) -> &'static str {
        match self.0 {
            System::Us => us,
            System::Si => si,
        }
    }
}

fn rule<T: Trail, Q: stillrise_handbook::page::Argument>(
    t: &mut T,
    label: &str,
    units: Option<Pair>,
    q: Q,
    because: &str,
) -> Val<Q> {
    given(t, label, units, q, "made to measure", because)
}

/// Generates the parts for a share of the design flow.
///
/// `n` units in parallel share the flow; `made` says how far it goes beyond its first size, when a first check showed
/// that this falls short.
///
/// # Errors
/// [`Stop`] when no oil rises, or a formula has no answer.
pub fn parts<T: Trail>(
    t: &mut T,
    basis: &Basis,
    (site, system): (&Site, System),
    n: Val<Ratio>,
    made: Made,
) -> Result<(Parts, Particulars), Stop> {
    t.section("unit made to measure");
    let stock = Stock(system);
    let case = basis.largest_steady().ok_or_else(|| Stop {
        doing: "unit made to measure".to_owned(),
        reason: "no case has a flow to size for".to_owned(),
        formula: false,
    })?;
    let flow = reckon!(t, "flow through one unit", [GPM, M3_H], (feed = case.feed, n = n) feed / n);
    let oil = basis.fluids.heaviest(Season::Cold);
    let rise = super::design_rise(t, basis)?;
    if rise.q.si() <= 0.0 {
        return Err(Stop {
            doing: "unit made to measure".to_owned(),
            reason: format!("{} does not rise in the coldest water", oil.name),
            formula: false,
        });
    }
    let needed = by!(t, "projected plate area for the design droplet", plate_area::area(flow, rise))?;
    let wanted = reckon!(t, "plate area with fouling and reserve", [FT2, M2],
        (needed = needed, fouling = basis.methods.fouling, reserve = basis.methods.reserve)
        needed * (ratio(1.0) + reserve) / (ratio(1.0) - fouling));
    let gap = rule(
        t,
        "clear gap between plates",
        Some(L),
        stock.round(0.75, 20.0),
        match system {
            System::Us => "the least gap of API 421 and UFGS 44 42 53, 3/4 in",
            System::Si => "the least gap of API 421 and UFGS 44 42 53, 19 mm, rounded up",
        },
    );
    let plate = rule(t, "thickness of a plate", Some(L), stock.round(0.04, 1.0), "common practice");
    let angle = rule(
        t,
        "angle of the plates",
        Some((&DEG, &DEG)),
        Angle::of(55.0, &DEG),
        "within the 45 to 60 degrees of published guides",
    );
    let run = rule(
        t,
        "how the water runs through the plates",
        None,
        PlateRun::CrossFlow,
        "cross-flow leaves oil and solids their own ways",
    );
    let clear =
        search_section(basis, (stock, site, n.q.si()), flow.q, wanted.q * made.stretch, gap.q, plate.q, angle.q)?;
    let pack_height = choose(
        t,
        "height of the pack",
        Some(L),
        clear.height,
        stock.words("12 to 48 in", "300 to 1200 mm"),
        "keeps the pack within twice its height in width",
        &[wanted.at],
    );
    let width = choose(
        t,
        "inside width",
        Some(L),
        clear.width,
        stock.words("18 to 96 in", "450 to 2400 mm"),
        "laminar gaps in the warmest water and a pack no wider than twice its height",
        &[flow.at, wanted.at],
    );
    let pack_length = choose(
        t,
        "length of the pack",
        Some(L),
        clear.length,
        stock.words("whole steps of 2 in", "whole steps of 50 mm"),
        "gives the plate area with fouling and reserve",
        &[wanted.at, width.at, pack_height.at],
    );
    let pack_bottom =
        rule(t, "underside of the pack", Some(L), stock.round(6.0, 150.0), "room for sludge below the plates");
    // Slow enough under the downcomer that neither oil nor sludge is dragged along: 0.12 ft/s.
    let slot = flow.q.si() / (width.q.si() * Velocity::of(0.12, &FT_S).si());
    let slot = stock.stepped(Length::from_si(math::max(slot, (pack_bottom.q + pack_height.q * 0.1).si())));
    let lip = choose(
        t,
        "lip of the downcomer",
        Some(L),
        slot,
        "a tenth of the pack above its underside, and {0.12 ft/s|36.6 mm/s} in the slot",
        "the higher of the two",
        &[pack_bottom.at, pack_height.at, flow.at, width.at],
    );
    let bore = nozzle(t, flow)?;
    let (bore, word) = bore;
    // Oil store above the pack: the spill, the alarm reserve and the interval between pump-outs.
    let spill = basis.spill.as_ref().map_or(0.0, |s| s.at_unit().q.si() / n.q.si());
    let plan = width.q.si() * (1.5 * pack_length.q + stock.round(22.0, 550.0)).si();
    // Between alarm and limit stand two fifths of the layer; 4 in keep it clear of the pack.
    let store = math::max(stock.round(10.0, 250.0).si(), 2.5 * spill / plan + stock.round(4.0, 100.0).si());
    // More than 30 in of oil is a matter for a holding tank, not for a taller separator.
    let store = math::min(store + made.deeper.si(), stock.round(30.0, 750.0).si());
    let store = choose(
        t,
        "water above the pack",
        Some(L),
        stock.stepped(Length::from_si(store)),
        stock.words("10 in and more", "250 mm and more"),
        if made.deeper.si() > 0.0 {
            "lets the alarm call at the largest flow too, holds the spill above it, clear of the pack"
        } else {
            "holds the spill above the alarm, in a layer that stays clear of the pack"
        },
        &[width.at, pack_length.at],
    );
    let outlet_invert = reckon!(t, "invert of the outlet pipe", [IN, MM], (bottom = pack_bottom, height = pack_height, store = store) bottom + height + store);
    let control = rule(t, "what holds the water level", None, OutletControl::Pipe, "the outlet pipe");
    let head = rule(
        t,
        "room for the outlet's head, the oil's rise and the inlet's fall",
        Some(L),
        stock.stepped(bore.q + stock.round(4.0, 100.0)),
        stock.words("bore of the pipe and 4 in", "bore of the pipe and 100 mm"),
    );
    let inlet_invert =
        reckon!(t, "invert of the inlet nozzle", [IN, MM], (invert = outlet_invert, head = head) invert + head);
    let freeboard = rule(
        t,
        "wall above the inlet invert",
        Some(L),
        stock.stepped(bore.q + stock.round(8.0, 200.0)),
        "the nozzle, its flange and freeboard",
    );
    let height = reckon!(t, "height of the walls", [IN, MM], (invert = inlet_invert, above = freeboard) invert + above);
    let inlet_length = rule(
        t,
        "length of the inlet chamber",
        Some(L),
        stock.round(12.0, 300.0),
        "common practice: room for the inclined deflector",
    );
    let baffle_open = rule(
        t,
        "open share of the diffusion baffle",
        Some((&PERCENT, &PERCENT)),
        ratio(0.05),
        "from memory: 3 to 7 % of the section for slotted baffles",
    );
    let baffle_gap = rule(
        t,
        "opening left under the diffusion baffle",
        Some(L),
        stock.round(0.0, 0.0),
        "closed down to the hopper's floor",
    );
    let primary = choose(
        t,
        "length of the primary zone",
        Some(L),
        stock.stepped(pack_length.q * 0.5),
        "half the pack",
        "spreads the flow and holds the hopper",
        &[pack_length.at],
    );
    let hopper_length =
        reckon!(t, "length of the hopper", [IN, MM], (inlet = inlet_length, primary = primary) inlet + primary);
    let hopper_bottom = rule(
        t,
        "bottom length of the hopper",
        Some(L),
        stock.round(6.0, 150.0),
        stock.words("a 4 in drain and its flange", "a drain of DN 100 and its flange"),
    );
    let half = math::max((hopper_length.q - hopper_bottom.q).si() / 2.0, (width.q - hopper_bottom.q).si() / 2.0);
    let hopper_depth = choose(
        t,
        "depth of the hopper",
        Some(L),
        stock.stepped(Length::from_si(half)),
        "sides of 45 degrees or steeper",
        "sludge slides on 45 degrees (API 421, from memory)",
        &[hopper_length.at, width.at],
    );
    let thickness = rule(
        t,
        "thickness of the mesh",
        Some(L),
        stock.round(4.0, 100.0),
        "common practice; no credit is taken for it",
    );
    let mesh_fibre = rule(t, "fibre of the mesh", Some((&MIL, &MM)), Length::of(0.28, &MM), "common for knitted mesh");
    let mesh_solidity =
        rule(t, "solid share of the mesh", Some((&PERCENT, &PERCENT)), ratio(0.03), "common for knitted mesh");
    let retention_length = rule(
        t,
        "length of the oil retention zone",
        Some(L),
        stock.round(18.0, 450.0),
        "a man's reach for float and draw-off",
    );
    let well_length = choose(
        t,
        "length of the clear well",
        Some(L),
        stock.stepped(bore.q + stock.round(6.0, 150.0)),
        stock.words("bore and 6 in", "bore and 150 mm"),
        "room for the outlet and a sample",
        &[bore.at],
    );
    let length = reckon!(t, "inside length", [IN, MM],
        (inlet = inlet_length, primary = primary, pack = pack_length, mesh = thickness, retention = retention_length, well = well_length)
        inlet + primary + pack + mesh + retention + well);
    let drop =
        rule(t, "draw-off below the crest", Some(L), stock.round(1.0, 25.0), "leaves little oil and draws no air");
    let oil_draw =
        reckon!(t, "elevation of the oil draw-off", [IN, MM], (crest = outlet_invert, drop = drop) crest - drop);
    let heaviest = basis.fluids.heaviest(Season::Cold).cold;
    let lightest = basis.fluids.warm.density;
    let float_density = by!(t, "density of the level float", float_density::density(heaviest, lightest))?;
    let body = Body::Rectangular(Rectangular { length, width, height });
    let hopper = Hopper::new(t, &body, [hopper_length, hopper_bottom, hopper_depth])?;
    let mesh = CoalescingMesh {
        laid: mesh::Dimensions { thickness, fibre: mesh_fibre, solidity: mesh_solidity },
        curve: None,
        velocity_limit: None,
    };
    let pack = plate_pack::Dimensions {
        length: pack_length,
        height: pack_height,
        bottom: pack_bottom,
        gap,
        plate,
        angle,
        run,
    };
    let plain = Stages::plain(
        Inlet { invert: inlet_invert, bore },
        Retention { length: retention_length, oil_draw, float_density },
        Underflow::Downcomer(Downcomer { lip }),
        Outlet { control, crest: outlet_invert, weir_length: width, invert: outlet_invert, bore },
    );
    let stages = Stages {
        inlet_chamber: Some(InletChamber { length: inlet_length }),
        baffle: Some(DiffusionBaffle { open: baffle_open, under: baffle_gap }),
        hopper,
        pack: Some(PlatePack::new(t, pack, &body)?),
        mesh: Some(mesh),
        clear_well: Some(ClearWell { length: well_length }),
        ..plain
    };
    let parts = Parts { body, channels: None, access: None, stages };
    let particulars = Particulars {
        model: "made to measure".to_owned(),
        nozzles: (word.to_owned(), word.to_owned()),
        lifts_out: Some(true),
        ..Particulars::default()
    };
    Ok((parts, particulars))
}

struct Section {
    height: Length,
    width: Length,
    length: Length,
}

/// Most that is carried by road without escort: length and width, in. Common practice.
const BY_ROAD: (f64, f64) = (480.0, 96.0);
/// What stands before and behind the pack in a unit made to measure, besides half the pack's length: in.
const BESIDE_PACK: f64 = 50.0;
/// Most that a unit is longer than it is wide: first what shops build, by our judgement, then what no other proportion allows.
/// Longer ones are gutters.
const SLENDER: [f64; 2] = [5.0, 8.0];

/// The smallest pack of whole steps that has the area and laminar gaps, in a unit of sane proportions that fits its
/// place and can be carried there.
fn search_section(
    basis: &Basis,
    (stock, site, n): (Stock, &Site, f64),
    flow: Flow,
    wanted: Area,
    gap: Length,
    plate: Length,
    angle: Angle,
) -> Result<Section, Stop> {
    let least = |road: f64, room: &Quantity<Length>, shared: bool| {
        let road = Length::of(road, &IN);
        let walkway = site.access.q().unwrap_or_else(|| usual_of(&site.access()));
        let each = |room: Length| if shared { (room - walkway * (n - 1.0)) / n } else { room };
        room.q().map(each).map_or(road, |room| if room < road { room } else { road })
    };
    // Several share the width of their place, or its length where they are asked to stand in line.
    let in_line = site.arrangement.0 == Some(Arrangement::InLine);
    let most_long = least(BY_ROAD.0, &site.max_length, in_line);
    let most_wide = least(BY_ROAD.1, &site.max_width, !in_line);
    let nu = basis.fluids.warm.kinematic.q.si();
    // Re = 2 s U / nu <= 500 in the warmest water: the open section this asks for, fouled.
    let open = flow.si() * 2.0 * gap.si() / (500.0 * nu) / (1.0 - basis.methods.fouling.q.si());
    let share = (gap / (gap + plate)).si();
    let mut best: Option<(f64, f64, Section)> = None;
    let heights = || (6..=24).map(|i| stock.step() * f64::from(i));
    for (slender, height) in SLENDER.into_iter().flat_map(|most| heights().map(move |height| (most, height))) {
        // A slimmer one only where none of the usual proportions does.
        if slender > SLENDER[0] && best.as_ref().is_some_and(|(_, usual, _)| *usual <= SLENDER[0]) {
            break;
        }
        let wide = math::max(open / share / height.si(), stock.round(18.0, 450.0).si());
        let wide = math::max(wide, 0.75 * height.si());
        let width = stock.stepped(Length::from_si(wide));
        if width > most_wide || width > height * 2.0 + stock.round(12.0, 300.0) {
            continue;
        }
        let count = math::floor((height.si() * math::cos(angle.si())) / (gap + plate).si());
        if count < 1.0 {
            continue;
        }
        let least = stock.round(12.0, 300.0).si();
        let length = stock.stepped(Length::from_si(math::max(wanted.si() / (count * width.si()), least)));
        let whole = length * 1.5 + Length::of(BESIDE_PACK, &IN);
        if whole > most_long || whole > width * slender {
            continue;
        }
        let volume = length.si() * width.si() * (height.si() + 0.6) + width.si() * 1.0;
        let long = length.si() > 4.0 * width.si();
        let cost = volume * if long { 1.5 } else { 1.0 };
        if best.as_ref().is_none_or(|(c, ..)| cost < *c) {
            best = Some((cost, slender, Section { height, width, length }));
        }
    }
    best.map(|(.., section)| section).ok_or_else(|| {
        Stop::said(
            "unit made to measure",
            format!(
                "no unit of sane proportions, at most {} ({}) long and {} ({}) wide, takes its share of the flow with laminar gaps and the plates it needs",
                print::in_prose(most_long.si(), &M),
                print::in_prose(most_long.si(), &FT),
                print::in_prose(most_wide.si(), &M),
                print::in_prose(most_wide.si(), &FT)
            ),
        )
    })
}

/// The smallest nominal pipe in which the flow stays below 2 ft/s, so that the outlet would run part full.
fn nozzle<T: Trail>(t: &mut T, flow: Val<Flow>) -> Result<(Val<Length>, &'static str), Stop> {
    let most = Velocity::of(2.0, &FT_S);
    let mut last = None;
    for row in PIPE_SIZES {
        let bore = row.inside();
        let velocity = mean_velocity::velocity(flow.q, circle_area::area(bore)?)?;
        last = Some(row);
        if velocity <= most && bore >= Length::of(2.9, &IN) {
            break;
        }
    }
    let row = last.ok_or_else(|| Stop {
        doing: "nozzles".to_owned(),
        reason: "the handbook lists no pipes".to_owned(),
        formula: false,
    })?;
    let bore = choose(
        t,
        "bore of the nozzles",
        Some(L),
        row.inside(),
        "nominal pipe sizes from {3 in|DN 80}",
        "below {2 ft/s|0.61 m/s} at the largest flow, so that the outlet runs part full",
        &[flow.at],
    );
    Ok((bore, row.word))
}
