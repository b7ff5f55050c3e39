//! Every rule, once.

use super::anchor_not_allowed;
use super::arc_disagrees;
use super::bed_wrong;
use super::bent_often;
use super::boat_not_level;
use super::changed_but_not_remeasured;
use super::chock_distance;
use super::chocks_unlike;
use super::date_in_future;
use super::defect_open;
use super::gap_not_measured;
use super::gap_rubs_in_roll;
use super::gap_too_loose;
use super::gap_too_tight;
use super::gearing_unlike;
use super::handle_past_mark_disagrees;
use super::handle_past_mark_wrong;
use super::hands_set_pitch;
use super::horn_hooks;
use super::key_twice;
use super::knocked_since;
use super::level_not_recorded;
use super::lift_not_tried;
use super::limit_loosened;
use super::missing_key;
use super::no_such_record;
use super::not_a_date;
use super::not_a_number;
use super::not_measured;
use super::not_signed_off;
use super::oar_cannot_suit;
use super::oar_did_not_lift_out;
use super::oar_twice;
use super::oar_unfit;
use super::oars_unlike;
use super::out_of_bounds;
use super::overdue;
use super::pin_not_vertical;
use super::pitch_mismatch;
use super::pitch_out_of_range;
use super::pitch_varies_through_arc;
use super::predicted_not_measured;
use super::record_twice;
use super::rowlock_not_free;
use super::rule::Rule;
use super::seats_wrong;
use super::sides_unequal;
use super::signer_unknown;
use super::sum_missing;
use super::sum_wrong;
use super::tag_not_allowed;
use super::too_large;
use super::tool_too_coarse;
use super::unit_suspect;
use super::unknown_key;
use super::unreadable;
use super::waiver_lapsed;
use super::waiver_not_allowed;
use super::waiver_unused;
use super::walk_round;
use super::wrong_id;
use super::wrong_unit;
use super::wrong_word;

/// Every rule, in the order in which the boat is rigged; what is told while reading comes last.
pub static RULES: &[&Rule] = &[
    &boat_not_level::RULE,
    &level_not_recorded::RULE,
    &pin_not_vertical::RULE,
    &pitch_varies_through_arc::RULE,
    &arc_disagrees::RULE,
    &pitch_out_of_range::RULE,
    &pitch_mismatch::RULE,
    &sides_unequal::RULE,
    &gap_too_tight::RULE,
    &gap_too_loose::RULE,
    &oar_cannot_suit::RULE,
    &gap_rubs_in_roll::RULE,
    &gap_not_measured::RULE,
    &oar_did_not_lift_out::RULE,
    &lift_not_tried::RULE,
    &horn_hooks::RULE,
    &rowlock_not_free::RULE,
    &bed_wrong::RULE,
    &hands_set_pitch::RULE,
    &handle_past_mark_wrong::RULE,
    &handle_past_mark_disagrees::RULE,
    &chock_distance::RULE,
    &chocks_unlike::RULE,
    &oars_unlike::RULE,
    &gearing_unlike::RULE,
    &oar_unfit::RULE,
    &defect_open::RULE,
    &walk_round::RULE,
    &knocked_since::RULE,
    &bent_often::RULE,
    &oar_twice::RULE,
    &no_such_record::RULE,
    &record_twice::RULE,
    &seats_wrong::RULE,
    &sum_wrong::RULE,
    &sum_missing::RULE,
    &unit_suspect::RULE,
    &tool_too_coarse::RULE,
    &not_measured::RULE,
    &overdue::RULE,
    &date_in_future::RULE,
    &not_signed_off::RULE,
    &signer_unknown::RULE,
    &predicted_not_measured::RULE,
    &changed_but_not_remeasured::RULE,
    &limit_loosened::RULE,
    &waiver_lapsed::RULE,
    &waiver_unused::RULE,
    &waiver_not_allowed::RULE,
    &unreadable::RULE,
    &unknown_key::RULE,
    &key_twice::RULE,
    &not_a_number::RULE,
    &wrong_unit::RULE,
    &wrong_word::RULE,
    &not_a_date::RULE,
    &missing_key::RULE,
    &wrong_id::RULE,
    &out_of_bounds::RULE,
    &anchor_not_allowed::RULE,
    &tag_not_allowed::RULE,
    &too_large::RULE,
];

/// Returns the rule called `id`.
#[must_use]
pub fn find(id: &str) -> Option<&'static Rule> {
    RULES.iter().copied().find(|rule| rule.id == id)
}
