//! Shop and installation, preliminary: what the unit weighs, how it is lifted, kept from frost, vented and protected.

use super::section;
use crate::render::text::hang;
use stillrise_checks::ask::oil_is_named;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::shop::Shop;
use stillrise_design::performance::shop::frost::Frost;
use stillrise_design::performance::shop::lifting::Lifting;
use stillrise_design::performance::shop::protection::Protection;
use stillrise_design::performance::shop::vent::Vent;
use stillrise_design::performance::shop::weights::Weights;
use stillrise_design::provenance::{Node, Pair};
use stillrise_search::Settled;
use stillrise_units::catalog::{
    D, DEG, DEG_C, DEG_F, FT2, H, IN, KG, KN, KPA, KW, LB, LBF, M2, MM, ONE, PERCENT, PSF, PSI, YR,
};
use stillrise_units::{Pressure, System, Temperature, Typed, print, spoken};

const MASS: Pair = (&LB, &KG);
const LENGTH: Pair = (&IN, &MM);
const FORCE: Pair = (&LBF, &KN);

/// What it is, whatever the job.
pub(crate) const PRELIMINARY: &str = "For asking a shop, a crane and an authority, not for building: a licensed engineer designs it, and local codes and the permit govern.";

/// So many kelvin below its flash point a mixture is taken to give off no vapour that ignites; EN 1127-1, from memory.
const NEAR_FLASH: f64 = 15.0;

/// A job's numbers in prose.
pub(crate) struct Says<'a> {
    settled: &'a Settled,
    system: System,
    /// What was found.
    pub(crate) shop: &'a Shop,
}

