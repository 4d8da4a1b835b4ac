//! Bad input gets place, reason and remedy, all faults at once, exit 2, and nothing is written.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{folder, run};
use std::fs;

const HEAD: &str = "[enquiry]\ntitle = \"x\"\n";
const WASH: &str = "[[stream]]\nname = \"wash\"\nflow = \"45 gpm\"\n";

/// Refused: exit 2, nothing on standard output, and the error stream says all of `wants`.
#[track_caller]
fn refused(enquiry: &str, wants: &[&str]) {
    let dir = folder(enquiry);
    let (code, out, err) = run(dir.path(), &["size", "enquiry.toml"]);
    assert_eq!(code, 2, "{enquiry}\n{out}{err}");
    assert!(out.is_empty(), "{out}");
    for want in wants {
        assert!(err.contains(want), "\"{want}\" is not said:\n{err}");
    }
    let (code, ..) = run(dir.path(), &["submittal", "enquiry.toml", "--out", "package"]);
    assert_eq!(code, 2);
    assert_eq!(fs::read_dir(dir.path()).expect("readable").count(), 1, "something was written");
}

#[test]
fn every_kind_of_fault_is_refused_with_a_remedy() {
    refused("[enquiry\ntitle = \"x\"\n", &["line 1", "TOML syntax"]);
    refused(&format!("{HEAD}titel = \"y\"\n{WASH}"), &["line 3", "\"titel\" is not a key", "did you mean \"title\"?"]);
    refused(
        &format!("{HEAD}{WASH}[watter]\ncoldest = \"40 °F\"\n"),
        &["\"watter\" is not a block", "did you mean \"water\"?"],
    );
    refused(
        &format!("{HEAD}[[stream]]\nflow = \"45 gmp\"\n"),
        &["line 4", "the unit \"gmp\" is not known", "did you mean \"gpm\"?"],
    );
    refused(&format!("{HEAD}[[stream]]\nflow = 45\n"), &["has no unit", "write a flow in one of"]);
    refused(&format!("{HEAD}[[stream]]\nflow = \"45 ft2\"\n"), &["is an area, not a flow"]);
    refused(&format!("{HEAD}[[stream]]\nflow = \"1e999 gpm\"\n"), &["not a finite number"]);
    refused(&format!("{HEAD}[[stream]]\nflow = \"-45 gpm\"\n"), &["not between 0.01 gpm and 100000 gpm"]);
    refused(&format!("{HEAD}[[stream]]\nflow = \"9e6 gpm\"\n"), &["not between"]);
    refused(&format!("{HEAD}[[stream]]\nflow = {{ from = \"memory\" }}\n"), &["a claim without value"]);
    refused(
        &format!("{HEAD}[[stream]]\nname = \"wash\"\n"),
        &["neither a flow nor a number of hoses nor a volume a day"],
    );
    refused(&format!("{HEAD}{WASH}[rain]\nintensity = \"3 in/h\"\n"), &["no surface it falls on"]);
    refused(
        &format!("{HEAD}[[surface]]\nname = \"yard\"\narea = \"1000 ft2\"\n[rain]\ntable = \"none.csv\"\n"),
        &["\"none.csv\" cannot be read"],
    );
    refused(&format!("{HEAD}{WASH}[unit]\nfrom = \"none.toml\"\n"), &["\"none.toml\" cannot be read"]);
    refused(HEAD, &["nothing to size"]);
    refused(WASH, &["[enquiry]"]);
    refused(
        &format!("{HEAD}{WASH}[[limit]]\npollutant = \"oil and greese\"\nvalue = \"15 mg/L\"\n"),
        &["did you mean \"oil and grease\"?"],
    );
    refused(&format!("{HEAD}{WASH}[[limit]]\nvalue = \"15 mg/L\"\n"), &["has no \"pollutant\""]);
    refused(
        &format!("{HEAD}{WASH}[inlet]\nfeed = \"pumpe\"\n"),
        &["is not a word of \"feed\"", "did you mean \"pump\"?"],
    );
    refused(&format!("{HEAD}{WASH}[water]\ncoldest = \"70 °F\"\nwarmest = \"40 °F\"\n"), &["warmer than the warmest"]);
    refused(
        &format!("{HEAD}{WASH}[unit]\nmodel = \"Demo 51\"\n"),
        &["\"Demo 51\" is not in the range", "did you mean \"Demo 50\"?"],
    );
    refused(&format!("{HEAD}{WASH}[unit]\ncount = 0\n"), &["not a whole number between 1 and 1000"]);
    refused(
        &format!(
            "{HEAD}[[stream]]\nflow = [{{ value = \"1 gpm\", chosen = true }}, {{ value = \"2 gpm\", chosen = true }}]\n"
        ),
        &["more than one claim is marked chosen"],
    );
}

