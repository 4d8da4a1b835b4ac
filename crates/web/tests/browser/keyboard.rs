//! The sheet by the keyboard alone.

use crate::desk::Desk;

#[test]
fn a_part_is_reached_opened_changed_and_left_by_keys() {
    let desk = Desk::open(&["vehicle-yard"], (1440, 900));
    desk.go("/sheet/vehicle-yard");
    // Tab from the top until the outfall of the drawing has the focus.
    let mut reached = false;
    for _ in 0..120 {
        desk.press("Tab");
        if desk.value("document.activeElement?.dataset?.part ?? ''") == "outfall" {
            reached = true;
            break;
        }
    }
    assert!(reached, "the outfall is never reached by Tab");
    desk.press("Enter");
    desk.see("document.activeElement?.matches('#panel h2')");
    desk.press("Escape");
    desk.see("document.querySelector('#panel').hidden");
    desk.see("document.activeElement?.dataset?.part === 'outfall'");
    desk.close();
}
