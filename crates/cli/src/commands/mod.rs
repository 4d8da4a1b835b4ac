//! One command a file.

pub mod compare;
pub mod completions;
pub mod documents;
pub mod flow;
pub mod issue;
pub mod man;
pub mod manual;
pub mod new;
pub mod rate;
pub mod read;
pub mod remedy;
pub mod reply;
pub mod risk;
pub mod schema;
pub mod serve;
pub mod size;
pub mod submittal;
mod under;
pub mod verify;
pub mod words;
pub mod work;
