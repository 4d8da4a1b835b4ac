//! Symbols: `rho_w` on a page becomes ρ with a subscript in print.

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
