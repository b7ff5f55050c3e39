//! `rules`: every rule.

use super::arguments::Rules;
use super::look::look;
use super::output::Done;
use crate::reports;

/// Runs the command.
pub(super) fn run(arguments: &Rules) -> Done {
    Done::result(reports::rules(look(&arguments.look)))
}
