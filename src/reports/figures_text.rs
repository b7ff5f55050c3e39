//! The worked-out values as a table: a boat at a time, her seats side by side.

use std::collections::BTreeMap;

use super::figures::Figure;
use super::figures::of_boat;
use super::figures::of_seat;
use super::look::Glyphs;
use super::look::Look;
use super::shown;
use super::telling;
use crate::model::Word;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::SeatSight;

/// The columns of the names of values and of their units.
const NAME: usize = 20;
const UNIT: usize = 3;

/// A seat with its values.
struct Column<'b> {
    seat: SeatSight<'b>,
    figures: Vec<Figure>,
}

/// Returns every worked-out value of the boats as tables.
#[must_use]
pub fn figures_text(boats: &[BoatSight], look: Look) -> String {
    let tables: Vec<String> = boats.iter().map(|boat| table(boat, look)).collect();
    tables.join("\n")
}

fn table(boat: &BoatSight, look: Look) -> String {
    let columns: Vec<Column> =
        boat.seats().map(|seat| Column { seat, figures: of_seat(&seat) }).collect();
    let mut out = heading(boat, look);
    let side_by_side = (look.width.saturating_sub(NAME + 1 + UNIT) / seat_width(look)).max(1);
    for some in columns.chunks(side_by_side) {
        out.push('\n');
        out.push_str(&rows(some, look));
    }
    out.push('\n');
    let own = of_boat(boat);
    for figure in &own {
        if let Ok(budget) = &figure.worked {
            let value = value(budget, figure);
            let line = format!("{}: {value}", figure.called);
            out.push_str(&format!("{}\n", look.wrapped(&line, "")));
        }
    }
    out.push_str(&lacking(&columns, &own, look));
    out.push_str(&what_is_told(boat, look));
    out
}

/// Returns what the readings can tell of the pins, and what to measure next.
fn what_is_told(boat: &BoatSight, look: Look) -> String {
    let mut out = format!("\n{}\n", look.heading().style("What the readings tell of the pins"));
    let told = telling::of_boat(boat);
    let mut add = |text: &str, first: &str, below: &str| {
        out.push_str(&format!("{}\n", look.hanging(text, first, below)));
    };
    for own in &told {
        add(&format!("{}: {}", own.seats, own.tells.join(" ")), "  ", "    ");
        add(telling::heading(&own.next), "    ", "    ");
        for (number, next) in own.next.iter().enumerate() {
            add(&format!("{}. {next}", number + 1), "    ", "       ");
        }
    }
    if told.is_empty() { String::new() } else { out }
}

/// Returns the columns of one seat.
fn seat_width(look: Look) -> usize {
    match look.glyphs {
        Glyphs::Unicode => 14,
        Glyphs::Ascii => 16,
    }
}

fn heading(boat: &BoatSight, look: Look) -> String {
    let record = boat.boat;
    let mut line = shown::line(record.called());
    if record.called() != record.id.value {
        line.push_str(&format!(" ({})", shown::line(&record.id.value)));
    }
    if let Some(class) = &record.class {
        line.push_str(&format!(", class {}", shown::line(&class.value)));
    }
    if let Some(date) = record.rigged.date {
        line.push_str(&format!(", rigged {}", date.value));
    }
    if record.out_of_use.is_some() {
        line.push_str(", out of use");
    }
    let about = "Worked out from the readings; ± is how good each value is. Positive: lean to the \
                 stern and outboard, pitch with the blade's top to the stern.";
    let heading = look.heading().style(look.wrapped(&line, "")).to_string();
    format!("{heading}\n{}\n", look.wrapped(about, ""))
}

