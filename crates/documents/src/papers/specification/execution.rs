//! Part 3: delivery, setting, piping, filling and start-up, tests in the field, training.

use super::{TO_BE_STATED, clause};
use crate::papers::common::{MASS, VOLUME, length};
use crate::report::Report;
use stillrise_design::performance::Performance;
use stillrise_design::performance::installation::Stands;
use stillrise_design::train::Train;
use stillrise_handbook::vessel::testing::{ACCEPTANCE, SAMPLE_PAIRS, SAMPLING_HOURS, START_UP, VOLUME_CHANGES};
use stillrise_units::catalog::{FT, KN, LBF, M};
use stillrise_units::{Typed, print};

pub(super) fn execution(r: &mut Report<'_>, train: &Train) {
    r.out.section("Execution");
    let p = r.settled.job.design.performance.as_ref();
    if !train.unit.arrangement.is_built_in() {
        delivery(r, train, p);
    }
    setting(r, train, p);
    clause(r, "3.3 Piping", vec![
        "Pipes shall be laid and supported so that they neither load the nozzles nor trap air; the outlet shall run free, with no lift or bend that could siphon.".to_owned(),
        "No other water shall join between the unit and the sample point.".to_owned(),
        "What stands ahead shall break the oil no more than as declared: no throttled valve, no pump that is not part of the basis, no free fall into the inlet beyond the one that the drawing shows.".to_owned(),
    ]);
    start_up(r, train);
    tests(r, train);
    clause(r, "3.6 Training and handover", vec![
        format!("The maker shall train the operators for {TO_BE_STATED} at the unit: measuring oil and sludge, testing the alarm, pumping out, cleaning, refilling, what must not go into the water."),
        "The manual, the records of all tests, the settings as left, and a log for levels, pump-outs and samples shall be handed over; both parties shall sign.".to_owned(),
    ]);
}

fn delivery(r: &mut Report<'_>, train: &Train, p: Option<&Performance>) {
    let shop = p.and_then(|p| p.shop.as_ref());
    let empty = shop.and_then(|s| s.weights.as_ref()?.empty).or(train.unit.particulars.empty_weight);
    let empty = empty.map_or_else(|| TO_BE_STATED.to_owned(), |m| r.prose(m.q, MASS));
    let mut texts = vec![
        format!("Each unit shall be lifted empty and dry by all its lifting points at once; weight empty: {empty}. The lift shall be planned and led by a competent person."),
        "It shall be inspected on arrival for damage to vessel, coating, plates and float, and damage recorded before it is signed for.".to_owned(),
        "Openings shall stay closed, and plastics shaded, until it is connected.".to_owned(),
    ];
    if let Some(centre) = shop.and_then(|s| s.weights.as_ref()?.centre) {
        texts.push(format!("Its centre of gravity, empty, lies some {} from the inlet end.", length(r, centre.q)));
    }
    clause(r, "3.1 Delivery, unloading, storage", texts);
}

fn setting(r: &mut Report<'_>, train: &Train, p: Option<&Performance>) {
    let mut texts = Vec::new();
    let weights = p.and_then(|p| p.shop.as_ref()?.weights.as_ref());
    let loads = weights.and_then(|w| Some((w.operating?, w.test?)));
    let loads = loads.map_or_else(
        || format!("loads {TO_BE_STATED}"),
        |(operating, test)| {
            format!("{} in service and {} full to the top", r.prose(operating.q, MASS), r.prose(test.q, MASS))
        },
    );
    texts.push(if train.unit.arrangement.is_built_in() {
        "Walls and floor shall be designed by a licensed engineer on a soil report, and tested for tightness before the internals go in.".to_owned()
    } else {
        format!("What each unit stands on shall be designed by a licensed engineer for {loads}, for wind and for earthquake.")
    });
    texts.push(format!("It shall be set level within {TO_BE_STATED} over its length and its width (usual: 1 in 1000), measured at crest and plates, and anchored."));
    if let Some(p) = p {
        let site = &p.site.installation;
        if let Some(floor) = p.site.floor {
            texts.push(format!(
                "Floor of the unit: {} of the site's datum; invert of its inlet {} and of its outlet {} over that.",
                print::told(floor.q.si(), r.system.pick((&FT, &M))),
                length(r, train.unit.inlet.invert.q),
                length(r, train.unit.outlet.invert.q)
            ));
        } else {
            texts.push(format!(
                "Floor of the unit, site datum: {TO_BE_STATED}; invert of its inlet {} and of its outlet {} over that.",
                length(r, train.unit.inlet.invert.q),
                length(r, train.unit.outlet.invert.q)
            ));
        }
        if train.unit.arrangement.is_in_ground() || matches!(site.stands.q, Stands::Buried | Stands::InPit) {
            texts.push("Bed and backfill shall be placed in even layers, filled with water as the backfill rises; no stone or frozen lump shall touch the vessel.".to_owned());
            texts.push(hold_down(r, p));
        }
        let way = p.fit.way();
        texts.push(format!(
            "Room of {} × {} in plan and {} clear over the ground shall stay free for access and lifting.",
            r.prose(way.length.q, (&FT, &M)),
            r.prose(way.width.q, (&FT, &M)),
            r.prose(p.fit.headroom.q, (&FT, &M))
        ));
    }
    clause(r, "3.2 Setting", texts);
}

/// What holds the empty unit down.
fn hold_down(r: &Report<'_>, p: &Performance) -> String {
    let water =
        r.settled.job.enquiry.site.groundwater.claim().map_or(TO_BE_STATED, |claim| claim.written.text.as_str());
    let Some((found, uplift)) = p.flotation.as_ref().and_then(|f| Some((f, f.uplift?))) else {
        return format!(
            "Hold-down against the highest groundwater ({water}) shall be designed by a licensed engineer."
        );
    };
    let needed = found.held.as_ref().filter(|held| held.needed.q.si() > 0.0);
    let needed =
        needed.map_or_else(String::new, |held| format!("; anchors shall add {}", r.prose(held.needed.q, (&LBF, &KN))));
    format!(
        "Hold-down shall be designed by a licensed engineer for groundwater at {water}: uplift of the empty unit {}, factor no less than {}{needed}.",
        r.prose(uplift.q, (&LBF, &KN)),
        print::digits(found.wanted.q.si(), 3)
    )
}

fn start_up(r: &mut Report<'_>, train: &Train) {
    r.out.heading("3.4 Filling and start-up");
    let water = r.prose(train.unit.layout.water_volume.q, VOLUME);
    r.out.para(&format!("Each unit shall be filled with clean water, {water} over its floor, before anything oily comes. In this order the contractor shall:"));
    r.out.list(true, START_UP.iter().map(|step| (step.text.to_owned(), String::new())));
}

fn tests(r: &mut Report<'_>, train: &Train) {
    r.out.heading("3.5 Tests in the field");
    let volume = r.prose(train.unit.layout.water_volume.q * VOLUME_CHANGES, VOLUME);
    r.out.para(&format!(
        "Where clause 1.6 specifies a performance it shall be shown on the real water by at least {SAMPLE_PAIRS} pairs of samples within {} h, after {} volumes of the unit ({volume} through each). The buyer, or a third party, shall sample; the maker may attend. In this order:",
        print::digits(SAMPLING_HOURS, 2), print::digits(VOLUME_CHANGES, 2)
    ));
    r.out.list(true, ACCEPTANCE.iter().map(|step| (step.text.to_owned(), String::new())));
    r.out.remark("Steps of start-up and test: UFGS 46 25 14, a county's leaflet and common practice; the source of each stands in the calculation report.");
}
