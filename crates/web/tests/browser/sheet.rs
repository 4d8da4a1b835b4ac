//! Point and edit, undo, text in step, decide, change the units: each is seen on the page and on the disk.

use crate::desk::Desk;

#[test]
fn a_station_is_pointed_at_and_changed_and_undone() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    let before = desk.file("vehicle-yard");
    assert!(desk.text("#glance").contains("Demo 180"));
    desk.click("button[data-point='outfall']");
    desk.see("document.querySelector('#panel h2')?.innerText.startsWith('Outfall')");
    desk.fill("#panel [data-set='outlet.tailwater']", "99.3 ft");
    desk.see("document.querySelector('#picture svg').textContent.includes('99.30 ft')");
    assert!(desk.file("vehicle-yard").contains("tailwater = \"99.3 ft\""), "it is on the disk when it is on the page");
    desk.see("document.querySelector('[data-step=undo]').title.includes('outlet.tailwater')");
    desk.click("[data-step='undo']");
    desk.see("!document.querySelector('#picture svg').textContent.includes('99.30 ft')");
    assert_eq!(desk.file("vehicle-yard"), before, "undone to the byte, comments and all");
    desk.click("[data-step='redo']");
    desk.see("document.querySelector('#picture svg').textContent.includes('99.30 ft')");
    desk.close();
}

#[test]
fn what_is_no_quantity_is_refused_at_its_place() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    let before = desk.file("vehicle-yard");
    desk.click("button[data-point='outfall']");
    desk.fill("#panel [data-set='outlet.length']", "24 gpm");
    desk.see("document.querySelector('#trouble').innerText.includes('outlet: length')");
    assert_eq!(desk.file("vehicle-yard"), before);
    desk.close_after_refusals();
}

#[test]
fn text_and_sheet_stay_in_step() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    desk.click("[data-beside='text']");
    desk.see("document.querySelector('#enquiry-text')?.value.includes('fuelling apron')");
    let script = "const t = document.querySelector('#enquiry-text'); t.value = t.value.replace('Bus yard, north apron', 'Bus yard, south apron'); t.dispatchEvent(new Event('input', { bubbles: true })); 1";
    desk.script(script);
    desk.click("form[data-text] button[type=submit]");
    desk.see("document.querySelector('#title input').value === 'Bus yard, south apron'");
    assert!(desk.file("vehicle-yard").contains("south apron"));
    // The other way: a field of the sheet writes into the text.
    desk.fill("#title [data-set='enquiry.project']", "Q-2000");
    desk.see("document.querySelector('#enquiry-text').value.includes('Q-2000')");
    desk.close();
}

#[test]
fn a_file_changed_outside_is_noticed_and_not_overwritten() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    let path = desk.folder.path().join("vehicle-yard/enquiry.toml");
    let text = desk.file("vehicle-yard");
    std::fs::write(&path, text.replace("Q-1042", "Q-7777")).unwrap();
    desk.fill("#title [data-set='enquiry.client']", "Invented Transit");
    desk.see("document.querySelector('[data-step=undo]').title.includes('enquiry.client')");
    desk.see("document.querySelector('#title-enquiry-project').value === 'Q-7777'");
    let now = desk.file("vehicle-yard");
    assert!(now.contains("Q-7777") && now.contains("Invented Transit"), "{now}");
    desk.close();
}

#[test]
fn a_finding_is_accepted_with_reason_and_name() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    let rule = desk.value("document.querySelector('form[data-decide]').dataset.decide");
    desk.click(&format!("#rule-{rule} summary"));
    desk.fill(&format!("#rule-{rule} [name=because]"), "as agreed on the telephone");
    desk.fill(&format!("#rule-{rule} [name=who]"), "J. Example");
    desk.click(&format!("#rule-{rule} form[data-decide] button"));
    desk.see("[...document.querySelectorAll('#notes h2')].some(h => h.innerText.startsWith('Decided'))");
    let text = desk.file("vehicle-yard");
    assert!(text.contains(&format!("rule = \"{rule}\"")) && text.contains("J. Example"), "{text}");
    // The day is offered, and kept with reason and name.
    assert!(text.contains("\ndate = \"20"), "{text}");
    desk.close();
}

