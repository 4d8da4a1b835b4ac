//! `read`: what a customer's mail says, and which keys of an enquiry it could answer.

use crate::{End, out};
use serde_json::json;
use std::io::Read as _;
use std::path::{Path, PathBuf};
use stillrise_desk::files;
use stillrise_documents::package::pretty;
use stillrise_documents::reading::read_json;
use stillrise_documents::render::text::{Table, hang};
use stillrise_documents::reply::posed;
use stillrise_mail::answers::{Asked, answers};
use stillrise_mail::read_mail;
use stillrise_units::Fault;
use stillrise_units::parse::{Gallon, Reading};

/// Quantities, oils, products, surfaces, pumps, places and limits in a customer's text, and the keys
/// that each could answer
#[derive(clap::Args)]
pub struct Args {
    /// The text; "-" reads from standard input
    mail: PathBuf,
    /// Which gallon is meant, where the text does not say
    #[arg(long, value_parser = ["us", "imperial"])]
    gallon: Option<String>,
    /// The enquiry whose questions it answers, file or folder: prints the answers in place of the finds
    #[arg(long = "for", value_name = "FILE")]
    enquiry: Option<PathBuf>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// The longest text that is read, bytes.
const LONGEST: u64 = 1 << 20;

/// Runs it.
pub fn run(args: &Args) -> End {
    let text = match text(args) {
        Ok(text) => text,
        Err(end) => return end,
    };
    let gallon = args.gallon.as_deref().map(|word| if word == "us" { Gallon::Us } else { Gallon::Imperial });
    if let Some(file) = &args.enquiry {
        return answered(&text, file, &Reading { gallon }, args.json);
    }
    let mail = read_mail(&text, &Reading { gallon });
    if args.json {
        out::print(&String::from_utf8_lossy(&pretty(&read_json(&text, &mail))));
        return End::Done;
    }
    let width = out::width();
    if mail.finds.is_empty() {
        out::print("Nothing was found that an enquiry asks for.\n");
        return End::Done;
    }
    let mut table = Table::new(["line", "said", "could answer"]);
    for find in &mail.finds {
        let line = 1 + text[..find.at.start].matches('\n').count();
        let paths: Vec<&str> = find.offers.iter().map(|offer| offer.path.as_str()).collect();
        let paths = if paths.is_empty() { "no key that its words point to".to_owned() } else { paths.join(", ") };
        table.row([line.to_string(), text[find.at.clone()].split_whitespace().collect::<Vec<_>>().join(" "), paths]);
    }
    out::print(&table.render(width));
    let open = mail.finds.iter().filter(|find| find.offers.is_empty()).count();
    out::print(&hang(
        &format!(
            "{} finds, {open} of them without a key. The likeliest key stands first, by its unit and the words beside it; which holds is for you to say. Numbers without a unit, and what is said in words alone, are not among them.",
            mail.finds.len()
        ),
        width,
        0,
        0,
    ));
    End::Done
}

/// The answers of the text to the questions of an enquiry's reply.
fn answered(text: &str, file: &Path, reading: &Reading, json: bool) -> End {
    let settled = match files::settled(file, None) {
        Ok((settled, _)) => settled,
        Err(trouble) => return trouble.into(),
    };
    let asked: Vec<Asked> =
        posed(&settled).into_iter().map(|q| Asked { number: q.number, text: q.text, keys: q.keys }).collect();
    let found = answers(text, &read_mail(text, reading), &asked, reading);
    let pairs = || found.iter().filter_map(|answer| Some((asked.get(answer.question)?, answer)));
    if json {
        let one = |(asked, answer): (&Asked, &stillrise_mail::answers::Answer)| {
            json!({
                "number": asked.number, "question": asked.text, "from": answer.at.start, "to": answer.at.end,
                "said": answer.said, "key": answer.key, "value": answer.value,
            })
        };
        out::print(&String::from_utf8_lossy(&pretty(&json!({ "answers": pairs().map(one).collect::<Vec<_>>() }))));
        return End::Done;
    }
    if found.is_empty() {
        out::print("None of the questions of the reply is answered in it.\n");
        return End::Done;
    }
    let mut table = Table::new(["question", "said", "key", "value"]);
    for (asked, answer) in pairs() {
        let (key, value) = (answer.key.clone().unwrap_or_default(), answer.value.clone().unwrap_or_default());
        table.row([format!("{}. {}", asked.number, asked.text), answer.said.clone(), key, value]);
    }
    let width = out::width();
    out::print(&table.render(width));
    let open = asked.len() - found.len();
    out::print(&hang(
        &format!("{} answered, {open} open. Without a value the words give none that the key takes.", found.len()),
        width,
        0,
        0,
    ));
    End::Done
}

fn text(args: &Args) -> Result<String, End> {
    let name = args.mail.display().to_string();
    let refused = |reason: &str, remedy: &str| End::Refused(vec![Fault::new(name.clone(), reason, remedy)]);
    let mut bytes = Vec::new();
    let read = if name == "-" {
        std::io::stdin().lock().take(LONGEST + 1).read_to_end(&mut bytes)
    } else {
        std::fs::File::open(&args.mail).and_then(|file| file.take(LONGEST + 1).read_to_end(&mut bytes))
    };
    match read {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => {
            return Err(refused(
                "there is no such file",
                "check the path, or give the text on standard input with \"-\"",
            ));
        }
        Err(error) => return Err(End::Machine(format!("{name}: {error}"))),
        Ok(_) if bytes.len() as u64 > LONGEST => {
            return Err(refused("is longer than 1 MB", "give the text of the mail alone, without what is attached"));
        }
        Ok(_) => {}
    }
    String::from_utf8(bytes).map_err(|_| refused("is no text in UTF-8", "save it as plain text"))
}
