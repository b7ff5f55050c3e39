//! What happened to a boat: defects, knocks, bends, what the walk round found.

use maud::Markup;
use maud::html;

use super::frame::lines;
use crate::model::Bend;
use crate::model::Defect;
use crate::model::Knock;
use crate::model::Placed;
use crate::model::Word;
use crate::reports::card::Subject;
use crate::reports::card_words;
use crate::reports::difference::plain;
use crate::units::Date;

pub(super) fn section(subject: &Subject) -> Markup {
    let boat = subject.boat.boat;
    let mended = boat.defects.iter().filter_map(put_right);
    html! {
        (lines("Open defects", &card_words::defects(subject)))
        (lines("Defects put right", &mended.collect::<Vec<_>>()))
        (lines("Knocks", &newest_first(boat.knocks.iter().map(knocked))))
        (lines("Bends", &newest_first(boat.bends.iter().map(bent))))
        (lines("Walk round", &card_words::walk_round(subject)))
    }
}

type Told = (Option<Date>, String);

fn newest_first(all: impl Iterator<Item = Told>) -> Vec<String> {
    let mut all: Vec<Told> = all.collect();
    all.sort_by_key(|(day, _)| std::cmp::Reverse(*day));
    all.into_iter().map(|(_, words)| words).collect()
}

fn put_right(defect: &Defect) -> Option<String> {
    let right = defect.put_right.as_ref().filter(|right| right.missing().is_empty())?;
    Some(format!(
        "{}, found {}; put right {} by {}: {}; passed by {}",
        said(defect.what.as_ref()),
        on(defect.found),
        on(right.date),
        said(right.by.as_ref()),
        said(right.how.as_ref()),
        said(right.passed_by.as_ref()),
    ))
}

fn knocked(knock: &Knock) -> Told {
    let seats: Vec<&str> = knock.seats.iter().map(|seat| &*seat.value).collect();
    let seats = if seats.is_empty() { String::new() } else { format!(" ({})", seats.join(", ")) };
    let words = format!("{}: {}{seats}", on(knock.date), said(knock.what.as_ref()));
    (knock.date.map(|day| day.value), words)
}

fn bent(bend: &Bend) -> Told {
    let seat = bend.seat.map_or("a seat".to_owned(), |seat| format!("seat {}", seat.value));
    let part = bend.part.map_or("a part".to_owned(), |part| part.value.word().replace('-', " "));
    let angle =
        bend.angle.map_or(String::new(), |angle| format!(" {} deg", plain(angle.value.as_deg())));
    let words = format!("{}: {seat}, {part}{angle}, by {}", on(bend.date), said(bend.by.as_ref()));
    (bend.date.map(|day| day.value), words)
}

fn on(day: Option<Placed<Date>>) -> String {
    day.map_or_else(|| "on no day".to_owned(), |day| day.value.to_string())
}

fn said(text: Option<&Placed<String>>) -> &str {
    text.map_or("not said", |text| text.value.as_str())
}
