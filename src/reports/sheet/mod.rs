//! One page of a boat to print: her rig card with drawings, values, limits and verdicts.

mod told;
mod values;

use maud::Markup;
use maud::html;

use super::Made;
use super::Report;
use super::card::Subject;
use super::card_words::day;
use super::card_words::level;
use super::card_words::oars;
use super::cautions::COLD_BENDING;
use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::drawings::Drawing;
use super::drawings::PitchAxis;
use super::drawings::STYLE;
use super::drawings::cut;
use super::drawings::lean;
use super::drawings::pitch;
use super::drawings::plan;
use super::drawings::rowlock;
use super::html::Page;
use super::html::page;
use super::html::words;
use crate::model::Boat;
use crate::working::SeatSight;
use told::told;
use values::values;

const SHEET: &str = include_str!("sheet.css");

/// What the table holds.
const LEGEND: &str = "D danger, F fault, U unsure, N note; waived: the club lives with it for a \
     while; clear: looked at and in order; -: not checked. What was read → what is worked out \
     from it, ± how good it is. Lean to the stern and outboard is positive, and so is pitch with \
     the blade's top to the stern.";

/// The most characters of a line of a boat's own words, of her name, and of other names.
const LINE: usize = 200;
const HER_NAME: usize = 36;
const NAME: usize = 48;

/// Which commit a sheet was made from.
#[derive(Clone, Debug)]
pub enum AtCommit {
    /// The book lies in no repository, or in one that can't be read.
    None,
    /// Nothing was committed yet.
    NotYet,
    /// The files are those of this commit.
    At(Made),
    /// The files differ from this commit, the last one.
    ChangedSince(Made),
}

/// Returns the rig card of a boat as one page that needs nothing from outside.
#[must_use]
pub fn sheet(report: &Report, boat: &Boat, commit: &AtCommit) -> String {
    let subject = Subject::of(report, boat);
    let seats = subject.seats();
    let body = html! {
        main class="sheet" style={ "--seats:" (seats.len().max(4)) } {
            (head(&subject, commit))
            section class="top" {
                figure class="plan wide" role="group" aria-label="Plan" tabindex="0" { (plan(&subject).inline("plan")) }
                (told(&subject))
            }
            (drawn(&subject, &seats))
            (values(&subject, &seats))
            (foot(report))
        }
    };
    let title = format!("Rig card: {}", cut(boat.called(), NAME));
    page(&Page { title: &title, styles: &[STYLE, SHEET], body })
}

fn head(subject: &Subject, commit: &AtCommit) -> Markup {
    let boat = subject.boat.boat;
    let class = boat.class.as_ref().map_or("class not said", |class| &class.value);
    let club = subject.report.book.club.name.as_ref().map_or("", |name| &name.value);
    html! {
        header {
            h1 { (words(&cut(boat.called(), HER_NAME))) }
            p class="what" { "rig card · " (cut(&words(&boat.id.value), NAME)) " · " (cut(&words(class), NAME))
                @if !club.is_empty() { " · " (cut(&words(club), NAME)) } }
            p class="who" { (said(&day(subject))) " " (said(&level(subject))) " " (said(&oars(subject))) }
            p class="who" { (said(&committed(commit))) " Printed as of " (subject.report.as_of.to_string()) "." }
        }
    }
}

fn said(line: &str) -> String {
    cut(&words(line), LINE)
}

fn committed(commit: &AtCommit) -> String {
    let made = |made: &Made| {
        let day = made.committed_on.map_or(String::new(), |day| format!(" of {day}"));
        format!("{}{day} by {}", made.short, cut(&made.author, NAME))
    };
    match commit {
        AtCommit::None => "In no git repository: no commit.".to_owned(),
        AtCommit::NotYet => "Not committed yet.".to_owned(),
        AtCommit::At(at) => format!("Commit {}.", made(at)),
        AtCommit::ChangedSince(last) => {
            format!("NOT COMMITTED: the files differ from the last commit, {}.", made(last))
        }
    }
}

/// The rowlocks, the pitches and the leans, seat by seat.
fn drawn(subject: &Subject, seats: &[SeatSight]) -> Markup {
    let axis = PitchAxis::of(seats);
    let row = |kind: &str, legend: &str, drawing: &dyn Fn(&SeatSight) -> Drawing| {
        html! {
            section class={ "panels " (kind) } {
                h2 { (legend) }
                @for (place, seat) in seats.iter().enumerate() {
                    figure { (drawing(seat).inline(&format!("{kind}-{place}"))) }
                }
            }
        }
    };
    html! {
        (row("rowlock", "Rowlocks along the shaft. Full circle: shaft at its widest, broken: at its narrowest; orange: what clears; blue bar: where the after horn may stand.", &|seat| rowlock(subject, seat)))
        (row("pitch", "Pitch from catch to finish. Points: readings, good to the bars; curve: pin and rowlock that give all three; band: limits square off.", &|seat| pitch(subject, seat, axis)))
        (row("lean", "Pins from the side and from the end (looking to the bow), lean drawn ten times as much. Broken: plumb; dotted: limits; thin: good to.", &|seat| lean(subject, seat)))
    }
}

fn foot(report: &Report) -> Markup {
    let bends =
        report.checked.findings.iter().any(|found| super::cautions::bends_metal(found.rule));
    html! {
        footer {
            p { (LEGEND) }
            p { b { "Where the sums stop. " } (WHERE_THE_SUMS_STOP) " "
                @if bends { (COLD_BENDING) " " } (NO_PERMISSION) }
        }
    }
}
