//! What the papers for shop, site and operator read of a job, and what stands in several of them.

use crate::render::text;
use crate::report::Report;
use crate::report::blocks::{Table, blank, slim, wide};
use crate::section::place::Section;
use crate::summary;
use core::ops::Deref;
use stillrise_design::arrangements::Form;
use stillrise_design::performance::State;
use stillrise_design::performance::hydraulics::At;
use stillrise_design::performance::installation::Stands;
use stillrise_design::provenance::Pair;
use stillrise_design::stages::Place;
use stillrise_design::stages::outlet::OutletControl;
use stillrise_design::train::{Stage, StageKind};
use stillrise_handbook::vessel::cautions::caution;
use stillrise_units::catalog::{D, GAL, H, L, M3};
use stillrise_units::{Length, System, Time, Typed, Volume, print};

/// What is still to be settled between the parties.
pub(super) const AGREED: &str = "to be agreed";
/// What the maker decides.
pub(super) const MAKER: &str = "by maker";

/// The unit of a job as shop and site see it.
pub(super) struct Site<'a> {
    section: Section<'a>,
}

impl<'a> Deref for Site<'a> {
    type Target = Section<'a>;
    fn deref(&self) -> &Section<'a> {
        &self.section
    }
}

impl<'a> Site<'a> {
    /// `None` where no unit was laid out.
    pub(super) fn of(r: &Report<'a>) -> Option<Self> {
        Some(Self { section: Section::new(r.settled, r.edition)? })
    }

    /// A quantity in prose.
    pub(super) fn say<Q: Typed>(&self, q: Q, units: Pair) -> String {
        print::in_prose(q.si(), self.system.pick(units))
    }
    /// A length as the drawings write it, so that no two papers differ in it.
    pub(super) fn len(&self, length: Length) -> String {
        let unit = if self.system == System::Si { " mm" } else { "" };
        self.write(length) + unit
    }
    /// A level above the floor, with its elevation on the site where that is known.
    pub(super) fn level(&self, level: Length) -> String {
        let datum = self.datum(level).map_or_else(String::new, |el| format!(" (EL {el})"));
        self.len(level) + &datum
    }
    /// What one unit holds of oil or sludge.
    pub(super) fn store(&self, volume: Volume) -> String {
        self.say(volume, (&GAL, &L))
    }
    /// A time in whole days, down; of less than two days in hours.
    pub(super) fn span(time: Time) -> String {
        let days = D.from_si(time.si());
        if days < 2.0 { print::in_prose(time.si(), &H) } else { format!("{} days", whole(days)) }
    }

