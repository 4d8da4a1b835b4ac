//! Rule: shell thinner than codes print

use crate::ask::{Ask, METAL, THICKNESS};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::arrangements::Form;
use stillrise_design::performance::shell::metal;
use stillrise_design::performance::shop::plate;
use stillrise_units::Typed;
use stillrise_units::catalog::{GAL, IN, M3, MM};

rule! {
    "shell-thinner-than-codes" "Shell thinner than codes print", Unit;
    client "The shell is thinner than published codes for buried tanks ask for."
    looks "Of a lying cylinder in the ground: the thickness of its shell against the thinnest that four city codes of the United States print for a buried steel tank of its capacity. Thinner warns. Where thickness or metal is not known it cannot judge; above the largest capacity that they print it does not apply."
    matters "The tables are for buried tanks of oil; an authority or an insurer may hold a separator to them, and they leave something for rust."
    remedy "A thicker shell, or the authority's word that another standard holds."
    source "Chicago, Floral Park, Rye and New York codes on underground tanks, as the handbook gives them"
    limits "The codes contradict one another, and hold where they are law; what presses from outside is a rule of its own."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    let unit = &train.unit;
    if !unit.arrangement.is_in_ground() || unit.arrangement.form() != Form::Lying || s.enquiry.unit_stands() {
        return Verdict::skips("it is no cylinder made to lie in the ground, or stands already");
    }
    if plate::thickness(unit).is_none() {
        return Verdict::cannot_judge(
            "the thickness of the shell is not stated",
            [Ask::unit(s, "wall", THICKNESS)],
            None,
        );
    }
    if metal(unit).is_none() {
        return Verdict::cannot_judge(
            "it is not known to be of a steel that stands in our table",
            [Ask::unit(s, "material", METAL)],
            None,
        );
    }
    let Some(shell) = performance.shop.as_ref().and_then(|shop| shop.cylinder.as_ref()) else { return s.stopped() };
    let capacity = s.show(shell.capacity.q, (&GAL, &M3));
    let Some([light, heavy]) = &shell.printed else {
        return Verdict::skips(format!("no code of the table prints a shell for {capacity}"));
    };
    let thick = |q| s.show(q, (&IN, &MM));
    let says = format!(
        "a shell of {} for {capacity}; the codes print {} ({}) to {} ({})",
        thick(shell.thickness.q),
        thick(light.thickness.q),
        light.code.word,
        thick(heavy.thickness.q),
        heavy.code.word
    );
    if shell.thickness.q.si() < light.thickness.q.si() - 1e-6 {
        Verdict::warns(says, shell.thickness.at)
    } else {
        Verdict::passes(says)
    }
}
