//! From a customer's mail to a sheet: what it says is marked, a click makes it a claim with its sentence, what is used is
//! struck.

use crate::desk::Desk;

/// An invented mail.
const MAIL: &str = "Dear all,\n\nWe are planning a new wash bay for our delivery vans. The wash runs at 12 m3/h for about two hours a day.\nThe water goes to the sanitary sewer; the limit is 20 mg/L of hydrocarbons.\nIn winter the water is down to 6 °C.\nA pump in the pit lifts 20 m3/h.\n\nRegards,\nInvented Logistics\n";

#[test]
fn a_mail_becomes_a_sheet() {
    let desk = Desk::open(&[], (1440, 900));
    desk.go("/");
    desk.see("document.querySelector('#new-mail')");
    desk.script(&format!("document.querySelector('#new-mail').value = {MAIL:?}; 1"));
    desk.fill("#new-name", "van wash");
    desk.click("form[data-new] button[type=submit]");
    desk.see("location.pathname.startsWith('/sheet/')");
    // What was pasted stands beside the sheet at once.
    desk.see("document.querySelectorAll('.mail mark').length > 3");
    // The flow starts a water of its own.
    desk.script("[...document.querySelectorAll('.mail mark')].find(m => m.innerText.includes('12 m3/h')).click(); 1");
    desk.see("document.querySelector('#panel form.fresh[data-fresh=stream]')");
    desk.fill("#panel form.fresh[data-fresh=stream] input", "van wash");
    desk.click("#panel form.fresh[data-fresh=stream] button");
    desk.see("[...document.querySelectorAll('.mail mark.used')].some(m => m.innerText.includes('12 m3/h'))");
    let text = desk.file("van wash");
    assert!(text.contains("12 m3/h") && text.contains("The wash runs at 12 m3/h for about two hours a day."), "{text}");
    // One that goes into a block that stands alone is taken at one click.
    desk.script("[...document.querySelectorAll('.mail mark')].find(m => m.innerText.includes('6 °C')).click(); 1");
    desk.see(
        "[...document.querySelectorAll('#panel .offers button')].some(b => b.innerText.startsWith('water.coldest'))",
    );
    desk.script("[...document.querySelectorAll('#panel .offers button')].find(b => b.innerText.startsWith('water.coldest')).click(); 1");
    desk.see("[...document.querySelectorAll('.mail mark.used')].some(m => m.innerText.includes('6 °C'))");
    assert!(desk.file("van wash").contains("coldest"), "{}", desk.file("van wash"));
    // A pump is one of several that may be: its rate is that of the first.
    desk.script("[...document.querySelectorAll('.mail mark')].find(m => m.innerText.includes('20 m3/h')).click(); 1");
    desk.see(
        "[...document.querySelectorAll('#panel .offers button')].some(b => b.innerText.startsWith('inlet.rate.1'))",
    );
    desk.script("[...document.querySelectorAll('#panel .offers button')].find(b => b.innerText.startsWith('inlet.rate.1')).click(); 1");
    desk.see("[...document.querySelectorAll('.mail mark.used')].some(m => m.innerText.includes('20 m3/h'))");
    assert!(desk.file("van wash").contains("A pump in the pit lifts 20 m3/h."), "{}", desk.file("van wash"));
    desk.see("document.querySelector('#picture svg')");
    // A limit is called by its pollutant, and its number then goes to it.
    desk.script(
        "[...document.querySelectorAll('.mail mark')].find(m => m.innerText.includes('hydrocarbons')).click(); 1",
    );
    desk.see("document.querySelector('#panel form.fresh[data-fresh=limit]')");
    desk.click("#panel form.fresh[data-fresh=limit] button");
    desk.see("[...document.querySelectorAll('.mail mark.used')].some(m => m.innerText.includes('hydrocarbons'))");
    desk.script("[...document.querySelectorAll('.mail mark')].find(m => m.innerText.includes('20 mg/L')).click(); 1");
    desk.see("[...document.querySelectorAll('#panel .offers button')].some(b => b.innerText.startsWith('limit \"'))");
    desk.script("[...document.querySelectorAll('#panel .offers button')].find(b => b.innerText.startsWith('limit \"')).click(); 1");
    desk.see("document.querySelector('#glance').innerText.includes('20 mg/L')");
    desk.close();
}

