//! A boat's rig as tables: the order of the work down, up to four seats across, each value with what
//! is worked out from it, how good that is, its limit and its verdict.

use maud::Markup;
use maud::html;

use super::frame;
use super::marks;
use crate::model::Word;
use crate::reports::card::Subject;
use crate::reports::card::takes;
use crate::reports::card_rows::GOOD_TO;
use crate::reports::card_rows::Row;
use crate::reports::card_rows::Step;
use crate::reports::card_rows::steps;
use crate::reports::figures_text::rounded;
use crate::reports::html::words;
use crate::reports::verdict::Verdict;
use crate::working::SeatSight;

/// How many seats stand side by side.
const ACROSS: usize = 4;

/// A seat with its rows.
struct Column<'s> {
    seat: SeatSight<'s>,
    steps: Vec<Step>,
}

pub(super) fn section(subject: &Subject) -> Markup {
    let seats = subject.seats().into_iter();
    let columns: Vec<Column> = seats.map(|seat| Column { seat, steps: steps(&seat) }).collect();
    html! {
        section {
            h2 id="rig" { "The rig" }
            @if columns.is_empty() { p { "No seat is written." } }
            @for some in columns.chunks(ACROSS) {
                @let label = label(some);
                (frame::wide(&label, &table(subject, some, &label)))
            }
            p class="quiet" { "First what was read, then what is worked out from it, ± how good it is. Lean to the stern and outboard positive, pitch with the blade's top to the stern." }
        }
    }
}

fn label(columns: &[Column]) -> String {
    let each: Vec<String> = columns.iter().map(|column| number(&column.seat)).collect();
    let seats = if each.len() == 1 { "seat" } else { "seats" };
    format!("Values of {seats} {}", each.join(", "))
}

fn number(seat: &SeatSight) -> String {
    seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string())
}

fn table(subject: &Subject, columns: &[Column], label: &str) -> Markup {
    html! {
        table class="rig" {
            caption { (label) }
            thead { tr {
                th scope="col" { "value" } th scope="col" { "limit" }
                @for column in columns { th scope="col" { (heading(&column.seat)) } }
            } }
            @if let Some(first) = columns.first() { @for (at, step) in first.steps.iter().enumerate() {
                tbody {
                    @if !step.called.is_empty() {
                        tr class="step" { th colspan=(columns.len() + 2) scope="rowgroup" { (step.called) } }
                    }
                    @for index in 0..step.rows.len() {
                        @let rows: Vec<&Row> = columns.iter().map(|column| &column.steps[at].rows[index]).collect();
                        (line(subject, &rows))
                    }
                }
            } }
        }
    }
}

fn heading(seat: &SeatSight) -> String {
    let side = seat.seat.side.map_or("side ?", |side| side.value.word());
    format!("seat {}, {side}", number(seat))
}

fn line(subject: &Subject, rows: &[&Row]) -> Markup {
    let Some(first) = rows.first() else { return html! {} };
    html! {
        tr {
            th scope="row" { (words(&first.called)) }
            td class="quiet" { (first.limit.as_deref().unwrap_or("-")) }
            @for row in rows { (cell(subject, row)) }
        }
    }
}

fn cell(subject: &Subject, row: &Row) -> Markup {
    let own = subject.findings.iter().copied().filter(|found| takes(row, found));
    let verdict = Verdict::of(own, row.is_checked());
    let worked = row.worked.iter().filter_map(|(called, places, worked)| {
        let worked = worked.as_ref().ok()?;
        let good = format!("± {:.places$}", worked.expanded(), places = *places);
        Some(match *called {
            GOOD_TO => good,
            called => format!("{called} {} {good}", rounded(worked.value(), *places)),
        })
    });
    html! {
        td {
            @match &row.read {
                None => span class="missing" { (row.missing) },
                Some(read) => span class="read" { (words(read)) },
            }
            @for line in worked { span class="worked" { (line) } }
            span class="said" { (marks::verdict(verdict)) }
        }
    }
}
