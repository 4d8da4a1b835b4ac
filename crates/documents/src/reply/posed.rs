//! The questions of the mail with their numbers and the keys that take the answers, so that what a customer writes back can be
//! matched to them.

use super::alike::stands_in;
use super::asks;
use super::standing::standing;
use stillrise_checks::unsettled;
use stillrise_search::Settled;
use stillrise_search::standing::Asks;

/// A question as the mail prints it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Posed {
    /// Its number there.
    pub number: usize,
    /// The question.
    pub text: String,
    /// The keys that take the answer, as the program prints their paths; several where it is asked of several waters at once,
    /// none where no single key does.
    pub keys: Vec<String>,
}

/// The questions of the mail, in its order.
#[must_use]
pub fn posed(settled: &Settled) -> Vec<Posed> {
    numbered(settled, asks::questions(settled))
}

/// All that moves something and that a client can answer; those of the mail stand first, under the same numbers.
pub(crate) fn every_question(settled: &Settled) -> Vec<Posed> {
    numbered(settled, asks::every_question(settled))
}

/// How many questions are open: every paper counts by this.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Counts {
    /// Figures that were taken as nobody stated them.
    pub(crate) taken: usize,
    /// Questions to the client.
    pub(crate) asked: usize,
}

/// Counts them.
pub(crate) fn counts(settled: &Settled) -> Counts {
    Counts { taken: settled.questions().len(), asked: every_question(settled).len() }
}

fn numbered(settled: &Settled, texts: Vec<String>) -> Vec<Posed> {
    let texts = texts.into_iter().enumerate();
    texts.map(|(k, text)| Posed { number: k + 1, keys: keys(settled, &text), text }).collect()
}

/// The keys behind one question: of the assumptions that it asks for, of the rules that wait for it, of what stands whatever the
/// numbers.
fn keys(settled: &Settled, text: &str) -> Vec<String> {
    let line = [text.to_owned()];
    let assumed = settled.questions().iter().filter(|q| stands_in(&line, q)).map(|q| q.key.clone());
    let asks = unsettled(&settled.verdicts).into_iter().map(|u| u.ask);
    let ruled = asks.filter(|ask| text.starts_with(&*ask.question)).filter_map(|ask| ask.key.as_deref());
    let stands = settled.standing.iter().filter(|s| standing(&s.asks) == text).filter_map(|s| key_of(&s.asks));
    let mut all: Vec<String> = Vec::new();
    for key in assumed.chain(ruled.map(str::to_owned)).chain(stands) {
        if !all.contains(&key) {
            all.push(key);
        }
    }
    all
}

/// The key of what stands whatever the numbers, where one alone takes the answer.
fn key_of(asks: &Asks) -> Option<String> {
    Some(match asks {
        Asks::RainInSewer => "outlet.rain_allowed".to_owned(),
        Asks::Receiver => "outlet.to".to_owned(),
        Asks::Gallon => "enquiry.gallon".to_owned(),
        Asks::Method(pollutant) => format!("limit \"{pollutant}\".method"),
        Asks::Authority(pollutant) => format!("limit \"{pollutant}\".authority"),
        _ => return None,
    })
}
