//! Every rule, once.

use super::anchor_not_allowed;
use super::defect_open;
use super::gap_too_tight;
use super::key_twice;
use super::missing_key;
use super::no_such_record;
use super::not_a_date;
use super::not_a_number;
use super::not_measured;
use super::oar_twice;
use super::oar_unfit;
use super::out_of_bounds;
use super::pin_not_vertical;
use super::record_twice;
use super::rule::Rule;
use super::seats_wrong;
use super::tag_not_allowed;
use super::too_large;
use super::unknown_key;
use super::unreadable;
use super::wrong_id;
use super::wrong_unit;
use super::wrong_word;

/// Every rule, in the order in which the boat is rigged; what is told while reading comes last.
pub static RULES: &[&Rule] = &[
    &pin_not_vertical::RULE,
    &gap_too_tight::RULE,
    &oar_unfit::RULE,
    &defect_open::RULE,
    &oar_twice::RULE,
    &no_such_record::RULE,
    &record_twice::RULE,
    &seats_wrong::RULE,
    &not_measured::RULE,
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
