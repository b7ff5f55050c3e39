//! A boat's page: how she stands, what was found and what to do, her drawings, every value with its
//! place and who set it, what happened to her.

use maud::Markup;
use maud::html;

use super::Site;
use super::courses;
use super::findings;
use super::fleet;
use super::frame::Frame;
use super::happened;
use super::rig;
use super::standing::Standing;
use super::standing::Stands;
use super::values;
use super::work;
use crate::model::Boat;
use crate::reading::RecordKind;
use crate::reports::card::Subject;
use crate::reports::card_words;
use crate::reports::cautions::COLD_BENDING;
use crate::reports::cautions::bends_metal;
use crate::reports::drawings;
use crate::reports::drawings::Drawing;
use crate::reports::drawings::PitchAxis;
use crate::reports::html::words;
use crate::rules::Finding;
use crate::working::BoatSight;
use crate::working::SeatSight;

/// The parts of a page that are far down.
const PARTS: [(&str, &str); 6] = [
    ("work", "Work"),
    ("drawings", "Drawings"),
    ("rig", "The rig"),
    ("time", "Through time"),
    ("changed", "What changed"),
    ("values", "Every value"),
];

pub(super) fn page(site: &Site, boat: &Boat) -> Frame {
    let book = site.pages.report.book;
    let standing = Standing::of(site, boat);
    let findings = standing.findings.clone();
    let subject =
        Subject { report: &site.pages.report, boat: BoatSight::new(book, boat), findings };
    let class = boat.class.as_ref().map_or("class not said", |class| &class.value);
    let last = super::changes::last(site, RecordKind::Boat, &boat.id.value);
    let below = format!("{} · class {class} · {last}", boat.id.value);
    let body = html! {
        (banner(&standing))
        nav class="here" aria-label="On this page" { ul {
            @for (to, called) in PARTS { li { a href={ "#" (to) } { (called) } } }
        } }
        (who(site, &subject))
        (found(site, &standing))
        (work::section(site, boat))
        (drawn(&subject))
        (rig::section(&subject))
        (happened::section(&subject))
        (courses::section(site, boat))
        (super::changes::last_days(site, RecordKind::Boat, &boat.id.value))
        (values::section(site, RecordKind::Boat, &boat.id.value, boat.file))
        (bending(&standing.findings))
    };
    Frame { heading: boat.called().to_owned(), below, body, of_rig: true }
}

fn banner(standing: &Standing) -> Markup {
    let stands = standing.stands();
    let counts = standing.counts();
    let class = if stands >= Stands::Danger { "banner stays" } else { "banner" };
    html! {
        div class=(class) {
            p class="verdict" { (fleet::stands(stands)) }
            @if !counts.is_empty() { p { "Found: " (counts) "." } }
            @if let Some(out) = &standing.boat.out_of_use {
                p { b { "Out of use " } (words(&fleet::out_of_use(out))) }
            }
        }
    }
}

fn who(site: &Site, subject: &Subject) -> Markup {
    let book = site.pages.report.book;
    let boat = subject.boat.boat;
    let set = subject.boat.oars.and_then(|own| {
        let at = book.oar_sets.iter().position(|set| std::ptr::eq(set, own))?;
        Some((&site.names.sets[at], own))
    });
    let crews = book.crews.iter().zip(&site.names.crews);
    let crews =
        crews.filter(|(crew, _)| crew.boat.as_ref().is_some_and(|own| own.value == boat.id.value));
    let crews: Vec<_> = crews.collect();
    html! {
        section class="who" {
            p { (words(&card_words::day(subject))) }
            p { (words(&card_words::level(subject))) }
            p { (words(&card_words::oars(subject)))
                @if let Some((page, set)) = set { " " a href=(page) { "The oars of " (words(&set.id.value)) } } }
            @if !crews.is_empty() { p { "Crews: "
                @for (at, (crew, page)) in crews.iter().enumerate() {
                    @if at > 0 { ", " } a href=(page) { (words(&crew.id.value)) }
                } } }
        }
    }
}

fn found(site: &Site, standing: &Standing) -> Markup {
    html! {
        section {
            h2 { "What was found" }
            @if standing.findings.is_empty() { p { "Nothing." } }
            (findings::list(site, &standing.findings))
            @if !standing.not_checked.is_empty() {
                h3 { "Not checked, for want of a reading" }
                (findings::not_checked(&standing.not_checked))
            }
        }
    }
}

/// The plan, then the rowlocks, the pitches and the leans, seat by seat.
fn drawn(subject: &Subject) -> Markup {
    let seats = subject.seats();
    if seats.is_empty() {
        return html! { section { h2 id="drawings" { "Drawings" } p { "No seat is written: there is nothing to draw." } } };
    }
    let axis = PitchAxis::of(&seats);
    let row = |kind: &str, heading: &str, legend: &str, drawing: &dyn Fn(&SeatSight) -> Drawing| {
        html! {
            h3 { (heading) } p class="quiet" { (legend) }
            div class="panels" {
                @for (place, seat) in seats.iter().enumerate() {
                    figure { (drawing(seat).inline(&format!("{kind}-{place}"))) }
                }
            }
        }
    };
    html! {
        section class="drawings" {
            h2 id="drawings" { "Drawings" }
            div class="wide plan" role="region" aria-label="Plan" tabindex="0" {
                figure { (drawings::plan(subject).inline("plan")) }
            }
            (row("rowlock", "Rowlocks along the shaft", "Full circle: the shaft at its widest; broken: at its narrowest; orange: what clears; blue bar: where the after horn may stand.", &|seat| drawings::rowlock(subject, seat)))
            (row("pitch", "Pitch from catch to finish", "Points: readings, good to the bars; curve: pin and rowlock that give all three; band: limits square off.", &|seat| drawings::pitch(subject, seat, axis)))
            (row("lean", "Pins, lean drawn ten times as much", "From the side, and from the end looking to the bow. Broken: plumb; dotted: limits; thin: good to.", &|seat| drawings::lean(subject, seat)))
        }
    }
}

fn bending(findings: &[&Finding]) -> Markup {
    let bends = findings.iter().any(|finding| bends_metal(finding.rule));
    html! { @if bends { p class="warning" { b { "Before metal is bent. " } (COLD_BENDING) } } }
}
