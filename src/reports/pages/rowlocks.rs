//! Which oars suit which boats: at a glance on a page of its own, and seat by seat for a set.

use maud::Markup;
use maud::html;

use super::Site;
use super::frame;
use super::frame::Frame;
use super::marks;
use crate::model::OarSet;
use crate::planning::matching::Match;
use crate::planning::matching::NotFound;
use crate::planning::matching::Suits;
use crate::planning::matching::not_found;
use crate::planning::matching::worst;
use crate::reports::html::words;
use crate::reports::matching_rows::whole;
use crate::reports::matching_words::asides;
use crate::reports::matching_words::called;
use crate::reports::matching_words::level;
use crate::reports::matching_words::nothing_tried;
use crate::reports::matching_words::set_called;
use crate::reports::matching_words::verdict;
use crate::working::BoatSight;

/// Beyond so many pairs only the boats that carry a set are told, and the others counted.
const MOST: usize = 4000;

/// How many sets stand side by side.
const ACROSS: usize = 8;

pub(super) fn page(site: &Site) -> Frame {
    let book = site.pages.report.book;
    let body = if book.boats.is_empty() || book.oar_sets.is_empty() {
        html! { p { "Nothing to match: this book has no boat, or no oar set, that can be read." } }
    } else if book.boats.len() * book.oar_sets.len() > MOST {
        html! { p { "There are more pairs than a page holds: the page of each set tells of the boats that carry it. Of one boat: tholebook match BOAT" } }
    } else {
        let sights: Vec<BoatSight> =
            book.boats.iter().map(|boat| BoatSight::new(book, boat)).collect();
        let lacks: Vec<NotFound> = sights.iter().flat_map(not_found).collect();
        html! {
            @for sets in book.oar_sets.chunks(ACROSS) { (grid(site, &sights, sets)) }
            (frame::lines("Not tried", &asides(&[], &lacks)))
        }
    };
    let below = "The worst of every oar of the set in every rowlock of the boat.".to_owned();
    Frame { heading: "Oars and rowlocks".to_owned(), below, body, of_rig: true }
}

fn grid(site: &Site, boats: &[BoatSight], sets: &[OarSet]) -> Markup {
    let book = site.pages.report.book;
    let page_of = |set: &OarSet| {
        let at = book.oar_sets.iter().position(|own| std::ptr::eq(own, set))?;
        site.names.sets.get(at)
    };
    let table = html! {
        table class="grid" {
            caption { "Boats down, oar sets across" }
            thead { tr { th scope="col" { "boat" } @for set in sets {
                th scope="col" { @if let Some(page) = page_of(set) { a href=(page) { (words(&set.id.value)) } } }
            } } }
            tbody { @for (boat, page) in boats.iter().zip(&site.names.boats) { tr {
                th scope="row" { a href=(page) { (words(boat.boat.called())) } }
                @for set in sets { td { (glance(&Match::of(*boat, set))) } }
            } } }
        }
    };
    frame::wide("Boats and oar sets", &table)
}

fn glance(of: &Match) -> Markup {
    let proven = worst(of.all()).is_none_or(|(_, tried)| tried.decided.proven);
    let hers = if of.is_carried() { " (hers)" } else { "" };
    html! { (suits(of.suits(), &verdict(of.suits(), proven))) (hers) }
}

fn suits(suits: Suits, said: &str) -> Markup {
    match level(suits) {
        None => html! { (said) },
        Some(level) => html! {
            b class={ "lv lv-" (level.word()) } { span aria-hidden="true" { (marks::shape(level)) } " " (said) }
        },
    }
}

/// Returns how a set suits every boat, seat by seat, alike ones folded.
pub(super) fn of_set(site: &Site, set: &OarSet) -> Markup {
    let book = site.pages.report.book;
    let all = book.boats.len() * book.oar_sets.len() <= MOST;
    let carries = |id: &str| {
        book.boat(id)
            .and_then(|boat| boat.oars.as_ref())
            .is_some_and(|own| own.value == set.id.value)
    };
    let boats = book.boats.iter().filter(|boat| all || carries(&boat.id.value));
    let matches: Vec<Match> =
        boats.map(|boat| Match::of(BoatSight::new(book, boat), set)).collect();
    if matches.is_empty() {
        return html! {};
    }
    html! {
        section {
            h2 { "How they suit the boats" }
            (frame::wide("How they suit the boats", &table(&matches)))
            (frame::lines("Besides", &asides(&matches, &[])))
        }
    }
}

fn table(matches: &[Match]) -> Markup {
    html! {
        table class="match" {
            caption { "Clearance and looseness, the worst first" }
            thead { tr { @for head in ["boat", "verdict", "which", "what decides", "beside", "rigged"] {
                th scope="col" { (head) } } } }
            tbody { @for of in matches { (rows(of)) } }
        }
    }
}

fn rows(of: &Match) -> Markup {
    let all = whole(of);
    let hers =
        if of.is_carried() { format!(", {}", words(&set_called(of))) } else { String::new() };
    let boat = format!("{}{hers}", words(&called(of)));
    html! {
        @if all.is_empty() { tr { th scope="row" { (boat) } td { "unknown" } td colspan="4" { (nothing_tried(of)) } } }
        @for row in &all {
            @let (fits, rigged) = &row.told;
            tr {
                th scope="row" { (boat) }
                td { (suits(fits.suits, &fits.verdict())) }
                td { (words(&row.whereabouts)) } td { (words(&fits.decided)) }
                td { (words(&fits.beside)) } td { (words(rigged)) }
            }
        }
    }
}
