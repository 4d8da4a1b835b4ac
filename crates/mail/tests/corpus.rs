//! Invented mails, each with what a good engineer takes over from it: how much is found, and how often the first offer is
//! another key than meant. The mails were written by somebody who did not see the lists of words.

use std::collections::BTreeMap;
use std::error::Error;
use std::path::Path;
use stillrise_mail::{What, read_mail};
use stillrise_units::Dim;
use stillrise_units::parse::{Reading, quantity_of};

/// What a mail says, by an engineer.
struct Expected {
    at: usize,
    said: String,
    /// Keys that it answers; empty where none takes it.
    paths: Vec<String>,
}

fn expected(text: &str, list: &str) -> Result<Vec<Expected>, Box<dyn Error>> {
    let mut all = Vec::new();
    for line in list.lines().filter(|line| !line.trim().is_empty()) {
        let mut fields = line.split('\t');
        let said = fields.next().unwrap_or_default().to_owned();
        let paths = fields.next().ok_or_else(|| format!("no path: {line}"))?;
        let nth: usize = fields.next().and_then(|n| n.trim().parse().ok()).unwrap_or(1);
        let at = text.match_indices(&said).nth(nth - 1).ok_or_else(|| format!("not in the mail: {line}"))?.0;
        let paths = paths.split('|').map(|path| path.trim().to_owned()).filter(|path| path != "-").collect();
        all.push(Expected { at, said, paths });
    }
    Ok(all)
}

#[test]
fn what_mails_say_is_found_and_offered() -> Result<(), Box<dyn Error>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/mails");
    let mut names: Vec<_> = std::fs::read_dir(&folder)?.filter_map(|entry| Some(entry.ok()?.path())).collect();
    names.retain(|path| path.extension().is_some_and(|ending| ending == "txt"));
    names.sort();
    assert!(names.len() >= 20, "{} mails", names.len());
    let (mut wanted, mut found, mut offered, mut first, mut quantities, mut read) = (0, 0, 0, 0, 0, 0);
    let (mut strange, mut finds) = (0, 0);
    let mut missed: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for path in names {
        let name = path.file_stem().and_then(|stem| stem.to_str()).unwrap_or_default().to_owned();
        let text = std::fs::read_to_string(&path)?;
        let list = expected(&text, &std::fs::read_to_string(path.with_extension("expected"))?)
            .map_err(|e| format!("{name}: {e}"))?;
        let mail = read_mail(&text, &Reading::default());
        finds += mail.finds.len();
        for one in &list {
            let end = one.at + one.said.len();
            let hit = mail.finds.iter().find(|find| find.at.start < end && one.at < find.at.end);
            let is_quantity = one.said.chars().any(|c| c.is_ascii_digit());
            quantities += usize::from(is_quantity);
            read += usize::from(is_quantity && hit.is_some());
            if one.paths.is_empty() {
                // What no key takes is no find too many, but an offer for it is.
                strange += usize::from(hit.is_some_and(|hit| !hit.offers.is_empty()));
                continue;
            }
            wanted += 1;
            let mut miss = |why: String| missed.entry(name.clone()).or_default().push(why);
            let Some(hit) = hit else {
                miss(format!("not found: \"{}\" ({})", one.said, one.paths.join(" or ")));
                continue;
            };
            found += 1;
            let place = hit.offers.iter().position(|offer| one.paths.contains(&offer.path));
            let offers: Vec<&str> = hit.offers.iter().map(|offer| offer.path.as_str()).collect();
            match place {
                Some(0) => first += 1,
                Some(_) => {}
                None => miss(format!("\"{}\": {} and not {}", one.said, offers.join(", "), one.paths.join(" or "))),
            }
            offered += usize::from(place.is_some());
        }
        for find in mail.finds.iter().filter(|find| !find.offers.is_empty()) {
            let known = list.iter().any(|one| find.at.start < one.at + one.said.len() && one.at < find.at.end);
            let word = matches!(find.what, What::Word(..));
            strange += usize::from(!known && !word);
        }
    }
    let percent = |part: usize, of: usize| 100.0 * part as f64 / of.max(1) as f64;
    let report = format!(
        "{wanted} wanted: {:.1} % found, {:.1} % offered, {:.1} % offered first; {:.1} % of {quantities} quantities read; {strange} offers for what says nothing, among {finds} finds\n{missed:#?}",
        percent(found, wanted),
        percent(offered, wanted),
        percent(first, wanted),
        percent(read, quantities),
    );
    println!("{report}");
    // What was reached, less a little: a change that loses more has to say why.
    assert!(percent(found, wanted) >= 89.0 && percent(offered, wanted) >= 84.0, "{report}");
    assert!(percent(first, wanted) >= 71.0 && percent(strange, finds) <= 8.0, "{report}");
    Ok(())
}

