//! Findings as a list: mark, rule, what is wrong, what to do, where it is written.

use maud::Markup;
use maud::html;

use super::Site;
use super::marks;
use crate::reports::aside::aside;
use crate::reports::html::words;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::NotChecked;

/// Returns a list of findings, in their order.
pub(super) fn list(site: &Site, findings: &[&Finding]) -> Markup {
    html! { ul class="findings" { @for finding in findings { (one(site, finding)) } } }
}

fn one(site: &Site, finding: &Finding) -> Markup {
    let place = site.pages.report.book.file_and_line(finding.labels[0].place);
    html! {
        li class={ "of-" (finding.level.word()) @if finding.waived.is_some() { " of-waived" } } {
            p { (marks::level(finding.level)) " " b { (finding.rule.id) } (words(&aside(finding)))
                ": " (words(&site.message(finding))) }
            @if finding.waived.is_none() && finding.level > Level::Note || finding.level == Level::Danger {
                p { b { "What to do: " } (words(&site.remedy(finding))) }
            }
            p class="quiet" { (words(finding.name.as_str())) " · " (words(&place)) (source(site, finding)) }
        }
    }
}

/// Who set the limit, and where its figure comes from.
fn source(site: &Site, finding: &Finding) -> String {
    let Some(limit) = finding.limit.as_ref() else { return String::new() };
    let from = words(&site.said(&limit.from));
    match limit.source.is_empty() {
        true => format!(" · limit: {from}"),
        false => format!(" · limit: {from} ({})", words(&site.said(&limit.source))),
    }
}

/// Returns what could not be checked, for want of what; checks of one place together.
pub(super) fn not_checked(all: &[&NotChecked]) -> Markup {
    let mut places: Vec<(&str, Vec<String>)> = Vec::new();
    for own in all {
        let said = format!("{} ({})", own.rule, own.missing.join(", "));
        match places.iter_mut().find(|(name, _)| *name == own.name.as_str()) {
            Some((_, rules)) => rules.push(said),
            None => places.push((own.name.as_str(), vec![said])),
        }
    }
    html! {
        ul { @for (name, rules) in places {
            li { (words(name)) ": " (words(&rules.join("; "))) }
        } }
    }
}
