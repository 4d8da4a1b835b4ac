//! Rule: class without type test

use crate::rule::{Subject, Verdict, rule};

rule! {
    "class-without-type-test" "Class asked for, no type test", Enquiry;
    client "The class that is asked for can only be shown by a test of the unit, and no test is known."
    looks "A class by EN 858-1 that is asked for, and whether a report of a type test is named: without one it warns."
    matters "A class is the result of a test of the full-scale unit with a set oil at its nominal size. No calculation gives it, and a unit that was not tested may not be called by it."
    remedy "The report of the type test of this unit, a unit that has one, or a limit on what leaves in place of the class."
    source "EN 858-1, 2002: classes I and II by a full-scale test, as quoted by other texts"
    limits "Whether the report that is named is of this unit, at this size, is not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(block) = &s.enquiry.european else { return Verdict::skips("no class is asked for") };
    let Some(class) = block.class.0 else { return Verdict::skips("no class is asked for") };
    match &block.type_test.0 {
        Some(report) => Verdict::passes(format!("class {}: the type test is {report}", class.word())),
        None => Verdict::warns(format!("class {} is asked for, and no report of a type test is named", class.word()), None),
    }
}
