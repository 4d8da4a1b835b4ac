//! What a hostile page, a hostile text and a hostile connection come to: nothing.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod served;

use served::served;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};

const JOB: &str = "machine-shop";
const JSON: &str = "Content-Type: application/json";
const SET: &str = r#"[{"do":"set","path":"water.coldest","value":"50 °F"}]"#;

#[test]
fn nobody_without_the_key_sees_or_changes_anything() {
    let served = served(&[JOB]);
    for (method, path) in [
        ("GET", "/"),
        ("GET", "/sheet/machine-shop"),
        ("GET", "/api/sheets"),
        ("GET", "/manual"),
        ("POST", "/api/sheets/machine-shop/actions"),
        ("GET", "/assets/sheet.js"),
    ] {
        for headers in
            [vec![], vec!["Cookie: sheet-1=0"], vec!["Authorization: Bearer 0000"], vec!["Authorization: Bearer "]]
        {
            let body = if method == "POST" { SET } else { "" };
            let answer = served.ask(method, path, &headers, body.as_bytes());
            assert_eq!(answer.status, 401, "{method} {path} {headers:?}: {}", answer.text());
        }
    }
    assert_eq!(served.ask("GET", "/?key=1234", &[], b"").status, 401);
    let let_in = served.ask("GET", &format!("/?key={}&sheet=machine-shop", served.token), &[], b"");
    assert_eq!(let_in.status, 303);
    assert!(let_in.head.contains("HttpOnly") && let_in.head.contains("SameSite=Strict"), "{}", let_in.head);
    assert!(let_in.head.to_lowercase().contains("location: /sheet/machine-shop\r\n"), "{}", let_in.head);
    // It leads to a sheet of this server and nowhere else.
    for trick in ["//example.org", "/..", "http:%2f%2fexample.org:80/", "a%0d%0aSet-Cookie:x", "a/b"] {
        let answer = served.ask("GET", &format!("/?key={}&sheet={trick}", served.token), &[], b"");
        let to = answer
            .head
            .lines()
            .find_map(|line| line.to_lowercase().strip_prefix("location: ").map(str::to_owned))
            .unwrap();
        assert!(to == "/" || to.starts_with("/sheet/"), "{trick}: {to}");
    }
}

#[test]
fn another_host_or_origin_is_turned_away() {
    let served = served(&[JOB]);
    let cookie = served.cookie();
    for host in ["evil.example", "127.0.0.1", "localhost:1", "127.0.0.1.evil.example:80", ""] {
        let answer = served.ask("GET", "/", &[&format!("Host: {host}"), &cookie], b"");
        assert_eq!(answer.status, 421, "{host}");
    }
    let own = format!("Origin: http://{}", served.at);
    let before = served.file(JOB);
    for (headers, why) in [
        (vec!["Origin: http://evil.example"], "another origin"),
        (vec!["Origin: null"], "an origin that hides"),
        (vec![own.as_str(), "Sec-Fetch-Site: cross-site"], "a browser that says it comes from elsewhere"),
        (vec!["Sec-Fetch-Site: same-site"], "another port of this machine"),
        (vec![], "nobody says where it comes from"),
    ] {
        let mut all = vec![cookie.as_str(), JSON];
        all.extend(headers);
        let answer = served.ask("POST", "/api/sheets/machine-shop/actions", &all, SET.as_bytes());
        assert_eq!(answer.status, 403, "{why}: {}", answer.text());
    }
    assert_eq!(served.file(JOB), before);
    let answer = served.ask(
        "POST",
        "/api/sheets/machine-shop/actions",
        &[&cookie, &own, "Sec-Fetch-Site: same-origin", JSON],
        SET.as_bytes(),
    );
    assert_eq!(answer.status, 200, "{}", answer.text());
    assert!(served.file(JOB).contains("50 °F"));
}