#[test]
fn units_of_print_change_at_one_switch() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    assert!(desk.text("#glance").contains("gpm"));
    desk.see("document.querySelector('.switch button:last-child')");
    desk.click(".switch button:last-child");
    desk.see("document.querySelector('#glance').innerText.includes('m3/h')");
    desk.close();
}

#[test]
fn a_number_is_followed_to_where_it_comes_from() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard/basis");
    desk.click("td button[data-trail]");
    desk.see("document.querySelector('#panel h2')?.innerText.includes('=')");
    // Down to something that somebody said or assumed, or a formula with its equation.
    for _ in 0..12 {
        if desk.value("document.querySelector('#panel .rests button') !== null") == "false" {
            break;
        }
        let before = desk.text("#panel h2");
        desk.click("#panel .rests button");
        desk.see(&format!("document.querySelector('#panel h2').innerText !== {before:?}"));
    }
    let text = desk.text("#panel");
    assert!(text.contains("given:") || text.contains("assumed"), "{text}");
    desk.close();
}

#[test]
fn a_column_of_a_spreadsheet_goes_into_the_table() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    desk.click("[data-beside='inputs']");
    desk.see("document.querySelector('#key-enquiry-client')");
    let script = "const data = new DataTransfer(); data.setData('text/plain', 'Invented Buses\\nQ-3000'); document.querySelector('#beside #key-enquiry-client').dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })); 1";
    desk.script(script);
    desk.see("document.querySelector('#title-enquiry-project').value === 'Q-3000'");
    let text = desk.file("vehicle-yard");
    assert!(text.contains("Invented Buses") && text.contains("Q-3000"), "{text}");
    // Both at once are one step.
    desk.click("[data-step='undo']");
    desk.see("document.querySelector('#title-enquiry-project').value === 'Q-1042'");
    desk.close();
}

#[test]
fn a_unit_is_taken_and_pinned_and_let_go() {
    let desk = Desk::open(&["vehicle-yard", "fuel-pad"], (1440, 900));
    desk.go("/sheet/vehicle-yard/units");
    assert!(desk.text(".card.taken").starts_with("Demo 180"));
    desk.see("document.querySelectorAll('.card svg').length === 5");
    desk.click(".card:nth-child(4) [data-act-away]");
    desk.see("document.querySelector('.card.taken')?.innerText.startsWith('Demo 260')");
    assert!(desk.file("vehicle-yard").contains("model = \"Demo 260\""));
    desk.click("p > [data-act-away]");
    desk.see("document.querySelector('.card.taken')?.innerText.startsWith('Demo 180')");
    desk.click("form.finder button");
    desk.see("document.querySelectorAll('.compare .differs').length > 3");
    desk.close();
}

#[test]
fn a_unit_that_stands_is_rated() {
    let desk = Desk::open(&["foundry"], (1440, 900));
    desk.go("/sheet/foundry/rating");
    desk.see("document.querySelector('.explanations li')");
    assert!(
        desk.text("main svg").is_empty() || desk.value("document.querySelectorAll('main figure svg').length") == "1"
    );
    assert!(desk.text("main").contains("What to test next"));
    desk.close();
}

#[test]
fn a_text_that_was_begun_is_neither_lost_nor_written_over_another_change() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    desk.click("[data-beside='text']");
    desk.see("document.querySelector('#enquiry-text')");
    let script = "const t = document.querySelector('#enquiry-text'); t.value = '# begun\\n' + t.value; t.dispatchEvent(new Event('input', { bubbles: true })); 1";
    desk.script(script);
    desk.fill("#title [data-set='enquiry.project']", "Q-4000");
    desk.see("!document.querySelector('[data-step=undo]').disabled");
    assert!(desk.value("document.querySelector('#enquiry-text').value").starts_with("# begun"));
    // It was begun over what no longer stands.
    desk.click("form[data-text] button[type=submit]");
    desk.see("document.querySelector('#trouble').innerText.includes('changed meanwhile')");
    assert!(desk.value("document.querySelector('#enquiry-text').value").starts_with("# begun"));
    assert!(desk.file("vehicle-yard").contains("Q-4000") && !desk.file("vehicle-yard").contains("# begun"));
    desk.close_after_refusals();
}

