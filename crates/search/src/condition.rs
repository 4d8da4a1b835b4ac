//! On which condition a unit will do that nothing takes without one.

use crate::because::Because;
use crate::pick::Pick;
use stillrise_checks::Rule;

/// On which condition a unit will do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Condition {
    /// Something ahead of it answers this rule.
    Ahead(&'static Rule),
    /// It takes the water, and is not shown to keep the limit; nor are up to four of any size.
    Limit,
}

/// The smallest units that would do on a condition.
#[derive(Debug, Default)]
pub(crate) struct OnCondition {
    pub(crate) ahead: Option<Pick>,
    /// Of those that take the water, the one that leaves the fewest limits open, and how many.
    pub(crate) limit: Option<(Pick, usize)>,
}

/// Of what it is true that none is shown to keep a limit: as many as were asked for, or as many as were tried.
#[must_use]
pub fn not_more(asked_for: Option<u32>) -> String {
    match asked_for {
        None => "neither it nor up to four of any size is".to_owned(),
        Some(1) => "no single unit of any size is".to_owned(),
        Some(n) => format!("{n} together, of whichever size, are not"),
    }
}

impl OnCondition {
    /// One more that would do, `open` limits apart that it is not shown to keep.
    pub(crate) fn offer(&mut self, pick: Pick, condition: &Condition, open: usize) {
        let offered = || Pick { fits: false, condition: Some(condition.clone()), ..pick };
        match condition {
            Condition::Ahead(_) => {
                self.ahead.get_or_insert_with(offered);
            }
            Condition::Limit if self.limit.as_ref().is_none_or(|(_, fewest)| open < *fewest) => {
                self.limit = Some((offered(), open));
            }
            Condition::Limit => {}
        }
    }
    pub(crate) fn best(self, count: Option<u32>) -> Option<Pick> {
        let mut pick = self.ahead.or(self.limit.map(|(pick, _)| pick))?;
        pick.because = Because::OnCondition { asked_for: count };
        Some(pick)
    }
}
