//! Equations in MathML: well formed, of elements of MathML Core, and token by token what the plain form says.

#![allow(clippy::panic, reason = "a test fails by panicking")]

use stillrise_handbook::equation::{Style, mathml_symbol, page_math, parse, plain_symbol, printed, render, stated};
use stillrise_handbook::page::{Arg, Page};
use stillrise_handbook::{page, pages, read};

/// Elements of MathML Core with the number of their children, where it is fixed.
const CORE: &[(&str, Option<usize>)] = &[
    ("math", None),
    ("mrow", None),
    ("mi", None),
    ("mn", None),
    ("mo", None),
    ("mtext", None),
    ("mspace", Some(0)),
    ("mfrac", Some(2)),
    ("msqrt", None),
    ("msub", Some(2)),
    ("msup", Some(2)),
    ("msubsup", Some(3)),
    ("mtable", None),
    ("mtr", None),
    ("mtd", None),
];

/// One element, read back.
#[derive(Debug, Default)]
struct Element {
    name: String,
    attributes: Vec<(String, String)>,
    children: Vec<Element>,
    text: String,
}

/// Reads one element and the rest behind it. Elements hold elements or text, not both.
fn element(text: &str) -> Result<(Element, &str), String> {
    let rest = text.strip_prefix('<').ok_or_else(|| format!("no element at {text:.40}"))?;
    let (tag, mut rest) = rest.split_once('>').ok_or("a tag is not closed")?;
    let (tag, empty) = tag.strip_suffix('/').map_or((tag, false), |tag| (tag, true));
    let (name, mut inside) = tag.split_once(' ').unwrap_or((tag, ""));
    let mut found = Element { name: name.to_owned(), ..Element::default() };
    while !inside.trim().is_empty() {
        let (key, value) = inside.trim().split_once("=\"").ok_or("an attribute without its quotes")?;
        let (value, behind) = value.split_once('"').ok_or("a quote is not closed")?;
        found.attributes.push((key.to_owned(), unescaped(value)?));
        inside = behind;
    }
    if empty {
        return Ok((found, rest));
    }
    let end = format!("</{name}>");
    loop {
        if let Some(behind) = rest.strip_prefix(&end) {
            return Ok((found, behind));
        }
        if rest.starts_with('<') {
            let (child, behind) = element(rest)?;
            found.children.push(child);
            rest = behind;
        } else {
            let at = rest.find('<').ok_or_else(|| format!("{name} is not closed"))?;
            found.text.push_str(&unescaped(&rest[..at])?);
            rest = &rest[at..];
        }
    }
}

fn unescaped(text: &str) -> Result<String, String> {
    let mut out = text.to_owned();
    if out.contains(['<', '>', '"']) {
        return Err(format!("{text} is not escaped"));
    }
    for (name, letter) in [("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\"")] {
        out = out.replace(name, letter);
    }
    if out.replace("&amp;", "").contains('&') {
        Err(format!("{text} is not escaped"))
    } else {
        Ok(out.replace("&amp;", "&"))
    }
}

/// The whole text as one element of MathML Core.
fn read_back(text: &str) -> Element {
    let (found, rest) = element(text).unwrap_or_else(|fault| panic!("{fault}: {text}"));
    assert!(rest.is_empty(), "{rest} stands behind {text}");
    check(&found, text);
    found
}

fn check(e: &Element, whole: &str) {
    let Some((_, count)) = CORE.iter().find(|(name, _)| *name == e.name) else { panic!("{} in {whole}", e.name) };
    assert!(count.is_none_or(|count| count == e.children.len()), "{} of {} in {whole}", e.name, e.children.len());
    let token = matches!(e.name.as_str(), "mi" | "mn" | "mo" | "mtext");
    assert!(token != e.text.is_empty() && (!token || e.children.is_empty()), "{} in {whole}", e.name);
    let inner = match e.name.as_str() {
        "mtable" => Some("mtr"),
        "mtr" => Some("mtd"),
        _ => None,
    };
    for child in &e.children {
        assert!(inner.is_none_or(|inner| inner == child.name), "{} in {} of {whole}", child.name, e.name);
        check(child, whole);
    }
}

