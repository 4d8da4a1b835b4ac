//! The sheet in a real browser: what a person does with it, from a mail to a package. It needs Chromium and axe-core;
//! `cargo xtask test` puts both where they are looked for, or says what to do.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod accessible;
mod chromium;
mod desk;
mod documents;
mod keyboard;
mod mail;
mod manual;
#[path = "../served/mod.rs"]
mod served;
mod sheet;
