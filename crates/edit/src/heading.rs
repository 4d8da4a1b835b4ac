//! A block of an enquiry as the program calls it: `water`, `stream "wash"`, `stream 2`, `limit 2 "oil and grease"`.

use core::fmt;
use core::str::FromStr;
use stillrise_design::enquiry::blocks;
use stillrise_design::enquiry::keys::BlockSpec;
use stillrise_units::{Fault, nearest};

/// A block by its name, or by its number among those of its kind.
#[derive(Clone)]
pub struct Heading {
    block: &'static BlockSpec,
    many: bool,
    number: Option<usize>,
    name: Option<String>,
}

impl Heading {
    /// A block by what it is called in the file, and by number or name where there may be several.
    ///
    /// # Errors
    /// No block is called so, or it has a number or a name and there is but one.
    pub fn new(block: &str, number: Option<usize>, name: Option<&str>) -> Result<Self, Fault> {
        let (spec, many) = declared(block)?;
        if !many && (number.is_some() || name.is_some()) {
            let reason = format!("there is but one \"{block}\", which has neither number nor name");
            return Err(Fault::new(block, reason, format!("write {block}")));
        }
        if number == Some(0) {
            return Err(Fault::new(format!("{block} 0"), "blocks are counted from 1", format!("write {block} 1")));
        }
        Ok(Self { block: spec, many, number, name: name.map(str::to_owned) })
    }
    /// Its number among those of its kind, from 1, if that is said.
    #[must_use]
    pub fn number(&self) -> Option<usize> {
        self.number
    }
    /// Its name, if that is said.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }
    /// Another block of its kind.
    pub(crate) fn other(&self, number: Option<usize>, name: Option<String>) -> Self {
        Self { block: self.block, many: self.many, number, name }
    }
    /// The block as declared.
    #[must_use]
    pub fn block(&self) -> &'static BlockSpec {
        self.block
    }
    /// Whether there may be several such blocks.
    #[must_use]
    pub fn is_many(&self) -> bool {
        self.many
    }

    /// A heading at the front of a text, and what stands behind it.
    pub(crate) fn lead(text: &str) -> Result<(Self, &str), Fault> {
        let end = text.find([' ', '.', ':']).unwrap_or(text.len());
        let (block, rest) = text.split_at(end);
        let after = rest.trim_start_matches(' ');
        let digits = after.len() - after.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let (number, rest) = match after[..digits].parse::<usize>() {
            Ok(number) if after.len() < rest.len() => (Some(number), &after[digits..]),
            _ => (None, rest),
        };
        // A name may hold quotes and points itself; no key does, so the last quote closes it.
        let quoted = rest.trim_start_matches(' ').strip_prefix('"');
        let (name, rest) = match quoted.and_then(|quoted| Some((quoted, quoted.rfind('"')?))) {
            Some((quoted, close)) => (Some(&quoted[..close]), &quoted[close + 1..]),
            None => (None, rest),
        };
        let heading = Self::new(block, number, name)?;
        let is_ended = rest.is_empty() || rest.starts_with(['.', ':']);
        if !is_ended {
            let reason = format!("\"{}\" is neither a number nor a name between quotes", rest.trim());
            return Err(Fault::new(text, reason, format!("write for instance {block} 2 or {block} \"name\"")));
        }
        Ok((heading, rest))
    }
}

/// A block as declared, and whether there may be several.
fn declared(block: &str) -> Result<(&'static BlockSpec, bool), Fault> {
    blocks().find(|(spec, _)| spec.name == block).ok_or_else(|| {
        let known = || blocks().map(|(spec, _)| spec.name);
        let remedy = match nearest(block, known()) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!("the blocks are {}", known().collect::<Vec<_>>().join(", ")),
        };
        Fault::new(block, format!("\"{block}\" is not a block"), remedy)
    })
}

impl FromStr for Heading {
    type Err = Fault;
    fn from_str(text: &str) -> Result<Self, Fault> {
        match Self::lead(text.trim())? {
            (heading, "") => Ok(heading),
            (heading, rest) => {
                let reason = format!("\"{}\" stands behind the block", rest.trim_start_matches(['.', ':', ' ']));
                Err(Fault::new(text.trim(), reason, format!("write {heading} alone")))
            }
        }
    }
}

impl fmt::Display for Heading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.block.name)?;
        if let Some(number) = self.number {
            write!(f, " {number}")?;
        }
        match &self.name {
            Some(name) => write!(f, " \"{name}\""),
            None => Ok(()),
        }
    }
}

impl fmt::Debug for Heading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")
    }
}

impl PartialEq for Heading {
    fn eq(&self, other: &Self) -> bool {
        core::ptr::eq(self.block, other.block) && self.number == other.number && self.name == other.name
    }
}

impl Eq for Heading {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_print_as_they_are_read() -> Result<(), Fault> {
        for text in ["water", "stream", "stream 2", "stream \"wash\"", "limit 2 \"oil and grease\"", "stream \"a\".b\""]
        {
            assert_eq!(text.parse::<Heading>()?.to_string(), text);
        }
        Ok(())
    }

    #[test]
    fn what_is_no_heading_is_refused() {
        for (text, words) in [
            ("watr", "did you mean \"water\""),
            ("zzzzzzzz", "the blocks are enquiry"),
            ("water 2", "write water"),
            ("water \"a\"", "write water"),
            ("stream 0", "write stream 1"),
            ("stream wash", "stream \"name\""),
            ("stream 2.flow", "write stream 2 alone"),
            ("", "the blocks are"),
        ] {
            let fault = text.parse::<Heading>().err().map(|f| f.remedy).unwrap_or_default();
            assert!(fault.contains(words), "{text}: {fault}");
        }
    }
}