#[test]
fn every_answer_carries_what_protects_the_page() {
    let served = served(&[JOB]);
    for answer in [
        served.get("/"),
        served.get("/sheet/machine-shop"),
        served.get("/sheet/none"),
        served.get("/api/sheets/machine-shop"),
        served.send("POST", "/api/sheets/machine-shop/actions", "[{"),
        served.ask("GET", "/", &[], b""),
    ] {
        let head = answer.head.to_lowercase();
        for needed in [
            "content-security-policy: default-src 'none'",
            "x-content-type-options: nosniff",
            "referrer-policy: no-referrer",
            "cross-origin-opener-policy: same-origin",
        ] {
            assert!(head.contains(needed), "{needed} is missing from {head}");
        }
        let policy = head.lines().find(|line| line.starts_with("content-security-policy")).unwrap();
        assert!(!policy.contains("unsafe") && !policy.contains("http"), "{policy}");
    }
}

#[test]
fn what_people_write_stays_text() {
    let served = served(&[JOB]);
    let nasty = "</title><script>alert(1)</script><img src=x onerror=alert(2)>\\\"'&<svg onload=alert(3)>";
    let quoted = serde_json::to_string(nasty).unwrap();
    let actions = format!(
        r#"[{{"do":"set","path":"enquiry.title","value":{quoted}}},{{"do":"set","path":"enquiry.client","value":{quoted}}},{{"do":"set","path":"enquiry.project","value":{quoted}}},{{"do":"add","block":"surface","keys":[["name",{quoted}],["area","100 m2"],["kind","concrete"]]}},{{"do":"decide","rule":"gap-not-laminar","decision":"accepted","because":{quoted},"who":{quoted}}}]"#
    );
    let answer = served.send("POST", "/api/sheets/machine-shop/actions", &actions);
    assert_eq!(answer.status, 200, "{}", answer.text());
    let mail = format!("{{\"mail\":{}}}", serde_json::to_string(&format!("{nasty} 120 gpm {nasty}")).unwrap());
    assert_eq!(served.send("PUT", "/api/sheets/machine-shop/mail", &mail).status, 200);
    for path in [
        "/",
        "/sheet/machine-shop",
        "/sheet/machine-shop/pieces?beside=mail",
        "/sheet/machine-shop/beside/inputs",
        "/sheet/machine-shop/beside/text",
        "/sheet/machine-shop/beside/mail",
        "/sheet/machine-shop/basis",
        "/sheet/machine-shop/units",
        "/sheet/machine-shop/drawing",
        "/sheet/machine-shop/documents",
        "/api/sheets/machine-shop/drawing.svg",
        "/sheet/%3Cscript%3Ealert(1)%3C%2Fscript%3E",
        "/manual?q=%3Cscript%3Ealert(1)%3C/script%3E",
    ] {
        let answer = served.ask("GET", path, &[&served.key(), "Accept: text/html"], b"");
        let body = answer.text().to_lowercase();
        for piece in ["<script>alert", "<img src=x", "<svg onload", "onerror=alert(2)>"] {
            let bare = body.match_indices(piece).count();
            assert_eq!(bare, 0, "{path} holds {piece} as markup");
        }
        assert!(answer.status < 500, "{path}: {}", answer.status);
    }
}

#[test]
fn paths_lead_nowhere_else() {
    let served = served(&[JOB]);
    std::fs::write(served.folder.path().parent().unwrap().join("outside-of-it.toml"), "secret").unwrap();
    for name in [
        "..",
        "%2e%2e",
        "..%2f..%2fetc%2fpasswd",
        "%2fetc%2fpasswd",
        "machine-shop%2f..%2f..",
        "a%00b",
        "..%5c..",
        "outside-of-it",
    ] {
        for path in [format!("/sheet/{name}"), format!("/api/sheets/{name}"), format!("/api/sheets/{name}/text")] {
            let answer = served.get(&path);
            assert!(matches!(answer.status, 400 | 404), "{path}: {}", answer.status);
            assert!(!answer.text().contains("secret") && !answer.text().contains("root:"), "{path}");
        }
    }
    // Nor does a file that an enquiry names.
    let answer = served.send(
        "POST",
        "/api/sheets/machine-shop/actions",
        r#"[{"do":"set","path":"unit.from","value":"../outside-of-it.toml"}]"#,
    );
    assert_eq!(answer.status, 422);
    assert!(answer.text().contains("cannot be read") && !answer.text().contains("secret"), "{}", answer.text());
}

