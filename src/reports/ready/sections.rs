//! The sections of a page below and above its table, as plain lines; how they look is for others.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use super::happened;
use super::page::Page;
use super::work;
use crate::model::Condition;
use crate::rules::Finding;
use crate::rules::Level;

/// A part of a page.
pub(super) struct Section {
    pub(super) called: String,
    pub(super) lines: Vec<String>,
    /// Which part has room first, where not all have: the least comes first.
    pub(super) rank: usize,
    /// Whether each line is something to do.
    pub(super) to_do: bool,
}

fn section(called: impl Into<String>, rank: usize, lines: Vec<String>) -> Section {
    Section { called: called.into(), lines, rank, to_do: false }
}

/// Returns what stands above the table: every danger.
pub(super) fn above(page: &Page) -> Vec<Section> {
    let dangers = page.findings.iter().filter(|finding| finding.level == Level::Danger);
    let lines = dangers.map(|finding| without_name(page, &finding.message)).collect();
    filled(vec![section("Dangers", 0, lines)])
}

/// Returns what stands below the table.
pub(super) fn below(page: &Page) -> Vec<Section> {
    let jobs = work::left(page);
    let id = &page.boat.boat.id.value;
    let work = jobs.iter().map(|job| job.line(id)).collect();
    let rigged = page.boat.boat.rigged.date.map(|day| day.value.to_string());
    let rigged = rigged.unwrap_or_else(|| "she was rigged".to_owned());
    let mut all = vec![
        section(
            format!("Knocks, bends and readings since {rigged}"),
            4,
            happened::since_rigged(page),
        ),
        section("Walk round", 3, walk_round(page)),
        Section { to_do: true, ..section("Work left, in this order", 5, work) },
        section("Waivers on the day", 2, waivers(page)),
        section("Not checked, for want of", 1, not_checked(page)),
    ];
    if let Some(before) = page.ready.before {
        let changes = happened::changes(page);
        let changes = if changes.is_empty() { vec!["nothing".to_owned()] } else { changes };
        all.insert(1, section(format!("Changed since {}", before.called), 6, changes));
    }
    filled(all)
}

fn filled(mut sections: Vec<Section>) -> Vec<Section> {
    sections.retain(|section| !section.lines.is_empty());
    sections
}

/// Her name stands at the top of the page.
fn without_name(page: &Page, message: &str) -> String {
    let called = page.boat.boat.called();
    let rest = message.strip_prefix(called).map(|rest| rest.trim_start_matches([',', ':', ' ']));
    rest.filter(|rest| !rest.is_empty()).unwrap_or(message).to_owned()
}

/// Every item that is not in order, and those that nobody looked at.
pub(super) fn walk_round(page: &Page) -> Vec<String> {
    let answers = &page.boat.boat.rigged.walk_round;
    let of = |condition: Condition| -> Vec<&str> {
        let those = answers.iter().filter(|answer| answer.condition.value == condition);
        those.map(|answer| &*answer.item.value).collect()
    };
    let asked = page.boat.in_force.class.map_or(&[][..], |class| &class.walk_round);
    let answered = |item: &str| answers.iter().any(|answer| answer.item.value == item);
    let open: Vec<&str> =
        asked.iter().map(|item| &*item.value).filter(|item| !answered(item)).collect();
    let groups = [
        ("unfit", of(Condition::Unfit)),
        ("to be watched", of(Condition::Watch)),
        ("not looked at", open),
    ];
    let bad = groups.iter().filter(|(_, items)| !items.is_empty());
    let mut lines: Vec<String> =
        bad.map(|(called, items)| format!("{called}: {}", items.join(", "))).collect();
    if lines.is_empty() && !answers.is_empty() {
        lines.push(format!("all {} items in order on the rigging day", answers.len()));
    } else if lines.is_empty() {
        lines.push("no item is written down: nobody can say".to_owned());
    }
    lines
}

/// The waivers that lapsed by the day, and those that still count.
fn waivers(page: &Page) -> Vec<String> {
    let lapsed = page.findings.iter().filter(|one| one.rule.id.starts_with("waiver-"));
    let lapsed = lapsed.map(|finding| format!("{}: {}", finding.name, finding.message));
    let counting = page.findings.iter().filter_map(|finding| {
        let granted = finding.waived.as_ref()?;
        let message = without_name(page, &finding.message);
        let (by, until, because) = (&granted.by, granted.until, &granted.because);
        Some(format!("waived by {by} until {until} ({because}): {message}"))
    });
    lapsed.chain(counting).collect()
}

/// What is missing for the checks that were not made: the seats that lack the same, together.
fn not_checked(page: &Page) -> Vec<String> {
    let record = page.boat.boat.record();
    let mut by_part: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for one in &page.not_checked {
        let part = part(one.name.as_str(), record.as_str());
        for missing in &one.missing {
            let (part, field) = match missing.split_once('/') {
                Some((seat, field)) if seat.starts_with("seat-") => (seat.to_owned(), field),
                _ if missing.starts_with("rigged/") => ("boat".to_owned(), missing.as_str()),
                _ => (part.clone(), missing.as_str()),
            };
            by_part.entry(part).or_default().insert(words(field));
        }
    }
    let mut together: Vec<(Vec<String>, BTreeSet<String>)> = Vec::new();
    for (part, fields) in by_part {
        match together.iter_mut().find(|(_, own)| *own == fields) {
            Some((parts, _)) => parts.push(part),
            None => together.push((vec![part], fields)),
        }
    }
    let line = |(parts, fields): (Vec<String>, BTreeSet<String>)| {
        let fields: Vec<String> = fields.into_iter().collect();
        format!("{}: {}", parts.join(", ").replace("seat-", "seat "), fields.join(", "))
    };
    together.into_iter().map(line).collect()
}

fn part(name: &str, boat: &str) -> String {
    let below = name.strip_prefix(boat).map(|rest| rest.trim_start_matches('/'));
    let first = below.and_then(|below| below.split('/').next()).unwrap_or_default();
    match below {
        Some(_) if first.starts_with("seat-") => first.to_owned(),
        Some(_) => "boat".to_owned(),
        None => name.to_owned(),
    }
}

/// A field as one says it: "handle past mark". A sentence stays as it is.
fn words(field: &str) -> String {
    if field.contains(' ') {
        return field.to_owned();
    }
    let parts: Vec<&str> = field.split('/').filter(|part| *part != "rigged").collect();
    parts.join(" ").replace('-', " ")
}

/// Returns how many notes there are, and where they are told; nothing where there is none.
pub(super) fn notes(page: &Page) -> Option<String> {
    let is_note = |one: &&&Finding| one.level == Level::Note && one.waived.is_none();
    let count = page.findings.iter().filter(is_note).count();
    let things = if count == 1 { "note is" } else { "notes are" };
    (count > 0).then(|| format!("{count} {things} not told here: {}", where_told(page)))
}

/// Returns where everything is told in full.
pub(super) fn where_told(page: &Page) -> String {
    let set = page.boat.oars.map(|set| format!(" --only {}", set.id.value)).unwrap_or_default();
    format!("tholebook lint --only {}{set}", page.boat.boat.id.value)
}
