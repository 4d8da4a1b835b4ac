//! Rule: pump outside its class

use crate::ask::PUMP;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::W_KG;

rule! {
    "pump-outside-class" "Pump shears unlike its class", Inlet;
    client "By its label the pump breaks oil otherwise than pumps of its kind do."
    looks "The power a pump dissipates in the water, worked from its power, head, speed or impeller, against the range of its class: outside it warns. Where there are figures and the class was not said, it cannot judge."
    matters "The figure decides how fine the oil is broken. A label that gives another figure than the class may be that of another pump, or of another duty point."
    remedy "The pump's curve, with power, head and efficiency at the flow it delivers, its speed and its impeller settle it."
    source "The ranges of the classes are engineering judgement; the figure is power lost over the mass in the impeller, from memory"
    limits "Pumps without an impeller keep their class's range, whatever is said of power and speed. The likely class figure spans ten times and more."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let places = basis.arrivals.iter().filter_map(|a| a.shear.as_ref()).flat_map(|shear| shear.places());
    let show = |q| s.show(q, (&W_KG, &W_KG));
    let mut passes = None;
    let mut open = None;
    for place in places.filter(|p| p.is_worked) {
        let Some([low, _, high]) = place.beside else {
            open = open.or(Some(place));
            continue;
        };
        let inlet = &s.enquiry.inlet;
        let taken = if inlet.impeller.is_given() {
            ""
        } else if inlet.pump_speed.is_given() {
            " (its impeller was taken)"
        } else {
            " (its speed and impeller were taken)"
        };
        let says = format!(
            "{}: {} by its figures{taken}, {} to {} by its class",
            place.name,
            show(place.dissipation.q),
            show(low),
            show(high)
        );
        let epsilon = place.dissipation.q.si();
        if epsilon < low.si() || epsilon > high.si() {
            return Verdict::warns(says, place.dissipation.at);
        }
        passes = Some(says);
    }
    if let Some(place) = open {
        let figure = show(place.dissipation.q);
        let says = format!("{}: {figure} by its figures; its kind, whose range they would be held against, was not said", place.name);
        return Verdict::cannot_judge(says, [PUMP], place.dissipation.at);
    }
    passes.map_or_else(|| Verdict::skips("no figures of a pump with an impeller are stated"), Verdict::passes)
}
