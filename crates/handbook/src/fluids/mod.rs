//! Fluids: water fresh and saline, oils and how they change with temperature, and the units in
//! which the trade states them; and published data on what arrives with the water.
//!
//! | data | what it says |
//! |---|---|
//! | [`oils`] | density, viscosity, flash point, interfacial tension of one oil a file |
//! | [`chemicals`] | what keeps oil from separating, or passes untouched |
//! | [`pollutants`] | what limits name, and whether gravity acts on it |
//! | [`facilities`] | oil, solids and droplets that a kind of site sends |
//! | [`land_uses`] | oil and solids measured in the runoff of one land use |

use crate::evidence::Table;

pub mod chemicals;
pub mod facilities;
pub mod land_uses;
pub mod oils;
pub mod pollutants;
mod tables;

crate::list_pages! {
    water_density,
    water_viscosity,
    saline_density,
    saline_viscosity,
    kinematic_viscosity,
    oil_density,
    oil_density_60f,
    volume_correction_60f,
    api_gravity,
    oil_viscosity,
    viscosity_blending_number,
    viscosity_blend,
    saybolt,
    volume_concentration,
    mixed_temperature,
    mixed_salinity,
}

/// Check tables of this area.
pub static TABLES: &[Table] = tables::TABLES;

/// Whether a text is this word, whatever its case and whether dashes or spaces part it.
fn same(word: &str, text: &str) -> bool {
    let plain = |byte: u8| if matches!(byte, b'-' | b'_') { b' ' } else { byte.to_ascii_lowercase() };
    // Most texts are tidy, and a whole list is gone through with one of them.
    let tidy = |byte: Option<&u8>| byte.is_some_and(u8::is_ascii_graphic);
    let ends = (text.as_bytes().first(), text.as_bytes().last());
    let text = if tidy(ends.0) && tidy(ends.1) { text } else { text.trim() };
    word.len() == text.len() && word.bytes().zip(text.bytes()).all(|(a, b)| plain(a) == plain(b))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_found_as_people_write_them() {
        assert!(same("alkaline-degreaser", "Alkaline degreaser "));
        assert!(same("oil and grease", "oil-and-grease"));
        assert!(!same("diesel", "diesel-en590"));
        assert!(chemicals::chemical("Soluble coolant").is_some());
        assert!(oils::oil("Jet fuel").is_some());
        assert!(pollutants::pollutant("Oil and Grease").is_some());
        assert!(facilities::facility("car park").is_some());
    }
}
