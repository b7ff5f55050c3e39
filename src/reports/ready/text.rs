//! The page of a boat as text: one sheet of A4, 80 columns wide.

use super::super::cautions::COLD_BENDING;
use super::super::cautions::NO_PERMISSION;
use super::super::cautions::WHERE_THE_SUMS_STOP;
use super::super::cautions::bends_metal;
use super::super::ended::at_most;
use super::super::look::Look;
use super::super::look::columns;
use super::super::shown;
use super::Ready;
use super::cells;
use super::fitting;
use super::fitting::Block;
use super::fitting::SHEET;
use super::page;
use super::page::Page;
use super::page::Stands;
use super::sections;
use super::sections::Section;
use crate::model::Placed;
use crate::rules::Level;

/// How wide a sheet is.
const WIDTH: usize = 80;

/// The columns of the table; the words of a cell but the last are cut to one less.
const COLUMNS: [usize; 12] = [5, 5, 5, 7, 9, 10, 7, 7, 7, 8, 6, 4];

/// A text of a book longer than this is cut: a page has room for so much.
const LONGEST: usize = 400;

/// Between the pages, for a printer.
const NEW_SHEET: &str = "\u{c}";

/// Who puts an initial where.
const INITIALS: &str =
    "Initials:  measured ________  checked ________  sweep ________  time ________";

/// Returns a page for each boat, each on a sheet of its own.
#[must_use]
pub fn ready_text(ready: &Ready, look: Look) -> String {
    let look = Look { width: WIDTH, ..look };
    let pages = page::pages(ready);
    let pages: Vec<String> = pages.iter().map(|page| sheet(page, look)).collect();
    pages.join(NEW_SHEET)
}

fn sheet(page: &Page, look: Look) -> String {
    let (head, table, foot) = (head(page, look), table(page, look), foot(page, look));
    let fixed = [&head, &table, &foot].iter().map(|part| part.lines().count()).sum::<usize>();
    let above = sections::above(page);
    let count = above.len();
    let mut blocks: Vec<Block> =
        above.into_iter().chain(sections::below(page)).map(|own| block(own, look)).collect();
    fitting::fit(&mut blocks, SHEET.saturating_sub(fixed));
    let (above, below) = blocks.split_at(count);
    let told = |blocks: &[Block]| -> String {
        blocks.iter().map(|block| printed(page, block, look)).collect()
    };
    [head, told(above), table, told(below), foot].concat()
}

fn head(page: &Page, look: Look) -> String {
    let boat = page.boat.boat;
    let said = |text: Option<&Placed<String>>, none: &str| {
        text.map_or(none.to_owned(), |text| at_most(&text.value, 60))
    };
    let mut called = at_most(boat.called(), 40);
    if boat.called() != boat.id.value {
        called.push_str(&format!(" ({})", at_most(&boat.id.value, 20)));
    }
    let called = shown::line(&called);
    let on = format!("on {}", page.ready.report.as_of);
    let gap = WIDTH.saturating_sub(columns(&called) + columns(&on)).max(2);
    let called = look.cut_to(&called, WIDTH - 2 - columns(&on));
    let title = format!("{called}{}{on}", " ".repeat(gap));
    let mut out = format!("{}\n", look.heading().style(title));
    let rigged = &boat.rigged;
    let day = rigged.date.map_or("on no day".to_owned(), |day| {
        let before = match page.ready.report.as_of.days_after(day.value) {
            1 => "1 day before".to_owned(),
            days @ 0.. => format!("{days} days before"),
            _ => "after that day".to_owned(),
        };
        format!("{} ({before})", day.value)
    });
    let checked = rigged.checked_by.as_ref();
    let passed = checked.map_or("passed by nobody".to_owned(), |who| {
        format!("passed by {}", at_most(&who.value, 60))
    });
    let spares: Vec<&str> = boat.spares.iter().map(|spare| &*spare.value).collect();
    let spares = if spares.is_empty() { "none".to_owned() } else { spares.join(", ") };
    let crews: Vec<&str> = page.crews.iter().map(|crew| &*crew.id.value).collect();
    let crews = if crews.is_empty() { "none named".to_owned() } else { crews.join(" / ") };
    let line = format!(
        "Class {}. Rigged {day} by {}, {passed}. Oars {}, spares {}. Crew {}.",
        said(boat.class.as_ref(), "not said"),
        said(rigged.by.as_ref(), "nobody says"),
        said(boat.oars.as_ref(), "not said"),
        at_most(&spares, 60),
        at_most(&crews, 60)
    );
    out.push_str(&format!("{}\n\n", look.wrapped(&shown::line(&line), "")));
    let (first, rest) = page.stands_words();
    let whole = look.hanging(&shown::line(&at_most(&format!("{first}{rest}"), LONGEST)), "", "  ");
    let bad = matches!(page.stands(), Stands::OutOfUse | Stands::MayNot | Stands::NotAllKnown);
    let level = if bad { Level::Danger } else { Level::Note };
    out.push_str(&whole.replacen(first, &look.of_level(level).style(first).to_string(), 1));
    out.push('\n');
    out
}

