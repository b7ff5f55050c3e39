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

/// How many sketches have room on the first side; the others stand on the second.
const SKETCHES: usize = 8;

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
    let sides = (rows::first_side(), rows::second_side());
    let (first, second) = match asked.twice {
        true => (rows::apart(sides.0), rows::apart(sides.1)),
        false => sides,
    };
    let heads = if asked.twice { &OF_THE_BOAT[..9] } else { &OF_THE_BOAT[..] };
    let on_first: Vec<&str> = fields(&first).into_iter().chain(heads.iter().copied()).collect();
    let on_second = fields(&second);
    let mut above = with_all(&on_first, &on_second);
    let mut below = sketched(&on_second, &on_first);
    below.extend(above.split_off(above.len().min(SKETCHES)));
    let body = html! {
        main class={ "blank" @if asked.twice { " twice" } } {
            section class="side" {
                (head(&subject, "Side 1 of 2: turn over"))
                (day(&subject, asked.twice))
                (sketches("first", &above))
                (table(&subject, &seats, &first, asked))
                @if !asked.twice { footer class="small" { (walk_round(&subject)) (cautions()) } }
            }
            section class="side" {
                (head(&subject, "Side 2 of 2"))
                (sketches("second", &below))
                (table(&subject, &seats, &second, asked))
                (foot(&subject, asked.twice))
            }
        }
    };
    let title = format!("To write on: {}", cut(boat.called(), NAME));
    page(&Page { title: &title, styles: &[STYLE, BLANK], body })
}

/// Fields of the whole boat and of her set of oars that have a box at the head of the first side.
const OF_THE_BOAT: [&str; 12] = [
    "boat/rigged/level/trim",
    "boat/rigged/level/roll",
    "boat/level-mark/where",
    "boat/foot-holes/first",
    "boat/foot-holes/apart",
    "boat/rigged/pin-gauge",
    "boat/rigged/pitch-angles/catch",
    "boat/rigged/pitch-angles/finish",
    "oar-set/pitch-mark",
    "oar-set/oars/flex/load-kg",
    "oar-set/oars/flex/at",
    "crew/sweep/weight",
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
fn day(subject: &Subject, twice: bool) -> Markup {
    let mark = subject.boat.boat.level_mark.whereabouts.as_ref();
    let mark = mark.map_or("not said".to_owned(), |mark| cut(&words(&mark.value), TEXT));
    html! {
        div class="fields" {
            (field("date", "")) (field("measured by", ""))
            (field("checked by: a second person", ""))
        }
        div class="fields eight" {
            (field("trim, deg, bow up +", "")) (field("end for end", ""))
            (field("roll, port down +", "")) (field("end for end", ""))
            (field("wind", "")) (field("she lies", "trailer · sand · afloat"))
            (field("pin gauge, mm", "")) (field("pitch: catch, deg", ""))
            (field("pitch: finish, deg", "")) (field("foot hole 1, mm", ""))
            (field("holes apart, mm", "")) (field("how many holes", ""))
            (field("pitch mark, mm", ""))
            @if !twice {
                (field("flex: weight, kg", "")) (field("flex: at, mm", ""))
                (field("sweep: weight, kg", ""))
            }
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
    let rows = steps.iter().flat_map(|step| &step.rows).flat_map(rows::Row::each);
    rows.map(|row| row.field).collect()
}

fn foot(subject: &Subject, twice: bool) -> Markup {
    html! {
        footer class="small" {
            p { "F freely, S stiffly, J jams. Found: before anything is bent or packed; left: after."
                @if twice { " Blades, grips, flex and rowers: on a sheet for one reader." } }
            @if twice { (walk_round(subject)) (cautions()) }
        }
    }
}

fn cautions() -> Markup {
    html! { p { (COLD_BENDING) " " (WHERE_THE_SUMS_STOP) " " (NO_PERMISSION) } }
}

fn walk_round(subject: &Subject) -> Markup {
    let items = subject.boat.in_force.class.map_or(&[][..], |class| &class.walk_round);
    let items: Vec<String> =
        items.iter().take(20).map(|item| cut(&words(&item.value), 24)).collect();
    html! {
        @if !items.is_empty() {
            p { b { "Walk round, mark what is not in order: " } (items.join(" · ")) }
        }
    }
}
