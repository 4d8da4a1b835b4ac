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
use stillrise_units::{Angle, Area, Flow, Length, Ratio, Typed, Velocity, math, print, ratio};

const L: Pair = (&IN, &MM);
/// Dimensions of a custom unit are whole steps of 2 in, so that it can be built from stock.
const STEP: f64 = 2.0;

fn inches(x: f64) -> Length {
    Length::of(x, &IN)
}

/// The next whole step not below a length.
fn stepped(x: Length) -> Length {
    inches(math::ceil(x.in_unit(&IN) / STEP - 1e-9) * STEP)
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
    site: &Site,
    n: Val<Ratio>,
    made: Made,
) -> Result<(Parts, Particulars), Stop> {
    t.section("unit made to measure");
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
        inches(0.75),
        "the least gap of API 421 and UFGS 44 42 53, 3/4 in",
    );
    let plate = rule(t, "thickness of a plate", Some(L), inches(0.04), "common practice");
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
    let clear = search_section(basis, (site, n.q.si()), flow.q, wanted.q * made.stretch, gap.q, plate.q, angle.q)?;
    let pack_height = choose(
        t,
        "height of the pack",
        Some(L),
        clear.height,
        "12 to 48 in",
        "keeps the pack within twice its height in width",
        &[wanted.at],
    );
    let width = choose(
        t,
        "inside width",
        Some(L),
        clear.width,
        "18 to 96 in",
        "laminar gaps in the warmest water and a pack no wider than twice its height",
        &[flow.at, wanted.at],
    );
    let pack_length = choose(
        t,
        "length of the pack",
        Some(L),
        clear.length,
        "whole steps of 2 in",
        "gives the plate area with fouling and reserve",
        &[wanted.at, width.at, pack_height.at],
    );
    let pack_bottom = rule(t, "underside of the pack", Some(L), inches(6.0), "room for sludge below the plates");
    // Slow enough under the downcomer that neither oil nor sludge is dragged along: 0.12 ft/s.
    let slot = flow.q.si() / (width.q.si() * Velocity::of(0.12, &FT_S).si());
    let slot = stepped(Length::from_si(math::max(slot, (pack_bottom.q + pack_height.q * 0.1).si())));
    let lip = choose(
        t,
        "lip of the downcomer",
        Some(L),
        slot,
        "a tenth of the pack above its underside, and 0.12 ft/s in the slot",
        "the higher of the two",
        &[pack_bottom.at, pack_height.at, flow.at, width.at],
    );
    let bore = nozzle(t, flow)?;
    let (bore, word) = bore;
    // Oil store above the pack: the spill, the alarm reserve and the interval between pump-outs.
    let spill = basis.spill.as_ref().map_or(0.0, |s| s.at_unit().q.si() / n.q.si());
    let plan = width.q.si() * (1.5 * pack_length.q + inches(22.0)).si();
    // Between alarm and limit stand two fifths of the layer; 4 in keep it clear of the pack.
    let store = math::max(inches(10.0).si(), 2.5 * spill / plan + inches(4.0).si());
    // More than 30 in of oil is a matter for a holding tank, not for a taller separator.
    let store = math::min(store + made.deeper.si(), inches(30.0).si());
    let store = choose(
        t,
        "water above the pack",
        Some(L),
        stepped(Length::from_si(store)),
        "10 in and more",
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
        stepped(bore.q + inches(4.0)),
        "bore of the pipe and 4 in",
    );
    let inlet_invert =
        reckon!(t, "invert of the inlet nozzle", [IN, MM], (invert = outlet_invert, head = head) invert + head);
    let freeboard = rule(
        t,
        "wall above the inlet invert",
        Some(L),
        stepped(bore.q + inches(8.0)),
        "the nozzle, its flange and freeboard",
    );
    let height = reckon!(t, "height of the walls", [IN, MM], (invert = inlet_invert, above = freeboard) invert + above);
    let inlet_length = rule(
        t,
        "length of the inlet chamber",
        Some(L),
        inches(12.0),
        "common practice: room for the inclined deflector",
    );
    let baffle_open = rule(
        t,
        "open share of the diffusion baffle",
        Some((&PERCENT, &PERCENT)),
        ratio(0.05),
        "from memory: 3 to 7 % of the section for slotted baffles",
    );
    let baffle_gap =
        rule(t, "opening left under the diffusion baffle", Some(L), inches(0.0), "closed down to the hopper's floor");
    let primary = choose(
        t,
        "length of the primary zone",
        Some(L),
        stepped(pack_length.q * 0.5),
        "half the pack",
        "spreads the flow and holds the hopper",
        &[pack_length.at],
    );
    let hopper_length =
        reckon!(t, "length of the hopper", [IN, MM], (inlet = inlet_length, primary = primary) inlet + primary);
    let hopper_bottom = rule(t, "bottom length of the hopper", Some(L), inches(6.0), "a 4 in drain and its flange");
    let half = math::max((hopper_length.q - hopper_bottom.q).si() / 2.0, (width.q - hopper_bottom.q).si() / 2.0);
    let hopper_depth = choose(
        t,
        "depth of the hopper",
        Some(L),
        stepped(Length::from_si(half)),
        "sides of 45 degrees or steeper",
        "sludge slides on 45 degrees (API 421, from memory)",
        &[hopper_length.at, width.at],
    );
    let thickness =
        rule(t, "thickness of the mesh", Some(L), inches(4.0), "common practice; no credit is taken for it");
    let mesh_fibre = rule(t, "fibre of the mesh", Some((&MIL, &MM)), Length::of(0.28, &MM), "common for knitted mesh");
    let mesh_solidity =
        rule(t, "solid share of the mesh", Some((&PERCENT, &PERCENT)), ratio(0.03), "common for knitted mesh");
    let retention_length =
        rule(t, "length of the oil retention zone", Some(L), inches(18.0), "a man's reach for float and draw-off");
    let well_length = choose(
        t,
        "length of the clear well",
        Some(L),
        stepped(bore.q + inches(6.0)),
        "bore and 6 in",
        "room for the outlet and a sample",
        &[bore.at],
    );
    let length = reckon!(t, "inside length", [IN, MM],
        (inlet = inlet_length, primary = primary, pack = pack_length, mesh = thickness, retention = retention_length, well = well_length)
        inlet + primary + pack + mesh + retention + well);
    let drop = rule(t, "draw-off below the crest", Some(L), inches(1.0), "leaves little oil and draws no air");
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
/// Most that a unit is longer than it is wide: longer ones are gutters.
const SLENDER: f64 = 8.0;

