//! The areas of the handbook, as a table of contents shows them.

use crate::page::Page;
use crate::pages;

/// One area.
#[derive(Debug, PartialEq, Eq)]
pub struct Area {
    /// Its folder, which names it in an address.
    pub id: &'static str,
    /// Its name in print.
    pub title: &'static str,
    /// What its pages are about.
    pub about: &'static str,
}

macro_rules! areas {
    ($($id:literal $title:literal $about:literal;)*) => {
        /// All areas, in reading order.
        pub static AREAS: &[Area] = &[$(Area { id: $id, title: $title, about: $about }),*];
    };
}

areas! {
    "fluids" "Fluids" "Water fresh and saline, oils and how they change with temperature.";
    "rain" "Rain and flows" "Intensity, runoff, wash water, fire water, volumes.";
    "droplets" "Droplets" "How their sizes are described, and how they come together.";
    "separation" "Separation" "Rise of droplets, settling of grit, removal in tanks, plate packs and mesh, shear.";
    "hydraulics" "Hydraulics" "Pipes, fittings, weirs, slots, pumps, losses of the internals.";
    "vessel" "Vessel" "Levels and the oil they leave room for, floats, volumes, accumulation, weights, packs.";
    "ground" "Ground" "What lifts a buried unit and what holds it down, cover and wheels above it, areas around it.";
    "shop" "Shop" "Plates and shells under water and ground, supports and lifting, weights, heat, vents, protection.";
    "laboratory" "Laboratory" "What a set of results says of the water it was taken from.";
}

impl Area {
    /// The area of a page, by the folder in which it stands.
    #[must_use]
    pub fn of(page: &Page) -> Option<&'static Area> {
        let folder = page.file.rsplit('/').nth(1)?;
        AREAS.iter().find(|area| area.id == folder)
    }
    /// Its pages, in reading order.
    pub fn pages(&'static self) -> impl Iterator<Item = &'static Page> {
        pages().filter(move |page| Area::of(page) == Some(self))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Area by area, the pages come in the order of the handbook, each once.
    #[test]
    fn every_page_stands_in_one_area_in_the_order_of_the_handbook() {
        let listed: Vec<&str> = AREAS.iter().flat_map(Area::pages).map(|page| page.id).collect();
        let all: Vec<&str> = pages().map(|page| page.id).collect();
        assert_eq!(listed, all);
    }
}
