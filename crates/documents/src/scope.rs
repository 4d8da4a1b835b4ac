//! Who brings what, as proposed: the rows of the drawing's schedule, of the scope split and of the report's stages, so that no two
//! of them can differ.

use crate::instruments::{self, Hangs, Switch, tags};
use crate::reply;
use crate::section::place::Section;
use stillrise_design::performance::installation::Stands;
use stillrise_design::train::{Stage, StageKind, Train};
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, FT, GAL, GPM, IN, KG, KN, KPA, KW, LB, LBF, M, M3, M3_H, MM, PSF};
use stillrise_units::{Typed, Unit, print};

/// Who brings a thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum By {
    /// Whoever makes the unit.
    Maker,
    /// Somebody else: the client, or whoever builds for him.
    Others,
    /// Nobody yet.
    Open,
    /// Nobody: it is not needed.
    Nobody,
}

impl By {
    /// In print.
    pub(crate) fn word(self) -> &'static str {
        match self {
            By::Maker => "unit's maker",
            By::Others => "others",
            By::Open => "open",
            By::Nobody => "not needed",
        }
    }
}

/// What the rows are grouped by, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Group {
    /// The unit and what is fixed to it.
    Unit,
    /// Stages ahead of it and behind it.
    Stages,
    /// What it stands on or lies in, and how it gets there.
    Setting,
    /// Power, water, air.
    Utilities,
    /// Start, test and upkeep.
    Service,
}

impl Group {
    /// All, in order.
    pub(crate) const ALL: [Group; 5] = [Group::Unit, Group::Stages, Group::Setting, Group::Utilities, Group::Service];
    /// In print.
    pub(crate) fn title(self) -> &'static str {
        match self {
            Group::Unit => "Unit",
            Group::Stages => "Ahead of it and behind it",
            Group::Setting => "Setting",
            Group::Utilities => "Utilities",
            Group::Service => "Start, test and upkeep",
        }
    }
}

/// One thing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Row {
    pub(crate) group: Group,
    pub(crate) item: String,
    pub(crate) by: By,
    /// What whoever brings it has to know; empty where there is nothing.
    pub(crate) note: String,
    /// What the drawing calls it where it numbers it among the parts.
    pub(crate) part: Option<&'static str>,
}

impl Row {
    fn numbered(self, part: &'static str) -> Self {
        Self { part: Some(part), ..self }
    }
}

/// Who brings a stage of the train.
pub(crate) fn of_stage(stage: &Stage) -> By {
    match stage.kind {
        StageKind::Separator => By::Maker,
        // A closure and a polisher are nobody's until somebody orders them.
        _ if stage.asked_for || stage.kind == StageKind::Closure => By::Open,
        _ => By::Others,
    }
}

/// What a stage is called where it is listed.
fn named(kind: StageKind) -> &'static str {
    match kind {
        StageKind::Containment => "Containment ahead of the unit",
        StageKind::Screen => "Screen",
        StageKind::GritTrap => "Grit trap",
        StageKind::Equalisation => "Equalisation tank",
        StageKind::Pump => "Lift pumps with their sump",
        StageKind::Splitter => "Splitter between units",
        StageKind::Separator => "Separator",
        StageKind::Closure => "Closure of the outlet",
        StageKind::Polisher => "Polisher",
        StageKind::SamplePoint => "Sample point behind the unit",
    }
}

/// The rows in the order of their groups; none without a unit, or where the unit stands and nothing is offered.
pub(crate) fn rows(settled: &Settled) -> Vec<Row> {
    let Some(train) = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands()) else {
        return Vec::new();
    };
    let split = Split { settled, train };
    let mut rows = split.unit();
    rows.extend(split.stages());
    rows.extend(split.setting());
    rows.extend(split.utilities());
    rows.extend(split.service());
    rows
}

struct Split<'a> {
    settled: &'a Settled,
    train: &'a Train,
}

fn row(group: Group, item: &str, by: By, note: impl Into<String>) -> Row {
    Row { group, item: item.to_owned(), by, note: note.into(), part: None }
}