#[test]
fn an_empty_sheet_asks_for_what_changes_the_answer() {
    let desk = Desk::open(&[], (1440, 900));
    desk.go("/");
    desk.fill("#new-name", "new wash bay");
    desk.click("form[data-new] button[type=submit]");
    desk.see("document.querySelector('.starter')");
    desk.fill("#start-stream-name", "hand wash");
    desk.fill("#start-stream-flow", "10 gpm");
    desk.fill("#start-stream-hours_per_day", "2");
    desk.click(".starter form[data-add=stream] button");
    // From here on there is a water, and with it a unit and a drawing.
    desk.see("document.querySelector('#picture svg')");
    desk.see("document.querySelector('#glance').innerText.includes('Demo')");
    let text = desk.file("new wash bay");
    assert!(text.contains("[[stream]]") && text.contains("\"10 gpm\""), "{text}");
    // The questions stand in the notes, what moves the result most first; an answer there goes into the file. They follow the
    // drawing.
    desk.see("document.querySelector('.questions form.answer')");
    let key = desk.value("document.querySelector('.questions form.answer').dataset.set");
    let now = desk.value("document.querySelector('.questions form.answer input').placeholder");
    desk.script(&format!("document.querySelector('.questions form.answer input').value = {now:?}; 1"));
    desk.click(".questions form.answer button");
    desk.see("!document.querySelector('[data-step=undo]').disabled");
    desk.see(&format!(
        "![...document.querySelectorAll('.questions form.answer')].some(f => f.dataset.set === {key:?})"
    ));
    desk.close();
}

#[test]
fn an_answer_to_a_question_of_ours_becomes_a_claim() {
    let desk = Desk::open(&["truck-wash"], (1440, 900));
    let reply = reply_of(&desk.folder.path().join("truck-wash"));
    let question = reply.iter().find(|q| q.keys.iter().any(|key| key.ends_with(".solids"))).unwrap();
    let mail =
        format!("Hello,\n\n> {}. {}\nabout 450 mg/L\n\nRegards\nInvented Feeds\n", question.number, question.text);
    desk.go("/sheet/truck-wash");
    desk.click("[data-beside='mail']");
    desk.see("document.querySelector('#mail-text')");
    let typed = "dispatchEvent(new Event('input', { bubbles: true }))";
    desk.script(&format!("const t = document.querySelector('#mail-text'); t.value = {mail:?}; t.{typed}; 1"));
    desk.click("form[data-mail] button[type=submit]");
    desk.see("document.querySelector('.answers blockquote')?.innerText.includes('about 450 mg/L')");
    // It was asked of two waters: one click for each.
    desk.see("document.querySelectorAll('.answers button[data-act]').length === 2");
    desk.click(".answers button[data-act]");
    // What is left of the question is asked of the other water alone, and our own figure is no answer to it.
    desk.see("document.querySelector('[data-step=undo]').title.includes('.solids')");
    assert!(!desk.text(".answers").contains("= 1000 mg/L"), "{}", desk.text(".answers"));
    assert!(desk.file("truck-wash").contains("from = \"about 450 mg/L\""), "{}", desk.file("truck-wash"));
    desk.close();
}

/// The questions of the reply to an enquiry.
fn reply_of(folder: &std::path::Path) -> Vec<stillrise_documents::reply::Posed> {
    let (settled, _) =
        stillrise_desk::files::settled(folder, None).unwrap_or_else(|_| panic!("the worked job is settled"));
    stillrise_documents::reply::posed(&settled)
}