/// The smallest pack of whole steps that has the area and laminar gaps, in a unit of sane proportions that fits its
/// place and can be carried there.
fn search_section(
    basis: &Basis,
    (site, n): (&Site, f64),
    flow: Flow,
    wanted: Area,
    gap: Length,
    plate: Length,
    angle: Angle,
) -> Result<Section, Stop> {
    let least = |road: f64, room: &Quantity<Length>, shared: bool| {
        let road = inches(road);
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
    let mut best: Option<(f64, Section)> = None;
    for h in (6..=24).map(|i| f64::from(i) * STEP) {
        let height = inches(h);
        let wide = math::max(open / share / height.si(), inches(18.0).si());
        let wide = math::max(wide, inches(h * 0.75).si());
        let width = stepped(Length::from_si(wide));
        if width > most_wide || width > inches(2.0 * h) + inches(12.0) {
            continue;
        }
        let count = math::floor((height.si() * math::cos(angle.si())) / (gap + plate).si());
        if count < 1.0 {
            continue;
        }
        let length = stepped(Length::from_si(math::max(wanted.si() / (count * width.si()), inches(12.0).si())));
        let whole = length * 1.5 + inches(BESIDE_PACK);
        if whole > most_long || whole > width * SLENDER {
            continue;
        }
        let volume = length.si() * width.si() * (height.si() + 0.6) + width.si() * 1.0;
        let slender = length.si() > 4.0 * width.si();
        let cost = volume * if slender { 1.5 } else { 1.0 };
        if best.as_ref().is_none_or(|(c, _)| cost < *c) {
            best = Some((cost, Section { height, width, length }));
        }
    }
    best.map(|(_, section)| section).ok_or_else(|| {
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
        if velocity <= most && bore >= inches(2.9) {
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
        "nominal pipe sizes from 3 in",
        "below 2 ft/s at the largest flow, so that the outlet runs part full",
        &[flow.at],
    );
    Ok((bore, row.word))
}
