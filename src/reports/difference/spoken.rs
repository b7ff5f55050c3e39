//! A change in words: what it was, what it is, and by how much.

use super::called;
use super::consequences::Consequence;
use super::wording;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::history::State;
use crate::rules::Finding;

/// What more and less of something are called, by the last part of its name.
const WAYS: [(&[&str], &str, &str); 5] = [
    (&["gap", "widest", "narrowest", "width", "at-mark", "spread", "across"], "wider", "narrower"),
    (&["length", "inboard", "horn", "long", "chock-to-pin", "stature", "leg"], "longer", "shorter"),
    (&["thick", "round"], "thicker", "thinner"),
    (&["weight", "load-kg"], "heavier", "lighter"),
    (&["above-seat"], "higher", "lower"),
];

/// Returns a figure without noughts that say nothing.
pub(in crate::reports) fn plain(figure: f64) -> String {
    let text = format!("{figure:.6}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Returns by how much a figure changed, and which way: "2 mm wider".
pub(super) fn by_how_much(change: &Change) -> Option<String> {
    let delta = change.delta?;
    let last = change.name.as_str().rsplit('/').next().unwrap_or_default();
    let way = WAYS.iter().find(|(names, ..)| names.contains(&last));
    let (more, less) = way.map_or(("more", "less"), |(_, more, less)| (*more, *less));
    let way = if delta < 0.0 { less } else { more };
    let lists = [&change.old, &change.new].into_iter().flatten().any(|state| state.count > 1);
    let mean = if lists { "in the mean, " } else { "" };
    Some(format!("{mean}{} {way}", with_unit(&plain(delta.abs()), change.unit)))
}

fn with_unit(number: &str, unit: &str) -> String {
    if unit.is_empty() { number.to_owned() } else { format!("{number} {unit}") }
}

/// Texts of so many words, such as a person's name, are told whole.
const A_NAME: usize = 3;

/// Returns what stood on both sides, with the unit where it is not written: "58 → 60 mm".
pub(super) fn both(change: &Change) -> String {
    let text = |state: &Option<State>| state.as_ref().map_or("", |state| &state.text).to_owned();
    let (old, new) = (text(&change.old), text(&change.new));
    let words = |text: &str| text.split_whitespace().count();
    let is_long = words(&old) > A_NAME && words(&new) > A_NAME;
    if change.kind == ChangeKind::Changed && change.is_text && is_long {
        return wording::in_words(&old, &new);
    }
    if is_number(&old) && is_number(&new) {
        return with_unit(&format!("{old} → {new}"), change.unit);
    }
    let each = |text: &str| with_unit(text, if is_number(text) { change.unit } else { "" });
    format!("{} → {}", each(&old), each(&new))
}

/// Returns what stands on one side, with its unit where that is not written.
pub(super) fn one(change: &Change) -> String {
    let state = change.new.as_ref().or(change.old.as_ref());
    let text = state.map_or("", |state| &state.text);
    with_unit(text, if is_number(text) { change.unit } else { "" })
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit() || b"+-., ".contains(&byte))
}

/// Returns what happened to a value, after its name.
pub(super) fn what_happened(change: &Change) -> String {
    let place = |state: &Option<State>| {
        state.as_ref().map_or("nowhere".to_owned(), |state| called::whole(&state.text))
    };
    match change.kind {
        ChangeKind::Changed => match by_how_much(change) {
            Some(amount) => format!("{} ({amount})", both(change)),
            None => both(change),
        },
        ChangeKind::Added => format!("{}: new", one(change)),
        ChangeKind::Removed => format!("{}: taken out", one(change)),
        ChangeKind::Moved => {
            format!("moved from {} to {}", place(&change.old), place(&change.new))
        }
        ChangeKind::UnitOnly => format!("{}: the same in another unit", both(change)),
        ChangeKind::PrecisionOnly => format!("{}: the same to other digits", both(change)),
        ChangeKind::ReMeasured => format!("{}: measured again, the same", both(change)),
        ChangeKind::Unreadable => unreadable(change),
    }
}

fn unreadable(change: &Change) -> String {
    let text = |state: &State| format!("`{}`", state.text);
    match (&change.old, &change.new) {
        (Some(old), Some(new)) => {
            format!("can't be compared, for it can't be read: {} → {}", text(old), text(new))
        }
        (Some(old), None) => format!("{} before; what is there now can't be read", text(old)),
        (None, Some(new)) => format!("{} now; what was there before can't be read", text(new)),
        (None, None) => "can't be read".to_owned(),
    }
}

/// Returns a worked-out value before and after: "6.0 → 8.0 mm, good to ± 0.4 mm".
pub(super) fn followed(own: &Consequence) -> String {
    let places = own.places;
    let number = |good: &super::consequences::Good| good.shown(places);
    let good = |good: &super::consequences::Good| {
        format!("good to ± {}", with_unit(&good.shown_good(places), own.unit))
    };
    match (&own.old, &own.new) {
        (Some(old), Some(new)) => {
            let numbers = with_unit(&format!("{} → {}", number(old), number(new)), own.unit);
            let before = old.shown_good(places);
            let was = if before == new.shown_good(places) {
                String::new()
            } else {
                format!(" (before ± {})", with_unit(&before, own.unit))
            };
            format!("{numbers}, {}{was}", good(new))
        }
        (None, Some(new)) => {
            format!(
                "{}, {}; before, it could not be worked out",
                with_unit(&number(new), own.unit),
                good(new)
            )
        }
        (Some(old), None) => {
            format!(
                "can't be worked out any more; it was {}, {}",
                with_unit(&number(old), own.unit),
                good(old)
            )
        }
        (None, None) => String::new(),
    }
}

/// Returns a finding on one line.
pub(super) fn found(finding: &Finding) -> String {
    let waived = if finding.waived.is_some() { " (waived)" } else { "" };
    let unused = if finding.shown_only { " (boat out of use)" } else { "" };
    let (level, rule) = (finding.level.word(), finding.rule.id);
    format!("{level}{waived}{unused} {rule} {}: {}", finding.name, finding.message)
}
