//! The boxes of a sheet to write on: steps down, seats across, bow to stern.

use maud::Markup;
use maud::html;

use super::Asked;
use super::rows::Row;
use super::rows::Step;
use super::rows::Written;
use super::rows::last;
use crate::model::Word;
use crate::reading::NOT_MEASURED;
use crate::reports::card::Subject;
use crate::reports::drawings::cut;
use crate::reports::drawings::said_of;
use crate::reports::drawings::tool_of;
use crate::reports::html::words;
use crate::reports::said::limit;
use crate::working::SeatSight;

/// How many seats have a column where the boat says of none.
const SEATS: usize = 4;

/// The most characters of what a column is called, and of a value read last time.
const COLUMN: usize = 24;
const LAST: usize = 14;

/// Returns the boxes of some steps.
pub(super) fn table(
    subject: &Subject,
    seats: &[SeatSight],
    steps: &[Step],
    asked: Asked,
) -> Markup {
    let columns = if seats.is_empty() { SEATS } else { seats.len() };
    html! {
        div class="scroll" { table class="boxes" {
            thead { tr {
                th scope="col" class="what" { "bow to stern → " span class="tick small" { i {} " tick: not measured" } } th scope="col" class="tool" { "tool" }
                @for at in 0..columns { th scope="col" { (heading(seats.get(at), at)) (readers(asked)) } }
            } }
            tbody { @for step in steps {
                tr class="step" { th scope="rowgroup" colspan=(columns + 2) { (step.called) } }
                @for row in &step.rows {
                    @let said = said(&step.rows, row);
                    @for kind in kinds(row, asked) {
                        (line(subject, seats, columns, row, &Told { kind, said: &said, asked }))
                    }
                }
            } }
        } }
    }
}

/// How a value is measured; what holds for rows that follow each other is said at the first.
fn said(rows: &[Row], row: &Row) -> String {
    let (whole, own) = said_of(row.field);
    let first = rows.iter().find(|other| said_of(other.field).0 == whole);
    let is_said = first.is_some_and(|first| first.field != row.field);
    if is_said || whole.is_empty() { own.to_owned() } else { format!("{whole}: {own}") }
}

fn heading(seat: Option<&SeatSight>, at: usize) -> Markup {
    let said = seat.map_or(format!("seat {}", at + 1), |seat| {
        let number = seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string());
        let side = seat.seat.side.map_or("side ?", |side| side.value.word());
        let oar = seat.seat.oar.as_ref().map_or("oar ?", |oar| &oar.value);
        format!("{number} · {side} · {oar}")
    });
    html! { (cut(&words(&said), COLUMN)) }
}

fn readers(asked: Asked) -> Markup {
    html! { @if asked.twice { div class="halves small" { span { "first reader" } span { "second" } } } }
}

/// The lines of a row: a value found and left takes two, where two people read it.
fn kinds(row: &Row, asked: Asked) -> Vec<&'static str> {
    match row.written {
        Written::FoundAndLeft if asked.twice => vec!["found", "left"],
        _ => vec![""],
    }
}

/// What one line is told of.
struct Told<'t> {
    kind: &'static str,
    said: &'t str,
    asked: Asked,
}

fn line(subject: &Subject, seats: &[SeatSight], columns: usize, row: &Row, told: &Told) -> Markup {
    let limit = seats.first().and_then(|seat| {
        let (key, of) = row.limit?;
        Some(format!("{of} {}", limit(seat, key)?))
    });
    html! {
        tr {
            th scope="row" class="what" {
                b { (row.called) @if !told.kind.is_empty() { ", " (told.kind) } }
                @if told.kind != "left" { div class="small" {
                    @if let Some(limit) = limit { b { (limit) ". " } }
                    (told.said)
                } }
            }
            td class="tool small" { div class="box" { (tool(subject, row)) } }
            @for at in 0..columns { td { (cell(seats.get(at), row, told.asked)) } }
        }
    }
}

/// The tool that the value is meant to be read with, and how finely it reads; room for another.
fn tool(subject: &Subject, row: &Row) -> String {
    let Some(tool) = tool_of(row.field).filter(|_| is_number(row)) else {
        return "by hand".to_owned();
    };
    let called = tool.words().trim_start_matches("the ");
    format!("{called} ± {} mm", subject.boat.tools.half_width(tool))
}

fn is_number(row: &Row) -> bool {
    matches!(row.written, Written::Number | Written::FoundAndLeft)
}

fn cell(seat: Option<&SeatSight>, row: &Row, asked: Asked) -> Markup {
    let last = seat
        .filter(|_| asked.last)
        .map(|seat| last(seat, row.field).unwrap_or_else(|| NOT_MEASURED.to_owned()));
    let last =
        last.filter(|_| is_number(row)).map(|last| format!("last {}", cut(&words(&last), LAST)));
    let last = last.as_deref().unwrap_or("");
    let one = |above: &str, said: &str| match row.written {
        Written::Word(these) => {
            html! { div class="box small" { span class="choice" { (these.join(" · ")) } (tick(said)) } }
        }
        Written::Lifts => lifts(),
        _ => html! { div class="box" { span class="above" { (above) } (tick(said)) } },
    };
    html! {
        @if asked.twice && is_number(row) {
            div class="halves" { (one("", "")) (one("", "")) }
        } @else if row.written == Written::FoundAndLeft {
            div class="halves" {
                (one(if last.is_empty() { "found" } else { last }, "not m."))
                (one("left", "not m."))
            }
        } @else { (one(last, NOT_MEASURED)) }
    }
}

/// What to tick where nothing could be read.
fn tick(said: &str) -> Markup {
    html! { span class="tick small" { i {} @if !said.is_empty() { " " (said) } } }
}

/// The four ways an oar is lifted, each with a letter to mark.
fn lifts() -> Markup {
    html! {
        div class="box ways small" {
            @for way in ["square", "catch", "finish", "along"] { span { (way) " F S J" } }
        }
    }
}
