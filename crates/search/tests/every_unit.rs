//! Every unit of the range side by side: the line of the one taken is the job itself, and each other line is the job that names it.

use stillrise_checks::Judged;
use stillrise_design::enquiry::range::read_range;
use stillrise_design::enquiry::read_enquiry;
use stillrise_design::job::Design;
use stillrise_search::offered::Offered;
use stillrise_search::settle;
use stillrise_search::sizes::every;

/// Words on limits, and the grade and words of each rule.
fn says(design: &Design, verdicts: &[Judged]) -> (Vec<&'static str>, Vec<(&'static str, String)>) {
    let limits = design.performance.iter().flat_map(|p| &p.limits);
    (limits.map(|v| v.says()).collect(), verdicts.iter().map(|j| (j.rule.id, format!("{:?}", j.verdict))).collect())
}

#[test]
fn each_line_is_the_job_that_names_it() {
    let demo = read_range(include_str!("../../../ranges/demo.toml")).file;
    let enquiry =
        read_enquiry(include_str!("../../../enquiries/market-wash/enquiry.toml"), &|_| None).unwrap_or_default();
    let settled = settle(&enquiry, &demo);
    let all = every(&settled, &demo);
    assert_eq!(all.len(), demo.models.len(), "every row has its line");
    let taken: Vec<_> = all.iter().filter(|entrant| entrant.taken).collect();
    assert_eq!(taken.len(), 1, "one is taken");
    assert_eq!(says(&taken[0].job.design, &taken[0].verdicts), says(&settled.job.design, &settled.verdicts));
    assert_eq!(taken[0].barred().count(), 0, "what was taken without a condition is barred by nothing");
    let (mut barred, mut free) = (0, 0);
    for entrant in &all {
        let mut named = enquiry.clone();
        let Offered::Row { model, count, .. } = &entrant.unit else { panic!("{} is no row", entrant.unit.name()) };
        (named.unit.model.0, named.unit.count.0) = (Some(model.clone()), Some(*count));
        let alone = settle(&named, &demo);
        let (words, rules) = says(&entrant.job.design, &entrant.verdicts);
        let (own_words, own_rules) = says(&alone.job.design, &alone.verdicts);
        assert_eq!(words, own_words, "{}", entrant.unit.name());
        for (rule, own) in rules.iter().zip(&own_rules) {
            assert_eq!(rule, own, "{}", entrant.unit.name());
        }
        if entrant.barred().next().is_some() { barred += 1 } else { free += 1 }
    }
    assert!(barred > 0 && free > 0, "{barred} barred, {free} free");
}

#[test]
fn without_a_basis_there_is_no_line() {
    let demo = read_range(include_str!("../../../ranges/demo.toml")).file;
    let enquiry = read_enquiry("[enquiry]\ntitle = \"t\"\n", &|_| None).unwrap_or_default();
    let settled = settle(&enquiry, &demo);
    assert_eq!(settled.job.design.basis.is_none(), every(&settled, &demo).is_empty());
}
