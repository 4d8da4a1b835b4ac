//! For whom a document is made.

/// The edition of a package.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Edition {
    /// For the client: no prices of ours, no names behind decisions.
    #[default]
    Client,
    /// For the authority: every step of the trail.
    Regulator,
    /// Our own: everything.
    Us,
}

impl Edition {
    /// All editions.
    pub const ALL: [Edition; 3] = [Edition::Client, Edition::Regulator, Edition::Us];
    /// The word on the command line and in the manifest.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Edition::Client => "client",
            Edition::Regulator => "regulator",
            Edition::Us => "us",
        }
    }
    /// The edition in print.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Edition::Client => "client's edition",
            Edition::Regulator => "regulator's edition",
            Edition::Us => "our own edition",
        }
    }
    /// Whether prices, decisions' names and range remarks may be shown.
    #[must_use]
    pub fn is_internal(self) -> bool {
        self == Edition::Us
    }
}
