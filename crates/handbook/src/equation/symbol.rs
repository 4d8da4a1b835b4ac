//! Symbols: `rho_w` on a page becomes ρ with a subscript in print.

use super::mathml::{escaped, raised};

/// Greek letters that appear as such; anything longer than one letter otherwise is text.
const GREEK: &[(&str, &str)] = &[
    ("alpha", "α"),
    ("beta", "β"),
    ("gamma", "γ"),
    ("delta", "δ"),
    ("Delta", "Δ"),
    ("epsilon", "ε"),
    ("zeta", "ζ"),
    ("eta", "η"),
    ("theta", "θ"),
    ("kappa", "κ"),
    ("lambda", "λ"),
    ("mu", "µ"),
    ("nu", "ν"),
    ("xi", "ξ"),
    ("pi", "π"),
    ("rho", "ρ"),
    ("sigma", "σ"),
    ("tau", "τ"),
    ("phi", "φ"),
    ("Phi", "Φ"),
    ("psi", "ψ"),
    ("omega", "ω"),
    ("Sigma", "Σ"),
];

/// The symbol for typst's mathematics.
#[must_use]
pub fn typst_symbol(math: &str) -> String {
    let mut parts = math.split('_');
    let base = parts.next().unwrap_or("");
    let mut out = if GREEK.iter().any(|(name, _)| *name == base) || base.chars().count() == 1 {
        base.to_owned()
    } else {
        format!("\"{base}\"")
    };
    let below: Vec<_> = parts.collect();
    if !below.is_empty() {
        out.push_str(&format!("_\"{}\"", below.join(",")));
    }
    out
}

/// The symbol in plain text.
#[must_use]
pub fn plain_symbol(math: &str) -> String {
    let (base, below) = math.split_once('_').unwrap_or((math, ""));
    let base = GREEK.iter().find(|(name, _)| *name == base).map_or(base, |(_, letter)| letter);
    if below.is_empty() { base.to_owned() } else { format!("{base}_{below}") }
}

/// The symbol in MathML: letters upright or slanted as its elements have it, what stands below it upright.
///
/// One that is itself a small expression, `Q - Q_out`, is one `<mrow>`.
#[must_use]
pub fn mathml_symbol(math: &str) -> String {
    let (mut pieces, mut rest, mut operand): (Vec<String>, &str, bool) = (Vec::new(), math.trim(), false);
    while let Some(first) = rest.chars().next() {
        let end = rest.find(|c: char| !(c.is_alphanumeric() || c == '_' || c == '.') || c == '²' || c == 'Σ');
        let (piece, behind) = rest.split_at(end.filter(|end| *end > 0).unwrap_or(match end {
            Some(_) => first.len_utf8(),
            None => rest.len(),
        }));
        rest = behind.trim_start();
        let is_operand = end != Some(0);
        if operand && is_operand {
            pieces.push("<mspace width=\"0.1667em\"/>".to_owned());
        }
        match (first, pieces.pop_if(|_| first == '²')) {
            ('²', Some(base)) => pieces.push(raised(&base, "<mn>2</mn>")),
            ('Σ', _) => pieces.push("<mo>∑</mo>".to_owned()),
            ('-', _) => pieces.push("<mo>−</mo>".to_owned()),
            _ if !is_operand => pieces.push(format!("<mo>{}</mo>", escaped(piece))),
            _ if first.is_ascii_digit() => pieces.push(format!("<mn>{piece}</mn>")),
            _ => pieces.push(letter(piece)),
        }
        operand = is_operand || first == '²';
    }
    match pieces.as_slice() {
        [one] => one.clone(),
        _ => format!("<mrow>{}</mrow>", pieces.concat()),
    }
}

/// A letter or word with what stands below it.
fn letter(math: &str) -> String {
    let (base, below) = math.split_once('_').unwrap_or((math, ""));
    let base = GREEK.iter().find(|(name, _)| *name == base).map_or(base, |(_, letter)| letter);
    // The Greek letter, which browsers slant, and not the sign of the prefix micro.
    let base = format!("<mi>{}</mi>", base.replace('µ', "μ"));
    if below.is_empty() {
        return base;
    }
    let element = if below.bytes().all(|b| b.is_ascii_digit()) { "mn" } else { "mtext" };
    format!("<msub>{base}<{element}>{}</{element}></msub>", below.replace('_', ","))
}
