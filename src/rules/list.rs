//! Every rule, once.

use super::arc_disagrees;
use super::boat_not_level;
use super::gap_not_measured;
use super::gap_rubs_in_roll;
use super::gap_too_loose;
use super::gap_too_tight;
use super::handle_past_mark_disagrees;
use super::handle_past_mark_wrong;
use super::horn_hooks;
use super::level_not_recorded;
use super::lift_not_tried;
use super::oar_cannot_suit;
use super::oar_did_not_lift_out;
use super::pin_not_vertical;
use super::pitch_mismatch;
use super::pitch_out_of_range;
use super::pitch_varies_through_arc;
use super::rowlock_not_free;
use super::rule::Rule;
use super::sides_unequal;
use super::unknown_key;

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
    &handle_past_mark_wrong::RULE,
    &handle_past_mark_disagrees::RULE,
    &unknown_key::RULE,
];

/// Returns the rule called `id`.
#[must_use]
pub fn find(id: &str) -> Option<&'static Rule> {
    RULES.iter().copied().find(|rule| rule.id == id)
}
