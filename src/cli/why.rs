//! `why`: a rule in full.

use super::arguments::Why;
use super::book::unknown;
use super::exit::Exit;
use super::look::look;
use super::output::Done;
use crate::reports;
use crate::rules;
use crate::rules::RULES;

/// Runs the command.
pub(super) fn run(arguments: &Why) -> Done {
    let Some(rule) = rules::find(&arguments.rule) else {
        let known: Vec<&str> = RULES.iter().map(|rule| rule.id).collect();
        let told = unknown("rule", &arguments.rule, &known, "All of them: tholebook rules");
        return Done::refused(Exit::Usage, told);
    };
    Done::result(reports::explain(rule, look(&arguments.look)))
}
