//! The list of rules, with all that is known about each.

use super::form::Configuration;
use super::form::HelpText;
use super::form::ReportingDescriptor;
use super::form::RuleProperties;
use super::wording::message;
use super::wording::plain;
use crate::reports::cautions::COLD_BENDING;
use crate::reports::cautions::NO_PERMISSION;
use crate::reports::cautions::WHERE_THE_SUMS_STOP;
use crate::reports::cautions::bends_metal;
use crate::reports::cautions::is_about_the_rowlock;
use crate::reports::cell::cell;
use crate::rules::Level;
use crate::rules::RULES;
use crate::rules::Rule;

/// Returns every rule, in the order of the list.
pub(super) fn descriptors() -> Vec<ReportingDescriptor> {
    RULES.iter().map(|rule| descriptor(rule)).collect()
}

/// Returns the number of a rule in the list.
pub(super) fn index(id: &str) -> Option<usize> {
    RULES.iter().position(|rule| rule.id == id)
}

/// Returns the level of the standard that a level is told as.
pub(super) const fn level(level: Level) -> &'static str {
    match level {
        Level::Danger | Level::Fault => "error",
        Level::Unsure => "warning",
        Level::Note => "note",
    }
}

/// Returns how much a level matters, from 0 to 100: it tells a danger from a fault.
pub(super) const fn rank(level: Level) -> f64 {
    match level {
        Level::Danger => 100.0,
        Level::Fault => 70.0,
        Level::Unsure => 40.0,
        Level::Note => 10.0,
    }
}

fn descriptor(rule: &'static Rule) -> ReportingDescriptor {
    ReportingDescriptor {
        id: rule.id,
        short_description: message(rule.checks),
        full_description: message(&format!("{} {}", rule.checks, rule.reason)),
        help: help(rule),
        default_configuration: Configuration { level: level(rule.level), rank: rank(rule.level) },
        properties: RuleProperties {
            level: rule.level.word(),
            default_limit: rule.default,
            sources: sources(rule),
        },
    }
}

fn sources(rule: &Rule) -> Vec<String> {
    rule.sources.iter().map(ToString::to_string).collect()
}

fn help(rule: &Rule) -> HelpText {
    let sections = sections(rule);
    let unmarked =
        |(heading, lines): &(&str, Vec<String>)| format!("{heading}:\n{}", lines.join("\n"));
    let marked = |(heading, lines): &(&str, Vec<String>)| {
        let lines: Vec<String> = lines.iter().map(|line| format!("- {}", cell(line))).collect();
        format!("**{heading}**\n\n{}", lines.join("\n"))
    };
    let text: Vec<String> = sections.iter().map(unmarked).collect();
    let markdown: Vec<String> = sections.iter().map(marked).collect();
    HelpText { text: plain(&text.join("\n\n")), markdown: markdown.join("\n\n") }
}

fn sections(rule: &Rule) -> Vec<(&'static str, Vec<String>)> {
    let one = |text: &str| vec![text.to_owned()];
    let mut cautions = one(NO_PERMISSION);
    cautions.extend(bends_metal(rule).then(|| COLD_BENDING.to_owned()));
    cautions.extend(is_about_the_rowlock(rule).then(|| WHERE_THE_SUMS_STOP.to_owned()));
    vec![
        ("What it checks", one(rule.checks)),
        ("Why it matters in the boat", one(rule.reason)),
        ("How to put it right", one(rule.remedy)),
        ("The sum", one(rule.formula)),
        ("Limit where nobody sets another", one(rule.default)),
        ("Sources", sources(rule)),
        ("Caution", cautions),
    ]
}