/// Identifiers, numbers and operators in reading order, without brackets and what stands for them.
fn flat(e: &Element, out: &mut Vec<String>) {
    let joined = |e: &Element| {
        let parts: Vec<String> = e.children.iter().take(2).map(|c| c.text.replace(',', "")).collect();
        parts.concat()
    };
    match e.name.as_str() {
        "mfrac" | "msup" => {
            flat(&e.children[0], out);
            out.push(if e.name == "mfrac" { "/" } else { "^" }.to_owned());
            flat(&e.children[1], out);
        }
        "msub" => out.push(joined(e)),
        "msubsup" => {
            out.push(joined(e));
            out.push("^".to_owned());
            flat(&e.children[2], out);
        }
        "msqrt" => {
            out.push("√".to_owned());
            e.children.iter().for_each(|c| flat(c, out));
        }
        "mi" if e.text == "exp" || e.text == "e" && !e.attributes.is_empty() => out.push("exp".to_owned()),
        "mi" | "mo" => match e.text.as_str() {
            "\u{2061}" | "(" | ")" | "|" | "{" | "⌉" | "⌋" => {}
            "\u{2062}" | "⋅" => out.push("·".to_owned()),
            "−" => out.push("-".to_owned()),
            "∑" => out.push("Σ".to_owned()),
            "⌈" => out.push("ceil".to_owned()),
            "⌊" => out.push("floor".to_owned()),
            text => out.push(text.to_owned()),
        },
        "mn" | "mtext" => out.extend(tokens(&e.text)),
        _ => e.children.iter().for_each(|c| flat(c, out)),
    }
}

fn of_markup(text: &str) -> Vec<String> {
    let mut out = Vec::new();
    flat(&read_back(text), &mut out);
    // What e is raised to is written as a power, what stands in a bracket behind exp is not.
    let mut at = 0;
    while at + 1 < out.len() {
        if out[at] == "exp" && out[at + 1] == "^" {
            out.remove(at + 1);
        }
        at += 1;
    }
    out.retain(|t| t != "otherwise");
    out
}

/// The same of the plain form.
fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let mut out: Vec<String> = Vec::new();
    let mut i = 0;
    while i < chars.len() {
        let start = i;
        if chars[i].is_ascii_digit() {
            while i < chars.len() && (chars[i].is_ascii_digit() || chars[i] == '.') {
                i += 1;
            }
            out.push(chars[start..i].iter().collect());
            let power = chars.get(i) == Some(&'e');
            if power {
                out.extend(["×", "10", "^"].map(str::to_owned));
                i += 1;
            }
        } else if chars[i].is_alphabetic() && chars[i] != 'Σ' {
            while i < chars.len() && (chars[i].is_alphanumeric() || chars[i] == '_') && chars[i] != '²' {
                i += 1;
            }
            let word: String = chars[start..i].iter().filter(|c| **c != '_').collect();
            // The Greek letter in MathML, the sign of the prefix micro in plain text.
            let word = word.replace('µ', "μ");
            if word != "else" && word != "otherwise" {
                out.push(word);
            }
        } else if chars[i] == '²' {
            out.extend(["^", "2"].map(str::to_owned));
            i += 1;
        } else if chars[i] == 'Σ' {
            out.push("Σ".to_owned());
            i += 1;
        } else if chars[i..].starts_with(&['⁻', '¹']) {
            out.extend(["^", "-", "1"].map(str::to_owned));
            i += 2;
        } else {
            if !" \u{a0}()[]|;".contains(chars[i]) {
                out.push(chars[i].to_string());
            }
            i += 1;
        }
    }
    out
}

fn cases(page: &'static Page) -> Vec<Vec<Arg>> {
    page.checks.iter().filter_map(|c| read::arguments(page, &read::split(c.given)).ok()).collect()
}

#[test]
fn every_page_says_in_mathml_what_it_says_in_plain_text() {
    let mut compared = 0;
    for page in pages() {
        let (plain, math) = (stated(page, Style::Plain), stated(page, Style::MathMl));
        assert!(!plain.is_empty() && plain.len() == math.len(), "{}", page.id);
        for (p, m) in plain.iter().zip(&math) {
            assert_eq!(of_markup(&m.symbol), tokens(&p.symbol), "{}: {}", page.id, p.symbol);
            assert_eq!(of_markup(&m.equation), tokens(&p.equation), "{}: {}", page.id, p.equation);
        }
        for args in cases(page) {
            let Ok(result) = (page.call)(&args) else { continue };
            let plain = printed(page, &args, &result, Style::Plain);
            let math = printed(page, &args, &result, Style::MathMl);
            assert_eq!(plain.len(), math.len(), "{}", page.id);
            for (p, m) in plain.iter().zip(&math).filter(|(p, _)| !p.numbers.is_empty()) {
                assert_eq!(of_markup(&m.numbers), tokens(&p.numbers), "{}: {}", page.id, p.numbers);
                compared += 1;
            }
        }
    }
    assert!(compared > 500, "{compared} lines with numbers");
}

#[test]
fn a_page_is_one_paragraph_of_mathematics_with_its_plain_form_beside_it() {
    for page in pages() {
        let text = page_math(page);
        let math = read_back(&text);
        assert_eq!(math.name, "math", "{}", page.id);
        let attribute = |name: &str| math.attributes.iter().find(|(key, _)| key == name).map(|(_, v)| v.as_str());
        assert_eq!(attribute("display"), Some("block"), "{}", page.id);
        let lines: Vec<String> =
            stated(page, Style::Plain).iter().map(|l| format!("{} = {}", l.symbol, l.equation)).collect();
        assert_eq!(attribute("alttext"), Some(lines.join("; ").as_str()), "{}", page.id);
        // Every symbol of an argument that the plain form shows is shown here too.
        let (said, shown) = (tokens(&lines.join("; ")), of_markup(&text));
        for symbol in page.args.iter().flat_map(|a| a.math.split('|')) {
            let symbol = tokens(&plain_symbol(symbol));
            let stands = |tokens: &[String]| tokens.windows(symbol.len()).any(|run| run == symbol);
            assert_eq!(stands(&said), stands(&shown), "{}: {symbol:?}", page.id);
        }
    }
}

