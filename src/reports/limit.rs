//! A limit in words.

use super::shown;
use crate::rules::LimitShown;

/// Returns a limit with who set it and where its figures come from.
pub(super) fn words(limit: &LimitShown) -> String {
    let figure = |value: f64| {
        let unit = if limit.unit.is_empty() { String::new() } else { format!(" {}", limit.unit) };
        format!("{value}{unit}")
    };
    let figures = match (limit.least, limit.most) {
        (Some(least), Some(most)) => format!("{least} to {}", figure(most)),
        (Some(least), None) => format!("at least {}", figure(least)),
        (None, Some(most)) => format!("at most {}", figure(most)),
        (None, None) => "none".to_owned(),
    };
    let from = shown::line(&limit.from);
    let from = if from.is_empty() { from } else { format!(", from {from}") };
    let source = shown::line(&limit.source);
    let source = if source.is_empty() { source } else { format!(" ({source})") };
    format!("limit: {figures}{from}{source}")
}
