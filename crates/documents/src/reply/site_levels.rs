//! How the ground lies, told where no unit is named that would tell it.

use super::show;
use crate::summary::capital;
use stillrise_design::enquiry::blocks::Feed;
use stillrise_search::Settled;
use stillrise_search::site_levels::site_levels;
use stillrise_units::catalog::{FT, IN, M, MM};
use stillrise_units::{Length, Typed};

/// What the stated levels mean for any unit; `None` where none were stated that say anything together.
pub(super) fn lies(settled: &Settled) -> Option<String> {
    let found = site_levels(&settled.job.enquiry);
    let length = |q: Length| {
        let units = if q.si().abs() < 0.3 { (&IN, &MM) } else { (&FT, &M) };
        show(settled, q.si().abs(), units)
    };
    let side = |q: Length| if q.si() < 0.0 { "above" } else { "below" };
    let mut says = Vec::new();
    if let Some(depth) = found.depth {
        says.push(format!("the pipe comes in {} {} the ground", length(depth), side(depth)));
    }
    if let Some(fall) = found.fall {
        says.push(if fall.si().abs() < 1e-6 {
            "the outfall lies as high as the pipe that comes in, which leaves no fall for any unit".to_owned()
        } else if fall.si() < 0.0 {
            format!(
                "the outfall lies {} higher than the pipe that comes in, so that the water has to be lifted",
                length(fall)
            )
        } else {
            format!(
                "from the pipe that comes in to the outfall the water may fall {}, of which every unit takes some",
                length(fall)
            )
        });
    }
    if let Some(water) = found.groundwater {
        says.push(format!("groundwater stands up to {} {} the ground", length(water), side(water)));
    }
    if says.is_empty() {
        return None;
    }
    let in_it = found.depth.is_some_and(|depth| depth.si() > 0.0);
    let floats = in_it && found.depth.zip(found.groundwater).is_some_and(|(depth, water)| water.si() < depth.si());
    let pumped = settled.job.enquiry.inlet.feed.0 == Some(Feed::Pump) || !settled.job.enquiry.inlet.rate.0.is_empty();
    let lead = if pumped { " Ahead of the pumps" } else { " Fed by gravity" };
    let so = match (in_it, floats) {
        (_, true) => {
            format!("{lead} any unit lies in the ground, below that water, and has to be held down while it is empty.")
        }
        (true, false) => format!("{lead} any unit lies in the ground."),
        _ => String::new(),
    };
    Some(format!("{}.{so}", capital(&format!("by the levels you gave {}", says.join("; ")))))
}
