//! Pairs of a group code and a value, a line each.

use core::fmt::{Display, Write};

/// Handles, each given once.
#[derive(Debug, Clone)]
pub struct Handles(u32);

impl Default for Handles {
    fn default() -> Handles {
        Handles(1)
    }
}

impl Handles {
    /// A new one.
    pub fn take(&mut self) -> Handle {
        let own = Handle(self.0);
        self.0 += 1;
        own
    }

    /// The one that would come next.
    pub fn seed(&self) -> Handle {
        Handle(self.0)
    }
}

/// A name of an object that no other object of the file has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Handle(u32);

impl Handle {
    /// Owner of what belongs to the file itself.
    pub const NONE: Handle = Handle(0);
}

impl Display for Handle {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{:X}", self.0)
    }
}

/// Text that grows by pairs.
#[derive(Debug, Default)]
pub struct Tags {
    text: String,
}

impl Tags {
    /// A section, between its ends.
    pub fn section(name: &str, fill: impl FnOnce(&mut Tags)) -> String {
        let mut out = Tags::default();
        out.put(0, "SECTION").put(2, name);
        fill(&mut out);
        out.put(0, "ENDSEC");
        out.text
    }

    /// A pair.
    pub fn put(&mut self, code: u16, value: impl Display) -> &mut Tags {
        // Writing to a string cannot fail.
        let _ = writeln!(self.text, "{code:>3}\n{value}");
        self
    }

    /// A number that need not be whole.
    pub fn real(&mut self, code: u16, value: f64) -> &mut Tags {
        let value = if value.is_finite() { value } else { 0.0 };
        let text = format!("{value:.8}");
        let text = text.trim_end_matches('0');
        let text = if text.ends_with('.') { format!("{text}0") } else { text.to_owned() };
        self.put(code, if text == "-0.0" { "0.0" } else { &text })
    }

    /// A point in the plane; its z follows where `code` asks for three numbers.
    pub fn point(&mut self, code: u16, (x, y): (f64, f64)) -> &mut Tags {
        self.real(code, x).real(code + 10, y).real(code + 20, 0.0)
    }

    /// The same without z.
    pub fn flat(&mut self, code: u16, (x, y): (f64, f64)) -> &mut Tags {
        self.real(code, x).real(code + 10, y)
    }

    /// The head of an object: kind, handle, owner.
    pub fn object(&mut self, kind: &str, own: Handle, owner: Handle) -> &mut Tags {
        self.put(0, kind).put(5, own).put(330, owner)
    }

    /// The name of the class whose values follow.
    pub fn class(&mut self, name: &str) -> &mut Tags {
        self.put(100, name)
    }
}

/// Text of a line as it is written: what would be read as a code for a special letter is told apart.
pub fn text(text: &str) -> String {
    // A caret begins a code for a control character, two per cent signs one for a symbol; `%%%` is the sign itself.
    let carets = text.replace('^', "^ ");
    let mut out = String::with_capacity(carets.len());
    let mut letters = carets.chars().peekable();
    while let Some(letter) = letters.next() {
        if letter == '%' && letters.next_if_eq(&'%').is_some() {
            out.push_str("%%%%%%");
        } else {
            out.push(letter);
        }
    }
    out
}

/// Text of a dimension as it is written: there, braces and backslashes are commands.
pub fn rich(text: &str) -> String {
    let escape = |letter: char| match letter {
        '\\' | '{' | '}' => format!("\\{letter}"),
        _ => letter.to_string(),
    };
    text.replace('^', "^ ").chars().map(escape).collect()
}
