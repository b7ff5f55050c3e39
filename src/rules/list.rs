//! Every rule, once.

use super::bed_wrong;
use super::bent_often;
use super::chock_distance;
use super::chocks_unlike;
use super::date_in_future;
use super::gap_too_tight;
use super::gearing_unlike;
use super::hands_set_pitch;
use super::knocked_since;
use super::not_signed_off;
use super::oars_unlike;
use super::overdue;
use super::pin_not_vertical;
use super::predicted_not_measured;
use super::rule::Rule;
use super::signer_unknown;
use super::sum_missing;
use super::sum_wrong;
use super::tool_too_coarse;
use super::unit_suspect;
use super::unknown_key;
use super::walk_round;

/// Every rule, in the order in which the boat is rigged; what is told while reading comes last.
pub static RULES: &[&Rule] = &[
    &pin_not_vertical::RULE,
    &gap_too_tight::RULE,
    &bed_wrong::RULE,
    &hands_set_pitch::RULE,
    &chock_distance::RULE,
    &chocks_unlike::RULE,
    &oars_unlike::RULE,
    &gearing_unlike::RULE,
    &walk_round::RULE,
    &knocked_since::RULE,
    &bent_often::RULE,
    &sum_wrong::RULE,
    &sum_missing::RULE,
    &unit_suspect::RULE,
    &tool_too_coarse::RULE,
    &overdue::RULE,
    &date_in_future::RULE,
    &not_signed_off::RULE,
    &signer_unknown::RULE,
    &predicted_not_measured::RULE,
    &unknown_key::RULE,
];

/// Returns the rule called `id`.
#[must_use]
pub fn find(id: &str) -> Option<&'static Rule> {
    RULES.iter().copied().find(|rule| rule.id == id)
}
