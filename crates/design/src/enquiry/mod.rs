//! The enquiry: what the customer said, in his units, with gaps and contradictions.

pub mod blocks;
mod claim;
pub mod claimed_word;
pub mod containments;
mod curve;
pub mod date;
pub mod declared;
pub mod distribution;
pub mod european;
pub mod fields;
pub mod inlet;
mod key;
pub mod keys;
pub mod limit_value;
pub mod named;
mod names;
pub mod observations;
mod oils;
pub mod paired;
pub mod pump_curve;
pub mod rain_table;
pub mod range;
pub mod reader;
pub mod regulation;
pub mod results;
pub mod said;
pub mod settings;
mod shares;
pub mod shear;
pub mod spec;
pub mod today;
pub mod usual;

use blocks::*;
use keys::BlockSpec;
use range::Range;
use reader::{Slot, read, slots};
use said::Claimed;
use settings::Settings;
use shares::{grains, unlike_shares};
use shear::ShearBlock;
use std::sync::Arc;
use stillrise_handbook::separation::remaining_oil::DropletLaw;
use stillrise_units::parse::{DECIMAL_COMMA, DECIMAL_POINT, ROUND_POINT, THOUSANDS_COMMA};
use stillrise_units::{Fault, System};

/// An enquiry file as read.
#[derive(Debug, Clone, Default)]
#[allow(missing_docs)]
pub struct Enquiry {
    pub head: Head,
    pub surfaces: Vec<Surface>,
    pub rain: Option<Rain>,
    pub streams: Vec<Stream>,
    pub dumps: Vec<Dump>,
    pub oils: Vec<OilBlock>,
    pub water: Water,
    pub droplets: Droplets,
    pub shear: Vec<ShearBlock>,
    pub solids: Solids,
    pub chemicals: Vec<ChemicalBlock>,
    pub limits: Vec<Limit>,
    pub inlet: Inlet,
    pub lift: Option<Lift>,
    pub screen: Screen,
    pub outlet: Outlet,
    pub containments: Vec<Containment>,
    pub spill: Option<Spill>,
    pub oil_tank: Option<OilTank>,
    pub site: Site,
    pub installation: InstallationBlock,
    pub stated: Stated,
    pub asked: Asked,
    pub european: Option<European>,
    pub regulation: Option<Regulation>,
    pub cases: Vec<CaseBlock>,
    pub method: Method,
    pub unit: UnitBlock,
    pub observed: Vec<Observed>,
    pub samples: Vec<Samples>,
    pub changes: Vec<Change>,
    pub decisions: Vec<Decision>,
    /// What had to be interpreted while reading: place and sentence.
    pub notes: Vec<(String, String)>,
    /// Whether anything was read in US gallons because nobody said which gallon.
    pub gallon_open: bool,
    /// The rain table, when one is named.
    pub rain_table: Option<rain_table::RainTable>,
    /// The range named by the unit block.
    pub range: Option<Range>,
    /// The company's settings, where there are some: they stand below what the enquiry states and above defaults.
    pub settings: Option<Arc<Settings>>,
}

impl Enquiry {
    /// Units of print.
    #[must_use]
    pub fn system(&self) -> System {
        let company = || self.settings.as_ref().and_then(|settings| settings.documents.print.0);
        match self.head.print.0.or_else(company) {
            Some(Print::Us) => System::Us,
            _ => System::Si,
        }
    }
    /// What was said besides quantities, in the order of the blocks.
    #[must_use]
    pub fn claimed(&self) -> Vec<&dyn Claimed> {
        let mut found = Vec::new();
        SLOTS.iter().for_each(|slot| (slot.claimed)(self, &mut found));
        found
    }
    /// Quantities on which claims differ and nobody chose, in the order of the blocks.
    #[must_use]
    pub fn differing(&self) -> Vec<keys::Differing<'_>> {
        let mut found = Vec::new();
        SLOTS.iter().for_each(|slot| (slot.differing)(self, &mut found));
        found
    }
    /// The same, so that another claim may be taken.
    pub fn claimed_mut(&mut self, each: &mut dyn FnMut(&mut dyn Claimed)) {
        for slot in SLOTS {
            let mut found = Vec::new();
            (slot.claimed_mut)(self, &mut found);
            found.into_iter().for_each(&mut *each);
        }
    }
}

/// How the reader reaches the files that an enquiry names; the core itself touches none.
pub type Files<'a> = &'a dyn Fn(&str) -> Option<Vec<u8>>;

const SLOTS: &[Slot<Enquiry>] = slots! {
    one Head head;
    many Surface surfaces;
    maybe Rain rain;
    many Stream streams;
    many Dump dumps;
    many OilBlock oils;
    one Water water;
    one Droplets droplets;
    many ShearBlock shear;
    one Solids solids;
    many ChemicalBlock chemicals;
    many Limit limits;
    one Inlet inlet;
    maybe Lift lift;
    one Screen screen;
    one Outlet outlet;
    many Containment containments;
    maybe Spill spill;
    maybe OilTank oil_tank;
    one Site site;
    one InstallationBlock installation;
    one Stated stated;
    one Asked asked;
    maybe European european;
    maybe Regulation regulation;
    many CaseBlock cases;
    one Method method;
    one UnitBlock unit;
    many Observed observed;
    many Samples samples;
    many Change changes;
    many Decision decisions;
};

