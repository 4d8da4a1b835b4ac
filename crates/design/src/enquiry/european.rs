//! Nominal sizes and taps as people write them, and what of a European request contradicts itself.

use super::Enquiry;
use super::blocks::WaterKind;
use stillrise_handbook::separation::en858_impediment_factor::UseCategory;
use stillrise_handbook::separation::en858_tap_flow::TapBore;
use stillrise_units::Fault;

/// Letters that stand before a nominal size: English, of a bypass, French, German.
const LEADS: [&str; 5] = ["NSB", "NS", "TN", "NG", "SIZE"];

/// A nominal size: `NS 10`, `NS10`, `TN 1,5`, `10`, `10 L/s`. In litres per second.
#[must_use]
pub fn nominal_size(text: &str) -> Option<f64> {
    let text = text.trim().to_uppercase();
    let led = LEADS.iter().find_map(|lead| text.strip_prefix(lead));
    let rest = led.map_or(text.as_str(), |rest| rest.trim_start_matches([' ', '-', '=', ':', '_']));
    let rest = rest.strip_suffix("L/S").unwrap_or(rest).trim_end();
    let digits = rest.chars().all(|c| c.is_ascii_digit() || c == '.' || c == ',');
    let value: f64 = rest.replace(',', ".").parse().ok().filter(|_| digits)?;
    (0.1..=10000.0).contains(&value).then_some(value)
}

/// Taps of one bore: `DN15 x 2`, `2 x DN 15`, `DN20`. The bore and how many.
#[must_use]
pub fn taps(text: &str) -> Option<(TapBore, u32)> {
    let plain: String = text.to_uppercase().replace(['×', '*'], "X").chars().filter(|c| !c.is_whitespace()).collect();
    let bore = |t: &str| TapBore::ALL.iter().copied().find(|bore| bore.word() == t);
    let count = |t: &str| t.parse::<u32>().ok().filter(|n| (1..=1000).contains(n));
    match plain.split_once('X') {
        None => bore(&plain).map(|bore| (bore, 1)),
        Some((a, b)) => bore(a).zip(count(b)).or_else(|| bore(b).zip(count(a))),
    }
}

/// Faults of what is asked for by the European standards.
pub(super) fn faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    for told in e.asked.nominal_size.1.list.iter().filter(|told| nominal_size(&told.value).is_none()) {
        let reason = format!("\"{}\" is not a nominal size between 0.1 and 10000", told.value);
        faults.push(Fault::new("asked: nominal_size", reason, "write nominal_size = \"NS 10\""));
    }
    let Some(block) = &e.european else { return };
    for (i, text) in block.taps.iter().enumerate().filter(|(_, text)| taps(text).is_none()) {
        let reason = format!("\"{text}\" is not a bore of {} and a number of taps to 1000", bores());
        faults.push(Fault::new(format!("european: taps.{}", i + 1), reason, "write \"DN15 x 2\""));
    }
    let washes = !block.taps.is_empty() || block.high_pressure.is_some() || block.automatic_wash.is_some();
    if block.category.0 == Some(UseCategory::Rain) && (washes || waste_waters(e).next().is_some()) {
        let what = if washes { "taps, high-pressure units or washes are" } else { "a stream of waste water is" };
        let reason = format!("the category is rain alone, and {what} declared");
        let remedy = "write category = \"wash water\", or leave out the waste water";
        faults.push(Fault::new("european: category", reason, remedy));
    }
}

fn bores() -> String {
    TapBore::ALL.iter().map(|bore| bore.word()).collect::<Vec<_>>().join(", ")
}

/// Places of the streams that are waste water by the standard: neither dewatering nor fire water.
pub fn waste_waters(e: &Enquiry) -> impl Iterator<Item = usize> {
    let is_waste = |kind: Option<WaterKind>| !matches!(kind, Some(WaterKind::Dewatering | WaterKind::Fire));
    e.streams.iter().enumerate().filter(move |(_, s)| is_waste(s.water.0)).map(|(i, _)| i)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read_as_people_write_them() {
        for text in ["NS 10", "ns10", "10", "NS-10", "10 L/s", "TN 10,0", "NSB 10"] {
            assert_eq!(nominal_size(text), Some(10.0), "{text}");
        }
        for text in ["", "NS", "ten", "NS 10 to 15", "-10", "1e3", "0", "NS 99999"] {
            assert_eq!(nominal_size(text), None, "{text}");
        }
    }

    #[test]
    fn taps_are_read_either_way_round() {
        for text in ["DN15 x 2", "2 x DN 15", "dn15×2"] {
            assert_eq!(taps(text), Some((TapBore::Dn15, 2)), "{text}");
        }
        assert_eq!(taps("DN 25"), Some((TapBore::Dn25, 1)));
        for text in ["DN32", "two", "DN15 x 0", "DN15 x 2 x 2", ""] {
            assert_eq!(taps(text), None, "{text}");
        }
    }
}
