//! The pictures, a short description each. A path that no longer exists fails a test.

use super::{Picture, Proof, Step, figures, outlines};

const fn step(path: &'static str, what: &'static str) -> Step {
    Step { path, what }
}

/// All of them, in the order of `CONTRIBUTING.md`.
pub static LIST: &[Picture] = &[
    Picture {
        id: "correct-a-formula",
        title: "Correct a formula",
        steps: &[
            step(
                "crates/handbook/src/separation/stokes_rise.rs",
                "One file a formula. Change the body inside formula! { .. }, and add the check value that shows the fault.",
            ),
            step("crates/handbook/src/sources/separation.rs", "A new source: one line, with how it was seen."),
            step("crates/handbook/check/terminal_velocity.csv", "Many values: a table, with its source in its head."),
            step("crates/handbook/src/separation/mod.rs", "A new page alone: listed here .."),
            step("crates/handbook/tests/names.txt", ".. and its id and arguments frozen here."),
        ],
        proof: Proof {
            command: "cargo nextest run -p stillrise-handbook --test pages --test check_tables",
            paths: &["crates/handbook/tests/pages.rs", "crates/handbook/tests/check_tables.rs"],
        },
        seen: &[
            "stillrise work, stillrise verify",
            "the manual: the formula's page",
            "trail and calculation report of every job that uses it",
            "a number that changes: CHANGELOG.md",
        ],
        figure: figures::formula,
    },
    Picture {
        id: "add-a-key",
        title: "Add a key",
        steps: &[
            step(
                "crates/design/src/enquiry/blocks/method.rs",
                "One line in its block: what it holds, units, bounds, the safe claim, an example, the question, what stands in.",
            ),
            step(
                "crates/design/src/stages/inlet_bend.rs",
                "A dimension of a stage: the same line, in the stage's file.",
            ),
            step(
                "crates/design/src/basis/storm.rs",
                "Taken where it is needed, by stated_or_usual(..); path and question are spelled nowhere else.",
            ),
        ],
        proof: Proof {
            command: "cargo xtask tree; cargo nextest run --workspace -E 'binary(answers)'",
            paths: &["crates/xtask/src/tree/keys.rs", "crates/search/tests/answers.rs"],
        },
        seen: &[
            "stillrise new --blank, stillrise schema",
            "inputs beside the sheet",
            "the question in the reply, where it is open",
            "the manual: keys of the files",
        ],
        figure: figures::key,
    },
    Picture {
        id: "teach-a-word",
        title: "Teach it a word of a mail",
        steps: &[
            step("crates/mail/src/words.rs", "What people call a thing."),
            step("crates/mail/src/cues.rs", "Which words beside a number point to which key."),
            step("crates/mail/src/counts.rs", "What is counted or spoken: \"two pumps\", \"one in five years\"."),
            step("crates/units/src/catalog.rs", "How a unit may be written."),
            step(
                "crates/mail/tests/mails",
                "A new invented mail, with its .expected by somebody who did not look at the lists.",
            ),
        ],
        proof: Proof {
            command: "cargo nextest run -p stillrise-mail --no-capture, which prints what is missed",
            paths: &["crates/mail/tests/corpus.rs"],
        },
        seen: &["stillrise read MAIL", "the mail beside the sheet: what it says is marked until a key has used it"],
        figure: figures::mail,
    },
    Picture {
        id: "add-an-oil",
        title: "Add an oil",
        steps: &[
            step(
                "crates/handbook/src/fluids/oils/sae_40.rs",
                "One file an oil: density, flash point, tension, dissolved, each a spread with its source; viscosity at two temperatures.",
            ),
            step("crates/handbook/src/fluids/oils/mod.rs", "Listed twice: as a module, and among its kind in OILS."),
            step("crates/handbook/src/sources/fluids.rs", "A new source: one line."),
            step("crates/handbook/check/oils.csv", "A record of the open data, with its line, if there is one."),
            step("crates/handbook/tests/check_tables.rs", "The record's count."),
        ],
        proof: Proof {
            command: "cargo nextest run -p stillrise-handbook -E 'test(oils) or binary(check_tables)'",
            paths: &["crates/handbook/src/fluids/oils/mod.rs", "crates/handbook/tests/check_tables.rs"],
        },
        seen: &[
            "an enquiry may name it; a mail that names it is understood",
            "the manual: the oil's page, with its curve",
            "density and viscosity in the trail of the job",
        ],
        figure: figures::oils,
    },
    Picture {
        id: "add-a-rule",
        title: "Add a rule",
        steps: &[
            step(
                "crates/checks/src/rules/gap_not_laminar.rs",
                "One file a rule, named for the fault. It holds numbers that were found against a bound, and calls no formula.",
            ),
            step("crates/checks/src/rules/mod.rs", "Listed."),
            step("crates/checks/src/ask.rs", "The question that would settle it, where it cannot judge."),
            step("crates/search/tests/rules.rs", "Its row: a job that passes, and the one key whose change trips it."),
            step("crates/search/tests/unknowns.rs", "A row for each key whose absence leaves it without a judgement."),
        ],
        proof: Proof {
            command: "cargo nextest run -p stillrise-search --test rules --test unknowns; then cargo xtask bless",
            paths: &["crates/search/tests/rules.rs", "crates/search/tests/unknowns.rs"],
        },
        seen: &[
            "a numbered balloon on the drawing and a note beside it",
            "verdicts of stillrise size, and of the report",
            "the manual: the rule's page",
        ],
        figure: figures::rule,
    },
    Picture {
        id: "add-a-document",
        title: "Add a document",
        steps: &[
            step(
                "crates/documents/src/papers/scope_split.rs",
                "One file a paper: what it is called, who gets it, when there is something to say, its blocks.",
            ),
            step("crates/documents/src/papers/mod.rs", "One line in the list."),
            step(
                "crates/documents/src/drawings/details.rs",
                "A drawing sheet instead: one file here, named in the mod.rs beside it.",
            ),
            step("crates/documents/src/exchange.rs", "What other programs read."),
        ],
        proof: Proof {
            command: "cargo nextest run --workspace -E 'binary(papers)'; then cargo xtask bless",
            paths: &["crates/documents/tests/papers.rs", "crates/documents/tests/drawings/set.rs"],
        },
        seen: &[
            "stillrise submittal: a file of the package, in the editions that it names",
            "the documents of the sheet",
            "the manual: documents of a package",
        ],
        figure: figures::papers,
    },
    Picture {
        id: "add-a-vessel-type",
        title: "Add a vessel type",
        steps: &[
            step(
                "crates/handbook/src/vessel/shapes/upright_cylinder.rs",
                "One file a type, with the trait Geometry: volume, surface, section, width, outline.",
            ),
            step("crates/handbook/src/vessel/shape.rs", "A word in Shape and KINDS."),
            step("crates/handbook/src/vessel/shapes/mod.rs", "A line."),
            step("crates/handbook/tests/shapes.rs", "Rows in shapes(), over which all identities are run."),
        ],
        proof: Proof {
            command: "cargo nextest run -p stillrise-handbook --test shapes",
            paths: &["crates/handbook/tests/shapes.rs"],
        },
        seen: &[
            "nothing yet: a body of a unit takes it (see Add an arrangement)",
            "then the outline in every drawing, and levels and volumes in the trail",
        ],
        figure: outlines::vessels,
    },
    Picture {
        id: "add-a-stage",
        title: "Add a stage",
        steps: &[
            step(
                "crates/design/src/stages/outlet_baffle.rs",
                "One file a stage: its keys, its dimensions, and the trait Stage: losses, caps, passes, walls, drawn parts.",
            ),
            step("crates/design/src/stages/list.rs", "A line, in the direction of flow."),
            step(
                "crates/design/src/stages/mod.rs",
                "Where stages are composed, and plain(); a word in Place for a compartment.",
            ),
            step("crates/design/src/arrangements/parts.rs", "A key that must be stated is named here .."),
            step("crates/design/src/train/assumed.rs", ".. one that may be left out gets its proportion here."),
            step("crates/search/tests/replay.rs", "A job with it; a test by hand beside it."),
        ],
        proof: Proof {
            command: "cargo nextest run --workspace -E 'binary(replay) or binary(drawings)'; look at the section",
            paths: &["crates/search/tests/replay.rs", "crates/documents/tests/drawings/set.rs"],
        },
        seen: &[
            "long section and drawing set",
            "hydraulics, prediction and list of parts",
            "keys of a row: the manual, the schema",
        ],
        figure: outlines::stages,
    },
    Picture {
        id: "add-an-arrangement",
        title: "Add an arrangement",
        steps: &[
            step(
                "crates/design/src/arrangements/plate_vault.rs",
                "One file: the form of its body, plates or none, in the ground or built into it.",
            ),
            step("crates/design/src/arrangements/mod.rs", "A word in Arrangement, and a line in own()."),
            step(
                "crates/design/src/vessel/upright_cylinder.rs",
                "A new body alone: its file, a Form, its word in every match of vessel/mod.rs.",
            ),
            step("crates/search/src/arrangement.rs", "Whether a search takes it unasked."),
            step("ranges/demo.toml", "Rows of the demo range."),
            step("crates/search/tests/data/vault.toml", "A base for its tests."),
        ],
        proof: Proof {
            command: "cargo nextest run --workspace -E 'binary(vault) or binary(replay)'; look at the section",
            paths: &["crates/search/tests/vault.rs", "crates/search/tests/replay.rs"],
        },
        seen: &[
            "unit.arrangement of an enquiry, and rows of a range",
            "sheet, section, model in space",
            "known limits in README.md",
        ],
        figure: outlines::arrangements,
    },
    Picture {
        id: "add-a-method",
        title: "Add an authority's method",
        steps: &[
            step(
                "crates/design/src/enquiry/blocks/regulation.rs",
                "A word in Regulator; keys that only the method needs.",
            ),
            step(
                "crates/design/src/regulation/about.rs",
                "Its title, sources, what it leaves out, how far the source was read.",
            ),
            step(
                "crates/design/src/regulation/shape.rs",
                "Its steps: pages of the handbook by by!, plain arithmetic by reckon!, under the source's own symbols.",
            ),
            step(
                "crates/design/src/regulation/own.rs",
                "A new kind of what is asked: how it is held against the units.",
            ),
            step("crates/design/src/regulation/tests.rs", "A published example goes through it."),
        ],
        proof: Proof {
            command: "cargo nextest run --workspace -E 'package(stillrise-design) and test(regulation)'",
            paths: &["crates/design/src/regulation/tests.rs", "crates/documents/tests/regulation.rs"],
        },
        seen: &[
            "regulation.methods of an enquiry",
            "worksheet on the terminal, the sheet and in the report",
            "a rule that holds the unit against it",
        ],
        figure: figures::method,
    },
    Picture {
        id: "add-a-cause",
        title: "Add a cause of trouble",
        steps: &[
            step(
                "crates/search/src/diagnosis/causes/blocked_plates.rs",
                "One file a cause: its size with its range, what it does to a Situation, signs, test, remedy.",
            ),
            step("crates/search/src/diagnosis/causes/mod.rs", "Listed, with its word."),
            step(
                "crates/search/tests/causes.rs",
                "Nothing to write: each cause is put into a sound unit, and must be found again.",
            ),
        ],
        proof: Proof {
            command: "cargo nextest run --workspace -E 'binary(causes)'",
            paths: &["crates/search/tests/causes.rs"],
        },
        seen: &[
            "stillrise rate: what explains that a unit falls short",
            "the table of troubles in the maintenance manual",
            "the manual: causes of trouble",
        ],
        figure: figures::causes,
    },
    Picture {
        id: "add-a-measured-result",
        title: "Add a measured result",
        steps: &[
            step(
                "validation/baffled-trays/README.md",
                "One folder a case: what was measured and predicted, what was chosen after the data were seen, where we miss and why.",
            ),
            step(
                "validation/baffled-trays/case.toml",
                "Its kind, and the arguments as [[row]] or, through several formulas, as [[table]].",
            ),
            step("docs/validation.md", "Written by the command below, never by hand."),
        ],
        proof: Proof {
            command: "cargo xtask bless validation; cargo xtask test accepted",
            paths: &["crates/xtask/src/validation/mod.rs"],
        },
        seen: &["docs/validation.md, which README leads to"],
        figure: figures::measured,
    },
];