/// The blocks of an enquiry: as declared, and whether each may stand more than once.
pub fn blocks() -> impl Iterator<Item = (&'static BlockSpec, bool)> {
    SLOTS.iter().map(|slot| ((slot.spec)(), slot.many))
}

/// Reads an enquiry and the files it names.
///
/// # Errors
/// All faults at once; nothing is guessed.
pub fn read_enquiry(text: &str, files: Files<'_>) -> Result<Enquiry, Vec<Fault>> {
    read_enquiry_under(text, files, None)
}

/// The same with the company's settings.
///
/// # Errors
/// As [`read_enquiry`].
pub fn read_enquiry_under(
    text: &str,
    files: Files<'_>,
    settings: Option<&Arc<Settings>>,
) -> Result<Enquiry, Vec<Fault>> {
    let outcome = read(text, SLOTS);
    let (mut enquiry, mut faults) = (outcome.file, outcome.faults);
    enquiry.settings = settings.cloned();
    (enquiry.notes, enquiry.gallon_open) = (outcome.notes, outcome.gallon_open);
    paired::pair(&mut enquiry);
    paired::pair_rain(&mut enquiry);
    paired::tell_apart(&mut enquiry);
    if enquiry.system() == System::Us {
        enquiry.notes.retain(|(_, note)| !note.ends_with(THOUSANDS_COMMA));
    }
    // A point with three digits behind it may part thousands: among decimal commas it is told, and refused where the last of
    // them is a zero, which nobody writes behind a decimal point. Where two are, and metric units are printed, it is refused
    // without a comma too.
    let commas = enquiry.notes.iter().any(|(_, note)| note.ends_with(DECIMAL_COMMA));
    let metric = enquiry.system() == System::Si;
    let typed = |note: &str| note.split('"').nth(1).unwrap_or("it").to_owned();
    let points = |note: &str| note.ends_with(DECIMAL_POINT);
    let doubtful = |note: &str| {
        let rounded = note.ends_with(ROUND_POINT) && (commas || metric) && !typed(note).starts_with("0.");
        rounded || commas && points(note) && typed(note).ends_with('0')
    };
    faults.extend(enquiry.notes.iter().filter(|(_, note)| doubtful(note)).map(|(place, note)| {
        let why = if commas { ", as other numbers of the file have decimal commas" } else { "" };
        Fault::new(
            place.clone(),
            format!("\"{}\" may be a thousand times as much{why}", typed(note)),
            "leave the point out where it parts thousands, else leave out the zeros behind it or write a decimal comma",
        )
    }));
    enquiry.notes.retain(|(_, note)| commas || !points(note));
    if enquiry.head.title.is_none() && !faults.iter().any(|f| f.place.contains("enquiry")) {
        faults.push(Fault::new(
            "enquiry",
            "there is no [enquiry] block with a title",
            "write [enquiry] and title = \"...\"",
        ));
    }
    if enquiry.rain.is_some() && enquiry.surfaces.is_empty() && enquiry.containments.is_empty() {
        faults.push(Fault::new(
            "rain",
            "there is rain but no surface it falls on",
            "add [[surface]] with its area, or leave out [rain]",
        ));
    }
    let drained = enquiry.containments.iter().any(|c| c.drain_rate.is_given());
    let feeds = !enquiry.surfaces.is_empty() || !enquiry.streams.is_empty() || !enquiry.cases.is_empty() || drained;
    if !feeds && enquiry.inlet.rate.0.is_empty() && !enquiry.stated.flow.is_given() && enquiry.spill.is_none() {
        faults.push(Fault::new(
            "the file",
            "there is nothing to size: no surface, stream, pump, case, spill, metered drain or stated flow",
            "add at least one of them",
        ));
    }
    for (i, stream) in enquiry.streams.iter().enumerate() {
        let place =
            stream.name.as_ref().map_or_else(|| format!("stream {}", i + 1), |name| format!("stream \"{name}\""));
        // One that was written and refused has its fault already.
        let refused =
            faults.iter().any(|f| ["flow", "hoses"].iter().any(|k| f.place.contains(&format!("{place}: {k}"))));
        let given = stream.flow.is_given() || stream.hoses.is_given() || stream.volume_per_day.is_given();
        if !given && !refused {
            faults.push(Fault::new(
                place,
                "has neither a flow nor a number of hoses nor a volume a day",
                "write flow = \"45 gpm\" or \"10 m3/h\", or hoses = 3, or volume_per_day = \"200 L\"",
            ));
        }
    }
    if let Some(name) = enquiry.rain.as_ref().and_then(|r| r.table.0.clone()) {
        match files(&name) {
            None => faults.push(Fault::new(
                "rain: table",
                format!("\"{name}\" cannot be read"),
                "put the file beside the enquiry and check its name",
            )),
            Some(bytes) => match rain_table::read_table(&bytes) {
                Ok(table) => enquiry.rain_table = Some(table),
                Err(more) => faults.extend(more.into_iter().map(|f| f.at(&name))),
            },
        }
    }
    if let Some(name) = enquiry.unit.from.0.clone() {
        match files(&name).map(String::from_utf8) {
            None => faults.push(Fault::new(
                "unit: from",
                format!("\"{name}\" cannot be read"),
                "put the range beside the enquiry and check its name",
            )),
            Some(Err(_)) => {
                faults.push(Fault::new("unit: from", format!("\"{name}\" is not UTF-8 text"), "save it as UTF-8"))
            }
            Some(Ok(text)) => {
                let outcome = range::read_range(&text);
                faults.extend(outcome.faults.into_iter().map(|f| f.at(&name)));
                enquiry.range = Some(outcome.file);
            }
        }
    }
    if let Some(model) = &enquiry.unit.dimensions {
        crate::train::assumed::faults(model, &mut faults);
    }
    if let (Some(coldest), Some(warmest)) = (enquiry.water.coldest.q(), enquiry.water.warmest.q())
        && coldest > warmest
    {
        faults.push(Fault::new("water", "the coldest water is warmer than the warmest", "check the two temperatures"));
    }
    droplets("droplets", &enquiry.droplets, &mut faults);
    if let Some(own) = enquiry.rain.as_ref().and_then(|rain| rain.droplets.as_ref()) {
        droplets("rain: droplets", own, &mut faults);
    }
    for (i, stream) in enquiry.streams.iter().enumerate() {
        let name = stream.name.as_ref().map_or_else(|| format!("{}", i + 1), |name| format!("\"{name}\""));
        if let Some(own) = &stream.droplets {
            droplets(&format!("stream {name}: droplets"), own, &mut faults);
        }
        if let (Some(coldest), Some(warmest)) = (stream.coldest.q(), stream.warmest.q())
            && coldest > warmest
        {
            let reason = "it is colder at its warmest than at its coldest";
            faults.push(Fault::new(format!("stream {name}"), reason, "check the two temperatures"));
        }
    }
    oils::faults(&enquiry, &mut faults);
    grains(&enquiry.solids, &mut faults);
    shear::faults(&enquiry.shear, &mut faults);
    names::faults(&enquiry, &mut faults);
    named::faults(&enquiry, &mut faults);
    inlet::faults(&enquiry.inlet, &mut faults);
    enquiry.notes.extend(inlet::notes(&enquiry.inlet));
    enquiry.notes.extend(today::notes(&enquiry));
    sample_faults(&enquiry, &mut faults);
    containments::faults(&enquiry, &mut faults);
    european::faults(&enquiry, &mut faults);
    regulation::faults(&enquiry, &mut faults);
    if faults.is_empty() { Ok(enquiry) } else { Err(faults) }
}

