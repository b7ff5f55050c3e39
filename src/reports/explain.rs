//! Everything known about a rule, and the list of all rules.

use super::cautions::COLD_BENDING;
use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::cautions::bends_metal;
use super::cautions::is_about_the_rowlock;
use super::look::Look;
use crate::rules::Edit;
use crate::rules::Level;
use crate::rules::RULES;
use crate::rules::Rule;

/// Below a heading.
const INDENT: &str = "  ";

/// Below the first line of one of several.
const HANGING: &str = "    ";

/// Returns everything known about a rule.
#[must_use]
pub fn explain(rule: &Rule, look: Look) -> String {
    let level = look.of_level(rule.level).style(rule.level.word());
    let mut out = format!("{}  {level}\n", look.heading().style(rule.id));
    out.push_str(&look.wrapped(meaning(rule.level), ""));
    out.push('\n');
    let mut section = |heading: &str, lines: &[String]| {
        let below = if lines.len() > 1 { HANGING } else { INDENT };
        out.push_str(&format!("\n{}\n", look.heading().style(heading)));
        for line in lines {
            out.push_str(&look.hanging(line, INDENT, below));
            out.push('\n');
        }
    };
    section("What it checks", &[rule.checks.to_owned()]);
    section("Why it matters in the boat", &[rule.reason.to_owned()]);
    section("How to put it right", &[rule.remedy.to_owned()]);
    section("The sum", &[rule.formula.to_owned()]);
    section("Limit where nobody sets another", &[default(rule)]);
    let sources: Vec<String> = rule.sources.iter().map(ToString::to_string).collect();
    section("Sources", &sources);
    section("Wrong", &edits(rule.example.wrong));
    section("Right", &edits(rule.example.right));
    if is_about_the_rowlock(rule) {
        section("Where the sums stop", &[WHERE_THE_SUMS_STOP.to_owned()]);
    }
    let mut cautions = vec![NO_PERMISSION.to_owned()];
    if bends_metal(rule) {
        cautions.insert(0, COLD_BENDING.to_owned());
    }
    section("Caution", &cautions);
    out
}

/// Returns the list of all rules: id, level at the worst, what it checks.
#[must_use]
pub fn rules(look: Look) -> String {
    let id_width = RULES.iter().map(|rule| rule.id.len()).max().unwrap_or_default();
    let level_width = Level::ALL.iter().map(|level| level.word().len()).max().unwrap_or_default();
    let indent = " ".repeat(id_width + level_width + 4);
    let row = |rule: &&Rule| {
        let checks = look.wrapped(rule.checks, &indent);
        let checks = checks.trim_start();
        let level = format!("{:level_width$}", rule.level.word());
        let level = look.of_level(rule.level).style(level);
        format!("{:id_width$}  {level}  {checks}\n", rule.id)
    };
    RULES.iter().map(row).collect()
}

fn meaning(level: Level) -> &'static str {
    match level {
        Level::Danger => {
            "Danger: it can hurt someone or break gear, or is not shown to be clear of it. It \
             always stops a boat in use."
        }
        Level::Fault => "Fault: out of tolerance, or the record is wrong.",
        Level::Unsure => {
            "Unsure: the reading is too coarse, or something needed was not measured, to decide."
        }
        Level::Note => "Note: worth knowing; it stops nothing.",
    }
}

fn default(rule: &Rule) -> String {
    match rule.default {
        "-" | "–" => "none: there is nothing to set".to_owned(),
        limit => limit.to_owned(),
    }
}

/// Returns what is written in an example, and in place of what.
fn edits(edits: &[Edit]) -> Vec<String> {
    let mut lines = Vec::new();
    for (path, after, from, to) in edits {
        let after = if after.is_empty() { String::new() } else { format!(", at `{after}`") };
        lines.push(format!("{path}{after}:"));
        lines.extend(to.lines().map(|line| format!("    {}", line.trim_end_matches("  # <--"))));
        if !from.is_empty() {
            lines.push(format!("  in place of `{}`", from.replace('\n', " ")));
        }
    }
    lines
}
