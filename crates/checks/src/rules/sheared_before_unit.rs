//! Rule: droplets sheared ahead of the unit

use super::pump_above_rating::pumped;
use crate::ask::{Ask, PUMP};
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::separation::floors;
use stillrise_units::catalog::{UM, W_KG};

rule! {
    "sheared-before-unit" "Droplets sheared ahead of the unit", Inlet;
    client "A pump or a valve ahead breaks much of the oil into droplets too fine to catch."
    looks "Whether a pump, a valve or a pipe on the way, not the site, sets the droplets that reach the unit: then it warns; where what is left is below what is called free oil, it fails. Where the pump is not known, or whether there is one, it cannot judge."
    matters "Rise goes with the square of the diameter: half the droplet asks for four times the plates."
    remedy "A slow positive-displacement pump; gravity feed, which brings all that arrives to the unit; the valve or the pump behind the separator."
    source "Hinze 1955 for the largest droplet; UFGS 44 42 53 for free oil, larger than 20 µm; the dissipation in pumps is judgement, no measurement was found"
    limits "The likely dissipation of the class of pump; the judged range of a class spans ten times and more. Droplets that join again in the pipe are not counted."
}

/// From this likely share of emulsified oil on, %, a product holds oil: that of a quick-break detergent. Judgement.
const HOLDS: f64 = 10.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(shear) = &basis.shear else {
        let droplets = &s.enquiry.droplets;
        return match pumped(s) {
            _ if droplets.d50.is_given() || droplets.table.is_given() => {
                Verdict::skips("the droplets at the unit are stated")
            }
            Err(Verdict::CannotJudge(unknown)) => Verdict::CannotJudge(unknown),
            _ => Verdict::skips("the water runs by gravity, and nothing is named that shears it on the way"),
        };
    };
    let show = |q| s.show(q, (&UM, &UM));
    let hardest = shear.hardest();
    let (name, survives) = (&hardest.name, hardest.survives);
    let left = shear.median.unwrap_or(survives);
    let says = match shear.median {
        Some(median) => format!(
            "95 % of the oil behind the {name} is finer than {}; the median it leaves is {}",
            show(survives.q),
            show(median.q)
        ),
        None => format!("no droplet above {} is taken to survive the {name}", show(survives.q)),
    };
    // A size that rests on what was taken of the pump, or on the tension of clean oil, is not told as a finding.
    let power = |q| s.show(q, (&W_KG, &W_KG));
    let taken = s.assumed(hardest.dissipation.at).is_some();
    let figures = match hardest.beside {
        Some([low, likely, high]) if taken => format!(
            ", at the {} that are likely for its kind, of which {} to {} are plausible",
            power(likely),
            power(low),
            power(high)
        ),
        // What is known of a pump on the way stands in its own block.
        Some([low, _, high]) if hardest.is_worked && hardest.is_feed_pump && !s.enquiry.inlet.impeller.is_given() => format!(
            ", at {} worked from its power or head with an impeller that was taken; its kind does {} to {}, and its curve settles it",
            power(hardest.dissipation.q),
            power(low),
            power(high)
        ),
        _ => String::new(),
    };
    // Of what goes into these waters, a product that holds oil lowers the tension, and one of unknown kind may.
    let finest = basis.arrivals.iter().filter(|a| a.droplets.d50.q == basis.droplets.d50.q);
    let waters: Vec<_> = finest.flat_map(|a| &a.waters).copied().collect();
    let clean = basis.dosed.iter().any(|d| {
        let holds = d.row.is_none_or(|row| row.emulsified.typical >= HOLDS);
        d.tension.is_none() && holds && waters.iter().any(|which| d.reaches(*which))
    });
    let tension = if clean { "; a cleaner in the water, whose effect on this nobody said, leaves them finer" } else { "" };
    let says = format!("{says}{figures}{tension}");
    let free = floors::free_droplet();
    if shear.overruled {
        let stated = basis.droplets.d50;
        return if left.q < stated.q {
            let text = format!(
                "{says}; the droplets at the unit are stated all the same, with a median of {}: one of the two is wrong",
                show(stated.q)
            );
            Verdict::warns(text, stated.at)
        } else {
            Verdict::passes(format!("{says}; stated at the unit is {}", show(stated.q)))
        };
    }
    // Only a pump of unknown kind has a question behind its power.
    let unknown = shear.places().find_map(|place| Some((place, s.assumed(place.dissipation.at)?)));
    let unknown = unknown.filter(|(_, assumption)| Some(&*assumption.key) == PUMP.key.as_deref());
    let fine = shear.governs && left.q < free.value;
    if let Some((place, assumption)) = unknown.filter(|_| !fine) {
        let says =
            format!("{says}; but which {} it is was not said, and kinds differ more than a hundredfold", place.name);
        Verdict::cannot_judge(says, [Ask::of(assumption)], place.dissipation.at)
    } else if !shear.governs && taken {
        // One of its kind that breaks them harder would set them.
        let says = format!("{says}; what arrives has a median of {}", show(basis.droplets.d50.q));
        Verdict::cannot_judge(says, s.asked(hardest.dissipation.at), hardest.dissipation.at)
    } else if !shear.governs {
        Verdict::passes(format!("{says}; what arrives has a median of {}", show(basis.droplets.d50.q)))
    } else if left.q < free.value {
        Verdict::fails(format!("{says}; drops below {} hardly rise out of a separator", show(free.value)), left.at)
    } else {
        Verdict::warns(says, left.at)
    }
}
