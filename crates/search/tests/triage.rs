//! What the triage says of products, through the real chain.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use stillrise_design::triage::Weight;

/// Foam that is said to go into no water that comes condemns none; one of which that is not said does.
#[test]
fn a_product_that_goes_into_no_water_is_noted_alone() {
    let weight = |into: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"Ground\"\nprint = \"si\"\n[[stream]]\nname = \"exercise\"\nflow = \"20 m3/h\"\n[[chemical]]\n\
             product = \"old foam\"\nkind = \"foam-agent\"\n{into}[inlet]\nfeed = \"gravity\"\n"
        );
        let settled = Sheet::text("ground", &text).settle(&demo());
        let line = settled.job.design.triage.iter().find(|l| l.subject == "old foam").expect("a line").clone();
        (line.weight, line.says.contains("into none of the waters"))
    };
    assert_eq!(weight("stream = [\"none\"]\n"), (Weight::Note, true));
    assert_eq!(weight(""), (Weight::Blocks, false));
}
