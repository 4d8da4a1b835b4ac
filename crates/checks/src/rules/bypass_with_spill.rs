//! Rule: bypass with spill

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::CATEGORY;
use stillrise_design::enquiry::european::waste_waters;
use stillrise_handbook::fluids::facilities::facility;
use stillrise_handbook::separation::en858_impediment_factor::UseCategory;

rule! {
    "bypass-with-spill" "Bypass where a large spill or wash water can come", Inlet;
    client "In heavy rain the bypass sends spilled oil or wash water round the separator, untreated."
    looks "A bypass that is asked for, against a declared spill that is not held ahead, waste water, the category of spill retention, and sites where tanks are filled: any of them fails. It passes only where the category is stated to be rain alone and the site is none of these."
    matters "In heavy rain a bypass sends water round the separator. Oil that is spilled then, or water of washing, goes untreated to the outfall."
    remedy "A separator for the full flow, or two drainages: one for where oil may spill, the other for the rest."
    source "EN 858-1, 2002, as quoted by other texts: bypass only where heavy contamination in heavy rain is unlikely, never for process water; PPG3 (from memory): bypass where the risk of spills is low"
    limits "Which kinds of site have large spills is our reading; a site that was not named is judged by what else was declared."
}

/// Sites where tanks are filled or emptied, or oil stands in bulk.
const SPILL_SITES: [&str; 4] = ["fuel-station", "fuel-terminal", "transformer-yard", "tank-bottom-draw"];

fn look(s: &Subject<'_>) -> Verdict {
    let Some(block) = s.enquiry.european.as_ref() else { return Verdict::skips("no bypass is asked for") };
    if *block.bypass != Some(true) {
        return Verdict::skips("no bypass is asked for");
    }
    let spill = s.design.basis.as_ref().and_then(|b| b.spill.as_ref()).filter(|spill| !spill.is_held_ahead());
    let mut speaks = Vec::new();
    if let Some(spill) = spill {
        speaks.push(format!("{} is declared", super::spill_above_room::declared(s, spill)));
    }
    let washes = !block.taps.is_empty() || block.high_pressure.is_some() || block.automatic_wash.is_some();
    let is_waste = washes || block.category.0 == Some(UseCategory::WashWater);
    if is_waste || waste_waters(s.enquiry).next().is_some() {
        speaks.push("waste water comes, not rain alone".to_owned());
    }
    if block.category.0 == Some(UseCategory::SpillRetention) {
        speaks.push("the category of use is spill retention".to_owned());
    }
    let site = s.enquiry.head.facility.as_deref().and_then(facility);
    if let Some(site) = site.filter(|site| SPILL_SITES.contains(&site.word)) {
        speaks.push(format!("the site is a {}", site.title.to_lowercase()));
    }
    if !speaks.is_empty() {
        return Verdict::fails(format!("a bypass is asked for, and {}", speaks.join("; ")), spill.map(|spill| spill.volume.at));
    }
    if block.category.0 == Some(UseCategory::Rain) {
        return Verdict::passes("a bypass is asked for, and the category of use is rain with little oil alone");
    }
    Verdict::cannot_judge(
        "a bypass is asked for; whether a spill or waste water can come was not said",
        [Ask::new("european.category", CATEGORY)],
        None,
    )
}
