//! The shape of SARIF 2.1.0, as far as a check needs it; every name is the standard's.
//!
//! Source: OASIS, Static Analysis Results Interchange Format (SARIF) Version 2.1.0, chapter 3.

use std::collections::BTreeMap;

use serde::Serialize;

#[derive(Serialize)]
pub(super) struct Log {
    #[serde(rename = "$schema")]
    pub(super) schema: &'static str,
    pub(super) version: &'static str,
    pub(super) runs: [Run; 1],
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Run {
    pub(super) tool: Tool,
    pub(super) invocations: [Invocation; 1],
    pub(super) original_uri_base_ids: BTreeMap<&'static str, BaseFolder>,
    pub(super) default_encoding: &'static str,
    pub(super) column_kind: &'static str,
    pub(super) results: Vec<Outcome>,
}

#[derive(Serialize)]
pub(super) struct Tool {
    pub(super) driver: Driver,
}

#[derive(Serialize)]
pub(super) struct Driver {
    pub(super) name: &'static str,
    pub(super) version: &'static str,
    pub(super) rules: Vec<ReportingDescriptor>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct ReportingDescriptor {
    pub(super) id: &'static str,
    pub(super) short_description: Message,
    pub(super) full_description: Message,
    pub(super) help: HelpText,
    pub(super) default_configuration: Configuration,
    pub(super) properties: RuleProperties,
}

/// What the standard has no word for.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct RuleProperties {
    pub(super) level: &'static str,
    pub(super) default_limit: &'static str,
    pub(super) sources: Vec<String>,
}

#[derive(Serialize)]
pub(super) struct HelpText {
    pub(super) text: String,
    pub(super) markdown: String,
}

#[derive(Serialize)]
pub(super) struct Configuration {
    pub(super) level: &'static str,
    pub(super) rank: f64,
}

#[derive(Serialize)]
pub(super) struct Message {
    pub(super) text: String,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Invocation {
    pub(super) execution_successful: bool,
    pub(super) exit_code: u8,
    pub(super) tool_execution_notifications: Vec<Notification>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Notification {
    pub(super) level: &'static str,
    pub(super) message: Message,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) associated_rule: Option<RuleReference>,
}

#[derive(Serialize)]
pub(super) struct RuleReference {
    pub(super) id: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) index: Option<usize>,
}

/// A folder that places are told from; where it lies on this machine is nobody's business.
#[derive(Serialize)]
pub(super) struct BaseFolder {
    pub(super) description: Message,
}

/// The standard's `result`.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Outcome {
    pub(super) rule_id: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) rule_index: Option<usize>,
    pub(super) level: &'static str,
    pub(super) rank: f64,
    pub(super) message: Message,
    pub(super) locations: [Location; 1],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) related_locations: Vec<Location>,
    pub(super) partial_fingerprints: BTreeMap<&'static str, String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) baseline_state: Option<&'static str>,
    /// Of all results of a run, or of none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) suppressions: Option<Vec<Suppression>>,
    pub(super) properties: OutcomeProperties,
}

#[derive(Serialize)]
pub(super) struct OutcomeProperties {
    pub(super) level: &'static str,
}

#[derive(Serialize)]
pub(super) struct Suppression {
    pub(super) kind: &'static str,
    pub(super) status: &'static str,
    pub(super) justification: String,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Location {
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<usize>,
    pub(super) physical_location: PhysicalLocation,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) logical_locations: Vec<LogicalLocation>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) message: Option<Message>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct LogicalLocation {
    pub(super) fully_qualified_name: String,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct PhysicalLocation {
    pub(super) artifact_location: ArtifactLocation,
    pub(super) region: Region,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct ArtifactLocation {
    pub(super) uri: String,
    pub(super) uri_base_id: &'static str,
}

/// Lines and columns from 1; the end column is the one after the last character.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Region {
    pub(super) start_line: usize,
    pub(super) start_column: usize,
    pub(super) end_line: usize,
    pub(super) end_column: usize,
}
