//! The work that brings a boat inside her limits, as a list in the order in which it is done.

use maud::Markup;
use maud::html;

use super::Site;
use super::frame::lines;
use crate::model::Boat;
use crate::planning::worklist::Worklist;
use crate::planning::worklist::worklist;
use crate::reports::cautions::COLD_BENDING;
use crate::reports::html::words;
use crate::reports::worklist_text::not_planned;
use crate::rules::Finding;
use crate::rules::HOW_TO_BEND;

pub(super) fn section(site: &Site, boat: &Boat) -> Markup {
    let pages = site.pages;
    let (book, faults) = site.common.around(pages.report.book, pages.faults, boat);
    let list = worklist(&book, &faults, boat, pages.report.as_of);
    html! {
        section {
            h2 id="work" { "Work" }
            p { (words(&head(&list))) }
            (steps(&list))
            (told(site, "First read again, before any metal is bent", &list.measure))
            (lines("Can't be cured together", &conflicts(&list)))
            (lines("Not planned, for want of a reading", &not_planned(&list)))
            (told(site, "Still open after this work", &list.left))
            @if list.bends() > 0 { p class="warning" {
                b { "Every bend: " } (HOW_TO_BEND) ". " (COLD_BENDING) } }
        }
    }
}

fn head(list: &Worklist) -> String {
    if list.is_empty() {
        return "Nothing to do.".to_owned();
    }
    if list.steps.is_empty() {
        return "Nothing to bend, pack or move as far as she was measured; see below.".to_owned();
    }
    let pieces = if list.steps.len() == 1 { "piece" } else { "pieces" };
    let bends = match list.bends() {
        0 => "nothing is bent".to_owned(),
        1 => "1 bend".to_owned(),
        many => format!("{many} bends"),
    };
    format!("{} {pieces} of work, {bends}, in this order.", list.steps.len())
}

fn steps(list: &Worklist) -> Markup {
    html! {
        @if !list.steps.is_empty() {
            ol class="steps" { @for step in &list.steps { li {
                p { @if let Some(seat) = step.seat { b { "Seat " (seat) ": " } } (words(&step.deed)) }
                p class="quiet" { "Why: " (words(step.because.trim_end())) }
            } } }
        }
    }
}

fn conflicts(list: &Worklist) -> Vec<String> {
    list.conflicts.iter().map(|conflict| format!("{conflict}.")).collect()
}

fn told(site: &Site, heading: &str, findings: &[Finding]) -> Markup {
    html! {
        @if !findings.is_empty() {
            h3 { (heading) }
            ul { @for finding in findings { li {
                (words(&site.message(finding))) ". " (words(&site.remedy(finding)))
            } } }
        }
    }
}