#[test]
fn a_body_without_end_is_not_read_to_its_end() {
    let served = served(&[JOB]);
    let head = format!(
        "PUT /api/sheets/machine-shop/text HTTP/1.1\r\nHost: {}\r\nAuthorization: Bearer {}\r\nContent-Type: application/json\r\nContent-Length: 104857600\r\n\r\n",
        served.at, served.token
    );
    let mut stream = TcpStream::connect(served.at).unwrap();
    stream.set_read_timeout(Some(Duration::from_secs(20))).unwrap();
    stream.write_all(head.as_bytes()).unwrap();
    let chunk = vec![b'a'; 1 << 16];
    let mut sent = 0_usize;
    // The server closes long before all of it was sent.
    while sent < 104_857_600 && stream.write_all(&chunk).is_ok() {
        sent += chunk.len();
    }
    let mut answer = String::new();
    let _ = stream.read_to_string(&mut answer);
    assert!(sent < 50_000_000, "{sent} bytes were taken");
    assert!(answer.is_empty() || answer.contains(" 413 "), "{answer}");
    assert_eq!(served.get("/api/sheets").status, 200);
}

#[test]
fn connections_that_say_nothing_keep_nobody_out() {
    let served = served(&[JOB]);
    let mut silent = Vec::new();
    for k in 0..500 {
        let mut stream = TcpStream::connect(served.at).unwrap();
        if k % 2 == 0 {
            stream.write_all(b"GET / HTTP/1.1\r\nHost: 127").unwrap();
        }
        silent.push(stream);
    }
    let begun = Instant::now();
    let answer = served.get("/api/sheets/machine-shop/version");
    assert_eq!(answer.status, 200);
    assert!(begun.elapsed() < Duration::from_secs(10), "{:?}", begun.elapsed());
}

