//! Questions that every desk asks where nobody said: they rest on no assumption with a range, and their answer can turn
//! the job.

use std::collections::BTreeSet;
use stillrise_design::basis::influent::of_few_results;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::{Change, ChangeKind, Limit, Receiver, WaterKind};
use stillrise_design::enquiry::containments::spill_place_is_open;
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_handbook::fluids::pollutants::{Counts, Gravity, Pollutant, Which};

/// A question that stands until it is answered.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The key of the enquiry that takes the answer.
    pub key: String,
    /// What is asked.
    pub asks: Asks,
}

/// What is asked.
#[derive(Debug, Clone, PartialEq)]
pub enum Asks {
    /// The safety data sheet of a product of unknown kind, or one that emulsifies or dissolves.
    DataSheet(String),
    /// Which cleaner goes into a wash water of which none was named.
    Cleaner,
    /// Which product it is that a change brought; what was said of it.
    NewProduct(String),
    /// Whether rain is allowed in the sewer.
    RainInSewer,
    /// Whether a permit for storm water covers what is no rain: the waters of these names.
    WashToStorm(Vec<String>),
    /// Whether limits on the same oil that differ hold for one outlet: each as it was said, and who sets it.
    TwoOutlets(Vec<String>),
    /// Where a spill happens: in one of the containments of these names, or where it runs to the separator past them.
    SpillPlace(Vec<String>),
    /// Which gallon is meant.
    Gallon,
    /// Where the water goes.
    Receiver,
    /// More samples of a water of whose oil one or two results are all that is known; its name.
    MoreSamples(String),
    /// Which oils or fuels can get into the water, where none was named.
    Oil,
    /// What a limit on oil counts, by which method; the pollutant as the enquiry has it.
    Method(String),
    /// Who sets a limit.
    Authority(String),
}

/// Limits on the same oil that do not go together, so that the waters may go to several places: of several documents or
/// authorities, or several values of one statistic; empty where there are none, or waters of one kind alone come.
fn two_outlets(e: &Enquiry) -> Vec<String> {
    let on_oil: Vec<_> = e.limits.iter().filter(|l| l.of().is_some_and(Pollutant::is_total_oil)).collect();
    let whose: BTreeSet<&str> = on_oil.iter().filter_map(|l| l.authority.as_deref()).collect();
    let apart = on_oil.iter().enumerate().any(|(k, a)| {
        on_oil[k + 1..].iter().any(|b| {
            let value = |l: &Limit| l.value.claim().map(|c| c.written.si());
            a.of() != b.of() && a.statistic.0 != b.statistic.0 || a.statistic.0 == b.statistic.0 && value(a) != value(b)
        })
    });
    let kinds = e.streams.len() + usize::from(!e.surfaces.is_empty());
    if !(whose.len() > 1 || apart) || kinds < 2 || e.unit_stands() {
        return Vec::new();
    }
    let said = on_oil.iter().filter_map(|l| {
        let value = &l.value.claim()?.written.text;
        Some(l.authority.as_ref().map_or_else(|| value.clone(), |by| format!("{value} ({by})")))
    });
    let mut said: Vec<String> = said.collect();
    said.dedup();
    said
}

