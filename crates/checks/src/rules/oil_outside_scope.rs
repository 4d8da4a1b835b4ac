//! Rule: oil outside the standard's scope

use crate::ask::{Ask, OILS, oil_is_named, products};
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::fluids::chemicals::{Chemical, Effect, chemical};
use stillrise_design::provenance::Pair;
use stillrise_units::catalog::{KG_M3, LB_FT3};
use stillrise_units::{Density, Typed};

rule! {
    "oil-outside-scope" "Oil outside the scope of EN 858", Enquiry;
    client "One of the oils is outside what EN 858 is made for."
    looks "Where somebody asks by the European standard: oils heavier than {59.3 lb/ft3|950 kg/m3} at {59 °F|15 °C}, animal and vegetable oils, products that hold an emulsion or mix with water. Any of them warns. Where oil or products were not said, it cannot judge."
    matters "The standard's sizes and classes hold for light liquids of mineral origin that separate. For others a nominal size says nothing."
    remedy "Leave the standard aside for that water, which asks for a treatment of its own."
    source "EN 858-1, 2002, scope, as quoted by other texts"
    limits "Fatty acid esters count as vegetable oil here. Which products hold an emulsion is judgement until a jar test."
}

const DENSITY: Pair = (&LB_FT3, &KG_M3);

/// Whether most of the oil stays in the water with it, or it passes as a solution.
fn holds(row: &Chemical) -> bool {
    row.effect == Effect::NotSeparable || (row.effect == Effect::Emulsifies && row.emulsified.typical_si() >= 0.5)
}

fn look(s: &Subject<'_>) -> Verdict {
    let asked = s.enquiry.european.is_some() || s.enquiry.asked.nominal_size.is_some();
    if !asked {
        return Verdict::skips("nobody asks by the European standard");
    }
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let ends = Density::of(950.0, &KG_M3);
    let (mut out, mut at) = (Vec::new(), None);
    for oil in &basis.fluids.oils {
        let density = s.show(oil.density_15.q, DENSITY);
        if oil.density_15.q > ends {
            out.push(format!("{} of {density} is heavier than {}", oil.name, s.show(ends, DENSITY)));
            at = at.or(Some(oil.density_15.at));
        }
        if oil.oil.animal_or_vegetable {
            out.push(format!("{} is an animal or vegetable oil", oil.name));
        }
    }
    let products_out = s.enquiry.chemicals.iter().filter_map(|block| chemical(block.kind.as_deref()?));
    out.extend(products_out.filter(|row| holds(row)).map(|row| format!("{}: {}", row.title, row.effect.meaning())));
    if !out.is_empty() {
        return Verdict::warns(out.join("; "), at);
    }
    let (mut says, mut asks) = (Vec::new(), Vec::new());
    if !oil_is_named(s) {
        says.push("no oil was named".to_owned());
        asks.push(OILS);
    }
    for block in s.enquiry.chemicals.iter().filter(|c| c.kind.is_none()) {
        let product = block.product.as_deref().unwrap_or("the product");
        says.push(format!("what {product} is was not said"));
        let question = format!("What kind of product is {product}, by its safety data sheet?");
        asks.push(Ask::new(format!("chemical \"{product}\".kind"), question));
    }
    if let Some((water, ask)) = products(s) {
        says.push(format!("which products go into the {water} was not said"));
        asks.push(ask);
    }
    if !asks.is_empty() {
        return Verdict::cannot_judge(says.join("; "), asks, None);
    }
    let names: Vec<&str> = basis.fluids.oils.iter().map(|oil| oil.name.as_str()).collect();
    let says = format!("{}: light liquids to {}", names.join(", "), s.show(ends, DENSITY));
    let doubt = basis.fluids.oils.iter().find_map(|oil| s.rests_on(&says, oil.density_15, DENSITY, |d| d <= ends));
    doubt.unwrap_or_else(|| Verdict::passes(says))
}
