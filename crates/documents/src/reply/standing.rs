//! Questions that stand whatever the numbers, in words.

use stillrise_search::standing::Asks;

/// Standing questions in words, the data sheets of several products asked for at once.
pub(super) fn all_standing<'a>(open: impl Iterator<Item = &'a Asks>) -> Vec<String> {
    let (mut texts, mut sheets) = (Vec::new(), Vec::new());
    let mut at = None;
    for asks in open {
        match asks {
            Asks::DataSheet(product) => {
                at.get_or_insert(texts.len());
                sheets.push(product.as_str());
            }
            other => texts.push(standing(other)),
        }
    }
    if let Some(at) = at {
        let text = match &sheets[..] {
            [one] => standing(&Asks::DataSheet((*one).to_owned())),
            several => format!(
                "May we have the safety data sheets of {}, and how much of each is used? They decide whether the oil still rises.",
                several.iter().map(|name| format!("\"{name}\"")).collect::<Vec<_>>().join(", ")
            ),
        };
        texts.insert(at, text);
    }
    texts
}

/// A standing question in words.
pub(crate) fn standing(asks: &Asks) -> String {
    match asks {
        Asks::DataSheet(product) => {
            format!(
                "May we have the safety data sheet of \"{product}\", and how much of it is used? It decides whether the oil still rises."
            )
        }
        Asks::Cleaner => {
            "Which cleaner or detergent, if any, goes into the water? It decides whether the oil still rises."
                .to_owned()
        }
        Asks::MoreSamples(water) => format!(
            "Can more samples of {water} be taken, three at least and on different days? One or two results say little of its mean; we took the largest, and count on a third of it to three times."
        ),
        Asks::Oil => "Which oils or fuels can get into the water? We took diesel.".to_owned(),
        Asks::NewProduct(said) => {
            format!(
                "Which product is it (\"{said}\"), and how much of it is used? It decides whether the oil still rises."
            )
        }
        Asks::RainInSewer => "Does the owner of the sewer allow rain water in it?".to_owned(),
        Asks::WashToStorm(waters) => format!(
            "Does the permit also name the water that is not rain ({})? Many cover storm water alone; other water then goes to a sewer or is hauled away.",
            waters.join(", ")
        ),
        Asks::Gallon => "Are your gallons US or imperial?".to_owned(),
        Asks::Receiver => {
            "Where does the water go behind the separator: storm drain, water body or sanitary sewer?".to_owned()
        }
        Asks::Method(pollutant) => {
            format!(
                "By which method is \"{pollutant}\" measured? It decides whether all oil and grease counts or mineral oil only."
            )
        }
        Asks::TwoOutlets(limits) => format!(
            "The limits on oil differ: {}. Which holds for which water and which outlet, in writing? Waters for two places want a separator each, and an enquiry each.",
            limits.join(", ")
        ),
        Asks::SpillPlace(names) => format!(
            "Where would the spill happen: in the {}, or where it runs to the separator past {}?",
            names.join(" or in the "),
            if names.len() == 1 { "it" } else { "them" }
        ),
        Asks::Authority(pollutant) => format!("Who sets the limit on {pollutant}, and in which document?"),
    }
}
