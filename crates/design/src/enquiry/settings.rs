//! The company's settings: what a desk says once for all its enquiries. It stands below what an enquiry states and above
//! defaults; the same machinery of keys as the enquiry's.

use super::blocks::{Decision, Paper, Print, Settled};
use super::date::Day;
use super::fields::{Flag, Text, Word};
use super::keys::{BlockSpec, Quantity, keys};
use super::reader::{Outcome, Slot, read, slots};
use super::said::{Claims, Said, Told};
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Fault, Ratio, nearest};

/// What the file is called.
pub const SETTINGS: &str = "stillrise-settings.toml";
/// Words that a drawing number is put together from.
pub const PLACEHOLDERS: [&str; 3] = ["project", "sheet", "revision"];
/// Most lines of an address, most notes, and letters of a line.
const MOST: (usize, usize, usize) = (6, 20, 300);

keys! {
    /// Whose settings these are.
    Company "company" {
        /// Its name
        name: Text = spec.like("\"Example Separators\"").needed();
        /// Lines of its address
        address: Vec<String> = spec.like("[\"1 Example Road\", \"Exampletown\"]");
        /// Its logo: an SVG or PNG file beside this one
        logo: Text = spec.like("\"logo.svg\"");
    }
}
keys! {
    /// What stands in the title block of a drawing where the enquiry says nothing of it.
    Drawing "drawing" {
        /// Who answers for the drawings; the company where nobody else is named
        owner: Text = spec.like("\"Example Separators\"");
        /// Who draws
        drawn_by: Text = spec.like("\"A. Example\"");
        /// Who checks
        checked_by: Text = spec.like("\"B. Example\"");
        /// Who approves
        approved_by: Text = spec.like("\"C. Example\"");
        /// How a drawing is numbered: {project}, {sheet} and {revision} stand for those of the job
        number: Text = spec.like("\"{project}-{sheet}\"");
        /// Paper of the drawings
        size: Word<Paper> = spec.like("\"A3\"");
    }
}
keys! {
    /// How documents are printed where the enquiry says nothing of it.
    Documents "documents" {
        /// Units of print
        print: Word<Print> = spec.like("\"us\"");
        /// Standard notes, printed on drawings and documents
        notes: Vec<String> = spec.like("[\"Dimensions are to be checked on site.\"]");
    }
}
keys! {
    /// Margins where the enquiry states none; each is one number.
    Margins "method" {
        /// Reserve of plate area that a picked unit must have
        reserve: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "300 %").like("\"15 %\"");
        /// Unequal flow between the gaps of the pack, as a share of the mean
        maldistribution: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").like("\"20 %\"");
        /// Whether the mesh counts in the headline
        mesh_credit: Flag = spec.like("false");
    }
}
keys! {
    /// A warning that the company accepts as common practice. It stays in sight, as decided by company rule. A rule that fails or
    /// cannot judge is decided in each enquiry, and so is one on which safety hangs.
    Accept "accept" {
        /// The rule
        rule: Text = spec.like("\"no-measured-results\"").needed();
        /// Why it is common practice
        because: Text = spec.like("\"no unit of the range was measured by others yet\"").needed();
        /// Who answers for that
        who: Text = spec.like("\"C. Example, head of engineering\"").needed();
        /// Since which day
        date: Day = spec.like("\"2026-01-12\"").needed();
    }
}

/// A logo that was looked through and holds nothing but what is drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Logo {
    /// Whether it is SVG, paths alone; else it is PNG.
    pub is_svg: bool,
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// Width over height.
    pub aspect: f64,
}

impl Logo {
    /// What it is, as a server says it.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        if self.is_svg { "image/svg+xml" } else { "image/png" }
    }
}

/// A company's settings as read.
#[derive(Debug, Clone, Default)]
#[allow(missing_docs)]
pub struct Settings {
    pub company: Company,
    pub drawing: Drawing,
    pub documents: Documents,
    pub method: Margins,
    pub accepts: Vec<Accept>,
    /// The logo, once whoever reaches files brought and cleaned it.
    pub logo: Option<Logo>,
    /// Where the file lies, as it is shown.
    pub file: String,
}