fn table(page: &Page, look: Look) -> String {
    let mut out = "\n".to_owned();
    let heads = [cells::HEADS.map(|(head, _)| head), cells::HEADS.map(|(_, below)| below)];
    for head in heads {
        out.push_str(&format!("{}\n", look.heading().style(row(head.map(str::to_owned), look))));
    }
    for seat in &page.seats {
        out.push_str(&format!("{}\n", row(cells::cells(seat), look)));
    }
    if page.seats.is_empty() {
        out.push_str("No seat is written down.\n");
    }
    out.push_str(&format!("{}\n", look.wrapped(&cells::good_to(page), "")));
    out
}

fn row(cells: [String; 12], look: Look) -> String {
    let mut line = String::new();
    for (number, (cell, width)) in cells.into_iter().zip(COLUMNS).enumerate() {
        let between = usize::from(number + 1 < COLUMNS.len());
        // Only what a club made long is ever cut.
        let cell = look.cut_to(&look.words(&shown::line(&cell)), width - between);
        line.push_str(&cell);
        line.push_str(&" ".repeat(width.saturating_sub(columns(&cell))));
    }
    line.trim_end().to_owned()
}

fn block(section: Section, look: Look) -> Block {
    let first = if section.to_do { "[ ] " } else { "  " };
    let line = |line: &String| look.hanging(&shown::line(&at_most(line, LONGEST)), first, "    ");
    let broken = section.lines.iter().map(line).collect();
    Block { section, broken, shown: 0 }
}

fn printed(page: &Page, block: &Block, look: Look) -> String {
    let called = shown::line(&at_most(&block.section.called, WIDTH - 8));
    let mut out = format!("\n{}\n", look.heading().style(called));
    for line in &block.broken[..block.shown] {
        out.push_str(&format!("{line}\n"));
    }
    if block.left_out() > 0 {
        let told = match block.section.called.as_str() {
            called if called.starts_with("Changed") => "tholebook diff".to_owned(),
            sections::WORK_LEFT => format!("tholebook worklist {}", page.boat.boat.id.value),
            _ => sections::where_told(page),
        };
        let line = format!("  and {} more: {told}", block.left_out());
        out.push_str(&format!("{}\n", look.cut_to(&shown::line(&line), WIDTH)));
    }
    out
}

/// What every page ends with.
fn foot(page: &Page, look: Look) -> String {
    let mut out = "\n".to_owned();
    let mut add = |text: &str| out.push_str(&format!("{}\n", look.wrapped(text, "")));
    if let Some(notes) = sections::notes(page) {
        add(&shown::line(&notes));
    }
    add(&format!("Where the sums stop. {WHERE_THE_SUMS_STOP}"));
    if page.findings.iter().any(|finding| bends_metal(finding.rule)) {
        add(COLD_BENDING);
    }
    add(NO_PERMISSION);
    out.push_str(&format!("\n{INITIALS}\n"));
    out
}
