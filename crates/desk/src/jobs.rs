//! What comes with the program: the worked jobs and the demo range, all invented.

use stillrise_design::enquiry::range::{Range, read_range};

/// A file of a worked job: name and text.
pub type File = (&'static str, &'static str);

/// A worked job: its name, what it shows, its files.
pub struct WorkedJob {
    /// Its folder's name.
    pub name: &'static str,
    /// Its files.
    pub files: &'static [File],
}

/// The worked jobs.
pub static JOBS: &[WorkedJob] = &[
    WorkedJob {
        name: "vehicle-yard",
        files: &[
            ("enquiry.toml", include_str!("../../../enquiries/vehicle-yard/enquiry.toml")),
            ("rain.csv", include_str!("../../../enquiries/vehicle-yard/rain.csv")),
        ],
    },
    WorkedJob {
        name: "transformer-yard",
        files: &[("enquiry.toml", include_str!("../../../enquiries/transformer-yard/enquiry.toml"))],
    },
    WorkedJob {
        name: "truck-wash",
        files: &[("enquiry.toml", include_str!("../../../enquiries/truck-wash/enquiry.toml"))],
    },
    WorkedJob {
        name: "machine-shop",
        files: &[("enquiry.toml", include_str!("../../../enquiries/machine-shop/enquiry.toml"))],
    },
    WorkedJob {
        name: "tram-depot",
        files: &[("enquiry.toml", include_str!("../../../enquiries/tram-depot/enquiry.toml"))],
    },
    WorkedJob {
        name: "hydro-deck",
        files: &[("enquiry.toml", include_str!("../../../enquiries/hydro-deck/enquiry.toml"))],
    },
    WorkedJob {
        name: "crane-yard",
        files: &[("enquiry.toml", include_str!("../../../enquiries/crane-yard/enquiry.toml"))],
    },
    WorkedJob {
        name: "fuel-pad",
        files: &[("enquiry.toml", include_str!("../../../enquiries/fuel-pad/enquiry.toml"))],
    },
    WorkedJob {
        name: "refinery-basin",
        files: &[("enquiry.toml", include_str!("../../../enquiries/refinery-basin/enquiry.toml"))],
    },
    WorkedJob {
        name: "market-wash",
        files: &[("enquiry.toml", include_str!("../../../enquiries/market-wash/enquiry.toml"))],
    },
    WorkedJob { name: "foundry", files: &[("enquiry.toml", include_str!("../../../enquiries/foundry/enquiry.toml"))] },
];

/// The demo range, from which a unit is picked when the enquiry names no range of its own.
pub fn demo_range() -> Range {
    read_range(include_str!("../../../ranges/demo.toml")).file
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demo_range_has_no_faults() {
        let outcome = read_range(include_str!("../../../ranges/demo.toml"));
        assert!(outcome.faults.is_empty(), "{:?}", outcome.faults);
        assert!(outcome.file.models.len() >= 8);
    }
}
