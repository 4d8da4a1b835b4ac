//! Rule: rain in a sewer that does not take it

use crate::ask::{RAIN_ALLOWED, RECEIVER};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::rain_kept_out::is_barred;
use stillrise_design::enquiry::blocks::Receiver;

rule! {
    "rain-not-allowed" "Rain in a sewer that does not take it", Enquiry;
    client "Rain comes to a sewer that does not take it."
    looks "Whether rain off the declared surfaces would run to a sanitary sewer whose owner does not allow it. Where nobody said where the water goes, or whether rain may, it cannot judge."
    matters "Most owners of sanitary sewers bar rain: it fills the works in a storm. A unit sized for the storm would be bought for water that may not go there."
    remedy "Roof water straight to the storm drain; other rain kept out by a roof, a kerb and grading, or led elsewhere with a separator of its own; a valve that turns a wash pad to the storm drain only where nothing but washing goes on there; or the owner's consent in writing."
    source "Common practice of sewer rules; 40 CFR 403 leaves it to the local limits"
    limits "Sees declared surfaces only; rain that blows in or seeps in is not seen. Where other water comes to a unit that is to be bought, the unit is worked without rain that is barred; where a containment holds rain back, and at a unit that stands, the rain stays in."
}

fn look(s: &Subject<'_>) -> Verdict {
    let e = s.enquiry;
    if e.surfaces.is_empty() {
        return Verdict::skips("no surface is declared that drains rain");
    }
    match (e.outlet.to.0, *e.outlet.rain_allowed) {
        (Some(Receiver::SanitarySewer), Some(false)) => {
            let all = e.surfaces.len();
            let roofed = e.surfaces.iter().all(|s| *s.canopy == Some(true));
            let rain = if roofed { "rain that is blown in under the canopy" } else { "rain" };
            let off = if all == 1 { "the declared surface".to_owned() } else { format!("{all} declared surfaces") };
            let without = if is_barred(e) { "; the unit is worked without it, so it has to be kept out" } else { "" };
            let says = format!("{rain} off {off} runs to a sanitary sewer whose owner does not allow it{without}");
            Verdict::fails(says, None)
        }
        (Some(Receiver::SanitarySewer), None) => {
            Verdict::cannot_judge("whether the owner of the sewer allows rain in it was not said", [RAIN_ALLOWED], None)
        }
        (Some(Receiver::SanitarySewer), Some(true)) => Verdict::passes("the owner of the sewer allows rain in it"),
        (Some(_), _) => Verdict::skips("the water does not go to a sanitary sewer"),
        (None, _) => Verdict::cannot_judge("where the water goes was not said", [RECEIVER], None),
    }
}