    /// Clean water that fills one unit up to the crest.
    pub(super) fn fill(&self) -> String {
        let unit = self.unit();
        let water = |volume: Volume| self.say(volume, (&GAL, &M3));
        let mut says = water(unit.layout.water_volume.q);
        if let Some(hopper) = &unit.hopper {
            says += &format!(" above the floor and {} in the hopper", water(hopper.volume.q));
        }
        if let Some(zone) = unit.compartment(Place::PumpOut) {
            says += &format!(
                ", and {} in the pump-out compartment up to where its first pump starts",
                water(zone.volume.q)
            );
        }
        says
    }
    /// " in each unit", where there are several.
    pub(super) fn each(&self) -> &'static str {
        if self.several() { " in each unit" } else { "" }
    }
    /// Whether units run in parallel.
    pub(super) fn several(&self) -> bool {
        self.train.count.q.si() > 1.5
    }
    /// A stage of the train.
    pub(super) fn stage(&self, kind: StageKind) -> Option<&'a Stage> {
        self.train.stages.iter().find(|stage| stage.kind == kind)
    }
    /// Whether pumps send the water to it.
    pub(super) fn pumped(&self) -> bool {
        self.settled.job.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped)
    }
    /// Whether it is built in its place and not set as a whole.
    pub(super) fn built_in(&self) -> bool {
        self.unit().arrangement.is_built_in()
    }
    /// Whether it stands in the ground, or is made to.
    pub(super) fn in_ground(&self) -> bool {
        let stands = self.performance.map(|p| p.site.installation.stands.q);
        let levels = matches!(stands, Some(Stands::Buried | Stands::InPit));
        levels || self.cover().is_some() || !self.unit().arrangement.is_set_up()
    }
    /// Whether it is of steel or of what else is coated, as far as somebody said.
    pub(super) fn coated(&self) -> bool {
        let known = &self.unit().particulars;
        let concrete = known.material.as_ref().is_some_and(|of| of.contains("concrete"));
        known.coating.is_some() || !concrete && !self.built_in()
    }
    /// Whether it is a lying cylinder, which rolls and has haunches.
    pub(super) fn lies(&self) -> bool {
        self.unit().arrangement.form() == Form::Lying
    }
    /// Whether a weir holds its level.
    pub(super) fn weir(&self) -> bool {
        self.unit().outlet.control.q == OutletControl::Weir
    }
    /// By what water is drawn off for a test.
    pub(super) fn drain(&self) -> &'static str {
        if self.hopper().is_some() { "by the sludge drain" } else { "by a hose" }
    }
    /// How level what must be level is.
    pub(super) fn slope(&self) -> &'static str {
        if self.system == System::Us { "1/8 in in 10 ft" } else { "3 mm in 3 m" }
    }
    /// Head that a stage takes at the design flow at the end of the interval, fouled.
    pub(super) fn fouled(&self, stage: &str) -> Option<Length> {
        let p = self.performance?;
        let profile = p.profiles.iter().find(|profile| profile.at == At::Design(State::End))?;
        profile.steps.iter().find(|step| step.name == stage).map(|step| step.loss.q)
    }
    /// What the words on the alarm's label are.
    pub(super) const LABEL: &'static str = "HIGH OIL OR LOW WATER";

    /// The paragraph that every paper begins with.
    pub(super) fn opening(&self, r: &mut Report<'_>) {
        let datum = match self.datum(crate::section::place::zero()) {
            Some(floor) => format!("EL is the site's datum; the floor lies at EL {floor}"),
            None => "the site's datum is not known, so no elevations stand beside them".to_owned(),
        };
        r.out.para(&format!(
            "Unit: {}, {}. Levels are above the floor inside, without flow unless said otherwise, and are written as on the drawings; {datum}.",
            summary::units(self.train),
            self.unit().arrangement.word(),
        ));
        let settled = self.settled;
        if !settled.job.enquiry.unit_stands() && !settled.pick.as_ref().is_some_and(|pick| pick.fits) {
            r.out.lead("Not offered as it stands.", "The offer summary says what is to be settled first, or what must stand beside it. Nothing here is to be ordered or built from.");
        }
        if let Some(oil) = self.governing().filter(|_| self.layer().is_none()) {
            let cap = oil.caps.get(oil.governing).map_or("vessel", |cap| cap.of.word());
            r.out.lead("No room for oil.", &format!("By the calculation the {cap} leaves no room for a layer of {} in this unit: alarm and shut-off have no level, and are left out here, until that is changed.", oil.oil));
        }
    }

    /// Parts to be kept or ordered: part, number, why.
    pub(super) fn spares(&self) -> Table {
        let mut table = Table::new([wide("Spare part", 1.4), slim("Number"), wide("Why", 2.0)]);
        let unit = self.unit();
        let mut row = |part: &str, number: &str, why: &str| table.row([part, number, why]);
        if self.layer().is_some() {
            row("Level float with its switch and cable", "1", "the alarm must not stand still for want of one");
            row("Lamp and horn of the panel", "1 each", "as the panel's maker lists them");
        }
        row("Gaskets of nozzles and covers", "1 set", "renewed whenever they are opened");
        if unit.mesh.is_some() {
            row("Mesh", "1 set", "put in while the other is washed");
        }
        if unit.pack.is_some() {
            row("Clips and hold-downs of the plates", MAKER, "lost or broken when modules are lifted");
        }
        if unit.pump_out.is_some() {
            row(
                "Seals, level switch and non-return valve of an effluent pump",
                MAKER,
                "as the pump's maker lists them",
            );
        }
        if self.performance.and_then(|p| p.shop.as_ref()).is_some_and(|shop| shop.protection.is_some()) {
            row("Anodes", MAKER, "as the specialist for the protection finds them used up");
        }
        if unit.particulars.coating.is_some() {
            row("Repair kit of the coating", "1", "the maker's own system");
        }
        table
    }

    /// The cautions that this paper's reader acts on, and what comes before them.
    pub(super) fn cautions(&self, r: &mut Report<'_>, words: &[&str]) {
        r.out.section("Cautions");
        let mut table = Table::new([wide("Mind", 1.0), wide("What it means here", 4.2)]);
        for found in ["review", "local"].into_iter().chain(words.iter().copied()).filter_map(caution) {
            table.row([found.title, found.text]);
        }
        if words.contains(&"confined space") {
            table.row(["Stored energy", "Pumps, valves, closures, pressure in pipes and raised loads can move by themselves: locked out, let down and tried before work begins."]);
        }
        r.out.table(&table);
        r.out.remark("The law and the owner's own rules come first wherever they ask for more. These cautions are no safety plan.");
    }
}

/// A number of days, whole, down.
pub(super) fn whole(days: f64) -> String {
    print::digits(days.floor(), 3)
}

/// A schedule of the drawings as a table of a paper; its columns of lengths get the unit that a drawing says once for all.
pub(super) fn schedule(system: System, of: &text::Table, widest: usize) -> Table {
    const LENGTHS: [&str; 4] = ["Over floor", "Layer", "Interface", "Surface"];
    let head = of.header.iter().enumerate().map(|(k, head)| {
        let unit = if system == System::Si && LENGTHS.contains(&head.as_str()) { "|mm" } else { "" };
        let head = format!("{head}{unit}");
        if k == widest { wide(&head, 1.0) } else { slim(&head) }
    });
    let mut table = Table::new(head);
    for row in &of.rows {
        table.row(row.clone());
    }
    table
}

/// A box in which these sign.
pub(super) fn signed(r: &mut Report<'_>, roles: &[&str]) {
    let mut table = Table::new([wide("For", 1.4), wide("Name", 1.4), blank("Date", 26.0), wide("Signature", 1.6)]);
    for role in roles {
        table.row([*role, "", "", ""]);
    }
    r.out.form(&table, 9.0);
}