#[test]
fn what_has_no_end_is_not_read_to_it() {
    let many = "[[stream]]\nflow = \"1 gpm\"\n".repeat(101);
    refused(&format!("{HEAD}{many}"), &["101 blocks of it"]);
    refused(&format!("{HEAD}# {}\n{WASH}", "x".repeat(1_000_000)), &["is larger than 1000 kB"]);
    refused(&"x = 1\n".repeat(50), &["and 12 more"]);
}

#[test]
fn distributions_and_shears_that_cannot_be() {
    let solids = |keys: &str| format!("{HEAD}{WASH}[solids]\n{keys}\n");
    refused(&solids("table = [\"20 um: 40 %\", \"63 um: 30 %\"]"), &["falls from 40 % to 30 %"]);
    refused(&solids("table = [\"20 um: 40 %\", \"63 um: 80 %\"]"), &["the shares end at 80 %, not at 100 %"]);
    refused(&solids("table = [\"20 um: 40 %\", \"63 um: 1\"]\nd50 = \"30 um\""), &["stands beside d50"]);
    let d50 = |rest: &str| format!("{HEAD}{WASH}[droplets]\nd50 = {{ value = \"60 um\", {rest} }}\n");
    refused(&d50("low = \"30 um\", high = \"90 um\", distribution = \"norml\""), &["did you mean \"normal\"?"]);
    refused(&d50("distribution = \"uniform\""), &["a distribution without a range"]);
    refused(&d50("low = \"5 um\", high = \"90 um\", distribution = \"normal\""), &["reaches outside what", "uniform"]);
    let oil = "oil = { kind = \"diesel\", mean = \"20 mg/L\", emulsified = \"50 %\", dissolved = \"12 mg/L\" }";
    refused(&format!("{HEAD}{WASH}{oil}\n"), &["12 mg/L dissolved and 50 % emulsified is more than the 20 mg/L"]);
    let shear = |keys: &str| format!("{HEAD}{WASH}[[shear]]\nname = \"v\"\n{keys}\n");
    refused(&shear("kind = \"valve\"\nflow = \"9 gpm\""), &["is a valve without diameter and pressure"]);
    refused(&shear("kind = \"pump\""), &["is a pump without pump"]);
    refused(&shear("kind = \"pump\"\npump = \"vane\"\npressure = \"9 psi\""), &["a pump has no pressure"]);
    refused(&shear("kind = \"weir\""), &["is not a word of \"kind\""]);
    refused(
        &shear("kind = \"fitting\"\nfitting = \"elbow\"\nflow = \"9 gpm\"\ndiameter = \"2 in\""),
        &["is not known"],
    );
}

#[test]
fn all_faults_come_at_once() {
    let enquiry = format!(
        "{HEAD}[[stream]]\nflow = \"45 gmp\"\nhours_per_day = 99\n[site]\ngrund = \"1 ft\"\n[[limit]]\nvalue = \"15 mg/L\"\n"
    );
    refused(&enquiry, &["4 faults", "gmp", "hours_per_day", "grund", "pollutant"]);
    let dir = folder(&enquiry);
    let (_, _, said) = run(dir.path(), &["size", "enquiry.toml"]);
    let lines: Vec<&str> = said.lines().filter_map(|l| l.trim().strip_prefix("line ")).collect();
    assert!(lines.len() == 4 && lines.is_sorted(), "faults from the top of the file to its end: {lines:?}");
}

#[test]
fn files_that_cannot_be_read_are_named() {
    let dir = folder(HEAD);
    for (args, want) in [
        (&["size", "absent.toml"][..], "there is no such file"),
        (&["new", ".", "--like", "vehicle-yrad"], "did you mean vehicle-yard?"),
        (&["work", "stokes-ris"], "did you mean stokes-rise?"),
        (&["work", "stokes-rise", "d=60 um", "rho=1 kg/m3", "mu=x"], "is not an argument"),
        (&["work", "colebrook", "re=10", "rough=0"], "is outside"),
        (&["verify", "stokes-rice"], "did you mean stokes-rise?"),
    ] {
        let (code, out, err) = run(dir.path(), args);
        assert_eq!((code, out.as_str()), (2, ""), "{args:?}\n{err}");
        assert!(err.contains(want), "{args:?}: {err}");
    }
    fs::write(dir.path().join("bytes.toml"), [0xff, 0xfe, 0x00]).expect("written");
    let (code, _, err) = run(dir.path(), &["size", "bytes.toml"]);
    assert!(code == 2 && err.contains("not UTF-8"), "{err}");
    let empty = tempfile::tempdir().expect("a folder");
    let (code, _, err) = run(dir.path(), &["size", &empty.path().to_string_lossy()]);
    assert!(code == 2 && err.contains("there is no such file"), "{err}");
}

