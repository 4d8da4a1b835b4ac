//! `read`, `remedy` and `compare` as a user meets them.

use std::path::Path;
use std::process::{Command, Output};

fn stillrise(args: &[&str]) -> std::io::Result<Output> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    Command::new(env!("CARGO_BIN_EXE_stillrise")).args(args).current_dir(root).env("COLUMNS", "120").output()
}

#[test]
fn a_mail_is_read_and_each_find_names_its_keys() -> Result<(), Box<dyn std::error::Error>> {
    let folder = tempfile::tempdir()?;
    let mail = folder.path().join("mail.txt");
    std::fs::write(
        &mail,
        "We wash buses with 2 hoses, 12 gpm each.\nPermit: oil and grease 15 mg/L daily maximum, pH 6 to 9.\n",
    )?;
    let path = mail.to_string_lossy();
    let out = stillrise(&["read", &path])?;
    let text = String::from_utf8(out.stdout)?;
    assert_eq!(out.status.code(), Some(0), "{text}");
    for wanted in ["2 hoses", "stream.hoses", "12 gpm", "15 mg/L", "limit.value", "daily maximum", "pH 6 to 9"] {
        assert!(text.contains(wanted), "{wanted}: {text}");
    }
    let out = stillrise(&["read", &path, "--json"])?;
    let found: serde_json::Value = serde_json::from_slice(&out.stdout)?;
    let finds = found["finds"].as_array().ok_or("finds")?;
    let limit = finds.iter().find(|find| find["said"] == "15 mg/L").ok_or("the limit")?;
    assert_eq!(limit["offers"][0]["key"], "limit.value");
    assert!(limit["sentence"].as_str().is_some_and(|s| s.starts_with("Permit:")), "{limit}");
    let none = stillrise(&["read", "no-such-file.txt"])?;
    assert_eq!(none.status.code(), Some(2));
    assert!(none.stdout.is_empty() && String::from_utf8(none.stderr)?.contains("there is no such file"));
    Ok(())
}

#[test]
fn answers_are_read_for_an_enquiry() -> Result<(), Box<dyn std::error::Error>> {
    let folder = tempfile::tempdir()?;
    let mail = folder.path().join("answer.txt");
    std::fs::write(
        &mail,
        "Hello,\n\n> 2. Does the owner of the sewer allow rain water in it?\nNo, never.\n> 4. Can the pumps run at the\n> same time, or is one a standby? We took yes.\nyes, in a storm\n\nRegards\n",
    )?;
    let path = mail.to_string_lossy();
    let out = stillrise(&["read", &path, "--for", "enquiries/truck-wash", "--json"])?;
    let found: serde_json::Value = serde_json::from_slice(&out.stdout)?;
    let value = |key: &str| {
        let all = found["answers"].as_array()?;
        all.iter().find(|answer| answer["key"] == key).map(|answer| answer["value"].clone())
    };
    assert_eq!(value("outlet.rain_allowed"), Some("no".into()), "{found}");
    assert_eq!(value("inlet.together"), Some("yes".into()), "{found}");
    let out = stillrise(&["read", &path, "--for", "enquiries/truck-wash"])?;
    let text = String::from_utf8(out.stdout)?;
    assert!(text.contains("No, never.") && text.contains("2 answered"), "{text}");
    let refused = stillrise(&["read", &path, "--for", "nowhere"])?;
    assert_eq!(refused.status.code(), Some(2));
    Ok(())
}

#[test]
fn a_remedy_says_what_is_set_and_what_follows() -> Result<(), Box<dyn std::error::Error>> {
    let out = stillrise(&["remedy", "enquiries/truck-wash", "frost-outdoors"])?;
    let text = String::from_utf8(out.stdout)?;
    assert_eq!(out.status.code(), Some(0), "{text}");
    for wanted in ["1. Insulate the unit", "set site.frost_protected = yes", "It passes then"] {
        assert!(text.contains(wanted), "{wanted}: {text}");
    }
    let out = stillrise(&["remedy", "enquiries/truck-wash", "frost-outdoors", "--json"])?;
    let found: serde_json::Value = serde_json::from_slice(&out.stdout)?;
    assert_eq!(found["remedies"][0]["set"][0]["path"], "site.frost_protected");
    assert_eq!(found["remedies"][0]["then"]["verdict"], "passes");
    let none = stillrise(&["remedy", "enquiries/truck-wash", "frost-outdoor"])?;
    assert_eq!(none.status.code(), Some(2));
    assert!(String::from_utf8(none.stderr)?.contains("frost-outdoors"));
    Ok(())
}

#[test]
fn jobs_stand_side_by_side() -> Result<(), Box<dyn std::error::Error>> {
    let out = stillrise(&["compare", "enquiries/truck-wash", "enquiries/tram-depot", "--json"])?;
    let found: serde_json::Value = serde_json::from_slice(&out.stdout)?;
    assert_eq!(found["jobs"].as_array().map(Vec::len), Some(2));
    let unit = found["results"].as_array().and_then(|lines| lines.iter().find(|line| line["what"] == "unit"));
    assert_eq!(unit.and_then(|line| line["values"].as_array()).map(Vec::len), Some(2));
    // One beside itself differs in nothing.
    let out = stillrise(&["compare", "enquiries/truck-wash", "enquiries/truck-wash"])?;
    let text = String::from_utf8(out.stdout)?;
    assert!(
        text.contains("The same was said of all that was worked.") && text.contains("Every rule says the same of all."),
        "{text}"
    );
    let refused = stillrise(&["compare", "enquiries/truck-wash", "nowhere"])?;
    assert_eq!(refused.status.code(), Some(2));
    assert!(refused.stdout.is_empty());
    Ok(())
}