const SLOTS: &[Slot<Settings>] = slots! {
    one Company company;
    one Drawing drawing;
    one Documents documents;
    one Margins method;
    many Accept accepts;
};

/// The blocks of a settings file: as declared, and whether each may stand more than once.
pub fn blocks() -> impl Iterator<Item = (&'static BlockSpec, bool)> {
    SLOTS.iter().map(|slot| ((slot.spec)(), slot.many))
}

/// Reads a settings file; its logo is another's to bring. Faults carry place, reason and remedy.
#[must_use]
pub fn read_settings(text: &str) -> Outcome<Settings> {
    let mut outcome = read(text, SLOTS);
    let settings = &outcome.file;
    let mut faults = Vec::new();
    if settings.company.name.is_none() && !outcome.faults.iter().any(|f| f.place.contains("company")) {
        let reason = "there is no [company] block with a name";
        faults.push(Fault::new("company", reason, "write [company] and name = \"...\""));
    }
    single(settings, &mut faults);
    lists(settings, &mut faults);
    number(&settings.drawing, &mut faults);
    logo_name(&settings.company, &mut faults);
    let mut rules: Vec<&str> = settings.accepts.iter().filter_map(|accept| accept.rule.as_deref()).collect();
    rules.sort_unstable();
    for pair in rules.windows(2).filter(|pair| pair[0] == pair[1]) {
        let place = format!("accept \"{}\"", pair[0]);
        faults.push(Fault::new(place, "the rule is accepted twice", "leave one of the two"));
    }
    outcome.faults.extend(faults);
    outcome
}

/// A setting is one value: whoever reads it must not have to choose.
fn single(settings: &Settings, faults: &mut Vec<Fault>) {
    let mut claimed = Vec::new();
    SLOTS.iter().for_each(|slot| (slot.claimed)(settings, &mut claimed));
    let several = claimed.iter().filter(|key| key.lines().len() > 1).map(|key| key.place().to_owned());
    let margins = [&settings.method.reserve, &settings.method.maldistribution];
    let wide = margins.into_iter().filter(|q| q.claims.len() > 1 || q.claims.iter().any(|claim| claim.range.is_some()));
    faults.extend(several.chain(wide.map(|q| q.place.clone())).map(|place| {
        Fault::new(place, "is more than one value", "write one; ranges and claims of several belong into an enquiry")
    }));
}

/// Lists that no sheet has room for.
fn lists(settings: &Settings, faults: &mut Vec<Fault>) {
    let (address, notes, letters) = MOST;
    let all = [(settings.company.address(), address), (settings.documents.notes(), notes)];
    for (key, most) in all {
        if key.said.len() > most {
            let reason = format!("has {} lines; {most} are the most that a sheet has room for", key.said.len());
            faults.push(Fault::new(key.place(), reason, "put several into one, or leave some out"));
        }
        for line in key.said.iter().filter(|line| line.chars().count() > letters || line.trim().is_empty()) {
            let is_blank = line.trim().is_empty();
            let reason = if is_blank {
                "holds an empty line".to_owned()
            } else {
                format!("a line is longer than {letters} letters")
            };
            faults.push(Fault::new(key.place(), reason, "shorten it, or leave it out"));
        }
    }
}

/// Placeholders that nothing stands for.
fn number(drawing: &Drawing, faults: &mut Vec<Fault>) {
    let Some(pattern) = drawing.number.as_deref() else { return };
    faults.extend(unknown(pattern, &PLACEHOLDERS).into_iter().map(|word| {
        let remedy = match nearest(&word, PLACEHOLDERS) {
            Some(near) => format!("did you mean {{{near}}}?"),
            None => format!("use {}", PLACEHOLDERS.map(|known| format!("{{{known}}}")).join(", ")),
        };
        Fault::new(drawing.number().place(), format!("nothing stands for {{{word}}}"), remedy)
    }));
}

