//! What stands beside a finding: a boat out of use, a waiver, how it stands to an earlier check.

use super::shown;
use crate::rules::Finding;

/// Returns the words in brackets, with a blank before them; nothing where there is nothing to say.
pub(super) fn aside(finding: &Finding) -> String {
    if let Some(granted) = &finding.waived {
        return format!(" (waived by {} until {})", shown::line(&granted.by), granted.until);
    }
    let standing = finding.standing.map(|standing| standing.word());
    match (finding.shown_only, standing) {
        (true, _) => " (boat out of use: shown only)".to_owned(),
        (false, Some(word)) => format!(" ({word})"),
        (false, None) => String::new(),
    }
}
