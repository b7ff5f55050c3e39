//! The report of a check as SARIF 2.1.0, for forges and editors that show findings at their place.
//!
//! Paths are told from the top of the repository. Machine names and addresses of repositories are
//! not told: the check knows none.

mod form;
mod results;
mod rules;
mod wording;

use std::collections::BTreeMap;

use self::form::BaseFolder;
use self::form::Driver;
use self::form::Invocation;
use self::form::Log;
use self::form::Notification;
use self::form::RuleReference;
use self::form::Run;
use self::form::Tool;
use self::wording::message;
use super::ended::Ended;
use super::shown;
use crate::rules::NotChecked;

/// The name of the form.
const SCHEMA: &str =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json";

/// Returns the report of a check as SARIF, on one line.
#[must_use]
pub fn sarif(ended: &Ended) -> String {
    let top = message("The top of the repository; without one, the book's folder.");
    shown::json(&Log {
        schema: SCHEMA,
        version: "2.1.0",
        runs: [Run {
            tool: Tool {
                driver: Driver {
                    name: env!("CARGO_PKG_NAME"),
                    version: env!("CARGO_PKG_VERSION"),
                    rules: rules::descriptors(),
                },
            },
            invocations: [Invocation {
                execution_successful: ended.was_checked(),
                exit_code: ended.exit_code,
                tool_execution_notifications: notifications(ended),
            }],
            original_uri_base_ids: BTreeMap::from([(
                results::TOP,
                BaseFolder { description: top },
            )]),
            default_encoding: "UTF-8",
            column_kind: "unicodeCodePoints",
            results: results::results(ended),
        }],
    })
}

/// Returns what the user is told besides, and each check that could not be made.
fn notifications(ended: &Ended) -> Vec<Notification> {
    let level = if ended.was_checked() { "warning" } else { "error" };
    let told = ended.told.iter().map(|told| Notification {
        level,
        message: message(told),
        associated_rule: None,
    });
    told.chain(ended.report.checked.not_checked.iter().map(not_checked)).collect()
}

fn not_checked(missing: &NotChecked) -> Notification {
    let NotChecked { rule, name, missing } = missing;
    let words = format!("{name}: not checked for {rule}; missing: {}", missing.join(", "));
    Notification {
        level: "note",
        message: message(&shown::line(&words)),
        associated_rule: Some(RuleReference { id: rule, index: rules::index(rule) }),
    }
}
