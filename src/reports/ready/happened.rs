//! What happened to a boat: knocks, bends and values read again since she was rigged, and what
//! changed since an earlier state. Judges nothing.

use super::super::difference::of_change;
use super::super::difference::plain;
use super::page::Page;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::history::LastMeasured;
use crate::model::Bend;
use crate::model::Knock;
use crate::model::Place;
use crate::model::Placed;
use crate::model::ReadAgain;
use crate::model::Word;
use crate::units::Date;

/// Returns every knock, bend and reading of the rigging day or later, the first first.
pub(super) fn since_rigged(page: &Page) -> Vec<String> {
    let boat = page.boat.boat;
    let mut all: Vec<(Option<Date>, String)> = Vec::new();
    let mut add = |day: Option<Placed<Date>>, words: String| {
        let words = format!("{}: {words}", on(day));
        all.push((day.map(|day| day.value), words));
    };
    boat.knocks.iter().for_each(|knock| add(knock.date, knocked(knock)));
    boat.bends.iter().for_each(|bend| add(bend.date, bent(bend)));
    boat.read_again.iter().for_each(|again| add(again.date, read_again(again)));
    let rigged = boat.rigged.date.map(|day| day.value);
    all.retain(|(day, _)| day.is_none() || *day >= rigged);
    all.sort_by_key(|(day, _)| *day);
    all.into_iter().map(|(_, words)| words).collect()
}

fn knocked(knock: &Knock) -> String {
    let seats: Vec<&str> = knock.seats.iter().map(|seat| &*seat.value).collect();
    let seats = if seats.is_empty() { String::new() } else { format!(" ({})", seats.join(", ")) };
    format!("knock: {}{seats}", said(knock.what.as_ref()))
}

fn bent(bend: &Bend) -> String {
    let seat = bend.seat.map_or("a seat".to_owned(), |seat| format!("seat {}", seat.value));
    let part = bend.part.map_or("a part".to_owned(), |part| part.value.word().replace('-', " "));
    let angle = bend
        .angle
        .map_or(String::new(), |angle| format!(" by {} deg", plain(angle.value.as_deg())));
    format!("{seat}, {part} bent{angle}, by {}", said(bend.by.as_ref()))
}

fn read_again(again: &ReadAgain) -> String {
    let values: Vec<&str> = again.values.iter().map(|value| &*value.value).collect();
    let checked = again.checked_by.as_ref();
    let checked = checked.map_or(String::new(), |who| format!(", checked by {}", who.value));
    format!("read again by {}{checked}: {}", said(again.by.as_ref()), values.join(", "))
}

/// Returns what changed since the earlier state; what was measured again and is the same, as one
/// count. A knock or a bend that is told already is not told again.
pub(super) fn changes(page: &Page) -> Vec<String> {
    let told = told_already(page);
    let is_told = |change: &Change| {
        let state = change.new.as_ref().or(change.old.as_ref());
        state.and_then(|state| state.place).is_some_and(|place| told.contains(&place))
    };
    let all = page.changes();
    let is_same = |change: &Change| {
        matches!(
            change.kind,
            ChangeKind::ReMeasured | ChangeKind::UnitOnly | ChangeKind::PrecisionOnly
        )
    };
    let other = all.iter().filter(|change| !is_same(change) && !is_told(change));
    let mut lines: Vec<String> = other.map(|change| line(page, change)).collect();
    let same = all.iter().filter(|change| change.kind == ChangeKind::ReMeasured).count();
    if same > 0 {
        let values = if same == 1 { "value" } else { "values" };
        lines.push(format!("{same} {values} measured again, the same"));
    }
    lines
}

fn told_already(page: &Page) -> Vec<Place> {
    let boat = page.boat.boat;
    let rigged = boat.rigged.date.map(|day| day.value);
    let knocks = boat.knocks.iter().filter_map(|knock| knock.date);
    let days = knocks.chain(boat.bends.iter().filter_map(|bend| bend.date));
    days.filter(|day| Some(day.value) >= rigged).map(|day| day.place).collect()
}

/// Returns a change, and who measured it where that is not who rigged her.
fn line(page: &Page, change: &Change) -> String {
    let rigged = &page.boat.boat.rigged;
    let own = |last: &LastMeasured| {
        let same_day = rigged.date.is_some_and(|day| day.value == last.on);
        let same = rigged.by.as_ref().map(|by| &by.value) == last.by.as_ref();
        same_day && same
    };
    let last = change.new.as_ref().and_then(|state| state.measured.as_ref());
    let last = last.filter(|last| !own(last));
    let by = last.map_or(String::new(), |last| {
        let by = last.by.as_ref().map_or(String::new(), |by| format!(" by {by}"));
        format!("; measured {}{by}", last.on)
    });
    format!("{}{by}", of_change(change))
}

fn on(day: Option<Placed<Date>>) -> String {
    day.map_or_else(|| "on no day".to_owned(), |day| day.value.to_string())
}

fn said(text: Option<&Placed<String>>) -> &str {
    text.map_or("nobody says", |text| text.value.as_str())
}
