//! On which condition a unit will do that nothing takes without one.

use crate::pick::Pick;

/// On which condition a unit will do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Condition {
    /// Something ahead of it answers this rule.
    Ahead(&'static str),
    /// It takes the water, and is not shown to keep the limit; nor are up to four of any size.
    Limit,
}

/// The smallest units that would do on a condition.
#[derive(Debug, Default)]
pub(crate) struct OnCondition {
    pub(crate) ahead: Option<Pick>,
    pub(crate) limit: Option<Pick>,
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
    pub(crate) fn offer(&mut self, pick: Pick, condition: &Condition) {
        let place = match condition {
            Condition::Ahead(_) => &mut self.ahead,
            Condition::Limit => &mut self.limit,
        };
        place.get_or_insert(Pick { fits: false, condition: Some(condition.clone()), ..pick });
    }
    pub(crate) fn best(self, count: Option<u32>) -> Option<Pick> {
        let mut pick = self.ahead.or(self.limit)?;
        pick.because = match &pick.condition {
            Some(Condition::Ahead(title)) => {
                format!("the smallest that will do once something ahead of it answers this: {}", title.to_lowercase())
            }
            _ => format!("the smallest that takes the water; {} shown to keep the limit", not_more(count)),
        };
        Some(pick)
    }
}
