//! A worklist as text: to be read at the boat, or aloud to the one with the lever.

use super::cautions::COLD_BENDING;
use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::look::Look;
use super::shown;
use crate::planning::worklist::Step;
use crate::planning::worklist::Worklist;
use crate::rules::Finding;
use crate::rules::HOW_TO_BEND;

/// Returns a worklist as text.
#[must_use]
pub fn worklist_text(list: &Worklist, look: Look) -> String {
    let mut out = Page { look, text: String::new() };
    out.head(list);
    out.findings("First read again, before any metal is bent", &list.measure, true);
    out.steps(&list.steps);
    let conflicts = list.conflicts.iter().map(|conflict| format!("{conflict}."));
    out.items("Can't be cured together", conflicts);
    out.items("Not planned, for want of a reading", not_planned(list).into_iter());
    out.findings("Left as it is: a waiver lets it stand", &list.waived, false);
    out.findings("Still open after this work", &list.left, true);
    out.cautions(list);
    out.text
}

/// What is not planned for the same reason at several seats is one line.
pub(super) fn not_planned(list: &Worklist) -> Vec<String> {
    let mut lines: Vec<(&str, &str, Vec<&str>)> = Vec::new();
    for own in &list.not_planned {
        let name = own.name.as_str().rsplit('/').next().unwrap_or_default();
        match lines.iter_mut().find(|(what, why, _)| (*what, *why) == (own.what, &own.missing)) {
            Some((_, _, names)) => names.push(name),
            None => lines.push((own.what, &own.missing, vec![name])),
        }
    }
    let line = |(what, why, names): (&str, &str, Vec<&str>)| {
        format!("not planned: {what} of {}: {why}", names.join(", "))
    };
    lines.into_iter().map(line).collect()
}

struct Page {
    look: Look,
    text: String,
}

impl Page {
    fn line(&mut self, text: &str, first: &str, below: &str) {
        let text = self.look.hanging(&shown::line(text), first, below);
        self.text.push_str(&text);
        self.text.push('\n');
    }

    fn heading(&mut self, text: &str) {
        let heading = self.look.heading().style(self.look.words(text)).to_string();
        self.text.push_str(&format!("\n{heading}\n"));
    }

    fn head(&mut self, list: &Worklist) {
        let called = format!("{} ({})", list.called, list.boat);
        if list.is_empty() {
            return self.line(&format!("{called}: nothing to do, as of {}.", list.as_of), "", "");
        }
        if list.steps.is_empty() {
            let words = "nothing to bend, pack or move as far as she was measured; see below";
            return self.line(&format!("{called}, as of {}: {words}.", list.as_of), "", "");
        }
        let work = counted(list.steps.len(), "piece");
        let bends = match list.bends() {
            0 => "nothing is bent".to_owned(),
            1 => "1 bend".to_owned(),
            many => format!("{many} bends"),
        };
        self.line(&format!("{called}, as of {}: {work} of work, {bends}.", list.as_of), "", "");
    }

    fn steps(&mut self, steps: &[Step]) {
        if steps.is_empty() {
            return;
        }
        self.heading("The work, in this order");
        for (number, step) in (1..).zip(steps) {
            let first = format!("{number:>3}. ");
            let at = step.seat.map_or(String::new(), |seat| format!("Seat {seat}: "));
            self.line(&format!("{at}{}", step.deed), &first, "     ");
            self.line(step.because.trim_end(), "     Why: ", "          ");
        }
    }

    fn items(&mut self, heading: &str, items: impl Iterator<Item = String>) {
        let mut items = items.peekable();
        if items.peek().is_none() {
            return;
        }
        self.heading(heading);
        for item in items {
            self.line(&item, "  - ", "    ");
        }
    }

    fn findings(&mut self, heading: &str, findings: &[Finding], with_remedy: bool) {
        if findings.is_empty() {
            return;
        }
        self.heading(heading);
        for finding in findings {
            let own = format!("{} {}: {}", finding.name, finding.rule.id, finding.message);
            let by = finding.waived.as_ref().map_or(String::new(), |waived| {
                format!(" (waived by {} until {}: {})", waived.by, waived.until, waived.because)
            });
            self.line(&format!("{own}{by}"), "  - ", "    ");
            if with_remedy {
                self.line(&finding.remedy, "    ", "    ");
            }
        }
    }

    fn cautions(&mut self, list: &Worklist) {
        let bends = list.bends() > 0;
        if list.is_empty() {
            return;
        }
        self.text.push('\n');
        if bends {
            let how = format!("Every bend: {HOW_TO_BEND}. {COLD_BENDING}");
            self.line(&how, "", "");
        }
        if !list.steps.is_empty() {
            self.line(WHERE_THE_SUMS_STOP, "", "");
        }
        self.line(NO_PERMISSION, "", "");
    }
}

fn counted(count: usize, what: &str) -> String {
    if count == 1 { format!("1 {what}") } else { format!("{count} {what}s") }
}