fn rows(columns: &[Column], look: Look) -> String {
    let mut out = String::new();
    let width = seat_width(look);
    let mut row = |name: &str, unit: &str, cells: Vec<String>| {
        let cells: String = cells.iter().map(|cell| format!("{cell:>width$}")).collect();
        let line = format!("{name:NAME$} {unit:UNIT$}");
        out.push_str(format!("{line}{cells}").trim_end());
        out.push('\n');
    };
    let number = |column: &Column| match column.seat.seat.number {
        Some(number) => format!("seat {}", number.value),
        None => "seat ?".to_owned(),
    };
    let side = |column: &Column| {
        column
            .seat
            .seat
            .side
            .map_or_else(|| "side ?".to_owned(), |side| side.value.word().to_owned())
    };
    row("", "", columns.iter().map(number).collect());
    row("", "", columns.iter().map(side).collect());
    let count = columns.first().map_or(0, |column| column.figures.len());
    for index in 0..count {
        let figure = &columns[0].figures[index];
        let cells = columns.iter().map(|column| cell(&column.figures[index], look)).collect();
        row(figure.called, figure.unit, cells);
    }
    out
}

fn cell(figure: &Figure, look: Look) -> String {
    let places = figure.places;
    match &figure.worked {
        Ok(budget) => {
            let number = rounded(budget.value(), places);
            look.words(&format!("{number} ± {:.places$}", budget.expanded()))
        }
        Err(_) => "-".to_owned(),
    }
}

fn value(budget: &Budget, figure: &Figure) -> String {
    let Figure { unit, places, .. } = figure;
    let number = rounded(budget.value(), *places);
    format!("{number} {unit}, good to ± {:.places$} {unit}", budget.expanded())
}

/// Returns a number with its decimals; one that comes to nought has no sign.
pub(super) fn rounded(number: f64, places: usize) -> String {
    let text = format!("{number:.places$}");
    let nought = text.bytes().all(|byte| matches!(byte, b'-' | b'0' | b'.'));
    if nought { text.trim_start_matches('-').to_owned() } else { text }
}

/// Returns what could not be worked out: each reason with the values and seats it holds for.
fn lacking(columns: &[Column], own: &[Figure], look: Look) -> String {
    let mut reasons: Vec<(String, BTreeMap<String, Vec<&str>>)> = Vec::new();
    let mut add = |seat: String, figure: &Figure| {
        let Err(lack) = &figure.worked else { return };
        let lack = lack.to_string();
        let index = reasons.iter().position(|(reason, _)| *reason == lack);
        let index = index.unwrap_or_else(|| {
            reasons.push((lack, BTreeMap::new()));
            reasons.len() - 1
        });
        reasons[index].1.entry(seat).or_default().push(figure.called);
    };
    for column in columns {
        let number = column.seat.seat.number;
        let seat = number.map_or("?".to_owned(), |number| number.value.to_string());
        column.figures.iter().for_each(|figure| add(seat.clone(), figure));
    }
    own.iter().for_each(|figure| add(String::new(), figure));
    if reasons.is_empty() {
        return String::new();
    }
    let mut out = "\nNot worked out:\n".to_owned();
    for (reason, seats) in reasons {
        for (values, seats) in by_values(&seats) {
            let line = format!("{seats}{}: {}", values.join("; "), shown::line(&reason));
            out.push_str(&format!("{}\n", look.wrapped(&line, "  ")));
        }
    }
    out
}

/// Returns the seats that lack the same values, together.
fn by_values<'f>(seats: &BTreeMap<String, Vec<&'f str>>) -> Vec<(Vec<&'f str>, String)> {
    let mut together: Vec<(Vec<&str>, Vec<&str>)> = Vec::new();
    for (seat, values) in seats {
        match together.iter_mut().find(|(known, _)| known == values) {
            Some((_, seats)) => seats.push(seat),
            None => together.push((values.clone(), vec![seat])),
        }
    }
    let called = |seats: Vec<&str>| match seats[..] {
        [""] => String::new(),
        [seat] => format!("seat {seat}, "),
        _ => format!("seats {}, ", seats.join(", ")),
    };
    together.into_iter().map(|(values, seats)| (values, called(seats))).collect()
}
