//! Who asks, and how documents are printed.

use crate::enquiry::date::Day;
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::keys;
use stillrise_handbook::choice;
use stillrise_handbook::fluids::facilities;

choice! {
    /// Units of print.
    Print {
        /// US customary units
        Us "us",
        /// SI and metric units
        Si "si",
    }
}
choice! {
    /// Which gallon a bare gallon is.
    GallonWord {
        /// 231 cubic inches
        Us "us",
        /// 4.54609 litres
        Imperial "imperial",
    }
}
choice! {
    /// What the documents are issued as.
    Status {
        /// for discussion, not for construction
        Preliminary "preliminary",
        /// for the client's approval
        ForApproval "for approval",
        /// released
        Issued "issued",
        /// as installed
        AsBuilt "as built",
    }
}
/// Facilities and the other words for them.
fn facility_names() -> Vec<String> {
    facilities::FACILITIES
        .iter()
        .flat_map(|f| core::iter::once(f.word).chain(f.also.iter().copied()))
        .map(str::to_owned)
        .collect()
}

keys! {
    /// Who asks, for what, and how the documents are printed.
    Head "enquiry" {
        /// Title of the job
        title: Text = spec.like("\"Bus depot, north apron\"").needed();
        /// For whom
        client: Text = spec.like("\"Invented Transit Authority\"");
        /// Number of the project or quotation
        project: Text = spec.like("\"Q-1042\"");
        /// Who prepared it
        prepared_by: Text = spec.like("\"applications desk\"");
        /// Revision of the documents
        revision: Text = spec.like("\"A\"");
        /// What the documents are issued as
        status: Word<Status> = spec.like("\"preliminary\"");
        /// Date on the documents; nothing is dated by a clock
        date: Text = spec.like("\"2026-03-02\"");
        /// Day by which an answer is due
        due: Day = spec.like("\"2026-03-06\"");
        /// Units of print; inputs may mix
        print: Word<Print> = spec.like("\"us\"");
        /// Which gallon a bare gallon is
        gallon: Word<GallonWord> = spec.like("\"us\"");
        /// What kind of place it is; lends typical loads where nobody knows better
        facility: Text = spec.named(facility_names).like("\"vehicle-yard\"");
    }
}
