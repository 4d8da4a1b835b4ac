//! What a look at the water and a jar of it say, oil that rises in warm water alone, two words for an oil, and waters that no
//! limit is held against.

use super::{Outcome, flat, mail, settled};
use stillrise_documents::summary::summary;
use stillrise_units::Typed;
use stillrise_units::catalog::MG_L;

/// Condensate of a plant that does not exist.
const CONDENSATE: &str = r#"
[enquiry]
title = "Condensate"
print = "si"
[[stream]]
name = "condensate"
flow = "4 m3/h"
hours_per_day = 10
oil = { kind = "engine-oil", mean = "80 mg/L" }
[[limit]]
pollutant = "oil and grease"
value = "30 mg/L"
statistic = "daily maximum"
authority = "the permit"
method = "hexane extraction"
"#;

/// Emulsified oil of the first case, mg/L.
fn emulsified(text: &str) -> Result<f64, Box<dyn std::error::Error>> {
    let settled = settled(text)?;
    let basis = settled.job.design.basis.as_ref().ok_or("no basis")?;
    let content = basis.cases.first().and_then(|case| case.content.as_ref()).ok_or("no content")?;
    Ok(MG_L.from_si(content.emulsified.q.si()))
}

#[test]
fn a_look_and_a_jar_say_how_much_is_emulsified() -> Outcome {
    // Of 80 mg/L: 5 % where nobody said what goes into it, 40 % milky, 3 % where a jar clears within an hour.
    let with = |said: &str| CONDENSATE.replace("mean = \"80 mg/L\"", &format!("mean = \"80 mg/L\", {said}"));
    for (said, wanted) in [
        ("dissolved = \"0 mg/L\"", 4.0),
        ("looks = \"milky\"", 32.0),
        ("looks = \"milky\", jar = \"clears within an hour\"", 2.4),
        ("jar = \"stays\"", 56.0),
        ("looks = \"milky\", emulsified = \"10 %\"", 8.0),
    ] {
        let found = emulsified(&with(said))?;
        assert!((found - wanted).abs() < 1e-9, "{said}: {found}");
    }
    let text = mail(&with("looks = \"milky\""))?;
    assert!(text.contains("What share of the oil in the condensate water is emulsified"), "{text}");
    Ok(())
}

#[test]
fn heavy_oil_is_weighed_in_the_water_that_carries_it() -> Outcome {
    let heavy = CONDENSATE.replace("engine-oil", "heavy-fuel-oil");
    let blocked = flat(&summary(&settled(&heavy)?, 200));
    assert!(blocked.contains("it does not rise, or hardly"), "{blocked}");
    let warm = heavy.replace("hours_per_day = 10", "hours_per_day = 10\ntemperature = \"60 °C\"");
    let warm = flat(&summary(&settled(&warm)?, 200));
    assert!(warm.contains("at 60 °C, as one water arrives, it is lighter"), "{warm}");
    let stays = heavy.replace("hours_per_day = 10", "hours_per_day = 24\ntemperature = \"60 °C\"\ncoldest = \"60 °C\"");
    let stays = settled(&stays)?;
    let said = flat(&summary(&stays, 200));
    assert!(said.contains("in water that stays as warm as 60 °C, as is said of one, it rises"), "{said}");
    assert!(stays.job.design.performance.is_some());
    Ok(())
}

#[test]
fn an_oil_of_another_word_is_asked_about() -> Outcome {
    let two = format!("{CONDENSATE}[[oil]]\nkind = \"diesel\"\n");
    let text = mail(&two)?;
    assert!(
        text.contains("told as what comes, ") && text.contains("if they are the same, tell us which it is"),
        "{text}"
    );
    let one = format!("{CONDENSATE}[[oil]]\nkind = \"engine-oil\"\n");
    let text = mail(&one)?;
    assert!(!text.contains("if they are the same"), "{text}");
    Ok(())
}

#[test]
fn a_small_water_that_no_limit_is_held_against_is_told() -> Outcome {
    // 0.5 h of 2 m3/h beside 40 m3 a day: 1 of 41 m3, 2.44 %.
    let small = "[[stream]]\nname = \"vat rinse\"\nflow = \"2 m3/h\"\nhours_per_day = 0.5\noil = { kind = \"engine-oil\", mean = \"900 mg/L\", emulsified = \"50 %\" }\n";
    let text = mail(&format!("{CONDENSATE}{small}"))?;
    assert!(
        text.contains("vat rinse: brings 2.44 % of the water of a day and mixes in the unit with the rest, so that no limit is held against it alone; were it to last, "),
        "{text}"
    );
    Ok(())
}
