//! Every setting in force: limits by class and boat, how finely each tool reads, oar angles; each
//! with where it is set and what it overrides.

use super::limit_layers::Layered;
use super::limit_layers::about;
use super::limit_layers::layered;
use super::look::Look;
use super::shown;
use crate::model::Boat;
use crate::model::Book;
use crate::model::LimitKey;
use crate::model::Tool;
use crate::working::Fineness;
use crate::working::InForce;
use crate::working::Layer;
use crate::working::Tools;

/// Below the name of a setting.
const HANGING: &str = "              ";

const OAR_LIMITS: &str = "An oar set is held to the limits of every boat that carries it; of two \
     boats, the strictest counts.";

/// Returns every setting in force for the boats of a book.
#[must_use]
pub fn settings(book: &Book, look: Look) -> String {
    let mut out = String::new();
    for group in classes(book) {
        of_class(book, &group, look, &mut out);
    }
    let boats = book.boats.iter();
    for boat in boats.filter(|boat| !boat.limits.0.is_empty()) {
        of_boat(book, boat, look, &mut out);
    }
    if !book.boats.is_empty() {
        out.push_str(&format!("{}\n\n", look.wrapped(OAR_LIMITS, "")));
    }
    tools(book, look, &mut out);
    of_nobody(book, look, &mut out);
    out
}

/// Returns the boats, those of one class together.
fn classes(book: &Book) -> Vec<Vec<&Boat>> {
    let mut groups: Vec<Vec<&Boat>> = Vec::new();
    for boat in &book.boats {
        match groups.iter_mut().find(|group| class_id(group[0]) == class_id(boat)) {
            Some(group) => group.push(boat),
            None => groups.push(vec![boat]),
        }
    }
    groups
}

fn class_id(boat: &Boat) -> Option<&str> {
    boat.class.as_ref().map(|class| class.value.as_str())
}

fn of_class(book: &Book, group: &[&Boat], look: Look, out: &mut String) {
    let in_force = InForce::new(book, group[0]);
    let own = |boat: &&Boat| if boat.limits.0.is_empty() { "" } else { " (and limits of her own)" };
    let boats = group.iter().map(|boat| format!("{}{}", boat.called(), own(boat)));
    let boats = boats.collect::<Vec<_>>().join(", ");
    let class = match (class_id(group[0]), in_force.class) {
        (Some(id), Some(_)) => format!("Class {id}"),
        (Some(id), None) => format!("Class {id}, which this book doesn't have"),
        (None, _) => "No class".to_owned(),
    };
    heading(&format!("{class}: {boats}"), look, out);
    for (key, ..) in LimitKey::ALL {
        let limits = layered(in_force, key, |layer| layer != Layer::Boat);
        limit(key, &limits, look, out);
    }
    constants(in_force, look, out);
    out.push('\n');
}

/// What a boat has of her own.
fn of_boat(book: &Book, boat: &Boat, look: Look, out: &mut String) {
    let class = class_id(boat).map_or("no class".to_owned(), |id| format!("class {id}"));
    heading(&format!("{}: limits of her own; all others as {class}", boat.called()), look, out);
    let in_force = InForce::new(book, boat);
    for (key, ..) in LimitKey::ALL {
        if boat.limits.of(key).is_some() {
            limit(key, &layered(in_force, key, |_| true), look, out);
        }
    }
    out.push('\n');
}

fn heading(text: &str, look: Look, out: &mut String) {
    let text = look.wrapped(&shown::line(text), "");
    out.push_str(&format!("{}\n", look.heading().style(text)));
}

fn limit(key: LimitKey, limits: &[Layered], look: Look, out: &mut String) {
    if limits.is_empty() {
        setting(key.key(), &format!("not set: {}", about(key)), "", look, out);
    }
    for layered in limits {
        let figures = format!("{}: {}", layered.in_force(), about(key));
        setting(key.key(), &figures, &layered.set_by(), look, out);
    }
}

