//! Invented answers to our questions: quoted, numbered, free, in US and SI units, with decimal commas. Who wrote them and all in
//! them is invented; what is expected of each was written down from the mail by hand.

#![allow(
    clippy::panic,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a test fails by panicking, and tells its recall"
)]

use stillrise_mail::answers::{Answer, Asked, answers, unnamed};
use stillrise_mail::{Mail, read_mail};
use stillrise_units::parse::Reading;

/// The questions of our mail.
fn asked() -> Vec<Asked> {
    let all: [(&str, &str); 8] = [
        ("water.coldest", "How cold does the water get that comes to the separator, in winter? We took 46 °F."),
        ("inlet.together", "Can the pumps run at the same time, or is one a standby? We took yes."),
        ("outlet.tailwater", "At what elevation does the water stand at the outfall, at its highest?"),
        (
            "stream \"hall wash\".solids",
            "How much suspended solids does the hall wash water carry (silt, grit, metal fines)? We took 300 mg/L.",
        ),
        ("inlet.pump", "Which pump lifts the water to the separator? We took a centrifugal pump."),
        ("outlet.to", "Where does the water go behind the separator: storm drain, water body or sanitary sewer?"),
        ("outlet.rain_allowed", "Does the owner of the sewer allow rain water in it?"),
        (
            "",
            "May we have the safety data sheet of \"floor soap\", and how much of it is used? It decides whether the oil still rises.",
        ),
    ];
    let one = |(k, (key, text)): (usize, (&str, &str))| Asked {
        number: k + 1,
        text: text.to_owned(),
        keys: if key.is_empty() { Vec::new() } else { vec![key.to_owned()] },
    };
    all.into_iter().enumerate().map(one).collect()
}

/// A mail, and what it answers: the number of the question, and the value or none.
struct Case {
    name: &'static str,
    mail: &'static str,
    wants: &'static [(usize, Option<&'static str>)],
}

static CASES: [Case; 10] = [
    Case {
        name: "quoted, folded anew, answers under the questions",
        mail: "Dear desk,\n\nplease see below.\n\nOn 3 March you wrote:\n> Please answer; the first decide the job:\n> 1. How cold does the water get that comes to the\n> separator, in winter? We took 46 °F.\nabout 8 °C in winter\n\n> 2. Can the pumps run at the same time, or is one a standby? We took yes.\nNo, an interlock prevents it.\n\n> 3. At what elevation does the water stand at the outfall, at its\n>    highest?\n\n12.35 m above datum\n> We based this on:\n> - rain of 30 mm/h\n\nBest regards\nA. Invented\nTel. 555 0100\n",
        wants: &[(1, Some("8 °C")), (2, Some("no")), (3, Some("12.35 m"))],
    },
    Case {
        name: "by numbers in one line",
        mail: "Hello,\n\n1) 8 °C 2) no 3) see drawing 4) 250 mg/L\n\nRegards, B.\n",
        wants: &[(1, Some("8 °C")), (2, Some("no")), (3, None), (4, Some("250 mg/L"))],
    },
    Case {
        name: "by numbers, line by line, US units, with a signature",
        mail: "Thanks for the quick reply. Answers:\n\n1. 41 F\n2. Yes, both run in a storm\n3. 97.6 ft\n5. It is a progressive cavity pump\n6. Sanitary sewer\n7. n/a\n\nSincerely,\nC. Sample\nPlant engineer, 2. floor\n",
        wants: &[
            (1, Some("41 F")),
            (2, Some("yes")),
            (3, Some("97.6 ft")),
            (5, Some("progressive-cavity")),
            (6, Some("sanitary sewer")),
            (7, None),
        ],
    },
    Case {
        name: "decimal comma, German words between",
        mail: "Guten Tag,\n\n> 1. How cold does the water get that comes to the separator, in winter?\n6,5 °C\n> 3. At what elevation does the water stand at the outfall, at its highest?\n101,25 m\n> 4. How much suspended solids does the hall wash water carry (silt, grit, metal fines)?\nunbekannt\n> 7. Does the owner of the sewer allow rain water in it?\nnein\n\nMit freundlichen Grüßen\nD. Beispiel\n",
        wants: &[(1, Some("6,5 °C")), (3, Some("101,25 m")), (4, None), (7, Some("no"))],
    },
    Case {
        name: "free sentences",
        mail: "Hi,\n\nIn winter the water gets down to 4 °C. Suspended solids in the hall wash are about 180 mg/L by our last sample. The pumps cannot run at the same time. The separator drains to the sanitary sewer.\n\nCheers\nE.\n",
        wants: &[(1, Some("4 °C")), (2, Some("no")), (4, Some("180 mg/L")), (6, Some("sanitary sewer"))],
    },
    Case {
        name: "top-posted by numbers above the quoted mail",
        mail: "Re 1: 50 F\nRe 2: not known, we will check\nRe 6: storm drain\n\nF. Example\n\nOn Tuesday you wrote:\n> Please answer:\n> 1. How cold does the water get that comes to the separator, in winter? We took 46 °F.\n> 2. Can the pumps run at the same time, or is one a standby? We took yes.\n> 6. Where does the water go behind the separator: storm drain, water body or sanitary sewer?\n",
        wants: &[(1, Some("50 F")), (2, None), (6, Some("storm water"))],
    },
    Case {
        name: "behind the question on its own line",
        mail: "> 1. How cold does the water get that comes to the separator, in winter? We took 46 °F. --> 45 °F\n> 2. Can the pumps run at the same time, or is one a standby? We took yes. --> yes\n> 8. May we have the safety data sheet of \"floor soap\", and how much of it is used? --> attached, 20 L a week\n",
        wants: &[(1, Some("45 °F")), (2, Some("yes")), (8, None)],
    },
    Case {
        name: "without marks of quotation",
        mail: "Good morning,\n\n1. How cold does the water get that comes to the separator, in winter? We took 46 °F.\n\n10 °C, from a borehole\n\n4. How much suspended solids does the hall wash water carry (silt, grit, metal fines)? We took 300 mg/L.\n\n0.4 g/L\n\n5. Which pump lifts the water to the separator? We took a centrifugal pump.\n\na diaphragm pump\n\nKind regards\nG. Muster\n",
        wants: &[(1, Some("10 °C")), (4, Some("0.4 g/L")), (5, Some("diaphragm"))],
    },
    Case {
        name: "partial, one answer of several, the rest left as it was",
        mail: "Only the sewer for now, the rest follows.\n\n> 5. Which pump lifts the water to the separator? We took a centrifugal pump.\n> 6. Where does the water go behind the separator: storm drain, water body\n> or sanitary sewer?\nsanitary sewer\n> 7. Does the owner of the sewer allow rain water in it?\n> We based this on:\n> - water at 46 °F\n\n-- \nH. Invented\nInvented Works\n",
        wants: &[(6, Some("sanitary sewer"))],
    },
    Case {
        name: "numbers with words, imperial and US",
        mail: "Question 2: yes they can.\nQuestion 3: 318.2 ft\nQuestion 4: around 350 ppm\nQuestion 7: The city does not allow it.\n",
        wants: &[(2, Some("yes")), (3, Some("318.2 ft")), (4, Some("350 ppm")), (7, Some("no"))],
    },
];

