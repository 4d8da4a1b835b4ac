//! The sheet by the keyboard alone.

use crate::desk::Desk;

#[tokio::test(flavor = "multi_thread")]
async fn a_part_is_reached_opened_changed_and_left_by_keys() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900)).await;
    desk.go("/sheet/vehicle-yard").await;
    // Tab from the top until the outfall of the drawing has the focus.
    let mut reached = false;
    for _ in 0..120 {
        desk.press("Tab").await;
        if desk.value("document.activeElement?.dataset?.part ?? ''").await == "outfall" {
            reached = true;
            break;
        }
    }
    assert!(reached, "the outfall is never reached by Tab");
    desk.press("Enter").await;
    desk.see("document.activeElement?.matches('#panel h2')").await;
    desk.press("Escape").await;
    desk.see("document.querySelector('#panel').hidden").await;
    desk.see("document.activeElement?.dataset?.part === 'outfall'").await;
    desk.close().await;
}