/// What no distribution of droplets can be.
fn droplets(place: &str, d: &Droplets, faults: &mut Vec<Fault>) {
    let mut fault = |key: &str, reason: String, remedy: &str| {
        faults.push(Fault::new(format!("{place}: {key}"), reason, remedy));
    };
    let law = d.law.0;
    if d.table.is_given() {
        if let Some((reason, remedy)) = unlike_shares(&d.table.rows.0) {
            fault("table", reason, remedy);
        }
        if law.is_some_and(|law| law != DropletLaw::Measured) {
            fault("law", "a law is named and a table is given".to_owned(), "give one of the two");
        }
        if d.d50.is_given() || d.arriving.is_given() {
            fault("d50", "a median is stated and a table is given".to_owned(), "give one of the two");
        }
    } else if law == Some(DropletLaw::Measured) {
        fault("law", "\"measured\" without a table".to_owned(), "give table, or name another law");
    }
    if law == Some(DropletLaw::UpperLimit) {
        match (d.largest.q(), d.d50.q().or_else(|| d.arriving.q())) {
            (None, _) => fault("largest", "the upper-limit law has no largest droplet".to_owned(), "state largest"),
            (Some(largest), Some(d50)) if largest <= d50 => {
                fault("largest", "the largest droplet is no larger than the median".to_owned(), "check both");
            }
            _ => {}
        }
    }
    let base = d.base.0 == Some(DropletBase::Number);
    if base && matches!(law, Some(DropletLaw::RosinRammler | DropletLaw::UpperLimit)) {
        let reason = "a number median is turned into a volume median for the log-normal law and for tables only";
        fault("base", reason.to_owned(), "state the volume median");
    }
    if base && !d.table.is_given() && !d.d50.is_given() && !d.arriving.is_given() {
        fault("base", "\"number\" without a median or a table".to_owned(), "state d50 or table, or leave base out");
    }
}