/// The words in braces of a pattern that are none of these.
fn unknown(pattern: &str, known: &[&str]) -> Vec<String> {
    let parts = pattern.split('{').skip(1).map(|part| part.split_once('}').map_or(part, |(word, _)| word));
    parts.filter(|word| !known.contains(word)).map(str::to_owned).collect()
}

/// A logo lies beside the file.
fn logo_name(company: &Company, faults: &mut Vec<Fault>) {
    let Some(name) = company.logo.as_deref() else { return };
    let is_plain = !name.is_empty() && !name.starts_with('.') && !name.contains(['/', '\\', ':']);
    if !is_plain {
        let reason = format!("\"{name}\" is no name of a file beside the settings");
        faults.push(Fault::new(company.logo().place(), reason, "put the logo beside the settings and name it alone"));
    }
}

impl Accept {
    /// The decision that it stands for.
    #[must_use]
    pub fn decision(&self) -> Decision {
        let told =
            |value: Settled| Told { value, text: value.word().to_owned(), from: None, chosen: false, because: None };
        let accepted = Claims { list: vec![told(Settled::Accepted)], ..Claims::default() };
        Decision {
            rule: self.rule.clone(),
            decision: accepted.into(),
            because: self.because.clone(),
            who: self.who.clone(),
            date: self.date,
            ..Decision::default()
        }
    }
}

/// A number of a drawing from its pattern; nothing where a word that it needs is not known.
#[must_use]
pub fn numbered(pattern: &str, words: &[(&str, &str)]) -> Option<String> {
    let mut number = pattern.to_owned();
    for (placeholder, word) in words {
        let braced = format!("{{{placeholder}}}");
        if number.contains(&braced) && word.trim().is_empty() {
            return None;
        }
        number = number.replace(&braced, word.trim());
    }
    Some(number).filter(|number| !number.trim().is_empty())
}

/// One thing that the settings say, and whether the enquiry says otherwise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FromSettings {
    /// The key of the settings: `drawing.owner`.
    pub key: String,
    /// The key of the enquiry that stands above it, where there is one.
    pub above: Option<&'static str>,
    /// What it is.
    pub what: &'static str,
    /// As written.
    pub value: String,
    /// What the enquiry states in its place.
    pub instead: Option<String>,
}