impl<'a> Says<'a> {
    /// Of a job in which something was found.
    pub(crate) fn of(settled: &'a Settled) -> Option<Self> {
        let shop = settled.job.design.performance.as_ref()?.shop.as_ref()?;
        Some(Self { settled, system: settled.job.enquiry.system(), shop })
    }
    fn show<Q: Typed>(&self, q: Q, units: Pair) -> String {
        print::in_prose(q.si(), self.system.pick(units))
    }
    /// Whether it stands on legs under its hopper.
    fn stands_on_legs(&self) -> bool {
        let design = &self.settled.job.design;
        let both = design.performance.as_ref().zip(design.train.as_ref());
        both.is_some_and(|(performance, train)| crate::scope::has_supports(performance, train))
    }
    /// The word that stands behind what nobody stated.
    fn taken(&self, at: Node) -> &'static str {
        if self.settled.subject().assumed(at).is_some() { " (assumed)" } else { "" }
    }

    /// What one unit weighs.
    pub(crate) fn weights(&self) -> Option<String> {
        let Weights { empty, stated, options_added, water, full, operating, test, bearing, leg, sludge, .. } =
            self.shop.weights.as_ref()?;
        let mass = |q| self.show(q, MASS);
        let (Some(empty), Some(operating), Some(test)) = (empty, operating, test) else {
            return Some(format!(
                "What one unit weighs empty is not known: neither its weight is stated, nor a steel and its thickness. The water in it weighs {} up to the crest, {} up to its top.",
                mass(water.q),
                mass(full.q)
            ));
        };
        let how = match (stated, options_added) {
            (true, true) => "as stated, its options added in proportion to their length",
            (true, false) => "as stated",
            (false, _) => {
                "estimated from the steel of floor, walls or heads, with a fifth on top for stiffeners, baffles, plates, nozzles and welds"
            }
        };
        let sludge = if sludge.is_some() { " and sludge at its trigger" } else { "" };
        let floor = bearing.map_or_else(String::new, |p| format!(", {} under its floor", self.show(p.q, (&PSF, &KPA))));
        let legs = leg.filter(|_| self.stands_on_legs());
        let floor = legs.map_or(floor, |leg| format!(", {} on each of four legs that share it evenly", mass(leg.q)));
        Some(format!(
            "One unit weighs {} empty, {how}; {} as it works, with water up to the crest{sludge}; {} full of water to its top, as in the test{floor}.",
            mass(empty.q),
            mass(operating.q),
            mass(test.q)
        ))
    }

    /// How it is lifted.
    pub(crate) fn lifting(&self) -> Option<String> {
        let Lifting { points, angle, legs, pulls } = self.shop.lifting.as_ref()?;
        let pulls = pulls.as_ref()?;
        let force = |q| self.show(q, FORCE);
        let number = |q| print::digits(stillrise_units::Ratio::si(q), 3);
        let hook = self.shop.weights.as_ref().and_then(|w| w.centre).map_or_else(String::new, |centre| {
            format!(
                " It hangs level with the hook some {} from the tip of its inlet end, by the steel of vessel, hopper and inner walls alone.",
                self.show(centre.q, LENGTH)
            )
        });
        Some(format!(
            "Lifted empty, dry and without sludge, each of {} points{} carries {} where all share evenly. With slings {} from the level{} and {} of them carrying all, each pulls {}; a lug is designed for twice that, {}.{hook}",
            number(points.q),
            self.taken(points.at),
            force(pulls.each.q),
            self.show(angle.q, (&DEG, &DEG)),
            self.taken(angle.at),
            number(legs.q),
            force(pulls.tension.q),
            force(pulls.lug.q)
        ))
    }

    /// What two saddles carry before it is let into the ground.
    pub(crate) fn saddles(&self) -> Option<String> {
        let found = self.shop.saddles.as_ref()?;
        let stress = |q: Pressure| self.show(q.abs(), (&PSI, &KPA));
        Some(format!(
            "Before it is let into the ground, in the shop or on a truck, it may rest on two saddles, {} from the seam of each head. Filled to its top there for a test, the one under the heavier end carries {}, and the shell bends lengthwise to {} midway and {} over a saddle.",
            self.show(found.place.q, LENGTH),
            self.show(found.load.q, FORCE),
            stress(found.midway.q),
            stress(found.over.q)
        ))
    }

    /// What frost does to it.
    pub(crate) fn frost(&self) -> Option<String> {
        let Frost { air, insulation, loss, water, freezes_in, kept, with, heater, heater_bare, .. } =
            self.shop.frost.as_ref()?;
        let warm = |q| self.show(q, (&DEG_F, &DEG_C));
        let power = |q| self.show(q, (&KW, &KW));
        let walls = match insulation.filter(|thickness| thickness.q.si() > 0.0) {
            Some(thickness) => format!("behind {} of insulation", self.show(thickness.q, LENGTH)),
            None => "behind bare walls".to_owned(),
        };
        let freezes = freezes_in.map_or_else(String::new, |time| {
            let unit = if time.q.si() < 172_800.0 { (&H, &H) } else { (&D, &D) };
            format!(
                ", and begins to freeze after some {}; sample lines and floats freeze sooner",
                self.show(time.q, unit)
            )
        });
        let proposed =
            if insulation.is_some_and(|thickness| thickness.q.si() > 0.0) { "" } else { ", which we propose" };
        Some(format!(
            "In air of {} water of {} that stands {walls} loses {}{freezes}. To hold it at {}{} a heater of {} will do behind {} of insulation{proposed}, a quarter over what is lost; without insulation it takes {}.",
            warm(air.q),
            warm(water.q),
            power(loss.q),
            warm(kept.q),
            self.taken(kept.at),
            power(heater.q),
            self.show(with.q, LENGTH),
            power(heater_bare.q)
        ))
    }

    /// Its vent.
    pub(crate) fn vent(&self) -> Option<String> {
        let Vent { air, difference, bore, least, size } = self.shop.vent.as_ref()?;
        let pipe = size.map_or_else(String::new, |size| match self.system {
            System::Us => format!(", a pipe of {}", size.word),
            System::Si => format!(", a pipe of {}", size.metric_word()),
        });
        Some(format!(
            "Each closed compartment is vented: air of {} passes a bore of {} at {}; we propose no less than {}{pipe}.",
            self.show(air.q, FLOW_UNITS),
            self.show(bore.q, LENGTH),
            self.show(difference.q, (&PSI, &KPA)),
            self.show(least.q, LENGTH)
        ))
    }

    /// Its cathodic protection.
    pub(crate) fn protection(&self) -> Option<String> {
        let Protection { area, bare, density, current, life, mass, soil, anodes, .. } =
            self.shop.protection.as_ref()?;
        let pure = |q| self.show(q, (&ONE, &ONE));
        // Its key counts milliamperes for a square foot, as the source does.
        let bare_steel = match self.system {
            System::Us => format!("{} mA for each square foot", pure(density.q)),
            System::Si => format!("{} mA for each square metre", pure(density.q * (FT2.from_si(1.0)))),
        };
        Some(format!(
            "Cathodic protection, its size only: {} of coated steel, {} of it bare{}, at {} of it{} takes {} A, and over {}{} uses up {} of magnesium: {} anodes of {}, in soil of {} ohm cm{}. A specialist measures the soil and designs it.",
            self.show(area.q, (&FT2, &M2)),
            self.show(bare.q, (&PERCENT, &PERCENT)),
            self.taken(bare.at),
            bare_steel,
            self.taken(density.at),
            pure(current.q),
            self.show(life.q, (&YR, &YR)),
            self.taken(life.at),
            self.show(mass.q, MASS),
            pure(anodes.q),
            spoken("{17 lb|7.7 kg}", self.system),
            pure(soil.q),
            self.taken(soil.at)
        ))
    }

    /// The warmest that water may be when it comes.
    fn hottest(&self) -> Option<Temperature> {
        let basis = self.settled.job.design.basis.as_ref()?;
        let own = basis.cases.iter().filter_map(|case| Some(case.own.as_ref()?.arrives[1].temperature.q));
        own.chain([basis.fluids.warm.temperature.q]).max_by(|a, b| a.si().total_cmp(&b.si()))
    }

    /// The class of the oils, and what follows.
    pub(crate) fn areas(&self) -> Option<String> {
        let areas = &self.shop.areas;
        let first = areas.oils.first()?;
        let each: Vec<String> = areas
            .oils
            .iter()
            .map(|oil| {
                format!(
                    "{}, which may flash at {}, is of class {}",
                    oil.oil,
                    self.show(oil.flash.q, (&DEG_F, &DEG_C)),
                    oil.shown()
                )
            })
            .collect();
        let named = if oil_is_named(&self.settled.subject()) {
            String::new()
        } else {
            format!(" Nobody named an oil; this is for {}, which we took.", first.oil)
        };
        // What is kept as warm as its flash point, or near it, gives off what ignites.
        let heated = self.hottest().and_then(|hot| {
            let near = areas.oils.iter().find(|oil| hot.si() + NEAR_FLASH > oil.flash.q.si())?;
            Some(format!(
                "Water of up to {} comes near its flash point or above it: vapour of {} ignites then, as of a lighter one, and codes draw areas around the separator for it.",
                self.show(hot, (&DEG_F, &DEG_C)),
                near.oil
            ))
        });
        let follows = if let Some(heated) = heated.filter(|_| !areas.volatile) {
            heated
        } else if areas.volatile {
            format!(
                "Vapour of {} ignites at the temperatures of drainage; codes draw areas around the separator for it.",
                first.oil
            )
        } else {
            "Not heated and not sprayed, such an oil often leaves the area unclassified; where cars stand, spilled gasoline is what to draw areas for."
                .to_owned()
        };
        Some(format!(
            "By flash point {}.{named} {follows} The authority decides, on a drawing of the areas.",
            each.join("; ")
        ))
    }
}

/// The few lines of the summary.
pub(super) fn shop(out: &mut String, settled: &Settled, width: usize) {
    let Some(says) = Says::of(settled) else { return };
    let lines = [says.weights(), says.lifting(), says.saddles(), says.frost(), says.vent(), says.protection()];
    let lines: Vec<String> = lines.into_iter().flatten().collect();
    if lines.is_empty() {
        return;
    }
    out.push_str(&section("Shop and installation, preliminary"));
    for line in lines {
        out.push_str(&hang(&line, width, 0, 2));
    }
}
