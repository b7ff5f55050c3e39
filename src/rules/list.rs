//! Every rule, once.

use super::rule::Rule;
use super::{gap_too_tight, pin_not_vertical, unknown_key};

/// Every rule, in the order in which the boat is rigged; what is told while reading comes last.
pub static RULES: &[&Rule] = &[&pin_not_vertical::RULE, &gap_too_tight::RULE, &unknown_key::RULE];

/// Returns the rule called `id`.
#[must_use]
pub fn find(id: &str) -> Option<&'static Rule> {
    RULES.iter().copied().find(|rule| rule.id == id)
}
