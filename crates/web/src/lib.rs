//! The sheet: the tool in the browser over a folder of enquiries, and the same as an interface for programs.
//!
//! - `server`: who is listened to, for how long, and how much at once. `guard`: who may ask.
//! - `desk`: the folder and the sheets that lie open. `sheet`: one of them: its text, its history, what it comes to.
//! - `manual`: what the pages of the manual say, served and as a folder. `api`: the interface for programs, from one list of ways. `pages`: whole pages. `parts`: the pieces of them that change.
//!
//! No number is found here: pages print what the other rooms found.

mod answer;
mod api;
mod assets;
mod customer;
mod desk;
mod guard;
mod inputs;
mod listed;
pub mod manual;
mod outcome;
mod pages;
mod parts;
mod server;
mod sheet;
mod work;

pub use server::{Options, Serving, start};
