//! Whose documents these are: what the company's settings and the enquiry say for title blocks, letterheads and notes. One place
//! for every document that shows any of it; where nobody said anything, nothing stands.

use crate::render::pdf::About;
use crate::render::sheet::SheetSize;
use crate::render::text::plain;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::date::Date;
use stillrise_design::enquiry::fields::Text;
use stillrise_design::enquiry::settings::{Drawing, Logo, Settings, numbered};

/// What a document shows of the company.
#[derive(Debug, Clone, Default)]
pub struct Company<'a> {
    /// Its name.
    pub name: String,
    /// Lines of its address.
    pub address: Vec<String>,
    /// Its logo.
    pub logo: Option<&'a Logo>,
    /// Who answers for the drawings: as the settings name him, else the company, else who prepared the enquiry.
    pub owner: String,
    /// Who drew.
    pub drawn: String,
    /// Who checked.
    pub checked: String,
    /// Who approved.
    pub approved: String,
    /// Standard notes, in their order.
    pub notes: Vec<String>,
}

/// What an enquiry's documents show of the company.
#[must_use]
pub fn company(enquiry: &Enquiry) -> Company<'_> {
    let (head, settings) = (&enquiry.head, enquiry.settings.as_deref());
    let said = |text: Option<&Text>| text.and_then(|text| text.as_deref()).map(plain).unwrap_or_default();
    let name = said(settings.map(|own| &own.company.name));
    let either = |own: &Text, standing: fn(&Drawing) -> &Text| match own.is_some() {
        true => said(Some(own)),
        false => said(settings.map(|settings| standing(&settings.drawing))),
    };
    let owner = [said(settings.map(|own| &own.drawing.owner)), name.clone(), said(Some(&head.prepared_by))];
    let lines = |of: fn(&Settings) -> &Vec<String>| {
        settings.map_or_else(Vec::new, |own| of(own).iter().map(|line| plain(line)).collect())
    };
    Company {
        name,
        address: lines(|own| &own.company.address),
        logo: settings.and_then(|own| own.logo.as_ref()),
        owner: owner.into_iter().find(|text| !text.is_empty()).unwrap_or_default(),
        drawn: either(&head.drawn_by, |own| &own.drawn_by),
        checked: either(&head.checked_by, |own| &own.checked_by),
        approved: either(&head.approved_by, |own| &own.approved_by),
        notes: lines(|own| &own.documents.notes),
    }
}

/// The number of a drawing sheet: by the enquiry's pattern, else the settings', else project and sheet; empty where a word that
/// it needs is not known. `sheet` is what the sheet is called among its sisters: `S1`.
#[must_use]
pub fn drawing_number(enquiry: &Enquiry, sheet: &str) -> String {
    let (head, settings) = (&enquiry.head, enquiry.settings.as_deref());
    let standing = settings.and_then(|own| own.drawing.number.as_deref());
    let pattern = head.drawing_number.as_deref().or(standing).unwrap_or("{project}-{sheet}");
    let text = |text: &Text| text.as_deref().map(plain).unwrap_or_default();
    let (project, revision) = (text(&head.project), text(&head.revision));
    let number = numbered(pattern, &[("project", &project), ("sheet", sheet), ("revision", &revision)]);
    number.map(|number| plain(&number)).unwrap_or_default()
}

/// Paper of the drawings: as the enquiry says, else the settings, else the usual size where its units are used.
#[must_use]
pub fn sheet_size(enquiry: &Enquiry) -> SheetSize {
    let standing = enquiry.settings.as_ref().and_then(|own| own.drawing.size.0);
    enquiry.head.sheet.0.or(standing).map_or_else(|| SheetSize::of(enquiry.system()), SheetSize::from)
}

/// What a PDF says of itself: the company, else who prepared the enquiry, and the day on the documents.
#[must_use]
pub fn about(enquiry: &Enquiry) -> About {
    let head = &enquiry.head;
    let name = company(enquiry).name;
    let by = head.prepared_by.as_deref().map(plain).unwrap_or_default();
    let day = head.date.as_deref().and_then(|text| Date::read(text).ok());
    let number = |n: u32| i32::try_from(n).unwrap_or_default();
    About {
        author: if name.is_empty() { by } else { name },
        day: day.map(|day| [day.year, number(day.month), number(day.day)]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::Arc;
    use stillrise_design::enquiry::read_enquiry_under;
    use stillrise_design::enquiry::settings::read_settings;

    fn read(head: &str) -> Enquiry {
        let settings = "[company]\nname = \"X\"\n[drawing]\nchecked_by = \"B\"\nnumber = \"{project}/{sheet}\"\nsize = \"A1\"\n[documents]\nprint = \"us\"\n";
        let text = format!("[enquiry]\ntitle = \"t\"\nproject = \"Q\"\n{head}\n[stated]\nflow = \"5 L/s\"\n");
        let settings = Arc::new(read_settings(settings).file);
        read_enquiry_under(&text, &|_| None, Some(&settings)).unwrap_or_default()
    }

    #[test]
    fn the_enquiry_stands_above_the_settings_and_these_above_what_is_usual() {
        let plain = read("");
        assert_eq!((company(&plain).owner.as_str(), company(&plain).checked.as_str()), ("X", "B"));
        assert_eq!((drawing_number(&plain, "S1").as_str(), sheet_size(&plain)), ("Q/S1", SheetSize::A1));
        assert_eq!(plain.system(), stillrise_units::System::Us);
        let own =
            read("checked_by = \"C\"\nsheet = \"ANSI C\"\ndrawing_number = \"{revision}-{sheet}\"\nprint = \"si\"\n");
        assert_eq!((company(&own).checked.as_str(), sheet_size(&own)), ("C", SheetSize::AnsiC));
        assert_eq!(own.system(), stillrise_units::System::Si);
        assert_eq!(drawing_number(&own, "S1"), "", "the revision is not known");
        let none = Enquiry::default();
        assert_eq!((company(&none).owner.as_str(), sheet_size(&none)), ("", SheetSize::A3));
    }
}
