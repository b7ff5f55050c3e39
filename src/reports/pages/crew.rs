//! A crew's page: who sits where, the foot holes, the arcs side by side. Bodies are left out unless
//! the club publishes them.

use maud::Markup;
use maud::html;

use super::Site;
use super::findings;
use super::frame;
use super::frame::Frame;
use super::values;
use crate::model::Crew;
use crate::model::Reading;
use crate::model::Rower;
use crate::reading::NOT_MEASURED;
use crate::reading::RecordKind;
use crate::reports::card_readings::good_to;
use crate::reports::card_readings::read;
use crate::reports::drawings::ArcRowed;
use crate::reports::drawings::arcs;
use crate::reports::figures_text::rounded;
use crate::reports::html::words;
use crate::units::Angle;
use crate::units::Weight;
use crate::working::RowerSight;
use crate::working::Tools;

const LEFT_OUT: &str = "Stature, leg and weight are left out; club.yaml says with publish-crew whether they are published.";

pub(super) fn page(site: &Site, crew: &Crew) -> Frame {
    let book = site.pages.report.book;
    let id = &crew.id.value;
    let (found, missing) = (site.found.of_record(id), site.found.not_checked_of(id));
    let boat = crew.boat.as_ref().map(|boat| &boat.value);
    let page = boat.and_then(|id| {
        let at = book.boats.iter().position(|boat| boat.id.value == **id)?;
        site.names.boats.get(at)
    });
    let bodies = site.publishes_bodies();
    let body = html! {
        p { @match (boat, page) {
            (Some(boat), Some(page)) => { "Rows " a href=(page) { (words(boat)) } "." }
            (Some(boat), None) => { "Rows " (words(boat)) ", of which no record can be read." }
            (None, _) => { "No boat is written." }
        } " " (words(&sweep(crew, bodies))) }
        @if !bodies { p class="quiet" { (LEFT_OUT) } }
        section { h2 { "Who sits where" } @if crew.rowers.is_empty() { p { "No rower is written." } } @else {
            (frame::wide("The rowers", &table(site, crew, bodies))) } }
        (drawn(site, crew))
        section { h2 { "What was found" }
            @if found.is_empty() { p { "Nothing." } }
            (findings::list(site, &found))
            @if !missing.is_empty() { h3 { "Not checked, for want of a reading" } (findings::not_checked(&missing)) }
        }
        (super::changes::last_days(site, RecordKind::Crew, id))
        (values::section(site, RecordKind::Crew, id, crew.file))
    };
    let below = format!("crew · {}", super::changes::last(site, RecordKind::Crew, id));
    Frame { heading: id.clone(), below, body, of_rig: false }
}

fn sweep(crew: &Crew, bodies: bool) -> String {
    let Some(who) = &crew.sweep.who else { return String::new() };
    let weight = crew.sweep.weight.as_ref().filter(|_| bodies);
    let weight = weight.map_or(String::new(), |own| format!(", {} kg", kilograms(own)));
    format!("Sweep: {}{weight}", who.value)
}

/// Returns every reading taken, with a stroke between them.
fn degrees(angle: &Reading<Angle>) -> String {
    joined(angle.values.iter().map(|one| one.as_deg()))
}

fn kilograms(weight: &Reading<Weight>) -> String {
    joined(weight.values.iter().map(|one| one.as_kg()))
}

fn joined(numbers: impl Iterator<Item = f64>) -> String {
    numbers.map(|number| rounded(number, 1)).collect::<Vec<_>>().join("/")
}

fn table(site: &Site, crew: &Crew, bodies: bool) -> Markup {
    let mut rowers: Vec<&Rower> = crew.rowers.iter().collect();
    rowers.sort_by_key(|rower| rower.seat.map_or(u32::MAX, |seat| seat.value));
    let tools = Tools::of_club(site.pages.report.book);
    let heads = ["seat", "who", "foot hole", "catch, deg", "finish, deg"];
    html! {
        table class="crew" {
            caption { "As measured, ± how good it is" }
            thead { tr { @for head in heads { th scope="col" { (head) } }
                @if bodies { @for head in ["stature, mm", "leg, mm", "weight, kg"] { th scope="col" { (head) } } } } }
            tbody { @for rower in rowers { (line(&RowerSight { tools, rower }, bodies)) } }
        }
    }
}

fn line(sight: &RowerSight, bodies: bool) -> Markup {
    let rower = sight.rower;
    let angle = |reading: Option<&Reading<Angle>>| reading.map(degrees);
    let seat = rower.seat.map_or("?".to_owned(), |seat| seat.value.to_string());
    let mut cells = vec![
        rower.who.as_ref().map_or("not said".to_owned(), |who| who.value.clone()),
        rower.foot_hole.map_or("not said".to_owned(), |hole| hole.value.to_string()),
        good_to(angle(rower.arc.catch.as_ref()), &sight.catch(), 1),
        good_to(angle(rower.arc.finish.as_ref()), &sight.finish(), 1),
    ];
    if bodies {
        let weight = rower.weight.as_ref().map(kilograms);
        cells.push(good_to(read(rower.stature.as_ref()), &sight.stature(), 1));
        cells.push(good_to(read(rower.leg.as_ref()), &sight.leg(), 1));
        cells.push(weight.unwrap_or_else(|| NOT_MEASURED.to_owned()));
    }
    html! { tr { th scope="row" { (seat) } @for cell in &cells { td { (words(cell)) } } } }
}

fn drawn(site: &Site, crew: &Crew) -> Markup {
    let tools = Tools::of_club(site.pages.report.book);
    let mut rowers: Vec<&Rower> = crew.rowers.iter().collect();
    rowers.sort_by_key(|rower| rower.seat.map_or(u32::MAX, |seat| seat.value));
    let arc = |rower: &&Rower| {
        let sight = RowerSight { tools, rower };
        let seat = rower.seat.map_or("?".to_owned(), |seat| seat.value.to_string());
        let who = rower.who.as_ref().map_or(String::new(), |who| format!(" {}", who.value));
        ArcRowed { called: format!("{seat}{who}"), catch: sight.catch(), finish: sight.finish() }
    };
    let rowed: Vec<ArcRowed> = rowers.iter().map(arc).collect();
    html! {
        @if !rowed.is_empty() { section class="drawings" { h2 { "Arcs side by side" }
            div class="arcs" { figure { (arcs(&crew.id.value, &rowed).inline("arcs")) } } } }
    }
}
