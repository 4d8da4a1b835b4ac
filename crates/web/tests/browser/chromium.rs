//! A browser without a screen, in a fresh profile, with a window of a size.

use chromiumoxide::browser::{Browser, BrowserConfig};
use chromiumoxide::handler::viewport::Viewport;
use chromiumoxide::page::Page;
use futures_util::StreamExt;
use std::path::PathBuf;
use tempfile::TempDir;

/// The browser, where it usually lies.
fn chromium() -> PathBuf {
    let said = std::env::var_os("STILLRISE_CHROMIUM").map(PathBuf::from);
    let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].map(PathBuf::from);
    let found = said.into_iter().chain(usual).find(|path| path.exists());
    found.expect(
        "Chromium is needed here: install it (Debian: apt-get install chromium), or name it in STILLRISE_CHROMIUM",
    )
}

/// Starts it: the browser, an empty page of it, and its profile, which goes when it is dropped.
pub async fn launched((width, height): (u32, u32)) -> (Browser, Page, TempDir) {
    let profile = tempfile::tempdir().unwrap();
    let quiet = [
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];
    let config = BrowserConfig::builder()
        .chrome_executable(chromium())
        .no_sandbox()
        .user_data_dir(profile.path())
        .window_size(width, height)
        .viewport(Viewport { width, height, ..Default::default() })
        .args(quiet)
        .build()
        .unwrap();
    let (browser, mut handler) = Browser::launch(config).await.unwrap();
    // Whatever the browser says beside answers is of no interest, but has to be read.
    tokio::spawn(async move { while handler.next().await.is_some() {} });
    let page = browser.new_page("about:blank").await.unwrap();
    (browser, page, profile)
}