#[test]
fn nonsense_gets_a_reason_and_changes_nothing() {
    let served = served(&[JOB]);
    let before = served.file(JOB);
    for (method, path, body, status) in [
        ("POST", "/api/sheets/machine-shop/actions", "", 400),
        ("POST", "/api/sheets/machine-shop/actions", "[{", 400),
        ("POST", "/api/sheets/machine-shop/actions", "{}", 422),
        ("POST", "/api/sheets/machine-shop/actions", r#"[{"do":"fly"}]"#, 422),
        ("POST", "/api/sheets/machine-shop/actions", r#"[{"do":"set","path":"watr.coldest","value":"1"}]"#, 422),
        ("POST", "/api/sheets/machine-shop/actions", r#"[{"do":"set","path":"water.coldest","value":"40 gpm"}]"#, 422),
        ("POST", "/api/sheets/machine-shop/actions", r#"[{"do":"remove","place":"stream \"none\""}]"#, 422),
        ("POST", "/api/sheets/none/actions", SET, 404),
        ("PUT", "/api/sheets/machine-shop/text", r#"{"text":"= no toml","over":1}"#, 422),
        ("PUT", "/api/sheets/machine-shop/text", r#"{"text":"","over":99}"#, 409),
        ("GET", "/api/sheets/machine-shop/nothing", "", 404),
        ("GET", "/api/packages/7", "", 404),
        ("POST", "/api/sheets", r#"{"like":"no such job"}"#, 404),
        ("POST", "/api/sheets", r#"{"name":"../x","like":"machine-shop"}"#, 422),
        ("POST", "/api/sheets", r#"{"name":"machine-shop","like":"machine-shop"}"#, 422),
        ("DELETE", "/api/sheets/machine-shop", "", 405),
    ] {
        let answer = served.send(method, path, body);
        assert_eq!(answer.status, status, "{method} {path} {body}: {}", answer.text());
        assert_eq!(served.file(JOB), before, "{method} {path} {body}");
    }
    let faulty = served.send(
        "POST",
        "/api/sheets/machine-shop/actions",
        r#"[{"do":"set","path":"water.coldest","value":"40 gpm"}]"#,
    );
    assert!(faulty.text().contains("\"place\"") && faulty.text().contains("\"remedy\""), "{}", faulty.text());
}

#[test]
fn an_issued_revision_is_locked_until_the_next_is_started() {
    let served = served(&[JOB]);
    let act = |body: &str| served.send("POST", "/api/sheets/machine-shop/actions", body);
    // All that bars it is told at once, and nothing is saved.
    let before = served.file(JOB);
    let barred = act(r#"[{"do":"set","path":"enquiry.status","value":"issued"}]"#);
    assert_eq!(barred.status, 422, "{}", barred.text());
    assert!(barred.text().contains("enquiry: revision"), "{}", barred.text());
    assert_eq!(served.file(JOB), before);
    let settled = served.get("/api/sheets/machine-shop").json();
    let failing = settled["verdicts"].as_array().unwrap().iter().filter(|judged| judged["verdict"] == "fails");
    let mut actions: Vec<serde_json::Value> = failing
        .map(|judged| {
            serde_json::json!({ "do": "decide", "rule": judged["rule"], "decision": "accepted", "because": "b", "who": "w", "date": "2026-05-18" })
        })
        .collect();
    let set = |path: &str, value: &str| serde_json::json!({ "do": "set", "path": path, "value": value });
    actions.extend([set("enquiry.revision", "A"), set("enquiry.status", "issued")]);
    let done = act(&serde_json::Value::from(actions).to_string());
    assert_eq!(done.status, 200, "{}", done.text());
    assert!(done.text().contains("issued-A"), "{}", done.text());
    let issued = served.file(JOB);
    let home = served.folder.path().join(JOB);
    assert_eq!(std::fs::read_to_string(home.join("issued-A/inputs/enquiry.toml")).unwrap(), issued);
    let version = served.get("/api/sheets/machine-shop/version").json()["version"].clone();
    let same = served.get("/api/sheets/machine-shop/changes?since=A").json();
    assert_eq!(same["because"], "nothing");
    let refused = act(SET);
    assert_eq!(refused.status, 409, "{}", refused.text());
    assert!(refused.text().contains("issued and locked"), "{}", refused.text());
    let text = serde_json::json!({ "text": format!("{issued}\n# more\n"), "over": version }).to_string();
    assert_eq!(served.send("PUT", "/api/sheets/machine-shop/text", &text).status, 409);
    assert_eq!(served.file(JOB), issued);
    let next = r#"[{"do":"set","path":"enquiry.revision","value":"B"},{"do":"set","path":"enquiry.status","value":"preliminary"}]"#;
    assert_eq!(act(next).status, 200);
    assert_eq!(act(SET).status, 200);
    assert!(served.file(JOB).contains("50 °F"));
    let changed = served.get("/api/sheets/machine-shop/changes").json();
    assert_eq!((&changed["because"], &changed["revision"]), (&"inputs".into(), &"A".into()));
    assert_eq!(served.get("/api/sheets/machine-shop/changes?since=Z").status, 404);
    let page = served.get("/sheet/machine-shop/units?with=issued%20A").text();
    assert!(page.contains("The inputs changed"), "{page}");
    // The same revision never goes out with another content.
    let again = act(
        r#"[{"do":"set","path":"enquiry.revision","value":"A"},{"do":"set","path":"enquiry.status","value":"issued"}]"#,
    );
    assert_eq!(again.status, 422, "{}", again.text());
    assert!(again.text().contains("issued with another content"), "{}", again.text());
}

#[test]
fn the_companys_settings_are_shown_and_followed() {
    let served = served(&[JOB]);
    let file = served.folder.path().join("stillrise-settings.toml");
    let inputs = || served.get("/sheet/machine-shop/beside/inputs").text();
    assert!(!inputs().contains("from the company"), "none yet");
    assert!(served.get("/sheet/machine-shop/settings").text().contains("There are none"));
    let text = "[company]\nname = \"Example <b>Separators</b>\"\nlogo = \"logo.svg\"\n[method]\nreserve = \"25 %\"\n";
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 4 2\"><path d=\"M0 0h4v2z\"/></svg>";
    std::fs::write(served.folder.path().join("logo.svg"), svg).unwrap();
    std::fs::write(&file, text).unwrap();
    assert!(inputs().contains("from the company's settings: 25 %"), "{}", inputs());
    let api = served.get("/api/sheets/machine-shop/settings").json();
    assert_eq!((&api["text"], api["faults"].as_array().map(Vec::len)), (&text.into(), Some(0)));
    for page in ["/settings", "/sheet/machine-shop/settings"] {
        let page = served.get(page).text();
        assert!(page.contains("Example &lt;b&gt;") && page.contains("25 %") && !page.contains("<b>Sep"), "{page}");
    }
    for logo in ["/logo", "/sheet/machine-shop/logo"] {
        let logo = served.get(logo);
        assert_eq!((logo.status, logo.kind().as_str()), (200, "image/svg+xml"));
    }
    // Settings that are refused bar their enquiries, and say why; mended, all goes on.
    std::fs::write(&file, text.replace("25 %", "25 gpm")).unwrap();
    let refused = served.get("/api/sheets/machine-shop");
    assert_eq!(refused.status, 422, "{}", refused.text());
    assert!(refused.text().contains("stillrise-settings.toml"), "{}", refused.text());
    assert!(served.get("/sheet/machine-shop/settings").text().contains("Refused"));
    std::fs::remove_file(&file).unwrap();
    assert_eq!(served.get("/api/sheets/machine-shop").status, 200);
    assert!(!inputs().contains("from the company"), "gone again");
}

#[test]
fn many_at_once_get_each_his_own_and_nothing_is_lost() {
    let served = served(&[JOB]);
    let count = 24;
    std::thread::scope(|scope| {
        for who in 0..4 {
            let served = &served;
            scope.spawn(move || {
                for k in 0..count / 4 {
                    let body = format!(r#"[{{"do":"add","block":"surface","keys":[["name","area {who}-{k}"],["area","{} m2"],["kind","concrete"]]}}]"#, 10 + who + k);
                    let answer = served.send("POST", "/api/sheets/machine-shop/actions", &body);
                    assert_eq!(answer.status, 200, "{}", answer.text());
                }
            });
        }
    });
    assert_eq!(served.file(JOB).matches("name = \"area ").count(), count);
    // And all of it is undone, step by step, to the byte.
    let first = stillrise_desk::jobs::JOBS.iter().find(|job| job.name == "machine-shop").unwrap().files[0].1;
    for _ in 0..count {
        assert_eq!(served.send("POST", "/api/sheets/machine-shop/undo", "").status, 200);
    }
    assert_eq!(served.file(JOB), first);
}

#[test]
fn two_servers_on_one_folder_lose_nothing() {
    let one = served(&[JOB]);
    let two = one.another();
    let count = 20;
    std::thread::scope(|scope| {
        for (which, served) in [("one", &one), ("two", &two)] {
            scope.spawn(move || {
                for n in 0..count {
                    let add = format!(
                        r#"[{{"do":"add","block":"surface","keys":[["name","{which} {n}"],["area","1{n} m2"],["kind","concrete"]]}}]"#
                    );
                    // Whoever is told that another program keeps writing tries again, as a person would.
                    let said = (0..50).find(|_| served.send("POST", "/api/sheets/machine-shop/actions", &add).status == 200);
                    assert!(said.is_some(), "{which} {n} was never taken");
                }
            });
        }
    });
    let text = one.file(JOB);
    for which in ["one", "two"] {
        for n in 0..count {
            assert_eq!(text.matches(&format!("name = \"{which} {n}\"")).count(), 1, "{which} {n}\n{text}");
        }
    }
    // Each shows what the other wrote.
    for (served, other) in [(&one, "two 19"), (&two, "one 19")] {
        assert!(served.get("/api/sheets/machine-shop/text").text().contains(other));
    }
}