#[test]
fn faults_of_a_rain_table_come_all_at_once() {
    let dir =
        folder(&format!("{HEAD}[[surface]]\nname = \"yard\"\narea = \"1000 ft2\"\n[rain]\ntable = \"rain.csv\"\n"));
    fs::write(dir.path().join("rain.csv"), "duration,2 yr,x\n5 min,0.4 in,0.5 in\n10 min,nothing,0.7 gpm\n")
        .expect("written");
    let (code, _, err) = run(dir.path(), &["size", "enquiry.toml"]);
    assert_eq!(code, 2);
    for want in ["rain.csv", "\"x\" is not a return period", "line 3"] {
        assert!(err.contains(want), "{want}: {err}");
    }
}

/// What customers leave out or get wrong is designed and reported, not refused.
#[test]
fn gaps_of_a_customer_are_no_faults() {
    for enquiry in [
        format!("{HEAD}{WASH}"),
        format!("{HEAD}{WASH}[[limit]]\npollutant = \"oil and grease\"\nvalue = \"15 ppm\"\n"),
        format!("{HEAD}{WASH}[[oil]]\nkind = \"heavy-fuel-oil\"\ndensity = \"1010 kg/m3\"\n"),
        format!("{HEAD}[[stream]]\nflow = \"1,5 m3/h\"\n"),
        format!("{HEAD}[stated]\nflow = \"120 gpm\"\n"),
        format!("{HEAD}[inlet]\nrate = \"60 gpm\"\n"),
        format!("{HEAD}[spill]\nvolume = \"300 gal\"\nrate = \"100 gpm\"\n"),
        format!("{HEAD}[[case]]\nname = \"test\"\nflow = \"50 gpm\"\noil = {{ mean = \"80 mg/L\" }}\n"),
    ] {
        let dir = folder(&enquiry);
        let (code, out, err) = run(dir.path(), &["size", "enquiry.toml"]);
        assert!(code <= 1 && err.is_empty() && out.contains("Cautions"), "{enquiry}\n{code} {err}{out}");
    }
}

/// A disk that takes nothing more, as a limit of the system on the size of a file makes one.
#[cfg(unix)]
#[test]
fn what_the_disk_does_not_take_is_said_and_nothing_is_lost() {
    use std::io::{BufRead, BufReader, Read, Write};
    let dir = tempfile::tempdir().expect("a folder");
    let enquiry = format!("{HEAD}{WASH}");
    fs::create_dir(dir.path().join("yard")).expect("made");
    let file = dir.path().join("yard/enquiry.toml");
    fs::write(&file, &enquiry).expect("written");
    let program = env!("CARGO_BIN_EXE_stillrise");
    let mut serving = std::process::Command::new("sh")
        .args(["-c", "trap '' XFSZ; ulimit -f 0; exec \"$0\" serve --no-open \"$1\"", program])
        .arg(dir.path())
        .stdout(std::process::Stdio::piped())
        .spawn()
        .expect("it starts");
    let lines = BufReader::new(serving.stdout.take().expect("it says something")).lines().map_while(Result::ok);
    let door = lines.map(|line| line.trim().to_owned()).find(|line| line.starts_with("http://")).expect("an address");
    let (root, key) = door.trim_start_matches("http://").split_once("/?key=").expect("a key");
    let change = r#"[{"do":"set","path":"water.coldest","value":"45 °F"}]"#;
    let ask = |request: String| {
        let mut stream = std::net::TcpStream::connect(root).expect("it listens");
        stream.write_all(request.as_bytes()).expect("sent");
        let mut answer = String::new();
        stream.read_to_string(&mut answer).expect("answered");
        answer
    };
    let head = format!("Host: {root}\r\nAuthorization: Bearer {key}\r\nConnection: close\r\n");
    let answer = ask(format!(
        "POST /api/sheets/yard/actions HTTP/1.1\r\n{head}Content-Type: application/json\r\nContent-Length: {}\r\n\r\n{change}",
        change.len()
    ));
    // The sheet shows what stands on the disk, and not what was refused.
    let stands = ask(format!("GET /api/sheets/yard/text HTTP/1.1\r\n{head}\r\n"));
    serving.kill().expect("it ends");
    serving.wait().expect("it ended");
    assert!(answer.starts_with("HTTP/1.1 500"), "{answer}");
    assert!(answer.contains("nothing was saved and the file is as it was") && answer.contains("disk"), "{answer}");
    assert!(stands.contains("45 gpm") && !stands.contains("coldest"), "{stands}");
    assert_eq!(fs::read_to_string(&file).expect("readable"), enquiry);
    let names: Vec<String> = fs::read_dir(dir.path().join("yard"))
        .expect("readable")
        .flatten()
        .map(|e| e.file_name().to_string_lossy().into_owned())
        .collect();
    assert!(names.iter().all(|name| !name.starts_with(".stillrise-")), "what was begun stays behind: {names:?}");
}
