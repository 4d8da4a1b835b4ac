//! Nominal sizes: EN 858-2, which the comparison of the basis has worked, and the British guideline PPG3.

use super::{Asked, Inputs, Worksheet, lacks};
use crate::basis::european::ppg3_kind;
use crate::by;
use crate::provenance::{Stop, Trail, given};
use crate::say;
use stillrise_handbook::separation::ppg3_size::Ppg3Kind;
use stillrise_handbook::separation::{ppg3_oil_store, ppg3_silt_store, ppg3_size};
use stillrise_handbook::sources::PPG3;
use stillrise_units::catalog::{GAL, L};
use stillrise_units::{Typed, Volume};

/// EN 858-2, clause 4.
pub(super) fn en858(sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let Some(found) = &of.basis.european else { return Err(lacks("which oil comes")) };
    for (symbol, at) in &found.parts {
        sheet.terms.push(super::Term { symbol, at: *at, taken: false });
    }
    sheet.term("Q_r", found.rain);
    sheet.term("Q_s", found.waste);
    sheet.term("f_x", found.impediment);
    sheet.take("rho", found.density);
    let sizes = found.sizes.as_ref().map_err(|why| Stop::said("nominal size", why.clone()))?;
    sheet.term("f_d", sizes.factor);
    let need = sheet.term("NS", sizes.need);
    if let Some(standard) = sizes.standard {
        sheet.term("NS_s", standard);
    }
    // A unit may be tested at a size between those of the series.
    sheet.asked.push(Asked::NominalSize(need));
    if let Some(trap) = sizes.sludge_trap {
        let trap = sheet.term("V_s", trap);
        sheet.asked.push(Asked::SludgeStore(trap));
    }
    if sizes.standard.is_none() {
        sheet.remarks.push("The series of sizes ends at NS 500: several units in parallel.");
    }
    Ok(())
}

/// PPG3: size from paved area, stores from size.
pub(super) fn ppg3<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let Some(storm) = &of.basis.storm else {
        return Err(Stop::said("nominal size", "no paved area drains to the unit, and the guideline sizes by area"));
    };
    let asked = of.e.european.as_ref().is_some_and(|block| *block.bypass == Some(true));
    let barred = of.basis.spill.is_some() || crate::enquiry::european::waste_waters(of.e).next().is_some();
    let area = sheet.take("A", storm.area);
    let kind = ppg3_kind(t, asked, barred);
    let full = kind.q == Ppg3Kind::Full;
    let size = by!(t, "nominal size", ppg3_size::flow(area, kind))?;
    let size = sheet.term(if full { "NS" } else { "NSB" }, size);
    let silt = sheet.term("V_s", by!(t, "silt store", ppg3_silt_store::volume(size))?);
    let oil = sheet.term("V_o", by!(t, "oil store", ppg3_oil_store::volume(size, kind))?);
    let least = Volume::of(1000.0, &L);
    let least = given(t, "least working volume without silt", Some((&GAL, &L)), least, &say!(T, "{PPG3}"), "1,000 L");
    let least = sheet.term("V_w", least);
    sheet.asked.extend([Asked::NominalSize(size), Asked::SludgeStore(silt), Asked::OilStore(oil), Asked::Water(least)]);
    sheet.remarks.push("By area alone: water other than rain is not in it.");
    Ok(())
}
