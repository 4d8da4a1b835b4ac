//! Methods that an authority asks for, as people write them.

use super::Enquiry;
use super::blocks::{Regulation, Regulator};
use stillrise_units::{Fault, nearest};

/// The method of a name; case, spaces and underscores do not matter.
#[must_use]
pub fn method(text: &str) -> Option<Regulator> {
    let plain = text.trim().to_lowercase().replace(['_', ' '], "-");
    Regulator::from_word(&plain)
}

impl Regulation {
    /// The methods that are asked for, each once, in the order in which they are known.
    #[must_use]
    pub fn asked(&self) -> Vec<Regulator> {
        let named: Vec<Regulator> = self.methods.iter().filter_map(|text| method(text)).collect();
        Regulator::ALL.iter().copied().filter(|known| named.contains(known)).collect()
    }
}

/// Whether an enquiry asks for a method.
#[must_use]
pub fn asks_for(e: &Enquiry, method: Regulator) -> bool {
    e.regulation.as_ref().is_some_and(|block| block.asked().contains(&method))
}

/// Names of methods that nobody knows.
pub(super) fn faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    let Some(block) = &e.regulation else { return };
    for (i, text) in block.methods.iter().enumerate().filter(|(_, text)| method(text).is_none()) {
        let names = || Regulator::ALL.iter().map(|known| known.word());
        let remedy = match nearest(text, names()) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => format!("use some of {}", names().collect::<Vec<_>>().join(", ")),
        };
        faults.push(Fault::new(
            format!("regulation: methods.{}", i + 1),
            format!("\"{text}\" is no method that is known"),
            remedy,
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn methods_are_read_as_people_write_them() {
        for text in ["washington", "Washington", " WASHINGTON "] {
            assert_eq!(method(text), Some(Regulator::Washington), "{text}");
        }
        assert_eq!(method("EN 858-2"), Some(Regulator::En858));
        assert_eq!(method("residence time"), Some(Regulator::ResidenceTime));
        assert_eq!(method("oregon"), None);
    }

    #[test]
    fn each_method_stands_once_in_the_order_of_the_list() {
        let block =
            Regulation { methods: ["tr-55", "ppg3", "TR-55"].map(str::to_owned).to_vec(), ..Regulation::default() };
        assert_eq!(block.asked(), [Regulator::Ppg3, Regulator::Tr55]);
    }
}