/// By hand, against the rules of MathML Core.
#[test]
fn brackets_stand_where_they_are_needed_only() {
    let shown = |text: &str| {
        let tree = parse(text).unwrap_or_else(|fault| panic!("{text}: {fault}"));
        let same = |name: &str| mathml_symbol(name);
        // Invisible signs by a letter, so that the text can be read here.
        let markup = render(&tree, Style::MathMl, &same, &same);
        markup.replace("<mo rspace=\"0.1667em\">\u{2062}</mo>", "_").replace("<mo>\u{2061}</mo>", "@")
    };
    assert_eq!(shown("(a + b) / c"), "<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mi>c</mi></mfrac>");
    assert_eq!(
        shown("a * (b - c)"),
        "<mrow><mi>a</mi><mo>⋅</mo><mrow><mo>(</mo><mrow><mi>b</mi><mo>−</mo><mi>c</mi></mrow><mo>)</mo></mrow></mrow>"
    );
    assert_eq!(shown("2.0 * a"), "<mrow><mn>2</mn>_<mi>a</mi></mrow>");
    assert_eq!(shown("a * 2.0"), "<mrow><mi>a</mi><mo>⋅</mo><mn>2</mn></mrow>");
    assert_eq!(shown("pow(rho_w, 2.0)"), "<msubsup><mi>ρ</mi><mtext>w</mtext><mn>2</mn></msubsup>");
    assert_eq!(shown("pow(d_50, 0.5)"), "<msubsup><mi>d</mi><mn>50</mn><mn>0.5</mn></msubsup>");
    assert_eq!(
        shown("pow(a * b, 2.0)"),
        "<msup><mrow><mo>(</mo><mrow><mi>a</mi>_<mi>b</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>"
    );
    assert_eq!(
        shown("1.2e-7 * a"),
        "<mrow><mrow><mn>1.2</mn><mo>×</mo><msup><mn>10</mn><mrow><mo>−</mo><mn>7</mn></mrow></msup></mrow>_<mi>a</mi></mrow>"
    );
    assert_eq!(
        shown("a - -b"),
        "<mrow><mi>a</mi><mo>−</mo><mrow><mo>(</mo><mrow><mo>−</mo><mi>b</mi></mrow><mo>)</mo></mrow></mrow>"
    );
    assert_eq!(shown("exp(-k)"), "<msup><mi mathvariant=\"normal\">e</mi><mrow><mo>−</mo><mi>k</mi></mrow></msup>");
    assert_eq!(
        shown("exp(a / b)"),
        "<mrow><mi>exp</mi>@<mrow><mo>(</mo><mfrac><mi>a</mi><mi>b</mi></mfrac><mo>)</mo></mrow></mrow>"
    );
    assert_eq!(shown("sqrt(a + b)"), "<msqrt><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow></msqrt>");
    assert_eq!(
        shown("if a <= 1.0 { b } else { c }"),
        "<mrow><mo>{</mo><mtable class=\"cases\"><mtr><mtd><mi>b</mi></mtd><mtd><mtext>if\u{a0}</mtext>\
         <mrow><mi>a</mi><mo>≤</mo><mn>1</mn></mrow></mtd></mtr><mtr><mtd><mi>c</mi></mtd><mtd>\
         <mtext>otherwise</mtext></mtd></mtr></mtable></mrow>"
    );
}

/// Symbols that are small expressions, and what could close an element or a quote.
#[test]
fn symbols_are_read_and_escaped() {
    assert_eq!(
        mathml_symbol("Q - Q_out"),
        "<mrow><mi>Q</mi><mo>−</mo><msub><mi>Q</mi><mtext>out</mtext></msub></mrow>"
    );
    assert_eq!(mathml_symbol("Σ z²"), "<mrow><mo>∑</mo><msup><mi>z</mi><mn>2</mn></msup></mrow>");
    assert_eq!(mathml_symbol("14.534"), "<mn>14.534</mn>");
    assert_eq!(mathml_symbol("mu_w"), "<msub><mi>μ</mi><mtext>w</mtext></msub>");
    assert_eq!(mathml_symbol("<b>&"), "<mrow><mo>&lt;</mo><mi>b</mi><mo>&gt;</mo><mo>&amp;</mo></mrow>");
    let rise = page("stokes-rise").map(page_math).unwrap_or_default();
    assert!(rise.contains("alttext=\"v = g·(ρ_w - ρ_o)·d·d/(18·µ)\""), "{rise}");
}
