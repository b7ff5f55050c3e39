//! What a report does not tell, said in the same words everywhere.

use crate::rules::Rule;

/// Said wherever something was checked.
pub const NO_PERMISSION: &str = "A clean report is no permission to launch: surf, crew, boat, \
     local rules, the association and the maker's instructions decide.";

/// Said wherever it is told whether an oar clears its rowlock.
pub const WHERE_THE_SUMS_STOP: &str = "Clears means the shaft fits through a still rowlock. It \
     doesn't mean the oar will come out in surf: load, friction, sand, a blocked rowlock and bent \
     metal aren't in the sum. Lift every oar out by hand before going afloat.";

/// Said wherever metal is to be bent.
pub const COLD_BENDING: &str = "Cold-bending weakens metal and can crack it; a pin or horn that \
     has been bent often is replaced, not bent again.";

/// Returns whether a rule is about an oar coming out of its rowlock.
pub(super) fn is_about_the_rowlock(rule: &Rule) -> bool {
    rule.id.split('-').any(|word| matches!(word, "gap" | "horn" | "lift" | "rowlock"))
}

/// Returns whether putting it right may mean bending metal.
pub(super) fn bends_metal(rule: &Rule) -> bool {
    let words = rule.remedy.split(|c: char| !c.is_alphabetic());
    words.map(str::to_lowercase).any(|word| matches!(word.as_str(), "bend" | "bent" | "bending"))
}