/// Adds a setting: its name and figures, and below where it is set.
fn setting(name: &str, figures: &str, set_by: &str, look: Look, out: &mut String) {
    let first = format!("  {name:12}");
    out.push_str(&look.hanging(&shown::line(figures), &first, HANGING));
    out.push('\n');
    if !set_by.is_empty() {
        out.push_str(&look.wrapped(&shown::line(set_by), HANGING));
        out.push('\n');
    }
}

/// How a class's oars lie, and its collars.
fn constants(in_force: InForce, look: Look, out: &mut String) {
    let class = in_force.class;
    let angle = |angle: crate::model::Placed<crate::units::Angle>| {
        (format!("{} deg", angle.value.as_deg()), angle.place)
    };
    let angles = class.map(|class| &class.oar_angle);
    let collar = class.and_then(|class| class.collar_to_pin);
    let collar = collar.map(|collar| (format!("{} mm", collar.value.as_mm()), collar.place));
    let all = [
        ("catch", "oar forward of square", angles.and_then(|a| a.catch).map(angle)),
        ("finish", "oar abaft square", angles.and_then(|a| a.finish).map(angle)),
        ("dip", "blade below the rowlock", angles.and_then(|a| a.dip).map(angle)),
        ("collar", "collar's bearing face to the pin's axis", collar),
    ];
    for (name, about, figure) in all {
        match figure {
            Some((figure, place)) => {
                let from = in_force.set_at(place, Layer::Class);
                setting(name, &format!("{figure}: {about}, {from}"), "", look, out);
            }
            None => setting(name, &format!("not set: {about}"), "", look, out),
        }
    }
}

/// How finely each tool reads: for the club, then for boats whose day says otherwise.
fn tools(book: &Book, look: Look, out: &mut String) {
    heading("How finely each tool reads, either way", look, out);
    for (tool, key) in Tool::STATED {
        let said: Vec<Fineness> = Tools::of_club(book).said(tool).collect();
        setting(key, &fineness(book, tool, &said), "", look, out);
    }
    for boat in &book.boats {
        let tools = InForce::new(book, boat).tools();
        let own =
            Tool::STATED.iter().filter(|(tool, _)| boat.rigged.half_widths.of(*tool).is_some());
        for (number, (tool, key)) in own.enumerate() {
            if number == 0 {
                let day =
                    boat.rigged.date.map_or_else(String::new, |day| format!(" of {}", day.value));
                heading(&format!("The same on {}'s rigging day{day}", boat.called()), look, out);
            }
            let said: Vec<Fineness> = tools.said(*tool).collect();
            setting(key, &fineness(book, *tool, &said), "", look, out);
        }
    }
}

fn fineness(book: &Book, tool: Tool, said: &[Fineness]) -> String {
    let unit = match tool {
        Tool::Level | Tool::OarAngle | Tool::Dip => "deg",
        Tool::Scales => "kg",
        _ => "mm",
    };
    let figure = |said: &Fineness| format!("{} {unit}", said.half_width);
    let from = |said: &Fineness| match said.place {
        Some(place) => book.file_and_line(place),
        None => "what is usual".to_owned(),
    };
    let [first, below @ ..] = said else { return "not set".to_owned() };
    let mut words = format!("± {}: {}", figure(first), from(first));
    if let Some(over) = below.first() {
        words.push_str(&format!(", over {}: ± {}", from(over), figure(over)));
    }
    words
}

/// Limits of the club that hold for no boat.
fn of_nobody(book: &Book, look: Look, out: &mut String) {
    for club in &book.club.limits {
        let class = &club.class;
        if book.boats.iter().any(|boat| class_id(boat) == Some(&class.value)) {
            continue;
        }
        let from = book.file_and_line(class.place);
        let told =
            format!("{from} sets limits for class {}; no boat is of that class.", class.value);
        out.push_str(&format!("\n{}\n", look.wrapped(&shown::line(&told), "")));
    }
}
