//! A sheet of a boat to write on at the boat, in the order of the work, level and wind first.

mod rows;
mod table;

use maud::Markup;
use maud::html;

use super::Report;
use super::card::Subject;
use super::cautions::COLD_BENDING;
use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::drawings::Drawing;
use super::drawings::STYLE;
use super::drawings::cut;
use super::drawings::sketched;
use super::drawings::with_all;
use super::html::Page;
use super::html::page;
use super::html::words;
use crate::model::Boat;
use rows::Step;
use table::table;

const BLANK: &str = include_str!("blank.css");

/// The most characters of a boat's name, and of a text of hers.
const NAME: usize = 26;
const TEXT: usize = 40;

/// What a sheet to write on shows besides its boxes.
#[derive(Clone, Copy, Debug, Default)]
pub struct Asked {
    /// What was read last time stands in each box.
    pub last: bool,
    /// Each box has a second one, for a second reader. Nothing of last time is shown then.
    pub twice: bool,
}

/// Returns a sheet to write on, as one page of two sides that needs nothing from outside.
#[must_use]
pub fn blank_sheet(report: &Report, boat: &Boat, asked: Asked) -> String {
    let asked = Asked { last: asked.last && !asked.twice, ..asked };
    let subject = Subject::of(report, boat);
    let seats = subject.seats();
    let (first, second) = (rows::first_side(), rows::second_side());
    let on_first: Vec<&str> = fields(&first).into_iter().chain(OF_THE_BOAT).collect();
    let on_second = fields(&second);
    let (above, below) = (with_all(&on_first, &on_second), sketched(&on_second, &on_first));
    let body = html! {
        main class={ "blank" @if asked.twice { " twice" } } {
            section class="side" {
                (head(&subject, "Side 1 of 2: turn over"))
                (day(&subject))
                (sketches("first", &above))
                (table(&subject, &seats, &first, asked))
                footer class="small" { (COLD_BENDING) " " (WHERE_THE_SUMS_STOP) " " (NO_PERMISSION) }
            }
            section class="side" {
                (head(&subject, "Side 2 of 2"))
                (sketches("second", &below))
                (table(&subject, &seats, &second, asked))
                (foot(&subject))
            }
        }
    };
    let title = format!("To write on: {}", cut(boat.called(), NAME));
    page(&Page { title: &title, styles: &[STYLE, BLANK], body })
}

/// Fields of the whole boat that have a box at the head of the first side.
const OF_THE_BOAT: [&str; 8] = [
    "boat/rigged/level/trim",
    "boat/rigged/level/roll",
    "boat/level-mark/where",
    "boat/foot-holes/first",
    "boat/foot-holes/apart",
    "boat/rigged/pin-gauge",
    "boat/rigged/pitch-angles/catch",
    "boat/rigged/pitch-angles/finish",
];

fn head(subject: &Subject, side: &str) -> Markup {
    let boat = subject.boat.boat;
    let club = subject.report.book.club.name.as_ref().map_or("", |name| &name.value);
    html! {
        header {
            h1 { (cut(&words(boat.called()), NAME)) }
            p class="of" { (cut(&words(&boat.id.value), NAME))
                @if !club.is_empty() { " · " (cut(&words(club), NAME)) } }
            p class="which" { b { (side) } }
        }
    }
}

/// A box with what goes in it above.
fn field(called: &str, said: &str) -> Markup {
    html! { div { span class="small" { (called) } div class="box small" { span class="choice" { (said) } } } }
}

/// Level and wind first, then what holds for all seats.
fn day(subject: &Subject) -> Markup {
    let mark = subject.boat.boat.level_mark.whereabouts.as_ref();
    let mark = mark.map_or("not said".to_owned(), |mark| cut(&words(&mark.value), TEXT));
    html! {
        div class="fields" {
            (field("date", "")) (field("measured by", ""))
            (field("checked by: a second person", ""))
        }
        div class="fields six" {
            (field("trim, deg, bow up +", "")) (field("end for end", ""))
            (field("roll, deg, port down +", "")) (field("end for end", ""))
            (field("wind", "")) (field("she lies", "trailer · sand · afloat"))
            (field("pin gauge, mm", "")) (field("pitch: catch, deg", ""))
            (field("pitch: finish, deg", "")) (field("foot hole 1, mm", ""))
            (field("holes apart, mm", "")) (field("how many holes", ""))
        }
        p class="small" { "Level first: the level lies on its mark (" (mark)
            "). Then the string line, bow to stern. An empty box is not measured, never zero; a value read more than once: write each." }
    }
}

/// The sketches of a side; a scene of both sides stands on the first, with all of its arrows.
fn sketches(called: &str, drawn: &[Drawing]) -> Markup {
    html! {
        div class="sketches" {
            @for (at, sketch) in drawn.iter().enumerate() {
                figure { (sketch.inline(&format!("{called}-{at}"))) }
            }
        }
    }
}

fn fields(steps: &[Step]) -> Vec<&'static str> {
    steps.iter().flat_map(|step| &step.rows).map(|row| row.field).collect()
}

fn foot(subject: &Subject) -> Markup {
    let items = subject.boat.in_force.class.map_or(&[][..], |class| &class.walk_round);
    let items: Vec<String> =
        items.iter().take(20).map(|item| cut(&words(&item.value), 24)).collect();
    html! {
        footer class="small" {
            p { "F freely, S stiffly, J jams. Found: before anything is bent or packed; left: after." }
            @if !items.is_empty() {
                p { b { "Walk round, mark what is not in order: " } (items.join(" · ")) }
            }
        }
    }
}
