//! What a company accepts once for all its enquiries, and what it cannot accept so.
//!
//! A rule of the company settles a warning and nothing else. A failure says that the unit is not fit as it stands, and what
//! cannot be judged is not known: either needs a person who looked at this job. Rules on which people's safety or the meaning of
//! the result hangs are no common practice, even where they only warn.

use crate::rule::{Grade, Rule};
use crate::rules::{
    RULES, alarm_after_loss, chain_stopped, claims_contradict, drain_valve_open, floats_when_emptied, gasoline_vapour,
    levels_upside_down, limit_not_shown, not_a_gravity_duty, pack_cannot_be_lifted, shell_may_collapse, shut_off_late,
    sling_too_flat, spill_above_room, spill_without_closure, unknown_decision, wall_overstressed,
};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::blocks::Decision;
use stillrise_design::enquiry::settings::Settings;
use stillrise_units::{Fault, nearest};

/// Rules that no company accepts for all its enquiries.
const NEVER: &[&Rule] = &[
    &alarm_after_loss::RULE,
    &chain_stopped::RULE,
    &claims_contradict::RULE,
    &drain_valve_open::RULE,
    &floats_when_emptied::RULE,
    &gasoline_vapour::RULE,
    &levels_upside_down::RULE,
    &limit_not_shown::RULE,
    &not_a_gravity_duty::RULE,
    &pack_cannot_be_lifted::RULE,
    &shell_may_collapse::RULE,
    &shut_off_late::RULE,
    &sling_too_flat::RULE,
    &spill_above_room::RULE,
    &spill_without_closure::RULE,
    &unknown_decision::RULE,
    &wall_overstressed::RULE,
];

/// Whether a company may accept what a rule says for all its enquiries.
#[must_use]
pub fn may_stand(rule: &Rule, grade: Grade) -> bool {
    grade == Grade::Warns && !NEVER.contains(&rule)
}

/// What the company's settings decide about a rule, where they may.
pub(crate) fn decision(enquiry: &Enquiry, rule: &Rule, grade: Grade) -> Option<Decision> {
    let settings = enquiry.settings.as_ref().filter(|_| may_stand(rule, grade))?;
    let accept = settings.accepts.iter().find(|accept| accept.rule.as_deref() == Some(rule.id))?;
    Some(accept.decision())
}

/// Rules that the settings accept and that are none, or may not be accepted so.
#[must_use]
pub fn faults(settings: &Settings) -> Vec<Fault> {
    let named = settings.accepts.iter().filter_map(|accept| Some((accept.rule.as_deref()?, accept)));
    named
        .filter_map(|(name, accept)| {
            let (reason, remedy) = match RULES.iter().find(|rule| rule.id == name) {
                None => {
                    let remedy = match nearest(name, RULES.iter().map(|rule| rule.id)) {
                        Some(near) => format!("did you mean \"{near}\"?"),
                        None => "write the id that stands in brackets beside the finding".to_owned(),
                    };
                    (format!("there is no rule \"{name}\""), remedy)
                }
                Some(rule) if NEVER.contains(rule) => {
                    let reason = format!("\"{}\" is not for a company to accept in all its enquiries", rule.title);
                    (reason, "take it out; decide on it in each enquiry".to_owned())
                }
                Some(_) => return None,
            };
            Some(Fault::new(accept.rule().place(), reason, remedy))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillrise_design::enquiry::settings::read_settings;

    #[test]
    fn a_company_accepts_warnings_alone() {
        for rule in RULES {
            for grade in [Grade::Fails, Grade::CannotJudge, Grade::Passes, Grade::NotApplicable] {
                assert!(!may_stand(rule, grade), "{} {}", rule.id, grade.word());
            }
        }
        assert!(NEVER.iter().all(|rule| !may_stand(rule, Grade::Warns)));
        assert!(RULES.iter().any(|rule| may_stand(rule, Grade::Warns)));
    }

    #[test]
    fn what_is_no_rule_or_hangs_on_safety_is_refused() {
        let text = |rule: &str| {
            format!(
                "[company]\nname = \"X\"\n[[accept]]\nrule = \"{rule}\"\nbecause = \"b\"\nwho = \"w\"\ndate = \"2026-01-12\"\n"
            )
        };
        let found = |rule: &str| faults(&read_settings(&text(rule)).file);
        assert!(found("no-measured-results").is_empty());
        assert!(found("no-measured-result").iter().any(|f| f.remedy.contains("no-measured-results")));
        assert!(found("gasoline-vapour").iter().any(|f| f.reason.contains("not for a company")));
    }
}
