//! The trail that records.

use super::{Chooser, Entry, Node, Origin, Part, Trail, Whence};
use stillrise_handbook::equation::{Scope, parse};
use stillrise_handbook::memo;
use stillrise_handbook::page::Arg;
use stillrise_units::{System, spoken};

/// The trail of one job, in order of computation.
#[derive(Debug, Clone, Default)]
pub struct Ledger {
    /// All lines.
    pub entries: Vec<Entry>,
    section: String,
    part: Part,
    system: System,
}

impl Trail for Ledger {
    const RECORDS: bool = true;
    fn push(&mut self, entry: impl FnOnce() -> Entry) -> Node {
        let mut entry = entry();
        if entry.section.is_empty() {
            entry.section.clone_from(&self.section);
            entry.part = self.part;
        }
        if let Origin::Derived { page, inputs } = &entry.origin {
            let args: Vec<Arg> = inputs.iter().filter_map(|n| self.value(*n).cloned()).collect();
            entry.notes.extend(page.notes(&args, self.system));
        }
        say(&mut entry.origin, self.system);
        if entry.label.contains('|') {
            entry.label = spoken(&entry.label, self.system);
        }
        self.entries.push(entry);
        Node(u32::try_from(self.entries.len() - 1).unwrap_or(u32::MAX))
    }
    fn part(&mut self, part: Part, name: impl core::fmt::Display) {
        self.section = name.to_string();
        self.part = part;
    }
    fn speaks(&mut self, system: System) {
        self.system = system;
    }
}

/// What we say of a value is said in the reader's system; what a person typed stays.
fn say(origin: &mut Origin, system: System) {
    match origin {
        Origin::Assumed(a) => a.source = spoken(&a.source, system),
        Origin::Given { source: Whence::Definition | Whence::Place { from: None, .. }, text } => {
            *text = spoken(text, system);
        }
        Origin::Chosen { by: Chooser::Method, among, because, .. } => {
            *among = spoken(among, system);
            *because = spoken(because, system);
        }
        _ => {}
    }
}

impl Ledger {
    /// The entry at a place.
    #[must_use]
    pub fn entry(&self, node: Node) -> Option<&Entry> {
        self.entries.get(node.index()?)
    }
    /// The value at a place.
    #[must_use]
    pub fn value(&self, node: Node) -> Option<&Arg> {
        self.entry(node).map(|e| &e.value)
    }
    /// Each note of a formula that was used outside the range in which it is trusted, once, with the line where it stands first
    /// and that line's place. Studies beside the design go beyond ranges on purpose and are left out.
    #[must_use]
    pub fn outside_trust(&self) -> Vec<(usize, &Entry, &str)> {
        let mut all: Vec<(usize, &Entry, &str)> = Vec::new();
        for (k, entry) in self.entries.iter().enumerate().filter(|(_, entry)| !entry.part.is_study()) {
            for note in &entry.notes {
                if !all.iter().any(|(_, _, seen)| *seen == note.as_str()) {
                    all.push((k, entry, note));
                }
            }
        }
        all
    }
    /// The value of a line, computed again from its inputs; `None` where nothing is computed.
    #[must_use]
    pub fn replay(&self, entry: &Entry) -> Option<Result<Arg, String>> {
        match &entry.origin {
            Origin::Derived { page, inputs } => {
                let args: Option<Vec<Arg>> = inputs.iter().map(|n| self.value(*n).cloned()).collect();
                // Found anew: what was kept from before would prove nothing.
                Some(match args {
                    Some(args) => memo::without(|| (page.call)(&args)).map_err(|o| o.to_string()),
                    None => Err("an input has no origin".to_owned()),
                })
            }
            Origin::Gathered { inputs } => {
                let args: Option<Vec<Arg>> = inputs.iter().map(|n| self.value(*n).cloned()).collect();
                let args = args.ok_or_else(|| "an input has no origin".to_owned());
                Some(args.and_then(|args| match &entry.value {
                    Arg::Group(group, _) => Ok(Arg::Group(group, args)),
                    Arg::Groups(_) => Ok(Arg::Groups(args)),
                    other => Err(format!("{other:?} is no group")),
                }))
            }
            Origin::Reckoned { text, inputs } => Some(self.replay_reckoned(text, inputs)),
            _ => None,
        }
    }

    fn replay_reckoned(&self, text: &str, inputs: &[(&'static str, Node)]) -> Result<Arg, String> {
        let tree = parse(text)?;
        let values: Option<Vec<(String, Arg)>> =
            inputs.iter().map(|(name, n)| Some(((*name).to_owned(), self.value(*n)?.clone()))).collect();
        let values = values.ok_or("an input has no origin")?;
        let scope = Scope { values, call: &|_, _| None };
        scope.number(&tree).map(Arg::Number).ok_or_else(|| format!("cannot evaluate {text}"))
    }
}
