//! Why a unit falls short: one cause a file.
//!
//! A cause has a size that can be found from what was observed, signs that speak for or against it, a test
//! that would show it, and a remedy. How often causes occur and how signs go with them is common practice
//! put into numbers: engineering judgement, all of it.

use super::situation::Situation;
use stillrise_design::provenance::Pair;

/// How a size is spread before anything was observed: half of the causes lie below `likely`, nine in ten
/// between `low` and `high`.
#[derive(Debug, Clone, Copy)]
pub struct Size {
    /// What it is.
    pub label: &'static str,
    /// Print units.
    pub units: Pair,
    /// One in twenty is smaller, SI.
    pub low: f64,
    /// Half is smaller.
    pub likely: f64,
    /// One in twenty is larger.
    pub high: f64,
    /// Below this it is not this cause any more: more water is never less water.
    pub least: f64,
    /// Above this it cannot be.
    pub most: f64,
}

/// One cause.
#[derive(Debug)]
pub struct Cause {
    /// Which it is.
    pub id: Id,
    /// In a phrase.
    pub title: &'static str,
    /// How it comes about.
    pub how: &'static str,
    /// How often it stands behind a complaint, of all complaints.
    pub often: f64,
    /// Its size, if it moves the effluent.
    pub size: Option<Size>,
    /// Puts a size of it into a situation, on top of what another cause put there.
    pub act: fn(&mut Situation, f64),
    /// Whether what was measured settles the question already: a measured flow is no unknown flow.
    pub settled_by: &'static [Measured],
    /// How the water looks under it: clear, hazy, milky, film.
    pub looks: Option<[f64; 4]>,
    /// What a jar does: clears within an hour, overnight, stays.
    pub jar: Option<[f64; 3]>,
    /// What the alarm does: silent, thick oil and no alarm, oil found, no oil found.
    pub alarm: Option<[f64; 4]>,
    /// How the samples were taken under it: falling stream, mid-depth, surface, composite, first flush.
    pub taken: Option<[f64; 5]>,
    /// How likely the water stands above its usual level.
    pub backed_up: f64,
    /// The gauging that shows it.
    pub gauge: Option<Gauge>,
    /// Whether it asks more of plates and tank than they have, so that more of them would help.
    pub capacity: bool,
    /// The test that would show it.
    pub test: &'static str,
    /// What the test costs: 1 a look, 2 an hour, 3 a laboratory sample, 4 a day, 5 a shutdown.
    pub cost: u8,
    /// Days of normal operation after the remedy before a sample says anything: what clings to sump, pipes and plates
    /// goes first. Engineering judgement.
    pub settles: u32,
    /// What to do about it.
    pub remedy: &'static str,
}

/// What may have been gauged in the unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gauge {
    /// The oil layer, against the thickest that is permitted.
    OilLayer,
    /// The sludge, against the underside of the plates.
    Sludge,
    /// The sludge, against the depth that calls for pumping out.
    Trigger,
    /// The water, below its usual level.
    Level,
}

impl Gauge {
    /// Whether a cause with this gauge shows in another one: sludge in the plates has passed its trigger.
    #[must_use]
    pub fn shows(self, gauge: Gauge) -> bool {
        self == gauge || self == Gauge::Sludge && gauge == Gauge::Trigger
    }
}

/// What may have been measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measured {
    /// Flow.
    Flow,
    /// Temperature.
    Temperature,
    /// Oil that arrives.
    OilIn,
    /// That no pump feeds the unit.
    NoPump,
}

/// The cause whose test is the water's level ahead of the mesh.
pub const FOULED_MESH: Id = Id::FouledMesh;

/// The cause that a jar speaks to, which the customer may have let stand already.
pub const SEEN_IN_A_JAR: Id = Id::Emulsion;

/// What is left of its test when a jar of the water that leaves has stood.
pub const AFTER_THE_JAR: &str =
    "Repeat it with the influent, and bring the pH of a second jar to 2: what clears only with the acid is emulsified.";

/// The cause whose sign is an alarm at one time of the day.
pub const ALARM_BY_CLOCK: Id = Id::AlarmFollowsFlow;

/// The cause that only a change of the outlet brings about.
pub const MOVED_OUTLET: Id = Id::MovedOutlet;

/// The cause that acts only on samples dipped from the surface.
pub const SURFACE_SAMPLE: Id = Id::SurfaceSample;

/// Causes that lie in the sample and not in the water.
pub const OF_THE_SAMPLE: &[Id] = &[Id::SamplingOrMethod, SURFACE_SAMPLE];

/// Causes of an alarm that sounds without oil.
pub const OF_THE_ALARM: &[Id] = &[Id::FalseAlarm, ALARM_BY_CLOCK];

macro_rules! list_causes {
    ($($name:ident $id:ident $word:literal),+ $(,)?) => {
        $(mod $name;)+
        /// Every cause.
        pub static CAUSES: &[&Cause] = &[$(&$name::CAUSE),+];

        /// Which cause.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        #[allow(missing_docs, reason = "each is told by its title")]
        pub enum Id { $($id),+ }

        impl Id {
            /// Its word in files: the file stem in kebab case.
            #[must_use]
            pub fn word(self) -> &'static str {
                match self {
                    $(Id::$id => $word),+
                }
            }
        }
    };
}

list_causes! {
    emulsion Emulsion "emulsion",
    dissolved_oil DissolvedOil "dissolved-oil",
    flow_above_design FlowAboveDesign "flow-above-design",
    pump_shear PumpShear "pump-shear",
    finer_droplets FinerDroplets "finer-droplets",
    stronger_influent StrongerInfluent "stronger-influent",
    sampling_or_method SamplingOrMethod "sampling-or-method",
    blocked_plates BlockedPlates "blocked-plates",
    colder_water ColderWater "colder-water",
    oil_over_cap OilOverCap "oil-over-cap",
    siphon Siphon "siphon",
    fouled_mesh FouledMesh "fouled-mesh",
    false_alarm FalseAlarm "false-alarm",
    alarm_follows_flow AlarmFollowsFlow "alarm-follows-flow",
    low_level LowLevel "low-level",
    sludge_over_trigger SludgeOverTrigger "sludge-over-trigger",
    surface_sample SurfaceSample "surface-sample",
    moved_outlet MovedOutlet "moved-outlet",
}
