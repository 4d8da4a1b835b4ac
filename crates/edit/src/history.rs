//! What was done to an enquiry, step by step, to be undone and done again.

/// Most steps that are kept; the oldest go first.
const MOST: usize = 500;

/// A text, and what was done to come to it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// The text.
    pub text: String,
    /// What was done, as [`crate::Action::says`] has it.
    pub what: String,
}

/// The texts of an enquiry in the order in which they came about, and which of them stands.
#[derive(Debug, Clone)]
pub struct History {
    steps: Vec<Step>,
    at: usize,
}

impl History {
    /// Begins with a text.
    #[must_use]
    pub fn new(text: impl Into<String>) -> Self {
        Self { steps: vec![Step { text: text.into(), what: "opened".to_owned() }], at: 0 }
    }
    /// Takes up a text and what was done to come to it. What was undone before can no longer be done again. A text
    /// that is the same as the one that stands is no step.
    pub fn push(&mut self, text: impl Into<String>, what: impl Into<String>) {
        let step = Step { text: text.into(), what: what.into() };
        if self.now().is_some_and(|now| now.text == step.text) {
            return;
        }
        self.steps.truncate(self.at + 1);
        self.steps.push(step);
        let over = self.steps.len().saturating_sub(MOST);
        self.steps.drain(..over);
        self.at = self.steps.len() - 1;
    }
    /// The step that stands.
    #[must_use]
    pub fn now(&self) -> Option<&Step> {
        self.steps.get(self.at)
    }
    /// Goes one step back; the step that stands then, or none at the first.
    pub fn undo(&mut self) -> Option<&Step> {
        self.at = self.at.checked_sub(1)?;
        self.now()
    }
    /// Goes one step on again; the step that stands then, or none at the last.
    pub fn redo(&mut self) -> Option<&Step> {
        if !self.can_redo() {
            return None;
        }
        self.at += 1;
        self.now()
    }
    /// Whether there is a step before.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.at > 0
    }
    /// Whether there is a step behind.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.at + 1 < self.steps.len()
    }
    /// All steps that are kept, the first one first, with those that were undone.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }
    /// The place of the step that stands among all that are kept.
    #[must_use]
    pub fn at(&self) -> usize {
        self.at
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_oldest_steps_go_first() {
        let mut history = History::new("0");
        (1..=MOST + 9).for_each(|n| history.push(n.to_string(), "step"));
        assert_eq!(history.steps().len(), MOST);
        assert_eq!(history.steps().first().map(|step| step.text.as_str()), Some("10"));
        let mut back = 0;
        while history.undo().is_some() {
            back += 1;
        }
        assert_eq!((back, history.can_undo(), history.can_redo()), (MOST - 1, false, true));
    }
}
