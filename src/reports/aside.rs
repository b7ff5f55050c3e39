//! What stands beside a finding that does not count: a boat out of use, a waiver.

use super::shown;
use crate::rules::Finding;

/// Returns the words in brackets, with a blank before them; nothing where the finding counts.
pub(super) fn aside(finding: &Finding) -> String {
    if let Some(granted) = &finding.waived {
        return format!(" (waived by {} until {})", shown::line(&granted.by), granted.until);
    }
    if finding.shown_only { " (boat out of use: shown only)".to_owned() } else { String::new() }
}