impl super::Enquiry {
    /// What the company's settings say, in the order of their keys.
    #[must_use]
    pub fn from_settings(&self) -> Vec<FromSettings> {
        let Some(s) = &self.settings else { return Vec::new() };
        let (head, method) = (&self.head, &self.method);
        let mut all = Vec::new();
        macro_rules! row {
            ($key:expr, $value:expr, $above:expr) => {{
                let (key, value): (_, Option<String>) = ($key, $value);
                let above: Option<(&'static str, Option<String>)> = $above;
                if let Some(value) = value {
                    let (above, instead) = above.map_or((None, None), |(path, instead)| (Some(path), instead));
                    all.push(FromSettings { key: key.path().into_owned(), above, what: key.spec.doc, value, instead });
                }
            }};
        }
        let text = |said: &Said<String>| said.0.clone();
        let list = |lines: &[String]| (!lines.is_empty()).then(|| lines.join("; "));
        let margin = |q: &Quantity<Ratio>| q.claim().map(|claim| claim.written.text.clone());
        let yes = |flag: &Flag| flag.0.map(|yes| if yes { "yes" } else { "no" }.to_owned());
        row!(s.company.name(), text(&s.company.name), None);
        row!(s.company.address(), list(&s.company.address), None);
        row!(s.company.logo(), text(&s.company.logo), None);
        row!(s.drawing.owner(), text(&s.drawing.owner), None);
        row!(s.drawing.drawn_by(), text(&s.drawing.drawn_by), Some((head.drawn_by().spec.path, text(&head.drawn_by))));
        let checked = Some((head.checked_by().spec.path, text(&head.checked_by)));
        row!(s.drawing.checked_by(), text(&s.drawing.checked_by), checked);
        let approved = Some((head.approved_by().spec.path, text(&head.approved_by)));
        row!(s.drawing.approved_by(), text(&s.drawing.approved_by), approved);
        let number = Some((head.drawing_number().spec.path, text(&head.drawing_number)));
        row!(s.drawing.number(), text(&s.drawing.number), number);
        let word = |paper: Option<Paper>| paper.map(|paper| paper.word().to_owned());
        row!(s.drawing.size(), word(s.drawing.size.0), Some((head.sheet().spec.path, word(head.sheet.0))));
        let units = |print: Option<Print>| print.map(|print| print.word().to_owned());
        row!(s.documents.print(), units(s.documents.print.0), Some((head.print().spec.path, units(head.print.0))));
        row!(s.documents.notes(), list(&s.documents.notes), None);
        let own = |q: &Quantity<Ratio>| q.is_given().then(|| margin(q)).flatten();
        let above = Some((method.reserve().spec.path, own(&method.reserve)));
        row!(s.method.reserve(), margin(&s.method.reserve), above);
        let above = Some((method.maldistribution().spec.path, own(&method.maldistribution)));
        row!(s.method.maldistribution(), margin(&s.method.maldistribution), above);
        let above = Some((method.mesh_credit().spec.path, yes(&method.mesh_credit)));
        row!(s.method.mesh_credit(), yes(&s.method.mesh_credit), above);
        for accept in &s.accepts {
            row!(accept.rule(), text(&accept.rule).map(|rule| said_of(&rule, accept)), None);
        }
        all
    }
}

/// An accepted rule with reason, name and day.
fn said_of(rule: &str, accept: &Accept) -> String {
    let because = accept.because.as_deref().unwrap_or_default();
    let date = accept.date.0.map_or_else(String::new, |date| format!(", {date}"));
    format!("{rule}: {because} ({}{date})", accept.who.as_deref().unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::{PLACEHOLDERS, numbered, read_settings};

    #[test]
    fn a_drawing_is_numbered_by_its_pattern() {
        let words = [("project", "Q-1"), ("sheet", "S2"), ("revision", "")];
        assert_eq!(numbered("{project}-{sheet}", &words).as_deref(), Some("Q-1-S2"));
        assert_eq!(numbered("D-{sheet}", &words).as_deref(), Some("D-S2"));
        assert_eq!(numbered("{project}-{revision}", &words), None);
        assert_eq!(words.map(|(word, _)| word), PLACEHOLDERS);
    }

    #[test]
    fn what_no_sheet_has_room_for_is_refused() {
        let reasons = |text: &str| {
            let faults = read_settings(text).faults;
            faults.iter().map(|fault| format!("{} {}", fault.place, fault.reason)).collect::<Vec<_>>().join("\n")
        };
        let head = "[company]\nname = \"X\"\n";
        assert_eq!(reasons(head), "");
        assert!(reasons("").contains("no [company] block"));
        let notes = format!("{head}[documents]\nnotes = [{}]\n", "\"a\", ".repeat(21));
        assert!(reasons(&notes).contains("documents: notes has 21 lines"), "{}", reasons(&notes));
        let long = format!("{head}address = [\"{}\", \" \"]\n", "x".repeat(301));
        assert!(reasons(&long).contains("longer than 300") && reasons(&long).contains("empty line"));
        assert!(reasons(&format!("{head}logo = \"../logo.svg\"\n")).contains("no name of a file beside"));
        let twice = "[[accept]]\nrule = \"a\"\nbecause = \"b\"\nwho = \"w\"\ndate = \"2026-01-01\"\n".repeat(2);
        assert!(reasons(&format!("{head}{twice}")).contains("accepted twice"));
    }
}
