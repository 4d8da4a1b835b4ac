//! Rule: much of the oil is polar

use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::fluids::pollutants::Which;
use stillrise_units::catalog::{MG_L, PERCENT};
use stillrise_units::{Ratio, ratio};

rule! {
    "polar-oil" "Much of the oil and grease is not mineral oil", Effluent;
    client "Much of what counts as oil and grease here is not mineral oil, and much of that does not rise."
    looks "A limit on oil and grease, and samples of which silica gel takes off more than a third."
    matters "Silica gel holds back animal and vegetable oil, soap and surfactant. A limit on oil and grease counts them, much of them stays in the water whatever rises, and what is known of mineral oils does not hold for them. A limit on hydrocarbons, analysed after silica gel, does not count them."
    remedy "Find where the polar part comes from and keep it out, or treat it elsewhere; ask whether the limit is meant with or without silica gel."
    source "US EPA, Method 1664, Revision B, 2010: n-hexane extractable material before and after silica gel; a third is our proposal"
    limits "Where some results were not detected after silica gel the share is the least that it can be. Two weighings of little material differ by chance."
}

/// Polar share above which it is no longer mineral oil that is spoken of.
fn bound() -> Ratio {
    ratio(1.0 / 3.0)
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(limit) = basis.limits.iter().find(|l| l.pollutant.which == Which::OilAndGrease) else {
        return Verdict::skips("no limit on oil and grease is stated");
    };
    let (mut much, mut little, mut at) = (Vec::new(), Vec::new(), None);
    for set in basis.evidence.iter().filter(|set| set.pollutant.which == Which::OilAndGrease) {
        let Some(polar) = &set.polar else { continue };
        let least = if set.pairs.1 { "at least " } else { "" };
        let text = format!(
            "\"{}\": silica gel takes off {least}{}, from {} to {} on the mean",
            set.name,
            s.show(polar.share.q, (&PERCENT, &PERCENT)),
            s.show(polar.before.q, (&MG_L, &MG_L)),
            s.show(polar.after.q, (&MG_L, &MG_L)),
        );
        if polar.share.q > bound() {
            at = at.or(Some(polar.share.at));
            much.push(text);
        } else {
            little.push(text);
        }
    }
    if !much.is_empty() {
        let value = s.show(limit.value.q, (&MG_L, &MG_L));
        return Verdict::warns(
            format!("{}: much of it is not mineral oil, and the limit of {value} counts it", much.join("; ")),
            at,
        );
    }
    if little.is_empty() {
        return Verdict::skips("no samples were analysed after silica gel");
    }
    Verdict::passes(format!("{}; a third is looked for", little.join("; ")))
}