/// A text cut anywhere, or twice over, is read all the same.
#[test]
fn no_part_of_a_mail_makes_it_panic() -> Result<(), Box<dyn Error>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/mails");
    for entry in std::fs::read_dir(&folder)? {
        let path = entry?.path();
        let text = std::fs::read_to_string(&path)?;
        let cuts: Vec<usize> = text.char_indices().map(|(k, _)| k).collect();
        for pair in cuts.windows(2).step_by(97) {
            let (head, tail) = text.split_at(pair[0]);
            for part in [head.to_owned(), tail.to_owned(), [tail, head].concat()] {
                for find in read_mail(&part, &Reading::default()).finds {
                    assert!(find.at.start < find.at.end && part.get(find.at.clone()).is_some(), "{:?}", find.at);
                }
            }
        }
    }
    Ok(())
}

/// A foot with its inches is one depth, and each end of a sentence has its own pipe.
#[test]
fn depths_in_feet_and_inches_go_below_the_yard() {
    let text = "The drain arrives 1.35 m below yard level, and the outlet must connect to an existing manhole whose invert is \
                4 ft 9 in below yard. Groundwater was met at roughly 1.1 m. The slab is 650 square yards.";
    let mail = read_mail(text, &Reading::default());
    let first = |words: &str| {
        let find = mail.finds.iter().find(|find| text[find.at.clone()].contains(words)).expect("it is marked");
        find.offers.iter().map(|offer| (offer.path.as_str(), offer.value.as_str())).collect::<Vec<_>>()
    };
    assert_eq!(first("1.35 m")[0], ("inlet.invert", "-1.35 m"));
    assert_eq!(first("4 ft 9 in")[0], ("outlet.invert", "-4 ft 9 in"));
    assert!(first("1.1 m").contains(&("site.groundwater", "-1.1 m")), "{:?}", first("1.1 m"));
    assert!(first("650 square yards").contains(&("surface.area", "650 square yards")));
}

/// Depths are counted from whatever lies on top; sides share a unit.
#[test]
fn what_lies_below_a_yard_is_offered_as_that() {
    let text = "The drain arrives in a pipe, invert 1.35 m below the yard, and we have to leave to the brook at 4'-3\" below the \
                concrete yard. Groundwater is about 6 ft down in winter. The wash slab of 12 x 8 m is open. The limit went from \
                20 mg/L down to 5 mg/L.";
    let mail = read_mail(text, &Reading::default());
    let first = |at: usize, path: &str| {
        let offers = &mail.finds[at].offers;
        offers.iter().find(|offer| offer.path == path).map(|offer| offer.value.clone())
    };
    let find = |words: &str| mail.finds.iter().position(|find| &text[find.at.clone()] == words).expect("it is marked");
    assert_eq!(first(find("1.35 m"), "inlet.invert").as_deref(), Some("-1.35 m"));
    assert_eq!(first(find("4'-3\""), "outlet.invert").as_deref(), Some("-4'-3\""));
    let table = mail.finds.iter().position(|find| text[find.at.clone()].contains("6 ft")).expect("it is marked");
    assert_eq!(first(table, "site.groundwater").as_deref(), Some("-6 ft"));
    // Nor does any other key take it upward.
    let all = &mail.finds[table].offers;
    assert!(all.iter().all(|o| !o.path.ends_with("invert") || o.value.starts_with('-')), "{all:?}");
    let wash = find("12 x 8 m");
    assert!(mail.finds[wash].offers.iter().any(|offer| offer.value.contains("96")), "{:?}", mail.finds[wash].offers);
    for (value, path) in [("-1.35 m", "inlet.invert"), ("-4'-3\"", "outlet.invert"), ("-6 ft", "site.groundwater")] {
        let read = quantity_of(value, Dim::Length, &Reading::default());
        assert!(read.is_ok_and(|read| read.si() < 0.0), "{value} is no value of {path}");
    }
}

/// What a person asked for who wrote that pipes lie below the ground: an elevation counts upward.
#[test]
fn depths_sides_and_rates_are_told_apart() {
    let text = "The inlet pipe has its invert 0.95 m below ground; they wash about 3 hours a day. Groundwater was met at 1.4 m \
                below grade. There is room for a pit of at most 6.0 m by 2.4 m.";
    let mail = read_mail(text, &Reading::default());
    let offered = |path: &str| {
        let offers = mail.finds.iter().flat_map(|find| &find.offers).filter(|offer| offer.path == path);
        offers.map(|offer| offer.value.clone()).collect::<Vec<_>>()
    };
    assert_eq!(offered("inlet.invert").first().map(String::as_str), Some("-0.95 m"));
    assert!(offered("site.groundwater").iter().any(|value| value == "-1.4 m"), "{:?}", offered("site.groundwater"));
    assert!(offered("site.max_length").iter().any(|value| value == "6.0 m"), "{:?}", offered("site.max_length"));
    assert!(offered("site.max_width").iter().any(|value| value == "2.4 m"), "{:?}", offered("site.max_width"));
    assert!(
        offered("stream.hours_per_day").iter().any(|value| value.contains('3')),
        "{:?}",
        offered("stream.hours_per_day")
    );
    assert!(!offered("stream.days_per_week").iter().any(|value| value == "1"), "{:?}", offered("stream.days_per_week"));
}
