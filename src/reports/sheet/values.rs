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

/// What the card calls the step and the row that are told here in another way.
const LIFTS: &str = "lift out by hand";
const SUMS: &str = "sums as written";

/// How many spare oars have a row.
const SPARES: usize = 2;

/// Returns the table.
pub(super) fn values(subject: &Subject, seats: &[SeatSight]) -> Markup {
    let columns: Vec<Vec<Step>> = seats.iter().map(steps).collect();
    html! {
        div class="wide" role="region" aria-label="Her values" tabindex="0" { table class="values" style={ "--rows:" (columns.first().map_or(1, |steps| rows(steps))) } {
            caption { "Her values, bow to stern, in the order of the work" }
            thead { tr {
                th scope="col" { "value" } th scope="col" { "limit" }
                @for seat in seats { th scope="col" { (heading(seat)) } }
            } }
            tbody { @if let Some(first) = columns.first() { @for (at, step) in first.iter().enumerate() {
                @if step.called == LIFTS { (lifts(subject, &columns, at)) } @else { @for index in 0..step.rows.len() {
                    @let rows: Vec<&Row> = columns.iter().map(|steps| &steps[at].rows[index]).collect();
                    @if !is_one_too_many(step, index) { (line(subject, step, index, &rows)) }
                } }
            } } }
        } }
    }
}

/// How many rows the table has at most: the lifts have one.
fn rows(steps: &[Step]) -> usize {
    let of = |step: &Step| if step.called == LIFTS { 1 } else { step.rows.len() };
    steps.iter().map(of).sum()
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
    let cells: Vec<Markup> = rows.iter().map(|row| cell(subject, &[row], &said(row))).collect();
    whole(&called(step, first), first.limit.as_deref(), index == 0, &cells)
}

fn whole(called: &str, limit: Option<&str>, begins: bool, cells: &[Markup]) -> Markup {
    html! {
        tr class=(if begins { "begins" } else { "" }) {
            th scope="row" { (cut(&words(called), CALLED + 8)) }
            td class="limit" { (cut(limit.unwrap_or(""), LIMIT)) }
            @for cell in cells { (cell) }
        }
    }
}

fn called(step: &Step, row: &Row) -> String {
    match (step.called, row.called.as_str()) {
        ("pitch", called) if !called.starts_with("pitch") => format!("pitch {called}"),
        (_, SUMS) => "gearing".to_owned(),
        (_, called) => called.to_owned(),
    }
}

/// The lifts of a seat in one cell: one word where all are alike, else each that is not free.
fn lifts(subject: &Subject, columns: &[Vec<Step>], at: usize) -> Markup {
    let cells: Vec<Markup> = columns
        .iter()
        .map(|steps| {
            let rows: Vec<&Row> = steps[at].rows.iter().collect();
            let read = |row: &&Row| row.read.clone().unwrap_or_else(|| row.missing.to_owned());
            let all: Vec<String> = rows.iter().map(read).collect();
            let alike = all.iter().all(|one| *one == all[0]);
            let each = || {
                let odd = rows.iter().zip(&all).filter(|(_, one)| *one != "freely");
                let odd = odd.map(|(row, one)| format!("{} {one}", row.called));
                odd.collect::<Vec<_>>().join(", ")
            };
            let said = if alike { format!("{}, every way", all[0]) } else { each() };
            cell(subject, &rows, &said)
        })
        .collect();
    whole(LIFTS, None, true, &cells)
}

fn cell(subject: &Subject, rows: &[&Row], said: &str) -> Markup {
    let own = |found: &&crate::rules::Finding| rows.iter().any(|row| takes(row, found));
    let own = subject.findings.iter().copied().filter(own);
    let verdict = Verdict::of(own, rows.iter().all(|row| row.is_checked()));
    let class = match verdict {
        Verdict::Found(_) => "found",
        _ if rows.iter().all(|row| row.read.is_none()) => "missing",
        _ => "",
    };
    html! { td class=(class) { span { (cut(&words(said), CELL)) } b { (verdict.words()) } } }
}

/// What was read with what is worked out from it; of the sums the gearing alone.
fn said(row: &Row) -> String {
    let read = row.read.as_deref().unwrap_or(row.missing);
    let worked = worked(row);
    match (row.called.as_str(), worked.trim_start_matches(" → ")) {
        (SUMS, "") => "not measured".to_owned(),
        (SUMS, gearing) => gearing.to_owned(),
        _ => format!("{read}{worked}").trim().to_owned(),
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
