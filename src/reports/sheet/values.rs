//! The values of a boat as a table: the order of the work down, the seats across, each with its
//! verdict by letter and word.

use maud::Markup;
use maud::html;

use crate::model::Word;
use crate::reports::card::Subject;
use crate::reports::card::takes;
use crate::reports::card_rows::GOOD_TO;
use crate::reports::card_rows::Row;
use crate::reports::card_rows::Step;
use crate::reports::card_rows::steps;
use crate::reports::drawings::cut;
use crate::reports::figures_text::rounded;
use crate::reports::html::words;
use crate::reports::verdict::Verdict;
use crate::working::SeatSight;

/// The most characters of what a row is called, of its limit, and of a cell.
const CALLED: usize = 20;
const LIMIT: usize = 18;
const CELL: usize = 30;

/// How many spare oars have a row.
const SPARES: usize = 2;

/// Returns the table.
pub(super) fn values(subject: &Subject, seats: &[SeatSight]) -> Markup {
    let columns: Vec<Vec<Step>> = seats.iter().map(steps).collect();
    html! {
        div class="scroll" { table class="values" {
            thead { tr {
                th scope="col" { "value" } th scope="col" { "limit" }
                @for seat in seats { th scope="col" { (heading(seat)) } }
            } }
            tbody { @if let Some(first) = columns.first() { @for (at, step) in first.iter().enumerate() {
                @for index in 0..step.rows.len() {
                    @let rows: Vec<&Row> = columns.iter().map(|steps| &steps[at].rows[index]).collect();
                    @if !is_one_too_many(step, index) { (line(subject, step, index, &rows)) }
                }
            } } }
        } }
    }
}

/// Of spare oars only the first ones have a row: a boat may carry any number.
fn is_one_too_many(step: &Step, index: usize) -> bool {
    let is_spare = |row: &Row| row.called.starts_with("spare ");
    is_spare(&step.rows[index])
        && step.rows[..index].iter().filter(|row| is_spare(row)).count() >= SPARES
}

fn heading(seat: &SeatSight) -> String {
    let number = seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string());
    let side = seat.seat.side.map_or("side ?", |side| side.value.word());
    format!("seat {number} · {side}")
}

fn line(subject: &Subject, step: &Step, index: usize, rows: &[&Row]) -> Markup {
    let Some(first) = rows.first() else { return html! {} };
    let called = match (step.called, first.called.as_str()) {
        ("", called) => called.to_owned(),
        (step, called) if step == "pitch" || step == "lift out by hand" => {
            let step = step.split(' ').next().unwrap_or(step);
            if called.starts_with(step) { called.to_owned() } else { format!("{step} {called}") }
        }
        (_, called) => called.to_owned(),
    };
    let begins = if index == 0 { "begins" } else { "" };
    html! {
        tr class=(begins) {
            th scope="row" { (cut(&words(&called), CALLED + 8)) }
            td class="limit" { (cut(first.limit.as_deref().unwrap_or(""), LIMIT)) }
            @for row in rows { (cell(subject, row)) }
        }
    }
}

fn cell(subject: &Subject, row: &Row) -> Markup {
    let own = subject.findings.iter().copied().filter(|found| takes(row, found));
    let verdict = Verdict::of(own, row.is_checked());
    let read = row.read.as_deref().unwrap_or(row.missing);
    let class = match verdict {
        Verdict::Found(_) => "found",
        _ if row.read.is_none() => "missing",
        _ => "",
    };
    html! {
        td class=(class) {
            span { (cut(&words(&format!("{read}{}", worked(row)).trim().to_owned()), CELL)) }
            b { (verdict.words()) }
        }
    }
}

/// What is worked out first from a reading; of one that stands as read, how good it is.
fn worked(row: &Row) -> String {
    let Some((called, places, Ok(budget))) = row.worked.first() else { return String::new() };
    let good = format!("± {:.places$}", budget.expanded(), places = *places);
    match *called {
        GOOD_TO => format!(" {good}"),
        _ => format!(" → {} {good}", rounded(budget.value(), *places)),
    }
}
