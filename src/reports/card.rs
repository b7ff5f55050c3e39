//! A boat's rig card: her seats side by side, every value with what is worked out from it and its
//! verdict; above, what she is; below, what stands against her.

use super::Report;
use super::card_rows::GOOD_TO;
use super::card_rows::Row;
use super::card_rows::Step;
use super::card_rows::steps;
use super::card_words::below;
use super::card_words::head;
use super::concerning::concerns;
use super::figures_text::rounded;
use super::look::Glyphs;
use super::look::Look;
use super::look::columns;
use super::verdict::LEGEND;
use super::verdict::Verdict;
use crate::model::Boat;
use crate::model::Name;
use crate::model::Word;
use crate::rules::Finding;
use crate::working::BoatSight;
use crate::working::SeatSight;
use crate::working::Worked;

/// The column of what each value is called, and those of the seats.
const CALLED: usize = 20;
const SEAT: usize = 15;

/// A boat and all that was found of her.
pub(super) struct Subject<'r> {
    pub(super) report: &'r Report<'r>,
    pub(super) boat: BoatSight<'r>,
    /// Findings of her, of her oars, and of what she names.
    pub(super) findings: Vec<&'r Finding>,
}

impl<'r> Subject<'r> {
    /// Gathers all that was found of a boat.
    pub(super) fn of(report: &'r Report<'r>, boat: &'r Boat) -> Self {
        let all = report.checked.findings.iter();
        let findings = all.filter(|finding| concerns(report.book, boat, &finding.name)).collect();
        Self { report, boat: BoatSight::new(report.book, boat), findings }
    }

    /// Returns her seats from the bow.
    pub(super) fn seats(&self) -> Vec<SeatSight<'r>> {
        let mut seats: Vec<SeatSight> = self.boat.seats().collect();
        seats.sort_by_key(|seat| seat.seat.number.map_or(u32::MAX, |number| number.value));
        seats
    }
}

/// A seat with its rows.
struct Column<'r> {
    seat: SeatSight<'r>,
    steps: Vec<Step>,
}

/// Returns the rig card of a boat.
#[must_use]
pub fn card(report: &Report, boat: &Boat, look: Look) -> String {
    let subject = Subject::of(report, boat);
    let columns: Vec<Column> =
        subject.seats().into_iter().map(|seat| Column { seat, steps: steps(&seat) }).collect();
    let mut out = head(&subject, look);
    let side_by_side = (look.width.saturating_sub(CALLED) / SEAT).max(1);
    for some in columns.chunks(side_by_side) {
        out.push('\n');
        table(&subject, some, look, &mut out);
    }
    out.push_str(&format!("\n{}\n", look.wrapped(LEGEND, "")));
    let in_table = |finding: &Finding| {
        let rows = columns.iter().flat_map(|column| &column.steps).flat_map(|step| &step.rows);
        rows.into_iter().any(|row| takes(row, finding))
    };
    out.push_str(&below(&subject, in_table, look));
    out
}

pub(super) fn takes(row: &Row, finding: &Finding) -> bool {
    let within = |name: &Name| finding.name.is_within(name.as_str());
    row.names.iter().any(within) || row.beside.contains(&finding.name)
}

fn table(subject: &Subject, columns: &[Column], look: Look, out: &mut String) {
    let number = |column: &Column| match column.seat.seat.number {
        Some(number) => format!("seat {}", number.value),
        None => "seat ?".to_owned(),
    };
    let side = |column: &Column| match column.seat.seat.side {
        Some(side) => side.value.word().to_owned(),
        None => "side ?".to_owned(),
    };
    line("", columns.iter().map(number).map(plain).collect(), look, out);
    line("", columns.iter().map(side).map(plain).collect(), look, out);
    let Some(first) = columns.first() else { return };
    for (number, step) in first.steps.iter().enumerate() {
        if !step.called.is_empty() {
            out.push_str(&format!("{}\n", look.heading().style(step.called)));
        }
        for index in 0..step.rows.len() {
            let rows: Vec<&Row> =
                columns.iter().map(|column| &column.steps[number].rows[index]).collect();
            value(subject, &rows, look, out);
        }
    }
}

/// Adds one value of every seat: what was read with its verdict, then what is worked out.
fn value(subject: &Subject, rows: &[&Row], look: Look, out: &mut String) {
    let cells = rows.iter().map(|row| cell(subject, row)).collect();
    let called = format!(" {}", rows[0].called);
    line(&called, cells, look, out);
    for (index, (called, ..)) in rows[0].worked.iter().enumerate() {
        let worked = |row: &&Row| {
            let (_, places, worked) = &row.worked[index];
            plain(figure(worked, *places, *called == GOOD_TO, look))
        };
        if rows.iter().any(|row| row.worked.get(index).is_some_and(|(.., worked)| worked.is_ok())) {
            line(&format!("   {called}"), rows.iter().map(worked).collect(), look, out);
        }
    }
}

/// What stands in a cell, and the verdict whose colour it takes.
type Cell = (String, Verdict);

fn plain(text: String) -> Cell {
    (text, Verdict::NotChecked)
}

fn cell(subject: &Subject, row: &Row) -> Cell {
    let own = subject.findings.iter().copied().filter(|finding| takes(row, finding));
    let verdict = Verdict::of(own, row.is_checked());
    let read = row.read.as_deref().unwrap_or(row.missing);
    let whole = format!("{read} {}", verdict.words());
    let whole = whole.trim_start().to_owned();
    let fits = columns(&whole) < SEAT;
    (if fits { whole } else { format!("{read} {}", verdict.short()) }, verdict)
}

/// A worked-out value and how good it is; of a reading that stands above, how good alone. What is
/// written in three signs instead of one has no room for blanks.
fn figure(worked: &Worked, places: usize, good_alone: bool, look: Look) -> String {
    let Ok(budget) = worked else { return "-".to_owned() };
    let good = format!("± {:.places$}", budget.expanded());
    if good_alone {
        return good;
    }
    let whole = format!("{} {good}", rounded(budget.value(), places));
    match look.glyphs {
        Glyphs::Unicode => whole,
        Glyphs::Ascii => whole.replace(" ± ", "±"),
    }
}

/// Adds a line: each cell in its column, to the right.
fn line(called: &str, cells: Vec<Cell>, look: Look, out: &mut String) {
    let mut line = fitted(called, CALLED, look);
    line.push_str(&" ".repeat(CALLED.saturating_sub(columns(&line))));
    for (text, verdict) in cells {
        let text = fitted(&look.words(&text), SEAT - 1, look);
        let room = SEAT.saturating_sub(columns(&text));
        line.push_str(&" ".repeat(room));
        line.push_str(&verdict.coloured(&text, look));
    }
    out.push_str(line.trim_end());
    out.push('\n');
}

/// Returns a text cut down to its column. Only ids that a club made long are ever cut: the end of
/// a cell is its verdict, so they are cut in front of it.
fn fitted(text: &str, room: usize, look: Look) -> String {
    if columns(text) <= room {
        return text.to_owned();
    }
    let (front, end) = text.rsplit_once(' ').unwrap_or(("", text));
    let cut = look.cut();
    let left = room.saturating_sub(columns(end) + cut.chars().count() + 1);
    let mut kept = String::new();
    for c in front.chars() {
        kept.push(c);
        if columns(&kept) > left {
            kept.pop();
            break;
        }
    }
    format!("{kept}{cut} {end}")
}
