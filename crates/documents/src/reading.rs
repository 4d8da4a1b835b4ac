//! What was found in a customer's text, for programs.

use serde_json::{Value, json};
use stillrise_mail::{Find, Mail, What};

/// What was found, as JSON; of the text that was read.
#[must_use]
pub fn read_json(text: &str, mail: &Mail) -> Value {
    json!({ "finds": mail.finds.iter().map(|find| of(text, mail, find)).collect::<Vec<_>>() })
}

/// One find.
fn of(text: &str, mail: &Mail, find: &Find) -> Value {
    let kind = match &find.what {
        What::Quantity(_, dim) => json!({ "quantity": dim.name() }),
        What::Word(thing, word) => json!({ "word": word, "thing": thing.word() }),
        What::Ph(range) => json!({ "ph": range }),
        What::Count(_, count) => json!({ "count": count }),
        What::Gravity(said) => json!({ "gravity": said }),
    };
    let sentence = mail.sentences.get(find.sentence).map(|s| &text[s.at.clone()]);
    json!({
        "from": find.at.start, "to": find.at.end, "said": &text[find.at.clone()], "what": kind, "sentence": sentence,
        "offers": find.offers.iter().map(|o| json!({ "key": o.path, "value": o.value, "weight": o.weight })).collect::<Vec<_>>(),
    })
}
