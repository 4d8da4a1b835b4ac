//! What pages, tables and paragraphs must keep, whatever they say.

use std::collections::BTreeMap;
use stillrise_documents::render::pdf::{self, PdfFault};
use stillrise_documents::render::text::{self, Table};

/// What a customer may write; to be seen as written, nowhere to be obeyed.
const HOSTILE: &str = "</text><script>alert(1)</script> #panic() *x* $ \"&'\u{1b}[31m\u{0} =A1";

fn files(data: &str) -> BTreeMap<String, Vec<u8>> {
    BTreeMap::from([("data.json".to_owned(), data.as_bytes().to_vec())])
}

/// A page as documents write it: all words come from the data.
const PAGE: &str = "#let d = json(\"data.json\")\n#set document(title: d.title)\n= #d.title\n#d.text\n";

#[test]
fn pages_are_reproducible_and_take_text_as_text() -> Result<(), PdfFault> {
    let data =
        serde_json::json!({ "title": "Report", "text": "#panic() #pagebreak() *x* $ <y> @z \\ ``` ]" }).to_string();
    let one = pdf::typeset(PAGE, files(&data), "report")?;
    let two = pdf::pdf(PAGE, files(&data), "report")?;
    assert!(one.bytes == two && one.bytes.starts_with(b"%PDF-1.7"));
    assert_eq!((one.inaccessible, one.pages, one.warnings), (None, 1, Vec::new()));
    Ok(())
}

#[test]
fn letters_without_a_glyph_cost_the_standard_but_not_the_document() -> Result<(), PdfFault> {
    let data = serde_json::json!({ "title": "Report", "text": "油水分離" }).to_string();
    let page = pdf::typeset(PAGE, files(&data), "report")?;
    assert_eq!(page.pages, 1);
    assert!(page.inaccessible.is_some_and(|fault| !fault.message.is_empty()));
    Ok(())
}

#[test]
fn faults_of_the_markup_have_a_place() {
    let fault = |main: &str| pdf::pdf(main, BTreeMap::new(), "x").err().map(|f| (f.place.clone(), f.to_string()));
    assert_eq!(fault("= A\n\n#b").map(|f| f.0).as_deref(), Some("main.typ:3:2"));
    assert!(fault("#image(\"gone.svg\")").is_some_and(|f| f.1.contains("gone.svg")));
    assert!(fault("#datetime.today()").is_some(), "there is no clock");
    assert!(fault("#import \"@preview/x:0.1.0\": y").is_some(), "there are no packages");
    assert!(fault("#read(\"../../etc/passwd\")").is_some(), "there are no other files");
}

#[test]
fn tables_align_numbers_to_the_right_and_wrap_the_last_column() {
    let mut table = Table::new(["Rule", "Margin", "Remark"]);
    table.row(["rise", "12.5 %", "kept"]);
    table.row(["overflow", "-3 %", "the plates are loaded beyond what the guide allows for this oil"]);
    let expected = "\
Rule      Margin  Remark
--------  ------  ----------------------
rise      12.5 %  kept
overflow    -3 %  the plates are loaded
                  beyond what the guide
                  allows for this oil
";
    assert_eq!(table.render(40), expected);
    for width in 0..120 {
        let rendered = table.render(width);
        assert!(rendered.lines().all(|l| text::cells(l) <= width.max(18 + 16)), "{width}\n{rendered}");
        assert_eq!(rendered.matches("beyond").count(), 1, "nothing is lost");
    }
    assert_eq!(table.json()["right"], serde_json::json!([false, true, false]));
    assert_eq!(Table::default().render(80), "");
    let mut ragged = Table::default();
    ragged.row(["a"]);
    ragged.row(["b", HOSTILE]);
    assert!(!ragged.to_string().contains('\u{1b}'));
    let mut dates = Table::new(["Date"]);
    dates.row(["2026-03-02"]);
    assert!(!dates.is_number(0));
}

#[test]
fn paragraphs_wrap_by_cells_and_hang_under_their_mark() {
    // Below a least width, lines stay readable and grow longer instead.
    assert_eq!(text::wrap("one two  three\nfour", 9, 0), "one two three\nfour\n");
    assert_eq!(text::wrap("aaaa bbbb cccc dddd eeee", 20, 2), "  aaaa bbbb cccc\n  dddd eeee\n");
    assert_eq!(text::item("12.", "aaaa bbbb cccc dddd eeee", 20), "12. aaaa bbbb cccc\n    dddd eeee\n");
    assert_eq!(text::hang("aaaa bbbb cccc dddd eeee", 20, 4, 0), "    aaaa bbbb cccc\ndddd eeee\n");
    assert_eq!(text::wrap("a\n\nb", 20, 0), "a\n\nb\n");
    assert_eq!(text::heading("Open questions"), "\nOpen questions\n--------------\n");
    assert_eq!(text::plain(" a\tb\u{1b}[0m\u{202e}c "), "a b [0m c");
    assert_eq!(text::lines("", 10), [""]);
    assert_eq!(text::lines("abcdefgh", 3), ["abc", "def", "gh"]);
    assert_eq!((text::cells("µm²"), text::cells("油水"), text::cells("e\u{301}")), (3, 4, 1));
    for width in 0..60 {
        let longest = text::lines(HOSTILE, width).iter().map(|l| text::cells(l)).max();
        assert!(longest <= Some(width.max(1)), "{width}");
    }
}
