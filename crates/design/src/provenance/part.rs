//! What a section of the trail is.

/// What a section of the trail is, where somebody asks for it; its name is for print alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Part {
    /// None that anybody asks for.
    #[default]
    Other,
    /// The methods.
    Methods,
    /// The droplets of all waters.
    Droplets,
    /// The peak of the influent.
    Peak,
    /// The solids.
    Solids,
    /// The zones of the unit.
    Zones,
    /// A study beside the design.
    Study,
    /// The study of the tank alone, by its models.
    TankAlone,
}

impl Part {
    /// Whether it is a study beside the design.
    #[must_use]
    pub fn is_study(self) -> bool {
        matches!(self, Part::Study | Part::TankAlone)
    }
}
