//! The rules, one a file. A new rule is registered here by one line.

use crate::rule::Rule;

macro_rules! list_rules {
    ($($name:ident),* $(,)?) => {
        $(pub mod $name;)*
        /// All rules, in the order of print.
        pub static RULES: &[&Rule] = &[$(&$name::RULE),*];
    };
}

list_rules! {
    unknown_decision,
    not_a_gravity_duty,
    only_partly_gravity,
    chain_stopped,
    no_limit_stated,
    limit_it_cannot_touch,
    rig_test_class,
    claims_contradict,
    stated_flow_contradicts_site,
    rain_table_starts_late,
    return_period_beyond_table,
    oil_hardly_rises,
    salt_in_water,
    stage_asked_for,
    not_enough_fall,
    gap_not_laminar,
    outlet_drowned,
    outlet_may_siphon,
    inlet_submerged,
    freeboard_short,
    oil_cap_too_thin,
    alarm_after_loss,
    float_never_trips,
    float_off_best,
    spill_above_room,
    spill_without_closure,
    solids_bury_pack,
    hopper_missing,
    hopper_too_flat,
    pack_cannot_be_lifted,
    plates_too_flat,
    gap_too_narrow,
    plate_area_short,
    slot_too_fast,
    chamber_too_fast,
    inlet_nozzle_too_fast,
    residence_too_short,
    draw_leaves_oil,
    oil_too_thick,
    does_not_fit,
    floor_in_a_pit,
    pump_above_rating,
    pumps_together_above_rating,
    pulsation_above_rating,
    feed_above_cap,
    sump_overflows,
    kind_of_pump_unknown,
    sheared_before_unit,
    emulsion_above_limit,
    promise_under_floor,
    statistic_against_mean,
    limit_not_shown,
    rated_on_other_basis,
    no_measured_results,
    outside_trusted_range,
    frost_outdoors,
    gasoline_vapour,
}
