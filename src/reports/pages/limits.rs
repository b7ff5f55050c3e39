//! Every limit in force, by class and for boats with limits of their own, with who set it and where
//! its figure comes from.

use maud::Markup;
use maud::html;

use super::Site;
use super::frame;
use super::frame::Frame;
use crate::model::Boat;
use crate::model::LimitKey;
use crate::reports::html::words;
use crate::reports::limit_layers::about;
use crate::reports::limit_layers::layered;
use crate::working::InForce;
use crate::working::Layer;

/// The most names of boats of one class that are told.
const MOST: usize = 30;

pub(super) fn page(site: &Site) -> Frame {
    let book = site.pages.report.book;
    let mut classes: Vec<Vec<&Boat>> = Vec::new();
    for boat in &book.boats {
        match classes.iter_mut().find(|group| class(group[0]) == class(boat)) {
            Some(group) => group.push(boat),
            None => classes.push(vec![boat]),
        }
    }
    let own = book.boats.iter().filter(|boat| !boat.limits.0.is_empty());
    let body = html! {
        @if classes.is_empty() { p { "No boat can be read, so no limit is in force." } }
        @for group in &classes { (of_class(site, group)) }
        @for boat in own { (of_boat(site, boat)) }
        @if !book.boats.is_empty() {
            p { "An oar set is held to the limits of every boat that carries it; of two boats, the strictest counts." }
        }
    };
    let below =
        "A boat's own limits come before the club's, the club's before the class's.".to_owned();
    Frame { heading: "Limits and where they come from".to_owned(), below, body, of_rig: false }
}

fn class(boat: &Boat) -> Option<&str> {
    boat.class.as_ref().map(|class| class.value.as_str())
}

fn of_class(site: &Site, group: &[&Boat]) -> Markup {
    let in_force = InForce::new(site.pages.report.book, group[0]);
    let called = class(group[0]).map_or("No class".to_owned(), |class| format!("Class {class}"));
    let mut boats: Vec<&str> = group.iter().take(MOST).map(|boat| boat.called()).collect();
    let more = format!("and {} more", group.len().saturating_sub(MOST));
    if group.len() > MOST {
        boats.push(&more);
    }
    let all = LimitKey::ALL.iter().map(|(key, ..)| *key);
    let table = table(in_force, &called, all, |layer| layer != Layer::Boat);
    html! {
        section { h2 { (words(&called)) } p { (words(&boats.join(", "))) }
            @if in_force.class.is_none() { p class="warning" { "This book has no such class: what it would limit is not checked." } }
            (frame::wide(&called, &table)) }
    }
}

fn of_boat(site: &Site, boat: &Boat) -> Markup {
    let in_force = InForce::new(site.pages.report.book, boat);
    let called = format!("{}: limits of her own", boat.called());
    let own =
        LimitKey::ALL.iter().map(|(key, ..)| *key).filter(|key| boat.limits.of(*key).is_some());
    let table = table(in_force, &called, own, |_| true);
    html! { section { h2 { (words(&called)) } (frame::wide(&called, &table)) } }
}

fn table(
    in_force: InForce,
    called: &str,
    keys: impl Iterator<Item = LimitKey>,
    heeded: fn(Layer) -> bool,
) -> Markup {
    html! {
        table class="limits" {
            caption { (words(called)) }
            thead { tr { @for head in ["limit", "in force", "of what", "set by, and its source"] { th scope="col" { (head) } } } }
            tbody { @for key in keys {
                @let limits = layered(in_force, key, heeded);
                @if limits.is_empty() { tr { th scope="row" { (key.key()) } td { "not set: not checked" } td { (about(key)) } td { "nobody" } } }
                @for limit in &limits { tr {
                    th scope="row" { (key.key()) } td { (words(&limit.in_force())) }
                    td { (about(key)) } td { (words(&limit.set_by())) }
                } }
            } }
        }
    }
}