/// The questions that stand, those first that can turn the job.
#[must_use]
pub fn standing(e: &Enquiry) -> Vec<Standing> {
    let mut out = Vec::new();
    let mut ask = |key: &str, asks: Asks| out.push(Standing { key: key.to_owned(), asks });
    // What a change replaced at a unit that stands goes into the water no more; what replaced it is asked for.
    let brought = |c: &Change| c.what.0 == Some(ChangeKind::Chemical);
    let replaced = e.unit_stands() && e.changes.iter().any(brought);
    if let Some(change) = e.changes.iter().find(|c| replaced && !e.chemicals.is_empty() && brought(c)) {
        ask("chemical", Asks::NewProduct(change.says()));
    }
    for (i, block) in e.chemicals.iter().enumerate() {
        let name = block.product.0.as_ref().or(block.kind.0.as_ref());
        let name = name.cloned().unwrap_or_else(|| format!("product {}", i + 1));
        let known = block.kind.as_deref().and_then(chemical);
        if block.data_sheet.is_none()
            && block.kind.as_deref() != Some("hot-water")
            && !replaced
            && known.is_none_or(|row| matches!(row.effect, Effect::Emulsifies | Effect::Dissolves))
        {
            ask(&format!("chemical \"{name}\".data_sheet"), Asks::DataSheet(name.clone()));
        }
    }
    if e.chemicals.is_empty() && !e.streams.is_empty() {
        ask("chemical", e.unnamed_product().map_or(Asks::Cleaner, |change| Asks::NewProduct(change.says())));
    }
    let sewer = e.outlet.to.0 == Some(Receiver::SanitarySewer);
    if sewer && !e.surfaces.is_empty() && e.outlet.rain_allowed.is_none() {
        ask("outlet.rain_allowed", Asks::RainInSewer);
    }
    let apart = two_outlets(e);
    if apart.len() > 1 {
        ask("limit.authority", Asks::TwoOutlets(apart));
    }
    if spill_place_is_open(e) {
        let names = e.containments.iter().filter_map(|c| c.name.0.clone()).collect();
        ask("spill.into", Asks::SpillPlace(names));
    }
    for water in of_few_results(e) {
        ask("samples", Asks::MoreSamples(water));
    }
    if e.oils.is_empty() && !oil_named(e) {
        ask("oil", Asks::Oil);
    }
    if e.outlet.to.0.is_none() && !e.unit_stands() {
        ask("outlet.to", Asks::Receiver);
    }
    // Wash water is no storm water, wherever it runs.
    let washes = e.streams.iter().filter(|s| matches!(s.water.0, None | Some(WaterKind::Treated)));
    let washes: Vec<String> = washes.filter_map(|s| s.name.0.clone()).collect();
    if e.outlet.to.0 == Some(Receiver::StormWater) && !washes.is_empty() && !e.unit_stands() {
        ask("outlet.to", Asks::WashToStorm(washes));
    }
    if e.gallon_open {
        ask("enquiry.gallon", Asks::Gallon);
    }
    for block in &e.limits {
        let Some(row) = block.of() else { continue };
        // A hydrocarbon index and free oil say themselves what they count, and a sheen is seen.
        let open = row.counts == Counts::AllOil && !matches!(row.which, Which::HydrocarbonIndex | Which::Sheen);
        // Said of one limit on it, or of results held against it, it is known of all.
        let said = e.limits.iter().any(|l| l.of() == Some(row) && l.method.is_some())
            || e.samples.iter().any(|s| s.of() == Some(row) && s.method.is_some());
        let called = block.name.as_deref();
        let key = called.unwrap_or(row.word);
        if row.gravity == Gravity::Touches && open && !said {
            ask(&format!("limit \"{key}\".method"), Asks::Method(row.word.to_owned()));
        }
        if block.authority.is_none() {
            ask(&format!("limit \"{key}\".authority"), Asks::Authority(called.unwrap_or(row.title).to_owned()));
        }
    }
    out
}

/// Whether any water is said to carry an oil of a kind.
fn oil_named(e: &Enquiry) -> bool {
    let rain = e.rain.iter().filter_map(|r| r.oil.as_ref());
    let streams = e.streams.iter().filter_map(|s| s.oil.as_ref());
    let cases = e.cases.iter().filter_map(|c| c.oil.as_ref());
    let mut all = rain.chain(streams).chain(cases).chain(e.stated.oil.as_ref());
    all.any(|oil| oil.kind.is_some())
}

#[cfg(test)]
#[allow(clippy::panic, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use stillrise_design::enquiry::read_enquiry;

    /// A flow in bare gallons leaves the gallon open; one in gpm of a client who prints in US units, in US gallons by
    /// name or in litres does not, whatever a note says of it.
    #[test]
    fn the_gallon_is_asked_for_where_one_was_read() {
        for (head, flow, asked) in [
            ("", "40 gpm", true),
            ("", "40 gpm to 50 gpm", true),
            ("print = \"us\"\n", "40 gpm", false),
            ("", "40 US gpm", false),
            ("", "150 L/min", false),
        ] {
            let text = format!(
                "[enquiry]\ntitle = \"a\"\n{head}[[stream]]\nname = \"nobody said which gallon\"\nflow = \"{flow}\"\n"
            );
            let e = read_enquiry(&text, &|_| None).unwrap_or_else(|f| panic!("{f:?}"));
            assert_eq!(standing(&e).iter().any(|s| s.asks == Asks::Gallon), asked, "{head}{flow}");
        }
    }
}
