//! Laboratory results of the water that comes or leaves.

use crate::enquiry::Enquiry;
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::keys;
use crate::enquiry::results::Results;
use stillrise_handbook::choice;
use stillrise_handbook::fluids::pollutants::{self, Pollutant};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Fault, nearest};

names! {
    sampled_names = pollutants::POLLUTANTS;
}

choice! {
    /// Where samples were taken.
    SamplePoint {
        /// of the water that comes to the separator
        In "in",
        /// of the water that leaves it
        Out "out",
    }
}
choice! {
    /// How a sample was taken.
    Manner {
        /// one bottle filled at once from the falling or the mixed stream, all of it analysed
        Grab "grab",
        /// mixed from portions taken over time or over flow
        Composite "composite",
        /// drawn from the pipe at the speed of the water
        Isokinetic "isokinetic",
        /// dipped or skimmed from the surface
        Surface "from the surface",
        /// a small part drawn from a bottle or a basin by pipette
        Pipette "pipette",
    }
}
keys! {
    /// A set of laboratory results of one water, one pollutant and one method.
    Samples "samples" {
        /// Its name
        name: Text = spec.like("\"outfall, spring 2026\"").needed();
        /// Of the water that comes, or of the water that leaves
        place as "where": Word<SamplePoint> = spec.like("\"out\"").needed();
        /// Which water, where several come: the name of a stream, or rain
        stream: Text = spec.like("\"bus wash rinse\"");
        /// Of what; oil and grease when nothing is said
        pollutant: Text = spec.named(sampled_names).like("\"oil and grease\"");
        /// The results, each with its date if known; below the reporting limit as < or ND
        results: Results<Concentration> = spec.units(&MG_L, &MG_L).between("0.0001 mg/L", "900000 mg/L").like("[\"2026-03-02: 12 mg/L\", \"<5 mg/L\", \"ND (5 mg/L)\"]").needed();
        /// Dates of the results, in their order
        dates: Vec<String> = spec.like("[\"2026-03-02\", \"2026-03-09\"]");
        /// Method of analysis
        method: Text = spec.like("\"EPA 1664B HEM\"");
        /// The same samples after treatment with silica gel, in the order of the results
        after_silica_gel: Results<Concentration> = spec.units(&MG_L, &MG_L).between("0.0001 mg/L", "900000 mg/L").like("[\"8 mg/L\", \"<5 mg/L\"]");
        /// How the samples were taken
        manner: Word<Manner> = spec.like("\"grab\"");
        /// Who took them
        taken_by: Text = spec.like("\"site operator\"");
        /// Who analysed them
        laboratory: Text = spec.like("\"an accredited laboratory\"");
        /// How the plant was run while they were taken
        regime: Text = spec.like("\"with degreaser\"");
    }
}

/// The word by which samples say that they are of the rain.
pub const OF_RAIN: &str = "rain";

/// What no set of samples can be.
pub(in crate::enquiry) fn sample_faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    for (i, s) in e.samples.iter().enumerate() {
        let place = s.name.as_ref().map_or_else(|| format!("samples {}", i + 1), |name| format!("samples \"{name}\""));
        let mut fault = |key: &str, reason: String, remedy: &str| {
            faults.push(Fault::new(format!("{place}: {key}"), reason, remedy));
        };
        let results = s.results.items.len();
        // Results that were refused have their faults already.
        if results > 0 {
            let each = |n: usize| format!("{n} of them beside {results} results");
            if !s.dates.is_empty() && s.dates.len() != results {
                fault("dates", each(s.dates.len()), "give one for each result, in the same order");
            }
            let treated = s.after_silica_gel.items.len();
            if treated > 0 && treated != results {
                fault("after_silica_gel", each(treated), "give one for each result, in the same order");
            }
        }
        if !s.dates.is_empty() && s.results.items.iter().any(|r| r.date.is_some()) {
            fault("dates", "the results carry dates of their own".to_owned(), "give the dates once");
        }
        if let Some(name) = s.stream.as_deref().filter(|name| !e.has_water(name)) {
            let rain = e.rain.is_some().then_some(OF_RAIN);
            let known: Vec<&str> = e.streams.iter().filter_map(|s| s.name.as_deref()).chain(rain).collect();
            let remedy = match nearest(name, known.iter().copied()) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None if known.is_empty() => "leave it out: no water has a name".to_owned(),
                None => format!("use one of {}", known.join(", ")),
            };
            fault("stream", format!("no water is called \"{name}\""), &remedy);
        }
    }
}

impl Samples {
    /// What was measured: oil and grease, where nobody said.
    #[must_use]
    pub fn of(&self) -> Option<&'static Pollutant> {
        match self.pollutant.as_deref() {
            Some(word) => pollutants::pollutant(word),
            None => pollutants::total_oils().next(),
        }
    }
}

impl Enquiry {
    /// Whether a stream has this name, or it is the rain and there is some.
    fn has_water(&self, name: &str) -> bool {
        self.streams.iter().any(|s| s.name.as_deref() == Some(name)) || name == OF_RAIN && self.rain.is_some()
    }
    /// Whether the unit that is described stands already, so that what was observed and sampled is its own. Without a
    /// word on it: a unit described by its dimensions at which something was seen, or water that left was sampled; or one whose
    /// model is named, at which something was seen.
    /// Of a unit that is still to be picked or made nothing can have been seen: that was the plant it follows.
    #[must_use]
    pub fn unit_stands(&self) -> bool {
        // A model that is named without its dimensions is one to be bought, unless it was watched.
        let named = self.unit.model.is_some() && !self.observed.is_empty();
        let described = named || self.unit.dimensions.is_some();
        let out = |s: &Samples| s.place.0 == Some(SamplePoint::Out);
        let seen = !self.observed.is_empty() || self.samples.iter().any(out);
        self.unit.exists.unwrap_or(described && seen)
    }
}
