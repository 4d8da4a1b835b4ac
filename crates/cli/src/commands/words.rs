//! `words`: what a word or a symbol of the documents means.

use crate::{End, out};
use serde_json::{Value, json};
use stillrise_documents::package::pretty;
use stillrise_documents::render::text::{Table, hang, item};
use stillrise_handbook::manual::WORDS;
use stillrise_handbook::manual::words::{Symbol, Word, symbols, word};

/// Says what a word or a symbol of the documents means
#[derive(clap::Args)]
pub struct Args {
    /// The word, as "design droplet", or a symbol of the formulas, as v_0; without it all words are listed
    word: Option<String>,
    /// Lists all symbols of the formulas
    #[arg(long, conflicts_with = "word")]
    symbols: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// Runs it.
pub fn run(args: &Args) -> End {
    let (words, symbols) = match &args.word {
        None if args.symbols => (Vec::new(), symbols()),
        None => (WORDS.iter().collect(), if args.json { symbols() } else { Vec::new() }),
        Some(asked) => {
            let meant: Vec<Symbol> = symbols().into_iter().filter(|s| s.symbol == asked.trim()).collect();
            match word(asked) {
                Ok(found) => (vec![found], meant),
                Err(fault) if meant.is_empty() => return End::Refused(vec![fault]),
                Err(_) => (Vec::new(), meant),
            }
        }
    };
    if args.json {
        let all = json!({
            "words": words.into_iter().map(defined).collect::<Vec<_>>(),
            "symbols": symbols.iter().map(meant).collect::<Vec<_>>(),
        });
        out::print(&String::from_utf8_lossy(&pretty(&all)));
        return End::Done;
    }
    let width = out::width();
    let mut text = String::new();
    for w in words {
        text.push_str(&hang(&format!("{}: {}", w.word, w.says), width, 0, 2));
        if let (Some(source), true) = (w.source, args.word.is_some()) {
            text.push_str(&item("source", &source.to_string(), width));
        }
    }
    if !symbols.is_empty() {
        let mut table = Table::new(["symbol", "meaning", "formulas"]);
        for s in &symbols {
            table.row([s.symbol.clone(), s.meaning.to_owned(), ids(s).join(", ")]);
        }
        text.push_str(&table.render(width));
    }
    out::print(&text);
    End::Done
}

fn ids(symbol: &Symbol) -> Vec<&'static str> {
    symbol.pages.iter().map(|page| page.id).collect()
}

fn defined(w: &Word) -> Value {
    json!({ "word": w.word, "also": w.also, "says": w.says, "source": w.source.map(ToString::to_string) })
}

fn meant(symbol: &Symbol) -> Value {
    json!({ "symbol": symbol.symbol, "meaning": symbol.meaning, "formulas": ids(symbol) })
}