fn read(text: &str) -> Mail {
    read_mail(text, &Reading::default())
}

#[test]
fn answers_are_matched_to_their_questions() {
    let questions = asked();
    let (mut wanted, mut matched, mut right, mut strange) = (0, 0, 0, 0);
    let mut missed = Vec::new();
    for case in &CASES {
        let found = answers(case.mail, &read(case.mail), &questions, &Reading::default());
        for (number, value) in case.wants {
            wanted += 1;
            let hit: Option<&Answer> = found.iter().find(|a| questions[a.question].number == *number);
            matched += usize::from(hit.is_some());
            // A value is what the key takes: words around it ("about 8 °C") may stand with it.
            let same = hit.is_some_and(|hit| match (&hit.value, value) {
                (Some(got), Some(want)) => got.contains(want),
                (None, None) => true,
                _ => false,
            });
            right += usize::from(same);
            if !same {
                missed.push(format!("{}: {number} wants {value:?}, got {hit:?}", case.name));
            }
        }
        for answer in &found {
            let number = questions[answer.question].number;
            if !case.wants.iter().any(|(of, _)| *of == number) {
                strange += 1;
                missed.push(format!("{}: {number} was not answered, got {answer:?}", case.name));
            }
        }
    }
    println!(
        "{wanted} answers: {matched} matched, {right} with the right value or none; {strange} found that are none\n{missed:#?}"
    );
    assert!(matched + 1 >= wanted && right + 2 >= wanted && strange <= 1, "{missed:#?}");
}

#[test]
fn what_is_said_is_told_without_marks_and_breaks() {
    let mail = "> 8. May we have the safety data sheet of \"floor soap\", and how\n> much of it is used? It decides whether the oil still rises.\nWe use five\n  litres a day.\n";
    let found = answers(mail, &read(mail), &asked(), &Reading::default());
    let [one] = &found[..] else { panic!("{found:#?}") };
    assert_eq!((one.said.as_str(), one.value.as_ref(), one.key.as_ref()), ("We use five litres a day.", None, None));
    assert_eq!(&mail[one.at.clone()], "We use five\n  litres a day.");
}

/// A question that is worded otherwise by now is quoted as it was sent: the figure that we took stands in it, and is no answer.
#[test]
fn a_figure_of_ours_is_no_answer() {
    let asked = [Asked {
        number: 6,
        text: "How much suspended solids does the rinse water carry? We took 1000 mg/L.".to_owned(),
        keys: vec!["stream \"rinse\".solids".to_owned()],
    }];
    let sent =
        "How much suspended solids does each of these waters carry? Rinse (we took 1000 mg/L), wash (1000 mg/L).";
    let marked = format!("> 6. {sent}\nabout 450 mg/L\n\nRegards\n");
    let found = answers(&marked, &read(&marked), &asked, &Reading::default());
    assert_eq!(found.iter().map(|a| a.said.as_str()).collect::<Vec<_>>(), ["about 450 mg/L"]);
    for bare in [format!("6. {sent}\n"), format!("> 6. {sent}\n"), format!("On Monday you wrote:\n> {sent}\n")] {
        let found = answers(&bare, &read(&bare), &asked, &Reading::default());
        assert!(found.iter().all(|a| a.value.as_deref().is_none_or(|v| !v.contains("1000"))), "{found:#?}");
    }
}

#[test]
fn paths_are_bared_of_names() {
    for (key, path) in [
        ("stream \"hall 2. wash\".oil.mean", "stream.oil.mean"),
        ("limit 2 \"oil and grease\".value", "limit.value"),
        ("inlet.rate.2", "inlet.rate"),
        ("water.coldest", "water.coldest"),
    ] {
        assert_eq!(unnamed(key), path);
    }
}

/// A mail cut anywhere is read all the same, and its answers lie within it.
#[test]
fn no_part_of_an_answer_makes_it_panic() {
    let questions = asked();
    for case in &CASES {
        for (k, _) in case.mail.char_indices().step_by(11) {
            for part in [&case.mail[..k], &case.mail[k..]] {
                for answer in answers(part, &read(part), &questions, &Reading::default()) {
                    assert!(part.get(answer.at.clone()).is_some_and(|said| !said.trim().is_empty()), "{answer:?}");
                }
            }
        }
    }
}