impl Split<'_> {
    fn show<Q: Typed>(&self, q: Q, pair: (&'static Unit, &'static Unit)) -> String {
        print::in_prose(q.si(), self.settled.job.enquiry.system().pick(pair))
    }
    fn switches(&self, hangs: Hangs) -> Vec<Switch> {
        let section = Section::new(self.settled, crate::Edition::Client);
        let all = section.map_or_else(Vec::new, |s| instruments::switches(&s));
        all.into_iter().filter(|switch| switch.hangs == hangs).collect()
    }
    fn is_built_in(&self) -> bool {
        self.train.unit.arrangement.is_built_in()
    }
    fn in_ground(&self) -> bool {
        self.train.unit.arrangement.is_in_ground()
    }
    fn lead(&self) -> &'static str {
        if self.train.bought() > 1.0 { "each unit " } else { "" }
    }
    fn each(&self) -> &'static str {
        if self.train.bought() > 1.0 { " each" } else { "" }
    }

    fn unit(&self) -> Vec<Row> {
        let (g, unit) = (Group::Unit, &self.train.unit);
        let count = self.train.bought();
        let units = if count > 1.0 { format!("{} units", print::digits(count, 2)) } else { "1 unit".to_owned() };
        let mut rows = Vec::new();
        if self.is_built_in() {
            rows.push(row(g, "Internals, set into the vessel", By::Maker, units).numbered("Walls and floor"));
            let inside = "to the inside dimensions of the data sheet";
            rows.push(row(g, "Vessel, built in its place", By::Others, inside).numbered("Walls and floor"));
        } else {
            rows.push(row(g, "Vessel with its internals", By::Maker, units).numbered("Shell"));
        }
        rows.push(match unit.body.is_open() {
            true if self.is_built_in() => {
                row(g, "Cover over the basin", By::Open, "none is counted; the permit or the vapour may ask for one")
            }
            true => row(g, "Cover", By::Maker, "load class to be agreed where it is walked on or driven over")
                .numbered("Cover"),
            false => row(g, "Manways", By::Maker, "covers for the load that crosses them, to be agreed")
                .numbered("Manways with risers"),
        });
        if self.settled.job.design.performance.as_ref().is_some_and(|p| !p.levels.is_empty()) {
            let switches = self.switches(Hangs::Oil);
            let word = if switches.len() > 1 { "Level switches" } else { "Level switch" };
            let each = if unit.channels.is_some() { ", in each channel" } else { "" };
            let item = format!("{word} {}{each}", tags(&switches));
            let note = "each with its float, set to the level of the drawing";
            rows.push(row(g, &item, By::Maker, note).numbered("Level switch "));
            rows.push(row(
                g,
                "Alarm panel, wiring, power",
                By::Others,
                "certified for the area that the authority classifies",
            ));
        }
        rows.extend(self.fittings());
        if let Some(pumps) = &unit.pump_out {
            let says = format!(
                "{} of {} each, one of them standing by",
                print::digits(pumps.pumps.q.si(), 2),
                self.show(pumps.pump.q, (&GPM, &M3_H))
            );
            rows.push(row(g, "Effluent pumps in the unit", By::Maker, says).numbered("Effluent pumps"));
            let length = |q| self.show(q, (&IN, &MM));
            rows.push(
                row(
                    g,
                    &format!("Level switches {} of the effluent pumps", tags(&self.switches(Hangs::Pumps))),
                    By::Maker,
                    format!(
                        "stop at {}, start at {}, second pump and alarm at {} over the floor",
                        length(pumps.stop.q),
                        length(pumps.start.q),
                        length(pumps.alarm.q)
                    ),
                )
                .numbered("Level switches "),
            );
            rows.push(row(g, "Delivery pipe in the unit, check and stop valves", By::Maker, ""));
        }
        rows
    }

    /// What no row of a range names and no drawing may forget.
    fn fittings(&self) -> Vec<Row> {
        let (g, unit) = (Group::Unit, &self.train.unit);
        let shop = self.settled.job.design.performance.as_ref().and_then(|p| p.shop.as_ref());
        let mut rows = Vec::new();
        if unit.body.is_open() && !self.is_built_in() {
            rows.push(row(g, "Hatches over float, oil draw-off and plates", By::Maker, "places on his drawing"));
        }
        if !self.is_built_in() {
            let size = shop
                .and_then(|shop| shop.vent.as_ref())
                .map_or_else(String::new, |vent| format!("no smaller than {}", self.show(vent.least.q, (&IN, &MM))));
            rows.push(row(g, "Vents, one for each space of vapour that walls part", By::Maker, size).numbered("Vent"));
            let lugs = shop
                .and_then(|shop| shop.lifting.as_ref())
                .map_or_else(String::new, |lifting| format!("{} points", print::digits(lifting.points.q.si(), 2)));
            rows.push(row(g, "Lifting lugs", By::Maker, lugs));
        }
        let hopper =
            if unit.hopper.is_some() { "the hopper has its own, N4" } else { "by a suction pipe or from above" };
        rows.push(row(g, "Drains and suction pipes of the rooms", By::Maker, hopper));
        if !self.train.stages.iter().any(|stage| stage.kind == StageKind::SamplePoint) {
            rows.push(row(g, "Sample tap in the outlet pipe", By::Open, "none stands in the train"));
        }
        rows
    }

    fn stages(&self) -> Vec<Row> {
        let stages = self.train.stages.iter().filter(|stage| stage.kind != StageKind::Separator);
        let mut rows: Vec<Row> = stages
            .map(|stage| {
                let size = stage.size.as_ref().map_or_else(String::new, |(label, value, units)| {
                    let shown = stillrise_design::provenance::show_in_prose(
                        value,
                        Some(*units),
                        self.settled.job.enquiry.system(),
                    );
                    format!("{label} {shown}")
                });
                let pumps = self.settled.job.design.basis.as_ref().and_then(|basis| basis.feed.pump_flow);
                let size = match pumps.filter(|_| stage.kind == StageKind::Pump) {
                    Some(flow) => format!("{} to the unit, as declared", self.show(flow.q, (&GPM, &M3_H))),
                    None if stage.kind == StageKind::Closure => stage.why.clone(),
                    None => size,
                };
                // What a polisher has ahead of it stands in its name.
                let name = match stage.kind {
                    StageKind::Polisher => format!("{} behind the unit", crate::summary::capital(&stage.name)),
                    kind => named(kind).to_owned(),
                };
                row(Group::Stages, &name, of_stage(stage), size)
            })
            .collect();
        let stands = self.settled.job.design.performance.as_ref().map(|p| p.site.installation.stands.q);
        if stands == Some(Stands::LiftPump) {
            rows.push(row(Group::Stages, "Pump that the levels ask for", By::Open, "behind the unit or ahead of it"));
        }
        rows.push(row(Group::Stages, "Pipes to and from the nozzles, their supports", By::Others, ""));
        if self.train.around.oil_tank.is_some() {
            rows.push(row(Group::Stages, "Oil holding tank", By::Others, ""));
        }
        rows
    }

    fn setting(&self) -> Vec<Row> {
        let g = Group::Setting;
        let mut rows = Vec::new();
        let performance = self.settled.job.design.performance.as_ref();
        let weights = performance.and_then(|p| p.shop.as_ref()?.weights.as_ref());
        let (each, lead) = (self.each(), self.lead());
        let mass = |q| self.show(q, (&LB, &KG));
        let loads = weights.and_then(|w| Some((w.operating?, w.test?))).map_or_else(
            || "what it carries is not known until the weight empty is stated".to_owned(),
            |(operating, test)| {
                format!("{lead}carries {} in service, {} full to the top", mass(operating.q), mass(test.q))
            },
        );
        let bearing = weights
            .and_then(|w| w.bearing)
            .map_or_else(String::new, |p| format!("; {} under the whole floor", self.show(p.q, (&PSF, &KPA))));
        let leg = weights.and_then(|w| w.leg).filter(|_| performance.is_some_and(|p| has_supports(p, self.train)));
        let bearing = leg.map_or(bearing, |leg| format!("; {} on each of four legs that share it evenly", mass(leg.q)));
        if self.is_built_in() {
            rows.push(row(
                g,
                "Pit, walls, reinforcement, tightness",
                By::Others,
                "designed by a licensed engineer on the soil report",
            ));
        } else {
            let drain = performance.is_some_and(|p| has_supports(p, self.train));
            if drain {
                let room =
                    performance.map_or_else(String::new, |p| self.show(p.site.installation.drain_room.q, (&IN, &MM)));
                rows.push(row(g, "Supports down to the slab", By::Maker, format!("{room} free under the hopper")));
            }
            rows.push(row(g, "Slab or bed, anchors", By::Others, format!("{loads}{bearing}")));
            let lifted = weights
                .and_then(|w| w.empty)
                .map_or_else(String::new, |empty| format!("{} empty{each}, lifted dry", mass(empty.q)));
            rows.push(row(g, "Freight to the site", By::Open, ""));
            rows.push(row(g, "Unloading and setting", By::Others, lifted));
        }
        if self.in_ground()
            || performance.is_some_and(|p| matches!(p.site.installation.stands.q, Stands::InPit | Stands::Buried))
        {
            let floor = performance.and_then(|p| p.site.installation.floor).map_or_else(String::new, |floor| {
                format!(
                    "floor of the unit at {} of the site's datum",
                    print::told(floor.q.si(), self.settled.job.enquiry.system().pick((&FT, &M)))
                )
            });
            let uplift = performance.and_then(|p| p.flotation.as_ref()?.uplift).filter(|uplift| uplift.q.si() > 0.0);
            let uplift =
                uplift.map(|uplift| format!("uplift, empty, {}{}", self.show(uplift.q, (&LBF, &KN)), self.each()));
            let both: Vec<String> =
                [Some(floor).filter(|floor| !floor.is_empty()), uplift].into_iter().flatten().collect();
            rows.push(row(g, "Excavation, backfill, hold-down", By::Others, both.join("; ")));
        }
        rows
    }

    fn utilities(&self) -> Vec<Row> {
        let g = Group::Utilities;
        let mut rows = Vec::new();
        let float = self.settled.job.design.performance.as_ref().is_some_and(|p| !p.levels.is_empty());
        if float {
            rows.push(row(g, "Power for switch and panel", By::Others, "voltage and rating by the maker of the panel"));
        }
        let feed = self.train.stages.iter().any(|stage| stage.kind == StageKind::Pump);
        if feed || self.train.unit.pump_out.is_some() {
            rows.push(row(g, "Power for pumps", By::Others, "rating by the maker of the pumps"));
        }
        let shop = self.settled.job.design.performance.as_ref().and_then(|p| p.shop.as_ref());
        if let Some(frost) = shop.and_then(|shop| shop.frost.as_ref()) {
            let power = self.show(frost.heater.q, (&KW, &KW));
            let (air, with) = (self.show(frost.air.q, (&DEG_F, &DEG_C)), self.show(frost.with.q, (&IN, &MM)));
            rows.push(row(
                g,
                "Frost: heater and insulation",
                By::Open,
                format!("{power} behind {with} of insulation, in air of {air}"),
            ));
        }
        let water = self.show(self.train.unit.layout.water_volume.q, (&GAL, &M3));
        let hopper = self.train.unit.hopper.as_ref().map_or_else(String::new, |hopper| {
            format!(", {} more in the hopper", self.show(hopper.volume.q, (&GAL, &M3)))
        });
        rows.push(row(
            g,
            "Clean water for the first filling",
            By::Others,
            format!("{}{water} above the floor{hopper}", self.lead()),
        ));
        rows.push(row(g, "Compressed air", By::Nobody, ""));
        let lug = if self.is_built_in() { "of what is of metal in it" } else { "a lug for it by the maker" };
        rows.push(row(g, "Earthing (grounding) and bonding", By::Others, lug));
        rows
    }

    fn service(&self) -> Vec<Row> {
        let g = Group::Service;
        let often = reply::emptied_in_short(self.settled).unwrap_or_default();
        vec![
            row(g, "Start-up, training of the operators", By::Open, "by the steps of the specification"),
            row(g, "Samples and laboratory", By::Others, ""),
            row(g, "Pump-out and disposal of oil and sludge", By::Others, often),
        ]
    }
}

/// Whether it stands on supports that leave room under its hopper.
pub(crate) fn has_supports(p: &stillrise_design::performance::Performance, train: &Train) -> bool {
    let installation = &p.site.installation;
    let stands = installation.stands.q != Stands::Buried && installation.cover.is_none();
    stands && !train.unit.arrangement.is_built_in() && train.unit.shape.bottom().si() < 0.0
}
