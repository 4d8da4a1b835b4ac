//! Rule: vapour of light oil

use crate::ask::{OILS, oil_is_named};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{DEG_C, DEG_F};
use stillrise_units::{Temperature, Typed};

rule! {
    "gasoline-vapour" "Vapour of light oil", Unit;
    client "The oil gives off vapour that can burn: vents, wiring and work at the unit must be made for it."
    looks "Oils that may flash below {100 °F|37.8 °C}, at the low end of their range. Where no oil was named it cannot judge."
    matters "Above such an oil stands vapour that burns. It gathers under the covers and in pits, and a float switch or a pump can light it."
    remedy "Have the area classified; vents from every compartment to the open; floats on intrinsically safe circuits; bonding at pump-out; a trap against vapour in the drain."
    source "NFPA 30, class I liquids below {100 °F|37.8 °C}, from memory; a textbook of hazardous areas puts the inside of an oil separator into zone 0"
    limits "Flash points of named oils, several from memory. A spill of gasoline into a unit for diesel is not seen unless an oil says so."
}

/// Flash point below which NFPA 30 speaks of class I.
const CLASS_I: f64 = 100.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let bound = Temperature::of(CLASS_I, &DEG_F);
    let Some(oil) = basis.fluids.oils.iter().min_by(|a, b| a.oil.flash_c.low_si().total_cmp(&b.oil.flash_c.low_si()))
    else {
        return s.stopped();
    };
    let show = |q| s.show(q, (&DEG_F, &DEG_C));
    let flash = Temperature::from_si(oil.oil.flash_c.low_si());
    let says = format!("{} may flash at {}", oil.name, show(flash));
    if flash < bound {
        Verdict::warns(format!("{says}, below {}: vapour, a classified area and vents", show(bound)), oil.density_15.at)
    } else if !oil_is_named(s) {
        Verdict::cannot_judge(
            "no oil was named; whether one comes whose vapour burns is open",
            [OILS],
            oil.density_15.at,
        )
    } else {
        Verdict::passes(format!("{says}, not below {}", show(bound)))
    }
}
