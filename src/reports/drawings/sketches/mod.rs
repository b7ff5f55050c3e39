//! Sketches of how each value is measured: a still picture and an arrow for every field, the asked
//! one lit. Not to scale; knows no boat.

mod along;
mod blade;
mod leaning;
mod level;
mod oar;
mod rower;
mod rowlock;

use maud::Markup;
use maud::html;

use super::Called;
use super::paper::*;
use crate::model::Tool;
use crate::reading;
use crate::reading::Described;
use crate::reading::Kind;
use crate::reading::RecordKind;

/// The paper of every sketch.
const SIZE: At = (46.0, 32.0);

/// An arrow and the fields that it is measured for.
struct Arrow {
    /// Names of fields as in the records' form: `boat/seats/pin/spread`.
    fields: &'static [&'static str],
    lines: &'static [(At, At)],
    says: &'static str,
    at: At,
    stand: Stand,
}

/// A still picture with its arrows.
struct Scene {
    /// What it shows and from where, in a few words.
    title: &'static str,
    still: Markup,
    arrows: &'static [Arrow],
}

/// Every scene.
fn scenes() -> Vec<Scene> {
    vec![
        level::level(),
        along::across(),
        along::along(),
        along::foot_holes(),
        leaning::leaning(),
        rowlock::plate(),
        rowlock::along_shaft(),
        rowlock::from_astern(),
        blade::attitudes(),
        blade::pitch(),
        blade::own_pitch(),
        oar::whole(),
        oar::shaft(),
        oar::flex(),
        rower::standing(),
        rower::arc(),
    ]
}

/// Returns a sketch for every field that is measured, under the field's name.
#[must_use]
pub fn sketches() -> Vec<Called> {
    let mut all = Vec::new();
    for scene in scenes() {
        for field in scene.arrows.iter().flat_map(|arrow| arrow.fields) {
            all.push(Called { id: (*field).to_owned(), drawing: scene.lit(&[field]) });
        }
    }
    all
}

/// Returns the scenes that show any of some fields, with those and others of the same scene lit.
pub(in crate::reports) fn with_all(fields: &[&str], others: &[&str]) -> Vec<Drawing> {
    let lit: Vec<&str> = fields.iter().chain(others).copied().collect();
    let all = scenes();
    all.iter().filter(|scene| scene.shows(fields)).map(|scene| scene.lit(&lit)).collect()
}

/// Returns the scenes that show any of some fields and none of those that have a place elsewhere.
pub(in crate::reports) fn sketched(fields: &[&str], elsewhere: &[&str]) -> Vec<Drawing> {
    let all = scenes();
    let own = all.iter().filter(|scene| scene.shows(fields) && !scene.shows(elsewhere));
    own.map(|scene| scene.lit(fields)).collect()
}

/// Returns every scene with all of its arrows lit, and what is said of each value that it shows: what
/// the value is called in a record, and its sentence.
pub(in crate::reports) fn sketch_book() -> Vec<(Drawing, Vec<(&'static str, String)>)> {
    let of_scene = |scene: &Scene| {
        let fields: Vec<&'static str> =
            scene.arrows.iter().flat_map(|arrow| arrow.fields).copied().collect();
        let called = |field: &'static str| field.rsplit_once("/seats/").map_or(field, |own| own.1);
        let said = fields.iter().map(|field| (called(field), sentence(field))).collect();
        (scene.lit(&fields), said)
    };
    scenes().iter().map(of_scene).collect()
}

impl Scene {
    fn shows(&self, fields: &[&str]) -> bool {
        let mut own = self.arrows.iter().flat_map(|arrow| arrow.fields);
        own.any(|field| fields.contains(field))
    }

    /// Draws the scene with the arrows of these fields lit.
    fn lit(&self, fields: &[&str]) -> Drawing {
        let is_lit = |arrow: &Arrow| arrow.fields.iter().any(|field| fields.contains(field));
        let lit: Vec<&Arrow> = self.arrows.iter().filter(|arrow| is_lit(arrow)).collect();
        let body = html! {
            (text("t2", (1.0, 3.6), Stand::Start, self.title))
            (self.still)
            @for arrow in self.arrows.iter().filter(|arrow| !is_lit(arrow)) {
                @for (from, to) in arrow.lines { (measure("hair", *from, *to)) }
            }
            @for arrow in &lit { (arrow.drawn()) }
        };
        let called: Vec<&str> = lit.iter().map(|arrow| arrow.says).collect();
        let shown = lit.iter().flat_map(|arrow| arrow.fields);
        let mut said: Vec<String> =
            shown.filter(|field| fields.contains(field)).map(|field| sentence(field)).collect();
        said.dedup();
        Drawing {
            title: format!("How to measure: {}", called.join(", ")),
            about: format!("{}. {}.", self.title, said.join(". ")),
            size: SIZE,
            one_to: None,
            body,
        }
    }
}

impl Arrow {
    fn drawn(&self) -> Markup {
        html! {
            g class="lit" data-fields=(self.fields.join(" ")) {
                @for (from, to) in self.lines { (measure("blue wide", *from, *to)) }
                (text("lit halo", self.at, self.stand, self.says))
            }
        }
    }
}

/// Parts said in no more words than this only name themselves: "the pin".
const NAMES_ITSELF: usize = 5;

/// Returns the measuring sentence of a field: what is said of the parts it stands in, then its own.
#[must_use]
pub fn sentence(field: &str) -> String {
    let (whole, own) = said_of(field);
    if whole.is_empty() { own.to_owned() } else { format!("{whole}: {own}") }
}

/// Returns what is said of the parts a field stands in, and of the field itself.
pub(in crate::reports) fn said_of(field: &str) -> (String, &'static str) {
    let mut along = way_to(field);
    let own = along.pop().map_or("", |own| own.field.about);
    let says = |part: &Described| {
        let is_list = matches!(part.kind, Kind::List(..));
        !is_list && part.field.about.split_whitespace().count() > NAMES_ITSELF
    };
    let parts: Vec<&str> =
        along.iter().filter(|part| says(part)).map(|part| part.field.about).collect();
    (parts.join(": "), own)
}

/// Returns what a field is read with.
pub(in crate::reports) fn tool_of(field: &str) -> Option<Tool> {
    way_to(field).pop().map(|own| own.field.tool)
}

/// The parts of a record that a field's name leads through, the field itself the last.
fn way_to(field: &str) -> Vec<Described> {
    let mut parts = field.split('/');
    let kind = match parts.next() {
        Some("boat") => RecordKind::Boat,
        Some("oar-set") => RecordKind::OarSet,
        _ => RecordKind::Crew,
    };
    let mut form = reading::form(kind);
    let mut along: Vec<Described> = Vec::new();
    for part in parts {
        let found = form.into_iter().find(|described| described.field.key == part);
        let Some(found) = found else { return Vec::new() };
        form = below(found.kind.clone());
        along.push(found);
    }
    along
}

fn below(kind: Kind) -> Vec<Described> {
    match kind {
        Kind::Section(form) => form,
        Kind::List(part, _) => below(*part),
        _ => Vec::new(),
    }
}

/// A weight on its line, as of a bob.
fn bob(at: At) -> Markup {
    area("full", &[(at.0 - 0.8, at.1), (at.0 + 0.8, at.1), (at.0, at.1 + 2.4)])
}

/// Words that only help to find one's way.
fn aside(at: At, stand: Stand, said: &str) -> Markup {
    text("inquiet", at, stand, said)
}
