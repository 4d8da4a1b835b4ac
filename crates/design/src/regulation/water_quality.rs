//! Water-quality volume and flow: the small rain that is treated, and what a splitter sends past the unit.

use super::rain::{self, PLAIN};
use super::{Asked, Inputs, Worksheet, flow};
use crate::basis::stated::stated_or_usual;
use crate::provenance::{Stop, Trail, Val, given};
use crate::{by, reckon};
use stillrise_handbook::rain::graphical_peak::StormType;
use stillrise_handbook::rain::{
    graphical_peak, initial_loss, volumetric_runoff, water_quality_curve_number, water_quality_volume,
};
use stillrise_units::{Area, Flow, Length, Ratio, Time, ratio};

/// Volume, curve number and flow of the water-quality rain; the storm's peak less that goes past.
pub(super) fn water_quality<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let storm = rain::storm(of)?;
    let depth = stated_or_usual(t, of.w, of.block.treated_depth(), "depth of the water-quality rain");
    let depth = sheet.term("P", depth);
    let sealed = rain::sealed(t, sheet, of)?;
    let area = sheet.take("A", storm.area);
    let share = volume(t, sheet, depth, sealed, area)?;
    // Path and slope give the time; where nobody said them, that of the storm stands.
    let both = of.e.rain.as_ref().is_some_and(|rain| rain.path.is_given() && rain.slope.is_given());
    let time = if both && rain::knows_two_years(of) {
        flow::travel(t, sheet, of, storm)?
    } else {
        sheet.remarks.push("The time of concentration is that of the storm of our basis: path, slope or the rain of two years were not said.");
        sheet.take("T_c", storm.concentration_time)
    };
    let time = flow::at_least(t, sheet, time);
    let storm_type = rain::storm_type(t, sheet, of);
    let treated = treated(t, sheet, (depth, share), (area, time), storm_type)?;
    sheet.asked.push(Asked::Flow(treated));
    let peak = sheet.take("Q_p", storm.flow);
    let past = reckon!(
        t,
        "flow past the unit, by a splitter",
        [GPM, L_S],
        (q_p = peak, wq_f = treated)(q_p - wq_f).max(q_p * 0.0)
    );
    sheet.bypassed = Some(sheet.term("Q_by", past));
    if crate::enquiry::european::waste_waters(of.e).next().is_some() || of.basis.spill.is_some() {
        sheet.remarks.push(
            "Wash water or a spill can come here: neither may go past the unit, so that a splitter is for rain alone.",
        );
    }
    Ok(())
}

/// Volumetric coefficient and water-quality volume.
pub(super) fn volume<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    depth: Val<Length>,
    sealed: Val<Ratio>,
    area: Val<Area>,
) -> Result<Val<Ratio>, Stop> {
    let share = by!(t, "volumetric runoff coefficient", volumetric_runoff::coefficient(sealed))?;
    let share = sheet.term("R_v", share);
    sheet.term("WQ_v", by!(t, "water-quality volume", water_quality_volume::volume(depth, share, area))?);
    Ok(share)
}

/// Flow of the water-quality rain.
pub(super) fn treated<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    (depth, share): (Val<Length>, Val<Ratio>),
    (area, time): (Val<Area>, Val<Time>),
    storm_type: Val<StormType>,
) -> Result<Val<Flow>, Stop> {
    let runoff = reckon!(t, "runoff of the water-quality rain", [IN, MM], (p = depth, r_v = share) p * r_v);
    let runoff = sheet.term("Q_a", runoff);
    let number = by!(t, "curve number of that rain", water_quality_curve_number::number(depth, runoff))?;
    let number = sheet.term("CN", number);
    let lost = sheet.term("I_a/P", by!(t, "loss before runoff over the rain", initial_loss::share(depth, number))?);
    let ponds = given(t, "factor of ponds and swamps", Some(PLAIN), ratio(1.0), "the site: none in the path", "1");
    let treated = by!(t, "water-quality flow", graphical_peak::peak(area, runoff, time, lost, storm_type, ponds))?;
    Ok(sheet.term("Q_wq", treated))
}