#[test]
fn a_finding_is_settled_by_its_remedy() {
    let desk = Desk::open(&["truck-wash"], (1440, 900));
    desk.go("/sheet/truck-wash");
    desk.see("document.querySelector('#rule-frost-outdoors.fails')");
    desk.click("#rule-frost-outdoors summary");
    desk.click("#rule-frost-outdoors [data-remedy]");
    desk.see("document.querySelector('#panel .remedies button')?.innerText.includes('Insulate')");
    assert!(desk.text("#panel .remedies li").contains("It passes then"), "{}", desk.text("#panel"));
    desk.click("#panel .remedies li:first-child button");
    desk.see("!document.querySelector('#rule-frost-outdoors')");
    desk.see("document.querySelector('#panel').hidden");
    assert!(desk.file("truck-wash").contains("frost_protected = true"), "{}", desk.file("truck-wash"));
    desk.see("document.querySelector('[data-step=undo]').title.includes('frost_protected')");
    // What is the client's to decide stays open, and one step takes both back.
    desk.click("#rule-emulsion-above-limit summary");
    desk.click("#rule-emulsion-above-limit [data-remedy]");
    desk.see("document.querySelector('#panel .remedies button')?.innerText.includes('quick-break')");
    desk.click("#panel .remedies li:first-child button");
    desk.see(
        "[...document.querySelectorAll('#notes h2')].some(h => h.innerText.includes('To be agreed by the client'))",
    );
    assert!(desk.file("truck-wash").contains("quick-break-detergent"), "{}", desk.file("truck-wash"));
    desk.click("[data-step=undo]");
    desk.see("![...document.querySelectorAll('#notes h2')].some(h => h.innerText.includes('To be agreed'))");
    assert!(!desk.file("truck-wash").contains("the client must agree"), "{}", desk.file("truck-wash"));
    desk.close();
}

#[test]
fn plan_sensitivity_and_values_are_a_click_away() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    desk.click("[data-views]");
    desk.see("[...document.querySelectorAll('#picture text')].some(t => t.textContent === 'SECTION A-A')");
    // The plan follows a change like the rest, and goes when it is asked to.
    desk.see("document.querySelector('.switch button:last-child')");
    desk.click(".switch button:last-child");
    desk.see("[...document.querySelectorAll('#picture text')].some(t => t.textContent === '1524')");
    desk.click("[data-views]");
    desk.see("![...document.querySelectorAll('#picture text')].some(t => t.textContent === 'SECTION A-A')");
    let before = desk.value("document.querySelectorAll('#way figure').length");
    desk.click("[data-study]");
    desk.see(&format!(
        "document.querySelectorAll('#way figure').length > {before} && !document.querySelector('[data-study]')"
    ));
    desk.click("#glance button[data-trail]");
    desk.see("document.querySelector('#panel h2')?.innerText.includes('=')");
    let copied = desk.value("document.querySelector('#panel [data-copied]').dataset.copied");
    assert!(desk.text("#panel h2").contains(&copied), "{copied}");
    assert!(copied.ends_with("L/s"), "{copied}");
    desk.close();
}

#[test]
fn an_issued_revision_is_kept_and_compared() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    desk.choose("#title-status", "issued");
    desk.see("document.querySelector('#steps').innerText.includes('issued, locked')");
    let issued = desk.file("vehicle-yard");
    let kept = std::fs::read_to_string(desk.folder.path().join("vehicle-yard/issued-A/inputs/enquiry.toml")).unwrap();
    assert_eq!(kept, issued);
    desk.click("#title [data-act]");
    desk.see("document.querySelector('#title-enquiry-revision').value === 'B'");
    desk.click("button[data-point='outfall']");
    desk.see("document.querySelector('#panel h2')?.innerText.startsWith('Outfall')");
    desk.fill("#panel [data-set='outlet.tailwater']", "99.3 ft");
    desk.see("document.querySelector('[data-step=undo]').title.includes('outlet.tailwater')");
    desk.go("/sheet/vehicle-yard/units");
    assert_eq!(desk.value("document.querySelector('#with').value"), "issued A");
    desk.click(".finder button");
    desk.see("document.querySelector('.compare')?.innerText.includes('99.3 ft')");
    assert!(desk.text("#changes p").contains("The inputs changed"));
    desk.close();
}
