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
choice! {
    /// Size of the paper that drawings are printed on, lying.
    Paper {
        /// ISO 216, 297 by 210 mm
        A4 "A4",
        /// ISO 216, 420 by 297 mm
        A3 "A3",
        /// ISO 216, 594 by 420 mm
        A2 "A2",
        /// ISO 216, 841 by 594 mm
        A1 "A1",
        /// ASME Y14.1, 11 by 8.5 in
        AnsiA "ANSI A",
        /// ASME Y14.1, 17 by 11 in
        AnsiB "ANSI B",
        /// ASME Y14.1, 22 by 17 in
        AnsiC "ANSI C",
        /// ASME Y14.1, 34 by 22 in
        AnsiD "ANSI D",
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
        /// Who drew the drawings
        drawn_by: Text = spec.like("\"A. Example\"");
        /// Who checked them
        checked_by: Text = spec.like("\"B. Example\"");
        /// Who approved them
        approved_by: Text = spec.like("\"C. Example\"");
        /// Number of the drawings; {sheet} stands for the number of the sheet
        drawing_number: Text = spec.like("\"Q-1042-{sheet}\"");
        /// Paper of the drawings
        sheet: Word<Paper> = spec.like("\"A3\"");
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
