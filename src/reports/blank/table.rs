//! The boxes of a sheet to write on: steps down, seats across, bow to stern.

use maud::Markup;
use maud::html;

use super::Asked;
use super::rows::Row;
use super::rows::Step;
use super::rows::Written;
use super::rows::last;
use crate::model::Tool;
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
    let each: Vec<&str> = steps.iter().map(|step| step.called).collect();
    let label = format!("Boxes: {}", each.join(", "));
    html! {
        div class="wide" role="region" aria-label=(label) tabindex="0" { table class={ "boxes" @if columns > SEATS { " many" } } {
            caption { (label) }
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

/// How the values of a row are measured; what holds for rows that follow each other is said at the
/// first, and what holds for a whole part by the first value of a row.
fn said(rows: &[Row], row: &Row) -> String {
    let (whole, own) = said_of(row.field);
    let first = rows.iter().find(|other| said_of(other.field).0 == whole);
    let is_said = first.is_some_and(|first| first.field != row.field);
    let mut said =
        if is_said || whole.is_empty() { own.to_owned() } else { format!("{whole}: {own}") };
    if let Some(beside) = &row.beside {
        said.push_str(&format!("; {}", said_of(beside.row.field).1));
    }
    said.replace('`', "\"")
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
    let limits: Vec<String> = row.each().filter_map(|own| limit_of(seats, own)).collect();
    let called = row.beside.as_deref().map_or(row.called, |beside| beside.both);
    html! {
        tr {
            th scope="row" class="what" {
                b { (called) @if !told.kind.is_empty() { ", " (told.kind) } }
                @if told.kind != "left" { " " span class="small" {
                    @if !limits.is_empty() { b { (limits.join(", ")) ". " } }
                    (told.said)
                } }
            }
            td class="tool small" { div class="box" { (tools(subject, row)) } }
            @for at in 0..columns { td { (cell(seats.get(at), row, told.asked)) } }
        }
    }
}

fn limit_of(seats: &[SeatSight], row: &Row) -> Option<String> {
    let (key, of) = row.limit?;
    Some(format!("{of} {}", limit(seats.first()?, key)?))
}

/// The tools that the values are meant to be read with, and how finely they read; room for others.
fn tools(subject: &Subject, row: &Row) -> String {
    let mut all: Vec<String> = row.each().map(|own| tool(subject, own)).collect();
    all.dedup();
    all.join("; ")
}

fn tool(subject: &Subject, row: &Row) -> String {
    let Some(tool) = tool_of(row.field).filter(|_| is_number(row)) else {
        return "by hand".to_owned();
    };
    let called = tool.words().trim_start_matches("the ");
    match tool {
        Tool::Scales => called.to_owned(),
        Tool::Level | Tool::OarAngle | Tool::Dip => {
            format!("{called} ± {} deg", subject.boat.tools.half_width(tool))
        }
        _ => format!("{called} ± {} mm", subject.boat.tools.half_width(tool)),
    }
}

fn is_number(row: &Row) -> bool {
    matches!(row.written, Written::Number | Written::FoundAndLeft)
}

fn cell(seat: Option<&SeatSight>, row: &Row, asked: Asked) -> Markup {
    let last = last_of(seat, row, asked);
    match (row.written, row.beside.as_deref()) {
        (Written::Word(these), _) => html! {
            div class="box small" { span class="choice" { (these.join(" · ")) } (tick(NOT_MEASURED)) }
        },
        (Written::Lifts, _) => lifts(),
        _ if asked.twice => html! { div class="halves" { (one("", "")) (one("", "")) } },
        (Written::FoundAndLeft, _) => html! {
            div class="halves" {
                (one(if last.is_empty() { "found" } else { &last }, "not m."))
                (one("left", "not m."))
            }
        },
        (Written::Number, Some(beside)) => html! {
            div class="halves" {
                (half(beside.each[0], &last))
                (half(beside.each[1], &last_of(seat, &beside.row, asked)))
            }
        },
        (Written::Number, None) => one(&last, NOT_MEASURED),
    }
}

/// What was read last time, where that is asked for; of rowers it is not told.
fn last_of(seat: Option<&SeatSight>, row: &Row, asked: Asked) -> String {
    let is_told = asked.last && is_number(row) && !row.field.starts_with("crew/");
    let Some(seat) = seat.filter(|_| is_told) else { return String::new() };
    let last = last(seat, row.field).unwrap_or_else(|| NOT_MEASURED.to_owned());
    format!("last {}", cut(&words(&last), LAST))
}

/// A box with what goes into it above, and a tick.
fn one(above: &str, said: &str) -> Markup {
    html! { div class="box" { span class="above" { (above.trim_end()) } (tick(said)) } }
}

/// Half of a box with what goes into it, what was read last time, and a tick.
fn half(called: &str, last: &str) -> Markup {
    let last = last.replace(NOT_MEASURED, "not m.");
    html! {
        div class="box" {
            span class="above" { (called) } @if !last.is_empty() { span class="above" { (last) } }
            (tick("not m."))
        }
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
